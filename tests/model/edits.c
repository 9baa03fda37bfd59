/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's edits: each by example, all of them in random order. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-edits.h"

typedef struct
{
  SwProgramme *programme;
  SwHistory *history;
  SwSession *session;
  SwSection *warm_up;
  SwSection *main;
  SwSection *cool_down;
  guint n_splices;
  guint position, n_removed, n_added;
} Fixture;

static SwSection *
nth_section (SwSession *session,
             guint      n)
{
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), n);

  return section;
}

static void
items_changed_cb (GListModel *list G_GNUC_UNUSED,
                  guint       position,
                  guint       n_removed,
                  guint       n_added,
                  Fixture    *fixture)
{
  fixture->n_splices++;
  fixture->position = position;
  fixture->n_removed = n_removed;
  fixture->n_added = n_added;
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = NULL;

  fixture->programme = sw_programme_new_standard ();
  fixture->history = sw_history_new ();
  session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (fixture->programme)), 0);
  fixture->session = session;
  fixture->warm_up = nth_section (session, 0);
  fixture->main = nth_section (session, 1);
  fixture->cool_down = nth_section (session, 2);
  fixture->n_splices = 0;
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_assert_finalize_object (fixture->history);
  g_assert_finalize_object (fixture->programme);
}

static void
fill (SwSection  *section,
      const char *ids)
{
  g_auto (GStrv) names = g_strsplit (ids, " ", -1);

  for (guint i = 0; names[i] != NULL; i++)
    sample_append (section, sample_item (names[i], "3 x 12, rest 60 s"));
}

/* "a b [c d]": a section's items, a circuit's members in brackets. */
static char *
list_ids (GListStore *list)
{
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (list), i);

      if (i > 0)
        g_string_append_c (ids, ' ');
      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        {
          g_autofree char *members = list_ids (sw_item_get_items (item));

          g_string_append_printf (ids, "[%s]", members);
        }
      else
        g_string_append (ids, sw_item_get_id (item));
    }

  return g_string_free (ids, FALSE);
}

static void
assert_ids (SwSection  *section,
            const char *wanted)
{
  g_autofree char *ids = list_ids (sw_section_get_items (section));

  g_assert_cmpstr (ids, ==, wanted);
}

static SwItem *
find (Fixture    *fixture,
      const char *id)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (fixture->programme);

  for (guint i = 0; i < items->len; i++)
    {
      if (strcmp (sw_item_get_id (items->pdata[i]), id) == 0)
        return items->pdata[i];
    }

  g_error ("no item “%s”", id);
}

static GPtrArray *
choose (Fixture    *fixture,
        const char *ids)
{
  g_auto (GStrv) names = g_strsplit (ids, " ", -1);
  GPtrArray *chosen = g_ptr_array_new ();

  for (guint i = 0; names[i] != NULL; i++)
    g_ptr_array_add (chosen, find (fixture, names[i]));

  return chosen;
}

static void
test_add (Fixture       *fixture,
          gconstpointer  data G_GNUC_UNUSED)
{
  SwExerciseFacts facts;
  g_autoptr (SwExercise) exercise = NULL;
  g_autoptr (SwExercise) again = NULL;
  g_autoptr (SwExercise) own = NULL;
  SwItem *item;

  sample_facts_init (&facts, "rocks");
  facts.section = SW_SECTION_WARM_UP;
  facts.dose.sets = 2;
  exercise = sample_exercise_from (&facts, "Rocks");
  again = sample_exercise_from (&facts, "Rocks, newer text");
  facts.id = (char *) "own";
  facts.section = SW_SECTION_OWN;
  own = sample_exercise_from (&facts, "Own");

  item = sw_edit_add_exercise (fixture->history, fixture->programme, fixture->session, exercise, "Add");
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 2);
  g_assert_true (sw_programme_find_list (fixture->programme, item, NULL)
                 == sw_section_get_items (fixture->warm_up));

  /* One id, one text in a document. */
  item = sw_edit_add_exercise (fixture->history, fixture->programme, fixture->session, again, "Add");
  g_assert_true (sw_item_get_exercise (item) == exercise);

  /* No section of that kind: main work. */
  item = sw_edit_add_exercise (fixture->history, fixture->programme, fixture->session, own, "Add");
  g_assert_true (sw_programme_find_list (fixture->programme, item, NULL) == sw_section_get_items (fixture->main));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (fixture->warm_up))), ==, 2);
}

