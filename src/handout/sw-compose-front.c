/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first page: who it is for, what it is for, when, what is needed, and before anything else when to stop. */
#include "config.h"

#include "sw-care.h"
#include "sw-compose.h"

#define STOP_FRAME_PT 2.4
#define CARE_FRAME_PT 2.2

/* Clinic at the left, day at the right, a heavy rule below. */
static void
compose_masthead (SwComposer  *self,
                  SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  SwClinic *clinic = sw_programme_get_clinic (programme);
  g_autofree char *from = sw_compose_clinic (self->phrases, clinic);
  g_autofree char *day = sw_phrases_date (self->phrases, self->date);
  SwFlow flow = sw_composer_begin (self);
  SwFlow right = flow;
  PangoLayout *day_layout = sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, day);
  int day_width;

  pango_layout_get_size (day_layout, &day_width, NULL);
  right.width_pt = (double) day_width / PANGO_SCALE + 1.0;
  right.left_pt = flow.left_pt + flow.width_pt - right.width_pt;
  flow.width_pt -= right.width_pt + self->style.column_gap_pt;

  if (sw_text_is_set (from))
    sw_flow_text_in (&flow, SW_TEXT_SMALL_STRONG, "P", from);
  sw_flow_text_in (&right, SW_TEXT_SMALL, "P", day);
  flow.y_pt = MAX (flow.y_pt, right.y_pt);
  sw_flow_space (&flow, 0.3 * body_pt);
  sw_flow_box (&flow, self->left_pt, flow.y_pt, self->width_pt, 3.0, SW_GREY_TEXT);
  sw_flow_space (&flow, 3.0);
  sw_composer_end (&flow, 0.0, SW_KEEP_ALWAYS);
}

static void
compose_title (SwComposer  *self,
               SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  SwClient *client = sw_programme_get_client (programme);
  const char *title = sw_programme_get_title (programme);
  g_auto (GStrv) goals = g_strsplit (sw_client_get_goals (client), "\n", -1);
  guint n_goals = 0;

  sw_composer_paragraph (self, SW_TEXT_TITLE, "H1", NULL,
                         sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "front.title"),
                         0.7 * body_pt, SW_KEEP_ALWAYS);
  if (sw_text_is_set (sw_client_get_name (client)))
    {
      g_autofree char *line
          = sw_phrases_format (self->phrases, "front.for", "name", sw_client_get_name (client), NULL);

      sw_composer_paragraph (self, SW_TEXT_NAME, "P", NULL, line, 0.05 * body_pt, SW_KEEP_TOGETHER);
    }

  for (guint i = 0; goals[i] != NULL; i++)
    n_goals += sw_text_is_set (g_strstrip (goals[i]));
  for (guint i = 0, told = 0; goals[i] != NULL; i++)
    if (sw_text_is_set (goals[i]))
      {
        const char *label = sw_phrases_get (self->phrases, n_goals > 1 ? "front.goals" : "front.goal");

        sw_composer_paragraph (self, SW_TEXT_BODY, "P", told == 0 ? label : NULL, goals[i],
                               (told == 0 ? 0.5 : 0.1) * body_pt, SW_KEEP_TOGETHER);
        told++;
      }
}

static void
add_week_strip (SwFlow *flow,
                SwSet   days)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  double day_pt = sw_compose_widest_day_pt (self, SW_TEXT_SMALL_STRONG) + 0.4 * size_pt;
  double cell_pt = MIN (flow->width_pt / 7.0, MAX (3.0 * size_pt, day_pt));
  double box_pt = 1.25 * size_pt;
  SwFlow below = *flow;

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    {
      gboolean on = (days & SW_SET (day)) != 0;
      SwFlow cell = *flow;
      const char *name = sw_phrases_get (self->phrases, sw_compose_day_key ("day-short", day));
      PangoLayout *layout
          = sw_composer_get_layout (self, on ? SW_TEXT_SMALL_STRONG : SW_TEXT_SMALL, -1.0, NULL, name);
      int width;

      pango_layout_get_size (layout, &width, NULL);
      cell.left_pt += day * cell_pt;
      cell.width_pt = cell_pt;
      sw_flow_text (&cell, on ? SW_TEXT_SMALL_STRONG : SW_TEXT_SMALL, NULL, NULL, name);
      sw_flow_symbol (&cell, on ? SW_SYMBOL_BOX_TICKED : SW_SYMBOL_BOX_OFF,
                      cell.left_pt + ((double) width / PANGO_SCALE - box_pt) / 2.0, cell.y_pt + 0.1 * size_pt, box_pt,
                      SW_GREY_TEXT);
      below.y_pt = cell.y_pt + 0.1 * size_pt + box_pt;
    }

  flow->y_pt = below.y_pt;
}

