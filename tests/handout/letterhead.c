/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The top of the first page: the clinic's logo and words, in every size and the other way round; and the pictures of
 * what is needed. */
#include "config.h"

#include <cairo.h>
#include <string.h>

#include "handout-sample.h"
#include "sw-handout.h"

#define DAY "2026-11-20"
#define PT_PER_MM (72.0 / 25.4)
#define CLINIC "Millbrook Physiotherapy"
#define SVG "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\"><rect width=\"9\" height=\"9\"/></svg>"

typedef struct
{
  double x;
  double y;
  double width;
  double height;
} Box;

static cairo_status_t
write_cb (void                *closure,
          const unsigned char *data,
          unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static SwLogo *
make_png (void)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();
  g_autoptr (GBytes) bytes = NULL;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 90, 30);

  g_assert_cmpint (cairo_surface_write_to_png_stream (surface, write_cb, png), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  bytes = g_byte_array_free_to_bytes (g_steal_pointer (&png));
  return sw_logo_new (SW_LOGO_PNG, bytes);
}

static SwLogo *
make_svg (int width,
          int height)
{
  g_autofree char *text = g_strdup_printf (SVG, width, height);
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return sw_logo_new (SW_LOGO_SVG, bytes);
}

static SwProgramme *
make_programme (const SwLogo *logo)
{
  SwProgramme *programme = handout_sample_new (NULL);

  g_object_set (sw_programme_get_clinic (programme), "name", CLINIC, "address", "2 Mill Lane\nMillbrook", "email",
                "desk@example.org", "logo", logo, NULL);
  return programme;
}

static SwHandout *
lay_out (SwProgramme *programme,
         SwPaper      paper,
         double       text_points,
         const char  *language)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  options.paper = paper;
  options.text_points = text_points;
  options.language = language;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

/* The first piece of that kind whose text begins with @text. */
static gboolean
find_piece (SwHandout  *handout,
            const char *kind,
            const char *text,
            Box        *box)
{
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) words = g_strsplit (lines[i], " ", 6);

      if (g_strv_length (words) < 6 || !g_str_equal (words[0], kind) || !g_str_has_prefix (words[5] + 1, text))
        continue;
      *box = (Box){ g_ascii_strtod (words[1], NULL), g_ascii_strtod (words[2], NULL), g_ascii_strtod (words[3], NULL),
                    g_ascii_strtod (words[4], NULL) };
      return TRUE;
    }
  return FALSE;
}

/* Whether words stand above the title of the first page. */
static gboolean
is_head (SwHandout  *handout,
         const char *text)
{
  Box title;
  Box box;

  g_assert_true (find_piece (handout, "text", "Steady on your feet", &title));
  return find_piece (handout, "text", text, &box) && box.y < title.y;
}

static gboolean
are_apart (const Box *a,
           const Box *b)
{
  return a->x + a->width <= b->x + 0.2 || b->x + b->width <= a->x + 0.2 || a->y + a->height <= b->y + 0.2
         || b->y + b->height <= a->y + 0.2;
}

/* At most 60 mm by 16 mm, above the title, beside or above the words and the day, whatever its shape. */
static void
test_places (void)
{
  static const int shapes[][2] = { { 90, 30 }, { 30, 90 }, { 400, 10 }, { 50, 50 }, { 1, 4000 } };
  static const double sizes[] = { 12.0, 14.0, 18.0, 28.0 };
  static const char *const words[] = { "Sam Hollis, " CLINIC, "2 Mill Lane, Millbrook", "01632 960123",
                                       "20\u00a0November\u00a02026" };

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
      for (int paper = SW_PAPER_A4; paper <= SW_PAPER_LETTER; paper++)
        {
          g_autoptr (SwLogo) logo = make_svg (shapes[i][0], shapes[i][1]);
          g_autoptr (SwProgramme) programme = make_programme (logo);
          g_autoptr (SwHandout) handout = lay_out (programme, (SwPaper) paper, sizes[k], "en");
          Box picture;
          Box title;
          Box boxes[G_N_ELEMENTS (words)];

          g_assert_true (find_piece (handout, "picture", CLINIC, &picture));
          g_assert_cmpfloat (picture.width, <=, 60.0 * PT_PER_MM + 0.1);
          g_assert_cmpfloat (picture.height, <=, 16.0 * PT_PER_MM + 0.1);
          g_assert_true (picture.width >= 60.0 * PT_PER_MM - 0.1 || picture.height >= 16.0 * PT_PER_MM - 0.1);
          g_assert_cmpfloat (picture.x, <, 60.0);
          g_assert_true (find_piece (handout, "text", "Steady on your feet", &title));
          g_assert_cmpfloat (picture.y + picture.height, <=, title.y);
          for (guint w = 0; w < G_N_ELEMENTS (words); w++)
            {
              g_assert_true (find_piece (handout, "text", words[w], &boxes[w]));
              g_assert_true (are_apart (&picture, &boxes[w]));
              g_assert_cmpfloat (boxes[w].y + boxes[w].height, <=, title.y);
              for (guint before = 0; before < w; before++)
                g_assert_true (are_apart (&boxes[before], &boxes[w]));
            }
        }
}

