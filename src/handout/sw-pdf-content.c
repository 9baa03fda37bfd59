/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks everything painted outside the structure (page numbers, rules, frames) as an artifact, so that
 * assistive technology passes over it, and writes the paths of the pictures, most of a file, no finer than
 * any printer prints. Works on the content stream of one page, token by token. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-pdf-scanner.h"
#include "sw-pdf.h"

#define MOST_OPERANDS 6

/* @structured: whether it has a place in the structure; @mcid: its number there. */
typedef struct
{
  gboolean structured;
  guint mcid;
} Mark;

/* @held is what has been taken of the piece that @content is at, up to @taken. */
typedef struct
{
  GByteArray *out;
  GByteArray *held;
  GArray *marks;
  const GPtrArray *drawn;
  int n_structured;
  gsize taken;
  gboolean paints;
} Marker;

/* Where the numbers before an operator are, and how deep in saved states the scale is another than that of
 * points: -1 where it is not. */
typedef struct
{
  gsize starts[MOST_OPERANDS];
  gsize ends[MOST_OPERANDS];
  guint n;
  int depth;
  int scaled_at;
} Numbers;

static gboolean
is_operator (const SwPdfScanner *scanner,
             gsize               start)
{
  char c = scanner->text[start];

  if (c == '\'' || c == '"')
    return TRUE;
  return g_ascii_isalpha (c) && !sw_pdf_scanner_is (scanner, start, "true")
         && !sw_pdf_scanner_is (scanner, start, "false") && !sw_pdf_scanner_is (scanner, start, "null");
}

static gboolean
paints (const SwPdfScanner *scanner,
        gsize               start)
{
  static const char *const two_letters[] = { "f*", "B*", "b*", "Tj", "TJ", "Do", "sh", "ID" };
  gsize length = scanner->at - start;

  if (length == 1)
    return strchr ("fFBbSs'\"", scanner->text[start]) != NULL;
  for (guint i = 0; length == 2 && i < G_N_ELEMENTS (two_letters); i++)
    if (memcmp (scanner->text + start, two_letters[i], length) == 0)
      return TRUE;

  return FALSE;
}

static void
append (Marker     *marker,
        const char *text,
        gsize       length)
{
  g_byte_array_append (marker->out, (const guint8 *)text, (guint)length);
}

static void
hold (Marker             *marker,
      const SwPdfScanner *scanner,
      gsize               end)
{
  g_byte_array_append (marker->held, (const guint8 *)scanner->text + marker->taken,
                       (guint)(end - marker->taken));
  marker->taken = end;
}

static void
let_go (Marker             *marker,
        const SwPdfScanner *scanner,
        gsize               end)
{
  hold (marker, scanner, end);
  g_byte_array_append (marker->out, marker->held->data, marker->held->len);
  g_byte_array_set_size (marker->held, 0);
}

static void
end_piece (Marker             *marker,
           const SwPdfScanner *scanner,
           gsize               end)
{
  if (marker->paints)
    append (marker, "/Artifact BMC\n", strlen ("/Artifact BMC\n"));
  let_go (marker, scanner, end);
  if (marker->paints)
    append (marker, "\nEMC\n", strlen ("\nEMC\n"));
  marker->paints = FALSE;
}

static void
mark_begins (Marker             *marker,
             const SwPdfScanner *scanner,
             gsize               operands,
             Mark                mark)
{
  if (mark.structured && marker->n_structured++ == 0)
    end_piece (marker, scanner, operands);
  g_array_append_val (marker->marks, mark);
}

static void
mark_ends (Marker             *marker,
           const SwPdfScanner *scanner,
           gsize               start)
{
  Mark mark;
  const char *drawn = NULL;

  if (marker->marks->len == 0)
    return;
  mark = g_array_index (marker->marks, Mark, marker->marks->len - 1);
  g_array_set_size (marker->marks, marker->marks->len - 1);
  if (mark.structured && marker->drawn != NULL && mark.mcid < marker->drawn->len)
    drawn = g_ptr_array_index (marker->drawn, mark.mcid);
  if (drawn != NULL)
    {
      hold (marker, scanner, start);
      g_byte_array_append (marker->held, (const guint8 *)drawn, (guint)strlen (drawn));
    }
  if (mark.structured && --marker->n_structured == 0)
    {
      let_go (marker, scanner, scanner->at);
      append (marker, "\n", 1);
    }
}

