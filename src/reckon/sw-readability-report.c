/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How hard a text is to read, and which sentences make it so: those without which its value would be the better one,
 * the greatest difference first. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-readability-report.h"
#include "sw-sentence.h"

static void
sw_readability_sentence_free (SwReadabilitySentence *sentence)
{
  g_free (sentence->text);
  g_clear_object (&sentence->item);
  g_free (sentence);
}

static SwReadabilityReport *
new_report (const SwReadabilityScale *scale)
{
  SwReadabilityReport *self = g_new0 (SwReadabilityReport, 1);

  self->scale = scale;
  self->sentences = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_readability_sentence_free);
  return self;
}

static void
add_sentence (SwReadabilityReport *self,
              SwItem              *item,
              SwReadabilityField   field,
              guint                number,
              char                *text,
              guint                index,
              const SwReadability *counts)
{
  SwReadabilitySentence *sentence = g_new0 (SwReadabilitySentence, 1);

  sentence->text = text;
  sentence->index = index;
  sentence->counts = *counts;
  sentence->item = item != NULL ? g_object_ref (item) : NULL;
  sentence->field = field;
  sentence->number = number;
  g_ptr_array_add (self->sentences, sentence);
  sw_readability_add (&self->counts, counts);
}

static void
read_text (SwReadabilityReport *self,
           SwItem              *item,
           SwReadabilityField   field,
           guint                number,
           const char          *text)
{
  while (text != NULL)
    {
      SwReadability counts = { 0 };
      char *words = sw_sentence_take (&text, self->scale, &counts);

      if (words == NULL)
        return;

      add_sentence (self, item, field, number, words, self->sentences->len, &counts);
    }
}

static void
read_list (SwReadabilityReport *self,
           SwItem              *item,
           SwReadabilityField   field,
           char               **texts)
{
  for (guint i = 0; texts[i] != NULL; i++)
    read_text (self, item, field, i + 1, texts[i]);
}

static void
read_exercise (SwReadabilityReport  *self,
               SwItem               *item,
               const SwExerciseText *text)
{
  read_text (self, item, SW_READABILITY_PURPOSE, 0, text->purpose);
  read_text (self, item, SW_READABILITY_SET_UP, 0, text->set_up);
  read_list (self, item, SW_READABILITY_STEP, text->steps);
  read_list (self, item, SW_READABILITY_FORM_POINT, text->form_points);
  read_list (self, item, SW_READABILITY_ERROR, text->errors);
  read_text (self, item, SW_READABILITY_FEEL, 0, text->feel);
  read_text (self, item, SW_READABILITY_EASIER, 0, text->easier);
  read_text (self, item, SW_READABILITY_HARDER, 0, text->harder);
}

/* What was counted in an exercise's words, in their order. */
typedef struct
{
  const SwExerciseText *text;
  SwReadabilityReport *counted;
} KnownText;

static void
known_text_free (gpointer data)
{
  KnownText *known = data;

  sw_readability_report_free (known->counted);
  g_free (known);
}

/* An exercise never changes: its words are counted once and not again at every key stroke. */
static const SwReadabilityReport *
get_counted (SwExercise               *exercise,
             const SwExerciseText     *text,
             const SwReadabilityScale *scale)
{
  static GQuark quark = 0;
  KnownText *known;

  if (quark == 0)
    quark = g_quark_from_static_string ("sw-readability-report");
  known = g_object_get_qdata (G_OBJECT (exercise), quark);
  if (known == NULL || known->text != text)
    {
      known = g_new0 (KnownText, 1);
      known->text = text;
      known->counted = new_report (scale);
      read_exercise (known->counted, NULL, text);
      g_object_set_qdata_full (G_OBJECT (exercise), quark, known, known_text_free);
    }

  return known->counted;
}

static void
add_counted (SwReadabilityReport       *self,
             SwItem                    *item,
             const SwReadabilityReport *counted)
{
  for (guint i = 0; i < counted->sentences->len; i++)
    {
      const SwReadabilitySentence *sentence = counted->sentences->pdata[i];

      add_sentence (self, item, sentence->field, sentence->number, g_strdup (sentence->text), self->sentences->len,
                    &sentence->counts);
    }
}

static int
compare_sentences (gconstpointer a,
                   gconstpointer b)
{
  const SwReadabilitySentence *first = *(const SwReadabilitySentence *const *) a;
  const SwReadabilitySentence *second = *(const SwReadabilitySentence *const *) b;

  return (first->adds < second->adds) - (first->adds > second->adds);
}

