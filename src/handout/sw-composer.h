/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-block.h"
#include "sw-doses.h"
#include "sw-link.h"
#include "sw-measured.h"
#include "sw-phrases.h"
#include "sw-programme.h"
#include "sw-style.h"

G_BEGIN_DECLS

/**
 * SwGlance:
 * @SW_GLANCE_NONE: nowhere
 * @SW_GLANCE_BEFORE_STOP: on the first page, before the signs to stop for
 * @SW_GLANCE_BEFORE_FIRST: before the first exercise
 *
 * Where all exercises are told at a glance.
 */
typedef enum
{
  SW_GLANCE_NONE,
  SW_GLANCE_BEFORE_STOP,
  SW_GLANCE_BEFORE_FIRST,
} SwGlance;

/**
 * SwComposer:
 * @style: measures of the pages
 * @phrases: words of the client's language
 * @language: BCP 47 tag of the exercises' texts
 * @date: day of the handout, ISO 8601
 * @layout: how the exercises are told
 * @parts: set of #SwPagePart that are shown
 * @form: whether boxes and lines can be filled in
 * @links: (element-type SwLink): what can be tapped wherever it is printed
 * @clinic: (unowned): whose handout it is
 * @logo: (nullable): the clinic's logo
 * @contexts: where Pango measures, one for each #SwTextRole, so that no text has to carry its font
 * @plain: what holds for every text
 * @measured: every text measured and every picture solved so far; the same ones are asked for several times
 * @blocks: (element-type SwBlock): what has been composed so far
 * @tags: the structure so far
 * @parent: the element that new ones go into
 * @left_pt: left edge of what is composed now
 * @width_pt: its width
 * @frame_pt: line width of the frame around what is composed now; 0 for none
 * @frame_starts: whether the frame's top has still to be drawn
 * @frame_left_pt: left edge of the frame
 * @frame_width_pt: width of the frame
 * @heads: (element-type SwBlock): what is repeated where something goes on over pages
 * @head: (unowned) (nullable): the one for what is composed now
 * @rail: whether a rail at the left holds together what is composed now
 * @rail_starts: whether the rail's first piece has still to be drawn
 * @n_cards: how many cards for the wall stand beside one another
 * @tallest_picture: of a card for the wall, as a share of its width
 * @picture_beside: whether the dose on such a card stands beside the picture
 * @captions: whether it is told what a picture shows
 * @front_gap: what the white space of the first page is multiplied by
 * @stop_first: the first block of the signs to stop for
 * @stop_last: their last one; the same as @stop_first where they are told in short
 * @front_last: the last block before the exercises at a glance, or before the sessions
 * @glance: where the exercises at a glance are told
 * @check_pages: (element-type int): for each session the page of its first self-check, from 1, as far as known
 * @n_exercises: exercises numbered so far
 * @n_checks: self-checks so far
 * @programme: (unowned): what is told
 * @text_language: (nullable): BCP 47 tag of the texts that are composed now when they are not in the handout's
 *   language; interned. Words in bold before a text are the handout's
 * @measures: whether columns are only to be as tall as what is added to them, not to hold it
 * @large: (unowned) (nullable) (element-type gboolean): for each exercise whether its picture is drawn large
 *
 * Turns the programme into blocks. The handout's parts (sw-compose-*.c) talk to it in paragraphs, lists and boxes.
 */
typedef struct
{
  SwStyle style;
  SwPhrases *phrases;
  char *language;
  char *date;
  SwLayout layout;
  SwSet parts;
  gboolean form;
  GArray *links;
  SwClinic *clinic;
  SwLogoPicture *logo;
  PangoContext *contexts[SW_TEXT_FURNITURE + 1];
  PangoAttrList *plain;
  SwMeasured *measured;
  SwDoses *doses;
  GPtrArray *blocks;
  SwTags tags;
  SwTag *parent;
  double left_pt;
  double width_pt;
  double frame_pt;
  gboolean frame_starts;
  double frame_left_pt;
  double frame_width_pt;
  GPtrArray *heads;
  SwBlock *head;
  gboolean rail;
  gboolean rail_starts;
  int n_cards;
  double tallest_picture;
  gboolean picture_beside;
  gboolean captions;
  double front_gap;
  guint stop_first;
  guint stop_last;
  guint front_last;
  SwGlance glance;
  GArray *check_pages;
  int n_exercises;
  int n_checks;
  SwProgramme *programme;
  const char *text_language;
  gboolean measures;
  GArray *large;
} SwComposer;

/**
 * SwFlow:
 * @composer: the composer
 * @block: the block being filled
 * @left_pt: left edge of the column
 * @width_pt: its width
 * @y_pt: where the next thing goes, from the top of the block
 *
 * A column within a block that fills downwards. A plain value: a copy is another column.
 */
typedef struct
{
  SwComposer *composer;
  SwBlock *block;
  double left_pt;
  double width_pt;
  double y_pt;
} SwFlow;

