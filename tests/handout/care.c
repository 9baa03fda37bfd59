/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That whatever the checks find against a precaution is also told to the client, should the therapist keep it. */
#include "config.h"

#include <string.h>

#include "sw-care.h"
#include "sw-precautions.h"

static SwPhrases *
load_english (void)
{
  g_autoptr (GError) error = NULL;
  SwPhrases *phrases = sw_phrases_new ("en", &error);

  g_assert_no_error (error);
  return phrases;
}

static void
test_covers_the_rules (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  int n_precautions = sw_term_get_n_values (SW_TYPE_PRECAUTION);
  int n_cautions = sw_term_get_n_values (SW_TYPE_CAUTION);
  guint n_rules = 0;

  for (int precaution = 0; precaution < n_precautions; precaution++)
    for (int caution = 0; caution < n_cautions; caution++)
      {
        g_auto (GStrv) words = sw_care_words (phrases, SW_SET (precaution), SW_SET (caution));

        g_assert_cmpint (words[0] != NULL, ==, sw_care_covers (precaution, caution));
        if (sw_precautions_find_rule (precaution, caution) == NULL)
          continue;
        n_rules++;
        if (words[0] == NULL)
          {
            g_test_message ("%s with %s", sw_term_to_nick (SW_TYPE_PRECAUTION, precaution),
                            sw_term_to_nick (SW_TYPE_CAUTION, caution));
            g_test_fail ();
          }
      }
  g_assert_cmpuint (n_rules, >, 60);
}

static void
test_never_twice (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  SwSet everything = ~(SwSet) 0;
  g_auto (GStrv) words = sw_care_words (phrases, everything, everything);
  g_auto (GStrv) none = sw_care_words (phrases, 0, everything);
  g_auto (GStrv) general = sw_care_general_words (phrases, everything);

  g_assert_null (none[0]);
  g_assert_nonnull (general[0]);
  for (guint i = 0; words[i] != NULL; i++)
    for (guint j = i + 1; words[j] != NULL; j++)
      g_assert_cmpstr (words[i], !=, words[j]);
}

/* The page may lie open on a table: it must not name what the client has. */
static void
test_names_no_condition (void)
{
  static const char *const conditions[]
      = { "blood pressure", "osteoporosis", "bone", "pregnan", "hernia", "diabet", "insulin", "fracture", "surgery" };
  g_autoptr (SwPhrases) phrases = load_english ();
  SwSet everything = ~(SwSet) 0;
  g_auto (GStrv) words = sw_care_words (phrases, everything, everything);
  g_auto (GStrv) general = sw_care_general_words (phrases, everything);
  g_autofree char *first = g_strjoinv (" ", words);
  g_autofree char *second = g_strjoinv (" ", general);
  g_autofree char *all = g_strjoin (" ", first, second, NULL);
  g_autofree char *lower = g_utf8_strdown (all, -1);

  for (guint i = 0; i < G_N_ELEMENTS (conditions); i++)
    g_assert_null (strstr (lower, conditions[i]));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/care/covers-the-rules", test_covers_the_rules);
  g_test_add_func ("/care/never-twice", test_never_twice);
  g_test_add_func ("/care/names-no-condition", test_names_no_condition);
  return g_test_run ();
}
