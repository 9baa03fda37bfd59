/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sw-exercise-list.h"

#define N_EXERCISES 12

static GPtrArray *
make_exercises (void)
{
  GPtrArray *exercises = g_ptr_array_new_with_free_func (g_object_unref);

  for (int i = 0; i < N_EXERCISES; i++)
    {
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
      g_autofree char *id = g_strdup_printf ("exercise-%d", i);
      SwExerciseFacts facts = { .id = id, .revision = 1, .pace_s = 3 };

      sw_dose_init (&facts.dose);
      g_ptr_array_add (texts, sw_exercise_text_new ("en"));
      g_ptr_array_add (exercises, sw_exercise_new (&facts, texts, NULL, NULL));
    }

  return exercises;
}

/* A list that knows only what items-changed tells, as a list widget does. */
typedef struct
{
  GPtrArray *items;
  guint n_emissions;
} Mirror;

static void
items_changed_cb (GListModel *model,
                  guint       position,
                  guint       n_removed,
                  guint       n_added,
                  gpointer    data)
{
  Mirror *mirror = data;
  gboolean run_begins_alike = FALSE;
  gboolean run_ends_alike = FALSE;

  g_assert_cmpuint (position + n_removed, <=, mirror->items->len);
  for (guint i = 0; i < n_added; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (model, position + i);

      if (i == 0 && n_removed > 0)
        run_begins_alike = exercise == mirror->items->pdata[position];
      if (i == n_added - 1 && n_removed > 0)
        run_ends_alike = exercise == mirror->items->pdata[position + n_removed - 1];
    }
  g_assert_false (run_begins_alike);
  g_assert_false (run_ends_alike);

  if (n_removed > 0)
    g_ptr_array_remove_range (mirror->items, position, n_removed);
  for (guint i = 0; i < n_added; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (model, position + i);

      g_ptr_array_insert (mirror->items, (int) (position + i), exercise);
    }
  mirror->n_emissions++;
}

static void
assert_same (GPtrArray      *wanted,
             SwExerciseList *list,
             Mirror         *mirror)
{
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (list)), ==, wanted->len);
  g_assert_cmpuint (mirror->items->len, ==, wanted->len);
  for (guint i = 0; i < wanted->len; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (list), i);

      g_assert_true (exercise == wanted->pdata[i]);
      g_assert_true (mirror->items->pdata[i] == wanted->pdata[i]);
    }
  g_assert_null (g_list_model_get_item (G_LIST_MODEL (list), wanted->len));
}

/* Some of the exercises, in a random order. */
static GPtrArray *
draw_result (GPtrArray *exercises)
{
  GPtrArray *result = g_ptr_array_new ();

  for (guint i = 0; i < exercises->len; i++)
    if (g_test_rand_bit ())
      g_ptr_array_insert (result, g_test_rand_int_range (0, (gint32) result->len + 1), exercises->pdata[i]);

  return result;
}

static void
test_tells_what_differs (void)
{
  g_autoptr (GPtrArray) exercises = make_exercises ();
  g_autoptr (GPtrArray) items = g_ptr_array_new ();
  Mirror mirror = { items, 0 };
  SwExerciseList *list = sw_exercise_list_new ();

  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &mirror);
  for (int round = 0; round < 2000; round++)
    {
      g_autoptr (GPtrArray) result = draw_result (exercises);
      guint before = mirror.n_emissions;

      sw_exercise_list_set (list, result);
      assert_same (result, list, &mirror);
      g_assert_cmpuint (mirror.n_emissions - before, <=, 1);

      before = mirror.n_emissions;
      sw_exercise_list_set (list, result);
      g_assert_cmpuint (mirror.n_emissions, ==, before);
    }

  g_assert_finalize_object (list);
}

/* The one case where "the same at the head and at the tail" could count an exercise twice. */
static void
test_shorter_by_repetition (void)
{
  g_autoptr (GPtrArray) exercises = make_exercises ();
  g_autoptr (GPtrArray) items = g_ptr_array_new ();
  g_autoptr (GPtrArray) twice = g_ptr_array_new ();
  g_autoptr (GPtrArray) once = g_ptr_array_new ();
  Mirror mirror = { items, 0 };
  SwExerciseList *list = sw_exercise_list_new ();

  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &mirror);
  g_ptr_array_add (once, exercises->pdata[0]);
  g_ptr_array_add (twice, exercises->pdata[0]);
  g_ptr_array_add (twice, exercises->pdata[0]);

  sw_exercise_list_set (list, twice);
  sw_exercise_list_set (list, once);
  assert_same (once, list, &mirror);
  sw_exercise_list_set (list, twice);
  assert_same (twice, list, &mirror);

  g_assert_finalize_object (list);
}

static void
test_find (void)
{
  g_autoptr (GPtrArray) exercises = make_exercises ();
  g_autoptr (GPtrArray) some = g_ptr_array_new ();
  SwExerciseList *list = sw_exercise_list_new ();
  guint position = 99;

  g_ptr_array_add (some, exercises->pdata[3]);
  g_ptr_array_add (some, exercises->pdata[1]);
  sw_exercise_list_set (list, some);

  g_assert_true (sw_exercise_list_find (list, exercises->pdata[1], &position));
  g_assert_cmpuint (position, ==, 1);
  g_assert_false (sw_exercise_list_find (list, exercises->pdata[2], &position));
  g_assert_cmpuint (position, ==, 1);

  g_assert_finalize_object (list);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/exercise-list/tells-what-differs", test_tells_what_differs);
  g_test_add_func ("/window/exercise-list/shorter-by-repetition", test_shorter_by_repetition);
  g_test_add_func ("/window/exercise-list/find", test_find);
  return g_test_run ();
}
