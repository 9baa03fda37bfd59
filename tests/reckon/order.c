/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cheapest order against every order there is, against a published instance, and whether random tasks keep what they
 * were asked. */
#include "config.h"

#include <string.h>

#include "sw-order.h"

typedef struct
{
  SwOrderTask task;
  double cost[SW_ORDER_MAX * SW_ORDER_MAX];
  double start[SW_ORDER_MAX];
  double finish[SW_ORDER_MAX];
  guint64 earlier[SW_ORDER_MAX];
  guint64 apart[SW_ORDER_MAX];
  int place[SW_ORDER_MAX];
  int order[SW_ORDER_MAX]; /* one that is allowed */
} Case;

/* Random costs; of the things' pairs some keep apart; what must be earlier and what stands where follow @order, so that
 * there is an answer. */
static void
make_case (Case  *self,
           GRand *rand,
           int    n)
{
  self->task = (SwOrderTask){ n, self->cost, self->start, self->finish, self->earlier, self->apart, self->place };
  for (int i = 0; i < n; i++)
    {
      int k = g_rand_int_range (rand, 0, i + 1);

      self->order[i] = self->order[k];
      self->order[k] = i;
      self->start[i] = g_rand_int_range (rand, 0, 60);
      self->finish[i] = g_rand_int_range (rand, 0, 60);
      self->earlier[i] = self->apart[i] = 0;
      self->place[i] = -1;
      for (int x = 0; x < n; x++)
        self->cost[i * n + x] = g_rand_int_range (rand, 0, 60);
    }
  for (int i = 0; i < n; i++)
    {
      if (g_rand_int_range (rand, 0, 8) == 0)
        self->place[self->order[i]] = i;
      for (int x = 0; x < i; x++)
        {
          if (g_rand_int_range (rand, 0, 3 * n) == 0)
            self->earlier[self->order[i]] |= (guint64) 1 << self->order[x];
          if (g_rand_int_range (rand, 0, n) != 0)
            continue;
          self->apart[i] |= (guint64) 1 << x;
          self->apart[x] |= (guint64) 1 << i;
        }
    }
}

static double
value_of (const Case *self,
          const int  *order)
{
  return sw_order_get_cost (&self->task, order) + 1e6 * sw_order_count_together (&self->task, order);
}

/* Every order that is allowed, by the plainest way there is. */
static void
try_all (const Case *self,
         int        *order,
         int         n_set,
         double     *best,
         double     *ends)
{
  int n = self->task.n;

  if (n_set == n)
    {
      double value = sw_order_is_allowed (&self->task, order) ? value_of (self, order) : G_MAXDOUBLE;

      *best = MIN (*best, value);
      ends[order[n - 1]] = MIN (ends[order[n - 1]], value);
      return;
    }
  for (int i = n_set; i < n; i++)
    {
      int kept = order[n_set];

      order[n_set] = order[i];
      order[i] = kept;
      try_all (self, order, n_set + 1, best, ends);
      order[i] = order[n_set];
      order[n_set] = kept;
    }
}

static void
test_brute_force (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261125);

  for (int round = 0; round < 400; round++)
    {
      int n = round < 40 ? 8 : 1 + round % 7;
      Case c;
      int order[SW_ORDER_MAX];
      double ends[SW_ORDER_MAX];
      double true_ends[SW_ORDER_MAX];
      double best = G_MAXDOUBLE;

      make_case (&c, rand, n);
      for (int i = 0; i < n; i++)
        {
          order[i] = i;
          true_ends[i] = G_MAXDOUBLE;
        }
      try_all (&c, order, 0, &best, true_ends);

      memcpy (order, c.order, sizeof order);
      g_assert_true (sw_order_find (&c.task, -1, order, ends));
      g_assert_true (sw_order_is_allowed (&c.task, order));
      g_assert_cmpfloat (value_of (&c, order), ==, best);
      for (int i = 0; i < n; i++)
        {
          g_assert_cmpfloat (ends[i], ==, true_ends[i]);
          if (c.order[n - 1] != i)
            continue;
          memcpy (order, c.order, sizeof order);
          g_assert_true (sw_order_find (&c.task, i, order, NULL));
          g_assert_cmpint (order[n - 1], ==, i);
          g_assert_cmpfloat (value_of (&c, order), ==, true_ends[i]);
        }
    }
}