static void
test_add_without_sections (Fixture       *fixture,
                           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwExercise) exercise = sample_exercise ("a", "A", "3 x 12");
  GListStore *sections = sw_session_get_sections (fixture->session);

  g_list_store_remove_all (sections);
  sw_edit_add_exercise (fixture->history, fixture->programme, fixture->session, exercise, "Add");
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sections)), ==, 1);
  g_assert_cmpint (sw_section_get_kind (nth_section (fixture->session, 0)), ==, SW_SECTION_MAIN);
  sw_history_undo (fixture->history);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sections)), ==, 0);
  g_assert_false (sw_history_get_can_undo (fixture->history));
}

static void
test_move_within (Fixture       *fixture,
                  gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) one = NULL;
  g_autoptr (GPtrArray) two = NULL;

  fill (fixture->main, "a b c d e");
  one = choose (fixture, "b");
  two = choose (fixture, "e a"); /* in any order; the document's counts */
  g_signal_connect (sw_section_get_items (fixture->main), "items-changed",
                    G_CALLBACK (items_changed_cb), fixture);

  sw_edit_move (fixture->history, fixture->programme, one, sw_section_get_items (fixture->main), 4, "Move");
  assert_ids (fixture->main, "a c d b e");
  g_assert_cmpuint (fixture->n_splices, ==, 1);
  g_assert_cmpuint (fixture->position, ==, 1);
  g_assert_cmpuint (fixture->n_removed, ==, 3);
  g_assert_cmpuint (fixture->n_added, ==, 3);

  sw_edit_move (fixture->history, fixture->programme, two, sw_section_get_items (fixture->main), 2, "Move");
  assert_ids (fixture->main, "c a e d b");
  sw_history_undo (fixture->history);
  assert_ids (fixture->main, "a c d b e");

  /* Dropped where it was: no step. */
  fixture->n_splices = 0;
  sw_edit_move (fixture->history, fixture->programme, one, sw_section_get_items (fixture->main), 3, "Move");
  sw_edit_move (fixture->history, fixture->programme, one, sw_section_get_items (fixture->main), 4, "Move");
  g_assert_cmpuint (fixture->n_splices, ==, 0);
  g_assert_true (sw_history_get_can_redo (fixture->history));
}

static void
test_move_between (Fixture       *fixture,
                   gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;

  fill (fixture->warm_up, "a b");
  fill (fixture->main, "c d");
  chosen = choose (fixture, "a d");
  sw_edit_move (fixture->history, fixture->programme, chosen,
                sw_section_get_items (fixture->cool_down), 99, "Move");
  assert_ids (fixture->warm_up, "b");
  assert_ids (fixture->main, "c");
  assert_ids (fixture->cool_down, "a d");
  sw_history_undo (fixture->history);
  assert_ids (fixture->warm_up, "a b");
  assert_ids (fixture->main, "c d");
  assert_ids (fixture->cool_down, "");
}

static void
test_circuit (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;
  g_autoptr (GPtrArray) circuits = g_ptr_array_new ();
  SwItem *circuit;

  fill (fixture->main, "a b c d");
  chosen = choose (fixture, "d b");
  circuit = sw_edit_make_circuit (fixture->history, fixture->programme, chosen, "Circuit");
  assert_ids (fixture->main, "a [b d] c");

  /* Three sets of each become three rounds of one set: the same work. */
  g_assert_cmpint (sw_item_get_rounds (circuit), ==, 3);
  g_assert_cmpint (sw_item_get_rest_s (circuit), ==, 60);
  g_assert_cmpint (sw_item_get_dose (find (fixture, "b"))->sets, ==, 1);

  /* No circuit in a circuit, and none in itself. */
  g_ptr_array_add (circuits, circuit);
  sw_edit_move (fixture->history, fixture->programme, circuits, sw_item_get_items (circuit), 0, "Move");
  assert_ids (fixture->main, "a [b d] c");
  g_assert_null (sw_edit_make_circuit (fixture->history, fixture->programme, circuits, "Circuit"));

  sw_edit_dissolve_circuit (fixture->history, fixture->programme, circuit, "Dissolve");
  assert_ids (fixture->main, "a b d c");
  g_assert_cmpint (sw_item_get_dose (find (fixture, "b"))->sets, ==, 3);
  sw_history_undo (fixture->history);
  assert_ids (fixture->main, "a [b d] c");
  sw_history_undo (fixture->history);
  assert_ids (fixture->main, "a b c d");
  g_assert_cmpint (sw_item_get_dose (find (fixture, "b"))->sets, ==, 3);
  sw_history_redo (fixture->history);
  assert_ids (fixture->main, "a [b d] c");
}

