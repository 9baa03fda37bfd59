/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the time of a session is spent: a bar as long as the session, with a part for each exercise. */
#include "config.h"

#include <math.h>

#include "sw-compose.h"
#include "sw-time.h"

#define LINE_PT 0.9
#define TICK_PT 3.0
#define S_PER_MIN 60.0

/* What stands in a part of the bar: an exercise's number, a circuit's first and last. */
typedef struct
{
  SwSpan start;
  double length_s;
  int first;
  int last;
  char *name;
} Part;

static void
part_clear (gpointer data)
{
  g_free (((Part *) data)->name);
}

static double
middle_s (SwSpan span)
{
  return (span.low_s + span.high_s) / 2.0;
}

static char *
dup_name (SwComposer *self,
          SwItem     *item)
{
  const char *title = sw_item_get_title (item);

  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_EXERCISE:
      return g_strdup (sw_exercise_get_text (sw_item_get_exercise (item), self->language)->name);
    case SW_ITEM_CIRCUIT:
      return g_strdup (sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "circuit.title"));
    case SW_ITEM_REST:
      return g_strdup (sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "rest.title"));
    case SW_ITEM_SELF_CHECK:
      return g_strdup (sw_phrases_get (self->phrases, "check.heading"));
    default:
      g_assert_not_reached ();
    }
}

/* @number: of the last exercise before the session, counted on. */
static GArray *
collect_parts (SwComposer *self,
               SwClock    *clock,
               int        *number)
{
  GArray *parts = g_array_new (FALSE, FALSE, sizeof (Part));

  g_array_set_clear_func (parts, part_clear);
  for (guint i = 0; i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);
      Part part = { .start = entry->start, .length_s = middle_s (entry->length) };

      if (sw_item_get_kind (entry->item) == SW_ITEM_EXERCISE)
        part.first = part.last = ++*number;
      if (entry->circuit != NULL)
        {
          Part *circuit = &g_array_index (parts, Part, parts->len - 1);

          if (part.first > 0 && circuit->first == 0)
            circuit->first = part.first;
          circuit->last = *number;
          continue;
        }
      part.name = dup_name (self, entry->item);
      g_array_append_val (parts, part);
    }

  return parts;
}

/* The same in words, for those who cannot see the bar. */
static char *
dup_alt (SwComposer *self,
         GArray     *parts)
{
  g_autoptr (GString) alt = g_string_new (NULL);

  for (guint i = 0; i < parts->len; i++)
    {
      const Part *part = &g_array_index (parts, Part, i);
      g_autofree char *from = sw_phrases_number (self->phrases, floor (middle_s (part->start) / S_PER_MIN), 0);
      g_autofree char *entry
          = sw_phrases_format (self->phrases, "timeline.entry", "name", part->name, "minute", from, NULL);

      g_string_append_printf (alt, "%s%s", i > 0 ? " " : "", entry);
    }
  return g_string_free (g_steal_pointer (&alt), FALSE);
}

/* A number in the middle of its part, if there is room for it. */
static void
add_number (SwFlow     *flow,
            const Part *part,
            double      left_pt,
            double      width_pt,
            double      height_pt)
{
  SwComposer *self = flow->composer;
  g_autofree char *text = part->last > part->first ? g_strdup_printf ("%d–%d", part->first, part->last)
                                                   : g_strdup_printf ("%d", part->first);
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_SMALL_STRONG, -1.0, NULL, text);
  SwFlow cell = *flow;
  int width;
  int height;

  pango_layout_get_size (layout, &width, &height);
  if (part->first == 0 || (double) width / PANGO_SCALE > width_pt - 2.0 * LINE_PT)
    return;
  cell.left_pt = left_pt + (width_pt - (double) width / PANGO_SCALE) / 2.0;
  cell.width_pt = (double) width / PANGO_SCALE + 1.0;
  cell.y_pt += (height_pt - (double) height / PANGO_SCALE) / 2.0;
  sw_flow_text (&cell, SW_TEXT_SMALL_STRONG, NULL, NULL, text);
}

