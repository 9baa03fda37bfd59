/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The joint angles of the figure: what they are called, which way they count and how far they go.
 *
 * Ranges are the widest of the published norms. Their sources: AAOS = American Academy of Orthopaedic Surgeons,
 * Joint Motion, 1965, as tabled by Norkin and White, Measurement of Joint Motion, appendix A; CFR = 38 CFR 4.71,
 * plates I, II and V, and its examination worksheet; KIN = ranges of several handbooks tabled in a kinesiology
 * text, appendix 1. They are a guide to drawing, not a measure of anybody's joint. */
#include "config.h"

#include <string.h>

#include "sw-angle.h"

#define OWN "drawn range, no norm published for this level alone"
#define BACK "AAOS and CFR: whole back 90 forward, 30 back; the split between two levels is ours"
#define NECK "AAOS and CFR: whole neck 45 each way; the split between two levels is ours"
#define SIDE "AAOS and CFR: whole back 35 to the side; the split is ours"
#define TURN "AAOS: whole back 45; the split is ours"
#define DIGITS "drawn range, the same for all fingers"

/* Sets of slots are kept as the bits of one number. */
G_STATIC_ASSERT (SW_N_SLOTS <= 64);

static const SwAngleInfo infos[SW_N_ANGLES] = {
  /* Spine and head. bend: + forward, about +y. side: + to the left, about -x. turn: + to the left, about +z. */
  { "low-back", "bend", "low back", -30, 60, BACK, -30, 60, NULL },
  { "low-back", "side", "low back", -30, 30, SIDE, -30, 30, NULL },
  { "low-back", "turn", "low back", -30, 30, TURN, -30, 30, NULL },
  { "upper-back", "bend", "upper back", -25, 35, BACK, -25, 35, NULL },
  { "upper-back", "side", "upper back", -30, 30, SIDE, -30, 30, NULL },
  { "upper-back", "turn", "upper back", -35, 35, TURN, -35, 35, NULL },
  { "neck", "bend", "neck", -35, 40, NECK, -35, 40, NULL },
  { "neck", "side", "neck", -45, 45, "AAOS and CFR", -45, 45, NULL },
  { "neck", "turn", "neck", -80, 80, "CFR", -80, 80, NULL },
  { "head", "bend", "head", -36, 20, NECK, -36, 20, NULL },
  { "head", "side", "head", -20, 20, OWN, -20, 20, NULL },
  { "head", "turn", "head", -45, 45, OWN, -45, 45, NULL },

  /* Shoulder blade: the collarbone turned about z (+ forward round the ribs) and x (+ shrug). */
  { "shoulder-blade", "forward", "shoulder blade", -25, 45, OWN, -25, 45, NULL },
  { "shoulder-blade", "up", "shoulder blade", -10, 40, OWN, -10, 40, NULL },

  /* Shoulder: raised from hanging in a direction (0 sideways, 90 forward, more across the chest, less behind), then
   * turned about the upper arm (+ outward). An arm led back through the side is a negative raise at direction 90. */
  { "shoulder", "raise", "arm", -60, 180, "AAOS and CFR: 180 up, AAOS: 60 back", -60, 180, NULL },
  { "shoulder", "direction", "arm", -45, 135, "KIN: 45 back, 135 across", -90, 135,
    "an arm that hangs or is led back to the hip points straight back, where the reach is the raise's" },
  { "shoulder", "turn", "arm", -90, 90, "CFR", -90, 90, NULL },
  { "elbow", "bend", "elbow", 0, 150, "AAOS", 0, 150, NULL },
  /* 0 is thumb up with a bent elbow; + palm up. */
  { "forearm", "palm-up", "forearm", -90, 90, "KIN", -90, 90, NULL },
  { "wrist", "bend", "wrist", -85, 90, "KIN", -90, 90,
    "a palm flat under a straight arm carries the wrist to a right angle under load" },
  { "wrist", "thumbward", "wrist", -45, 25, "KIN and CFR", -45, 25,
    NULL },

  /* Leg. Hip: bend (+ forward), then out, then turn (+ outward). Knee: + heel back. Ankle: + toes up. */
  { "hip", "bend", "hip", -30, 125, "CFR", -30, 125, NULL },
  { "hip", "out", "leg", -45, 45, "AAOS and CFR; 45 inward: Merck Manual", -45, 45, NULL },
  { "hip", "turn", "leg", -45, 60, "CFR", -45, 60, NULL },
  { "knee", "bend", "knee", 0, 140, "CFR", 0, 140, NULL },
  { "ankle", "up", "ankle", -50, 20, "AAOS", -75, 30,
    "a foot lies on its back when kneeling or face down, and a calf stretch is loaded by the body's weight" },
  /* The foot below the ankle, about an oblique axis: + the sole turns to the other foot and the toes follow. */
  { "ankle", "in", "foot", -15, 35, "AAOS", -15, 35, NULL },
  { "toes", "up", "toes", -30, 80, OWN, -30, 80, NULL },

  /* All four fingers alike: knuckles (+ towards the palm), curl of the middle joints, which the end joints follow by two
   * thirds; tips bends the end joints more or less than that. Spread is the angle between neighbours. Index, middle and
   * ring bend that finger's knuckle and middle joint more or less than all four alike; the little finger alone is bent
   * by bending all and straightening those three. The thumb: out
   * from the hand's long axis (0: the open hand's), across about that axis (0 beside the hand, 90 in front of the palm,
   * more towards the little finger), bend of its end joint, which the one before follows by three fifths. */
  { "fingers", "knuckle", "knuckles", -30, 90, DIGITS, -30, 90, NULL },
  { "fingers", "curl", "fingers", 0, 100, DIGITS, 0, 100, NULL },
  { "fingers", "tips", "fingertips", -70, 60, DIGITS, -70, 60, NULL },
  { "fingers", "spread", "fingers", 0, 20, DIGITS, 0, 20, NULL },
  { "fingers", "index", "index finger", -100, 100, DIGITS, -100, 100, NULL },
  { "fingers", "middle", "middle finger", -100, 100, DIGITS, -100, 100, NULL },
  { "fingers", "ring", "ring finger", -100, 100, DIGITS, -100, 100, NULL },
  { "thumb", "out", "thumb", -25, 35, "drawn range", -25, 35, NULL },
  { "thumb", "across", "thumb", -10, 130, "drawn range", -10, 130, NULL },
  { "thumb", "bend", "thumb", 0, 80, "drawn range", 0, 80, NULL },
};

