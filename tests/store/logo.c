/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's logo: what is taken, what is taken out of it, what is refused; in the programme and out of it again. */
#include "config.h"

#include <cairo.h>
#include <glib/gstdio.h>
#include <string.h>

#include "sw-clinic-defaults.h"
#include "sw-data-dir.h"
#include "sw-logo-file.h"
#include "sw-logo-picture.h"
#include "sw-programme-xml.h"

#define SVG_START "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"60\" height=\"20\">"
#define PLAIN_SVG SVG_START "<rect width=\"60\" height=\"20\" fill=\"#123456\"/></svg>"

static GBytes *
bytes_of (const char *text)
{
  return g_bytes_new (text, strlen (text));
}

static cairo_status_t
write_cb (void                *closure,
          const unsigned char *data,
          unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Shades of grey from @darkest to white, or noise that cannot be packed. */
static GBytes *
make_png (int      width,
          int      height,
          double   darkest,
          gboolean noise)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, darkest, darkest, darkest);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; noise && y < height; y++)
    for (int x = 0; x < width; x++)
      ((guint32 *) (gpointer) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface)))[x]
          = g_rand_int (random);
  cairo_surface_mark_dirty (surface);
  g_assert_cmpint (cairo_surface_write_to_png_stream (surface, write_cb, png), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (g_steal_pointer (&png));
}

/* The PNG with a chunk more before its data, as cameras and drawing programs write them. */
static GBytes *
add_text_chunk (GBytes *png)
{
  /* tEXt, 13 bytes; the check sum was computed with zlib's crc32(). */
  static const guint8 chunk[] = { 0, 0, 0, 13, 't', 'E', 'X', 't', 'A', 'u', 't', 'h', 'o', 'r', 0,
                                  'S', 'o', 'm', 'e', 'o', 'n', 0x5b, 0x76, 0xa3, 0x46 };
  gsize length;
  const guint8 *data = g_bytes_get_data (png, &length);
  GByteArray *more = g_byte_array_new ();

  /* The signature takes 8 bytes, the header's chunk 25. */
  g_byte_array_append (more, data, 33);
  g_byte_array_append (more, chunk, sizeof chunk);
  g_byte_array_append (more, data + 33, (guint) length - 33);
  return g_byte_array_free_to_bytes (more);
}

static SwLogo *
take (GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  SwLogo *logo = sw_logo_from_bytes (bytes, &error);

  g_assert_no_error (error);
  return logo;
}

static void
assert_refused (GBytes      *bytes,
                SwLogoError  code,
                const char  *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (sw_logo_from_bytes (bytes, &error));
  g_test_message ("%s", error->message);
  g_assert_error (error, SW_LOGO_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, words));
}

static gboolean
holds (const SwLogo *logo,
       const char   *words)
{
  gsize length;
  const char *data = g_bytes_get_data (logo->bytes, &length);

  return g_strstr_len (data, (gssize) length, words) != NULL
         || memmem (data, length, words, strlen (words)) != NULL;
}

/* Only the pixels are left of a PNG, and a second time through changes nothing. */
static void
test_png (void)
{
  g_autoptr (GBytes) plain = make_png (300, 80, 0.2, FALSE);
  g_autoptr (GBytes) bytes = add_text_chunk (plain);
  g_autoptr (SwLogo) logo = take (bytes);
  g_autoptr (SwLogo) again = take (logo->bytes);
  g_autoptr (SwLogoPicture) picture = sw_logo_picture_new (logo, NULL);
  double width;
  double height;

  g_assert_nonnull (memmem (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), "Someon", 6));
  g_assert_cmpint (logo->type, ==, SW_LOGO_PNG);
  g_assert_false (holds (logo, "Someon"));
  g_assert_false (holds (logo, "tEXt"));
  g_assert_true (sw_logo_equal (logo, again));
  sw_logo_picture_get_size (picture, &width, &height);
  g_assert_cmpfloat (width, ==, 300.0);
  g_assert_cmpfloat (height, ==, 80.0);
  sw_logo_picture_fit (picture, 150.0, 100.0, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 150.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (height, 40.0, 1e-9);
  sw_logo_picture_fit (picture, 1000.0, 8.0, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 30.0, 1e-9);
}

