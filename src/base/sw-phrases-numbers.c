/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers, times, days, lists and sentences as a language writes them. */
#include "config.h"

#include "sw-phrases.h"
#include "sw-units.h"

/**
 * sw_phrases_number:
 * @value: a finite number
 * @max_decimals: most digits behind the decimal sign, 0..6
 *
 * Returns: (transfer full): the number with the language's signs, without needless zeros
 */
char *
sw_phrases_number (SwPhrases *self,
                   double     value,
                   int        max_decimals)
{
  g_autofree char *text = sw_number_to_string (value, max_decimals);
  gboolean negative = *text == '-';
  g_auto (GStrv) parts = g_strsplit (negative ? text + 1 : text, ".", 2);
  g_autofree char *number = g_strjoinv (sw_phrases_get (self, "number.decimal"), parts);

  return negative ? g_strconcat (sw_phrases_get (self, "number.minus"), number, NULL) : g_steal_pointer (&number);
}

/**
 * sw_phrases_range:
 *
 * Returns: (transfer full): "8 to 12", or just "12" when both are the same
 */
char *
sw_phrases_range (SwPhrases *self,
                  int        low,
                  int        high)
{
  g_autofree char *low_text = g_strdup_printf ("%d", low);
  g_autofree char *high_text = g_strdup_printf ("%d", high);

  if (low == high)
    return g_steal_pointer (&high_text);

  return sw_phrases_format (self, "number.range", "low", low_text, "high", high_text, NULL);
}

/**
 * sw_phrases_time:
 * @seconds: 0 or more
 *
 * Returns: (transfer full): "45 seconds"; from two minutes on, whole minutes are told as minutes
 */
char *
sw_phrases_time (SwPhrases *self,
                 int        seconds)
{
  if (seconds >= 120 && seconds % 60 == 0)
    return sw_phrases_count (self, "time.minutes", seconds / 60, NULL);

  return sw_phrases_count (self, "time.seconds", seconds, NULL);
}

/**
 * sw_phrases_date:
 * @iso_day: a day as YYYY-MM-DD
 *
 * Returns: (transfer full): the day in words of the language; @iso_day itself when it is no such day
 */
char *
sw_phrases_date (SwPhrases  *self,
                 const char *iso_day)
{
  g_autofree char *stamp = g_strconcat (iso_day, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) moment = g_date_time_new_from_iso8601 (stamp, NULL);
  g_autofree char *month_key = NULL;
  g_autofree char *day = NULL;
  g_autofree char *year = NULL;

  if (moment == NULL)
    return g_strdup (iso_day);

  month_key = g_strdup_printf ("month.%d", g_date_time_get_month (moment));
  day = g_strdup_printf ("%d", g_date_time_get_day_of_month (moment));
  year = g_strdup_printf ("%d", g_date_time_get_year (moment));
  return sw_phrases_format (self, g_str_equal (day, "1") ? "date.first" : "date.day", "day", day, "month", sw_phrases_get (self, month_key), "year", year,
                            NULL);
}

/**
 * sw_phrases_list:
 * @words: (array zero-terminated=1): words or phrases
 *
 * Returns: (transfer full): "a", "a and b", "a, b and c"; "" for none
 */
char *
sw_phrases_list (SwPhrases          *self,
                 const char * const *words)
{
  guint n = g_strv_length ((char **) words);
  g_autofree char *text = g_strdup (n > 0 ? words[0] : "");

  for (guint i = 1; i < n; i++)
    {
      char *longer = sw_phrases_format (self, i + 1 == n ? "list.last" : "list.next", "before", text, "word",
                                        words[i], NULL);

      g_free (text);
      text = longer;
    }

  return g_steal_pointer (&text);
}

/**
 * sw_phrases_sentences:
 * @sentences: (array zero-terminated=1): whole sentences
 *
 * Returns: (transfer full): one after the other, with the space that the language puts between; "" for none
 */
char *
sw_phrases_sentences (SwPhrases          *self,
                      const char * const *sentences)
{
  g_autofree char *text = g_strdup (sentences[0] != NULL ? sentences[0] : "");

  for (guint i = 1; sentences[0] != NULL && sentences[i] != NULL; i++)
    {
      char *longer = sw_phrases_format (self, "list.sentence", "before", text, "sentence", sentences[i], NULL);

      g_free (text);
      text = longer;
    }

  return g_steal_pointer (&text);
}

/**
 * sw_phrases_capitalise:
 * @text: any text
 *
 * Returns: (transfer full): @text as a sentence begins, where the script has capitals
 */
char *
sw_phrases_capitalise (const char *text)
{
  gunichar first = g_utf8_get_char_validated (text, -1);
  GString *out;

  if (*text == '\0' || first == (gunichar) -1 || first == (gunichar) -2)
    return g_strdup (text);

  out = g_string_new (NULL);
  g_string_append_unichar (out, g_unichar_toupper (first));
  g_string_append (out, g_utf8_next_char (text));
  return g_string_free (out, FALSE);
}
