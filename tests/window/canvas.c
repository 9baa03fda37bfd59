/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rows of the session canvas: which there are, what they say, and that a view that is told of each change
 * and no more always shows the session as it is. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-canvas-model.h"
#include "sw-edits.h"
#include "sw-labels.h"

typedef struct
{
  SwDocument *document;
  SwCanvasModel *model;
  GPtrArray *shadow; /* what a view would show: changed only by what is announced */
  guint n_announced;
  guint position, n_removed, n_added;
} Fixture;

static SwHistory *
history_of (Fixture *fixture)
{
  return sw_document_get_history (fixture->document);
}

static SwProgramme *
programme_of (Fixture *fixture)
{
  return sw_document_get_programme (fixture->document);
}

static SwSection *
nth_section (Fixture *fixture,
             guint    n)
{
  SwSession *session = sw_document_get_session (fixture->document);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), n);

  return section;
}

static SwItem *
nth_item (Fixture *fixture,
          guint    section,
          guint    n)
{
  GListStore *items = sw_section_get_items (nth_section (fixture, section));
  g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (items), n);

  return item;
}

static void
items_changed_cb (GListModel *model,
                  guint       position,
                  guint       n_removed,
                  guint       n_added,
                  Fixture    *fixture)
{
  fixture->n_announced++;
  fixture->position = position;
  fixture->n_removed = n_removed;
  fixture->n_added = n_added;

  g_assert_cmpuint (position + n_removed, <=, fixture->shadow->len);
  if (n_removed > 0)
    g_ptr_array_remove_range (fixture->shadow, position, n_removed);
  for (guint i = 0; i < n_added; i++)
    g_ptr_array_insert (fixture->shadow, (int) (position + i), g_list_model_get_item (model, position + i));
}

static SwItem *
exercise_item (const char *name,
               SwPosition  position)
{
  SwExerciseFacts facts;
  g_autoptr (SwExercise) exercise = NULL;

  sample_facts_init (&facts, name);
  facts.position = position;
  facts.dose.reps_low = facts.dose.reps_high = 10;
  exercise = sample_exercise_from (&facts, name);
  return sw_item_new_for_exercise (exercise, name);
}

/* Warm-up: a (sitting). Main: b (standing), c (sitting), d (sitting). Cool-down: nothing. */
static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();

  fixture->document = sw_document_new (programme, NULL);
  sample_append (nth_section (fixture, 0), exercise_item ("a", SW_POSITION_SITTING));
  sample_append (nth_section (fixture, 1), exercise_item ("b", SW_POSITION_STANDING));
  sample_append (nth_section (fixture, 1), exercise_item ("c", SW_POSITION_SITTING));
  sample_append (nth_section (fixture, 1), exercise_item ("d", SW_POSITION_SITTING));
  sw_history_set_string (history_of (fixture), "Name", programme, "title", "x");

  fixture->model = sw_canvas_model_new (fixture->document);
  fixture->shadow = g_ptr_array_new_with_free_func (g_object_unref);
  items_changed_cb (G_LIST_MODEL (fixture->model), 0, 0, g_list_model_get_n_items (G_LIST_MODEL (fixture->model)),
                    fixture);
  fixture->n_announced = 0;
  g_signal_connect (fixture->model, "items-changed", G_CALLBACK (items_changed_cb), fixture);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_ptr_array_unref (fixture->shadow);
  g_assert_finalize_object (fixture->model);
  g_assert_finalize_object (fixture->document);
}

static char *
row_to_string (SwCanvasRow *row)
{
  SwItem *item = sw_canvas_row_get_item (row);

  switch (sw_canvas_row_get_kind (row))
    {
    case SW_CANVAS_ROW_SECTION:
      return g_strdup_printf ("#%d", (int) sw_section_get_kind (sw_canvas_row_get_section (row)));
    case SW_CANVAS_ROW_ITEM:
      return g_strdup (sw_item_get_id (item));
    case SW_CANVAS_ROW_CIRCUIT:
      return g_strdup ("(");
    case SW_CANVAS_ROW_MEMBER:
      return g_strdup_printf (".%s", sw_item_get_id (item));
    case SW_CANVAS_ROW_EMPTY:
    default:
      return g_strdup (sw_canvas_row_get_circuit (row) != NULL ? ".-" : "-");
    }
}

static char *
rows_to_string (GPtrArray *rows)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      g_autofree char *word = row_to_string (rows->pdata[i]);

      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", word);
    }

  return g_string_free (text, FALSE);
}

