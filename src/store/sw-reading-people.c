/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads the client and the clinic of a programme. */
#include "config.h"

#include "sw-extras.h"
#include "sw-logo-xml.h"
#include "sw-programme-xml.h"
#include "sw-reading.h"
#include "sw-transition-xml.h"
#include "sw-xml-values.h"

static const char *const client_known[]
    = { "name",        "birth-year", "dominant-side", "minutes",   "units",             "paper",
        "text-points", "language",   "precautions",   "equipment", "avoided-positions", "loads", "load-limit", NULL };
static const char *const clinic_strings[]
    = { "name", "therapist", "qualification", "phone", "email", "address", "emergency-number", "bands", NULL };
static const char *const clinic_known[]
    = { "name",
        "therapist",
        "qualification",
        "phone",
        "email",
        "address",
        "emergency-number",
        "bands",
        "max-formula",
        "alike-percent",
        NULL };

static gboolean
read_birth_year (xmlNode   *node,
                 SwClient  *client,
                 GError   **error)
{
  int year;

  if (!sw_xml_read_int (node, "birth-year", 1900, 2100, 0, &year, error))
    return FALSE;

  g_object_set (client, "birth-year", year, NULL);
  return TRUE;
}

static gboolean
read_client_attributes (xmlNode   *node,
                        SwClient  *client,
                        GError   **error)
{
  g_autofree char *language = NULL;
  g_autofree char *name = sw_reading_string (node, "name");
  g_autofree char *loads = sw_reading_string (node, "loads");
  g_autofree char *load_limit = sw_reading_string (node, "load-limit");
  int side, units, paper, minutes;
  double text_points;
  SwSet precautions, equipment, avoided;

  if (!read_birth_year (node, client, error)
      || !sw_xml_read_term (node, "dominant-side", SW_TYPE_BODY_SIDE, SW_BODY_SIDE_NONE, &side, error)
      || !sw_xml_read_int (node, "minutes", 0, 240, 0, &minutes, error)
      || !sw_xml_read_term (node, "units", SW_TYPE_UNITS, SW_UNITS_KG, &units, error)
      || !sw_xml_read_term (node, "paper", SW_TYPE_PAPER, SW_PAPER_A4, &paper, error)
      || !sw_xml_read_double (node, "text-points", 12.0, 28.0, 14.0, &text_points, error)
      || !sw_xml_read_set (node, "precautions", SW_TYPE_PRECAUTION, &precautions, error)
      || !sw_xml_read_set (node, "equipment", SW_TYPE_EQUIPMENT, &equipment, error)
      || !sw_xml_read_set (node, "avoided-positions", SW_TYPE_POSITION, &avoided, error))
    return FALSE;
  if (xmlHasProp (node, (const xmlChar *)"language") != NULL
      && !sw_xml_read_language (node, "language", &language, error))
    return FALSE;

  g_object_set (client, "name", name, "dominant-side", side, "minutes", minutes, "units", units, "paper",
                paper, "text-points", text_points, "precautions", precautions, "equipment", equipment,
                "avoided-positions", avoided, "language", language != NULL ? language : "en", "loads", loads,
                "load-limit", load_limit, NULL);
  return TRUE;
}

/**
 * sw_reading_client:
 * @node: the client's element
 * @reading: gets the client
 *
 * Returns: FALSE with @error set when something in it is not valid
 */
gboolean
sw_reading_client (xmlNode    *node,
                   SwReading  *reading,
                   GError    **error)
{
  SwClient *client = sw_programme_get_client (reading->programme);
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autoptr (GString) goals = NULL;
  g_autoptr (GString) others = NULL;
  guint n_goals = 0, n_others = 0;

  if (!read_client_attributes (node, client, error))
    return FALSE;

  sw_extras_add_attributes (extras, NULL, node, client_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (sw_xml_is (child, SW_PROGRAMME_NS, "goal"))
        sw_reading_line (child, &goals, &n_goals, extras);
      else if (sw_xml_is (child, SW_PROGRAMME_NS, "other-precaution"))
        sw_reading_line (child, &others, &n_others, extras);
      else
        sw_extras_add_node (extras, NULL, child);
    }

  g_object_set (client, "goals", goals != NULL ? goals->str : "", "other-precautions",
                others != NULL ? others->str : "", "extras", sw_extras_end (extras), NULL);
  return TRUE;
}

/* How the clinic reckons. */
static gboolean
read_reckoning (SwClinic  *clinic,
                xmlNode   *node,
                GError   **error)
{
  int formula;
  int percent;

  if (!sw_xml_read_term (node, "max-formula", SW_TYPE_MAX_FORMULA, SW_MAX_FORMULA_BRZYCKI, &formula, error)
      || !sw_xml_read_int (node, "alike-percent", 1, SW_CLINIC_MOST_ALIKE_PERCENT, SW_CLINIC_USUAL_ALIKE_PERCENT,
                           &percent, error))
    return FALSE;

  g_object_set (clinic, "max-formula", formula, "alike-percent", percent, NULL);
  return TRUE;
}

/**
 * sw_reading_clinic:
 * @node: the clinic's element
 * @reading: gets the clinic
 *
 * Returns: FALSE with @error set when something in it is not valid
 */
gboolean
sw_reading_clinic (xmlNode    *node,
                   SwReading  *reading,
                   GError    **error)
{
  SwClinic *clinic = sw_programme_get_clinic (reading->programme);
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autoptr (SwLogo) logo = NULL;

  sw_reading_strings (clinic, node, clinic_strings);
  if (!read_reckoning (clinic, node, error))
    return FALSE;
  sw_extras_add_attributes (extras, NULL, node, clinic_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (sw_xml_is (child, SW_PROGRAMME_NS, "change"))
        {
          if (!sw_transition_xml_read (child, clinic, extras, error))
            return FALSE;
          continue;
        }
      if (!sw_xml_is (child, SW_PROGRAMME_NS, "logo"))
        {
          sw_extras_add_node (extras, NULL, child);
          continue;
        }
      if (logo != NULL)
        {
          sw_reading_set_second (child, "logo", error);
          return FALSE;
        }
      logo = sw_logo_xml_read (child, extras, error);
      if (logo == NULL)
        return FALSE;
    }
  g_object_set (clinic, "logo", logo, "extras", sw_extras_end (extras), NULL);
  return TRUE;
}
