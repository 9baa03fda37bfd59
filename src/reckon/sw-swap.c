/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which exercises could take another's place: with the same aim and muscles, from a position the client can get into, with
 * what is at home, and nothing that a precaution speaks against. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-limit-check.h"
#include "sw-precautions.h"
#include "sw-swap.h"

/* A wall is in every home. */
#define EVERYWHERE SW_SET (SW_EQUIPMENT_WALL)

/* How far links to easier or harder exercises are followed. */
#define MOST_STEPS 4

/* What the parts of alikeness count: our own weighting, by which the muscles come first and a change of position last. */
#define MUSCLES_COUNT 0.5
#define AIMS_COUNT 0.4
#define POSITION_COUNTS 0.1

/* What a client may be offered at all, and what is compared of it. */
typedef struct
{
  SwExercise *exercise;
  SwSet muscles;
  SwSet aims;
} Candidate;

struct _SwSwaps
{
  SwProgramme *programme;
  SwCatalogue *catalogue;
  GArray *possible; /* Candidate */
};

/* In whose place something is looked for. */
typedef struct
{
  SwSwaps *swaps;
  const SwExerciseFacts *facts;
  GHashTable *steps; /* SwExercise: links to it, as in SwSwap, and NO_NULL more */
  GHashTable *taken; /* ids of exercises that the session has already */
} Search;

#define NO_NULL (1 << 16)

/**
 * sw_swap_free:
 * @swap: (transfer full): an exercise that could take another's place
 */
void
sw_swap_free (SwSwap *swap)
{
  g_clear_object (&swap->exercise);
  g_free (swap->reason);
  g_free (swap);
}

/* What two sets have in common of all that either has: the index of Jaccard (New Phytologist 1912;11:37-50). 1 for
 * two empty sets. */
static double
get_common_share (SwSet a,
                  SwSet b)
{
  return (a | b) == 0 ? 1.0 : (double) sw_set_count (a & b) / (double) sw_set_count (a | b);
}

/**
 * sw_swap_get_alikeness:
 * @a: an exercise's facts
 * @b: another's
 *
 * How much two exercises are alike: half of it for the muscle groups and four tenths for the aims that they have in common
 * (each as the index of Jaccard, New Phytologist 1912;11:37-50: shared over all), a tenth for the same start position. The
 * weighting is this program's own, not a published one.
 *
 * Returns: 0 (nothing in common) to 1, the same both ways
 */
double
sw_swap_get_alikeness (const SwExerciseFacts *a,
                       const SwExerciseFacts *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, 0.0);

  return MUSCLES_COUNT * get_common_share (a->muscles, b->muscles)
         + AIMS_COUNT * get_common_share (a->aims, b->aims)
         + (a->position == b->position ? POSITION_COUNTS : 0.0);
}

/* Notes all that is reached over links to easier ones, or to harder ones, at its least number of links. */
static void
follow (Search     *self,
        SwExercise *exercise,
        gboolean    harder)
{
  g_autoptr (GPtrArray) ring = g_ptr_array_new ();

  g_ptr_array_add (ring, exercise);
  for (int step = 1; step <= MOST_STEPS && ring->len > 0; step++)
    {
      g_autoptr (GPtrArray) next = g_ptr_array_new ();

      for (guint i = 0; i < ring->len; i++)
        {
          const SwExerciseFacts *facts = sw_exercise_get_facts (ring->pdata[i]);
          char **links = harder ? facts->harder : facts->easier;

          for (guint j = 0; links != NULL && links[j] != NULL; j++)
            {
              SwExercise *linked = sw_catalogue_lookup (self->swaps->catalogue, links[j]);

              if (linked == NULL || g_hash_table_contains (self->steps, linked))
                continue;
              g_hash_table_insert (self->steps, linked, GINT_TO_POINTER (NO_NULL + (harder ? step : -step)));
              g_ptr_array_add (next, linked);
            }
        }
      g_ptr_array_unref (g_steal_pointer (&ring));
      ring = g_steal_pointer (&next);
    }
}

static int
get_steps (Search     *self,
           SwExercise *exercise)
{
  gpointer steps = g_hash_table_lookup (self->steps, exercise);

  return steps == NULL ? 0 : GPOINTER_TO_INT (steps) - NO_NULL;
}

