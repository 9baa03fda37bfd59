/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every layout, with programmes nobody would think of: none loses an item, runs off the paper, sets one thing over
 * another or falls below the least text size. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "handout-sample.h"
#include "sw-measurement.h"
#include "sw-handout.h"
#include "sw-style.h"

#define DAY "2026-11-20"
#define MOST_ITEMS 60
#define MOST_LETTERS 4000

static const SwLayout all_layouts[] = { SW_LAYOUT_FULL, SW_LAYOUT_COMPACT, SW_LAYOUT_SUMMARY, SW_LAYOUT_LARGE_PRINT };

/* Words of five scripts, one that has no spaces, one longer than any line, and what is no word at all. */
static const char *const words[] = {
  "slowly ", "and ", "with both hands on the counter ", "Donaudampfschifffahrtsgesellschaft", "ببطء ", "ارفع الكعب ",
  "לאט ", "הרם את העקב ", "медленно ", "поднимите пятку ", "慢慢抬起脚跟", "両手を台に置いて", "धीरे ", "एड़ी उठाएँ ", "12.5 ", "\n",
  "<b>&amp;", "\xe2\x80\xae", "\xc2\xa0", "🙂",
};

static int
any_of (int n)
{
  return g_test_rand_int_range (0, n);
}

/* Mostly short, now and then as long as a text may be. */
static char *
any_text (int most)
{
  g_autoptr (GString) text = g_string_new (NULL);
  int length = any_of (3) == 0 ? any_of (most + 1) : any_of (MIN (most, 120) + 1);
  int first = any_of ((int) G_N_ELEMENTS (words));

  while ((int) text->len < length)
    g_string_append (text, any_of (3) > 0 ? words[first] : words[any_of ((int) G_N_ELEMENTS (words))]);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char **
any_texts (int most)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (int n = any_of (most + 1); n > 0; n--)
    {
      g_autofree char *text = any_text (200);

      g_strv_builder_add (builder, text);
    }
  return g_strv_builder_end (builder);
}

static void
replace (char **field,
         int    most)
{
  g_free (*field);
  *field = any_text (most);
}

static SwExercise *
any_exercise (SwFigureSpec *figure)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  SwExerciseText *text = sw_exercise_text_new ("en");
  g_autofree char *id = g_strdup_printf ("any-%d", any_of (1000000));
  SwExerciseFacts facts = {
    .id = id,
    .revision = 1,
    .region = SW_REGION_ANKLE,
    .equipment = (SwSet) any_of (1 << 15),
    .cautions = (SwSet) any_of (1 << 20),
    .pace_s = 4.0,
  };

  sw_dose_init (&facts.dose);
  replace (&text->name, 120);
  replace (&text->purpose, 300);
  replace (&text->set_up, MOST_LETTERS);
  replace (&text->feel, 200);
  replace (&text->easier, 300);
  replace (&text->harder, 300);
  g_strfreev (text->steps);
  g_strfreev (text->form_points);
  g_strfreev (text->errors);
  text->steps = any_texts (8);
  text->form_points = any_texts (5);
  text->errors = any_texts (4);
  g_ptr_array_add (texts, text);
  return sw_exercise_new (&facts, texts, any_of (4) == 0 ? figure : NULL, NULL);
}

static SwItem *
any_item (SwFigureSpec *figure,
          guint        *n)
{
  g_autofree char *id = g_strdup_printf ("i%u", (*n)++);
  g_autofree char *note = any_text (MOST_LETTERS);
  int kind = any_of (12);
  SwItem *item;

  if (kind == 0)
    item = sw_item_new (SW_ITEM_REST, id);
  else if (kind == 1)
    item = sw_item_new (SW_ITEM_SELF_CHECK, id);
  else
    {
      g_autoptr (SwExercise) exercise = any_exercise (figure);

      item = sw_item_new_for_exercise (exercise, id);
    }
  if (any_of (3) == 0)
    g_object_set (item, "note", note, NULL);
  return item;
}

static void
fill_section (SwSection    *section,
              SwFigureSpec *figure,
              guint        *n,
              guint         until)
{
  while (*n < until)
    {
      g_autoptr (SwItem) item = any_item (figure, n);

      if (any_of (10) == 0)
        {
          g_autofree char *id = g_strdup_printf ("c%u", *n);
          g_autoptr (SwItem) circuit = sw_item_new (SW_ITEM_CIRCUIT, id);

          g_object_set (circuit, "rounds", 1 + any_of (4), NULL);
          if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
            g_list_store_append (sw_item_get_items (circuit), item);
          else
            g_list_store_append (sw_section_get_items (section), item);
          g_list_store_append (sw_section_get_items (section), circuit);
        }
      else
        g_list_store_append (sw_section_get_items (section), item);
    }
}