static void
complete (SwReadabilityReport *self)
{
  self->value = self->scale->reckon (&self->counts);
  for (guint i = 0; self->sentences->len > 1 && i < self->sentences->len; i++)
    {
      SwReadabilitySentence *sentence = self->sentences->pdata[i];
      SwReadability rest = self->counts;

      sw_readability_subtract (&rest, &sentence->counts);
      sentence->adds = self->value - self->scale->reckon (&rest);
      if (self->scale->higher_is_easier)
        sentence->adds = -sentence->adds;
    }
  /* A stable sort: equal ones stay in the order of the text. */
  g_ptr_array_sort (self->sentences, compare_sentences);
}

/**
 * sw_readability_report_new_for_text:
 * @text: the words of an exercise
 *
 * Returns: (transfer full) (nullable): how hard they are to read; NULL when nothing can be counted in their language
 */
SwReadabilityReport *
sw_readability_report_new_for_text (const SwExerciseText *text)
{
  const SwReadabilityScale *scale = sw_readability_scale_get (text->language);
  SwReadabilityReport *self;

  if (scale == NULL)
    return NULL;

  self = new_report (scale);
  read_exercise (self, NULL, text);
  complete (self);
  return self;
}

/* Texts without a formula share a scale and are no more alike for it. */
static gboolean
is_same_language (const char *a,
                  const char *b)
{
  gsize length = strcspn (a, "-_");

  return strcspn (b, "-_") == length && g_ascii_strncasecmp (a, b, length) == 0;
}

/* An exercise that comes again is the same to read. */
static void
read_items (SwReadabilityReport *self,
            const char          *language,
            GListModel          *items,
            GHashTable          *seen)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      SwExercise *exercise = sw_item_get_exercise (item);

      if (exercise != NULL && g_hash_table_add (seen, (gpointer) sw_exercise_get_id (exercise)))
        {
          const SwExerciseText *text = sw_exercise_get_text (exercise, language);

          if (is_same_language (text->language, language))
            add_counted (self, item, get_counted (exercise, text, self->scale));
          else
            self->n_other++;
        }
      if (sw_item_get_kind (item) == SW_ITEM_SELF_CHECK)
        read_text (self, item, SW_READABILITY_QUESTION, 0, sw_item_get_title (item));
      read_text (self, item, SW_READABILITY_NOTE, 0, sw_item_get_note (item));
      read_items (self, language, G_LIST_MODEL (sw_item_get_items (item)), seen);
    }
}

/**
 * sw_readability_report_new_for_programme:
 * @programme: a programme
 *
 * Reads what is written for this client: each exercise once, in the client's language, and the therapist's notes.
 *
 * Returns: (transfer full) (nullable): how hard it is to read; NULL when nothing is written in the client's language,
 *   or nothing can be counted in it
 */
SwReadabilityReport *
sw_readability_report_new_for_programme (SwProgramme *programme)
{
  const char *language = sw_client_get_language (sw_programme_get_client (programme));
  const SwReadabilityScale *scale = sw_readability_scale_get (language);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (SwReadabilityReport) self = NULL;
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));

  if (scale == NULL)
    return NULL;

  self = new_report (scale);
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

      for (guint j = 0; j < g_list_model_get_n_items (sections); j++)
        {
          g_autoptr (SwSection) section = g_list_model_get_item (sections, j);

          read_items (self, language, G_LIST_MODEL (sw_section_get_items (section)), seen);
        }
    }
  if (self->sentences->len == 0)
    return NULL;

  complete (self);
  return g_steal_pointer (&self);
}

/* An exercise's sentences follow each other, so that any of them tells its place. */
static int
compare_parts (gconstpointer a,
               gconstpointer b)
{
  const SwReadabilityReport *first = *(const SwReadabilityReport *const *) a;
  const SwReadabilityReport *second = *(const SwReadabilityReport *const *) b;
  guint first_index = ((const SwReadabilitySentence *) first->sentences->pdata[0])->index;
  guint second_index = ((const SwReadabilitySentence *) second->sentences->pdata[0])->index;

  return (first_index > second_index) - (first_index < second_index);
}

static SwReadabilityReport *
find_part (GPtrArray *parts,
           SwItem    *item)
{
  for (guint i = 0; i < parts->len; i++)
    {
      SwReadabilityReport *part = parts->pdata[i];

      if (((const SwReadabilitySentence *) part->sentences->pdata[0])->item == item)
        return part;
    }

  return NULL;
}

/**
 * sw_readability_report_split:
 * @self: the report of a programme
 *
 * Returns: (transfer full) (element-type SwReadabilityReport): a report for each exercise, in the order
 *   of the programme
 */
