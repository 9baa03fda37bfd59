/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The diary's entries in the programme's document. */
#include "config.h"

#include "sw-diary-xml.h"

#include "sw-extras.h"
#include "sw-programme-xml.h"
#include "sw-reading.h"
#include "sw-xml-values.h"

static const char *const known[]
    = { "date",        "item",        "exercise",   "dose",    "sets",         "repetitions", "effort",
        "pain-before", "pain-during", "pain-after", "settled", "control-lost", NULL };

static const char *const numbers[] = { "sets", "repetitions", "effort", "pain-before", "pain-during", "pain-after" };

static gboolean
read_numbers (xmlNode       *node,
              SwDiaryEntry  *entry,
              GError       **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      GParamSpecInt *range
          = G_PARAM_SPEC_INT (g_object_class_find_property (G_OBJECT_GET_CLASS (entry), numbers[i]));
      int value;

      if (!sw_xml_read_int (node, numbers[i], 0, range->maximum, SW_DIARY_NOT_STATED, &value, error))
        return FALSE;
      g_object_set (entry, numbers[i], value, NULL);
    }

  return TRUE;
}

/**
 * sw_diary_xml_read:
 * @node: the element
 * @error: return location for a #SwXmlError
 *
 * Returns: (transfer full): the entry, or NULL
 */
SwDiaryEntry *
sw_diary_xml_read (xmlNode  *node,
                   GError  **error)
{
  g_autoptr (SwDiaryEntry) entry = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *date = NULL;
  g_autofree char *item = NULL;
  g_autofree char *exercise = sw_reading_string (node, "exercise");
  g_autofree char *dose_line = sw_reading_string (node, "dose");
  g_autofree char *control_lost = sw_xml_dup_attribute (node, "control-lost");
  g_autofree char *note = NULL;
  int settled;

  if (!sw_xml_read_date (node, "date", &date, error) || !sw_xml_read_id (node, "item", SW_ID_ANY, &item, error)
      || !sw_xml_read_term (node, "settled", SW_TYPE_SETTLED, SW_SETTLED_UNKNOWN, &settled, error))
    return NULL;

  entry = sw_diary_entry_new (date, item, exercise, dose_line);
  if (!read_numbers (node, entry, error))
    return NULL;
  sw_extras_add_attributes (extras, NULL, node, known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (sw_xml_is (child, SW_PROGRAMME_NS, "note") && note == NULL)
        note = sw_reading_leaf (child, "note", extras);
      else
        sw_extras_add_node (extras, NULL, child);
    }

  g_object_set (entry, "settled", settled, "control-lost", g_strcmp0 (control_lost, "yes") == 0, "note",
                note != NULL ? note : "", "extras", sw_extras_end (extras), NULL);
  return g_steal_pointer (&entry);
}

/**
 * sw_diary_xml_write:
 * @entry: an entry
 * @writer: where to
 */
void
sw_diary_xml_write (SwDiaryEntry *entry,
                    SwXmlWriter  *writer)
{
  const char *const *extras = sw_diary_entry_get_extras (entry);

  sw_xml_writer_open (writer, "entry");
  sw_xml_write_date (writer, "date", sw_diary_entry_get_date (entry));
  sw_xml_writer_attribute (writer, "item", sw_diary_entry_get_item (entry));
  sw_xml_write_string (writer, "exercise", sw_diary_entry_get_exercise (entry));
  sw_xml_write_string (writer, "dose", sw_diary_entry_get_dose_line (entry));
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      int value;

      g_object_get (entry, numbers[i], &value, NULL);
      if (value != SW_DIARY_NOT_STATED)
        sw_xml_writer_attribute_int (writer, numbers[i], value);
    }
  if (sw_diary_entry_get_settled (entry) != SW_SETTLED_UNKNOWN)
    sw_xml_write_term (writer, "settled", SW_TYPE_SETTLED, sw_diary_entry_get_settled (entry));
  if (sw_diary_entry_get_control_lost (entry))
    sw_xml_writer_attribute (writer, "control-lost", "yes");
  sw_extras_write_attributes (extras, NULL, writer);
  if (*sw_diary_entry_get_note (entry) != '\0')
    sw_extras_write_leaf (extras, "note", "note", sw_diary_entry_get_note (entry), writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}
