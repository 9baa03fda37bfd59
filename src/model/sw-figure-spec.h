/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "sw-angle.h"

G_BEGIN_DECLS

/* The words of the figure's format. The nick of each value is its word in documents; data/schema/figure.rng says
 * what each means. */

typedef enum
{
  SW_FIGURE_BASE_STANDING,
  SW_FIGURE_BASE_SITTING,
  SW_FIGURE_BASE_ON_BACK,
  SW_FIGURE_BASE_ON_BACK_KNEES_BENT,
  SW_FIGURE_BASE_FACE_DOWN,
  SW_FIGURE_BASE_SIDE_LYING,
  SW_FIGURE_BASE_HANDS_AND_KNEES,
  SW_FIGURE_BASE_KNEELING,
  SW_FIGURE_BASE_HALF_KNEELING,
  SW_FIGURE_BASE_ON_FOREARMS,
  SW_FIGURE_BASE_PLANK,
  SW_FIGURE_BASE_FLOOR_SITTING,
  SW_FIGURE_BASE_SIDE_PLANK,
} SwFigureBase;

typedef enum
{
  SW_FIGURE_ANCHOR_AUTO,
  SW_FIGURE_ANCHOR_FEET,
  SW_FIGURE_ANCHOR_RIGHT_FOOT,
  SW_FIGURE_ANCHOR_LEFT_FOOT,
  SW_FIGURE_ANCHOR_HIPS,
  SW_FIGURE_ANCHOR_KNEES,
  SW_FIGURE_ANCHOR_UPPER_BACK,
} SwFigureAnchor;

typedef enum
{
  SW_FIGURE_HAND_INHERIT,
  SW_FIGURE_HAND_OPEN,
  SW_FIGURE_HAND_FIST,
} SwFigureHand;

typedef enum
{
  SW_FIGURE_BREATH_NONE,
  SW_FIGURE_BREATH_IN,
  SW_FIGURE_BREATH_OUT,
} SwFigureBreath;

typedef enum
{
  SW_FIGURE_EYES_INHERIT,
  SW_FIGURE_EYES_OPEN,
  SW_FIGURE_EYES_CLOSED,
} SwFigureEyes;

typedef enum
{
  SW_FIGURE_LIMB_HAND,
  SW_FIGURE_LIMB_FOREARM,
  SW_FIGURE_LIMB_FOOT,
} SwFigureLimb;

typedef enum
{
  SW_FIGURE_PLACE_NONE,
  SW_FIGURE_PLACE_START,
  SW_FIGURE_PLACE_FLOOR,
  SW_FIGURE_PLACE_WALL,
  SW_FIGURE_PLACE_COUNTER,
  SW_FIGURE_PLACE_TABLE,
  SW_FIGURE_PLACE_STEP,
  SW_FIGURE_PLACE_CHAIR_BACK,
  SW_FIGURE_PLACE_SEAT,
  SW_FIGURE_PLACE_THIGH,
  SW_FIGURE_PLACE_KNEE,
  SW_FIGURE_PLACE_HIP,
  SW_FIGURE_PLACE_BELLY,
  SW_FIGURE_PLACE_CHEST,
  SW_FIGURE_PLACE_OTHER_SHOULDER,
  SW_FIGURE_PLACE_FOREHEAD,
  SW_FIGURE_PLACE_BACK_OF_HEAD,
  SW_FIGURE_PLACE_FACE,
  SW_FIGURE_PLACE_OTHER_FOOT,
  SW_FIGURE_PLACE_POINT,
} SwFigurePlace;

typedef enum
{
  SW_FIGURE_TOWARD_AUTO,
  SW_FIGURE_TOWARD_UP,
  SW_FIGURE_TOWARD_DOWN,
  SW_FIGURE_TOWARD_FORWARD,
  SW_FIGURE_TOWARD_BACK,
  SW_FIGURE_TOWARD_OUT,
  SW_FIGURE_TOWARD_IN,
} SwFigureToward;

typedef enum
{
  SW_FIGURE_MOTION_THERE_AND_BACK,
  SW_FIGURE_MOTION_ONE_WAY,
  SW_FIGURE_MOTION_CIRCLE,
  SW_FIGURE_MOTION_STILL,
  SW_FIGURE_MOTION_STEPS,
  SW_FIGURE_MOTION_PRESS,
} SwFigureMotion;

