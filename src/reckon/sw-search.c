/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds exercises as one types. All words of a catalogue are gathered once, each with the exercises it occurs
 * in and how much it says there; a query then looks at words, not at texts. Words are compared in small
 * letters without accents and without the s of a plural.
 *
 * A query is first taken at its word: every word of it must occur, the last also as a beginning. Only when
 * that finds nothing are typing errors allowed for, so that "calf" never brings up "half". */
#include "config.h"

#include <string.h>

#include "sw-search.h"

#include "sw-word.h"

#define MAX_QUERY_WORDS 12

/* What a word says of an exercise, by where it stands. */
typedef enum
{
  RANK_TEXT = 1,
  RANK_TERM,
  RANK_SYNONYM,
  RANK_NAME,
} Rank;

/* How well a word fits; these and the ranks make up the score, see score(). */
typedef enum
{
  FIT_BEGINNING_WITH_ERRORS,
  FIT_WHOLE_WITH_ERRORS,
  FIT_BEGINNING,
  FIT_WHOLE,
} Fit;

#define MAX_SCORE 24

typedef struct
{
  guint32 word;
  guint32 exercise;
  guint32 rank;
} Posting;

struct _SwSearch
{
  GPtrArray *exercises;  /* of SwExercise, sorted by name */
  GArray *words;         /* of SwWord, sorted */
  GArray *postings;      /* of Posting, sorted by word */
  GArray *first;         /* of guint32: where a word's postings begin; one more at the end */
  GArray *name_words;    /* of guint16: by exercise, how many words its name has */
};

/* Gathers words while the index is made. */
typedef struct
{
  GHashTable *numbers;  /* SwWord to its number plus 1; keys are in @words */
  GPtrArray *words;     /* of SwWord */
  GArray *postings;
} Gathering;

static guint32
number_of (Gathering    *self,
           const SwWord *word)
{
  gpointer number = g_hash_table_lookup (self->numbers, word);
  SwWord *kept;

  if (number != NULL)
    return GPOINTER_TO_UINT (number) - 1;

  kept = g_memdup2 (word, sizeof *word);
  g_ptr_array_add (self->words, kept);
  g_hash_table_insert (self->numbers, kept, GUINT_TO_POINTER (self->words->len));
  return self->words->len - 1;
}

static void
gather (Gathering  *self,
        guint       exercise,
        Rank        rank,
        const char *text)
{
  SwWord word;

  if (text == NULL)
    return;

  while (sw_word_take (&text, &word))
    {
      Posting posting;

      sw_word_drop_plural (&word);
      posting = (Posting) { number_of (self, &word), exercise, rank };
      g_array_append_val (self->postings, posting);
    }
}

static guint16
count_words (const char *text)
{
  guint16 n = 0;
  SwWord word;

  while (text != NULL && n < G_MAXUINT16 && sw_word_take (&text, &word))
    n++;

  return n;
}

static void
gather_list (Gathering *self,
             guint      exercise,
             Rank       rank,
             char     **texts)
{
  for (guint i = 0; texts[i] != NULL; i++)
    gather (self, exercise, rank, texts[i]);
}

static void
gather_set (Gathering *self,
            guint      exercise,
            GType      type,
            SwSet      set)
{
  g_autofree char *nicks = sw_set_to_nicks (type, set);

  gather (self, exercise, RANK_TERM, nicks);
}

static void
gather_exercise (Gathering  *self,
                 guint       number,
                 SwExercise *exercise,
                 const char *language)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  const SwExerciseText *text = sw_exercise_get_text (exercise, language);

  gather (self, number, RANK_NAME, text->name);
  gather_list (self, number, RANK_SYNONYM, text->synonyms);
  gather (self, number, RANK_TERM, sw_term_to_nick (SW_TYPE_REGION, (int) facts->region));
  gather (self, number, RANK_TERM, sw_term_to_nick (SW_TYPE_POSITION, (int) facts->position));
  gather_set (self, number, SW_TYPE_EQUIPMENT, facts->equipment);
  gather_set (self, number, SW_TYPE_AIM, facts->aims);
  gather_set (self, number, SW_TYPE_MUSCLE, facts->muscles);
  gather (self, number, RANK_TEXT, text->purpose);
  gather (self, number, RANK_TEXT, text->set_up);
  gather_list (self, number, RANK_TEXT, text->steps);
  gather_list (self, number, RANK_TEXT, text->form_points);
  gather_list (self, number, RANK_TEXT, text->errors);
  gather (self, number, RANK_TEXT, text->feel);
}

