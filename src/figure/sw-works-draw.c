/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tints what works or is stretched: patches that lie on the body, cut off by its outline. Where and how large they are
 * is our own drawing, not anatomy to measure by. */
#include "config.h"

#include "sw-body-draw.h"

#define TOLERANCE_PT 0.06
#define STEP 0.012

/**
 * Patch:
 * @area: what works
 * @part: the part it is painted on, its right one when sided
 * @piece: the piece it sits on
 * @centre: within that piece, on the left side
 * @half: half-axes
 * @normal: out of the body, on the left side
 */
typedef struct
{
  SwFigureArea area;
  SwPart part;
  SwPiece piece;
  SwVector centre;
  SwVector half;
  SwVector normal;
} Patch;

static const Patch patches[] = {
  { SW_FIGURE_AREA_CALF, SW_PART_SHANK, SW_PIECE_SHANK, { -0.026, 0, -0.080 }, { 0.017, 0.022, 0.048 }, { -1, 0, 0 } },
  { SW_FIGURE_AREA_SHIN, SW_PART_SHANK, SW_PIECE_SHANK, { 0.018, 0.004, -0.095 }, { 0.013, 0.017, 0.060 }, { 1, 0.2, 0 } },
  { SW_FIGURE_AREA_THIGH_FRONT, SW_PART_THIGH, SW_PIECE_THIGH, { 0.033, 0, -0.125 }, { 0.018, 0.026, 0.080 }, { 1, 0, 0 } },
  { SW_FIGURE_AREA_THIGH_BACK, SW_PART_THIGH, SW_PIECE_THIGH, { -0.033, 0, -0.130 }, { 0.018, 0.024, 0.075 }, { -1, 0, 0 } },
  { SW_FIGURE_AREA_THIGH_INNER, SW_PART_THIGH, SW_PIECE_THIGH, { 0, -0.031, -0.100 }, { 0.024, 0.016, 0.070 }, { 0, -1, 0 } },
  { SW_FIGURE_AREA_HIP_FRONT, SW_PART_THIGH, SW_PIECE_THIGH, { 0.042, 0, -0.030 }, { 0.020, 0.028, 0.048 }, { 1, 0, 0 } },
  { SW_FIGURE_AREA_HIP_SIDE, SW_PART_TRUNK, SW_PIECE_PELVIS, { -0.022, 0.078, 0.022 }, { 0.036, 0.020, 0.040 }, { -0.3, 1, 0 } },
  { SW_FIGURE_AREA_HIP_SIDE, SW_PART_THIGH, SW_PIECE_THIGH, { -0.014, 0.034, 0.004 }, { 0.036, 0.022, 0.046 }, { -0.3, 1, 0 } },
  { SW_FIGURE_AREA_BUTTOCK, SW_PART_TRUNK, SW_PIECE_PELVIS, { -0.058, 0.046, -0.006 }, { 0.032, 0.036, 0.042 }, { -1, 0.35, 0 } },
  { SW_FIGURE_AREA_BELLY, SW_PART_TRUNK, SW_PIECE_LOW_BACK, { 0.046, 0, 0.040 }, { 0.018, 0.040, 0.066 }, { 1, 0, 0 } },
  { SW_FIGURE_AREA_WAIST, SW_PART_TRUNK, SW_PIECE_LOW_BACK, { 0.008, 0.058, 0.045 }, { 0.034, 0.020, 0.048 }, { 0.2, 1, 0 } },
  { SW_FIGURE_AREA_LOW_BACK, SW_PART_TRUNK, SW_PIECE_LOW_BACK, { -0.040, 0, 0.030 }, { 0.018, 0.040, 0.060 }, { -1, 0, 0 } },
  { SW_FIGURE_AREA_UPPER_BACK, SW_PART_TRUNK, SW_PIECE_RIBCAGE, { -0.046, 0, 0.070 }, { 0.020, 0.044, 0.052 }, { -1, 0, 0 } },
  { SW_FIGURE_AREA_CHEST, SW_PART_TRUNK, SW_PIECE_RIBCAGE, { 0.052, 0.040, 0.085 }, { 0.022, 0.040, 0.030 }, { 1, 0.2, 0 } },
  { SW_FIGURE_AREA_SHOULDER, SW_PART_UPPER_ARM, SW_PIECE_UPPER_ARM, { 0, 0.016, -0.030 }, { 0.027, 0.020, 0.042 }, { 0.2, 1, 0 } },
  { SW_FIGURE_AREA_SHOULDER_BACK, SW_PART_UPPER_ARM, SW_PIECE_UPPER_ARM, { -0.017, 0.012, -0.022 }, { 0.019, 0.022, 0.036 }, { -0.6, 0.8, 0 } },
  { SW_FIGURE_AREA_BLADE, SW_PART_TRUNK, SW_PIECE_RIBCAGE, { -0.044, 0.046, 0.078 }, { 0.020, 0.034, 0.046 }, { -1, 0.35, 0 } },
  { SW_FIGURE_AREA_UPPER_ARM_FRONT, SW_PART_UPPER_ARM, SW_PIECE_UPPER_ARM, { 0.017, 0, -0.095 }, { 0.015, 0.020, 0.045 }, { 1, 0.2, 0 } },
  { SW_FIGURE_AREA_UPPER_ARM_BACK, SW_PART_UPPER_ARM, SW_PIECE_UPPER_ARM, { -0.017, 0, -0.095 }, { 0.015, 0.020, 0.048 }, { -1, 0.2, 0 } },
  { SW_FIGURE_AREA_FOREARM, SW_PART_FOREARM, SW_PIECE_FOREARM, { 0.004, 0.008, -0.055 }, { 0.017, 0.015, 0.044 }, { 0.3, 1, 0 } },
  { SW_FIGURE_AREA_HAND, SW_PART_HAND, SW_PIECE_HAND, { 0.002, -0.010, -0.026 }, { 0.016, 0.010, 0.016 }, { 0, -1, 0 } },
  { SW_FIGURE_AREA_HAND, SW_PART_HAND, SW_PIECE_HAND, { 0.001, 0.010, -0.028 }, { 0.015, 0.008, 0.016 }, { 0, 1, 0 } },
  { SW_FIGURE_AREA_SOLE, SW_PART_FOOT, SW_PIECE_FOOT, { 0.020, 0, -0.030 }, { 0.036, 0.019, 0.010 }, { 0, 0, -1 } },
  { SW_FIGURE_AREA_NECK_FRONT, SW_PART_NECK, SW_PIECE_NECK, { 0.020, 0, 0.024 }, { 0.014, 0.022, 0.024 }, { 1, 0, 0 } },
  { SW_FIGURE_AREA_NECK_BACK, SW_PART_NECK, SW_PIECE_NECK, { -0.016, 0, 0.026 }, { 0.015, 0.022, 0.026 }, { -1, 0, 0 } },
  { SW_FIGURE_AREA_NECK_SIDE, SW_PART_NECK, SW_PIECE_NECK, { 0.002, 0.020, 0.022 }, { 0.018, 0.013, 0.026 }, { 0.1, 1, 0 } },
};

