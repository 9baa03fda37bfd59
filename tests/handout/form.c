/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The handout as a form, what can be tapped on it, and what no font can show. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-handout.h"

#define DAY "2026-11-20"

/* The last character there is, for private use: no font of ours has it. */
#define NO_FONT_HAS_IT "\364\217\277\275"

static SwHandout *
lay_out (SwProgramme *programme,
         gboolean     form,
         double       text_points)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  g_assert_false (options.form);
  options.form = form;
  options.text_points = text_points;
  options.parts |= SW_SET (SW_PAGE_PART_SIGNATURE);
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

/* The lines of a dump that begin so, or those that do not. */
static char *
filter (SwHandout  *handout,
        const char *kind,
        gboolean    beginning)
{
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  GString *out = g_string_new (NULL);

  for (guint i = 0; lines[i] != NULL; i++)
    if (g_str_has_prefix (lines[i], kind) == beginning && !g_str_has_prefix (lines[i], "empty "))
      g_string_append_printf (out, "%s\n", lines[i]);
  return g_string_free (out, FALSE);
}

static guint
count (const char *text,
       const char *word)
{
  guint n = 0;

  for (const char *at = strstr (text, word); at != NULL; at = strstr (at + 1, word))
    n++;
  return n;
}

static GBytes *
render (SwHandout *handout,
        int        page)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 600, 850);
  cairo_t *cr = cairo_create (surface);
  GBytes *bytes;

  sw_handout_draw_page (handout, page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface),
                       (gsize) cairo_image_surface_get_stride (surface) * 850);
  cairo_surface_destroy (surface);
  return bytes;
}

/* Whoever prints a form has the same pages in hand. */
static void
test_same_look (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) plain = lay_out (programme, FALSE, 14.0);
  g_autoptr (SwHandout) form = lay_out (programme, TRUE, 14.0);
  g_autofree char *plain_dump = filter (plain, "field ", FALSE);
  g_autofree char *form_dump = filter (form, "field ", FALSE);
  g_autofree char *plain_fields = filter (plain, "field ", TRUE);

  g_assert_cmpstr (form_dump, ==, plain_dump);
  g_assert_cmpstr (plain_fields, ==, "");
  for (int page = 0; page < sw_handout_get_n_pages (plain); page++)
    {
      g_autoptr (GBytes) plain_page = render (plain, page);
      g_autoptr (GBytes) form_page = render (form, page);

      g_assert_true (g_bytes_equal (plain_page, form_page));
    }
}

/* Three days of six exercises once and one twice; two ratings each; week, self-check with its day, signatures. */
static void
test_labels (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) handout = lay_out (programme, TRUE, 14.0);
  g_autofree char *fields = filter (handout, "field ", TRUE);

  g_assert_cmpuint (count (fields, ": done on "), ==, 6 * 3 + 3 * 2);
  g_assert_cmpuint (count (fields, "\"Ankle rocks: done on Monday\""), ==, 2);
  g_assert_cmpuint (count (fields, "\"Stand on one leg: done on Friday, time 2\""), ==, 1);
  g_assert_cmpuint (count (fields, "Tuesday"), ==, 0);
  g_assert_cmpuint (count (fields, ": how hard it felt, 0 to\302\24010"), ==, 7);
  g_assert_cmpuint (count (fields, ": the most pain, 0 to\302\24010"), ==, 7);
  g_assert_cmpuint (count (fields, "\"Date the week starts\""), ==, 1);
  g_assert_cmpuint (count (fields, "beside the counter? Left, First day: seconds\""), ==, 1);
  g_assert_cmpuint (count (fields, "beside the counter? Right, Before your next visit: seconds\""), ==, 1);
  g_assert_cmpuint (count (fields, "\"Client: name\""), ==, 1);
  g_assert_cmpuint (count (fields, "\"Therapist: date\""), ==, 1);
  g_assert_cmpuint (count (fields, "\n"), ==, 24 + 14 + 1 + 5 + 4);
}

