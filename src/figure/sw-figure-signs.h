/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/**
 * SwFigureSigns:
 * @SW_FIGURE_SIGN_ORDER: pictures are numbered
 * @SW_FIGURE_SIGN_START: the body's start is dashed
 * @SW_FIGURE_SIGN_ARROW: an arrow shows the way
 * @SW_FIGURE_SIGN_BACK: an arrow has a head at its start, too
 * @SW_FIGURE_SIGN_PRESS: an arrow ends at what does not give way
 * @SW_FIGURE_SIGN_BREATH: air flows in or out
 * @SW_FIGURE_SIGN_HOLD: the end is held
 * @SW_FIGURE_SIGN_WORKS: what works is tinted
 * @SW_FIGURE_SIGN_LIMBS: a little person shows which limbs work
 * @SW_FIGURE_SIGN_TURNS: two of them show that the sides take turns
 * @SW_FIGURE_SIGN_RING: a second view stands in a ring
 *
 * Flags: what a picture shows besides bodies and things, and readers may have to be told.
 */
typedef enum
{
  SW_FIGURE_SIGN_ORDER = 1 << 0,
  SW_FIGURE_SIGN_START = 1 << 1,
  SW_FIGURE_SIGN_ARROW = 1 << 2,
  SW_FIGURE_SIGN_BACK = 1 << 3,
  SW_FIGURE_SIGN_PRESS = 1 << 4,
  SW_FIGURE_SIGN_BREATH = 1 << 5,
  SW_FIGURE_SIGN_HOLD = 1 << 6,
  SW_FIGURE_SIGN_WORKS = 1 << 7,
  SW_FIGURE_SIGN_LIMBS = 1 << 8,
  SW_FIGURE_SIGN_TURNS = 1 << 9,
  SW_FIGURE_SIGN_RING = 1 << 10,
} SwFigureSigns;
