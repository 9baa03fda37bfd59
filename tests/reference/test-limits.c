/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The client's precautions and limits against every shipped exercise, both ways: what should be found is, and nothing
 * else. Tags and written angles are read from the files by libxml2 alone, and the angles of knee and elbow are measured
 * between the solved bones, so that a fault of what is tested cannot hide itself. */
#include "config.h"

#include <libxml/parser.h>
#include <math.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-figure-walk.h"
#include "sw-finding.h"
#include "sw-limit-check.h"
#include "sw-xml.h"

#define TODAY "2026-11-25"

static SwCatalogue *catalogue;

static xmlDoc *
parse (SwExercise *exercise)
{
  g_autofree char *name = g_strconcat (sw_exercise_get_id (exercise), ".xml", NULL);
  g_autofree char *path = sw_data_path ("catalogue", name, NULL);
  xmlDoc *doc = xmlReadFile (path, NULL, XML_PARSE_NONET);

  g_assert_nonnull (doc);
  return doc;
}

static char *
dup_attribute (xmlNode    *node,
               const char *name)
{
  xmlChar *value = xmlGetProp (node, (const xmlChar *) name);
  char *copy = g_strdup ((const char *) value);

  xmlFree (value);
  return copy;
}

static xmlNode *
find_node (xmlNode    *parent,
           const char *name)
{
  for (xmlNode *node = parent->children; node != NULL; node = node->next)
    if (node->type == XML_ELEMENT_NODE && strcmp ((const char *) node->name, name) == 0)
      return node;

  return NULL;
}

static SwProgramme *
make_programme (SwExercise *exercise,
                SwSide      side)
{
  SwProgramme *programme = sw_programme_new (NULL);
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));
  g_autoptr (SwSection) section = sw_section_new (SW_SECTION_MAIN, NULL);
  g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, "i1");
  SwDose dose = *sw_item_get_dose (item);

  dose.side = side;
  g_object_set (item, "dose", &dose, NULL);
  g_list_store_append (sw_section_get_items (section), item);
  g_list_store_append (sw_session_get_sections (session), section);
  g_list_store_append (sw_programme_get_sessions (programme), session);
  return programme;
}

static const SwFinding *
find_finding (GPtrArray  *findings,
              const char *prefix)
{
  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (g_str_has_prefix (finding->key, prefix))
        return finding;
    }

  return NULL;
}

/* "precaution caution" -> level, from 1. */
static GHashTable *
read_table (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "precautions.csv", NULL);
  GHashTable *table = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[i], ";", 4);
      int level;

      g_assert_true (sw_term_from_nick (SW_TYPE_FINDING_LEVEL, fields[2], &level));
      if (!g_hash_table_insert (table, g_strconcat (fields[0], " ", fields[1], NULL), GINT_TO_POINTER (level + 1)))
        g_error ("%s stands twice", lines[i]);
    }

  return table;
}

/* The severest level that the table has for the tags in the file, from 1; 0 for none. Rows that were met are noted. */
static int
find_expected (GHashTable  *table,
               const char  *precaution,
               char       **tags,
               GHashTable  *met)
{
  int expected = 0;

  for (guint i = 0; tags[i] != NULL; i++)
    {
      g_autofree char *row = g_strconcat (precaution, " ", tags[i], NULL);
      int level = GPOINTER_TO_INT (g_hash_table_lookup (table, row));

      expected = MAX (expected, level);
      if (level > 0)
        g_hash_table_add (met, g_steal_pointer (&row));
    }

  return expected;
}

/* For each exercise and each precaution, a finding as severe as the table says, or none. */
static void
test_precautions (void)
{
  g_autoptr (GHashTable) table = read_table ();
  g_autoptr (GHashTable) met = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint n_found = 0, n_silent = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      g_autoptr (SwProgramme) programme = make_programme (exercise, SW_SIDE_BOTH);
      xmlDoc *doc = parse (exercise);
      g_autofree char *cautions = dup_attribute (find_node (xmlDocGetRootElement (doc), "about"), "cautions");
      g_auto (GStrv) tags = g_strsplit (cautions != NULL ? cautions : "", " ", -1);

      for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
        {
          const char *nick = sw_term_to_nick (SW_TYPE_PRECAUTION, precaution);
          g_autofree char *prefix = g_strdup_printf ("precaution:%s:", nick);
          int expected = find_expected (table, nick, tags, met);
          g_autoptr (GPtrArray) findings = NULL;
          const SwFinding *finding;

          g_object_set (sw_programme_get_client (programme), "precautions", (guint64) SW_SET (precaution), NULL);
          findings = sw_findings_collect_with (programme, NULL, TODAY, NULL);
          finding = find_finding (findings, prefix);
          if ((finding == NULL ? 0 : (int) finding->level + 1) != expected)
            g_error ("%s and %s: level %d where %d is expected", nick, sw_exercise_get_id (exercise),
                     finding == NULL ? 0 : (int) finding->level + 1, expected);
          n_found += finding != NULL;
          n_silent += finding == NULL;
        }
      xmlFreeDoc (doc);
    }

  g_test_message ("%u found, %u silent, %u of %u rows met in the catalogue", n_found, n_silent,
                  g_hash_table_size (met), g_hash_table_size (table));
  g_assert_cmpuint (n_found, >, 500);
  g_assert_cmpuint (g_hash_table_size (met), >, 100); /* the others wait for an exercise with their tag */
}