static SwProgramme *
any_programme (SwFigureSpec *figure,
               guint        *n_items)
{
  SwProgramme *programme = sw_programme_new ("5e7a11c0-3c55-4d5e-9a4b-0f6d3b2a9c11");
  guint wanted = (guint) (any_of (4) == 0 ? any_of (MOST_ITEMS + 1) : any_of (8));
  g_autofree char *title = any_text (300);
  g_autofree char *name = any_text (200);
  g_autofree char *goals = any_text (1000);

  *n_items = 0;
  g_object_set (programme, "title", title, NULL);
  g_object_set (sw_programme_get_client (programme), "name", name, "goals", goals, "precautions",
                (guint64) any_of (1 << 12), NULL);
  g_object_set (sw_programme_get_clinic (programme), "name", name, "phone", any_of (2) == 0 ? "01632 960123" : "", NULL);
  while (*n_items < wanted)
    {
      g_autoptr (SwSession) session = sw_session_new (title, (SwSet) any_of (128));
      g_autoptr (SwSection) section = sw_section_new (SW_SECTION_MAIN, name);

      fill_section (section, figure, n_items, MIN (wanted, *n_items + 1 + (guint) any_of (30)));
      g_list_store_append (sw_session_get_sections (session), section);
      g_list_store_append (sw_programme_get_sessions (programme), session);
    }
  return programme;
}

static void
choose_options (SwHandoutOptions *options,
                SwProgramme      *programme)
{
  sw_handout_options_init (options, programme, DAY);
  options->layout = all_layouts[any_of ((int) G_N_ELEMENTS (all_layouts))];
  options->paper = any_of (2) == 0 ? SW_PAPER_A4 : SW_PAPER_LETTER;
  options->text_points = 12.0 + any_of (17);
  options->parts = (SwSet) any_of (1 << 13);
  options->save_ink = any_of (2);
  options->landscape = any_of (2);
}

/* From a dump: `kind x y width height "text"`. Returns whether the line is a piece. */
static gboolean
read_piece (const char *line,
            char        kind[16],
            double      box[4])
{
  g_auto (GStrv) parts = g_strsplit (line, " ", 6);

  if (g_strv_length (parts) < 6)
    return FALSE;
  g_strlcpy (kind, parts[0], 16);
  for (int i = 0; i < 4; i++)
    box[i] = g_ascii_strtod (parts[i + 1], NULL);
  return TRUE;
}

/* Texts of one page do not lie over one another, and nothing leaves the paper. Blocks taller than a page are made
 * smaller when they are painted; the dump tells their full size. */
static void
check_pages (SwHandout  *handout,
             const char *seed_words)
{
  double width_pt = sw_handout_get_page_width_pt (handout);
  double height_pt = sw_handout_get_page_height_pt (handout);
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, 4 * sizeof (double));

  for (guint i = 0; lines[i] != NULL; i++)
    {
      char kind[16];
      double box[4];

      if (g_str_has_prefix (lines[i], "page "))
        g_array_set_size (boxes, 0);
      if (!read_piece (lines[i], kind, box))
        continue;
      if (box[0] < 36.0 || (box[0] + box[2] > width_pt - 36.0 && !g_str_equal (kind, "text")) || box[1] < 28.0
          || (box[3] < 0.9 * height_pt && box[1] < height_pt && box[1] + box[3] > height_pt - 20.0
              && box[3] < 0.5 * height_pt))
        {
          g_test_message ("%s: off the paper: %.200s", seed_words, lines[i]);
          g_test_fail ();
        }
      if (!g_str_equal (kind, "text") || box[3] > 0.9 * height_pt)
        continue;
      for (guint k = 0; k < boxes->len; k++)
        {
          const double *other = (const double *) (void *) (boxes->data + k * 4 * sizeof (double));
          double across = MIN (box[0] + box[2], other[0] + other[2]) - MAX (box[0], other[0]);
          double down = MIN (box[1] + box[3], other[1] + other[3]) - MAX (box[1], other[1]);

          /* A number's column reaches under the text beside it. */
          if (across > 60.0 && down > 4.0)
            {
              g_test_message ("%s: over another: %.200s", seed_words, lines[i]);
              g_test_fail ();
            }
        }
      g_array_append_vals (boxes, box, 1);
    }
}

