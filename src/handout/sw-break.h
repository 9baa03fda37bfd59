/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwKeep:
 * @SW_KEEP_FREE: a page may end here
 * @SW_KEEP_TOGETHER: a page ends here only when what belongs together is taller than a page
 * @SW_KEEP_ALWAYS: as a heading with what it heads: only when nothing else is possible
 * @SW_KEEP_NEVER: a page must end here
 *
 * What may happen between a strip and the next one.
 */
typedef enum
{
  SW_KEEP_FREE,
  SW_KEEP_TOGETHER,
  SW_KEEP_ALWAYS,
  SW_KEEP_NEVER,
} SwKeep;

/**
 * SwStrip:
 * @height_pt: its height
 * @space_pt: white space before it, which falls away at the top of a page
 * @keep: whether a page may end after it
 * @head_pt: height of what is repeated above it where it begins a page, but not the first one
 *
 * All that breaking into pages needs to know of a block.
 */
typedef struct
{
  double height_pt;
  double space_pt;
  SwKeep keep;
  double head_pt;
} SwStrip;

GArray *sw_break_pages (const SwStrip *strips,
                        guint          n_strips,
                        double         first_page_pt,
                        double         page_pt);

G_END_DECLS
