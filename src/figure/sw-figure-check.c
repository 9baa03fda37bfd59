/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a figure: joints beyond their range, limbs in the floor, hands that miss what they hold, a person
 * who would fall. Tried on the written poses and in between, where interpolation may go astray unseen. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-collide.h"
#include "sw-figure-private.h"
#include "sw-press.h"
#include "sw-support.h"

#define FLOOR_DEPTH 0.008
#define SOFT_DEPTH 0.030
#define PIN_MISS 0.006
#define BALANCE_MARGIN 0.012
/* A foot that moves by more between two poses takes a step. */
#define STEP 0.04
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

static const char *const part_names[SW_N_PARTS]
    = { N_ ("trunk"),         N_ ("neck"),         N_ ("head"),       N_ ("right upper arm"), N_ ("left upper arm"),
        N_ ("right forearm"), N_ ("left forearm"), N_ ("right hand"), N_ ("left hand"),       N_ ("right thigh"),
        N_ ("left thigh"),    N_ ("right shank"),  N_ ("left shank"), N_ ("right foot"),      N_ ("left foot") };

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
  for (int part = 0; part < SW_N_PARTS; part++)
    {
      double lowest = 0;

      for (int i = 0; i < n_frames; i++)
        lowest = MIN (lowest, sw_part_get_lowest (&frames[i].body, (SwPart) part));
      if (-lowest > allowed_depth (self, part))
        say (faults, _ ("The %s goes %.1f %% of the stature into the floor. Lift it or pin it to the floor."),
             _ (part_names[part]), -100 * lowest);
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

/* Which frame it is: the written poses are those that divide evenly. */
static double
find_pose (const SwFigure *self,
           int             frame,
           int             n_frames)
{
  return n_frames > 1 ? (double) frame * (self->solver.n_keys - 1) / (n_frames - 1) : 0;
}

static char *
dup_when (const SwFigure *self,
          int             frame,
          int             n_frames)
{
  double pose = find_pose (self, frame, n_frames);
  int before = (int) floor (pose + 1e-9);

  if (pose - before < 1e-6)
    return g_strdup_printf (_ ("in pose %d"), before + 1);

  return g_strdup_printf (_ ("between poses %d and %d"), before + 1, before + 2);
}

/* Whether a foot that both poses have is set from one place to another. */
static gboolean
steps (const SwSolved *a,
       const SwSolved *b)
{
  for (int side = 0; side < 2; side++)
    {
      SwVector from = sw_body_get_ball (&a->body, (SwFigureSide) side);
      SwVector to = sw_body_get_ball (&b->body, (SwFigureSide) side);

      if (hypot (to.x - from.x, to.y - from.y) > STEP)
        return TRUE;
    }
  return FALSE;
}

/* Of several poses, one that nothing carries is in the air. Between two poses the body is carried on by its own swing
 * while a foot takes a step, or while what touches the ground changes: rising from a seat or on the toes, jumping.
 * The written poses on the ground have to stand by themselves. */
static gboolean
is_carried_over (const SwSolver *solver,
                 const SwSolved *now,
                 double          pose)
{
  int before = (int) floor (pose + 1e-9);
  const SwSolved *ends[2] = { &solver->keys[before], &solver->keys[MIN (before + 1, solver->n_keys - 1)] };
  SwSupport support;

  if (now->lift > 0)
    return TRUE;

  sw_support_find (&support, solver, now);
  if (pose - before < 1e-6)
    return (solver->n_keys > 1 || solver->content->motion == SW_FIGURE_MOTION_STEPS) && support.n_spots == 0;

  for (int i = 0; i < 2; i++)
    {
      SwSupport end;

      sw_support_find (&end, solver, ends[i]);
      if (!sw_support_is_same (&support, &end))
        return TRUE;
    }
  return steps (ends[0], ends[1]);
}

static void
check_balance (const SwFigure *self,
               const SwSolved *frames,
               int             n_frames,
               GPtrArray      *faults)
{
  double worst = BALANCE_MARGIN;
  int at = 0;

  /* Of a close picture nothing is known of the rest of the body. */
  if (self->fine)
    return;

  for (int i = 0; i < n_frames; i++)
    {
      double outside = sw_solved_get_balance (&self->solver, &frames[i]);

      if (outside > worst && !is_carried_over (&self->solver, &frames[i], find_pose (self, i, n_frames)))
        {
          worst = outside;
          at = i;
        }
    }
  if (worst > BALANCE_MARGIN)
    {
      g_autofree char *when = dup_when (self, at, n_frames);

      say (faults,
           /* Translators: "in pose 2" or "between poses 1 and 2", then a number */
           _ ("The person would fall %s: the weight is %.1f %% of the stature outside of what carries it. Lean the "
              "other way, or give a hand something to hold."),
           when, 100 * worst);
    }
}

/* The worst of each part and thing over all frames: one fault each. */
static void
check_collisions (const SwFigure *self,
                  const SwSolved *frames,
                  int             n_frames,
                  GPtrArray      *faults)
{
  g_autoptr (GArray) worst = g_array_new (FALSE, FALSE, sizeof (SwCollision));
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (int));

  if (self->fine)
    return;

  for (int i = 0; i < n_frames; i++)
    {
      const SwPose *pose = &self->solver.poses[(int) floor (find_pose (self, i, n_frames) + 1e-9)];
      gboolean between = fabs (find_pose (self, i, n_frames) - round (find_pose (self, i, n_frames))) > 1e-6;
      SwCollision found[SW_MAX_COLLISIONS];
      int n = sw_collisions_find (&self->solver, pose, &frames[i], !between, found);

      for (int k = 0; k < n; k++)
        {
          guint w = 0;

          int limb = sw_part_get_limb (found[k].part);

          /* A forearm on a wall is held by the hand alone on its way. */
          if (between && limb >= 0 && pose->pinned[limb] && pose->pins[limb].limb == SW_FIGURE_LIMB_FOREARM)
            continue;
          /* On its way up and down a step a foot goes round the edge; the straight way between two poses does not. */
          if (between && found[k].part >= SW_PART_SHANK && g_strcmp0 (found[k].thing, "step") == 0)
            continue;

          while (w < worst->len
                 && (g_array_index (worst, SwCollision, w).part != found[k].part
                     || g_strcmp0 (g_array_index (worst, SwCollision, w).thing, found[k].thing) != 0))
            w++;
          if (w == worst->len)
            {
              g_array_append_val (worst, found[k]);
              g_array_append_val (at, i);
            }
          else if (fabs (found[k].depth) > fabs (g_array_index (worst, SwCollision, w).depth))
            {
              g_array_index (worst, SwCollision, w) = found[k];
              g_array_index (at, int, w) = i;
            }
        }
    }
  for (guint w = 0; w < worst->len; w++)
    {
      const SwCollision *one = &g_array_index (worst, SwCollision, w);
      g_autofree char *when = dup_when (self, g_array_index (at, int, w), n_frames);

      if (one->depth > 0)
        say (faults,
             /* Translators: part of the body, number, a thing, "in pose 2" or "between poses 1 and 2" */
             _ ("The %s is %.1f %% of the stature deep in the %s %s. Move one of them."), _ (part_names[one->part]),
             100 * one->depth, _ (one->thing), when);
      else
        say (faults,
             /* Translators: part of the body, number, a thing, "in pose 2" or "between poses 1 and 2" */
             _ ("The %s stays %.1f %% of the stature away from the %s %s. Bring them together."),
             _ (part_names[one->part]), -100 * one->depth, _ (one->thing), when);
    }
}

static int
count_presses (const SwFigure *self)
{
  return sw_press_count (&self->panels[self->n_panels - 1], self);
}

/* A press towards the viewer has no arrow; the second view may show it. */
static void
check_press (SwFigure  *self,
             GPtrArray *faults)
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
check_poses (SwFigure  *self,
             GPtrArray *faults)
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
  check_collisions (self, frames, n, faults);
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
