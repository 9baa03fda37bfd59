/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is in front of what. Items are compared where they overlap on paper, by the depth of their surfaces there; middles
 * would mislead, since limbs are long. */
#include "config.h"

#include "sw-motif.h"

#define GRID 7
#define SCRAP_GRID 14
#define SCRAP_SHARE 0.12

/* Those of an item's ellipsoids that are where it is looked at. */
typedef struct
{
  const SwEgg *eggs[SW_MOTIF_MAX_EGGS];
  int n;
} Near;

static void
find_near (Near           *self,
           const SwMotif  *item,
           const SwExtent *where)
{
  self->n = 0;
  for (int i = 0; i < item->n_eggs; i++)
    {
      const SwEgg *egg = &item->eggs[i];
      double beside = egg->at.x - CLAMP (egg->at.x, where->left, where->right);
      double below = egg->at.y - CLAMP (egg->at.y, where->bottom, where->top);

      if (beside * beside <= egg->xx && below * below <= egg->yy)
        self->eggs[self->n++] = egg;
    }
}

static gboolean
front_of (const Near *near,
          double      x,
          double      y,
          double     *depth)
{
  gboolean any = FALSE;

  for (int i = 0; i < near->n; i++)
    {
      double here;

      if (sw_egg_get_front (near->eggs[i], x, y, &here) && (!any || here > *depth))
        {
          *depth = here;
          any = TRUE;
        }
    }
  return any;
}

/* Parts whose order is a matter of drawing rather than of depth. */
static double
fixed_order (const SwMotif *a,
             const SwMotif *b)
{
  int part_a = a->part;
  int part_b = b->part;
  int limb_a = part_a < 0 ? -1 : sw_part_get_limb ((SwPart) part_a);
  int limb_b = part_b < 0 ? -1 : sw_part_get_limb ((SwPart) part_b);

  if (part_a < 0 || part_b < 0)
    {
      if (part_a < 0 && part_b >= 0 && ((a->under | a->over) >> part_b & 1) != 0)
        return (a->under >> part_b & 1) != 0 ? -1 : 1;
      if (part_b < 0 && part_a >= 0 && ((b->under | b->over) >> part_a & 1) != 0)
        return (b->under >> part_a & 1) != 0 ? 1 : -1;
      /* Furniture in its own order, and before what is held. */
      if (a->camera != NULL && b->camera != NULL)
        return sw_box_hides_box (&a->box, &b->box, a->camera) ? 1 : -1;
      if (part_a < 0 && part_b < 0 && (a->camera != NULL || b->camera != NULL))
        return a->camera != NULL ? -1 : 1;
      return 0;
    }
  if (a->body == b->body)
    {
      if (part_a == SW_PART_NECK && (part_b == SW_PART_TRUNK || part_b == SW_PART_HEAD))
        return part_b == SW_PART_TRUNK ? 1 : -1;
      if (part_b == SW_PART_NECK && (part_a == SW_PART_TRUNK || part_a == SW_PART_HEAD))
        return part_a == SW_PART_TRUNK ? -1 : 1;
      return 0;
    }
  /* The start of a limb goes behind the limb itself. */
  if ((limb_a >= 0 && limb_a == limb_b) || part_a == part_b)
    return a->style == SW_INK_START ? -1 : 1;

  return 0;
}

/* How strongly what is thin is in front of the other: compared along the line itself. */
static double
compare_line (const SwMotif *line,
              const SwMotif *other)
{
  double votes = 0;
  Near near;

  find_near (&near, other, &line->extent);
  for (int i = 0; i + 1 < line->n_line && near.n > 0; i++)
    for (int k = 0; k < GRID; k++)
      {
        double t = (k + 0.5) / GRID;
        double x = line->line[i].x + t * (line->line[i + 1].x - line->line[i].x);
        double y = line->line[i].y + t * (line->line[i + 1].y - line->line[i].y);
        double depth = line->line[i].depth + t * (line->line[i + 1].depth - line->line[i].depth);
        double there = 0;

        if (front_of (&near, x, y, &there))
          votes += CLAMP (depth - there, -0.04, 0.04);
      }
  return votes;
}

/* How strongly @a is in front of @b; negative when behind, 0 when they do not meet. */
static double
compare (const SwMotif *a,
         const SwMotif *b)
{
  double fixed = fixed_order (a, b);
  SwExtent shared = { MAX (a->extent.left, b->extent.left), MAX (a->extent.bottom, b->extent.bottom),
                      MIN (a->extent.right, b->extent.right), MIN (a->extent.top, b->extent.top) };
  SwSpot joint = { 0, 0, 0 };
  double radius = 0;
  gboolean joined = sw_motifs_joined (a, b, &joint, &radius);
  double votes = 0;
  int n = 0;
  Near near_a;
  Near near_b;

  if (fixed > 0 || fixed < 0)
    return 100 * fixed;
  if (a->n_line > 0 || b->n_line > 0)
    return a->n_line > 0 ? compare_line (a, b) : -compare_line (b, a);
  if (shared.left >= shared.right || shared.bottom >= shared.top)
    return 0;

  find_near (&near_a, a, &shared);
  find_near (&near_b, b, &shared);
  for (int i = 0; i < GRID && near_a.n > 0 && near_b.n > 0; i++)
    for (int k = 0; k < GRID; k++)
      {
        double x = shared.left + (shared.right - shared.left) * (i + 0.5) / GRID;
        double y = shared.bottom + (shared.top - shared.bottom) * (k + 0.5) / GRID;
        double depth_a = 0;
        double depth_b = 0;

        if (joined
            && (x - joint.x) * (x - joint.x) + (y - joint.y) * (y - joint.y) < 1.1 * radius * 1.1 * radius)
          continue;
        if (!front_of (&near_a, x, y, &depth_a) || !front_of (&near_b, x, y, &depth_b))
          continue;
        votes += CLAMP (depth_a - depth_b, -0.04, 0.04);
        n++;
      }

  if (joined && n == 0)
    {
      /* They meet at the joint only: the child is in front when it leads towards the viewer. */
      gboolean a_is_child = sw_part_get_parent ((SwPart) a->part) == b->part;
      const SwMotif *child = a_is_child ? a : b;
      double lead = CLAMP (child->end.depth - child->joint.depth, -0.04, 0.04) + 0.0005;

      return a_is_child ? lead : -lead;
    }
  if (n == 0)
    return 0;
  /* Start shapes come to the front only where they clearly are. */
  if ((a->style == SW_INK_START) != (b->style == SW_INK_START))
    votes += (a->style == SW_INK_START ? -0.012 : 0.012) * n;

  return votes;
}

