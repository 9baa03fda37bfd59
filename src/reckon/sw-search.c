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

#define MAX_LETTERS 31
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
  gunichar letters[MAX_LETTERS + 1];  /* ends with 0 */
  guint n_letters;
  guint32 signature;  /* which letters occur, modulo 32 */
} Word;

typedef struct
{
  guint32 word;
  guint32 exercise;
  guint32 rank;
} Posting;

struct _SwSearch
{
  GPtrArray *exercises;  /* of SwExercise, sorted by name */
  GArray *words;         /* of Word, sorted */
  GArray *postings;      /* of Posting, sorted by word */
  GArray *first;         /* of guint32: where a word's postings begin; one more at the end */
};

/* Gathers words while the index is made. */
typedef struct
{
  GHashTable *numbers;  /* Word to its number plus 1; keys are in @words */
  GPtrArray *words;     /* of Word */
  GArray *postings;
} Gathering;

static guint
word_hash (gconstpointer key)
{
  const Word *word = key;
  guint hash = 5381;

  for (guint i = 0; i < word->n_letters; i++)
    hash = hash * 33 + word->letters[i];

  return hash;
}

static int
word_compare (const Word *a,
              const Word *b)
{
  guint n = MIN (a->n_letters, b->n_letters);

  for (guint i = 0; i < n; i++)
    {
      if (a->letters[i] != b->letters[i])
        return a->letters[i] < b->letters[i] ? -1 : 1;
    }

  return (int) a->n_letters - (int) b->n_letters;
}

static gboolean
word_equal (gconstpointer a,
            gconstpointer b)
{
  return word_compare (a, b) == 0;
}

/* A small letter without accent, or 0 for what is no letter or digit; accents alone give G_MAXUINT32. */
static gunichar
simplify (gunichar c)
{
  gunichar parts[G_UNICHAR_MAX_DECOMPOSITION_LENGTH];

  if (c < 0x80)
    return g_ascii_isalnum (c) ? (gunichar) g_ascii_tolower ((char) c) : 0;
  if (g_unichar_ismark (c))
    return G_MAXUINT32;
  if (!g_unichar_isalnum (c))
    return 0;

  g_unichar_fully_decompose (c, FALSE, parts, G_N_ELEMENTS (parts));
  return g_unichar_tolower (parts[0]);
}

/* Takes the next word from *@text; FALSE at its end. */
static gboolean
take_word (const char **text,
           Word        *word)
{
  const char *p = *text;

  word->n_letters = 0;
  for (; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar letter = simplify (g_utf8_get_char (p));

      if (letter == G_MAXUINT32)
        continue;
      if (letter != 0 && word->n_letters < MAX_LETTERS)
        word->letters[word->n_letters++] = letter;
      else if (letter == 0 && word->n_letters > 0)
        break;
    }
  *text = p;
  if (word->n_letters == 0)
    return FALSE;

  word->letters[word->n_letters] = 0;
  word->signature = 0;
  for (guint i = 0; i < word->n_letters; i++)
    word->signature |= 1u << (word->letters[i] % 32);
  return TRUE;
}

/* "raises" and "raise" are one word; "press", "pelvis" and "radius" keep their s. */
static void
drop_plural (Word *word)
{
  guint n = word->n_letters;

  if (n < 4 || word->letters[n - 1] != 's')
    return;
  if (word->letters[n - 2] == 's' || word->letters[n - 2] == 'u' || word->letters[n - 2] == 'i')
    return;

  word->letters[--word->n_letters] = 0;
}

