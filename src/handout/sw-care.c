/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which plain words of caution go with what a client must be careful of and what an exercise asks of the body.
 * The words name no condition: the page may be read by others. The pairs and the sense of the words follow the
 * table in tests/reference/cautions.csv, which gives the source of each. */
#include "config.h"

#include "sw-care.h"

typedef struct
{
  SwPrecaution precaution;
  SwSet cautions;
  const char *key;
} Care;

static const Care cares[] = {
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_SET (SW_CAUTION_BREATH_HOLDING) | SW_SET (SW_CAUTION_LONG_HOLD),
    "care.breathe-out" },
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_SET (SW_CAUTION_HEAD_LOW), "care.head-high" },
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_SET (SW_CAUTION_FLOOR_TRANSFER), "care.sit-first" },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_SET (SW_CAUTION_SPINE_BEND) | SW_SET (SW_CAUTION_SIT_UP), "care.straight-back" },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_SET (SW_CAUTION_SPINE_TWIST), "care.turn-by-stepping" },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_SET (SW_CAUTION_LIFT_FROM_FLOOR) | SW_SET (SW_CAUTION_LOAD_OVERHEAD),
    "care.waist-height" },
  { SW_PRECAUTION_OSTEOPOROSIS,
    SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING)
        | SW_SET (SW_CAUTION_EYES_CLOSED),
    "care.by-counter" },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_SET (SW_CAUTION_IMPACT), "care.land-softly" },
  { SW_PRECAUTION_FALL_RISK,
    SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING)
        | SW_SET (SW_CAUTION_EYES_CLOSED) | SW_SET (SW_CAUTION_IMPACT),
    "care.counter-and-company" },
  { SW_PRECAUTION_FALL_RISK, SW_SET (SW_CAUTION_EYES_CLOSED), "care.eyes-open" },
  { SW_PRECAUTION_FALL_RISK, SW_SET (SW_CAUTION_FLOOR_TRANSFER), "care.chair-by-floor" },
  { SW_PRECAUTION_FALL_RISK, SW_SET (SW_CAUTION_FOOT_PIVOT), "care.small-steps" },
  { SW_PRECAUTION_PREGNANCY, SW_SET (SW_CAUTION_FLAT_ON_BACK), "care.prop-up" },
  { SW_PRECAUTION_PREGNANCY, SW_SET (SW_CAUTION_FACE_DOWN), "care.not-on-front" },
  { SW_PRECAUTION_PREGNANCY, SW_SET (SW_CAUTION_HEAD_LOW), "care.head-high" },
  { SW_PRECAUTION_PREGNANCY, SW_SET (SW_CAUTION_BREATH_HOLDING) | SW_SET (SW_CAUTION_SIT_UP),
    "care.breathe-out-effort" },
  { SW_PRECAUTION_PREGNANCY,
    SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING) | SW_SET (SW_CAUTION_IMPACT),
    "care.hold-steady" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_HIP_DEEP_BEND), "care.right-angle" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_HIP_CROSSING), "care.no-crossing" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_HIP_TURNED_IN), "care.toes-forward" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_FOOT_PIVOT), "care.small-steps" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_FLOOR_TRANSFER), "care.as-shown" },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_SET (SW_CAUTION_IMPACT), "care.no-jumping" },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_SET (SW_CAUTION_HIP_BACK_TURNED_OUT), "care.no-step-back" },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_SET (SW_CAUTION_FOOT_PIVOT), "care.small-steps" },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_SET (SW_CAUTION_FLOOR_TRANSFER), "care.as-shown" },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_SET (SW_CAUTION_IMPACT), "care.no-jumping" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_HIP_DEEP_BEND), "care.right-angle" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_HIP_CROSSING), "care.no-crossing" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_HIP_TURNED_IN), "care.toes-forward" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_HIP_OUT_ACTIVE), "care.no-leg-out" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_FOOT_PIVOT), "care.small-steps" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_FLOOR_TRANSFER), "care.as-shown" },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_SET (SW_CAUTION_IMPACT), "care.no-jumping" },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_SET (SW_CAUTION_KNEELING), "care.no-kneeling" },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_SET (SW_CAUTION_FOOT_PIVOT), "care.no-twist-knee" },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_SET (SW_CAUTION_KNEE_DEEP_BEND) | SW_SET (SW_CAUTION_IMPACT),
    "care.as-far-as-told" },
  { SW_PRECAUTION_KNEELING_PAIN, SW_SET (SW_CAUTION_KNEELING), "care.pillow-knees" },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR,
    SW_SET (SW_CAUTION_KNEE_LOADED_STRAIGHTENING) | SW_SET (SW_CAUTION_KNEE_DEEP_BEND)
        | SW_SET (SW_CAUTION_ONE_LEG_STANDING),
    "care.as-far-as-told" },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_SET (SW_CAUTION_FOOT_PIVOT) | SW_SET (SW_CAUTION_IMPACT),
    "care.no-twist-foot" },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_SET (SW_CAUTION_CALF_STRETCH), "care.no-calf-stretch" },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_SET (SW_CAUTION_ONE_LEG_HEEL_RAISE) | SW_SET (SW_CAUTION_IMPACT),
    "care.two-feet" },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_SET (SW_CAUTION_BAREFOOT) | SW_SET (SW_CAUTION_FULL_WEIGHT_BEARING),
    "care.boot-and-weight" },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_SET (SW_CAUTION_ARM_OUT_TURNED_OUT), "care.elbow-in-sight" },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_SET (SW_CAUTION_ARM_BEHIND), "care.no-reach-behind" },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_SET (SW_CAUTION_LOAD_OVERHEAD), "care.no-overhead" },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_BACK, SW_SET (SW_CAUTION_ARM_ACROSS_PUSH), "care.no-push-across" },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_BACK, SW_SET (SW_CAUTION_WRIST_WEIGHT_BEARING), "care.no-lean" },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR,
    SW_SET (SW_CAUTION_ARM_ACTIVE_LIFT) | SW_SET (SW_CAUTION_LOAD_OVERHEAD) | SW_SET (SW_CAUTION_WRIST_WEIGHT_BEARING)
        | SW_SET (SW_CAUTION_ARM_OUT_TURNED_OUT) | SW_SET (SW_CAUTION_ARM_ACROSS_PUSH),
    "care.no-arm-lift" },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_SET (SW_CAUTION_ARM_BEHIND), "care.no-reach-behind" },
  { SW_PRECAUTION_SPINE_SURGERY,
    SW_SET (SW_CAUTION_SPINE_BEND) | SW_SET (SW_CAUTION_SPINE_TWIST) | SW_SET (SW_CAUTION_SPINE_ARCH)
        | SW_SET (SW_CAUTION_SIT_UP) | SW_SET (SW_CAUTION_LIFT_FROM_FLOOR) | SW_SET (SW_CAUTION_LOAD_OVERHEAD),
    "care.no-bend-lift-twist" },
  { SW_PRECAUTION_SPINE_SURGERY, SW_SET (SW_CAUTION_IMPACT), "care.no-jumping" },
  { SW_PRECAUTION_LEG_SYMPTOMS,
    SW_SET (SW_CAUTION_SPINE_BEND) | SW_SET (SW_CAUTION_SPINE_TWIST) | SW_SET (SW_CAUTION_SPINE_ARCH)
        | SW_SET (SW_CAUTION_SIT_UP) | SW_SET (SW_CAUTION_LIFT_FROM_FLOOR),
    "care.pain-down-leg" },
  { SW_PRECAUTION_NECK_DIZZINESS, SW_SET (SW_CAUTION_NECK_END_RANGE), "care.no-head-back" },
  { SW_PRECAUTION_NECK_DIZZINESS, SW_SET (SW_CAUTION_HEAD_LOW) | SW_SET (SW_CAUTION_EYES_CLOSED),
    "care.stop-if-dizzy" },
  { SW_PRECAUTION_FRACTURE_HEALING,
    SW_SET (SW_CAUTION_FULL_WEIGHT_BEARING) | SW_SET (SW_CAUTION_WRIST_WEIGHT_BEARING)
        | SW_SET (SW_CAUTION_ONE_LEG_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_HEEL_RAISE) | SW_SET (SW_CAUTION_IMPACT)
        | SW_SET (SW_CAUTION_FOOT_PIVOT) | SW_SET (SW_CAUTION_LIFT_FROM_FLOOR),
    "care.weight-told" },
  { SW_PRECAUTION_HYPERMOBILITY, SW_SET (SW_CAUTION_END_RANGE_HOLD), "care.short-of-straight" },
  { SW_PRECAUTION_JOINT_FLARE,
    SW_SET (SW_CAUTION_LONG_HOLD) | SW_SET (SW_CAUTION_END_RANGE_HOLD) | SW_SET (SW_CAUTION_IMPACT)
        | SW_SET (SW_CAUTION_KNEE_DEEP_BEND) | SW_SET (SW_CAUTION_KNEE_LOADED_STRAIGHTENING),
    "care.easy-range" },
  { SW_PRECAUTION_POOR_FOOT_FEELING, SW_SET (SW_CAUTION_BAREFOOT) | SW_SET (SW_CAUTION_IMPACT), "care.shoes" },
  { SW_PRECAUTION_POOR_FOOT_FEELING,
    SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING)
        | SW_SET (SW_CAUTION_EYES_CLOSED),
    "care.by-counter" },
  { SW_PRECAUTION_ABDOMINAL_SURGERY,
    SW_SET (SW_CAUTION_BREATH_HOLDING) | SW_SET (SW_CAUTION_LIFT_FROM_FLOOR) | SW_SET (SW_CAUTION_LOAD_OVERHEAD),
    "care.breathe-out-lift" },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, SW_SET (SW_CAUTION_SIT_UP), "care.no-sit-ups" },
  { SW_PRECAUTION_PELVIC_FLOOR,
    SW_SET (SW_CAUTION_BREATH_HOLDING) | SW_SET (SW_CAUTION_IMPACT) | SW_SET (SW_CAUTION_SIT_UP)
        | SW_SET (SW_CAUTION_LIFT_FROM_FLOOR),
    "care.no-leak" },
  { SW_PRECAUTION_LYMPHOEDEMA,
    SW_SET (SW_CAUTION_LOAD_OVERHEAD) | SW_SET (SW_CAUTION_WRIST_WEIGHT_BEARING)
        | SW_SET (SW_CAUTION_ARM_ACTIVE_LIFT),
    "care.go-up-slowly" },
};