/* Different numbers of sets: one round, doses as they are. */
static void
test_circuit_of_unlike (Fixture       *fixture,
                        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;
  SwItem *circuit;

  sample_append (fixture->main, sample_item ("a", "3 x 12"));
  sample_append (fixture->main, sample_item ("b", "2 x 12"));
  chosen = choose (fixture, "a b");
  circuit = sw_edit_make_circuit (fixture->history, fixture->programme, chosen, "Circuit");
  g_assert_cmpint (sw_item_get_rounds (circuit), ==, 1);
  g_assert_cmpint (sw_item_get_dose (find (fixture, "a"))->sets, ==, 3);
  g_assert_cmpint (sw_item_get_dose (find (fixture, "b"))->sets, ==, 2);
}

static void
assert_line (Fixture    *fixture,
             const char *id,
             const char *wanted)
{
  g_autofree char *line = sw_dose_to_line (sw_item_get_dose (find (fixture, id)));

  g_assert_cmpstr (line, ==, wanted);
}

/* Sets for one side alone would be done again in each round: they make one round, and come back many times. */
static void
test_circuit_with_extra_sets (Fixture       *fixture,
                              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;
  SwItem *circuit;

  sample_append (fixture->main, sample_item ("a", "3 x 12, each side, +1 set right"));
  sample_append (fixture->main, sample_item ("b", "3 x 12"));
  chosen = choose (fixture, "a b");
  circuit = sw_edit_make_circuit (fixture->history, fixture->programme, chosen, "Circuit");
  g_assert_cmpint (sw_item_get_rounds (circuit), ==, 1);
  assert_line (fixture, "a", "3 x 12, each side, +1 set right");
  assert_line (fixture, "b", "3 x 12");

  g_object_set (circuit, "rounds", 2, NULL);
  sw_edit_dissolve_circuit (fixture->history, fixture->programme, circuit, "Dissolve");
  assert_line (fixture, "a", "6 x 12, each side, +2 sets right");
  assert_line (fixture, "b", "6 x 12");
  sw_history_undo (fixture->history);
  assert_line (fixture, "a", "3 x 12, each side, +1 set right");
}

/* A dose ends at 20 sets, 10 more for one side; the work goes on in copies. */
static void
test_dissolve_beyond_a_dose (Fixture       *fixture,
                             gconstpointer  data G_GNUC_UNUSED)
{
  static const struct { int sets, right; } wanted[] = { { 15, 10 }, { 15, 10 }, { 6, 4 }, { 12, 0 } };
  g_autoptr (GPtrArray) chosen = NULL;
  SwItem *circuit;

  sample_append (fixture->main, sample_item ("a", "3 x 12, each side, +2 sets right"));
  sample_append (fixture->main, sample_item ("b", "1 x 12"));
  chosen = choose (fixture, "a b");
  circuit = sw_edit_make_circuit (fixture->history, fixture->programme, chosen, "Circuit");
  g_object_set (circuit, "rounds", 12, NULL);
  sw_edit_dissolve_circuit (fixture->history, fixture->programme, circuit, "Dissolve");

  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (fixture->main))), ==,
                    G_N_ELEMENTS (wanted));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (sw_section_get_items (fixture->main)), i);

      g_assert_true (sw_item_get_exercise (item) == sw_item_get_exercise (find (fixture, i < 3 ? "a" : "b")));
      g_assert_cmpint (sw_item_get_dose (item)->sets, ==, wanted[i].sets);
      g_assert_cmpint (sw_item_get_dose (item)->extra_sets, ==, wanted[i].right);
    }

  sw_history_undo (fixture->history);
  assert_ids (fixture->main, "[a b]");
  assert_line (fixture, "a", "3 x 12, each side, +2 sets right");
}

