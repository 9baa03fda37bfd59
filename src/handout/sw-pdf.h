/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pages.h"

G_BEGIN_DECLS

/**
 * SwPdfFacts:
 * @title: of the document; names no client
 * @author: the clinic; may be ""
 * @subject: what kind of document it is
 * @language: BCP 47 tag
 * @date: ISO 8601 day
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
} SwPdfFacts;

/**
 * SwPdfElement:
 * @tag: (unowned): an element of the structure, in the order the PDF has them
 * @has_box: whether its place is known
 * @box: left, bottom, right, top in PDF points
 */
typedef struct
{
  const SwTag *tag;
  gboolean has_box;
  double box[4];
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
GBytes *sw_pdf_mark_artifacts (const char *content,
                               gsize       length);

G_END_DECLS
