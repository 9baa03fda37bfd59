/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwCanvasFace:
 * @name: what the row is called on the screen
 * @number: the exercise's number within the session from 1, or 0
 * @dose: what is asked for, or ""
 * @note: the note to the client in one line, or ""
 * @start: when it starts on the session's clock, such as 2:10, or ""
 * @length: how long it takes itself, or ""
 * @change: where the body has to move, the position's word and the time to get there; for the first exercise
 *   the word alone; else NULL
 * @finding: what open findings say about it, a line each; NULL without any
 * @level: the severest of them
 * @label: the row's name for assistive tools
 * @description: what else they should tell: dose, position, time, findings
 * @before: where the body is when the row begins
 * @position: where it is when the row ends
 * @last: whether it ends its circuit
 * @mirrored: whether the figure is to be shown with the left side working
 * @exercise: (nullable): whose figure is shown; owned
 *
 * What a row of the canvas shows. Immutable once made.
 */
typedef struct
{
  char *name;
  guint number;
  char *dose;
  char *note;
  char *start;
  char *length;
  char *change;
  char *finding;
  SwFindingLevel level;
  char *label;
  char *description;
  SwPosition before;
  SwPosition position;
  gboolean last;
  gboolean mirrored;
  SwExercise *exercise;
} SwCanvasFace;

SwCanvasFace *sw_canvas_face_new_for_section (SwDocument *document,
                                              SwSection  *section,
                                              SwPosition  position);
SwCanvasFace *sw_canvas_face_new_for_empty (gpointer   owner,
                                            SwPosition position);
SwCanvasFace *sw_canvas_face_new_for_item (SwDocument         *document,
                                           SwItem             *item,
                                           const SwClockEntry *entry,
                                           SwPosition          before,
                                           guint               number,
                                           guint               n_exercises);
gboolean sw_canvas_face_equal (const SwCanvasFace *a,
                               const SwCanvasFace *b);
void sw_canvas_face_free (SwCanvasFace *face);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwCanvasFace, sw_canvas_face_free)

G_END_DECLS
