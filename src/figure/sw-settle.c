/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What of a pose follows from how it lies on the ground: soles, shanks, how low it is. */
#include "config.h"

#include "sw-settle.h"

/* The trunk rests on pelvis, waist and chest; shoulders give way. */
static double
trunk_lowest (const SwBody *body)
{
  double lowest = G_MAXDOUBLE;
  SwShape shape;

  sw_shape_get (body, SW_PART_TRUNK, &shape);
  for (int i = 0; i < 2; i++)
    for (int k = 0; k < shape.hulls[i].n_blobs; k++)
      lowest = MIN (lowest, sw_blob_get_lowest (body, &shape.hulls[i].blobs[k]));

  return lowest;
}

/**
 * sw_body_get_support_lowest:
 * @body: a solved body
 * @supports: set of #SwPart bits that carry it
 *
 * Returns: the height of the lowest of them
 */
double
sw_body_get_support_lowest (const SwBody *body,
                            guint         supports)
{
  double lowest = G_MAXDOUBLE;

  for (int part = 0; part < SW_N_PARTS; part++)
    if ((supports >> part & 1) != 0)
      lowest = MIN (lowest, part == SW_PART_TRUNK ? trunk_lowest (body) : sw_part_get_lowest (body, (SwPart) part));

  return lowest;
}

/**
 * sw_solved_level_feet:
 * @solved: (inout): a pose
 *
 * Turns the feet whose sole's slope rules the ankle.
 */
void
sw_solved_level_feet (SwSolved *solved)
{
  for (int side = 0; side < 2; side++)
    {
      SwBody *body = &solved->body;
      SwPlacement *shank = &body->pieces[SW_SIDED (SW_PIECE_SHANK, side)];
      SwPlacement *foot = &body->pieces[SW_SIDED (SW_PIECE_FOOT, side)];
      SwPlacement *toes = &body->pieces[SW_SIDED (SW_PIECE_TOES, side)];
      double pitch = solved->pitch_deg[side];
      double toes_up = MAX (pitch, 0) + solved->toes_deg[side];
      SwMatrix rel;

      if (!solved->level[side])
        continue;
      foot->axes = sw_multiply (sw_turn_z (SW_DEG (atan2 (shank->axes.x.y, shank->axes.x.x))), sw_turn_y (pitch));
      rel = sw_multiply (sw_transpose (shank->axes), foot->axes);
      sw_joints_set (&solved->joints, SW_ANGLE_ANKLE_IN, (SwFigureSide) side, 0);
      sw_joints_set (&solved->joints, SW_ANGLE_ANKLE_UP, (SwFigureSide) side, SW_DEG (atan2 (rel.x.z, rel.x.x)));
      sw_joints_set (&solved->joints, SW_ANGLE_TOES_UP, (SwFigureSide) side, toes_up);
      toes->at = sw_place (*foot, sw_vector (SW_TOE_JOINT_X, 0, SW_TOE_JOINT_Z));
      toes->axes = sw_multiply (foot->axes, sw_turn_y (-toes_up));
    }
}

/**
 * sw_solved_lay_shanks:
 * @solved: (inout): a pose
 *
 * Kneeling shanks lie on the floor: the knee follows from the thigh.
 */
void
sw_solved_lay_shanks (SwSolved *solved)
{
  for (int side = 0; side < 2; side++)
    {
      SwMatrix thigh = solved->body.pieces[SW_SIDED (SW_PIECE_THIGH, side)].axes;

      if (!solved->flat_shank[side])
        continue;
      sw_joints_set (&solved->joints, SW_ANGLE_KNEE_BEND, (SwFigureSide) side, SW_DEG (atan2 (thigh.z.z, -thigh.x.z)));
      sw_body_solve_leg (&solved->body, &solved->joints, (SwFigureSide) side);
    }
}
