/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the numbers of a dose mean, in words for the therapist. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-dose-hints.h"

#include "sw-labels.h"
#include "sw-units.h"

/**
 * sw_dose_hint_load:
 * @load: a load
 *
 * Returns: (transfer full): "2.5 kg" or "No load"
 */
char *
sw_dose_hint_load (SwLoad load)
{
  g_autofree char *number = NULL;

  if (load.unit == SW_LOAD_NONE)
    return g_strdup (sw_label (SW_TYPE_LOAD_UNIT, SW_LOAD_NONE));

  number = sw_number_to_string (load.value, 3);
  return g_strdup_printf ("%s %s", number, sw_label (SW_TYPE_LOAD_UNIT, (int) load.unit));
}

/**
 * sw_dose_hint_load_limit:
 * @limit: an exercise's load limit
 *
 * Returns: (transfer full): what load the exercise may be given
 */
char *
sw_dose_hint_load_limit (SwLoad limit)
{
  g_autofree char *words = NULL;

  if (limit.unit == SW_LOAD_NONE)
    return g_strdup (_("This exercise is done without a load"));

  words = sw_dose_hint_load (limit);
  return g_strdup_printf (_("This exercise: up to %s"), words);
}

/**
 * sw_dose_hint_tempo:
 * @tempo: a tempo
 *
 * Returns: (transfer full): its phases in words; for none, what to write
 */
char *
sw_dose_hint_tempo (const SwTempo *tempo)
{
  g_autoptr (GString) words = NULL;

  if (!tempo->set)
    return g_strdup (_("Lowering, pause, lifting, pause, in seconds"));

  words = g_string_new (NULL);
  g_string_append_printf (words, _("Lower %d s"), tempo->lower_s);
  if (tempo->low_pause_s > 0)
    g_string_append_printf (words, _(", pause %d s"), tempo->low_pause_s);
  if (tempo->lift_s < 0)
    g_string_append (words, _(", lift as fast as possible"));
  else
    g_string_append_printf (words, _(", lift %d s"), tempo->lift_s);
  if (tempo->top_pause_s > 0)
    g_string_append_printf (words, _(", pause %d s"), tempo->top_pause_s);

  return g_string_free (g_steal_pointer (&words), FALSE);
}

/**
 * sw_dose_hint_effort:
 * @effort_limit: 1..10, or 0 for none stated
 *
 * The words are those of the CR10 scale, shortened, and between its marks those of the mark below (Borg
 * 1998, from memory). From 7 on, the effort of strength work also tells how many repetitions could still
 * follow: 10 less the effort (Helms and others, Strength Cond J 2016;38(4):42-49).
 *
 * Returns: (transfer full): how hard that is
 */
char *
sw_dose_hint_effort (int effort_limit)
{
  static const char * const words[] = {
    N_("None stated"), N_("Very light"), N_("Light"), N_("Moderate"), N_("Moderate"), N_("Hard"), N_("Hard"),
    N_("Very hard"), N_("Very hard"), N_("Very hard"), N_("Extremely hard"),
  };
  int left = 10 - effort_limit;

  g_return_val_if_fail (effort_limit >= 0 && effort_limit <= 10, NULL);

  if (effort_limit < 7)
    return g_strdup (_(words[effort_limit]));
  if (left == 0)
    return g_strdup_printf (_("%s: no repetition could follow"), _(words[effort_limit]));

  return g_strdup_printf (ngettext ("%s: about %d repetition could follow", "%s: about %d repetitions could follow",
                                    (gulong) left),
                          _(words[effort_limit]), left);
}

/**
 * sw_dose_hint_pain:
 * @pain_limit: 0..10, or -1 for none stated
 *
 * The zones are those of the pain-monitoring model: up to 2 safe, up to 5 acceptable if it settles by the
 * next morning, above that too much (Thomee 1997; Silbernagel and others, Am J Sports Med 2007;35:897-906).
 *
 * Returns: (transfer none): what that means
 */
const char *
sw_dose_hint_pain (int pain_limit)
{
  if (pain_limit < 0)
    return _("None stated");
  if (pain_limit == 0)
    return _("No pain");
  if (pain_limit <= 2)
    return _("Safe");
  if (pain_limit <= 5)
    return _("Acceptable if it settles by the next morning");

  return _("Too much: less load or range");
}
