/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pages.h"
#include "sw-pdf-pictures.h"

G_BEGIN_DECLS

/**
 * SwPdfFacts:
 * @title: of the document; names no client
 * @author: the clinic; may be ""
 * @subject: what kind of document it is
 * @language: BCP 47 tag
 * @date: ISO 8601 day
 * @field_pt: size of what is typed in
 *
 * What the file says about itself.
 */
typedef struct
{
  const char *title;
  const char *author;
  const char *subject;
  const char *language;
  const char *date;
  double field_pt;
} SwPdfFacts;

/**
 * SwPdfElement:
 * @tag: (unowned): an element of the structure, in the order the PDF has them
 * @has_box: whether its place is known
 * @box: left, bottom, right, top in PDF points
 * @page: the page it is on, from 0, when its place is known
 * @field: of an element of type Form
 * @field_name: (unowned) (nullable): of an element of type Form
 * @picture: (unowned) (nullable): what it shows, which has to be put there
 * @top_pt: where that picture begins, from the top of the page
 * @scale: how much larger than asked it is
 */
typedef struct
{
  const SwTag *tag;
  gboolean has_box;
  double box[4];
  int page;
  SwFieldKind field;
  const char *field_name;
  SwPdfPicture *picture;
  double top_pt;
  double scale;
} SwPdfElement;

GBytes *sw_pdf_new (const SwPages     *pages,
                    SwComposer        *composer,
                    const SwFurniture *furniture,
                    const SwPdfFacts  *facts,
                    GError           **error);
GBytes *sw_pdf_finish (GBytes           *pdf,
                       GArray           *elements,
                       const SwPdfFacts *facts,
                       GError          **error);
char *sw_pdf_format_numbers (const double *numbers,
                             guint         n);
GBytes *sw_pdf_mark_artifacts (const char      *content,
                               gsize            length,
                               const GPtrArray *drawn);

G_END_DECLS
