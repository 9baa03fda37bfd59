/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks everything painted outside the structure (page numbers, rules, frames) as an artifact, so that assistive
 * technology passes over it. Works on the content stream of one page, token by token. */
#include "config.h"

#include <string.h>

#include "sw-pdf.h"

typedef struct
{
  const char *text;
  gsize length;
  gsize at;
} Scanner;

typedef struct
{
  GByteArray *out;
  GArray *marks;
  int n_structured;
  gsize piece;
  gboolean paints;
} Marker;

static gboolean
is_space (char c)
{
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}

static gboolean
is_delimiter (char c)
{
  return c != '\0' && strchr ("()<>[]{}/%", c) != NULL;
}

static void
skip_string (Scanner *scanner)
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
}

static void
skip_until (Scanner    *scanner,
            const char *ends)
{
  while (scanner->at < scanner->length && strchr (ends, scanner->text[scanner->at]) == NULL)
    scanner->at++;
}

static void
skip_word (Scanner *scanner)
{
  while (scanner->at < scanner->length && !is_space (scanner->text[scanner->at])
         && !is_delimiter (scanner->text[scanner->at]))
    scanner->at++;
}

/* Behind ID: the image's own bytes, until EI stands alone. */
static void
skip_inline_image (Scanner *scanner)
{
  for (; scanner->at + 3 < scanner->length; scanner->at++)
    if (is_space (scanner->text[scanner->at]) && strncmp (scanner->text + scanner->at + 1, "EI", 2) == 0
        && is_space (scanner->text[scanner->at + 3]))
      {
        scanner->at += 3;
        return;
      }
  scanner->at = scanner->length;
}

/* Moves past the next token. Returns whether there was one. */
static gboolean
next_token (Scanner *scanner,
            gsize   *start)
{
  char c;

  while (scanner->at < scanner->length && is_space (scanner->text[scanner->at]))
    scanner->at++;
  if (scanner->at >= scanner->length)
    return FALSE;

  *start = scanner->at;
  c = scanner->text[scanner->at];
  if (c == '(')
    skip_string (scanner);
  else if (c == '%')
    skip_until (scanner, "\r\n");
  else if (c == '<' && scanner->at + 1 < scanner->length && scanner->text[scanner->at + 1] == '<')
    scanner->at += 2;
  else if (c == '<')
    {
      skip_until (scanner, ">");
      scanner->at = MIN (scanner->at + 1, scanner->length);
    }
  else if (c == '/')
    {
      scanner->at++;
      skip_word (scanner);
    }
  else if (is_delimiter (c))
    scanner->at++;
  else
    skip_word (scanner);

  return TRUE;
}

static gboolean
token_is (const Scanner *scanner,
          gsize          start,
          const char    *word)
{
  return scanner->at - start == strlen (word) && strncmp (scanner->text + start, word, scanner->at - start) == 0;
}

static gboolean
is_operator (const Scanner *scanner,
             gsize          start)
{
  char c = scanner->text[start];

  if (token_is (scanner, start, "true") || token_is (scanner, start, "false") || token_is (scanner, start, "null"))
    return FALSE;
  return g_ascii_isalpha (c) || c == '\'' || c == '"';
}

static gboolean
paints (const Scanner *scanner,
        gsize          start)
{
  static const char *const painting[]
      = { "f", "F", "f*", "B", "B*", "b", "b*", "S", "s", "Tj", "TJ", "'", "\"", "Do", "sh", "ID" };

  for (guint i = 0; i < G_N_ELEMENTS (painting); i++)
    if (token_is (scanner, start, painting[i]))
      return TRUE;

  return FALSE;
}

static void
append (Marker     *marker,
        const char *text,
        gsize       length)
{
  g_byte_array_append (marker->out, (const guint8 *) text, (guint) length);
}

static void
end_piece (Marker        *marker,
           const Scanner *scanner,
           gsize          end)
{
  if (marker->paints)
    append (marker, "/Artifact BMC\n", strlen ("/Artifact BMC\n"));
  append (marker, scanner->text + marker->piece, end - marker->piece);
  if (marker->paints)
    append (marker, "\nEMC\n", strlen ("\nEMC\n"));
  marker->piece = end;
  marker->paints = FALSE;
}

static void
mark_begins (Marker        *marker,
             const Scanner *scanner,
             gsize          operands,
             gboolean       structured)
{
  if (structured && marker->n_structured++ == 0)
    end_piece (marker, scanner, operands);
  g_array_append_val (marker->marks, structured);
}

static void
mark_ends (Marker        *marker,
           const Scanner *scanner)
{
  gboolean structured;

  if (marker->marks->len == 0)
    return;
  structured = g_array_index (marker->marks, gboolean, marker->marks->len - 1);
  g_array_set_size (marker->marks, marker->marks->len - 1);
  if (structured && --marker->n_structured == 0)
    {
      append (marker, scanner->text + marker->piece, scanner->at - marker->piece);
      append (marker, "\n", 1);
      marker->piece = scanner->at;
    }
}

/**
 * sw_pdf_mark_artifacts:
 * @content: (array length=length): the content stream of a page, decoded
 * @length: its length
 *
 * Cuts only where content of a structure element begins or ends; what lies between and paints becomes an artifact.
 * Marks without a place in the structure are not cut at: they may lie within a text object.
 *
 * Returns: (transfer full): the new content stream
 */
GBytes *
sw_pdf_mark_artifacts (const char *content,
                       gsize       length)
{
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (gboolean));
  Scanner scanner = { content, length, 0 };
  Marker marker = { .out = g_byte_array_new (), .marks = marks };
  gsize start = 0;
  gsize operands = 0;
  gboolean has_operands = FALSE;
  gboolean structured = FALSE;

  while (next_token (&scanner, &start))
    {
      if (!has_operands)
        operands = start;
      has_operands = TRUE;
      if (token_is (&scanner, start, "/MCID"))
        structured = TRUE;
      if (!is_operator (&scanner, start))
        continue;

      if (token_is (&scanner, start, "BDC") || token_is (&scanner, start, "BMC"))
        mark_begins (&marker, &scanner, operands, structured);
      else if (token_is (&scanner, start, "EMC"))
        mark_ends (&marker, &scanner);
      else if (paints (&scanner, start) && marker.n_structured == 0)
        marker.paints = TRUE;
      if (token_is (&scanner, start, "ID"))
        skip_inline_image (&scanner);
      has_operands = FALSE;
      structured = FALSE;
    }

  end_piece (&marker, &scanner, length);
  return g_byte_array_free_to_bytes (marker.out);
}
