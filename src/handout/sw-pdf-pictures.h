/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure.h"
#include "sw-pdf-file.h"

G_BEGIN_DECLS

/**
 * SwPdfPicture:
 * @figure: (owned): what it shows
 * @width_pt: how wide the figure is asked to be
 * @height_pt: how tall
 * @stream: (nullable): what draws it, filtered; once it is made
 * @states: the graphics states that it needs, as entries of a dictionary; once it is made
 * @id: the number of its object in the file; 0 while it has none
 *
 * A figure's picture, which a PDF has once, however often it is seen.
 */
typedef struct
{
  SwFigure *figure;
  double width_pt;
  double height_pt;
  GBytes *stream;
  char *states;
  guint id;
} SwPdfPicture;

typedef struct _SwPdfPictures SwPdfPictures;

SwPdfPictures *sw_pdf_pictures_new (void);
void sw_pdf_pictures_free (SwPdfPictures *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwPdfPictures, sw_pdf_pictures_free)
SwPdfPicture *sw_pdf_pictures_add (SwPdfPictures *self,
                                   SwFigure      *figure,
                                   double         width_pt,
                                   double         height_pt);
void sw_pdf_pictures_wait (SwPdfPictures *self);
guint sw_pdf_picture_get_id (SwPdfPicture *self,
                             SwPdfFile    *file);

G_END_DECLS
