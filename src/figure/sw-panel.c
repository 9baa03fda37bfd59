/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One picture of a figure: things behind, the dashed start, the body, its arrow. */
#include "config.h"

#include "sw-body-draw.h"
#include "sw-breath.h"
#include "sw-figure-private.h"
#include "sw-press.h"
#include "sw-throw.h"

/* What moved by less is not dashed. */
#define MOVED 0.012
#define MOVED_FINE 0.004
/* Fingers and toes point this much farther than their marks; circles are drawn round that. */
#define BEYOND_HAND 0.10
#define BEYOND_TOES 0.04
#define BEYOND_NOSE 0.06
/* Places on the path of one of many steps. */
#define STEP_FRAMES 9
/* A chest that is so much higher or lower than in a picture with another base has an arrow, drawn no longer than that. */
#define LEAST_RISE 0.10
#define MOST_RISE 0.20
#define BEFORE_CHEST 0.14
#define UPRIGHT 0.85

/**
 * sw_figure_get_moving:
 * @a: a pose
 * @b: another
 *
 * Returns: set of #SwPart bits that lie elsewhere or otherwise in @b
 */
guint
sw_figure_get_moving (const SwSolved *a,
                      const SwSolved *b)
{
  guint moving = 0;

  for (int part = 0; part < (a->body.fine ? SW_N_FINE_PARTS : SW_N_PARTS); part++)
    {
      SwPiece piece = sw_part_get_piece ((SwPart) part);
      SwVector from_a;
      SwVector to_a;
      SwVector from_b;
      SwVector to_b;
      double moved;

      sw_part_get_line (&a->body, (SwPart) part, &from_a, &to_a);
      sw_part_get_line (&b->body, (SwPart) part, &from_b, &to_b);
      moved = MAX (sw_length (sw_sub (from_a, from_b)), sw_length (sw_sub (to_a, to_b)));
      moved = MAX (moved, 0.05 * sw_length (sw_sub (a->body.pieces[piece].axes.x, b->body.pieces[piece].axes.x)));
      if (moved > (a->body.fine ? MOVED_FINE : MOVED))
        moving |= 1u << part;
    }
  return moving;
}

static double
mark_travel (const SwFigure *self,
             SwFigureMark    mark,
             double          from_phase,
             double          to_phase)
{
  int first = (int) floor (from_phase * (SW_N_FRAMES - 1));
  int last = (int) ceil (to_phase * (SW_N_FRAMES - 1));
  double sum = 0;

  for (int i = first + 1; i <= last; i++)
    sum += sw_length (
        sw_sub (sw_body_get_mark (&self->frames[i].body, mark), sw_body_get_mark (&self->frames[i - 1].body, mark)));

  return sum;
}

/**
 * sw_figure_get_shown:
 * @from_phase: where the part of the motion begins
 * @to_phase: where it ends
 * @shown: (out): what arrows follow
 *
 * Returns: how many arrows there are; what moves most when the author does not say
 */
int
sw_figure_get_shown (const SwFigure *self,
                     double          from_phase,
                     double          to_phase,
                     SwFigureMark    shown[SW_FIGURE_MAX_SHOWN])
{
  static const SwFigureMark candidates[]
      = { SW_FIGURE_MARK_RIGHT_HAND, SW_FIGURE_MARK_LEFT_HAND, SW_FIGURE_MARK_RIGHT_TOES, SW_FIGURE_MARK_LEFT_TOES,
          SW_FIGURE_MARK_RIGHT_KNEE, SW_FIGURE_MARK_LEFT_KNEE, SW_FIGURE_MARK_HEAD,       SW_FIGURE_MARK_HIPS,
          SW_FIGURE_MARK_NOSE,       SW_FIGURE_MARK_UPPER_BACK };
  const SwFigureContent *content = self->solver.content;
  double most = 0.006;
  int n = 0;

  if (!sw_solver_moves (&self->solver))
    return 0;

  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    if (content->shown[i] != SW_FIGURE_MARK_NONE)
      shown[n++] = content->shown[i];
  if (n > 0)
    return n;

  for (gsize i = 0; i < G_N_ELEMENTS (candidates); i++)
    {
      SwFigureMark mark = self->fine ? sw_close_get_mark (self, (int) i) : candidates[i];
      double travel = mark_travel (self, mark, from_phase, to_phase);

      if (travel > 1.05 * most)
        {
          most = travel;
          shown[0] = mark;
          n = 1;
        }
    }
  return n;
}

