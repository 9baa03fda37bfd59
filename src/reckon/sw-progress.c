/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From the diary to a proposal: the latest days on which the exercise was asked for as it is asked for now are held
 * against the rules. Easing comes before any step up, and without days nothing is proposed. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-dose-range.h"
#include "sw-progress.h"

/* Pain up to this needs no question about the next morning (common practice). */
#define SAFE_PAIN 2

/* A day of the diary, of all that was written for it the worst.
 * @pain: most pain during or after; SW_DIARY_NOT_STATED where that is not known
 * @worse_by: how many points more pain after than before; SW_DIARY_NOT_STATED likewise
 * @sets: fewest sets, @repetitions: fewest in a last set; likewise
 * @effort: greatest */
typedef struct
{
  const char *date;
  int pain;
  int worse_by;
  SwSettled settled;
  gboolean control_lost;
  int sets;
  int repetitions;
  gboolean repetitions_stated;
  int effort;
} Day;

/* What is looked at. */
typedef struct
{
  SwProgression *progression;
  SwItem *item;
  const SwDose *dose;
  GPtrArray *entries; /* SwDiaryEntry, the first day first */
  GArray *days;       /* Day, the latest first, no more than count */
  const char *unlike; /* a dose line that was found to be another amount; most come many times in a row */
} Search;

/* Whether what was asked for is what is asked for now; limits, rests and how often in the week may have changed. */
static gboolean
is_same_amount (const SwDose *a,
                const SwDose *b)
{
  return a->sets == b->sets && a->reps_low == b->reps_low && a->reps_high == b->reps_high && a->hold_s == b->hold_s
         && a->directions == b->directions && a->side == b->side && a->extra_sets == b->extra_sets
         && a->tempo.set == b->tempo.set
         && fabs (sw_load_to_kg (a->load) - sw_load_to_kg (b->load)) < 1e-6;
}

static gboolean
is_of_now (Search       *self,
           SwDiaryEntry *entry,
           const char   *dose_line)
{
  const char *line = sw_diary_entry_get_dose_line (entry);
  SwDose then;

  if (strcmp (sw_diary_entry_get_item (entry), sw_item_get_id (self->item)) != 0
      || *sw_diary_entry_get_date (entry) == '\0'
      || strcmp (sw_diary_entry_get_exercise (entry), sw_exercise_get_id (sw_item_get_exercise (self->item))) != 0)
    return FALSE;

  if (strcmp (line, dose_line) == 0)
    return TRUE;
  if (g_strcmp0 (line, self->unlike) == 0)
    return FALSE;
  if (sw_dose_from_line (line, self->dose, &then, NULL) && is_same_amount (&then, self->dose))
    return TRUE;

  self->unlike = line;
  return FALSE;
}

static int
compare_dates (gconstpointer a,
               gconstpointer b)
{
  return strcmp (sw_diary_entry_get_date (*(SwDiaryEntry * const *) a),
                 sw_diary_entry_get_date (*(SwDiaryEntry * const *) b));
}

static int
get_pain (SwDiaryEntry *entry)
{
  return MAX (sw_diary_entry_get_pain_during (entry), sw_diary_entry_get_pain_after (entry));
}

static void
add_to_day (Day          *day,
            SwDiaryEntry *entry)
{
  int before = sw_diary_entry_get_pain_before (entry);
  int after = sw_diary_entry_get_pain_after (entry);
  int sets = sw_diary_entry_get_sets (entry);
  int repetitions = sw_diary_entry_get_repetitions (entry);

  day->pain = MAX (day->pain, get_pain (entry));
  if (before != SW_DIARY_NOT_STATED && after != SW_DIARY_NOT_STATED)
    day->worse_by = MAX (day->worse_by, after - before);
  if (sw_diary_entry_get_settled (entry) != SW_SETTLED_UNKNOWN && day->settled != SW_SETTLED_NO)
    day->settled = sw_diary_entry_get_settled (entry);
  day->control_lost = day->control_lost || sw_diary_entry_get_control_lost (entry);
  if (sets != SW_DIARY_NOT_STATED)
    day->sets = day->sets == SW_DIARY_NOT_STATED ? sets : MIN (day->sets, sets);
  day->repetitions_stated = day->repetitions_stated && repetitions != SW_DIARY_NOT_STATED;
  day->repetitions = MIN (day->repetitions, repetitions);
  day->effort = MAX (day->effort, sw_diary_entry_get_effort (entry));
}

