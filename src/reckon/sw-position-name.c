/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's words for start positions. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-position-name.h"

static const char * const position_words[] = {
  [SW_POSITION_STANDING] = N_("standing"),
  [SW_POSITION_SITTING] = N_("sitting"),
  [SW_POSITION_KNEELING] = N_("kneeling"),
  [SW_POSITION_HANDS_AND_KNEES] = N_("hands and knees"),
  [SW_POSITION_FLOOR_SITTING] = N_("sitting on the floor"),
  [SW_POSITION_ON_BACK] = N_("on the back"),
  [SW_POSITION_ON_SIDE] = N_("on the side"),
  [SW_POSITION_FACE_DOWN] = N_("face down"),
};

/**
 * sw_position_get_name:
 * @position: a start position
 *
 * Returns: (transfer none): its name for the therapist, translated, to stand within a sentence
 */
const char *
sw_position_get_name (SwPosition position)
{
  g_return_val_if_fail ((guint) position < G_N_ELEMENTS (position_words), "");

  return _(position_words[position]);
}