static gboolean
is_wished (SwSwapWish wish,
           int        n_steps)
{
  switch (wish)
    {
    case SW_SWAP_EASIER:
      return n_steps < 0;
    case SW_SWAP_HARDER:
      return n_steps > 0;
    case SW_SWAP_ALIKE:
      return n_steps == 0;
    case SW_SWAP_ANY:
    default:
      return TRUE;
    }
}

/**
 * sw_swap_get_missing_equipment:
 * @client: a client
 * @facts: an exercise's facts
 *
 * Returns: the set of #SwEquipment the exercise needs and the client does not have, as far as ticked; a wall is in every
 *   home
 */
SwSet
sw_swap_get_missing_equipment (SwClient              *client,
                               const SwExerciseFacts *facts)
{
  return facts->equipment & ~sw_client_get_equipment (client) & ~EVERYWHERE;
}

/* Whether the client can do it at home, and nothing speaks against it that would have to be asked about. With nothing
 * ticked, what is at home was not asked yet. */
static gboolean
is_possible (SwClient              *client,
             SwSet                  against,
             const SwExerciseFacts *facts)
{
  return facts->review != SW_REVIEW_STATE_RETIRED
         && (facts->cautions & against) == 0
         && (sw_client_get_equipment (client) == 0 || sw_swap_get_missing_equipment (client, facts) == 0)
         && (SW_SET (facts->position) & sw_client_get_avoided_positions (client)) == 0;
}

/**
 * sw_swaps_new:
 * @programme: a programme
 * @catalogue: where the exercises are
 *
 * Finds what the client may be offered as far as exercises can be told apart at once: nothing retired, against a precaution
 * that would have to be asked about, from a position the client cannot get into, or in need of what is not at home (where
 * that was asked). Holds for as long as neither changes.
 *
 * Returns: (transfer full): what sw_swaps_find() looks in
 */
SwSwaps *
sw_swaps_new (SwProgramme *programme,
              SwCatalogue *catalogue)
{
  SwSwaps *self = g_new0 (SwSwaps, 1);
  SwClient *client;
  SwSet against;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), self);
  g_return_val_if_fail (SW_IS_CATALOGUE (catalogue), self);

  self->programme = g_object_ref (programme);
  self->catalogue = g_object_ref (catalogue);
  self->possible = g_array_new (FALSE, FALSE, sizeof (Candidate));
  client = sw_programme_get_client (programme);
  against = sw_precautions_get_cautions (sw_client_get_precautions (client), SW_FINDING_ASK);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
      Candidate candidate = { exercise, facts->muscles, facts->aims };

      if (is_possible (client, against, facts))
        g_array_append_val (self->possible, candidate); /* the catalogue keeps it */
    }

  return self;
}

/**
 * sw_swaps_free:
 * @self: (transfer full): what swaps were looked for in
 */
void
sw_swaps_free (SwSwaps *self)
{
  g_clear_object (&self->programme);
  g_clear_object (&self->catalogue);
  g_clear_pointer (&self->possible, g_array_unref);
  g_free (self);
}

static void
add_part (GString *reason,
          char    *part)
{
  g_autofree char *owned = part;

  if (reason->len > 0)
    /* Translators: between the reasons why one exercise suits in another's place */
    g_string_append (reason, _("; "));
  g_string_append (reason, owned);
}

static char *
describe_muscles (const SwExerciseFacts *old,
                  const SwExerciseFacts *facts)
{
  int n_common = sw_set_count (old->muscles & facts->muscles);
  int n_old = sw_set_count (old->muscles);

  if (old->muscles == facts->muscles)
    return g_strdup (_("same muscles"));
  if (n_common == n_old)
    return g_strdup (_("same muscles and more"));

  return g_strdup_printf (ngettext ("%d of %d muscle group", "%d of %d muscle groups", (unsigned long) n_old),
                          n_common, n_old);
}