/**
 * SwFigureWay:
 * @SW_FIGURE_WAY_NONE: not said
 *
 * Where to something presses: up and down in the room, the rest as the chest faces; in and out from the body's middle.
 */
typedef enum
{
  SW_FIGURE_WAY_NONE,
  SW_FIGURE_WAY_UP,
  SW_FIGURE_WAY_DOWN,
  SW_FIGURE_WAY_FORWARD,
  SW_FIGURE_WAY_BACK,
  SW_FIGURE_WAY_RIGHT,
  SW_FIGURE_WAY_LEFT,
  SW_FIGURE_WAY_IN,
  SW_FIGURE_WAY_OUT,
} SwFigureWay;

/**
 * SwFigureSides:
 * @SW_FIGURE_SIDES_AUTO: the drawing works it out from what moves
 * @SW_FIGURE_SIDES_NONE: no mark
 * @SW_FIGURE_SIDES_ONE: one side works, the other rests
 * @SW_FIGURE_SIDES_BOTH: both sides at once
 * @SW_FIGURE_SIDES_ALTERNATE: the sides take turns
 */
typedef enum
{
  SW_FIGURE_SIDES_AUTO,
  SW_FIGURE_SIDES_NONE,
  SW_FIGURE_SIDES_ONE,
  SW_FIGURE_SIDES_BOTH,
  SW_FIGURE_SIDES_ALTERNATE,
} SwFigureSides;

/**
 * SwFigureLimbs:
 * @SW_FIGURE_LIMBS_AUTO: the drawing works it out from what moves
 * @SW_FIGURE_LIMBS_ARMS: the arms alone
 * @SW_FIGURE_LIMBS_LEGS: the legs alone
 * @SW_FIGURE_LIMBS_ALL: arms and legs
 *
 * Which limbs the mark of the sides shows.
 */
typedef enum
{
  SW_FIGURE_LIMBS_AUTO,
  SW_FIGURE_LIMBS_ARMS,
  SW_FIGURE_LIMBS_LEGS,
  SW_FIGURE_LIMBS_ALL,
} SwFigureLimbs;

typedef enum
{
  SW_FIGURE_MARK_NONE,
  SW_FIGURE_MARK_HIPS,
  SW_FIGURE_MARK_LOW_BACK,
  SW_FIGURE_MARK_UPPER_BACK,
  SW_FIGURE_MARK_CHEST,
  SW_FIGURE_MARK_NECK,
  SW_FIGURE_MARK_HEAD,
  SW_FIGURE_MARK_NOSE,
  SW_FIGURE_MARK_RIGHT_SHOULDER,
  SW_FIGURE_MARK_LEFT_SHOULDER,
  SW_FIGURE_MARK_RIGHT_ELBOW,
  SW_FIGURE_MARK_LEFT_ELBOW,
  SW_FIGURE_MARK_RIGHT_HAND,
  SW_FIGURE_MARK_LEFT_HAND,
  SW_FIGURE_MARK_RIGHT_HIP,
  SW_FIGURE_MARK_LEFT_HIP,
  SW_FIGURE_MARK_RIGHT_KNEE,
  SW_FIGURE_MARK_LEFT_KNEE,
  SW_FIGURE_MARK_RIGHT_FOOT,
  SW_FIGURE_MARK_LEFT_FOOT,
  SW_FIGURE_MARK_RIGHT_HEEL,
  SW_FIGURE_MARK_LEFT_HEEL,
  SW_FIGURE_MARK_RIGHT_TOES,
  SW_FIGURE_MARK_LEFT_TOES,
  SW_FIGURE_MARK_RIGHT_FINGERS,
  SW_FIGURE_MARK_LEFT_FINGERS,
  SW_FIGURE_MARK_RIGHT_THUMB,
  SW_FIGURE_MARK_LEFT_THUMB,
} SwFigureMark;

