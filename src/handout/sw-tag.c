/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The structure of the handout: which text is a heading, a list, a cell, in which order it is read. Screen and
 * printer ignore it; the PDF carries it. */
#include "config.h"

#include "sw-tag.h"

static void
free_tag (gpointer data)
{
  SwTag *tag = data;

  g_free (tag->alt);
  g_free (tag);
}

void
sw_tags_init (SwTags *tags)
{
  tags->all = g_ptr_array_new_with_free_func (free_tag);
}

void
sw_tags_clear (SwTags *tags)
{
  g_clear_pointer (&tags->all, g_ptr_array_unref);
}

/**
 * sw_tags_add:
 * @parent: (nullable): the element around it
 * @name: a standard structure type; static
 *
 * Returns: (transfer none): the new element, owned by @tags
 */
SwTag *
sw_tags_add (SwTags     *tags,
             SwTag      *parent,
             const char *name)
{
  SwTag *tag = g_new0 (SwTag, 1);

  tag->name = name;
  tag->parent = parent;
  tag->id = tags->all->len;
  g_ptr_array_add (tags->all, tag);
  return tag;
}
