/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The exercise document, alone in a file of the catalogue or embedded in a programme. See data/schema/exercise.rng. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-dose-xml.h"
#include "sw-exercise-xml.h"
#include "sw-extras.h"
#include "sw-figure-xml.h"
#include "sw-review-xml.h"
#include "sw-xml-values.h"

static const char *const root_known[] = { "version", "id", "revision", NULL };
static const char *const about_known[] = { "region",  "position",   "section",  "aims",         "equipment",
                                           "muscles", "directions", "cautions", "pace-seconds", NULL };
static const char *const limit_known[] = { "value", NULL };
static const char *const link_known[] = { "ref", NULL };
static const char *const text_known[] = { "xml:lang", NULL };

/* The words of one language, in the order they are written in. */
typedef struct
{
  const char *name;
  gsize offset;
  gboolean is_list;
} Leaf;

static const Leaf leaves[] = {
  { "name", G_STRUCT_OFFSET (SwExerciseText, name), FALSE },
  { "synonym", G_STRUCT_OFFSET (SwExerciseText, synonyms), TRUE },
  { "purpose", G_STRUCT_OFFSET (SwExerciseText, purpose), FALSE },
  { "set-up", G_STRUCT_OFFSET (SwExerciseText, set_up), FALSE },
  { "step", G_STRUCT_OFFSET (SwExerciseText, steps), TRUE },
  { "form-point", G_STRUCT_OFFSET (SwExerciseText, form_points), TRUE },
  { "error", G_STRUCT_OFFSET (SwExerciseText, errors), TRUE },
  { "feel", G_STRUCT_OFFSET (SwExerciseText, feel), FALSE },
  { "easier-way", G_STRUCT_OFFSET (SwExerciseText, easier), FALSE },
  { "harder-way", G_STRUCT_OFFSET (SwExerciseText, harder), FALSE },
};

/* What is gathered while an exercise element is read. */
typedef struct
{
  SwExerciseFacts facts;
  GPtrArray *texts;
  GPtrArray *easier;
  GPtrArray *harder;
  GPtrArray *extras;
  SwFigureSpec *figure;
  gboolean has_about;
  gboolean has_dose;
  gboolean has_limit;
} Reading;

static void
reading_clear (Reading *reading)
{
  g_free (reading->facts.id);
  g_free (reading->facts.dose_reason);
  g_free (reading->facts.review_due);
  g_clear_pointer (&reading->texts, g_ptr_array_unref);
  g_clear_pointer (&reading->easier, g_ptr_array_unref);
  g_clear_pointer (&reading->harder, g_ptr_array_unref);
  g_clear_pointer (&reading->extras, g_ptr_array_unref);
  g_clear_pointer (&reading->figure, sw_figure_spec_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reading, reading_clear)

static gboolean
set_twice (GError        **error,
           const xmlNode  *node)
{
  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("there is a second “%s”. Leave only one of them."),
                    (const char *) node->name);
  return FALSE;
}

static gboolean
read_about (xmlNode  *node,
            Reading  *reading,
            GError  **error)
{
  SwExerciseFacts *facts = &reading->facts;
  g_autofree char *pace = sw_xml_dup_attribute (node, "pace-seconds");
  int region, position, section, directions;

  if (reading->has_about)
    return set_twice (error, node);
  if (pace == NULL)
    return sw_xml_set_missing (error, node, "pace-seconds");
  if (!sw_xml_read_term (node, "region", SW_TYPE_REGION, SW_NO_FALLBACK, &region, error)
      || !sw_xml_read_term (node, "position", SW_TYPE_POSITION, SW_NO_FALLBACK, &position, error)
      || !sw_xml_read_term (node, "section", SW_TYPE_SECTION_KIND, SW_NO_FALLBACK, &section, error)
      || !sw_xml_read_set (node, "aims", SW_TYPE_AIM, &facts->aims, error)
      || !sw_xml_read_set (node, "equipment", SW_TYPE_EQUIPMENT, &facts->equipment, error)
      || !sw_xml_read_set (node, "muscles", SW_TYPE_MUSCLE, &facts->muscles, error)
      || !sw_xml_read_term (node, "directions", SW_TYPE_DIRECTION_KIND, SW_DIRECTION_KIND_ONE, &directions, error)
      || !sw_xml_read_set (node, "cautions", SW_TYPE_CAUTION, &facts->cautions, error)
      || !sw_xml_read_double (node, "pace-seconds", 1.0, 60.0, 1.0, &facts->pace_s, error))
    return FALSE;

  facts->region = (SwRegion) region;
  facts->position = (SwPosition) position;
  facts->section = (SwSectionKind) section;
  facts->directions = (SwDirectionKind) directions;
  sw_extras_add_attributes (reading->extras, "about", node, about_known);
  sw_extras_add_children (reading->extras, "about", node);
  reading->has_about = TRUE;
  return TRUE;
}