/* Spreading fingers leave the middle one where it is: their arrow follows the little one. */
static SwVector
fingers_place (const SwFigure *self,
               const SwBody   *body,
               SwFigureSide    side)
{
  const SwHand *from = &self->frames[0].body.hands[side];
  const SwHand *to = &self->frames[SW_N_FRAMES - 1].body.hands[side];
  gboolean spreads = fabs (to->spread_deg - from->spread_deg) > 4
                     && fabs (to->knuckle_deg - from->knuckle_deg) + fabs (to->curl_deg - from->curl_deg) < 10;
  SwDigitBones bones;

  sw_body_get_digit (body, side, spreads ? SW_DIGIT_LITTLE : SW_DIGIT_MIDDLE, &bones);
  return sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, side)], bones.joints[SW_DIGIT_BONES]);
}

/* Where a mark is for its path: a turning head is told by what is before the face, not by the nose upon it. */
static SwVector
path_place (const SwFigure *self,
            const SwBody   *body,
            SwFigureMark    mark)
{
  if (mark == SW_FIGURE_MARK_RIGHT_FINGERS || mark == SW_FIGURE_MARK_LEFT_FINGERS)
    return fingers_place (self, body, mark == SW_FIGURE_MARK_LEFT_FINGERS ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT);
  if (mark == SW_FIGURE_MARK_NOSE)
    return sw_place (body->pieces[SW_PIECE_HEAD], sw_vector (0.085 + BEYOND_NOSE, 0, 0.045));

  return sw_body_get_mark (body, mark);
}

static SwVector
loop_place (const SwBody *body,
            SwFigureMark  mark)
{
  int side = mark == SW_FIGURE_MARK_LEFT_HAND || mark == SW_FIGURE_MARK_LEFT_TOES || mark == SW_FIGURE_MARK_LEFT_FOOT;

  if (mark == SW_FIGURE_MARK_RIGHT_HAND || mark == SW_FIGURE_MARK_LEFT_HAND)
    return sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, side)], sw_vector (0, 0, -0.055 - BEYOND_HAND));
  if (mark == SW_FIGURE_MARK_RIGHT_TOES || mark == SW_FIGURE_MARK_LEFT_TOES)
    return sw_place (body->pieces[SW_SIDED (SW_PIECE_TOES, side)], sw_vector (0.034 + BEYOND_TOES, 0, 0));

  return sw_body_get_mark (body, mark);
}

/**
 * sw_figure_get_path:
 * @mark: what is followed
 * @from_phase: where the path begins
 * @to_phase: where it ends
 * @path: (out): the path as seen
 *
 * Returns: how many places it has
 */
int
sw_figure_get_path (const SwFigure *self,
                    SwFigureMark    mark,
                    double          from_phase,
                    double          to_phase,
                    SwSpot          path[SW_N_FRAMES])
{
  gboolean loop = self->solver.content->motion == SW_FIGURE_MOTION_CIRCLE;
  int n = 0;

  /* Frames lie on the ends of two motions in a row, not on those of more. */
  if (self->solver.n_keys > 3)
    {
      for (; n < STEP_FRAMES; n++)
        {
          SwSolved now;

          sw_solver_get (&self->solver, from_phase + (to_phase - from_phase) * n / (STEP_FRAMES - 1), &now);
          path[n] = sw_see (&self->camera, path_place (self, &now.body, mark));
        }
      return n;
    }

  for (int i = 0; i < SW_N_FRAMES; i++)
    {
      double phase = (double) i / (SW_N_FRAMES - 1);

      if (phase < from_phase - 1e-9 || phase > to_phase + 1e-9 || (loop && i == SW_N_FRAMES - 1))
        continue;
      path[n++] = sw_see (&self->camera, loop ? loop_place (&self->frames[i].body, mark)
                                              : path_place (self, &self->frames[i].body, mark));
    }
  return n;
}

/* Whether a limb moves while the other side's does not: then it is what the picture is about, even on the far side. */
static gboolean
moves_alone (guint moving,
             int   part)
{
  const guint arm = 1u << SW_PART_UPPER_ARM | 1u << SW_PART_FOREARM | 1u << SW_PART_HAND;
  const guint leg = 1u << SW_PART_THIGH | 1u << SW_PART_SHANK | 1u << SW_PART_FOOT;
  guint limb = part < (int) SW_PART_THIGH ? arm : leg;
  int side = sw_part_get_side ((SwPart) part);

  return part >= (int) SW_PART_UPPER_ARM && (moving & limb << side) != 0 && (moving & limb << (1 - side)) == 0;
}

/**
 * sw_panel_add_items:
 * @panel: a panel whose poses are set
 * @figure: its figure
 *
 * Makes what has to be drawn.
 */
