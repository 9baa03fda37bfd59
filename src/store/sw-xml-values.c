/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Single attributes of our documents: words of the vocabularies, loads, ids, dates. Messages end with what to do. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-units.h"
#include "sw-xml-values.h"

#define MAX_ID_LENGTH 64
#define MAX_LANGUAGE_LENGTH 35 /* RFC 5646, section 4.4.1 */

#define NEWER_VERSION "version/@newer="

static const char *const load_units[] = { "", "kg", "lb", "N" };
static const double load_limits[] = { 0.0, 500.0, 1100.0, 5000.0 };

/**
 * sw_xml_set_missing:
 * @node: an element
 * @name: an attribute it must have
 *
 * Returns: FALSE, with the error that says so
 */
gboolean
sw_xml_set_missing (GError        **error,
                    const xmlNode  *node,
                    const char     *name)
{
  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                    /* Translators: an element, an attribute */
                    _ ("“%s” lacks “%s”. Add it, or take the version before it."), (const char *) node->name, name);
  return FALSE;
}

/* All words of a vocabulary, for the message; long ones are cut, the schema has them all. */
static char *
describe_words (GType type)
{
  g_autoptr (GString) words = g_string_new (NULL);
  int n = sw_term_get_n_values (type);

  for (int i = 0; i < n; i++)
    {
      if (words->len > 160)
        {
          g_string_append (words, ", …");
          break;
        }
      g_string_append_printf (words, "%s%s", i > 0 ? ", " : "", sw_term_to_nick (type, i));
    }

  return g_string_free (g_steal_pointer (&words), FALSE);
}

static void
set_word_error (GError        **error,
                const xmlNode  *node,
                const char     *name,
                const char     *word,
                GType           type)
{
  g_autofree char *words = describe_words (type);

  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                    /* Translators: an attribute, what it says, the words it may say */
                    _ ("“%s” says “%s”, which is none of the words it may say. Use one of: %s."), name, word, words);
}

/**
 * sw_xml_read_term:
 * @node: an element
 * @name: an attribute
 * @type: the vocabulary
 * @fallback: what a missing attribute means, or %SW_NO_FALLBACK when it must not be missing
 * @out: (out): the value; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when the attribute is no word of @type
 */
gboolean
sw_xml_read_term (const xmlNode  *node,
                  const char     *name,
                  GType           type,
                  int             fallback,
                  int            *out,
                  GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);

  if (text == NULL && fallback == SW_NO_FALLBACK)
    return sw_xml_set_missing (error, node, name);
  if (text == NULL)
    {
      *out = fallback;
      return TRUE;
    }
  if (sw_term_from_nick (type, text, out))
    return TRUE;

  set_word_error (error, node, name, text, type);
  return FALSE;
}

/**
 * sw_xml_read_set:
 * @node: an element
 * @name: an attribute; a missing one is the empty set
 * @type: the vocabulary
 * @out: (out): the set; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when a word is none of @type
 */
gboolean
sw_xml_read_set (const xmlNode  *node,
                 const char     *name,
                 GType           type,
                 SwSet          *out,
                 GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);
  g_autofree char *unknown = NULL;

  if (sw_set_from_nicks (type, text != NULL ? text : "", out, &unknown))
    return TRUE;

  set_word_error (error, node, name, unknown, type);
  return FALSE;
}

static gboolean
parse_load (const char *text,
            SwLoad     *load)
{
  char *end;
  double value = g_ascii_strtod (text, &end);

  if (end == text || *end != ' ' || strspn (text, "0123456789.") != (gsize) (end - text))
    return FALSE;

  for (int unit = SW_LOAD_KG; unit <= SW_LOAD_NEWTON; unit++)
    if (strcmp (end + 1, load_units[unit]) == 0 && value >= 0.0 && value <= load_limits[unit])
      {
        load->unit = (SwLoadUnit) unit;
        load->value = value;
        return TRUE;
      }

  return FALSE;
}

/**
 * sw_xml_read_load:
 * @node: an element
 * @name: an attribute; a missing one is no load
 * @out: (out): the load; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when the attribute is not a load such as "2.5 kg" within its limits
 */
gboolean
sw_xml_read_load (const xmlNode  *node,
                  const char     *name,
                  SwLoad         *out,
                  GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);
  SwLoad load = { SW_LOAD_NONE, 0.0 };

  if (text != NULL && !parse_load (text, &load))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
                        _ ("“%s” must be a load from 0 to 500 kg, 1100 lb or 5000 N such as “2.5 kg”, not “%s”. Correct it "
                           "and open the file again."),
                        name, text);
      return FALSE;
    }

  *out = load;
  return TRUE;
}

