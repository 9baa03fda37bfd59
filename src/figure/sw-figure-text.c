/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text alternative of a figure, from the same poses as the picture. Words of a language are data: a table of phrases;
 * a further language is a further table. */
#include "config.h"

#include <string.h>

#include "sw-figure-private.h"

/* Smaller changes are not worth words. */
#define WORTH_DEG 8.0
#define MOST_CHANGES 3
#define MOST_STEP_CHANGES 2

/**
 * Words:
 * @language: BCP 47 primary tag
 *
 * All phrases of one language. Order of arguments as in the English ones.
 */
typedef struct
{
  const char *language;
  const char *views[5];
  const char *bases[SW_FIGURE_BASE_SIDE_PLANK + 1];
  const char *sides[2];
  const char *initials[2]; /* the same at the start of a sentence */
  const char *from_to;     /* %1 what happens, %2 and %3 whole degrees */
  const char *angles[SW_N_ANGLES][4]; /* more, less; then more and less for both sides at once */
  const char *hips_rise;
  const char *hips_sink;
  const char *heels_rise;
  const char *toes_rise;
  const char *hips_turn[2]; /* right, left */
  const char *moves;        /* %1 what, %2 which way */
  const char *marks[SW_FIGURE_MARK_LEFT_THUMB + 1]; /* that they move */
  const char *ways[6]; /* forward, back, left, right, up, down */
  const char *circle;
  const char *hold;
  const char *back;
  const char *things[SW_FIGURE_PROP_BALL + 1];
  const char *with;
  const char *and;
} Words;

