/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The small parts of a dose line that are told in many ways: sides, units, how often, tempo, limits. */
#include "config.h"

#include "sw-dose-words.h"

#include "sw-line.h"

/**
 * sw_dose_words_take_cross:
 * @at: (inout): what is still to be read
 *
 * Returns: whether a cross stood there, as between sets and repetitions
 */
gboolean
sw_dose_words_take_cross (const char **at)
{
  return sw_line_take_char (at, 'x') || sw_line_take_char (at, '*');
}

/**
 * sw_dose_words_take_per:
 * @at: (inout): what is still to be read
 *
 * Takes "day" or "week" with the little words before it.
 *
 * Returns: 'd', 'w', or 0 when neither stands there
 */
char
sw_dose_words_take_per (const char **at)
{
  const char *start = *at;

  if (sw_line_take_word (at, "daily", NULL))
    return 'd';
  if (sw_line_take_word (at, "weekly", NULL))
    return 'w';
  if (sw_line_take_word (at, "a", "per", "each", "every", "the", NULL) || sw_line_take_char (at, '/'))
    {
      if (sw_line_take_word (at, "day", NULL))
        return 'd';
      if (sw_line_take_word (at, "week", "wk", NULL))
        return 'w';
    }

  *at = start;
  return 0;
}

/**
 * sw_dose_words_take_body_side:
 * @at: (inout): what is still to be read
 *
 * Returns: the one side that is named, or %SW_BODY_SIDE_NONE
 */
SwBodySide
sw_dose_words_take_body_side (const char **at)
{
  SwBodySide side;

  if (sw_line_take_word (at, "right", "r", NULL))
    side = SW_BODY_SIDE_RIGHT;
  else if (sw_line_take_word (at, "left", "l", NULL))
    side = SW_BODY_SIDE_LEFT;
  else
    return SW_BODY_SIDE_NONE;

  sw_line_take_word (at, "side", "leg", "arm", "foot", "hand", NULL);
  sw_line_take_word (at, "only", NULL);
  return side;
}

/**
 * sw_dose_words_take_load_unit:
 * @at: (inout): what is still to be read
 * @unit: (out): the unit; untouched when there is none
 *
 * Returns: whether a unit of load is named
 */
gboolean
sw_dose_words_take_load_unit (const char **at,
                              SwLoadUnit  *unit)
{
  if (sw_line_take_word (at, "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", NULL))
    *unit = SW_LOAD_KG;
  else if (sw_line_take_word (at, "lb", "lbs", "pound", "pounds", NULL))
    *unit = SW_LOAD_LB;
  else if (sw_line_take_word (at, "n", "newton", "newtons", NULL))
    *unit = SW_LOAD_NEWTON;
  else
    return FALSE;

  return TRUE;
}

/**
 * sw_dose_words_take_tempo:
 * @at: (inout): what is still to be read
 * @compact: whether "2020" and "30x0" are a tempo, as after the word for it
 * @tempo: (out): the tempo; untouched when there is none
 *
 * Returns: whether three or four numbers of a tempo stand there
 */
gboolean
sw_dose_words_take_tempo (const char **at,
                          gboolean     compact,
                          SwTempo     *tempo)
{
  const char *start = *at;
  int value[4] = { 0, 0, 0, 0 };
  int n = 0;

  sw_line_skip_spaces (at);
  if (compact)
    {
      const char *p = *at;

      while (n < 4 && (g_ascii_isdigit (*p) || (*p == 'x' && n == 2)))
        {
          value[n++] = *p == 'x' ? -1 : *p - '0';
          p++;
        }
      if (n >= 3 && !g_ascii_isalnum (*p) && *p != '-' && *p != '/' && *p != ':')
        {
          *at = p;
          *tempo = (SwTempo) { TRUE, value[0], value[1], value[2], value[3] };
          return TRUE;
        }
      n = 0;
      value[3] = 0;
    }

  while (n < 4)
    {
      if (n == 2 && sw_line_take_char (at, 'x'))
        value[n++] = -1;
      else if (sw_line_take_int (at, &value[n]))
        n++;
      else
        break;
      if (n == 4 || !(sw_line_take_char (at, '-') || sw_line_take_char (at, '/')
                      || sw_line_take_char (at, ':')))
        break;
    }
  if (n < 3 || (*at)[-1] == '-' || (*at)[-1] == '/' || (*at)[-1] == ':')
    {
      *at = start;
      return FALSE;
    }

  *tempo = (SwTempo) { TRUE, value[0], value[1], value[2], n > 3 ? value[3] : 0 };
  return TRUE;
}

/**
 * sw_dose_words_take_rating:
 * @at: (inout): what is still to be read
 * @rating: (out): the number
 *
 * Takes the number of an effort or pain limit: "6", "up to 6", "at most 6 of 10".
 *
 * Returns: whether one stands there
 */
gboolean
sw_dose_words_take_rating (const char **at,
                           int         *rating)
{
  int ten;

  sw_line_take_word (at, "limit", "below", "under", "max", "maximum", NULL);
  if (sw_line_take_word (at, "up", NULL))
    sw_line_take_word (at, "to", NULL);
  if (sw_line_take_word (at, "at", NULL))
    sw_line_take_word (at, "most", NULL);
  if (sw_line_take_char (at, '<'))
    sw_line_take_char (at, '=');
  if (!sw_line_take_int (at, rating))
    return FALSE;

  if (sw_line_take_char (at, '/'))
    return sw_line_take_int (at, &ten) && ten == 10;
  if (sw_line_take_word (at, "of", "out of", NULL))
    return sw_line_take_int (at, &ten) && ten == 10;
  return TRUE;
}

/**
 * sw_tempo_from_string:
 * @text: three or four numbers such as "2-0-2" or "2-0-X-1"; "" for no tempo
 * @tempo: (out): the tempo; untouched on failure
 *
 * Returns: whether @text is a tempo, each phase from 0 to 60 seconds
 */
gboolean
sw_tempo_from_string (const char *text,
                      SwTempo    *tempo)
{
  g_autofree char *simple = NULL;
  SwTempo read = { 0 };
  const char *at;

  g_return_val_if_fail (text != NULL, FALSE);

  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  simple = sw_line_simplify (text);
  at = g_strstrip (simple);
  if (*at != '\0' && (!sw_dose_words_take_tempo (&at, TRUE, &read) || *at != '\0'))
    return FALSE;
  if (read.lower_s > 60 || read.low_pause_s > 60 || read.lift_s > 60 || read.top_pause_s > 60)
    return FALSE;

  *tempo = read;
  return TRUE;
}