/* Down through everything there is, and up again the same way. */
static void
test_shift (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  static const char * const states[] = {
    "a b | [c d] e |", "b a | [c d] e |", "b | a [c d] e |", "b | [a c d] e |", "b | [c a d] e |",
    "b | [c d a] e |", "b | [c d] a e |", "b | [c d] e a |", "b | [c d] e | a",
  };
  g_autoptr (GPtrArray) chosen = NULL;
  g_autoptr (GPtrArray) one = NULL;
  guint n = G_N_ELEMENTS (states);

  fill (fixture->warm_up, "a b");
  fill (fixture->main, "c d e");
  one = choose (fixture, "c d");
  sw_edit_make_circuit (fixture->history, fixture->programme, one, "Circuit");
  chosen = choose (fixture, "a");

  for (guint i = 0; i < 2 * n - 1; i++)
    {
      g_autofree char *first = list_ids (sw_section_get_items (fixture->warm_up));
      g_autofree char *second = list_ids (sw_section_get_items (fixture->main));
      g_autofree char *third = list_ids (sw_section_get_items (fixture->cool_down));
      g_autofree char *state = g_strdup_printf ("%s | %s | %s", first, second, third);
      gboolean at_end = i == n - 1 || i == 2 * n - 2;

      g_assert_cmpstr (g_strchomp (state), ==, states[i < n ? i : 2 * n - 2 - i]);
      if (at_end)
        g_assert_false (sw_edit_shift (fixture->history, fixture->programme, chosen, i < n ? 1 : -1, "Move"));
      if (i < 2 * n - 2)
        g_assert_true (sw_edit_shift (fixture->history, fixture->programme, chosen, i < n - 1 ? 1 : -1, "Move"));
    }
}

static void
test_shift_block (Fixture       *fixture,
                  gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();

  fill (fixture->main, "a b c d e");
  chosen = choose (fixture, "c d");
  g_assert_true (sw_edit_shift (fixture->history, fixture->programme, chosen, -2, "Move"));
  assert_ids (fixture->main, "c d a b e");
  g_assert_true (sw_edit_shift (fixture->history, fixture->programme, chosen, -1, "Move"));
  assert_ids (fixture->warm_up, "c d");
  sw_history_undo (fixture->history);
  sw_history_undo (fixture->history);
  assert_ids (fixture->main, "a b c d e");
  g_assert_false (sw_history_get_can_undo (fixture->history));

  g_ptr_array_add (sections, fixture->warm_up);
  g_assert_true (sw_edit_shift (fixture->history, fixture->programme, sections, 1, "Move"));
  g_assert_true (nth_section (fixture->session, 1) == fixture->warm_up);
  g_assert_true (sw_edit_shift (fixture->history, fixture->programme, sections, 1, "Move"));
  g_assert_false (sw_edit_shift (fixture->history, fixture->programme, sections, 1, "Move"));
}

static void
test_duplicate (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) chosen = NULL;
  g_autoptr (GPtrArray) copies = NULL;
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  fill (fixture->main, "a b c");
  chosen = choose (fixture, "a b");
  copies = sw_edit_duplicate (fixture->history, fixture->programme, chosen, "Duplicate");
  g_assert_cmpuint (copies->len, ==, 2);
  items = sw_programme_dup_items (fixture->programme);
  g_assert_cmpuint (items->len, ==, 5);
  g_assert_true (items->pdata[2] == copies->pdata[0]);
  g_assert_true (sw_item_get_exercise (copies->pdata[0]) == sw_item_get_exercise (chosen->pdata[0]));
  for (guint i = 0; i < items->len; i++)
    g_assert_true (g_hash_table_add (ids, (gpointer) sw_item_get_id (items->pdata[i])));
}

