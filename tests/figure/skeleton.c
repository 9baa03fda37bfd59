/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The skeleton against published lengths, masses and ranges, and against places worked out by hand. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-reach.h"
#include "sw-shape.h"

#define SHOULDER_X (-0.012)
#define SHOULDER_Y 0.112
#define SHOULDER_Z 0.288

static void
assert_at (SwVector at,
           double   x,
           double   y,
           double   z)
{
  g_assert_cmpfloat_with_epsilon (at.x, x, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.y, y, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.z, z, 1e-9);
}

static void
set (SwJoints     *joints,
     SwAngle       angle,
     SwFigureSide  side,
     double        deg)
{
  sw_joints_set (joints, angle, side, deg);
}

static double
reference (GPtrArray  *rows,
           const char *kind,
           const char *what)
{
  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];

      if (strcmp (row[0], kind) == 0 && strcmp (row[1], what) == 0)
        return g_ascii_strtod (row[2], NULL);
    }
  g_error ("no reference for %s %s", kind, what);
}

static void
test_lengths (void)
{
  g_autoptr (GPtrArray) rows = test_reference_rows ("segments.csv");
  SwJoints joints = { .root_at = { 0, 0, 0.530 } };
  SwBody body = { .fists = { FALSE, FALSE } };
  const SwPlacement *p = body.pieces;

  sw_body_solve (&body, &joints);
  g_assert_cmpfloat_with_epsilon (SW_UPPER_ARM, reference (rows, "length", "upper arm"), 1e-12);
  g_assert_cmpfloat_with_epsilon (SW_FOREARM, reference (rows, "length", "forearm"), 1e-12);
  g_assert_cmpfloat_with_epsilon (SW_HAND, reference (rows, "length", "hand"), 1e-12);
  g_assert_cmpfloat_with_epsilon (SW_THIGH, reference (rows, "length", "thigh"), 1e-12);
  g_assert_cmpfloat_with_epsilon (SW_SHANK, reference (rows, "length", "leg (knee to ankle)"), 1e-12);
  g_assert_cmpfloat_with_epsilon (p[SW_PIECE_FOOT].at.z, reference (rows, "length", "ankle height"), 1e-9);
  g_assert_cmpfloat_with_epsilon (p[SW_PIECE_SHANK].at.z, reference (rows, "length", "knee height"), 1e-9);
  g_assert_cmpfloat_with_epsilon (p[SW_PIECE_UPPER_ARM].at.z, reference (rows, "length", "shoulder height"), 1e-9);
  /* What is drawn from our own numbers stays within 5 %. */
  g_assert_cmpfloat_with_epsilon (p[SW_PIECE_FOREARM].at.z, reference (rows, "length", "elbow height arm hanging"),
                                  0.01);
  g_assert_cmpfloat_with_epsilon (p[SW_PIECE_HAND].at.z, reference (rows, "length", "wrist height arm hanging"), 0.01);
  g_assert_cmpfloat_with_epsilon (sw_part_get_lowest (&body, SW_PART_HAND),
                                  reference (rows, "length", "fingertip height arm hanging"), 0.02);
  g_assert_cmpfloat_with_epsilon (sw_part_get_lowest (&body, SW_PART_FOOT), 0.0, 0.002);
}

static void
test_masses (void)
{
  g_autoptr (GPtrArray) rows = test_reference_rows ("segments.csv");
  static const char *const middle[] = { "head and neck", "thorax", "abdomen", "pelvis" };
  static const char *const sided[] = { "hand", "forearm", "upper arm", "foot", "leg", "thigh" };
  SwJoints joints = { .root_at = { 0, 0, 0.530 } };
  SwBody body = { .fists = { FALSE, FALSE } };
  SwVector centre;
  double sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (middle); i++)
    sum += reference (rows, "mass", middle[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (sided); i++)
    sum += 2 * reference (rows, "mass", sided[i]);
  g_assert_cmpfloat_with_epsilon (sum, 1.0, 1e-3);

  sw_body_solve (&body, &joints);
  centre = sw_body_get_mass_centre (&body);
  g_assert_cmpfloat (centre.z, >, reference (rows, "centre", "lowest standing") - 0.01);
  g_assert_cmpfloat (centre.z, <, reference (rows, "centre", "highest standing") + 0.01);
  g_assert_cmpfloat_with_epsilon (centre.y, 0, 1e-9);

  /* A lifted arm moves the centre by its own share: 5 % of the body, Dempster, by a known arc. */
  set (&joints, SW_ANGLE_SHOULDER_RAISE, SW_FIGURE_RIGHT, 90);
  sw_body_solve (&body, &joints);
  g_assert_cmpfloat_with_epsilon (
      sw_body_get_mass_centre (&body).y,
      -(0.028 * 0.436 * 0.186 + 0.016 * (0.186 + 0.430 * 0.146) + 0.006 * (0.186 + 0.146 + 0.506 * 0.108)), 1e-4);
}

