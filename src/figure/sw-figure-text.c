/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text alternative of a figure, from the same poses as the picture. The words of a language are in its file of phrases. */
#include "config.h"

#include <string.h>

#include "sw-enum-types.h"
#include "sw-figure-private.h"
#include "sw-throw.h"

/* Smaller changes are not worth words. */
#define WORTH_DEG 8.0
#define MOST_CHANGES 3
#define MOST_STEP_CHANGES 2
/* More pictures than this have one change each. */
#define MANY_STEPS 4
#define MOST_THINGS 3

static const char *
find (SwPhrases  *phrases,
      const char *group,
      const char *name)
{
  g_autofree char *key = g_strconcat (group, ".", name, NULL);

  return sw_phrases_get (phrases, key);
}

static const char *
nick (GType type,
      int   value)
{
  g_autoptr (GEnumClass) class = g_type_class_ref (type);

  return g_enum_get_value (class, value)->value_nick;
}

/* The phrase for a side, NAME-right or NAME-left. */
static const char *
find_sided (SwPhrases  *phrases,
            const char *group,
            const char *name,
            int         side)
{
  g_autofree char *sided = g_strconcat (name, side == (int) SW_FIGURE_LEFT ? "-left" : "-right", NULL);

  return find (phrases, group, sided);
}

/* A sentence begins with a capital, whatever its first word is. */
static void
append_sentence (SwPhrases  *phrases,
                 GString    *text,
                 const char *sentence)
{
  g_autofree char *begun = sw_phrases_capitalise (sentence);
  const char *const both[] = { text->str, begun, NULL };
  g_autofree char *longer = sw_phrases_sentences (phrases, text->len > 0 ? both : both + 1);

  g_string_assign (text, longer);
}

/* From where a close picture sees its hand or foot. */
static const char *
close_view_words (const SwFigure *self,
                  SwPhrases      *phrases)
{
  static const char *const hand_keys[] = { "figure.view-thumb", "figure.view-little-finger", "figure.view-palm",
                                           "figure.view-hand-back" };
  static const char *const foot_keys[] = { "figure.view-front", "figure.view-back", "figure.view-inner",
                                           "figure.view-outer", "figure.view-above" };
  gboolean hand = self->solver.content->frame == SW_FIGURE_FRAME_HAND;
  SwFigureSide side = sw_close_get_side (self);
  SwMatrix axes = self->solver.keys[0].body.pieces[SW_SIDED (hand ? SW_PIECE_HAND : SW_PIECE_FOOT, side)].axes;
  double along = sw_dot (self->camera.toward, axes.x);
  double inward = -sw_side_sign (side) * sw_dot (self->camera.toward, axes.y);
  double shares[] = { along, -along, inward, -inward, sw_dot (self->camera.toward, axes.z) };
  int best = 0;

  for (int i = 1; i < (hand ? 4 : 5); i++)
    if (shares[i] > shares[best])
      best = i;
  return sw_phrases_get (phrases, hand ? hand_keys[best] : foot_keys[best]);
}

static const char *
view_words (const SwFigure *self,
            SwPhrases      *phrases)
{
  SwVector c = self->camera.toward;
  SwMatrix trunk = self->solver.keys[0].body.pieces[SW_PIECE_PELVIS].axes;
  double front = sw_dot (c, trunk.x);
  double side = fabs (sw_dot (c, trunk.y));

  if (self->fine)
    return close_view_words (self, phrases);
  if (c.z > 0.7)
    return sw_phrases_get (phrases, "figure.view-above");
  if (side > 0.9)
    return sw_phrases_get (phrases, "figure.view-side");
  if (front > 0.9)
    return sw_phrases_get (phrases, "figure.view-front");
  if (front < -0.9)
    return sw_phrases_get (phrases, "figure.view-back");

  return sw_phrases_get (phrases, "figure.view-slanting");
}

/* What it starts from: a close picture's hand or foot, or how the body rests. */
static const char *
base_words (const SwFigure *self,
            SwPhrases      *phrases)
{
  const SwFigurePose *first = &self->solver.content->poses[0];

  if (self->fine)
    return find_sided (phrases, "figure-close", self->solver.content->frame == SW_FIGURE_FRAME_HAND ? "hand" : "foot",
                       sw_close_get_side (self));
  if (first->base == SW_FIGURE_BASE_SIDE_LYING || first->base == SW_FIGURE_BASE_HALF_KNEELING
      || first->base == SW_FIGURE_BASE_SIDE_PLANK)
    return find_sided (phrases, "figure-base", nick (SW_TYPE_FIGURE_BASE, (int) first->base), (int) first->on);
  return find (phrases, "figure-base", nick (SW_TYPE_FIGURE_BASE, (int) first->base));
}

