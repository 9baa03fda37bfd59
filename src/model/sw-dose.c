/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose as a value: neutral values, ranges, equality and the sums that need nothing but the dose. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-dose.h"
#include "sw-units.h"

G_DEFINE_QUARK (sw-dose-error-quark, sw_dose_error)

/* The largest loads of each unit, in the order of SwLoadUnit; see SwLoad. */
static const double max_load[] = { 0.0, 500.0, 1100.0, 5000.0 };

/* By hand, since G_DEFINE_BOXED_TYPE converts to a union in a way ISO C does not know. */
GType
sw_dose_get_type (void)
{
  static gsize type = 0;

  if (g_once_init_enter (&type))
    g_once_init_leave (&type, g_boxed_type_register_static (g_intern_static_string ("SwDose"),
                                                            (GBoxedCopyFunc) sw_dose_copy,
                                                            (GBoxedFreeFunc) sw_dose_free));

  return type;
}

static gboolean
check_range (const char  *what,
             int          value,
             int          low,
             int          high,
             GError     **error)
{
  if (value >= low && value <= high)
    return TRUE;

  g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
               /* Translators: the first %s is a part of the dose, such as "Sets". */
               _("%s must be a whole number from %d to %d, not %d."), what, low, high, value);
  return FALSE;
}

static gboolean
check_tempo (const SwTempo  *tempo,
             GError        **error)
{
  if (!tempo->set)
    return TRUE;

  return check_range (_("Seconds of lowering in the tempo"), tempo->lower_s, 0, 60, error)
         && check_range (_("Seconds of pause at the bottom in the tempo"), tempo->low_pause_s, 0, 60, error)
         && check_range (_("Seconds of lifting in the tempo"), tempo->lift_s, -1, 60, error)
         && check_range (_("Seconds of pause at the top in the tempo"), tempo->top_pause_s, 0, 60, error);
}

static gboolean
check_load (SwLoad   load,
            GError **error)
{
  if ((int) load.unit < SW_LOAD_NONE || load.unit > SW_LOAD_NEWTON)
    {
      g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
                   _("The load must be in kg, lb or N. Choose one of these units."));
      return FALSE;
    }
  if (load.value >= 0.0 && load.value <= max_load[load.unit])
    return TRUE;

  if (load.unit == SW_LOAD_NONE)
    g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
                 _("The load has a number but no unit. Choose kg, lb or N."));
  else
    g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
                 _("The load must be from 0 to %.0f %s, not %g. Enter a smaller load."),
                 max_load[load.unit],
                 load.unit == SW_LOAD_KG ? "kg" : load.unit == SW_LOAD_LB ? "lb" : "N",
                 load.value);
  return FALSE;
}

static gboolean
check_extra (const SwDose  *dose,
             GError       **error)
{
  if (!check_range (_("Extra sets"), dose->extra_sets, 0, 10, error))
    return FALSE;
  if ((dose->extra_sets > 0) == (dose->extra_side != SW_BODY_SIDE_NONE)
      && dose->extra_side <= SW_BODY_SIDE_LEFT)
    return TRUE;

  g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
               dose->extra_sets > 0
               ? _("The extra sets belong to no side. Choose right or left.")
               : _("A side is chosen for extra sets, but there are none. Enter how many, or choose no side."));
  return FALSE;
}

/**
 * sw_dose_init:
 * @dose: (out): a dose to fill
 *
 * Sets the neutral dose: one set of ten, both sides, one direction, on the session's days, once a day, and
 * nothing else asked. These are the values a document leaves out.
 */
void
sw_dose_init (SwDose *dose)
{
  *dose = (SwDose) {
    .sets = 1,
    .reps_low = 10,
    .reps_high = 10,
    .side = SW_SIDE_BOTH,
    .directions = 1,
    .times_a_day = 1,
    .pain_limit = -1,
  };
}

/**
 * sw_dose_copy:
 * @dose: a dose
 *
 * Returns: (transfer full): an equal one
 */
SwDose *
sw_dose_copy (const SwDose *dose)
{
  return g_memdup2 (dose, sizeof *dose);
}

/**
 * sw_dose_free:
 * @dose: (transfer full) (nullable): a dose from sw_dose_copy()
 */
void
sw_dose_free (SwDose *dose)
{
  g_free (dose);
}

static gboolean
tempo_equal (const SwTempo *a,
             const SwTempo *b)
{
  if (!a->set || !b->set)
    return !a->set && !b->set;

  return a->lower_s == b->lower_s && a->low_pause_s == b->low_pause_s
         && a->lift_s == b->lift_s && a->top_pause_s == b->top_pause_s;
}