static void
test_arm_places (void)
{
  SwJoints joints = { 0 };
  SwBody body = { .fists = { FALSE, FALSE } };

  set (&joints, SW_ANGLE_SHOULDER_RAISE, SW_FIGURE_LEFT, 90);
  sw_body_solve (&body, &joints);
  assert_at (body.pieces[SW_PIECE_HAND + 1].at, SHOULDER_X, SHOULDER_Y + 0.332, SHOULDER_Z);

  set (&joints, SW_ANGLE_SHOULDER_DIRECTION, SW_FIGURE_LEFT, 90);
  sw_body_solve (&body, &joints);
  assert_at (body.pieces[SW_PIECE_HAND + 1].at, SHOULDER_X + 0.332, SHOULDER_Y, SHOULDER_Z);

  /* The elbow bent at the side: forearm ahead, then turned out to the left, for the right arm to the right. */
  for (int side = 0; side < 2; side++)
    {
      double s = sw_side_sign ((SwFigureSide) side);

      memset (&joints, 0, sizeof joints);
      set (&joints, SW_ANGLE_ELBOW_BEND, (SwFigureSide) side, 90);
      sw_body_solve (&body, &joints);
      assert_at (body.pieces[SW_PIECE_HAND + side].at, SHOULDER_X + 0.146, s * SHOULDER_Y, SHOULDER_Z - 0.186);
      set (&joints, SW_ANGLE_SHOULDER_TURN, (SwFigureSide) side, 90);
      sw_body_solve (&body, &joints);
      assert_at (body.pieces[SW_PIECE_HAND + side].at, SHOULDER_X, s * (SHOULDER_Y + 0.146), SHOULDER_Z - 0.186);
      /* At 90 degrees out and turned out the forearm points up. */
      set (&joints, SW_ANGLE_SHOULDER_RAISE, (SwFigureSide) side, 90);
      sw_body_solve (&body, &joints);
      assert_at (body.pieces[SW_PIECE_HAND + side].at, SHOULDER_X, s * (SHOULDER_Y + 0.186), SHOULDER_Z + 0.146);
    }
}

static void
test_leg_places (void)
{
  SwJoints joints = { 0 };
  SwBody body = { .fists = { FALSE, FALSE } };
  double half = 0.491 / 2;

  set (&joints, SW_ANGLE_KNEE_BEND, SW_FIGURE_RIGHT, 90);
  set (&joints, SW_ANGLE_HIP_BEND, SW_FIGURE_LEFT, 90);
  sw_body_solve (&body, &joints);
  assert_at (body.pieces[SW_PIECE_FOOT].at, -0.246, -0.052, -0.245);
  assert_at (body.pieces[SW_PIECE_FOOT + 1].at, 0.491, 0.052, 0);

  memset (&joints, 0, sizeof joints);
  set (&joints, SW_ANGLE_HIP_OUT, SW_FIGURE_RIGHT, 30);
  sw_body_solve (&body, &joints);
  assert_at (body.pieces[SW_PIECE_FOOT].at, 0, -0.052 - half, -0.491 * cos (G_PI / 6));
}

