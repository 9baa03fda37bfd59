/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stands under an exercise's picture: which step each picture shows, or where the way goes where no steps are told;
 * which side it is drawn for and what moves. */
#include "config.h"

#include "sw-telling.h"

/* Which side the picture shows: it is drawn for the one side that is worked. */
static SwBodySide
find_shown_side (const SwTelling *telling,
                 SwSide           worked)
{
  if (telling->drawn == SW_BODY_SIDE_NONE)
    return SW_BODY_SIDE_NONE;
  if (worked == SW_SIDE_RIGHT)
    return SW_BODY_SIDE_RIGHT;
  if (worked == SW_SIDE_LEFT)
    return SW_BODY_SIDE_LEFT;
  return telling->drawn;
}

/* Of a stretch it is not told: what moves is often not what is stretched, and the side is meant by that.
 *
 * Returns: (nullable): which arm or leg moves, when one alone does */
static const char *
get_moving (SwTelling *telling)
{
  static const char *const keys[2][2] = {
    { "exercise.moves-right-leg", "exercise.moves-right-arm" },
    { "exercise.moves-left-leg", "exercise.moves-left-arm" },
  };
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (telling->item));
  gboolean left;
  gboolean arm;

  if ((facts->aims & SW_SET (SW_AIM_STRETCH)) != 0 || !sw_figure_find_moving_limb (telling->figure, &left, &arm))
    return NULL;
  return sw_phrases_get (telling->composer->phrases, keys[left ? 1 : 0][arm ? 1 : 0]);
}

/* How many pictures there are at that width; they are numbered when there are several. */
static int
count_pictures (SwTelling *telling,
                double     width_pt)
{
  return sw_figure_count_pictures (telling->figure, width_pt, sw_part_measure_figure (telling, width_pt));
}

/* Whether the start is dashed in the one picture there is. */
static gboolean
has_dashes (SwTelling *telling)
{
  double width_pt = telling->figure_width_pt;

  return (sw_figure_get_signs (telling->figure, width_pt, sw_part_measure_figure (telling, width_pt))
          & SW_FIGURE_SIGN_START) != 0;
}

static const SwFigureContent *
get_content (SwTelling *telling)
{
  return sw_figure_spec_get_content (sw_exercise_get_figure (sw_item_get_exercise (telling->item)));
}

/* Whether the exercise says which step its pictures show, and the pages tell the steps. */
static gboolean
has_steps (SwTelling *telling)
{
  const SwFigureContent *content = get_content (telling);

  if (telling->composer->layout == SW_LAYOUT_COMPACT || telling->composer->layout == SW_LAYOUT_SUMMARY)
    return FALSE;
  for (int i = 0; i < content->n_poses; i++)
    if (content->poses[i].step > 0)
      return TRUE;

  return FALSE;
}

/* A picture without a step is the set-up when it is the first; another one is not told of. */
static void
take_step (SwTelling  *telling,
           GPtrArray  *sentences,
           int         picture,
           int         step,
           const char *step_key,
           const char *ready_key)
{
  SwPhrases *phrases = telling->composer->phrases;
  g_autofree char *n = sw_phrases_number (phrases, picture, 0);
  g_autofree char *nth_step = sw_phrases_number (phrases, step, 0);

  if (step > 0)
    g_ptr_array_add (sentences, sw_phrases_format (phrases, step_key, "n", n, "step", nth_step, NULL));
  else if (picture == 1 && ready_key != NULL)
    g_ptr_array_add (sentences, sw_phrases_format (phrases, ready_key, "n", n, NULL));
}

static void
take_steps (SwTelling *telling,
            GPtrArray *sentences,
            int        n_pictures)
{
  const SwFigureContent *content = get_content (telling);
  int last = content->n_poses - 1;

  if (n_pictures > 1)
    {
      for (int i = 0; i < content->n_poses; i++)
        take_step (telling, sentences, i + 1, content->poses[i].step, "caption.picture-step", "caption.picture-ready");
      return;
    }
  if (!has_dashes (telling))
    {
      take_step (telling, sentences, 1, content->poses[last].step, "caption.one-step", NULL);
      return;
    }
  take_step (telling, sentences, 1, content->poses[0].step, "caption.dashed-step", "caption.dashed-ready");
  take_step (telling, sentences, 2, content->poses[last].step, "caption.solid-step", NULL);
}

