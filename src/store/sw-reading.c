/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads the items of a programme: exercises with their dose, rests, circuits and self-checks. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-dose-xml.h"
#include "sw-programme-xml.h"
#include "sw-reading.h"
#include "sw-xml-values.h"

static const char *const none_known[] = { NULL };
static const char *const exercise_known[] = { "id", "exercise", "test", "pinned", "after", NULL };
static const char *const rest_known[] = { "id", "title", "seconds", NULL };
static const char *const circuit_known[] = { "id", "title", "rounds", "rest-seconds", "pinned", "after", NULL };
static const char *const check_known[] = { "id", "title", "measure", "better", "exercise", "side", NULL };

static gboolean
is (const xmlNode *node,
    const char    *name)
{
  return sw_xml_is (node, SW_PROGRAMME_NS, name);
}

/**
 * sw_reading_string:
 * @node: an element
 * @name: an attribute
 *
 * Returns: (transfer full): its value, "" when it is not there
 */
char *
sw_reading_string (const xmlNode *node,
                   const char    *name)
{
  char *value = sw_xml_dup_attribute (node, name);

  return value != NULL ? value : g_strdup ("");
}

/**
 * sw_reading_leaf:
 * @node: a text element within an object
 * @path: the way to it from the object's element
 * @extras: (element-type utf8): the object's, which takes the attributes we do not know
 *
 * Returns: (transfer full): its text
 */
char *
sw_reading_leaf (xmlNode    *node,
                 const char *path,
                 GPtrArray  *extras)
{
  sw_extras_add_attributes (extras, path, node, none_known);
  return sw_xml_dup_text (node);
}

/* Makes an item whose id no other has. */
static SwItem *
new_item (xmlNode     *node,
          SwItemKind   kind,
          SwReading   *reading,
          GError     **error)
{
  g_autofree char *id = NULL;
  SwItem *item;

  if (!sw_xml_read_id (node, "id", SW_ID_ANY, &id, error))
    return NULL;
  if (g_hash_table_contains (reading->ids, id))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("there is a second item with the id “%s”. Give one of them another id."), id);
      return NULL;
    }

  item = sw_item_new (kind, id);
  g_hash_table_add (reading->ids, g_steal_pointer (&id));
  return item;
}

static gboolean
set_exercise (xmlNode    *node,
              SwItem     *item,
              SwReading  *reading,
              GError    **error)
{
  g_autofree char *id = NULL;
  SwExercise *exercise;

  if (!sw_xml_read_id (node, "exercise", SW_ID_EXERCISE, &id, error))
    return FALSE;

  exercise = g_hash_table_lookup (reading->exercises, id);
  if (exercise == NULL)
    {
      sw_xml_set_error (
          error, node, SW_XML_ERROR_INVALID,
          _ ("this item asks for the exercise “%s”, which is not in the file. Take the version before it, or "
             "remove the item."),
          id);
      return FALSE;
    }

  g_object_set (item, "exercise", exercise, NULL);
  return TRUE;
}

static gboolean
read_dose (xmlNode    *node,
           SwItem     *item,
           GPtrArray  *extras,
           GError    **error)
{
  SwDose dose;

  if (!sw_dose_read (node, &dose, extras, error))
    return FALSE;

  g_object_set (item, "dose", &dose, NULL);
  return TRUE;
}

static gboolean
read_exercise_item (xmlNode    *node,
                    SwItem     *item,
                    SwReading  *reading,
                    GError    **error)
{
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *test = sw_reading_string (node, "test");
  gboolean has_dose = FALSE;

  if (!set_exercise (node, item, reading, error))
    return FALSE;

  sw_extras_add_attributes (extras, NULL, node, exercise_known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (is (child, "dose") && !has_dose)
        {
          if (!read_dose (child, item, extras, error))
            return FALSE;
          has_dose = TRUE;
        }
      else if (is (child, "note"))
        {
          g_autofree char *note = sw_reading_leaf (child, "note", extras);

          g_object_set (item, "note", note, NULL);
        }
      else
        {
          sw_extras_add_node (extras, NULL, child);
        }
    }

  if (!has_dose)
    return sw_xml_set_missing (error, node, "dose");

  g_object_set (item, "test", test, "extras", sw_extras_end (extras), NULL);
  return TRUE;
}

/* What rest, circuit and self-check have alike: title and note. */
static void
read_common (xmlNode           *node,
             SwItem            *item,
             const char *const *known,
             GPtrArray         *extras)
{
  g_autofree char *title = sw_reading_string (node, "title");

  g_object_set (item, "title", title, NULL);
  sw_extras_add_attributes (extras, NULL, node, known);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (is (child, "note"))
      {
        g_autofree char *note = sw_reading_leaf (child, "note", extras);

        g_object_set (item, "note", note, NULL);
      }
}

static gboolean
is_note (const xmlNode *node)
{
  return is (node, "note");
}

/* Keeps what read_common() passed over, except what @is_known knows. */
static void
end_common (xmlNode *node,
            SwItem *item,
            gboolean (*is_known) (const xmlNode *),
            GPtrArray *extras)
{
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (!is_known (child))
      sw_extras_add_node (extras, NULL, child);

  g_object_set (item, "extras", sw_extras_end (extras), NULL);
}

/* What "Arrange" must keep. */
static void
read_order (xmlNode *node,
            SwItem  *item)
{
  g_autofree char *pinned = sw_xml_dup_attribute (node, "pinned");
  g_autofree char *after = sw_reading_string (node, "after");

  g_object_set (item, "pinned", g_strcmp0 (pinned, "yes") == 0, "after", after, NULL);
}