/* Precautions that ask for something at every exercise, or before any. */
static const struct
{
  SwPrecaution precaution;
  const char *key;
} general[] = {
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, "care.general-breathe" },
  { SW_PRECAUTION_HEART_RATE_MEDICINE, "care.general-effort" },
  { SW_PRECAUTION_FALL_RISK, "care.general-fall" },
  { SW_PRECAUTION_PREGNANCY, "care.general-pregnancy" },
  { SW_PRECAUTION_LEG_SYMPTOMS, "care.general-leg" },
  { SW_PRECAUTION_FRACTURE_HEALING, "care.general-weight" },
  { SW_PRECAUTION_JOINT_FLARE, "care.general-flare" },
  { SW_PRECAUTION_POOR_FOOT_FEELING, "care.general-feet" },
  { SW_PRECAUTION_LOW_SUGAR_RISK, "care.general-sugar" },
  { SW_PRECAUTION_PELVIC_FLOOR, "care.general-pelvic" },
  { SW_PRECAUTION_LYMPHOEDEMA, "care.general-arm" },
};

static void
add_once (GPtrArray  *words,
          const char *text)
{
  if (!g_ptr_array_find_with_equal_func (words, text, g_str_equal, NULL))
    g_ptr_array_add (words, g_strdup (text));
}