static int
compare_words (gconstpointer a,
               gconstpointer b)
{
  return sw_word_compare (*(const SwWord * const *) a, *(const SwWord * const *) b);
}

static int
compare_postings (gconstpointer a,
                  gconstpointer b)
{
  const Posting *first = a;
  const Posting *second = b;

  if (first->word != second->word)
    return first->word < second->word ? -1 : 1;
  if (first->exercise != second->exercise)
    return first->exercise < second->exercise ? -1 : 1;

  return (int) second->rank - (int) first->rank;
}

/* Puts the words in order and each word's postings together, an exercise once with its best rank. */
static void
arrange (SwSearch  *self,
         Gathering *gathering)
{
  guint n_words = gathering->words->len;
  g_autofree guint32 *place = g_new (guint32, n_words + 1);
  guint32 end;

  g_ptr_array_sort (gathering->words, compare_words);
  self->words = g_array_sized_new (FALSE, FALSE, sizeof (SwWord), n_words);
  for (guint i = 0; i < n_words; i++)
    {
      const SwWord *word = g_ptr_array_index (gathering->words, i);

      place[GPOINTER_TO_UINT (g_hash_table_lookup (gathering->numbers, word)) - 1] = i;
      g_array_append_vals (self->words, word, 1);
    }

  for (guint i = 0; i < gathering->postings->len; i++)
    {
      Posting *posting = &g_array_index (gathering->postings, Posting, i);

      posting->word = place[posting->word];
    }
  g_array_sort (gathering->postings, compare_postings);

  self->postings = g_array_new (FALSE, FALSE, sizeof (Posting));
  self->first = g_array_sized_new (FALSE, FALSE, sizeof (guint32), n_words + 1);
  for (guint i = 0; i < gathering->postings->len; i++)
    {
      const Posting *posting = &g_array_index (gathering->postings, Posting, i);
      const Posting *last = self->postings->len > 0
                            ? &g_array_index (self->postings, Posting, self->postings->len - 1) : NULL;

      if (last != NULL && last->word == posting->word && last->exercise == posting->exercise)
        continue;
      if (last == NULL || last->word != posting->word)
        g_array_append_val (self->first, self->postings->len);
      g_array_append_vals (self->postings, posting, 1);
    }
  end = self->postings->len;
  g_array_append_val (self->first, end);
}

typedef struct
{
  SwExercise *exercise;
  char *key;
} Named;

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  const Named *first = a;
  const Named *second = b;
  int order = strcmp (first->key, second->key);

  return order != 0 ? order : strcmp (sw_exercise_get_id (first->exercise), sw_exercise_get_id (second->exercise));
}

static GPtrArray *
dup_by_name (SwCatalogue *catalogue,
             const char  *language)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (catalogue));
  GPtrArray *exercises = g_ptr_array_new_full (n, g_object_unref);
  g_autofree Named *named = g_new (Named, n);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *folded = NULL;

      named[i].exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      folded = g_utf8_casefold (sw_exercise_get_text (named[i].exercise, language)->name, -1);
      named[i].key = g_utf8_collate_key (folded, -1);
    }
  if (n > 1)
    qsort (named, n, sizeof *named, compare_names);
  for (guint i = 0; i < n; i++)
    {
      g_ptr_array_add (exercises, named[i].exercise);
      g_free (named[i].key);
    }

  return exercises;
}

/**
 * sw_search_new:
 * @catalogue: the exercises; the index keeps its own hold on them
 * @language: (nullable): BCP 47 tag: which of an exercise's texts counts
 *
 * Reads all words once. For ten thousand exercises that takes long enough to belong off the main thread.
 *
 * Returns: (transfer full): the index; it can be used by several threads at once
 */
