/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parts of an exercise: picture, dose, steps and what else a client needs. Each can stand in any column. */
#include "config.h"

#include <string.h>

#include "sw-care-limits.h"
#include "sw-care.h"
#include "sw-compose.h"
#include "sw-note-words.h"
#include "sw-telling.h"

#define TALLEST_FIGURE 1.25

/* White space before a part, except at the top of a block. */
static void
add_gap (SwFlow *flow,
         double  space_pt)
{
  if (flow->y_pt > 0.0)
    sw_flow_space (flow, space_pt);
}

/* A small bold label that says what follows. */
static void
add_label (SwFlow     *flow,
           SwTelling  *telling,
           const char *key,
           double      space_pt)
{
  SwComposer *self = flow->composer;

  add_gap (flow, space_pt);
  sw_flow_text_in (flow, telling->role == SW_TEXT_BODY ? SW_TEXT_STRONG : SW_TEXT_LABEL, "P",
                   sw_phrases_get (self->phrases, key));
}

/* A label and, on the same line, what the exercise says. */
static void
add_labelled (SwFlow     *flow,
              SwTelling  *telling,
              const char *key,
              const char *text,
              double      space_pt)
{
  SwComposer *self = flow->composer;

  if (!sw_text_is_set (text))
    return;
  add_gap (flow, space_pt);
  flow->composer->text_language = telling->language;
  sw_flow_text (flow, telling->role, sw_tags_add (&self->tags, self->parent, "P"),
                sw_phrases_get (self->phrases, key), text);
  flow->composer->text_language = NULL;
}

/* How much larger than its usual size the picture is drawn. */
static double
get_zoom (const SwComposer *self,
          double            width_pt)
{
  return MAX (width_pt / self->style.figure_width_pt, 1.0);
}

/**
 * sw_part_measure_figure:
 * @width_pt: how wide the picture is
 *
 * Returns: how tall sw_part_add_figure() draws it, caption left out
 */
double
sw_part_measure_figure (SwTelling *telling,
                        double     width_pt)
{
  double zoom = get_zoom (telling->composer, width_pt);
  double height_pt = 0.0;

  sw_figure_measure (telling->figure, width_pt / zoom, &height_pt);
  return MIN (zoom * height_pt, TALLEST_FIGURE * width_pt);
}

/**
 * sw_part_add_figure:
 *
 * The picture, without its caption.
 */
void
sw_part_add_figure (SwFlow    *flow,
                    SwTelling *telling)
{
  SwComposer *self = flow->composer;
  double width_pt = MIN (flow->width_pt, telling->figure_width_pt);
  double height_pt = sw_part_measure_figure (telling, width_pt);
  SwTag *tag = sw_tags_add (&self->tags, self->parent, "Figure");
  SwPiece *piece;

  if (!self->measures)
    tag->alt = sw_figure_dup_text (telling->figure, self->phrases);
  piece = sw_block_add (flow->block, SW_PIECE_FIGURE, tag, flow->left_pt, flow->y_pt, width_pt, height_pt);
  piece->figure = g_object_ref (telling->figure);
  piece->zoom = get_zoom (self, width_pt);
  flow->y_pt += height_pt;
}

/**
 * sw_part_add_dose:
 *
 * How much: the one thing to find again at a glance, on a pale panel.
 */
void
sw_part_add_dose (SwFlow    *flow,
                  SwTelling *telling)
{
  SwComposer *self = flow->composer;
  double pad_pt = 0.6 * self->style.body_pt;
  const SwDoseWords *words = sw_compose_dose (self, telling->item, sw_client_get_units (telling->client));
  g_autofree char *details = sw_dose_words_join_details (words, self->phrases, FALSE);
  guint panel_index = flow->block->pieces->len;
  SwFlow inner = *flow;
  SwPiece *panel;

  sw_flow_box (flow, flow->left_pt, flow->y_pt, flow->width_pt, 0.0, self->style.panel_grey);
  inner.left_pt += pad_pt;
  inner.width_pt -= 2.0 * pad_pt;
  inner.y_pt += 0.5 * pad_pt;
  sw_flow_text_in (&inner, SW_TEXT_AMOUNT, "P", words->amount);
  if (*details != '\0')
    sw_flow_text_in (&inner, telling->role, "P", details);
  inner.y_pt += 0.5 * pad_pt;

  panel = &g_array_index (flow->block->pieces, SwPiece, panel_index);
  panel->height_pt = inner.y_pt - flow->y_pt;
  panel->radius_pt = 3.0;
  flow->y_pt = inner.y_pt;
}