/* In a section's duplicate, what has to come after another comes after its duplicate. */
static void
test_duplicate_follows (Fixture       *fixture,
                        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();
  g_autoptr (GPtrArray) copies = NULL;
  g_autoptr (SwItem) first = NULL;
  g_autoptr (SwItem) second = NULL;
  GListModel *items;

  fill (fixture->main, "a b");
  g_object_set (find (fixture, "b"), "after", "a", "pinned", TRUE, NULL);
  g_ptr_array_add (sections, fixture->main);
  copies = sw_edit_duplicate (fixture->history, fixture->programme, sections, "Duplicate");
  items = G_LIST_MODEL (sw_section_get_items (copies->pdata[0]));
  first = g_list_model_get_item (items, 0);
  second = g_list_model_get_item (items, 1);
  g_assert_cmpstr (sw_item_get_id (first), !=, "a");
  g_assert_cmpstr (sw_item_get_after (second), ==, sw_item_get_id (first));
  g_assert_true (sw_item_get_pinned (second));
}

/* All sections of a session in another order are one step, and one step back. */
static void
test_arrange (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) sections = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);

  fill (fixture->warm_up, "a b");
  fill (fixture->main, "c d e");
  g_ptr_array_add (sections, choose (fixture, "b a"));
  g_ptr_array_add (sections, choose (fixture, "e c d"));
  g_ptr_array_add (sections, g_ptr_array_new ());
  sw_edit_arrange (fixture->history, fixture->session, sections, "Arrange");
  assert_ids (fixture->warm_up, "b a");
  assert_ids (fixture->main, "e c d");
  assert_ids (fixture->cool_down, "");
  g_assert_cmpstr (sw_history_get_undo_label (fixture->history), ==, "Arrange");

  sw_history_undo (fixture->history);
  assert_ids (fixture->warm_up, "a b");
  assert_ids (fixture->main, "c d e");
  g_assert_false (sw_history_get_can_undo (fixture->history));
  sw_history_redo (fixture->history);
  assert_ids (fixture->main, "e c d");
}

static void
test_swap (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwExercise) each = sample_exercise ("new", "New", "2 x 8, 3 kg, each side, rest 45 s");
  g_autoptr (SwExercise) both = sample_exercise ("both", "Both", "2 x 8");
  g_autoptr (SwExercise) newer = sample_exercise ("new", "Newer", "2 x 8");
  SwItem *item;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  sample_append (fixture->main, sample_item ("a", "3 x 12, 8 kg, left, +1 set left, 4 days a week, effort 5, pain 3"));
  item = find (fixture, "a");
  sw_edit_swap_exercise (fixture->history, fixture->programme, item, each, "Swap");
  first = sw_dose_to_line (sw_item_get_dose (item));
  g_assert_cmpstr (first, ==, "2 x 8, 3 kg, left, +1 set left, rest 45 s, 4 days a week, effort 5, pain 3");
  g_assert_true (sw_item_get_exercise (item) == each);

  /* One id means one text: the programme has this exercise already, so a newer text of it is not taken. */
  sample_append (fixture->main, sample_item ("b", "2 x 8"));
  sw_edit_swap_exercise (fixture->history, fixture->programme, find (fixture, "b"), newer, "Swap");
  g_assert_true (sw_item_get_exercise (find (fixture, "b")) == each);
  sw_history_undo (fixture->history);

  /* Both sides together: no side, no extra sets of one. */
  sw_edit_swap_exercise (fixture->history, fixture->programme, item, both, "Swap");
  second = sw_dose_to_line (sw_item_get_dose (item));
  g_assert_cmpstr (second, ==, "2 x 8, 4 days a week, effort 5, pain 3");
  sw_history_undo (fixture->history);
  g_assert_true (sw_item_get_exercise (item) == each);
}

