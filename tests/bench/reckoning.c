/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is reckoned anew at each key stroke for a programme of sixty items: clock, week, readability and findings, with the
 * shipped catalogue and with one of ten thousand, where every finding looks for another exercise. The floor, measured in
 * the same run, is going over the letters of all its texts once. Fails above a frame of processor time, 16 ms. */
#include "config.h"

#include <stdio.h>

#include "sw-catalogue-folder.h"
#include "sw-finding.h"
#include "sw-time.h"
#include "sw-volume.h"
#include "worked.h"

#define N_ITEMS 60
#define N_LARGE 10000
#define N_ROUNDS 12
#define FRAME_MS 16.0
#define TODAY "2026-11-25"

/* As old as can be asked about, with precautions, a limit, little equipment and little time: much to find. */
static SwProgramme *
make_programme (SwCatalogue *catalogue)
{
  SwProgramme *programme = sw_programme_new_standard ();
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 1);
  g_autoptr (SwLimit) knee = sw_limit_new (SW_LIMIT_KIND_RANGE);
  guint n_known = g_list_model_get_n_items (G_LIST_MODEL (catalogue));

  g_object_set (session, "days", (guint64) SW_SET (SW_DAY_MONDAY) | SW_SET (SW_DAY_THURSDAY), NULL);
  g_object_set (sw_programme_get_client (programme), "birth-year", 1950, "minutes", 20, "precautions",
                (guint64) SW_SET (SW_PRECAUTION_HIGH_BLOOD_PRESSURE) | SW_SET (SW_PRECAUTION_FALL_RISK)
                    | SW_SET (SW_PRECAUTION_OSTEOPOROSIS) | SW_SET (SW_PRECAUTION_HIP_REPLACEMENT_BACK),
                "equipment", (guint64) SW_SET (SW_EQUIPMENT_CHAIR), "avoided-positions",
                (guint64) SW_SET (SW_POSITION_ON_BACK), NULL);
  g_object_set (knee, "side", SW_BODY_SIDE_RIGHT, "movement", SW_MOVEMENT_KNEE_BEND, "to-deg", 60.0, NULL);
  g_list_store_append (sw_programme_get_limits (programme), knee);
  for (guint i = 0; i < N_ITEMS; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i * 37 % n_known);
      g_autofree char *id = g_strdup_printf ("i%u", i);
      g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, id);

      g_list_store_append (sw_section_get_items (section), item);
    }

  return programme;
}

/* The shipped exercises again and again under other ids. */
static void
enlarge (SwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) more = g_ptr_array_new_with_free_func (g_object_unref);
  guint n_known = g_list_model_get_n_items (G_LIST_MODEL (catalogue));

  for (guint i = n_known; i < N_LARGE; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i % n_known);
      g_autoptr (GPtrArray) texts = g_ptr_array_new ();
      SwExerciseFacts facts = *sw_exercise_get_facts (exercise);
      g_autofree char *id = g_strdup_printf ("%s-%u", facts.id, i);

      facts.id = id;
      for (guint n = 0; n < sw_exercise_get_n_texts (exercise); n++)
        g_ptr_array_add (texts, (gpointer) sw_exercise_get_nth_text (exercise, n));
      g_ptr_array_add (more, sw_exercise_new (&facts, texts, sw_exercise_get_figure (exercise), NULL));
    }
  sw_catalogue_add (catalogue, more);
}

/* The best of the rounds, and the first: what is known of an exercise is kept with it. */
static double
reckon (SwProgramme *programme,
        SwCatalogue *catalogue,
        guint       *n_findings,
        double      *first_ms)
{
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  double best_ms = 1e9;

  for (int round = 0; round < N_ROUNDS; round++)
    {
      double began = worked_ms ();
      g_autoptr (SwClock) clock = sw_clock_new (session, sw_programme_get_clinic (programme));
      g_autoptr (GArray) volumes = sw_volume_of_week (programme);
      g_autoptr (SwReadabilityReport) reading = sw_readability_report_new_for_programme (programme);
      g_autoptr (GPtrArray) findings = sw_findings_collect_with (programme, catalogue, TODAY, reading);

      *n_findings = findings->len;
      best_ms = MIN (best_ms, worked_ms () - began);
      if (round == 0)
        *first_ms = worked_ms () - began;
    }

  return best_ms;
}

static double
read_once (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  volatile gsize n_letters = 0;
  double began = worked_ms ();

  for (guint i = 0; i < items->len; i++)
    {
      const SwExerciseText *text = sw_exercise_get_nth_text (sw_item_get_exercise (items->pdata[i]), 0);
      char **lists[] = { text->steps, text->form_points, text->errors };

      n_letters += (gsize) g_utf8_strlen (text->purpose, -1) + (gsize) g_utf8_strlen (text->set_up, -1);
      for (guint j = 0; j < G_N_ELEMENTS (lists); j++)
        for (guint k = 0; lists[j][k] != NULL; k++)
          n_letters += (gsize) g_utf8_strlen (lists[j][k], -1);
    }

  return worked_ms () - began;
}

int
main (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (NULL, &error);
  g_autoptr (SwProgramme) programme = NULL;
  double floor_ms;
  double worst_ms = 0.0;

  if (catalogue == NULL)
    {
      fprintf (stderr, "%s\n", error->message);
      return 1;
    }

  programme = make_programme (catalogue);
  floor_ms = read_once (programme);
  for (int large = 0; large < 2; large++)
    {
      guint n_findings;
      double first_ms;
      double ms;

      if (large)
        enlarge (catalogue);
      ms = reckon (programme, catalogue, &n_findings, &first_ms);
      worst_ms = MAX (worst_ms, ms);
      printf ("a key stroke, %d items, %u findings, %u exercises: %.1f ms (the first %.1f), %.2f of a frame, %.0f times "
              "reading its texts once%s\n",
              N_ITEMS, n_findings, g_list_model_get_n_items (G_LIST_MODEL (catalogue)), ms, first_ms, ms / FRAME_MS,
              ms / floor_ms,
              ms > FRAME_MS ? "   DOES NOT HOLD" : "");
    }

  return worst_ms > FRAME_MS;
}