static gboolean
read_limit (xmlNode  *node,
            Reading  *reading,
            GError  **error)
{
  if (reading->has_limit)
    return set_twice (error, node);
  if (!sw_xml_read_load (node, "value", &reading->facts.load_limit, error))
    return FALSE;
  if (reading->facts.load_limit.unit == SW_LOAD_NONE)
    return sw_xml_set_missing (error, node, "value");

  sw_extras_add_attributes (reading->extras, "load-limit", node, limit_known);
  sw_extras_add_children (reading->extras, "load-limit", node);
  reading->has_limit = TRUE;
  return TRUE;
}

static gboolean
read_link (xmlNode    *node,
           GPtrArray  *links,
           GPtrArray  *extras,
           GError    **error)
{
  g_autofree char *ref = NULL;
  g_autofree char *path = NULL;

  if (!sw_xml_read_id (node, "ref", SW_ID_EXERCISE, &ref, error))
    return FALSE;

  path = g_strdup_printf ("%s %s", (const char *) node->name, ref);
  sw_extras_add_attributes (extras, path, node, link_known);
  sw_extras_add_children (extras, path, node);
  g_ptr_array_add (links, g_steal_pointer (&ref));
  return TRUE;
}

static const Leaf *
find_leaf (const xmlNode *node)
{
  for (guint i = 0; i < G_N_ELEMENTS (leaves); i++)
    if (sw_xml_is (node, SW_EXERCISE_NS, leaves[i].name))
      return &leaves[i];

  return NULL;
}

static gboolean
read_leaf (xmlNode         *node,
           const Leaf      *leaf,
           SwExerciseText  *text,
           GPtrArray       *lists[],
           GPtrArray       *extras,
           GError         **error)
{
  char **single = G_STRUCT_MEMBER_P (text, leaf->offset);
  GPtrArray *list = lists[leaf - leaves];

  if (list == NULL && *single != NULL && **single != '\0')
    return set_twice (error, node);

  if (!sw_xml_is_plain (node))
    {
      g_autofree char *path
          = g_strdup_printf ("text %s/%s %u", text->language, leaf->name, list != NULL ? list->len + 1 : 1);

      sw_extras_add_node (extras, path, node);
    }

  if (list != NULL)
    {
      g_ptr_array_add (list, sw_xml_dup_paragraph (node));
      return TRUE;
    }

  g_free (*single);
  *single = sw_xml_dup_paragraph (node);
  return TRUE;
}

static void
end_list (SwExerciseText *text,
          const Leaf     *leaf,
          GPtrArray      *list)
{
  char ***strings = G_STRUCT_MEMBER_P (text, leaf->offset);

  g_ptr_array_add (list, NULL);
  g_strfreev (*strings);
  *strings = (char **) g_ptr_array_free (list, FALSE);
}

static gboolean
read_leaves (xmlNode         *node,
             SwExerciseText  *text,
             GPtrArray       *extras,
             GError         **error)
{
  g_autofree char *path = g_strdup_printf ("text %s", text->language);
  GPtrArray *lists[G_N_ELEMENTS (leaves)] = { NULL };
  gboolean good = TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (leaves); i++)
    if (leaves[i].is_list)
      lists[i] = g_ptr_array_new ();

  for (xmlNode *child = node->children; child != NULL && good; child = child->next)
    {
      const Leaf *leaf = find_leaf (child);

      if (leaf != NULL)
        good = read_leaf (child, leaf, text, lists, extras, error);
      else
        sw_extras_add_node (extras, path, child);
    }

  for (guint i = 0; i < G_N_ELEMENTS (leaves); i++)
    if (lists[i] != NULL)
      end_list (text, &leaves[i], lists[i]);

  return good;
}

static gboolean
read_text (xmlNode  *node,
           Reading  *reading,
           GError  **error)
{
  g_autofree char *language = NULL;
  g_autofree char *path = NULL;
  g_autoptr (SwExerciseText) text = NULL;

  if (!sw_xml_read_language (node, "xml:lang", &language, error))
    return FALSE;
  for (guint i = 0; i < reading->texts->len; i++)
    if (g_str_equal (((const SwExerciseText *) reading->texts->pdata[i])->language, language))
      {
        sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                          _ ("there is a second text in the language “%s”. Leave only one of them."), language);
        return FALSE;
      }

  text = sw_exercise_text_new (language);
  path = g_strdup_printf ("text %s", language);
  sw_extras_add_attributes (reading->extras, path, node, text_known);
  if (!read_leaves (node, text, reading->extras, error))
    return FALSE;
  if (*text->name == '\0')
    return sw_xml_set_missing (error, node, "name");

  g_ptr_array_add (reading->texts, g_steal_pointer (&text));
  return TRUE;
}

