/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdint.h>

/* What stands on the pages of a handout and where: written by handout-work, set by handout-floor. A file of Marks, each
 * followed by @length bytes. Lengths are points from the top left corner. */

typedef enum
{
  MARK_PAGE,    /* a page begins: width, height */
  MARK_TEXT,    /* a paragraph: x, y, width of its lines or -1, line spacing, size, whether it is bold; its words */
  MARK_BOX,     /* a filled rectangle: x, y, width, height */
  MARK_PICTURE, /* strokes follow: x, y of their origin, whether it is an element of the structure */
  MARK_STROKE,  /* a path: grey of its inside or -1, of its line or -1, line width, dash, gap; Steps */
  MARK_PICTURE_ENDS,
} MarkKind;

typedef struct
{
  uint32_t kind;
  uint32_t length;
  float values[6];
} Mark;

typedef enum
{
  STEP_MOVE,
  STEP_LINE,
  STEP_CURVE,
  STEP_CLOSE,
} StepKind;

typedef struct
{
  uint32_t kind;
  float at[6];
} Step;
