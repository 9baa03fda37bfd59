/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Soft things that people stand, lie or sit on: rollers and cushions. They stay behind the body, which stands out against
 * them whole. All sizes are our own drawing. */
#include "config.h"

#include "sw-pad-draw.h"

#define ROLLER_TONE 0.86
#define CUSHION_TONE 0.94
#define ROLLER_HALF_LENGTH 0.115
#define ROLLER_HALF_UNDER_LIMB 0.060
#define ROLLER_UNDER_BACK 0.40
/* Feet sink into a cushion by this much. */
#define SINK 0.007
#define N_CIRCLE 10
#define PILLOW_LEAST 0.012

static SwPlacement
at_point (SwVector at)
{
  return (SwPlacement){ sw_identity (), at };
}

/* How thick the body is at the mark, downwards. */
static double
depth_at (SwFigureMark mark)
{
  switch (mark)
    {
    case SW_FIGURE_MARK_HEAD:
      return 0.050;
    case SW_FIGURE_MARK_HIPS:
      return 0.085;
    case SW_FIGURE_MARK_UPPER_BACK:
    case SW_FIGURE_MARK_LOW_BACK:
    case SW_FIGURE_MARK_CHEST:
      return 0.006;
    case SW_FIGURE_MARK_RIGHT_HEEL:
    case SW_FIGURE_MARK_LEFT_HEEL:
    case SW_FIGURE_MARK_RIGHT_FOOT:
    case SW_FIGURE_MARK_LEFT_FOOT:
      return 0.024;
    default:
      return 0.034;
    }
}

/* Where it lies: under the mark as the start has it. */
static SwVector
find_place (const SwFigurePropSpec *prop,
            const SwSolved         *start)
{
  SwLimb limb = sw_scene_get_limb (prop->under);

  if (limb >= SW_LIMB_RIGHT_LEG && limb < SW_N_LIMBS && start->stand[limb % 2] > 0)
    return sw_mix (sw_body_get_ball (&start->body, (SwFigureSide) (limb % 2)),
                   start->body.pieces[SW_SIDED (SW_PIECE_FOOT, limb % 2)].at, 0.5);

  return sw_body_get_mark (&start->body, prop->under);
}