/* Two sessions: the second has what moves, warm-up and cool-down again, and the same days; the self-check stays. */
static void
test_split (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) moving = g_ptr_array_new ();
  g_autofree char *before = NULL;
  g_autofree char *undone = NULL;
  SwSession *second;

  g_object_set (fixture->session, "title", "Morning", "days", (guint64) SW_SET (SW_DAY_FRIDAY), NULL);
  fill (fixture->warm_up, "w");
  fill (fixture->main, "a b c");
  fill (fixture->cool_down, "l");
  sample_append (fixture->cool_down, sw_item_new (SW_ITEM_SELF_CHECK, "check"));
  before = sample_dump (fixture->programme);
  g_ptr_array_add (moving, find (fixture, "c"));

  second = sw_edit_split_session (fixture->history, fixture->programme, fixture->session, moving, "Split");
  assert_ids (fixture->main, "a b");
  assert_ids (fixture->cool_down, "l check");
  assert_ids (nth_section (second, 1), "c");
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (nth_section (second, 0)))), ==, 1);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (nth_section (second, 2)))), ==, 1);
  g_assert_cmpstr (sw_session_get_title (fixture->session), ==, "Morning 1");
  g_assert_cmpstr (sw_session_get_title (second), ==, "Morning 2");
  g_assert_cmpuint (sw_session_get_days (second), ==, SW_SET (SW_DAY_FRIDAY));

  sw_history_undo (fixture->history);
  undone = sample_dump (fixture->programme);
  g_assert_cmpstr (undone, ==, before);
}

static void
random_dose_edit (Fixture *fixture,
                  GRand   *rand,
                  SwItem  *item)
{
  SwDose dose = *sw_item_get_dose (item);

  dose.sets = g_rand_int_range (rand, 1, 21);
  dose.rest_s = g_rand_int_range (rand, 0, 100);
  sw_history_set_boxed (fixture->history, "Dose", item, "dose", &dose);
}

static GListStore *
random_list (Fixture *fixture,
             GRand   *rand)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (fixture->session));
  guint n = g_list_model_get_n_items (sections);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (fixture->programme);

  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_CIRCUIT && g_rand_boolean (rand))
        return sw_item_get_items (items->pdata[i]);
    }

  return n > 0 ? sw_section_get_items (nth_section (fixture->session, (guint) g_rand_int_range (rand, 0, (gint32) n)))
               : NULL;
}

static void
random_edit (Fixture    *fixture,
             GRand      *rand,
             SwExercise *exercise)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (fixture->programme);
  g_autoptr (GPtrArray) chosen = g_ptr_array_new ();
  g_autoptr (GPtrArray) copies = NULL;
  GListStore *list = random_list (fixture, rand);
  SwItem *item = items->len > 0 ? items->pdata[g_rand_int_range (rand, 0, (gint32) items->len)] : NULL;
  SwHistory *history = fixture->history;
  SwProgramme *programme = fixture->programme;
  gpointer section;

  for (guint i = 0; i < items->len; i++)
    {
      if (g_rand_int_range (rand, 0, 3) == 0)
        g_ptr_array_add (chosen, items->pdata[i]);
    }

  switch (g_rand_int_range (rand, 0, 15))
    {
    case 0:
    case 1:
      sw_edit_add_exercise (history, programme, fixture->session, exercise, "Add");
      break;
    case 2:
      if (g_rand_int_range (rand, 0, 3) == 0)
        sw_edit_remove (history, programme, chosen, "Remove");
      break;
    case 3:
      if (list != NULL)
        sw_edit_move (history, programme, chosen, list, (guint) g_rand_int_range (rand, 0, 6), "Move");
      break;
    case 4:
    case 5:
      sw_edit_shift (history, programme, chosen, g_rand_boolean (rand) ? 1 : -1, "Shift");
      break;
    case 6:
      if (chosen->len < 4)
        copies = sw_edit_duplicate (history, programme, chosen, "Duplicate");
      break;
    case 7:
      sw_edit_make_circuit (history, programme, chosen, "Circuit");
      break;
    case 8:
      if (item != NULL && sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        sw_edit_dissolve_circuit (history, programme, item, "Dissolve");
      break;
    case 9:
      if (item != NULL && sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        sw_edit_swap_exercise (history, programme, item, exercise, "Swap");
      break;
    case 10:
      if (item != NULL)
        random_dose_edit (fixture, rand, item);
      break;
    case 11:
      sw_history_set_string (history, "Name", sw_programme_get_client (programme), "name",
                             g_rand_boolean (rand) ? "Ada" : "Grace");
      break;
    case 14:
      if (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_sessions (programme))) < 3)
        sw_edit_split_session (history, programme, fixture->session, chosen, "Split");
      break;
    case 12:
      section = sw_section_new (SW_SECTION_OWN, "Own");
      sw_history_splice (history, "Section", sw_session_get_sections (fixture->session), 0, 0, &section, 1);
      g_object_unref (section);
      break;
    case 13:
      if (g_rand_boolean (rand))
        sw_history_stop_merging (history);
      else if (g_rand_boolean (rand))
        sw_history_undo (history);
      else
        sw_history_redo (history);
      break;
    default:
      g_assert_not_reached ();
    }
}