/* Left out, there is nothing but the day; without a logo, or with one that cannot be drawn, the name alone. */
static void
test_without (void)
{
  g_autoptr (SwLogo) logo = make_png ();
  g_autoptr (GBytes) bad_bytes = g_bytes_new_static ("<svg xmlns='http://www.w3.org/2000/svg'><image/></svg>", 54);
  g_autoptr (SwLogo) bad = sw_logo_new (SW_LOGO_SVG, bad_bytes);
  g_autoptr (SwProgramme) programme = make_programme (logo);
  g_autoptr (SwHandout) left_out = NULL;
  g_autoptr (SwHandout) without = NULL;
  g_autoptr (SwHandout) with_bad = NULL;
  g_autofree char *without_dump = NULL;
  g_autofree char *with_bad_dump = NULL;
  Box box;

  g_object_set (sw_programme_get_page_plan (programme), "parts",
                SW_PAGE_PARTS_USUAL & ~SW_SET (SW_PAGE_PART_LETTERHEAD), NULL);
  left_out = lay_out (programme, SW_PAPER_A4, 14.0, "en");
  g_assert_false (find_piece (left_out, "picture", "", &box));
  g_assert_false (is_head (left_out, "2 Mill Lane"));
  g_assert_false (is_head (left_out, "Sam Hollis"));
  g_assert_true (is_head (left_out, "20\u00a0November"));

  g_object_set (sw_programme_get_page_plan (programme), "parts", SW_PAGE_PARTS_USUAL, NULL);
  g_object_set (sw_programme_get_clinic (programme), "logo", NULL, NULL);
  without = lay_out (programme, SW_PAPER_A4, 14.0, "en");
  g_assert_false (find_piece (without, "picture", "", &box));
  g_assert_true (is_head (without, "Sam Hollis, " CLINIC));
  g_assert_false (is_head (without, "2 Mill Lane"));

  g_object_set (sw_programme_get_clinic (programme), "logo", bad, NULL);
  with_bad = lay_out (programme, SW_PAPER_A4, 14.0, "en");
  without_dump = sw_handout_dump (without);
  with_bad_dump = sw_handout_dump (with_bad);
  g_assert_cmpstr (with_bad_dump, ==, without_dump);
}

/* On the page for the wall it is small, and not there when it would make it two. */
static void
test_wall (void)
{
  g_autoptr (SwLogo) logo = make_svg (30, 30);
  guint n_with = 0;

  for (double points = 12.0; points <= 22.0; points += 1.0)
    {
      g_autoptr (SwProgramme) programme = make_programme (logo);
      g_autoptr (SwHandout) with = NULL;
      g_autoptr (SwHandout) without = NULL;
      Box box;

      g_object_set (sw_programme_get_page_plan (programme), "layout", SW_LAYOUT_SUMMARY, NULL);
      with = lay_out (programme, SW_PAPER_A4, points, "en");
      g_object_set (sw_programme_get_clinic (programme), "logo", NULL, NULL);
      without = lay_out (programme, SW_PAPER_A4, points, "en");
      g_assert_cmpint (sw_handout_get_n_pages (with), ==, sw_handout_get_n_pages (without));
      if (find_piece (with, "picture", CLINIC, &box))
        {
          g_assert_cmpfloat (box.height, <=, 10.0 * PT_PER_MM + 0.1);
          n_with++;
        }
    }
  g_assert_cmpuint (n_with, >, 0);
}