void
sw_panel_add_items (SwPanel        *panel,
                    const SwFigure *figure)
{
  const SwCamera *camera = &figure->camera;
  double tolerance = figure->fine ? SW_TOLERANCE_FINE : SW_TOLERANCE;

  sw_motifs_clear (&panel->items);
  if (panel->start != NULL)
    for (int part = 0; part < SW_N_FINE_PARTS; part++)
      if ((panel->moving & figure->drawn) >> part & 1)
        sw_motifs_add_part (&panel->items, &panel->start->body, (SwPart) part, SW_INK_START, camera, tolerance);
  for (int part = 0; part < SW_N_FINE_PARTS; part++)
    {
      SwInk style;

      if ((figure->drawn >> part & 1) == 0)
        continue;
      style = sw_part_get_style (&panel->solid->body, (SwPart) part, camera);
      if (panel->solid->body.fine || moves_alone (panel->moving, part))
        style = SW_INK_NEAR;
      sw_motifs_add_part (&panel->items, &panel->solid->body, (SwPart) part, style, camera, tolerance);
    }
  if (!figure->fine)
    sw_props_add_furniture (&panel->items, camera, &figure->solver, &figure->ground, &panel->solid->body,
                            figure->above, figure->below, tolerance);
  sw_props_add_items (&panel->items, camera, &figure->solver, panel->solid, tolerance);
  sw_throw_add (&panel->items, camera, &figure->solver, panel->solid, tolerance);
  if (figure->fine)
    sw_close_drop_things (&panel->items);
}

/**
 * sw_panel_sort:
 * @panel: a panel with its items
 *
 * Finds the order in which the items are drawn, where that has not been done: many pictures are only measured.
 */
void
sw_panel_sort (SwPanel *panel)
{
  if (panel->items.order != NULL)
    return;

  sw_motifs_sort (&panel->items);
  sw_motifs_hide_scraps (&panel->items);
}

/**
 * Way:
 * @places: where what is shown goes
 * @n: how many places
 * @about: what it turns about, where @turns
 * @moving: set of #SwPart bits that move with it
 * @loop: whether it goes round
 * @back: whether it leads back, too
 *
 * What an arrow follows.
 */
typedef struct
{
  SwSpot places[SW_N_FRAMES];
  int n;
  gboolean turns;
  SwSpot about;
  guint moving;
  gboolean loop;
  gboolean back;
} Way;

/* A ball's flight is what a throw is about: its arrow stands for those of the hands. */
static gboolean
find_flight (const SwPanel  *panel,
             const SwFigure *figure,
             Way            *way)
{
  SwThrow flight;

  if (!sw_throw_get (&figure->solver, panel->solid, &flight))
    return FALSE;

  *way = (Way){ .n = SW_THROW_PLACES,
                .moving = panel->moving,
                .back = figure->solver.content->motion != SW_FIGURE_MOTION_ONE_WAY };
  sw_throw_get_path (&flight, &figure->camera, way->places);
  return TRUE;
}

/* From a picture with another base only the height can be reckoned: the chest came up, or went down. */
static gboolean
find_rise (const SwPanel  *panel,
           const SwFigure *figure,
           Way            *way)
{
  const SwBody *body = &panel->solid->body;
  SwSpot at = sw_see (&figure->camera, sw_place (body->pieces[SW_PIECE_RIBCAGE], sw_vector (BEFORE_CHEST, 0, 0.06)));
  double by = CLAMP (figure->rises, -MOST_RISE, MOST_RISE);

  if (panel != &figure->panels[0] || fabs (by) < LEAST_RISE || figure->camera.up.z < UPRIGHT
      || figure->solver.content->shown[0] != SW_FIGURE_MARK_NONE)
    return FALSE;

  *way = (Way){ .n = STEP_FRAMES, .moving = ~0u };
  for (int i = 0; i < STEP_FRAMES; i++)
    way->places[i] = (SwSpot){ at.x, at.y - by * (1 - (double) i / (STEP_FRAMES - 1)), 0 };
  return TRUE;
}

/* Returns how many there are. */
static int
find_ways (const SwPanel  *panel,
           const SwFigure *figure,
           Way             ways[SW_FIGURE_MAX_SHOWN])
{
  const SwFigureContent *content = figure->solver.content;
  SwFigureMark shown[SW_FIGURE_MAX_SHOWN];
  gboolean loop = content->motion == SW_FIGURE_MOTION_CIRCLE;
  int n;

  if (content->motion == SW_FIGURE_MOTION_PRESS)
    return 0;
  if (find_flight (panel, figure, &ways[0]))
    return 1;
  if (panel->to_phase <= panel->from_phase)
    return find_rise (panel, figure, &ways[0]) ? 1 : 0;

  n = sw_figure_get_shown (figure, panel->from_phase, panel->to_phase, shown);
  for (int i = 0; i < n; i++)
    {
      ways[i] = (Way){ .turns = content->about != SW_FIGURE_MARK_NONE,
                       .moving = panel->moving,
                       .loop = loop,
                       .back = loop ? content->both_ways : content->motion == SW_FIGURE_MOTION_THERE_AND_BACK };
      if (ways[i].turns)
        ways[i].about = sw_see (&figure->camera, sw_body_get_mark (&panel->solid->body, content->about));
      ways[i].n = sw_figure_get_path (figure, shown[i], panel->from_phase, panel->to_phase, ways[i].places);
    }
  return n;
}

