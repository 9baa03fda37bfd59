/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fields of a dose let in what a dose may be and nothing else, and say what their numbers mean. */
#include "config.h"

#include <libxml/parser.h>
#include <string.h>

#include "sw-dose-hints.h"

#define VALUE(member) G_STRUCT_OFFSET (SwDose, member)

static const struct
{
  const char *id;
  gsize value;
} fields[] = {
  { "sets", VALUE (sets) },
  { "reps", VALUE (reps_low) },
  { "hold", VALUE (hold_s) },
  { "rest", VALUE (rest_s) },
  { "directions", VALUE (directions) },
  { "extra", VALUE (extra_sets) },
  { "days", VALUE (days_a_week) },
  { "times", VALUE (times_a_day) },
  { "effort", VALUE (effort_limit) },
  { "pain", VALUE (pain_limit) },
};

/* The element with that id in the template. */
static xmlNode *
find_object (xmlNode    *node,
             const char *id)
{
  for (; node != NULL; node = node->next)
    {
      xmlChar *own = xmlGetProp (node, (const xmlChar *) "id");
      gboolean is_it = own != NULL && strcmp ((const char *) own, id) == 0;
      xmlNode *found;

      xmlFree (own);
      found = is_it ? node : find_object (node->children, id);
      if (found != NULL)
        return found;
    }

  return NULL;
}

/* The value of a property of an object, or @otherwise. */
static int
property_of (xmlNode    *object,
             const char *name,
             int         otherwise)
{
  for (xmlNode *child = object->children; child != NULL; child = child->next)
    {
      xmlChar *own = xmlGetProp (child, (const xmlChar *) "name");
      gboolean is_it = own != NULL && strcmp ((const char *) own, name) == 0;

      xmlFree (own);
      if (is_it)
        {
          xmlChar *content = xmlNodeGetContent (child);

          otherwise = (int) g_ascii_strtoll ((const char *) content, NULL, 10);
          xmlFree (content);
        }
    }

  return otherwise;
}

static gboolean
is_allowed (gsize field,
            int   value)
{
  SwDose dose;

  sw_dose_init (&dose);
  *(int *) (void *) ((char *) &dose + field) = value;
  if (field == VALUE (reps_low))
    dose.reps_high = value;
  if (field == VALUE (extra_sets))
    dose.extra_side = value > 0 ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_NONE;
  return sw_dose_check (&dose, NULL);
}

static void
test_limits (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "sw-dose-form.ui", NULL);
  xmlDoc *document = xmlReadFile (path, NULL, XML_PARSE_NONET | XML_PARSE_NOBLANKS);

  g_assert_nonnull (document);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      xmlNode *object = find_object (xmlDocGetRootElement (document), fields[i].id);
      int lower, upper, none;

      g_assert_nonnull (object);
      lower = property_of (object, "lower", 0);
      upper = property_of (object, "upper", 0);
      none = property_of (object, "none", lower);
      g_test_message ("%s: %d..%d, none %d", fields[i].id, lower, upper, none);

      g_assert_true (is_allowed (fields[i].value, lower));
      g_assert_true (is_allowed (fields[i].value, upper));
      g_assert_true (is_allowed (fields[i].value, none));
      g_assert_false (is_allowed (fields[i].value, MIN (lower, none) - 1));
      g_assert_false (is_allowed (fields[i].value, upper + 1));
    }
  xmlFreeDoc (document);
}

/* Every row of the CR10 scale at a whole number, and the repetitions in reserve of a published table. */
static void
test_effort (void)
{
  const char *words[] = {
    "None stated", "Very light", "Light", "Moderate", "Moderate", "Hard", "Hard",
    "Very hard: about 3 repetitions could follow", "Very hard: about 2 repetitions could follow",
    "Very hard: about 1 repetition could follow", "Extremely hard: no repetition could follow",
  };

  for (int effort = 0; effort <= 10; effort++)
    {
      g_autofree char *hint = sw_dose_hint_effort (effort);

      g_assert_cmpstr (hint, ==, words[effort]);
    }
}

static void
test_pain (void)
{
  g_assert_cmpstr (sw_dose_hint_pain (-1), ==, "None stated");
  g_assert_cmpstr (sw_dose_hint_pain (0), ==, "No pain");
  for (int pain = 1; pain <= 2; pain++)
    g_assert_cmpstr (sw_dose_hint_pain (pain), ==, "Safe");
  for (int pain = 3; pain <= 5; pain++)
    g_assert_cmpstr (sw_dose_hint_pain (pain), ==, "Acceptable if it settles by the next morning");
  for (int pain = 6; pain <= 10; pain++)
    g_assert_cmpstr (sw_dose_hint_pain (pain), ==, "Too much: less load or range");
}

static void
test_tempo (void)
{
  const struct
  {
    const char *text;
    const char *words;
  } cases[] = {
    { "", "Lowering, pause, lifting, pause, in seconds" },
    { "2-0-2-0", "Lower 2 s, lift 2 s" },
    { "3-1-X-2", "Lower 3 s, pause 1 s, lift as fast as possible, pause 2 s" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *hint = NULL;
      SwTempo tempo;

      g_assert_true (sw_tempo_from_string (cases[i].text, &tempo));
      hint = sw_dose_hint_tempo (&tempo);
      g_assert_cmpstr (hint, ==, cases[i].words);
    }
}

static void
test_load (void)
{
  g_autofree char *none = sw_dose_hint_load_limit ((SwLoad) { SW_LOAD_NONE, 0.0 });
  g_autofree char *some = sw_dose_hint_load_limit ((SwLoad) { SW_LOAD_KG, 2.5 });

  g_assert_cmpstr (none, ==, "This exercise is done without a load");
  g_assert_cmpstr (some, ==, "This exercise: up to 2.5 kg");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/dose-fields/limits", test_limits);
  g_test_add_func ("/dose-fields/effort", test_effort);
  g_test_add_func ("/dose-fields/pain", test_pain);
  g_test_add_func ("/dose-fields/tempo", test_tempo);
  g_test_add_func ("/dose-fields/load", test_load);

  return g_test_run ();
}
