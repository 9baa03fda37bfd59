/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order of a session in which the least time is lost to changes of position and equipment.
 *
 * Items stay in their section, and sections in their order. Within a section these stay as they are: an item that keeps
 * its place; one after the item it names; a rest or self-check right behind what it follows; a circuit with its members;
 * checks at the section's end, its closing ones, at the end. Exercises of the same small muscles are kept from following
 * each other as far as that can be had, before any second counts (common practice).
 *
 * A change costs the middle of its range. The sections are one way: what the first ends with decides what the second had
 * best begin with. With at most SW_ORDER_EXACT movable things in each section no better order exists. */
#include "config.h"

#include "sw-arrangement.h"

#include <string.h>

#include "sw-order.h"
#include "sw-station.h"

/* Of orders that take the same, the one that moves least: each way that is not there now counts a little more. Figures of
 * the table are whole seconds, so that all of it together never outweighs one. */
#define NEW_WAY_S (1.0 / 256.0)

/* Muscles that tire soon and are in the way of the next exercise when they do (common practice). */
#define SMALL_MUSCLES                                                                                                  \
  (SW_SET (SW_MUSCLE_NECK_FLEXORS) | SW_SET (SW_MUSCLE_NECK_EXTENSORS) | SW_SET (SW_MUSCLE_LOWER_TRAPEZIUS)            \
   | SW_SET (SW_MUSCLE_SERRATUS_ANTERIOR) | SW_SET (SW_MUSCLE_ROTATOR_CUFF) | SW_SET (SW_MUSCLE_FOREARM)               \
   | SW_SET (SW_MUSCLE_HIP_ROTATORS) | SW_SET (SW_MUSCLE_SHIN) | SW_SET (SW_MUSCLE_PERONEALS) | SW_SET (SW_MUSCLE_FOOT))

/**
 * Unit:
 * @items: what stays together: an exercise or circuit and the rests and checks right behind it
 * @first: the exercise it begins with
 * @last: the exercise it ends with
 *
 * One thing to be put in order.
 */
typedef struct
{
  GPtrArray *items;
  SwItem *first;
  SwItem *last;
} Unit;

/**
 * Part:
 * @head: what comes before the first exercise, and stays there
 * @units: what is put in order
 * @tail: the closing checks
 * @order: the units' order found
 * @ends: what the best order costs that ends with each unit, all sections before it included
 * @task: what is asked of the order; its arrays are this part's
 *
 * A section.
 */
typedef struct
{
  GPtrArray *head;
  Unit units[SW_ORDER_MAX];
  int n_units;
  GPtrArray *tail;
  int order[SW_ORDER_MAX];
  double ends[SW_ORDER_MAX];
  double *cost;
  double start[SW_ORDER_MAX];
  guint64 earlier[SW_ORDER_MAX];
  guint64 apart[SW_ORDER_MAX];
  int place[SW_ORDER_MAX];
  SwOrderTask task;
} Part;

static SwItem *
first_exercise (SwItem *item)
{
  GListModel *members = G_LIST_MODEL (sw_item_get_items (item));

  if (sw_item_get_exercise (item) != NULL)
    return item;
  for (guint i = 0; i < g_list_model_get_n_items (members); i++)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (members, i);

      if (sw_item_get_exercise (member) != NULL)
        return member;
    }
  return NULL;
}

static SwItem *
last_exercise (SwItem *item)
{
  GListModel *members = G_LIST_MODEL (sw_item_get_items (item));

  if (sw_item_get_exercise (item) != NULL)
    return item;
  for (guint i = g_list_model_get_n_items (members); i > 0; i--)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (members, i - 1);

      if (sw_item_get_exercise (member) != NULL)
        return member;
    }
  return NULL;
}

static SwSet
small_muscles (SwItem *exercise)
{
  return sw_exercise_get_facts (sw_item_get_exercise (exercise))->muscles & SMALL_MUSCLES;
}