/* Where the way goes, for who is not told the steps. */
static const char *
get_way_key (const SwFigureContent *content,
             int                    n_pictures)
{
  if (n_pictures > 1 && content->hold)
    return "caption.go-and-hold";
  if (n_pictures > 1)
    return content->motion == SW_FIGURE_MOTION_THERE_AND_BACK ? "caption.go-and-back" : "caption.go";

  switch (content->motion)
    {
    case SW_FIGURE_MOTION_PRESS:
      return "caption.press";
    case SW_FIGURE_MOTION_CIRCLE:
      return "caption.circle";
    case SW_FIGURE_MOTION_STILL:
      return "caption.still";
    case SW_FIGURE_MOTION_THERE_AND_BACK:
    case SW_FIGURE_MOTION_ONE_WAY:
    case SW_FIGURE_MOTION_STEPS:
    default:
      if (content->hold)
        return "caption.move-and-hold";
      return content->motion == SW_FIGURE_MOTION_THERE_AND_BACK ? "caption.move-and-back" : "caption.move";
    }
}

static void
take_way (SwTelling *telling,
          GPtrArray *sentences,
          int        n_pictures)
{
  SwPhrases *phrases = telling->composer->phrases;
  g_autofree char *last = sw_phrases_number (phrases, n_pictures, 0);

  g_ptr_array_add (sentences, sw_phrases_format (phrases, get_way_key (get_content (telling), n_pictures), "n", last,
                                                 NULL));
}

/* Whoever works one side needs to know which one the picture shows, and which arm or leg moves then: on one leg, the
 * side that works is not the side that moves. More than two pictures may show both sides. */
static void
take_side (SwTelling *telling,
           GPtrArray *sentences)
{
  SwPhrases *phrases = telling->composer->phrases;
  SwSide worked = sw_item_get_dose (telling->item)->side;
  SwBodySide shown = find_shown_side (telling, worked);
  const char *moving = get_moving (telling);

  if (worked == SW_SIDE_BOTH)
    return;
  if (shown != SW_BODY_SIDE_NONE)
    g_ptr_array_add (sentences, g_strdup (sw_phrases_get (phrases, shown == SW_BODY_SIDE_RIGHT ? "caption.right-side"
                                                                                               : "caption.left-side")));
  if (moving != NULL)
    g_ptr_array_add (sentences, g_strdup (moving));
  if ((worked == SW_SIDE_EACH || worked == SW_SIDE_ALTERNATING) && get_content (telling)->n_poses <= 2)
    g_ptr_array_add (sentences, g_strdup (sw_phrases_get (phrases, "caption.other-side")));
}

/**
 * sw_part_add_caption:
 *
 * What the picture shows.
 */
void
sw_part_add_caption (SwFlow    *flow,
                     SwTelling *telling,
                     double     space_pt)
{
  SwComposer *self = flow->composer;
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = NULL;
  int n_pictures;

  if (telling->figure == NULL || !self->captions)
    return;

  n_pictures = count_pictures (telling, telling->figure_width_pt);
  if (has_steps (telling))
    take_steps (telling, sentences, n_pictures);
  else
    take_way (telling, sentences, n_pictures);
  if (self->layout != SW_LAYOUT_SUMMARY)
    take_side (telling, sentences);

  g_ptr_array_add (sentences, NULL);
  text = sw_phrases_sentences (self->phrases, (const char *const *) sentences->pdata);
  if (flow->y_pt > 0.0)
    sw_flow_space (flow, space_pt);
  sw_flow_text_in (flow, SW_TEXT_SMALL, "P", text);
}

/**
 * sw_telling_dup_steps:
 *
 * Returns: (transfer full): the steps, each with the number of the picture that shows it where pictures are numbered
 */
char **
sw_telling_dup_steps (SwTelling *telling)
{
  SwPhrases *phrases = telling->composer->phrases;
  char **steps = g_strdupv (telling->text->steps);
  const SwFigureContent *content;

  if (telling->figure == NULL || !has_steps (telling) || count_pictures (telling, telling->figure_width_pt) < 2)
    return steps;

  content = get_content (telling);
  for (int i = 0; i < (int) g_strv_length (steps); i++)
    for (int pose = content->n_poses - 1; pose >= 0; pose--)
      if (content->poses[pose].step == i + 1)
        {
          g_autofree char *step = g_steal_pointer (&steps[i]);
          g_autofree char *n = sw_phrases_number (phrases, pose + 1, 0);

          steps[i] = sw_phrases_format (phrases, "caption.in-step", "step", step, "n", n, NULL);
          break;
        }

  return steps;
}
