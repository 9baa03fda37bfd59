/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawn figures: the same every time, within their box, as much ink as a line drawing has, small as a PDF. */
#include "config.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

#include "case.h"
#include "sw-figure.h"

#define WIDTH_PT 142.0
#define HEIGHT_PT 125.0
#define EDGE_PX 24
#define SCALE 2.0

static cairo_surface_t *
paint (SwFigure *figure,
       double    width_pt,
       double    height_pt,
       double    phase)
{
  int w = (int) (width_pt * SCALE) + 2 * EDGE_PX;
  int h = (int) (height_pt * SCALE) + 2 * EDGE_PX;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, w, h);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_translate (cr, EDGE_PX, EDGE_PX);
  cairo_scale (cr, SCALE, SCALE);
  if (phase < 0)
    sw_figure_draw (figure, cr, width_pt, height_pt);
  else
    sw_figure_draw_at (figure, cr, width_pt, height_pt, phase);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static int
tone_at (cairo_surface_t *surface,
         int              x,
         int              y)
{
  const guchar *row = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
  guint32 pixel;

  memcpy (&pixel, row + 4 * x, sizeof pixel);
  return (int) (pixel & 0xff);
}

/* Share of pixels that are darker than paper, and none of them outside the box. */
static double
ink_of (cairo_surface_t *surface)
{
  int w = cairo_image_surface_get_width (surface);
  int h = cairo_image_surface_get_height (surface);
  int inked = 0;

  for (int y = 0; y < h; y++)
    for (int x = 0; x < w; x++)
      {
        gboolean outside = x < EDGE_PX || y < EDGE_PX || x >= w - EDGE_PX || y >= h - EDGE_PX;

        if (tone_at (surface, x, y) >= 250)
          continue;
        g_assert_false (outside);
        /* Furniture and mats are paler than this. */
        if (tone_at (surface, x, y) < 200)
          inked++;
      }
  return (double) inked / ((w - 2 * EDGE_PX) * (h - 2 * EDGE_PX));
}

static gboolean
same_pixels (cairo_surface_t *a,
             cairo_surface_t *b)
{
  gsize size = (gsize) cairo_image_surface_get_stride (a) * (gsize) cairo_image_surface_get_height (a);

  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), size) == 0;
}

static void
test_in_cell (void)
{
  static const double cells[][2] = { { WIDTH_PT, HEIGHT_PT }, { 284, 108 }, { 60, 60 } };
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, i % 2 == 1, NULL);

      for (gsize k = 0; k < G_N_ELEMENTS (cells); k++)
        {
          cairo_surface_t *surface = paint (figure, cells[k][0], cells[k][1], -1);
          double ink = ink_of (surface);

          g_test_message ("%s: ink %.3f", (char *) paths->pdata[i], ink);
          g_assert_cmpfloat (ink, >, 0.012);
          g_assert_cmpfloat (ink, <, 0.30);
          cairo_surface_destroy (surface);
        }
    }
}

static int
any_of (int n)
{
  return g_test_rand_int_range (0, n);
}

static void
fill_pose_randomly (SwFigurePose *pose)
{
  for (int slot = 0; slot < (int) SW_N_SLOTS; slot++)
    {
      const SwAngleInfo *info = sw_angle_get_info (sw_angle_from_slot (slot, NULL));

      if (any_of (4) > 0)
        continue;
      pose->slots_set |= G_GUINT64_CONSTANT (1) << slot;
      pose->slots_deg[slot]
          = g_test_rand_double_range (info->low_deg - SW_ANGLE_BEYOND_DEG, info->high_deg + SW_ANGLE_BEYOND_DEG);
    }
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    if (any_of (4) == 0)
      {
        pose->root_set |= 1u << i;
        pose->root_deg[i] = g_test_rand_double_range (-180, 180);
      }
  for (int side = 0; side < 2; side++)
    {
      pose->foot_set[side] = any_of (3) == 0;
      pose->foot_pitch_deg[side] = g_test_rand_double_range (-45, 75);
      pose->hands[side] = (SwFigureHand) any_of (SW_FIGURE_HAND_FIST + 1);
    }
  pose->breath = (SwFigureBreath) any_of (SW_FIGURE_BREATH_OUT + 1);
  pose->eyes = (SwFigureEyes) any_of (SW_FIGURE_EYES_CLOSED + 1);
  pose->belly = g_test_rand_double_range (0, SW_FIGURE_MAX_BELLY);
  pose->n_pins = any_of (SW_FIGURE_MAX_PINS + 1);
  for (int i = 0; i < pose->n_pins; i++)
    {
      pose->pins[i] = (SwFigurePin){ .limb = (SwFigureLimb) any_of (SW_FIGURE_LIMB_FOOT + 1),
                                     .side = (SwFigureSide) any_of (2),
                                     .to = (SwFigurePlace) any_of (SW_FIGURE_PLACE_POINT + 1),
                                     .toward = (SwFigureToward) any_of (SW_FIGURE_TOWARD_IN + 1) };
      for (int k = 0; k < 3; k++)
        pose->pins[i].offset[k] = any_of (3) == 0 ? g_test_rand_double_range (-2, 2) : 0;
    }
}

