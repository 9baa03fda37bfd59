/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Close pictures: one hand with its forearm or one foot with its shank, with single fingers or toes. The rest of the body
 * is left out. */
#include "config.h"

#include "sw-figure-private.h"

#define BIT(part) (1u << (part))
/* The other hand is in the picture when it comes nearer than this. */
#define HANDS_MEET 0.13
/* A flat hand drawn finger by finger is thinner than the plain one that found its place: what it lies on comes up. */
#define SURFACE_UP 0.0075
/* A foot nearer to the floor than this stands on it. */
#define FOOT_DOWN 0.03
/* Things farther from hand or foot than this are not drawn. */
#define THING_NEAR 0.02

static guint
hand_parts (int side)
{
  guint right = BIT (SW_PART_FOREARM) | BIT (SW_PART_HAND) | BIT (SW_PART_THUMB) | BIT (SW_PART_INDEX)
                | BIT (SW_PART_MIDDLE) | BIT (SW_PART_RING) | BIT (SW_PART_LITTLE);

  return right << side;
}

static guint
foot_parts (int side)
{
  guint right = BIT (SW_PART_SHANK) | BIT (SW_PART_FOOT) | BIT (SW_PART_BIG_TOE) | BIT (SW_PART_SMALL_TOES);

  return right << side;
}

static gboolean
hands_meet (const SwFigure *self)
{
  for (int i = 0; i < self->solver.n_keys; i++)
    {
      const SwBody *body = &self->solver.keys[i].body;
      SwVector apart = sw_sub (sw_body_get_mark (body, SW_FIGURE_MARK_RIGHT_HAND),
                               sw_body_get_mark (body, SW_FIGURE_MARK_LEFT_HAND));

      if (sw_length (apart) < HANDS_MEET)
        return TRUE;
    }
  return FALSE;
}

/**
 * sw_close_get_side:
 * @self: a close figure
 *
 * Returns: the side of what is shown; of a figure that shows nothing, the working side
 */
SwFigureSide
sw_close_get_side (const SwFigure *self)
{
  SwFigureMark shown = self->solver.content->shown[0];
  int sided = (int) shown - (int) SW_FIGURE_MARK_RIGHT_SHOULDER;

  if (shown == SW_FIGURE_MARK_NONE || sided < 0)
    return self->mirrored ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;

  return sided % 2 == 1 ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
}

/**
 * sw_close_init:
 * @self: a figure whose poses are solved
 *
 * Finds out what the picture shows, and prepares its bodies for that.
 */
void
sw_close_init (SwFigure *self)
{
  SwFigureFrame frame = self->solver.content->frame;
  SwFigureSide side = sw_close_get_side (self);

  self->fine = frame == SW_FIGURE_FRAME_HAND || frame == SW_FIGURE_FRAME_FOOT;
  self->drawn = BIT (SW_N_PARTS) - 1;
  if (!self->fine)
    return;

  self->drawn = frame == SW_FIGURE_FRAME_FOOT ? foot_parts (side) : hand_parts (side);
  if (frame == SW_FIGURE_FRAME_HAND && hands_meet (self))
    self->drawn = hand_parts (SW_FIGURE_RIGHT) | hand_parts (SW_FIGURE_LEFT);
  self->solver.scene.counter_height += SURFACE_UP;
  for (int i = 0; i < self->solver.n_keys; i++)
    self->solver.keys[i].body.fine = TRUE;
  for (int i = 0; i < SW_N_FRAMES; i++)
    self->frames[i].body.fine = TRUE;
}

/**
 * sw_close_get_mark:
 * @self: a close figure
 * @nth: 0 and up
 *
 * Returns: one of the marks that an arrow may follow when the author does not say
 */
SwFigureMark
sw_close_get_mark (const SwFigure *self,
                   int             nth)
{
  static const SwFigureMark marks[]
      = { SW_FIGURE_MARK_RIGHT_FINGERS, SW_FIGURE_MARK_RIGHT_THUMB, SW_FIGURE_MARK_RIGHT_HAND };
  gboolean foot = self->solver.content->frame == SW_FIGURE_FRAME_FOOT;
  SwFigureMark mark = foot ? SW_FIGURE_MARK_RIGHT_TOES : marks[MIN (nth, (int) G_N_ELEMENTS (marks) - 1)];

  return sw_close_get_side (self) == SW_FIGURE_LEFT ? sw_figure_mark_get_mirrored (mark) : mark;
}

/**
 * sw_close_drop_things:
 * @items: the parts of a close picture, then its things
 *
 * Takes away what the other hand holds and what lies elsewhere.
 */
void
sw_close_drop_things (SwMotifs *items)
{
  SwExtent parts = sw_extent_empty ();
  int n = 0;

  for (int i = 0; i < items->n_items; i++)
    if (items->items[i].part >= 0)
      sw_extent_join (&parts, &items->items[i].extent);
  for (int i = 0; i < items->n_items; i++)
    if (items->items[i].part >= 0 || sw_extent_meets (&items->items[i].extent, &parts, THING_NEAR))
      items->items[n++] = items->items[i];
    else
      sw_motif_clear (&items->items[i]);
  items->n_items = n;
}

/**
 * sw_close_shows_furniture:
 * @self: a close figure
 *
 * Returns: whether the foot stands on something or the author put something beside the hand; a seat would only be asked
 *   about
 */
gboolean
sw_close_shows_furniture (const SwFigure *self)
{
  const SwScene *scene = &self->solver.scene;
  SwPart foot = SW_SIDED (SW_PART_FOOT, sw_close_get_side (self));

  if (self->solver.content->frame == SW_FIGURE_FRAME_FOOT)
    return sw_part_get_lowest (&self->solver.keys[0].body, foot) < FOOT_DOWN;

  return scene->wall_where != SW_FIGURE_WHERE_AUTO || scene->counter_where != SW_FIGURE_WHERE_AUTO;
}