static void
test_same_bytes (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) first = lay_out (programme, TRUE, 14.0);
  g_autoptr (SwHandout) second = lay_out (programme, TRUE, 14.0);
  g_autoptr (SwHandout) plain = lay_out (programme, FALSE, 14.0);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) first_pdf = sw_handout_to_pdf (first, &error);
  g_autoptr (GBytes) second_pdf = sw_handout_to_pdf (second, &error);
  g_autoptr (GBytes) plain_pdf = sw_handout_to_pdf (plain, &error);

  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (first_pdf, second_pdf));
  g_assert_false (g_bytes_equal (first_pdf, plain_pdf));
}

/* An address too long for its line is a link on each line, and gets no hyphen that it does not have. */
static void
test_long_address (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) handout = NULL;
  g_autofree char *texts = NULL;
  const char *address = "thehomeexerciseprogrammesofthewholemillbrookneighbourhood@millbrook.example.org";
  g_autofree char *lines = NULL;
  g_auto (GStrv) parts = NULL;
  g_autofree char *whole = NULL;

  g_object_set (sw_programme_get_clinic (programme), "email", address, NULL);
  handout = lay_out (programme, FALSE, 28.0);
  texts = filter (handout, "", TRUE);
  lines = g_strdup (strstr (texts, "\"Email: "));
  parts = g_strsplit (lines, "\"", -1);
  g_assert_cmpuint (g_strv_length (parts), >, 8);
  whole = g_strconcat (parts[3], parts[5], parts[7], NULL);
  g_assert_cmpstr (whole, ==, address);
}

static void
test_missing (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) whole = lay_out (programme, FALSE, 14.0);
  g_autoptr (SwHandout) handout = NULL;
  g_autofree char *no_warning = sw_handout_dup_warning (whole);
  g_autofree char *warning = NULL;

  g_assert_cmpstr (sw_handout_get_missing (whole), ==, "");
  g_assert_null (no_warning);

  g_object_set (programme, "title", "Steady " NO_FONT_HAS_IT " feet " NO_FONT_HAS_IT, NULL);
  handout = lay_out (programme, FALSE, 14.0);
  g_assert_cmpstr (sw_handout_get_missing (handout), ==, NO_FONT_HAS_IT);
  warning = sw_handout_dup_warning (handout);
  g_assert_nonnull (strstr (warning, "U+10FFFD"));
}

/* The programme's plan makes a form of every layout in which there is something to fill in, and only there. */
static void
test_planned (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  SwPagePlan *plan = sw_programme_get_page_plan (programme);

  for (int layout = 0; layout < sw_term_get_n_values (SW_TYPE_LAYOUT); layout++)
    {
      SwSet to_fill_in = sw_handout_parts_to_fill_in ((SwLayout) layout);

      for (int shown = 0; shown <= 1; shown++)
        {
          g_autoptr (SwHandout) handout = NULL;
          g_autoptr (GError) error = NULL;
          g_autofree char *fields = NULL;
          SwHandoutOptions options;

          g_object_set (plan, "layout", layout, "form", TRUE, "parts",
                        (guint64) (shown ? SW_PAGE_PARTS_USUAL : SW_PAGE_PARTS_USUAL & ~to_fill_in), NULL);
          sw_handout_options_init (&options, programme, DAY);
          handout = sw_handout_new (programme, &options, &error);
          g_assert_no_error (error);
          fields = filter (handout, "field ", TRUE);
          g_test_message ("layout %d, shown %d", layout, shown);
          g_assert_cmpint (fields[0] != '\0', ==, shown && to_fill_in != 0);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/form/same-look", test_same_look);
  g_test_add_func ("/form/labels", test_labels);
  g_test_add_func ("/form/same-bytes", test_same_bytes);
  g_test_add_func ("/form/long-address", test_long_address);
  g_test_add_func ("/form/missing", test_missing);
  g_test_add_func ("/form/planned", test_planned);
  return g_test_run ();
}
