/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fixed vocabularies of the documents. The nick of each value is its word in XML ("hip-abductors");
 * words for people are the window's and the handout's business. */
#pragma once

#include <glib-object.h>

#include "sw-enum-types.h"

G_BEGIN_DECLS

/* A small set of values of one of the enumerations below: bit n stands for value n. */
typedef guint64 SwSet;

#define SW_SET(value) (G_GUINT64_CONSTANT (1) << (value))

typedef enum
{
  SW_REGION_NECK,
  SW_REGION_SHOULDER,
  SW_REGION_ELBOW_HAND,
  SW_REGION_TRUNK,
  SW_REGION_HIP,
  SW_REGION_KNEE,
  SW_REGION_ANKLE,
  SW_REGION_BALANCE,
  SW_REGION_WHOLE_BODY,
} SwRegion;

/* The start position: what the position ribbon shows and what a change of costs time. */
typedef enum
{
  SW_POSITION_STANDING,
  SW_POSITION_SITTING,
  SW_POSITION_KNEELING,
  SW_POSITION_HANDS_AND_KNEES,
  SW_POSITION_FLOOR_SITTING,
  SW_POSITION_ON_BACK,
  SW_POSITION_ON_SIDE,
  SW_POSITION_FACE_DOWN,
} SwPosition;

/* What may have to be done between two exercises. */
typedef enum
{
  SW_TRANSITION_CARD,  /* reading what comes next */
  SW_TRANSITION_TURN,  /* another position at the same height */
  SW_TRANSITION_SEAT,  /* between standing, a seat and a bed */
  SW_TRANSITION_FLOOR, /* down to the floor or up from it */
  SW_TRANSITION_FETCH, /* equipment the exercise before did not use */
} SwTransition;

#define SW_N_TRANSITIONS 5

typedef enum
{
  SW_EQUIPMENT_CHAIR,
  SW_EQUIPMENT_WALL,
  SW_EQUIPMENT_COUNTER,
  SW_EQUIPMENT_TABLE,
  SW_EQUIPMENT_STEP,
  SW_EQUIPMENT_MAT,
  SW_EQUIPMENT_BED,
  SW_EQUIPMENT_TOWEL,
  SW_EQUIPMENT_PILLOW,
  SW_EQUIPMENT_CUSHION,
  SW_EQUIPMENT_BAND,
  SW_EQUIPMENT_LOOP_BAND,
  SW_EQUIPMENT_DUMBBELL,
  SW_EQUIPMENT_ANKLE_WEIGHT,
  SW_EQUIPMENT_BALL,
  SW_EQUIPMENT_STICK,
  SW_EQUIPMENT_FOAM_ROLLER,
  SW_EQUIPMENT_BLOCK,
  SW_EQUIPMENT_CABLE,
} SwEquipment;

typedef enum
{
  SW_AIM_STRENGTH,
  SW_AIM_MOBILITY,
  SW_AIM_STRETCH,
  SW_AIM_CONTROL,
  SW_AIM_BALANCE,
  SW_AIM_ENDURANCE,
  SW_AIM_RELAXATION,
} SwAim;

typedef enum
{
  SW_MUSCLE_NECK_FLEXORS,
  SW_MUSCLE_NECK_EXTENSORS,
  SW_MUSCLE_UPPER_TRAPEZIUS,
  SW_MUSCLE_LOWER_TRAPEZIUS,
  SW_MUSCLE_RHOMBOIDS,
  SW_MUSCLE_SERRATUS_ANTERIOR,
  SW_MUSCLE_ROTATOR_CUFF,
  SW_MUSCLE_DELTOID,
  SW_MUSCLE_PECTORALS,
  SW_MUSCLE_LATISSIMUS_DORSI,
  SW_MUSCLE_BICEPS,
  SW_MUSCLE_TRICEPS,
  SW_MUSCLE_FOREARM,
  SW_MUSCLE_ABDOMINALS,
  SW_MUSCLE_OBLIQUES,
  SW_MUSCLE_BACK_EXTENSORS,
  SW_MUSCLE_HIP_FLEXORS,
  SW_MUSCLE_GLUTEALS,
  SW_MUSCLE_HIP_ABDUCTORS,
  SW_MUSCLE_HIP_ADDUCTORS,
  SW_MUSCLE_HIP_ROTATORS,
  SW_MUSCLE_QUADRICEPS,
  SW_MUSCLE_HAMSTRINGS,
  SW_MUSCLE_CALF,
  SW_MUSCLE_SHIN,
  SW_MUSCLE_PERONEALS,
  SW_MUSCLE_FOOT,
  SW_MUSCLE_DIAPHRAGM,
  SW_MUSCLE_PELVIC_FLOOR,
} SwMuscle;

