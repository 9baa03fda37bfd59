/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The geometry of what is drawn beside the body: arrows that end at a bar, and arrows that lead back. */
#include "config.h"

#include "case.h"
#include "sw-breath.h"
#include "sw-press.h"
#include "sw-sides-mark.h"
#include "sw-throw.h"

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
      int n;

      sw_figure_add_panels (figure);
      n = sw_press_place (panel, figure, SCALE_PT, &anywhere, presses);
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

/* Air goes in towards the face and out away from it, before the face from the side, and past it from the front. */
static void
test_breath (void)
{
  for (int view = -90; view <= 90; view += 90)
    for (int way = 0; way < 2; way++)
      {
        g_autofree char *xml = g_strdup_printf ("<pose base='sitting' breath='%s'/><view turn='%d' tilt='0'/>",
                                                way == 0 ? "in" : "out", view);
        g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
        g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
        const SwBody *body = &figure->overlay.solid->body;
        SwSpot nose = sw_see (&figure->camera, sw_body_get_mark (body, SW_FIGURE_MARK_NOSE));
        SwSpot ahead = sw_see (&figure->camera, sw_vector (1, 0, 0));
        SwBreath breath;

        g_assert_true (sw_breath_place (&figure->overlay, figure, SCALE_PT, &breath));
        for (int i = 0; i < SW_BREATH_LINES; i++)
          {
            SwSpot from = breath.lines[i][0];
            SwSpot to = breath.lines[i][SW_BREATH_POINTS - 1];
            double nearer = hypot (from.x - nose.x, from.y - nose.y) - hypot (to.x - nose.x, to.y - nose.y);

            g_assert_cmpfloat (way == 0 ? nearer : -nearer, >, 6 / SCALE_PT);
            if (view != 0)
              g_assert_cmpfloat (((to.x - from.x) * ahead.x) * (way == 0 ? -1 : 1), >, 6 / SCALE_PT);
            for (int k = 0; k < figure->overlay.items.n_items; k++)
              for (int point = 0; point < SW_BREATH_POINTS; point++)
                g_assert_false (figure->overlay.items.items[k].part == SW_PART_HEAD
                                && sw_motif_holds (&figure->overlay.items.items[k], breath.lines[i][point].x,
                                                   breath.lines[i][point].y));
          }
      }
}

static void
test_no_breath (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='sitting'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  SwBreath breath;

  g_assert_false (sw_breath_place (&figure->overlay, figure, SCALE_PT, &breath));
}

