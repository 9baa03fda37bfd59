/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-link.h"

G_BEGIN_DECLS

/**
 * SwTextPart:
 * @start: its first byte
 * @end: the byte after its last one
 * @link: (unowned) (nullable): what it is a link to
 * @language: (nullable): BCP 47 tag when it is not the document's language; interned
 *
 * A part of a text that assistive technology has to be told about apart from the rest.
 */
typedef struct
{
  int start;
  int end;
  const SwLink *link;
  const char *language;
} SwTextPart;

GArray *sw_text_parts_new (GArray     *links,
                           const char *text,
                           gsize       strong_length,
                           const char *language);

G_END_DECLS
