/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures for lists and cards: drawn once in a worker, then shown as textures. */
#include "config.h"

#include <cairo.h>

#include "sw-pictures.h"

/* What is kept of pictures and solved figures; a card's picture of 150 x 120 pixels takes 72 kB. */
#define MAX_BYTES (64 * 1024 * 1024)
#define MAX_FIGURES 64

/* Pictures asked for and not begun. More than any window shows: what is left of a fast scroll is forgotten. */
#define MAX_WAITING 200

#define BYTES_PER_PIXEL 4

struct _SwPictures
{
  GObject parent_instance;

  GHashTable *pictures; /* key -> Picture */
  GQueue recent;        /* of those that are drawn, the last used first */
  GQueue waiting;       /* of those to be drawn, the last asked for first */
  gsize n_bytes;
  guint n_drawing;
  guint n_workers;
  gboolean forgotten;   /* whether one that was asked for was given up */
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

typedef enum
{
  STATE_WAITING, /* its link is in "waiting" */
  STATE_BEGUN,   /* in neither queue; it stays here when it cannot be drawn, so that it is not tried again */
  STATE_DRAWN,   /* in "recent" */
} State;

/* A picture that was asked for. */
typedef struct
{
  Key *key;
  State state;
  GdkTexture *texture; /* when drawn */
  GList link;
} Picture;

static Picture *
picture_new (Key *key)
{
  Picture *picture = g_new0 (Picture, 1);

  picture->key = key;
  picture->link.data = picture;
  return picture;
}

static void
picture_free (gpointer data)
{
  Picture *picture = data;

  g_clear_object (&picture->texture);
  key_free (picture->key);
  g_free (picture);
}

static gsize
count_bytes (const Key *key)
{
  return (gsize) key->width_px * (gsize) key->height_px * (gsize) (key->scale * key->scale) * BYTES_PER_PIXEL;
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

/* Those not used for longest go first; the one just drawn stays in any case. */
static void
make_room (SwPictures *self)
{
  while (self->n_bytes > MAX_BYTES && self->recent.length > 1)
    {
      Picture *oldest = self->recent.tail->data;

      g_queue_unlink (&self->recent, &oldest->link);
      self->n_bytes -= count_bytes (oldest->key);
      g_hash_table_remove (self->pictures, oldest->key);
    }
}

static void drawn_cb (GObject      *object,
                      GAsyncResult *result,
                      gpointer      data);

/* The last asked for comes first: it is what is on the screen. */
static void
start_drawing (SwPictures *self)
{
  while (self->n_drawing < self->n_workers && self->waiting.length > 0)
    {
      Picture *picture = self->waiting.head->data;
      const Key *key = picture->key;
      g_autoptr (GTask) task = g_task_new (self, self->cancellable, drawn_cb, NULL);

      g_queue_unlink (&self->waiting, &picture->link);
      picture->state = STATE_BEGUN;
      g_task_set_task_data (task, key_new (key->exercise, key->mirrored, key->width_px, key->height_px, key->scale),
                            key_free);
      self->n_drawing++;
      g_task_run_in_thread (task, draw_in_thread);
    }

  if (self->n_drawing == 0 && self->forgotten)
    {
      self->forgotten = FALSE;
      g_signal_emit (self, signals[READY], 0, NULL);
    }
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
  Picture *picture;

  (void) data;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  self->n_drawing--;
  if (texture == NULL)
    {
      /* The exercise stays usable without a picture; the store has already told what is wrong with it. */
      g_debug ("No picture of “%s”: %s", sw_exercise_get_id (key->exercise), error->message);
      start_drawing (self);
      return;
    }

  picture = g_hash_table_lookup (self->pictures, key);
  picture->state = STATE_DRAWN;
  picture->texture = g_steal_pointer (&texture);
  g_queue_push_head_link (&self->recent, &picture->link);
  self->n_bytes += count_bytes (key);
  make_room (self);
  start_drawing (self);
  g_signal_emit (self, signals[READY], 0, key->exercise);
}

static void
sw_pictures_dispose (GObject *object)
{
  SwPictures *self = SW_PICTURES (object);

  g_cancellable_cancel (self->cancellable);
  g_queue_init (&self->recent);
  g_queue_init (&self->waiting);
  g_hash_table_remove_all (self->pictures);
  g_hash_table_remove_all (self->figures);

  G_OBJECT_CLASS (sw_pictures_parent_class)->dispose (object);
}

static void
sw_pictures_finalize (GObject *object)
{
  SwPictures *self = SW_PICTURES (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->pictures, g_hash_table_unref);
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
  /* The window's own thread keeps a processor for itself where there is more than one. */
  self->n_workers = CLAMP (g_get_num_processors () - 1, 1, 4);
  self->pictures = g_hash_table_new_full (key_hash, key_equal, NULL, picture_free);
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

static void
forget_oldest (SwPictures *self)
{
  Picture *oldest = self->waiting.tail->data;

  g_queue_unlink (&self->waiting, &oldest->link);
  g_hash_table_remove (self->pictures, oldest->key);
  self->forgotten = TRUE;
}

/* Moves a picture that is looked at, or still waited for, to the front of its queue. */
static void
touch (SwPictures *self,
       Picture    *picture)
{
  GQueue *queue = picture->state == STATE_DRAWN ? &self->recent : &self->waiting;

  if (picture->state == STATE_BEGUN)
    return;

  g_queue_unlink (queue, &picture->link);
  g_queue_push_head_link (queue, &picture->link);
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
  Picture *picture;

  g_return_val_if_fail (SW_IS_PICTURES (self), NULL);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  picture = g_hash_table_lookup (self->pictures, &wanted);
  if (picture != NULL)
    {
      touch (self, picture);
      return picture->texture;
    }
  if (sw_exercise_get_figure (exercise) == NULL)
    return NULL;

  if (self->waiting.length >= MAX_WAITING)
    forget_oldest (self);
  picture = picture_new (key_new (exercise, mirrored, width_px, height_px, scale));
  g_hash_table_insert (self->pictures, picture->key, picture);
  g_queue_push_head_link (&self->waiting, &picture->link);
  start_drawing (self);

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
