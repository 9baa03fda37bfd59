/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A figure ready to be drawn: solved once, drawn at any size. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-breath.h"
#include "sw-figure-private.h"
#include "sw-figure-walk.h"
#include "sw-furniture.h"
#include "sw-press.h"

/* Trunks that move by more make an overlay a muddle. */
#define TRUNK_MOVED 0.025
/* When less of the dashed start than this shows beside the end, it tells nothing. */
#define START_SHOWS 0.22
#define FRAME_BELOW_HIPS 0.10
/* Round an arrow's path. */
#define AIR 0.03
#define AIR_FINE 0.012

G_DEFINE_QUARK (sw-figure-error-quark, sw_figure_error)
G_DEFINE_FINAL_TYPE (SwFigure, sw_figure, G_TYPE_OBJECT)

/* Grows @extent by what of the body lies between two heights on paper. */
static void
add_body_extent (SwExtent       *extent,
                 const SwBody   *body,
                 const SwCamera *camera,
                 guint           parts,
                 double          above,
                 double          below)
{
  for (int part = 0; part < SW_N_FINE_PARTS; part++)
    {
      SwShape shape;

      if ((parts >> part & 1) == 0)
        continue;
      sw_shape_get (body, (SwPart) part, &shape);
      for (int i = 0; i < shape.n_hulls; i++)
        for (int k = 0; k < shape.hulls[i].n_blobs; k++)
          {
            const SwBlob *blob = &shape.hulls[i].blobs[k];
            SwEgg egg = sw_egg (camera, body->pieces[blob->piece], blob->centre, blob->half);
            double rise = sqrt (egg.yy);

            if (egg.at.y + rise < above || egg.at.y - rise > below)
              continue;
            sw_extent_add (extent, egg.at.x - sqrt (egg.xx), CLAMP (egg.at.y - rise, above, below));
            sw_extent_add (extent, egg.at.x + sqrt (egg.xx), CLAMP (egg.at.y + rise, above, below));
          }
    }
}

static gboolean
only_above_hips_moves (const SwFigure *self,
                       guint           moving)
{
  guint legs = 0x3fu << SW_PART_THIGH;

  return (moving & legs) == 0
         && (self->solver.content->poses[0].base == SW_FIGURE_BASE_STANDING
             || self->solver.content->poses[0].base == SW_FIGURE_BASE_SITTING);
}

/* The height on paper below which an upper-body frame leaves the figure out; hands stay in it. */
static double
find_upper_cut (const SwFigure *self)
{
  double cut = G_MAXDOUBLE;

  for (int key = 0; key < self->solver.n_keys; key++)
    {
      const SwBody *body = &self->solver.keys[key].body;

      cut = MIN (cut, sw_see (&self->camera, body->pieces[SW_PIECE_PELVIS].at).y - FRAME_BELOW_HIPS);
      for (int side = 0; side < 2; side++)
        {
          SwVector hand = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, side)], sw_vector (0, 0, -0.09));

          cut = MIN (cut, MIN (sw_see (&self->camera, hand).y,
                               sw_see (&self->camera, body->pieces[SW_SIDED (SW_PIECE_HAND, side)].at).y) - 0.04);
        }
    }
  return cut;
}

static double
find_head_cut (const SwFigure *self)
{
  double cut = G_MAXDOUBLE;

  for (int key = 0; key < self->solver.n_keys; key++)
    {
      SwVector chest = sw_place (self->solver.keys[key].body.pieces[SW_PIECE_RIBCAGE], sw_vector (0, 0, 0.035));

      cut = MIN (cut, sw_see (&self->camera, chest).y);
    }
  return cut;
}

static double
find_lower_cut (const SwFigure *self)
{
  double cut = -G_MAXDOUBLE;

  for (int key = 0; key < self->solver.n_keys; key++)
    {
      SwVector waist = sw_place (self->solver.keys[key].body.pieces[SW_PIECE_LOW_BACK], sw_vector (0, 0, 0.06));

      cut = MAX (cut, sw_see (&self->camera, waist).y);
    }
  return cut;
}

/* The heights on paper between which the frame shows the figure. */
static void
find_frame (SwFigure *self,
            guint     moving)
{
  SwFigureFrame frame = self->solver.content->frame;
  double knees = sw_see (&self->camera, self->solver.keys[0].body.pieces[SW_PIECE_SHANK].at).y;

  self->above = -G_MAXDOUBLE;
  self->below = G_MAXDOUBLE;
  if (frame == SW_FIGURE_FRAME_AUTO && moving != 0 && only_above_hips_moves (self, moving)
      && find_upper_cut (self) > knees + 0.05)
    frame = SW_FIGURE_FRAME_UPPER;

  if (frame == SW_FIGURE_FRAME_UPPER)
    self->above = find_upper_cut (self);
  else if (frame == SW_FIGURE_FRAME_HEAD)
    self->above = find_head_cut (self);
  else if (frame == SW_FIGURE_FRAME_LOWER)
    self->below = find_lower_cut (self);
}

