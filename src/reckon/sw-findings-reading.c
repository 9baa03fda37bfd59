/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks whether the client can be expected to read the handout. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-readability-report.h"

/**
 * sw_checking_reading:
 * @self: the checking
 *
 * Adds a finding when the words for the client are harder to read than recommended, with the sentences that make
 * them so. Its key changes with each whole grade: keeping grade 7 says nothing on grade 9.
 */
void
sw_checking_reading (SwChecking *self)
{
  g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_programme (self->programme);
  g_autofree char *reading = NULL;
  const SwReadabilitySentence *hardest;
  SwFinding *finding;

  if (report == NULL || !sw_readability_report_is_hard (report))
    return;

  reading = sw_readability_report_describe (report);
  hardest = report->sentences->pdata[0];
  finding = sw_checking_add (self, SW_FINDING_ASK, hardest->item,
                             g_strdup_printf ("reading:%s:%ld", report->scale->name, lround (report->value)),
                             /* Translators: for example "school grade 7.1 (Flesch-Kincaid); aim: 6 or below" */
                             g_strdup_printf (_ ("The handout is hard to read: %s."), reading),
                             sw_readability_scale_get_source (report->scale));
  finding->details = sw_readability_report_dup_hardest (report);
  sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _ ("Show the hardest sentence"));
}
