/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a document, and where, in one error: shown whole in the window, in parts by a tool. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-xml.h"

/* What an error of ours knows beside its message. */
typedef struct
{
  long line;
  char *words;
} SwXmlErrorPrivate;

static void
sw_xml_error_private_init (SwXmlErrorPrivate *private)
{
  private->line = 0;
  private->words = NULL;
}

static void
sw_xml_error_private_copy (const SwXmlErrorPrivate *from,
                           SwXmlErrorPrivate       *to)
{
  to->line = from->line;
  to->words = g_strdup (from->words);
}

static void
sw_xml_error_private_clear (SwXmlErrorPrivate *private)
{
  g_free (private->words);
}

G_DEFINE_EXTENDED_ERROR (SwXmlError, sw_xml_error)

/**
 * sw_xml_error_set:
 * @error: (out) (optional): where to put the error
 * @code: what kind of error
 * @name: what messages call the file
 * @line: the line, from 1, or 0 for the whole file
 * @words: what is wrong and what to do
 *
 * Makes an error whose message is "FILE, line N: words", or "FILE: words" without a line.
 */
void
sw_xml_error_set (GError     **error,
                  SwXmlError   code,
                  const char  *name,
                  long         line,
                  const char  *words)
{
  SwXmlErrorPrivate *private;

  if (error == NULL)
    return;

  if (line > 0)
    g_set_error (error, SW_XML_ERROR, code,
                 /* Translators: a file, a line in it, what is wrong */
                 _ ("%s, line %ld: %s"), name, line, words);
  else
    g_set_error (error, SW_XML_ERROR, code, "%s: %s", name, words);

  private = sw_xml_error_get_private (*error);
  private->line = line;
  private->words = g_strdup (words);
}

/**
 * sw_xml_error_get_line:
 * @error: any error
 *
 * Returns: the line it is about, from 1, or 0 when it is about no line
 */
long
sw_xml_error_get_line (const GError *error)
{
  SwXmlErrorPrivate *private = error->domain == SW_XML_ERROR ? sw_xml_error_get_private (error) : NULL;

  return private != NULL ? private->line : 0;
}

/**
 * sw_xml_error_get_words:
 * @error: any error
 *
 * Returns: (transfer none): its message without file and line, where they are known apart; else all of it
 */
const char *
sw_xml_error_get_words (const GError *error)
{
  SwXmlErrorPrivate *private = error->domain == SW_XML_ERROR ? sw_xml_error_get_private (error) : NULL;

  return private != NULL && private->words != NULL ? private->words : error->message;
}
