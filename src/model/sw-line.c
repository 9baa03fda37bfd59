/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading a typed line bit by bit. Each function takes what it knows from the place it is given, spaces before
 * it included, and moves the place on, or leaves it where it was. */
#include "config.h"

#include <stdarg.h>
#include <string.h>

#include "sw-line.h"

/**
 * sw_line_simplify:
 * @line: what was typed, valid UTF-8
 *
 * Gives what has several spellings one: small letters, one cross, one dash, one space.
 *
 * Returns: (transfer full): the text to take parts from
 */
char *
sw_line_simplify (const char *line)
{
  GString *text = g_string_new (NULL);

  for (const char *p = line; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c == 0x00d7 || c == 0x2715)
        c = 'x';
      else if (c == 0x2010 || c == 0x2011 || c == 0x2012 || c == 0x2013 || c == 0x2014 || c == 0x2212)
        c = '-';
      else if (c == 0x2264)
        c = '<';
      else if (g_unichar_isspace (c) || c == 0x00b7)
        c = ' ';
      else
        c = g_unichar_tolower (c);
      g_string_append_unichar (text, c);
    }

  return g_string_free (text, FALSE);
}

/**
 * sw_line_skip_spaces:
 * @at: (inout): the place in a simplified line
 */
void
sw_line_skip_spaces (const char **at)
{
  while (**at == ' ')
    (*at)++;
}

/**
 * sw_line_take_char:
 * @at: (inout): the place in a simplified line
 * @c: a character
 *
 * Returns: whether @c stands here
 */
gboolean
sw_line_take_char (const char **at,
                   char         c)
{
  const char *p = *at;

  while (*p == ' ')
    p++;
  if (*p != c)
    return FALSE;

  *at = p + 1;
  return TRUE;
}

/**
 * sw_line_take_word:
 * @at: (inout): the place in a simplified line
 * @first: a word
 * @...: further words, then NULL
 *
 * Returns: whether one of the words stands here whole
 */
gboolean
sw_line_take_word (const char **at,
                   const char  *first,
                   ...)
{
  const char *p = *at;
  gboolean found = FALSE;
  va_list args;

  while (*p == ' ')
    p++;

  va_start (args, first);
  for (const char *word = first; word != NULL && !found; word = va_arg (args, const char *))
    {
      gsize length = strlen (word);

      if (strncmp (p, word, length) == 0 && !g_unichar_isalpha (g_utf8_get_char (p + length)))
        {
          *at = p + length;
          found = TRUE;
        }
    }
  va_end (args);

  return found;
}

/**
 * sw_line_take_int:
 * @at: (inout): the place in a simplified line
 * @value: (out): the number; 99999 for one that is longer
 *
 * Takes digits, or a number up to twelve as a word.
 *
 * Returns: whether a whole number stands here
 */
gboolean
sw_line_take_int (const char **at,
                  int         *value)
{
  static const char * const words[] = {
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
  };
  const char *p = *at;
  int number = 0;

  while (*p == ' ')
    p++;

  if (!g_ascii_isdigit (*p))
    {
      for (guint i = 0; i < G_N_ELEMENTS (words); i++)
        {
          if (sw_line_take_word (at, words[i], NULL))
            {
              *value = (int) i + 1;
              return TRUE;
            }
        }
      return FALSE;
    }

  for (; g_ascii_isdigit (*p); p++)
    number = MIN (number * 10 + (*p - '0'), 99999);

  *at = p;
  *value = number;
  return TRUE;
}

/**
 * sw_line_take_decimal:
 * @at: (inout): the place in a simplified line
 * @value: (out): the number
 *
 * Takes a number with a decimal point or comma, of at most as many digits as a double holds exactly.
 *
 * Returns: whether a number stands here
 */
gboolean
sw_line_take_decimal (const char **at,
                      double      *value)
{
  char digits[16];
  gsize n = 0;
  const char *p = *at;

  while (*p == ' ')
    p++;
  while (g_ascii_isdigit (*p) && n < 7)
    digits[n++] = *p++;
  if (n == 0)
    return FALSE;
  if ((*p == '.' || *p == ',') && g_ascii_isdigit (p[1]))
    {
      digits[n++] = '.';
      p++;
      while (g_ascii_isdigit (*p) && n < sizeof digits - 1)
        digits[n++] = *p++;
    }
  digits[n] = '\0';

  *at = p;
  *value = g_ascii_strtod (digits, NULL);
  return TRUE;
}

/**
 * sw_line_take_time_unit:
 * @at: (inout): the place in a simplified line
 *
 * Returns: how many seconds the unit of time that stands here is, 1 or 60, or 0 when none does
 */
int
sw_line_take_time_unit (const char **at)
{
  if (sw_line_take_word (at, "s", "sec", "secs", "second", "seconds", NULL))
    return 1;
  if (sw_line_take_word (at, "min", "mins", "minute", "minutes", NULL))
    return 60;

  return 0;
}

/**
 * sw_line_take_seconds:
 * @at: (inout): the place in a simplified line
 * @seconds: (out): the time
 *
 * Takes "60", "60 s", "1 min", "1.5 min" or "1:30".
 *
 * Returns: whether a time stands here
 */
gboolean
sw_line_take_seconds (const char **at,
                      int         *seconds)
{
  const char *start = *at;
  double decimal;
  int unit;

  if (sw_line_take_decimal (at, &decimal) && sw_line_take_word (at, "min", "mins", "minute", "minutes", NULL))
    {
      *seconds = (int) (decimal * 60.0 + 0.5);
      return TRUE;
    }

  *at = start;
  if (!sw_line_take_int (at, seconds))
    return FALSE;
  if (**at == ':' && g_ascii_isdigit ((*at)[1]))
    {
      int rest;

      (*at)++;
      if (!sw_line_take_int (at, &rest) || rest > 59)
        return FALSE;
      *seconds = *seconds * 60 + rest;
      return TRUE;
    }

  unit = sw_line_take_time_unit (at);
  if (unit != 0)
    *seconds *= unit;
  return TRUE;
}

/**
 * sw_line_take_range:
 * @at: (inout): the place in a simplified line
 * @low: (out): the lower number
 * @high: (out): the upper, or the same
 *
 * Takes "12", "8-12" or "8 to 12".
 *
 * Returns: whether a number stands here
 */
gboolean
sw_line_take_range (const char **at,
                    int         *low,
                    int         *high)
{
  const char *after_low;

  if (!sw_line_take_int (at, low))
    return FALSE;

  *high = *low;
  after_low = *at;
  if ((sw_line_take_char (at, '-') || sw_line_take_word (at, "to", NULL)) && sw_line_take_int (at, high))
    return TRUE;

  *high = *low;
  *at = after_low;
  return TRUE;
}