static gboolean
read_rest (xmlNode  *node,
           SwItem   *item,
           GError  **error)
{
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  int seconds;

  if (!sw_xml_read_int (node, "seconds", 0, 900, 0, &seconds, error))
    return FALSE;

  g_object_set (item, "rest-seconds", seconds, NULL);
  read_common (node, item, rest_known, extras);
  end_common (node, item, is_note, extras);
  return TRUE;
}

static gboolean
read_self_check (xmlNode  *node,
                 SwItem   *item,
                 GError  **error)
{
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  g_autofree char *pictured = sw_reading_string (node, "exercise");
  SwDose dose;
  int measure, better, side;

  if (!sw_xml_read_term (node, "measure", SW_TYPE_MEASURE, SW_NO_FALLBACK, &measure, error)
      || !sw_xml_read_term (node, "better", SW_TYPE_BETTER, SW_BETTER_NOT_STATED, &better, error)
      || !sw_xml_read_term (node, "side", SW_TYPE_SIDE, SW_SIDE_BOTH, &side, error))
    return FALSE;

  sw_dose_init (&dose);
  dose.side = (SwSide) side;
  g_object_set (item, "measure", measure, "better", better, "pictured", pictured, "dose", &dose, NULL);
  read_common (node, item, check_known, extras);
  end_common (node, item, is_note, extras);
  return TRUE;
}

static gboolean
is_circuit_child (const xmlNode *node)
{
  return is (node, "note") || is (node, "item") || is (node, "rest") || is (node, "self-check");
}

static gboolean
read_circuit (xmlNode    *node,
              SwItem     *item,
              SwReading  *reading,
              GError    **error)
{
  g_autoptr (GPtrArray) extras = sw_extras_new ();
  int rounds, rest_s;

  if (!sw_xml_read_int (node, "rounds", 1, 20, 1, &rounds, error)
      || !sw_xml_read_int (node, "rest-seconds", 0, 900, 0, &rest_s, error))
    return FALSE;

  g_object_set (item, "rounds", rounds, "rest-seconds", rest_s, NULL);
  read_common (node, item, circuit_known, extras);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      gboolean known;

      if (!sw_reading_item (child, sw_item_get_items (item), TRUE, reading, &known, error))
        return FALSE;
    }

  end_common (node, item, is_circuit_child, extras);
  return TRUE;
}

/**
 * sw_reading_item:
 * @node: any node
 * @items: takes the item
 * @in_circuit: whether it stands in a circuit, where no other circuit may be
 * @reading: what is read
 * @known: (out): whether @node is an item of any kind
 * @error: return location for a #SwXmlError
 *
 * Returns: FALSE when it is an item that cannot be read
 */
gboolean
sw_reading_item (xmlNode     *node,
                 GListStore  *items,
                 gboolean     in_circuit,
                 SwReading   *reading,
                 gboolean    *known,
                 GError     **error)
{
  static const char *const names[]
      = { "item", "rest", "circuit", "self-check" }; /* in the order of SwItemKind */
  g_autoptr (SwItem) item = NULL;
  guint kind = 0;
  gboolean good;

  while (kind < G_N_ELEMENTS (names) && !is (node, names[kind]))
    kind++;

  *known = kind < G_N_ELEMENTS (names);
  if (!*known)
    return TRUE;
  if (kind == SW_ITEM_CIRCUIT && in_circuit)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("a circuit stands within a circuit. Move its items out of the inner one."));
      return FALSE;
    }

  item = new_item (node, (SwItemKind) kind, reading, error);
  if (item == NULL)
    return FALSE;

  if (kind == SW_ITEM_EXERCISE)
    good = read_exercise_item (node, item, reading, error);
  else if (kind == SW_ITEM_REST)
    good = read_rest (node, item, error);
  else if (kind == SW_ITEM_CIRCUIT)
    good = read_circuit (node, item, reading, error);
  else
    good = read_self_check (node, item, error);

  if (kind == SW_ITEM_EXERCISE || kind == SW_ITEM_CIRCUIT)
    read_order (node, item);
  if (good)
    g_list_store_append (items, item);
  return good;
}

/**
 * sw_reading_set_second:
 * @node: an element
 * @name: what it is
 * @error: set
 *
 * Says that there may be only one of them.
 */
void
sw_reading_set_second (const xmlNode  *node,
                       const char     *name,
                       GError        **error)
{
  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("there is a second “%s”. Leave only one of them."), name);
}

/**
 * sw_reading_strings:
 * @object: what has them as properties
 * @node: its element
 * @names: (array zero-terminated=1): attributes, each a string property of the same name; "" when absent
 */
void
sw_reading_strings (gpointer           object,
                    const xmlNode     *node,
                    const char *const *names)
{
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *value = sw_reading_string (node, names[i]);

      g_object_set (object, names[i], value, NULL);
    }
}

/**
 * sw_reading_line:
 * @node: one of the elements of which each is a line of a property
 * @lines: (inout): those read so far, NULL for none
 * @n: (inout): how many
 * @extras: gets what is not known of it
 */
void
sw_reading_line (xmlNode    *node,
                 GString   **lines,
                 guint      *n,
                 GPtrArray  *extras)
{
  g_autofree char *path = g_strdup_printf ("%s %u", (const char *) node->name, ++*n);
  g_autofree char *text = sw_reading_leaf (node, path, extras);

  if (*lines == NULL)
    *lines = g_string_new (NULL);
  else
    g_string_append_c (*lines, '\n');
  g_string_append (*lines, g_strdelimit (text, "\n", ' '));
}
