/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What clinicians answer for in an exercise: its state of review, and the reason for a dose out of the ordinary. */
#include "config.h"

#include "sw-review-xml.h"
#include "sw-xml-values.h"

static const char *const known[] = { "state", "due", NULL };

/**
 * sw_dose_reason_read:
 * @node: the element
 * @facts: takes the reason; owned by the caller
 * @extras: (element-type utf8): takes what a newer version put there
 */
void
sw_dose_reason_read (xmlNode         *node,
                     SwExerciseFacts *facts,
                     GPtrArray       *extras)
{
  g_autofree char *reason = sw_xml_dup_paragraph (node);
  gboolean plain = sw_xml_is_plain (node);

  if (!plain)
    sw_extras_add_node (extras, "dose-reason", node);
  if (!plain || *reason != '\0')
    facts->dose_reason = g_steal_pointer (&reason);
}

/**
 * sw_dose_reason_write:
 * @facts: of an exercise
 * @extras: (array zero-terminated=1): the exercise's
 * @writer: where to
 *
 * Writes nothing when there is no reason.
 */
void
sw_dose_reason_write (const SwExerciseFacts *facts,
                      const char * const    *extras,
                      SwXmlWriter           *writer)
{
  if (sw_extras_has (extras, "dose-reason"))
    sw_extras_write_nodes (extras, "dose-reason", writer);
  else if (facts->dose_reason != NULL)
    sw_xml_writer_text_element (writer, "dose-reason", facts->dose_reason);
}

/**
 * sw_review_read:
 * @node: the element
 * @facts: takes state and day; the day is owned by the caller
 * @extras: (element-type utf8): takes what a newer version put there
 * @error: return location for a #SwXmlError
 *
 * Returns: FALSE when the state is missing or unknown, or the day is none
 */
gboolean
sw_review_read (xmlNode          *node,
                SwExerciseFacts  *facts,
                GPtrArray        *extras,
                GError          **error)
{
  int state;

  if (!sw_xml_read_term (node, "state", SW_TYPE_REVIEW_STATE, SW_NO_FALLBACK, &state, error)
      || !sw_xml_read_date (node, "due", &facts->review_due, error))
    return FALSE;

  facts->has_review = TRUE;
  facts->review = (SwReviewState) state;
  sw_extras_add_attributes (extras, "review", node, known);
  sw_extras_add_children (extras, "review", node);
  return TRUE;
}

/**
 * sw_review_write:
 * @facts: of an exercise
 * @extras: (array zero-terminated=1): the exercise's
 * @writer: where to
 *
 * Writes nothing when nothing is known of a review.
 */
void
sw_review_write (const SwExerciseFacts *facts,
                 const char * const    *extras,
                 SwXmlWriter           *writer)
{
  if (!facts->has_review)
    return;

  sw_xml_writer_open (writer, "review");
  sw_xml_write_term (writer, "state", SW_TYPE_REVIEW_STATE, facts->review);
  sw_xml_write_date (writer, "due", facts->review_due);
  sw_extras_write_attributes (extras, "review", writer);
  sw_extras_write_nodes (extras, "review", writer);
  sw_xml_writer_close (writer);
}