/* A belly rises as far as it is written, and hands on it rise as far. */
static void
test_belly (void)
{
  g_autoptr (SwFigureSpec) spec
      = test_case_parse ("<pose base='on-back' belly='0.05'><pin part='hand' side='both' to='belly'/></pose>"
                         "<pose/><motion kind='steps'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  const SwSolved *full = &figure->solver.keys[0];
  const SwSolved *empty = &figure->solver.keys[1];
  SwShape shapes[2];
  double top[2] = { 0, 0 };

  g_assert_cmpfloat (fabs (sw_body_get_mark (&full->body, SW_FIGURE_MARK_RIGHT_HAND).z
                           - sw_body_get_mark (&empty->body, SW_FIGURE_MARK_RIGHT_HAND).z - 0.05),
                     <, 0.006);
  for (int i = 0; i < 2; i++)
    {
      const SwBody *body = i == 0 ? &full->body : &empty->body;

      sw_shape_get (body, SW_PART_TRUNK, &shapes[i]);
      for (int hull = 0; hull < shapes[i].n_hulls; hull++)
        for (int k = 0; k < shapes[i].hulls[hull].n_blobs; k++)
          {
            const SwBlob *blob = &shapes[i].hulls[hull].blobs[k];

            if (blob->piece == SW_PIECE_LOW_BACK)
              top[i] = MAX (top[i], sw_place (body->pieces[blob->piece], blob->centre).z + blob->half.x);
          }
    }
  g_assert_cmpfloat (fabs (top[0] - top[1] - 0.048), <, 0.008);
}

static int
count_balls (const SwPanel *panel,
             SwInk          style)
{
  int n = 0;

  for (int i = 0; i < panel->items.n_items; i++)
    if (panel->items.items[i].part < 0 && panel->items.items[i].n_outlines == 1
        && panel->items.items[i].camera == NULL && panel->items.items[i].style == style)
      n++;
  return n;
}

/* A thrown ball touches the wall or the floor, or is above the hands; it is in the hands first and then in the air. */
static void
test_throw (void)
{
  static const char *const ways[] = { "wall", "floor", "up" };

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    for (int poses = 1; poses <= 2; poses++)
      {
        g_autofree char *xml = g_strdup_printf (
            "<pose base='standing'><shoulder side='both' raise='30' direction='90'/><elbow side='both' bend='80'/></pose>"
            "%s<motion kind='there-and-back'/><prop kind='ball' between='hands' thrown='%s'/>"
            "<prop kind='wall' where='front' distance='0.8'/><view turn='-90' tilt='0' layout='side-by-side'/>",
            poses > 1 ? "<pose><shoulder side='both' raise='70'/><elbow side='both' bend='10'/></pose>" : "", ways[i]);
        g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
        g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
        const SwSolver *solver = &figure->solver;
        const SwPanel *last = &figure->panels[figure->n_panels - 1];
        SwSpot path[SW_THROW_PLACES];
        SwThrow flight;
        SwSpot way;

        g_assert_true (sw_throw_get (solver, last->solid, &flight));
        if (i == 0)
          g_assert_cmpfloat (fabs (flight.flown.x + flight.radius - solver->scene.wall_at), <, 1e-6);
        else if (i == 1)
          g_assert_cmpfloat (fabs (flight.flown.z - flight.radius), <, 1e-6);
        else
          g_assert_cmpfloat (flight.flown.z - flight.held.z, >, 3 * flight.radius);

        sw_throw_get_path (&flight, &figure->camera, path);
        way = sw_see (&figure->camera, sw_sub (flight.flown, flight.held));
        g_assert_cmpfloat (angle_between_deg (path[SW_THROW_PLACES - 1].x - path[0].x,
                                              path[SW_THROW_PLACES - 1].y - path[0].y, way.x, way.y),
                           <, 0.5);
        g_assert_cmpint (count_balls (last, SW_INK_START), ==, 1);
        g_assert_cmpint (sw_throw_has_left (solver, last->solid, 0), ==, poses > 1);
        if (poses > 1)
          g_assert_false (sw_throw_get (solver, figure->panels[0].solid, &flight));
        g_assert_cmpint (count_balls (&figure->panels[0], SW_INK_NEAR), ==, 1);
        g_assert_cmpint (count_balls (last, SW_INK_NEAR), ==, poses > 1 ? 0 : 1);
      }
}

static SwSidesMark
read_sides (const char *xml)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  SwSidesMark mark;

  sw_sides_mark_get (&mark, figure);
  return mark;
}

/* A hand that steadies or goes along with what it holds is not shown as working; what the author says counts. */
static void
test_sides_limbs (void)
{
  const guint right_leg = 1u << SW_LIMB_RIGHT_LEG;
  const guint both_legs = right_leg | 1u << SW_LIMB_LEFT_LEG;
  SwSidesMark mark = read_sides ("<pose base='standing'><pin part='hand' side='right' to='knee'/></pose>"
                                 "<pose><hip side='right' bend='70'/><knee side='right' bend='70'/></pose>");

  g_assert_cmpint (mark.n, ==, 1);
  g_assert_cmpuint (mark.limbs[0], ==, right_leg);
  /* Of a picture from behind the mark is seen from behind, too. */
  mark = read_sides ("<pose base='standing'/><pose><hip side='right' out='30'/></pose><view turn='180' tilt='0'/>");
  g_assert_cmpint (mark.n, ==, 1);
  g_assert_cmpuint (mark.limbs[0], ==, 1u << SW_LIMB_LEFT_LEG);
  /* Steps from several bases move nothing by themselves. */
  mark = read_sides ("<pose base='standing'/><pose base='standing'><hip side='right' bend='30'/></pose>"
                     "<motion kind='steps' sides='alternate' limbs='legs'/>");
  g_assert_cmpint (mark.n, ==, 2);
  g_assert_cmpuint (mark.limbs[0], ==, right_leg);
  g_assert_cmpuint (mark.limbs[0] | mark.limbs[1], ==, both_legs);
  mark = read_sides ("<pose base='standing'/><pose lift='0.1'><shoulder side='both' raise='90'/></pose>"
                     "<motion sides='both' limbs='legs'/>");
  g_assert_cmpuint (mark.limbs[0], ==, both_legs);
}