static void
check_items (SwHandout   *handout,
             SwProgramme *programme,
             SwLayout     layout,
             SwSet        parts)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      SwItemKind kind = sw_item_get_kind (item);
      gboolean wanted = kind == SW_ITEM_EXERCISE
                        || (layout != SW_LAYOUT_SUMMARY
                            && (kind != SW_ITEM_SELF_CHECK || (parts & SW_SET (SW_PAGE_PART_SELF_CHECK)) != 0));

      g_assert_cmpint (sw_handout_find_page_of_item (handout, sw_item_get_id (item)) >= 0, ==, wanted);
    }
}

static void
test_any (void)
{
  g_autoptr (SwFigureSpec) figure = NULL;
  g_auto (SwFigureContent) content;
  int n = g_test_slow () ? 1000 : 80;

  sw_figure_content_init (&content);
  content.n_poses = 1;
  figure = sw_figure_spec_new_take (&content);
  for (int i = 0; i < n; i++)
    {
      guint n_items;
      g_autoptr (SwProgramme) programme = any_programme (figure, &n_items);
      g_autoptr (SwHandout) handout = NULL;
      g_autoptr (GBytes) pdf = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *seed_words = NULL;
      SwHandoutOptions options;

      choose_options (&options, programme);
      seed_words = g_strdup_printf ("round %d, layout %d, %.0f pt, %u items", i, options.layout, options.text_points,
                                    n_items);
      handout = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      check_pages (handout, seed_words);
      check_items (handout, programme, options.layout, options.parts);
      if (i % 10 == 0)
        {
          pdf = sw_handout_to_pdf (handout, &error);
          g_assert_no_error (error);
        }
    }
}

/* What stands on the pages of a layout, as one text. */
static char *
tell (SwLayout layout,
      SwSet    parts,
      int     *n_pages)
{
  g_autoptr (SwFigureSpec) figure = handout_sample_new_figure (SW_FIGURE_MOTION_PRESS, SW_FIGURE_BREATH_NONE);
  g_autoptr (SwProgramme) programme = handout_sample_new (figure);
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.layout = layout;
  options.parts = parts;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  if (n_pages != NULL)
    *n_pages = sw_handout_get_n_pages (handout);
  return sw_handout_dump (handout);
}

/* When to stop and whom to call is on every handout, whatever is left out. */
static void
test_stop_stays (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (all_layouts); i++)
    for (int whole = 0; whole < 2; whole++)
      {
        g_autofree char *dump = tell (all_layouts[i], whole ? SW_PAGE_PARTS_USUAL : 0, NULL);

        g_assert_nonnull (strstr (dump, "Stop and get help"));
        g_assert_nonnull (strstr (dump, "112"));
        g_assert_nonnull (strstr (dump, "chest pain"));
        g_assert_nonnull (strstr (dump, "01632 960123"));
        g_assert_nonnull (strstr (dump, "advice of your clinician and surgeon"));
      }
}