typedef enum
{
  SW_FIGURE_PROP_MAT,
  SW_FIGURE_PROP_PLINTH,
  SW_FIGURE_PROP_CHAIR,
  SW_FIGURE_PROP_WALL,
  SW_FIGURE_PROP_COUNTER,
  SW_FIGURE_PROP_TABLE,
  SW_FIGURE_PROP_CABLE,
  SW_FIGURE_PROP_STEP,
  SW_FIGURE_PROP_BLOCK,
  SW_FIGURE_PROP_ROLLER,
  SW_FIGURE_PROP_CUSHION,
  SW_FIGURE_PROP_PILLOW,
  SW_FIGURE_PROP_TOWEL,
  SW_FIGURE_PROP_BAND,
  SW_FIGURE_PROP_LOOP,
  SW_FIGURE_PROP_STRAP,
  SW_FIGURE_PROP_CUFF,
  SW_FIGURE_PROP_DUMBBELL,
  SW_FIGURE_PROP_STICK,
  SW_FIGURE_PROP_BALL,
} SwFigureProp;

typedef enum
{
  SW_FIGURE_WHERE_AUTO,
  SW_FIGURE_WHERE_UNDER,
  SW_FIGURE_WHERE_FRONT,
  SW_FIGURE_WHERE_BEHIND,
  SW_FIGURE_WHERE_RIGHT,
  SW_FIGURE_WHERE_LEFT,
} SwFigureWhere;

typedef enum
{
  SW_FIGURE_AREA_CALF,
  SW_FIGURE_AREA_SHIN,
  SW_FIGURE_AREA_THIGH_FRONT,
  SW_FIGURE_AREA_THIGH_BACK,
  SW_FIGURE_AREA_THIGH_INNER,
  SW_FIGURE_AREA_HIP_FRONT,
  SW_FIGURE_AREA_HIP_SIDE,
  SW_FIGURE_AREA_BUTTOCK,
  SW_FIGURE_AREA_BELLY,
  SW_FIGURE_AREA_WAIST,
  SW_FIGURE_AREA_LOW_BACK,
  SW_FIGURE_AREA_UPPER_BACK,
  SW_FIGURE_AREA_CHEST,
  SW_FIGURE_AREA_SHOULDER,
  SW_FIGURE_AREA_SHOULDER_BACK,
  SW_FIGURE_AREA_BLADE,
  SW_FIGURE_AREA_UPPER_ARM_FRONT,
  SW_FIGURE_AREA_UPPER_ARM_BACK,
  SW_FIGURE_AREA_FOREARM,
  SW_FIGURE_AREA_NECK_FRONT,
  SW_FIGURE_AREA_NECK_BACK,
  SW_FIGURE_AREA_NECK_SIDE,
  SW_FIGURE_AREA_HAND,
  SW_FIGURE_AREA_SOLE,
} SwFigureArea;

typedef enum
{
  SW_FIGURE_FRAME_AUTO,
  SW_FIGURE_FRAME_WHOLE,
  SW_FIGURE_FRAME_UPPER,
  SW_FIGURE_FRAME_HEAD,
  SW_FIGURE_FRAME_LOWER,
  SW_FIGURE_FRAME_HAND,
  SW_FIGURE_FRAME_FOOT,
} SwFigureFrame;

typedef enum
{
  SW_FIGURE_BETWEEN_NONE,
  SW_FIGURE_BETWEEN_KNEES,
  SW_FIGURE_BETWEEN_FEET,
  SW_FIGURE_BETWEEN_HANDS,
} SwFigureBetween;

/**
 * SwFigureThrown:
 * @SW_FIGURE_THROWN_NONE: it stays in the hands
 * @SW_FIGURE_THROWN_WALL: against the wall
 * @SW_FIGURE_THROWN_FLOOR: onto the floor
 * @SW_FIGURE_THROWN_UP: up into the air
 *
 * Where a ball goes from the last pose, to come back into the hands.
 */
typedef enum
{
  SW_FIGURE_THROWN_NONE,
  SW_FIGURE_THROWN_WALL,
  SW_FIGURE_THROWN_FLOOR,
  SW_FIGURE_THROWN_UP,
} SwFigureThrown;

/**
 * SwFigureLayout:
 * @SW_FIGURE_LAYOUT_AUTO: chosen by the drawing from what moves and the room there is
 * @SW_FIGURE_LAYOUT_SINGLE: one picture, the start dashed
 * @SW_FIGURE_LAYOUT_SIDE_BY_SIDE: numbered pictures from left to right
 * @SW_FIGURE_LAYOUT_STACKED: numbered pictures one under the other
 */
