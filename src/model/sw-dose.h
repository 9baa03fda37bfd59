/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

typedef enum
{
  SW_LOAD_NONE,
  SW_LOAD_KG,
  SW_LOAD_LB,
  SW_LOAD_NEWTON,
} SwLoadUnit;

/**
 * SwLoad:
 * @unit: what @value is counted in; %SW_LOAD_NONE means no added load, and then @value is 0
 * @value: 0..500 kg, 0..1100 lb or 0..5000 N
 *
 * An added load, kept in the unit the therapist chose so that nothing is lost in conversion.
 */
typedef struct
{
  SwLoadUnit unit;
  double value;
} SwLoad;

/**
 * SwTempo:
 * @set: whether a tempo is asked for at all
 * @lower_s: seconds of the lowering phase, 0..60
 * @low_pause_s: seconds of the pause at the bottom, 0..60
 * @lift_s: seconds of the lifting phase, 0..60; -1 means "as fast as possible", written X
 * @top_pause_s: seconds of the pause at the top, 0..60
 *
 * The four-digit notation lowering - pause - lifting - pause (common practice; the first digit is
 * always the lowering). Three digits leave out the last pause.
 */
typedef struct
{
  gboolean set;
  int lower_s;
  int low_pause_s;
  int lift_s;
  int top_pause_s;
} SwTempo;

/**
 * SwDose:
 * @sets: rounds of the exercise, 1..20
 * @reps_low: fewest repetitions in a round, 0..200; 0 means "hold only"
 * @reps_high: most repetitions, @reps_low..200; equal to @reps_low unless a range is asked for
 * @hold_s: seconds each repetition (or the hold, without repetitions) is held, 0..600
 * @tempo: how fast each repetition is done
 * @load: added load
 * @rest_s: seconds of rest between rounds, 0..900
 * @side: how the sides share the work
 * @directions: how many directions each round is done in, 1..8
 * @extra_sets: rounds more for @extra_side, 0..10
 * @extra_side: the side that gets them; none exactly when @extra_sets is 0
 * @days_a_week: 1..7, or 0 for "on the session's days"
 * @times_a_day: 1..10
 * @effort_limit: most effort on the 0-10 scale, 1..10, or 0 for none stated
 * @pain_limit: most pain on the 0-10 scale, 0..10, or -1 for none stated
 *
 * What the client is asked to do. A plain value: copy it freely. The ranges are those of `dose` in the
 * document schema; sw_dose_check() tests them.
 */
typedef struct
{
  int sets;
  int reps_low;
  int reps_high;
  int hold_s;
  SwTempo tempo;
  SwLoad load;
  int rest_s;
  SwSide side;
  int directions;
  int extra_sets;
  SwBodySide extra_side;
  int days_a_week;
  int times_a_day;
  int effort_limit;
  int pain_limit;
} SwDose;

#define SW_TYPE_DOSE (sw_dose_get_type ())
GType sw_dose_get_type (void);

#define SW_DOSE_ERROR (sw_dose_error_quark ())

typedef enum
{
  SW_DOSE_ERROR_RANGE,
  SW_DOSE_ERROR_SYNTAX,
} SwDoseError;

GQuark sw_dose_error_quark (void);

void sw_dose_init (SwDose *dose);
SwDose *sw_dose_copy (const SwDose *dose);
void sw_dose_free (SwDose *dose);
gboolean sw_dose_equal (const SwDose *a,
                        const SwDose *b);
gboolean sw_dose_check (const SwDose  *dose,
                        GError       **error);
double sw_load_to_kg (SwLoad load);
int sw_dose_get_sets_for (const SwDose *dose,
                          SwBodySide    side);

/* The line a therapist writes: "3 x 12, hold 5 s, 2 kg, each side, rest 60 s". See sw-dose-line.c. */
char *sw_dose_to_line (const SwDose *dose);
gboolean sw_dose_from_line (const char    *line,
                            const SwDose  *defaults,
                            SwDose        *dose,
                            GError       **error);
char *sw_tempo_to_string (const SwTempo *tempo);
gboolean sw_tempo_from_string (const char *text,
                               SwTempo    *tempo);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDose, sw_dose_free)

G_END_DECLS