/**
 * sw_is_id:
 * @id: any text
 * @allowed: the characters an id may have
 *
 * Returns: whether @id has 1 to 64 of them and nothing else, so that it can be a file name too
 */
gboolean
sw_is_id (const char *id,
          const char *allowed)
{
  gsize length = strlen (id);

  return length > 0 && length <= MAX_ID_LENGTH && strspn (id, allowed) == length;
}

/**
 * sw_xml_read_id:
 * @node: an element
 * @name: an attribute it must have
 * @allowed: the characters it may have, %SW_ID_EXERCISE or %SW_ID_ANY
 * @out: (out) (transfer full): the id; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when it is missing or no id
 */
gboolean
sw_xml_read_id (const xmlNode  *node,
                const char     *name,
                const char     *allowed,
                char          **out,
                GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);

  if (text == NULL)
    return sw_xml_set_missing (error, node, name);
  if (!sw_is_id (text, allowed))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        strcmp (allowed, SW_ID_EXERCISE) == 0
                            ? _ ("“%s” must be 1 to 64 small letters, digits and hyphens, not “%s”. Correct it and open the "
                                 "file again.")
                            : _ ("“%s” must be 1 to 64 letters, digits, hyphens and underscores, not “%s”. Correct it and "
                                 "open the file again."),
                        name, text);
      return FALSE;
    }

  *out = g_steal_pointer (&text);
  return TRUE;
}

/**
 * sw_is_date:
 * @text: any text
 *
 * Returns: whether @text is a day of the calendar as ISO 8601 writes it, "2026-11-20"
 */
gboolean
sw_is_date (const char *text)
{
  int year, month, day;

  if (strlen (text) != 10 || text[4] != '-' || text[7] != '-' || strspn (text, "0123456789-") != 10)
    return FALSE;

  year = (int) g_ascii_strtoll (text, NULL, 10);
  month = (int) g_ascii_strtoll (text + 5, NULL, 10);
  day = (int) g_ascii_strtoll (text + 8, NULL, 10);
  return year > 0 && month > 0 && day > 0
         && g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year);
}

/**
 * sw_xml_read_date:
 * @node: an element
 * @name: an attribute
 * @out: (out) (transfer full): the day, "" when the attribute is missing; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when it is not a day of the calendar as in 2026-11-20
 */
gboolean
sw_xml_read_date (const xmlNode  *node,
                  const char     *name,
                  char          **out,
                  GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);

  if (text != NULL && !sw_is_date (text))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
                        _ ("“%s” must be a day such as 2026-11-20, not “%s”. Correct it and open the file again."), name, text);
      return FALSE;
    }

  *out = text != NULL ? g_steal_pointer (&text) : g_strdup ("");
  return TRUE;
}

/**
 * sw_is_language:
 * @tag: any text
 *
 * Returns: whether @tag has the form of a BCP 47 language tag; whether there is such a language is not looked up
 */
gboolean
sw_is_language (const char *tag)
{
  gsize length = strlen (tag);

  return length >= 2 && length <= MAX_LANGUAGE_LENGTH && g_ascii_isalpha (tag[0]) && g_ascii_isalpha (tag[1])
         && tag[length - 1] != '-' && strspn (tag, SW_ID_ANY) == length && strchr (tag, '_') == NULL
         && strstr (tag, "--") == NULL;
}

/**
 * sw_xml_read_language:
 * @node: an element
 * @name: the attribute, "language" or "xml:lang"
 * @out: (out) (transfer full): the tag; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when it is missing or not a language tag
 */
gboolean
sw_xml_read_language (const xmlNode  *node,
                      const char     *name,
                      char          **out,
                      GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);

  if (text == NULL)
    return sw_xml_set_missing (error, node, name);
  if (!sw_is_language (text))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("“%s” must be a language such as “en” or “pt-BR”, not “%s”. Correct it and open the file again."),
                        name, text);
      return FALSE;
    }

  *out = g_steal_pointer (&text);
  return TRUE;
}

/**
 * sw_xml_dup_paragraph:
 * @node: an element with prose
 *
 * Prose may be broken into lines in the file; in the document it is one paragraph.
 *
 * Returns: (transfer full): its text with single spaces
 */