/* What is drawn after a pad: the limb that lies on it, or the whole body. */
static guint
find_parts (SwFigureMark mark)
{
  guint leg = 1u << SW_PART_THIGH | 1u << SW_PART_SHANK | 1u << SW_PART_FOOT;
  guint arm = 1u << SW_PART_UPPER_ARM | 1u << SW_PART_FOREARM | 1u << SW_PART_HAND;
  int side = ((int) mark - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2;

  if (mark < SW_FIGURE_MARK_RIGHT_ELBOW)
    return ~0u;

  return (mark < SW_FIGURE_MARK_RIGHT_HIP ? arm : leg) << side;
}

/* How high it is there: as high as the limb stands, or as the gap under the body. */
static double
find_height (const SwSolver         *solver,
             const SwFigurePropSpec *prop,
             SwVector                at)
{
  SwLimb limb = sw_scene_get_limb (prop->under);
  double gap = at.z - depth_at (prop->under);

  if (limb < SW_LIMB_RIGHT_LEG || (limb < SW_N_LIMBS && solver->keys[0].stand[limb % 2] > 0))
    return sw_scene_get_prop_height (prop);
  if (!isnan (prop->height))
    return prop->height;

  return MAX (0.020, gap);
}

/**
 * sw_pad_get_pillow_gap:
 * @prop: a pillow or towel under a part of the body
 * @body: a solved body
 *
 * Returns: how high that part is above the floor
 */
double
sw_pad_get_pillow_gap (const SwFigurePropSpec *prop,
                       const SwBody           *body)
{
  double depth = prop->under == SW_FIGURE_MARK_HEAD ? 0.050 : prop->under == SW_FIGURE_MARK_HIPS ? 0.090 : 0.036;

  return sw_body_get_mark (body, prop->under).z - depth;
}

/**
 * sw_pad_get_pillow_height:
 * @solver: the solved figure
 * @prop: a pillow or towel under a part of the body
 *
 * What lies on it in one pose may be lifted in another; the pillow is the same in all.
 *
 * Returns: its height, parts of stature
 */
double
sw_pad_get_pillow_height (const SwSolver         *solver,
                          const SwFigurePropSpec *prop)
{
  double least = G_MAXDOUBLE;

  for (int key = 0; key < solver->n_keys; key++)
    least = MIN (least, sw_pad_get_pillow_gap (prop, &solver->keys[key].body));

  return MAX (PILLOW_LEAST, least);
}

static void
add_circle (SwMotif        *motif,
            const SwCamera *camera,
            SwVector        centre,
            SwVector        a,
            SwVector        b)
{
  for (int i = 0; i < N_CIRCLE; i++)
    {
      double from = 2 * G_PI * i / N_CIRCLE;
      double to = 2 * G_PI * (i + 1) / N_CIRCLE;

      sw_motif_add_seam (motif, camera,
                         sw_add (centre, sw_add (sw_scale (a, cos (from)), sw_scale (b, sin (from)))),
                         sw_add (centre, sw_add (sw_scale (a, cos (to)), sw_scale (b, sin (to)))));
    }
}

/**
 * sw_pad_find_roller:
 * @solver: the solved figure
 * @prop: a roller
 * @body: the body that is on it
 * @low: (out): the middle of its one end
 * @high: (out): that of the other, where x or y is greater
 *
 * Returns: its radius, parts of stature
 */
double
sw_pad_find_roller (const SwSolver         *solver,
                    const SwFigurePropSpec *prop,
                    const SwBody           *body,
                    SwVector               *low,
                    SwVector               *high)
{
  gboolean lengthways = prop->where == SW_FIGURE_WHERE_UNDER;
  SwVector at = lengthways ? body->pieces[SW_PIECE_PELVIS].at : find_place (prop, &solver->keys[0]);
  double radius = (lengthways ? sw_scene_get_prop_height (prop) : find_height (solver, prop, at)) / 2;
  SwVector along = lengthways ? sw_vector (1, 0, 0) : sw_vector (0, 1, 0);
  double length = find_parts (prop->under) == ~0u ? ROLLER_HALF_LENGTH : ROLLER_HALF_UNDER_LIMB;

  /* It rolls half as far as what is on it goes. */
  if (sw_scene_get_limb (prop->under) < SW_N_LIMBS && prop->under != SW_FIGURE_MARK_NONE)
    at.x += 0.5
            * (sw_body_get_mark (body, prop->under).x - sw_body_get_mark (&solver->keys[0].body, prop->under).x);
  *low = sw_sub (sw_vector (at.x, at.y, radius), sw_scale (along, length));
  *high = sw_add (sw_vector (at.x, at.y, radius), sw_scale (along, length));
  if (lengthways)
    {
      low->x = body->pieces[SW_PIECE_HEAD].at.x;
      high->x = at.x + 0.07;
      if (low->x > high->x - ROLLER_UNDER_BACK)
        low->x = high->x - ROLLER_UNDER_BACK;
    }
  return radius;
}

/**
 * sw_pad_add_roller:
 * @motifs: (inout): grows by the roller
 * @nth: number of the prop
 * @camera: the view
 * @solver: the solved figure
 * @body: the body that is on it
 * @tolerance: of outlines, parts of stature
 */
void
sw_pad_add_roller (SwMotifs       *motifs,
                   int             nth,
                   const SwCamera *camera,
                   const SwSolver *solver,
                   const SwBody   *body,
                   double          tolerance)
{
  static const int sizes[] = { 2 };
  const SwFigurePropSpec *prop = &solver->content->props[nth];
  gboolean lengthways = prop->where == SW_FIGURE_WHERE_UNDER;
  SwVector low;
  SwVector high;
  double radius = sw_pad_find_roller (solver, prop, body, &low, &high);
  SwVector along = lengthways ? sw_vector (1, 0, 0) : sw_vector (0, 1, 0);
  SwVector half = lengthways ? sw_vector (0, radius, radius) : sw_vector (radius, 0, radius);
  SwVector end;
  SwMotif *motif;
  SwEgg eggs[2];

  eggs[0] = sw_egg (camera, at_point (low), sw_vector (0, 0, 0), half);
  eggs[1] = sw_egg (camera, at_point (high), sw_vector (0, 0, 0), half);
  motif = sw_motifs_add_thing (motifs, nth, eggs, sizes, 1, tolerance);
  motif->tone = ROLLER_TONE;
  motif->under = find_parts (prop->under);

  /* The hole in the end that faces the viewer. */
  end = sw_dot (along, camera->toward) < 0 ? low : high;
  if (fabs (sw_dot (along, camera->toward)) > 0.15)
    {
      SwVector a = sw_scale (lengthways ? sw_vector (0, 1, 0) : sw_vector (1, 0, 0), 0.5 * radius);

      add_circle (motif, camera, end, a, sw_vector (0, 0, 0.5 * radius));
      add_circle (motif, camera, end, sw_scale (a, 2), sw_vector (0, 0, radius));
    }
}

/* The floor's area under both feet. */
static void
find_soles (const SwBody *body,
            SwVector     *low,
            SwVector     *high)
{
  *low = *high = sw_body_get_ball (body, SW_FIGURE_RIGHT);
  for (int side = 0; side < 2; side++)
    {
      const SwVector places[2]
          = { sw_place (body->pieces[SW_SIDED (SW_PIECE_TOES, side)], sw_vector (0.034, 0, 0)),
              sw_place (body->pieces[SW_SIDED (SW_PIECE_FOOT, side)], sw_vector (SW_HEEL_X - 0.02, 0, 0)) };

      for (int i = 0; i < 2; i++)
        {
          *low = sw_vector (MIN (low->x, places[i].x), MIN (low->y, places[i].y - 0.03), 0);
          *high = sw_vector (MAX (high->x, places[i].x), MAX (high->y, places[i].y + 0.03), 0);
        }
    }
}

/**
 * sw_pad_find_cushion:
 * @solver: the solved figure
 * @prop: a cushion
 * @low: (out): its corner with the least coordinates
 * @high: (out): that with the greatest; what stands on it sinks in a little
 */
void
sw_pad_find_cushion (const SwSolver         *solver,
                     const SwFigurePropSpec *prop,
                     SwVector               *low,
                     SwVector               *high)
{
  gboolean both_feet = prop->where == SW_FIGURE_WHERE_UNDER;
  SwVector at = find_place (prop, &solver->keys[0]);
  double height = (both_feet ? sw_scene_get_prop_height (prop) : find_height (solver, prop, at)) + SINK;

  *low = sw_vector (at.x - 0.105, at.y - 0.09, 0);
  *high = sw_vector (at.x + 0.105, at.y + 0.09, 0);
  if (both_feet)
    {
      find_soles (&solver->keys[0].body, low, high);
      *low = sw_sub (*low, sw_vector (0.035, 0.03, 0));
      *high = sw_add (*high, sw_vector (0.035, 0.03, 0));
    }
  low->z = 0;
  high->z = height;
}

/**
 * sw_pad_add_cushion:
 * @motifs: (inout): grows by the cushion
 * @nth: number of the prop
 * @camera: the view
 * @solver: the solved figure
 * @tolerance: of outlines, parts of stature
 */
void
sw_pad_add_cushion (SwMotifs       *motifs,
                    int             nth,
                    const SwCamera *camera,
                    const SwSolver *solver,
                    double          tolerance)
{
  static const int sizes[] = { 4 };
  const SwFigurePropSpec *prop = &solver->content->props[nth];
  SwMotif *motif;
  SwEgg eggs[4];
  SwVector low;
  SwVector high;
  double height;
  double round_off;

  sw_pad_find_cushion (solver, prop, &low, &high);
  height = high.z;
  round_off = MIN (height / 2, 0.020);
  for (int i = 0; i < 4; i++)
    eggs[i] = sw_egg (camera, at_point (sw_vector ((i == 0 || i == 3) ? low.x + round_off : high.x - round_off,
                                                   i < 2 ? low.y + round_off : high.y - round_off, height / 2)),
                      sw_vector (0, 0, 0), sw_vector (round_off, round_off, height / 2));
  motif = sw_motifs_add_thing (motifs, nth, eggs, sizes, 1, tolerance);
  motif->tone = CUSHION_TONE;
  motif->under = find_parts (prop->under);

  /* The seam along the sides that face the viewer. */
  for (int i = 0; i < 2; i++)
    {
      gboolean along_x = i == 0;
      double facing = along_x ? camera->toward.y : camera->toward.x;
      double x = facing > 0 ? high.x : low.x;
      double y = facing > 0 ? high.y : low.y;

      if (fabs (facing) < 0.1)
        continue;
      sw_motif_add_seam (motif, camera, sw_vector (along_x ? low.x + 0.006 : x, along_x ? y : low.y + 0.006, height / 2),
                         sw_vector (along_x ? high.x - 0.006 : x, along_x ? y : high.y - 0.006, height / 2));
    }
}