static void
test_parts (void)
{
  static const struct
  {
    SwPagePart part;
    const char *words;
  } rows[] = {
    { SW_PAGE_PART_PURPOSE, "Walk to the allotment" }, { SW_PAGE_PART_WEEK, "Your week" },
    { SW_PAGE_PART_EQUIPMENT, "What you need" },       { SW_PAGE_PART_TIMELINE, "\"Figure\"" },
    { SW_PAGE_PART_STOP_SIGNS, "pounding heartbeat" }, { SW_PAGE_PART_PAIN_GUIDE, "How much pain is all right?" },
    { SW_PAGE_PART_KEY, "How to read the pictures" },  { SW_PAGE_PART_MISTAKES, "Common mistakes" },
    { SW_PAGE_PART_WAYS, "Too hard?" },                { SW_PAGE_PART_SELF_CHECK, "Check yourself" },
    { SW_PAGE_PART_LOG, "Your tick sheet" },           { SW_PAGE_PART_SIGNATURE, "Client: name, signature" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *with = tell (SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL | SW_SET (rows[i].part), NULL);
      g_autofree char *without = tell (SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL & ~SW_SET (rows[i].part), NULL);

      g_assert_nonnull (strstr (with, rows[i].words));
      g_assert_null (strstr (without, rows[i].words));
    }
}

static guint
count_words (const char *dump,
             const char *wanted)
{
  guint n = 0;

  for (const char *at = strstr (dump, wanted); at != NULL; at = strstr (at + 1, wanted))
    n++;
  return n;
}

/* What to get says how heavy, in the units the client reads; the bar of the session's time says what its parts are:
 * those of every day, not the self-check, which has its heading alone. */
static void
test_words_of_signs (void)
{
  g_autofree char *full = tell (SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL, NULL);

  g_assert_nonnull (strstr (full, "\"a hand weight: 2.5\u00a0kg (5.5\u00a0lb)\""));
  g_assert_nonnull (strstr (full, "\"a steady chair\""));
  g_assert_nonnull (strstr (full, "\"Getting ready for the next one\""));
  g_assert_cmpuint (count_words (full, "\"Check yourself\""), ==, 1);
}

/* Where a text begins on a page of a dump, from the top. */
static double
find_top (const char *page,
          const char *wanted)
{
  g_auto (GStrv) lines = g_strsplit (page, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      char kind[16];
      double box[4];

      if (strstr (lines[i], wanted) != NULL && read_piece (lines[i], kind, box))
        return box[1];
    }
  return -1.0;
}

/* A long letterhead takes from the white space of the first page before it drives the signs to stop for apart. How much
 * there usually is shows on a taller page. */
static void
test_long_letterhead (void)
{
  double usual_pt = 0.0;
  gboolean tightened = FALSE;

  for (int n = 0; n < 14; n++)
    {
      g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
      g_autoptr (GString) name = g_string_new (NULL);
      g_autoptr (SwHandout) handout = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *dump = NULL;
      g_auto (GStrv) pages = NULL;
      SwHandoutOptions options;
      double week_pt;

      for (int i = 0; i < n; i++)
        g_string_append (name, "Centre for Bones, Joints and Balance ");
      g_object_set (sw_programme_get_clinic (programme), "name", name->str, NULL);
      sw_handout_options_init (&options, programme, DAY);
      options.paper = n == 0 ? SW_PAPER_A4 : SW_PAPER_LETTER;
      handout = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      dump = sw_handout_dump (handout);
      pages = g_strsplit (dump, "\npage ", -1);

      week_pt = find_top (pages[0], "\"Your week\"") - find_top (pages[0], "Your goal");
      g_assert_cmpfloat (week_pt, >, 0.0);
      if (n == 0)
        usual_pt = week_pt;
      if (week_pt < usual_pt - 1.0)
        {
          g_assert_nonnull (strstr (pages[0], "First follow the advice"));
          tightened = TRUE;
        }
    }
  g_assert_true (tightened);
}

/* A self-check says when it is done; which answer is better and what was measured at the start, as far as the programme
 * does. */
static void
test_check_words (void)
{
  static const struct
  {
    SwBetter better;
    const char *test;
    SwMeasure measure;
    const char *wanted;
    const char *unwanted;
  } rows[] = {
    { SW_BETTER_NOT_STATED, "Stand on one leg", SW_MEASURE_SECONDS, "22.5\302\240seconds", "is better" },
    { SW_BETTER_HIGHER, "Reach on one leg", SW_MEASURE_SECONDS, "Longer is better.", "Measured on" },
    { SW_BETTER_LOWER, "Stand on one leg", SW_MEASURE_CENTIMETRES, "Shorter is better.", "Measured on" },
    { SW_BETTER_HIGHER, "Stand", SW_MEASURE_SECONDS, "again before your next visit", "Measured on" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
      g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
      g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-11-20", rows[i].test, rows[i].measure);
      g_autoptr (SwHandout) handout = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *dump = NULL;
      SwHandoutOptions options;

      g_object_set (measurement, "left", 22.5, NULL);
      g_list_store_append (sw_programme_get_measurements (programme), measurement);
      for (guint k = 0; k < items->len; k++)
        g_object_set (items->pdata[k], "better", rows[i].better, NULL);
      sw_handout_options_init (&options, programme, DAY);
      handout = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      dump = sw_handout_dump (handout);
      g_assert_nonnull (strstr (dump, rows[i].wanted));
      g_assert_null (strstr (dump, rows[i].unwanted));
    }
}

/* Of cards of exercises without notes or cautions six and more stand on a page, in rows that run on over sections. */
static void
test_compact_cards (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwSession) session = sw_session_new ("Cards", SW_SET (SW_DAY_MONDAY));
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  int n_on_page[64] = { 0 };
  int most = 0;

  for (int i = 0; i < 24; i++)
    {
      g_autofree char *id = g_strdup_printf ("card%d", i);
      g_autoptr (SwItem) item = NULL;
      g_autoptr (SwSection) section = NULL;
      SwExercise *exercise = NULL;

      /* The first exercise of the sample, in sections of three, which leave half a row each. */
      for (guint k = 0; k < items->len && exercise == NULL; k++)
        exercise = sw_item_get_exercise (items->pdata[k]);
      item = sw_item_new_for_exercise (exercise, id);
      if (i % 3 == 0)
        {
          section = sw_section_new (SW_SECTION_MAIN, NULL);
          g_list_store_append (sw_session_get_sections (session), section);
        }
      else
        section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), (guint) i / 3);
      g_list_store_append (sw_section_get_items (section), item);
    }
  g_list_store_remove_all (sw_programme_get_sessions (programme));
  g_list_store_append (sw_programme_get_sessions (programme), session);
  sw_handout_options_init (&options, programme, DAY);
  options.layout = SW_LAYOUT_COMPACT;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  for (int i = 0; i < 24; i++)
    {
      g_autofree char *id = g_strdup_printf ("card%d", i);
      int page = sw_handout_find_page_of_item (handout, id);

      g_assert_cmpint (page, >=, 0);
      g_assert_cmpint (page, <, (int) G_N_ELEMENTS (n_on_page));
      n_on_page[page]++;
      most = MAX (most, n_on_page[page]);
    }
  g_test_message ("at most %d cards on a page", most);
  g_assert_cmpint (most, >=, 6);
}

