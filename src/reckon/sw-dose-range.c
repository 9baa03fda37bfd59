/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The usual doses of the catalogue against what is published for their aims. Only aims for which a number is published
 * are looked at: for mobility, control, balance and relaxation none is known for a single exercise. A dose for several
 * aims is good when it suits one of them. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-dose-range.h"

typedef struct
{
  int low;
  int high;
} Range;

/* ACSM position stand on progression in resistance training, Med Sci Sports Exerc 2009;41:687-708: 1 to 3 sets of 8 to
 * 12 for novices, rest of 60 to 120 s and, with heavier loads, up to 180 s. Those middle-aged and older start with 10 to
 * 15: ACSM position stand, Med Sci Sports Exerc 2011;43:1334-1359. */
static const Range strength_sets = { 1, 3 };
static const Range strength_reps = { 8, 15 };
static const Range strength_rest_s = { 60, 180 };

/* The same of 2009: 2 to 4 sets of 10 to 25, rest of 30 to 60 s. */
static const Range endurance_sets = { 2, 4 };
static const Range endurance_reps = { 10, 25 };
static const Range endurance_rest_s = { 30, 60 };

/* ACSM position stand 2011: stretches of 10 to 30 s, for older adults 30 to 60 s, 2 to 4 times and 60 s altogether. */
static const Range stretch_hold_s = { 10, 60 };
static const Range stretch_times = { 2, 4 };
#define STRETCH_TOTAL_S 60

/* The same: up to 30 s for adults; older ones are given more by who knows them. */
#define STRETCH_GROWN_HOLD_S 30

static const char acsm_2009[] = "ACSM, Med Sci Sports Exerc 2009;41:687-708";
static const char acsm_2011[] = "ACSM, Med Sci Sports Exerc 2011;43:1334-1359";

static void
add (GString    *faults,
     const char *fault)
{
  g_string_append_printf (faults, "%s%s", faults->len > 0 ? "; " : "", fault);
}

static void
compare (GString    *faults,
         int         low,
         int         high,
         Range       range,
         const char *format)
{
  g_autoptr (GString) fault = NULL;
  g_autofree char *is = NULL;
  g_autofree char *should = NULL;

  if (low >= range.low && high <= range.high)
    return;

  is = low == high ? g_strdup_printf ("%d", low) : g_strdup_printf ("%d-%d", low, high);
  should = g_strdup_printf ("%d-%d", range.low, range.high);
  fault = g_string_new (format);
  g_string_replace (fault, "{is}", is, 1);
  g_string_replace (fault, "{range}", should, 1);
  add (faults, fault->str);
}

static char *
find_in_sets (const SwDose *dose,
              Range         sets,
              Range         reps,
              Range         rest_s)
{
  GString *faults = g_string_new (NULL);

  compare (faults, dose->sets, dose->sets, sets, _("sets {is}, not {range}"));
  if (dose->reps_low > 0 && dose->hold_s < SW_DOSE_RANGE_HELD_S)
    compare (faults, dose->reps_low, dose->reps_high, reps, _("repetitions {is}, not {range}"));
  if (dose->sets > 1)
    compare (faults, dose->rest_s, dose->rest_s, rest_s, _("rest {is} s, not {range} s"));

  return g_string_free (faults, FALSE);
}

static char *
find_in_stretch (const SwDose *dose)
{
  GString *faults = g_string_new (NULL);
  int times = dose->sets * MAX (dose->reps_high, 1);

  compare (faults, dose->hold_s, dose->hold_s, stretch_hold_s, _("held for {is} s, not {range} s"));
  compare (faults, times, times, stretch_times, _("{is} times, not {range} times"));
  if (times * dose->hold_s < STRETCH_TOTAL_S)
    compare (faults, times * dose->hold_s, times * dose->hold_s, (Range) { STRETCH_TOTAL_S, STRETCH_TOTAL_S },
             _("{is} s altogether, not 60 s"));

  return g_string_free (faults, FALSE);
}

/* A stretch that is also for mobility may be a movement, and nothing is published of how long that is held. */
static gboolean
is_movement (const SwDose *dose,
             SwSet         aims)
{
  return (aims & SW_SET (SW_AIM_MOBILITY)) != 0 && dose->reps_low > 0 && dose->hold_s < SW_DOSE_RANGE_HELD_S;
}

/**
 * sw_dose_range_get_most:
 * @aims: set of #SwAim of an exercise
 *
 * Strength: 3 sets of 15; endurance: 4 sets of 25 (ACSM, Med Sci Sports Exerc 2009;41:687-708 and 2011;43:1334-1359);
 * stretches: 30 s (ACSM 2011). Of several aims the one that allows most.
 *
 * Returns: how far a dose may grow, sets, repetitions and seconds
 */
SwDoseMost
sw_dose_range_get_most (SwSet aims)
{
  SwDoseMost most = { .source = acsm_2009, .hold_source = acsm_2011 };

  if ((aims & SW_SET (SW_AIM_STRENGTH)) != 0)
    {
      most.sets = strength_sets.high;
      most.repetitions = strength_reps.high;
    }
  if ((aims & SW_SET (SW_AIM_ENDURANCE)) != 0)
    {
      most.sets = MAX (most.sets, endurance_sets.high);
      most.repetitions = MAX (most.repetitions, endurance_reps.high);
    }
  if ((aims & SW_SET (SW_AIM_STRETCH)) != 0)
    most.hold_s = STRETCH_GROWN_HOLD_S;

  return most;
}

/**
 * sw_dose_range_find_fault:
 * @dose: the usual dose of an exercise
 * @aims: set of #SwAim it is for
 *
 * Returns: (transfer full) (nullable): what leaves the published ranges, with their source; NULL when nothing does, or
 *   when nothing is published for these aims
 */
char *
sw_dose_range_find_fault (const SwDose *dose,
                          SwSet         aims)
{
  g_autofree char *strength = NULL;
  g_autofree char *endurance = NULL;
  g_autofree char *stretch = NULL;

  if ((aims & SW_SET (SW_AIM_STRENGTH)) != 0)
    strength = find_in_sets (dose, strength_sets, strength_reps, strength_rest_s);
  if ((aims & SW_SET (SW_AIM_ENDURANCE)) != 0)
    endurance = find_in_sets (dose, endurance_sets, endurance_reps, endurance_rest_s);
  if ((aims & SW_SET (SW_AIM_STRETCH)) != 0)
    stretch = is_movement (dose, aims) ? g_strdup ("") : find_in_stretch (dose);

  if (g_strcmp0 (strength, "") == 0 || g_strcmp0 (endurance, "") == 0 || g_strcmp0 (stretch, "") == 0)
    return NULL;
  /* Translators: %s is what is wrong ("rest 10 s, not 60-180 s") and then the source of the numbers */
  if (strength != NULL)
    return g_strdup_printf (_("for strength: %s (%s)"), strength, acsm_2009);
  if (endurance != NULL)
    return g_strdup_printf (_("for endurance: %s (%s)"), endurance, acsm_2009);
  if (stretch != NULL)
    return g_strdup_printf (_("for a stretch: %s (%s)"), stretch, acsm_2011);

  return NULL;
}
