/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwHandoutOptions:
 * @paper: page size
 * @text_points: body text, 12..28 pt; everything else follows it. Large print has at least SW_LARGE_PRINT_PT
 * @language: BCP 47 tag of the client's language
 * @date: day of the handout, ISO 8601; passed in so that the same input gives the same bytes
 * @layout: how the exercises are told
 * @parts: set of #SwPagePart that are shown
 * @save_ink: whether grey panels and black bands give way to thin frames
 * @landscape: whether the summary's page lies on its side
 * @form: whether boxes and lines can be filled in on a screen; the pages look the same
 *
 * How to make a handout of a programme. A plain value that keeps no copy of its strings.
 */
typedef struct
{
  SwPaper paper;
  double text_points;
  const char *language;
  const char *date;
  SwLayout layout;
  SwSet parts;
  gboolean save_ink;
  gboolean landscape;
  gboolean form;
} SwHandoutOptions;

#define SW_LARGE_PRINT_PT 18.0

void sw_handout_options_init (SwHandoutOptions *options,
                              SwProgramme      *programme,
                              const char       *date);
SwSet sw_handout_parts_of_layout (SwLayout layout);
SwSet sw_handout_parts_to_fill_in (SwLayout layout);
double sw_handout_options_get_body_pt (const SwHandoutOptions *options);

G_END_DECLS