static void
test_png_limits (void)
{
  g_autoptr (GBytes) large = make_png (4000, 2000, 0.2, FALSE);
  g_autoptr (GBytes) too_wide = make_png (4001, 10, 0.2, FALSE);
  g_autoptr (GBytes) pale = make_png (300, 80, 0.8, FALSE);
  g_autoptr (GBytes) noise = make_png (280, 280, 0.0, TRUE);
  g_autoptr (GBytes) whole = make_png (300, 80, 0.2, FALSE);
  g_autoptr (GBytes) half = g_bytes_new_from_bytes (whole, 0, g_bytes_get_size (whole) / 2);
  g_autoptr (GBytes) start = g_bytes_new_from_bytes (whole, 0, 20);
  g_autoptr (SwLogo) logo = take (large);
  g_autoptr (SwLogo) noisy = take (noise);
  g_autoptr (SwLogoPicture) picture = sw_logo_picture_new (logo, NULL);
  double width;
  double height;

  /* No more pixels than the letterhead's frame has at 600 to the inch. */
  sw_logo_picture_get_size (picture, &width, &height);
  g_assert_cmpfloat (width, ==, 756.0);
  g_assert_cmpfloat (height, ==, 378.0);
  g_assert_cmpuint (g_bytes_get_size (noisy->bytes), <=, SW_LOGO_MAX_BYTES);

  assert_refused (too_wide, SW_LOGO_ERROR_SIZE, "4001 by 10");
  assert_refused (pale, SW_LOGO_ERROR_PALE, "pale");
  assert_refused (half, SW_LOGO_ERROR_CONTENT, "damaged");
  assert_refused (start, SW_LOGO_ERROR_SIZE, "0 by 0");
}

static void
test_svg (void)
{
  g_autoptr (GBytes) bytes = bytes_of (
      "<?xml version=\"1.0\"?><!-- drawn by Someone --><?xml-stylesheet href=\"x.css\"?>"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\""
      " xmlns:maker=\"urn:example:maker\" maker:version=\"Someone 3\" viewBox=\"0 0 90 30\" onload=\"Someone()\">"
      "<title>Someone</title><metadata><maker:by>Someone</maker:by></metadata><script>Someone()</script>"
      "<defs><linearGradient id=\"g\"><stop offset=\"0\" stop-color=\"#000\"/></linearGradient></defs>"
      "<maker:view who=\"Someone\"/><style>.a { fill: url(#g) }</style>"
      "<a xlink:href=\"https://someone.example/Someone\"><rect class=\"a\" width=\"90\" height=\"30\"/></a>"
      "<use xlink:href=\"#g\"/></svg>");
  g_autoptr (SwLogo) logo = take (bytes);
  g_autoptr (SwLogo) again = take (logo->bytes);
  g_autoptr (SwLogoPicture) picture = sw_logo_picture_new (logo, NULL);
  double width;
  double height;

  g_assert_cmpint (logo->type, ==, SW_LOGO_SVG);
  g_assert_false (holds (logo, "omeone"));
  g_assert_false (holds (logo, "maker"));
  g_assert_true (holds (logo, "url(#g)"));
  g_assert_true (holds (logo, "xlink:href=\"#g\""));
  g_assert_true (sw_logo_equal (logo, again));
  sw_logo_picture_get_size (picture, &width, &height);
  g_assert_cmpfloat_with_epsilon (width / height, 3.0, 1e-9);
}

static void
test_svg_refused (void)
{
  static const struct
  {
    const char *text;
    SwLogoError code;
    const char *words;
  } cases[] = {
    { SVG_START "<image href=\"data:image/png;base64,AAAA\"/></svg>", SW_LOGO_ERROR_CONTENT, "image" },
    { SVG_START "<use href=\"https://example.org/a.svg#x\"/></svg>", SW_LOGO_ERROR_CONTENT, "use" },
    { SVG_START "<use href=\"/etc/hosts\"/></svg>", SW_LOGO_ERROR_CONTENT, "use" },
    { SVG_START "<rect fill=\"url(file:///etc/hosts#x)\" width=\"9\" height=\"9\"/></svg>", SW_LOGO_ERROR_CONTENT, "rect" },
    { SVG_START "<rect style=\"fill:URL( 'https://example.org')\"/></svg>", SW_LOGO_ERROR_CONTENT, "rect" },
    { SVG_START "<style>@import 'https://example.org/a.css';</style></svg>", SW_LOGO_ERROR_CONTENT, "style" },
    { SVG_START "<filter><feImage href=\"#a\"/></filter></svg>", SW_LOGO_ERROR_CONTENT, "feImage" },
    { "<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/hosts\">]>" SVG_START "&a;</svg>", SW_LOGO_ERROR_CONTENT,
      "document type" },
    { SVG_START "<rect", SW_LOGO_ERROR_CONTENT, "cannot be read" },
    { "<page xmlns=\"http://www.w3.org/2000/svg\"><svg/></page>", SW_LOGO_ERROR_CONTENT, "outermost" },
    { "<svg><rect width=\"9\" height=\"9\"/></svg>", SW_LOGO_ERROR_CONTENT, "outermost" },
    { "<svg xmlns=\"http://www.w3.org/2000/svg\"/>", SW_LOGO_ERROR_CONTENT, "no size" },
    { SVG_START "</svg>", SW_LOGO_ERROR_PALE, "pale" },
    { SVG_START "<rect width=\"60\" height=\"20\" fill=\"#ffff80\"/></svg>", SW_LOGO_ERROR_PALE, "pale" },
    { "plain text", SW_LOGO_ERROR_TYPE, "neither" },
    { "GIF89a <html>", SW_LOGO_ERROR_TYPE, "neither" },
    { "", SW_LOGO_ERROR_TYPE, "neither" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GBytes) bytes = bytes_of (cases[i].text);

      assert_refused (bytes, cases[i].code, cases[i].words);
    }
}

