/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Who hands the programme over, at the top of the first page. */
#include "config.h"

#include "sw-compose.h"
#include "sw-units.h"

#define LOGO_WIDTH_MM 60.0
#define LOGO_HEIGHT_MM 16.0
#define WALL_LOGO_HEIGHT_MM 10.0
/* Beside the logo there is room for words from this many times the text's size on; else they go below it. */
#define LEAST_ROOM 13.0
/* White space beside the logo, in text sizes. */
#define GAP 1.1

/**
 * sw_compose_logo:
 * @flow: where it goes
 * @clinic: whose it is
 * @most_width_pt: it is no wider than this
 *
 * Draws the logo at the start of the column, its lower edge at the column's new place. Does nothing without one.
 *
 * Returns: its width; 0 without one
 */
double
sw_compose_logo (SwFlow   *flow,
                 SwClinic *clinic,
                 double    most_width_pt)
{
  SwComposer *self = flow->composer;
  const char *name = sw_clinic_get_name (clinic);
  SwTag *tag = NULL;
  SwPiece *piece;
  double width_pt;
  double height_pt;

  if (self->logo == NULL)
    return 0.0;

  /* Without a name there is nothing to tell about it: then it is decoration. */
  if (sw_text_is_set (name))
    {
      tag = sw_tags_add (&self->tags, self->parent, "Figure");
      tag->alt = g_strdup (name);
    }
  sw_logo_picture_fit (self->logo, MIN (most_width_pt, sw_pt_from_mm (LOGO_WIDTH_MM)),
                       sw_pt_from_mm (self->layout == SW_LAYOUT_SUMMARY ? WALL_LOGO_HEIGHT_MM : LOGO_HEIGHT_MM),
                       &width_pt, &height_pt);
  piece = sw_block_add (flow->block, SW_PIECE_PICTURE, tag, flow->left_pt, flow->y_pt, width_pt, height_pt);
  piece->picture = g_object_ref (self->logo);
  flow->y_pt += height_pt;
  return width_pt;
}

/* Name, address and how to reach the clinic. */
static void
add_words (SwFlow   *flow,
           SwClinic *clinic)
{
  SwComposer *self = flow->composer;
  g_autofree char *from = sw_compose_clinic (self->phrases, clinic);
  g_auto (GStrv) lines = g_strsplit (sw_clinic_get_address (clinic), "\n", -1);
  g_autofree char *address = g_strjoinv (", ", lines);
  const char *phone = sw_clinic_get_phone (clinic);
  const char *email = sw_clinic_get_email (clinic);
  g_autofree char *reach = sw_text_is_set (phone) && sw_text_is_set (email) ? g_strjoin (" · ", phone, email, NULL)
                                                                             : g_strconcat (phone, email, NULL);

  if (sw_text_is_set (from))
    sw_flow_text_in (flow, SW_TEXT_SMALL_STRONG, "P", from);
  if (sw_text_is_set (address))
    sw_flow_text_in (flow, SW_TEXT_SMALL, "P", address);
  if (sw_text_is_set (reach))
    sw_flow_text_in (flow, SW_TEXT_SMALL, "P", reach);
}

/* The logo, and the words beside it halfway down; or below it and the day, over the whole width. */
static void
add_letterhead (SwFlow   *flow,
                SwClinic *clinic,
                double    day_bottom_pt,
                double    whole_width_pt)
{
  SwComposer *self = flow->composer;
  double gap_pt = GAP * self->style.body_pt;
  SwFlow words = *flow;
  double logo_pt = sw_compose_logo (flow, clinic, flow->width_pt);
  guint first = flow->block->pieces->len;
  double spare_pt;

  if (flow->width_pt - logo_pt - gap_pt < LEAST_ROOM * self->style.body_pt)
    {
      flow->y_pt = MAX (flow->y_pt, day_bottom_pt) + 0.3 * self->style.body_pt;
      flow->width_pt = whole_width_pt;
      add_words (flow, clinic);
      return;
    }

  words.left_pt += logo_pt + gap_pt;
  words.width_pt -= logo_pt + gap_pt;
  add_words (&words, clinic);
  spare_pt = MAX (0.0, flow->y_pt - words.y_pt);
  for (guint i = first; i < flow->block->pieces->len; i++)
    g_array_index (flow->block->pieces, SwPiece, i).y_pt += spare_pt / 2.0;
  flow->y_pt = MAX (flow->y_pt, words.y_pt);
}

/**
 * sw_compose_letterhead:
 *
 * Clinic where lines begin, day where they end, a heavy rule below.
 */
void
sw_compose_letterhead (SwComposer  *self,
                       SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  SwClinic *clinic = sw_programme_get_clinic (programme);
  g_autofree char *from = sw_compose_clinic (self->phrases, clinic);
  g_autofree char *day = sw_phrases_date (self->phrases, self->date);
  SwFlow flow = sw_composer_begin (self);
  SwFlow right = flow;
  double whole_pt = flow.width_pt;
  PangoLayout *day_layout = sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, day);
  int day_width;
  int day_height;

  pango_layout_get_size (day_layout, &day_width, &day_height);
  right.width_pt = (double) day_width / PANGO_SCALE + 1.0;
  right.left_pt = flow.left_pt + flow.width_pt - right.width_pt;
  flow.width_pt -= right.width_pt + self->style.column_gap_pt;

  if (sw_composer_shows (self, SW_PAGE_PART_LETTERHEAD) && self->logo != NULL)
    add_letterhead (&flow, clinic, (double) day_height / PANGO_SCALE, whole_pt);
  else if (sw_composer_shows (self, SW_PAGE_PART_LETTERHEAD) && sw_text_is_set (from))
    sw_flow_text_in (&flow, SW_TEXT_SMALL_STRONG, "P", from);
  sw_flow_text_in (&right, SW_TEXT_SMALL, "P", day);
  flow.y_pt = MAX (flow.y_pt, right.y_pt);
  sw_flow_space (&flow, 0.3 * body_pt);
  sw_flow_box (&flow, self->left_pt, flow.y_pt, self->width_pt, 3.0, SW_GREY_TEXT);
  sw_flow_space (&flow, 3.0);
  sw_composer_end (&flow, 0.0, SW_KEEP_ALWAYS);
}
