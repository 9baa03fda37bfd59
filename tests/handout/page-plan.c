/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The page plan on the pages: what each choice does to them, and what lies where. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-handout.h"
#include "sw-phrases.h"

#define DAY "2026-11-20"

static SwHandout *
lay_out (SwProgramme *programme)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

static char *
dump_planned (SwProgramme *programme,
              SwLayout     layout,
              SwSet        parts)
{
  g_autoptr (SwHandout) handout = NULL;

  g_object_set (sw_programme_get_page_plan (programme), "layout", layout, "parts", parts, NULL);
  handout = lay_out (programme);
  return sw_handout_dump (handout);
}

/* A part that a layout has changes the pages when it is left out; one that it has not changes nothing. */
static void
test_parts_of_layouts (void)
{
  static const SwLayout layouts[] = { SW_LAYOUT_FULL, SW_LAYOUT_SUMMARY };
  g_autoptr (SwFigureSpec) figure = handout_sample_new_figure (SW_FIGURE_MOTION_PRESS, SW_FIGURE_BREATH_NONE);
  g_autoptr (SwProgramme) programme = handout_sample_new (figure);

  g_object_set (sw_programme_get_progression (programme), "weeks", 4, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      SwSet all = SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_SIGNATURE) | SW_SET (SW_PAGE_PART_PLAN);
      SwSet possible = sw_handout_parts_of_layout (layouts[i]);
      g_autofree char *with_all = dump_planned (programme, layouts[i], all);

      for (int part = 0; part < sw_term_get_n_values (SW_TYPE_PAGE_PART); part++)
        {
          g_autofree char *without = dump_planned (programme, layouts[i], all & ~SW_SET (part));

          g_test_message ("layout %d, part %d", (int) layouts[i], part);
          g_assert_cmpint (g_strcmp0 (with_all, without) != 0, ==, (possible & SW_SET (part)) != 0);
        }
    }
}

static void
test_landscape (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);

  for (int layout = 0; layout < sw_term_get_n_values (SW_TYPE_LAYOUT); layout++)
    {
      g_autoptr (SwHandout) handout = NULL;

      g_object_set (sw_programme_get_page_plan (programme), "layout", layout, "landscape", TRUE, NULL);
      handout = lay_out (programme);
      g_assert_cmpint (sw_handout_get_page_width_pt (handout) > sw_handout_get_page_height_pt (handout), ==,
                       layout == SW_LAYOUT_SUMMARY);
    }
}

/* The item whose exercise has that name; NULL when none has, or several have. */
static const char *
find_id (GPtrArray  *items,
         SwClient   *client,
         const char *name)
{
  const char *id = NULL;

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      const SwExerciseText *text;

      if (sw_item_get_kind (item) != SW_ITEM_EXERCISE)
        continue;
      text = sw_exercise_get_text (sw_item_get_exercise (item), sw_client_get_language (client));
      if (!g_str_equal (text->name, name))
        continue;
      if (id != NULL)
        return NULL;
      id = sw_item_get_id (item);
    }
  return id;
}

/* Where an exercise’s name stands, there is its item, and a little below; cards stand beside one another, and each is
 * told apart. */
static void
check_places (SwProgramme *programme,
              gboolean     cards)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  SwClient *client = sw_programme_get_client (programme);
  g_autoptr (SwHandout) handout = lay_out (programme);
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  int page = -1;
  guint n = 0;
  guint n_right = 0;

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) words = g_strsplit (lines[i], " ", 6);
      g_autofree char *name = NULL;
      const char *id;
      double x;
      double y;

      page += g_str_has_prefix (lines[i], "page ");
      if (g_strv_length (words) < 6 || !g_str_equal (words[0], "text"))
        continue;
      name = g_strndup (words[5] + 1, strlen (words[5]) - 2);
      id = find_id (items, client, name);
      if (id == NULL || sw_handout_find_page_of_item (handout, id) != page)
        continue;

      x = g_ascii_strtod (words[1], NULL);
      y = g_ascii_strtod (words[2], NULL);
      g_assert_cmpstr (sw_handout_find_item_at (handout, page, x + 2.0, y + 2.0), ==, id);
      g_assert_cmpstr (sw_handout_find_item_at (handout, page, x + 40.0, y + 30.0), ==, id);
      g_assert_null (sw_handout_find_item_at (handout, page, x, sw_handout_get_page_height_pt (handout) - 1.0));
      n++;
      n_right += x > sw_handout_get_page_width_pt (handout) / 2.0;
    }
  g_assert_cmpuint (n, >=, 3);
  g_assert_cmpint (n_right > 0, ==, cards);
}

