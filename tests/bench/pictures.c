/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scrolling through 10,000 exercises: what the window's thread has to do for a frame of pictures, and how long the
 * pictures on the screen are waited for once it stands still, beside a floor measured in the same run: drawing the same
 * pictures one after another. Fails when a frame costs more than a twentieth of drawing its pictures, or when those on
 * the screen are waited for longer than three times as long as drawing them takes. */
#include "config.h"

#include <stdio.h>

#include "sw-catalogue-folder.h"
#include "sw-pictures.h"

#define N_EXERCISES 10000
#define N_ON_SCREEN 20
#define N_NEW_A_FRAME 10
#define FRAME_US (G_USEC_PER_SEC / 60)
#define WIDTH_PX 150
#define HEIGHT_PX 120
#define MOST_FRAME_RATIO 0.05
#define MOST_WAIT_RATIO 3.0

/* The shipped exercises again and again, under ids of their own. */
static GPtrArray *
make_exercises (void)
{
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (NULL, NULL);
  GListModel *shipped = G_LIST_MODEL (catalogue);
  GPtrArray *exercises = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < N_EXERCISES; i++)
    {
      g_autoptr (SwExercise) one = g_list_model_get_item (shipped, i % g_list_model_get_n_items (shipped));
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
      g_autofree char *id = g_strdup_printf ("exercise-%u", i);
      SwExerciseFacts facts = *sw_exercise_get_facts (one);

      facts.id = id;
      g_ptr_array_add (texts, sw_exercise_text_new ("en"));
      g_ptr_array_add (exercises, sw_exercise_new (&facts, texts, sw_exercise_get_figure (one), NULL));
    }

  return exercises;
}

static double
ms_since (gint64 start_us)
{
  return (double) (g_get_monotonic_time () - start_us) / 1000.0;
}

/* The floor: as many pictures as are on the screen. */
static double
draw_directly (GPtrArray *exercises)
{
  gint64 start = g_get_monotonic_time ();

  for (guint i = N_EXERCISES - N_ON_SCREEN; i < N_EXERCISES; i++)
    {
      g_autoptr (SwFigure) figure = sw_figure_new (sw_exercise_get_figure (exercises->pdata[i]), FALSE, NULL);
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH_PX, HEIGHT_PX);
      cairo_t *cr = cairo_create (surface);

      sw_figure_draw (figure, cr, WIDTH_PX, HEIGHT_PX);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }

  return ms_since (start);
}

/* One frame: looks at what is on the screen. Returns how many of the pictures are there. */
static guint
show (SwPictures *pictures,
      GPtrArray  *exercises,
      guint       first)
{
  guint n = 0;

  for (guint i = first; i < first + N_ON_SCREEN; i++)
    n += sw_pictures_lookup (pictures, exercises->pdata[i], FALSE, WIDTH_PX, HEIGHT_PX, 1) != NULL;

  return n;
}

int
main (void)
{
  g_autoptr (GPtrArray) exercises = make_exercises ();
  g_autoptr (SwPictures) pictures = sw_pictures_new ();
  double floor_ms = G_MAXDOUBLE, frame_ms = 0.0, wait_ms;
  guint n_frames = 0;
  gint64 start;

  for (int i = 0; i < 5; i++)
    {
      double ms = draw_directly (exercises);

      floor_ms = MIN (floor_ms, ms);
    }

  for (guint first = 0; first + N_ON_SCREEN < N_EXERCISES; first += N_NEW_A_FRAME)
    {
      start = g_get_monotonic_time ();
      show (pictures, exercises, first);
      while (g_main_context_iteration (NULL, FALSE))
        ;
      frame_ms += ms_since (start);
      n_frames++;
      g_usleep ((gulong) MAX (0, FRAME_US - (gint64) (ms_since (start) * 1000.0)));
    }
  frame_ms /= n_frames;

  start = g_get_monotonic_time ();
  while (show (pictures, exercises, N_EXERCISES - N_ON_SCREEN) < N_ON_SCREEN)
    g_main_context_iteration (NULL, TRUE);
  wait_ms = ms_since (start);

  printf ("%u frames through %d exercises: %.2f ms a frame, its %d pictures drawn %.1f ms: %.3f times (at most %.2f)\n",
          n_frames, N_EXERCISES, frame_ms, N_NEW_A_FRAME, floor_ms * N_NEW_A_FRAME / N_ON_SCREEN,
          frame_ms / (floor_ms * N_NEW_A_FRAME / N_ON_SCREEN), MOST_FRAME_RATIO);
  printf ("%d pictures on the screen waited for %.1f ms, drawn directly %.1f ms: %.2f times (at most %.1f)\n", N_ON_SCREEN,
          wait_ms, floor_ms, wait_ms / floor_ms, MOST_WAIT_RATIO);
  return frame_ms > MOST_FRAME_RATIO * floor_ms * N_NEW_A_FRAME / N_ON_SCREEN || wait_ms > MOST_WAIT_RATIO * floor_ms;
}