static void
collect_days (Search      *self,
              SwProgramme *programme)
{
  GListModel *diary = G_LIST_MODEL (sw_programme_get_diary (programme));
  guint n_most = (guint) sw_progression_get_number (self->progression, "sessions");
  g_autofree char *dose_line = sw_dose_to_line (self->dose);

  for (guint i = 0; i < g_list_model_get_n_items (diary); i++)
    {
      g_autoptr (SwDiaryEntry) entry = g_list_model_get_item (diary, i);

      if (is_of_now (self, entry, dose_line))
        g_ptr_array_add (self->entries, g_steal_pointer (&entry));
    }
  g_ptr_array_sort (self->entries, compare_dates);

  for (guint i = self->entries->len; i-- > 0;)
    {
      SwDiaryEntry *entry = self->entries->pdata[i];
      Day *last = self->days->len > 0 ? &g_array_index (self->days, Day, self->days->len - 1) : NULL;
      Day new_day = { .date = sw_diary_entry_get_date (entry), .pain = SW_DIARY_NOT_STATED,
                      .worse_by = SW_DIARY_NOT_STATED, .sets = SW_DIARY_NOT_STATED, .repetitions = G_MAXINT,
                      .repetitions_stated = TRUE, .effort = SW_DIARY_NOT_STATED };

      if (last == NULL || strcmp (last->date, new_day.date) != 0)
        {
          if (self->days->len == n_most)
            break;
          g_array_append_val (self->days, new_day);
          last = &g_array_index (self->days, Day, self->days->len - 1);
        }
      add_to_day (last, entry);
    }
}

/* The lesser of what the dose and what the rule allows. */
static int
get_pain_limit (Search *self)
{
  int limit = sw_progression_get_number (self->progression, "pain-limit");

  return self->dose->pain_limit >= 0 ? MIN (limit, self->dose->pain_limit) : limit;
}

static gboolean
does_ease (Search             *self,
           SwProgressRuleKind  kind,
           const Day          *day)
{
  switch (kind)
    {
    case SW_PROGRESS_RULE_PAIN:
      return day->pain > get_pain_limit (self);
    case SW_PROGRESS_RULE_UNSETTLED:
      return day->settled == SW_SETTLED_NO;
    case SW_PROGRESS_RULE_CONTROL:
      return day->control_lost;
    case SW_PROGRESS_RULE_WORSE:
      return day->worse_by >= sw_progression_get_number (self->progression, "worse-by");
    case SW_PROGRESS_RULE_MORE:
    case SW_PROGRESS_RULE_FIRST_WEEKS:
    case SW_PROGRESS_RULE_PLANNED_STEP:
    case SW_PROGRESS_RULE_LAST_WEEKS:
    default:
      return FALSE;
    }
}

/* Whether more than was asked was done, and nothing speaks against a step. A day of which the pain is not known decides
 * nothing. */
static gboolean
did_more (Search    *self,
          const Day *day)
{
  int asked = self->dose->reps_high + sw_progression_get_number (self->progression, "extra-repetitions");

  return day->repetitions_stated && day->repetitions >= asked
         && (day->sets == SW_DIARY_NOT_STATED || day->sets >= self->dose->sets)
         && day->pain != SW_DIARY_NOT_STATED
         && (day->pain <= SAFE_PAIN || day->settled == SW_SETTLED_YES)
         && (self->dose->effort_limit == 0 || day->effort <= self->dose->effort_limit);
}

static char *
dup_easing_reason (Search             *self,
                   SwProgressRuleKind  kind,
                   const Day          *day)
{
  switch (kind)
    {
    case SW_PROGRESS_RULE_PAIN:
      /* Translators: a date, then two numbers on the scale from 0 to 10. */
      return g_strdup_printf (_("on %s pain was %d of 10, and the limit is %d"), day->date, day->pain,
                              get_pain_limit (self));
    case SW_PROGRESS_RULE_UNSETTLED:
      return g_strdup_printf (_("the pain of %s was not settled by the next morning"), day->date);
    case SW_PROGRESS_RULE_WORSE:
      return g_strdup_printf (ngettext ("on %s pain was %d point more after than before",
                                        "on %s pain was %d points more after than before", (unsigned long) day->worse_by),
                              day->date, day->worse_by);
    case SW_PROGRESS_RULE_CONTROL:
    case SW_PROGRESS_RULE_MORE:
    case SW_PROGRESS_RULE_FIRST_WEEKS:
    case SW_PROGRESS_RULE_PLANNED_STEP:
    case SW_PROGRESS_RULE_LAST_WEEKS:
    default:
      return g_strdup_printf (_("on %s control was lost"), day->date);
    }
}

static SwProgress *
progress_new (Search             *self,
              SwProgressRuleKind  kind,
              const Day          *day,
              char               *reason)
{
  SwProgress *progress = g_new0 (SwProgress, 1);
  g_autofree char *when = NULL;

  progress->rule = sw_progress_rule_get (kind);
  progress->eases = kind < SW_PROGRESS_RULE_FIRST_STEP;
  progress->date = g_strdup (day->date);
  progress->reason = reason;
  progress->working = sw_working_new ();
  progress->dose = *self->dose;
  when = sw_progress_rule_dup_when (progress->rule, self->progression);
  sw_working_add (progress->working, when, _(progress->rule->source), "%s", reason);
  return progress;
}

