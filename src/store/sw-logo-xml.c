/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's logo in the programme, as base64 (RFC 4648, 4), so that the handout can be made again years later. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-logo-xml.h"

static const char *const known[] = { "media-type", NULL };

/* The bytes that @text stands for; NULL when it is no base64. White space is no part of it. */
static GBytes *
decode (const char *text)
{
  g_autoptr (GString) digits = g_string_new (NULL);
  gsize n_padding = 0;
  guchar *bytes;
  gsize length;

  for (const char *c = text; *c != '\0'; c++)
    {
      if (g_ascii_isspace (*c))
        continue;
      if (*c == '=')
        n_padding++;
      else if (n_padding > 0 || !(g_ascii_isalnum (*c) || *c == '+' || *c == '/'))
        return NULL;
      g_string_append_c (digits, *c);
    }
  if (digits->len == 0 || digits->len % 4 != 0 || n_padding > 2)
    return NULL;

  bytes = g_base64_decode (digits->str, &length);
  return g_bytes_new_take (bytes, length);
}

/**
 * sw_logo_xml_read:
 * @node: the element
 * @extras: (element-type utf8): takes what a newer version put there
 * @error: return location for a #SwXmlError
 *
 * Returns: (transfer full) (nullable): the logo
 */
SwLogo *
sw_logo_xml_read (xmlNode    *node,
                  GPtrArray  *extras,
                  GError    **error)
{
  g_autofree char *text = sw_xml_dup_text (node);
  g_autofree char *media_type = sw_xml_dup_attribute (node, "media-type");
  g_autoptr (GBytes) bytes = decode (text);
  g_autoptr (SwLogo) logo = NULL;

  if (bytes == NULL)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("the logo is not base64. Take the element out and choose the logo again."));
      return NULL;
    }
  if (g_bytes_get_size (bytes) > SW_LOGO_MAX_BYTES)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_TOO_LARGE,
                        _ ("the logo has more than 256 kB. Take the element out and choose a smaller logo."));
      return NULL;
    }
  logo = sw_logo_new_detect (bytes);
  if (logo == NULL || g_strcmp0 (media_type, sw_logo_get_media_type (logo)) != 0)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("the logo must be a PNG picture with the media-type “image/png” or an SVG drawing with "
                           "“image/svg+xml”. Take the element out and choose the logo again."));
      return NULL;
    }

  sw_extras_add_attributes (extras, "logo", node, known);
  return g_steal_pointer (&logo);
}

/**
 * sw_logo_xml_write:
 * @logo: the logo
 * @extras: (array zero-terminated=1): those of the clinic
 * @writer: where to
 */
void
sw_logo_xml_write (const SwLogo       *logo,
                   const char * const *extras,
                   SwXmlWriter        *writer)
{
  gsize length;
  const guchar *bytes = g_bytes_get_data (logo->bytes, &length);
  g_autofree char *text = g_base64_encode (bytes, length);

  sw_xml_writer_open (writer, "logo");
  sw_xml_writer_attribute (writer, "media-type", sw_logo_get_media_type (logo));
  sw_extras_write_attributes (extras, "logo", writer);
  sw_xml_writer_text (writer, text);
  sw_xml_writer_close (writer);
}
