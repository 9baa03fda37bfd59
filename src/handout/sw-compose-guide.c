/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How to read the pages: how much pain is all right, and what the marks in the pictures mean. */
#include "config.h"

#include "sw-compose.h"
#include "sw-note-words.h"

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
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, "guide.morning"));
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, "guide.effort"));
  sw_composer_end (&flow, 1.0 * body_pt, SW_KEEP_FREE);
}

/* What the picture shows that has to be explained, at the sizes of the pages. Numbers may depend on the size. */
static SwFigureSigns
find_signs (SwComposer *self,
            SwFigure   *figure)
{
  const double widths_pt[] = { self->style.figure_width_pt, self->style.large_figure_width_pt };
  SwFigureSigns signs = 0;

  for (guint i = 0; i < G_N_ELEMENTS (widths_pt); i++)
    {
      double height_pt;

      sw_figure_measure (figure, widths_pt[i], &height_pt);
      signs |= sw_figure_get_signs (figure, widths_pt[i], height_pt);
    }
  return signs;
}

/* What the programme's pictures show. Whoever tells the exercise reports a picture that cannot be drawn. */
static SwFigureSigns
collect_signs (SwComposer  *self,
               SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  SwFigureSigns all = 0;

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_compose_collect_exercises (session);

      for (guint k = 0; k < items->len; k++)
        {
          SwFigure *figure = sw_compose_picture (self, items->pdata[k], NULL);

          if (figure != NULL)
            all |= find_signs (self, figure);
        }
    }
  return all;
}

static guint
count_a_row (const SwComposer *self)
{
  return self->style.columns ? 5 : 2;
}

static gboolean
has_notes (SwComposer  *self,
           SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    {
      g_autofree char *note = sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE
                                  ? sw_note_words (self->phrases, programme, items->pdata[i])
                                  : NULL;

      if (sw_text_is_set (note))
        return TRUE;
    }

  return FALSE;
}

/* The next cell of the key. @n: how many there are already. Returns: where its words end */
static double
add_mark (SwFlow     *row,
          guint       n,
          SwSymbol    symbol,
          const char *key)
{
  SwComposer *self = row->composer;
  double body_pt = self->style.body_pt;
  double size_pt = 1.9 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  guint a_row = count_a_row (self);
  SwFlow cell = *row;

  cell.width_pt = row->width_pt / a_row;
  cell.left_pt += n % a_row * cell.width_pt;
  sw_flow_symbol (&cell, symbol, cell.left_pt, cell.y_pt, size_pt, SW_GREY_TEXT);
  cell.width_pt -= 0.6 * body_pt;
  if (self->style.columns)
    sw_flow_space (&cell, 1.1 * size_pt);
  else
    {
      cell.left_pt += 1.3 * size_pt;
      cell.width_pt -= 1.3 * size_pt;
    }
  sw_flow_text_in (&cell, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, key));
  return MAX (cell.y_pt, row->y_pt + size_pt);
}

/**
 * sw_compose_key:
 *
 * The marks that the programme's pictures use, each with its meaning, and no other; and that a note counts more.
 */
void
sw_compose_key (SwComposer  *self,
                SwProgramme *programme)
{
  static const struct
  {
    SwFigureSigns sign;
    SwSymbol symbol;
    const char *key;
  } marks[] = {
    { SW_FIGURE_SIGN_ORDER, SW_SYMBOL_KEY_ORDER, "key.order" },
    { SW_FIGURE_SIGN_START, SW_SYMBOL_KEY_START, "key.start" },
    { SW_FIGURE_SIGN_ARROW, SW_SYMBOL_KEY_ARROW, "key.arrow" },
    { SW_FIGURE_SIGN_BACK, SW_SYMBOL_KEY_BACK, "key.back" },
    { SW_FIGURE_SIGN_HOLD, SW_SYMBOL_KEY_HOLD, "key.hold" },
    { SW_FIGURE_SIGN_WORKS, SW_SYMBOL_KEY_WORKS, "key.works" },
    { SW_FIGURE_SIGN_LIMBS, SW_SYMBOL_KEY_LIMBS, "key.limbs" },
    { SW_FIGURE_SIGN_TURNS, SW_SYMBOL_KEY_TURNS, "key.turns" },
    { SW_FIGURE_SIGN_RING, SW_SYMBOL_KEY_RING, "key.ring" },
    { SW_FIGURE_SIGN_PRESS, SW_SYMBOL_KEY_PRESS, "key.press" },
    { SW_FIGURE_SIGN_BREATH, SW_SYMBOL_KEY_BREATH, "key.breath" },
    { 0, SW_SYMBOL_NOTE, "key.note" },
  };
  SwFigureSigns signs = collect_signs (self, programme);
  double body_pt = self->style.body_pt;
  gboolean notes = has_notes (self, programme);
  double bottom_pt;
  double end_pt;
  guint n = 0;
  SwFlow flow;

  if (signs == 0)
    return;

  flow = sw_composer_begin (self);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "key.heading"));
  sw_flow_space (&flow, 0.3 * body_pt);
  bottom_pt = flow.y_pt;
  for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      if (marks[i].sign != 0 ? (signs & marks[i].sign) == 0 : !notes)
        continue;
      if (n > 0 && n % count_a_row (self) == 0)
        flow.y_pt = bottom_pt + 0.3 * body_pt;
      end_pt = add_mark (&flow, n++, marks[i].symbol, marks[i].key);
      bottom_pt = MAX (bottom_pt, end_pt);
    }
  flow.y_pt = bottom_pt;
  sw_composer_end (&flow, 1.0 * body_pt, SW_KEEP_FREE);
}