/* Ids stay unique, circuits hold no circuits, nothing stands in two places. */
static void
assert_sound (SwProgramme *programme,
              guint32      seed)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < items->len; i++)
    {
      GListModel *members = G_LIST_MODEL (sw_item_get_items (items->pdata[i]));

      if (!g_hash_table_add (ids, (gpointer) sw_item_get_id (items->pdata[i])))
        g_error ("seed %u: an item stands twice", seed);
      for (guint j = 0; j < g_list_model_get_n_items (members); j++)
        {
          g_autoptr (SwItem) member = g_list_model_get_item (members, j);

          if (sw_item_get_kind (member) == SW_ITEM_CIRCUIT)
            g_error ("seed %u: a circuit in a circuit", seed);
        }
      if (!sw_dose_check (sw_item_get_dose (items->pdata[i]), NULL))
        g_error ("seed %u: a dose out of range", seed);
    }
}

/* After each of 2,000 random sequences: undo all gives the first state, redo all the last. */
static void
test_random (void)
{
  guint32 first_seed = g_random_int ();

  g_test_message ("first seed %u", first_seed);
  for (guint32 i = 0; i < 2000; i++)
    {
      guint32 seed = first_seed + i;
      g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
      g_autoptr (SwExercise) exercise = sample_exercise ("e", "E", "3 x 12, each side, rest 30 s");
      g_autofree char *before = NULL;
      g_autofree char *after = NULL;
      g_autofree char *undone = NULL;
      g_autofree char *redone = NULL;
      Fixture fixture;

      set_up (&fixture, NULL);
      fill (fixture.main, "a b c");
      before = sample_dump (fixture.programme);
      for (int n = g_rand_int_range (rand, 1, 30); n > 0; n--)
        {
          random_edit (&fixture, rand, exercise);
          assert_sound (fixture.programme, seed);
        }
      while (sw_history_get_can_redo (fixture.history))
        sw_history_redo (fixture.history);
      after = sample_dump (fixture.programme);

      while (sw_history_get_can_undo (fixture.history))
        sw_history_undo (fixture.history);
      undone = sample_dump (fixture.programme);
      g_assert_false (sw_history_get_modified (fixture.history));
      if (strcmp (before, undone) != 0)
        g_error ("seed %u: undo of all gave\n%sinstead of\n%s", seed, undone, before);

      while (sw_history_get_can_redo (fixture.history))
        sw_history_redo (fixture.history);
      redone = sample_dump (fixture.programme);
      if (strcmp (after, redone) != 0)
        g_error ("seed %u: redo of all gave\n%sinstead of\n%s", seed, redone, after);
      tear_down (&fixture, NULL);
    }
}

int
main (int   argc,
      char *argv[])
{
  static const struct { const char *path; void (*run) (Fixture *, gconstpointer); } tests[] = {
    { "/model/edits/add", test_add },
    { "/model/edits/add-without-sections", test_add_without_sections },
    { "/model/edits/move-within", test_move_within },
    { "/model/edits/move-between", test_move_between },
    { "/model/edits/circuit", test_circuit },
    { "/model/edits/circuit-of-unlike", test_circuit_of_unlike },
    { "/model/edits/circuit-with-extra-sets", test_circuit_with_extra_sets },
    { "/model/edits/dissolve-beyond-a-dose", test_dissolve_beyond_a_dose },
    { "/model/edits/shift", test_shift },
    { "/model/edits/shift-block", test_shift_block },
    { "/model/edits/duplicate", test_duplicate },
    { "/model/edits/duplicate-follows", test_duplicate_follows },
    { "/model/edits/arrange", test_arrange },
    { "/model/edits/swap", test_swap },
    { "/model/edits/split", test_split },
  };

  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].run, tear_down);
  g_test_add_func ("/model/edits/random", test_random);

  return g_test_run ();
}
