/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which demand of an exercise speaks against which condition of a client: one table, to be read and
 * corrected by clinicians. It supports their judgement and replaces none: what the client's surgeon and
 * local rules say comes first. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-precautions.h"

/* Giangregorio and others, Too Fit To Fracture, Osteoporosis International 2015;26(3):891-910, tables 4, 5. */
#define OSTEOPOROSIS_SOURCE N_("Giangregorio and others 2015, Osteoporos Int 26:891-910")
/* Breath holding, long hard holds and the head below the heart are named alike in several patient guides. */
#define PRESSURE_SOURCE N_("usual guidance for exercise with high blood pressure")
/* By approach of the operation; many surgeons now give none of these rules. */
#define HIP_SOURCE N_("usual precautions by approach; many surgeons now give none: follow the surgeon")
#define SURGEON_SOURCE N_("common practice; stage and limits are the surgeon's decision")
#define COMMON_PRACTICE N_("common practice")

#define ALL_REGIONS (SW_SET (SW_REGION_WHOLE_BODY + 1) - 1)

static const SwPrecautionRule rules[] = {
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_CAUTION_BREATH_HOLDING, SW_FINDING_STOP,
    N_("Holding the breath under effort drives the blood pressure up."),
    PRESSURE_SOURCE },
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_CAUTION_HEAD_LOW, SW_FINDING_STOP,
    N_("With the head below the heart the pressure in it rises."),
    PRESSURE_SOURCE },
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_CAUTION_LONG_HOLD, SW_FINDING_ASK,
    N_("Long, hard holds raise the blood pressure more than moving work."),
    PRESSURE_SOURCE },
  { SW_PRECAUTION_HIGH_BLOOD_PRESSURE, SW_CAUTION_FLOOR_TRANSFER, SW_FINDING_TELL,
    N_("Getting up fast can make light-headed: a moment sitting before standing helps."),
    PRESSURE_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_SPINE_BEND, SW_FINDING_STOP,
    N_("Bending the spine forward to its end, loaded, fast or often, can break a weak vertebra."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_SPINE_TWIST, SW_FINDING_STOP,
    N_("Twisting to the end of the range can break a weak vertebra."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_SIT_UP, SW_FINDING_STOP,
    N_("Sitting up from lying bends the spine forward under load."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_STOP,
    N_("Lifting from the floor loads the bent spine."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_STOP,
    N_("Heavy loads overhead press on the spine; loads belong at waist height and close."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_UNSUPPORTED_STANDING, SW_FINDING_ASK,
    N_("A fall can break a bone: balance work belongs beside a support."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_ONE_LEG_STANDING, SW_FINDING_ASK,
    N_("A fall can break a bone: balance work belongs beside a support."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_EYES_CLOSED, SW_FINDING_ASK,
    N_("A fall can break a bone, and closed eyes make one likelier."),
    OSTEOPOROSIS_SOURCE },
  { SW_PRECAUTION_OSTEOPOROSIS, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("How much impact the bones bear depends on earlier fractures."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_UNSUPPORTED_STANDING, SW_FINDING_STOP,
    N_("Standing tasks without support are where falls happen: beside a counter, with someone there at first."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_EYES_CLOSED, SW_FINDING_STOP,
    N_("Closed eyes take away what keeps many clients upright."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_ONE_LEG_STANDING, SW_FINDING_ASK,
    N_("On one leg a support must be within reach."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_FOOT_PIVOT, SW_FINDING_ASK,
    N_("Turning on the spot is a common moment of falling."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("Landing asks for quick balance."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FALL_RISK, SW_CAUTION_FLOOR_TRANSFER, SW_FINDING_ASK,
    N_("Can the client get down to the floor and up again alone?"),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_FLAT_ON_BACK, SW_FINDING_STOP,
    N_("From the middle of pregnancy, lying flat for long can press on the great vein: prop up or turn to the side."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_FACE_DOWN, SW_FINDING_STOP,
    N_("Lying on the belly does not suit pregnancy after the first months."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_BREATH_HOLDING, SW_FINDING_STOP,
    N_("Breathe out with effort instead of holding the breath."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("Joints are laxer and falls count double."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_SIT_UP, SW_FINDING_ASK,
    N_("Sitting up from lying strains the belly wall."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_HEAD_LOW, SW_FINDING_ASK,
    N_("A low head can make dizzy."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_UNSUPPORTED_STANDING, SW_FINDING_ASK,
    N_("Balance changes as the belly grows; a fall must not happen."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PREGNANCY, SW_CAUTION_ONE_LEG_STANDING, SW_FINDING_ASK,
    N_("Balance changes as the belly grows; a support should be within reach."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_HIP_DEEP_BEND, SW_FINDING_STOP,
    N_("Bending the hip past a right angle can push the joint out at the back."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_HIP_CROSSING, SW_FINDING_STOP,
    N_("Crossing the midline can push the joint out at the back."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_HIP_TURNED_IN, SW_FINDING_STOP,
    N_("Turning the leg in can push the joint out at the back, most of all when bent."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_FOOT_PIVOT, SW_FINDING_ASK,
    N_("Turning on the planted foot twists the new hip."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_FLOOR_TRANSFER, SW_FINDING_ASK,
    N_("Getting down to the floor usually bends the hip deeply."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_BACK, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("When impact is allowed is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_CAUTION_HIP_BACK_TURNED_OUT, SW_FINDING_STOP,
    N_("A leg far behind the body and turned out can push the joint out at the front."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_CAUTION_FOOT_PIVOT, SW_FINDING_ASK,
    N_("Turning on the planted foot twists the new hip."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_CAUTION_FLOOR_TRANSFER, SW_FINDING_ASK,
    N_("Getting down to the floor strains the new hip at the ends of its range."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_FRONT, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("When impact is allowed is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_HIP_DEEP_BEND, SW_FINDING_STOP,
    N_("Bending the hip past a right angle can push the joint out at the back."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_HIP_CROSSING, SW_FINDING_STOP,
    N_("Crossing the midline can push the joint out at the back."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_HIP_TURNED_IN, SW_FINDING_STOP,
    N_("Turning the leg in can push the joint out at the back, most of all when bent."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_HIP_OUT_ACTIVE, SW_FINDING_STOP,
    N_("Lifting the leg out to the side pulls on the muscles that were cut."),
    HIP_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_FOOT_PIVOT, SW_FINDING_ASK,
    N_("Turning on the planted foot twists the new hip."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_FLOOR_TRANSFER, SW_FINDING_ASK,
    N_("Getting down to the floor usually bends the hip deeply."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HIP_REPLACEMENT_SIDE, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("When impact is allowed is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_CAUTION_KNEELING, SW_FINDING_STOP,
    N_("Kneeling presses on the new knee and its scar."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_CAUTION_FOOT_PIVOT, SW_FINDING_STOP,
    N_("Turning on the planted foot twists the new knee."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("When impact is allowed is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_KNEE_REPLACEMENT, SW_CAUTION_KNEE_DEEP_BEND, SW_FINDING_ASK,
    N_("How far the knee may bend under weight is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_KNEELING_PAIN, SW_CAUTION_KNEELING, SW_FINDING_ASK,
    N_("The client has pain when kneeling: a pillow, or another position."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_CAUTION_KNEE_LOADED_STRAIGHTENING, SW_FINDING_STOP,
    N_("Straightening the last third against a load, the foot free, strains the graft."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_CAUTION_FOOT_PIVOT, SW_FINDING_STOP,
    N_("Turning on the planted foot strains the graft."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("Jumps and landings come late, when the surgeon and the tests allow."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_CAUTION_KNEE_DEEP_BEND, SW_FINDING_ASK,
    N_("How far the knee may bend under weight depends on the stage."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR, SW_CAUTION_ONE_LEG_STANDING, SW_FINDING_ASK,
    N_("Whether the leg may carry alone depends on the stage."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_CAUTION_CALF_STRETCH, SW_FINDING_STOP,
    N_("A strong stretch can lengthen the healing tendon for good."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_CAUTION_ONE_LEG_HEEL_RAISE, SW_FINDING_STOP,
    N_("A heel raise on one leg loads the tendon fully."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("Jumps load the tendon many times over."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_CAUTION_FULL_WEIGHT_BEARING, SW_FINDING_ASK,
    N_("How much weight the foot may carry depends on the stage."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ACHILLES_REPAIR, SW_CAUTION_BAREFOOT, SW_FINDING_ASK,
    N_("Without a heel wedge or shoe the tendon is stretched."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_CAUTION_ARM_OUT_TURNED_OUT, SW_FINDING_STOP,
    N_("Out to the side and turned out is where the shoulder slips to the front."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_CAUTION_ARM_BEHIND, SW_FINDING_STOP,
    N_("An arm behind the body pushes the shoulder to the front."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_ASK,
    N_("A load overhead can lever the shoulder to the front."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_BACK, SW_CAUTION_ARM_ACROSS_PUSH, SW_FINDING_STOP,
    N_("Pushing with the arm across the body drives the shoulder to the back."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_SHOULDER_DISLOCATION_BACK, SW_CAUTION_WRIST_WEIGHT_BEARING, SW_FINDING_ASK,
    N_("Weight on the hands pushes the shoulder to the back."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_ARM_ACTIVE_LIFT, SW_FINDING_STOP,
    N_("Lifting the arm by its own strength pulls on the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_ARM_BEHIND, SW_FINDING_STOP,
    N_("A hand behind the back stretches the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_STOP,
    N_("A load overhead pulls on the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_WRIST_WEIGHT_BEARING, SW_FINDING_STOP,
    N_("Weight on the hands loads the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_ARM_ACROSS_PUSH, SW_FINDING_ASK,
    N_("Pushing across the body loads the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_CAUTION_ARM_OUT_TURNED_OUT, SW_FINDING_ASK,
    N_("Turning the arm out against resistance loads the repair."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_SPINE_BEND, SW_FINDING_STOP,
    N_("No bending until the surgeon allows it."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_SPINE_TWIST, SW_FINDING_STOP,
    N_("No twisting until the surgeon allows it."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_STOP,
    N_("No lifting until the surgeon allows it."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_SIT_UP, SW_FINDING_STOP,
    N_("Sitting up from lying bends the spine under load."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_SPINE_ARCH, SW_FINDING_ASK,
    N_("How far the spine may arch depends on the operation."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_ASK,
    N_("A load overhead presses on the operated spine."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, SW_CAUTION_IMPACT, SW_FINDING_ASK,
    N_("When impact is allowed is the surgeon's decision."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_LEG_SYMPTOMS, SW_CAUTION_SPINE_BEND, SW_FINDING_ASK,
    N_("If this sends pain further down the leg, it must be stopped."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_LEG_SYMPTOMS, SW_CAUTION_SPINE_ARCH, SW_FINDING_ASK,
    N_("If this sends pain further down the leg, it must be stopped."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_LEG_SYMPTOMS, SW_CAUTION_SPINE_TWIST, SW_FINDING_ASK,
    N_("If this sends pain further down the leg, it must be stopped."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_LEG_SYMPTOMS, SW_CAUTION_SIT_UP, SW_FINDING_ASK,
    N_("If this sends pain further down the leg, it must be stopped."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_LEG_SYMPTOMS, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_ASK,
    N_("If this sends pain further down the leg, it must be stopped."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_NECK_DIZZINESS, SW_CAUTION_NECK_END_RANGE, SW_FINDING_STOP,
    N_("Tipping the head back and turning it can bring on dizziness or worse."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_NECK_DIZZINESS, SW_CAUTION_HEAD_LOW, SW_FINDING_ASK,
    N_("A low head can bring on dizziness."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_NECK_DIZZINESS, SW_CAUTION_EYES_CLOSED, SW_FINDING_ASK,
    N_("With closed eyes dizziness unbalances at once."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("Impact loads the break beyond control."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_FULL_WEIGHT_BEARING, SW_FINDING_ASK,
    N_("Only the weight that was allowed may be put on the break."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_ONE_LEG_STANDING, SW_FINDING_ASK,
    N_("Only the weight that was allowed may be put on the break."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_WRIST_WEIGHT_BEARING, SW_FINDING_ASK,
    N_("Only the weight that was allowed may be put on the break."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_FOOT_PIVOT, SW_FINDING_ASK,
    N_("Turning on the planted foot twists the break."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_ASK,
    N_("Lifting loads the break."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_HYPERMOBILITY, SW_CAUTION_END_RANGE_HOLD, SW_FINDING_STOP,
    N_("Hanging at the end of the range stretches what is too long already."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_JOINT_FLARE, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("A hot, swollen joint bears no impact."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_JOINT_FLARE, SW_CAUTION_END_RANGE_HOLD, SW_FINDING_ASK,
    N_("A hot, swollen joint is moved in its easy range only."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_JOINT_FLARE, SW_CAUTION_LONG_HOLD, SW_FINDING_ASK,
    N_("Long holds press on a hot, swollen joint."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_POOR_FOOT_FEELING, SW_CAUTION_BAREFOOT, SW_FINDING_STOP,
    N_("A wound on a foot without feeling goes unnoticed: shoes on."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_POOR_FOOT_FEELING, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("Hard impact can harm a foot that does not feel it."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_POOR_FOOT_FEELING, SW_CAUTION_EYES_CLOSED, SW_FINDING_ASK,
    N_("Without feeling in the feet, the eyes are what keeps the balance."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_POOR_FOOT_FEELING, SW_CAUTION_UNSUPPORTED_STANDING, SW_FINDING_ASK,
    N_("Without feeling in the feet a support should be within reach."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, SW_CAUTION_BREATH_HOLDING, SW_FINDING_STOP,
    N_("Holding the breath presses on the belly wall."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, SW_CAUTION_SIT_UP, SW_FINDING_STOP,
    N_("No sitting up from lying until it is allowed."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_STOP,
    N_("No heavy lifting until it is allowed."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_ASK,
    N_("A load overhead presses on the belly wall."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PELVIC_FLOOR, SW_CAUTION_BREATH_HOLDING, SW_FINDING_STOP,
    N_("Straining presses on the pelvic floor."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PELVIC_FLOOR, SW_CAUTION_IMPACT, SW_FINDING_STOP,
    N_("Impact presses on the pelvic floor."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PELVIC_FLOOR, SW_CAUTION_SIT_UP, SW_FINDING_ASK,
    N_("Sitting up from lying presses on the pelvic floor."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_PELVIC_FLOOR, SW_CAUTION_LIFT_FROM_FLOOR, SW_FINDING_ASK,
    N_("Heavy lifting presses on the pelvic floor."),
    COMMON_PRACTICE },
  { SW_PRECAUTION_LYMPHOEDEMA, SW_CAUTION_LOAD_OVERHEAD, SW_FINDING_ASK,
    N_("Load on the arm goes up slowly, with the sleeve if one was given."),
    COMMON_PRACTICE },
};

/* What a hand holds or pulls. */
#define IN_HAND (SW_SET (SW_EQUIPMENT_DUMBBELL) | SW_SET (SW_EQUIPMENT_BAND) | SW_SET (SW_EQUIPMENT_CABLE) \
                 | SW_SET (SW_EQUIPMENT_BALL) | SW_SET (SW_EQUIPMENT_STICK))

/* What any added load speaks against, in the regions named; of several rules for one condition the first that fits. */
static const SwLoadRule load_rules[] = {
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, SW_SET (SW_REGION_SHOULDER), 0, SW_FINDING_STOP,
    N_("Loaded reaching pulls on the repair."), SURGEON_SOURCE },
  { SW_PRECAUTION_ROTATOR_CUFF_REPAIR, ALL_REGIONS, IN_HAND, SW_FINDING_ASK,
    N_("What the hand holds hangs on the shoulder, and elbow loads pull on a repaired biceps tendon."),
    SURGEON_SOURCE },
  { SW_PRECAUTION_FRACTURE_HEALING, ALL_REGIONS, 0, SW_FINDING_ASK,
    N_("Load across the break is set by the surgeon."), SURGEON_SOURCE },
  { SW_PRECAUTION_SPINE_SURGERY, ALL_REGIONS, 0, SW_FINDING_ASK,
    N_("Loads wait until the surgeon allows them."), SURGEON_SOURCE },
  { SW_PRECAUTION_JOINT_FLARE, ALL_REGIONS, 0, SW_FINDING_ASK,
    N_("A hot, swollen joint bears little load."), COMMON_PRACTICE },
  { SW_PRECAUTION_ABDOMINAL_SURGERY, ALL_REGIONS, 0, SW_FINDING_ASK,
    N_("Heavy loads press on the belly wall."), COMMON_PRACTICE },
  { SW_PRECAUTION_LYMPHOEDEMA, SW_SET (SW_REGION_SHOULDER) | SW_SET (SW_REGION_ELBOW_HAND), 0, SW_FINDING_ASK,
    N_("Load on the arm goes up slowly, with the sleeve if one was given."), COMMON_PRACTICE },
};

static const char * const precaution_names[] = {
  [SW_PRECAUTION_HIGH_BLOOD_PRESSURE] = N_("high blood pressure"),
  [SW_PRECAUTION_HEART_RATE_MEDICINE] = N_("a medicine that holds the heart rate down"),
  [SW_PRECAUTION_OSTEOPOROSIS] = N_("osteoporosis"),
  [SW_PRECAUTION_FALL_RISK] = N_("risk of falling"),
  [SW_PRECAUTION_PREGNANCY] = N_("pregnancy"),
  [SW_PRECAUTION_HIP_REPLACEMENT_BACK] = N_("hip replacement, back approach"),
  [SW_PRECAUTION_HIP_REPLACEMENT_FRONT] = N_("hip replacement, front approach"),
  [SW_PRECAUTION_HIP_REPLACEMENT_SIDE] = N_("hip replacement, side approach"),
  [SW_PRECAUTION_KNEE_REPLACEMENT] = N_("knee replacement"),
  [SW_PRECAUTION_KNEELING_PAIN] = N_("pain when kneeling"),
  [SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR] = N_("cruciate ligament repair"),
  [SW_PRECAUTION_ACHILLES_REPAIR] = N_("Achilles tendon repair"),
  [SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT] = N_("shoulder dislocation to the front"),
  [SW_PRECAUTION_SHOULDER_DISLOCATION_BACK] = N_("shoulder dislocation to the back"),
  [SW_PRECAUTION_ROTATOR_CUFF_REPAIR] = N_("rotator cuff repair"),
  [SW_PRECAUTION_SPINE_SURGERY] = N_("spine surgery"),
  [SW_PRECAUTION_LEG_SYMPTOMS] = N_("back pain with leg symptoms"),
  [SW_PRECAUTION_NECK_DIZZINESS] = N_("dizziness with neck movement"),
  [SW_PRECAUTION_FRACTURE_HEALING] = N_("a healing fracture"),
  [SW_PRECAUTION_HYPERMOBILITY] = N_("hypermobile joints"),
  [SW_PRECAUTION_JOINT_FLARE] = N_("an inflamed joint"),
  [SW_PRECAUTION_POOR_FOOT_FEELING] = N_("poor feeling in the feet"),
  [SW_PRECAUTION_LOW_SUGAR_RISK] = N_("risk of low blood sugar"),
  [SW_PRECAUTION_ABDOMINAL_SURGERY] = N_("abdominal surgery or hernia"),
  [SW_PRECAUTION_PELVIC_FLOOR] = N_("pelvic floor symptoms"),
  [SW_PRECAUTION_LYMPHOEDEMA] = N_("lymphoedema"),
};

static const char * const caution_names[] = {
  [SW_CAUTION_BREATH_HOLDING] = N_("breath is easily held"),
  [SW_CAUTION_LONG_HOLD] = N_("a long, hard hold"),
  [SW_CAUTION_HEAD_LOW] = N_("the head lower than the heart"),
  [SW_CAUTION_FLOOR_TRANSFER] = N_("getting down to the floor and up again"),
  [SW_CAUTION_FLAT_ON_BACK] = N_("lying flat on the back"),
  [SW_CAUTION_FACE_DOWN] = N_("lying face down"),
  [SW_CAUTION_KNEELING] = N_("kneeling"),
  [SW_CAUTION_SPINE_BEND] = N_("bending the spine forward"),
  [SW_CAUTION_SPINE_TWIST] = N_("twisting the spine"),
  [SW_CAUTION_SPINE_ARCH] = N_("arching the spine back"),
  [SW_CAUTION_SIT_UP] = N_("sitting up from lying"),
  [SW_CAUTION_LIFT_FROM_FLOOR] = N_("lifting from the floor"),
  [SW_CAUTION_LOAD_OVERHEAD] = N_("a load overhead"),
  [SW_CAUTION_NECK_END_RANGE] = N_("the neck at the end of its range"),
  [SW_CAUTION_UNSUPPORTED_STANDING] = N_("standing without support"),
  [SW_CAUTION_ONE_LEG_STANDING] = N_("standing on one leg"),
  [SW_CAUTION_EYES_CLOSED] = N_("closed eyes"),
  [SW_CAUTION_IMPACT] = N_("impact"),
  [SW_CAUTION_HIP_DEEP_BEND] = N_("bending the hip past a right angle"),
  [SW_CAUTION_HIP_CROSSING] = N_("a leg crossing the midline"),
  [SW_CAUTION_HIP_TURNED_IN] = N_("turning the hip in"),
  [SW_CAUTION_HIP_BACK_TURNED_OUT] = N_("a leg behind the body turned out"),
  [SW_CAUTION_HIP_OUT_ACTIVE] = N_("lifting the leg out to the side"),
  [SW_CAUTION_ARM_OUT_TURNED_OUT] = N_("the arm out to the side and turned out"),
  [SW_CAUTION_ARM_ACROSS_PUSH] = N_("pushing with the arm across the body"),
  [SW_CAUTION_ARM_BEHIND] = N_("the arm behind the body"),
  [SW_CAUTION_ARM_ACTIVE_LIFT] = N_("lifting the arm by its own strength"),
  [SW_CAUTION_KNEE_LOADED_STRAIGHTENING] = N_("straightening the knee against a load"),
  [SW_CAUTION_KNEE_DEEP_BEND] = N_("a deep bend of the knee"),
  [SW_CAUTION_FOOT_PIVOT] = N_("turning on a planted foot"),
  [SW_CAUTION_CALF_STRETCH] = N_("a strong stretch of the calf"),
  [SW_CAUTION_ONE_LEG_HEEL_RAISE] = N_("a heel raise on one leg"),
  [SW_CAUTION_END_RANGE_HOLD] = N_("a hold at the end of the range"),
  [SW_CAUTION_BAREFOOT] = N_("bare feet"),
  [SW_CAUTION_FULL_WEIGHT_BEARING] = N_("full weight on the leg"),
  [SW_CAUTION_WRIST_WEIGHT_BEARING] = N_("weight on the hands"),
};

/**
 * sw_precaution_get_name:
 * @precaution: a precaution
 *
 * Returns: (transfer none): its name for the therapist, translated, to stand within a sentence
 */
const char *
sw_precaution_get_name (SwPrecaution precaution)
{
  g_return_val_if_fail ((guint) precaution < G_N_ELEMENTS (precaution_names), "");

  return _(precaution_names[precaution]);
}

/**
 * sw_precaution_is_surgical:
 * @precaution: a precaution
 *
 * Returns: whether it comes from an operation, so that what is allowed depends on the time since
 */
gboolean
sw_precaution_is_surgical (SwPrecaution precaution)
{
  const SwSet surgical = SW_SET (SW_PRECAUTION_HIP_REPLACEMENT_BACK) | SW_SET (SW_PRECAUTION_HIP_REPLACEMENT_FRONT)
                         | SW_SET (SW_PRECAUTION_HIP_REPLACEMENT_SIDE) | SW_SET (SW_PRECAUTION_KNEE_REPLACEMENT)
                         | SW_SET (SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR) | SW_SET (SW_PRECAUTION_ACHILLES_REPAIR)
                         | SW_SET (SW_PRECAUTION_ROTATOR_CUFF_REPAIR) | SW_SET (SW_PRECAUTION_SPINE_SURGERY)
                         | SW_SET (SW_PRECAUTION_ABDOMINAL_SURGERY);

  return (surgical & SW_SET (precaution)) != 0;
}

/**
 * sw_caution_get_name:
 * @caution: a caution
 *
 * Returns: (transfer none): what the exercise asks for, translated, to stand within a sentence
 */
const char *
sw_caution_get_name (SwCaution caution)
{
  g_return_val_if_fail ((guint) caution < G_N_ELEMENTS (caution_names), "");

  return _(caution_names[caution]);
}

/**
 * sw_precautions_find_rule:
 * @precaution: a client's condition
 * @caution: what an exercise asks of the body
 *
 * Returns: (transfer none) (nullable): the rule when the one speaks against the other
 */
const SwPrecautionRule *
sw_precautions_find_rule (SwPrecaution precaution,
                          SwCaution    caution)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      if (rules[i].precaution == precaution && rules[i].caution == caution)
        return &rules[i];
    }

  return NULL;
}

/**
 * sw_precautions_find_load_rule:
 * @precaution: a client's condition
 * @region: the region of an exercise that is given a load
 * @equipment: set of #SwEquipment it uses
 *
 * Returns: (transfer none) (nullable): the rule when the one speaks against the other
 */
const SwLoadRule *
sw_precautions_find_load_rule (SwPrecaution precaution,
                               SwRegion     region,
                               SwSet        equipment)
{
  for (guint i = 0; i < G_N_ELEMENTS (load_rules); i++)
    {
      const SwLoadRule *rule = &load_rules[i];

      if (rule->precaution == precaution && (rule->regions & SW_SET (region)) != 0
          && (rule->equipment == 0 || (rule->equipment & equipment) != 0))
        return rule;
    }

  return NULL;
}

/**
 * sw_precautions_get_cautions:
 * @precautions: a set of #SwPrecaution
 * @level: the least level that counts
 *
 * Returns: the set of #SwCaution that some of @precautions speak against at @level or above
 */
SwSet
sw_precautions_get_cautions (SwSet          precautions,
                             SwFindingLevel level)
{
  SwSet cautions = 0;

  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      if ((precautions & SW_SET (rules[i].precaution)) != 0 && rules[i].level >= level)
        cautions |= SW_SET (rules[i].caution);
    }

  return cautions;
}