static gboolean
read_child (xmlNode  *node,
            Reading  *reading,
            GError  **error)
{
  if (sw_xml_is (node, SW_EXERCISE_NS, "about"))
    return read_about (node, reading, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "dose"))
    {
      if (reading->has_dose)
        return set_twice (error, node);
      reading->has_dose = TRUE;
      return sw_dose_read (node, &reading->facts.dose, reading->extras, error);
    }
  if (sw_xml_is (node, SW_EXERCISE_NS, "dose-reason"))
    {
      if (reading->facts.dose_reason != NULL)
        return set_twice (error, node);
      sw_dose_reason_read (node, &reading->facts, reading->extras);
      return TRUE;
    }
  if (sw_xml_is (node, SW_EXERCISE_NS, "review"))
    return reading->facts.has_review ? set_twice (error, node)
                                     : sw_review_read (node, &reading->facts, reading->extras, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "load-limit"))
    return read_limit (node, reading, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "easier"))
    return read_link (node, reading->easier, reading->extras, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "harder"))
    return read_link (node, reading->harder, reading->extras, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "text"))
    return read_text (node, reading, error);
  if (sw_xml_is (node, SW_EXERCISE_NS, "figure"))
    {
      if (reading->figure != NULL)
        return set_twice (error, node);
      reading->figure = sw_figure_xml_read (node, error);
      return reading->figure != NULL;
    }

  sw_extras_add_node (reading->extras, NULL, node);
  return TRUE;
}

/**
 * sw_exercise_read:
 * @node: an element
 * @error: return location for a #SwXmlError with file, line and what to do
 *
 * Returns: (transfer full): the exercise, or NULL
 */
SwExercise *
sw_exercise_read (xmlNode  *node,
                  GError  **error)
{
  g_auto (Reading) reading = { 0 };

  if (!sw_xml_is (node, SW_EXERCISE_NS, "exercise"))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("this is no exercise. Choose a file of the catalogue."));
      return NULL;
    }

  reading.texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  reading.easier = g_ptr_array_new_with_free_func (g_free);
  reading.harder = g_ptr_array_new_with_free_func (g_free);
  reading.extras = sw_extras_new ();
  sw_dose_init (&reading.facts.dose);

  if (!sw_xml_read_version (node, SW_EXERCISE_VERSION, reading.extras, error)
      || !sw_xml_read_id (node, "id", SW_ID_EXERCISE, &reading.facts.id, error)
      || !sw_xml_read_int (node, "revision", 1, 1000000, 1, &reading.facts.revision, error))
    return NULL;

  sw_extras_add_attributes (reading.extras, NULL, node, root_known);
  sw_extras_add_outside (reading.extras, node);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (!read_child (child, &reading, error))
      return NULL;

  if (!reading.has_about)
    {
      sw_xml_set_missing (error, node, "about");
      return NULL;
    }
  if (reading.texts->len == 0)
    {
      sw_xml_set_missing (error, node, "text");
      return NULL;
    }

  reading.facts.easier = (char **) sw_extras_end (reading.easier);
  reading.facts.harder = (char **) sw_extras_end (reading.harder);
  return sw_exercise_new (&reading.facts, reading.texts, reading.figure, sw_extras_end (reading.extras));
}

/**
 * sw_exercise_from_bytes:
 * @bytes: the content of a file
 * @name: what messages call the file
 * @error: return location for a #SwXmlError
 *
 * Returns: (transfer full): the exercise, or NULL
 */
SwExercise *
sw_exercise_from_bytes (GBytes      *bytes,
                        const char  *name,
                        GError     **error)
{
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, name, error);

  return doc != NULL ? sw_exercise_read (xmlDocGetRootElement (doc), error) : NULL;
}

static void
write_about (const SwExerciseFacts *facts,
             const char * const    *extras,
             SwXmlWriter           *writer)
{
  sw_xml_writer_open (writer, "about");
  sw_xml_write_term (writer, "region", SW_TYPE_REGION, facts->region);
  sw_xml_write_term (writer, "position", SW_TYPE_POSITION, facts->position);
  sw_xml_write_term (writer, "section", SW_TYPE_SECTION_KIND, facts->section);
  sw_xml_write_set (writer, "aims", SW_TYPE_AIM, facts->aims);
  sw_xml_write_set (writer, "equipment", SW_TYPE_EQUIPMENT, facts->equipment);
  sw_xml_write_set (writer, "muscles", SW_TYPE_MUSCLE, facts->muscles);
  sw_xml_write_term (writer, "directions", SW_TYPE_DIRECTION_KIND, facts->directions);
  sw_xml_write_set (writer, "cautions", SW_TYPE_CAUTION, facts->cautions);
  sw_xml_writer_attribute_double (writer, "pace-seconds", facts->pace_s);
  sw_extras_write_attributes (extras, "about", writer);
  sw_extras_write_nodes (extras, "about", writer);
  sw_xml_writer_close (writer);
}