static char **
end_words (GPtrArray *words)
{
  g_ptr_array_add (words, NULL);
  return (char **) g_ptr_array_free (words, FALSE);
}

/**
 * sw_care_words:
 * @phrases: the client's language
 * @precautions: set of #SwPrecaution the client has
 * @cautions: set of #SwCaution an exercise carries
 *
 * Returns: (transfer full) (array zero-terminated=1): the sentences for that exercise's caution box, none twice
 */
char **
sw_care_words (SwPhrases *phrases,
               SwSet      precautions,
               SwSet      cautions)
{
  GPtrArray *words = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (cares); i++)
    if ((precautions & SW_SET (cares[i].precaution)) != 0 && (cautions & cares[i].cautions) != 0)
      add_once (words, sw_phrases_get (phrases, cares[i].key));

  return end_words (words);
}

/**
 * sw_care_general_words:
 * @precautions: set of #SwPrecaution the client has
 *
 * Returns: (transfer full) (array zero-terminated=1): the sentences that hold for all exercises
 */
char **
sw_care_general_words (SwPhrases *phrases,
                       SwSet      precautions)
{
  GPtrArray *words = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (general); i++)
    if ((precautions & SW_SET (general[i].precaution)) != 0)
      add_once (words, sw_phrases_get (phrases, general[i].key));

  return end_words (words);
}

/**
 * sw_care_covers:
 *
 * Returns: whether an exercise with that caution gets a caution box for a client with that precaution
 */
gboolean
sw_care_covers (SwPrecaution precaution,
                SwCaution    caution)
{
  for (guint i = 0; i < G_N_ELEMENTS (cares); i++)
    if (cares[i].precaution == precaution && (cares[i].cautions & SW_SET (caution)) != 0)
      return TRUE;

  return FALSE;
}