static const Words english = {
  .language = "en",
  .views = { "Front view.", "Side view.", "Back view.", "View from above.", "Slanting view." },
  .bases = {
    [SW_FIGURE_BASE_STANDING] = "Standing",
    [SW_FIGURE_BASE_SITTING] = "Sitting on a chair",
    [SW_FIGURE_BASE_ON_BACK] = "Lying on the back",
    [SW_FIGURE_BASE_ON_BACK_KNEES_BENT] = "Lying on the back, knees bent, feet flat",
    [SW_FIGURE_BASE_FACE_DOWN] = "Lying face down",
    [SW_FIGURE_BASE_SIDE_LYING] = "Lying on the %s side",
    [SW_FIGURE_BASE_HANDS_AND_KNEES] = "On hands and knees",
    [SW_FIGURE_BASE_KNEELING] = "Kneeling",
    [SW_FIGURE_BASE_HALF_KNEELING] = "Kneeling on the %s knee, the other foot in front",
    [SW_FIGURE_BASE_ON_FOREARMS] = "Lying face down, propped on the forearms",
    [SW_FIGURE_BASE_PLANK] = "Face down on hands and toes, body straight",
    [SW_FIGURE_BASE_FLOOR_SITTING] = "Sitting on the floor",
    [SW_FIGURE_BASE_SIDE_PLANK] = "Propped on the %s forearm, body straight",
  },
  .sides = { "right", "left" },
  .initials = { "Right", "Left" },
  .from_to = "%1 from %2 to %3 degrees.",
  .angles = {
    [SW_ANGLE_LOW_BACK_BEND] = { "Low back rounds", "Low back arches" },
    [SW_ANGLE_LOW_BACK_SIDE] = { "Low back bends left", "Low back bends right" },
    [SW_ANGLE_LOW_BACK_TURN] = { "Low back turns left", "Low back turns right" },
    [SW_ANGLE_UPPER_BACK_BEND] = { "Upper back rounds", "Upper back arches" },
    [SW_ANGLE_UPPER_BACK_SIDE] = { "Upper back bends left", "Upper back bends right" },
    [SW_ANGLE_UPPER_BACK_TURN] = { "Upper back turns left", "Upper back turns right" },
    [SW_ANGLE_NECK_BEND] = { "Neck bends forward", "Neck bends back" },
    [SW_ANGLE_NECK_SIDE] = { "Neck tips left", "Neck tips right" },
    [SW_ANGLE_NECK_TURN] = { "Neck turns left", "Neck turns right" },
    [SW_ANGLE_HEAD_BEND] = { "Head nods down", "Head tilts back" },
    [SW_ANGLE_HEAD_SIDE] = { "Head tips left", "Head tips right" },
    [SW_ANGLE_HEAD_TURN] = { "Head turns left", "Head turns right" },
    [SW_ANGLE_BLADE_FORWARD] = { "%s shoulder blade slides forward", "%s shoulder blade draws back", "Shoulder blades slide forward",
      "Shoulder blades draw back" },
    [SW_ANGLE_BLADE_UP] = { "%s shoulder lifts", "%s shoulder sinks", "Shoulders lift", "Shoulders sink" },
    [SW_ANGLE_SHOULDER_RAISE] = { "%s arm lifts", "%s arm lowers", "Arms lift", "Arms lower" },
    [SW_ANGLE_SHOULDER_DIRECTION] = { "%s arm moves forward", "%s arm moves out", "Arms move forward",
      "Arms move out" },
    [SW_ANGLE_SHOULDER_TURN] = { "%s arm turns out", "%s arm turns in", "Arms turn out", "Arms turn in" },
    [SW_ANGLE_ELBOW_BEND] = { "%s elbow bends", "%s elbow straightens", "Elbows bend", "Elbows straighten" },
    [SW_ANGLE_FOREARM_PALM_UP] = { "%s palm turns up", "%s palm turns down", "Palms turn up", "Palms turn down" },
    [SW_ANGLE_WRIST_BEND] = { "%s wrist bends", "%s wrist bends back", "Wrists bend", "Wrists bend back" },
    [SW_ANGLE_WRIST_THUMBWARD] = { "%s hand tips to the thumb", "%s hand tips to the little finger", "Hands tip to the thumbs",
      "Hands tip to the little fingers" },
    [SW_ANGLE_HIP_BEND] = { "%s hip bends", "%s hip straightens", "Hips bend", "Hips straighten" },
    [SW_ANGLE_HIP_OUT] = { "%s leg moves out", "%s leg moves in", "Legs move out", "Legs move in" },
    [SW_ANGLE_HIP_TURN] = { "%s leg turns out", "%s leg turns in", "Legs turn out", "Legs turn in" },
    [SW_ANGLE_KNEE_BEND] = { "%s knee bends", "%s knee straightens", "Knees bend", "Knees straighten" },
    [SW_ANGLE_ANKLE_UP] = { "%s toes lift", "%s toes point down", "Toes lift", "Toes point down" },
    [SW_ANGLE_TOES_UP] = { "%s toes bend up", "%s toes curl", "Toes bend up", "Toes curl" },
    [SW_ANGLE_FINGERS_KNUCKLE] = { "%s knuckles bend", "%s knuckles straighten", "Knuckles bend", "Knuckles straighten" },
    [SW_ANGLE_FINGERS_CURL] = { "%s fingers curl", "%s fingers straighten", "Fingers curl", "Fingers straighten" },
    [SW_ANGLE_FINGERS_TIPS] = { "%s fingertips bend", "%s fingertips straighten", "Fingertips bend", "Fingertips straighten" },
    [SW_ANGLE_FINGERS_SPREAD] = { "%s fingers spread", "%s fingers close", "Fingers spread", "Fingers close" },
    [SW_ANGLE_THUMB_OUT] = { "%s thumb moves away from the hand", "%s thumb moves to the hand", "Thumbs move away from the hands",
      "Thumbs move to the hands" },
    [SW_ANGLE_THUMB_ACROSS] = { "%s thumb moves across the palm", "%s thumb moves back beside the hand", "Thumbs move across the palms",
      "Thumbs move back beside the hands" },
    [SW_ANGLE_THUMB_BEND] = { "%s thumb bends", "%s thumb straightens", "Thumbs bend", "Thumbs straighten" },
  },
  .hips_rise = "The hips rise.",
  .hips_sink = "The hips sink.",
  .heels_rise = "The heels rise, the toes stay down.",
  .toes_rise = "The toes rise, the heels stay down.",
  .hips_turn = { "The hips turn to the right.", "The hips turn to the left." },
  .moves = "The %1 %2.",
  .marks = {
    [SW_FIGURE_MARK_HIPS] = "hips move",
    [SW_FIGURE_MARK_LOW_BACK] = "low back moves",
    [SW_FIGURE_MARK_UPPER_BACK] = "upper back moves",
    [SW_FIGURE_MARK_CHEST] = "chest moves",
    [SW_FIGURE_MARK_NECK] = "neck moves",
    [SW_FIGURE_MARK_HEAD] = "head moves",
    [SW_FIGURE_MARK_NOSE] = "nose moves",
    [SW_FIGURE_MARK_RIGHT_SHOULDER] = "right shoulder moves",
    [SW_FIGURE_MARK_LEFT_SHOULDER] = "left shoulder moves",
    [SW_FIGURE_MARK_RIGHT_ELBOW] = "right elbow moves",
    [SW_FIGURE_MARK_LEFT_ELBOW] = "left elbow moves",
    [SW_FIGURE_MARK_RIGHT_HAND] = "right hand moves",
    [SW_FIGURE_MARK_LEFT_HAND] = "left hand moves",
    [SW_FIGURE_MARK_RIGHT_HIP] = "right hip moves",
    [SW_FIGURE_MARK_LEFT_HIP] = "left hip moves",
    [SW_FIGURE_MARK_RIGHT_KNEE] = "right knee moves",
    [SW_FIGURE_MARK_LEFT_KNEE] = "left knee moves",
    [SW_FIGURE_MARK_RIGHT_FOOT] = "right foot moves",
    [SW_FIGURE_MARK_LEFT_FOOT] = "left foot moves",
    [SW_FIGURE_MARK_RIGHT_HEEL] = "right heel moves",
    [SW_FIGURE_MARK_LEFT_HEEL] = "left heel moves",
    [SW_FIGURE_MARK_RIGHT_TOES] = "right toes move",
    [SW_FIGURE_MARK_LEFT_TOES] = "left toes move",
    [SW_FIGURE_MARK_RIGHT_FINGERS] = "right fingers move",
    [SW_FIGURE_MARK_LEFT_FINGERS] = "left fingers move",
    [SW_FIGURE_MARK_RIGHT_THUMB] = "right thumb moves",
    [SW_FIGURE_MARK_LEFT_THUMB] = "left thumb moves",
  },
  .ways = { "forward", "back", "to the left", "to the right", "up", "down" },
  .circle = "Small circles.",
  .hold = "Hold there.",
  .back = "Then back.",
  .things = {
    [SW_FIGURE_PROP_WALL] = "a wall",
    [SW_FIGURE_PROP_COUNTER] = "a counter",
    [SW_FIGURE_PROP_CHAIR] = "a chair",
    [SW_FIGURE_PROP_STEP] = "a step",
    [SW_FIGURE_PROP_PILLOW] = "a pillow",
    [SW_FIGURE_PROP_TOWEL] = "a towel",
    [SW_FIGURE_PROP_BAND] = "a band",
    [SW_FIGURE_PROP_LOOP] = "a loop band",
    [SW_FIGURE_PROP_STRAP] = "a strap",
    [SW_FIGURE_PROP_CUFF] = "a cuff weight",
    [SW_FIGURE_PROP_DUMBBELL] = "a weight",
    [SW_FIGURE_PROP_STICK] = "a stick",
    [SW_FIGURE_PROP_BALL] = "a ball",
  },
  .with = ", with ",
  .and = " and ",
};