SwSearch *
sw_search_new (SwCatalogue *catalogue,
               const char  *language)
{
  SwSearch *self;
  Gathering gathering;

  g_return_val_if_fail (SW_IS_CATALOGUE (catalogue), NULL);

  self = g_new0 (SwSearch, 1);
  self->exercises = dup_by_name (catalogue, language);

  gathering.words = g_ptr_array_new_with_free_func (g_free);
  gathering.numbers = g_hash_table_new (sw_word_hash, sw_word_equal);
  gathering.postings = g_array_new (FALSE, FALSE, sizeof (Posting));
  self->name_words = g_array_sized_new (FALSE, FALSE, sizeof (guint16), self->exercises->len);
  for (guint i = 0; i < self->exercises->len; i++)
    {
      guint16 n = count_words (sw_exercise_get_text (self->exercises->pdata[i], language)->name);

      g_array_append_val (self->name_words, n);
      gather_exercise (&gathering, i, self->exercises->pdata[i], language);
    }

  arrange (self, &gathering);
  g_hash_table_unref (gathering.numbers);
  g_ptr_array_unref (gathering.words);
  g_array_unref (gathering.postings);
  return self;
}

/**
 * sw_search_free:
 * @self: (transfer full) (nullable): an index
 */
void
sw_search_free (SwSearch *self)
{
  if (self == NULL)
    return;

  g_ptr_array_unref (self->exercises);
  g_array_unref (self->words);
  g_array_unref (self->postings);
  g_array_unref (self->first);
  g_array_unref (self->name_words);
  g_free (self);
}

/* Words without typing errors come first; then it counts where a word stands; then whether it is whole. */
static guint8
score (Fit  fit,
       Rank rank)
{
  return (guint8) ((fit >= FIT_BEGINNING ? 12 : 0) + (int) rank * 2
                   + (fit == FIT_WHOLE || fit == FIT_WHOLE_WITH_ERRORS));
}

static void
credit (SwSearch *self,
        guint     word,
        Fit       fit,
        guint8   *best)
{
  guint end = g_array_index (self->first, guint32, word + 1);

  for (guint i = g_array_index (self->first, guint32, word); i < end; i++)
    {
      const Posting *posting = &g_array_index (self->postings, Posting, i);
      guint8 reached = score (fit, (Rank) posting->rank);

      best[posting->exercise] = MAX (best[posting->exercise], reached);
    }
}

/* The first word of the index that does not come before @word. */
static guint
find_place (SwSearch     *self,
            const SwWord *word)
{
  guint low = 0, high = self->words->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;

      if (sw_word_compare (&g_array_index (self->words, SwWord, middle), word) < 0)
        low = middle + 1;
      else
        high = middle;
    }

  return low;
}

static void
credit_literally (SwSearch     *self,
                  const SwWord *typed,
                  gboolean      as_beginning,
                  guint8       *best)
{
  SwWord singular = *typed;
  guint place;

  sw_word_drop_plural (&singular);
  place = find_place (self, &singular);
  if (place < self->words->len && sw_word_equal (&g_array_index (self->words, SwWord, place), &singular))
    credit (self, place, FIT_WHOLE, best);
  if (!as_beginning)
    return;

  for (place = find_place (self, typed); place < self->words->len; place++)
    {
      const SwWord *word = &g_array_index (self->words, SwWord, place);

      if (word->n_letters < typed->n_letters
          || memcmp (word->letters, typed->letters, typed->n_letters * sizeof (gunichar)) != 0)
        return;
      credit (self, place, word->n_letters == typed->n_letters ? FIT_WHOLE : FIT_BEGINNING, best);
    }
}

static void
credit_tolerantly (SwSearch     *self,
                   const SwWord *typed,
                   gboolean      as_beginning,
                   guint8       *best)
{
  guint limit = sw_word_get_allowed_errors (typed);

  if (limit == 0)
    return;

  for (guint i = 0; i < self->words->len; i++)
    {
      const SwWord *word = &g_array_index (self->words, SwWord, i);

      if (sw_word_is_within (typed, word, limit, FALSE))
        credit (self, i, FIT_WHOLE_WITH_ERRORS, best);
      else if (as_beginning && sw_word_is_within (typed, word, limit, TRUE))
        credit (self, i, FIT_BEGINNING_WITH_ERRORS, best);
    }
}

static gboolean
passes (SwExercise           *exercise,
        const SwSearchFilter *filter)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);

  if (filter == NULL)
    return TRUE;

  return (filter->regions == 0 || (filter->regions & SW_SET (facts->region)) != 0)
         && (filter->positions == 0 || (filter->positions & SW_SET (facts->position)) != 0)
         && (filter->aims == 0 || (filter->aims & facts->aims) != 0)
         && (filter->reviews == 0 || (facts->has_review && (filter->reviews & SW_SET (facts->review)) != 0))
         && (!filter->limit_equipment || (facts->equipment & ~filter->equipment) == 0);
}