/* A drawing that refers to itself again and again is drawn in bounded time, or refused; either way it ends. */
static void
test_svg_laughs (void)
{
  g_autoptr (GString) text = g_string_new (SVG_START "<defs><rect id=\"u0\" width=\"9\" height=\"9\"/>");
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (SwLogo) logo = NULL;

  for (int i = 1; i <= 24; i++)
    g_string_append_printf (text, "<g id=\"u%d\"><use href=\"#u%d\"/><use href=\"#u%d\"/><use href=\"#u%d\"/></g>", i, i - 1,
                            i - 1, i - 1);
  g_string_append (text, "</defs><use href=\"#u24\"/></svg>");
  bytes = bytes_of (text->str);
  logo = sw_logo_from_bytes (bytes, NULL);
  g_assert_null (logo);
}

static SwProgramme *
programme_with (const SwLogo *logo)
{
  SwProgramme *programme = sw_programme_new_standard ();

  g_object_set (sw_programme_get_clinic (programme), "name", "Riverside", "logo", logo, NULL);
  return programme;
}

/* In the programme, to the byte; the schema agrees. */
static void
test_round_trip (void)
{
  g_autoptr (GBytes) png = make_png (90, 30, 0.1, FALSE);
  g_autoptr (GBytes) svg = bytes_of (PLAIN_SVG);
  GBytes *files[] = { png, svg };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autoptr (SwLogo) logo = take (files[i]);
      g_autoptr (SwProgramme) programme = programme_with (logo);
      g_autoptr (GBytes) written = sw_programme_to_bytes (programme);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwProgramme) again = sw_programme_from_bytes (written, "written", &error);
      g_autoptr (GBytes) rewritten = NULL;
      g_autoptr (SwProgramme) copy = NULL;

      g_assert_no_error (error);
      g_assert_true (sw_logo_equal (sw_clinic_get_logo (sw_programme_get_clinic (again)), logo));
      rewritten = sw_programme_to_bytes (again);
      g_assert_true (g_bytes_equal (written, rewritten));
      copy = sw_programme_copy (again);
      g_assert_true (sw_logo_equal (sw_clinic_get_logo (sw_programme_get_clinic (copy)), logo));
    }
}

static void
test_bad_elements (void)
{
  static const struct
  {
    const char *element;
    const char *words;
  } cases[] = {
    { "<logo media-type=\"image/svg+xml\"></logo>", "base64" },
    { "<logo media-type=\"image/svg+xml\">PHN2Zy8+=</logo>", "base64" },
    { "<logo media-type=\"image/svg+xml\">PHN2*y8+</logo>", "base64" },
    { "<logo media-type=\"image/png\">PHN2Zy8+</logo>", "media-type" },
    { "<logo>PHN2Zy8+</logo>", "media-type" },
    { "<logo media-type=\"image/gif\">R0lGODlh</logo>", "media-type" },
    { "<logo media-type=\"image/svg+xml\">PHN2Zy8+</logo><logo media-type=\"image/svg+xml\">PHN2Zy8+</logo>", "second" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text
          = g_strdup_printf ("<programme xmlns=\"urn:setwright:programme\" version=\"1\" id=\"p\">\n<clinic>%s</clinic>\n"
                             "</programme>", cases[i].element);
      g_autoptr (GBytes) bytes = bytes_of (text);
      g_autoptr (GError) error = NULL;

      g_assert_null (sw_programme_from_bytes (bytes, "p", &error));
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, cases[i].words));
    }
}

