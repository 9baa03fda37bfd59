/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How to read the pages: how much pain is all right, and what the marks in the pictures mean. */
#include "config.h"

#include "sw-compose.h"

/* Pain that is fine and that is all right where nothing else is said, and the end of the scale. */
#define USUALLY_FINE 2
#define USUALLY_MOST 5
#define WORST_PAIN 10

/* The limits that the exercises give themselves; @every is whether each of them gives one, @any whether one does. */
typedef struct
{
  int lowest;
  int highest;
  gboolean every;
  gboolean any;
} Limits;

static Limits
find_limits (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  Limits limits = { .lowest = WORST_PAIN, .highest = 0, .every = TRUE };

  for (guint i = 0; i < items->len; i++)
    {
      int limit;

      if (sw_item_get_kind (items->pdata[i]) != SW_ITEM_EXERCISE)
        continue;
      limit = sw_item_get_dose (items->pdata[i])->pain_limit;
      if (limit < 0)
        {
          limits.every = FALSE;
          continue;
        }
      limits.any = TRUE;
      limits.lowest = MIN (limits.lowest, limit);
      limits.highest = MAX (limits.highest, limit);
    }
  limits.every = limits.every && limits.any;
  return limits;
}

/**
 * sw_compose_pain_sign:
 *
 * Returns: (transfer full): how much pain is a sign to do less, as the exercises' own limits have it
 */
char *
sw_compose_pain_sign (SwComposer  *self,
                      SwProgramme *programme)
{
  Limits limits = find_limits (programme);
  int most = limits.every ? limits.highest : MAX (limits.highest, USUALLY_MOST);
  gboolean differ = limits.any && (!limits.every || limits.lowest < limits.highest);
  g_autofree char *n = g_strdup_printf ("%d", most);

  return sw_phrases_format (self->phrases, differ ? "stop.pain-own" : "stop.pain", "n", n, NULL);
}

/* A zone of the scale from 0 to 10, up to and with @last; nothing when the one before ends there too. */
typedef struct
{
  int last;
  const char *meaning;
  double bar_pt;
} Zone;

#define MOST_ZONES 3

static void
add_zones (SwFlow     *flow,
           const Zone  zones[MOST_ZONES])
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  double gap_pt = 0.8 * body_pt;
  double bottom_pt = flow->y_pt;
  double zone_pt;
  int first = 0;
  guint n_zones = 0;
  guint n = 0;

  for (guint i = 0; i < MOST_ZONES; i++)
    n_zones += zones[i].last > (i > 0 ? zones[i - 1].last : -1);
  zone_pt = (flow->width_pt - (n_zones - 1) * gap_pt) / n_zones;
  for (guint i = 0; i < MOST_ZONES; i++)
    {
      g_autofree char *range = NULL;
      SwFlow zone = *flow;

      if (zones[i].last < first)
        continue;
      if (self->style.columns)
        {
          zone.left_pt += n * (zone_pt + gap_pt);
          zone.width_pt = zone_pt;
        }
      else
        zone.y_pt = bottom_pt + (n > 0 ? 0.4 * body_pt : 0.0);
      range = sw_phrases_range (self->phrases, first, zones[i].last);
      sw_flow_box (&zone, zone.left_pt, zone.y_pt + 7.0 - zones[i].bar_pt, zone.width_pt, zones[i].bar_pt,
                   SW_GREY_TEXT);
      sw_flow_space (&zone, 7.0 + 0.15 * body_pt);
      sw_flow_text_in (&zone, SW_TEXT_AMOUNT, "P", range);
      sw_flow_text_in (&zone, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, zones[i].meaning));
      bottom_pt = MAX (bottom_pt, zone.y_pt);
      first = zones[i].last + 1;
      n++;
    }
  flow->y_pt = bottom_pt;
}

/**
 * sw_compose_pain_guide:
 *
 * How much pain is all right: zones from left to right; thicker bars where pain is worse. They follow the exercises'
 * own limits when each has one: a usual zone beside a stricter limit would leave the client to choose.
 */
