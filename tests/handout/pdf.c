/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The PDF in the eyes of independent tools: qpdf and poppler. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "handout-sample.h"
#include "sw-data-dir.h"
#include "sw-handout.h"
#include "sw-programme-file.h"

#define DAY "2026-11-20"

typedef struct
{
  char *folder;
  char *path;
} Fixture;

/* The picture of the first exercise of the shipped sample. */
static SwFigureSpec *
load_figure (void)
{
  g_autofree char *path = sw_data_path ("samples", "sample.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, &error);
  g_autoptr (GPtrArray) exercises = NULL;

  g_assert_no_error (error);
  exercises = sw_programme_dup_exercises (programme);
  return sw_figure_spec_ref (sw_exercise_get_figure (g_ptr_array_index (exercises, 0)));
}

static void
write_pdf (Fixture    *fixture,
           SwPaper     paper,
           SwLayout    layout,
           double      text_points,
           const char *language)
{
  g_autoptr (SwFigureSpec) figure = load_figure ();
  g_autoptr (SwProgramme) programme = handout_sample_new (figure);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GBytes) pdf = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.paper = paper;
  options.layout = layout;
  options.text_points = text_points;
  options.language = language;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  pdf = sw_handout_to_pdf (handout, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_set_contents (fixture->path, g_bytes_get_data (pdf, NULL), (gssize) g_bytes_get_size (pdf),
                                      &error));
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  (void) data;
  fixture->folder = g_dir_make_tmp ("handout-XXXXXX", NULL);
  fixture->path = g_build_filename (fixture->folder, "handout.pdf", NULL);
  write_pdf (fixture, SW_PAPER_A4, SW_LAYOUT_FULL, 14.0, "en");
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  (void) data;
  g_remove (fixture->path);
  g_rmdir (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->folder);
}

/* What a tool prints; NULL, and the test skipped, where it is not installed. */
static char *
run (const char *first,
     ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autofree char *found = g_find_program_in_path (first);
  g_autofree char *errors = NULL;
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status = 0;
  va_list rest;

  if (found == NULL)
    {
      g_test_skip (first);
      return NULL;
    }
  va_start (rest, first);
  for (const char *word = first; word != NULL; word = va_arg (rest, const char *))
    g_ptr_array_add (words, (gpointer) word);
  va_end (rest);
  g_ptr_array_add (words, NULL);

  g_spawn_sync (NULL, (char **) words->pdata, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output, &errors, &status,
                &error);
  g_assert_no_error (error);
  if (!g_spawn_check_wait_status (status, NULL))
    g_error ("%s: %s %s", first, output, errors);
  g_assert_null (strstr (errors, "WARNING"));
  return output;
}

static void
test_sound (Fixture       *fixture,
            gconstpointer  data)
{
  g_autofree char *output = run ("qpdf", "--check", fixture->path, NULL);

  (void) data;
  if (output != NULL)
    g_assert_nonnull (strstr (output, "No syntax or stream encoding errors"));
}

static void
test_fonts_and_images (Fixture       *fixture,
                       gconstpointer  data)
{
  g_autofree char *fonts = run ("pdffonts", fixture->path, NULL);
  g_autofree char *images = run ("pdfimages", "-list", fixture->path, NULL);
  g_auto (GStrv) font_lines = NULL;
  g_auto (GStrv) image_lines = NULL;

  (void) data;
  if (fonts == NULL || images == NULL)
    return;

  /* Two lines of heading each; embedded, subset, with a way back to text. */
  font_lines = g_strsplit (g_strchomp (fonts), "\n", -1);
  g_assert_cmpuint (g_strv_length (font_lines), >, 2);
  for (guint i = 2; font_lines[i] != NULL; i++)
    {
      g_assert_nonnull (strstr (font_lines[i], "NotoSans"));
      g_assert_nonnull (strstr (font_lines[i], "yes yes yes"));
    }
  image_lines = g_strsplit (g_strchomp (images), "\n", -1);
  g_assert_cmpuint (g_strv_length (image_lines), ==, 2);
}