static const Words *const languages[] = { &english };

/* The primary tag decides; a language without words gets English. */
static const Words *
find_words (const char *language)
{
  for (gsize i = 0; language != NULL && i < G_N_ELEMENTS (languages); i++)
    {
      gsize n = strlen (languages[i]->language);

      if (g_ascii_strncasecmp (language, languages[i]->language, n) == 0 && (language[n] == '\0' || language[n] == '-'))
        return languages[i];
    }
  return &english;
}

static const char *
view_words (const SwFigure *self,
            const Words    *words)
{
  SwVector c = self->camera.toward;
  SwMatrix trunk = self->solver.keys[0].body.pieces[SW_PIECE_PELVIS].axes;
  double front = sw_dot (c, trunk.x);
  double side = fabs (sw_dot (c, trunk.y));

  if (c.z > 0.7)
    return words->views[3];
  if (side > 0.9)
    return words->views[1];
  if (front > 0.9)
    return words->views[0];
  if (front < -0.9)
    return words->views[2];

  return words->views[4];
}

static void
append_base (const SwFigure *self,
             const Words    *words,
             GString        *text)
{
  GString *base = g_string_new (words->bases[self->solver.content->poses[0].base]);

  g_string_replace (base, "%s", words->sides[self->solver.content->poses[0].on], 1);
  g_string_append (text, base->str);
  g_string_free (base, TRUE);
}

static void
append_things (const SwFigure *self,
               const Words    *words,
               GString        *text)
{
  const SwFigureContent *content = self->solver.content;
  guint said = 0;
  int n = 0;

  for (int i = 0; i < content->n_props && n < 3; i++)
    {
      SwFigureProp kind = content->props[i].kind;

      if (words->things[kind] == NULL || (said >> kind & 1) != 0
          || (kind == SW_FIGURE_PROP_CHAIR && content->poses[0].base == SW_FIGURE_BASE_SITTING))
        continue;
      said |= 1u << kind;
      g_string_append (text, n == 0 ? words->with : words->and);
      g_string_append (text, words->things[kind]);
      n++;
    }
}

