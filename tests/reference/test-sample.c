/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sample programme: whole, canonical, in step with the catalogue it was made from, and in itself an
 * example of a programme that may be handed over. */
#include "config.h"

#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-finding.h"
#include "sw-programme-xml.h"
#include "sw-time.h"

#define SAMPLE_DAY "2026-11-25"

/* Fails the test and goes on, so that one run names every fault. */
#define complain(...)              \
  G_STMT_START                      \
  {                                 \
    g_test_message (__VA_ARGS__);   \
    g_test_fail ();                 \
  }                                 \
  G_STMT_END

static char *
sample_path (void)
{
  return sw_data_path ("samples", "sample.setwright", NULL);
}

static GBytes *
read_sample (void)
{
  g_autofree char *path = sample_path ();
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (g_steal_pointer (&text), length);
}

static SwProgramme *
load_sample (void)
{
  g_autoptr (GBytes) bytes = read_sample ();
  g_autoptr (GError) error = NULL;
  SwProgramme *programme = sw_programme_from_bytes (bytes, "sample.setwright", &error);

  g_assert_no_error (error);
  return programme;
}

static SwCatalogue *
load_catalogue (void)
{
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GError) error = NULL;
  SwCatalogue *catalogue = sw_catalogue_load_shipped (&problems, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (problems != NULL ? problems->len : 0, ==, 0);
  return catalogue;
}

/* All exercise items of the sample, in order. */
static GPtrArray *
exercise_items (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  GPtrArray *chosen = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        g_ptr_array_add (chosen, g_object_ref (item));
    }

  return chosen;
}

static void
test_schema (void)
{
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  g_autofree char *schema = sw_data_path ("schema", "programme.rng", NULL);
  g_autofree char *path = sample_path ();
  g_autofree char *output = NULL;
  g_autoptr (GError) error = NULL;
  const char *argv[] = { xmllint, "--nonet", "--noout", "--relaxng", schema, path, NULL };
  int status;

  if (xmllint == NULL)
    {
      g_test_skip ("xmllint is not installed");
      return;
    }

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_STDOUT_TO_DEV_NULL, NULL, NULL, NULL, &output, &status, &error);
  g_assert_no_error (error);
  if (!g_spawn_check_wait_status (status, &error))
    complain ("xmllint: %s", output);
}

static void
test_bytes (void)
{
  g_autoptr (GBytes) before = read_sample ();
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (GBytes) after = sw_programme_to_bytes (programme);

  g_assert_cmpmem (g_bytes_get_data (before, NULL), g_bytes_get_size (before),
                   g_bytes_get_data (after, NULL), g_bytes_get_size (after));
}

static void
test_snapshots (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (SwCatalogue) catalogue = load_catalogue ();
  g_autoptr (GPtrArray) items = exercise_items (programme);

  g_assert_cmpuint (items->len, ==, 9);
  for (guint i = 0; i < items->len; i++)
    {
      SwExercise *snapshot = sw_item_get_exercise (g_ptr_array_index (items, i));
      SwExercise *shipped = sw_catalogue_lookup (catalogue, sw_exercise_get_id (snapshot));

      g_assert_nonnull (shipped);
      if (!sw_exercise_equal (snapshot, shipped))
        complain ("%s differs from the catalogue", sw_exercise_get_id (snapshot));
    }
}

static void
test_client (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  SwClient *client = sw_programme_get_client (programme);
  SwSet precautions = sw_client_get_precautions (client);
  g_autoptr (GPtrArray) items = exercise_items (programme);

  /* Two precautions: clearing the lowest bit twice leaves nothing, once leaves something. */
  g_assert_cmpuint (precautions & (precautions - 1), !=, 0);
  precautions &= precautions - 1;
  g_assert_cmpuint (precautions & (precautions - 1), ==, 0);

  for (guint i = 0; i < items->len; i++)
    {
      SwExercise *exercise = sw_item_get_exercise (g_ptr_array_index (items, i));
      const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);

      if ((facts->equipment & ~sw_client_get_equipment (client)) != 0)
        complain ("%s needs what is not at home", facts->id);
    }
}

/* Numbers set aside for drama by the British regulator: 01632 960000 to 960999 (Ofcom, numbers for drama). */
static void
test_nobody_real (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  SwClinic *clinic = sw_programme_get_clinic (programme);

  g_assert_true (g_str_has_prefix (sw_clinic_get_phone (clinic), "01632 960"));
  g_assert_cmpuint (strlen (sw_clinic_get_phone (clinic)), ==, strlen ("01632 960000"));
  g_assert_true (g_str_has_suffix (sw_clinic_get_email (clinic), "@example.org"));
}

/* The side with the lower latest value is the side that gets the extra sets. */
static void
test_weaker_side (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  GListModel *measurements = G_LIST_MODEL (sw_programme_get_measurements (programme));
  g_autoptr (GPtrArray) items = exercise_items (programme);
  guint n_extra = 0;

  g_assert_cmpuint (g_list_model_get_n_items (measurements), >=, 2);
  for (guint i = 0; i < g_list_model_get_n_items (measurements); i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (measurements, i);

      g_assert_cmpfloat (sw_measurement_get_right (measurement), <, sw_measurement_get_left (measurement));
    }

  for (guint i = 0; i < items->len; i++)
    {
      const SwDose *dose = sw_item_get_dose (g_ptr_array_index (items, i));

      if (dose->extra_sets == 0)
        continue;

      g_assert_cmpint (dose->extra_side, ==, SW_BODY_SIDE_RIGHT);
      n_extra++;
    }
  g_assert_cmpuint (n_extra, >=, 1);
}

static void
test_time (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwClock) clock = sw_clock_new (session, sw_programme_get_clinic (programme));
  int minutes = sw_client_get_minutes (sw_programme_get_client (programme));

  g_test_message ("the session takes %.0f to %.0f s", clock->total.low_s, clock->total.high_s);
  g_assert_cmpfloat (clock->total.low_s, >, 0.0);
  g_assert_cmpfloat (clock->total.low_s, <=, minutes * 60.0);
}

/* Every finding that blocks the handout has its reason, and no reason is left over. */
static void
test_findings (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (SwCatalogue) catalogue = load_catalogue ();
  g_autoptr (GPtrArray) findings = sw_findings_collect (programme, catalogue, SAMPLE_DAY);
  guint n_answered = 0;

  for (guint i = 0; i < findings->len; i++)
    {
      SwFinding *finding = g_ptr_array_index (findings, i);

      g_test_message ("%d %s: %s%s", finding->level, finding->key, finding->text,
                      finding->answer != NULL ? " (answered)" : "");
      n_answered += finding->answer != NULL;
    }

  g_assert_cmpuint (sw_findings_count_open (findings, SW_FINDING_STOP), ==, 0);
  g_assert_cmpuint (n_answered, ==, g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_answers (programme))));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/sample/schema", test_schema);
  g_test_add_func ("/sample/bytes", test_bytes);
  g_test_add_func ("/sample/snapshots", test_snapshots);
  g_test_add_func ("/sample/client", test_client);
  g_test_add_func ("/sample/nobody-real", test_nobody_real);
  g_test_add_func ("/sample/weaker-side", test_weaker_side);
  g_test_add_func ("/sample/time", test_time);
  g_test_add_func ("/sample/findings", test_findings);

  return g_test_run ();
}
