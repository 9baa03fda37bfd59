/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Undo and redo: what is one step, what is modified, what is announced. */
#include "config.h"

#include <math.h>

#include "sample.h"
#include "sw-history.h"

static void
count_cb (SwHistory *history G_GNUC_UNUSED,
          guint     *count)
{
  (*count)++;
}

static void
notify_cb (GObject    *object G_GNUC_UNUSED,
           GParamSpec *pspec G_GNUC_UNUSED,
           guint      *count)
{
  (*count)++;
}

static void
test_set (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwClient) client = sw_client_new ();
  guint n_changed = 0, n_notified = 0, n_can_undo = 0;

  g_signal_connect (history, "changed", G_CALLBACK (count_cb), &n_changed);
  g_signal_connect (history, "notify::can-undo", G_CALLBACK (notify_cb), &n_can_undo);
  g_signal_connect (client, "notify::name", G_CALLBACK (notify_cb), &n_notified);

  g_assert_false (sw_history_get_can_undo (history));
  g_assert_null (sw_history_get_undo_label (history));
  sw_history_set_string (history, "Name the client", client, "name", "Ada");
  g_assert_cmpstr (sw_client_get_name (client), ==, "Ada");
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Name the client");
  g_assert_cmpuint (n_changed, ==, 1);
  g_assert_cmpuint (n_notified, ==, 1);
  g_assert_cmpuint (n_can_undo, ==, 1);
  g_assert_true (sw_history_get_modified (history));

  /* An equal value is no edit. */
  sw_history_set_string (history, "Again", client, "name", "Ada");
  g_assert_cmpuint (n_changed, ==, 1);

  sw_history_undo (history);
  g_assert_cmpstr (sw_client_get_name (client), ==, "");
  g_assert_cmpstr (sw_history_get_redo_label (history), ==, "Name the client");
  g_assert_false (sw_history_get_modified (history));
  g_assert_cmpuint (n_changed, ==, 2);
  sw_history_redo (history);
  g_assert_cmpstr (sw_client_get_name (client), ==, "Ada");

  /* Nothing more to redo or, twice back, to undo: no harm, no signal. */
  sw_history_redo (history);
  sw_history_undo (history);
  sw_history_undo (history);
  g_assert_cmpuint (n_changed, ==, 4);
}

static void
test_types (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwClient) client = sw_client_new ();

  sw_history_set_int (history, "", client, "birth-year", 1953);
  sw_history_set_int (history, "", client, "dominant-side", SW_BODY_SIDE_LEFT);
  sw_history_set_int (history, "", client, "precautions", (gint64) SW_SET (SW_PRECAUTION_FALL_RISK));
  sw_history_set_int (history, "", client, "text-points", 16);
  g_assert_cmpint (sw_client_get_birth_year (client), ==, 1953);
  g_assert_cmpint (sw_client_get_dominant_side (client), ==, SW_BODY_SIDE_LEFT);
  g_assert_cmpuint (sw_client_get_precautions (client), ==, SW_SET (SW_PRECAUTION_FALL_RISK));
  g_assert_cmpfloat (sw_client_get_text_points (client), ==, 16.0);

  /* Beyond a property's range its end is set, and undone into what was there. */
  sw_history_set_int (history, "", client, "minutes", 100000);
  g_assert_cmpint (sw_client_get_minutes (client), ==, 240);
  while (sw_history_get_can_undo (history))
    sw_history_undo (history);
  g_assert_cmpint (sw_client_get_minutes (client), ==, 0);
  g_assert_cmpint (sw_client_get_birth_year (client), ==, 0);
  g_assert_cmpfloat (sw_client_get_text_points (client), ==, 14.0);
}

/* A value that was not taken is NaN, which is no number's equal but its own. */
static void
test_not_taken (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-03-09", "Heel raises", SW_MEASURE_REPETITIONS);
  g_auto (GValue) value = G_VALUE_INIT;

  g_value_init (&value, G_TYPE_DOUBLE);
  g_value_set_double (&value, NAN);
  sw_history_set (history, "Left", measurement, "left", &value);
  g_assert_false (sw_history_get_can_undo (history));

  g_value_set_double (&value, 14.0);
  sw_history_set (history, "Left", measurement, "left", &value);
  g_assert_cmpfloat (sw_measurement_get_left (measurement), ==, 14.0);
  sw_history_stop_merging (history);
  g_value_set_double (&value, NAN);
  sw_history_set (history, "Left", measurement, "left", &value);
  g_assert_true (isnan (sw_measurement_get_left (measurement)));

  sw_history_undo (history);
  g_assert_cmpfloat (sw_measurement_get_left (measurement), ==, 14.0);
  sw_history_undo (history);
  g_assert_true (isnan (sw_measurement_get_left (measurement)));
}

static void
test_merge (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwItem) item = sample_item ("a", "3 x 12");
  g_autoptr (SwItem) other = sample_item ("b", "3 x 12");
  SwDose dose = *sw_item_get_dose (item);

  for (int sets = 4; sets <= 9; sets++)
    {
      dose.sets = sets;
      sw_history_set_boxed (history, "Sets", item, "dose", &dose);
    }
  sw_history_undo (history);
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 3);
  g_assert_false (sw_history_get_can_undo (history));
  sw_history_redo (history);
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 9);

  /* After an undo or redo, after leaving the field, and for another object or property: a step of its own. */
  dose.sets = 10;
  sw_history_set_boxed (history, "Sets", item, "dose", &dose);
  sw_history_stop_merging (history);
  dose.sets = 11;
  sw_history_set_boxed (history, "Sets", item, "dose", &dose);
  sw_history_set_boxed (history, "Sets", other, "dose", &dose);
  sw_history_set_string (history, "Note", item, "note", "slowly");
  sw_history_set_string (history, "Note", item, "note", "slowly!");
  sw_history_undo (history);
  g_assert_cmpstr (sw_item_get_note (item), ==, "");
  sw_history_undo (history);
  g_assert_cmpint (sw_item_get_dose (other)->sets, ==, 3);
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 11);
  sw_history_undo (history);
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 10);
  sw_history_undo (history);
  g_assert_cmpint (sw_item_get_dose (item)->sets, ==, 9);
}

