/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-composer.h"
#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwTelling:
 * @composer: the composer
 * @item: an item of the kind exercise
 * @client: whose precautions and units count
 * @text: the exercise's words in the client's language
 * @language: (nullable): BCP 47 tag of @text when there are none in the client's language; interned
 * @figure: (unowned) (nullable): its picture
 * @drawn: the one side the picture is drawn for; none when it shows both
 * @last_step: the block in which the steps end, where there is only one column
 * @figure_width_pt: how wide the picture is
 * @gap_pt: white space between two parts
 * @role: size of everything but the steps
 * @steps_role: size of the steps
 *
 * An exercise while it is being told to the client, part by part.
 */
typedef struct
{
  SwComposer *composer;
  SwItem *item;
  SwClient *client;
  const SwExerciseText *text;
  const char *language;
  SwFigure *figure;
  SwBodySide drawn;
  guint last_step;
  double figure_width_pt;
  double gap_pt;
  SwTextRole role;
  SwTextRole steps_role;
} SwTelling;

#define SW_CARE_FRAME_PT 2.2
#define SW_NOTE_FRAME_PT 0.8

/**
 * SwAddPart:
 * @flow: the column it goes into
 * @telling: the exercise
 * @space_pt: white space before it, unless it stands at the top
 *
 * Adds a part of an exercise; nothing when the exercise has no such part.
 */
typedef void (*SwAddPart) (SwFlow    *flow,
                           SwTelling *telling,
                           double     space_pt);

double sw_part_measure_figure (SwTelling *telling,
                               double     width_pt);
void sw_part_add_figure (SwFlow    *flow,
                         SwTelling *telling);
void sw_part_add_caption (SwFlow    *flow,
                          SwTelling *telling,
                          double     space_pt);
gboolean sw_telling_tells_harder (SwTelling *telling);
char **sw_telling_dup_steps (SwTelling *telling);
void sw_part_add_dose (SwFlow    *flow,
                       SwTelling *telling);
void sw_part_add_dose_apart (SwFlow    *flow,
                             SwTelling *telling,
                             double     space_pt);
void sw_part_add_amount (SwFlow    *flow,
                         SwTelling *telling,
                         double     space_pt);
void sw_part_add_short_limits (SwFlow    *flow,
                               SwTelling *telling,
                               double     space_pt);
void sw_part_add_set_up (SwFlow    *flow,
                         SwTelling *telling,
                         double     space_pt);
void sw_part_add_steps (SwFlow    *flow,
                        SwTelling *telling,
                        double     space_pt);
void sw_part_add_feel (SwFlow    *flow,
                       SwTelling *telling,
                       double     space_pt);
void sw_part_add_form (SwFlow    *flow,
                       SwTelling *telling,
                       double     space_pt);
void sw_part_add_errors (SwFlow    *flow,
                         SwTelling *telling,
                         double     space_pt);
void sw_part_add_ways (SwFlow    *flow,
                       SwTelling *telling,
                       double     space_pt);
void sw_part_add_easier (SwFlow    *flow,
                         SwTelling *telling,
                         double     space_pt);
void sw_part_add_note (SwFlow    *flow,
                       SwTelling *telling,
                       double     space_pt);
void sw_part_add_care (SwFlow    *flow,
                       SwTelling *telling,
                       double     space_pt);

gboolean sw_card_begin (SwTelling   *telling,
                        SwComposer  *composer,
                        SwItem      *item,
                        SwClient    *client,
                        GError     **error);
void sw_card_add_rule (SwFlow *flow);
void sw_card_add_name (SwFlow     *flow,
                       SwTelling  *telling,
                       const char *heading);
void sw_card_add_picture (SwFlow    *flow,
                          SwTelling *telling,
                          double     width_pt,
                          double     tallest);

char *sw_telling_dup_care (SwTelling *telling);
void sw_flow_add_number (SwFlow     *flow,
                         SwTag      *tag,
                         const char *number,
                         double      size_pt);
void sw_telling_init (SwTelling  *telling,
                      SwComposer *composer,
                      SwItem     *item,
                      SwClient   *client);
gboolean sw_telling_load_figure (SwTelling  *telling,
                                 GError    **error);
gboolean sw_telling_compose_columns (SwTelling *telling);
void sw_telling_compose_single_column (SwTelling *telling);

G_END_DECLS