static void
add_items_as_string (GString    *text,
                     GListModel *items,
                     const char *prefix)
{
  if (g_list_model_get_n_items (items) == 0)
    g_string_append_printf (text, " %s-", prefix);

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) != SW_ITEM_CIRCUIT)
        {
          g_string_append_printf (text, " %s%s", prefix, sw_item_get_id (item));
          continue;
        }
      g_string_append (text, " (");
      add_items_as_string (text, G_LIST_MODEL (sw_item_get_items (item)), ".");
    }
}

/* The same text from the document itself. */
static char *
session_to_string (Fixture *fixture)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (fixture->document)));
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      g_string_append_printf (text, " #%d", (int) sw_section_get_kind (section));
      add_items_as_string (text, G_LIST_MODEL (sw_section_get_items (section)), "");
    }
  if (text->len > 0)
    g_string_erase (text, 0, 1);

  return g_string_free (text, FALSE);
}

static void
assert_rows (Fixture    *fixture,
             const char *expected)
{
  g_autofree char *shown = rows_to_string (fixture->shadow);

  g_assert_cmpstr (shown, ==, expected);
}

static SwCanvasRow *
row_of (Fixture  *fixture,
        gpointer  object)
{
  return sw_canvas_model_get_row (fixture->model, sw_canvas_model_find (fixture->model, object));
}

static void
test_rows (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) members = g_ptr_array_new ();

  assert_rows (fixture, "#0 a #1 b c d #2 -");

  g_ptr_array_add (members, nth_item (fixture, 1, 1));
  g_ptr_array_add (members, nth_item (fixture, 1, 2));
  sw_edit_make_circuit (history_of (fixture), programme_of (fixture), members, "Make a circuit");
  assert_rows (fixture, "#0 a #1 b ( .c .d #2 -");

  sw_edit_remove (history_of (fixture), programme_of (fixture), members, "Remove");
  assert_rows (fixture, "#0 a #1 b ( .- #2 -");

  sw_history_undo (history_of (fixture));
  sw_history_undo (history_of (fixture));
  assert_rows (fixture, "#0 a #1 b c d #2 -");
}

/* A move announces the rows between its two ends and nothing else, and they are the same objects after it. */
static void
test_smallest_range (Fixture       *fixture,
                     gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) moved = g_ptr_array_new ();
  SwCanvasRow *b = row_of (fixture, nth_item (fixture, 1, 0));
  SwCanvasRow *c = row_of (fixture, nth_item (fixture, 1, 1));

  g_ptr_array_add (moved, nth_item (fixture, 1, 0));
  g_assert_true (sw_edit_shift (history_of (fixture), programme_of (fixture), moved, 1, "Move"));
  assert_rows (fixture, "#0 a #1 c b d #2 -");
  g_assert_cmpuint (fixture->n_announced, ==, 1);
  g_assert_cmpuint (fixture->position, ==, 3);
  g_assert_cmpuint (fixture->n_removed, ==, 2);
  g_assert_cmpuint (fixture->n_added, ==, 2);
  g_assert_true (sw_canvas_model_get_row (fixture->model, 3) == c);
  g_assert_true (sw_canvas_model_get_row (fixture->model, 4) == b);

  /* Into the empty section: the row that stood in for its items goes, the moved row is still itself. */
  sw_edit_move (history_of (fixture), programme_of (fixture), moved, sw_section_get_items (nth_section (fixture, 2)),
                0, "Move");
  assert_rows (fixture, "#0 a #1 c d #2 b");
  g_assert_true (row_of (fixture, moved->pdata[0]) == b);
}

/* A change of words changes faces, not rows. */
static void
test_no_change (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  sw_history_set_string (history_of (fixture), "Note", nth_item (fixture, 1, 0), "note", "Slowly.\nHold on.");

  g_assert_cmpuint (fixture->n_announced, ==, 0);
  g_assert_cmpstr (sw_canvas_row_get_face (row_of (fixture, nth_item (fixture, 1, 0)))->note, ==,
                   "Slowly. Hold on.");
}

static void
count_cb (guint *count)
{
  (*count)++;
}

/* Only rows whose words differ are drawn anew. */
static void
test_changed_rows (Fixture       *fixture,
                   gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = nth_item (fixture, 1, 1);
  guint n_before = 0, n_self = 0, n_after = 0;
  SwDose dose = *sw_item_get_dose (item);

  g_signal_connect_swapped (row_of (fixture, nth_item (fixture, 1, 0)), "changed", G_CALLBACK (count_cb), &n_before);
  g_signal_connect_swapped (row_of (fixture, item), "changed", G_CALLBACK (count_cb), &n_self);
  g_signal_connect_swapped (row_of (fixture, nth_item (fixture, 1, 2)), "changed", G_CALLBACK (count_cb), &n_after);
  dose.reps_low = dose.reps_high = 20;
  sw_history_set_boxed (history_of (fixture), "Dose", item, "dose", &dose);

  g_assert_cmpuint (n_before, ==, 0);
  g_assert_cmpuint (n_self, ==, 1);
  g_assert_cmpuint (n_after, ==, 1); /* it starts later now */
}