/* Whatever the reader lets through, however little sense it makes, is drawn, and drawn within its box. */
static void
test_nonsense (void)
{
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);

  for (int i = 0; i < 300; i++)
    {
      g_auto (SwFigureContent) content;
      g_autoptr (SwFigureSpec) spec = NULL;
      g_autoptr (SwFigure) figure = NULL;
      g_autoptr (GPtrArray) faults = NULL;
      g_autofree char *text = NULL;
      cairo_surface_t *surface;

      sw_figure_content_init (&content);
      content.n_poses = 1 + any_of (SW_FIGURE_MAX_POSES);
      for (int k = 0; k < content.n_poses; k++)
        {
          fill_pose_randomly (&content.poses[k]);
          content.poses[k].lift = any_of (4) == 0 ? g_test_rand_double_range (0, SW_FIGURE_MAX_LIFT) : 0.0;
          content.poses[k].own_base = k == 0 || any_of (3) == 0;
          content.poses[k].base = (SwFigureBase) any_of (SW_FIGURE_BASE_SIDE_PLANK + 1);
          content.poses[k].on = (SwFigureSide) any_of (2);
          content.poses[k].anchor = (SwFigureAnchor) any_of (SW_FIGURE_ANCHOR_UPPER_BACK + 1);
        }
      content.motion = (SwFigureMotion) any_of (SW_FIGURE_MOTION_PRESS + 1);
      content.sides = (SwFigureSides) any_of (SW_FIGURE_SIDES_ALTERNATE + 1);
      content.limbs = (SwFigureLimbs) any_of (SW_FIGURE_LIMBS_ALL + 1);
      content.inset = (SwFigureInset){ (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1),
                                       g_test_rand_double_range (-180, 180), g_test_rand_double_range (-30, 89),
                                       g_test_rand_double_range (0.05, 1) };
      for (int k = 0; k < SW_FIGURE_MAX_SHOWN; k++)
        {
          content.shown[k] = (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1);
          content.toward[k] = (SwFigureWay) any_of (SW_FIGURE_WAY_OUT + 1);
        }
      content.about = (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1);
      content.radius_deg = g_test_rand_double_range (0, 90);
      content.hold = any_of (2);
      content.n_props = any_of (SW_FIGURE_MAX_PROPS + 1);
      for (int k = 0; k < content.n_props; k++)
        content.props[k] = (SwFigurePropSpec){ .kind = (SwFigureProp) any_of (SW_FIGURE_PROP_BALL + 1),
                                               .where = (SwFigureWhere) any_of (SW_FIGURE_WHERE_LEFT + 1),
                                               .under = (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1),
                                               .in = (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1),
                                               .from = (SwFigureMark) any_of (SW_FIGURE_MARK_LEFT_THUMB + 1),
                                               .thrown = (SwFigureThrown) any_of (SW_FIGURE_THROWN_UP + 1),
                                               .height = g_test_rand_double_range (0, 2),
                                               .distance = g_test_rand_double_range (0, 2) };
      content.n_works = any_of (SW_FIGURE_MAX_WORKS + 1);
      for (int k = 0; k < content.n_works; k++)
        content.works[k]
            = (SwFigureWork){ (SwFigureArea)any_of (SW_FIGURE_AREA_SOLE + 1), any_of (2), any_of (2) };
      content.view_turn_deg = g_test_rand_double_range (-180, 180);
      content.view_tilt_deg = g_test_rand_double_range (-30, 89);
      content.frame = (SwFigureFrame) any_of (SW_FIGURE_FRAME_FOOT + 1);
      content.layout = (SwFigureLayout) any_of (SW_FIGURE_LAYOUT_STACKED + 1);

      spec = sw_figure_spec_new_take (&content);
      figure = sw_figure_new (spec, any_of (2), NULL);
      faults = sw_figure_check (figure);
      text = sw_figure_dup_text (figure, phrases);
      surface = paint (figure, WIDTH_PT, HEIGHT_PT, any_of (2) ? -1 : 0.3);
      g_assert_cmpfloat (ink_of (surface), <, 1);
      cairo_surface_destroy (surface);
    }
}

