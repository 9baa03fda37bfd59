/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Breaks a column of strips into pages. Pure arithmetic, so that it can be compared with trying every way. */
#include "config.h"

#include "sw-break.h"

/* How bad a way of breaking is; the earlier members count before the later ones, whatever their size. */
typedef struct
{
  int overfull;
  int orphaned;
  int torn;
  int pages;
  double uneven;
} Cost;

typedef struct
{
  Cost cost;
  guint previous;
} Way;

static int
compare_costs (const Cost *a,
               const Cost *b)
{
  if (a->overfull != b->overfull)
    return a->overfull - b->overfull;
  if (a->orphaned != b->orphaned)
    return a->orphaned - b->orphaned;
  if (a->torn != b->torn)
    return a->torn - b->torn;
  if (a->pages != b->pages)
    return a->pages - b->pages;
  return a->uneven < b->uneven ? -1 : (a->uneven > b->uneven ? 1 : 0);
}

/* Adds to @cost what the page from @from up to and not including @to costs. */
static Cost
add_page (Cost           cost,
          const SwStrip *strips,
          guint          n_strips,
          guint          to,
          double         used_pt,
          double         room_pt)
{
  SwKeep keep = strips[to - 1].keep;
  double free_part = (room_pt - used_pt) / room_pt;

  cost.pages++;
  if (used_pt > room_pt)
    cost.overfull++;
  if (to < n_strips && keep == SW_KEEP_ALWAYS)
    cost.orphaned++;
  if (to < n_strips && keep == SW_KEEP_TOGETHER)
    cost.torn++;
  if (to < n_strips && keep != SW_KEEP_NEVER)
    cost.uneven += free_part * free_part;

  return cost;
}

/**
 * sw_break_pages:
 * @strips: (array length=n_strips): the strips in their order
 * @n_strips: how many
 * @first_page_pt: room on the first page, above 0
 * @page_pt: room on every later page, above 0
 *
 * Finds the way with the fewest strips that stick out (only a strip taller than the page does), then the fewest
 * orphaned headings, then the fewest torn blocks, then the fewest pages, and of those the one that leaves white
 * space most evenly (least sum of squares; the last page and pages that have to end early do not count).
 * Takes time in proportion to the strips times the strips on a page.
 *
 * Returns: (transfer full) (element-type guint): for each page the index of its first strip
 */
GArray *
sw_break_pages (const SwStrip *strips,
                guint          n_strips,
                double         first_page_pt,
                double         page_pt)
{
  g_autofree Way *ways = g_new0 (Way, (gsize) n_strips + 1);
  GArray *starts = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint to = 1; to <= n_strips; to++)
    {
      double used_pt = 0.0;
      gboolean found = FALSE;

      for (guint from = to; from-- > 0;)
        {
          double room_pt = from == 0 ? first_page_pt : page_pt - strips[from].head_pt;
          Cost cost;

          used_pt += strips[from].height_pt + (from + 1 < to ? strips[from + 1].space_pt : 0.0);
          if (from + 1 < to && (used_pt > MAX (page_pt, first_page_pt) || strips[from].keep == SW_KEEP_NEVER))
            break;
          if (from + 1 < to && used_pt > room_pt)
            continue;

          cost = add_page (ways[from].cost, strips, n_strips, to, used_pt, room_pt);
          if (!found || compare_costs (&cost, &ways[to].cost) < 0)
            {
              ways[to].cost = cost;
              ways[to].previous = from;
              found = TRUE;
            }
        }
    }

  for (guint to = n_strips; to > 0; to = ways[to].previous)
    g_array_prepend_val (starts, ways[to].previous);

  return starts;
}
