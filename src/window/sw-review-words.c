/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far an exercise has come with the clinicians who answer for it, in words for the therapist. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-labels.h"
#include "sw-review-words.h"

/**
 * sw_review_tag:
 * @facts: of an exercise
 *
 * Returns: (transfer none) (nullable): one word for a card, "Draft"; NULL where there is nothing to point out,
 *   because it is approved or nothing is known
 */
const char *
sw_review_tag (const SwExerciseFacts *facts)
{
  if (!facts->has_review || facts->review == SW_REVIEW_STATE_APPROVED)
    return NULL;

  return sw_label (SW_TYPE_REVIEW_STATE, (int) facts->review);
}

/* The day as the therapist's language writes it; NULL when none is set. */
static char *
dup_due (const SwExerciseFacts *facts)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autofree char *stamp = g_strconcat (facts->review_due, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) day = *facts->review_due != '\0' ? g_date_time_new_from_iso8601 (stamp, zone) : NULL;

  /* Translators: a day as g_date_time_format() writes it: "31 May 2027" */
  return day != NULL ? g_date_time_format (day, _("%-d %B %Y")) : NULL;
}

/**
 * sw_review_sentence:
 * @facts: of an exercise
 *
 * Returns: (transfer full) (nullable): its state of review with the day, or NULL when nothing is known
 */
char *
sw_review_sentence (const SwExerciseFacts *facts)
{
  static const char *const with_day[] = {
    [SW_REVIEW_STATE_DRAFT] = N_("Draft, to be reviewed by a clinician by %s"),
    [SW_REVIEW_STATE_IN_REVIEW] = N_("In review by a clinician, to be done by %s"),
    [SW_REVIEW_STATE_APPROVED] = N_("Approved by a clinician, to be reviewed again by %s"),
    [SW_REVIEW_STATE_RETIRED] = N_("Retired: no longer recommended, to be reviewed again by %s"),
  };
  static const char *const without_day[] = {
    [SW_REVIEW_STATE_DRAFT] = N_("Draft, not yet reviewed by a clinician"),
    [SW_REVIEW_STATE_IN_REVIEW] = N_("In review by a clinician"),
    [SW_REVIEW_STATE_APPROVED] = N_("Approved by a clinician"),
    [SW_REVIEW_STATE_RETIRED] = N_("Retired: no longer recommended"),
  };
  g_autofree char *due = NULL;
  g_autoptr (GString) sentence = NULL;

  if (!facts->has_review)
    return NULL;

  due = dup_due (facts);
  if (due == NULL)
    return g_strdup (_(without_day[facts->review]));

  sentence = g_string_new (_(with_day[facts->review]));
  g_string_replace (sentence, "%s", due, 1);
  return g_string_free (g_steal_pointer (&sentence), FALSE);
}