static void
test_facts (Fixture       *fixture,
            gconstpointer  data)
{
  g_autofree char *facts = run ("pdfinfo", fixture->path, NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  (void) data;
  if (facts == NULL)
    return;

  g_assert_nonnull (strstr (facts, "Exercise programme 5e7a11c0"));
  g_assert_nonnull (strstr (facts, "Millbrook Physiotherapy"));
  g_assert_nonnull (strstr (facts, "Tagged:          yes"));
  g_assert_nonnull (strstr (facts, "(A4)"));
  g_assert_nonnull (strstr (facts, "2026"));
  /* What the file says about itself must not name the client. */
  g_assert_null (strstr (facts, "Robin"));
  g_assert_null (strstr (facts, "Alder"));

  g_assert_true (g_file_get_contents (fixture->path, &bytes, &length, NULL));
  g_assert_null (memmem (bytes, length, "Robin", 5));

  write_pdf (fixture, SW_PAPER_LETTER, SW_LAYOUT_FULL, 14.0, "en");
  g_free (facts);
  facts = run ("pdfinfo", fixture->path, NULL);
  g_assert_nonnull (strstr (facts, "612 x 792 pts (letter)"));
}

/* The words in the order they are read, from the first line of the first page to the last of the last. */
static void
test_reading_order (Fixture       *fixture,
                    gconstpointer  data)
{
  static const char *const wanted[] = {
    "Sam Hollis, Millbrook Physiotherapy", "20 November 2026", "Steady on your feet",
    "How to do your exercises between visits",
    "For Robin Alder",
    "Your goal Walk to the allotment", "Your week", "Monday, Wednesday and Friday", "What you need", "a steady chair",
    "Take care every time", "Stop and get help", "Stop. Call 112 now for:", "chest pain", "Call your therapist",
    "pins and needles", "Your clinic: 01632 960123", "How much pain is all right?", "The limit beside an exercise",
    "0 to 2", "3 to 5", "6 to 10",
    "Your exercises at a glance", "1 Ankle rocks", "15 times.",
    "Morning", "Warm-up", "1", "Ankle rocks", "Loosens your ankles", "15 times.", "Get ready", "1.",
    "Lift your heels", "2.", "Main work", "Heel raise at the counter", "Right side: 4 sets of 8 to 12.",
    "Left side: 3 sets of 8 to 12.", "Rest 60 seconds between sets.", "Your right calf is the weaker one",
    "Press through the balls", "Stand on one leg", "Hold for 30 seconds, 3 times, each side.",
    "Sit down and get your breath back: 90 seconds", "Sit to stand", "Use 2.5 kg (5.5 lb).", "Up and down",
    "Do these 2 exercises one after another, 2 rounds.", "Cool-down", "Calf stretch at the wall", "Check yourself",
    "How long can you stand on one leg", "First day", "Before your next visit", "Left", "Right", "Your tick sheet", "Mon",
    "Effort", "Pain", "Ankle rocks", "Questions? Call us", "hello@millbrook.example.org", "They do not replace it.",
  };
  g_autofree char *text = run ("pdftotext", "-raw", fixture->path, "-", NULL);
  g_auto (GStrv) parts = NULL;
  g_autofree char *words = NULL;
  const char *at;

  (void) data;
  if (text == NULL)
    return;

  parts = g_regex_split_simple ("(?:\\s|\302\240|\f)+", text, 0, 0);
  words = g_strjoinv (" ", parts);
  at = words;
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      const char *found = strstr (at, wanted[i]);

      if (found == NULL)
        g_error ("“%s” is missing or comes too early", wanted[i]);
      at = found + strlen (wanted[i]);
    }
}

