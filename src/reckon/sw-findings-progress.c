/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the diary of an exercise item proposes, as a finding with the dose for one press. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-progress.h"

/* The steps of the working, a line each. */
static GStrv
dup_details (const SwWorking *working)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 1; i < sw_working_get_n_lines (working); i++)
    {
      const SwWorkingLine *line = sw_working_get_line (working, i);
      g_autofree char *text = g_strdup_printf ("%s: %s", line->words, line->figures);

      g_strv_builder_add (lines, text);
    }

  return g_strv_builder_end (lines);
}

static void
set_fix (SwFinding        *finding,
         const SwProgress *progress)
{
  g_autofree char *words = sw_dose_change_dup_words (progress->change, &progress->dose);
  g_autofree char *label = NULL;

  finding->fix_exercise = progress->exercise != NULL ? g_object_ref (progress->exercise) : NULL;
  if (progress->change != SW_DOSE_CHANGE_NONE)
    {
      /* Translators: %s is what the dose becomes, such as "2.5 kg" or "14 repetitions". */
      label = g_strdup_printf (progress->eases ? _("Ease: %s") : _("Take the next step: %s"), words);
      finding->fix_dose = progress->dose;
      sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
    }
  else if (progress->exercise != NULL)
    {
      label = g_strdup_printf (_("Swap for “%s”"), sw_exercise_get_text (progress->exercise, NULL)->name);
      sw_checking_fix (finding, SW_FIX_SWAP_EXERCISE, label);
    }
  else if (progress->eases)
    sw_checking_fix (finding, SW_FIX_REMOVE_ITEM, _("Remove it"));
  else
    sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _("Show the dose"));
}

/**
 * sw_checking_progress:
 * @self: the checking
 * @item: an exercise item of the programme
 *
 * Adds what its diary proposes, if anything. The day and the dose are in the key: an answer does not cover another day.
 */
void
sw_checking_progress (SwChecking *self,
                      SwItem     *item)
{
  g_autoptr (SwProgress) progress = sw_progress_suggest (self->programme, item);
  g_autofree char *name = NULL;
  g_autofree char *line = NULL;
  g_autofree char *why = NULL;
  g_autofree char *when = NULL;
  SwFinding *finding;

  if (progress == NULL)
    return;

  if (self->catalogue != NULL && self->swaps == NULL)
    self->swaps = sw_swaps_new (self->programme, self->catalogue);
  if (self->swaps != NULL)
    sw_progress_find_exercise (progress, self->swaps, item);
  name = sw_item_dup_name (item, NULL);
  line = sw_dose_to_line (sw_item_get_dose (item));
  when = sw_progress_rule_dup_when (progress->rule, sw_programme_get_progression (self->programme));
  /* Translators: a rule ("Pain over 5 of 10 ..."), then its source. */
  why = g_strdup_printf (_("The rule: %s (%s). It is a proposal; you decide."), when, _(progress->rule->source));
  finding = sw_checking_add (self, progress->eases ? SW_FINDING_ASK : SW_FINDING_TELL, item,
                             g_strdup_printf ("progress:%s:%s:%s:%s",
                                              sw_term_to_nick (SW_TYPE_PROGRESS_RULE_KIND, (int) progress->rule->kind),
                                              sw_item_get_id (item), progress->date, line),
                             /* Translators: an exercise, then what the diary says. */
                             g_strdup_printf (_("“%s”: %s."), name, progress->reason), why);
  finding->details = dup_details (progress->working);
  set_fix (finding, progress);
}