static void
add_week (SwFlow      *flow,
          SwProgramme *programme)
{
  SwComposer *self = flow->composer;
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);

  sw_flow_text_in (flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "front.week"));
  for (guint i = 0; i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autofree char *when = sw_compose_when (self->phrases, session);
      const char *title = sw_session_get_title (session);

      sw_flow_space (flow, (i == 0 ? 0.15 : 0.7) * self->style.body_pt);
      sw_flow_text (flow, SW_TEXT_BODY, sw_tags_add (&self->tags, self->parent, "P"),
                    sw_text_is_set (title) ? title : NULL, when);
      if (sw_session_get_days (session) != 0)
        {
          sw_flow_space (flow, 0.25 * self->style.body_pt);
          add_week_strip (flow, sw_session_get_days (session));
        }
    }
}

static SwSet
collect_equipment (SwProgramme *programme)
{
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
  SwSet equipment = 0;

  for (guint i = 0; i < exercises->len; i++)
    equipment |= sw_exercise_get_facts (g_ptr_array_index (exercises, i))->equipment;

  return equipment;
}

static void
add_needs (SwFlow      *flow,
           SwProgramme *programme)
{
  SwComposer *self = flow->composer;
  SwSet equipment = collect_equipment (programme);
  g_auto (GStrv) names = sw_compose_equipment (self->phrases, equipment);

  sw_flow_text_in (flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "front.need"));
  sw_flow_space (flow, 0.15 * self->style.body_pt);
  if (names[0] == NULL)
    sw_flow_text_in (flow, SW_TEXT_BODY, "P", sw_phrases_get (self->phrases, "front.need-nothing"));
  else
    sw_flow_list (flow, SW_TEXT_BODY, SW_SYMBOL_BULLET, (const char *const *) names);
}

static void
compose_week_and_needs (SwComposer  *self,
                        SwProgramme *programme)
{
  double space_pt = 0.9 * self->style.body_pt;
  SwFlow flow = sw_composer_begin (self);

  if (self->style.columns)
    {
      SwFlow right = flow;

      flow.width_pt = 0.60 * (flow.width_pt - self->style.column_gap_pt);
      right.left_pt = flow.left_pt + flow.width_pt + self->style.column_gap_pt;
      right.width_pt = self->left_pt + self->width_pt - right.left_pt;
      add_week (&flow, programme);
      add_needs (&right, programme);
      flow.y_pt = MAX (flow.y_pt, right.y_pt);
      sw_composer_end (&flow, space_pt, SW_KEEP_TOGETHER);
      return;
    }

  add_week (&flow, programme);
  sw_composer_end (&flow, space_pt, SW_KEEP_TOGETHER);
  flow = sw_composer_begin (self);
  add_needs (&flow, programme);
  sw_composer_end (&flow, space_pt, SW_KEEP_TOGETHER);
}

static void
compose_general_care (SwComposer *self,
                      SwClient   *client)
{
  g_auto (GStrv) words = sw_care_general_words (self->phrases, sw_client_get_precautions (client));
  g_autofree char *text = sw_phrases_sentences (self->phrases, (const char *const *) words);
  SwFlow flow;

  if (!sw_text_is_set (text))
    return;
  flow = sw_composer_begin (self);
  sw_flow_boxed (&flow, SW_SYMBOL_TAKE_CARE, CARE_FRAME_PT, SW_TEXT_SMALL,
                 sw_phrases_get (self->phrases, "care.heading-general"), text);
  sw_composer_end (&flow, 0.9 * self->style.body_pt, SW_KEEP_TOGETHER);
}

/* One group of signs; @lead says what to do, the signs follow as a list. */
static void
add_signs (SwFlow             *flow,
           const char         *lead,
           const char * const *keys)
{
  SwComposer *self = flow->composer;
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) signs = NULL;

  for (guint i = 0; keys[i] != NULL; i++)
    g_strv_builder_add (builder, sw_phrases_get (self->phrases, keys[i]));
  signs = g_strv_builder_end (builder);

  sw_flow_text_in (flow, SW_TEXT_SMALL_STRONG, "P", lead);
  sw_flow_space (flow, 0.1 * self->style.body_pt);
  sw_flow_list (flow, SW_TEXT_SMALL, SW_SYMBOL_BULLET, (const char *const *) signs);
}

static void
compose_signs (SwComposer         *self,
               const char         *lead,
               const char * const *keys)
{
  SwFlow flow = sw_composer_begin (self);

  sw_flow_space (&flow, 0.45 * self->style.body_pt);
  add_signs (&flow, lead, keys);
  sw_composer_end (&flow, 0.0, SW_KEEP_TOGETHER);
}

/* The two groups for which to call somebody, side by side where there is room. */
static void
compose_calls (SwComposer         *self,
               const char         *call_now,
               const char * const *emergency,
               const char         *call_today,
               const char * const *today)
{
  SwFlow left;
  SwFlow right;

  if (!self->style.columns)
    {
      compose_signs (self, call_now, emergency);
      compose_signs (self, call_today, today);
      return;
    }

  left = sw_composer_begin (self);
  sw_flow_space (&left, 0.45 * self->style.body_pt);
  right = left;
  left.width_pt = 0.47 * (left.width_pt - self->style.column_gap_pt);
  right.left_pt += left.width_pt + self->style.column_gap_pt;
  right.width_pt -= left.width_pt + self->style.column_gap_pt;
  add_signs (&left, call_now, emergency);
  add_signs (&right, call_today, today);
  left.y_pt = MAX (left.y_pt, right.y_pt);
  sw_composer_end (&left, 0.0, SW_KEEP_TOGETHER);
}