/**
 * sw_part_add_dose_apart:
 *
 * The same with white space before it.
 */
void
sw_part_add_dose_apart (SwFlow    *flow,
                        SwTelling *telling,
                        double     space_pt)
{
  add_gap (flow, space_pt);
  sw_part_add_dose (flow, telling);
}

/**
 * sw_part_add_amount:
 *
 * How much, without the limits.
 */
void
sw_part_add_amount (SwFlow    *flow,
                    SwTelling *telling,
                    double     space_pt)
{
  SwComposer *self = flow->composer;
  const SwDoseWords *words = sw_compose_dose (self, telling->item, sw_client_get_units (telling->client));

  add_gap (flow, space_pt);
  sw_flow_text_in (flow, SW_TEXT_STRONG, "P", words->amount);
}

/**
 * sw_part_add_short_limits:
 *
 * Rest, hold and limits in few words.
 */
void
sw_part_add_short_limits (SwFlow    *flow,
                          SwTelling *telling,
                          double     space_pt)
{
  SwComposer *self = flow->composer;
  const SwDoseWords *words = sw_compose_dose (self, telling->item, sw_client_get_units (telling->client));
  g_autofree char *text = sw_dose_words_join_details (words, self->phrases, TRUE);

  if (*text == '\0')
    return;
  add_gap (flow, space_pt);
  sw_flow_text_in (flow, telling->role, "P", text);
}

/**
 * sw_part_add_set_up:
 *
 * How to get ready.
 */
void
sw_part_add_set_up (SwFlow    *flow,
                    SwTelling *telling,
                    double     space_pt)
{
  add_labelled (flow, telling, "exercise.set-up", telling->text->set_up, space_pt);
}

/**
 * sw_part_add_steps:
 *
 * What to do, numbered.
 */
void
sw_part_add_steps (SwFlow    *flow,
                   SwTelling *telling,
                   double     space_pt)
{
  SwComposer *self = flow->composer;
  g_auto (GStrv) steps = sw_telling_dup_steps (telling);
  SwTag *list;

  if (steps[0] == NULL)
    return;

  list = sw_tags_add (&self->tags, self->parent, "L");
  list->numbering = "Decimal";
  for (guint i = 0; steps[i] != NULL; i++)
    {
      add_gap (flow, i == 0 ? space_pt : 0.1 * self->style.body_pt);
      flow->composer->text_language = telling->language;
      sw_flow_numbered_item (flow, telling->steps_role, list, (int) i + 1, steps[i]);
      flow->composer->text_language = NULL;
    }
}

static void
add_list (SwFlow             *flow,
          SwTelling          *telling,
          const char         *key,
          SwSymbol            symbol,
          const char * const *texts,
          double              space_pt)
{
  if (texts[0] == NULL)
    return;
  add_label (flow, telling, key, space_pt);
  flow->composer->text_language = telling->language;
  sw_flow_list (flow, telling->role, symbol, texts);
  flow->composer->text_language = NULL;
}

/**
 * sw_part_add_feel:
 *
 * Where to feel it.
 */
void
sw_part_add_feel (SwFlow    *flow,
                  SwTelling *telling,
                  double     space_pt)
{
  add_labelled (flow, telling, "exercise.feel", telling->text->feel, space_pt);
}

/**
 * sw_part_add_form:
 *
 * What doing it right looks like.
 */
void
sw_part_add_form (SwFlow    *flow,
                  SwTelling *telling,
                  double     space_pt)
{
  add_list (flow, telling, "exercise.form", SW_SYMBOL_TICK, (const char *const *) telling->text->form_points,
            space_pt);
}

/**
 * sw_part_add_errors:
 *
 * What often goes wrong, and what to do instead.
 */