/* Tips of fingers and thumb in the hand of the right side: x to the thumb, y out of the palm, z to the elbow. */
static void
test_finger_places (void)
{
  SwHand hand = { 0 };
  SwDigitBones bones;

  /* Straight, the middle finger ends where the hand does. */
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_MIDDLE), 0.0066, 0, -SW_HAND);
  /* Square knuckles: all of the finger stands out of the palm, of the left one to the other side. */
  hand.knuckle_deg = 90;
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_MIDDLE), 0.0066, 0.058, -0.050);
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_LEFT, SW_DIGIT_MIDDLE), 0.0066, -0.058, -0.050);
  /* Then the middle joints by 90 towards the wrist, the end joints by 60 more, less 60 again. */
  hand.curl_deg = 90;
  hand.tips_deg = -60;
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_MIDDLE), 0.0066, 0.027, -0.050 + 0.017 + 0.014);
  hand.tips_deg = 0;
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_MIDDLE), 0.0066, 0.027 - 0.014 * sin (G_PI / 3),
             -0.050 + 0.017 + 0.014 * cos (G_PI / 3));
  /* Spread by 20 between neighbours: the index to the thumb, the little finger by 40 the other way. */
  hand = (SwHand){ .spread_deg = 20 };
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_INDEX), 0.020 + 0.0525 * sin (G_PI / 9), 0,
             -0.049 - 0.0525 * cos (G_PI / 9));
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_LITTLE), -0.0196 - 0.0445 * sin (2 * G_PI / 9), 0,
             -0.043 - 0.0445 * cos (2 * G_PI / 9));
  /* One finger square at knuckle and middle joint, the others straight; the little one by bending all and straightening
   * the rest. Bent further than they go, they stop at 90 and 100. */
  hand = (SwHand){ .more_deg = { 90 }, .tips_deg = -60 };
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_INDEX), 0.020, 0.025, -0.049 + 0.0145 + 0.013);
  hand = (SwHand){ .knuckle_deg = 90, .more_deg = { -90, -90, -90 } };
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_MIDDLE), 0.0066, 0, -SW_HAND);
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_LITTLE), -0.0196, 0.0445, -0.043);
  hand = (SwHand){ .knuckle_deg = 60, .more_deg = { 0, 0, 100 } };
  sw_hand_get_digit (&hand, SW_FIGURE_RIGHT, SW_DIGIT_RING, &bones);
  assert_at (sw_sub (bones.joints[1], bones.joints[0]), 0, 0.025, 0);
  assert_at (sw_sub (bones.joints[2], bones.joints[1]), 0, 0.016 * cos (SW_RAD (100)), 0.016 * sin (SW_RAD (100)));
  /* The thumb 60 out and 90 across stands in front of the palm; bent, it points towards the little finger. */
  hand = (SwHand){ .thumb_out_deg = 28, .thumb_across_deg = 80 };
  assert_at (sw_hand_get_tip (&hand, SW_FIGURE_RIGHT, SW_DIGIT_THUMB), 0.018, 0.004 + 0.060 * sin (G_PI / 3),
             -0.014 - 0.060 * 0.5);
  hand.thumb_bend_deg = 56.25;
  sw_hand_get_digit (&hand, SW_FIGURE_RIGHT, SW_DIGIT_THUMB, &bones);
  assert_at (sw_sub (bones.joints[3], bones.joints[2]), -0.016, 0, 0);
  /* Nails are on the back. */
  hand = (SwHand){ 0 };
  sw_hand_get_digit (&hand, SW_FIGURE_RIGHT, SW_DIGIT_RING, &bones);
  assert_at (bones.backs[2], 0, -1, 0);
  assert_at (bones.across[2], 1, 0, 0);

  /* The marks follow; hanging arms have the palms to the thighs. */
  {
    SwJoints joints = { 0 };
    SwBody body = { .fists = { FALSE, FALSE } };

    for (int side = 0; side < 2; side++)
      set (&joints, SW_ANGLE_FINGERS_KNUCKLE, (SwFigureSide) side, 90);
    sw_body_solve (&body, &joints);
    assert_at (sw_body_get_mark (&body, SW_FIGURE_MARK_RIGHT_FINGERS), SHOULDER_X + 0.0066, -SHOULDER_Y + 0.058,
               SHOULDER_Z - 0.332 - 0.050);
    assert_at (sw_body_get_mark (&body, SW_FIGURE_MARK_LEFT_FINGERS), SHOULDER_X + 0.0066, SHOULDER_Y - 0.058,
               SHOULDER_Z - 0.332 - 0.050);
  }
}

/* A sole turned in takes the toes inward; about the oblique axis of the joint below the ankle. */
static void
test_sole_places (void)
{
  double c = cos (SW_RAD (42));
  double s = sin (SW_RAD (42));

  for (int side = 0; side < 2; side++)
    {
      double inward = -sw_side_sign ((SwFigureSide) side);
      SwJoints joints = { 0 };
      SwBody body = { .fists = { FALSE, FALSE } };
      SwMatrix foot;

      set (&joints, SW_ANGLE_ANKLE_IN, (SwFigureSide) side, 90);
      sw_body_solve (&body, &joints);
      foot = body.pieces[SW_PIECE_FOOT + side].axes;
      assert_at (foot.x, c * c, inward * s, c * s);
      assert_at (foot.z, s * c, -inward * c, s * s);
    }
}

