/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Flat things that go round the body: loop bands, weight cuffs, straps. What lies on the side of a limb that faces the
 * viewer is drawn after the limb, the rest before it. All sizes are our own drawing. */
#include "config.h"

#include "sw-ribbon.h"

#define LOOP_WIDTH 0.026
#define LOOP_TONE 0.80
#define LOOP_INK 0.10
#define STRAP_WIDTH 0.024
#define STRAP_TONE 0.95
#define STRAP_INK 0.20
#define EDGE_PT 0.65
#define GAP_PT 0.8
#define CORD_PT 1.0
#define CORD_INK 0.15
#define N_RING 7

/**
 * Ring:
 * @frame: centre and axes; x and y span the ring, z goes along the limb
 * @half_x: how far it reaches along x
 * @half_y: along y
 * @part: the part of the body it lies on, -1 for none
 *
 * Where a band goes round a limb.
 */
typedef struct
{
  SwPlacement frame;
  double half_x;
  double half_y;
  int part;
} Ring;

static Ring
ring_on (const SwBody *body,
         int           piece,
         int           part,
         SwVector      at,
         double        half_x,
         double        half_y)
{
  SwPlacement frame = body->pieces[piece];

  return (Ring){ { frame.axes, sw_place (frame, at) }, half_x, half_y, part };
}

