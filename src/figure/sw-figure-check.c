/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a figure: joints beyond their range, limbs in the floor, hands that miss what they hold, a person
 * who would fall. Tried on the written poses and in between, where interpolation may go astray unseen. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-figure-check.h"
#include "sw-figure-private.h"
#include "sw-press.h"

#define FLOOR_DEPTH 0.008
#define SOFT_DEPTH 0.030
#define PIN_MISS 0.006
#define BALANCE_MARGIN 0.012
/* Ranges are whole degrees; reaching leaves fractions. */
#define RANGE_SLACK_DEG 0.6

static void
say (GPtrArray  *faults,
     const char *format,
     ...) G_GNUC_PRINTF (2, 3);

static void
say (GPtrArray  *faults,
     const char *format,
     ...)
{
  va_list args;
  char *text;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_ptr_array_add (faults, text);
}

static const char *
side_word (SwAngle      angle,
           SwFigureSide side)
{
  if (!sw_angle_is_sided (angle))
    return "";

  return side == SW_FIGURE_LEFT ? _ ("left ") : _ ("right ");
}

/* The worst value of each angle over all frames is what counts: one fault a joint. */
static void
check_ranges (const SwSolved *frames,
              int             n_frames,
              GPtrArray      *faults)
{
  for (int slot = 0; slot < (int) SW_N_SLOTS; slot++)
    {
      SwFigureSide side;
      SwAngle angle = sw_angle_from_slot (slot, &side);
      const SwAngleInfo *info = sw_angle_get_info (angle);
      double worst = RANGE_SLACK_DEG;
      double value = 0;

      /* Direction and turn say nothing while the arm hangs. */
      for (int i = 0; i < n_frames; i++)
        {
          double here = frames[i].joints.slots_deg[slot];
          double excess = sw_angle_get_excess (angle, here);

          if (angle == SW_ANGLE_SHOULDER_DIRECTION
              && fabs (sw_joints_get (&frames[i].joints, SW_ANGLE_SHOULDER_RAISE, side)) < 12)
            continue;
          if (excess > worst)
            {
              worst = excess;
              value = here;
            }
        }
      if (worst > RANGE_SLACK_DEG)
        say (faults,
             /* Translators: side, joint, angle's name, its value, its range */
             _ ("The %s%s's “%s” reaches %.0f degrees; drawn are %.0f to %.0f. Bring the pose nearer to the range."),
             side_word (angle, side), info->joint_words, info->attribute, value, info->low_deg, info->high_deg);
    }
}

/* Two levels share the published range of the whole neck and of the whole back: AAOS and CFR as in sw-angle.c. */
static void
check_totals (const SwSolved *frames,
              int             n_frames,
              GPtrArray      *faults)
{
  static const struct
  {
    const char *what;
    SwAngle first;
    SwAngle second;
    double low_deg;
    double high_deg;
  } totals[] = {
    { N_ ("back's bend"), SW_ANGLE_LOW_BACK_BEND, SW_ANGLE_UPPER_BACK_BEND, -30, 90 },
    { N_ ("back's side bend"), SW_ANGLE_LOW_BACK_SIDE, SW_ANGLE_UPPER_BACK_SIDE, -35, 35 },
    { N_ ("back's turn"), SW_ANGLE_LOW_BACK_TURN, SW_ANGLE_UPPER_BACK_TURN, -45, 45 },
    { N_ ("neck's bend"), SW_ANGLE_NECK_BEND, SW_ANGLE_HEAD_BEND, -45, 45 },
    { N_ ("neck's side bend"), SW_ANGLE_NECK_SIDE, SW_ANGLE_HEAD_SIDE, -45, 45 },
    { N_ ("neck's turn"), SW_ANGLE_NECK_TURN, SW_ANGLE_HEAD_TURN, -80, 80 },
  };

  for (gsize k = 0; k < G_N_ELEMENTS (totals); k++)
    {
      double worst = RANGE_SLACK_DEG;
      double value = 0;

      for (int i = 0; i < n_frames; i++)
        {
          double here = frames[i].joints.slots_deg[totals[k].first] + frames[i].joints.slots_deg[totals[k].second];
          double excess = MAX (totals[k].low_deg - here, here - totals[k].high_deg);

          if (excess > worst)
            {
              worst = excess;
              value = here;
            }
        }
      if (worst > RANGE_SLACK_DEG)
        say (faults,
             _ ("The %s reaches %.0f degrees in all; published are %.0f to %.0f. Bring the pose nearer to the range."),
             _ (totals[k].what), value, totals[k].low_deg, totals[k].high_deg);
    }
}

