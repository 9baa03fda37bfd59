/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds the view that shows a figure's motion best, for the author of an exercise; the chosen view is then stored with the
 * figure, so that nothing of this happens when it is drawn. Weights are our own, tried over a score of exercises. */
#include "config.h"

#include "sw-figure-private.h"
#include "sw-view.h"

#define N_PATHS_PHASES 8
#define TOLERANCE 0.002

typedef struct
{
  SwSolver solver;
  SwSolved phases[N_PATHS_PHASES + 1];
  guint moving;
} Scene;

static const SwFigureMark followed[] = {
  SW_FIGURE_MARK_HIPS,       SW_FIGURE_MARK_UPPER_BACK, SW_FIGURE_MARK_HEAD,      SW_FIGURE_MARK_NOSE,
  SW_FIGURE_MARK_RIGHT_ELBOW, SW_FIGURE_MARK_LEFT_ELBOW, SW_FIGURE_MARK_RIGHT_HAND, SW_FIGURE_MARK_LEFT_HAND,
  SW_FIGURE_MARK_RIGHT_KNEE, SW_FIGURE_MARK_LEFT_KNEE,  SW_FIGURE_MARK_RIGHT_TOES, SW_FIGURE_MARK_LEFT_TOES,
};

static void
prepare (Scene        *scene,
         SwFigureSpec *spec)
{
  sw_solver_init (&scene->solver, sw_figure_spec_get_content (spec));
  scene->moving = 0;
  for (int i = 0; i <= N_PATHS_PHASES; i++)
    {
      sw_solver_get (&scene->solver, (double) i / N_PATHS_PHASES, &scene->phases[i]);
      scene->moving |= sw_figure_get_moving (&scene->phases[0], &scene->phases[i]);
    }
}

/* Twice the area that a closed path encloses on paper, or in space by its vector. */
static double
loop_share (const Scene    *scene,
            const SwCamera *camera,
            SwFigureMark    mark)
{
  SwVector area = { 0, 0, 0 };
  SwVector first = sw_body_get_mark (&scene->phases[0].body, mark);

  for (int i = 1; i + 1 <= N_PATHS_PHASES; i++)
    {
      SwVector a = sw_sub (sw_body_get_mark (&scene->phases[i].body, mark), first);
      SwVector b = sw_sub (sw_body_get_mark (&scene->phases[i + 1].body, mark), first);

      area = sw_add (area, sw_cross (a, b));
    }
  return sw_length (area) > 1e-6 ? fabs (sw_dot (area, camera->toward)) / sw_length (area) : 0;
}

/* How much of the way is seen: lengths of paths, areas of circles (their paths are longest edge-on). */
static double
path_share (const Scene    *scene,
            const SwCamera *camera)
{
  gboolean circle = scene->solver.content->motion == SW_FIGURE_MOTION_CIRCLE;
  double seen = 0;
  double whole = 0;

  for (gsize k = 0; k < G_N_ELEMENTS (followed); k++)
    {
      double length = 0;
      double on_paper = 0;

      for (int i = 1; i <= N_PATHS_PHASES; i++)
        {
          SwVector by = sw_sub (sw_body_get_mark (&scene->phases[i].body, followed[k]),
                                sw_body_get_mark (&scene->phases[i - 1].body, followed[k]));

          length += sw_length (by);
          on_paper += sw_length (sw_across (by, camera->toward));
        }
      whole += length;
      seen += circle ? length * loop_share (scene, camera, followed[k]) : on_paper;
    }
  return whole > 1e-6 ? seen / whole : 1;
}

/* How much of the body's own length is seen, the trunk counted twice; and the share of the most foreshortened bone that
 * moves. */
static double
posture_share (const Scene    *scene,
               const SwCamera *camera,
               double         *shortest)
{
  double seen = 0;
  double whole = 0;

  *shortest = 1;
  for (int phase = 0; phase <= N_PATHS_PHASES; phase += N_PATHS_PHASES)
    for (int part = 0; part < SW_N_PARTS; part++)
      {
        double weight = part == SW_PART_TRUNK ? 2 : 1;
        SwVector from;
        SwVector to;
        SwVector bone;
        double share;

        sw_part_get_line (&scene->phases[phase].body, (SwPart) part, &from, &to);
        bone = sw_sub (to, from);
        share = sw_length (sw_across (bone, camera->toward)) / MAX (1e-9, sw_length (bone));
        seen += weight * sw_length (bone) * share;
        whole += weight * sw_length (bone);
        if ((scene->moving >> part & 1) != 0 && part >= (int) SW_PART_UPPER_ARM)
          *shortest = MIN (*shortest, share);
      }
  return seen / whole;
}

