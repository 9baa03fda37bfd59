/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-paper.h"

G_BEGIN_DECLS

#define SW_ARROW_MAX 32

/**
 * SwArrow:
 * @points: the line it follows, in the camera's parts of stature
 * @n_points: how many; below 2 there is no arrow
 * @back: whether a small head shows that the way leads back, too
 * @loop: whether it goes round
 */
typedef struct
{
  struct
  {
    double x;
    double y;
  } points[SW_ARROW_MAX];
  int n_points;
  gboolean back;
  gboolean loop;
} SwArrow;

#define SW_MAX_ARROWS 8

/**
 * SwArrows:
 * @arrows: those of one picture
 * @n_arrows: how many
 */
typedef struct
{
  SwArrow arrows[SW_MAX_ARROWS];
  int n_arrows;
} SwArrows;

/**
 * SwArrowShape:
 * @shaft: the line, points on paper
 * @n_shaft: how many places that has
 * @tip: where the head ends
 * @way: where the head points
 * @head: its size, 1 being the usual
 * @back: whether the open head is drawn
 * @back_head: the open head at the shaft's start: an end, the point, the other end
 *
 * An arrow as it is drawn.
 */
typedef struct
{
  double shaft[SW_ARROW_MAX][2];
  int n_shaft;
  double tip[2];
  double way[2];
  double head;
  gboolean back;
  double back_head[3][2];
} SwArrowShape;

gboolean sw_arrow_is_seen (const SwSpot *path,
                           int           n_path);
void sw_arrow_place (SwArrow        *arrow,
                     const SwSpot   *path,
                     int             n_path,
                     const SwSpot   *about,
                     const SwMotifs  *items,
                     guint           moving,
                     double          scale_pt,
                     const SwExtent *room);
void sw_arrow_place_loop (SwArrow      *arrow,
                          const SwSpot *path,
                          int           n_path);
void sw_arrow_get_shape (const SwArrow *arrow,
                         const SwPaper *paper,
                         SwArrowShape  *shape);
void sw_arrow_draw (const SwPaper *paper,
                    const SwArrow *arrow);

G_END_DECLS