static double
middle_s (SwSpan span)
{
  return (span.low_s + span.high_s) / 2.0;
}

/* From one exercise to the next. */
static SwSet
change_between (SwItem   *from,
                SwItem   *to,
                SwClinic *clinic)
{
  SwStation station = { .clinic = clinic };

  if (from != NULL)
    sw_station_go_to (&station, from);
  return sw_station_go_to (&station, to);
}

static double
cost_between (SwItem   *from,
              SwItem   *to,
              SwClinic *clinic)
{
  return middle_s (sw_station_time (clinic, change_between (from, to, clinic)));
}

static void
part_free (gpointer data)
{
  Part *self = data;

  for (int i = 0; i < self->n_units; i++)
    g_ptr_array_unref (self->units[i].items);
  g_ptr_array_unref (self->head);
  g_ptr_array_unref (self->tail);
  g_free (self->cost);
  g_free (self);
}

/* Takes the section apart. Beyond what can be put in order at all the last unit holds the rest. */
static Part *
part_new (SwSection *section)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));
  guint n = g_list_model_get_n_items (items);
  Part *self = g_new0 (Part, 1);
  guint closing = n;

  self->head = g_ptr_array_new_with_free_func (g_object_unref);
  self->tail = g_ptr_array_new_with_free_func (g_object_unref);
  for (; closing > 0; closing--)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, closing - 1);

      if (sw_item_get_kind (item) != SW_ITEM_SELF_CHECK)
        break;
    }

  for (guint i = 0; i < n; i++)
    {
      SwItem *item = g_list_model_get_item (items, i);
      SwItem *first = first_exercise (item);

      if (i >= closing)
        g_ptr_array_add (self->tail, item);
      else if (first != NULL && self->n_units < SW_ORDER_MAX)
        {
          Unit *unit = &self->units[self->n_units++];

          unit->items = g_ptr_array_new_with_free_func (g_object_unref);
          unit->first = first;
          unit->last = last_exercise (item);
          g_ptr_array_add (unit->items, item);
        }
      else if (self->n_units == 0)
        g_ptr_array_add (self->head, item);
      else
        {
          Unit *unit = &self->units[self->n_units - 1];

          g_ptr_array_add (unit->items, item);
          if (first != NULL)
            unit->last = last_exercise (item);
        }
    }
  return self;
}

static int
find_unit (const Part *self,
           const char *id)
{
  for (int i = 0; i < self->n_units; i++)
    if (strcmp (sw_item_get_id (self->units[i].items->pdata[0]), id) == 0)
      return i;

  return -1;
}

/* What is asked of a section's order. What the therapist's own order breaks already is not asked. */
static void
ask (Part              *self,
     SwClinic          *clinic,
     SwArrangementFree  free)
{
  int n = self->n_units;

  self->cost = g_new0 (double, (gsize) n * (gsize) n);
  for (int i = 0; i < n; i++)
    {
      SwItem *item = self->units[i].items->pdata[0];
      int before = (free & SW_ARRANGEMENT_FREE_AFTER) == 0 ? find_unit (self, sw_item_get_after (item)) : -1;

      self->order[i] = i;
      self->place[i] = (free & SW_ARRANGEMENT_FREE_PLACES) == 0 && sw_item_get_pinned (item) ? i : -1;
      if (before >= 0 && before < i)
        self->earlier[i] = G_GUINT64_CONSTANT (1) << before;
      for (int k = 0; k < n; k++)
        {
          if (k == i)
            continue;
          self->cost[i * n + k] = cost_between (self->units[i].last, self->units[k].first, clinic);
          if (k != i + 1)
            self->cost[i * n + k] += NEW_WAY_S;
          if ((free & SW_ARRANGEMENT_FREE_MUSCLES) != 0)
            continue;
          if ((small_muscles (self->units[i].last) & small_muscles (self->units[k].first)) != 0
              || (small_muscles (self->units[k].last) & small_muscles (self->units[i].first)) != 0)
            self->apart[i] |= G_GUINT64_CONSTANT (1) << k;
        }
    }
  self->task = (SwOrderTask){ n, self->cost, self->start, NULL, self->earlier, self->apart, self->place };
}