static void
fill_randomly (SwJoints *joints)
{
  for (int slot = 0; slot < (int) SW_N_SLOTS; slot++)
    {
      const SwAngleInfo *info = sw_angle_get_info (sw_angle_from_slot (slot, NULL));

      joints->slots_deg[slot] = g_test_rand_double_range (info->low_deg, info->high_deg);
    }
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    joints->root_deg[i] = g_test_rand_double_range (-180, 180);
  joints->root_at = sw_vector (g_test_rand_double_range (-1, 1), g_test_rand_double_range (-1, 1),
                               g_test_rand_double_range (-1, 1));
}

static double
distance (const SwBody *body,
          int           a,
          int           b)
{
  return sw_length (sw_sub (body->pieces[a].at, body->pieces[b].at));
}

static void
test_rigid (void)
{
  for (int i = 0; i < 2000; i++)
    {
      SwJoints joints;
      SwBody body = { .fists = { FALSE, FALSE } };

      fill_randomly (&joints);
      sw_body_solve (&body, &joints);
      for (int side = 0; side < 2; side++)
        {
          g_assert_cmpfloat_with_epsilon (distance (&body, SW_PIECE_UPPER_ARM + side, SW_PIECE_FOREARM + side),
                                          SW_UPPER_ARM, 1e-9);
          g_assert_cmpfloat_with_epsilon (distance (&body, SW_PIECE_FOREARM + side, SW_PIECE_HAND + side), SW_FOREARM,
                                          1e-9);
          g_assert_cmpfloat_with_epsilon (distance (&body, SW_PIECE_THIGH + side, SW_PIECE_SHANK + side), SW_THIGH,
                                          1e-9);
          g_assert_cmpfloat_with_epsilon (distance (&body, SW_PIECE_SHANK + side, SW_PIECE_FOOT + side), SW_SHANK,
                                          1e-9);
        }
    }
}

static void
test_mirror (void)
{
  for (int i = 0; i < 200; i++)
    {
      SwJoints joints;
      SwJoints other;
      SwBody body = { .fists = { FALSE, FALSE } };
      SwBody mirrored = { .fists = { FALSE, FALSE } };

      fill_randomly (&joints);
      for (int slot = 0; slot < (int) SW_N_SLOTS; slot++)
        {
          SwFigureSide side;
          SwAngle angle = sw_angle_from_slot (slot, &side);
          SwFigureSide opposite = side == SW_FIGURE_LEFT ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;

          other.slots_deg[sw_angle_get_slot (angle, opposite)]
              = sw_angle_get_mirror_sign (angle) * joints.slots_deg[slot];
        }
      for (int k = 0; k < SW_FIGURE_N_ROOT; k++)
        other.root_deg[k] = k == SW_FIGURE_ROOT_LEAN ? joints.root_deg[k] : -joints.root_deg[k];
      other.root_at = sw_vector (joints.root_at.x, -joints.root_at.y, joints.root_at.z);
      sw_body_solve (&body, &joints);
      sw_body_solve (&mirrored, &other);

      for (int piece = 0; piece < SW_N_PIECES; piece++)
        {
          int twin = piece < (int) SW_PIECE_UPPER_ARM
                         ? piece
                         : (int) SW_PIECE_UPPER_ARM + ((piece - (int) SW_PIECE_UPPER_ARM) ^ 1);
          SwVector at = body.pieces[piece].at;

          assert_at (mirrored.pieces[twin].at, at.x, -at.y, at.z);
        }
      for (int mark = SW_FIGURE_MARK_RIGHT_SHOULDER; mark <= SW_FIGURE_MARK_LEFT_THUMB; mark++)
        {
          SwVector at = sw_body_get_mark (&body, (SwFigureMark) mark);

          assert_at (sw_body_get_mark (&mirrored, sw_figure_mark_get_mirrored ((SwFigureMark) mark)), at.x, -at.y, at.z);
        }
      for (int side = 0; side < 2; side++)
        for (int digit = 0; digit < SW_N_DIGITS; digit++)
          {
            SwDigitBones own;
            SwDigitBones twin;

            sw_hand_get_digit (&body.hands[side], (SwFigureSide) side, (SwDigit) digit, &own);
            sw_hand_get_digit (&mirrored.hands[1 - side], (SwFigureSide) (1 - side), (SwDigit) digit, &twin);
            for (int n = 0; n <= SW_DIGIT_BONES; n++)
              {
                /* Exactly: the other side is computed as the same hand. */
                g_assert_true (twin.joints[n].x <= own.joints[n].x && twin.joints[n].x >= own.joints[n].x);
                g_assert_true (twin.joints[n].y <= -own.joints[n].y && twin.joints[n].y >= -own.joints[n].y);
                g_assert_true (twin.joints[n].z <= own.joints[n].z && twin.joints[n].z >= own.joints[n].z);
              }
          }
    }
}