typedef struct
{
  SwAngle angle;
  int side; /* a SwFigureSide, 2 for both alike */
  double from;
  double to;
} Change;

static int
compare_changes (const void *a,
                 const void *b)
{
  const Change *p = a;
  const Change *q = b;
  double by = fabs (q->to - q->from) - fabs (p->to - p->from);

  return by > 0 ? 1 : by < 0 ? -1 : (int) p->angle - (int) q->angle;
}

/* What the author wrote, not what follows from it: hands that stay held bend elbows nobody needs to hear of. */
static gboolean
was_written (const SwFigure *self,
             int             key,
             int             slot)
{
  return key > 0 && (self->solver.content->poses[key].slots_set >> slot & 1) != 0;
}

static int
collect_changes (const SwFigure *self,
                 int             from_key,
                 int             to_key,
                 Change         *changes)
{
  const SwJoints *first = &self->solver.keys[from_key].joints;
  const SwJoints *last = &self->solver.keys[to_key].joints;
  int n = 0;

  for (int i = 0; i < (int) SW_N_ANGLES; i++)
    {
      int slots[2]
          = { sw_angle_get_slot ((SwAngle) i, SW_FIGURE_RIGHT), sw_angle_get_slot ((SwAngle) i, SW_FIGURE_LEFT) };
      gboolean sided = sw_angle_is_sided ((SwAngle) i);
      double by[2] = { 0, 0 };

      for (int side = 0; side < (sided ? 2 : 1); side++)
        if (was_written (self, from_key, slots[side]) || was_written (self, to_key, slots[side]))
          by[side] = last->slots_deg[slots[side]] - first->slots_deg[slots[side]];
      if (sided && fabs (by[0]) >= WORTH_DEG && fabs (by[0] - by[1]) < 3)
        {
          changes[n++] = (Change){ (SwAngle) i, 2, first->slots_deg[slots[0]], last->slots_deg[slots[0]] };
          continue;
        }
      for (int side = 0; side < (sided ? 2 : 1); side++)
        if (fabs (by[side]) >= WORTH_DEG)
          changes[n++] = (Change){ (SwAngle) i, side, first->slots_deg[slots[side]], last->slots_deg[slots[side]] };
    }
  qsort (changes, (gsize) n, sizeof *changes, compare_changes);
  return n;
}

static void
append_change (const Words  *words,
               const Change *change,
               GString      *text)
{
  gboolean less = change->to < change->from;
  const char *phrase = words->angles[change->angle][(change->side == 2 ? 2 : 0) + (less ? 1 : 0)];
  GString *what = g_string_new (phrase);
  GString *sentence = g_string_new (words->from_to);
  g_autofree char *from = g_strdup_printf ("%d", (int) lround (change->from));
  g_autofree char *to = g_strdup_printf ("%d", (int) lround (change->to));

  if (change->side < 2)
    g_string_replace (what, "%s", words->initials[change->side], 1);
  g_string_replace (sentence, "%1", what->str, 1);
  g_string_replace (sentence, "%2", from, 1);
  g_string_replace (sentence, "%3", to, 1);
  g_string_append_printf (text, " %s", sentence->str);
  g_string_free (what, TRUE);
  g_string_free (sentence, TRUE);
}

/* The largest changes from the pose before; where it tells nothing, that it is the next picture. */
static void
append_key_changes (const SwFigure *self,
                    const Words    *words,
                    int             key,
                    GString        *text)
{
  Change changes[SW_N_SLOTS];
  int n = MIN (collect_changes (self, key - 1, key, changes), MOST_STEP_CHANGES);

  if (n == 0)
    {
      g_string_append_c (text, ' ');
      append_base (self, words, text);
      g_string_append_c (text, '.');
    }
  for (int i = 0; i < n; i++)
    append_change (words, &changes[i], text);
}

