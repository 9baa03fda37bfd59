/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <string.h>

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
gboolean sw_pdf_scanner_skip_value (SwPdfScanner *scanner,
                                    gsize        *start);
void sw_pdf_scanner_skip_image (SwPdfScanner *scanner);
gboolean sw_pdf_is_regular (char c);

/**
 * sw_pdf_scanner_is:
 * @start: where the last token begins
 * @word: a word
 *
 * Here, since it is asked of every token of a page.
 *
 * Returns: whether the last token is @word
 */
static inline gboolean
sw_pdf_scanner_is (const SwPdfScanner *scanner,
                   gsize               start,
                   const char         *word)
{
  gsize length = strlen (word);

  return scanner->at - start == length && memcmp (scanner->text + start, word, length) == 0;
}

G_END_DECLS
