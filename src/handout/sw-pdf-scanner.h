/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwPdfScanner:
 * @text: what is read
 * @length: its length
 * @at: where reading goes on: behind the last token
 *
 * Reads PDF token by token (ISO 32000-1, 7.2): objects and content streams alike.
 */
typedef struct
{
  const char *text;
  gsize length;
  gsize at;
} SwPdfScanner;

gboolean sw_pdf_scanner_next (SwPdfScanner *scanner,
                              gsize        *start);
gboolean sw_pdf_scanner_is (const SwPdfScanner *scanner,
                            gsize               start,
                            const char         *word);
gboolean sw_pdf_scanner_skip_value (SwPdfScanner *scanner,
                                    gsize        *start);
void sw_pdf_scanner_skip_image (SwPdfScanner *scanner);
gboolean sw_pdf_is_regular (char c);

G_END_DECLS