static gboolean
is_inside (gconstpointer data,
           double        x,
           double        y)
{
  return sw_outline_holds (data, x, y);
}

static void
draw_patch (const SwPaper  *paper,
            const SwMotif   *item,
            const SwCamera *camera,
            const Patch    *patch,
            SwFigureSide    side)
{
  double s = sw_side_sign (side);
  gboolean limb = patch->piece >= SW_PIECE_UPPER_ARM;
  SwPlacement frame = item->body->pieces[limb ? SW_SIDED (patch->piece, side) : patch->piece];
  SwVector normal = sw_unit (sw_apply (frame.axes, sw_vector (patch->normal.x, s * patch->normal.y, 0)), sw_vector (1, 0, 0));
  SwEgg egg = sw_egg (camera, frame, sw_vector (patch->centre.x, s * patch->centre.y, patch->centre.z), patch->half);
  g_auto (SwOutline) outline = { 0 };

  if (sw_dot (normal, camera->toward) < -0.30)
    return;

  sw_outline_from_eggs (&outline, &egg, 1, TOLERANCE_PT / paper->scale_pt);
  for (int i = 0; i < item->n_outlines; i++)
    {
      SwCurve seen;

      if (!sw_extent_meets (&outline.extent, &item->outlines[i].extent, 0))
        continue;
      if (sw_curve_share (sw_outline_get_curve (&outline), sw_outline_get_curve (&item->outlines[i]), STEP, is_inside,
                          &outline, &item->outlines[i], &seen))
        sw_paper_area (paper, &seen);
    }
  sw_paper_tone (paper, SW_TONE_WORKS);
  sw_sketch_fill (paper->sketch);
}

/**
 * sw_works_draw:
 * @paper: where to draw
 * @item: a part that is drawn already
 * @camera: the view
 * @works: what works
 * @n_works: how many
 */
void
sw_works_draw (const SwPaper      *paper,
               const SwMotif       *item,
               const SwCamera     *camera,
               const SwFigureWork *works,
               int                 n_works)
{
  for (int i = 0; i < n_works; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (patches); k++)
      {
        const Patch *patch = &patches[k];
        gboolean on[2] = { works[i].right, works[i].left };
        gboolean sided_part = patch->part >= SW_PART_UPPER_ARM;

        if (patch->area != works[i].area)
          continue;
        /* A close picture cuts the forearm off where its muscles are; the view beside it shows them. */
        if (item->body->fine && patch->part == SW_PART_FOREARM)
          continue;
        for (int side = 0; side < 2; side++)
          {
            if (!on[side] || (!sw_figure_area_is_sided (works[i].area) && side == 1))
              continue;
            if (item->part == (int) patch->part + (sided_part ? side : 0))
              draw_patch (paper, item, camera, patch, (SwFigureSide) side);
          }
      }
}