typedef enum
{
  SW_FIGURE_LAYOUT_AUTO,
  SW_FIGURE_LAYOUT_SINGLE,
  SW_FIGURE_LAYOUT_SIDE_BY_SIDE,
  SW_FIGURE_LAYOUT_STACKED,
} SwFigureLayout;

#define SW_FIGURE_MAX_POSES 6
#define SW_FIGURE_MAX_LIFT 0.3
#define SW_FIGURE_MAX_PINS 6
#define SW_FIGURE_MAX_STEP 20
#define SW_FIGURE_MAX_PROPS 8
#define SW_FIGURE_MAX_WORKS 12
#define SW_FIGURE_MAX_SHOWN 2
#define SW_FIGURE_MAX_BELLY 0.06

/**
 * SwFigurePin:
 * @limb: what is held in place
 * @side: whose
 * @to: where it is held; SW_FIGURE_PLACE_NONE lets go of what the start pose holds
 * @offset: from that place, in parts of stature: forward, outward, up; for SW_FIGURE_PLACE_POINT forward, to the
 *   body's left and up from the floor under the hips
 * @toward: which way the elbow or knee points
 */
typedef struct
{
  SwFigureLimb limb;
  SwFigureSide side;
  SwFigurePlace to;
  double offset[3];
  SwFigureToward toward;
} SwFigurePin;

/* Root angles a pose adds to those of its base. */
enum
{
  SW_FIGURE_ROOT_LEAN,
  SW_FIGURE_ROOT_ROLL,
  SW_FIGURE_ROOT_TURN,
  SW_FIGURE_ROOT_TWIST,
  SW_FIGURE_N_ROOT,
};

/**
 * SwFigurePose:
 * @own_base: whether it starts from @base; the first pose always does, a later one only among steps
 * @base: the base pose it differs from
 * @on: the side lain on, the knee on the floor
 * @anchor: what stays in its place from here on
 * @slots_set: bit n is set when slot n has a value of its own
 * @slots_deg: values of the slots that are set, degrees
 * @root_set: bit n likewise for @root_deg
 * @root_deg: lean (+ top forward), roll (+ left side up), turn (+ to the left), twist about the body's own axis (+ to
 *   the left), degrees
 * @lift: how far the body is above where it would stand, parts of stature: a jump; not taken over by later poses
 * @foot_set: by side, whether @foot_pitch_deg or @foot_free counts
 * @foot_free: by side, whether the ankle's angle rules although the base levels the foot
 * @foot_pitch_deg: by side, slope of the sole: 0 level, + heel raised on the ball, - toes raised on the heel
 * @hands: by side
 * @breath: whether breath goes in or out here
 * @eyes: whether the eyes are closed
 * @belly: how far the belly is blown out, parts of stature
 * @pins: what is held in place
 * @n_pins: how many of them
 * @step: after which step of the exercise's text the body is so, from 1; 0 for none
 * @extras: (nullable) (array zero-terminated=1): what a newer version wrote, kept as text
 *
 * One pose as differences: the first from its base, the others from the last before them that has a base.
 */
typedef struct
{
  gboolean own_base;
  SwFigureBase base;
  SwFigureSide on;
  SwFigureAnchor anchor;
  guint64 slots_set;
  double slots_deg[SW_N_SLOTS];
  guint root_set;
  double root_deg[SW_FIGURE_N_ROOT];
  double lift;
  gboolean foot_set[2];
  gboolean foot_free[2];
  double foot_pitch_deg[2];
  SwFigureHand hands[2];
  SwFigureBreath breath;
  SwFigureEyes eyes;
  double belly;
  SwFigurePin pins[SW_FIGURE_MAX_PINS];
  int n_pins;
  int step;
  char **extras;
} SwFigurePose;