/* Angles read back from a body are the angles that made it, away from where they are undefined. */
static void
test_read_back (void)
{
  for (int i = 0; i < 500; i++)
    {
      SwFigureSide side = i % 2 == 0 ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;
      SwJoints joints;
      SwJoints read;
      SwBody body = { .fists = { FALSE, FALSE } };

      fill_randomly (&joints);
      set (&joints, SW_ANGLE_SHOULDER_RAISE, side, g_test_rand_double_range (10, 170));
      set (&joints, SW_ANGLE_SHOULDER_DIRECTION, side, g_test_rand_double_range (-40, 130));
      set (&joints, SW_ANGLE_WRIST_BEND, side, g_test_rand_double_range (-80, 80));
      sw_body_solve (&body, &joints);
      read = joints;
      for (int angle = SW_ANGLE_SHOULDER_RAISE; angle <= SW_ANGLE_ANKLE_UP; angle++)
        set (&read, (SwAngle) angle, side, 0);
      sw_joints_read_arm (&body, &read, side);
      sw_joints_read_leg (&body, &read, side);
      for (int angle = SW_ANGLE_SHOULDER_RAISE; angle <= SW_ANGLE_ANKLE_UP; angle++)
        g_assert_cmpfloat_with_epsilon (sw_joints_get (&read, (SwAngle) angle, side),
                                        sw_joints_get (&joints, (SwAngle) angle, side), 1e-6);
    }
}

/* A reach to where forward kinematics put the hand comes back there; the stretch limit costs at most 0.1 %. */
static void
test_reach_round_trip (void)
{
  for (int i = 0; i < 500; i++)
    {
      SwFigureSide side = i % 2 == 0 ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;
      SwJoints joints;
      SwBody body = { .fists = { FALSE, FALSE } };
      SwBody again;
      SwVector elbow;
      SwVector knee;

      fill_randomly (&joints);
      sw_body_solve (&body, &joints);
      again = body;
      elbow = sw_sub (body.pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at,
                      body.pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at);
      knee = sw_sub (body.pieces[SW_SIDED (SW_PIECE_SHANK, side)].at, body.pieces[SW_SIDED (SW_PIECE_THIGH, side)].at);
      sw_reach_arm (&again, &joints, side, body.pieces[SW_SIDED (SW_PIECE_HAND, side)], elbow);
      sw_reach_leg (&again, &joints, side, body.pieces[SW_SIDED (SW_PIECE_FOOT, side)], knee);
      g_assert_cmpfloat (sw_length (sw_sub (again.pieces[SW_SIDED (SW_PIECE_HAND, side)].at,
                                            body.pieces[SW_SIDED (SW_PIECE_HAND, side)].at)),
                         <, 1e-3);
      g_assert_cmpfloat (sw_length (sw_sub (again.pieces[SW_SIDED (SW_PIECE_FOOT, side)].at,
                                            body.pieces[SW_SIDED (SW_PIECE_FOOT, side)].at)),
                         <, 1e-3);
      /* And the angles that were read make the same body. */
      sw_body_solve (&body, &joints);
      g_assert_cmpfloat (sw_length (sw_sub (again.pieces[SW_SIDED (SW_PIECE_HAND, side)].at,
                                            body.pieces[SW_SIDED (SW_PIECE_HAND, side)].at)),
                         <, 1e-6);
      g_assert_cmpfloat (sw_length (sw_sub (again.pieces[SW_SIDED (SW_PIECE_FOOT, side)].at,
                                            body.pieces[SW_SIDED (SW_PIECE_FOOT, side)].at)),
                         <, 1e-6);
    }
}

