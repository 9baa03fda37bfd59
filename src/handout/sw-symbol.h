/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/**
 * SwSymbol:
 *
 * The small signs of the handout. Paths, not characters: they look alike whatever fonts are installed, and none
 * carries a meaning that the words beside it do not.
 */
typedef enum
{
  SW_SYMBOL_BULLET,
  SW_SYMBOL_TICK,
  SW_SYMBOL_CROSS,
  SW_SYMBOL_BOX,
  SW_SYMBOL_DAY,
  SW_SYMBOL_BOX_OFF,
  SW_SYMBOL_TAKE_CARE,
  SW_SYMBOL_STOP,
  SW_SYMBOL_NOTE,
  SW_SYMBOL_REST,
  SW_SYMBOL_KEY_ORDER,
  SW_SYMBOL_KEY_START,
  SW_SYMBOL_KEY_ARROW,
  SW_SYMBOL_KEY_WORKS,
  SW_SYMBOL_KEY_HOLD,
  SW_SYMBOL_KEY_BACK,
  SW_SYMBOL_KEY_LIMBS,
  SW_SYMBOL_KEY_TURNS,
  SW_SYMBOL_KEY_RING,
  SW_SYMBOL_KEY_PRESS,
  SW_SYMBOL_KEY_BREATH,
} SwSymbol;

void sw_symbol_draw (SwSymbol  symbol,
                     cairo_t  *cr,
                     double    size_pt);
const char *sw_symbol_get_name (SwSymbol symbol);

G_END_DECLS
