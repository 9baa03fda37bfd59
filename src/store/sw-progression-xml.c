/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the doses of a programme are to change, in its document. */
#include "config.h"

#include "sw-progression-xml.h"

#include "sw-extras.h"
#include "sw-xml-values.h"

/**
 * sw_progression_xml_read:
 * @node: the element
 * @progression: a new one, to be filled; numbers that are not there stay the usual ones
 * @error: return location for a #SwXmlError
 *
 * Returns: FALSE when a number is beyond its range
 */
gboolean
sw_progression_xml_read (xmlNode        *node,
                         SwProgression  *progression,
                         GError        **error)
{
  const char *const *names = sw_progression_get_number_names ();
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autoptr (GPtrArray) known = g_ptr_array_new ();
  g_autofree char *steps_up = sw_xml_dup_attribute (node, "steps-up");

  for (guint i = 0; names[i] != NULL; i++)
    {
      int lowest, highest, value;

      sw_progression_get_range (names[i], &lowest, &highest, &value);
      if (!sw_xml_read_int (node, names[i], lowest, highest, value, &value, error))
        return FALSE;
      g_object_set (progression, names[i], value, NULL);
      g_ptr_array_add (known, (gpointer) names[i]);
    }
  g_ptr_array_add (known, (gpointer) "steps-up");
  g_ptr_array_add (known, NULL);

  sw_extras_add_attributes (extras, NULL, node, (const char *const *) known->pdata);
  sw_extras_add_children (extras, NULL, node);
  g_object_set (progression, "steps-up", g_strcmp0 (steps_up, "no") != 0, "extras", sw_extras_end (extras), NULL);
  return TRUE;
}

/**
 * sw_progression_xml_write:
 * @progression: rules and plan
 * @writer: where to
 *
 * Writes what is not as usual; nothing when all is.
 */
void
sw_progression_xml_write (SwProgression *progression,
                          SwXmlWriter   *writer)
{
  const char *const *extras = sw_progression_get_extras (progression);
  const char *const *names = sw_progression_get_number_names ();

  if (sw_progression_is_usual (progression))
    return;

  sw_xml_writer_open (writer, "progression");
  if (!sw_progression_get_steps_up (progression))
    sw_xml_writer_attribute (writer, "steps-up", "no");
  for (guint i = 0; names[i] != NULL; i++)
    {
      int value = sw_progression_get_number (progression, names[i]);
      int lowest, highest, usual;

      sw_progression_get_range (names[i], &lowest, &highest, &usual);
      if (value != usual)
        sw_xml_writer_attribute_int (writer, names[i], value);
    }
  sw_extras_write_attributes (extras, NULL, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}
