/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The geometry of what is drawn beside the body: arrows that end at a bar, and arrows that lead back. */
#include "config.h"

#include "case.h"
#include "sw-press.h"

#define SCALE_PT 110.0

static const SwExtent anywhere = { -10, -10, 10, 10 };

static double
angle_between_deg (double ax,
                   double ay,
                   double bx,
                   double by)
{
  return fabs (atan2 (ax * by - ay * bx, ax * bx + ay * by)) * 180 / G_PI;
}

/* The arrow goes the asked way as seen, and its bar stands square across its tip. */
static void
check_press (const SwFigure *figure,
             const SwPress  *press,
             SwVector        asked)
{
  double x = press->tip.x - press->tail.x;
  double y = press->tip.y - press->tail.y;
  SwSpot way = sw_see (&figure->camera, asked);

  g_assert_cmpfloat (angle_between_deg (x, y, way.x, way.y), <, 0.5);
  g_assert_cmpfloat (
      fabs (angle_between_deg (x, y, press->bar[1].x - press->bar[0].x, press->bar[1].y - press->bar[0].y) - 90), <, 0.5);
  g_assert_cmpfloat (hypot ((press->bar[0].x + press->bar[1].x) / 2 - press->tip.x,
                            (press->bar[0].y + press->bar[1].y) / 2 - press->tip.y),
                     <, 1e-6);
  g_assert_cmpfloat (hypot (x, y) * SCALE_PT, >, 14);
  g_assert_cmpfloat (hypot (press->bar[1].x - press->bar[0].x, press->bar[1].y - press->bar[0].y) * SCALE_PT, >, 8);
}

static void
test_press_way (void)
{
  static const struct
  {
    const char *xml;
    double ways[2][3]; /* in the room: forward, left, up; the second all 0 for one arrow */
  } rows[] = {
    { "<pose base='sitting'/><motion kind='press' show='head' toward='back'/><view turn='-80' tilt='0'/>",
      { { -1, 0, 0 } } },
    { "<pose base='sitting'/><motion kind='press' show='head' toward='forward'/><view turn='-60' tilt='10'/>",
      { { 1, 0, 0 } } },
    { "<pose base='standing'/><motion kind='press' show='right-hand' toward='right'/><view turn='20' tilt='16'/>",
      { { 0, -1, 0 } } },
    { "<pose base='on-back'/><motion kind='press' show='right-knee' toward='down'/><view turn='-90' tilt='0'/>",
      { { 0, 0, -1 } } },
    { "<pose base='sitting'/><motion kind='press' show='right-knee left-knee' toward='in'/><view turn='0' tilt='14'/>",
      { { 0, 1, 0 }, { 0, -1, 0 } } },
    { "<pose base='sitting'/><motion kind='press' show='right-knee left-hand' toward='up down'/><view turn='-60'/>",
      { { 0, 0, 1 }, { 0, 0, -1 } } },
    { "<pose base='sitting'/><motion kind='press' show='left-foot' toward='out'/><view turn='10' tilt='5'/>",
      { { 0, 1, 0 } } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int mirrored = 0; mirrored < 2; mirrored++)
      {
        g_autoptr (SwFigureSpec) spec = test_case_parse (rows[i].xml);
        g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, NULL);
        const double *ways[2] = { rows[i].ways[0], rows[i].ways[1] };
        gboolean two = ways[1][0] != 0 || ways[1][1] != 0 || ways[1][2] != 0;
        SwPress presses[SW_FIGURE_MAX_SHOWN];
        int n = sw_press_place (&figure->overlay, figure, SCALE_PT, &anywhere, presses);

        g_assert_cmpint (n, ==, two ? 2 : 1);
        for (int k = 0; k < n; k++)
          check_press (figure, &presses[k], sw_vector (ways[k][0], (mirrored ? -1 : 1) * ways[k][1], ways[k][2]));
      }
}

/* Looked at along the press there is no arrow, and the author is told. */
static void
test_press_unseen (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (
      "<pose base='sitting'/><motion kind='press' show='head' toward='forward'/><view turn='0' tilt='0'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  g_autoptr (GPtrArray) faults = sw_figure_check (figure);
  SwPress presses[SW_FIGURE_MAX_SHOWN];

  g_assert_cmpint (sw_press_place (&figure->overlay, figure, SCALE_PT, &anywhere, presses), ==, 0);
  g_assert_cmpuint (faults->len, ==, 1);
}

/* A press of the catalogue stands clear of faces, and mostly of everything else of the body. */
static void
test_press_clear (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();
  int found = 0;

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      const SwPanel *panel = &figure->panels[figure->n_panels - 1];
      SwPress presses[SW_FIGURE_MAX_SHOWN];
      int n = sw_press_place (panel, figure, SCALE_PT, &anywhere, presses);

      for (int k = 0; k < n; k++)
        {
          int covered = 0;

          for (int step = 0; step <= 10; step++)
            {
              double x = presses[k].tail.x + (presses[k].tip.x - presses[k].tail.x) * step / 10;
              double y = presses[k].tail.y + (presses[k].tip.y - presses[k].tail.y) * step / 10;

              for (int item = 0; item < panel->items.n_items; item++)
                {
                  const SwMotif *motif = &panel->items.items[item];
                  gboolean holds = motif->part >= 0 && sw_motif_holds (motif, x, y);

                  g_assert_false (holds && motif->part == SW_PART_HEAD);
                  if (holds)
                    {
                      covered++;
                      break;
                    }
                }
            }
          g_test_message ("%s: %d of 11 places covered", (char *) paths->pdata[i], covered);
          g_assert_cmpint (covered, <=, 4);
          found++;
        }
    }
  g_assert_cmpint (found, >=, 7);
}

/* However short the way, the arrow shows that it leads back: an open head at its start, a shaft between both heads. */
static void
test_return (void)
{
  const SwPaper paper = { .scale_pt = SCALE_PT };
  const SwMotifs nothing = { 0 };

  for (double length_pt = 1; length_pt < 80; length_pt += 3)
    for (double turn = 0; turn < 6; turn += 0.7)
      {
        SwSpot path[5];
        SwArrow arrow;
        SwArrowShape shape;
        double gap;

        for (int i = 0; i < 5; i++)
          path[i] = (SwSpot){ cos (turn) * length_pt / SCALE_PT * i / 4, sin (turn) * length_pt / SCALE_PT * i / 4, 0 };
        sw_arrow_place (&arrow, path, 5, NULL, &nothing, 0, SCALE_PT, &anywhere);
        arrow.back = TRUE;
        g_assert_cmpint (arrow.n_points, >=, 2);
        sw_arrow_get_shape (&arrow, &paper, &shape);
        g_assert_true (shape.back);
        /* The heads point opposite ways. */
        g_assert_cmpfloat (angle_between_deg (shape.way[0], -shape.way[1], cos (turn), sin (turn)), <, 0.5);
        for (int end = 0; end < 3; end += 2)
          g_assert_cmpfloat ((shape.back_head[1][0] - shape.back_head[end][0]) * cos (turn)
                                 - (shape.back_head[1][1] - shape.back_head[end][1]) * sin (turn),
                             <, -2);
        gap = hypot (shape.tip[0] - shape.shaft[0][0], shape.tip[1] - shape.shaft[0][1]);
        g_assert_cmpfloat (gap, >, 16);
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/marks/press-way", test_press_way);
  g_test_add_func ("/marks/press-unseen", test_press_unseen);
  g_test_add_func ("/marks/press-clear", test_press_clear);
  g_test_add_func ("/marks/return", test_return);
  return g_test_run ();
}
