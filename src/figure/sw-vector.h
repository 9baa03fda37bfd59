/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Vectors, rotations and frames, small enough to be inlined. Right-handed: x forward, y to the body's left, z up. */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

#define SW_RAD(deg) ((deg) * (G_PI / 180.0))
#define SW_DEG(rad) ((rad) * (180.0 / G_PI))

typedef struct
{
  double x;
  double y;
  double z;
} SwVector;

/* Columns are where the three axes go. */
typedef struct
{
  SwVector x;
  SwVector y;
  SwVector z;
} SwMatrix;

/* A rotation and where its origin lies. */
typedef struct
{
  SwMatrix axes;
  SwVector at;
} SwPlacement;

static inline SwVector
sw_vector (double x,
           double y,
           double z)
{
  return (SwVector){ x, y, z };
}

static inline SwVector
sw_add (SwVector a,
        SwVector b)
{
  return sw_vector (a.x + b.x, a.y + b.y, a.z + b.z);
}

static inline SwVector
sw_sub (SwVector a,
        SwVector b)
{
  return sw_vector (a.x - b.x, a.y - b.y, a.z - b.z);
}

static inline SwVector
sw_scale (SwVector a,
          double   f)
{
  return sw_vector (a.x * f, a.y * f, a.z * f);
}

static inline SwVector
sw_mix (SwVector a,
        SwVector b,
        double   t)
{
  return sw_add (sw_scale (a, 1.0 - t), sw_scale (b, t));
}

static inline double
sw_dot (SwVector a,
        SwVector b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline SwVector
sw_cross (SwVector a,
          SwVector b)
{
  return sw_vector (a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
}

static inline double
sw_length (SwVector a)
{
  return sqrt (sw_dot (a, a));
}

/* The fallback's direction when @a has none. */
static inline SwVector
sw_unit (SwVector a,
         SwVector fallback)
{
  double length = sw_length (a);

  return length > 1e-12 ? sw_scale (a, 1.0 / length) : fallback;
}

/* What is left of @a without its part along the unit vector @axis. */
static inline SwVector
sw_across (SwVector a,
           SwVector axis)
{
  return sw_sub (a, sw_scale (axis, sw_dot (a, axis)));
}

static inline SwMatrix
sw_identity (void)
{
  return (SwMatrix){ { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
}

static inline SwVector
sw_apply (SwMatrix m,
          SwVector v)
{
  return sw_add (sw_add (sw_scale (m.x, v.x), sw_scale (m.y, v.y)), sw_scale (m.z, v.z));
}

static inline SwMatrix
sw_multiply (SwMatrix a,
             SwMatrix b)
{
  return (SwMatrix){ sw_apply (a, b.x), sw_apply (a, b.y), sw_apply (a, b.z) };
}

static inline SwMatrix
sw_transpose (SwMatrix m)
{
  return (SwMatrix){ { m.x.x, m.y.x, m.z.x }, { m.x.y, m.y.y, m.z.y }, { m.x.z, m.y.z, m.z.z } };
}

static inline SwMatrix
sw_turn_x (double deg)
{
  double c = cos (SW_RAD (deg));
  double s = sin (SW_RAD (deg));

  return (SwMatrix){ { 1, 0, 0 }, { 0, c, s }, { 0, -s, c } };
}

static inline SwMatrix
sw_turn_y (double deg)
{
  double c = cos (SW_RAD (deg));
  double s = sin (SW_RAD (deg));

  return (SwMatrix){ { c, 0, -s }, { 0, 1, 0 }, { s, 0, c } };
}

static inline SwMatrix
sw_turn_z (double deg)
{
  double c = cos (SW_RAD (deg));
  double s = sin (SW_RAD (deg));

  return (SwMatrix){ { c, s, 0 }, { -s, c, 0 }, { 0, 0, 1 } };
}

/* Turn about the unit vector @axis. */
static inline SwVector
sw_turn_about (SwVector v,
               SwVector axis,
               double   deg)
{
  double c = cos (SW_RAD (deg));
  double s = sin (SW_RAD (deg));

  return sw_add (sw_add (sw_scale (v, c), sw_scale (sw_cross (axis, v), s)),
                 sw_scale (axis, sw_dot (axis, v) * (1 - c)));
}

static inline SwMatrix
sw_turn_axis (SwVector axis,
              double   deg)
{
  return (SwMatrix){ sw_turn_about (sw_vector (1, 0, 0), axis, deg), sw_turn_about (sw_vector (0, 1, 0), axis, deg),
                     sw_turn_about (sw_vector (0, 0, 1), axis, deg) };
}

static inline SwVector
sw_place (SwPlacement frame,
          SwVector    local)
{
  return sw_add (frame.at, sw_apply (frame.axes, local));
}

/* The inverse of sw_place(). */
static inline SwVector
sw_unplace (SwPlacement frame,
            SwVector    point)
{
  SwVector d = sw_sub (point, frame.at);

  return sw_vector (sw_dot (d, frame.axes.x), sw_dot (d, frame.axes.y), sw_dot (d, frame.axes.z));
}

G_END_DECLS