/* White words on a black band, the heaviest thing in the whole handout. */
static void
compose_stop_band (SwComposer *self)
{
  double size_pt = sw_style_get_size_pt (&self->style, SW_TEXT_NAME);
  SwFlow flow = sw_composer_begin (self);
  SwPiece *band;
  guint band_index = flow.block->pieces->len;
  double pad_pt = 0.3 * size_pt;

  sw_flow_box (&flow, self->frame_left_pt, 0.0, self->frame_width_pt, 0.0, SW_GREY_TEXT);
  flow.y_pt = pad_pt;
  sw_flow_symbol (&flow, SW_SYMBOL_STOP, flow.left_pt, flow.y_pt + 0.12 * size_pt, 1.1 * size_pt, 1.0);
  flow.left_pt += 1.6 * size_pt;
  flow.width_pt -= 1.6 * size_pt;
  sw_flow_text_in (&flow, SW_TEXT_NAME, "H2", sw_phrases_get (self->phrases, "stop.heading"));
  g_array_index (flow.block->pieces, SwPiece, flow.block->pieces->len - 1).grey = 1.0;
  sw_flow_space (&flow, pad_pt);
  band = &g_array_index (flow.block->pieces, SwPiece, band_index);
  band->height_pt = flow.y_pt;
  sw_composer_end (&flow, 1.0 * self->style.body_pt, SW_KEEP_ALWAYS);
}

static void
compose_stop (SwComposer  *self,
              SwProgramme *programme)
{
  static const char *const emergency[] = { "stop.chest", "stop.breath", "stop.stroke", "stop.cauda", NULL };
  static const char *const maternity[] = { "stop.bleeding",    "stop.tightening", "stop.short-breath",
                                           "stop.unwell", "stop.weak",  "stop.baby", NULL };
  static const char *const same_day[] = { "stop.dizzy", "stop.heartbeat", "stop.sick", "stop.nerve",
                                          "stop.calf",  "stop.joint",     NULL };
  static const char *const next_time[] = { "stop.pain", NULL };
  SwClinic *clinic = sw_programme_get_clinic (programme);
  SwSet precautions = sw_client_get_precautions (sw_programme_get_client (programme));
  const char *number = sw_clinic_get_emergency_number (clinic);
  double gap_pt = 0.45 * self->style.body_pt;
  g_autofree char *call_now
      = sw_text_is_set (number) ? sw_phrases_format (self->phrases, "stop.emergency", "number", number, NULL)
                        : g_strdup (sw_phrases_get (self->phrases, "stop.emergency-no-number"));

  sw_composer_open (self, "Sect");
  sw_composer_open_frame (self, STOP_FRAME_PT);
  compose_stop_band (self);
  compose_calls (self, call_now, emergency, sw_phrases_get (self->phrases, "stop.same-day"), same_day);
  if ((precautions & SW_SET (SW_PRECAUTION_PREGNANCY)) != 0)
    compose_signs (self, sw_phrases_get (self->phrases, "stop.maternity"), maternity);
  compose_signs (self, sw_phrases_get (self->phrases, "stop.next-time"), next_time);

  if (sw_text_is_set (sw_clinic_get_phone (clinic)))
    {
      g_autofree char *call
          = sw_phrases_format (self->phrases, "stop.call", "phone", sw_clinic_get_phone (clinic), NULL);

      sw_composer_paragraph (self, SW_TEXT_STRONG, "P", NULL, call, gap_pt, SW_KEEP_TOGETHER);
    }
  sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_phrases_get (self->phrases, "stop.first"), 0.2 * gap_pt,
                         SW_KEEP_FREE);
  sw_composer_close_frame (self);
  sw_composer_close (self);
}

/* Three zones from left to right, as wide as the numbers they hold; thicker bars where pain is worse. */
static void
compose_pain_guide (SwComposer *self)
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
        = { sw_phrases_get (self->phrases, "guide.own"), sw_phrases_get (self->phrases, "guide.effort"), NULL };
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

/* The marks that the pictures use, each with its meaning; rare ones only when a picture has them. */
static void
compose_key (SwComposer *self,
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

/**
 * sw_compose_front:
 *
 * Composes everything that comes before the exercises.
 */
void
sw_compose_front (SwComposer  *self,
                  SwProgramme *programme)
{
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);

  compose_masthead (self, programme);
  compose_title (self, programme);
  compose_week_and_needs (self, programme);
  compose_general_care (self, sw_programme_get_client (programme));
  compose_stop (self, programme);
  compose_pain_guide (self);
  if (exercises->len > 0)
    compose_key (self, exercises);
}