static void
add_bar (SwFlow *flow,
         GArray *parts,
         double  total_s)
{
  SwComposer *self = flow->composer;
  double height_pt = 1.7 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  double pt_per_s = (flow->width_pt - LINE_PT) / total_s;
  SwTag *tag = sw_tags_add (&self->tags, self->parent, "Figure");

  tag->alt = dup_alt (self, parts);
  sw_block_add (flow->block, SW_PIECE_EMPTY, tag, flow->left_pt, flow->y_pt, flow->width_pt, height_pt);
  for (guint i = 0; i < parts->len; i++)
    {
      const Part *part = &g_array_index (parts, Part, i);
      double left_pt = flow->left_pt + pt_per_s * middle_s (part->start);
      double width_pt = MAX (pt_per_s * part->length_s, LINE_PT);

      sw_flow_box (flow, left_pt, flow->y_pt, width_pt, height_pt, SW_GREY_TEXT);
      if (width_pt > 2.0 * LINE_PT)
        sw_flow_box (flow, left_pt + LINE_PT, flow->y_pt + LINE_PT, width_pt - 2.0 * LINE_PT, height_pt - 2.0 * LINE_PT,
                     part->first > 0 ? 1.0 : self->style.panel_grey);
      add_number (flow, part, left_pt, width_pt, height_pt);
    }
  sw_flow_space (flow, height_pt + 1.0);
}

/* A minute below the bar; the last one says what it counts. */
static void
add_tick (SwFlow   *flow,
          int       minute,
          gboolean  last,
          double    pt_per_min,
          double   *bottom_pt)
{
  SwComposer *self = flow->composer;
  g_autofree char *number = sw_phrases_number (self->phrases, minute, 0);
  g_autofree char *text = last ? sw_phrases_format (self->phrases, "timeline.minute", "n", number, NULL)
                               : g_steal_pointer (&number);
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_FURNITURE, -1.0, NULL, text);
  double x_pt = flow->left_pt + minute * pt_per_min;
  SwFlow cell = *flow;
  int width;

  pango_layout_get_size (layout, &width, NULL);
  cell.width_pt = (double) width / PANGO_SCALE + 1.0;
  cell.left_pt = MIN (x_pt, flow->left_pt + flow->width_pt - cell.width_pt);
  cell.y_pt += TICK_PT;
  sw_flow_box (flow, x_pt, flow->y_pt, LINE_PT, TICK_PT, SW_GREY_TEXT);
  sw_flow_text (&cell, SW_TEXT_FURNITURE, NULL, NULL, text);
  *bottom_pt = cell.y_pt;
}

/* Every minute, or every second, fifth, tenth, so that they have room. */
static void
add_ticks (SwFlow *flow,
           double  total_s)
{
  static const int steps[] = { 1, 2, 5, 10, 20, 60 };
  double pt_per_min = (flow->width_pt - LINE_PT) / (total_s / S_PER_MIN);
  double room_pt = 3.2 * sw_style_get_size_pt (&flow->composer->style, SW_TEXT_SMALL);
  guint step = 0;
  double bottom_pt = flow->y_pt;

  while (step + 1 < G_N_ELEMENTS (steps) && steps[step] * pt_per_min < room_pt)
    step++;

  for (int minute = 0; minute * S_PER_MIN <= total_s; minute += steps[step])
    add_tick (flow, minute, (minute + steps[step]) * S_PER_MIN > total_s, pt_per_min, &bottom_pt);
  flow->y_pt = bottom_pt;
}

/**
 * sw_compose_timeline:
 * @session: a session whose exercises have not been told yet
 *
 * A bar as long as the session takes on the middle of the range.
 */
void
sw_compose_timeline (SwComposer *self,
                     SwSession  *session)
{
  g_autoptr (SwClock) clock = sw_clock_new (session);
  int number = self->n_exercises;
  g_autoptr (GArray) parts = collect_parts (self, clock, &number);
  double total_s = middle_s (clock->total);
  SwFlow flow;

  if (parts->len == 0 || total_s <= 0.0)
    return;

  flow = sw_composer_begin (self);
  add_bar (&flow, parts, total_s);
  add_ticks (&flow, total_s);
  sw_composer_end (&flow, 0.5 * self->style.body_pt, SW_KEEP_ALWAYS);
}