/* Where it starts from, and with which things, as a sentence. */
static char *
dup_start (const SwFigure *self,
           SwPhrases      *phrases,
           gboolean        with_things)
{
  const SwFigureContent *content = self->solver.content;
  const char *start = base_words (self, phrases);
  const char *things[MOST_THINGS + 1] = { NULL };
  g_autofree char *list = NULL;
  guint said = 0;
  int n = 0;

  for (int i = 0; with_things && i < content->n_props && n < MOST_THINGS; i++)
    {
      SwFigureProp kind = content->props[i].kind;

      if (kind == SW_FIGURE_PROP_MAT || kind == SW_FIGURE_PROP_PLINTH || (said >> kind & 1) != 0
          || (kind == SW_FIGURE_PROP_CHAIR && content->poses[0].base == SW_FIGURE_BASE_SITTING))
        continue;
      said |= 1u << kind;
      things[n++] = find (phrases, "figure-prop", nick (SW_TYPE_FIGURE_PROP, (int) kind));
    }
  if (n == 0)
    return sw_phrases_format (phrases, "figure.start", "start", start, NULL);

  list = sw_phrases_list (phrases, things);
  return sw_phrases_format (phrases, "figure.with", "start", start, "things", list, NULL);
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
append_change (SwPhrases    *phrases,
               const Change *change,
               GString      *text)
{
  static const char *const sides[] = { "-right", "-left", "-both" };
  const SwAngleInfo *info = sw_angle_get_info (change->angle);
  g_autofree char *key = g_strconcat (info->element, "-", info->attribute,
                                      sw_angle_is_sided (change->angle) ? sides[change->side] : "",
                                      change->to < change->from ? "-less" : "-more", NULL);
  g_autofree char *from = sw_phrases_number (phrases, round (change->from), 0);
  g_autofree char *to = sw_phrases_number (phrases, round (change->to), 0);
  g_autofree char *sentence = sw_phrases_format (phrases, "figure.from-to", "what",
                                                 find (phrases, "figure-angle", key), "from", from, "to", to, NULL);

  append_sentence (phrases, text, sentence);
}

/* The largest changes from the pose before; where it tells nothing, that it is the next picture. */
static void
append_key_changes (const SwFigure *self,
                    SwPhrases      *phrases,
                    int             key,
                    int             most,
                    GString        *text)
{
  Change changes[SW_N_SLOTS];
  int n = MIN (collect_changes (self, key - 1, key, changes), most);

  if (n == 0)
    {
      g_autofree char *start = dup_start (self, phrases, FALSE);

      append_sentence (phrases, text, start);
    }
  for (int i = 0; i < n; i++)
    append_change (phrases, &changes[i], text);
}

/* When limbs are held, angles tell little: say where the shown part goes. */
static void
append_shown (const SwFigure *self,
              SwPhrases      *phrases,
              GString        *text)
{
  SwFigureMark shown[SW_FIGURE_MAX_SHOWN];
  int n = sw_figure_get_shown (self, 0, 1, shown);

  for (int i = 0; i < n; i++)
    {
      SwVector by = sw_sub (sw_body_get_mark (&self->frames[SW_N_FRAMES - 1].body, shown[i]),
                            sw_body_get_mark (&self->frames[0].body, shown[i]));
      static const char *const names[6] = { "forward", "back", "left", "right", "up", "down" };
      const double ways[6] = { by.x, -by.x, by.y, -by.y, by.z, -by.z };
      g_autofree char *key = g_strconcat ("figure-mark.", nick (SW_TYPE_FIGURE_MARK, (int) shown[i]), NULL);
      g_autofree char *sentence = NULL;
      int best = 0;

      for (int k = 1; k < 6; k++)
        if (ways[k] > ways[best])
          best = k;
      if (ways[best] < 0.004)
        continue;
      sentence = sw_phrases_format (phrases, key, "way", find (phrases, "figure-way", names[best]), NULL);
      append_sentence (phrases, text, sentence);
    }
}

/* What presses where, and that it stays where it is unless it came there first. */
static void
append_press (const SwFigure *self,
              SwPhrases      *phrases,
              GString        *text)
{
  const SwFigureContent *content = self->solver.content;

  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      SwFigureWay way = content->toward[i] != SW_FIGURE_WAY_NONE ? content->toward[i] : content->toward[0];
      g_autofree char *key = NULL;
      g_autofree char *sentence = NULL;

      if (content->shown[i] == SW_FIGURE_MARK_NONE || way == SW_FIGURE_WAY_NONE)
        continue;
      key = g_strconcat ("figure-press.", nick (SW_TYPE_FIGURE_MARK, (int) content->shown[i]), NULL);
      sentence = sw_phrases_format (phrases, key, "way",
                                    find (phrases, "figure-way", nick (SW_TYPE_FIGURE_WAY, (int) way)), NULL);
      append_sentence (phrases, text, sentence);
    }
  if (self->solver.n_keys == 1)
    append_sentence (phrases, text, sw_phrases_get (phrases, "figure.no-move"));
}

