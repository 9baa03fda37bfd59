/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What may have to be done between two exercises, in the therapist's language. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-transition-name.h"

/**
 * sw_transition_get_name:
 * @transition: what has to be done between two exercises
 *
 * Returns: (transfer none): what it is called
 */
const char *
sw_transition_get_name (SwTransition transition)
{
  static const char *const names[SW_N_TRANSITIONS] = {
    [SW_TRANSITION_CARD] = N_("Reading what comes next"),
    [SW_TRANSITION_TURN] = N_("Another position at the same height"),
    [SW_TRANSITION_SEAT] = N_("Between standing and a seat or bed"),
    [SW_TRANSITION_FLOOR] = N_("Down to the floor or up from it"),
    [SW_TRANSITION_FETCH] = N_("Fetching what was not in use before"),
  };

  g_return_val_if_fail (transition >= 0 && transition < SW_N_TRANSITIONS, NULL);

  return _(names[transition]);
}