GPtrArray *
sw_readability_report_split (const SwReadabilityReport *self)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_readability_report_free);

  for (guint i = 0; i < self->sentences->len; i++)
    {
      const SwReadabilitySentence *sentence = self->sentences->pdata[i];
      SwReadabilityReport *part;

      if (sw_item_get_exercise (sentence->item) == NULL)
        continue;

      part = find_part (parts, sentence->item);
      if (part == NULL)
        {
          part = new_report (self->scale);
          g_ptr_array_add (parts, part);
        }
      add_sentence (part, sentence->item, sentence->field, sentence->number, g_strdup (sentence->text),
                    sentence->index, &sentence->counts);
    }
  g_ptr_array_sort (parts, compare_parts);
  for (guint i = 0; i < parts->len; i++)
    complete (parts->pdata[i]);

  return parts;
}

/**
 * sw_readability_report_free:
 * @self: (transfer full) (nullable): a report
 */
void
sw_readability_report_free (SwReadabilityReport *self)
{
  if (self == NULL)
    return;

  g_ptr_array_unref (self->sentences);
  g_free (self);
}

/**
 * sw_readability_report_is_hard:
 *
 * Returns: whether simpler words are asked for
 */
gboolean
sw_readability_report_is_hard (const SwReadabilityReport *self)
{
  return self->counts.words > 0 && sw_readability_scale_is_hard (self->scale, self->value);
}

/**
 * sw_readability_report_get_n_hardest:
 *
 * Returns: how many of the first sentences are worth naming: at most %SW_READABILITY_N_HARDEST, and only such as make
 *   the text harder; an only sentence is named
 */
guint
sw_readability_report_get_n_hardest (const SwReadabilityReport *self)
{
  guint n = 0;

  if (self->sentences->len == 1)
    return 1;

  while (n < MIN (self->sentences->len, SW_READABILITY_N_HARDEST)
         && ((const SwReadabilitySentence *) self->sentences->pdata[n])->adds > 0.0)
    n++;

  return n;
}

/**
 * sw_readability_report_describe:
 *
 * Returns: (transfer full): the value on its scale and the aim, as part of a sentence
 */
char *
sw_readability_report_describe (const SwReadabilityReport *self)
{
  g_autofree char *value = sw_readability_scale_describe (self->scale, self->value);
  g_autofree char *aim = sw_readability_scale_describe_aim (self->scale);

  /* Translators: how hard a text is to read, then where that should be */
  return g_strdup_printf (_ ("%s; %s"), value, aim);
}

/* "step 2" */
static char *
dup_field (const SwReadabilitySentence *sentence)
{
  switch (sentence->field)
    {
    case SW_READABILITY_PURPOSE:
      return g_strdup (_ ("what it is for"));
    case SW_READABILITY_SET_UP:
      return g_strdup (_ ("set-up"));
    case SW_READABILITY_STEP:
      return g_strdup_printf (_ ("step %u"), sentence->number);
    case SW_READABILITY_FORM_POINT:
      return g_strdup_printf (_ ("form point %u"), sentence->number);
    case SW_READABILITY_ERROR:
      return g_strdup_printf (_ ("common error %u"), sentence->number);
    case SW_READABILITY_FEEL:
      return g_strdup (_ ("where it is felt"));
    case SW_READABILITY_EASIER:
      return g_strdup (_ ("to make it easier"));
    case SW_READABILITY_HARDER:
      return g_strdup (_ ("to make it harder"));
    case SW_READABILITY_QUESTION:
      return g_strdup (_ ("question"));
    case SW_READABILITY_NOTE:
    default:
      return g_strdup (_ ("note to the client"));
    }
}

/**
 * sw_readability_report_dup_hardest:
 *
 * Returns: (transfer full): the hardest sentences in quotation marks, each with the place where it stands
 */
GStrv
sw_readability_report_dup_hardest (const SwReadabilityReport *self)
{
  guint n = sw_readability_report_get_n_hardest (self);
  g_autoptr (GPtrArray) lines = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    {
      const SwReadabilitySentence *sentence = self->sentences->pdata[i];
      g_autofree char *field = dup_field (sentence);
      g_autofree char *name = sentence->item != NULL ? sw_item_dup_name (sentence->item, NULL) : NULL;

      if (name != NULL)
        /* Translators: a sentence, the exercise it is of, the part it stands in: “Lift it.” (Bridge, step 2) */
        g_ptr_array_add (lines, g_strdup_printf (_ ("“%s” (%s, %s)"), sentence->text, name, field));
      else
        /* Translators: a sentence, the part it stands in: “Lift it.” (step 2) */
        g_ptr_array_add (lines, g_strdup_printf (_ ("“%s” (%s)"), sentence->text, field));
    }

  g_ptr_array_add (lines, NULL);
  return (GStrv) g_ptr_array_steal (lines, NULL);
}
