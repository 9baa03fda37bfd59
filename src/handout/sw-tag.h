/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwTag:
 * @name: a standard structure type such as "P" or "TH"; static
 * @parent: (nullable): the element it is in; %NULL for the document
 * @alt: (nullable): text alternative of a figure; what is said of a link or of a place to fill in; owned
 * @language: (nullable): BCP 47 tag of its text when it is not the document's language; interned
 * @scope: (nullable): "Column" or "Row", for header cells; static
 * @numbering: (nullable): "Decimal" or "Disc", for lists; static
 * @id: place in the arena, from 0
 *
 * An element of the document's structure as assistive technology reads it. Only elements without children hold
 * content. Elements are born in reading order and live as long as their #SwTags.
 */
typedef struct _SwTag SwTag;

struct _SwTag
{
  const char *name;
  SwTag *parent;
  char *alt;
  const char *language;
  const char *scope;
  const char *numbering;
  guint id;
};

typedef struct
{
  GPtrArray *all;
} SwTags;

void sw_tags_init (SwTags *tags);
void sw_tags_clear (SwTags *tags);
SwTag *sw_tags_add (SwTags     *tags,
                    SwTag      *parent,
                    const char *name);

G_END_DECLS