/* How the sides share the work of an item. */
typedef enum
{
  SW_SIDE_BOTH,
  SW_SIDE_EACH,
  SW_SIDE_RIGHT,
  SW_SIDE_LEFT,
  SW_SIDE_ALTERNATING,
} SwSide;

/* One side of the body, or neither: whose extra sets, whose dominance, whose weakness. */
typedef enum
{
  SW_BODY_SIDE_NONE,
  SW_BODY_SIDE_RIGHT,
  SW_BODY_SIDE_LEFT,
} SwBodySide;

/* Which ways the movement goes; how often it is done is the dose's business. */
typedef enum
{
  SW_DIRECTION_KIND_ONE,
  SW_DIRECTION_KIND_FORWARD_BACKWARD,
  SW_DIRECTION_KIND_LEFT_RIGHT,
  SW_DIRECTION_KIND_UP_DOWN,
  SW_DIRECTION_KIND_IN_OUT,
  SW_DIRECTION_KIND_BOTH_WAYS_ROUND,
  SW_DIRECTION_KIND_SEVERAL,
} SwDirectionKind;

/* What an exercise asks of the body that some clients must avoid or be careful with. */
typedef enum
{
  SW_CAUTION_BREATH_HOLDING,
  SW_CAUTION_LONG_HOLD,
  SW_CAUTION_HEAD_LOW,
  SW_CAUTION_FLOOR_TRANSFER,
  SW_CAUTION_FLAT_ON_BACK,
  SW_CAUTION_FACE_DOWN,
  SW_CAUTION_KNEELING,
  SW_CAUTION_SPINE_BEND,
  SW_CAUTION_SPINE_TWIST,
  SW_CAUTION_SPINE_ARCH,
  SW_CAUTION_SIT_UP,
  SW_CAUTION_LIFT_FROM_FLOOR,
  SW_CAUTION_LOAD_OVERHEAD,
  SW_CAUTION_NECK_END_RANGE,
  SW_CAUTION_UNSUPPORTED_STANDING,
  SW_CAUTION_ONE_LEG_STANDING,
  SW_CAUTION_EYES_CLOSED,
  SW_CAUTION_IMPACT,
  SW_CAUTION_HIP_DEEP_BEND,
  SW_CAUTION_HIP_CROSSING,
  SW_CAUTION_HIP_TURNED_IN,
  SW_CAUTION_HIP_BACK_TURNED_OUT,
  SW_CAUTION_HIP_OUT_ACTIVE,
  SW_CAUTION_ARM_OUT_TURNED_OUT,
  SW_CAUTION_ARM_ACROSS_PUSH,
  SW_CAUTION_ARM_BEHIND,
  SW_CAUTION_ARM_ACTIVE_LIFT,
  SW_CAUTION_KNEE_LOADED_STRAIGHTENING,
  SW_CAUTION_KNEE_DEEP_BEND,
  SW_CAUTION_FOOT_PIVOT,
  SW_CAUTION_CALF_STRETCH,
  SW_CAUTION_ONE_LEG_HEEL_RAISE,
  SW_CAUTION_END_RANGE_HOLD,
  SW_CAUTION_BAREFOOT,
  SW_CAUTION_FULL_WEIGHT_BEARING,
  SW_CAUTION_WRIST_WEIGHT_BEARING,
} SwCaution;

