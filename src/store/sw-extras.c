/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * XML that we do not know, a newer version's or a comment, is kept with the object it was found in and written
 * back after what we do know.
 *
 * An entry is "@name=value" for an attribute and begins with "<" for anything else. What was found in an element
 * that has no object of its own (a dose, a list) is kept by the object round it, the way to that element in
 * front: "dose/@name=value", "text en/step 2/@name=value". */
#include "config.h"

#include <string.h>

#include "sw-extras.h"

/**
 * sw_extras_new:
 *
 * Returns: (transfer full) (element-type utf8): a list to add to
 */
GPtrArray *
sw_extras_new (void)
{
  return g_ptr_array_new_with_free_func (g_free);
}

static void
add (GPtrArray  *extras,
     const char *path,
     char       *entry)
{
  if (path != NULL)
    {
      g_ptr_array_add (extras, g_strconcat (path, "/", entry, NULL));
      g_free (entry);
    }
  else
    {
      g_ptr_array_add (extras, entry);
    }
}

static gboolean
declares (const xmlNode *node,
          const xmlNs   *ns)
{
  for (const xmlNs *own = node->nsDef; own != NULL; own = own->next)
    if (own == ns)
      return TRUE;

  return FALSE;
}

/* An element must not declare a prefix twice. */
static void
add_declaration (GPtrArray   *extras,
                 const char  *path,
                 const xmlNs *ns)
{
  g_autofree char *entry
      = g_strdup_printf ("%s%s@xmlns:%s=%s", path != NULL ? path : "", path != NULL ? "/" : "",
                         (const char *) ns->prefix, (const char *) ns->href);

  if (!g_ptr_array_find_with_equal_func (extras, entry, g_str_equal, NULL))
    g_ptr_array_add (extras, g_steal_pointer (&entry));
}

static void
add_attribute (GPtrArray     *extras,
               const char    *path,
               const xmlNode *node,
               const xmlAttr *attribute)
{
  g_autofree char *text = sw_xml_dup_attribute_value (attribute);
  const xmlNs *ns = attribute->ns;

  if (ns == NULL || ns->prefix == NULL)
    {
      add (extras, path, g_strdup_printf ("@%s=%s", (const char *) attribute->name, text));
      return;
    }

  /* The declaration may stand on an element further out, which this object can be parted from. */
  if (!declares (node, ns) && strcmp ((const char *) ns->prefix, "xml") != 0)
    add_declaration (extras, path, ns);
  add (extras, path,
       g_strdup_printf ("@%s:%s=%s", (const char *) ns->prefix, (const char *) attribute->name, text));
}

static gboolean
is_known (const xmlAttr      *attribute,
          const char * const *known)
{
  /* xml:lang is the one attribute of ours in a namespace. */
  if (attribute->ns != NULL)
    return xmlStrEqual (attribute->ns->href, XML_XML_NAMESPACE)
           && strcmp ((const char *) attribute->name, "lang") == 0 && g_strv_contains (known, "xml:lang");

  return g_strv_contains (known, (const char *) attribute->name);
}

/**
 * sw_extras_add_attributes:
 * @extras: the list
 * @path: (nullable): the way from the object's element to @node
 * @node: an element
 * @known: (array zero-terminated=1): the attributes we know
 *
 * Keeps all other attributes, and the declarations of prefixes.
 */
void
sw_extras_add_attributes (GPtrArray          *extras,
                          const char         *path,
                          xmlNode            *node,
                          const char * const *known)
{
  for (const xmlNs *ns = node->nsDef; ns != NULL; ns = ns->next)
    if (ns->prefix != NULL)
      add_declaration (extras, path, ns);

  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    if (!is_known (attribute, known))
      add_attribute (extras, path, node, attribute);
}

static void
append_declaration (GString     *text,
                    const xmlNs *ns)
{
  if (ns->prefix != NULL)
    g_string_append_printf (text, " xmlns:%s=\"", (const char *) ns->prefix);
  else
    g_string_append (text, " xmlns=\"");
  sw_xml_escape (text, ns->href != NULL ? (const char *) ns->href : "", TRUE);
  g_string_append_c (text, '"');
}

