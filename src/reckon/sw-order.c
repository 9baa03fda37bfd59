/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cheapest order of things that cost something to go between, in one direction more than in the other: the
 * asymmetric travelling salesman's open way, with things that must come earlier, stand in one place or keep apart.
 *
 * Up to SW_ORDER_EXACT things the answer is exact: dynamic programming over sets and last things (Bellman, Journal of
 * the ACM 9, 1962, 61-63; Held and Karp, Journal of the SIAM 10, 1962, 196-210). Beyond that two neighbouring blocks or
 * two things change places as long as it helps, from the order at hand and from shaken ones; the shaking is always the
 * same, so that the same things come out in the same order everywhere. */
#include "config.h"

#include <string.h>

#include "sw-order.h"

/* More than all ways together can cost: two that should keep apart cost this. */
#define TOGETHER 1e6
#define EPSILON 1e-7
/* How often the order is shaken, for one thing; shared out among them. */
#define SHAKES 4800

/* The costs with what keeps apart added; thing n is both ends. */
typedef struct
{
  const SwOrderTask *task;
  int n;
  double way[SW_ORDER_MAX + 1][SW_ORDER_MAX + 1];
  int place[SW_ORDER_MAX]; /* the last thing's too */
  int holds[SW_ORDER_MAX]; /* what must stand in a place, or -1 */
} Ways;

static guint64
bit (int i)
{
  return (guint64) 1 << i;
}

static void
ways_init (Ways              *self,
           const SwOrderTask *task,
           int                last)
{
  int n = task->n;

  self->task = task;
  self->n = n;
  for (int i = 0; i < n; i++)
    {
      self->way[n][i] = task->start[i];
      self->way[i][n] = task->finish != NULL ? task->finish[i] : 0.0;
      for (int k = 0; k < n; k++)
        self->way[i][k] = task->cost[i * n + k] + (task->apart != NULL && (task->apart[i] & bit (k)) != 0 ? TOGETHER : 0);
      self->place[i] = task->place != NULL ? task->place[i] : -1;
      self->holds[i] = -1;
    }
  self->way[n][n] = 0;
  if (last >= 0)
    self->place[last] = n - 1;
  for (int i = 0; i < n; i++)
    if (self->place[i] >= 0)
      self->holds[self->place[i]] = i;
}

static guint64
earlier_of (const Ways *self,
            int         i)
{
  return self->task->earlier != NULL ? self->task->earlier[i] : 0;
}

static double
whole_cost (const Ways *self,
            const int  *order)
{
  double sum = self->way[self->n][order[0]];

  for (int i = 0; i < self->n; i++)
    sum += self->way[order[i]][i + 1 < self->n ? order[i + 1] : self->n];
  return sum;
}

/**
 * sw_order_is_allowed:
 * @task: a task
 * @order: (array): its things in some order
 *
 * Returns: whether each comes after what must be earlier, and stands where it must
 */
gboolean
sw_order_is_allowed (const SwOrderTask *task,
                     const int         *order)
{
  guint64 passed = 0;

  for (int i = 0; i < task->n; i++)
    {
      int thing = order[i];

      if (task->earlier != NULL && (task->earlier[thing] & ~passed) != 0)
        return FALSE;
      if (task->place != NULL && task->place[thing] >= 0 && task->place[thing] != i)
        return FALSE;
      passed |= bit (thing);
    }
  return TRUE;
}

/**
 * sw_order_count_together:
 * @task: a task
 * @order: (array): its things in some order
 *
 * Returns: how many neighbours should keep apart
 */
int
sw_order_count_together (const SwOrderTask *task,
                         const int         *order)
{
  int n = 0;

  for (int i = 0; i + 1 < task->n && task->apart != NULL; i++)
    n += (task->apart[order[i]] & bit (order[i + 1])) != 0;
  return n;
}

/**
 * sw_order_get_cost:
 * @task: a task
 * @order: (array): its things in some order
 *
 * Returns: what start, ways and finish cost together
 */
double
sw_order_get_cost (const SwOrderTask *task,
                   const int         *order)
{
  double sum = task->start[order[0]] + (task->finish != NULL ? task->finish[order[task->n - 1]] : 0.0);

  for (int i = 0; i + 1 < task->n; i++)
    sum += task->cost[order[i] * task->n + order[i + 1]];
  return sum;
}