static void
write_links (char               **ids,
             const char          *name,
             const char * const  *extras,
             SwXmlWriter         *writer)
{
  for (guint i = 0; ids[i] != NULL; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s %s", name, ids[i]);

      sw_xml_writer_open (writer, name);
      sw_xml_writer_attribute (writer, "ref", ids[i]);
      sw_extras_write_attributes (extras, path, writer);
      sw_extras_write_nodes (extras, path, writer);
      sw_xml_writer_close (writer);
    }
}

static void
write_leaf (const SwExerciseText *text,
            const Leaf           *leaf,
            guint                 n,
            const char           *words,
            const char * const   *extras,
            SwXmlWriter          *writer)
{
  g_autofree char *path = g_strdup_printf ("text %s/%s %u", text->language, leaf->name, n);

  if (sw_extras_has (extras, path))
    sw_extras_write_nodes (extras, path, writer);
  else
    sw_xml_writer_text_element (writer, leaf->name, words);
}

static void
write_text (const SwExerciseText *text,
            const char * const   *extras,
            SwXmlWriter          *writer)
{
  g_autofree char *path = g_strdup_printf ("text %s", text->language);

  sw_xml_writer_open (writer, "text");
  sw_xml_writer_attribute (writer, "xml:lang", text->language);
  sw_extras_write_attributes (extras, path, writer);

  for (guint i = 0; i < G_N_ELEMENTS (leaves); i++)
    {
      gpointer field = G_STRUCT_MEMBER_P (text, leaves[i].offset);

      if (!leaves[i].is_list && *(char **) field != NULL && **(char **) field != '\0')
        write_leaf (text, &leaves[i], 1, *(char **) field, extras, writer);
      else if (leaves[i].is_list)
        for (guint n = 0; (*(char ***) field)[n] != NULL; n++)
          write_leaf (text, &leaves[i], n + 1, (*(char ***) field)[n], extras, writer);
    }

  sw_extras_write_nodes (extras, path, writer);
  sw_xml_writer_close (writer);
}

/**
 * sw_exercise_write:
 * @exercise: an exercise
 * @writer: where to
 *
 * Writes the exercise element with its namespace.
 */
void
sw_exercise_write (SwExercise  *exercise,
                   SwXmlWriter *writer)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  const char * const *extras = sw_exercise_get_extras (exercise);

  sw_xml_writer_open (writer, "exercise");
  sw_xml_writer_attribute (writer, "xmlns", SW_EXERCISE_NS);
  sw_xml_write_version (writer, SW_EXERCISE_VERSION, extras);
  sw_xml_writer_attribute (writer, "id", facts->id);
  sw_xml_writer_attribute_int (writer, "revision", facts->revision);
  sw_extras_write_attributes (extras, NULL, writer);

  write_about (facts, extras, writer);
  sw_dose_write (&facts->dose, extras, writer);
  sw_dose_reason_write (facts, extras, writer);
  sw_review_write (facts, extras, writer);
  if (facts->load_limit.unit != SW_LOAD_NONE)
    {
      sw_xml_writer_open (writer, "load-limit");
      sw_xml_write_load (writer, "value", facts->load_limit);
      sw_extras_write_attributes (extras, "load-limit", writer);
      sw_extras_write_nodes (extras, "load-limit", writer);
      sw_xml_writer_close (writer);
    }
  write_links (facts->easier, "easier", extras, writer);
  write_links (facts->harder, "harder", extras, writer);
  for (guint i = 0; i < sw_exercise_get_n_texts (exercise); i++)
    write_text (sw_exercise_get_nth_text (exercise, i), extras, writer);
  if (sw_exercise_get_figure (exercise) != NULL)
    sw_figure_xml_write (sw_exercise_get_figure (exercise), writer);

  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

/**
 * sw_exercise_to_bytes:
 * @exercise: an exercise
 *
 * Returns: (transfer full): its file, the same bytes for equal exercises
 */
GBytes *
sw_exercise_to_bytes (SwExercise *exercise)
{
  g_autoptr (SwXmlWriter) writer = sw_xml_writer_new ();

  sw_exercise_write (exercise, writer);
  return sw_xml_writer_end (writer);
}
