/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks everything painted outside the structure (page numbers, rules, frames) as an artifact, so that assistive
 * technology passes over it, and writes the paths of the pictures, most of a file, no finer than any printer prints.
 * Works on the content stream of one page, token by token. */
#include "config.h"

#include <string.h>

#include "sw-pdf.h"

typedef struct
{
  const char *text;
  gsize length;
  gsize at;
} Scanner;

#define MOST_OPERANDS 6

/* @held is what has been taken of the piece that @content is at, up to @taken. */
typedef struct
{
  GByteArray *out;
  GByteArray *held;
  GArray *marks;
  int n_structured;
  gsize taken;
  gboolean paints;
} Marker;

/* Where the numbers before an operator are, and how deep in saved states the scale is another than that of points: -1
 * where it is not. */
typedef struct
{
  gsize starts[MOST_OPERANDS];
  gsize ends[MOST_OPERANDS];
  guint n;
  int depth;
  int scaled_at;
} Numbers;

static gboolean
is_space (char c)
{
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}

static gboolean
is_delimiter (char c)
{
  switch (c)
    {
    case '(':
    case ')':
    case '<':
    case '>':
    case '[':
    case ']':
    case '{':
    case '}':
    case '/':
    case '%':
      return TRUE;
    default:
      return FALSE;
    }
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

  if (c == '\'' || c == '"')
    return TRUE;
  return g_ascii_isalpha (c) && !token_is (scanner, start, "true") && !token_is (scanner, start, "false")
         && !token_is (scanner, start, "null");
}

static gboolean
paints (const Scanner *scanner,
        gsize          start)
{
  static const char *const painting[]
      = { "f", "F", "f*", "B", "B*", "b", "b*", "S", "s", "Tj", "TJ", "'", "\"", "Do", "sh", "ID" };

  if (scanner->at - start > strlen ("f*"))
    return FALSE;
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
hold (Marker        *marker,
      const Scanner *scanner,
      gsize          end)
{
  g_byte_array_append (marker->held, (const guint8 *) scanner->text + marker->taken, (guint) (end - marker->taken));
  marker->taken = end;
}

static void
let_go (Marker        *marker,
        const Scanner *scanner,
        gsize          end)
{
  hold (marker, scanner, end);
  g_byte_array_append (marker->out, marker->held->data, marker->held->len);
  g_byte_array_set_size (marker->held, 0);
}

static void
end_piece (Marker        *marker,
           const Scanner *scanner,
           gsize          end)
{
  if (marker->paints)
    append (marker, "/Artifact BMC\n", strlen ("/Artifact BMC\n"));
  let_go (marker, scanner, end);
  if (marker->paints)
    append (marker, "\nEMC\n", strlen ("\nEMC\n"));
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
      let_go (marker, scanner, scanner->at);
      append (marker, "\n", 1);
    }
}

static void
note_number (Numbers       *numbers,
             const Scanner *scanner,
             gsize          start)
{
  if (numbers->n < MOST_OPERANDS)
    {
      numbers->starts[numbers->n] = start;
      numbers->ends[numbers->n] = scanner->at;
    }
  numbers->n++;
}

/* Whether the operands are those of a matrix that changes no length. */
static gboolean
keeps_scale (const Numbers *numbers,
             const Scanner *scanner)
{
  static const char *const wanted[] = { "1", "0", "0", "1" };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      const char *text = scanner->text + numbers->starts[i];
      gsize length = numbers->ends[i] - numbers->starts[i];

      if (i == 3 && *text == '-')
        {
          text++;
          length--;
        }
      if (length != 1 || *text != *wanted[i])
        return FALSE;
    }
  return TRUE;
}