static char *
describe_aims (const SwExerciseFacts *old,
               const SwExerciseFacts *facts)
{
  int n_common = sw_set_count (old->aims & facts->aims);
  int n_old = sw_set_count (old->aims);

  if (n_common == n_old)
    return g_strdup (ngettext ("same aim", "same aims", (unsigned long) n_old));
  if (n_common == 0)
    return g_strdup (_("another aim"));

  return g_strdup_printf (ngettext ("%d of %d aim", "%d of %d aims", (unsigned long) n_old), n_common, n_old);
}

static char *
dup_reason (const SwExerciseFacts *old,
            const SwExerciseFacts *facts,
            int                    n_steps)
{
  g_autoptr (GString) reason = g_string_new (NULL);

  if (n_steps < 0)
    add_part (reason, g_strdup_printf (ngettext ("%d step easier", "%d steps easier", (unsigned long) -n_steps),
                                       -n_steps));
  else if (n_steps > 0)
    add_part (reason, g_strdup_printf (ngettext ("%d step harder", "%d steps harder", (unsigned long) n_steps),
                                       n_steps));
  add_part (reason, describe_muscles (old, facts));
  add_part (reason, describe_aims (old, facts));
  if (facts->position == old->position)
    add_part (reason, g_strdup (_("same position")));
  if ((facts->equipment & ~EVERYWHERE) == 0)
    add_part (reason, g_strdup (_("no equipment")));

  return g_string_free (g_steal_pointer (&reason), FALSE);
}

/* Linked ones first, the nearest before the others and easier before harder; then the most alike; then what needs
 * the fewest things; then by name. */
static int
compare_swaps (gconstpointer a,
               gconstpointer b)
{
  const SwSwap *first = *(const SwSwap *const *) a;
  const SwSwap *second = *(const SwSwap *const *) b;
  const SwExerciseFacts *first_facts = sw_exercise_get_facts (first->exercise);
  const SwExerciseFacts *second_facts = sw_exercise_get_facts (second->exercise);

  if ((first->n_steps == 0) != (second->n_steps == 0))
    return first->n_steps == 0 ? 1 : -1;
  if (ABS (first->n_steps) != ABS (second->n_steps))
    return ABS (first->n_steps) - ABS (second->n_steps);
  if (first->n_steps != second->n_steps)
    return first->n_steps - second->n_steps;
  if (first->alikeness > second->alikeness || first->alikeness < second->alikeness)
    return first->alikeness > second->alikeness ? -1 : 1;
  if (sw_set_count (first_facts->equipment) != sw_set_count (second_facts->equipment))
    return sw_set_count (first_facts->equipment) - sw_set_count (second_facts->equipment);

  return strcmp (first_facts->id, second_facts->id);
}

/* The ids of the exercises in the session that has the item. */
static GHashTable *
dup_taken (SwProgramme *programme,
           SwItem      *item)
{
  GHashTable *taken = g_hash_table_new (g_str_hash, g_str_equal);
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_session_dup_items (session);

      if (!g_ptr_array_find (items, item, NULL))
        continue;
      for (guint j = 0; j < items->len; j++)
        {
          SwExercise *exercise = sw_item_get_exercise (items->pdata[j]);

          if (exercise != NULL)
            g_hash_table_add (taken, (gpointer) sw_exercise_get_id (exercise));
        }
    }

  return taken;
}

static void
add_swap (GPtrArray             *swaps,
          SwExercise            *exercise,
          const SwExerciseFacts *old,
          int                    n_steps)
{
  SwSwap *swap = g_new0 (SwSwap, 1);

  swap->exercise = g_object_ref (exercise);
  swap->n_steps = n_steps;
  swap->alikeness = sw_swap_get_alikeness (old, sw_exercise_get_facts (exercise));
  g_ptr_array_add (swaps, swap);
}

/* What the catalogue links. */
static void
add_linked (Search     *self,
            SwSwapWish  wish,
            GPtrArray  *swaps)
{
  for (guint i = 0; i < self->swaps->possible->len; i++)
    {
      SwExercise *exercise = g_array_index (self->swaps->possible, Candidate, i).exercise;
      int n_steps = get_steps (self, exercise);

      if (n_steps != 0 && is_wished (wish, n_steps)
          && !g_hash_table_contains (self->taken, sw_exercise_get_id (exercise)))
        add_swap (swaps, exercise, self->facts, n_steps);
    }
}