/* What it costs to begin @self with @unit when the best way to it comes from @before; which unit that ends with. */
static double
cost_to_begin (const Part *before,
               const Part *self,
               int         unit,
               SwClinic   *clinic,
               int        *last)
{
  double best = G_MAXDOUBLE;

  *last = -1;
  if (before == NULL)
    return 0.0;
  for (int i = 0; i < before->n_units; i++)
    {
      double cost = before->ends[i];

      if (cost == G_MAXDOUBLE)
        continue;
      cost += cost_between (before->units[i].last, self->units[unit].first, clinic);
      if (cost < best)
        {
          best = cost;
          *last = i;
        }
    }
  return best;
}

/* Each section in turn, knowing what every end of the one before costs; then back from the best end of all. */
static gboolean
find_orders (GPtrArray         *parts,
             SwClinic          *clinic,
             SwArrangementFree  free)
{
  g_autoptr (GPtrArray) way = g_ptr_array_new ();
  gboolean exact = TRUE;
  int last = -1;

  for (guint p = 0; p < parts->len; p++)
    {
      Part *self = parts->pdata[p];
      const Part *before = way->len > 0 ? way->pdata[way->len - 1] : NULL;

      if (self->n_units == 0)
        continue;
      ask (self, clinic, free);
      for (int i = 0; i < self->n_units; i++)
        {
          int from;

          self->start[i] = cost_to_begin (before, self, i, clinic, &from) + (i > 0 ? NEW_WAY_S : 0.0);
        }
      exact = sw_order_find (&self->task, -1, self->order, self->ends) && exact;
      g_ptr_array_add (way, self);
    }

  for (guint p = way->len; p > 0; p--)
    {
      Part *self = way->pdata[p - 1];
      const Part *before = p > 1 ? way->pdata[p - 2] : NULL;

      if (last >= 0 && self->order[self->n_units - 1] != last)
        sw_order_find (&self->task, last, self->order, NULL);
      cost_to_begin (before, self, self->order[0], clinic, &last);
    }
  return exact;
}

/**
 * Sum:
 * @span: what lies between the exercises takes
 * @moves: changes of position
 * @fetches: how often equipment is fetched
 * @together: neighbours in a section that work the same small muscles
 *
 * What an order comes to.
 */
typedef struct
{
  SwSpan span;
  int moves;
  int fetches;
  int together;
} Sum;

/* Adds up what lies between the exercises of the lists of items. */
static Sum
walk (GPtrArray *lists,
      SwClinic  *clinic)
{
  SwItem *at = NULL;
  Sum sum = { 0 };

  for (guint p = 0; p < lists->len; p++)
    {
      GPtrArray *items = lists->pdata[p];
      gboolean same_section = FALSE;

      for (guint i = 0; i < items->len; i++)
        {
          SwItem *first = first_exercise (items->pdata[i]);
          SwSet change;

          if (first == NULL)
            continue;
          change = change_between (at, first, clinic);
          sum.span = sw_span_add (sum.span, sw_station_time (clinic, change));
          sum.moves += (change & SW_STATION_MOVES) != 0;
          sum.fetches += (change & SW_SET (SW_TRANSITION_FETCH)) != 0;
          sum.together += same_section && (small_muscles (at) & small_muscles (first)) != 0;
          at = last_exercise (items->pdata[i]);
          same_section = TRUE;
        }
    }
  return sum;
}

static GPtrArray *
items_of (const Part *self)
{
  GPtrArray *items = g_ptr_array_new_with_free_func (g_object_unref);

  g_ptr_array_extend (items, self->head, (GCopyFunc) (void (*) (void)) g_object_ref, NULL);
  for (int i = 0; i < self->n_units; i++)
    g_ptr_array_extend (items, self->units[self->order[i]].items, (GCopyFunc) (void (*) (void)) g_object_ref, NULL);
  g_ptr_array_extend (items, self->tail, (GCopyFunc) (void (*) (void)) g_object_ref, NULL);
  return items;
}

