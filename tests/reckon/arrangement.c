/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order found for sessions, against every order there is, and whether what must stay stays. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-arrangement-words.h"
#include "sw-arrangement.h"
#include "sw-time.h"

static SwItem *
make_item (const char *id,
           SwPosition  position,
           SwSet       equipment,
           SwSet       muscles)
{
  g_autoptr (SwExercise) exercise = NULL;
  SwExerciseFacts facts;

  sample_facts_init (&facts, id);
  facts.position = position;
  facts.equipment = equipment;
  facts.muscles = muscles;
  exercise = sample_exercise_from (&facts, id);
  return sw_item_new_for_exercise (exercise, id);
}

static SwItem *
make_check (const char *id)
{
  return sw_item_new (SW_ITEM_SELF_CHECK, id);
}

static char *
ids_of (GPtrArray *items)
{
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < items->len; i++)
    g_string_append_printf (ids, "%s%s", i == 0 ? "" : " ", sw_item_get_id (items->pdata[i]));
  return g_string_free (ids, FALSE);
}

/* Down to the floor twice and up in between is once too often: 15 to 30 s each way by the usual table. Floor work last
 * or first costs the same here; the closing check stays last whatever is saved. */
static void
test_floor_once (void)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwArrangement) found = NULL;
  g_autofree char *ids = NULL;

  sample_append (section, make_item ("a", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("b", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, make_item ("c", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("d", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, make_check ("check"));
  found = sw_arrangement_new (session, clinic);
  ids = ids_of (found->sections->pdata[0]);
  g_assert_true (found->exact);
  g_assert_true (found->better);
  g_assert_cmpint (found->moves_before, ==, 3);
  g_assert_cmpint (found->moves_after, ==, 1);
  g_assert_true (g_str_has_suffix (ids, " check"));
  g_assert_cmpfloat (found->before.low_s, ==, 3 * (5 + 15));
  g_assert_cmpfloat (found->before.high_s, ==, 3 * (15 + 30));
  g_assert_cmpfloat (found->after.low_s, ==, 3 * 5 + 15);
  g_assert_cmpfloat (found->after.high_s, ==, 3 * 15 + 30);
}

/* The section before decides: after floor work the floor work of the next comes first. */
static void
test_across_sections (void)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *warm_up = sample_section (session, SW_SECTION_WARM_UP);
  SwSection *main_work = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwArrangement) found = NULL;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  sample_append (warm_up, make_item ("a", SW_POSITION_ON_BACK, 0, 0));
  sample_append (warm_up, make_item ("b", SW_POSITION_STANDING, 0, 0));
  sample_append (main_work, make_item ("c", SW_POSITION_STANDING, 0, 0));
  sample_append (main_work, make_item ("d", SW_POSITION_ON_BACK, 0, 0));
  sample_append (main_work, make_item ("e", SW_POSITION_STANDING, 0, 0));
  found = sw_arrangement_new (session, clinic);
  first = ids_of (found->sections->pdata[0]);
  second = ids_of (found->sections->pdata[1]);
  g_assert_cmpfloat (found->after.high_s, ==, 4 * 15 + 2 * 30);
  g_assert_true ((g_str_equal (first, "b a") && g_str_has_prefix (second, "d "))
                 || (g_str_equal (first, "a b") && g_str_has_suffix (second, " d")));
}

/* The clinic's table counts: where nothing takes time, nothing is gained. */
static void
test_table (void)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwArrangement) found = NULL;

  g_object_set (clinic, "card-low-seconds", 0, "card-high-seconds", 0, "floor-low-seconds", 7, "floor-high-seconds", 9,
                NULL);
  sample_append (section, make_item ("a", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("b", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, make_item ("c", SW_POSITION_STANDING, 0, 0));
  found = sw_arrangement_new (session, clinic);
  g_assert_cmpfloat (found->before.low_s, ==, 14);
  g_assert_cmpfloat (found->before.high_s, ==, 18);
  g_assert_cmpfloat (found->after.low_s, ==, 7);
  g_assert_cmpfloat (found->after.high_s, ==, 9);
}

/* What gains nothing by moving stays where it is. */
static void
test_moves_least (void)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwArrangement) found = NULL;
  g_autofree char *ids = NULL;

  sample_append (section, make_item ("a", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("b", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("c", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, make_item ("d", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("e", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, make_item ("f", SW_POSITION_ON_BACK, 0, 0));
  found = sw_arrangement_new (session, clinic);
  ids = ids_of (found->sections->pdata[0]);
  g_assert_true (g_str_equal (ids, "a b d c e f") || g_str_equal (ids, "a b d e f c"));
}

/* Two of the same small muscles do not follow each other when another can come between. */
static void
test_small_muscles (void)
{
  const SwSet cuff = SW_SET (SW_MUSCLE_ROTATOR_CUFF);
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwArrangement) found = NULL;

  sample_append (section, make_item ("a", SW_POSITION_STANDING, 0, cuff));
  sample_append (section, make_item ("b", SW_POSITION_STANDING, 0, cuff | SW_SET (SW_MUSCLE_DELTOID)));
  sample_append (section, make_item ("c", SW_POSITION_ON_BACK, 0, SW_SET (SW_MUSCLE_QUADRICEPS)));
  found = sw_arrangement_new (session, clinic);
  g_assert_cmpint (found->together_before, ==, 1);
  g_assert_cmpint (found->together_after, ==, 0);
}

typedef struct
{
  GPtrArray *items;
  GPtrArray *present;
  SwClinic *clinic;
  double best_s;
  int best_together;
} Trial;

static int
place_of (GPtrArray *items,
          gpointer   item)
{
  guint index;

  return g_ptr_array_find (items, item, &index) ? (int) index : -1;
}

static SwItem *
find_id (GPtrArray  *items,
         const char *id)
{
  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (sw_item_get_id (items->pdata[i]), id))
      return items->pdata[i];

  return NULL;
}

/* Whether what the first list asks holds in the second, told anew here: each pinned one where it was, each behind what it
 * names unless it stood before that already. */
static void
assert_kept (GPtrArray *was,
             GPtrArray *is)
{
  g_assert_cmpuint (was->len, ==, is->len);
  for (guint i = 0; i < was->len; i++)
    {
      SwItem *item = was->pdata[i];
      SwItem *after = find_id (was, sw_item_get_after (item));

      g_assert_cmpint (place_of (is, item), >=, 0);
      if (sw_item_get_pinned (item))
        g_assert_cmpint (place_of (is, item), ==, (int) i);
      if (after != NULL && place_of (was, after) < (int) i)
        g_assert_cmpint (place_of (is, after), <, place_of (is, item));
    }
}

static gboolean
is_kept (GPtrArray *was,
         GPtrArray *is)
{
  for (guint i = 0; i < was->len; i++)
    {
      SwItem *item = was->pdata[i];
      SwItem *after = find_id (was, sw_item_get_after (item));

      if (sw_item_get_pinned (item) && is->pdata[i] != item)
        return FALSE;
      if (after != NULL && place_of (was, after) < (int) i && place_of (is, after) > place_of (is, item))
        return FALSE;
    }
  return TRUE;
}

/* What the clock says the changes take, the middle of the range, and neighbours that tire the same small muscle. */
static void
judge (GPtrArray *items,
       SwClinic  *clinic,
       double    *cost_s,
       int       *together)
{
  g_autoptr (SwSession) session = sw_session_new ("Trial", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwClock) clock = NULL;

  *cost_s = 0;
  *together = 0;
  for (guint i = 0; i < items->len; i++)
    {
      SwSet common = ~(SwSet) 0;

      g_list_store_append (sw_section_get_items (section), items->pdata[i]);
      for (int k = 0; k < 2 && i > 0; k++)
        common &= sw_exercise_get_facts (sw_item_get_exercise (items->pdata[i - k]))->muscles;
      *together += i > 0 && (common & SW_SET (SW_MUSCLE_FOREARM)) != 0;
    }
  clock = sw_clock_new (session, clinic);
  for (guint i = 0; i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);

      *cost_s += (entry->change.low_s + entry->change.high_s) / 2;
    }
}

static void
try_all (Trial *trial,
         guint  n_set)
{
  GPtrArray *items = trial->items;

  if (n_set == items->len)
    {
      double cost_s;
      int together;

      if (!is_kept (trial->present, items))
        return;
      judge (items, trial->clinic, &cost_s, &together);
      if (together < trial->best_together || (together == trial->best_together && cost_s < trial->best_s))
        {
          trial->best_together = together;
          trial->best_s = cost_s;
        }
      return;
    }
  for (guint i = n_set; i < items->len; i++)
    {
      gpointer kept = items->pdata[n_set];

      items->pdata[n_set] = items->pdata[i];
      items->pdata[i] = kept;
      try_all (trial, n_set + 1);
      items->pdata[i] = items->pdata[n_set];
      items->pdata[n_set] = kept;
    }
}

static GPtrArray *
fill_at_random (SwSection *section,
                GRand     *rand,
                int        n)
{
  GPtrArray *items = g_ptr_array_new_with_free_func (g_object_unref);

  for (int i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("i%d", i);
      g_autofree char *after = g_strdup_printf ("i%d", g_rand_int_range (rand, 0, 3 * n));
      SwSet equipment = g_rand_boolean (rand) ? SW_SET (g_rand_int_range (rand, 0, SW_EQUIPMENT_CABLE + 1)) : 0;
      SwItem *item = make_item (id, (SwPosition) g_rand_int_range (rand, 0, SW_POSITION_FACE_DOWN + 1), equipment,
                                g_rand_int_range (rand, 0, 3) == 0 ? SW_SET (SW_MUSCLE_FOREARM) : 0);

      g_object_set (item, "pinned", g_rand_int_range (rand, 0, 6) == 0, "after", after, NULL);
      g_ptr_array_add (items, g_object_ref (item));
      sample_append (section, item);
    }
  return items;
}

static void
test_every_order (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();

  for (int round = 0; round < 60; round++)
    {
      g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
      SwSection *section = sample_section (session, SW_SECTION_MAIN);
      g_autoptr (GPtrArray) items = fill_at_random (section, rand, g_rand_int_range (rand, 1, 7));
      g_autoptr (GPtrArray) order = g_ptr_array_copy (items, (GCopyFunc) (void (*) (void)) g_object_ref, NULL);
      Trial trial = { order, items, clinic, G_MAXDOUBLE, G_MAXINT };
      g_autoptr (SwArrangement) found = sw_arrangement_new (session, clinic);
      double cost_s;
      int together;

      try_all (&trial, 0);
      assert_kept (items, found->sections->pdata[0]);
      judge (found->sections->pdata[0], clinic, &cost_s, &together);
      g_assert_cmpint (together, ==, trial.best_together);
      g_assert_cmpfloat_with_epsilon (cost_s, trial.best_s, 1e-9);
      g_assert_cmpint (found->together_after, ==, together);
      g_assert_cmpfloat_with_epsilon ((found->after.low_s + found->after.high_s) / 2, cost_s, 1e-9);
    }
}

static void
test_kept (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (12);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();

  for (int round = 0; round < 10000; round++)
    {
      g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
      SwSection *first = sample_section (session, SW_SECTION_WARM_UP);
      SwSection *second = sample_section (session, SW_SECTION_MAIN);
      g_autoptr (GPtrArray) before = fill_at_random (first, rand, g_rand_int_range (rand, 0, 6));
      g_autoptr (GPtrArray) after = fill_at_random (second, rand, g_rand_int_range (rand, 0, 10));
      g_autoptr (SwArrangement) found = sw_arrangement_new (session, clinic);

      assert_kept (before, found->sections->pdata[0]);
      assert_kept (after, found->sections->pdata[1]);
      g_assert_cmpint (found->together_after, <=, found->together_before);
      if (found->together_after == found->together_before)
        g_assert_cmpfloat (found->after.low_s + found->after.high_s, <=,
                           found->before.low_s + found->before.high_s + 1e-9);
    }
}

/* What is told before it is taken: what it brings, where that comes from, and what keeps it from more. */
static void
test_words (void)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  SwItem *first = make_item ("a", SW_POSITION_STANDING, 0, 0);
  SwItem *last = make_item ("e", SW_POSITION_STANDING, SW_SET (SW_EQUIPMENT_TOWEL), 0);
  g_autoptr (SwArrangement) found = NULL;
  g_autoptr (SwArrangement) kept = NULL;
  g_autoptr (SwArrangement) again = NULL;
  g_autofree char *words = NULL;
  g_autofree char *kept_words = NULL;
  g_autofree char *none_words = NULL;
  g_auto (GStrv) none = NULL;
  g_auto (GStrv) limits = NULL;
  GPtrArray *order;

  sample_append (section, first);
  sample_append (section, make_item ("b", SW_POSITION_ON_BACK, SW_SET (SW_EQUIPMENT_TOWEL), 0));
  sample_append (section, make_item ("c", SW_POSITION_STANDING, 0, 0));
  sample_append (section, make_item ("d", SW_POSITION_ON_BACK, 0, 0));
  sample_append (section, last);
  found = sw_arrangement_new (session, clinic);
  words = sw_arrangement_describe (found);
  g_assert_cmpstr (words, ==, "Saves about 1:20 min: 3 fewer changes of position, equipment fetched 1 time less.");
  none = sw_arrangement_dup_limits (session, clinic);
  g_assert_cmpuint (g_strv_length (none), ==, 0);

  g_object_set (first, "pinned", TRUE, NULL);
  g_object_set (last, "pinned", TRUE, NULL);
  kept = sw_arrangement_new (session, clinic);
  kept_words = sw_arrangement_describe (kept);
  g_assert_cmpstr (kept_words, ==, "Saves about 58 s: 2 fewer changes of position, equipment fetched 1 time less.");
  limits = sw_arrangement_dup_limits (session, clinic);
  g_assert_cmpuint (g_strv_length (limits), ==, 1);
  g_assert_cmpstr (limits[0], ==, "Items that keep their place cost about 23 s.");

  order = kept->sections->pdata[0];
  g_list_store_splice (sw_section_get_items (section), 0, order->len, order->pdata, order->len);
  again = sw_arrangement_new (session, clinic);
  none_words = sw_arrangement_describe (again);
  g_assert_cmpstr (none_words, ==, "Nothing to gain: in no other order does less time go between the exercises.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/arrangement/floor-once", test_floor_once);
  g_test_add_func ("/arrangement/across-sections", test_across_sections);
  g_test_add_func ("/arrangement/table", test_table);
  g_test_add_func ("/arrangement/moves-least", test_moves_least);
  g_test_add_func ("/arrangement/small-muscles", test_small_muscles);
  g_test_add_func ("/arrangement/words", test_words);
  g_test_add_func ("/arrangement/every-order", test_every_order);
  g_test_add_func ("/arrangement/kept", test_kept);
  return g_test_run ();
}