/* A client's condition that limits what is safe (which tags it speaks against: sw-precautions.c). */
typedef enum
{
  SW_PRECAUTION_HIGH_BLOOD_PRESSURE,
  SW_PRECAUTION_HEART_RATE_MEDICINE,
  SW_PRECAUTION_OSTEOPOROSIS,
  SW_PRECAUTION_FALL_RISK,
  SW_PRECAUTION_PREGNANCY,
  SW_PRECAUTION_HIP_REPLACEMENT_BACK,
  SW_PRECAUTION_HIP_REPLACEMENT_FRONT,
  SW_PRECAUTION_HIP_REPLACEMENT_SIDE,
  SW_PRECAUTION_KNEE_REPLACEMENT,
  SW_PRECAUTION_KNEELING_PAIN,
  SW_PRECAUTION_CRUCIATE_LIGAMENT_REPAIR,
  SW_PRECAUTION_ACHILLES_REPAIR,
  SW_PRECAUTION_SHOULDER_DISLOCATION_FRONT,
  SW_PRECAUTION_SHOULDER_DISLOCATION_BACK,
  SW_PRECAUTION_ROTATOR_CUFF_REPAIR,
  SW_PRECAUTION_SPINE_SURGERY,
  SW_PRECAUTION_LEG_SYMPTOMS,
  SW_PRECAUTION_NECK_DIZZINESS,
  SW_PRECAUTION_FRACTURE_HEALING,
  SW_PRECAUTION_HYPERMOBILITY,
  SW_PRECAUTION_JOINT_FLARE,
  SW_PRECAUTION_POOR_FOOT_FEELING,
  SW_PRECAUTION_LOW_SUGAR_RISK,
  SW_PRECAUTION_ABDOMINAL_SURGERY,
  SW_PRECAUTION_PELVIC_FLOOR,
  SW_PRECAUTION_LYMPHOEDEMA,
} SwPrecaution;

/* How far an exercise of the catalogue has come with the clinicians who answer for it. */
typedef enum
{
  SW_REVIEW_STATE_DRAFT,
  SW_REVIEW_STATE_IN_REVIEW,
  SW_REVIEW_STATE_APPROVED,
  SW_REVIEW_STATE_RETIRED,
} SwReviewState;

typedef enum
{
  SW_UNITS_KG,
  SW_UNITS_LB,
  SW_UNITS_BOTH,
} SwUnits;

typedef enum
{
  SW_PAPER_A4,
  SW_PAPER_LETTER,
} SwPaper;

/* Whether the client does the exercises alone, as the therapist says. */
typedef enum
{
  SW_COMPANY_NOT_STATED,
  SW_COMPANY_ALONE,
  SW_COMPANY_AT_FIRST,
  SW_COMPANY_ALWAYS,
} SwCompany;

/* How the pages of a handout are laid out: whole exercises one to three a page; cards; one page for the wall; large
 * print of at least 18 pt. */
typedef enum
{
  SW_LAYOUT_FULL,
  SW_LAYOUT_COMPACT,
  SW_LAYOUT_SUMMARY,
  SW_LAYOUT_LARGE_PRINT,
} SwLayout;

/* What a handout may show or leave out. What is dangerous to leave out is not in this list: the caution boxes, and a
 * short word on when to stop where the signs are not listed. */
typedef enum
{
  SW_PAGE_PART_LETTERHEAD,
  SW_PAGE_PART_PURPOSE,
  SW_PAGE_PART_WEEK,
  SW_PAGE_PART_EQUIPMENT,
  SW_PAGE_PART_TIMELINE,
  SW_PAGE_PART_STOP_SIGNS,
  SW_PAGE_PART_PAIN_GUIDE,
  SW_PAGE_PART_KEY,
  SW_PAGE_PART_MISTAKES,
  SW_PAGE_PART_WAYS,
  SW_PAGE_PART_SELF_CHECK,
  SW_PAGE_PART_LOG,
  SW_PAGE_PART_SIGNATURE,
  SW_PAGE_PART_PLAN,
} SwPagePart;

#define SW_PAGE_PARTS_USUAL (SW_SET (SW_PAGE_PART_SIGNATURE) - 1)

typedef enum
{
  SW_SECTION_WARM_UP,
  SW_SECTION_MAIN,
  SW_SECTION_COOL_DOWN,
  SW_SECTION_OWN,
} SwSectionKind;

typedef enum
{
  SW_ITEM_EXERCISE,
  SW_ITEM_REST,
  SW_ITEM_CIRCUIT,
  SW_ITEM_SELF_CHECK,
} SwItemKind;

