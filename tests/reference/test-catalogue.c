/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every shipped exercise against what does not come from this program: the schema by xmllint, published
 * doses, a published reading formula, and the plain logic of positions and precautions. The files are
 * read by libxml2 alone, so that a fault of our own reader cannot hide one of theirs. */
#include "config.h"

#include <libxml/parser.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>
#include <string.h>

#include "sw-data-dir.h"
#include "sw-xml.h"

#define MAX_SENTENCE_WORDS 17
#define MAX_READING_GRADE 6.0

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlXPathContext, xmlXPathFreeContext)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlXPathObject, xmlXPathFreeObject)

/* id -> xmlDoc of all shipped exercises. */
/* Fails the test and goes on, so that one run names every fault. */
#define complain(...)              \
  G_STMT_START                      \
  {                                 \
    g_test_message (__VA_ARGS__);   \
    g_test_fail ();                 \
  }                                 \
  G_STMT_END

static GHashTable *exercises;

static char *
file_of (const char *id)
{
  g_autofree char *name = g_strconcat (id, ".xml", NULL);

  return sw_data_path ("catalogue", name, NULL);
}

/* The texts of all nodes that @path finds in @doc; "x" is the prefix of the exercise namespace. */
static GStrv
find (xmlDoc     *doc,
      const char *path)
{
  g_autoptr (xmlXPathContext) context = xmlXPathNewContext (doc);
  g_autoptr (GStrvBuilder) found = g_strv_builder_new ();
  g_autoptr (xmlXPathObject) nodes = NULL;

  xmlXPathRegisterNs (context, (const xmlChar *) "x", (const xmlChar *) "urn:setwright:exercise");
  nodes = xmlXPathEvalExpression ((const xmlChar *) path, context);
  g_assert_nonnull (nodes);

  for (int i = 0; nodes->nodesetval != NULL && i < nodes->nodesetval->nodeNr; i++)
    {
      xmlChar *text = xmlNodeGetContent (nodes->nodesetval->nodeTab[i]);

      g_strv_builder_add (found, (const char *) text);
      xmlFree (text);
    }

  return g_strv_builder_end (found);
}

static guint
count (xmlDoc     *doc,
       const char *path)
{
  g_auto (GStrv) found = find (doc, path);

  return g_strv_length (found);
}

/* The single text @path finds, or "". */
static char *
find_one (xmlDoc     *doc,
          const char *path)
{
  g_auto (GStrv) found = find (doc, path);

  g_assert_cmpuint (g_strv_length (found), <=, 1);
  return g_strdup (found[0] != NULL ? found[0] : "");
}

static double
find_number (xmlDoc     *doc,
             const char *path,
             double      fallback)
{
  g_autofree char *text = find_one (doc, path);

  return *text == '\0' ? fallback : g_ascii_strtod (text, NULL);
}

/* Whether the space separated set that @path finds holds @word. */
static gboolean
has (xmlDoc     *doc,
     const char *path,
     const char *word)
{
  g_autofree char *set = find_one (doc, path);
  g_auto (GStrv) words = g_strsplit (set, " ", -1);

  return g_strv_contains ((const char * const *) words, word);
}

static gboolean
has_caution (xmlDoc     *doc,
             const char *caution)
{
  return has (doc, "/x:exercise/x:about/@cautions", caution);
}

static gboolean
needs (xmlDoc     *doc,
       const char *equipment)
{
  return has (doc, "/x:exercise/x:about/@equipment", equipment);
}

static void
assert_count (const char *id,
              xmlDoc     *doc,
              const char *path,
              guint       low,
              guint       high)
{
  guint n = count (doc, path);

  if (n < low || n > high)
    complain ("%s: %u of %s, expected %u to %u", id, n, path, low, high);
}

static void
load_catalogue (void)
{
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  const char *name;

  g_assert_no_error (error);
  exercises = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) xmlFreeDoc);

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      xmlDoc *doc;

      if (!g_str_has_suffix (name, ".xml"))
        continue;

      doc = xmlReadFile (path, NULL, XML_PARSE_NONET);
      g_assert_nonnull (doc);
      g_hash_table_insert (exercises, g_strndup (name, strlen (name) - strlen (".xml")), doc);
    }
}

