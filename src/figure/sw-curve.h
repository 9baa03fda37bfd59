/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-camera.h"

G_BEGIN_DECLS

#define SW_CURVE_MAX 24

/**
 * SwCurve:
 * @x: where it begins
 * @y: where it begins
 * @pieces: each from the end of the one before to its own @x, @y; one that is bent has two handles
 * @n_pieces: how many
 * @bent: set of bits: which pieces are cubic curves; the others are straight
 * @closed: whether it ends where it begins
 *
 * A line on paper made of straight pieces and cubic curves. A long programme has some hundred thousand of them: seven
 * digits are a hundredth of what any printer shows.
 */
typedef struct
{
  float x;
  float y;
  struct
  {
    float x1;
    float y1;
    float x2;
    float y2;
    float x;
    float y;
  } pieces[SW_CURVE_MAX];
  int n_pieces;
  guint32 bent;
  gboolean closed;
} SwCurve;

/**
 * SwCurveKeeper:
 *
 * Returns: whether a place of a curve is kept
 */
typedef gboolean (*SwCurveKeeper) (gconstpointer data,
                                   double        x,
                                   double        y);

void sw_curve_clear (SwCurve *self);
void sw_curve_begin (SwCurve *self,
                     double   x,
                     double   y);
void sw_curve_line (SwCurve *self,
                    double   x,
                    double   y);
void sw_curve_bend (SwCurve *self,
                    double   x1,
                    double   y1,
                    double   x2,
                    double   y2,
                    double   x,
                    double   y);
void sw_curve_arc (SwCurve *self,
                   SwSpot   middle,
                   SwSpot   a,
                   SwSpot   b,
                   double   from,
                   double   to,
                   int      n_pieces);
void sw_curve_get (const SwCurve *self,
                   int            piece,
                   double         t,
                   double        *x,
                   double        *y);
void sw_curve_append (SwCurve       *self,
                      const SwCurve *other);
gboolean sw_curve_share (const SwCurve *a,
                         const SwCurve *b,
                         double         step_most,
                         SwCurveKeeper  keeper,
                         gconstpointer  inside_a,
                         gconstpointer  inside_b,
                         SwCurve       *shared);
int sw_curve_keep (const SwCurve *self,
                   double         step_most,
                   SwCurveKeeper  keeper,
                   gconstpointer  data,
                   SwCurve       *runs,
                   int            n_runs_most);

G_END_DECLS