/* Grows @extent by what is drawn of a panel: its pose, its things, its arrow. */
static void
add_panel_extent (const SwFigure *self,
                  const SwPanel  *panel,
                  SwExtent       *extent)
{
  SwFigureMark shown[SW_FIGURE_MAX_SHOWN];
  int n_shown = sw_figure_get_shown (self, panel->from_phase, panel->to_phase, shown);
  double air = self->fine ? AIR_FINE : AIR;

  for (int i = 0; i < panel->items.n_items; i++)
    {
      const SwExtent *item = &panel->items.items[i].extent;

      if (item->top < self->above || item->bottom > self->below)
        continue;
      sw_extent_add (extent, item->left, MAX (item->bottom, self->above));
      sw_extent_add (extent, item->right, MIN (item->top, self->below));
    }
  sw_press_add_extent (panel, self, extent);
  sw_breath_add_extent (panel, self, extent);
  if (self->solver.content->motion == SW_FIGURE_MOTION_PRESS)
    return;
  for (int i = 0; i < n_shown && panel->to_phase > panel->from_phase; i++)
    {
      SwSpot path[SW_N_FRAMES];
      int n = sw_figure_get_path (self, shown[i], panel->from_phase, panel->to_phase, path);

      for (int k = 0; k < n; k++)
        {
          sw_extent_add (extent, path[k].x - air, path[k].y - air);
          sw_extent_add (extent, path[k].x + air, path[k].y + air);
        }
    }
}

/* Panels are as high as the figure, but each only as wide as it is. */
static void
measure_panels (SwFigure *self)
{
  for (int i = 0; i < self->n_panels; i++)
    {
      SwPanel *panel = &self->panels[i];

      panel->whole = sw_extent_empty ();
      add_panel_extent (self, panel, &panel->whole);
      if (self->furniture.left <= self->furniture.right)
        sw_extent_join (&panel->whole, &self->furniture);
      panel->whole.bottom = self->whole.bottom;
      panel->whole.top = self->whole.top;
    }
}

/* How wide and high everything is, arrows with some air round them included. */
static void
measure_whole (SwFigure *self)
{
  SwExtent bodies = sw_extent_empty ();

  self->whole = sw_extent_empty ();
  self->furniture = sw_extent_empty ();
  for (int i = 0; i < SW_N_FRAMES; i += 2)
    {
      add_body_extent (&self->whole, &self->frames[i].body, &self->camera, self->drawn, self->above, self->below);
      add_body_extent (&bodies, &self->frames[i].body, &self->camera, self->drawn, -G_MAXDOUBLE, G_MAXDOUBLE);
    }
  if (!self->fine)
    sw_props_add_extent (&self->whole, &self->furniture, &self->camera, &self->solver, &self->ground, self->above,
                         self->below);
  add_panel_extent (self, &self->overlay, &self->whole);
  for (int i = 0; i < self->solver.content->n_props; i++)
    if (!self->fine
        && (self->solver.content->props[i].kind == SW_FIGURE_PROP_BAND
            || self->solver.content->props[i].kind == SW_FIGURE_PROP_LOOP))
      {
        SwSpot at = sw_see (&self->camera, sw_band_get_fixed_end (&self->solver, i, &self->solver.keys[0].body));

        sw_extent_add (&self->whole, at.x, at.y);
      }
  self->whole.bottom = MAX (self->whole.bottom, self->above);
  self->whole.top = MIN (self->whole.top, self->below);
  self->cropped_below = bodies.bottom < self->above;
  self->cropped_above = bodies.top > self->below;
  self->overlay.whole = self->whole;
}

/* Share of the dashed start that is not hidden by the end. */
static double
start_shows (SwPanel *panel)
{
  int seen = 0;
  int all = 0;

  sw_panel_sort (panel);
  for (int i = 0; i < panel->items.n_items; i++)
    {
      const SwMotif *start = &panel->items.items[panel->items.order[i]];

      if (start->style != SW_INK_START || start->part < 0)
        continue;
      for (int ix = 0; ix < 10; ix++)
        for (int iy = 0; iy < 10; iy++)
          {
            double x = start->extent.left + (start->extent.right - start->extent.left) * (ix + 0.5) / 10;
            double y = start->extent.bottom + (start->extent.top - start->extent.bottom) * (iy + 0.5) / 10;
            gboolean hidden = FALSE;

            if (!sw_motif_holds (start, x, y))
              continue;
            for (int k = i + 1; k < panel->items.n_items && !hidden; k++)
              {
                const SwMotif *later = &panel->items.items[panel->items.order[k]];

                hidden = later->style != SW_INK_START && later->part >= 0 && sw_motif_holds (later, x, y);
              }
            all++;
            if (!hidden)
              seen++;
          }
    }
  return all > 0 ? (double) seen / all : 1.0;
}

