/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * When to stop and whom to call: the heaviest thing in the whole handout. */
#include "config.h"

#include "sw-compose.h"

#define STOP_FRAME_PT 2.4

/* One group of signs; @lead says what to do, the signs follow as a list. */
static void
add_signs (SwFlow             *flow,
           const char         *lead,
           const char * const *signs)
{
  sw_flow_text_in (flow, SW_TEXT_SMALL_STRONG, "P", lead);
  sw_flow_space (flow, 0.1 * flow->composer->style.body_pt);
  sw_flow_list (flow, SW_TEXT_SMALL, SW_SYMBOL_BULLET, signs);
}

static void
add_usual_signs (SwFlow             *flow,
                 const char         *lead,
                 const char * const *keys)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) signs = NULL;

  for (guint i = 0; keys[i] != NULL; i++)
    g_strv_builder_add (builder, sw_phrases_get (flow->composer->phrases, keys[i]));
  signs = g_strv_builder_end (builder);
  add_signs (flow, lead, (const char *const *) signs);
}

static void
compose_signs (SwComposer         *self,
               const char         *lead,
               const char * const *keys)
{
  SwFlow flow = sw_composer_begin (self);

  sw_flow_space (&flow, 0.45 * self->style.body_pt * self->front_gap);
  add_usual_signs (&flow, lead, keys);
  sw_composer_end (&flow, 0.0, SW_KEEP_TOGETHER);
}

/* The sign to do less the next time; where there is a guide to pain, it alone says what to do. */
static void
compose_pain_sign (SwComposer  *self,
                   SwProgramme *programme)
{
  g_autofree char *sign = NULL;
  SwFlow flow;

  if (sw_composer_shows (self, SW_PAGE_PART_PAIN_GUIDE))
    {
      g_autofree char *see = sw_phrases_format (self->phrases, "stop.pain-see", "name",
                                                sw_phrases_get (self->phrases, "guide.heading"), NULL);

      sw_composer_paragraph (self, SW_TEXT_SMALL_STRONG, "P", NULL, see,
                             0.45 * self->style.body_pt * self->front_gap, SW_KEEP_TOGETHER);
      return;
    }

  sign = sw_compose_pain_sign (self, programme);
  flow = sw_composer_begin (self);
  sw_flow_space (&flow, 0.45 * self->style.body_pt * self->front_gap);
  add_signs (&flow, sw_phrases_get (self->phrases, "stop.next-time"), (const char *const[]){ sign, NULL });
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
  sw_flow_space (&left, 0.45 * self->style.body_pt * self->front_gap);
  right = left;
  left.width_pt = 0.47 * (left.width_pt - self->style.column_gap_pt);
  right.left_pt += left.width_pt + self->style.column_gap_pt;
  right.width_pt -= left.width_pt + self->style.column_gap_pt;
  add_usual_signs (&left, call_now, emergency);
  add_usual_signs (&right, call_today, today);
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
  sw_composer_end (&flow, 1.0 * self->style.body_pt * self->front_gap, SW_KEEP_ALWAYS);
}

static void
compose_call_clinic (SwComposer *self,
                     SwClinic   *clinic,
                     double      gap_pt)
{
  if (sw_text_is_set (sw_clinic_get_phone (clinic)))
    {
      g_autofree char *call
          = sw_phrases_format (self->phrases, "stop.call", "phone", sw_clinic_get_phone (clinic), NULL);

      sw_composer_paragraph (self, SW_TEXT_STRONG, "P", NULL, call, gap_pt, SW_KEEP_TOGETHER);
    }
  sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_phrases_get (self->phrases, "stop.first"), 0.2 * gap_pt,
                         SW_KEEP_FREE);
}

static char *
dup_call_now (SwComposer *self,
              SwClinic   *clinic,
              const char *with_number,
              const char *without)
{
  const char *number = sw_clinic_get_emergency_number (clinic);

  return sw_text_is_set (number) ? sw_phrases_format (self->phrases, with_number, "number", number, NULL)
                                 : g_strdup (sw_phrases_get (self->phrases, without));
}