/* A limit at the very angle the picture reaches is kept, one degree less is not; and so at the other end, on each side alone,
 * and where only the other side works. */
static void
assert_kept_and_broken (SwExercise   *exercise,
                        SwMovement    movement,
                        SwFigureSide  side,
                        SwSide        worked,
                        const char   *end,
                        double        angle_deg,
                        double        beyond_deg)
{
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_RANGE);
  g_autoptr (SwProgramme) programme = make_programme (exercise, worked);
  g_autoptr (GPtrArray) kept = NULL;
  g_autoptr (GPtrArray) broken = NULL;

  g_object_set (limit, "movement", movement, "side", side == SW_FIGURE_LEFT ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_RIGHT, end,
                round (angle_deg), NULL);
  g_list_store_append (sw_programme_get_limits (programme), limit);
  kept = sw_findings_collect_with (programme, NULL, TODAY, NULL);
  g_object_set (limit, end, round (angle_deg) + beyond_deg, NULL);
  broken = sw_findings_collect_with (programme, NULL, TODAY, NULL);
  if (find_finding (kept, "limit-range:") != NULL || find_finding (broken, "limit-range:") == NULL
      || find_finding (broken, "limit-range:")->level != SW_FINDING_STOP)
    g_error ("%s: %s at %.1f", sw_exercise_get_id (exercise), sw_term_to_nick (SW_TYPE_MOVEMENT, (int) movement), angle_deg);
}

static void
test_ranges (void)
{
  static const SwSide sides[] = { SW_SIDE_EACH, SW_SIDE_RIGHT, SW_SIDE_LEFT };
  guint n_tried = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);

      for (guint k = 0; k < G_N_ELEMENTS (sides); k++)
        {
          SwMovements movements;

          sw_limits_get_movements (exercise, sides[k], &movements);
          for (int movement = 0; movement < (int) SW_N_MOVEMENTS; movement++)
            for (int side = 0; side < 2; side++)
              {
                double high_deg = movements.high_deg[movement][side];
                double low_deg = movements.low_deg[movement][side];

                if (!isnan (high_deg))
                  assert_kept_and_broken (exercise, (SwMovement) movement, (SwFigureSide) side, sides[k], "to-deg",
                                          high_deg, -1.0);
                if (!isnan (low_deg))
                  assert_kept_and_broken (exercise, (SwMovement) movement, (SwFigureSide) side, sides[k], "from-deg",
                                          low_deg, 1.0);
                n_tried++;
              }
        }
    }

  g_test_message ("%u ranges", n_tried);
  g_assert_cmpuint (n_tried, >, 10000);
}

typedef struct
{
  double knee_deg[2];
  double elbow_deg[2];
} Measured;

static double
get_angle (const SwSolved *solved,
           SwPiece         upper,
           SwPiece         lower,
           int             side)
{
  SwVector along = solved->body.pieces[(int) upper + side].axes.z;
  SwVector further = solved->body.pieces[(int) lower + side].axes.z;

  return SW_DEG (acos (CLAMP (sw_dot (along, further), -1.0, 1.0)));
}

static void
measure (const SwSolved *solved,
         gpointer        data)
{
  Measured *measured = data;

  for (int side = 0; side < 2; side++)
    {
      measured->knee_deg[side] = MAX (measured->knee_deg[side], get_angle (solved, SW_PIECE_THIGH, SW_PIECE_SHANK, side));
      measured->elbow_deg[side]
          = MAX (measured->elbow_deg[side], get_angle (solved, SW_PIECE_UPPER_ARM, SW_PIECE_FOREARM, side));
    }
}