/* The tick sheet's heads stay words of their own, however large the print: none runs into the next. */
static void
test_large_heads (Fixture       *fixture,
                  gconstpointer  data)
{
  static const struct
  {
    const char *language;
    const char *heads;
  } rows[] = {
    { "en", "Mon Tue Wed Thu Fri Sat Sun Effort" },
    { "de", "Mo Di Mi Do Fr Sa So Mühe" },
    { "fr", "Lun. Mar. Mer. Jeu. Ven. Sam. Dim. Effort" },
    { "pl", "Pon. Wt. Śr. Czw. Pt. Sob. Niedz. Wysiłek" },
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (double text_points = 18.0; text_points <= 28.0; text_points += 10.0)
      {
        g_autofree char *text = NULL;

        write_pdf (fixture, SW_PAPER_A4, SW_LAYOUT_LARGE_PRINT, text_points, rows[i].language);
        text = run ("pdftotext", "-raw", fixture->path, "-", NULL);
        if (text == NULL)
          return;
        g_assert_nonnull (strstr (text, rows[i].heads));
      }
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

static void
test_structure (Fixture       *fixture,
                gconstpointer  data)
{
  g_autofree char *tree = run ("pdfinfo", "-struct", fixture->path, NULL);
  int level = 0;
  g_auto (GStrv) lines = NULL;

  (void) data;
  if (tree == NULL)
    return;

  g_assert_true (g_str_has_prefix (tree, "Document"));
  g_assert_cmpuint (count (tree, "H1 (block)"), ==, 1);
  g_assert_cmpuint (count (tree, "Table"), >=, 3);
  g_assert_cmpuint (count (tree, "/ListNumbering /Decimal"), ==, 7);
  g_assert_cmpuint (count (tree, "/Scope /Row"), ==, 2 + 7 + 7);
  g_assert_cmpuint (count (tree, "/Scope /Column"), ==, 3 + 10 + 2);

  /* No heading skips a level on the way down. */
  lines = g_strsplit (tree, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      const char *name = g_strchug (lines[i]);

      if (name[0] != 'H' || !g_ascii_isdigit (name[1]))
        continue;
      g_assert_cmpint (name[1] - '0', <=, level + 1);
      level = name[1] - '0';
    }
}

/* The elements really hold their text: an independent reader finds it through the structure. */
static void
test_structured_text (Fixture       *fixture,
                      gconstpointer  data)
{
  static const char *const wanted[] = { "\"Steady on your", "\"Stop and get help\"", "\"Ankle rocks\"",
                                        "\"Lower your heels slowly", "\"chest pain", "\"15", "\"Week starting:\"" };
  g_autofree char *tree = run ("pdfinfo", "-struct-text", fixture->path, NULL);
  g_auto (GStrv) parts = NULL;
  g_autofree char *plain = NULL;

  (void) data;
  if (tree == NULL)
    return;

  parts = g_strsplit (tree, "\302\240", -1);
  plain = g_strjoinv (" ", parts);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (strstr (plain, wanted[i]) == NULL)
      g_error ("the structure does not hold %s", wanted[i]);
}

/* Whether a line of a content stream sets a colour that is no grey. */
static gboolean
sets_colour (const char *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  guint n = g_strv_length (words);

  for (guint i = 3; i < n; i++)
    if (g_str_equal (words[i], "rg") || g_str_equal (words[i], "RG"))
      if (strcmp (words[i - 3], words[i - 2]) != 0 || strcmp (words[i - 2], words[i - 1]) != 0)
        return TRUE;
  for (guint i = 4; i < n; i++)
    if (g_str_equal (words[i], "k") || g_str_equal (words[i], "K"))
      return TRUE;
  return FALSE;
}

static gboolean
is_word (const char *word,
         const char *words)
{
  g_auto (GStrv) list = g_strsplit (words, " ", -1);

  return g_strv_contains ((const char *const *) list, word);
}

/* Counts what a content stream paints outside every mark that gives it a place or makes it an artifact. */
static guint
count_unmarked (const char *stream,
                guint      *n_painted)
{
  g_autoptr (GRegex) strings
      = g_regex_new ("\\((?:\\\\.|[^\\\\)])*\\)|<[0-9A-Fa-f]*>", G_REGEX_RAW | G_REGEX_DOTALL, 0, NULL);
  g_autofree char *plain = g_regex_replace_literal (strings, stream, -1, 0, "x", 0, NULL);
  g_auto (GStrv) words = g_strsplit_set (plain, " \n", -1);
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (gboolean));
  guint n_marked = 0;
  guint n_unmarked = 0;
  gboolean told = FALSE;

  for (guint i = 0; words[i] != NULL; i++)
    {
      if (strstr (words[i], "/MCID") != NULL || strstr (words[i], "/Artifact") != NULL)
        told = TRUE;
      if (is_word (words[i], "BDC BMC"))
        {
          g_array_append_val (marks, told);
          n_marked += told;
        }
      if (is_word (words[i], "EMC"))
        {
          g_assert_cmpuint (marks->len, >, 0);
          n_marked -= g_array_index (marks, gboolean, marks->len - 1);
          g_array_set_size (marks, marks->len - 1);
        }
      if (is_word (words[i], "BDC BMC EMC"))
        told = FALSE;
      if (is_word (words[i], "f F f* B B* b b* S s Tj TJ Do sh"))
        {
          (*n_painted)++;
          n_unmarked += n_marked == 0;
        }
    }
  g_assert_cmpuint (marks->len, ==, 0);

  return n_unmarked;
}

static void
test_all_marked (Fixture       *fixture,
                 gconstpointer  data)
{
  g_autofree char *content = run ("qpdf", "--qdf", "--object-streams=disable", "--normalize-content=y",
                                  "--remove-unreferenced-resources=no", fixture->path, "-", NULL);
  g_auto (GStrv) objects = NULL;
  guint n_painted = 0;
  guint n_fine = 0;

  (void) data;
  if (content == NULL)
    return;

  g_assert_cmpuint (count_unmarked ("0 0 1 1 re f /P <</MCID 0 >> BDC S EMC", &n_fine), ==, 1);
  objects = g_strsplit (content, "endstream", -1);
  for (guint i = 0; objects[i] != NULL; i++)
    {
      const char *stream = strstr (objects[i], "\nstream\n");

      if (stream != NULL && strstr (stream, " BDC") != NULL)
        g_assert_cmpuint (count_unmarked (stream, &n_painted), ==, 0);
    }
  g_assert_cmpuint (n_painted, >, 200);
}

/* The page must come out of any black and white printer as it was meant. */
static void
test_grey_only (Fixture       *fixture,
                gconstpointer  data)
{
  g_autofree char *content
      = run ("qpdf", "--qdf", "--object-streams=disable", "--newline-before-endstream", fixture->path, "-", NULL);
  g_auto (GStrv) lines = NULL;
  gboolean grey_only = TRUE;

  (void) data;
  if (content == NULL)
    return;

  g_assert_true (sets_colour ("1 0 0 rg"));
  lines = g_strsplit (content, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    grey_only = grey_only && !sets_colour (lines[i]);
  g_assert_true (grey_only);
  g_assert_nonnull (strstr (content, "/Lang (en)"));
  g_assert_nonnull (strstr (content, "/DisplayDocTitle true"));
  g_assert_nonnull (strstr (content, "/Outlines"));
}

/* Each of the seven pictures says in words what it shows, and where on the page it is. */
static void
test_pictures (Fixture       *fixture,
               gconstpointer  data)
{
  g_autofree char *content = run ("qpdf", "--qdf", "--object-streams=disable", fixture->path, "-", NULL);

  (void) data;
  if (content == NULL)
    return;

  /* Seven exercises and the bar of the time. */
  g_assert_cmpuint (count (content, "/S /Figure"), ==, 8);
  g_assert_cmpuint (count (content, "/Alt "), ==, 8);
  g_assert_cmpuint (count (content, "/BBox ["), >=, 8);
  g_assert_cmpuint (count (content, "/Alt ()"), ==, 0);
  g_assert_cmpuint (count (content, " Do Q\n"), ==, 7);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/pdf/sound", Fixture, NULL, set_up, test_sound, tear_down);
  g_test_add ("/pdf/fonts-and-images", Fixture, NULL, set_up, test_fonts_and_images, tear_down);
  g_test_add ("/pdf/facts", Fixture, NULL, set_up, test_facts, tear_down);
  g_test_add ("/pdf/reading-order", Fixture, NULL, set_up, test_reading_order, tear_down);
  g_test_add ("/pdf/large-heads", Fixture, NULL, set_up, test_large_heads, tear_down);
  g_test_add ("/pdf/structure", Fixture, NULL, set_up, test_structure, tear_down);
  g_test_add ("/pdf/structured-text", Fixture, NULL, set_up, test_structured_text, tear_down);
  g_test_add ("/pdf/pictures", Fixture, NULL, set_up, test_pictures, tear_down);
  g_test_add ("/pdf/all-marked", Fixture, NULL, set_up, test_all_marked, tear_down);
  g_test_add ("/pdf/grey-only", Fixture, NULL, set_up, test_grey_only, tear_down);
  return g_test_run ();
}
