/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the time of a session is spent: a bar as long as the session, with a part for each exercise, and what the parts
 * without a number stand for. */
#include "config.h"

#include <math.h>

#include "sw-compose.h"
#include "sw-time.h"

#define LINE_PT 0.9
#define TICK_PT 3.0
#define S_PER_MIN 60.0
#define STRIPE_PT 0.6
#define STRIPE_GAP_PT 2.6

/* A part of the bar: an exercise with its number or a circuit with its first and last, a rest, striped so that it can
 * be told apart in black and white too; what is left between two is for getting ready. */
typedef enum
{
  KIND_NUMBERED,
  KIND_REST,
  KIND_BETWEEN,
  N_KINDS,
} Kind;

typedef struct
{
  Kind kind;
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
      gboolean rest = sw_item_get_kind (entry->item) == SW_ITEM_REST;
      Part part = { .kind = rest ? KIND_REST : KIND_NUMBERED,
                    .start = entry->start,
                    .length_s = middle_s (entry->length) };

      if (entry->apart)
        continue;
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

/* A part's frame and what shows its kind. */
static void
add_part (SwFlow *flow,
          Kind    kind,
          double  left_pt,
          double  width_pt,
          double  height_pt)
{
  double inner_pt = width_pt - 2.0 * LINE_PT;

  if (kind == KIND_BETWEEN)
    {
      sw_flow_box (flow, left_pt, flow->y_pt, LINE_PT, height_pt, SW_GREY_TEXT);
      sw_flow_box (flow, left_pt + width_pt - LINE_PT, flow->y_pt, LINE_PT, height_pt, SW_GREY_TEXT);
      return;
    }

  sw_flow_box (flow, left_pt, flow->y_pt, width_pt, height_pt, SW_GREY_TEXT);
  if (inner_pt <= 0.0)
    return;
  sw_flow_box (flow, left_pt + LINE_PT, flow->y_pt + LINE_PT, inner_pt, height_pt - 2.0 * LINE_PT, 1.0);
  for (double y_pt = STRIPE_GAP_PT; kind == KIND_REST && y_pt < height_pt - STRIPE_GAP_PT; y_pt += STRIPE_GAP_PT)
    sw_flow_box (flow, left_pt + LINE_PT, flow->y_pt + y_pt, inner_pt, STRIPE_PT, SW_GREY_TEXT);
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

      add_part (flow, part->kind, left_pt, width_pt, height_pt);
      add_number (flow, part, left_pt, width_pt, height_pt);
    }
  sw_flow_space (flow, height_pt + 1.0);
}

/* A minute below the bar; the last one says what it counts. */
static void
add_tick (SwFlow   *flow,
          int       minute,
          double    at_min,
          gboolean  last,
          double    pt_per_min,
          double   *bottom_pt)
{
  SwComposer *self = flow->composer;
  g_autofree char *number = sw_phrases_number (self->phrases, minute, 0);
  g_autofree char *text = last ? sw_phrases_format (self->phrases, "timeline.minute", "n", number, NULL)
                               : g_steal_pointer (&number);
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_FURNITURE, -1.0, NULL, text);
  double x_pt = flow->left_pt + at_min * pt_per_min;
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

  /* The last minute is that of the end, whose words take more room. */
  for (int minute = 0; minute == 0 || minute * pt_per_min < flow->width_pt - 1.6 * room_pt; minute += steps[step])
    add_tick (flow, minute, minute, FALSE, pt_per_min, &bottom_pt);
  add_tick (flow, (int) round (total_s / S_PER_MIN), total_s / S_PER_MIN, TRUE, pt_per_min, &bottom_pt);
  flow->y_pt = bottom_pt;
}

/* Which kinds of parts the bar has, the time between two of them included. */
static void
find_kinds (GArray  *parts,
            gboolean found[N_KINDS])
{
  double end_s = 0.0;

  for (guint i = 0; i < parts->len; i++)
    {
      const Part *part = &g_array_index (parts, Part, i);

      found[part->kind] = TRUE;
      found[KIND_BETWEEN] = found[KIND_BETWEEN] || (i > 0 && middle_s (part->start) > end_s + 1.0);
      end_s = middle_s (part->start) + part->length_s;
    }
}

/* What each kind of part stands for, beside one another as far as there is room. Whoever does not see the bar hears
 * its names anyway. */
static void
add_legend (SwFlow *flow,
            GArray *parts)
{
  static const char *const keys[] = {
    [KIND_NUMBERED] = "timeline.exercise",
    [KIND_REST] = "rest.title",
    [KIND_BETWEEN] = "timeline.between",
  };
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  double sample_pt = 1.6 * size_pt;
  gboolean found[N_KINDS] = { FALSE };
  SwFlow line = *flow;
  double bottom_pt = flow->y_pt;

  find_kinds (parts, found);
  for (int kind = 0; kind < N_KINDS; kind++)
    {
      const char *words = sw_phrases_get (self->phrases, keys[kind]);
      SwFlow cell;
      int width;

      if (!found[kind])
        continue;
      pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, words), &width, NULL);
      cell = line;
      cell.width_pt = MIN ((double) width / PANGO_SCALE + 1.0, flow->width_pt - 1.3 * sample_pt);
      if (line.left_pt > flow->left_pt && line.left_pt + 1.3 * sample_pt + cell.width_pt > flow->left_pt + flow->width_pt)
        {
          cell.left_pt = line.left_pt = flow->left_pt;
          cell.y_pt = line.y_pt = bottom_pt;
        }
      line.left_pt += 1.3 * sample_pt + cell.width_pt + 1.4 * size_pt;
      cell.y_pt += 0.2 * size_pt;
      add_part (&cell, (Kind) kind, cell.left_pt, sample_pt, size_pt);
      cell.y_pt -= 0.2 * size_pt;
      cell.left_pt += 1.3 * sample_pt;
      sw_flow_text (&cell, SW_TEXT_SMALL, NULL, NULL, words);
      bottom_pt = MAX (bottom_pt, cell.y_pt);
    }
  flow->y_pt = bottom_pt;
}

/**
 * sw_compose_timeline:
 * @session: a session whose exercises have not been told yet
 *
 * A bar as long as the session takes on the middle of the range, on a day without self-checks.
 */
void
sw_compose_timeline (SwComposer *self,
                     SwSession  *session)
{
  g_autoptr (SwClock) clock = sw_clock_new (session, self->clinic);
  int number = self->n_exercises;
  g_autoptr (GArray) parts = collect_parts (self, clock, &number);
  double total_s = middle_s (clock->total);
  SwFlow flow;

  if (parts->len == 0 || total_s <= 0.0)
    return;

  flow = sw_composer_begin (self);
  sw_flow_text (&flow, SW_TEXT_SMALL, sw_tags_add (&self->tags, self->parent, "P"),
                sw_phrases_get (self->phrases, "timeline.title"), sw_phrases_get (self->phrases, "timeline.use"));
  sw_flow_space (&flow, 0.25 * self->style.body_pt);
  add_bar (&flow, parts, total_s);
  add_ticks (&flow, total_s);
  sw_flow_space (&flow, 0.2 * self->style.body_pt);
  add_legend (&flow, parts);
  sw_composer_end (&flow, 0.5 * self->style.body_pt, SW_KEEP_TOGETHER);
}