/* Between the bones one measures what the angles say. */
static void
test_bones (void)
{
  guint n_tried = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      SwFigureSpec *spec = sw_exercise_get_figure (exercise);
      Measured measured = { { 0 }, { 0 } };
      SwMovements movements;

      sw_movements_init (&movements, spec);
      if (isnan (movements.high_deg[SW_MOVEMENT_KNEE_BEND][0]))
        continue;

      sw_figure_walk (spec, measure, &measured);
      for (int side = 0; side < 2; side++)
        {
          double knee_deg = MAX (fabs (movements.high_deg[SW_MOVEMENT_KNEE_BEND][side]),
                                 fabs (movements.low_deg[SW_MOVEMENT_KNEE_BEND][side]));
          double elbow_deg = MAX (fabs (movements.high_deg[SW_MOVEMENT_ELBOW_BEND][side]),
                                  fabs (movements.low_deg[SW_MOVEMENT_ELBOW_BEND][side]));

          if (fabs (knee_deg - measured.knee_deg[side]) > 0.6 || fabs (elbow_deg - measured.elbow_deg[side]) > 0.6)
            g_error ("%s: knee %.1f for %.1f, elbow %.1f for %.1f", sw_exercise_get_id (exercise), knee_deg,
                     measured.knee_deg[side], elbow_deg, measured.elbow_deg[side]);
          n_tried++;
        }
    }

  g_assert_cmpuint (n_tried, >, 400);
}

/* Whether the limb is held in this pose, so that what is written of it need not come about. */
static gboolean
is_held (xmlNode    *pose,
         const char *limb)
{
  for (xmlNode *node = pose->children; node != NULL; node = node->next)
    {
      g_autofree char *part = NULL;

      if (node->type != XML_ELEMENT_NODE || strcmp ((const char *) node->name, "pin") != 0)
        continue;
      part = dup_attribute (node, "part");
      if (strcmp (part, limb) == 0 || (strcmp (limb, "hand") == 0 && strcmp (part, "forearm") == 0))
        return TRUE;
    }

  return FALSE;
}

/* Who stands or sits puts the feet down, whatever is written of the knees: legs are free only where one lies. */
static gboolean
lies (xmlNode *figure)
{
  g_autofree char *base = dup_attribute (find_node (figure, "pose"), "base");

  return g_strcmp0 (base, "on-back") == 0 || g_strcmp0 (base, "face-down") == 0 || g_strcmp0 (base, "side-lying") == 0;
}

/* What is written of a joint that nothing holds lies within its range. */
static guint
check_written (SwExercise *exercise,
               xmlNode    *pose,
               const char *element,
               const char *limb,
               SwMovement  movement)
{
  SwMovements movements;
  guint n_tried = 0;

  sw_movements_init (&movements, sw_exercise_get_figure (exercise));
  for (xmlNode *node = pose->children; node != NULL; node = node->next)
    {
      g_autofree char *bend = NULL;
      g_autofree char *side = NULL;

      if (node->type != XML_ELEMENT_NODE || strcmp ((const char *) node->name, element) != 0 || is_held (pose, limb))
        continue;
      bend = dup_attribute (node, "bend");
      side = dup_attribute (node, "side");
      if (bend == NULL || side == NULL)
        continue;
      for (int i = 0; i < 2; i++)
        {
          double written_deg = g_ascii_strtod (bend, NULL);

          if (strcmp (side, i == SW_FIGURE_LEFT ? "right" : "left") == 0 || isnan (movements.low_deg[movement][i]))
            continue;
          if (written_deg < movements.low_deg[movement][i] - 1.0 || written_deg > movements.high_deg[movement][i] + 1.0)
            g_error ("%s: %s %s is written %s, and goes from %.1f to %.1f", sw_exercise_get_id (exercise), side, element,
                     bend, movements.low_deg[movement][i], movements.high_deg[movement][i]);
          n_tried++;
        }
    }

  return n_tried;
}

static void
test_written (void)
{
  guint n_tried = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      xmlDoc *doc = parse (exercise);
      xmlNode *figure = find_node (xmlDocGetRootElement (doc), "figure");

      for (xmlNode *pose = figure != NULL ? figure->children : NULL; pose != NULL; pose = pose->next)
        {
          if (pose->type != XML_ELEMENT_NODE || strcmp ((const char *) pose->name, "pose") != 0)
            continue;
          n_tried += check_written (exercise, pose, "elbow", "hand", SW_MOVEMENT_ELBOW_BEND);
          if (!lies (figure))
            continue;
          n_tried += check_written (exercise, pose, "knee", "foot", SW_MOVEMENT_KNEE_BEND);
          n_tried += check_written (exercise, pose, "hip", "foot", SW_MOVEMENT_HIP_BEND);
        }
      xmlFreeDoc (doc);
    }

  g_test_message ("%u written angles", n_tried);
  g_assert_cmpuint (n_tried, >, 150);
}