static void
test_schema (void)
{
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  g_autofree char *schema = sw_data_path ("schema", "exercise.rng", NULL);
  g_autoptr (GPtrArray) argv = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *output = NULL;
  g_autoptr (GError) error = NULL;
  GHashTableIter iter;
  gpointer id;
  int status;

  if (xmllint == NULL)
    {
      g_test_skip ("xmllint is not installed");
      return;
    }

  g_ptr_array_add (argv, g_strdup (xmllint));
  g_ptr_array_add (argv, g_strdup ("--nonet"));
  g_ptr_array_add (argv, g_strdup ("--noout"));
  g_ptr_array_add (argv, g_strdup ("--relaxng"));
  g_ptr_array_add (argv, g_strdup (schema));
  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    g_ptr_array_add (argv, file_of (id));
  g_ptr_array_add (argv, NULL);

  g_spawn_sync (NULL, (char **) argv->pdata, NULL, G_SPAWN_STDOUT_TO_DEV_NULL, NULL, NULL, NULL, &output, &status, &error);
  g_assert_no_error (error);
  if (!g_spawn_check_wait_status (status, &error))
    complain ("xmllint: %s", output);
}

static void
test_spread (void)
{
  static const struct
  {
    const char *regions;
    guint least;
  } wanted[] = {
    { "neck", 4 }, { "shoulder", 6 }, { "trunk", 6 }, { "hip", 5 }, { "knee", 4 }, { "ankle balance", 5 },
  };

  g_assert_cmpuint (g_hash_table_size (exercises), >=, 30);

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_auto (GStrv) regions = g_strsplit (wanted[i].regions, " ", -1);
      guint n = 0;
      GHashTableIter iter;
      gpointer doc;

      g_hash_table_iter_init (&iter, exercises);
      while (g_hash_table_iter_next (&iter, NULL, &doc))
        {
          g_autofree char *region = find_one (doc, "/x:exercise/x:about/@region");

          n += g_strv_contains ((const char * const *) regions, region);
        }

      if (n < wanted[i].least)
        complain ("%s: %u exercises, expected at least %u", wanted[i].regions, n, wanted[i].least);
    }
}

static void
check_whole (const char *id,
             xmlDoc     *doc)
{
  g_autofree char *own_id = find_one (doc, "/x:exercise/@id");

  g_assert_cmpstr (own_id, ==, id);
  assert_count (id, doc, "/x:exercise/x:about/@aims", 1, 1);
  assert_count (id, doc, "/x:exercise/x:about/@muscles", 1, 1);
  assert_count (id, doc, "/x:exercise/x:about/@directions", 1, 1);
  assert_count (id, doc, "/x:exercise/x:about/@section", 1, 1);
  assert_count (id, doc, "/x:exercise/x:about/@pace-seconds", 1, 1);
  assert_count (id, doc, "/x:exercise/x:dose", 1, 1);
  assert_count (id, doc, "/x:exercise/x:easier | /x:exercise/x:harder", 0, 8);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:name", 1, 1);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:synonym", 3, 8);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:purpose", 1, 1);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:set-up", 1, 1);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:step", 3, 6);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:form-point", 2, 4);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:error", 2, 3);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:feel", 1, 1);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:easier-way", 1, 1);
  assert_count (id, doc, "//x:text[@xml:lang='en']/x:harder-way", 1, 1);
}

static void
test_whole (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    check_whole (id, doc);
}

/* Follows the harder links from @id; every exercise on the way stands in @path, so that a ring shows. */
static void
climb (const char *id,
       GPtrArray  *path)
{
  xmlDoc *doc = g_hash_table_lookup (exercises, id);
  g_auto (GStrv) harder = find (doc, "/x:exercise/x:harder/@ref");

  if (g_ptr_array_find_with_equal_func (path, id, g_str_equal, NULL))
    {
      complain ("%s: its harder exercises lead back to it", id);
      return;
    }

  g_ptr_array_add (path, (gpointer) id);
  for (guint i = 0; harder[i] != NULL; i++)
    climb (harder[i], path);
  g_ptr_array_remove_index (path, path->len - 1);
}