/* Whether @ns is declared on @top or below it, so that a fragment that begins at @top brings it along. */
static gboolean
is_declared_within (const xmlNode *node,
                    const xmlNode *top,
                    const xmlNs   *ns)
{
  for (; node != NULL; node = node->parent)
    {
      if (declares (node, ns))
        return TRUE;
      if (node == top)
        return FALSE;
    }

  return FALSE;
}

/* Collects the prefixed namespaces that the fragment at @top uses and does not declare. */
static void
find_foreign (const xmlNode *node,
              const xmlNode *top,
              GPtrArray     *foreign)
{
  const xmlNs *ns = node->ns;

  if (ns != NULL && ns->prefix != NULL && !is_declared_within (node, top, ns)
      && !g_ptr_array_find (foreign, ns, NULL))
    g_ptr_array_add (foreign, (gpointer) ns);

  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    if (attribute->ns != NULL && strcmp ((const char *) attribute->ns->prefix, "xml") != 0
        && !is_declared_within (node, top, attribute->ns) && !g_ptr_array_find (foreign, attribute->ns, NULL))
      g_ptr_array_add (foreign, attribute->ns);

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      find_foreign (child, top, foreign);
}

static void
append_name (GString       *text,
             const xmlNs   *ns,
             const xmlChar *name)
{
  if (ns != NULL && ns->prefix != NULL)
    g_string_append_printf (text, "%s:", (const char *) ns->prefix);
  g_string_append (text, (const char *) name);
}

static void append_node (GString       *text,
                         const xmlNode *node,
                         const xmlNode *top);

static void
append_element (GString       *text,
                const xmlNode *node,
                const xmlNode *top)
{
  g_string_append_c (text, '<');
  append_name (text, node->ns, node->name);
  for (const xmlNs *ns = node->nsDef; ns != NULL; ns = ns->next)
    append_declaration (text, ns);
  if (node == top)
    {
      g_autoptr (GPtrArray) foreign = g_ptr_array_new ();

      find_foreign (top, top, foreign);
      for (guint i = 0; i < foreign->len; i++)
        append_declaration (text, foreign->pdata[i]);
    }

  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    {
      g_autofree char *value = sw_xml_dup_attribute_value (attribute);

      g_string_append_c (text, ' ');
      append_name (text, attribute->ns, attribute->name);
      g_string_append (text, "=\"");
      sw_xml_escape (text, value, TRUE);
      g_string_append_c (text, '"');
    }

  if (node->children == NULL)
    {
      g_string_append (text, "/>");
      return;
    }

  g_string_append_c (text, '>');
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    append_node (text, child, top);
  g_string_append (text, "</");
  append_name (text, node->ns, node->name);
  g_string_append_c (text, '>');
}

static void
append_node (GString       *text,
             const xmlNode *node,
             const xmlNode *top)
{
  const char *content = node->content != NULL && node->type != XML_ELEMENT_NODE ? (const char *) node->content : "";

  if (node->type == XML_ELEMENT_NODE)
    append_element (text, node, top);
  else if (node->type == XML_TEXT_NODE)
    sw_xml_escape (text, content, FALSE);
  else if (node->type == XML_COMMENT_NODE)
    g_string_append_printf (text, "<!--%s-->", content);
  else if (node->type == XML_PI_NODE)
    g_string_append_printf (text, "<?%s%s%s?>", (const char *) node->name, *content != '\0' ? " " : "", content);
}

/**
 * sw_extras_add_node:
 * @extras: the list
 * @path: (nullable): the way from the object's element to the parent of @node
 * @node: an element, comment or processing instruction we do not know; white space is passed over
 *
 * Keeps the node with all that is in it. Prefixes are declared in the fragment itself, so that it can stand anywhere;
 * the default namespace is that of the object it belongs to.
 */
void
sw_extras_add_node (GPtrArray     *extras,
                    const char    *path,
                    const xmlNode *node)
{
  GString *text;

  if (node->type != XML_ELEMENT_NODE && node->type != XML_COMMENT_NODE && node->type != XML_PI_NODE)
    return;

  text = g_string_new (NULL);
  append_node (text, node, node);
  add (extras, path, g_string_free (text, FALSE));
}

