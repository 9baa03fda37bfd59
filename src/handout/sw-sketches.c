/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures that were drawn last. After an edit nearly all that a page shows are as they were. */
#include "config.h"

#include "sw-sketches.h"

/* Some hundred pictures: more than are seen at once. */
#define MOST_BYTES (4u << 20)

/* @known: Drawn, its own key; @order: what was drawn longest ago first. */
struct _SwSketches
{
  GHashTable *known;
  GQueue order;
  gsize n_bytes;
};

typedef struct
{
  SwFigure *figure;
  double width_pt;
  double height_pt;
  SwSketch *sketch;
  GList link;
} Drawn;

static guint
hash_drawn (gconstpointer data)
{
  const Drawn *drawn = data;

  return g_direct_hash (drawn->figure) ^ g_double_hash (&drawn->width_pt) ^ (g_double_hash (&drawn->height_pt) << 1);
}

static gboolean
equal_drawn (gconstpointer a,
             gconstpointer b)
{
  const Drawn *one = a;
  const Drawn *other = b;

  return one->figure == other->figure && one->width_pt == other->width_pt && one->height_pt == other->height_pt;
}

static void
free_drawn (gpointer data)
{
  Drawn *drawn = data;

  g_object_unref (drawn->figure);
  sw_sketch_free (drawn->sketch);
  g_free (drawn);
}

/**
 * sw_sketches_new:
 *
 * Returns: (transfer full): none yet
 */
SwSketches *
sw_sketches_new (void)
{
  SwSketches *self = g_atomic_rc_box_new0 (SwSketches);

  self->known = g_hash_table_new_full (hash_drawn, equal_drawn, free_drawn, NULL);
  return self;
}

SwSketches *
sw_sketches_ref (SwSketches *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  SwSketches *self = data;

  g_hash_table_unref (self->known);
}

void
sw_sketches_unref (SwSketches *self)
{
  g_atomic_rc_box_release_full (self, clear);
}

static void
forget_oldest (SwSketches *self)
{
  Drawn *oldest = g_queue_peek_head (&self->order);

  g_queue_unlink (&self->order, &oldest->link);
  self->n_bytes -= sw_sketch_get_n_bytes (oldest->sketch);
  g_hash_table_remove (self->known, oldest);
}

/**
 * sw_sketches_get:
 * @figure: a figure
 * @width_pt: of the box it is drawn into
 * @height_pt: of the box
 *
 * Returns: (transfer none): how it looks there; valid until the next one is asked for
 */
const SwSketch *
sw_sketches_get (SwSketches *self,
                 SwFigure   *figure,
                 double      width_pt,
                 double      height_pt)
{
  const Drawn wanted = { .figure = figure, .width_pt = width_pt, .height_pt = height_pt };
  Drawn *drawn = g_hash_table_lookup (self->known, &wanted);

  if (drawn != NULL)
    g_queue_unlink (&self->order, &drawn->link);
  else
    {
      drawn = g_memdup2 (&wanted, sizeof wanted);
      g_object_ref (figure);
      drawn->sketch = sw_figure_sketch (figure, width_pt, height_pt);
      drawn->link.data = drawn;
      self->n_bytes += sw_sketch_get_n_bytes (drawn->sketch);
      g_hash_table_add (self->known, drawn);
    }
  g_queue_push_tail_link (&self->order, &drawn->link);
  while (self->n_bytes > MOST_BYTES && self->order.length > 1)
    forget_oldest (self);
  return drawn->sketch;
}