/* Round the palm, the elbow, the middle of the thigh, above the knee, round the foot, above the ankle. */
static Ring
find_ring (const SwBody *body,
           SwFigureMark  mark)
{
  int side = ((int) mark - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2;
  Ring ring;

  switch (mark)
    {
    case SW_FIGURE_MARK_RIGHT_HAND:
    case SW_FIGURE_MARK_LEFT_HAND:
      return ring_on (body, SW_SIDED (SW_PIECE_FOREARM, side), SW_SIDED (SW_PART_FOREARM, side),
                      sw_vector (0, 0, -0.122), 0.022, 0.022);
    case SW_FIGURE_MARK_RIGHT_ELBOW:
    case SW_FIGURE_MARK_LEFT_ELBOW:
      return ring_on (body, SW_SIDED (SW_PIECE_UPPER_ARM, side), SW_SIDED (SW_PART_UPPER_ARM, side),
                      sw_vector (0, 0, -0.150), 0.030, 0.030);
    case SW_FIGURE_MARK_RIGHT_HIP:
    case SW_FIGURE_MARK_LEFT_HIP:
      return ring_on (body, SW_SIDED (SW_PIECE_THIGH, side), SW_SIDED (SW_PART_THIGH, side),
                      sw_vector (0.002, 0, -0.110), 0.051, 0.047);
    case SW_FIGURE_MARK_RIGHT_KNEE:
    case SW_FIGURE_MARK_LEFT_KNEE:
      return ring_on (body, SW_SIDED (SW_PIECE_THIGH, side), SW_SIDED (SW_PART_THIGH, side),
                      sw_vector (0.001, 0, -0.196), 0.043, 0.041);
    case SW_FIGURE_MARK_RIGHT_HEEL:
    case SW_FIGURE_MARK_LEFT_HEEL:
      return ring_on (body, SW_SIDED (SW_PIECE_SHANK, side), SW_SIDED (SW_PART_SHANK, side),
                      sw_vector (-0.002, 0, -0.200), 0.028, 0.028);
    case SW_FIGURE_MARK_RIGHT_FOOT:
    case SW_FIGURE_MARK_LEFT_FOOT:
    case SW_FIGURE_MARK_RIGHT_TOES:
    case SW_FIGURE_MARK_LEFT_TOES:
      ring = ring_on (body, SW_SIDED (SW_PIECE_FOOT, side), SW_SIDED (SW_PART_FOOT, side), sw_vector (0.040, 0, -0.019),
                      0.025, 0.030);
      ring.frame.axes = (SwMatrix){ ring.frame.axes.z, ring.frame.axes.y, sw_scale (ring.frame.axes.x, -1) };
      return ring;
    default:
      return (Ring){ { sw_identity (), sw_body_get_mark (body, mark) }, 0.02, 0.02, -1 };
    }
}

/* The place on the ring that looks into @outward. */
static SwVector
on_ring (const Ring *ring,
         SwVector    outward)
{
  double x = ring->half_x * sw_dot (outward, ring->frame.axes.x);
  double y = ring->half_y * sw_dot (outward, ring->frame.axes.y);
  double length = MAX (1e-9, hypot (x, y));

  return sw_place (ring->frame, sw_vector (ring->half_x * x / length, ring->half_y * y / length, 0));
}

/* The closed path of a loop round two rings, and where each of its places looks. */
static void
find_loop (const Ring *a,
           const Ring *b,
           SwVector    path[2 * N_RING],
           SwVector    outward[2 * N_RING])
{
  SwVector along = sw_sub (b->frame.at, a->frame.at);
  SwVector across_a = sw_unit (sw_across (along, a->frame.axes.z), a->frame.axes.y);
  SwVector across_b = sw_unit (sw_across (along, b->frame.axes.z), b->frame.axes.y);
  SwVector up_a = sw_cross (a->frame.axes.z, across_a);
  SwVector up_b = sw_cross (b->frame.axes.z, across_b);

  if (sw_dot (up_a, up_b) < 0)
    up_b = sw_scale (up_b, -1);
  for (int i = 0; i < N_RING; i++)
    {
      double angle = G_PI / 2 + G_PI * i / (N_RING - 1);

      outward[i] = sw_add (sw_scale (across_a, cos (angle)), sw_scale (up_a, sin (angle)));
      path[i] = on_ring (a, outward[i]);
      outward[N_RING + i] = sw_sub (sw_scale (across_b, -cos (angle)), sw_scale (up_b, sin (angle)));
      path[N_RING + i] = on_ring (b, outward[N_RING + i]);
    }
}

/* One run of the loop that faces the viewer, or one that does not, as a line. */
static void
add_run (SwMotifs       *motifs,
         int             nth,
         const SwCamera *camera,
         const SwVector *line,
         int             n_line,
         gboolean        near,
         guint           limbs)
{
  SwMotif *motif;

  if (n_line < 2)
    return;

  motif = sw_motifs_add_line (motifs, nth, camera, line, n_line, LOOP_WIDTH);
  motif->tone = LOOP_TONE;
  motif->line_ink = LOOP_INK;
  if (near)
    motif->over = limbs;
  else
    motif->under = limbs;
}

/**
 * sw_ribbon_add_loop:
 * @motifs: (inout): grows by the loop
 * @nth: number of the prop
 * @prop: a loop band
 * @camera: the view
 * @body: the body it goes round
 * @fixed_end: where it is fixed when the prop names one place only
 */
void
sw_ribbon_add_loop (SwMotifs               *motifs,
                    int                     nth,
                    const SwFigurePropSpec *prop,
                    const SwCamera         *camera,
                    const SwBody           *body,
                    SwVector                fixed_end)
{
  Ring a = find_ring (body, prop->in);
  Ring b = prop->from != SW_FIGURE_MARK_NONE ? find_ring (body, prop->from)
                                             : (Ring){ { a.frame.axes, fixed_end }, 0.008, 0.008, -1 };
  guint limbs = (a.part >= 0 ? 1u << a.part : 0) | (b.part >= 0 ? 1u << b.part : 0);
  SwVector path[2 * N_RING];
  SwVector outward[2 * N_RING];
  SwVector line[SW_MOTIF_MAX_LINE];
  gboolean turned = FALSE;
  int n = 2 * N_RING;
  int first = 0;
  int n_line = 0;

  find_loop (&a, &b, path, outward);
  /* Begin where the loop turns from one side to the other. */
  for (int i = 0; i < n && !turned; i++)
    if ((sw_dot (outward[i], camera->toward) >= 0) != (sw_dot (outward[(i + n - 1) % n], camera->toward) >= 0))
      {
        first = i;
        turned = TRUE;
      }

  for (int i = 0; i < n; i++)
    {
      int here = (first + i) % n;
      int before = (first + i + n - 1) % n;
      double facing = sw_dot (outward[here], camera->toward);
      double faced = sw_dot (outward[before], camera->toward);

      if ((facing >= 0) != (faced >= 0))
        {
          SwVector edge = sw_mix (path[before], path[here], faced / (faced - facing));

          if (i > 0)
            {
              line[n_line++] = edge;
              add_run (motifs, nth, camera, line, n_line, faced >= 0, limbs);
            }
          n_line = 0;
          line[n_line++] = edge;
        }
      line[n_line++] = path[here];
    }
  if (turned)
    {
      int last = (first + n - 1) % n;
      double facing = sw_dot (outward[first], camera->toward);
      double faced = sw_dot (outward[last], camera->toward);

      line[n_line++] = sw_mix (path[last], path[first], faced / (faced - facing));
      add_run (motifs, nth, camera, line, n_line, faced >= 0, limbs);
    }
}

/**
 * sw_ribbon_add_cuff:
 * @motifs: (inout): grows by the cuff
 * @nth: number of the prop
 * @prop: a weight cuff in a hand or foot: it lies round wrist or ankle
 * @camera: the view
 * @body: the body that wears it
 * @tolerance: of outlines, parts of stature
 */
void
sw_ribbon_add_cuff (SwMotifs               *motifs,
                    int                     nth,
                    const SwFigurePropSpec *prop,
                    const SwCamera         *camera,
                    const SwBody           *body,
                    double                  tolerance)
{
  static const int sizes[] = { 3 };
  int side = ((int) prop->in - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2;
  gboolean arm = prop->in <= SW_FIGURE_MARK_LEFT_HAND;
  SwPlacement frame = body->pieces[SW_SIDED (arm ? SW_PIECE_FOREARM : SW_PIECE_SHANK, side)];
  double at = arm ? -0.113 : -0.196;
  double half = arm ? 0.018 : 0.025;
  double radius = arm ? 0.029 : 0.038;
  SwMotif *motif;
  SwEgg eggs[3];

  for (int i = 0; i < 3; i++)
    {
      double rim = i == 1 ? radius : radius - 0.003;

      eggs[i] = sw_egg (camera, frame, sw_vector (-0.002, 0, at + (i - 1) * (half - 0.005)),
                        sw_vector (rim, rim, 0.005));
    }
  motif = sw_motifs_add_thing (motifs, nth, eggs, sizes, 1, tolerance);
  motif->tone = 0.84;
  motif->over = 1u << SW_SIDED (arm ? SW_PART_FOREARM : SW_PART_SHANK, side);

  /* The pockets with the weights. */
  for (int i = 0; i < 10; i++)
    {
      SwVector outward = sw_vector (cos (G_PI * i / 5 + 0.3), sin (G_PI * i / 5 + 0.3), 0);
      SwVector from = sw_vector (radius * outward.x - 0.002, radius * outward.y, at - half + 0.004);

      if (sw_dot (sw_apply (frame.axes, outward), camera->toward) > 0.2)
        sw_motif_add_seam (motif, camera, sw_place (frame, from),
                           sw_place (frame, sw_add (from, sw_vector (0, 0, 2 * half - 0.008))));
    }
}

static void
add_strand (SwMotifs       *motifs,
            int             nth,
            const SwCamera *camera,
            const SwBody   *body,
            SwFigureSide    hand,
            SwFigureSide    foot,
            double          edge)
{
  SwPlacement sole = body->pieces[SW_SIDED (SW_PIECE_FOOT, foot)];
  SwVector grip = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, hand)],
                            sw_vector (0, -sw_side_sign (hand) * 0.006, -0.042));
  SwVector line[4] = { grip, sw_place (sole, sw_vector (0.046, edge * 0.033, -0.012)),
                       sw_place (sole, sw_vector (0.046, edge * 0.028, -0.040)),
                       sw_place (sole, sw_vector (0.046, 0, -0.044)) };
  double facing = edge * sw_dot (sole.axes.y, camera->toward);
  SwMotif *motif = sw_motifs_add_line (motifs, nth, camera, line, 4, STRAP_WIDTH);

  motif->tone = STRAP_TONE;
  motif->line_ink = STRAP_INK;
  motif->under = 1u << SW_SIDED (SW_PART_HAND, hand);
  if (fabs (facing) > 0.15 && facing > 0)
    motif->over = 1u << SW_SIDED (SW_PART_FOOT, foot);
  else if (fabs (facing) > 0.15)
    motif->under |= 1u << SW_SIDED (SW_PART_FOOT, foot);
}