/* When limbs are held, angles tell little: say where the shown part goes. */
static void
append_shown (const SwFigure *self,
              const Words    *words,
              GString        *text)
{
  SwFigureMark shown[SW_FIGURE_MAX_SHOWN];
  int n = sw_figure_get_shown (self, 0, 1, shown);

  for (int i = 0; i < n; i++)
    {
      SwVector by = sw_sub (sw_body_get_mark (&self->frames[SW_N_FRAMES - 1].body, shown[i]),
                            sw_body_get_mark (&self->frames[0].body, shown[i]));
      const double ways[6] = { by.x, -by.x, by.y, -by.y, by.z, -by.z };
      GString *sentence;
      int best = 0;

      for (int k = 1; k < 6; k++)
        if (ways[k] > ways[best])
          best = k;
      if (ways[best] < 0.004 || words->marks[shown[i]] == NULL)
        continue;
      sentence = g_string_new (words->moves);
      g_string_replace (sentence, "%1", words->marks[shown[i]], 1);
      g_string_replace (sentence, "%2", words->ways[best], 1);
      g_string_append_printf (text, " %s", sentence->str);
      g_string_free (sentence, TRUE);
    }
}

static void
append_motion (const SwFigure *self,
               const Words    *words,
               GString        *text)
{
  const SwSolver *solver = &self->solver;
  const SwSolved *first = &solver->keys[0];
  const SwSolved *last = &solver->keys[solver->n_keys - 1];
  double rise = last->body.pieces[SW_PIECE_PELVIS].at.z - first->body.pieces[SW_PIECE_PELVIS].at.z;
  double pitch = MAX (last->pitch_deg[0], last->pitch_deg[1]) - MAX (first->pitch_deg[0], first->pitch_deg[1]);
  Change changes[SW_N_SLOTS];
  int n = collect_changes (self, 0, solver->n_keys - 1, changes);

  double twist = last->joints.root_deg[SW_FIGURE_ROOT_TWIST] - first->joints.root_deg[SW_FIGURE_ROOT_TWIST];

  if (solver->content->motion == SW_FIGURE_MOTION_CIRCLE)
    {
      g_string_append_printf (text, " %s", words->circle);
      return;
    }
  if (fabs (twist) >= WORTH_DEG)
    g_string_append_printf (text, " %s", words->hips_turn[twist > 0]);
  for (int i = 0; i < MIN (n, MOST_CHANGES); i++)
    append_change (words, &changes[i], text);
  if (fabs (pitch) >= WORTH_DEG && n < MOST_CHANGES)
    g_string_append_printf (text, " %s", pitch > 0 ? words->heels_rise : words->toes_rise);
  else if (fabs (rise) > 0.03 && n < MOST_CHANGES)
    g_string_append_printf (text, " %s", rise > 0 ? words->hips_rise : words->hips_sink);
  else if (n == 0 && fabs (twist) < WORTH_DEG)
    append_shown (self, words, text);
}

/* Steps are told one by one: from where each begins, and what changes until the next. */
static void
append_steps (SwFigure    *self,
              const Words *words,
              GString     *text)
{
  int number = 0;

  for (int i = 0; i < MAX (1, self->n_parts); i++)
    {
      const SwFigure *part = self->n_parts > 0 ? self->parts[i] : self;

      for (int key = 0; key < part->solver.n_keys; key++)
        {
          g_string_append_printf (text, "%s%d:", number > 0 ? " " : "", number + 1);
          number++;
          if (key == 0)
            {
              g_string_append_c (text, ' ');
              append_base (part, words, text);
              if (i == 0)
                append_things (part, words, text);
              g_string_append_c (text, '.');
            }
          else
            append_key_changes (part, words, key, text);
        }
    }
}

/**
 * sw_figure_dup_text:
 * @language: BCP 47 tag; a language without phrases gets English
 *
 * What the picture shows, for people who cannot see it: about 40 words at most.
 *
 * Returns: (transfer full): the text
 */
char *
sw_figure_dup_text (SwFigure   *self,
                    const char *language)
{
  const Words *words = find_words (language);
  const SwFigureContent *content;
  GString *text;

  g_return_val_if_fail (SW_IS_FIGURE (self), NULL);

  content = self->solver.content;
  text = g_string_new (NULL);
  if (content->motion == SW_FIGURE_MOTION_STEPS)
    {
      append_steps (self, words, text);
      return g_string_free (text, FALSE);
    }

  g_string_append_printf (text, "%s ", view_words (self, words));
  append_base (self, words, text);
  append_things (self, words, text);
  g_string_append_c (text, '.');
  append_motion (self, words, text);
  if (content->hold)
    g_string_append_printf (text, " %s", words->hold);
  else if (content->motion == SW_FIGURE_MOTION_THERE_AND_BACK && self->solver.n_keys > 1)
    g_string_append_printf (text, " %s", words->back);

  return g_string_free (text, FALSE);
}