static guint32
number_of (Gathering  *self,
           const Word *word)
{
  gpointer number = g_hash_table_lookup (self->numbers, word);
  Word *kept;

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
  Word word;

  if (text == NULL)
    return;

  while (take_word (&text, &word))
    {
      Posting posting;

      drop_plural (&word);
      posting = (Posting) { number_of (self, &word), exercise, rank };
      g_array_append_val (self->postings, posting);
    }
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
  return word_compare (*(const Word * const *) a, *(const Word * const *) b);
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
  self->words = g_array_sized_new (FALSE, FALSE, sizeof (Word), n_words);
  for (guint i = 0; i < n_words; i++)
    {
      const Word *word = g_ptr_array_index (gathering->words, i);

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
  gathering.numbers = g_hash_table_new (word_hash, word_equal);
  gathering.postings = g_array_new (FALSE, FALSE, sizeof (Posting));
  for (guint i = 0; i < self->exercises->len; i++)
    gather_exercise (&gathering, i, self->exercises->pdata[i], language);

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
find_place (SwSearch   *self,
            const Word *word)
{
  guint low = 0, high = self->words->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;

      if (word_compare (&g_array_index (self->words, Word, middle), word) < 0)
        low = middle + 1;
      else
        high = middle;
    }

  return low;
}

static void
credit_literally (SwSearch   *self,
                  const Word *typed,
                  gboolean    as_beginning,
                  guint8     *best)
{
  Word singular = *typed;
  guint place;

  drop_plural (&singular);
  place = find_place (self, &singular);
  if (place < self->words->len && word_equal (&g_array_index (self->words, Word, place), &singular))
    credit (self, place, FIT_WHOLE, best);
  if (!as_beginning)
    return;

  for (place = find_place (self, typed); place < self->words->len; place++)
    {
      const Word *word = &g_array_index (self->words, Word, place);

      if (word->n_letters < typed->n_letters
          || memcmp (word->letters, typed->letters, typed->n_letters * sizeof (gunichar)) != 0)
        return;
      credit (self, place, word->n_letters == typed->n_letters ? FIT_WHOLE : FIT_BEGINNING, best);
    }
}

/* How many typing errors a word of that many letters may hold. */
static guint
allowed_errors (guint n_letters)
{
  if (n_letters < 4)
    return 0;

  return n_letters < 8 ? 1 : 2;
}

/* Whether @typed becomes @word, or a beginning of it, by at most @limit letters more, fewer, other, or two
 * neighbours swapped (the restricted edit distance of Damerau). */
static gboolean
is_within (const Word *typed,
           const Word *word,
           guint       limit,
           gboolean    as_beginning)
{
  guint8 rows[3][MAX_LETTERS + 1];
  guint8 *before = rows[0], *last = rows[1], *row = rows[2];
  guint n = word->n_letters;

  if (as_beginning)
    n = MIN (n, typed->n_letters + limit);
  for (guint j = 0; j <= n; j++)
    last[j] = (guint8) j;
  memset (before, MAX_LETTERS, sizeof rows[0]);

  for (guint i = 1; i <= typed->n_letters; i++)
    {
      guint8 least = row[0] = (guint8) i;
      guint8 *spare;

      for (guint j = 1; j <= n; j++)
        {
          gboolean same = typed->letters[i - 1] == word->letters[j - 1];
          guint cost = MIN (last[j], row[j - 1]) + 1u;

          cost = MIN (cost, last[j - 1] + (same ? 0u : 1u));
          if (i > 1 && j > 1 && typed->letters[i - 1] == word->letters[j - 2]
              && typed->letters[i - 2] == word->letters[j - 1])
            cost = MIN (cost, before[j - 2] + 1u);
          row[j] = (guint8) cost;
          least = MIN (least, row[j]);
        }
      if (least > limit)
        return FALSE;
      spare = before;
      before = last;
      last = row;
      row = spare;
    }

  if (!as_beginning)
    return last[n] <= limit;

  for (guint j = 0; j <= n; j++)
    {
      if (last[j] <= limit)
        return TRUE;
    }
  return FALSE;
}

static guint
count_bits (guint32 bits)
{
  guint n = 0;

  for (; bits != 0; bits &= bits - 1)
    n++;

  return n;
}

static void
credit_tolerantly (SwSearch   *self,
                   const Word *typed,
                   gboolean    as_beginning,
                   guint8     *best)
{
  guint limit = allowed_errors (typed->n_letters);

  if (limit == 0)
    return;

  for (guint i = 0; i < self->words->len; i++)
    {
      const Word *word = &g_array_index (self->words, Word, i);

      /* Each error accounts for one letter that the other word lacks; this rules out almost all. */
      if (word->n_letters + limit < typed->n_letters
          || (!as_beginning && word->n_letters > typed->n_letters + limit)
          || count_bits (typed->signature & ~word->signature) > limit
          || (!as_beginning && count_bits (word->signature & ~typed->signature) > limit))
        continue;
      if (is_within (typed, word, limit, FALSE))
        credit (self, i, FIT_WHOLE_WITH_ERRORS, best);
      else if (as_beginning && is_within (typed, word, limit, TRUE))
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
         && (!filter->limit_equipment || (facts->equipment & ~filter->equipment) == 0);
}

/* Adds up the scores of all words in @totals; an exercise that lacks a word gets 0. Whether any has them all. */
static gboolean
rate (SwSearch   *self,
      const Word *typed,
      guint       n_typed,
      gboolean    unfinished,
      gboolean    tolerant,
      guint16    *totals)
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
  Word typed[MAX_QUERY_WORDS];
  guint n_typed = 0;
  gboolean unfinished = TRUE;
  g_autofree char *valid = NULL;
  g_autofree guint16 *totals = NULL;

  g_return_val_if_fail (self != NULL, NULL);
  g_return_val_if_fail (query != NULL, NULL);

  if (self->exercises->len == 0)
    return g_ptr_array_new_with_free_func (g_object_unref);

  query = valid = g_utf8_make_valid (query, -1);
  while (n_typed < MAX_QUERY_WORDS && take_word (&query, &typed[n_typed]))
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

  return pick (self, totals, filter);
}