/* How much of what moves is neither hidden nor where it was. */
static void
look (const Scene    *scene,
      const SwCamera *camera,
      double         *visible,
      double         *apart)
{
  g_auto (SwMotifs) start = { 0 };
  g_auto (SwMotifs) end = { 0 };
  double seen = 0;
  double all = 0;
  int both = 0;
  int points = 0;

  for (int part = 0; part < SW_N_PARTS; part++)
    {
      sw_motifs_add_part (&start, &scene->phases[0].body, (SwPart) part, SW_INK_NEAR, camera, TOLERANCE);
      sw_motifs_add_part (&end, &scene->phases[N_PATHS_PHASES].body, (SwPart) part, SW_INK_NEAR, camera, TOLERANCE);
    }
  sw_motifs_sort (&start);
  sw_motifs_sort (&end);

  for (int i = 0; i < end.n_items; i++)
    {
      const SwMotif *item = &end.items[end.order[i]];

      if ((scene->moving >> item->part & 1) == 0)
        continue;
      seen += sw_motifs_get_share_seen (&end, i) + sw_motifs_get_share_seen (&start, i);
      all += 2;
      for (int k = 0; k < 36; k++)
        {
          double x = item->extent.left + (item->extent.right - item->extent.left) * (k % 6 + 0.5) / 6;
          double y = item->extent.bottom + (item->extent.top - item->extent.bottom) * (k / 6 + 0.5) / 6;

          if (!sw_motif_holds (item, x, y))
            continue;
          points++;
          if (sw_motif_holds (&start.items[item->part], x, y))
            both++;
        }
    }
  *visible = all > 0 ? seen / all : 1;
  *apart = points > 0 ? 1.0 - (double) both / points : 1;
}

static double
score (const Scene *scene,
       double       turn_deg,
       double       tilt_deg)
{
  SwCamera camera = sw_camera (turn_deg, tilt_deg);
  SwVector face = scene->phases[0].body.pieces[SW_PIECE_HEAD].axes.x;
  double straight = fabs (remainder (turn_deg, 90)) < 1 && tilt_deg <= 10 ? 0.06 : 0;
  double shortest;
  double posture = posture_share (scene, &camera, &shortest);
  double visible;
  double apart;

  look (scene, &camera, &visible, &apart);
  return 0.30 * path_share (scene, &camera) + 0.20 * visible + 0.15 * apart + 0.35 * posture + straight
         - (tilt_deg > 45 ? 0.12 : 0.002 * tilt_deg) - (sw_dot (face, camera.toward) < -0.3 ? 0.10 : 0)
         - 0.4 * MAX (0.0, 0.6 - shortest);
}

/**
 * sw_view_score:
 * @spec: a figure
 * @turn_deg: of the camera
 * @tilt_deg: of the camera
 *
 * Returns: how well the view shows the motion; about 1 is good, higher is better
 */
double
sw_view_score (SwFigureSpec *spec,
               double        turn_deg,
               double        tilt_deg)
{
  g_autofree Scene *scene = g_new (Scene, 1);

  prepare (scene, spec);
  return score (scene, turn_deg, tilt_deg);
}

/**
 * sw_view_suggest:
 * @spec: a figure
 * @turn_deg: (out): turn of the best view, a multiple of 15
 * @tilt_deg: (out): its tilt: 0, 10, 25 or 60
 *
 * Tries 96 views, which takes some tenths of a second. Of equal ones facing right comes first, then from the front.
 */
void
sw_view_suggest (SwFigureSpec *spec,
                 double       *turn_deg,
                 double       *tilt_deg)
{
  static const double tilts[] = { 0, 10, 25, 60 };
  g_autofree Scene *scene = g_new (Scene, 1);
  double best = -G_MAXDOUBLE;

  prepare (scene, spec);
  for (int i = 0; i < 24; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (tilts); k++)
      {
        /* -90, -75, ... 255, which is -105 again. */
        double turn = remainder (-90 + 15.0 * i, 360);
        double here = score (scene, turn, tilts[k]);

        if (here > best + 0.005)
          {
            best = here;
            *turn_deg = turn;
            *tilt_deg = tilts[k];
          }
      }
}

/**
 * sw_view_get_stored:
 * @spec: a figure
 * @turn_deg: (out): turn of the view it is drawn from
 * @tilt_deg: (out): its tilt
 *
 * What the author wrote, else what the base brings.
 */
void
sw_view_get_stored (SwFigureSpec *spec,
                    double       *turn_deg,
                    double       *tilt_deg)
{
  const SwFigureContent *content = sw_figure_spec_get_content (spec);
  const SwBaseInfo *base = sw_base_get_info (content->poses[0].base);

  *turn_deg = isnan (content->view_turn_deg) ? base->view_turn_deg : content->view_turn_deg;
  *tilt_deg = isnan (content->view_tilt_deg) ? base->view_tilt_deg : content->view_tilt_deg;
}
