/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-outline.h"

G_BEGIN_DECLS

#define SW_ITEM_MAX_EGGS 24

typedef enum
{
  SW_STYLE_NEAR,
  SW_STYLE_FAR,
  SW_STYLE_START,
} SwStyle;

/**
 * SwItem:
 * @part: which part of the body, -1 for a thing
 * @prop: for a thing: its number in the figure
 * @body: the body it belongs to
 * @under: set of #SwPart bits that are always drawn after it
 * @tone: for a thing: its fill
 * @folds: for a thing: whether it is soft and shows folds
 * @hidden: whether so little of it shows that it would look like dirt
 * @style: how it is drawn
 * @outlines: of its hulls
 * @n_outlines: how many
 * @extent: round all of them
 * @eggs: ellipsoids that fill it, for depth
 * @n_eggs: how many
 * @joint: where it hangs on its parent
 * @end: its far end
 *
 * One thing to draw as a whole, in front of some others and behind the rest.
 */
typedef struct
{
  int part;
  int prop;
  const SwBody *body;
  guint under;
  double tone;
  gboolean folds;
  gboolean hidden;
  SwStyle style;
  SwOutline outlines[SW_MAX_HULLS];
  int n_outlines;
  SwExtent extent;
  SwEgg eggs[SW_ITEM_MAX_EGGS];
  int n_eggs;
  SwSpot joint;
  SwSpot end;
} SwItem;

/**
 * SwItems:
 *
 * All items of one picture, and the order in which they are drawn.
 */
typedef struct
{
  SwItem *items;
  int *order;
  int n_items;
} SwItems;

void sw_items_clear (SwItems *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwItems, sw_items_clear)

SwItem *sw_items_add_part (SwItems        *self,
                           const SwBody   *body,
                           SwPart          part,
                           SwStyle         style,
                           const SwCamera *camera,
                           double          tolerance);
SwItem *sw_items_add_thing (SwItems     *self,
                            int          prop,
                            const SwEgg *eggs,
                            const int   *hull_sizes,
                            int          n_hulls,
                            double       tolerance);
void sw_items_sort (SwItems *self);
double sw_items_get_share_seen (const SwItems *self,
                                int            nth);
void sw_items_hide_scraps (SwItems *self);
gboolean sw_items_joined (const SwItem *a,
                          const SwItem *b,
                          SwSpot       *joint,
                          double       *radius);
gboolean sw_item_holds (const SwItem *item,
                        double        x,
                        double        y);
SwStyle sw_part_get_style (const SwBody   *body,
                           SwPart          part,
                           const SwCamera *camera);

G_END_DECLS