/* Where lines begin at the right, so does the logo; it is not drawn the wrong way round. */
static void
test_mirrored (void)
{
  g_autoptr (SwLogo) logo = make_png ();
  g_autoptr (SwProgramme) programme = make_programme (logo);
  g_autoptr (SwHandout) left = lay_out (programme, SW_PAPER_A4, 14.0, "en");
  g_autoptr (SwHandout) right = lay_out (programme, SW_PAPER_A4, 14.0, "ar");
  Box there;
  Box here;

  g_assert_true (find_piece (left, "picture", CLINIC, &there));
  g_assert_true (find_piece (right, "picture", CLINIC, &here));
  g_assert_cmpfloat_with_epsilon (here.x, sw_handout_get_page_width_pt (right) - there.x - there.width, 0.2);
  g_assert_cmpfloat_with_epsilon (here.width, there.width, 0.01);
}

static gboolean
pdf_holds (GBytes     *pdf,
           const char *words)
{
  return memmem (g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf), words, strlen (words)) != NULL;
}

/* An SVG stays lines; a PNG is the one picture of pixels in the file. Neither tells of its origin. */
static void
test_pdf (void)
{
  g_autoptr (SwLogo) png = make_png ();
  g_autoptr (SwLogo) svg = make_svg (90, 30);
  g_autoptr (SwProgramme) with_png = make_programme (png);
  g_autoptr (SwProgramme) with_svg = make_programme (svg);
  g_autoptr (SwHandout) png_handout = lay_out (with_png, SW_PAPER_A4, 14.0, "en");
  g_autoptr (SwHandout) svg_handout = lay_out (with_svg, SW_PAPER_A4, 14.0, "en");
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png_pdf = sw_handout_to_pdf (png_handout, &error);
  g_autoptr (GBytes) svg_pdf = NULL;
  g_autoptr (GBytes) again = NULL;

  g_assert_no_error (error);
  svg_pdf = sw_handout_to_pdf (svg_handout, &error);
  g_assert_no_error (error);
  again = sw_handout_to_pdf (png_handout, &error);
  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (png_pdf, again));
  g_assert_true (pdf_holds (png_pdf, "/Subtype/Image"));
  g_assert_false (pdf_holds (svg_pdf, "/Subtype/Image"));
}

/* Every thing that is needed has its picture beside its words, inside the margins, at every size. */
static void
test_needs (void)
{
  int n = sw_term_get_n_values (SW_TYPE_EQUIPMENT);

  for (double points = 12.0; points <= 28.0; points += 8.0)
    for (int most = 3; most <= n; most += n - 3)
      {
        g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
        g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
        g_autoptr (SwHandout) handout = NULL;
        g_autoptr (GBytes) pdf = NULL;

        for (guint i = 0; i < exercises->len; i++)
          ((SwExerciseFacts *) sw_exercise_get_facts (g_ptr_array_index (exercises, i)))->equipment = SW_SET (most) - 1;
        handout = lay_out (programme, SW_PAPER_A4, points, "en");
        for (int thing = 0; thing < n; thing++)
          {
            Box box;
            gboolean found = find_piece (handout, "equipment", sw_term_to_nick (SW_TYPE_EQUIPMENT, thing), &box);

            g_assert_cmpint (found, ==, thing < most);
            if (found)
              g_assert_cmpfloat (box.x + box.width, <, sw_handout_get_page_width_pt (handout) - 36.0);
          }
        pdf = sw_handout_to_pdf (handout, NULL);
        g_assert_nonnull (pdf);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/letterhead/places", test_places);
  g_test_add_func ("/letterhead/without", test_without);
  g_test_add_func ("/letterhead/wall", test_wall);
  g_test_add_func ("/letterhead/mirrored", test_mirrored);
  g_test_add_func ("/letterhead/pdf", test_pdf);
  g_test_add_func ("/letterhead/needs", test_needs);
  return g_test_run ();
}