void
sw_compose_pain_guide (SwComposer  *self,
                       SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  Limits limits = find_limits (programme);
  const Zone usual[MOST_ZONES] = {
    { USUALLY_FINE, "guide.low-do", 1.5 },
    { USUALLY_MOST, "guide.middle-do", 4.0 },
    { WORST_PAIN, "guide.high-do", 7.0 },
  };
  const Zone own[MOST_ZONES] = {
    { limits.lowest, limits.lowest > 0 ? "guide.middle-do" : "guide.low-do", 1.5 },
    { limits.highest, "guide.some-do", 4.0 },
    { WORST_PAIN, "guide.above-do", 7.0 },
  };
  SwFlow flow = sw_composer_begin (self);

  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "guide.heading"));
  if (limits.any && !limits.every)
    sw_flow_text (&flow, SW_TEXT_SMALL, sw_tags_add (&self->tags, self->parent, "P"),
                  sw_phrases_get (self->phrases, "guide.own"), sw_phrases_get (self->phrases, "guide.own-above"));
  else if (limits.every && limits.lowest < limits.highest)
    sw_flow_text_in (&flow, SW_TEXT_SMALL_STRONG, "P", sw_phrases_get (self->phrases, "guide.own"));
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, "guide.intro"));
  sw_flow_space (&flow, 0.4 * body_pt);
  add_zones (&flow, limits.every ? own : usual);
  sw_flow_space (&flow, 0.3 * body_pt);
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, "guide.effort"));
  sw_composer_end (&flow, 1.0 * body_pt, SW_KEEP_FREE);
}

static gboolean
presses (const SwFigureContent *figure)
{
  return figure->motion == SW_FIGURE_MOTION_PRESS;
}

static gboolean
breathes (const SwFigureContent *figure)
{
  for (int i = 0; i < figure->n_poses; i++)
    if (figure->poses[i].breath != SW_FIGURE_BREATH_NONE)
      return TRUE;

  return FALSE;
}

static gboolean
any_figure (GPtrArray *exercises,
            gboolean (*has_mark) (const SwFigureContent *figure))
{
  for (guint i = 0; i < exercises->len; i++)
    {
      SwFigureSpec *spec = sw_exercise_get_figure (exercises->pdata[i]);

      if (spec != NULL && has_mark (sw_figure_spec_get_content (spec)))
        return TRUE;
    }
  return FALSE;
}

/**
 * sw_compose_key:
 * @exercises: (element-type SwExercise): the programme's
 *
 * The marks that the pictures use, each with its meaning; rare ones only when a picture has them.
 */
void
sw_compose_key (SwComposer *self,
                GPtrArray  *exercises)
{
  const struct
  {
    SwSymbol symbol;
    const char *key;
    gboolean leave_out;
  } marks[] = {
    { SW_SYMBOL_KEY_ORDER, "key.order" }, { SW_SYMBOL_KEY_START, "key.start" }, { SW_SYMBOL_KEY_ARROW, "key.arrow" },
    { SW_SYMBOL_KEY_BACK, "key.back" },   { SW_SYMBOL_KEY_HOLD, "key.hold" },   { SW_SYMBOL_KEY_WORKS, "key.works" },
    { SW_SYMBOL_KEY_LIMBS, "key.limbs" }, { SW_SYMBOL_KEY_TURNS, "key.turns" }, { SW_SYMBOL_KEY_RING, "key.ring" },
    { SW_SYMBOL_KEY_PRESS, "key.press", !any_figure (exercises, presses) },
    { SW_SYMBOL_KEY_BREATH, "key.breath", !any_figure (exercises, breathes) },
  };
  double body_pt = self->style.body_pt;
  double size_pt = 1.9 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  guint a_row = self->style.columns ? 5 : 2;
  SwFlow flow = sw_composer_begin (self);
  double cell_pt = flow.width_pt / a_row;
  double row_pt;
  double bottom_pt;
  guint n = 0;

  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "key.heading"));
  sw_flow_space (&flow, 0.3 * body_pt);
  row_pt = bottom_pt = flow.y_pt;
  for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      SwFlow cell = flow;

      if (marks[i].leave_out)
        continue;
      if (n > 0 && n % a_row == 0)
        row_pt = bottom_pt + 0.3 * body_pt;
      cell.y_pt = row_pt;
      cell.left_pt += (n++ % a_row) * cell_pt;
      sw_flow_symbol (&cell, marks[i].symbol, cell.left_pt, cell.y_pt, size_pt, SW_GREY_TEXT);
      if (self->style.columns)
        {
          cell.width_pt = cell_pt - 0.6 * body_pt;
          sw_flow_space (&cell, 1.1 * size_pt);
        }
      else
        {
          cell.left_pt += 1.3 * size_pt;
          cell.width_pt = cell_pt - 1.3 * size_pt - 0.6 * body_pt;
        }
      sw_flow_text_in (&cell, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, marks[i].key));
      bottom_pt = MAX (bottom_pt, MAX (cell.y_pt, row_pt + size_pt));
    }
  flow.y_pt = bottom_pt;
  sw_composer_end (&flow, 1.0 * body_pt, SW_KEEP_FREE);
}
