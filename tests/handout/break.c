/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Breaking into pages against trying every way of breaking, on small random columns. */
#include "config.h"

#include "sw-break.h"

#define MOST_STRIPS 11

typedef struct
{
  int overfull;
  int orphaned;
  int torn;
  int pages;
  double uneven;
} Verdict;

static double
used_by (const SwStrip *strips,
         guint          from,
         guint          to)
{
  double used_pt = strips[from].height_pt;

  for (guint i = from + 1; i < to; i++)
    used_pt += strips[i].space_pt + strips[i].height_pt;
  return used_pt;
}

/* @ends: bit i says that a page ends after strip i. Returns whether a forced end was left out or pages overflow. */
static gboolean
judge (const SwStrip *strips,
       guint          n,
       guint          ends,
       double         first_pt,
       double         page_pt,
       Verdict       *verdict)
{
  guint from = 0;

  *verdict = (Verdict){ 0, 0, 0, 0, 0.0 };
  for (guint i = 0; i < n; i++)
    {
      gboolean last = i + 1 == n;
      double room_pt = from == 0 ? first_pt : page_pt - strips[from].head_pt;
      double used_pt;

      if (!last && (ends & (1u << i)) == 0)
        {
          if (strips[i].keep == SW_KEEP_NEVER)
            return FALSE;
          continue;
        }
      used_pt = used_by (strips, from, i + 1);
      if (used_pt > room_pt && i > from)
        return FALSE;
      verdict->pages++;
      verdict->overfull += used_pt > room_pt;
      if (!last)
        {
          verdict->orphaned += strips[i].keep == SW_KEEP_ALWAYS;
          verdict->torn += strips[i].keep == SW_KEEP_TOGETHER;
          if (strips[i].keep != SW_KEEP_NEVER)
            verdict->uneven += (room_pt - used_pt) / room_pt * ((room_pt - used_pt) / room_pt);
        }
      from = i + 1;
    }

  return TRUE;
}

static int
compare (const Verdict *a,
         const Verdict *b)
{
  if (a->overfull != b->overfull)
    return a->overfull - b->overfull;
  if (a->orphaned != b->orphaned)
    return a->orphaned - b->orphaned;
  if (a->torn != b->torn)
    return a->torn - b->torn;
  if (a->pages != b->pages)
    return a->pages - b->pages;
  if (ABS (a->uneven - b->uneven) < 1e-9)
    return 0;
  return a->uneven < b->uneven ? -1 : 1;
}

static guint
ends_of (GArray *starts)
{
  guint ends = 0;

  for (guint i = 1; i < starts->len; i++)
    ends |= 1u << (g_array_index (starts, guint, i) - 1);
  return ends;
}

static void
test_against_every_way (void)
{
  for (int round = 0; round < 1500; round++)
    {
      SwStrip strips[MOST_STRIPS];
      guint n = (guint) g_test_rand_int_range (1, MOST_STRIPS + 1);
      double first_pt = g_test_rand_int_range (60, 140);
      double page_pt = g_test_rand_int_range (60, 140);
      g_autoptr (GArray) starts = NULL;
      Verdict found;
      Verdict best = { G_MAXINT, 0, 0, 0, 0.0 };

      for (guint i = 0; i < n; i++)
        {
          int kind = g_test_rand_int_range (0, 10);

          strips[i].height_pt = g_test_rand_int_range (1, round % 5 == 0 ? 180 : 60);
          strips[i].space_pt = g_test_rand_int_range (0, 12);
          strips[i].head_pt = round % 2 == 0 ? g_test_rand_int_range (0, 15) : 0.0;
          strips[i].keep = kind < 4   ? SW_KEEP_FREE
                           : kind < 7 ? SW_KEEP_TOGETHER
                           : kind < 9 ? SW_KEEP_ALWAYS
                                      : SW_KEEP_NEVER;
        }

      starts = sw_break_pages (strips, n, first_pt, page_pt);
      g_assert_cmpuint (g_array_index (starts, guint, 0), ==, 0);
      g_assert_true (judge (strips, n, ends_of (starts), first_pt, page_pt, &found));
      for (guint ends = 0; ends < 1u << (n - 1); ends++)
        {
          Verdict verdict;

          if (judge (strips, n, ends, first_pt, page_pt, &verdict) && compare (&verdict, &best) < 0)
            best = verdict;
        }
      g_assert_cmpint (compare (&found, &best), ==, 0);
    }
}

static void
test_nothing (void)
{
  g_autoptr (GArray) starts = sw_break_pages (NULL, 0, 100.0, 100.0);

  g_assert_cmpuint (starts->len, ==, 0);
}

/* A page that would begin with a head too tall for what follows can still begin before it. */
static void
test_head_in_the_way (void)
{
  const SwStrip strips[] = {
    { 20.0, 0.0, SW_KEEP_FREE, 0.0 },
    { 20.0, 0.0, SW_KEEP_FREE, 0.0 },
    { 40.0, 0.0, SW_KEEP_FREE, 50.0 },
    { 40.0, 0.0, SW_KEEP_FREE, 0.0 },
  };
  g_autoptr (GArray) starts = sw_break_pages (strips, G_N_ELEMENTS (strips), 20.0, 100.0);

  g_assert_cmpuint (starts->len, ==, 2);
  g_assert_cmpuint (g_array_index (starts, guint, 1), ==, 1);
}

/* A strip taller than a page gets a page of its own and does not stop the others. */
static void
test_too_tall (void)
{
  const SwStrip strips[] = {
    { 30.0, 0.0, SW_KEEP_FREE },
    { 250.0, 5.0, SW_KEEP_FREE },
    { 30.0, 5.0, SW_KEEP_FREE },
  };
  g_autoptr (GArray) starts = sw_break_pages (strips, G_N_ELEMENTS (strips), 100.0, 100.0);

  g_assert_cmpuint (starts->len, ==, 3);
  g_assert_cmpuint (g_array_index (starts, guint, 1), ==, 1);
  g_assert_cmpuint (g_array_index (starts, guint, 2), ==, 2);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/break/against-every-way", test_against_every_way);
  g_test_add_func ("/break/nothing", test_nothing);
  g_test_add_func ("/break/head-in-the-way", test_head_in_the_way);
  g_test_add_func ("/break/too-tall", test_too_tall);
  return g_test_run ();
}
