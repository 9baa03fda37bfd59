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
          SwFigureSigns signs;

          sw_compose_picture (self, items->pdata[k], &signs, NULL);
          all |= signs;
        }
    }
  return all;
}

/**
 * sw_compose_key:
 *
 * The marks that the programme's pictures use, each with its meaning, and no other.
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
  };
  SwFigureSigns signs = collect_signs (self, programme);
  double body_pt = self->style.body_pt;
  double size_pt = 1.9 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  guint a_row = self->style.columns ? 5 : 2;
  double cell_pt = self->width_pt / a_row;
  double row_pt;
  double bottom_pt;
  guint n = 0;
  SwFlow flow;

  if (signs == 0)
    return;

  flow = sw_composer_begin (self);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "key.heading"));
  sw_flow_space (&flow, 0.3 * body_pt);
  row_pt = bottom_pt = flow.y_pt;
  for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      SwFlow cell = flow;

      if ((signs & marks[i].sign) == 0)
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