static double
allowed_depth (const SwFigure *self,
               int             part)
{
  /* A body that lies gives way at shoulders and hips; heads and arms sink into pillow and mat. */
  if (self->solver.base->on_mat && (part <= (int) SW_PART_HEAD || part < (int) SW_PART_FOREARM))
    return self->solver.content->poses[0].base == SW_FIGURE_BASE_SIDE_LYING ? 2 * SOFT_DEPTH : SOFT_DEPTH;
  if (self->solver.content->poses[0].base == SW_FIGURE_BASE_SIDE_LYING)
    return SOFT_DEPTH;

  return part >= (int) SW_PART_THIGH ? FLOOR_DEPTH : FLOOR_DEPTH + 0.006;
}

static void
check_floor (const SwFigure *self,
             const SwSolved *frames,
             int             n_frames,
             GPtrArray      *faults)
{
  static const char *const names[SW_N_PARTS]
      = { N_ ("trunk"),         N_ ("neck"),         N_ ("head"),       N_ ("right upper arm"), N_ ("left upper arm"),
          N_ ("right forearm"), N_ ("left forearm"), N_ ("right hand"), N_ ("left hand"),       N_ ("right thigh"),
          N_ ("left thigh"),    N_ ("right shank"),  N_ ("left shank"), N_ ("right foot"),      N_ ("left foot") };

  for (int part = 0; part < SW_N_PARTS; part++)
    {
      double lowest = 0;

      for (int i = 0; i < n_frames; i++)
        lowest = MIN (lowest, sw_part_get_lowest (&frames[i].body, (SwPart) part));
      if (-lowest > allowed_depth (self, part))
        say (faults, _ ("The %s goes %.1f %% of the stature into the floor. Lift it or pin it to the floor."),
             _ (names[part]), -100 * lowest);
    }
}

static void
check_pins (const SwSolved *frames,
            int             n_frames,
            GPtrArray      *faults)
{
  static const char *const names[SW_N_LIMBS]
      = { N_ ("right hand"), N_ ("left hand"), N_ ("right foot"), N_ ("left foot") };

  for (int limb = 0; limb < SW_N_LIMBS; limb++)
    {
      double worst = 0;

      for (int i = 0; i < n_frames; i++)
        worst = MAX (worst, frames[i].missed[limb]);
      if (worst > PIN_MISS)
        say (faults, _ ("The %s misses what it holds by %.1f %% of the stature. Move the body nearer or the pin."),
             _ (names[limb]), 100 * worst);
    }
}

typedef struct
{
  double x;
  double y;
} Spot;