/* White space within and attributes of a newer version are no trouble; what cannot be drawn is kept all the same. */
static void
test_newer_element (void)
{
  g_autoptr (GBytes) bytes = bytes_of (
      "<programme xmlns=\"urn:setwright:programme\" version=\"1\" id=\"p\"><clinic><logo media-type=\"image/svg+xml\" "
      "place=\"end\">\n  PHN2\n  Zy8+\n</logo></clinic></programme>");
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_from_bytes (bytes, "p", &error);
  g_autoptr (GBytes) written = NULL;
  const SwLogo *logo;

  g_assert_no_error (error);
  logo = sw_clinic_get_logo (sw_programme_get_clinic (programme));
  g_assert_cmpmem (g_bytes_get_data (logo->bytes, NULL), g_bytes_get_size (logo->bytes), "<svg/>", 6);
  g_assert_null (sw_logo_picture_new (logo, &error));
  g_assert_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT);
  written = sw_programme_to_bytes (programme);
  g_assert_nonnull (g_strstr_len (g_bytes_get_data (written, NULL), (gssize) g_bytes_get_size (written),
                                  "<logo media-type=\"image/svg+xml\" place=\"end\">PHN2Zy8+</logo>"));
}

static void
test_schema (void)
{
  g_autofree char *sample = sw_data_path ("samples", "sample.setwright", NULL);
  g_autofree char *schema = sw_data_path ("schema", "programme.rng", NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (GBytes) svg = bytes_of (PLAIN_SVG);
  g_autoptr (SwLogo) logo = take (svg);
  g_autoptr (GBytes) written = NULL;
  g_autofree char *path = NULL;
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  const char *arguments[] = { xmllint, "--noout", "--nonet", "--relaxng", schema, NULL, NULL };
  int fd;
  int status;

  if (xmllint == NULL)
    {
      g_test_skip ("xmllint is not there");
      return;
    }

  g_assert_true (g_file_get_contents (sample, &text, NULL, NULL));
  bytes = bytes_of (text);
  programme = sw_programme_from_bytes (bytes, "sample", &error);
  g_assert_no_error (error);
  g_object_set (sw_programme_get_clinic (programme), "logo", logo, NULL);
  written = sw_programme_to_bytes (programme);
  fd = g_file_open_tmp ("setwright-test-XXXXXX", &path, &error);
  g_assert_no_error (error);
  g_close (fd, NULL);
  g_file_set_contents (path, g_bytes_get_data (written, NULL), (gssize) g_bytes_get_size (written), &error);
  g_assert_no_error (error);
  arguments[5] = path;
  g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  g_remove (path);
}

/* A new programme carries the logo of the last one that was saved; taken out there, it is gone here. */
static void
test_defaults (void)
{
  g_autofree char *path = g_build_filename (g_get_user_config_dir (), "setwright", "clinic-logo", NULL);
  g_autoptr (GBytes) svg = bytes_of (PLAIN_SVG);
  g_autoptr (SwLogo) logo = take (svg);
  g_autoptr (SwClinic) empty = sw_clinic_new ();
  g_autoptr (SwClinic) saved = sw_clinic_new ();
  g_autoptr (SwClinic) loaded = sw_clinic_new ();
  g_autoptr (SwClinic) later = sw_clinic_new ();
  g_autoptr (GError) error = NULL;

  g_object_set (saved, "name", "Riverside", "logo", logo, NULL);
  g_assert_true (sw_clinic_defaults_save (empty, saved, &error));
  g_assert_no_error (error);
  sw_clinic_defaults_load (loaded);
  g_assert_cmpstr (sw_clinic_get_name (loaded), ==, "Riverside");
  g_assert_true (sw_logo_equal (sw_clinic_get_logo (loaded), logo));

  g_object_set (saved, "logo", NULL, NULL);
  g_assert_true (sw_clinic_defaults_save (loaded, saved, &error));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  sw_clinic_defaults_load (later);
  g_assert_null (sw_clinic_get_logo (later));
  g_assert_cmpstr (sw_clinic_get_name (later), ==, "Riverside");
}

int
main (int   argc,
      char *argv[])
{
  g_autofree char *folder = g_dir_make_tmp ("setwright-test-XXXXXX", NULL);
  g_autofree char *inner = g_build_filename (folder, "setwright", NULL);
  g_autofree char *settings = g_build_filename (inner, "clinic.ini", NULL);
  int status;

  /* GLib looks for the settings' folder once. */
  g_setenv ("XDG_CONFIG_HOME", folder, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/logo/png", test_png);
  g_test_add_func ("/logo/png-limits", test_png_limits);
  g_test_add_func ("/logo/svg", test_svg);
  g_test_add_func ("/logo/svg-refused", test_svg_refused);
  g_test_add_func ("/logo/svg-laughs", test_svg_laughs);
  g_test_add_func ("/logo/round-trip", test_round_trip);
  g_test_add_func ("/logo/bad-elements", test_bad_elements);
  g_test_add_func ("/logo/newer-element", test_newer_element);
  g_test_add_func ("/logo/schema", test_schema);
  g_test_add_func ("/logo/defaults", test_defaults);
  status = g_test_run ();

  g_remove (settings);
  g_rmdir (inner);
  g_rmdir (folder);
  return status;
}
