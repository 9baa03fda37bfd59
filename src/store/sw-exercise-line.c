/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where in its file an exercise says something. Looked up anew for each problem: lines are no part of the model, and
 * most files have no problem. */
#include "config.h"

#include <string.h>

#include "sw-exercise-line.h"
#include "sw-exercise-xml.h"
#include "sw-file.h"
#include "sw-xml-values.h"

static gboolean
has_content (const xmlNode *node,
             const char    *content)
{
  g_autofree char *ref = sw_xml_dup_attribute (node, "ref");
  g_autofree char *language = sw_xml_dup_attribute (node, "xml:lang");
  g_autofree char *words = NULL;

  if (content == NULL || g_strcmp0 (ref, content) == 0 || g_strcmp0 (language, content) == 0)
    return TRUE;
  if (ref != NULL || language != NULL)
    return FALSE;

  words = sw_xml_dup_paragraph (node);
  return strstr (words, content) != NULL;
}

/* Within @parent and its texts, in the order of the file. */
static long
find_in (const xmlNode *parent,
         const char    *element,
         const char    *content)
{
  for (const xmlNode *node = parent->children; node != NULL; node = node->next)
    {
      gboolean is_text = sw_xml_is (node, SW_EXERCISE_NS, "text");
      gboolean wanted = element == NULL ? node->type == XML_ELEMENT_NODE && !is_text
                                        : sw_xml_is (node, SW_EXERCISE_NS, element);
      long below;

      if (wanted && has_content (node, content))
        return sw_xml_get_line (node);
      below = is_text ? find_in (node, element, content) : 0;
      if (below > 0)
        return below;
    }

  return 0;
}

/**
 * sw_exercise_find_line:
 * @bytes: the file of an exercise
 * @element: (nullable): the name of an element of the exercise or of its texts; any when NULL
 * @content: (nullable): the exercise it refers to, its language, or words that stand in it
 *
 * Returns: the line of the first such element, or 0
 */
long
sw_exercise_find_line (GBytes     *bytes,
                       const char *element,
                       const char *content)
{
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, "", NULL);

  return doc != NULL ? find_in (xmlDocGetRootElement (doc), element, content) : 0;
}

/**
 * sw_exercise_find_line_in_file:
 * @path: the file of an exercise
 * @element: (nullable): see sw_exercise_find_line()
 * @content: (nullable): see sw_exercise_find_line()
 *
 * Returns: the line of the first such element, or 0, also when the file cannot be read
 */
long
sw_exercise_find_line_in_file (const char *path,
                               const char *element,
                               const char *content)
{
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, NULL);

  return bytes != NULL ? sw_exercise_find_line (bytes, element, content) : 0;
}