/* From base to base the height of the chest is known: down from standing, up from the floor, level when nothing changes. */
static void
test_rise (void)
{
  g_autoptr (SwFigureSpec) spec
      = test_case_parse ("<pose base='standing'/><pose base='hands-and-knees'/><pose base='hands-and-knees'/>"
                         "<pose base='kneeling'/><motion kind='steps'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);

  g_assert_cmpint (figure->n_parts, ==, 4);
  g_assert_cmpfloat (figure->parts[0]->rises, ==, 0);
  g_assert_cmpfloat (figure->parts[1]->rises, <, -0.3);
  g_assert_cmpfloat (fabs (figure->parts[2]->rises), <, 1e-6);
  g_assert_cmpfloat (figure->parts[3]->rises, >, 0.1);
}

/* What has to be explained is known without drawing: no more than the picture has, and nothing of what it has not. */
static void
test_signs (void)
{
  static const char *const raises = "<pose base='standing'/><pose><shoulder side='right' raise='80'/></pose>";
  static const struct
  {
    const char *start; /* the poses; NULL for those of an arm that is raised */
    const char *rest;
    SwFigureSigns signs;
  } rows[] = {
    { "<pose base='standing'/>", "<motion kind='still'/>", 0 },
    { "<pose base='sitting' breath='in'/>", "", SW_FIGURE_SIGN_BREATH },
    { "<pose base='sitting'/>", "<motion kind='press' show='head' toward='back'/><view turn='-80' tilt='0'/>",
      SW_FIGURE_SIGN_PRESS },
    { NULL, "<motion kind='one-way' sides='none'/>", SW_FIGURE_SIGN_START | SW_FIGURE_SIGN_ARROW },
    { NULL, "<motion kind='there-and-back' sides='none'/>",
      SW_FIGURE_SIGN_START | SW_FIGURE_SIGN_ARROW | SW_FIGURE_SIGN_BACK },
    { NULL, "<motion kind='one-way' sides='one' hold='yes'/>",
      SW_FIGURE_SIGN_START | SW_FIGURE_SIGN_ARROW | SW_FIGURE_SIGN_LIMBS | SW_FIGURE_SIGN_HOLD },
    { NULL, "<motion kind='one-way' sides='alternate'/><works area='shoulder' side='right'/>",
      SW_FIGURE_SIGN_START | SW_FIGURE_SIGN_ARROW | SW_FIGURE_SIGN_TURNS | SW_FIGURE_SIGN_WORKS },
    { NULL, "<motion kind='one-way' sides='none'/><view layout='side-by-side'/>",
      SW_FIGURE_SIGN_ORDER | SW_FIGURE_SIGN_ARROW },
    { NULL, "<motion kind='one-way' sides='none'/><view layout='single'/>"
            "<inset around='right-hand' turn='0' tilt='0' size='0.4'/>",
      SW_FIGURE_SIGN_START | SW_FIGURE_SIGN_ARROW | SW_FIGURE_SIGN_RING },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *xml = g_strconcat (rows[i].start != NULL ? rows[i].start : raises, rows[i].rest, NULL);
      g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);

      g_assert_cmpuint (sw_figure_get_signs (figure, 130, 120), ==, rows[i].signs);
      g_assert_cmpuint (sw_figure_get_signs (figure, 130, 7), ==, 0);
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
  g_test_add_func ("/marks/breath", test_breath);
  g_test_add_func ("/marks/no-breath", test_no_breath);
  g_test_add_func ("/marks/belly", test_belly);
  g_test_add_func ("/marks/throw", test_throw);
  g_test_add_func ("/marks/sides-limbs", test_sides_limbs);
  g_test_add_func ("/marks/rise", test_rise);
  g_test_add_func ("/marks/signs", test_signs);
  return g_test_run ();
}
