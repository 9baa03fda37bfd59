/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads the programme document. Its shape is that of data/schema/programme.rng; messages here say more than a
 * schema can. */
#include "config.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "sw-diary-xml.h"
#include "sw-dose-xml.h"
#include "sw-exercise-xml.h"
#include "sw-extras.h"
#include "sw-limit-xml.h"
#include "sw-programme-xml.h"
#include "sw-progression-xml.h"
#include "sw-reading.h"
#include "sw-xml-values.h"

static const char *const none_known[] = { NULL };
static const char *const root_known[] = { "version", "id", "title", "company", "progress", NULL };
static const char *const pages_known[] = { "layout", "leave-out", "add", "save-ink", "landscape", "form", NULL };
static const char *const measurement_known[]
    = { "date", "test", "measure", "repetitions", "better", "left", "right", "both", NULL };
static const char *const session_known[] = { "title", "days", NULL };
static const char *const section_known[] = { "kind", "title", NULL };
static const char *const answer_known[] = { "finding", "date", "by", NULL };
static const char *const issue_known[] = { "date", "way", "hash", NULL };

/* Reads one child element of a list. */
typedef gboolean (*ReadFunc) (xmlNode *node, SwReading *reading, GError **error);

static gboolean
is (const xmlNode *node,
    const char    *name)
{
  return sw_xml_is (node, SW_PROGRAMME_NS, name);
}

static gboolean
read_pages (xmlNode    *node,
            SwReading  *reading,
            GError    **error)
{
  SwPagePlan *plan = sw_programme_get_page_plan (reading->programme);
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *save_ink = sw_xml_dup_attribute (node, "save-ink");
  g_autofree char *landscape = sw_xml_dup_attribute (node, "landscape");
  g_autofree char *form = sw_xml_dup_attribute (node, "form");
  int layout;
  SwSet left_out;
  SwSet added;

  if (!sw_xml_read_term (node, "layout", SW_TYPE_LAYOUT, SW_LAYOUT_FULL, &layout, error)
      || !sw_xml_read_set (node, "leave-out", SW_TYPE_PAGE_PART, &left_out, error)
      || !sw_xml_read_set (node, "add", SW_TYPE_PAGE_PART, &added, error))
    return FALSE;

  sw_extras_add_attributes (extras, NULL, node, pages_known);
  sw_extras_add_children (extras, NULL, node);
  g_object_set (plan, "layout", layout, "parts", (SW_PAGE_PARTS_USUAL & ~left_out) | added, "save-ink",
                g_strcmp0 (save_ink, "yes") == 0, "landscape", g_strcmp0 (landscape, "yes") == 0, "form",
                g_strcmp0 (form, "yes") == 0, "extras", sw_extras_end (extras), NULL);
  return TRUE;
}

static gboolean
read_limit (xmlNode    *node,
            SwReading  *reading,
            GError    **error)
{
  g_autoptr (SwLimit) limit = sw_limit_read (node, error);

  if (limit == NULL)
    return FALSE;

  g_list_store_append (sw_programme_get_limits (reading->programme), limit);
  return TRUE;
}

static gboolean
read_measurement (xmlNode    *node,
                  SwReading  *reading,
                  GError    **error)
{
  static const char *const sides[] = { "left", "right", "both" };
  g_autoptr (SwMeasurement) measurement = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *date = NULL;
  g_autofree char *test = sw_reading_string (node, "test");
  int measure, repetitions, better;

  if (!sw_xml_read_date (node, "date", &date, error)
      || !sw_xml_read_term (node, "measure", SW_TYPE_MEASURE, SW_NO_FALLBACK, &measure, error)
      || !sw_xml_read_int (node, "repetitions", 0, SW_MEASUREMENT_MOST_REPETITIONS, 0, &repetitions, error)
      || !sw_xml_read_term (node, "better", SW_TYPE_BETTER, SW_BETTER_NOT_STATED, &better, error))
    return FALSE;

  measurement = sw_measurement_new (date, test, (SwMeasure) measure);
  g_object_set (measurement, "repetitions", repetitions, "better", better, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      double value;

      if (!sw_xml_read_double (node, sides[i], -SW_PROGRAMME_MAX_MEASURED, SW_PROGRAMME_MAX_MEASURED, NAN, &value, error))
        return FALSE;
      g_object_set (measurement, sides[i], value, NULL);
    }

  sw_extras_add_attributes (extras, NULL, node, measurement_known);
  sw_extras_add_children (extras, NULL, node);
  g_object_set (measurement, "extras", sw_extras_end (extras), NULL);
  g_list_store_append (sw_programme_get_measurements (reading->programme), measurement);
  return TRUE;
}

static gboolean
read_progression (xmlNode    *node,
                  SwReading  *reading,
                  GError    **error)
{
  return sw_progression_xml_read (node, sw_programme_get_progression (reading->programme), error);
}