/* Dynamic programming: least[set * n + last] for every set of things gone through. */
static void
find_exactly (const Ways *ways,
              int        *order,
              double     *ends)
{
  int n = ways->n;
  gsize n_sets = (gsize) 1 << n;
  gsize n_cells = n_sets * (guint) n;
  g_autofree double *least = g_new (double, n_cells);
  g_autofree gint8 *before = g_new (gint8, n_cells);
  gsize set = n_sets - 1;
  int last = -1;
  double best = G_MAXDOUBLE;

  for (gsize i = 0; i < n_cells; i++)
    least[i] = G_MAXDOUBLE;
  for (gsize here = 0; here + 1 < n_sets; here++)
    {
      int place = __builtin_popcountll (here);

      for (int next = 0; next < n; next++)
        {
          double *to = &least[(here | bit (next)) * n + next];

          if ((here & bit (next)) != 0 || (earlier_of (ways, next) & ~here) != 0
              || (ways->place[next] >= 0 && ways->place[next] != place)
              || (ways->holds[place] >= 0 && ways->holds[place] != next))
            continue;
          if (here == 0)
            *to = ways->way[n][next];
          for (int from = 0; from < n; from++)
            {
              double cost = least[here * n + from];

              if (cost == G_MAXDOUBLE || cost + ways->way[from][next] >= *to)
                continue;
              *to = cost + ways->way[from][next];
              before[(here | bit (next)) * n + next] = (gint8) from;
            }
        }
    }

  for (int i = 0; i < n; i++)
    {
      double cost = least[set * n + i];

      if (ends != NULL)
        ends[i] = cost == G_MAXDOUBLE ? cost : cost + ways->way[i][n];
      if (cost < G_MAXDOUBLE && cost + ways->way[i][n] < best)
        {
          best = cost + ways->way[i][n];
          last = i;
        }
    }
  for (int i = n - 1; i >= 0 && last >= 0; i--)
    {
      int from = before[set * n + last];

      order[i] = last;
      set &= ~(gsize) bit (last);
      last = from;
    }
}

/* Whether the blocks [i, j) and [j, k) may change places. */
static gboolean
may_swap (const Ways *ways,
          const int  *order,
          int         i,
          int         j,
          int         k)
{
  guint64 first = 0;

  for (int x = i; x < k; x++)
    {
      int to = x < j ? x + k - j : x - (j - i);

      if (ways->holds[to] >= 0 && ways->holds[to] != order[x])
        return FALSE;
      if (ways->place[order[x]] >= 0 && ways->place[order[x]] != to)
        return FALSE;
      if (x < j)
        first |= bit (order[x]);
      else if ((earlier_of (ways, order[x]) & first) != 0)
        return FALSE;
    }
  return TRUE;
}

static void
swap_blocks (int *order,
             int  i,
             int  j,
             int  k)
{
  int kept[SW_ORDER_MAX];

  memcpy (kept, order + i, sizeof (int) * (j - i));
  memmove (order + i, order + j, sizeof (int) * (k - j));
  memcpy (order + i + k - j, kept, sizeof (int) * (j - i));
}

static int
thing_at (const Ways *ways,
          const int  *order,
          int         i)
{
  return i < 0 || i >= ways->n ? ways->n : order[i];
}

/* What the way costs more when the blocks [i, j) and [j, k) change places. */
static double
cost_of_swap (const Ways *ways,
              const int  *order,
              int         i,
              int         j,
              int         k)
{
  int before = thing_at (ways, order, i - 1);
  int after = thing_at (ways, order, k);

  return ways->way[before][order[j]] + ways->way[order[k - 1]][order[i]] + ways->way[order[j - 1]][after]
         - ways->way[before][order[i]] - ways->way[order[j - 1]][order[j]] - ways->way[order[k - 1]][after];
}

static gboolean
improve_by_blocks (const Ways *ways,
                   int        *order)
{
  gboolean improved = FALSE;

  for (int i = 0; i < ways->n; i++)
    for (int j = i + 1; j < ways->n; j++)
      for (int k = j + 1; k <= ways->n; k++)
        if (cost_of_swap (ways, order, i, j, k) < -EPSILON && may_swap (ways, order, i, j, k))
          {
            swap_blocks (order, i, j, k);
            improved = TRUE;
          }
  return improved;
}

