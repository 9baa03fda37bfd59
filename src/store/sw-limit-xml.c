/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was set for a client. A limit that changed its kind keeps what was entered for the other. */
#include "config.h"

#include <math.h>

#include "sw-extras.h"
#include "sw-limit-xml.h"
#include "sw-reading.h"
#include "sw-xml-values.h"

static const char *const known[] = { "kind", "side",    "region", "movement", "from-deg", "to-deg", "bearing",
                                     "kg",   "date",    "name",   "precaution", "note",   NULL };

static gboolean
read_terms (xmlNode  *node,
            SwLimit  *limit,
            GError  **error)
{
  g_autofree char *belongs_to = sw_xml_dup_attribute (node, "precaution");
  int side, region, movement, bearing;
  int precaution = -1;

  if (!sw_xml_read_term (node, "side", SW_TYPE_BODY_SIDE, SW_BODY_SIDE_NONE, &side, error)
      || !sw_xml_read_term (node, "region", SW_TYPE_REGION, SW_REGION_WHOLE_BODY, &region, error)
      || !sw_xml_read_term (node, "movement", SW_TYPE_MOVEMENT, SW_MOVEMENT_KNEE_BEND, &movement, error)
      || !sw_xml_read_term (node, "bearing", SW_TYPE_BEARING, SW_BEARING_NONE, &bearing, error)
      || (belongs_to != NULL
          && !sw_xml_read_term (node, "precaution", SW_TYPE_PRECAUTION, SW_NO_FALLBACK, &precaution, error)))
    return FALSE;

  g_object_set (limit, "side", side, "region", region, "movement", movement, "bearing", bearing, "precaution", precaution,
                NULL);
  return TRUE;
}

static gboolean
read_numbers (xmlNode  *node,
              SwLimit  *limit,
              GError  **error)
{
  double kg, from_deg, to_deg;

  if (!sw_xml_read_double (node, "kg", 0.0, SW_LIMIT_MAX_KG, NAN, &kg, error)
      || !sw_xml_read_double (node, "from-deg", -SW_LIMIT_MAX_DEG, SW_LIMIT_MAX_DEG, NAN, &from_deg, error)
      || !sw_xml_read_double (node, "to-deg", -SW_LIMIT_MAX_DEG, SW_LIMIT_MAX_DEG, NAN, &to_deg, error))
    return FALSE;

  g_object_set (limit, "kg", kg, "from-deg", from_deg, "to-deg", to_deg, NULL);
  return TRUE;
}

/**
 * sw_limit_read:
 * @node: the element
 * @error: return location for a #SwXmlError
 *
 * Returns: (transfer full): the limit, or NULL
 */
SwLimit *
sw_limit_read (xmlNode  *node,
               GError  **error)
{
  g_autoptr (SwLimit) limit = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *date = NULL;
  g_autofree char *name = sw_reading_string (node, "name");
  g_autofree char *note = sw_reading_string (node, "note");
  int kind;

  if (!sw_xml_read_term (node, "kind", SW_TYPE_LIMIT_KIND, SW_NO_FALLBACK, &kind, error)
      || !sw_xml_read_date (node, "date", &date, error))
    return NULL;

  limit = sw_limit_new ((SwLimitKind) kind);
  if (!read_terms (node, limit, error) || !read_numbers (node, limit, error))
    return NULL;

  sw_extras_add_attributes (extras, NULL, node, known);
  sw_extras_add_children (extras, NULL, node);
  g_object_set (limit, "date", date, "name", name, "note", note, "extras", sw_extras_end (extras), NULL);
  return g_steal_pointer (&limit);
}

static void
write_number (SwXmlWriter *writer,
              const char  *name,
              double       value,
              double       least,
              double       most)
{
  if (isfinite (value))
    sw_xml_writer_attribute_double (writer, name, CLAMP (value, least, most));
}

/* The term when the limit is of the kind that needs it, or when it was chosen before the kind. */
static void
write_term (SwXmlWriter *writer,
            const char  *name,
            GType        type,
            int          value,
            gboolean     needed,
            int          unchosen)
{
  if (needed || value != unchosen)
    sw_xml_write_term (writer, name, type, value);
}

/**
 * sw_limit_write:
 * @limit: a limit
 * @writer: where to
 */
void
sw_limit_write (SwLimit     *limit,
                SwXmlWriter *writer)
{
  const char *const *extras = sw_limit_get_extras (limit);
  SwLimitKind kind = sw_limit_get_kind (limit);

  sw_xml_writer_open (writer, "limit");
  sw_xml_write_term (writer, "kind", SW_TYPE_LIMIT_KIND, kind);
  write_term (writer, "side", SW_TYPE_BODY_SIDE, sw_limit_get_side (limit), FALSE, SW_BODY_SIDE_NONE);
  write_term (writer, "region", SW_TYPE_REGION, sw_limit_get_region (limit), kind == SW_LIMIT_KIND_LOAD,
              SW_REGION_WHOLE_BODY);
  write_term (writer, "movement", SW_TYPE_MOVEMENT, sw_limit_get_movement (limit), kind == SW_LIMIT_KIND_RANGE,
              SW_MOVEMENT_KNEE_BEND);
  write_number (writer, "from-deg", sw_limit_get_from_deg (limit), -SW_LIMIT_MAX_DEG, SW_LIMIT_MAX_DEG);
  write_number (writer, "to-deg", sw_limit_get_to_deg (limit), -SW_LIMIT_MAX_DEG, SW_LIMIT_MAX_DEG);
  write_term (writer, "bearing", SW_TYPE_BEARING, sw_limit_get_bearing (limit), kind == SW_LIMIT_KIND_WEIGHT_BEARING,
              SW_BEARING_NONE);
  write_number (writer, "kg", sw_limit_get_kg (limit), 0.0, SW_LIMIT_MAX_KG);
  sw_xml_write_date (writer, "date", sw_limit_get_date (limit));
  sw_xml_write_string (writer, "name", sw_limit_get_name (limit));
  write_term (writer, "precaution", SW_TYPE_PRECAUTION, sw_limit_get_precaution (limit), FALSE, -1);
  sw_xml_write_string (writer, "note", sw_limit_get_note (limit));
  sw_extras_write_attributes (extras, NULL, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}
