/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An entry of the catalogue. Immutable, so that threads and programmes can share it. */
#include "config.h"

#include <string.h>

#include "sw-exercise.h"

#include "sw-fields.h"

struct _SwExercise
{
  GObject parent_instance;

  SwExerciseFacts facts;
  GPtrArray *texts;
  SwFigureSpec *figure;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwExercise, sw_exercise, G_TYPE_OBJECT)

static void
sw_exercise_finalize (GObject *object)
{
  SwExercise *self = SW_EXERCISE (object);

  g_free (self->facts.id);
  g_free (self->facts.dose_reason);
  g_free (self->facts.review_due);
  g_strfreev (self->facts.easier);
  g_strfreev (self->facts.harder);
  g_ptr_array_unref (self->texts);
  g_clear_pointer (&self->figure, sw_figure_spec_unref);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_exercise_parent_class)->finalize (object);
}

static void
sw_exercise_class_init (SwExerciseClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_exercise_finalize;
}

static void
sw_exercise_init (SwExercise *self)
{
  sw_field_set_strv (&self->facts.easier, NULL);
  sw_field_set_strv (&self->facts.harder, NULL);
}

/**
 * sw_exercise_text_new:
 * @language: BCP 47 tag
 *
 * Returns: (transfer full): a text without words: empty strings and lists, NULL where that is allowed
 */
SwExerciseText *
sw_exercise_text_new (const char *language)
{
  SwExerciseText *text = g_new0 (SwExerciseText, 1);

  sw_field_set_string (&text->language, language);
  sw_field_set_string (&text->name, "");
  sw_field_set_string (&text->purpose, "");
  sw_field_set_string (&text->set_up, "");
  sw_field_set_strv (&text->synonyms, NULL);
  sw_field_set_strv (&text->steps, NULL);
  sw_field_set_strv (&text->form_points, NULL);
  sw_field_set_strv (&text->errors, NULL);
  return text;
}

/**
 * sw_exercise_text_free:
 * @text: (transfer full) (nullable): a text
 */
void
sw_exercise_text_free (SwExerciseText *text)
{
  if (text == NULL)
    return;

  g_free (text->language);
  g_free (text->name);
  g_strfreev (text->synonyms);
  g_free (text->purpose);
  g_free (text->set_up);
  g_strfreev (text->steps);
  g_strfreev (text->form_points);
  g_strfreev (text->errors);
  g_free (text->easier);
  g_free (text->harder);
  g_free (text->feel);
  g_free (text);
}

/**
 * sw_exercise_new:
 * @facts: what is the same in all languages; copied, its strings too; NULL lists count as empty
 * @texts: (element-type SwExerciseText) (transfer none): at least one text. The array is kept by reference
 *   and must not change any more; its free function must be sw_exercise_text_free()
 * @figure: (nullable) (transfer none): how to draw it
 * @extras: (nullable) (array zero-terminated=1): unknown XML to keep
 *
 * Returns: (transfer full): a new exercise
 */
SwExercise *
sw_exercise_new (const SwExerciseFacts *facts,
                 GPtrArray             *texts,
                 SwFigureSpec          *figure,
                 const char * const    *extras)
{
  SwExercise *self;
  char **no_easier, **no_harder;

  g_return_val_if_fail (facts != NULL && facts->id != NULL, NULL);
  g_return_val_if_fail (texts != NULL && texts->len > 0, NULL);

  self = g_object_new (SW_TYPE_EXERCISE, NULL);
  no_easier = self->facts.easier;
  no_harder = self->facts.harder;
  self->facts = *facts;
  self->facts.id = g_strdup (facts->id);
  self->facts.dose_reason = g_strdup (facts->dose_reason);
  self->facts.review_due = g_strdup (facts->review_due != NULL ? facts->review_due : "");
  self->facts.easier = no_easier;
  self->facts.harder = no_harder;
  sw_field_set_strv (&self->facts.easier, (const char * const *) facts->easier);
  sw_field_set_strv (&self->facts.harder, (const char * const *) facts->harder);
  self->texts = g_ptr_array_ref (texts);
  self->figure = figure != NULL ? sw_figure_spec_ref (figure) : NULL;
  sw_field_set_strv (&self->extras, extras);
  return self;
}