char *
sw_xml_dup_paragraph (const xmlNode *node)
{
  g_autofree char *text = sw_xml_dup_text (node);
  char *to = text;

  for (const char *from = g_strstrip (text); *from != '\0'; from++)
    {
      if (!g_ascii_isspace (*from))
        *to++ = *from;
      else if (to > text && to[-1] != ' ')
        *to++ = ' ';
    }

  *to = '\0';
  return g_steal_pointer (&text);
}

/**
 * sw_xml_is_plain:
 * @node: an element with prose
 *
 * Attributes or markup inside are a newer version's; then the element must be kept as it stands too.
 *
 * Returns: whether it holds text and nothing else
 */
gboolean
sw_xml_is_plain (const xmlNode *node)
{
  if (node->properties != NULL || node->nsDef != NULL)
    return FALSE;

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type != XML_TEXT_NODE)
      return FALSE;

  return TRUE;
}

/**
 * sw_xml_read_version:
 * @node: the root element of one of our documents
 * @ours: the version we write
 * @extras: (element-type utf8): takes a newer version as "version/@newer=N"
 *
 * A version newer than ours is read all the same: what is unknown in it is kept, and the version with it.
 *
 * Returns: FALSE with a #SwXmlError when the version is not a positive whole number
 */
gboolean
sw_xml_read_version (const xmlNode  *node,
                     int             ours,
                     GPtrArray      *extras,
                     GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, "version");
  int version;

  if (text == NULL)
    return sw_xml_set_missing (error, node, "version");
  if (!sw_xml_read_int (node, "version", 1, 1000000, ours, &version, error))
    return FALSE;

  if (version > ours)
    g_ptr_array_add (extras, g_strdup_printf ("%s%d", NEWER_VERSION, version));
  return TRUE;
}

/**
 * sw_xml_write_version:
 * @ours: the version we write
 * @extras: (array zero-terminated=1): where sw_xml_read_version() kept a newer one
 */
void
sw_xml_write_version (SwXmlWriter        *writer,
                      int                 ours,
                      const char * const *extras)
{
  for (guint i = 0; extras[i] != NULL; i++)
    if (g_str_has_prefix (extras[i], NEWER_VERSION))
      {
        sw_xml_writer_attribute (writer, "version", extras[i] + strlen (NEWER_VERSION));
        return;
      }

  sw_xml_writer_attribute_int (writer, "version", ours);
}

/**
 * sw_xml_write_term:
 * @name: an attribute
 * @type: the vocabulary
 * @value: one of its values
 */
void
sw_xml_write_term (SwXmlWriter *writer,
                   const char  *name,
                   GType        type,
                   int          value)
{
  sw_xml_writer_attribute (writer, name, sw_term_to_nick (type, value));
}

/**
 * sw_xml_write_set:
 * @name: an attribute, left out for an empty set
 * @type: the vocabulary
 * @set: a set of its values
 */
void
sw_xml_write_set (SwXmlWriter *writer,
                  const char  *name,
                  GType        type,
                  SwSet        set)
{
  g_autofree char *words = sw_set_to_nicks (type, set);

  sw_xml_write_string (writer, name, words);
}

/**
 * sw_xml_write_load:
 * @name: an attribute, left out for no load
 * @load: the load; three decimals are kept
 */
void
sw_xml_write_load (SwXmlWriter *writer,
                   const char  *name,
                   SwLoad       load)
{
  g_autofree char *number = NULL;
  g_autofree char *text = NULL;

  if (load.unit == SW_LOAD_NONE)
    return;

  number = sw_number_to_string (load.value, 3);
  text = g_strdup_printf ("%s %s", number, load_units[load.unit]);
  sw_xml_writer_attribute (writer, name, text);
}

/**
 * sw_xml_write_string:
 * @name: an attribute, left out for an empty value
 * @value: (nullable): its value
 */
void
sw_xml_write_string (SwXmlWriter *writer,
                     const char  *name,
                     const char  *value)
{
  if (value != NULL && *value != '\0')
    sw_xml_writer_attribute (writer, name, value);
}

/**
 * sw_xml_write_date:
 * @name: an attribute, left out for what is no day: a file that cannot be read again helps nobody
 * @date: (nullable): a day
 */
void
sw_xml_write_date (SwXmlWriter *writer,
                   const char  *name,
                   const char  *date)
{
  if (date != NULL && sw_is_date (date))
    sw_xml_writer_attribute (writer, name, date);
}
