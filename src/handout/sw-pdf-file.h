/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pdf-object.h"

G_BEGIN_DECLS

/**
 * SwPdfFile:
 * @bytes: the file that was read
 * @objects: (element-type SwPdfObject): its objects by their numbers, and those that were added
 * @trailer: where to begin
 *
 * A PDF taken apart, to be changed and written again.
 */
typedef struct
{
  GBytes *bytes;
  GArray *objects;
  SwPdfObject trailer;
} SwPdfFile;

SwPdfFile *sw_pdf_file_new (GBytes *bytes);
void sw_pdf_file_free (SwPdfFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwPdfFile, sw_pdf_file_free)

SwPdfObject *sw_pdf_file_get (SwPdfFile *self,
                              guint      id);
guint sw_pdf_file_find (const SwPdfObject *from,
                        const char        *key);
GArray *sw_pdf_file_find_all (const char *value);
guint sw_pdf_file_add (SwPdfFile *self,
                       char      *text);
GBytes *sw_pdf_file_write (SwPdfFile *self);

G_END_DECLS