/**
 * sw_angle_get_info:
 * @angle: an angle
 *
 * Returns: (transfer none): what is known of it
 */
const SwAngleInfo *
sw_angle_get_info (SwAngle angle)
{
  g_return_val_if_fail ((int) angle >= 0 && angle < SW_N_ANGLES, NULL);

  return &infos[angle];
}

/**
 * sw_angle_is_sided:
 * @angle: an angle
 *
 * Returns: whether it exists on both sides
 */
gboolean
sw_angle_is_sided (SwAngle angle)
{
  return angle >= SW_FIRST_SIDED_ANGLE;
}

/**
 * sw_angle_get_slot:
 * @angle: an angle
 * @side: whose; without meaning for the spine
 *
 * Returns: where the angle stands in an array of SW_N_SLOTS
 */
int
sw_angle_get_slot (SwAngle    angle,
                   SwFigureSide side)
{
  if (!sw_angle_is_sided (angle))
    return (int) angle;

  return (int) SW_FIRST_SIDED_ANGLE + 2 * (int) (angle - SW_FIRST_SIDED_ANGLE) + (int) side;
}

/**
 * sw_angle_from_slot:
 * @slot: 0..SW_N_SLOTS - 1
 * @side: (out) (optional): whose it is; SW_FIGURE_RIGHT for the spine
 *
 * Returns: the angle that stands there
 */
SwAngle
sw_angle_from_slot (int         slot,
                    SwFigureSide *side)
{
  int sided = slot - (int) SW_FIRST_SIDED_ANGLE;

  if (side != NULL)
    *side = sided >= 0 && sided % 2 == 1 ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;

  return sided < 0 ? (SwAngle) slot : SW_FIRST_SIDED_ANGLE + (SwAngle) (sided / 2);
}

/**
 * sw_angle_find:
 * @element: an element's name
 * @attribute: an attribute's name
 * @angle: (out): the angle they name together
 *
 * Returns: whether there is such an angle
 */
gboolean
sw_angle_find (const char *element,
               const char *attribute,
               SwAngle    *angle)
{
  for (int i = 0; i < (int) SW_N_ANGLES; i++)
    if (strcmp (infos[i].element, element) == 0 && strcmp (infos[i].attribute, attribute) == 0)
      {
        *angle = (SwAngle) i;
        return TRUE;
      }

  return FALSE;
}

/**
 * sw_angle_is_element:
 * @element: an element's name
 *
 * Returns: whether it carries angles
 */
gboolean
sw_angle_is_element (const char *element)
{
  for (int i = 0; i < (int) SW_N_ANGLES; i++)
    if (strcmp (infos[i].element, element) == 0)
      return TRUE;

  return FALSE;
}

/**
 * sw_angle_get_mirror_sign:
 * @angle: an angle
 *
 * Returns: -1 when the angle changes its sign in the mirror (side and turn of the spine), else 1; sides swap besides
 */
double
sw_angle_get_mirror_sign (SwAngle angle)
{
  if (sw_angle_is_sided (angle) || strcmp (infos[angle].attribute, "bend") == 0)
    return 1.0;

  return -1.0;
}

/**
 * sw_angle_get_excess:
 * @angle: an angle
 * @value_deg: its value
 *
 * Returns: by how many degrees @value_deg leaves the range that is drawn without a warning; 0 within it
 */
double
sw_angle_get_excess (SwAngle angle,
                     double  value_deg)
{
  const SwAngleInfo *info = &infos[angle];

  return MAX (0.0, MAX (info->low_deg - value_deg, value_deg - info->high_deg));
}