static void
test_same_twice (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i += 3)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) one = sw_figure_new (spec, FALSE, NULL);
      g_autoptr (SwFigure) other = sw_figure_new (spec, FALSE, NULL);
      cairo_surface_t *a = paint (one, WIDTH_PT, HEIGHT_PT, -1);
      cairo_surface_t *b = paint (other, WIDTH_PT, HEIGHT_PT, -1);
      cairo_surface_t *c = paint (one, WIDTH_PT, HEIGHT_PT, -1);

      g_assert_true (same_pixels (a, b));
      g_assert_true (same_pixels (a, c));
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
      cairo_surface_destroy (c);
    }
}

/* A mirrored figure is the mirror image: pixel by pixel but for edges. */
static void
test_mirror_image (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      g_autoptr (SwFigure) mirrored = sw_figure_new (spec, TRUE, NULL);
      cairo_surface_t *a = paint (figure, WIDTH_PT, HEIGHT_PT, 1);
      cairo_surface_t *b = paint (mirrored, WIDTH_PT, HEIGHT_PT, 1);
      int w = cairo_image_surface_get_width (a);
      int h = cairo_image_surface_get_height (a);
      int differ = 0;

      for (int y = 0; y < h; y++)
        for (int x = 0; x < w; x++)
          if (abs (tone_at (a, x, y) - tone_at (b, w - 1 - x, y)) > 100)
            differ++;
      g_test_message ("%s: %d pixels differ", (char *) paths->pdata[i], differ);
      g_assert_cmpint (differ, <, w * h / 60);
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
    }
}

/* A body alike on both sides, seen from straight ahead, is its own mirror image: no line is lost where an outline
 * begins. */
static void
test_symmetry (void)
{
  g_autoptr (SwFigureSpec) spec
      = test_case_parse ("<pose base='standing'/><motion kind='still'/><view turn='180' tilt='0'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  cairo_surface_t *surface = paint (figure, 300, 500, -1);
  int w = cairo_image_surface_get_width (surface);
  int h = cairo_image_surface_get_height (surface);
  int differ = 0;

  for (int y = 0; y < 9 * h / 10; y++)
    for (int x = 0; x < w / 2; x++)
      if (abs (tone_at (surface, x, y) - tone_at (surface, w - 1 - x, y)) > 200)
        differ++;
  g_test_message ("%d pixels differ", differ);
  g_assert_cmpint (differ, <, 20);
  cairo_surface_destroy (surface);
}

static void
test_moves (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (
      "<pose base='on-back'/><pose><hip side='right' bend='46'/></pose><motion kind='there-and-back'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  cairo_surface_t *start = paint (figure, WIDTH_PT, HEIGHT_PT, 0);
  cairo_surface_t *middle = paint (figure, WIDTH_PT, HEIGHT_PT, 0.5);
  cairo_surface_t *end = paint (figure, WIDTH_PT, HEIGHT_PT, 1);

  g_assert_false (same_pixels (start, middle));
  g_assert_false (same_pixels (middle, end));
  cairo_surface_destroy (start);
  cairo_surface_destroy (middle);
  cairo_surface_destroy (end);
}

static cairo_status_t
count_bytes (void                *closure,
             const unsigned char *data,
             unsigned int         length)
{
  (void) data;
  *(gsize *) closure += length;
  return CAIRO_STATUS_SUCCESS;
}

static gsize
pdf_size (SwFigure *figure)
{
  gsize size = 0;
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (count_bytes, &size, WIDTH_PT, HEIGHT_PT);
  cairo_t *cr = cairo_create (surface);

  if (figure != NULL)
    sw_figure_draw (figure, cr, WIDTH_PT, HEIGHT_PT);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  return size;
}

static void
test_small_pdf (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();
  gsize empty = pdf_size (NULL);
  gsize sum = 0;

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      gsize size = pdf_size (figure) - empty;

      g_test_message ("%s: %" G_GSIZE_FORMAT " bytes", (char *) paths->pdata[i], size);
      sum += size;
    }
  g_test_message ("mean %" G_GSIZE_FORMAT " bytes", sum / paths->len);
  g_assert_cmpuint (sum / paths->len, <, 10240);
}

/* Each moment of pictures in a row is seen whole: no line of a body ends at the box. */
static void
test_moments_whole (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();
  int n_seen = 0;

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      const SwFigureContent *content = sw_figure_spec_get_content (spec);
      g_autoptr (SwFigure) figure = NULL;

      if (content->motion != SW_FIGURE_MOTION_STEPS || content->frame > SW_FIGURE_FRAME_WHOLE)
        continue;
      figure = sw_figure_new (spec, FALSE, NULL);
      for (int step = 0; step < content->n_poses; step++)
        {
          cairo_surface_t *surface = paint (figure, WIDTH_PT, HEIGHT_PT, (step + 0.5) / content->n_poses);
          int w = cairo_image_surface_get_width (surface);
          int h = cairo_image_surface_get_height (surface);

          for (int y = EDGE_PX; y < h - EDGE_PX; y++)
            for (int x = EDGE_PX; x < w - EDGE_PX; x++)
              if (x == EDGE_PX || y == EDGE_PX || x == w - EDGE_PX - 1 || y == h - EDGE_PX - 1)
                if (tone_at (surface, x, y) < 60)
                  g_error ("%s: picture %d is cut off at %d, %d", (char *) paths->pdata[i], step + 1, x, y);
          cairo_surface_destroy (surface);
          n_seen++;
        }
    }
  g_assert_cmpint (n_seen, >, 20);
}

