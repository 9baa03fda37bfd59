/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <qpdf/qpdf-c.h>

#include "sw-pdf.h"

G_BEGIN_DECLS

/**
 * SwPdfForm:
 * @q: the file
 * @fields: its fields so far
 * @numbers: the file's table that leads from annotations to their elements
 * @next_number: the next number of that table
 * @looks: (element-type utf8 qpdf_oh): what fields look like, by kind and size; many are alike
 * @text_pt: size of what is typed in
 *
 * The fields of a PDF while they are added.
 */
typedef struct
{
  qpdf_data q;
  qpdf_oh fields;
  qpdf_oh numbers;
  int next_number;
  GHashTable *looks;
  double text_pt;
} SwPdfForm;

void sw_pdf_form_init (SwPdfForm *form,
                       qpdf_data  q,
                       double     text_pt);
void sw_pdf_form_add (SwPdfForm          *form,
                      qpdf_oh             element,
                      const SwPdfElement *meant);
void sw_pdf_form_finish (SwPdfForm *form);

G_END_DECLS
