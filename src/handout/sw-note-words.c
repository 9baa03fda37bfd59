/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the clinic says to this client about an exercise: which of its bands to take, why one side does more and until
 * when, and the therapist's own note. */
#include "config.h"

#include "sw-bands.h"
#include "sw-course.h"
#include "sw-measure-words.h"
#include "sw-note-words.h"

/* The band that pulls as hard as the load asks, by the clinic's mark. */
static void
add_band (GPtrArray    *lines,
          SwPhrases    *phrases,
          SwProgramme  *programme,
          const SwDose *dose)
{
  g_autoptr (GPtrArray) bands = sw_bands_from_text (sw_clinic_get_bands (sw_programme_get_clinic (programme)));
  const SwBand *band;

  if (dose->load.unit != SW_LOAD_NEWTON || bands == NULL)
    return;
  band = sw_bands_find_force (bands, dose->load.value);
  if (band != NULL)
    g_ptr_array_add (lines, sw_phrases_format (phrases, "dose.band", "band", band->name, NULL));
}

/* Both sides as they were measured last, where one has extra sets for that. */
static void
add_sides (GPtrArray   *lines,
           SwPhrases   *phrases,
           SwProgramme *programme,
           SwItem      *item)
{
  SwMeasurement *latest = sw_course_find_latest (programme, sw_item_get_test (item));
  g_autofree char *left = NULL;
  g_autofree char *right = NULL;
  g_autofree char *day = NULL;
  SwMeasure measure;
  SwSymmetry symmetry;

  if (sw_item_get_dose (item)->extra_sets == 0 || latest == NULL || !sw_course_compare (latest, &symmetry))
    return;

  measure = sw_measurement_get_measure (latest);
  left = sw_measure_words (phrases, sw_measurement_get_left (latest), measure);
  right = sw_measure_words (phrases, sw_measurement_get_right (latest), measure);
  g_ptr_array_add (lines, g_strdup (sw_phrases_get (phrases, "dose.until-alike")));
  if (*sw_measurement_get_date (latest) == '\0')
    return;
  day = sw_phrases_date (phrases, sw_measurement_get_date (latest));
  g_ptr_array_add (lines, sw_phrases_format (phrases, "dose.sides-measured", "date", day, "left", left, "right", right,
                                             NULL));
}

/**
 * sw_note_words:
 * @item: an exercise item of the programme
 *
 * Returns: (transfer full): all of it, a line each; "" for nothing
 */
char *
sw_note_words (SwPhrases   *phrases,
               SwProgramme *programme,
               SwItem      *item)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const char *note = sw_item_get_note (item);

  add_band (lines, phrases, programme, sw_item_get_dose (item));
  add_sides (lines, phrases, programme, item);
  if (*note != '\0')
    g_ptr_array_add (lines, g_strdup (note));
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **) lines->pdata);
}
