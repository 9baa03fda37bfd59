/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's words for equipment. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-equipment-name.h"

static const char * const equipment_words[] = {
  [SW_EQUIPMENT_CHAIR] = N_("chair"),
  [SW_EQUIPMENT_WALL] = N_("wall"),
  [SW_EQUIPMENT_COUNTER] = N_("counter"),
  [SW_EQUIPMENT_TABLE] = N_("table"),
  [SW_EQUIPMENT_STEP] = N_("step"),
  [SW_EQUIPMENT_MAT] = N_("mat"),
  [SW_EQUIPMENT_BED] = N_("bed"),
  [SW_EQUIPMENT_TOWEL] = N_("towel"),
  [SW_EQUIPMENT_PILLOW] = N_("pillow"),
  [SW_EQUIPMENT_CUSHION] = N_("soft cushion"),
  [SW_EQUIPMENT_BAND] = N_("elastic band"),
  [SW_EQUIPMENT_LOOP_BAND] = N_("loop band"),
  [SW_EQUIPMENT_DUMBBELL] = N_("dumbbell"),
  [SW_EQUIPMENT_ANKLE_WEIGHT] = N_("ankle weight"),
  [SW_EQUIPMENT_BALL] = N_("ball"),
  [SW_EQUIPMENT_STICK] = N_("stick"),
  [SW_EQUIPMENT_FOAM_ROLLER] = N_("foam roller"),
  [SW_EQUIPMENT_BLOCK] = N_("block"),
  [SW_EQUIPMENT_CABLE] = N_("cable machine"),
};

/**
 * sw_equipment_get_name:
 * @equipment: a piece of equipment
 *
 * Returns: (transfer none): its name for the therapist, translated, to stand within a sentence
 */
const char *
sw_equipment_get_name (SwEquipment equipment)
{
  g_return_val_if_fail ((guint) equipment < G_N_ELEMENTS (equipment_words), "");

  return _(equipment_words[equipment]);
}

/**
 * sw_equipment_dup_names:
 * @equipment: a set of #SwEquipment
 *
 * Returns: (transfer full): their names, "towel, elastic band"
 */
char *
sw_equipment_dup_names (SwSet equipment)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (equipment_words); i++)
    {
      if ((equipment & SW_SET (i)) == 0)
        continue;
      if (names->len > 0)
        /* Translators: between the words of a list. */
        g_string_append (names, C_("list", ", "));
      g_string_append (names, sw_equipment_get_name ((SwEquipment) i));
    }
  return g_string_free (names, FALSE);
}