static void
test_links (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_auto (GStrv) harder = find (doc, "/x:exercise/x:harder/@ref");
      g_auto (GStrv) easier = find (doc, "/x:exercise/x:easier/@ref");

      for (guint i = 0; harder[i] != NULL; i++)
        {
          xmlDoc *other = g_hash_table_lookup (exercises, harder[i]);
          g_autofree char *back = g_strdup_printf ("/x:exercise/x:easier[@ref='%s']", (const char *) id);

          if (other == NULL || count (other, back) != 1)
            complain ("%s: harder %s does not lead back", (const char *) id, harder[i]);
        }
      for (guint i = 0; easier[i] != NULL; i++)
        {
          xmlDoc *other = g_hash_table_lookup (exercises, easier[i]);
          g_autofree char *back = g_strdup_printf ("/x:exercise/x:harder[@ref='%s']", (const char *) id);

          if (other == NULL || count (other, back) != 1)
            complain ("%s: easier %s does not lead back", (const char *) id, easier[i]);
        }
    }

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_autoptr (GPtrArray) path = g_ptr_array_new ();

      climb (id, path);
    }
}

/* The widest range that catalogue-doses.csv gives for @parameter under any of the aims of @doc. */
static gboolean
published_range (xmlDoc     *doc,
                 const char *parameter,
                 double     *low,
                 double     *high)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "catalogue-doses.csv", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;
  gboolean found = FALSE;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);

  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], ",", 5);
      double row_low = g_ascii_strtod (cells[2], NULL);
      double row_high = g_ascii_strtod (cells[3], NULL);

      if (!g_str_equal (cells[1], parameter)
          || !(g_str_equal (cells[0], "any") || has (doc, "/x:exercise/x:about/@aims", cells[0])))
        continue;

      *low = found ? MIN (*low, row_low) : row_low;
      *high = found ? MAX (*high, row_high) : row_high;
      found = TRUE;
    }

  return found;
}

static void
assert_published (const char *id,
                  xmlDoc     *doc,
                  const char *parameter,
                  double      value)
{
  double low, high;

  if (published_range (doc, parameter, &low, &high) && (value < low || value > high))
    complain ("%s: %s %g is outside the published %g to %g", id, parameter, value, low, high);
}

static void
check_dose (const char *id,
            xmlDoc     *doc)
{
  g_autofree char *reps = find_one (doc, "/x:exercise/x:dose/@repetitions");
  g_auto (GStrv) ends = g_strsplit (*reps != '\0' ? reps : "10", "-", 2);
  double reps_low = g_ascii_strtod (ends[0], NULL);
  double reps_high = ends[1] != NULL ? g_ascii_strtod (ends[1], NULL) : reps_low;
  double hold_s = find_number (doc, "/x:exercise/x:dose/@hold-seconds", 0);
  double sets = find_number (doc, "/x:exercise/x:dose/@sets", 1);
  gboolean hold_only = reps_high < 1;

  /* A hold with a rest between is written as sets of one hold; what tables call repetitions are its sets. */
  if (hold_only)
    {
      assert_published (id, doc, "repetitions", sets);
      assert_published (id, doc, "total", sets * hold_s);
    }
  else
    {
      assert_published (id, doc, "sets", sets);
      assert_published (id, doc, "repetitions", reps_low);
      assert_published (id, doc, "repetitions", reps_high);
      assert_published (id, doc, "total", sets * reps_high * hold_s);
    }
  assert_published (id, doc, "hold", hold_s);
  assert_published (id, doc, "pace", find_number (doc, "/x:exercise/x:about/@pace-seconds", 0));
  if (sets > 1 && !hold_only)
    assert_published (id, doc, "rest", find_number (doc, "/x:exercise/x:dose/@rest-seconds", 0));
  if (count (doc, "/x:exercise/x:dose/@effort-limit") > 0)
    assert_published (id, doc, "effort", find_number (doc, "/x:exercise/x:dose/@effort-limit", 0));
  assert_count (id, doc, "/x:exercise/x:dose/@pain-limit", 1, 1);
  assert_published (id, doc, "pain", find_number (doc, "/x:exercise/x:dose/@pain-limit", 0));
}

