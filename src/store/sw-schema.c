/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holds a document against its RELAX NG schema. The readers do not need that: their own messages are better. But a
 * schema sees what a reader forgives, and other programs rely on it. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-data-dir.h"
#include "sw-problem.h"
#include "sw-schema.h"
#include "sw-xml.h"

#define MAX_PROBLEMS 20

/* What libxml2's callback needs. */
typedef struct
{
  const char *file;
  GPtrArray *problems;
} Check;

static void
problem_found_cb (void     *data,
                  xmlError *error)
{
  Check *check = data;
  g_autofree char *words = g_strchomp (g_strdup (error->message != NULL ? error->message : ""));
  const xmlNode *node = error->node;
  /* Translators: the words of the schema checker, in English */
  g_autofree char *text
      = g_strdup_printf (_ ("this is not as the schema has it (%s). Compare with a file made by the program."), words);

  if (check->problems->len < MAX_PROBLEMS)
    g_ptr_array_add (check->problems,
                     sw_problem_new (check->file, node != NULL ? sw_xml_get_line (node) : error->line, text));
}

static xmlRelaxNG *
load_schema (const char  *schema,
             Check       *check,
             GError     **error)
{
  g_autofree char *path = sw_data_path ("schema", schema, NULL);
  g_autoptr (xmlRelaxNGParserCtxt) context = xmlRelaxNGNewParserCtxt (path);
  xmlRelaxNG *loaded = NULL;

  if (context != NULL)
    {
      xmlRelaxNGSetParserStructuredErrors (context, problem_found_cb, check);
      loaded = xmlRelaxNGParse (context);
    }
  if (loaded == NULL)
    g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_READ,
                 _ ("%s: the schema cannot be read. The program is not wholly installed; install it again."), path);

  return loaded;
}

/**
 * sw_schema_check:
 * @bytes: the content of a file
 * @file: its path, for the problems
 * @schema: the schema's file name, such as "exercise.rng"
 * @error: return location for a #SwXmlError when either cannot be read
 *
 * Returns: (transfer full) (element-type SwProblem): what is not as the schema has it, at most 20; or NULL
 */
GPtrArray *
sw_schema_check (GBytes      *bytes,
                 const char  *file,
                 const char  *schema,
                 GError     **error)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_problem_free);
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, file, error);
  g_autoptr (xmlRelaxNG) loaded = NULL;
  g_autoptr (xmlRelaxNGValidCtxt) context = NULL;
  Check check = { file, problems };

  if (doc == NULL)
    return NULL;

  loaded = load_schema (schema, &check, error);
  if (loaded == NULL)
    return NULL;

  context = xmlRelaxNGNewValidCtxt (loaded);
  xmlRelaxNGSetValidStructuredErrors (context, problem_found_cb, &check);
  if (xmlRelaxNGValidateDoc (context, doc) != 0 && problems->len == 0)
    g_ptr_array_add (problems, sw_problem_new (file, 0, _ ("this is not as the schema has it. Compare with a file made by "
                                                           "the program.")));

  return g_steal_pointer (&problems);
}