/* In brief too everybody is told how to get ready before what to do. */
static void
test_compact_gets_ready (void)
{
  g_autofree char *full = tell (SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL, NULL);
  g_autofree char *compact = tell (SW_LAYOUT_COMPACT, SW_PAGE_PARTS_USUAL, NULL);

  g_assert_cmpuint (count_words (compact, "Get ready"), >, 0);
  g_assert_cmpuint (count_words (compact, "Get ready"), ==, count_words (full, "Get ready"));
}

/* Where a circuit goes on over a page, that page begins with its rounds. */
static void
test_circuit_continues (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *dump = NULL;
  g_auto (GStrv) pages = NULL;
  SwHandoutOptions options;
  int first;
  int second;

  sw_handout_options_init (&options, programme, DAY);
  options.layout = SW_LAYOUT_LARGE_PRINT;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  dump = sw_handout_dump (handout);
  pages = g_strsplit (dump, "\npage ", -1);
  first = sw_handout_find_page_of_item (handout, "i7");
  second = sw_handout_find_page_of_item (handout, "i9");

  g_assert_cmpint (second, >, first);
  for (int page = 0; page < sw_handout_get_n_pages (handout); page++)
    {
      gboolean continued = strstr (pages[page], "Up and down, continued  Do these 2\u00a0exercises") != NULL;

      g_assert_true (page > first || !continued);
      g_assert_true (page <= first || page > second || continued);
    }
  g_assert_null (strstr (pages[sw_handout_find_page_of_item (handout, "i5")], "continued"));
}

static void
test_page_counts (void)
{
  int full;
  int compact;
  int summary;
  g_autofree char *full_dump = tell (SW_LAYOUT_FULL, SW_PAGE_PARTS_USUAL, &full);
  g_autofree char *compact_dump = tell (SW_LAYOUT_COMPACT, SW_PAGE_PARTS_USUAL, &compact);
  g_autofree char *summary_dump = tell (SW_LAYOUT_SUMMARY, SW_PAGE_PARTS_USUAL, &summary);

  g_assert_cmpint (summary, ==, 1);
  g_assert_cmpint (compact, <, full);
}

static void
test_large_print (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  SwHandoutOptions options;
  SwStyle style;

  sw_handout_options_init (&options, programme, DAY);
  options.layout = SW_LAYOUT_LARGE_PRINT;
  options.text_points = 12.0;
  g_assert_cmpfloat (sw_handout_options_get_body_pt (&options), ==, 18.0);
  sw_style_init (&style, &options);
  for (int role = SW_TEXT_TITLE; role < SW_TEXT_FURNITURE; role++)
    g_assert_cmpfloat (sw_style_get_size_pt (&style, (SwTextRole) role), >=, 18.0);
  options.text_points = 24.0;
  g_assert_cmpfloat (sw_handout_options_get_body_pt (&options), ==, 24.0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/layouts/any", test_any);
  g_test_add_func ("/layouts/stop-stays", test_stop_stays);
  g_test_add_func ("/layouts/parts", test_parts);
  g_test_add_func ("/layouts/words-of-signs", test_words_of_signs);
  g_test_add_func ("/layouts/long-letterhead", test_long_letterhead);
  g_test_add_func ("/layouts/check-words", test_check_words);
  g_test_add_func ("/layouts/compact-cards", test_compact_cards);
  g_test_add_func ("/layouts/compact-gets-ready", test_compact_gets_ready);
  g_test_add_func ("/layouts/circuit-continues", test_circuit_continues);
  g_test_add_func ("/layouts/page-counts", test_page_counts);
  g_test_add_func ("/layouts/large-print", test_large_print);
  return g_test_run ();
}
