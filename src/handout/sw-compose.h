/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-composer.h"
#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwBrief:
 * @item: an item of the kind exercise
 * @section: (nullable): the name of the section that begins with it
 * @rest: (nullable): an item of the kind rest that follows it
 *
 * An exercise that is told in brief.
 */
typedef struct
{
  SwItem *item;
  char *section;
  SwItem *rest;
} SwBrief;

/**
 * SwCard:
 * @item: an item of the kind exercise
 * @circuit: (unowned) (nullable): the circuit it belongs to
 * @dose: what the card tells of its dose besides the amount: all but what the page says elsewhere
 *
 * An exercise as a card for the wall.
 */
typedef struct
{
  SwItem *item;
  SwItem *circuit;
  SwDose dose;
} SwCard;

/**
 * SwCardWords:
 * @name_pt: how wide the widest word of a name is
 * @amount_pt: how wide the widest word of an amount is
 *
 * The words on all cards.
 */
typedef struct
{
  double name_pt;
  double amount_pt;
} SwCardWords;

/* The parts of the handout, each in a file of its own, in the order of the pages. */
void sw_compose_letterhead (SwComposer  *composer,
                            SwProgramme *programme);
double sw_compose_logo (SwFlow   *flow,
                        SwClinic *clinic,
                        double    most_width_pt);
int sw_compose_count_needs (SwProgramme *programme);
void sw_compose_needs_in (SwFlow      *flow,
                          SwProgramme *programme);
void sw_compose_needs (SwComposer  *composer,
                       SwProgramme *programme,
                       double       space_pt);
void sw_compose_front (SwComposer  *composer,
                       SwProgramme *programme);
gboolean sw_compose_general_care_in (SwFlow   *flow,
                                     SwClient *client);
void sw_compose_general_care (SwComposer *composer,
                              SwClient   *client,
                              double      space_pt);
void sw_compose_stop (SwComposer  *composer,
                      SwProgramme *programme);
void sw_compose_stop_short_in (SwFlow      *flow,
                               SwProgramme *programme);
void sw_compose_stop_short (SwComposer  *composer,
                            SwProgramme *programme,
                            double       space_pt);
void sw_compose_timeline (SwComposer *composer,
                          SwSession  *session);
char *sw_compose_pain_sign (SwComposer  *composer,
                            SwProgramme *programme);
void sw_compose_pain_guide (SwComposer  *composer,
                            SwProgramme *programme);
void sw_compose_key (SwComposer  *composer,
                     SwProgramme *programme);
void sw_compose_expect_picture (SwComposer *composer,
                                SwItem     *item);
SwFigure *sw_compose_picture (SwComposer  *composer,
                              SwItem      *item,
                              GError     **error);
const SwDoseWords *sw_compose_dose (SwComposer *composer,
                                    SwItem     *item,
                                    SwUnits     units);
void sw_compose_glance (SwComposer  *composer,
                        SwProgramme *programme);
gboolean sw_compose_sessions (SwComposer   *composer,
                              SwProgramme  *programme,
                              GError      **error);
gboolean sw_compose_exercise (SwComposer  *composer,
                              SwItem      *item,
                              SwClient    *client,
                              const char  *heading,
                              GError     **error);
GArray *sw_briefs_new (void);
void sw_briefs_add (GArray     *briefs,
                    SwItem     *item,
                    const char *section);
gboolean sw_briefs_add_rest (GArray *briefs,
                             SwItem *rest);
gboolean sw_compose_briefs (SwComposer  *composer,
                            GArray      *briefs,
                            SwClient    *client,
                            const char  *heading,
                            GError     **error);
void sw_compose_rest_in (SwFlow     *flow,
                         SwItem     *item,
                         SwTextRole  role);
void sw_compose_rest (SwComposer *composer,
                      SwItem     *item);
gboolean sw_compose_cards (SwComposer  *composer,
                           GArray      *cards,
                           SwClient    *client,
                           const char  *heading,
                           GError     **error);
double sw_card_get_width (SwComposer *composer,
                          int         n_cards);
void sw_card_words_init (SwCardWords *words,
                         SwComposer  *composer,
                         SwProgramme *programme);
gboolean sw_card_has_room (SwComposer        *composer,
                           const SwCardWords *words,
                           int                n_cards);
double sw_card_get_picture_width (SwComposer *composer,
                                  double      width_pt);
gboolean sw_compose_wall (SwComposer   *composer,
                          SwProgramme  *programme,
                          GError      **error);
SwItem *sw_compose_find_check (SwSession *session);
char *sw_compose_check_name (SwComposer *composer,
                             SwItem     *item);
void sw_compose_check (SwComposer *composer,
                       SwItem     *item,
                       const char *heading);
void sw_compose_weeks (SwComposer  *composer,
                       SwProgramme *programme);
void sw_compose_back (SwComposer  *composer,
                      SwProgramme *programme);

/* Told alike at several places. */
GPtrArray *sw_compose_collect_exercises (SwSession *session);
char *sw_compose_circuit_rest (SwPhrases *phrases,
                               SwItem    *circuit);
char *sw_compose_when (SwPhrases *phrases,
                       SwClinic  *clinic,
                       SwSession *session);
char **sw_compose_equipment (SwPhrases *phrases,
                             SwSet      equipment);
char *sw_compose_clinic (SwPhrases *phrases,
                         SwClinic  *clinic);
char *sw_compose_plan (SwPhrases   *phrases,
                       SwProgramme *programme,
                       const char  *date);
const char *sw_compose_day_key (const char *group,
                                SwDay       day);
void sw_flow_blank (SwFlow     *flow,
                    const char *label,
                    double      most_pt,
                    char       *name,
                    char       *said);
double sw_compose_widest_pt (SwComposer         *self,
                             SwTextRole          role,
                             const char * const *keys);
double sw_compose_widest_day_pt (SwComposer *self,
                                 SwTextRole  role);

G_END_DECLS