static void
test_doses (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_autofree char *reason = find_one (doc, "/x:exercise/x:dose-reason");

      /* A dose that leaves the published ranges tells the therapist why. */
      if (*reason == '\0')
        check_dose (id, doc);
    }
}

/* A load in the default dose stays within the limit, and a limit there is. */
static void
test_loads (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_autofree char *load = find_one (doc, "/x:exercise/x:dose/@load");
      g_autofree char *limit = find_one (doc, "/x:exercise/x:load-limit/@value");
      char *load_unit, *limit_unit;
      double load_value = g_ascii_strtod (load, &load_unit);
      double limit_value = g_ascii_strtod (limit, &limit_unit);

      if (needs (doc, "band") || needs (doc, "dumbbell") || needs (doc, "ankle-weight"))
        g_assert_cmpfloat (limit_value, >, 0);
      if (*load == '\0')
        continue;

      g_assert_cmpstr (load_unit, ==, limit_unit);
      g_assert_cmpfloat (load_value, <=, limit_value);
    }
}

static void
assert_caution_if (const char *id,
                   xmlDoc     *doc,
                   gboolean    condition,
                   const char *caution)
{
  if (condition && !has_caution (doc, caution))
    complain ("%s: the caution %s is missing", id, caution);
}

/* What follows from position, aim and equipment alone; the rest of the cautions is judgement. */
static void
check_cautions (const char *id,
                xmlDoc     *doc)
{
  g_autofree char *position = find_one (doc, "/x:exercise/x:about/@position");
  gboolean standing = g_str_equal (position, "standing");
  gboolean on_fours = g_str_equal (position, "hands-and-knees");
  gboolean supported = needs (doc, "counter") || needs (doc, "wall") || needs (doc, "chair");

  assert_caution_if (id, doc, needs (doc, "mat"), "floor-transfer");
  assert_caution_if (id, doc, g_str_equal (position, "on-back"), "flat-on-back");
  assert_caution_if (id, doc, g_str_equal (position, "face-down"), "face-down");
  assert_caution_if (id, doc, g_str_equal (position, "kneeling") || on_fours, "kneeling");
  assert_caution_if (id, doc, on_fours, "wrist-weight-bearing");
  assert_caution_if (id, doc, standing, "full-weight-bearing");
  assert_caution_if (id, doc, standing && !supported, "unsupported-standing");
  assert_caution_if (id, doc, has (doc, "/x:exercise/x:about/@aims", "stretch"), "end-range-hold");
  assert_caution_if (id, doc,
                     has (doc, "/x:exercise/x:about/@aims", "stretch")
                       && has (doc, "/x:exercise/x:about/@muscles", "calf"),
                     "calf-stretch");
  assert_caution_if (id, doc, has (doc, "/x:exercise/x:about/@muscles", "rotator-cuff"), "arm-active-lift");

  if (!standing && !g_str_equal (position, "sitting") && !needs (doc, "mat") && !needs (doc, "bed"))
    complain ("%s: on the floor or lying, but neither mat nor bed", id);
  if (g_str_equal (position, "sitting") && !needs (doc, "chair") && !needs (doc, "bed") && !needs (doc, "ball"))
    complain ("%s: sitting, but on no chair, bed or ball", id);
}

static void
test_cautions (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    check_cautions (id, doc);
}

/* Groups of vowels, without a silent e: the usual rough count. */
static guint
count_syllables (const char *word)
{
  guint n = 0;
  gboolean in_vowel = FALSE;
  gsize length = strlen (word);

  for (const char *c = word; *c != '\0'; c++)
    {
      gboolean vowel = strchr ("aeiouyAEIOUY", *c) != NULL;

      n += vowel && !in_vowel;
      in_vowel = vowel;
    }
  if (n > 1 && g_str_has_suffix (word, "e") && !(length > 1 && word[length - 2] == 'l'))
    n--;

  return MAX (n, 1);
}

