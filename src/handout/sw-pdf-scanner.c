/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the tokens of a PDF begin and end. */
#include "config.h"

#include <string.h>

#include "sw-pdf-scanner.h"

typedef enum
{
  REGULAR,
  SPACE,
  DELIMITER,
} Class;

static const guint8 classes[256] = {
  ['\0'] = SPACE,    ['\t'] = SPACE,    ['\n'] = SPACE,    ['\f'] = SPACE,
  ['\r'] = SPACE,    [' '] = SPACE,     ['('] = DELIMITER, [')'] = DELIMITER,
  ['<'] = DELIMITER, ['>'] = DELIMITER, ['['] = DELIMITER, [']'] = DELIMITER,
  ['{'] = DELIMITER, ['}'] = DELIMITER, ['/'] = DELIMITER, ['%'] = DELIMITER,
};

static Class
class_of (char c)
{
  return (Class)classes[(guchar)c];
}

/**
 * sw_pdf_is_regular:
 *
 * Returns: whether two tokens run into one another where one ends and the other begins with such characters
 */
gboolean
sw_pdf_is_regular (char c)
{
  return class_of (c) == REGULAR;
}

static void
skip_string (SwPdfScanner *scanner)
{
  int depth = 0;

  for (; scanner->at < scanner->length; scanner->at++)
    {
      char c = scanner->text[scanner->at];

      if (c == '\\')
        scanner->at++;
      else if (c == '(')
        depth++;
      else if (c == ')' && --depth == 0)
        {
          scanner->at++;
          return;
        }
    }
  scanner->at = MIN (scanner->at, scanner->length);
}

static void
skip_until (SwPdfScanner *scanner,
            const char   *ends)
{
  while (scanner->at < scanner->length && strchr (ends, scanner->text[scanner->at]) == NULL)
    scanner->at++;
}

static void
skip_word (SwPdfScanner *scanner)
{
  while (scanner->at < scanner->length && class_of (scanner->text[scanner->at]) == REGULAR)
    scanner->at++;
}

/**
 * sw_pdf_scanner_next:
 * @start: (out): where the token begins; it ends where the scanner is then
 *
 * Moves past the next token.
 *
 * Returns: whether there was one
 */
gboolean
sw_pdf_scanner_next (SwPdfScanner *scanner,
                     gsize        *start)
{
  char c;

  while (scanner->at < scanner->length && class_of (scanner->text[scanner->at]) == SPACE)
    scanner->at++;
  if (scanner->at >= scanner->length)
    return FALSE;

  *start = scanner->at;
  c = scanner->text[scanner->at];
  if (class_of (c) == REGULAR)
    skip_word (scanner);
  else if (c == '(')
    skip_string (scanner);
  else if (c == '%')
    skip_until (scanner, "\r\n");
  else if ((c == '<' || c == '>') && scanner->at + 1 < scanner->length && scanner->text[scanner->at + 1] == c)
    scanner->at += 2;
  else if (c == '<')
    {
      skip_until (scanner, ">");
      scanner->at = MIN (scanner->at + 1, scanner->length);
    }
  else
    {
      scanner->at++;
      if (c == '/')
        skip_word (scanner);
    }

  return TRUE;
}

/* Where a reference starts with the number that was just read, moves past it: 12 0 R. */
static void
skip_rest_of_reference (SwPdfScanner *scanner)
{
  SwPdfScanner ahead = *scanner;
  gsize start;

  if (sw_pdf_scanner_next (&ahead, &start) && g_ascii_isdigit (ahead.text[start])
      && sw_pdf_scanner_next (&ahead, &start) && sw_pdf_scanner_is (&ahead, start, "R"))
    *scanner = ahead;
}

/**
 * sw_pdf_scanner_skip_value:
 * @start: (out): where it begins
 *
 * Moves past a whole value: a dictionary, an array, a reference or what is one token.
 *
 * Returns: whether there was one
 */
gboolean
sw_pdf_scanner_skip_value (SwPdfScanner *scanner,
                           gsize        *start)
{
  gsize token;
  int depth = 0;

  do
    if (!sw_pdf_scanner_next (scanner, start))
      return FALSE;
  while (scanner->text[*start] == '%');

  token = *start;
  do
    {
      if (sw_pdf_scanner_is (scanner, token, "<<") || scanner->text[token] == '[')
        depth++;
      else if (sw_pdf_scanner_is (scanner, token, ">>") || scanner->text[token] == ']')
        depth--;
      else if (depth == 0 && g_ascii_isdigit (scanner->text[token]))
        skip_rest_of_reference (scanner);
    }
  while (depth > 0 && sw_pdf_scanner_next (scanner, &token));

  return depth == 0;
}

/**
 * sw_pdf_scanner_skip_image:
 *
 * Behind ID: moves past the bytes of an image within a content stream, until EI stands alone.
 */
void
sw_pdf_scanner_skip_image (SwPdfScanner *scanner)
{
  for (; scanner->at + 3 < scanner->length; scanner->at++)
    if (class_of (scanner->text[scanner->at]) == SPACE
        && strncmp (scanner->text + scanner->at + 1, "EI", 2) == 0
        && class_of (scanner->text[scanner->at + 3]) == SPACE)
      {
        scanner->at += 3;
        return;
      }
  scanner->at = scanner->length;
}