/**
 * sw_exercise_get_facts:
 * @self: an exercise
 *
 * Returns: (transfer none): what is the same in all languages
 */
const SwExerciseFacts *
sw_exercise_get_facts (SwExercise *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);

  return &self->facts;
}

/**
 * sw_exercise_get_id:
 * @self: an exercise
 *
 * Returns: (transfer none): its id, also its file name without the ending
 */
const char *
sw_exercise_get_id (SwExercise *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);

  return self->facts.id;
}

/**
 * sw_exercise_get_n_texts:
 * @self: an exercise
 *
 * Returns: in how many languages it is written; at least 1
 */
guint
sw_exercise_get_n_texts (SwExercise *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), 0);

  return self->texts->len;
}

/**
 * sw_exercise_get_nth_text:
 * @self: an exercise
 * @n: below sw_exercise_get_n_texts()
 *
 * Returns: (transfer none): the text, in the order of the document
 */
const SwExerciseText *
sw_exercise_get_nth_text (SwExercise *self,
                          guint       n)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);
  g_return_val_if_fail (n < self->texts->len, NULL);

  return g_ptr_array_index (self->texts, n);
}

/* Length of the first subtag, "pt" of "pt-BR". */
static gsize
primary_length (const char *language)
{
  return strcspn (language, "-_");
}

static const SwExerciseText *
find_text (SwExercise *self,
           const char *language,
           gboolean    primary_only)
{
  for (guint i = 0; i < self->texts->len; i++)
    {
      const SwExerciseText *text = g_ptr_array_index (self->texts, i);
      gsize length = primary_length (language);

      if (g_ascii_strcasecmp (text->language, language) == 0)
        return text;
      if (primary_only && length == primary_length (text->language)
          && g_ascii_strncasecmp (text->language, language, length) == 0)
        return text;
    }

  return NULL;
}

/**
 * sw_exercise_get_text:
 * @self: an exercise
 * @language: (nullable): BCP 47 tag
 *
 * The text in exactly @language, else in the same language of another country, else in English, else the
 * first there is. Compare its language with the wanted one where the difference matters.
 *
 * Returns: (transfer none): a text; never NULL
 */
const SwExerciseText *
sw_exercise_get_text (SwExercise *self,
                      const char *language)
{
  const SwExerciseText *text = NULL;

  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);

  if (language != NULL && *language != '\0')
    {
      text = find_text (self, language, FALSE);
      if (text == NULL)
        text = find_text (self, language, TRUE);
    }
  if (text == NULL)
    text = find_text (self, "en", TRUE);

  return text != NULL ? text : g_ptr_array_index (self->texts, 0);
}

/**
 * sw_exercise_get_figure:
 * @self: an exercise
 *
 * Returns: (transfer none) (nullable): how to draw it
 */
SwFigureSpec *
sw_exercise_get_figure (SwExercise *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);

  return self->figure;
}

/**
 * sw_exercise_get_drawn_side:
 * @self: an exercise
 *
 * Returns: which one side its picture is drawn for, none when it is for both, or there is none
 */
SwBodySide
sw_exercise_get_drawn_side (SwExercise *self)
{
  const SwFigureContent *content;
  gboolean right = FALSE;
  gboolean left = FALSE;

  g_return_val_if_fail (SW_IS_EXERCISE (self), SW_BODY_SIDE_NONE);

  if (self->figure == NULL)
    return SW_BODY_SIDE_NONE;

  content = sw_figure_spec_get_content (self->figure);
  for (int i = 0; i < content->n_works; i++)
    {
      right = right || content->works[i].right;
      left = left || content->works[i].left;
    }

  if (right == left)
    return SW_BODY_SIDE_NONE;
  return right ? SW_BODY_SIDE_RIGHT : SW_BODY_SIDE_LEFT;
}