/* Typed and rubbed out again: nothing to undo, not modified. */
static void
test_merge_to_nothing (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwClient) client = sw_client_new ();

  sw_history_set_string (history, "Name", client, "name", "A");
  sw_history_set_string (history, "Name", client, "name", "");
  g_assert_false (sw_history_get_can_undo (history));
  g_assert_false (sw_history_get_modified (history));
}

static void
test_group (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwClient) client = sw_client_new ();
  guint n_changed = 0;

  g_signal_connect (history, "changed", G_CALLBACK (count_cb), &n_changed);
  sw_history_begin (history, "Fill in");
  sw_history_set_string (history, "inner", client, "name", "Ada");
  sw_history_begin (history, "inner");
  sw_history_set_int (history, "inner", client, "minutes", 20);
  sw_history_end (history);
  g_assert_cmpuint (n_changed, ==, 0);
  sw_history_end (history);
  g_assert_cmpuint (n_changed, ==, 1);
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Fill in");

  sw_history_begin (history, "Nothing");
  sw_history_end (history);
  g_assert_cmpuint (n_changed, ==, 1);
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Fill in");

  sw_history_undo (history);
  g_assert_cmpstr (sw_client_get_name (client), ==, "");
  g_assert_cmpint (sw_client_get_minutes (client), ==, 0);
  g_assert_false (sw_history_get_can_undo (history));
}

static void
test_saved (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (SwClient) client = sw_client_new ();
  guint64 mark;

  sw_history_set_string (history, "", client, "name", "A");
  mark = sw_history_get_mark (history);
  sw_history_set_string (history, "", client, "name", "AB");
  sw_history_set_saved_mark (history, mark);
  g_assert_true (sw_history_get_modified (history)); /* typed on while the save ran */

  sw_history_set_saved_mark (history, sw_history_get_mark (history));
  g_assert_false (sw_history_get_modified (history));
  sw_history_undo (history);
  g_assert_true (sw_history_get_modified (history));
  sw_history_redo (history);
  g_assert_false (sw_history_get_modified (history));

  /* The saved state lies in what another edit discards: no way back to it, however often one undoes. */
  sw_history_undo (history);
  sw_history_set_string (history, "", client, "name", "C");
  g_assert_true (sw_history_get_modified (history));
  sw_history_undo (history);
  g_assert_true (sw_history_get_modified (history));
  sw_history_redo (history);
  g_assert_true (sw_history_get_modified (history));

  /* A document brought back from a draft has no saved state at all. */
  sw_history_set_saved_mark (history, G_MAXUINT64);
  while (sw_history_get_can_undo (history))
    sw_history_undo (history);
  g_assert_true (sw_history_get_modified (history));
}

static void
test_splice (void)
{
  g_autoptr (SwHistory) history = sw_history_new ();
  g_autoptr (GListStore) list = g_list_store_new (SW_TYPE_ITEM);
  g_autoptr (SwItem) a = sample_item ("a", "3 x 12");
  g_autoptr (SwItem) b = sample_item ("b", "3 x 12");
  gpointer both[] = { a, b };
  g_autoptr (SwItem) back = NULL;

  sw_history_splice (history, "Add", list, 0, 0, both, 2);
  sw_history_splice (history, "Remove", list, 0, 1, NULL, 0);
  sw_history_set_string (history, "Note", b, "note", "x");
  sw_history_splice (history, "Clear", list, 0, 1, NULL, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (list)), ==, 0);
  sw_history_undo (history);
  sw_history_undo (history);
  sw_history_undo (history);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (list)), ==, 2);
  back = g_list_model_get_item (G_LIST_MODEL (list), 0);
  g_assert_true (back == a);
  g_assert_cmpstr (sw_item_get_note (b), ==, "");
}

/* The history lets go of everything it kept. */
static void
test_finalize (void)
{
  SwHistory *history = sw_history_new ();
  SwItem *item = sample_item ("a", "3 x 12");
  GListStore *list = g_list_store_new (SW_TYPE_ITEM);
  gpointer addition = item;

  sw_history_splice (history, "Add", list, 0, 0, &addition, 1);
  sw_history_set_string (history, "Note", item, "note", "x");
  sw_history_splice (history, "Remove", list, 0, 1, NULL, 0);
  sw_history_undo (history);
  g_assert_finalize_object (history);
  g_assert_finalize_object (list);
  g_assert_finalize_object (item);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/model/history/set", test_set);
  g_test_add_func ("/model/history/types", test_types);
  g_test_add_func ("/model/history/not-taken", test_not_taken);
  g_test_add_func ("/model/history/merge", test_merge);
  g_test_add_func ("/model/history/merge-to-nothing", test_merge_to_nothing);
  g_test_add_func ("/model/history/group", test_group);
  g_test_add_func ("/model/history/saved", test_saved);
  g_test_add_func ("/model/history/splice", test_splice);
  g_test_add_func ("/model/history/finalize", test_finalize);

  return g_test_run ();
}