/* Adds up the scores of all words in @totals; an exercise that lacks a word gets 0. Whether any has them all. */
static gboolean
rate (SwSearch     *self,
      const SwWord *typed,
      guint         n_typed,
      gboolean      unfinished,
      gboolean      tolerant,
      guint16      *totals)
{
  guint n = self->exercises->len;
  g_autofree guint8 *best = g_new (guint8, n);
  gboolean any = FALSE;

  for (guint i = 0; i < n_typed; i++)
    {
      gboolean as_beginning = unfinished && i == n_typed - 1;

      memset (best, 0, n);
      credit_literally (self, &typed[i], as_beginning, best);
      if (tolerant)
        credit_tolerantly (self, &typed[i], as_beginning, best);

      any = FALSE;
      for (guint j = 0; j < n; j++)
        {
          if (best[j] == 0 || (i > 0 && totals[j] == 0))
            totals[j] = 0;
          else
            totals[j] = (guint16) ((i > 0 ? totals[j] : 0) + best[j]);
          any |= totals[j] != 0;
        }
      if (!any)
        return FALSE;
    }

  return any;
}

/* The exercises with a score, best first, alike ones by name: a sort by counting. */
static GPtrArray *
pick (SwSearch             *self,
      const guint16        *totals,
      const SwSearchFilter *filter)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (g_object_unref);
  guint n = self->exercises->len;
  guint starts[MAX_QUERY_WORDS * MAX_SCORE + 2] = { 0 };
  g_autofree guint *order = g_new (guint, n);
  guint n_found = 0;

  for (guint i = 0; i < n; i++)
    {
      if (totals[i] > 0 && passes (self->exercises->pdata[i], filter))
        {
          starts[totals[i]]++;
          n_found++;
        }
    }
  for (guint total = G_N_ELEMENTS (starts) - 1, place = 0; total > 0; total--)
    {
      guint n_here = starts[total];

      starts[total] = place;
      place += n_here;
    }
  for (guint i = 0; i < n; i++)
    {
      if (totals[i] > 0 && passes (self->exercises->pdata[i], filter))
        order[starts[totals[i]]++] = i;
    }
  for (guint i = 0; i < n_found; i++)
    g_ptr_array_add (found, g_object_ref (self->exercises->pdata[order[i]]));

  return found;
}

/**
 * sw_search_find:
 * @self: an index
 * @query: words in any order; the last may be unfinished unless something stands behind it, such as a
 *   space. What is left after twelve words is not looked at
 * @filter: (nullable): what to let through
 *
 * Finds the exercises in which every word occurs: in the name, a synonym, the terms (region, position,
 * equipment, aims, muscles) or the texts, counting in this order. A word of four to seven letters may hold
 * one typing error and a longer one two, when nothing is found without.
 *
 * Returns: (transfer full) (element-type SwExercise): the best first, alike ones by name; for a query without
 *   words all that pass the filter, by name
 */
GPtrArray *
sw_search_find (SwSearch             *self,
                const char           *query,
                const SwSearchFilter *filter)
{
  SwWord typed[MAX_QUERY_WORDS];
  guint n_typed = 0;
  gboolean unfinished = TRUE;
  g_autofree char *valid = NULL;
  g_autofree guint16 *totals = NULL;

  g_return_val_if_fail (self != NULL, NULL);
  g_return_val_if_fail (query != NULL, NULL);

  if (self->exercises->len == 0)
    return g_ptr_array_new_with_free_func (g_object_unref);

  query = valid = g_utf8_make_valid (query, -1);
  while (n_typed < MAX_QUERY_WORDS && sw_word_take (&query, &typed[n_typed]))
    {
      unfinished = *query == '\0';
      n_typed++;
    }

  totals = g_new0 (guint16, self->exercises->len);
  if (n_typed == 0)
    {
      for (guint i = 0; i < self->exercises->len; i++)
        totals[i] = 1;
    }
  else if (!rate (self, typed, n_typed, unfinished, FALSE, totals)
           && !rate (self, typed, n_typed, unfinished, TRUE, totals))
    return g_ptr_array_new_with_free_func (g_object_unref);

  /* Among alike ones comes first what has nothing in its name but what was asked for. */
  for (guint i = 0; n_typed > 0 && i < self->exercises->len; i++)
    totals[i] += totals[i] > 0 && g_array_index (self->name_words, guint16, i) == n_typed;

  return pick (self, totals, filter);
}
