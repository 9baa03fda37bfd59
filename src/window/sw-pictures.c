/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures for lists and cards: drawn once in a worker, then shown as textures. */
#include "config.h"

#include <cairo.h>

#include "sw-pictures.h"

/* About 32 MB of pictures of 150 x 120 pixels; a therapist scrolls through a few hundred. */
#define MAX_PICTURES 450
#define MAX_FIGURES 64
struct _SwPictures
{
  GObject parent_instance;

  GHashTable *textures; /* key -> GdkTexture, or NULL while it is being drawn */
  GHashTable *figures;  /* key -> SwFigure */
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (SwPictures, sw_pictures, G_TYPE_OBJECT)

enum
{
  READY,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* What a picture depends on. The exercise is kept alive by its key, so that its address stays its own. */
typedef struct
{
  SwExercise *exercise;
  gboolean mirrored;
  int width_px;
  int height_px;
  int scale;
} Key;

static Key *
key_new (SwExercise *exercise,
         gboolean    mirrored,
         int         width_px,
         int         height_px,
         int         scale)
{
  Key *key = g_new (Key, 1);

  *key = (Key){ g_object_ref (exercise), !!mirrored, width_px, height_px, scale };
  return key;
}

static void
key_free (gpointer data)
{
  Key *key = data;

  g_object_unref (key->exercise);
  g_free (key);
}

static guint
key_hash (gconstpointer data)
{
  const Key *key = data;

  return g_direct_hash (key->exercise) ^ (guint) (key->mirrored + 2 * key->width_px + 4099 * key->height_px
                                                  + 65537 * key->scale);
}

static gboolean
key_equal (gconstpointer a,
           gconstpointer b)
{
  const Key *one = a;
  const Key *other = b;

  return one->exercise == other->exercise && one->mirrored == other->mirrored
         && one->width_px == other->width_px && one->height_px == other->height_px
         && one->scale == other->scale;
}

static void
texture_unref (gpointer data)
{
  if (data != NULL)
    g_object_unref (data);
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Key *key = data;
  g_autoptr (SwFigure) figure = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  cairo_surface_t *surface;
  cairo_t *cr;
  int width = key->width_px * key->scale;
  int height = key->height_px * key->scale;

  if (g_task_return_error_if_cancelled (task))
    return;

  figure = sw_figure_new (sw_exercise_get_figure (key->exercise), key->mirrored, &error);
  if (figure == NULL)
    {
      g_task_return_error (task, g_steal_pointer (&error));
      return;
    }

  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cr = cairo_create (surface);
  cairo_scale (cr, key->scale, key->scale);
  sw_figure_draw (figure, cr, key->width_px, key->height_px);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  bytes = g_bytes_new (cairo_image_surface_get_data (surface),
                       (gsize) cairo_image_surface_get_stride (surface) * (gsize) height);
  g_task_return_pointer (task,
                         gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes,
                                                 (gsize) cairo_image_surface_get_stride (surface)),
                         g_object_unref);
  cairo_surface_destroy (surface);
  (void) source;
  (void) cancellable;
}

static void
drawn_cb (GObject      *object,
          GAsyncResult *result,
          gpointer      data)
{
  SwPictures *self = SW_PICTURES (object);
  GTask *task = G_TASK (result);
  const Key *key = g_task_get_task_data (task);
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture = g_task_propagate_pointer (task, &error);

  (void) data;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (texture == NULL)
    {
      /* The exercise stays usable without a picture; the store has already told what is wrong with it. */
      g_debug ("No picture of “%s”: %s", sw_exercise_get_id (key->exercise), error->message);
      return;
    }

  g_hash_table_insert (self->textures,
                       key_new (key->exercise, key->mirrored, key->width_px, key->height_px, key->scale),
                       g_steal_pointer (&texture));
  g_signal_emit (self, signals[READY], 0, key->exercise);
}

static void
sw_pictures_dispose (GObject *object)
{
  SwPictures *self = SW_PICTURES (object);

  g_cancellable_cancel (self->cancellable);
  g_hash_table_remove_all (self->textures);
  g_hash_table_remove_all (self->figures);

  G_OBJECT_CLASS (sw_pictures_parent_class)->dispose (object);
}

static void
sw_pictures_finalize (GObject *object)
{
  SwPictures *self = SW_PICTURES (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->textures, g_hash_table_unref);
  g_clear_pointer (&self->figures, g_hash_table_unref);

  G_OBJECT_CLASS (sw_pictures_parent_class)->finalize (object);
}

static void
sw_pictures_class_init (SwPicturesClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = sw_pictures_dispose;
  object_class->finalize = sw_pictures_finalize;

  signals[READY] = g_signal_new ("ready", SW_TYPE_PICTURES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, SW_TYPE_EXERCISE);
}

static void
sw_pictures_init (SwPictures *self)
{
  self->textures = g_hash_table_new_full (key_hash, key_equal, key_free, texture_unref);
  self->figures = g_hash_table_new_full (key_hash, key_equal, key_free, g_object_unref);
  self->cancellable = g_cancellable_new ();
}

/**
 * sw_pictures_new:
 *
 * Returns: (transfer full): an empty cache
 */
SwPictures *
sw_pictures_new (void)
{
  return g_object_new (SW_TYPE_PICTURES, NULL);
}

/**
 * sw_pictures_lookup:
 * @exercise: whose picture
 * @mirrored: whether the other side works
 * @width_px: width in logical pixels, above 0
 * @height_px: height in logical pixels, above 0
 * @scale: device pixels a logical one
 *
 * Returns: (transfer none) (nullable): the picture, or NULL when it is not there yet; then "ready" tells when
 */
GdkTexture *
sw_pictures_lookup (SwPictures *self,
                    SwExercise *exercise,
                    gboolean    mirrored,
                    int         width_px,
                    int         height_px,
                    int         scale)
{
  Key wanted = { exercise, !!mirrored, width_px, height_px, scale };
  g_autoptr (GTask) task = NULL;
  gpointer texture;

  g_return_val_if_fail (SW_IS_PICTURES (self), NULL);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  if (g_hash_table_lookup_extended (self->textures, &wanted, NULL, &texture))
    return texture;
  if (sw_exercise_get_figure (exercise) == NULL)
    return NULL;

  if (g_hash_table_size (self->textures) >= MAX_PICTURES)
    g_hash_table_remove_all (self->textures);
  g_hash_table_insert (self->textures, key_new (exercise, mirrored, width_px, height_px, scale), NULL);

  task = g_task_new (self, self->cancellable, drawn_cb, NULL);
  g_task_set_task_data (task, key_new (exercise, mirrored, width_px, height_px, scale), key_free);
  g_task_run_in_thread (task, draw_in_thread);

  return NULL;
}

/**
 * sw_pictures_get_figure:
 * @exercise: whose figure
 * @mirrored: whether the other side works
 *
 * Returns: (transfer none) (nullable): the solved figure, kept for the next time; NULL when the exercise has
 *   none that can be solved
 */
SwFigure *
sw_pictures_get_figure (SwPictures *self,
                        SwExercise *exercise,
                        gboolean    mirrored)
{
  Key wanted = { exercise, !!mirrored, 0, 0, 0 };
  SwFigure *figure;

  g_return_val_if_fail (SW_IS_PICTURES (self), NULL);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  figure = g_hash_table_lookup (self->figures, &wanted);
  if (figure != NULL || sw_exercise_get_figure (exercise) == NULL)
    return figure;

  figure = sw_figure_new (sw_exercise_get_figure (exercise), mirrored, NULL);
  if (figure == NULL)
    return NULL;

  if (g_hash_table_size (self->figures) >= MAX_FIGURES)
    g_hash_table_remove_all (self->figures);
  g_hash_table_insert (self->figures, key_new (exercise, mirrored, 0, 0, 0), figure);
  return figure;
}