static void
test_item_at (void)
{
  for (int layout = 0; layout < sw_term_get_n_values (SW_TYPE_LAYOUT); layout++)
    {
      g_autoptr (SwProgramme) programme = handout_sample_new (NULL);

      g_object_set (sw_programme_get_page_plan (programme), "layout", layout, NULL);
      g_test_message ("layout %d", layout);
      check_places (programme, layout == SW_LAYOUT_COMPACT || layout == SW_LAYOUT_SUMMARY);
    }
}

/* Leaves the sample's first exercises, as many as there are; rests and the like stay. */
static SwProgramme *
new_with_exercises (guint most)
{
  SwProgramme *programme = handout_sample_new (NULL);
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autoptr (SwSession) session = g_list_model_get_item (sessions, 0);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  guint n = 0;

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListStore *items = sw_section_get_items (section);

      for (guint k = 0; k < g_list_model_get_n_items (G_LIST_MODEL (items));)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (items), k);
          SwItemKind kind = sw_item_get_kind (item);

          if (kind == SW_ITEM_CIRCUIT || (kind == SW_ITEM_EXERCISE && n >= most))
            g_list_store_remove (items, k);
          else
            {
              n += kind == SW_ITEM_EXERCISE;
              k++;
            }
        }
    }
  g_assert_cmpuint (n, ==, most);
  return programme;
}

/* In text so large that the first exercise has no room below the guide to pain, but a list has. */
static char *
dump_large (SwProgramme *programme,
            SwLayout     layout)
{
  g_object_set (sw_programme_get_client (programme), "text-points", 18.0, NULL);
  return dump_planned (programme, layout, SW_PAGE_PARTS_USUAL);
}

/* The exercises are told at a glance before the first of them when they are at least four, in full and in brief, with
 * the rounds of a circuit; and on one page. */
static void
test_glance (void)
{
  static const char heading[] = "\"Your exercises at a glance\"";
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwProgramme) four = new_with_exercises (4);
  g_autoptr (SwProgramme) three = new_with_exercises (3);
  g_autofree char *full = dump_large (programme, SW_LAYOUT_FULL);
  g_autofree char *compact = dump_large (programme, SW_LAYOUT_COMPACT);
  g_autofree char *of_four = dump_large (four, SW_LAYOUT_FULL);
  g_autofree char *of_three = dump_large (three, SW_LAYOUT_FULL);
  const char *first = strstr (full, heading);
  const char *last;

  g_assert_nonnull (first);
  last = strstr (first, "\"2\302\240rounds: 15\302\240times.\"");
  g_assert_nonnull (last);
  g_assert_null (g_strstr_len (first, last - first, "\npage "));
  g_assert_cmpuint (strstr (full, "\"Warm-up\"") - first, >, last - first);
  g_assert_nonnull (strstr (compact, heading));
  g_assert_nonnull (strstr (of_four, heading));
  g_assert_null (strstr (of_three, heading));
}

/* The plan comes when there is one: with the rule that comes before each step, in the
 * languages that every test computer has a font for. */
static void
test_weeks (void)
{
  static const char * const languages[] = { "en", "de", "es", "fr", "pl", "ar", "he", "hi" };
  g_autoptr (SwFigureSpec) figure = handout_sample_new_figure (SW_FIGURE_MOTION_PRESS, SW_FIGURE_BREATH_NONE);
  g_autoptr (SwProgramme) programme = handout_sample_new (figure);
  g_autofree char *without = dump_planned (programme, SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_PLAN));

  g_assert_null (strstr (without, "Your plan for"));
  g_object_set (sw_programme_get_progression (programme), "weeks", 5, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (languages); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SwPhrases) phrases = sw_phrases_new (languages[i], &error);
      g_autofree char *heading = NULL;
      g_autofree char *dump = NULL;

      g_assert_no_error (error);
      g_object_set (sw_programme_get_client (programme), "language", languages[i], NULL);
      heading = sw_phrases_count (phrases, "weeks.heading", 5, NULL);
      dump = dump_planned (programme, SW_LAYOUT_LARGE_PRINT, SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_PLAN));
      g_assert_nonnull (strstr (dump, heading));
      g_assert_nonnull (strstr (dump, sw_phrases_get (phrases, "weeks.rule-heading")));
      if (i == 0)
        {
          g_assert_nonnull (strstr (dump, "Week\u00a01: get used to it."));
          g_assert_nonnull (strstr (dump, "Weeks\u00a02\u20134: a little more, step by step."));
          g_assert_nonnull (strstr (dump, "pain stayed within your limit"));
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/page-plan/parts-of-layouts", test_parts_of_layouts);
  g_test_add_func ("/page-plan/landscape", test_landscape);
  g_test_add_func ("/page-plan/item-at", test_item_at);
  g_test_add_func ("/page-plan/glance", test_glance);
  g_test_add_func ("/page-plan/weeks", test_weeks);
  return g_test_run ();
}