static void
note_number (Numbers            *numbers,
             const SwPdfScanner *scanner,
             gsize               start)
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
keeps_scale (const Numbers      *numbers,
             const SwPdfScanner *scanner)
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
follow_scale (Numbers            *numbers,
              const SwPdfScanner *scanner,
              gsize               start)
{
  if (sw_pdf_scanner_is (scanner, start, "q"))
    numbers->depth++;
  else if (sw_pdf_scanner_is (scanner, start, "Q"))
    {
      if (numbers->depth == numbers->scaled_at)
        numbers->scaled_at = -1;
      numbers->depth = MAX (numbers->depth - 1, 0);
    }
  else if (sw_pdf_scanner_is (scanner, start, "cm") && numbers->scaled_at < 0
           && !(numbers->n == MOST_OPERANDS && keeps_scale (numbers, scanner)))
    numbers->scaled_at = numbers->depth;
}

/* Adds the number rounded to hundredths of a point, a tenth of what the finest printer tells apart. Returns
 * FALSE, with nothing added, where it is no plain number. */
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
        *--first = (char)('0' + hundredths % 10);
    }
  if (negative)
    *--first = '-';
  g_byte_array_append (out, (const guint8 *)first, (guint)(digits + sizeof digits - first));
  return TRUE;
}

/* Rewrites the numbers before an operator that adds to a path. */
static void
round_path (Marker             *marker,
            const SwPdfScanner *scanner,
            const Numbers      *numbers,
            gsize               start)
{
  char c = scanner->text[start];
  gsize length = scanner->at - start;
  guint wanted = length == 1 && (c == 'm' || c == 'l')      ? 2
                 : length == 1 && (c == 'v' || c == 'y')    ? 4
                 : length == 1 && c == 'c'                  ? 6
                 : sw_pdf_scanner_is (scanner, start, "re") ? 4
                                                            : 0;

  if (wanted == 0 || numbers->n != wanted || numbers->scaled_at >= 0)
    return;

  for (guint i = 0; i < wanted; i++)
    {
      hold (marker, scanner, numbers->starts[i]);
      if (add_rounded (marker->held, scanner->text + numbers->starts[i],
                       numbers->ends[i] - numbers->starts[i]))
        marker->taken = numbers->ends[i];
    }
}

/**
 * sw_pdf_mark_artifacts:
 * @content: (array length=length): the content stream of a page, decoded
 * @length: its length
 * @drawn: (nullable) (element-type utf8): what content of the structure ends with besides, by its number there; NULL
 *   where there is nothing
 *
 * Cuts only where content of a structure element begins or ends; what lies between and paints becomes an
 * artifact. Marks without a place in the structure are not cut at: they may lie within a text object. Places
 * on paths are rounded to hundredths of a point.
 *
 * Returns: (transfer full): the new content stream
 */
GBytes *
sw_pdf_mark_artifacts (const char      *content,
                       gsize            length,
                       const GPtrArray *drawn)
{
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  SwPdfScanner scanner = { content, length, 0 };
  g_autoptr (GByteArray) held = g_byte_array_sized_new ((guint)length);
  Marker marker = { .out = g_byte_array_sized_new ((guint)length), .held = held, .marks = marks, .drawn = drawn };
  Numbers numbers = { .scaled_at = -1 };
  gsize start = 0;
  gsize operands = 0;
  gboolean has_operands = FALSE;
  gboolean numbers_mark = FALSE;
  Mark mark = { FALSE, 0 };

  while (sw_pdf_scanner_next (&scanner, &start))
    {
      if (!has_operands)
        operands = start;
      has_operands = TRUE;
      if (numbers_mark)
        mark.mcid = (guint)strtoul (content + start, NULL, 10);
      numbers_mark = sw_pdf_scanner_is (&scanner, start, "/MCID");
      mark.structured |= numbers_mark;
      if (!is_operator (&scanner, start))
        {
          note_number (&numbers, &scanner, start);
          continue;
        }

      follow_scale (&numbers, &scanner, start);
      round_path (&marker, &scanner, &numbers, start);
      numbers.n = 0;
      if (sw_pdf_scanner_is (&scanner, start, "BDC") || sw_pdf_scanner_is (&scanner, start, "BMC"))
        mark_begins (&marker, &scanner, operands, mark);
      else if (sw_pdf_scanner_is (&scanner, start, "EMC"))
        mark_ends (&marker, &scanner, start);
      else if (paints (&scanner, start) && marker.n_structured == 0)
        marker.paints = TRUE;
      if (sw_pdf_scanner_is (&scanner, start, "ID"))
        sw_pdf_scanner_skip_image (&scanner);
      has_operands = FALSE;
      mark = (Mark){ FALSE, 0 };
    }

  end_piece (&marker, &scanner, length);
  return g_byte_array_free_to_bytes (marker.out);
}
