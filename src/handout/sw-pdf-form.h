/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pdf-file.h"
#include "sw-pdf.h"

G_BEGIN_DECLS

/**
 * SwPdfForm:
 * @file: the file
 * @pages: (unowned) (element-type guint): the numbers of its pages
 * @annotations: (element-type GString): of each page the fields so far; NULL for none
 * @fields: all fields so far
 * @numbers: what the table that leads from annotations to their elements is to have besides
 * @next_number: the next number of that table
 * @looks: (element-type utf8 guint): what fields look like, by kind and size; many are alike
 * @text_pt: size of what is typed in
 *
 * The fields of a PDF while they are added.
 */
typedef struct
{
  SwPdfFile *file;
  const GArray *pages;
  GPtrArray *annotations;
  GString *fields;
  GString *numbers;
  guint next_number;
  GHashTable *looks;
  double text_pt;
} SwPdfForm;

void sw_pdf_form_init (SwPdfForm    *form,
                       SwPdfFile    *file,
                       const GArray *pages,
                       double        text_pt);
void sw_pdf_form_add (SwPdfForm          *form,
                      guint               element_id,
                      const SwPdfElement *meant);
void sw_pdf_form_finish (SwPdfForm *form);

G_END_DECLS