/* To the thousandth of the unit: finer than any weight at home, and what files and the dose line keep. */
static gboolean
load_equal (SwLoad a,
            SwLoad b)
{
  if (a.unit != b.unit)
    return FALSE;

  return a.unit == SW_LOAD_NONE || llround (a.value * 1000.0) == llround (b.value * 1000.0);
}

/**
 * sw_dose_equal:
 * @a: a dose
 * @b: another
 *
 * Loads count to the thousandth of their unit. Equal weights in different units are not equal: the unit is
 * the therapist's choice.
 *
 * Returns: whether both ask the same
 */
gboolean
sw_dose_equal (const SwDose *a,
               const SwDose *b)
{
  return a->sets == b->sets && a->reps_low == b->reps_low && a->reps_high == b->reps_high
         && a->hold_s == b->hold_s && a->rest_s == b->rest_s && a->side == b->side
         && a->directions == b->directions && a->extra_sets == b->extra_sets
         && a->extra_side == b->extra_side && a->days_a_week == b->days_a_week
         && a->times_a_day == b->times_a_day && a->effort_limit == b->effort_limit
         && a->pain_limit == b->pain_limit && tempo_equal (&a->tempo, &b->tempo)
         && load_equal (a->load, b->load);
}

/**
 * sw_dose_check:
 * @dose: a dose
 * @error: return location for a #SwDoseError
 *
 * Tests all ranges stated at #SwDose. Whether the dose makes sense for its exercise is another matter: see
 * sw_findings_collect().
 *
 * Returns: whether all are kept
 */
gboolean
sw_dose_check (const SwDose  *dose,
               GError       **error)
{
  if (!check_range (_("Sets"), dose->sets, 1, 20, error)
      || !check_range (_("Repetitions"), dose->reps_low, 0, 200, error)
      || !check_range (_("Most repetitions"), dose->reps_high,
                       dose->reps_low, dose->reps_low == 0 ? 0 : 200, error))
    return FALSE;

  if ((int) dose->side < SW_SIDE_BOTH || dose->side > SW_SIDE_ALTERNATING)
    {
      g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
                   _("The side is none of those known. Choose both, each, right, left or alternating."));
      return FALSE;
    }

  return check_range (_("Seconds of hold"), dose->hold_s, 0, 600, error)
         && check_tempo (&dose->tempo, error)
         && check_load (dose->load, error)
         && check_range (_("Seconds of rest"), dose->rest_s, 0, 900, error)
         && check_range (_("Directions"), dose->directions, 1, 8, error)
         && check_extra (dose, error)
         && check_range (_("Days a week"), dose->days_a_week, 0, 7, error)
         && check_range (_("Times a day"), dose->times_a_day, 1, 10, error)
         && check_range (_("The effort limit"), dose->effort_limit, 0, 10, error)
         && check_range (_("The pain limit"), dose->pain_limit, -1, 10, error);
}

/**
 * sw_load_to_kg:
 * @load: a load
 *
 * A force in newtons is given as the mass that weighs as much at standard gravity, 9.80665 m/s2.
 *
 * Returns: kilograms; 0 for no load
 */
double
sw_load_to_kg (SwLoad load)
{
  switch (load.unit)
    {
    case SW_LOAD_KG:
      return load.value;
    case SW_LOAD_LB:
      return sw_kg_from_lb (load.value);
    case SW_LOAD_NEWTON:
      return load.value / SW_STANDARD_GRAVITY_M_PER_S2;
    case SW_LOAD_NONE:
    default:
      return 0.0;
    }
}

/**
 * sw_dose_get_sets_for:
 * @dose: a dose
 * @side: a side of the body, or %SW_BODY_SIDE_NONE for the sets without any extra ones
 *
 * Returns: how many sets @side works, extra sets included; 0 for a side that is left out
 */
int
sw_dose_get_sets_for (const SwDose *dose,
                      SwBodySide    side)
{
  int sets = dose->sets;

  if (side == SW_BODY_SIDE_NONE)
    return sets;
  if ((dose->side == SW_SIDE_RIGHT && side == SW_BODY_SIDE_LEFT)
      || (dose->side == SW_SIDE_LEFT && side == SW_BODY_SIDE_RIGHT))
    sets = 0;

  return sets + (dose->extra_side == side ? dose->extra_sets : 0);
}