/**
 * SwFigurePropSpec:
 * @kind: what it is
 * @where: for furniture and a band's fixed end: on which side of the body
 * @under: for pillow, towel, cushion, roller and block: the part it lies under
 * @in: for what is held: the hand; for a loop: what it goes round; for a cuff: the hand or foot above which it lies
 * @from: for a band held at both ends, a loop or a strap: where its other end is
 * @between: for pillow, towel, cushion and ball: both parts that hold it
 * @thrown: for a ball in a hand or between the hands: where it is thrown and caught again
 * @height: parts of stature: top of a counter, table, step or plinth, fixed end of a band or cable; NAN lets the program choose
 * @distance: parts of stature between the body's middle and the near face; NAN lets the program choose
 * @extras: (nullable) (array zero-terminated=1): what a newer version wrote
 */
typedef struct
{
  SwFigureProp kind;
  SwFigureWhere where;
  SwFigureMark under;
  SwFigureMark in;
  SwFigureMark from;
  SwFigureBetween between;
  SwFigureThrown thrown;
  double height;
  double distance;
  char **extras;
} SwFigurePropSpec;

/**
 * SwFigureWork:
 * @area: what works or is stretched
 * @right: whether on the right
 * @left: whether on the left; areas in the middle have both
 */
typedef struct
{
  SwFigureArea area;
  gboolean right;
  gboolean left;
} SwFigureWork;

/**
 * SwFigureInset:
 * @around: the middle of what is magnified; none for no inset
 * @turn_deg: of its own camera
 * @tilt_deg: of its own camera
 * @size: how much it shows across, parts of stature
 *
 * A second view in a ring, for what the first cannot tell.
 */
typedef struct
{
  SwFigureMark around;
  double turn_deg;
  double tilt_deg;
  double size;
} SwFigureInset;

/**
 * SwFigureContent:
 *
 * @mirrored: whether it is the mirror image of what was written; not written itself
 *
 * All that a #SwFigureSpec holds; NAN in @view_turn_deg and @view_tilt_deg means that the base decides. Start from
 * sw_figure_content_init().
 */
typedef struct
{
  gboolean mirrored;
  SwFigurePose poses[SW_FIGURE_MAX_POSES];
  int n_poses;
  SwFigureMotion motion;
  SwFigureMark shown[SW_FIGURE_MAX_SHOWN];
  SwFigureWay toward[SW_FIGURE_MAX_SHOWN]; /* where to what is shown presses; the second's is the first's unless said */
  SwFigureMark about;
  double radius_deg;
  gboolean both_ways;
  gboolean hold;
  SwFigureSides sides;
  SwFigureLimbs limbs;
  SwFigurePropSpec props[SW_FIGURE_MAX_PROPS];
  int n_props;
  SwFigureWork works[SW_FIGURE_MAX_WORKS];
  int n_works;
  double view_turn_deg;
  double view_tilt_deg;
  SwFigureFrame frame;
  SwFigureLayout layout;
  SwFigureInset inset;
  char **extras;
} SwFigureContent;

/**
 * SwFigureSpec:
 *
 * How an exercise's figure is to be drawn. Immutable and counted by references.
 */
typedef struct _SwFigureSpec SwFigureSpec;

#define SW_TYPE_FIGURE_SPEC (sw_figure_spec_get_type ())

void sw_figure_content_init (SwFigureContent *content);
void sw_figure_content_clear (SwFigureContent *content);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwFigureContent, sw_figure_content_clear)

GType sw_figure_spec_get_type (void);
SwFigureSpec *sw_figure_spec_new_take (SwFigureContent *content);
SwFigureSpec *sw_figure_spec_new_mirrored (SwFigureSpec *spec);
SwFigureSpec *sw_figure_spec_ref (SwFigureSpec *self);
void sw_figure_spec_unref (SwFigureSpec *self);
gboolean sw_figure_spec_equal (SwFigureSpec *a,
                               SwFigureSpec *b);
const SwFigureContent *sw_figure_spec_get_content (SwFigureSpec *self);
SwFigureMark sw_figure_mark_get_mirrored (SwFigureMark mark);
SwFigureWay sw_figure_way_get_mirrored (SwFigureWay way);
SwFigureSide sw_figure_base_get_on (SwFigureBase base);
const char *sw_figure_root_get_name (int root);
gboolean sw_figure_area_is_sided (SwFigureArea area);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwFigureSpec, sw_figure_spec_unref)

G_END_DECLS
