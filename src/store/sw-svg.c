/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An SVG drawing from anywhere, brought down to what is drawn: without what tells of its maker, without scripts, and
 * without anything that lies outside the file. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-svg.h"

#include "sw-logo-file.h"
#include "sw-xml.h"

#define SVG_NS "http://www.w3.org/2000/svg"
#define XLINK_NS "http://www.w3.org/1999/xlink"

/* Never drawn. */
static const char *const left_out[] = { "metadata", "title", "desc", "script", "foreignObject", NULL };

/* Drawn from other files, or from picture files within. */
static const char *const refused[] = { "image", "feImage", NULL };

static gboolean
is_in (const xmlNode      *node,
       const char * const *names)
{
  return g_strv_contains (names, (const char *) node->name);
}

static gboolean
has_ns (const xmlNs *ns,
        const char  *uri)
{
  return ns != NULL && ns->href != NULL && strcmp ((const char *) ns->href, uri) == 0;
}

/* Whether every url() in @style is of a part of the same drawing, and no other style sheet is asked for. */
static gboolean
stays_inside (const char *style)
{
  g_autofree char *lower = g_ascii_strdown (style, -1);

  if (strstr (lower, "@import") != NULL)
    return FALSE;
  for (const char *url = strstr (lower, "url("); url != NULL; url = strstr (url + 4, "url("))
    {
      const char *target = url + 4 + strspn (url + 4, " \t\r\n\"'");

      if (*target != '#')
        return FALSE;
    }
  return TRUE;
}

static gboolean
refuse (const xmlNode  *node,
        GError        **error)
{
  g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
               _ ("The drawing takes its “%s” (line %ld) from elsewhere or holds a picture file. Save it with everything "
                  "as lines and shapes, or as PNG, and choose that file."),
               (const char *) node->name, sw_xml_get_line (node));
  return FALSE;
}

static gboolean
clean_attribute (xmlNode  *node,
                 xmlAttr  *attribute,
                 GError  **error)
{
  const char *name = (const char *) attribute->name;
  gboolean linking = has_ns (attribute->ns, XLINK_NS);
  g_autofree char *value = sw_xml_dup_attribute_value (attribute);

  if ((attribute->ns != NULL && !linking && !has_ns (attribute->ns, (const char *) XML_XML_NAMESPACE))
      || g_str_has_prefix (name, "on") || (strcmp ((const char *) node->name, "a") == 0 && strcmp (name, "href") == 0))
    {
      xmlRemoveProp (attribute);
      return TRUE;
    }
  if ((strcmp (name, "href") == 0 && *value != '#') || !stays_inside (value))
    return refuse (node, error);

  return TRUE;
}

/* Namespaces of nothing that is left. */
static void
drop_namespaces (xmlNode *node)
{
  for (xmlNs **link = &node->nsDef; *link != NULL;)
    {
      xmlNs *ns = *link;

      if (has_ns (ns, SVG_NS) || has_ns (ns, XLINK_NS))
        {
          link = &ns->next;
          continue;
        }
      *link = ns->next;
      xmlFreeNs (ns);
    }
}

static void
drop (xmlNode *node)
{
  xmlUnlinkNode (node);
  xmlFreeNode (node);
}

/* The depth is bounded by the parser. */
static gboolean
clean_element (xmlNode  *node,
               GError  **error)
{
  if (is_in (node, refused))
    return refuse (node, error);

  for (xmlAttr *attribute = node->properties, *next; attribute != NULL; attribute = next)
    {
      next = attribute->next;
      if (!clean_attribute (node, attribute, error))
        return FALSE;
    }
  if (strcmp ((const char *) node->name, "style") == 0)
    {
      g_autofree char *style = sw_xml_dup_text (node);

      if (!stays_inside (style))
        return refuse (node, error);
    }

  for (xmlNode *child = node->children, *next; child != NULL; child = next)
    {
      next = child->next;
      if (child->type == XML_TEXT_NODE || child->type == XML_CDATA_SECTION_NODE)
        continue;
      if (child->type != XML_ELEMENT_NODE || !has_ns (child->ns, SVG_NS) || is_in (child, left_out))
        drop (child);
      else if (!clean_element (child, error))
        return FALSE;
    }
  drop_namespaces (node);
  return TRUE;
}

/**
 * sw_svg_clean:
 * @bytes: a file that may come from anywhere
 * @error: return location for an error of the domain %SW_LOGO_ERROR
 *
 * Takes out what is not drawn, and refuses what lies outside the file.
 *
 * Returns: (transfer full) (nullable): the drawing; cleaning it again changes nothing
 */
GBytes *
sw_svg_clean (GBytes  *bytes,
              GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (xmlDoc) document = sw_xml_parse_bytes (bytes, "SVG", &problem);
  xmlNode *root = document != NULL ? xmlDocGetRootElement (document) : NULL;
  xmlChar *text;
  int length;

  if (root == NULL || !has_ns (root->ns, SVG_NS) || strcmp ((const char *) root->name, "svg") != 0)
    {
      g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
                   _ ("The drawing cannot be read as SVG: %s Save it as plain SVG, or as PNG, and choose that file."),
                   problem != NULL ? sw_xml_error_get_words (problem) : _ ("its outermost element is not “svg”."));
      return NULL;
    }

  for (xmlNode *node = document->children, *next; node != NULL; node = next)
    {
      next = node->next;
      if (node != root)
        drop (node);
    }
  if (!clean_element (root, error))
    return NULL;

  xmlDocDumpMemoryEnc (document, &text, &length, "UTF-8");
  return g_bytes_new_with_free_func (text, (gsize) length, xmlFree, text);
}