/**
 * sw_exercise_is_mirrored_for:
 * @self: an exercise
 * @worked: how the sides share its work
 *
 * Returns: whether a client sees its picture mirrored: who works one side alone sees that side
 */
gboolean
sw_exercise_is_mirrored_for (SwExercise *self,
                             SwSide      worked)
{
  SwBodySide drawn;

  g_return_val_if_fail (SW_IS_EXERCISE (self), FALSE);

  if (self->figure == NULL)
    return FALSE;

  drawn = sw_exercise_get_drawn_side (self);
  if (worked == SW_SIDE_LEFT)
    return drawn != SW_BODY_SIDE_LEFT;
  return worked == SW_SIDE_RIGHT && drawn == SW_BODY_SIDE_LEFT;
}

/**
 * sw_exercise_get_extras:
 * @self: an exercise
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_exercise_get_extras (SwExercise *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE (self), NULL);

  return (const char * const *) self->extras;
}

static gboolean
text_equal (const SwExerciseText *a,
            const SwExerciseText *b)
{
  return g_str_equal (a->language, b->language) && g_str_equal (a->name, b->name)
         && g_str_equal (a->purpose, b->purpose) && g_str_equal (a->set_up, b->set_up)
         && g_strcmp0 (a->easier, b->easier) == 0 && g_strcmp0 (a->harder, b->harder) == 0
         && g_strcmp0 (a->feel, b->feel) == 0
         && g_strv_equal ((const char * const *) a->synonyms, (const char * const *) b->synonyms)
         && g_strv_equal ((const char * const *) a->steps, (const char * const *) b->steps)
         && g_strv_equal ((const char * const *) a->form_points, (const char * const *) b->form_points)
         && g_strv_equal ((const char * const *) a->errors, (const char * const *) b->errors);
}

static gboolean
facts_equal (const SwExerciseFacts *a,
             const SwExerciseFacts *b)
{
  SwDose dose_a = a->dose, dose_b = b->dose;

  /* The load limits are compared as a dose compares its load. */
  if (!sw_dose_equal (&dose_a, &dose_b))
    return FALSE;
  dose_a.load = a->load_limit;
  dose_b.load = b->load_limit;

  return sw_dose_equal (&dose_a, &dose_b)
         && g_str_equal (a->id, b->id) && a->revision == b->revision && a->region == b->region
         && a->position == b->position && a->equipment == b->equipment && a->aims == b->aims
         && a->muscles == b->muscles && a->cautions == b->cautions && a->directions == b->directions
         && g_strcmp0 (a->dose_reason, b->dose_reason) == 0
         && a->has_review == b->has_review && (!a->has_review || a->review == b->review)
         && g_str_equal (a->review_due, b->review_due)
         && a->section == b->section && a->pace_s >= b->pace_s && a->pace_s <= b->pace_s
         && g_strv_equal ((const char * const *) a->easier, (const char * const *) b->easier)
         && g_strv_equal ((const char * const *) a->harder, (const char * const *) b->harder);
}

static gboolean
figure_equal (SwFigureSpec *a,
              SwFigureSpec *b)
{
  if (a == NULL || b == NULL)
    return a == b;

  return sw_figure_spec_equal (a, b);
}

/**
 * sw_exercise_equal:
 * @a: an exercise
 * @b: another
 *
 * Returns: whether both would be written as the same document
 */
gboolean
sw_exercise_equal (SwExercise *a,
                   SwExercise *b)
{
  g_return_val_if_fail (SW_IS_EXERCISE (a), FALSE);
  g_return_val_if_fail (SW_IS_EXERCISE (b), FALSE);

  if (a == b)
    return TRUE;
  if (!facts_equal (&a->facts, &b->facts) || !figure_equal (a->figure, b->figure)
      || a->texts->len != b->texts->len
      || !g_strv_equal ((const char * const *) a->extras, (const char * const *) b->extras))
    return FALSE;

  for (guint i = 0; i < a->texts->len; i++)
    {
      if (!text_equal (g_ptr_array_index (a->texts, i), g_ptr_array_index (b->texts, i)))
        return FALSE;
    }

  return TRUE;
}