/**
 * sw_compose_stop_short_in:
 *
 * When to stop and whom to call, in a few sentences in a box: no handout goes without.
 */
void
sw_compose_stop_short_in (SwFlow      *flow,
                          SwProgramme *programme)
{
  SwComposer *self = flow->composer;
  SwClinic *clinic = sw_programme_get_clinic (programme);
  SwSet precautions = sw_client_get_precautions (sw_programme_get_client (programme));
  gboolean pregnant = (precautions & SW_SET (SW_PRECAUTION_PREGNANCY)) != 0;
  g_autofree char *now = dup_call_now (self, clinic, "stop.short", "stop.short-no-number");
  const char *phone = sw_clinic_get_phone (clinic);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) sentences = NULL;
  g_autofree char *text = NULL;

  g_strv_builder_add (builder, now);
  if (pregnant)
    g_strv_builder_add (builder, sw_phrases_get (self->phrases, "stop.short-maternity"));
  g_strv_builder_add_many (builder, sw_phrases_get (self->phrases, "stop.short-same-day"),
                           sw_phrases_get (self->phrases, "stop.first"), NULL);
  if (sw_text_is_set (phone))
    {
      g_autofree char *call = sw_phrases_format (self->phrases, "stop.call", "phone", phone, NULL);

      g_strv_builder_add (builder, call);
    }
  sentences = g_strv_builder_end (builder);
  text = sw_phrases_sentences (self->phrases, (const char *const *) sentences);
  sw_flow_boxed (flow, SW_SYMBOL_STOP, STOP_FRAME_PT, SW_TEXT_SMALL, sw_phrases_get (self->phrases, "stop.heading"),
                 text);
}

/**
 * sw_compose_stop_short:
 * @space_pt: white space before it
 *
 * The same across the page.
 */
void
sw_compose_stop_short (SwComposer  *self,
                       SwProgramme *programme,
                       double       space_pt)
{
  SwFlow flow = sw_composer_begin (self);

  sw_compose_stop_short_in (&flow, programme);
  sw_composer_end (&flow, space_pt, SW_KEEP_FREE);
}

/**
 * sw_compose_stop:
 *
 * The signs to stop for, what to do then, and whom to call.
 */
void
sw_compose_stop (SwComposer  *self,
                 SwProgramme *programme)
{
  static const char *const emergency[] = { "stop.chest", "stop.breath", "stop.stroke", "stop.cauda", NULL };
  static const char *const maternity[] = { "stop.bleeding",    "stop.tightening", "stop.short-breath",
                                           "stop.unwell", "stop.weak",  "stop.baby", NULL };
  static const char *const same_day[] = { "stop.dizzy", "stop.heartbeat", "stop.sick", "stop.nerve",
                                          "stop.calf",  "stop.joint",     NULL };
  SwClinic *clinic = sw_programme_get_clinic (programme);
  SwSet precautions = sw_client_get_precautions (sw_programme_get_client (programme));
  double gap_pt = 0.45 * self->style.body_pt * self->front_gap;
  g_autofree char *call_now = dup_call_now (self, clinic, "stop.emergency", "stop.emergency-no-number");

  sw_composer_open (self, "Sect");
  sw_composer_open_frame (self, STOP_FRAME_PT);
  compose_stop_band (self);
  compose_calls (self, call_now, emergency, sw_phrases_get (self->phrases, "stop.same-day"), same_day);
  if ((precautions & SW_SET (SW_PRECAUTION_PREGNANCY)) != 0)
    compose_signs (self, sw_phrases_get (self->phrases, "stop.maternity"), maternity);
  compose_pain_sign (self, programme);
  compose_call_clinic (self, clinic, gap_pt);
  sw_composer_close_frame (self);
  sw_composer_close (self);
}