static void
append_motion (const SwFigure *self,
               SwPhrases      *phrases,
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
      append_sentence (phrases, text, sw_phrases_get (phrases, "figure.circle"));
      return;
    }
  if (fabs (twist) >= WORTH_DEG)
    append_sentence (phrases, text, sw_phrases_get (phrases, twist > 0 ? "figure.hips-turn-left" : "figure.hips-turn-right"));
  for (int i = 0; i < MIN (n, MOST_CHANGES); i++)
    append_change (phrases, &changes[i], text);
  if (fabs (pitch) >= WORTH_DEG && n < MOST_CHANGES)
    append_sentence (phrases, text, sw_phrases_get (phrases, pitch > 0 ? "figure.heels-rise" : "figure.toes-rise"));
  else if (fabs (rise) > 0.03 && n < MOST_CHANGES)
    append_sentence (phrases, text, sw_phrases_get (phrases, rise > 0 ? "figure.hips-rise" : "figure.hips-sink"));
  else if (n == 0 && fabs (twist) < WORTH_DEG)
    append_shown (self, phrases, text);
}

/* Breath and eyes of one pose. */
static void
append_face (const SwFigure *self,
             SwPhrases      *phrases,
             int             key,
             GString        *text)
{
  const SwSolved *now = &self->solver.keys[key];

  if (now->breath != SW_FIGURE_BREATH_NONE)
    append_sentence (phrases, text, sw_phrases_get (phrases, now->breath == SW_FIGURE_BREATH_IN ? "figure.breath-in"
                                                                                     : "figure.breath-out"));
  if (now->body.eyes_closed && (key == 0 || !self->solver.keys[key - 1].body.eyes_closed))
    append_sentence (phrases, text, sw_phrases_get (phrases, "figure.eyes-closed"));
}

/* Steps are told one by one: from where each begins, and what changes until the next. */
static void
append_steps (SwFigure  *self,
              SwPhrases *phrases,
              GString   *text)
{
  SwCell cells[SW_MAX_PANELS];
  int most = sw_figure_get_cells (self, cells) > MANY_STEPS ? 1 : MOST_STEP_CHANGES;
  int number = 0;

  for (int i = 0; i < MAX (1, self->n_parts); i++)
    {
      const SwFigure *part = self->n_parts > 0 ? self->parts[i] : self;

      for (int key = 0; key < part->solver.n_keys; key++)
        {
          g_autoptr (GString) what = g_string_new (NULL);
          g_autofree char *nth = sw_phrases_number (phrases, ++number, 0);
          g_autofree char *start = dup_start (part, phrases, i == 0);
          g_autofree char *step = NULL;

          if (key == 0)
            append_sentence (phrases, what, start);
          else
            append_key_changes (part, phrases, key, most, what);
          append_face (part, phrases, key, what);
          step = sw_phrases_format (phrases, "figure.step", "number", nth, "what", what->str, NULL);
          append_sentence (phrases, text, step);
        }
    }
}

/**
 * sw_figure_dup_text:
 * @phrases: words of the reader's language
 *
 * What the picture shows, for people who cannot see it: about 40 words at most.
 *
 * Returns: (transfer full): the text
 */
char *
sw_figure_dup_text (SwFigure  *self,
                    SwPhrases *phrases)
{
  const SwFigureContent *content;
  g_autofree char *start = NULL;
  SwThrow flight;
  GString *text;

  g_return_val_if_fail (SW_IS_FIGURE (self), NULL);

  content = self->solver.content;
  text = g_string_new (NULL);
  if (content->motion == SW_FIGURE_MOTION_STEPS)
    {
      append_steps (self, phrases, text);
      return g_string_free (text, FALSE);
    }

  append_sentence (phrases, text, view_words (self, phrases));
  start = dup_start (self, phrases, TRUE);
  append_sentence (phrases, text, start);
  append_face (self, phrases, 0, text);
  if (content->motion != SW_FIGURE_MOTION_PRESS || self->solver.n_keys > 1)
    append_motion (self, phrases, text);
  if (content->motion == SW_FIGURE_MOTION_PRESS)
    append_press (self, phrases, text);
  if (self->solver.n_keys > 1)
    append_face (self, phrases, self->solver.n_keys - 1, text);
  if (sw_throw_get (&self->solver, &self->solver.keys[self->solver.n_keys - 1], &flight))
    append_sentence (phrases, text, find (phrases, "figure-throw",
                                 nick (SW_TYPE_FIGURE_THROWN, (int) content->props[flight.prop].thrown)));
  else if (content->hold)
    append_sentence (phrases, text, sw_phrases_get (phrases, "figure.hold"));
  else if (content->motion == SW_FIGURE_MOTION_THERE_AND_BACK && self->solver.n_keys > 1)
    append_sentence (phrases, text, sw_phrases_get (phrases, "figure.back"));

  return g_string_free (text, FALSE);
}
