/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks whether the client can be expected to read the handout. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-readability-report.h"

/* Keys change with each whole grade: keeping grade 7 says nothing on grade 9. */
static void
add_reading (SwChecking                *self,
             const SwReadabilityReport *report,
             char                      *key,
             char                      *text)
{
  const SwReadabilitySentence *hardest = report->sentences->pdata[0];
  SwFinding *finding = sw_checking_add (self, SW_FINDING_ASK, hardest->item, key, text,
                                        sw_readability_scale_get_source (report->scale));

  finding->details = sw_readability_report_dup_hardest (report);
  sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _ ("Show where that is"));
}

static void
check_part (SwChecking                *self,
            const SwReadabilityReport *part)
{
  const SwReadabilitySentence *hardest = part->sentences->pdata[0];
  g_autofree char *reading = sw_readability_report_describe (part);
  g_autofree char *name = sw_item_dup_name (hardest->item, NULL);

  add_reading (self, part,
               g_strdup_printf ("reading:%s:%s:%ld", sw_item_get_id (hardest->item), part->scale->name,
                                lround (part->value)),
               /* Translators: an exercise; for example "school grade 7.1 (Flesch-Kincaid); aim: 6 or below" */
               g_strdup_printf (_ ("“%s” is hard to read: %s."), name, reading));
}

/**
 * sw_checking_reading:
 * @self: the checking
 *
 * Adds a finding when the words for the client are harder to read than recommended, else one for each exercise whose
 * words are, with the sentences that make them so.
 */
void
sw_checking_reading (SwChecking *self)
{
  const SwReadabilityReport *report = self->reading;
  g_autoptr (GPtrArray) parts = NULL;

  if (report == NULL)
    return;

  if (sw_readability_report_is_hard (report))
    {
      g_autofree char *reading = sw_readability_report_describe (report);

      add_reading (self, report, g_strdup_printf ("reading:%s:%ld", report->scale->name, lround (report->value)),
                   /* Translators: for example "school grade 7.1 (Flesch-Kincaid); aim: 6 or below" */
                   g_strdup_printf (_ ("The handout is hard to read: %s."), reading));
      return;
    }

  parts = sw_readability_report_split (report);
  for (guint i = 0; i < parts->len; i++)
    if (sw_readability_report_is_hard (parts->pdata[i]))
      check_part (self, parts->pdata[i]);
}