/* The moving picture goes back only where the exercise does. */
static void
test_phase (void)
{
  static const struct
  {
    const char *motion;
    gboolean returns;
  } kinds[] = {
    { "kind='there-and-back' show='right-hand'", TRUE },  { "kind='one-way' show='right-hand'", FALSE },
    { "kind='circle' show='right-hand'", FALSE },         { "kind='circle' way='both' show='right-hand'", TRUE },
    { "kind='steps' show='right-hand'", FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *xml = g_strdup_printf ("<pose base='standing'/><pose><shoulder side='right' raise='60'/></pose>"
                                              "<motion %s/>",
                                              kinds[i].motion);
      g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      double before = sw_figure_get_phase (figure, 0);
      gboolean reached = FALSE;
      gboolean returned = FALSE;

      g_assert_cmpfloat (before, ==, 0);
      for (double seconds = 0.01; seconds < 12; seconds += 0.01)
        {
          double phase = sw_figure_get_phase (figure, seconds);

          g_assert_cmpfloat (phase, >=, 0);
          g_assert_cmpfloat (phase, <=, 1);
          reached = reached || phase > 0.98;
          /* Beginning anew is a jump; going back is not. */
          returned = returned || (phase < before - 1e-6 && phase > 0.1);
          before = phase;
        }
      g_assert_true (reached);
      g_assert_true (returned == kinds[i].returns);
    }
}

static void
test_measure (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);

      for (double width = 20; width < 600; width += 61)
        {
          double height = -1;

          sw_figure_measure (figure, width, &height);
          g_assert_cmpfloat (height, >, 0);
          g_assert_cmpfloat (height, <=, MAX (24, 1.6 * width));
        }
    }
}

static void
test_save (void)
{
  static const char *const kinds[] = { "x.svg", "x.png" };
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='standing'/>");
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  g_autofree char *folder = g_dir_make_tmp ("figure-XXXXXX", NULL);
  g_autoptr (GError) error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = g_build_filename (folder, kinds[i], NULL);

      g_assert_true (sw_figure_save (figure, path, 50, i == 0 ? -1 : 0.5, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
      g_assert_cmpint (g_unlink (path), ==, 0);
    }

  g_assert_false (sw_figure_save (figure, "x.bmp", 50, -1, &error));
  g_assert_error (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_KIND);
  g_clear_error (&error);
  g_assert_false (sw_figure_save (figure, "/nowhere/at/all/x.png", 50, -1, &error));
  g_assert_error (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_WRITE);
  g_clear_error (&error);
  g_assert_false (sw_figure_save (figure, "/nowhere/at/all/x.svg", 50, -1, &error));
  g_assert_error (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_WRITE);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/in-cell", test_in_cell);
  g_test_add_func ("/drawing/nonsense", test_nonsense);
  g_test_add_func ("/drawing/same-twice", test_same_twice);
  g_test_add_func ("/drawing/mirror-image", test_mirror_image);
  g_test_add_func ("/drawing/symmetry", test_symmetry);
  g_test_add_func ("/drawing/moves", test_moves);
  g_test_add_func ("/drawing/small-pdf", test_small_pdf);
  g_test_add_func ("/drawing/moments-whole", test_moments_whole);
  g_test_add_func ("/drawing/phase", test_phase);
  g_test_add_func ("/drawing/measure", test_measure);
  g_test_add_func ("/drawing/save", test_save);
  return g_test_run ();
}
