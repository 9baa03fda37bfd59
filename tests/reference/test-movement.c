/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is reckoned from the shipped exercises' figures and facts, against what anatomy books say of such movements
 * (movement-planes.csv: common practice), and what may take whose place. */
#include "config.h"

#include "sw-balance.h"
#include "sw-catalogue-folder.h"
#include "sw-precautions.h"
#include "sw-swap.h"

#define N_CLIENTS 60

static SwCatalogue *
load (void)
{
  g_autoptr (GError) error = NULL;
  SwCatalogue *catalogue = sw_catalogue_load_shipped (NULL, &error);

  g_assert_no_error (error);
  return catalogue;
}

static void
test_planes (void)
{
  g_autoptr (SwCatalogue) catalogue = load ();
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "movement-planes.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  guint n_checked = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[i], ";", -1);
      SwExercise *exercise = sw_catalogue_lookup (catalogue, fields[0]);

      g_assert_nonnull (exercise);
      if (g_strcmp0 (sw_term_to_nick (SW_TYPE_PLANE, (int) sw_plane_of (exercise)), fields[1]) != 0)
        {
          g_test_message ("%s: %s, not %s", fields[0], sw_term_to_nick (SW_TYPE_PLANE, (int) sw_plane_of (exercise)),
                          fields[1]);
          g_test_fail ();
        }
      n_checked++;
    }
  g_assert_cmpuint (n_checked, >=, 15);
}

/* Each exercise in a programme of clients drawn at random: whatever is offered can be done, is safe as far as the tags say,
 * and does something for the same muscles or is linked. */
static void
test_swaps (void)
{
  g_autoptr (SwCatalogue) catalogue = load ();
  guint n_exercises = g_list_model_get_n_items (G_LIST_MODEL (catalogue));
  guint n_offered = 0;

  for (int client = 0; client < N_CLIENTS; client++)
    {
      g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
      g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
      g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 0);
      guint64 equipment = (guint64) g_test_rand_int () & (SW_SET (sw_term_get_n_values (SW_TYPE_EQUIPMENT)) - 1);
      guint64 positions = SW_SET (g_test_rand_int_range (0, sw_term_get_n_values (SW_TYPE_POSITION)));
      guint64 precautions = SW_SET (g_test_rand_int_range (0, sw_term_get_n_values (SW_TYPE_PRECAUTION)));
      SwSet against = sw_precautions_get_cautions (precautions, SW_FINDING_ASK);

      g_object_set (sw_programme_get_client (programme), "equipment", equipment, "avoided-positions", positions,
                    "precautions", precautions, NULL);
      for (guint i = (guint) client; i < n_exercises; i += 7)
        {
          g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
          const SwExerciseFacts *old = sw_exercise_get_facts (exercise);
          g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, "i");
          g_autoptr (SwSwaps) all = sw_swaps_new (programme, catalogue);
          g_autoptr (GPtrArray) swaps = NULL;

          g_list_store_append (sw_section_get_items (section), item);
          swaps = sw_swaps_find (all, item, SW_SWAP_ANY, G_MAXUINT);
          for (guint j = 0; j < swaps->len; j++)
            {
              const SwSwap *swap = swaps->pdata[j];
              const SwExerciseFacts *facts = sw_exercise_get_facts (swap->exercise);

              g_assert_cmpstr (facts->id, !=, old->id);
              g_assert_true ((facts->cautions & against) == 0);
              g_assert_true ((SW_SET (facts->position) & positions) == 0);
              g_assert_true (equipment == 0
                             || (facts->equipment & ~equipment & ~SW_SET (SW_EQUIPMENT_WALL)) == 0);
              g_assert_true (swap->n_steps != 0
                             || ((facts->muscles & old->muscles) != 0 && (facts->aims & old->aims) != 0));
            }
          n_offered += swaps->len;
          g_list_store_remove_all (sw_section_get_items (section));
        }
    }
  g_assert_cmpuint (n_offered, >, 1000);
}

/* The nearest that the catalogue itself calls easier comes first when nothing speaks against it. */
static void
test_linked_first (void)
{
  g_autoptr (SwCatalogue) catalogue = load ();
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwSwaps) all = sw_swaps_new (programme, catalogue);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
      g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, "i");
      g_autoptr (GPtrArray) swaps = sw_swaps_find (all, item, SW_SWAP_EASIER, 1);

      if (facts->easier == NULL || facts->easier[0] == NULL)
        {
          g_assert_cmpuint (swaps->len, ==, 0);
          continue;
        }
      g_assert_cmpuint (swaps->len, ==, 1);
      g_assert_cmpint (((SwSwap *) swaps->pdata[0])->n_steps, ==, -1);
      g_assert_true (g_strv_contains ((const char *const *) facts->easier,
                                      sw_exercise_get_id (((SwSwap *) swaps->pdata[0])->exercise)));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/movement/planes", test_planes);
  g_test_add_func ("/movement/swaps", test_swaps);
  g_test_add_func ("/movement/linked-first", test_linked_first);
  return g_test_run ();
}