/* Whether the things at @i and @k may change places. */
static gboolean
may_exchange (const Ways *ways,
              const int  *order,
              int         i,
              int         k)
{
  if (ways->place[order[i]] >= 0 || ways->place[order[k]] >= 0)
    return FALSE;
  for (int x = i; x < k; x++)
    if ((earlier_of (ways, order[k]) & bit (order[x])) != 0 || (earlier_of (ways, order[x + 1]) & bit (order[i])) != 0)
      return FALSE;

  return TRUE;
}

static void
exchange (int *order,
          int  i,
          int  k)
{
  int kept = order[i];

  order[i] = order[k];
  order[k] = kept;
}

/* Things that stand in one place cannot be pushed aside, but others can change places across them. */
static gboolean
improve_by_pairs (const Ways *ways,
                  int        *order,
                  double     *cost)
{
  gboolean improved = FALSE;

  for (int i = 0; i < ways->n; i++)
    for (int k = i + 1; k < ways->n; k++)
      {
        double now;

        if (!may_exchange (ways, order, i, k))
          continue;
        exchange (order, i, k);
        now = whole_cost (ways, order);
        if (now < *cost - EPSILON)
          {
            *cost = now;
            improved = TRUE;
          }
        else
          exchange (order, i, k);
      }
  return improved;
}

static double
improve (const Ways *ways,
         int        *order)
{
  double cost;

  do
    {
      while (improve_by_blocks (ways, order))
        ;
      cost = whole_cost (ways, order);
    }
  while (improve_by_pairs (ways, order, &cost));
  return cost;
}

static void
shake (const Ways *ways,
       int        *order,
       GRand      *rand)
{
  for (int done = 0, tries = 0; done < 3 && tries < 60; tries++)
    {
      int i = g_rand_int_range (rand, 0, ways->n - 1);
      int j = g_rand_int_range (rand, i + 1, MIN (ways->n, i + 9));
      int k = g_rand_int_range (rand, j + 1, MIN (ways->n + 1, j + 10));

      if (!may_swap (ways, order, i, j, k))
        continue;
      swap_blocks (order, i, j, k);
      done++;
    }
}

static void
find_nearly (const Ways *ways,
             int        *order,
             double     *ends)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  double best = improve (ways, order);
  int n = ways->n;

  for (int round = 0; round < SHAKES / n; round++)
    {
      int shaken[SW_ORDER_MAX];
      double cost;

      memcpy (shaken, order, sizeof (int) * n);
      shake (ways, shaken, rand);
      cost = improve (ways, shaken);
      if (cost > best - EPSILON)
        continue;
      best = cost;
      memcpy (order, shaken, sizeof (int) * n);
    }
  for (int i = 0; i < n && ends != NULL; i++)
    ends[i] = i == order[n - 1] ? best : G_MAXDOUBLE;
}

/**
 * sw_order_find:
 * @task: a task
 * @last: the thing that must be last, or -1
 * @order: (array) (inout): its things in an allowed order, of more than SW_ORDER_EXACT with @last in its place; out comes
 *   the cheapest
 * @ends: (array) (out) (nullable): @task's n: what the cheapest order costs that ends with each thing, %G_MAXDOUBLE when
 *   none does or it is not known; each pair that should keep apart adds a million
 *
 * Returns: whether the order is known to be the cheapest, not only nearly
 */
gboolean
sw_order_find (const SwOrderTask *task,
               int                last,
               int               *order,
               double            *ends)
{
  Ways ways;

  g_return_val_if_fail (task->n >= 1 && task->n <= SW_ORDER_MAX, FALSE);
  g_return_val_if_fail (sw_order_is_allowed (task, order), FALSE);
  g_return_val_if_fail (last < 0 || task->n <= SW_ORDER_EXACT || order[task->n - 1] == last, FALSE);

  ways_init (&ways, task, last);
  if (task->n <= SW_ORDER_EXACT)
    {
      find_exactly (&ways, order, ends);
      return TRUE;
    }

  find_nearly (&ways, order, ends);
  return FALSE;
}