static double
turn_of (Spot a,
         Spot b,
         Spot c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static int
compare_spots (const void *a,
               const void *b)
{
  const Spot *p = a;
  const Spot *q = b;

  if (p->x < q->x || p->x > q->x)
    return p->x < q->x ? -1 : 1;

  return p->y < q->y ? -1 : p->y > q->y;
}

/* Where soles touch the floor: four corners of heel and ball of each foot that does. */
static int
collect_soles (const SwSolved *solved,
               Spot            spots[16])
{
  int n = 0;

  for (int side = 0; side < 2; side++)
    {
      SwPlacement foot = solved->body.pieces[SW_SIDED (SW_PIECE_FOOT, side)];
      static const double corners[4][2]
          = { { SW_HEEL_X - 0.018, 0.018 }, { SW_HEEL_X - 0.018, -0.018 }, { 0.074, 0.026 }, { 0.074, -0.026 } };

      for (int i = 0; i < 4; i++)
        {
          SwVector at = sw_place (foot, sw_vector (corners[i][0], corners[i][1], -SW_ANKLE_HEIGHT));

          if (at.z < 0.02 + solved->stand[side])
            spots[n++] = (Spot){ at.x, at.y };
        }
      if (sw_body_get_ball (&solved->body, (SwFigureSide) side).z < 0.02 + solved->stand[side])
        {
          SwVector tip = sw_place (solved->body.pieces[SW_SIDED (SW_PIECE_TOES, side)], sw_vector (0.036, 0, 0));

          spots[n++] = (Spot){ tip.x, tip.y };
        }
    }
  return n;
}

/* Convex hull by monotone chain. Returns its size. */
static int
find_hull (Spot *spots,
           int   n,
           Spot  hull[32])
{
  int k = 0;

  qsort (spots, (gsize) n, sizeof *spots, compare_spots);
  for (int i = 0; i < n; i++)
    {
      while (k >= 2 && turn_of (hull[k - 2], hull[k - 1], spots[i]) <= 0)
        k--;
      hull[k++] = spots[i];
    }
  for (int i = n - 2, low = k + 1; i >= 0; i--)
    {
      while (k >= low && turn_of (hull[k - 2], hull[k - 1], spots[i]) <= 0)
        k--;
      hull[k++] = spots[i];
    }
  return MAX (0, k - 1);
}

/**
 * sw_solved_get_balance:
 * @solved: a standing pose
 *
 * How far the centre of mass is outside the base of support, which is the convex hull of the soles on the floor. Masses:
 * Dempster, in Winter.
 *
 * Returns: parts of stature; negative when inside, by the distance to the nearest edge
 */
double
sw_solved_get_balance (const SwSolved *solved)
{
  SwVector mass = sw_body_get_mass_centre (&solved->body);
  Spot spots[16];
  Spot hull[32];
  int n = find_hull (spots, collect_soles (solved, spots), hull);
  double outside = -G_MAXDOUBLE;

  if (n < 3)
    return 1.0;

  for (int i = 0; i < n; i++)
    {
      Spot a = hull[i];
      Spot b = hull[(i + 1) % n];
      double length = MAX (1e-9, hypot (b.x - a.x, b.y - a.y));

      outside = MAX (outside, -turn_of (a, b, (Spot){ mass.x, mass.y }) / length);
    }
  return outside;
}

static gboolean
hands_hold (const SwSolved *solved)
{
  return solved->held[SW_LIMB_RIGHT_ARM] || solved->held[SW_LIMB_LEFT_ARM];
}

/* Whether a foot is on its way from one height to another, up a step: the body is carried over meanwhile. */
static gboolean
changes_ground (const SwFigure *self,
                const SwSolved *now)
{
  for (int side = 0; side < 2; side++)
    for (int key = 0; key + 1 < self->solver.n_keys; key++)
      {
        double a = self->solver.keys[key].stand[side];
        double b = self->solver.keys[key + 1].stand[side];

        if (now->stand[side] > MIN (a, b) + 1e-9 && now->stand[side] < MAX (a, b) - 1e-9)
          return TRUE;
      }
  return FALSE;
}

static void
check_balance (const SwFigure *self,
               const SwSolved *frames,
               int             n_frames,
               GPtrArray      *faults)
{
  double worst = BALANCE_MARGIN;

  if (self->solver.content->poses[0].base != SW_FIGURE_BASE_STANDING
      || sw_scene_has_ball_behind (self->solver.content))
    return;

  for (int i = 0; i < n_frames; i++)
    /* In the air nothing carries. */
    if (!hands_hold (&frames[i]) && !changes_ground (self, &frames[i]) && frames[i].lift <= 0)
      worst = MAX (worst, sw_solved_get_balance (&frames[i]));
  if (worst > BALANCE_MARGIN)
    say (faults,
         _ ("The person would fall: the weight is %.1f %% of the stature outside the feet. Lean the other way, or give "
            "a hand something to hold."),
         100 * worst);
}

static int
count_presses (const SwFigure *self)
{
  const SwExtent room = { -G_MAXDOUBLE, -G_MAXDOUBLE, G_MAXDOUBLE, G_MAXDOUBLE };
  SwPress presses[SW_FIGURE_MAX_SHOWN];

  return sw_press_place (&self->panels[self->n_panels - 1], self, 100, &room, presses);
}

/* A press towards the viewer has no arrow; the second view may show it. */
static void
check_press (const SwFigure *self,
             GPtrArray      *faults)
{
  const SwFigureContent *content = self->solver.content;
  int wanted = (content->shown[0] != SW_FIGURE_MARK_NONE) + (content->shown[1] != SW_FIGURE_MARK_NONE);

  if (content->motion == SW_FIGURE_MOTION_PRESS && count_presses (self) < wanted
      && (self->inset == NULL || count_presses (self->inset) < wanted))
    say (faults,
         _ ("The view looks along a press, so that its arrow cannot be drawn. Turn the view to see it from its side."));
}

/* Steps are pictures in a row: what lies between them is nobody's pose. */
static void
check_poses (const SwFigure *self,
             GPtrArray      *faults)
{
  gboolean steps = self->solver.content->motion == SW_FIGURE_MOTION_STEPS;
  int n = steps ? self->solver.n_keys : 1 + 9 * MAX (1, self->solver.n_keys - 1);
  g_autofree SwSolved *frames = g_new (SwSolved, n);

  for (int i = 0; i < n; i++)
    {
      sw_solver_get (&self->solver, n > 1 ? (double) i / (n - 1) : 0, &frames[i]);
      frames[i].body.fine = FALSE;
    }
  check_ranges (frames, n, faults);
  check_totals (frames, n, faults);
  check_floor (self, frames, n, faults);
  check_pins (frames, n, faults);
  check_balance (self, frames, n, faults);
  check_press (self, faults);
}

/**
 * sw_figure_check:
 *
 * Looks for faults over the written poses and 8 frames between each two, or over every step.
 *
 * Returns: (transfer full) (element-type utf8): the faults, for the author of the exercise; none when the array is empty
 */
GPtrArray *
sw_figure_check (SwFigure *self)
{
  GPtrArray *faults = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (SW_IS_FIGURE (self), faults);

  if (self->n_parts == 0)
    check_poses (self, faults);
  for (int i = 0; i < self->n_parts; i++)
    check_poses (self->parts[i], faults);
  return faults;
}