/* Every norm of ours is the widest published one, and drawing goes beyond only with a reason. */
static void
test_norms (void)
{
  static const struct
  {
    const char *joint;
    const char *motion;
    SwAngle angle;
    int sign;
  } motions[] = {
    { "shoulder", "flexion", SW_ANGLE_SHOULDER_RAISE, 1 },
    { "shoulder", "abduction", SW_ANGLE_SHOULDER_RAISE, 1 },
    { "shoulder", "extension", SW_ANGLE_SHOULDER_RAISE, -1 },
    { "shoulder", "horizontal adduction", SW_ANGLE_SHOULDER_DIRECTION, 1 },
    { "shoulder", "horizontal abduction", SW_ANGLE_SHOULDER_DIRECTION, -1 },
    { "shoulder", "external rotation", SW_ANGLE_SHOULDER_TURN, 1 },
    { "shoulder", "internal rotation", SW_ANGLE_SHOULDER_TURN, -1 },
    { "elbow", "flexion", SW_ANGLE_ELBOW_BEND, 1 },
    { "forearm", "supination", SW_ANGLE_FOREARM_PALM_UP, 1 },
    { "forearm", "pronation", SW_ANGLE_FOREARM_PALM_UP, -1 },
    { "wrist", "flexion", SW_ANGLE_WRIST_BEND, 1 },
    { "wrist", "extension", SW_ANGLE_WRIST_BEND, -1 },
    { "wrist", "radial deviation", SW_ANGLE_WRIST_THUMBWARD, 1 },
    { "wrist", "ulnar deviation", SW_ANGLE_WRIST_THUMBWARD, -1 },
    { "hip", "flexion", SW_ANGLE_HIP_BEND, 1 },
    { "hip", "extension", SW_ANGLE_HIP_BEND, -1 },
    { "hip", "abduction", SW_ANGLE_HIP_OUT, 1 },
    { "hip", "adduction", SW_ANGLE_HIP_OUT, -1 },
    { "hip", "external rotation", SW_ANGLE_HIP_TURN, 1 },
    { "hip", "internal rotation", SW_ANGLE_HIP_TURN, -1 },
    { "knee", "flexion", SW_ANGLE_KNEE_BEND, 1 },
    { "ankle", "dorsiflexion", SW_ANGLE_ANKLE_UP, 1 },
    { "ankle", "plantarflexion", SW_ANGLE_ANKLE_UP, -1 },
    { "neck", "lateral flexion", SW_ANGLE_NECK_SIDE, 1 },
    { "neck", "rotation", SW_ANGLE_NECK_TURN, 1 },
  };
  g_autoptr (GPtrArray) rows = test_reference_rows ("joint-ranges.csv");

  for (gsize i = 0; i < G_N_ELEMENTS (motions); i++)
    {
      const SwAngleInfo *info = sw_angle_get_info (motions[i].angle);
      double widest = 0;

      for (guint k = 0; k < rows->len; k++)
        {
          char **row = rows->pdata[k];

          if (strcmp (row[0], motions[i].joint) == 0 && strcmp (row[1], motions[i].motion) == 0)
            widest = MAX (widest, g_ascii_strtod (row[2], NULL));
        }
      g_assert_cmpfloat (widest, >, 0);
      g_assert_cmpfloat_with_epsilon (motions[i].sign > 0 ? info->norm_high_deg : -info->norm_low_deg, widest, 1e-9);
    }

  for (int i = 0; i < (int) SW_N_ANGLES; i++)
    {
      const SwAngleInfo *info = sw_angle_get_info ((SwAngle) i);

      g_assert_nonnull (info->source);
      if (info->low_deg < info->norm_low_deg || info->high_deg > info->norm_high_deg)
        g_assert_nonnull (info->reason);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/skeleton/lengths", test_lengths);
  g_test_add_func ("/skeleton/masses", test_masses);
  g_test_add_func ("/skeleton/arm-places", test_arm_places);
  g_test_add_func ("/skeleton/leg-places", test_leg_places);
  g_test_add_func ("/skeleton/finger-places", test_finger_places);
  g_test_add_func ("/skeleton/sole-places", test_sole_places);
  g_test_add_func ("/skeleton/rigid", test_rigid);
  g_test_add_func ("/skeleton/mirror", test_mirror);
  g_test_add_func ("/skeleton/read-back", test_read_back);
  g_test_add_func ("/skeleton/reach-round-trip", test_reach_round_trip);
  g_test_add_func ("/skeleton/norms", test_norms);
  return g_test_run ();
}