static const SwClockEntry *
clock_entry_of (Fixture *fixture,
                SwItem  *item)
{
  const SwClock *clock = sw_document_get_clock (fixture->document);

  for (guint i = 0; i < clock->entries->len; i++)
    if (g_array_index (clock->entries, SwClockEntry, i).item == item)
      return &g_array_index (clock->entries, SwClockEntry, i);

  g_assert_not_reached ();
}

static void
test_faces (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  const SwCanvasFace *a = sw_canvas_row_get_face (row_of (fixture, nth_item (fixture, 0, 0)));
  const SwCanvasFace *b = sw_canvas_row_get_face (row_of (fixture, nth_item (fixture, 1, 0)));
  const SwCanvasFace *d = sw_canvas_row_get_face (row_of (fixture, nth_item (fixture, 1, 2)));
  const SwCanvasFace *main = sw_canvas_row_get_face (row_of (fixture, nth_section (fixture, 1)));
  const SwClockEntry *entry = clock_entry_of (fixture, nth_item (fixture, 1, 2));
  g_autofree char *start = sw_clock_to_words ((entry->start.low_s + entry->start.high_s) / 2.0);
  g_autofree char *length = sw_label_duration (entry->length.low_s, entry->length.high_s);

  g_assert_cmpstr (a->label, ==, "a, 1 of 4");
  g_assert_cmpstr (d->label, ==, "d, 4 of 4");
  g_assert_cmpuint (d->number, ==, 4);
  g_assert_cmpstr (main->label, ==, "Main work, section 2 of 3");
  g_assert_cmpstr (a->start, ==, "0:00");
  g_assert_cmpstr (d->start, ==, start);
  g_assert_cmpstr (d->length, ==, length);

  /* The ribbon: sitting through the header, one step to standing at b, one back at c, none at d. */
  g_assert_cmpint (main->before, ==, SW_POSITION_SITTING);
  g_assert_cmpint (main->position, ==, SW_POSITION_SITTING);
  g_assert_cmpint (b->before, ==, SW_POSITION_SITTING);
  g_assert_cmpint (b->position, ==, SW_POSITION_STANDING);
  g_assert_true (g_str_has_prefix (b->change, sw_label (SW_TYPE_POSITION, SW_POSITION_STANDING)));
  g_assert_nonnull (strstr (b->description, b->change));
  g_assert_cmpint (d->before, ==, d->position);
  g_assert_null (d->change);
}

static void
test_members (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) members = g_ptr_array_new ();
  SwItem *circuit;

  g_ptr_array_add (members, nth_item (fixture, 1, 0));
  g_ptr_array_add (members, nth_item (fixture, 1, 1));
  circuit = sw_edit_make_circuit (history_of (fixture), programme_of (fixture), members, "Make a circuit");

  g_assert_false (sw_canvas_row_get_face (row_of (fixture, members->pdata[0]))->last);
  g_assert_true (sw_canvas_row_get_face (row_of (fixture, members->pdata[1]))->last);
  g_assert_true (sw_canvas_row_get_circuit (row_of (fixture, members->pdata[1])) == circuit);
  g_assert_cmpstr (sw_canvas_row_get_face (row_of (fixture, members->pdata[1]))->label, ==, "c, 3 of 4");
  g_assert_cmpint (sw_canvas_row_get_kind (row_of (fixture, circuit)), ==, SW_CANVAS_ROW_CIRCUIT);
}

/* What is selected is what is chosen, both ways; headers cannot be. */
static void
test_selection (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  GtkSelectionModel *selection = GTK_SELECTION_MODEL (fixture->model);
  GPtrArray *chosen = sw_document_get_chosen (fixture->document);
  g_autoptr (GtkBitset) selected = NULL;

  sw_document_choose_item (fixture->document, nth_item (fixture, 1, 1));
  g_assert_true (gtk_selection_model_is_selected (selection, 4));
  g_assert_false (gtk_selection_model_is_selected (selection, 3));

  gtk_selection_model_select_item (selection, 3, TRUE);
  g_assert_true (sw_document_get_chosen_item (fixture->document) == nth_item (fixture, 1, 0));

  gtk_selection_model_select_range (selection, 1, 3, TRUE);
  g_assert_cmpuint (chosen->len, ==, 2); /* a and b; the header between them is none */
  gtk_selection_model_unselect_item (selection, 1);
  g_assert_cmpuint (chosen->len, ==, 1);

  gtk_selection_model_select_all (selection);
  g_assert_cmpuint (chosen->len, ==, 4);
  selected = gtk_selection_model_get_selection (selection);
  g_assert_cmpuint (gtk_bitset_get_size (selected), ==, 4);

  gtk_selection_model_select_item (selection, 0, TRUE);
  g_assert_cmpuint (chosen->len, ==, 0);
}

