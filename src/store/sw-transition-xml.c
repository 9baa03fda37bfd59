/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long what lies between two exercises takes at a clinic: an element each, for a schema tells attributes that are all
 * optional apart only by trying every choice of them. */
#include "config.h"

#include "sw-transition-xml.h"

#include "sw-extras.h"
#include "sw-xml-values.h"

#define ELEMENT "change"

static const char *const known[] = { "kind", "low-seconds", "high-seconds", NULL };

static char *
dup_path (SwTransition transition)
{
  return g_strdup_printf ("%s-%s", ELEMENT, sw_term_to_nick (SW_TYPE_TRANSITION, (int) transition));
}

/**
 * sw_transition_xml_read:
 * @node: a `change`
 * @clinic: gets what it says
 * @extras: get what is unknown in it
 * @error: return location for a #SwXmlError
 *
 * Returns: whether it could be read
 */
gboolean
sw_transition_xml_read (xmlNode    *node,
                        SwClinic   *clinic,
                        GPtrArray  *extras,
                        GError    **error)
{
  g_autofree char *path = NULL;
  int transition, low_s, high_s;

  if (!sw_xml_read_term (node, "kind", SW_TYPE_TRANSITION, SW_NO_FALLBACK, &transition, error))
    return FALSE;

  sw_clinic_get_transition (clinic, (SwTransition) transition, &low_s, &high_s);
  if (!sw_xml_read_int (node, "low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S, low_s, &low_s, error)
      || !sw_xml_read_int (node, "high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S, high_s, &high_s, error))
    return FALSE;

  g_object_set (clinic, sw_clinic_get_transition_property ((SwTransition) transition, FALSE), low_s,
                sw_clinic_get_transition_property ((SwTransition) transition, TRUE), high_s, NULL);
  path = dup_path ((SwTransition) transition);
  sw_extras_add_attributes (extras, path, node, known);
  sw_extras_add_children (extras, path, node);
  return TRUE;
}

/**
 * sw_transition_xml_write:
 * @clinic: a clinic
 * @extras: what is unknown in it
 * @writer: stands within the clinic's element
 *
 * Writes what is not as usual.
 */
void
sw_transition_xml_write (SwClinic           *clinic,
                         const char * const *extras,
                         SwXmlWriter        *writer)
{
  g_autoptr (SwClinic) usual = sw_clinic_new ();

  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    {
      SwTransition transition = (SwTransition) i;
      g_autofree char *path = dup_path (transition);
      int low_s, high_s, usual_low_s, usual_high_s;

      sw_clinic_get_transition (clinic, transition, &low_s, &high_s);
      sw_clinic_get_transition (usual, transition, &usual_low_s, &usual_high_s);
      if (low_s == usual_low_s && high_s == usual_high_s && !sw_extras_has (extras, path))
        continue;
      sw_xml_writer_open (writer, ELEMENT);
      sw_xml_write_term (writer, "kind", SW_TYPE_TRANSITION, i);
      sw_xml_writer_attribute_int (writer, "low-seconds", low_s);
      sw_xml_writer_attribute_int (writer, "high-seconds", high_s);
      sw_extras_write_attributes (extras, path, writer);
      sw_extras_write_nodes (extras, path, writer);
      sw_xml_writer_close (writer);
    }
}