/* What a self-check or a measurement is counted in. */
typedef enum
{
  SW_MEASURE_SECONDS,
  SW_MEASURE_REPETITIONS,
  SW_MEASURE_DEGREES,
  SW_MEASURE_CENTIMETRES,
  SW_MEASURE_KILOGRAMS,
  SW_MEASURE_NEWTONS,
  SW_MEASURE_RATING_0_TO_10,
  SW_MEASURE_POUNDS,
} SwMeasure;

/* Which result of a self-check is the better one. */
typedef enum
{
  SW_BETTER_NOT_STATED,
  SW_BETTER_HIGHER,
  SW_BETTER_LOWER,
} SwBetter;

/* Whether pain was back to the usual by the morning after. */
typedef enum
{
  SW_SETTLED_UNKNOWN,
  SW_SETTLED_YES,
  SW_SETTLED_NO,
} SwSettled;

/* What a surgeon or clinician has set for a client. */
typedef enum
{
  SW_LIMIT_KIND_LOAD,
  SW_LIMIT_KIND_RANGE,
  SW_LIMIT_KIND_WEIGHT_BEARING,
  SW_LIMIT_KIND_SURGERY,
} SwLimitKind;

/* The movements of joints that are limited, as one measures them: zero in upright standing with hanging arms, the first
 * way counted up, the other below zero. */
typedef enum
{
  SW_MOVEMENT_KNEE_BEND,
  SW_MOVEMENT_HIP_BEND,       /* below zero: the leg behind the body */
  SW_MOVEMENT_HIP_OUT,        /* below zero: across the midline */
  SW_MOVEMENT_HIP_TURN_OUT,   /* below zero: turned in */
  SW_MOVEMENT_ANKLE_UP,       /* below zero: the foot pointed */
  SW_MOVEMENT_ARM_RAISE,      /* in front or beside; below zero: behind the body */
  SW_MOVEMENT_ARM_TURN_OUT,   /* below zero: turned in */
  SW_MOVEMENT_ELBOW_BEND,
  SW_MOVEMENT_PALM_UP,        /* below zero: palm down */
  SW_MOVEMENT_WRIST_BEND,     /* below zero: bent to the back of the hand */
  SW_MOVEMENT_BACK_BEND,      /* below zero: arched */
  SW_MOVEMENT_BACK_TURN,      /* to the side that is named, or to both */
  SW_MOVEMENT_NECK_BEND,      /* below zero: tipped back */
  SW_MOVEMENT_NECK_TURN,      /* to the side that is named, or to both */
} SwMovement;

#define SW_N_MOVEMENTS (SW_MOVEMENT_NECK_TURN + 1)

/* How much weight a leg may carry. */
typedef enum
{
  SW_BEARING_NONE,
  SW_BEARING_TOUCH, /* the foot rests on the floor and carries nothing */
  SW_BEARING_PART,
  SW_BEARING_AS_TOLERATED,
  SW_BEARING_FULL,
} SwBearing;

/* Bit n of a SwSet of days. */
typedef enum
{
  SW_DAY_MONDAY,
  SW_DAY_TUESDAY,
  SW_DAY_WEDNESDAY,
  SW_DAY_THURSDAY,
  SW_DAY_FRIDAY,
  SW_DAY_SATURDAY,
  SW_DAY_SUNDAY,
} SwDay;

/* The published formulas that reckon from repetitions with a load what could be moved once; see sw-one-max.c. */
typedef enum
{
  SW_MAX_FORMULA_BRZYCKI,
  SW_MAX_FORMULA_EPLEY,
  SW_MAX_FORMULA_LANDER,
  SW_MAX_FORMULA_LOMBARDI,
  SW_MAX_FORMULA_MAYHEW,
  SW_MAX_FORMULA_OCONNER,
  SW_MAX_FORMULA_WATHAN,
} SwMaxFormula;

gboolean sw_term_from_nick (GType       type,
                            const char *nick,
                            int        *value);
const char *sw_term_to_nick (GType type,
                             int   value);
int sw_term_get_n_values (GType type);
int sw_set_count (SwSet set);
gboolean sw_set_from_nicks (GType        type,
                            const char  *nicks,
                            SwSet       *set,
                            char       **unknown);
char *sw_set_to_nicks (GType type,
                       SwSet set);

G_END_DECLS