/* An item that is gone may still be written about. */
static gboolean
read_entry (xmlNode    *node,
            SwReading  *reading,
            GError    **error)
{
  g_autoptr (SwDiaryEntry) entry = sw_diary_xml_read (node, error);

  if (entry == NULL)
    return FALSE;

  g_list_store_append (sw_programme_get_diary (reading->programme), entry);
  return TRUE;
}

static gboolean
read_section (xmlNode    *node,
              SwSession  *session,
              SwReading  *reading,
              GError    **error)
{
  g_autoptr (SwSection) section = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *title = sw_reading_string (node, "title");
  int kind;

  if (!sw_xml_read_term (node, "kind", SW_TYPE_SECTION_KIND, SW_NO_FALLBACK, &kind, error))
    return FALSE;

  section = sw_section_new ((SwSectionKind) kind, title);
  sw_extras_add_attributes (extras, NULL, node, section_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      gboolean known;

      if (!sw_reading_item (child, sw_section_get_items (section), FALSE, reading, &known, error))
        return FALSE;
      if (!known)
        sw_extras_add_node (extras, NULL, child);
    }

  g_object_set (section, "extras", sw_extras_end (extras), NULL);
  g_list_store_append (sw_session_get_sections (session), section);
  return TRUE;
}

static gboolean
read_session (xmlNode    *node,
              SwReading  *reading,
              GError    **error)
{
  g_autoptr (SwSession) session = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *title = sw_reading_string (node, "title");
  SwSet days;

  if (!sw_xml_read_set (node, "days", SW_TYPE_DAY, &days, error))
    return FALSE;

  session = sw_session_new (title, days);
  sw_extras_add_attributes (extras, NULL, node, session_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (!is (child, "section"))
        sw_extras_add_node (extras, NULL, child);
      else if (!read_section (child, session, reading, error))
        return FALSE;
    }

  g_object_set (session, "extras", sw_extras_end (extras), NULL);
  g_list_store_append (sw_programme_get_sessions (reading->programme), session);
  return TRUE;
}

static gboolean
read_answer (xmlNode    *node,
             SwReading  *reading,
             GError    **error)
{
  g_autoptr (SwAnswer) answer = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *finding = sw_reading_string (node, "finding");
  g_autofree char *by = sw_reading_string (node, "by");
  g_autofree char *date = NULL;
  g_autofree char *reason = NULL;

  if (*finding == '\0')
    return sw_xml_set_missing (error, node, "finding");
  if (!sw_xml_read_date (node, "date", &date, error))
    return FALSE;

  sw_extras_add_attributes (extras, NULL, node, answer_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (is (child, "reason") && reason == NULL)
        reason = sw_reading_leaf (child, "reason", extras);
      else
        sw_extras_add_node (extras, NULL, child);
    }

  answer = sw_answer_new (finding, reason != NULL ? reason : "", date, by, sw_extras_end (extras));
  g_list_store_append (sw_programme_get_answers (reading->programme), answer);
  return TRUE;
}

static gboolean
read_issue (xmlNode    *node,
            SwReading  *reading,
            GError    **error)
{
  g_autoptr (SwIssue) issue = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autoptr (GString) doses = NULL;
  g_autofree char *way = sw_reading_string (node, "way");
  g_autofree char *hash = sw_reading_string (node, "hash");
  g_autofree char *date = NULL;
  guint n_doses = 0;

  if (!sw_xml_read_date (node, "date", &date, error))
    return FALSE;

  sw_extras_add_attributes (extras, NULL, node, issue_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (is (child, "dose-line"))
        sw_reading_line (child, &doses, &n_doses, extras);
      else
        sw_extras_add_node (extras, NULL, child);
    }

  issue = sw_issue_new (date, way, hash, doses != NULL ? doses->str : "", sw_extras_end (extras));
  g_list_store_append (sw_programme_get_issues (reading->programme), issue);
  return TRUE;
}

static gboolean
read_exercise (xmlNode    *node,
               SwReading  *reading,
               GError    **error)
{
  g_autoptr (SwExercise) exercise = sw_exercise_read (node, error);

  if (exercise == NULL)
    return FALSE;
  if (g_hash_table_contains (reading->exercises, sw_exercise_get_id (exercise)))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("the exercise “%s” is in the file twice. Leave only one of them."),
                        sw_exercise_get_id (exercise));
      return FALSE;
    }

  g_hash_table_insert (reading->exercises, (gpointer)sw_exercise_get_id (exercise), exercise);
  g_steal_pointer (&exercise);
  return TRUE;
}