/* The rule that counts first, and of its days the latest. */
static SwProgress *
find_easing (Search *self)
{
  for (int kind = 0; kind < SW_PROGRESS_RULE_FIRST_STEP; kind++)
    {
      for (guint i = 0; i < self->days->len; i++)
        {
          const Day *day = &g_array_index (self->days, Day, i);

          if (does_ease (self, (SwProgressRuleKind) kind, day))
            return progress_new (self, (SwProgressRuleKind) kind, day,
                                 dup_easing_reason (self, (SwProgressRuleKind) kind, day));
        }
    }

  return NULL;
}

static SwProgress *
find_step (Search *self)
{
  guint n_asked = (guint) sw_progression_get_number (self->progression, "sessions");
  g_autoptr (GString) done = g_string_new (NULL);

  if (!sw_progression_get_steps_up (self->progression) || self->days->len < n_asked || self->dose->reps_high == 0
      || self->dose->hold_s >= SW_DOSE_RANGE_HELD_S)
    return NULL;

  for (guint i = n_asked; i-- > 0;)
    {
      const Day *day = &g_array_index (self->days, Day, i);

      if (!did_more (self, day))
        return NULL;
      g_string_append_printf (done, "%s%d", done->len > 0 ? ", " : "", day->repetitions);
    }

  return progress_new (self, SW_PROGRESS_RULE_MORE, &g_array_index (self->days, Day, 0),
                       /* Translators: repetitions, then a list of repetitions such as "14, 15". */
                       g_strdup_printf (_("asked for were %d repetitions, and done in the last set %s"),
                                        self->dose->reps_high, done->str));
}

/**
 * sw_progress_suggest:
 * @programme: a programme
 * @item: an item of the programme
 *
 * Holds the latest days of the diary on which the item had its present exercise and amount, as many as "sessions" says,
 * against the rules; several entries of a day count as one, the worst. Any of them eases; a step up needs all of them to
 * have done more than was asked, with pain stated. Sources: those of sw_progress_rule_get().
 *
 * Returns: (transfer full) (nullable): a proposal, or NULL: no diary, or nothing that a rule speaks of
 */
SwProgress *
sw_progress_suggest (SwProgramme *programme,
                     SwItem      *item)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GArray) days = g_array_new (FALSE, FALSE, sizeof (Day));
  g_auto (SwDoseBounds) bounds = { 0 };
  Search search = { .item = item, .entries = entries, .days = days };
  SwProgress *progress;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);
  g_return_val_if_fail (SW_IS_ITEM (item), NULL);

  /* Most programmes have no diary yet, and are checked at every key stroke. */
  if (sw_item_get_kind (item) != SW_ITEM_EXERCISE || sw_item_get_exercise (item) == NULL
      || g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_diary (programme))) == 0)
    return NULL;

  search.progression = sw_programme_get_progression (programme);
  search.dose = sw_item_get_dose (item);
  collect_days (&search, programme);
  progress = find_easing (&search);
  if (progress == NULL)
    progress = find_step (&search);
  if (progress == NULL)
    return NULL;

  sw_dose_bounds_init (&bounds, programme, item);
  if (progress->eases)
    progress->change = sw_dose_step_down (search.dose, &bounds, search.progression,
                                          progress->rule->kind == SW_PROGRESS_RULE_CONTROL, &progress->dose,
                                          progress->working);
  else
    progress->change = sw_dose_step_up (search.dose, &bounds, search.progression, &progress->dose, progress->working);
  return progress;
}

/**
 * sw_progress_find_exercise:
 * @self: a proposal
 * @swaps: where easier and harder exercises are looked for
 * @item: the item it is for
 *
 * Names an easier exercise wherever there is one, a harder one where no step of the dose is left.
 */
void
sw_progress_find_exercise (SwProgress *self,
                           SwSwaps    *swaps,
                           SwItem     *item)
{
  g_autoptr (GPtrArray) found = NULL;

  g_return_if_fail (self != NULL && swaps != NULL);

  if (!self->eases && self->change != SW_DOSE_CHANGE_NONE)
    return;

  found = sw_swaps_find (swaps, item, self->eases ? SW_SWAP_EASIER : SW_SWAP_HARDER, 1);
  if (found->len > 0)
    g_set_object (&self->exercise, ((SwSwap *) found->pdata[0])->exercise);
}

/**
 * sw_progress_free:
 * @self: (transfer full): a proposal
 */
void
sw_progress_free (SwProgress *self)
{
  g_free (self->date);
  g_free (self->reason);
  g_clear_object (&self->exercise);
  sw_working_unref (self->working);
  g_free (self);
}
