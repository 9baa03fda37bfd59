/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The entry for the clinic's record. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-day-name.h"
#include "sw-enum-types.h"
#include "sw-precautions.h"
#include "sw-record-text.h"

#define WIDEST 78

static void
assert_narrow (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    g_assert_cmpint (g_utf8_strlen (lines[i], -1), <=, WIDEST);
}

static void
add_limits (GListStore *limits)
{
  g_autoptr (SwLimit) range = sw_limit_new (SW_LIMIT_KIND_RANGE);
  g_autoptr (SwLimit) weight = sw_limit_new (SW_LIMIT_KIND_WEIGHT_BEARING);
  g_autoptr (SwLimit) load = sw_limit_new (SW_LIMIT_KIND_LOAD);
  g_autoptr (SwLimit) surgery = sw_limit_new (SW_LIMIT_KIND_SURGERY);

  g_object_set (range, "side", SW_BODY_SIDE_RIGHT, "from-deg", 0.0, "to-deg", 90.0, "note", "letter of 3 November", NULL);
  g_object_set (weight, "side", SW_BODY_SIDE_LEFT, "bearing", SW_BEARING_PART, "kg", 20.0, NULL);
  g_object_set (load, "region", SW_REGION_SHOULDER, "kg", 2.5, NULL);
  g_object_set (surgery, "name", "New knee", "date", "2026-10-12", NULL);
  g_list_store_append (limits, range);
  g_list_store_append (limits, weight);
  g_list_store_append (limits, load);
  g_list_store_append (limits, surgery);
}

static void
test_whole_entry (void)
{
  static const char *const wanted[] = {
    "Date: 2026-11-20\n",
    "Programme: 5e7a11c0\n",
    "Title: Steady on your feet\n",
    "Goals:\n- Walk to the allotment and back without a stick.\n",
    "- high blood pressure\n",
    "- risk of falling\n",
    "Limits:\n- right: from 0° of knee flexion to 90° of knee flexion (letter of 3 November)\n",
    "- left: weight on the leg: part of the weight, at most 20 kg (44.1 lb)\n",
    "- shoulder, load at most 2.5 kg (5.5 lb)\n",
    "- operation “New knee” on 2026-10-12\n",
    "Session: Morning; days: Monday, Wednesday, Friday; ",
    "- Heel raise at the counter: 3 x 8-12",
    "  Note: Your right calf is the weaker one",
    "- Sit down and get your breath back: rest 90 s\n",
    "- Up and down: circuit, 2 rounds, rest 60 s between rounds\n",
    "  - Ankle rocks: 1 x 15\n",
    "Self-check: How long can you stand on one leg",
    "Findings kept, with reason:\n- precaution:fall-risk:i3: Rail beside her (Sam Hollis, 2026-11-19)\n",
  };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwAnswer) answer
      = sw_answer_new ("precaution:fall-risk:i3", "Rail beside her", "2026-11-19", "Sam Hollis", NULL);
  g_autofree char *text = NULL;
  const char *at;

  g_list_store_append (sw_programme_get_answers (programme), answer);
  add_limits (sw_programme_get_limits (programme));
  text = sw_record_text (programme, "2026-11-20");
  assert_narrow (text);
  g_assert_true (g_utf8_validate (text, -1, NULL));
  at = text;
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      const char *found = strstr (at, wanted[i]);

      if (found == NULL)
        g_error ("missing or too early: %s", wanted[i]);
      at = found + strlen (wanted[i]);
    }
}

/* What has no title is called by its kind, and nothing is said of rests that there are not. */
static void
test_untitled (void)
{
  static const char *const wanted[] = {
    "\nSession: days: Monday, Wednesday, Friday; ", "\n- Rest 90 s\n", "\n- Circuit: 2 rounds\n", "\n- Self-check\n",
  };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autofree char *text = NULL;

  g_object_set (session, "title", "", NULL);
  for (guint i = 0; i < items->len; i++)
    {
      g_object_set (items->pdata[i], "title", "", NULL);
      if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_CIRCUIT)
        g_object_set (items->pdata[i], "rest-seconds", 0, NULL);
    }

  text = sw_record_text (programme, "2026-11-20");
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (strstr (text, wanted[i]) == NULL)
      g_error ("missing: %s", wanted[i]);
}

/* Precautions and days are told in the words that the window has for them. */
static void
test_words (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autofree char *text = NULL;

  g_object_set (session, "days", (SwSet) 0x7f, NULL);
  g_object_set (sw_programme_get_client (programme), "precautions", ~(SwSet) 0, "other-precautions", "", NULL);
  text = sw_record_text (programme, "2026-11-20");
  for (int i = 0; i < sw_term_get_n_values (SW_TYPE_PRECAUTION); i++)
    {
      g_autofree char *start = g_strndup (sw_precaution_get_name ((SwPrecaution) i), 60);
      g_autofree char *line = g_strconcat ("\n- ", start, NULL);

      if (strstr (text, line) == NULL)
        g_error ("missing: %s", line);
    }
  for (int i = 0; i < 7; i++)
    g_assert_nonnull (strstr (text, sw_day_get_name ((SwDay) i)));
}

static void
test_narrow_whatever_is_typed (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GString) word = g_string_new (NULL);
  g_autofree char *text = NULL;

  for (int i = 0; i < 90; i++)
    g_string_append (word, "\303\274b");
  g_object_set (programme, "title", word->str, NULL);
  g_object_set (sw_programme_get_client (programme), "goals", word->str, "other-precautions", word->str, NULL);
  for (guint i = 0; i < items->len; i++)
    g_object_set (g_ptr_array_index (items, i), "note", word->str, NULL);

  text = sw_record_text (programme, "2026-11-20");
  assert_narrow (text);
  g_assert_true (g_utf8_validate (text, -1, NULL));
}

static void
test_empty_programme (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new ("0123456789");
  g_autofree char *text = sw_record_text (programme, "2026-11-20");

  g_assert_cmpstr (text, ==, "Home exercise programme\nDate: 2026-11-20\nProgramme: 01234567\n");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record-text/whole-entry", test_whole_entry);
  g_test_add_func ("/record-text/untitled", test_untitled);
  g_test_add_func ("/record-text/words", test_words);
  g_test_add_func ("/record-text/narrow-whatever-is-typed", test_narrow_whatever_is_typed);
  g_test_add_func ("/record-text/empty-programme", test_empty_programme);
  return g_test_run ();
}