/* The parts of a programme. The exercises are read first, wherever they stand: the items look for them. */
static const struct
{
  const char *name;
  const char *child_ns;
  const char *child; /* NULL: no list, but one element */
  ReadFunc read;
} parts[] = {
  { "exercises", SW_EXERCISE_NS, "exercise", read_exercise },
  { "client", NULL, NULL, sw_reading_client },
  { "clinic", NULL, NULL, sw_reading_clinic },
  { "pages", NULL, NULL, read_pages },
  { "limits", SW_PROGRAMME_NS, "limit", read_limit },
  { "measurements", SW_PROGRAMME_NS, "measurement", read_measurement },
  { "progression", NULL, NULL, read_progression },
  { "sessions", SW_PROGRAMME_NS, "session", read_session },
  { "diary", SW_PROGRAMME_NS, "entry", read_entry },
  { "answers", SW_PROGRAMME_NS, "answer", read_answer },
  { "issues", SW_PROGRAMME_NS, "issue", read_issue },
};

static gboolean
read_list (xmlNode    *node,
           guint       part,
           SwReading  *reading,
           GError    **error)
{
  sw_extras_add_attributes (reading->extras, parts[part].name, node, none_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (!sw_xml_is (child, parts[part].child_ns, parts[part].child))
        sw_extras_add_node (reading->extras, parts[part].name, child);
      else if (!parts[part].read (child, reading, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
read_part (xmlNode    *root,
           guint       part,
           SwReading  *reading,
           GError    **error)
{
  gboolean found = FALSE;

  for (xmlNode *child = root->children; child != NULL; child = child->next)
    {
      gboolean good;

      if (!is (child, parts[part].name))
        continue;
      if (found)
        {
          sw_reading_set_second (child, parts[part].name, error);
          return FALSE;
        }

      found = TRUE;
      good = parts[part].child != NULL ? read_list (child, part, reading, error)
                                       : parts[part].read (child, reading, error);
      if (!good)
        return FALSE;
    }

  return TRUE;
}

static gboolean
is_part (const xmlNode *node)
{
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (is (node, parts[i].name))
      return TRUE;

  return FALSE;
}

static gboolean
read_all (xmlNode    *root,
          SwReading  *reading,
          GError    **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!read_part (root, i, reading, error))
      return FALSE;

  sw_extras_add_outside (reading->extras, root);
  for (xmlNode *child = root->children; child != NULL; child = child->next)
    if (!is_part (child))
      sw_extras_add_node (reading->extras, NULL, child);

  g_object_set (reading->programme, "extras", sw_extras_end (reading->extras), NULL);
  return TRUE;
}

/**
 * sw_programme_read:
 * @node: an element
 * @error: return location for a #SwXmlError with file, line and what to do
 *
 * Returns: (transfer full): the programme, or NULL: nothing is ever half read
 */
SwProgramme *
sw_programme_read (xmlNode  *node,
                   GError  **error)
{
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autoptr (GHashTable) exercises = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_object_unref);
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *id = NULL;
  SwReading reading;
  int company;

  if (!is (node, "programme"))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("this is no programme. Choose a file whose name ends in “.setwright”."));
      return NULL;
    }
  if (!sw_xml_read_version (node, SW_PROGRAMME_VERSION, extras, error)
      || !sw_xml_read_id (node, "id", SW_ID_ANY, &id, error)
      || !sw_xml_read_term (node, "company", SW_TYPE_COMPANY, SW_COMPANY_NOT_STATED, &company, error))
    return NULL;

  programme = sw_programme_new (id);
  sw_reading_strings (programme, node, (const char *const[]){ "title", "progress", NULL });
  g_object_set (programme, "company", company, NULL);
  sw_extras_add_attributes (extras, NULL, node, root_known);

  reading = (SwReading){ .programme = programme, .extras = extras, .exercises = exercises, .ids = ids };
  return read_all (node, &reading, error) ? g_steal_pointer (&programme) : NULL;
}

/**
 * sw_programme_from_bytes:
 * @bytes: the content of a file
 * @name: what messages call the file
 * @error: return location for a #SwXmlError
 *
 * Returns: (transfer full): the programme, or NULL
 */
SwProgramme *
sw_programme_from_bytes (GBytes      *bytes,
                         const char  *name,
                         GError     **error)
{
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, name, error);

  return doc != NULL ? sw_programme_read (xmlDocGetRootElement (doc), error) : NULL;
}

static long
find_line_below (const xmlNode *node,
                 const char    *item_id)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    {
      g_autofree char *id = NULL;
      long line;

      if (child->type != XML_ELEMENT_NODE || child->ns == NULL
          || strcmp ((const char *) child->ns->href, SW_PROGRAMME_NS) != 0)
        continue;

      id = sw_xml_dup_attribute (child, "id");
      if (g_strcmp0 (id, item_id) == 0)
        return sw_xml_get_line (child);
      line = find_line_below (child, item_id);
      if (line > 0)
        return line;
    }

  return 0;
}

/**
 * sw_programme_find_line:
 * @bytes: the content of a programme's file
 * @item_id: the id of an item
 *
 * Returns: the line the item stands on, from 1, or 0 when it is not there
 */
long
sw_programme_find_line (GBytes     *bytes,
                        const char *item_id)
{
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, "", NULL);

  return doc != NULL ? find_line_below (xmlDocGetRootElement (doc), item_id) : 0;
}
