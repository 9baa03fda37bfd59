/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's words for the parts of the body. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-region-name.h"

static const char * const region_words[] = {
  [SW_REGION_NECK] = N_("neck"),
  [SW_REGION_SHOULDER] = N_("shoulder"),
  [SW_REGION_ELBOW_HAND] = N_("elbow and hand"),
  [SW_REGION_TRUNK] = N_("trunk"),
  [SW_REGION_HIP] = N_("hip"),
  [SW_REGION_KNEE] = N_("knee"),
  [SW_REGION_ANKLE] = N_("ankle"),
  [SW_REGION_BALANCE] = N_("balance"),
  [SW_REGION_WHOLE_BODY] = N_("whole body"),
};

/**
 * sw_region_get_name:
 * @region: a part of the body
 *
 * Returns: (transfer none): its name for the therapist, translated, to stand within a sentence
 */
const char *
sw_region_get_name (SwRegion region)
{
  g_return_val_if_fail ((guint) region < G_N_ELEMENTS (region_words), "");

  return _(region_words[region]);
}