void
sw_part_add_errors (SwFlow    *flow,
                    SwTelling *telling,
                    double     space_pt)
{
  if (sw_composer_shows (flow->composer, SW_PAGE_PART_MISTAKES))
    add_list (flow, telling, "exercise.errors", SW_SYMBOL_CROSS, (const char *const *) telling->text->errors, space_pt);
}

/**
 * sw_part_add_easier:
 *
 * What to do when it is too hard.
 */
void
sw_part_add_easier (SwFlow    *flow,
                    SwTelling *telling,
                    double     space_pt)
{
  if (sw_composer_shows (flow->composer, SW_PAGE_PART_WAYS))
    add_labelled (flow, telling, "exercise.easier", telling->text->easier, space_pt);
}

/**
 * sw_telling_tells_harder:
 *
 * Returns: whether the client may make it harder: the therapist's rule, where there is one, has to name that part
 */
gboolean
sw_telling_tells_harder (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  const char *rule = sw_programme_get_progress (self->programme);

  return *rule == '\0' || strstr (rule, sw_phrases_get (self->phrases, "exercise.harder")) != NULL;
}

/**
 * sw_part_add_ways:
 *
 * What to do when it is too hard or too easy.
 */
void
sw_part_add_ways (SwFlow    *flow,
                  SwTelling *telling,
                  double     space_pt)
{
  if (!sw_composer_shows (flow->composer, SW_PAGE_PART_WAYS))
    return;

  sw_part_add_easier (flow, telling, space_pt);
  if (!sw_telling_tells_harder (telling))
    return;
  add_labelled (flow, telling, "exercise.harder", telling->text->harder,
                sw_text_is_set (telling->text->easier) ? 0.1 * flow->composer->style.body_pt : space_pt);
}

/**
 * sw_part_add_note:
 *
 * What the therapist says to this client: set apart by a thin frame and a speech bubble.
 */
void
sw_part_add_note (SwFlow    *flow,
                  SwTelling *telling,
                  double     space_pt)
{
  g_autofree char *note = sw_note_words (flow->composer->phrases, flow->composer->programme, telling->item);

  if (!sw_text_is_set (note))
    return;
  add_gap (flow, space_pt);
  if (flow->composer->layout == SW_LAYOUT_COMPACT)
    sw_flow_signed (flow, SW_SYMBOL_NOTE, telling->role, sw_phrases_get (flow->composer->phrases, "exercise.note"), note);
  else
    sw_flow_boxed (flow, SW_SYMBOL_NOTE, SW_NOTE_FRAME_PT, SW_TEXT_BODY,
                   sw_phrases_get (flow->composer->phrases, "exercise.note"), note);
}

/**
 * sw_telling_dup_care:
 *
 * Returns: (transfer full): what to take care of, for this client with this exercise; "" for nothing
 */
char *
sw_telling_dup_care (SwTelling *telling)
{
  SwPhrases *phrases = telling->composer->phrases;
  SwExercise *exercise = sw_item_get_exercise (telling->item);
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  GListModel *set = G_LIST_MODEL (sw_programme_get_limits (telling->composer->programme));
  g_auto (GStrv) limits = sw_care_limit_words (phrases, set, exercise, sw_item_get_dose (telling->item),
                                               sw_client_get_units (telling->client));
  g_auto (GStrv) care = sw_care_words (phrases, sw_client_get_precautions (telling->client),
                                       sw_exercise_get_facts (exercise)->cautions);
  g_auto (GStrv) words = NULL;

  g_strv_builder_addv (all, (const char **) limits);
  g_strv_builder_addv (all, (const char **) care);
  words = g_strv_builder_end (all);
  return sw_phrases_sentences (phrases, (const char *const *) words);
}

/**
 * sw_part_add_care:
 *
 * What to take care of, for this client with this exercise.
 */
void
sw_part_add_care (SwFlow    *flow,
                  SwTelling *telling,
                  double     space_pt)
{
  g_autofree char *text = sw_telling_dup_care (telling);

  if (!sw_text_is_set (text))
    return;
  add_gap (flow, space_pt);
  sw_flow_boxed (flow, SW_SYMBOL_TAKE_CARE, SW_CARE_FRAME_PT, telling->role,
                 sw_phrases_get (flow->composer->phrases, "care.heading"), text);
}
