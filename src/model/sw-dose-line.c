/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose line: how a therapist writes a dose, "3 x 12, hold 5 s, 2 kg, each side, rest 60 s".
 *
 * The line states the whole dose. A part it does not mention has its neutral value, see sw_dose_init(); sets
 * and repetitions, which have none worth the name, come from the defaults handed in, and are always
 * written. So each valid dose that asks for repetitions or a hold comes back from its own line unchanged.
 *
 * Written are, in this order and with commas between:
 *
 *     3 x 12 | 3 x 8-12 | 3 x hold 30 s     sets and repetitions, or sets of one hold
 *     hold 5 s                              with repetitions
 *     tempo 2-0-2-0                         lowering, pause, lifting (X: as fast as possible), pause
 *     2.5 kg | 5 lb | 20 N
 *     each side | right | left | alternating
 *     2 directions
 *     +1 set left
 *     rest 60 s
 *     5 days a week
 *     2 times a day
 *     effort 6
 *     pain 3
 *
 * Read is much more, see sw-dose-line-read.c. */
#include "config.h"

#include "sw-dose.h"
#include "sw-units.h"

/**
 * sw_tempo_to_string:
 * @tempo: a tempo
 *
 * Returns: (transfer full): four numbers such as "2-0-2-0", X for a lift as fast as possible; "" when no
 *   tempo is set
 */
char *
sw_tempo_to_string (const SwTempo *tempo)
{
  if (!tempo->set)
    return g_strdup ("");
  if (tempo->lift_s < 0)
    return g_strdup_printf ("%d-%d-X-%d", tempo->lower_s, tempo->low_pause_s, tempo->top_pause_s);

  return g_strdup_printf ("%d-%d-%d-%d", tempo->lower_s, tempo->low_pause_s,
                          tempo->lift_s, tempo->top_pause_s);
}

static void
append_load (GString *line,
             SwLoad   load)
{
  static const char * const units[] = { "", "kg", "lb", "N" };
  g_autofree char *number = NULL;

  if (load.unit == SW_LOAD_NONE)
    return;

  number = sw_number_to_string (load.value, 3);
  g_string_append_printf (line, ", %s %s", number, units[load.unit]);
}

/**
 * sw_dose_to_line:
 * @dose: a dose that passes sw_dose_check()
 *
 * Returns: (transfer full): the line a therapist would write; sw_dose_from_line() makes it @dose again, unless
 *   it asks for nothing
 */
char *
sw_dose_to_line (const SwDose *dose)
{
  static const char * const sides[] = { "", ", each side", ", right", ", left", ", alternating" };
  GString *line = g_string_new (NULL);

  g_string_append_printf (line, "%d x ", dose->sets);
  if (dose->reps_low == 0 && dose->reps_high == 0)
    g_string_append_printf (line, "hold %d s", dose->hold_s);
  else if (dose->reps_low == dose->reps_high)
    g_string_append_printf (line, "%d", dose->reps_low);
  else
    g_string_append_printf (line, "%d-%d", dose->reps_low, dose->reps_high);

  if (dose->reps_high > 0 && dose->hold_s > 0)
    g_string_append_printf (line, ", hold %d s", dose->hold_s);
  if (dose->tempo.set)
    {
      g_autofree char *tempo = sw_tempo_to_string (&dose->tempo);

      g_string_append_printf (line, ", tempo %s", tempo);
    }
  append_load (line, dose->load);
  g_string_append (line, sides[dose->side]);
  if (dose->directions != 1)
    g_string_append_printf (line, ", %d directions", dose->directions);
  if (dose->extra_sets > 0)
    g_string_append_printf (line, ", +%d %s %s", dose->extra_sets, dose->extra_sets == 1 ? "set" : "sets",
                            dose->extra_side == SW_BODY_SIDE_RIGHT ? "right" : "left");
  if (dose->rest_s > 0)
    g_string_append_printf (line, ", rest %d s", dose->rest_s);
  if (dose->days_a_week > 0)
    g_string_append_printf (line, ", %d %s a week", dose->days_a_week, dose->days_a_week == 1 ? "day" : "days");
  if (dose->times_a_day != 1)
    g_string_append_printf (line, ", %d times a day", dose->times_a_day);
  if (dose->effort_limit > 0)
    g_string_append_printf (line, ", effort %d", dose->effort_limit);
  if (dose->pain_limit >= 0)
    g_string_append_printf (line, ", pain %d", dose->pain_limit);

  return g_string_free (line, FALSE);
}
