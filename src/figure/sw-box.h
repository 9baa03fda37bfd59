/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-paper.h"

G_BEGIN_DECLS

/**
 * SwBox:
 * @low: its least corner
 * @high: its greatest corner
 * @tone: of the side that faces up; the others are darker
 * @name: (nullable): what it is a part of, untranslated
 *
 * A piece of furniture, its edges along the axes.
 */
typedef struct
{
  SwVector low;
  SwVector high;
  double tone;
  const char *name;
} SwBox;

SwVector sw_box_get_corner (const SwBox *box,
                            int          n);
double sw_box_get_depth (const SwBox    *box,
                         const SwCamera *camera);
gboolean sw_box_hides_box (const SwBox    *box,
                           const SwBox    *other,
                           const SwCamera *camera);
guint sw_box_get_hidden (const SwBox    *box,
                         const SwBody   *body,
                         const SwCamera *camera);
void sw_box_draw (const SwBox    *box,
                  const SwPaper  *paper,
                  const SwCamera *camera,
                  gboolean        in_front);

G_END_DECLS