static gboolean
is_better (Sum               after,
           Sum               before,
           SwArrangementFree free)
{
  if ((free & SW_ARRANGEMENT_FREE_MUSCLES) == 0 && after.together != before.together)
    return after.together < before.together;

  return middle_s (after.span) < middle_s (before.span) - 1e-6;
}

static SwArrangement *
arrange (SwSession         *session,
         SwClinic          *clinic,
         SwArrangementFree  free)
{
  SwArrangement *self = g_new0 (SwArrangement, 1);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (part_free);
  g_autoptr (GPtrArray) present = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  Sum before, after;

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      Part *part = part_new (section);

      for (int k = 0; k < part->n_units; k++)
        part->order[k] = k;
      g_ptr_array_add (parts, part);
      g_ptr_array_add (present, items_of (part));
    }

  self->exact = find_orders (parts, clinic, free);
  for (guint i = 0; i < parts->len; i++)
    g_ptr_array_add (found, items_of (parts->pdata[i]));

  before = walk (present, clinic);
  after = walk (found, clinic);
  self->better = is_better (after, before, free);
  if (!self->better)
    after = before;
  self->sections = self->better ? g_steal_pointer (&found) : g_steal_pointer (&present);
  self->before = before.span;
  self->after = after.span;
  self->moves_before = before.moves;
  self->moves_after = after.moves;
  self->fetches_before = before.fetches;
  self->fetches_after = after.fetches;
  self->together_before = before.together;
  self->together_after = after.together;
  return self;
}

/**
 * sw_arrangement_new:
 * @session: a session
 * @clinic: whose table tells how long changes take
 *
 * Returns: (transfer full): the order found; its items are the session's own
 */
SwArrangement *
sw_arrangement_new (SwSession *session,
                    SwClinic  *clinic)
{
  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  return arrange (session, clinic, SW_ARRANGEMENT_KEEPS_ALL);
}

/* Whether anything asks to be kept of what @free sets free. */
static gboolean
is_asked (SwSession         *session,
          SwArrangementFree  free)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

  if ((free & SW_ARRANGEMENT_FREE_MUSCLES) != 0)
    return TRUE;
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint k = 0; k < g_list_model_get_n_items (items); k++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, k);

          if (((free & SW_ARRANGEMENT_FREE_PLACES) != 0 && sw_item_get_pinned (item))
              || ((free & SW_ARRANGEMENT_FREE_AFTER) != 0 && *sw_item_get_after (item) != '\0'))
            return TRUE;
        }
    }
  return FALSE;
}

/**
 * sw_arrangement_cost_of:
 * @session: a session
 * @clinic: whose table tells how long changes take
 * @free: what an order would not have to keep to
 *
 * Returns: seconds by which the best order would be shorter then, from the middle of the range, from 0
 */
double
sw_arrangement_cost_of (SwSession         *session,
                        SwClinic          *clinic,
                        SwArrangementFree  free)
{
  g_autoptr (SwArrangement) kept = NULL;
  g_autoptr (SwArrangement) without = NULL;

  g_return_val_if_fail (SW_IS_SESSION (session), 0.0);

  if (!is_asked (session, free))
    return 0.0;

  kept = arrange (session, clinic, SW_ARRANGEMENT_KEEPS_ALL);
  without = arrange (session, clinic, free);
  return MAX (0.0, middle_s (kept->after) - middle_s (without->after));
}

/**
 * sw_arrangement_free:
 * @self: (transfer full) (nullable): an arrangement
 */
void
sw_arrangement_free (SwArrangement *self)
{
  if (self == NULL)
    return;

  g_ptr_array_unref (self->sections);
  g_free (self);
}