/* Weight by the tags in the file: without weight all that stands is stopped, with full weight nothing is. */
static void
test_weight (void)
{
  static const char * const on_feet[]
      = { "full-weight-bearing", "one-leg-standing", "impact", "one-leg-heel-raise", NULL };
  guint n_stopped = 0, n_asked = 0, n_silent = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      xmlDoc *doc = parse (exercise);
      g_autofree char *cautions = dup_attribute (find_node (xmlDocGetRootElement (doc), "about"), "cautions");
      g_auto (GStrv) tags = g_strsplit (cautions != NULL ? cautions : "", " ", -1);
      gboolean kneels = g_strv_contains ((const char * const *) tags, "kneeling");
      gboolean stands = FALSE;

      for (guint k = 0; on_feet[k] != NULL; k++)
        stands = stands || g_strv_contains ((const char * const *) tags, on_feet[k]);
      for (int bearing = 0; bearing < sw_term_get_n_values (SW_TYPE_BEARING); bearing++)
        for (int side = 0; side < 3; side++)
          {
            g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_WEIGHT_BEARING);
            g_autoptr (SwProgramme) programme = make_programme (exercise, SW_SIDE_EACH);
            g_autoptr (GPtrArray) findings = NULL;
            const SwFinding *finding;
            int expected = 0;

            if (stands && bearing < SW_BEARING_FULL)
              expected = bearing == SW_BEARING_AS_TOLERATED ? SW_FINDING_TELL + 1 : SW_FINDING_STOP + 1;
            else if (kneels && bearing <= SW_BEARING_TOUCH)
              expected = SW_FINDING_ASK + 1;
            g_object_set (limit, "bearing", bearing, "side", side, NULL);
            g_list_store_append (sw_programme_get_limits (programme), limit);
            findings = sw_findings_collect_with (programme, NULL, TODAY, NULL);
            finding = find_finding (findings, "limit-weight:");
            g_assert_cmpint (finding == NULL ? 0 : (int) finding->level + 1, ==, expected);
            n_stopped += expected == SW_FINDING_STOP + 1;
            n_asked += expected == SW_FINDING_ASK + 1;
            n_silent += expected == 0;
          }
      xmlFreeDoc (doc);
    }

  g_test_message ("%u stopped, %u asked, %u silent", n_stopped, n_asked, n_silent);
  g_assert_cmpuint (n_stopped, >, 300);
  g_assert_cmpuint (n_silent, >, 300);
}

static SwFindingLevel
get_weight_level (SwExercise *exercise,
                  SwBodySide  limited,
                  SwSide      worked)
{
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_WEIGHT_BEARING);
  SwDose dose = sw_exercise_get_facts (exercise)->dose;
  SwLimitBreach breach;

  dose.side = worked;
  g_object_set (limit, "side", limited, NULL);
  g_assert_true (sw_limit_find_breach (limit, exercise, &dose, &breach));
  return breach.level;
}

/* On one leg it is asked about the other one at most, the same way round in the mirror, and never when both take turns. */
static void
test_one_leg (void)
{
  guint n_asked = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      SwFindingLevel same, other;

      if ((sw_exercise_get_facts (exercise)->cautions & SW_SET (SW_CAUTION_ONE_LEG_STANDING)) == 0)
        continue;
      same = get_weight_level (exercise, SW_BODY_SIDE_RIGHT, SW_SIDE_RIGHT);
      other = get_weight_level (exercise, SW_BODY_SIDE_LEFT, SW_SIDE_RIGHT);
      g_assert_cmpint (same, ==, get_weight_level (exercise, SW_BODY_SIDE_LEFT, SW_SIDE_LEFT));
      g_assert_cmpint (other, ==, get_weight_level (exercise, SW_BODY_SIDE_RIGHT, SW_SIDE_LEFT));
      g_assert_true (same == SW_FINDING_STOP || other == SW_FINDING_STOP);
      g_assert_cmpint (get_weight_level (exercise, SW_BODY_SIDE_LEFT, SW_SIDE_EACH), ==, SW_FINDING_STOP);
      g_test_message ("%s: %s", sw_exercise_get_id (exercise),
                      same == SW_FINDING_ASK ? "its own leg is free" : other == SW_FINDING_ASK ? "the other leg is free"
                                                                                              : "no leg is free");
      n_asked += same == SW_FINDING_ASK || other == SW_FINDING_ASK;
    }

  g_assert_cmpuint (n_asked, >=, 10);
}

int
main (int   argc,
      char *argv[])
{
  int status;

  g_test_init (&argc, &argv, NULL);
  catalogue = sw_catalogue_load_shipped (NULL, NULL);
  g_assert_nonnull (catalogue);

  g_test_add_func ("/limits/catalogue/precautions", test_precautions);
  g_test_add_func ("/limits/catalogue/ranges", test_ranges);
  g_test_add_func ("/limits/catalogue/bones", test_bones);
  g_test_add_func ("/limits/catalogue/written", test_written);
  g_test_add_func ("/limits/catalogue/weight", test_weight);
  g_test_add_func ("/limits/catalogue/one-leg", test_one_leg);
  status = g_test_run ();

  g_assert_finalize_object (catalogue);
  return status;
}
