/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cache of pictures: drawn in the background, the last asked for first, kept while there is room. */
#include "config.h"

#include "sw-catalogue-folder.h"
#include "sw-pictures.h"

#define SIZE_PX 40
#define N_MANY 1000

typedef struct
{
  SwPictures *pictures;
  SwExercise *shipped;
  GPtrArray *ready; /* of SwExercise, in the order they came */
  gboolean again;   /* whether one was given up */
} Fixture;

static void
ready_cb (Fixture    *fixture,
          SwExercise *exercise)
{
  if (exercise == NULL)
    fixture->again = TRUE;
  else
    g_ptr_array_add (fixture->ready, exercise);
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  fixture->pictures = sw_pictures_new ();
  fixture->shipped = sw_catalogue_load_exercise ("bridge", NULL);
  fixture->ready = g_ptr_array_new ();
  g_assert_nonnull (fixture->shipped);
  g_signal_connect_swapped (fixture->pictures, "ready", G_CALLBACK (ready_cb), fixture);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  /* The worker of the last picture may still hold on to it for a moment. */
  g_object_unref (fixture->pictures);
  g_object_unref (fixture->shipped);
  g_ptr_array_unref (fixture->ready);
}

/* The shipped exercise under ids of their own: for the cache these are different exercises. */
static GPtrArray *
make_copies (Fixture *fixture,
             guint    n)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func (g_object_unref);
  SwExerciseFacts facts = *sw_exercise_get_facts (fixture->shipped);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("copy-%u", i);
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);

      facts.id = id;
      g_ptr_array_add (texts, sw_exercise_text_new ("en"));
      g_ptr_array_add (copies, sw_exercise_new (&facts, texts, sw_exercise_get_figure (fixture->shipped), NULL));
    }

  return copies;
}

static GdkTexture *
look (Fixture    *fixture,
      SwExercise *exercise)
{
  return sw_pictures_lookup (fixture->pictures, exercise, FALSE, SIZE_PX, SIZE_PX, 1);
}

static void
wait_for (Fixture *fixture,
          guint    n)
{
  while (fixture->ready->len < n)
    g_main_context_iteration (NULL, TRUE);
}

static void
test_kept (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  GdkTexture *texture;

  g_assert_null (look (fixture, fixture->shipped));
  g_assert_null (look (fixture, fixture->shipped));
  wait_for (fixture, 1);
  texture = look (fixture, fixture->shipped);
  g_assert_true (GDK_IS_MEMORY_TEXTURE (texture));
  g_assert_cmpint (gdk_texture_get_width (texture), ==, SIZE_PX);
  g_assert_true (look (fixture, fixture->shipped) == texture);
  g_assert_cmpuint (fixture->ready->len, ==, 1);

  /* Another side, size or scale is another picture. */
  g_assert_null (sw_pictures_lookup (fixture->pictures, fixture->shipped, TRUE, SIZE_PX, SIZE_PX, 1));
  g_assert_null (sw_pictures_lookup (fixture->pictures, fixture->shipped, FALSE, SIZE_PX, SIZE_PX, 2));
  wait_for (fixture, 3);
  texture = sw_pictures_lookup (fixture->pictures, fixture->shipped, FALSE, SIZE_PX, SIZE_PX, 2);
  g_assert_cmpint (gdk_texture_get_width (texture), ==, 2 * SIZE_PX);
}

/* What is asked for again is as new, so that what is on the screen does not wait for what has been scrolled away. */
static void
test_order (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) copies = make_copies (fixture, 30);
  guint place;

  for (guint i = 0; i < copies->len; i++)
    g_assert_null (look (fixture, copies->pdata[i]));
  g_assert_null (look (fixture, copies->pdata[10]));
  wait_for (fixture, copies->len);

  /* Up to four were begun at once. */
  g_assert_true (g_ptr_array_find (fixture->ready, copies->pdata[10], &place));
  g_assert_cmpuint (place, <, 10);
  g_assert_true (g_ptr_array_find (fixture->ready, copies->pdata[29], &place));
  g_assert_cmpuint (place, <, 10);
  g_assert_true (g_ptr_array_find (fixture->ready, copies->pdata[5], &place));
  g_assert_cmpuint (place, >, 15);
}

/* Of far too many the oldest are given up, which is told once all others are there, and can be had again. */
static void
test_many (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) copies = make_copies (fixture, N_MANY);
  guint n_drawn;

  for (guint i = 0; i < copies->len; i++)
    g_assert_null (look (fixture, copies->pdata[i]));
  while (!fixture->again)
    g_main_context_iteration (NULL, TRUE);

  n_drawn = fixture->ready->len;
  g_assert_cmpuint (n_drawn, <, N_MANY / 2);
  g_assert_nonnull (look (fixture, copies->pdata[N_MANY - 1]));
  g_assert_null (look (fixture, copies->pdata[N_MANY / 2]));
  wait_for (fixture, n_drawn + 1);
  g_assert_nonnull (look (fixture, copies->pdata[N_MANY / 2]));
}

/* When there is no more room, what is looked at all the time stays. */
static void
test_room (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) copies = make_copies (fixture, 24);
  GdkTexture *first;

  /* 4 MB each. */
  for (guint i = 0; i < copies->len; i++)
    {
      g_assert_null (sw_pictures_lookup (fixture->pictures, copies->pdata[i], FALSE, 1024, 1024, 1));
      wait_for (fixture, i + 1);
      first = sw_pictures_lookup (fixture->pictures, copies->pdata[0], FALSE, 1024, 1024, 1);
      g_assert_nonnull (first);
    }
  g_assert_nonnull (sw_pictures_lookup (fixture->pictures, copies->pdata[23], FALSE, 1024, 1024, 1));
  g_assert_null (sw_pictures_lookup (fixture->pictures, copies->pdata[1], FALSE, 1024, 1024, 1));
  wait_for (fixture, copies->len + 1);
}

static void
test_no_figure (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  g_autoptr (SwExercise) exercise = NULL;

  g_ptr_array_add (texts, sw_exercise_text_new ("en"));
  exercise = sw_exercise_new (sw_exercise_get_facts (fixture->shipped), texts, NULL, NULL);
  g_assert_null (look (fixture, exercise));
  g_assert_null (sw_pictures_get_figure (fixture->pictures, exercise, FALSE));
  g_assert_false (g_main_context_iteration (NULL, FALSE));
}

#define ADD(name, function) g_test_add ("/window/pictures/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("kept", test_kept);
  ADD ("order", test_order);
  ADD ("many", test_many);
  ADD ("room", test_room);
  ADD ("no-figure", test_no_figure);
  return g_test_run ();
}