static void
check_words (const char *id,
             xmlDoc     *doc)
{
  g_auto (GStrv) texts = find (doc, "//x:purpose | //x:set-up | //x:step | //x:form-point | //x:error | //x:feel"
                                    " | //x:easier-way | //x:harder-way");
  guint words = 0, sentences = 0, syllables = 0;
  double grade;

  for (guint i = 0; texts[i] != NULL; i++)
    {
      g_auto (GStrv) parts = g_strsplit (texts[i], " ", -1);
      guint length = 0;

      if (!g_str_has_suffix (texts[i], "."))
        complain ("%s: no full stop at the end of “%s”", id, texts[i]);

      for (guint j = 0; parts[j] != NULL; j++)
        {
          g_autofree char *word = g_strdup (parts[j]);
          gboolean last = g_str_has_suffix (word, ".");

          g_strdelimit (word, ".,", '\0');
          words++;
          length++;
          syllables += count_syllables (word);
          if (!last)
            continue;

          if (length > MAX_SENTENCE_WORDS)
            complain ("%s: a sentence of %u words in “%s”", id, length, texts[i]);
          sentences++;
          length = 0;
        }
    }

  /* Flesch-Kincaid grade, as printed in Insights Imaging 2021, s13244-021-01094-3, table 2. */
  grade = 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
  if (grade > MAX_READING_GRADE)
    complain ("%s: reading grade %.1f", id, grade);
}

static void
test_words (void)
{
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    check_words (id, doc);
}

/* How many and how long is the dose's business: a step that says so would contradict it. */
static void
test_steps_leave_the_dose_alone (void)
{
  g_autoptr (GRegex) number = g_regex_new ("hold [^.]*[0-9]+ second|[0-9] (times|sets|repetitions)", G_REGEX_CASELESS, 0, NULL);
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_auto (GStrv) texts = find (doc, "//x:step | //x:easier-way | //x:harder-way");

      for (guint i = 0; texts[i] != NULL; i++)
        if (g_regex_match (number, texts[i], 0, NULL))
          complain ("%s: “%s” speaks of the dose", (const char *) id, texts[i]);
    }
}

/* No two exercises share a name, and no name is another's synonym. */
static void
test_names (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GHashTableIter iter;
  gpointer id, doc;

  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_autofree char *name = find_one (doc, "//x:name");
      char *folded = g_utf8_casefold (name, -1);

      if (g_hash_table_contains (seen, folded))
        complain ("%s: “%s” names two things", (const char *) id, name);
      g_hash_table_add (seen, folded);
    }

  /* Two exercises may be found by one word, but a name finds its own. */
  g_hash_table_iter_init (&iter, exercises);
  while (g_hash_table_iter_next (&iter, &id, &doc))
    {
      g_auto (GStrv) synonyms = find (doc, "//x:synonym");

      for (guint i = 0; synonyms[i] != NULL; i++)
        {
          g_autofree char *folded = g_utf8_casefold (synonyms[i], -1);

          if (g_hash_table_contains (seen, folded))
            complain ("%s: “%s” is another's name", (const char *) id, synonyms[i]);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  load_catalogue ();

  g_test_add_func ("/catalogue/schema", test_schema);
  g_test_add_func ("/catalogue/spread", test_spread);
  g_test_add_func ("/catalogue/whole", test_whole);
  g_test_add_func ("/catalogue/links", test_links);
  g_test_add_func ("/catalogue/doses", test_doses);
  g_test_add_func ("/catalogue/loads", test_loads);
  g_test_add_func ("/catalogue/cautions", test_cautions);
  g_test_add_func ("/catalogue/words", test_words);
  g_test_add_func ("/catalogue/steps-leave-the-dose-alone", test_steps_leave_the_dose_alone);
  g_test_add_func ("/catalogue/names", test_names);
  status = g_test_run ();

  g_clear_pointer (&exercises, g_hash_table_unref);
  xmlCleanupParser ();
  return status;
}