static void
draw_arrows (const SwPanel  *panel,
             const SwFigure *figure,
             const SwPaper  *paper,
             const SwExtent *room,
             SwArrows       *arrows)
{
  Way ways[SW_FIGURE_MAX_SHOWN];

  arrows->n_arrows = find_ways (panel, figure, ways);
  for (int i = 0; i < arrows->n_arrows; i++)
    {
      SwArrow *arrow = &arrows->arrows[i];

      if (ways[i].loop)
        sw_arrow_place_loop (arrow, ways[i].places, ways[i].n);
      else
        sw_arrow_place (arrow, ways[i].places, ways[i].n, ways[i].turns ? &ways[i].about : NULL, &panel->items,
                        ways[i].moving, paper->scale_pt, room);
      arrow->back = ways[i].back;
      sw_arrow_draw (paper, arrow);
    }
}

static void
draw_presses (const SwPanel  *panel,
              const SwFigure *figure,
              const SwPaper  *paper,
              const SwExtent *room)
{
  SwPress presses[SW_FIGURE_MAX_SHOWN];
  int n = sw_press_place (panel, figure, paper->scale_pt, room, presses);

  for (int i = 0; i < n; i++)
    sw_press_draw (paper, &presses[i]);
}

static gboolean
shows_start (SwPanel *panel)
{
  if (panel->start == NULL)
    return FALSE;

  sw_panel_sort (panel);
  for (int i = 0; i < panel->items.n_items; i++)
    {
      const SwMotif *item = &panel->items.items[i];

      if (item->part >= 0 && item->style == SW_INK_START && !item->hidden)
        return TRUE;
    }
  return FALSE;
}

/**
 * sw_panel_get_signs:
 * @panel: a panel
 * @figure: its figure
 *
 * Returns: what the picture shows that has to be explained
 */
SwFigureSigns
sw_panel_get_signs (SwPanel        *panel,
                    const SwFigure *figure)
{
  Way ways[SW_FIGURE_MAX_SHOWN];
  int n_ways = find_ways (panel, figure, ways);
  SwFigureSigns signs = figure->solver.content->n_works > 0 ? SW_FIGURE_SIGN_WORKS : 0;

  if (shows_start (panel))
    signs |= SW_FIGURE_SIGN_START;
  if (sw_breath_is_shown (panel, figure))
    signs |= SW_FIGURE_SIGN_BREATH;
  if (sw_press_count (panel, figure) > 0)
    signs |= SW_FIGURE_SIGN_PRESS;
  for (int i = 0; i < n_ways; i++)
    if (ways[i].loop || sw_arrow_is_seen (ways[i].places, ways[i].n))
      signs |= SW_FIGURE_SIGN_ARROW | (ways[i].back ? SW_FIGURE_SIGN_BACK : 0);

  return signs;
}

/**
 * sw_panel_draw:
 * @panel: a panel with its items
 * @figure: its figure
 * @paper: where to draw
 * @room: what the arrow must not leave, parts of stature
 * @arrows: (out): the arrows it drew; those that press against something are not among them
 */
void
sw_panel_draw (SwPanel        *panel,
               const SwFigure *figure,
               const SwPaper  *paper,
               const SwExtent *room,
               SwArrows       *arrows)
{
  const SwFigureContent *content = figure->solver.content;
  SwBreath breath;

  sw_panel_sort (panel);
  if (!figure->fine || sw_close_shows_furniture (figure))
    sw_props_draw_behind (paper, &figure->camera, &figure->solver, &figure->ground, &panel->solid->body,
                          figure->above, figure->below);
  for (int i = 0; i < panel->items.n_items; i++)
    {
      const SwMotif *item = &panel->items.items[panel->items.order[i]];

      /* A band comes out from behind a hand that is hidden itself. */
      if (item->part >= 0 && item->style != SW_INK_START)
        sw_props_draw_bands (paper, &figure->camera, &figure->solver, item->body, item->part);
      if (item->hidden)
        continue;
      if (item->part < 0)
        {
          sw_prop_draw_item (paper, item);
          continue;
        }
      sw_body_draw_item (paper, &panel->items, i, &figure->camera, content->works, content->n_works,
                         &figure->furniture);
    }
  if (sw_breath_place (panel, figure, paper->scale_pt, &breath))
    sw_breath_draw (paper, &breath);
  draw_arrows (panel, figure, paper, room, arrows);
  draw_presses (panel, figure, paper, room);
}
