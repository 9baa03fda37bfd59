/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a handout is to look like, as the client needs it and the therapist planned it. */
#include "config.h"

#include "sw-handout-options.h"

/**
 * sw_handout_options_init:
 * @options: (out): options as the client needs them and the programme's page plan says; @options keeps no copy of the
 *   strings
 * @programme: the programme
 * @date: day of the handout, ISO 8601
 */
void
sw_handout_options_init (SwHandoutOptions *options,
                         SwProgramme      *programme,
                         const char       *date)
{
  SwClient *client = sw_programme_get_client (programme);
  SwPagePlan *plan = sw_programme_get_page_plan (programme);

  *options = (SwHandoutOptions){
    .paper = sw_client_get_paper (client),
    .text_points = sw_client_get_text_points (client),
    .language = sw_client_get_language (client),
    .date = date,
    .layout = sw_page_plan_get_layout (plan),
    .parts = sw_page_plan_get_parts (plan),
    .save_ink = sw_page_plan_get_save_ink (plan),
    .landscape = sw_page_plan_get_landscape (plan),
    .form = sw_page_plan_get_form (plan),
  };
}

/**
 * sw_handout_parts_of_layout:
 *
 * Returns: set of #SwPagePart that can be shown or left out in that layout
 */
SwSet
sw_handout_parts_of_layout (SwLayout layout)
{
  return layout == SW_LAYOUT_SUMMARY ? SW_SET (SW_PAGE_PART_LETTERHEAD)
                                     : SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_SIGNATURE)
                                           | SW_SET (SW_PAGE_PART_PLAN);
}

/**
 * sw_handout_parts_to_fill_in:
 *
 * Returns: set of #SwPagePart that can be shown in that layout and in which the client ticks or writes
 */
SwSet
sw_handout_parts_to_fill_in (SwLayout layout)
{
  return sw_handout_parts_of_layout (layout)
         & (SW_SET (SW_PAGE_PART_SELF_CHECK) | SW_SET (SW_PAGE_PART_LOG) | SW_SET (SW_PAGE_PART_SIGNATURE));
}

/**
 * sw_handout_options_get_body_pt:
 *
 * Returns: the size of body text that comes of them, 12..28 pt
 */
double
sw_handout_options_get_body_pt (const SwHandoutOptions *options)
{
  double least_pt = options->layout == SW_LAYOUT_LARGE_PRINT ? SW_LARGE_PRINT_PT : 12.0;

  return CLAMP (options->text_points, least_pt, 28.0);
}