/* The asymmetric instance br17 of TSPLIB (Reinelt, ORSA Journal on Computing 1991;3:376-384): its shortest closed tour is
 * published as 39. One city is where the tour begins and ends; the other sixteen are more than are searched wholly. */
static void
test_published (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "atsp17.txt", NULL);
  g_autofree char *text = NULL;
  double way[17][17];
  Case c = { 0 };
  char *at;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  at = text;
  for (int i = 0; i < 17 * 17; i++)
    way[i / 17][i % 17] = g_ascii_strtod (at, &at);

  for (int closing = 0; closing < 17; closing++)
    {
      int city[16];
      int n = 0;

      for (int i = 0; i < 17; i++)
        if (i != closing)
          city[n++] = i;
      c.task = (SwOrderTask){ n, c.cost, c.start, c.finish, NULL, NULL, NULL };
      for (int i = 0; i < n; i++)
        {
          c.order[i] = i;
          c.start[i] = way[closing][city[i]];
          c.finish[i] = way[city[i]][closing];
          for (int k = 0; k < n; k++)
            c.cost[i * n + k] = way[city[i]][city[k]];
        }
      g_assert_false (sw_order_find (&c.task, -1, c.order, NULL));
      g_assert_cmpfloat (sw_order_get_cost (&c.task, c.order), ==, 39);
    }
}

/* What was asked is kept, nothing is lost, and the order never gets worse. */
static void
test_constraints (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  int n_cases = g_test_slow () ? 10000 : 1000;

  for (int round = 0; round < n_cases; round++)
    {
      int n = round % 20 == 0 ? g_rand_int_range (rand, 16, 41) : g_rand_int_range (rand, 1, 12);
      guint64 seen = 0;
      int order[SW_ORDER_MAX];
      Case c;

      make_case (&c, rand, n);
      memcpy (order, c.order, sizeof order);
      g_assert_true (sw_order_is_allowed (&c.task, order));
      sw_order_find (&c.task, -1, order, NULL);
      g_assert_true (sw_order_is_allowed (&c.task, order));
      g_assert_cmpfloat (value_of (&c, order), <=, value_of (&c, c.order));
      for (int i = 0; i < n; i++)
        seen |= (guint64) 1 << order[i];
      g_assert_cmphex (seen, ==, n == 64 ? ~(guint64) 0 : ((guint64) 1 << n) - 1);
    }
}

/* Where both can be had, the nearly exact way is held against the exact one: sixteen things of which one is pinned last
 * are fifteen with a finish. */
static void
test_nearly_exact (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  double exact_sum = 0;
  double near_sum = 0;

  for (int round = 0; round < 12; round++)
    {
      Case whole;
      Case most;
      int n = 16;

      make_case (&whole, rand, n);
      memset (whole.earlier, 0, sizeof whole.earlier);
      memset (whole.apart, 0, sizeof whole.apart);
      for (int i = 0; i < n; i++)
        {
          whole.place[i] = i == n - 1 ? i : -1;
          whole.order[i] = i;
        }
      most = whole;
      most.task = (SwOrderTask){ n - 1, most.cost, most.start, most.finish, NULL, NULL, NULL };
      for (int i = 0; i < n - 1; i++)
        {
          most.finish[i] = whole.cost[i * n + n - 1] + whole.finish[n - 1];
          for (int k = 0; k < n - 1; k++)
            most.cost[i * (n - 1) + k] = whole.cost[i * n + k];
        }
      g_assert_false (sw_order_find (&whole.task, -1, whole.order, NULL));
      g_assert_true (sw_order_find (&most.task, -1, most.order, NULL));
      g_assert_cmpfloat (sw_order_get_cost (&whole.task, whole.order), >=, sw_order_get_cost (&most.task, most.order));
      near_sum += sw_order_get_cost (&whole.task, whole.order);
      exact_sum += sw_order_get_cost (&most.task, most.order);
    }
  g_test_message ("nearly exact costs %.4f times the exact", near_sum / exact_sum);
  g_assert_cmpfloat (near_sum, <=, 1.01 * exact_sum);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/brute-force", test_brute_force);
  g_test_add_func ("/order/published", test_published);
  g_test_add_func ("/order/constraints", test_constraints);
  g_test_add_func ("/order/nearly-exact", test_nearly_exact);
  return g_test_run ();
}