static void
follow_scale (Numbers       *numbers,
              const Scanner *scanner,
              gsize          start)
{
  if (token_is (scanner, start, "q"))
    numbers->depth++;
  else if (token_is (scanner, start, "Q"))
    {
      if (numbers->depth == numbers->scaled_at)
        numbers->scaled_at = -1;
      numbers->depth = MAX (numbers->depth - 1, 0);
    }
  else if (token_is (scanner, start, "cm") && numbers->scaled_at < 0
           && !(numbers->n == MOST_OPERANDS && keeps_scale (numbers, scanner)))
    numbers->scaled_at = numbers->depth;
}

/* Adds the number rounded to hundredths of a point, a tenth of what the finest printer tells apart. Returns FALSE, with
 * nothing added, where it is no plain number. */
static gboolean
add_rounded (GByteArray *out,
             const char *text,
             gsize       length)
{
  char digits[16];
  char *first = digits + sizeof digits;
  gboolean negative = length > 0 && *text == '-';
  gint64 hundredths = 0;
  int n_decimals = -1;

  for (gsize i = negative; i < length; i++)
    {
      if (text[i] == '.' && n_decimals < 0)
        n_decimals = 0;
      else if (!g_ascii_isdigit (text[i]) || hundredths > G_MAXINT32 / 100)
        return FALSE;
      else if (n_decimals < 2)
        {
          hundredths = 10 * hundredths + (text[i] - '0');
          n_decimals += n_decimals >= 0;
        }
      else if (n_decimals++ == 2)
        hundredths += text[i] >= '5';
    }
  for (int i = MAX (n_decimals, 0); i < 2; i++)
    hundredths *= 10;

  negative = negative && hundredths > 0;
  for (int place = 0; place < 3 || hundredths > 0; place++, hundredths /= 10)
    {
      gboolean drops = place < 2 && first == digits + sizeof digits && hundredths % 10 == 0;

      if (place == 2 && first < digits + sizeof digits)
        *--first = '.';
      if (!drops)
        *--first = (char) ('0' + hundredths % 10);
    }
  if (negative)
    *--first = '-';
  g_byte_array_append (out, (const guint8 *) first, (guint) (digits + sizeof digits - first));
  return TRUE;
}

/* Rewrites the numbers before an operator that adds to a path. */
static void
round_path (Marker        *marker,
            const Scanner *scanner,
            const Numbers *numbers,
            gsize          start)
{
  char c = scanner->text[start];
  gsize length = scanner->at - start;
  guint wanted = length == 1 && (c == 'm' || c == 'l')   ? 2
                 : length == 1 && (c == 'v' || c == 'y') ? 4
                 : length == 1 && c == 'c'               ? 6
                 : token_is (scanner, start, "re")       ? 4
                                                         : 0;

  if (wanted == 0 || numbers->n != wanted || numbers->scaled_at >= 0)
    return;

  for (guint i = 0; i < wanted; i++)
    {
      hold (marker, scanner, numbers->starts[i]);
      if (add_rounded (marker->held, scanner->text + numbers->starts[i], numbers->ends[i] - numbers->starts[i]))
        marker->taken = numbers->ends[i];
    }
}

/**
 * sw_pdf_mark_artifacts:
 * @content: (array length=length): the content stream of a page, decoded
 * @length: its length
 *
 * Cuts only where content of a structure element begins or ends; what lies between and paints becomes an artifact.
 * Marks without a place in the structure are not cut at: they may lie within a text object. Places on paths are rounded
 * to hundredths of a point.
 *
 * Returns: (transfer full): the new content stream
 */
GBytes *
sw_pdf_mark_artifacts (const char *content,
                       gsize       length)
{
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (gboolean));
  Scanner scanner = { content, length, 0 };
  g_autoptr (GByteArray) held = g_byte_array_sized_new ((guint) length);
  Marker marker = { .out = g_byte_array_sized_new ((guint) length), .held = held, .marks = marks };
  Numbers numbers = { .scaled_at = -1 };
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
        {
          note_number (&numbers, &scanner, start);
          continue;
        }

      follow_scale (&numbers, &scanner, start);
      round_path (&marker, &scanner, &numbers, start);
      numbers.n = 0;
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