/* What only tells depths is most of an item. */
static void
forget_depths (SwMotifs *self)
{
  for (int i = 0; i < self->n_items; i++)
    {
      SwMotif *item = &self->items[i];

      item->n_eggs = MIN (item->n_eggs, 1);
      item->eggs = g_renew (SwEgg, item->eggs, item->n_eggs);
    }
}

/**
 * sw_motifs_sort:
 *
 * Fills the order, what is farthest away first. Contradictions are settled in favour of the clearer overlaps.
 */
void
sw_motifs_sort (SwMotifs *self)
{
  int n = self->n_items;
  g_autofree double *front = g_new0 (double, (gsize) n * (gsize) n);
  g_autofree gboolean *done = g_new0 (gboolean, (gsize) n);

  g_free (self->order);
  self->order = g_new (int, n);
  for (int i = 0; i < n; i++)
    for (int k = i + 1; k < n; k++)
      {
        double by = compare (&self->items[i], &self->items[k]);

        front[i * n + k] = by;
        front[k * n + i] = -by;
      }

  for (int at = 0; at < n; at++)
    {
      int best = -1;
      double best_weight = G_MAXDOUBLE;

      for (int i = 0; i < n; i++)
        {
          double weight = 0;

          if (done[i])
            continue;
          for (int k = 0; k < n; k++)
            if (!done[k] && k != i && front[i * n + k] > 0)
              weight += front[i * n + k];
          if (weight < best_weight - 1e-12)
            {
              best_weight = weight;
              best = i;
            }
        }
      done[best] = TRUE;
      self->order[at] = best;
    }
  forget_depths (self);
}

/* The items that may cover some of another. */
static int
find_covers (const SwMotifs  *self,
             int              nth,
             const SwMotif  **covers)
{
  const SwMotif *item = &self->items[self->order[nth]];
  int n = 0;

  for (int later = nth + 1; later < self->n_items; later++)
    {
      const SwMotif *other = &self->items[self->order[later]];

      if (other->style != SW_INK_START && other->camera == NULL && sw_extent_meets (&item->extent, &other->extent, 0))
        covers[n++] = other;
    }
  return n;
}

static gboolean
is_covered (const SwMotif **covers,
            int             n_covers,
            double          x,
            double          y)
{
  for (int i = 0; i < n_covers; i++)
    if (sw_motif_holds (covers[i], x, y))
      return TRUE;

  return FALSE;
}

/* Looks at places of an item until @enough of them are seen. Returns how many are; @n_all is of how many. */
static int
count_seen (const SwMotifs *self,
            int             nth,
            int             enough,
            int            *n_all)
{
  const SwMotif *item = &self->items[self->order[nth]];
  g_autofree const SwMotif **covers = g_new (const SwMotif *, self->n_items);
  int n_covers = find_covers (self, nth, covers);
  int n_seen = 0;

  *n_all = 0;
  for (int i = 0; i < SCRAP_GRID && n_seen < enough; i++)
    for (int k = 0; k < SCRAP_GRID; k++)
      {
        double x = item->extent.left + (item->extent.right - item->extent.left) * (i + 0.5) / SCRAP_GRID;
        double y = item->extent.bottom + (item->extent.top - item->extent.bottom) * (k + 0.5) / SCRAP_GRID;

        if (!sw_motif_holds (item, x, y))
          continue;
        (*n_all)++;
        n_seen += !is_covered (covers, n_covers, x, y);
      }
  return n_seen;
}

/**
 * sw_motifs_get_share_seen:
 * @self: sorted items
 * @nth: which in their order
 *
 * Returns: the share of it that what is drawn later leaves to be seen, 0..1
 */
double
sw_motifs_get_share_seen (const SwMotifs *self,
                          int             nth)
{
  int n_all;
  int n_seen = count_seen (self, nth, G_MAXINT, &n_all);

  return n_all > 0 ? (double) n_seen / n_all : 0.0;
}

/* Whether so little of an item is seen that it is not drawn. */
static gboolean
is_scrap (const SwMotifs *self,
          int             nth)
{
  const int enough = (int) ceil (SCRAP_SHARE * SCRAP_GRID * SCRAP_GRID);
  int n_all;
  int n_seen = count_seen (self, nth, enough, &n_all);

  return n_seen < enough && (n_all == 0 || (double) n_seen / n_all < SCRAP_SHARE);
}

/**
 * sw_motifs_hide_scraps:
 *
 * Far limbs and start shapes that are nearly covered are not drawn at all: a scrap of outline tells nothing. To be called
 * once the items are sorted.
 */
void
sw_motifs_hide_scraps (SwMotifs *self)
{
  for (int i = 0; i < self->n_items; i++)
    {
      SwMotif *item = &self->items[self->order[i]];

      if (item->part >= 0 && item->style != SW_INK_NEAR)
        item->hidden = is_scrap (self, i);
    }
}