/**
 * sw_extras_add_children:
 * @extras: the list
 * @path: (nullable): the way from the object's element to @node
 * @node: an element none of whose child elements we know
 *
 * Keeps all of them.
 */
void
sw_extras_add_children (GPtrArray  *extras,
                        const char *path,
                        xmlNode    *node)
{
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    sw_extras_add_node (extras, path, child);
}

/**
 * sw_extras_add_outside:
 * @extras: the list
 * @root: the root element of a document
 *
 * Keeps comments that stand before or behind the root element; they are written inside it.
 */
void
sw_extras_add_outside (GPtrArray *extras,
                       xmlNode   *root)
{
  if (root->parent == NULL || root->parent->type != XML_DOCUMENT_NODE)
    return;

  for (xmlNode *node = root->parent->children; node != NULL; node = node->next)
    if (node != root)
      sw_extras_add_node (extras, NULL, node);
}

/**
 * sw_extras_end:
 * @extras: the list, to which nothing may be added any more
 *
 * Returns: (transfer none) (array zero-terminated=1): its entries, as the objects of the model take them
 */
const char * const *
sw_extras_end (GPtrArray *extras)
{
  g_ptr_array_add (extras, NULL);
  return (const char * const *) extras->pdata;
}

/* The part of @entry behind @path, or NULL when it belongs elsewhere. */
static const char *
entry_at (const char *entry,
          const char *path,
          char        kind)
{
  gsize length = path != NULL ? strlen (path) : 0;

  if (path != NULL)
    {
      if (strncmp (entry, path, length) != 0 || entry[length] != '/')
        return NULL;
      entry += length + 1;
    }

  return *entry == kind ? entry : NULL;
}

/**
 * sw_extras_write_attributes:
 * @extras: (array zero-terminated=1): an object's extras
 * @path: (nullable): the way to the element just opened
 * @writer: where to
 */
void
sw_extras_write_attributes (const char * const *extras,
                            const char         *path,
                            SwXmlWriter        *writer)
{
  for (guint i = 0; extras[i] != NULL; i++)
    {
      const char *entry = entry_at (extras[i], path, '@');
      const char *equals = entry != NULL ? strchr (entry, '=') : NULL;

      if (equals != NULL)
        {
          g_autofree char *name = g_strndup (entry + 1, (gsize) (equals - entry - 1));

          sw_xml_writer_attribute (writer, name, equals + 1);
        }
    }
}

/**
 * sw_extras_write_nodes:
 * @extras: (array zero-terminated=1): an object's extras
 * @path: (nullable): the way to the open element
 * @writer: where to
 */
void
sw_extras_write_nodes (const char * const *extras,
                       const char         *path,
                       SwXmlWriter        *writer)
{
  for (guint i = 0; extras[i] != NULL; i++)
    {
      const char *entry = entry_at (extras[i], path, '<');

      if (entry != NULL)
        sw_xml_writer_raw (writer, entry);
    }
}

/**
 * sw_extras_has:
 * @extras: (array zero-terminated=1): an object's extras
 * @path: the way to an element
 *
 * Returns: whether anything was kept that stood in that element itself
 */
gboolean
sw_extras_has (const char * const *extras,
               const char         *path)
{
  for (guint i = 0; extras[i] != NULL; i++)
    if (entry_at (extras[i], path, '@') != NULL || entry_at (extras[i], path, '<') != NULL)
      return TRUE;

  return FALSE;
}

/**
 * sw_extras_write_leaf:
 * @extras: unknown XML of the object
 * @path: where in it the element's own stand
 * @name: of an element that holds text alone
 * @text: what it holds
 * @writer: where to
 *
 * Writes the element with the attributes this version does not know.
 */
void
sw_extras_write_leaf (const char * const *extras,
                      const char         *path,
                      const char         *name,
                      const char         *text,
                      SwXmlWriter        *writer)
{
  if (!sw_extras_has (extras, path))
    {
      sw_xml_writer_text_element (writer, name, text);
      return;
    }

  sw_xml_writer_open (writer, name);
  sw_extras_write_attributes (extras, path, writer);
  sw_xml_writer_text (writer, text);
  sw_xml_writer_close (writer);
}