gboolean sw_text_is_set (const char *text);
char *sw_text_dup_whole (const char *text);
char *sw_text_dup_short (const char *text);

void sw_composer_init (SwComposer             *self,
                       PangoFontMap           *fonts,
                       SwPhrases              *phrases,
                       const SwHandoutOptions *options,
                       SwClinic               *clinic,
                       SwMeasured             *before);
gboolean sw_composer_shows (const SwComposer *self,
                            SwPagePart        part);
void sw_composer_restart (SwComposer *self);
void sw_composer_clear (SwComposer *self);
SwTag *sw_composer_open (SwComposer *self,
                         const char *name);
void sw_composer_close (SwComposer *self);
const char *sw_composer_find_other_language (SwComposer *self,
                                             const char *language);
gsize sw_composer_get_strong_length (const char *strong);
PangoLayout *sw_composer_get_layout (SwComposer *self,
                                     SwTextRole  role,
                                     double      width_pt,
                                     const char *strong,
                                     const char *text);
double sw_composer_get_height_pt (SwComposer *self,
                                  SwTextRole  role,
                                  double      width_pt,
                                  const char *strong,
                                  const char *text);
SwFlow sw_composer_begin (SwComposer *self);
void sw_composer_end (SwFlow *flow,
                      double  space_pt,
                      SwKeep  keep);
void sw_composer_set_head (SwComposer *self,
                           SwFlow     *flow);
void sw_composer_keep_together (SwComposer *self,
                                guint       first);
void sw_composer_set_last_keep (SwComposer *self,
                                SwKeep      keep);
void sw_composer_start_page (SwComposer *self);
void sw_composer_open_frame (SwComposer *self,
                             double      line_pt);
void sw_composer_close_frame (SwComposer *self);
void sw_composer_paragraph (SwComposer *self,
                            SwTextRole  role,
                            const char *tag_name,
                            const char *strong,
                            const char *text,
                            double      space_pt,
                            SwKeep      keep);

void sw_composer_item (SwComposer *self,
                       SwTextRole  role,
                       SwTag      *list,
                       SwSymbol    symbol,
                       int         number,
                       const char *text,
                       double      space_pt,
                       SwKeep      keep);
void sw_composer_boxed (SwComposer *self,
                        SwSymbol    symbol,
                        double      frame_pt,
                        SwTextRole  role,
                        const char *heading,
                        const char *text,
                        double      space_pt,
                        SwKeep      keep);

double sw_layout_get_lines_height (PangoLayout *layout,
                                   int          first,
                                   int          n);
void sw_flow_lines (SwFlow      *flow,
                    SwTextRole   role,
                    SwTag       *tag,
                    PangoLayout *layout,
                    gsize        strong_length,
                    int          first,
                    int          n);
void sw_flow_entry (SwFlow     *flow,
                    const char *item_id,
                    const char *outline,
                    int         outline_level);
void sw_flow_space (SwFlow *flow,
                    double  points);
void sw_flow_text (SwFlow     *flow,
                   SwTextRole  role,
                   SwTag      *tag,
                   const char *strong,
                   const char *text);
void sw_flow_text_in (SwFlow     *flow,
                      SwTextRole  role,
                      const char *tag_name,
                      const char *text);
void sw_flow_number (SwFlow    *flow,
                     SwTextRole role,
                     SwTag     *item,
                     int        number);
void sw_flow_sign (SwFlow    *flow,
                   SwTextRole role,
                   SwSymbol   symbol);
void sw_flow_numbered_item (SwFlow     *flow,
                            SwTextRole  role,
                            SwTag      *list,
                            int         number,
                            const char *text);
void sw_flow_list (SwFlow             *flow,
                   SwTextRole          role,
                   SwSymbol            symbol,
                   const char * const *texts);
void sw_flow_symbol (SwFlow  *flow,
                     SwSymbol symbol,
                     double   x_pt,
                     double   y_pt,
                     double   size_pt,
                     double   grey);
void sw_flow_field (SwFlow     *flow,
                    SwTag      *around,
                    SwFieldKind kind,
                    double      x_pt,
                    double      y_pt,
                    double      width_pt,
                    double      height_pt,
                    char       *name,
                    char       *label);
void sw_flow_empty_cell (SwFlow *flow,
                         SwTag  *cell,
                         double  x_pt,
                         double  width_pt,
                         double  height_pt);
void sw_flow_box (SwFlow *flow,
                  double  x_pt,
                  double  y_pt,
                  double  width_pt,
                  double  height_pt,
                  double  grey);
void sw_flow_boxed (SwFlow     *flow,
                    SwSymbol    symbol,
                    double      frame_pt,
                    SwTextRole  role,
                    const char *heading,
                    const char *text);
void sw_flow_signed (SwFlow     *flow,
                     SwSymbol    symbol,
                     SwTextRole  role,
                     const char *heading,
                     const char *text);

G_END_DECLS