/* What is moved stays selected. */
static void
test_selection_moves (Fixture       *fixture,
                      gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = nth_item (fixture, 1, 2);
  g_autoptr (GPtrArray) moved = g_ptr_array_new ();

  g_ptr_array_add (moved, item);
  sw_document_choose (fixture->document, moved);
  sw_edit_move (history_of (fixture), programme_of (fixture), moved, sw_section_get_items (nth_section (fixture, 0)),
                0, "Move");

  assert_rows (fixture, "#0 d a #1 b c #2 -");
  g_assert_true (sw_document_get_chosen_item (fixture->document) == item);
  g_assert_true (gtk_selection_model_is_selected (GTK_SELECTION_MODEL (fixture->model), 1));
}

static GPtrArray *
random_items (Fixture *fixture,
              GRand   *random)
{
  GPtrArray *items = sw_programme_dup_items (programme_of (fixture));

  for (guint i = items->len; i > 0; i--)
    if (g_rand_int_range (random, 0, 3) > 0)
      g_ptr_array_remove_index (items, i - 1);
  return items;
}

static void
edit_at_random (Fixture *fixture,
                GRand   *random)
{
  SwHistory *history = history_of (fixture);
  SwProgramme *programme = programme_of (fixture);
  g_autoptr (GPtrArray) items = random_items (fixture, random);
  g_autoptr (GPtrArray) copies = NULL;
  g_autoptr (SwItem) added = NULL;
  guint n_items;

  switch (g_rand_int_range (random, 0, 8))
    {
    case 0:
      added = exercise_item (g_rand_boolean (random) ? "e" : "f",
                             (SwPosition) g_rand_int_range (random, 0, SW_POSITION_FACE_DOWN + 1));
      sw_edit_add_exercise (history, programme, sw_document_get_session (fixture->document),
                            sw_item_get_exercise (added), "Add");
      break;
    case 1:
      sw_edit_remove (history, programme, items, "Remove");
      break;
    case 2:
      n_items = items->len;
      copies = n_items < 6 ? sw_edit_duplicate (history, programme, items, "Duplicate") : NULL;
      break;
    case 3:
      sw_edit_make_circuit (history, programme, items, "Make a circuit");
      break;
    case 4:
      sw_history_undo (history);
      break;
    case 5:
      sw_history_redo (history);
      break;
    case 6:
      sw_edit_move (history, programme, items,
                    sw_section_get_items (nth_section (fixture, (guint) g_rand_int_range (random, 0, 3))), 0, "Move");
      break;
    case 7:
    default:
      sw_edit_shift (history, programme, items, g_rand_boolean (random) ? 1 : -1, "Move");
      break;
    }
}

static void
test_random (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  guint32 seed = g_test_rand_int_range (0, G_MAXINT32) & 0x7fffffff;
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 1500; i++)
    {
      g_autofree char *expected = NULL;

      edit_at_random (fixture, random);
      expected = session_to_string (fixture);
      assert_rows (fixture, expected);
      for (guint j = 0; j < fixture->shadow->len; j++)
        g_assert_true (fixture->shadow->pdata[j] == sw_canvas_model_get_row (fixture->model, j));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/canvas/rows", Fixture, NULL, set_up, test_rows, tear_down);
  g_test_add ("/canvas/smallest-range", Fixture, NULL, set_up, test_smallest_range, tear_down);
  g_test_add ("/canvas/no-change", Fixture, NULL, set_up, test_no_change, tear_down);
  g_test_add ("/canvas/changed-rows", Fixture, NULL, set_up, test_changed_rows, tear_down);
  g_test_add ("/canvas/faces", Fixture, NULL, set_up, test_faces, tear_down);
  g_test_add ("/canvas/members", Fixture, NULL, set_up, test_members, tear_down);
  g_test_add ("/canvas/selection", Fixture, NULL, set_up, test_selection, tear_down);
  g_test_add ("/canvas/selection-moves", Fixture, NULL, set_up, test_selection_moves, tear_down);
  g_test_add ("/canvas/random", Fixture, NULL, set_up, test_random, tear_down);

  return g_test_run ();
}