/**
 * sw_figure_add_panels:
 *
 * Makes what the numbered pictures show, where that has not been done: most figures are drawn as one picture without.
 */
void
sw_figure_add_panels (SwFigure *self)
{
  for (int i = 0; i < self->n_panels; i++)
    if (self->panels[i].items.n_items == 0)
      sw_panel_add_items (&self->panels[i], self);
}

static void
choose_panels (SwFigure *self)
{
  const SwSolver *solver = &self->solver;
  const SwSolved *first = &solver->keys[0];
  const SwSolved *last = &solver->keys[solver->n_keys - 1];
  gboolean circle = solver->content->motion == SW_FIGURE_MOTION_CIRCLE;
  double trunk
      = MAX (sw_length (sw_sub (first->body.pieces[SW_PIECE_PELVIS].at, last->body.pieces[SW_PIECE_PELVIS].at)),
             sw_length (sw_sub (first->body.pieces[SW_PIECE_NECK].at, last->body.pieces[SW_PIECE_NECK].at)));
  guint moving = 0;

  for (int i = 1; i < solver->n_keys; i++)
    moving |= sw_figure_get_moving (&solver->keys[i - 1], &solver->keys[i]);

  self->overlay = (SwPanel){ .solid = last,
                             .start = solver->n_keys == 2 ? first : NULL,
                             .moving = moving,
                             .to_phase = sw_solver_moves (solver) ? 1 : 0 };
  self->n_panels = solver->n_keys;
  for (int i = 0; i < solver->n_keys; i++)
    self->panels[i] = (SwPanel){ .solid = &solver->keys[i],
                                 .moving = moving,
                                 .from_phase = i == 0 ? 0 : (double) (i - 1) / (solver->n_keys - 1),
                                 .to_phase = i == 0 ? (circle ? 1 : 0) : (double) i / (solver->n_keys - 1) };

  find_frame (self, moving);
  sw_panel_add_items (&self->overlay, self);
  self->needs_panels = solver->n_keys > 2 || solver->content->motion == SW_FIGURE_MOTION_STEPS
                       || (solver->n_keys == 2 && start_shows (&self->overlay) < START_SHOWS);
  self->wants_panels = solver->n_keys == 2 && trunk > TRUNK_MOVED;
  measure_whole (self);
  if (self->needs_panels || self->wants_panels || solver->content->layout > SW_FIGURE_LAYOUT_SINGLE)
    {
      sw_figure_add_panels (self);
      measure_panels (self);
    }
}

/* What the author fixed, else the base's view; lying on the other side or mirrored it is seen from the other side. */
static SwCamera
choose_camera (const SwFigure *self)
{
  const SwFigureContent *content = self->solver.content;
  const SwBaseInfo *base = self->solver.base;
  const SwFigurePose *start = &content->poses[0];
  gboolean on_side = start->base == SW_FIGURE_BASE_SIDE_LYING || start->base == SW_FIGURE_BASE_SIDE_PLANK;
  gboolean flip = on_side ? start->on == SW_FIGURE_RIGHT : self->mirrored;
  double turn
      = isnan (content->view_turn_deg) ? (flip ? -base->view_turn_deg : base->view_turn_deg) : content->view_turn_deg;

  return sw_camera (turn, isnan (content->view_tilt_deg) ? base->view_tilt_deg : content->view_tilt_deg);
}

static void
sw_figure_finalize (GObject *object)
{
  SwFigure *self = SW_FIGURE (object);

  sw_motifs_clear (&self->overlay.items);
  for (int i = 0; i < SW_MAX_PANELS; i++)
    {
      sw_motifs_clear (&self->panels[i].items);
      if (self->parts[i] != self)
        g_clear_object (&self->parts[i]);
    }
  g_clear_object (&self->inset);
  g_clear_pointer (&self->frames, g_free);
  g_clear_pointer (&self->spec, sw_figure_spec_unref);
  g_mutex_clear (&self->lock);

  G_OBJECT_CLASS (sw_figure_parent_class)->finalize (object);
}

static void
sw_figure_class_init (SwFigureClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_figure_finalize;
}

static void
sw_figure_init (SwFigure *self)
{
  g_mutex_init (&self->lock);
}