/* What is not linked must do something for the same muscles to the same end. */
static void
add_alike (Search    *self,
           GPtrArray *swaps)
{
  for (guint i = 0; i < self->swaps->possible->len; i++)
    {
      const Candidate *candidate = &g_array_index (self->swaps->possible, Candidate, i);

      if ((candidate->muscles & self->facts->muscles) == 0 || (candidate->aims & self->facts->aims) == 0
          || g_hash_table_contains (self->steps, candidate->exercise)
          || g_hash_table_contains (self->taken, sw_exercise_get_id (candidate->exercise)))
        continue;
      add_swap (swaps, candidate->exercise, self->facts, 0);
    }
}

/* Whether nothing of it, with its usual dose, is beyond a limit of the client that would have to be asked about. */
static gboolean
keeps_limits (GListModel *limits,
              SwExercise *candidate)
{
  const SwDose *dose = &sw_exercise_get_facts (candidate)->dose;

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);
      SwLimitBreach breach;

      if (sw_limit_find_breach (limit, candidate, dose, &breach) && breach.level > SW_FINDING_TELL)
        return FALSE;
    }

  return TRUE;
}

/* Takes out what is beyond a limit, until there are enough: what a picture does is not reckoned for more than these. */
static void
keep_allowed (Search    *self,
              GPtrArray *swaps,
              guint      n_most)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (self->swaps->programme));
  guint n = 0;

  while (n < MIN (n_most, swaps->len))
    {
      if (keeps_limits (limits, ((SwSwap *) swaps->pdata[n])->exercise))
        n++;
      else
        g_ptr_array_remove_index (swaps, n);
    }
  g_ptr_array_set_size (swaps, (int) n);
}

/**
 * sw_swaps_find:
 * @self: what to look in
 * @item: an item of its programme
 * @wish: which difficulty is wanted
 * @n_most: how many are enough
 *
 * Looks for exercises that could take an item's, among those that sw_swaps_new() found. None is in the same session already,
 * or with its usual dose beyond a limit of the client that would have to be asked about; one that the catalogue does not
 * link shares a muscle group and an aim.
 *
 * Returns: (transfer full) (element-type SwSwap): the linked ones, nearest first, then the most alike; none for an item
 *   without an exercise
 */
GPtrArray *
sw_swaps_find (SwSwaps    *self,
               SwItem     *item,
               SwSwapWish  wish,
               guint       n_most)
{
  GPtrArray *swaps = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_swap_free);
  g_autoptr (GHashTable) steps = g_hash_table_new (NULL, NULL);
  g_autoptr (GHashTable) taken = NULL;
  SwExercise *exercise;
  SwExercise *own;
  Search search = { .swaps = self, .steps = steps };

  g_return_val_if_fail (self != NULL, swaps);
  g_return_val_if_fail (SW_IS_ITEM (item), swaps);

  exercise = sw_item_get_exercise (item);
  if (exercise == NULL)
    return swaps;

  taken = dup_taken (self->programme, item);
  search.taken = taken;
  search.facts = sw_exercise_get_facts (exercise);
  own = sw_catalogue_lookup (self->catalogue, search.facts->id);
  if (own != NULL)
    g_hash_table_insert (steps, own, GINT_TO_POINTER (NO_NULL));
  follow (&search, exercise, FALSE);
  follow (&search, exercise, TRUE);

  /* They come first: where they are enough the others need not be looked at. */
  if (g_hash_table_size (steps) > 1)
    add_linked (&search, wish, swaps);
  keep_allowed (&search, swaps, G_MAXUINT);
  if (swaps->len < n_most && (wish == SW_SWAP_ANY || wish == SW_SWAP_ALIKE))
    add_alike (&search, swaps);

  g_ptr_array_sort (swaps, compare_swaps);
  keep_allowed (&search, swaps, n_most);
  for (guint i = 0; i < swaps->len; i++)
    {
      SwSwap *swap = swaps->pdata[i];

      swap->reason = dup_reason (search.facts, sw_exercise_get_facts (swap->exercise), swap->n_steps);
    }

  return swaps;
}