/* Whether another strap leads from the other hand to the same foot. */
static gboolean
has_twin (const SwFigureContent *content,
          int                    nth)
{
  for (int i = 0; i < content->n_props; i++)
    if (i != nth && content->props[i].kind == SW_FIGURE_PROP_STRAP && content->props[i].from == content->props[nth].from)
      return TRUE;

  return FALSE;
}

/**
 * sw_ribbon_add_strap:
 * @motifs: (inout): grows by the strap
 * @nth: number of the prop, a strap in a hand from a foot
 * @content: the figure
 * @camera: the view
 * @body: the body that holds it
 *
 * A strap in one hand has both strands there; of two hands that hold one, each has its strand.
 */
void
sw_ribbon_add_strap (SwMotifs              *motifs,
                     int                    nth,
                     const SwFigureContent *content,
                     const SwCamera        *camera,
                     const SwBody          *body)
{
  const SwFigurePropSpec *prop = &content->props[nth];
  SwFigureSide hand = prop->in == SW_FIGURE_MARK_LEFT_HAND ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
  SwFigureSide foot = ((int) prop->from - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2 == 1 ? SW_FIGURE_LEFT
                                                                                       : SW_FIGURE_RIGHT;

  for (int edge = -1; edge <= 1; edge += 2)
    if (!has_twin (content, nth) || edge == (int) sw_side_sign (hand))
      add_strand (motifs, nth, camera, body, hand, foot, edge);
}

/**
 * sw_ribbon_add_cable:
 * @motifs: (inout): grows by pulley, line and handle
 * @nth: number of the prop
 * @prop: a cable in a hand
 * @camera: the view
 * @body: the body that holds it
 * @fixed_end: where the pulley is
 * @tolerance: of outlines, parts of stature
 */
void
sw_ribbon_add_cable (SwMotifs               *motifs,
                     int                     nth,
                     const SwFigurePropSpec *prop,
                     const SwCamera         *camera,
                     const SwBody           *body,
                     SwVector                fixed_end,
                     double                  tolerance)
{
  static const int wheel_sizes[] = { 1 };
  static const int bar_sizes[] = { 2 };
  SwFigureSide side = prop->in == SW_FIGURE_MARK_LEFT_HAND ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
  SwPlacement hand = body->pieces[SW_SIDED (SW_PIECE_HAND, side)];
  SwVector grip = sw_vector (0, -sw_side_sign (side) * 0.006, -0.042);
  SwVector bar[2] = { sw_place (hand, sw_add (grip, sw_vector (-0.048, 0, 0))),
                      sw_place (hand, sw_add (grip, sw_vector (0.048, 0, 0))) };
  SwVector middle = sw_place (hand, grip);
  SwVector ring = sw_add (middle, sw_scale (sw_unit (sw_sub (fixed_end, middle), sw_vector (1, 0, 0)), 0.075));
  const SwVector stirrup[3] = { bar[0], ring, bar[1] };
  const SwVector line[2] = { ring, fixed_end };
  SwPlacement at = { sw_identity (), fixed_end };
  SwEgg wheel = sw_egg (camera, at, sw_vector (0, 0, 0), sw_vector (0.022, 0.022, 0.022));
  guint fist = 1u << SW_SIDED (SW_PART_HAND, side);
  SwMotif *motif;
  SwEgg eggs[2];

  motif = sw_motifs_add_thing (motifs, nth, &wheel, wheel_sizes, 1, tolerance);
  motif->tone = 0.97;
  motif = sw_motifs_add_line (motifs, nth, camera, line, 2, 0);
  motif->under = fist;
  motif = sw_motifs_add_line (motifs, nth, camera, stirrup, 3, 0);
  motif->under = fist;
  for (int i = 0; i < 2; i++)
    eggs[i] = sw_egg (camera, (SwPlacement){ sw_identity (), bar[i] }, sw_vector (0, 0, 0),
                      sw_vector (0.010, 0.010, 0.010));
  motif = sw_motifs_add_thing (motifs, nth, eggs, bar_sizes, 1, tolerance);
  motif->tone = 0.70;
  motif->under = fist;
}

static void
trace (const SwPaper *paper,
       const SwMotif *motif)
{
  sw_paper_move (paper, motif->line[0].x, motif->line[0].y);
  for (int i = 1; i < motif->n_line; i++)
    sw_paper_line (paper, motif->line[i].x, motif->line[i].y);
}

/**
 * sw_ribbon_draw:
 * @paper: where to draw
 * @motif: a thing that is a line
 */
void
sw_ribbon_draw (const SwPaper *paper,
                const SwMotif *motif)
{
  double width = motif->line_width * paper->scale_pt;
  const struct
  {
    double width;
    double tone;
  } strokes[] = { { MAX (width, CORD_PT) + 2 * GAP_PT, 1.0 },
                  { MAX (width, CORD_PT), width > 0 ? motif->line_ink : CORD_INK },
                  { width - 2 * EDGE_PT, motif->tone } };

  sw_sketch_save (paper->sketch);
  sw_sketch_set_cap (paper->sketch, CAIRO_LINE_CAP_BUTT);
  sw_sketch_set_join (paper->sketch, CAIRO_LINE_JOIN_ROUND);
  trace (paper, motif);
  for (gsize i = 0; i < G_N_ELEMENTS (strokes); i++)
    if (strokes[i].width > 0)
      {
        sw_sketch_set_width (paper->sketch, strokes[i].width);
        sw_paper_tone (paper, strokes[i].tone);
        sw_sketch_stroke_preserve (paper->sketch);
      }
  sw_sketch_new_path (paper->sketch);
  sw_sketch_restore (paper->sketch);
}