static void
solve (SwFigure *self)
{
  sw_solver_init (&self->solver, sw_figure_spec_get_content (self->spec));
  self->frames = g_new (SwSolved, SW_N_FRAMES);
  for (int i = 0; i < SW_N_FRAMES; i++)
    sw_solver_get (&self->solver, (double) i / (SW_N_FRAMES - 1), &self->frames[i]);

  sw_close_init (self);
  self->camera = choose_camera (self);
  sw_ground_measure (&self->ground, &self->solver);
  choose_panels (self);
}

/* What a figure drawn beside others has of the whole. */
static SwFigure *
new_part (const SwFigure  *whole,
          SwFigureContent *content)
{
  SwFigure *self = g_object_new (SW_TYPE_FIGURE, NULL);

  for (int i = 0; i < SW_FIGURE_MAX_POSES; i++)
    content->poses[i].extras = NULL;
  for (int i = 0; i < SW_FIGURE_MAX_PROPS; i++)
    content->props[i].extras = NULL;
  content->extras = NULL;
  content->inset.around = SW_FIGURE_MARK_NONE;
  self->mirrored = whole->mirrored;
  self->spec = sw_figure_spec_new_take (content);
  solve (self);
  return self;
}

static double
get_chest_height (const SwFigure *self,
                  int             key)
{
  return sw_body_get_mark (&self->solver.keys[key].body, SW_FIGURE_MARK_CHEST).z;
}

static void
add_parts (SwFigure *self)
{
  const SwFigureContent *content = sw_figure_spec_get_content (self->spec);

  for (int first = 0; first < content->n_poses;)
    {
      SwFigureContent part;
      int next = sw_figure_content_take_part (content, first, &part);

      /* The first is solved already. */
      self->parts[self->n_parts++] = first == 0 && part.n_props == content->n_props ? self : new_part (self, &part);
      if (first > 0)
        self->parts[self->n_parts - 1]->rises
            = get_chest_height (self->parts[self->n_parts - 1], 0)
              - get_chest_height (self->parts[self->n_parts - 2], self->parts[self->n_parts - 2]->solver.n_keys - 1);
      first = next;
    }
}

static gboolean
has_several_bases (const SwFigureContent *content)
{
  for (int i = 1; i < content->n_poses; i++)
    if (content->poses[i].own_base)
      return content->motion == SW_FIGURE_MOTION_STEPS;

  return FALSE;
}

/* The second view of it all; only its own camera differs. */
static SwFigure *
new_inset (const SwFigure *self)
{
  SwFigureContent content = *sw_figure_spec_get_content (self->spec);

  content.view_turn_deg = content.inset.turn_deg;
  content.view_tilt_deg = content.inset.tilt_deg;
  content.frame = SW_FIGURE_FRAME_WHOLE;
  if (content.inset.around >= SW_FIGURE_MARK_RIGHT_FINGERS)
    {
      /* The whole body's hand has no single fingers. */
      content.frame = SW_FIGURE_FRAME_HAND;
      content.shown[0] = content.inset.around;
      content.shown[1] = SW_FIGURE_MARK_NONE;
    }
  content.layout = SW_FIGURE_LAYOUT_SINGLE;
  return new_part (self, &content);
}

/**
 * sw_figure_get_cells:
 * @cells: (out): its numbered pictures
 *
 * Returns: how many there are
 */
int
sw_figure_get_cells (SwFigure *self,
                     SwCell    cells[SW_MAX_PANELS])
{
  int n = 0;

  for (int i = 0; i < MAX (1, self->n_parts); i++)
    {
      SwFigure *part = self->n_parts > 0 ? self->parts[i] : self;

      for (int k = 0; k < part->n_panels; k++)
        cells[n++] = (SwCell){ part, &part->panels[k] };
    }

  return n;
}

/**
 * sw_figure_new:
 * @spec: what to draw
 * @mirrored: whether the left side works instead of the right
 *
 * Solves every pose. Takes about a millisecond.
 *
 * Returns: (transfer full): the figure, or NULL with an error when there is nothing to draw
 */
SwFigure *
sw_figure_new (SwFigureSpec  *spec,
               gboolean       mirrored,
               GError       **error)
{
  SwFigure *self;
  const SwFigureContent *content;

  if (spec == NULL)
    {
      g_set_error_literal (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_KIND,
                           _ ("The exercise has no figure. Add one to its file to see it drawn."));
      return NULL;
    }

  self = g_object_new (SW_TYPE_FIGURE, NULL);
  self->spec = mirrored ? sw_figure_spec_new_mirrored (spec) : sw_figure_spec_ref (spec);
  self->mirrored = mirrored;
  solve (self);
  content = sw_figure_spec_get_content (self->spec);
  if (has_several_bases (content))
    add_parts (self);
  if (content->inset.around != SW_FIGURE_MARK_NONE)
    self->inset = new_inset (self);
  return self;
}
