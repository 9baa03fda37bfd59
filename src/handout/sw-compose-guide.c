/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How to read the pages: how much pain is all right, and what the marks in the pictures mean. */
#include "config.h"

#include "sw-compose.h"

/**
 * sw_compose_pain_guide:
 *
 * How much pain is all right: three zones from left to right; thicker bars where pain is worse.
 */
void
sw_compose_pain_guide (SwComposer *self)
{
  static const struct
  {
    const char *range;
    const char *meaning;
    double bar_pt;
  } zones[] = {
    { "guide.low", "guide.low-do", 1.5 },
    { "guide.middle", "guide.middle-do", 4.0 },
    { "guide.high", "guide.high-do", 7.0 },
  };
  double body_pt = self->style.body_pt;
  SwFlow flow = sw_composer_begin (self);
  double gap_pt = 0.8 * body_pt;
  double zone_pt = (flow.width_pt - 2.0 * gap_pt) / 3.0;
  double bottom_pt;

  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "guide.heading"));
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, "guide.intro"));
  sw_flow_space (&flow, 0.4 * body_pt);
  bottom_pt = flow.y_pt;
  for (guint i = 0; i < G_N_ELEMENTS (zones); i++)
    {
      SwFlow zone = flow;

      if (self->style.columns)
        {
          zone.left_pt += i * (zone_pt + gap_pt);
          zone.width_pt = zone_pt;
        }
      else
        zone.y_pt = bottom_pt + (i > 0 ? 0.4 * body_pt : 0.0);
      sw_flow_box (&zone, zone.left_pt, zone.y_pt + 7.0 - zones[i].bar_pt, zone.width_pt, zones[i].bar_pt,
                   SW_GREY_TEXT);
      sw_flow_space (&zone, 7.0 + 0.15 * body_pt);
      sw_flow_text_in (&zone, SW_TEXT_AMOUNT, "P", sw_phrases_get (self->phrases, zones[i].range));
      sw_flow_text_in (&zone, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, zones[i].meaning));
      bottom_pt = MAX (bottom_pt, zone.y_pt);
    }
  flow.y_pt = bottom_pt;
  sw_flow_space (&flow, 0.3 * body_pt);
  {
    const char *const sentences[]
        = { sw_phrases_get (self->phrases, "guide.own"), sw_phrases_get (self->phrases, "guide.own-above"),
            sw_phrases_get (self->phrases, "guide.effort"), NULL };
    g_autofree char *rest = sw_phrases_sentences (self->phrases, sentences);

    sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", rest);
  }
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
