/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writes the <figure> element of an exercise, always the same way: what a missing attribute means is left out, sides
 * that agree are written once, angles stand in the order of their table. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-enum-types.h"
#include "sw-figure-xml.h"

static const char *const side_names[2] = { "right", "left" };

static void
write_word (SwXmlWriter *writer,
            const char  *name,
            GType        type,
            int          value)
{
  g_autoptr (GEnumClass) class = g_type_class_ref (type);

  sw_xml_writer_attribute (writer, name, g_enum_get_value (class, value)->value_nick);
}

/* The zero of each vocabulary is what a missing attribute means. */
static void
write_unless_zero (SwXmlWriter *writer,
                   const char  *name,
                   GType        type,
                   int          value)
{
  if (value != 0)
    write_word (writer, name, type, value);
}

static void
write_extra_attributes (SwXmlWriter  *writer,
                        char        **extras)
{
  for (int i = 0; extras != NULL && extras[i] != NULL; i++)
    if (extras[i][0] == '@')
      {
        char *value = strchr (extras[i], '=');
        g_autofree char *name = g_strndup (extras[i] + 1, (gsize) (value - extras[i] - 1));

        sw_xml_writer_attribute (writer, name, value + 1);
      }
}

static void
write_extra_elements (SwXmlWriter  *writer,
                      char        **extras)
{
  for (int i = 0; extras != NULL && extras[i] != NULL; i++)
    if (extras[i][0] == '<')
      sw_xml_writer_raw (writer, extras[i]);
}

static gboolean
slot_is_set (const SwFigurePose *pose,
             int                 slot)
{
  return (pose->slots_set >> slot & 1) != 0;
}

/* Whether both sides carry the same angles in first..last of one element. */
static gboolean
sides_agree (const SwFigurePose *pose,
             int                 first,
             int                 last)
{
  for (int i = first; i <= last; i++)
    {
      int right = sw_angle_get_slot ((SwAngle) i, SW_FIGURE_RIGHT);
      int left = sw_angle_get_slot ((SwAngle) i, SW_FIGURE_LEFT);

      if (slot_is_set (pose, right) != slot_is_set (pose, left))
        return FALSE;
      if (slot_is_set (pose, right) && fabs (pose->slots_deg[right] - pose->slots_deg[left]) > 0.0)
        return FALSE;
    }
  return TRUE;
}

static void
write_angles (SwXmlWriter        *writer,
              const SwFigurePose *pose,
              int                 first,
              int                 last,
              int                 side,
              const char         *side_word)
{
  gboolean open = FALSE;

  for (int i = first; i <= last; i++)
    {
      const SwAngleInfo *info = sw_angle_get_info ((SwAngle) i);
      int slot = sw_angle_get_slot ((SwAngle) i, (SwFigureSide) side);

      if (!slot_is_set (pose, slot))
        continue;
      if (!open)
        {
          sw_xml_writer_open (writer, info->element);
          if (side_word != NULL)
            sw_xml_writer_attribute (writer, "side", side_word);
          open = TRUE;
        }
      sw_xml_writer_attribute_double (writer, info->attribute, pose->slots_deg[slot]);
    }
  if (open)
    sw_xml_writer_close (writer);
}

static void
write_all_angles (SwXmlWriter        *writer,
                  const SwFigurePose *pose)
{
  for (int first = 0, last; first < (int) SW_N_ANGLES; first = last + 1)
    {
      const char *element = sw_angle_get_info ((SwAngle) first)->element;

      for (last = first; last + 1 < (int) SW_N_ANGLES; last++)
        if (strcmp (sw_angle_get_info ((SwAngle) (last + 1))->element, element) != 0)
          break;

      if (!sw_angle_is_sided ((SwAngle) first))
        write_angles (writer, pose, first, last, SW_FIGURE_RIGHT, NULL);
      else if (sides_agree (pose, first, last))
        write_angles (writer, pose, first, last, SW_FIGURE_RIGHT, "both");
      else
        for (int side = 0; side < 2; side++)
          write_angles (writer, pose, first, last, side, side_names[side]);
    }
}

static void
write_foot (SwXmlWriter        *writer,
            const SwFigurePose *pose,
            int                 side,
            const char         *side_word)
{
  sw_xml_writer_open (writer, "foot");
  sw_xml_writer_attribute (writer, "side", side_word);
  if (pose->foot_free[side])
    sw_xml_writer_attribute (writer, "pitch", "free");
  else
    sw_xml_writer_attribute_double (writer, "pitch", pose->foot_pitch_deg[side]);
  sw_xml_writer_close (writer);
}

static void
write_feet (SwXmlWriter        *writer,
            const SwFigurePose *pose)
{
  gboolean alike = pose->foot_set[0] && pose->foot_set[1] && !pose->foot_free[0] == !pose->foot_free[1]
                   && !(fabs (pose->foot_pitch_deg[0] - pose->foot_pitch_deg[1]) > 0.0);

  if (alike)
    {
      write_foot (writer, pose, 0, "both");
      return;
    }
  for (int side = 0; side < 2; side++)
    if (pose->foot_set[side])
      write_foot (writer, pose, side, side_names[side]);
}

static void
write_hands (SwXmlWriter        *writer,
             const SwFigurePose *pose)
{
  gboolean alike = pose->hands[0] == pose->hands[1];

  for (int side = 0; side < (alike ? 1 : 2); side++)
    {
      if (pose->hands[side] == SW_FIGURE_HAND_INHERIT)
        continue;
      sw_xml_writer_open (writer, "hand");
      sw_xml_writer_attribute (writer, "side", alike ? "both" : side_names[side]);
      write_word (writer, "shape", SW_TYPE_FIGURE_HAND, (int) pose->hands[side]);
      sw_xml_writer_close (writer);
    }
}

static gboolean
pins_pair (const SwFigurePin *a,
           const SwFigurePin *b)
{
  return a->limb == b->limb && a->side != b->side && a->to == b->to && a->toward == b->toward
         && memcmp (a->offset, b->offset, sizeof a->offset) == 0;
}

static void
write_pins (SwXmlWriter        *writer,
            const SwFigurePose *pose)
{
  static const char *const offset_names[3] = { "forward", "out", "up" };

  for (int i = 0; i < pose->n_pins; i++)
    {
      const SwFigurePin *pin = &pose->pins[i];
      gboolean pair = i + 1 < pose->n_pins && pins_pair (pin, pin + 1);

      sw_xml_writer_open (writer, "pin");
      write_word (writer, "part", SW_TYPE_FIGURE_LIMB, (int) pin->limb);
      sw_xml_writer_attribute (writer, "side", pair ? "both" : side_names[pin->side]);
      write_word (writer, "to", SW_TYPE_FIGURE_PLACE, (int) pin->to);
      for (int k = 0; k < 3; k++)
        if (fabs (pin->offset[k]) > 0.0)
          sw_xml_writer_attribute_double (writer, offset_names[k], pin->offset[k]);
      write_unless_zero (writer, pin->limb == SW_FIGURE_LIMB_FOOT ? "knee" : "elbow", SW_TYPE_FIGURE_TOWARD,
                         (int) pin->toward);
      sw_xml_writer_close (writer);
      if (pair)
        i++;
    }
}

static void
write_pose (SwXmlWriter           *writer,
            const SwFigureContent *content,
            int                    n)
{
  const SwFigurePose *pose = &content->poses[n];

  sw_xml_writer_open (writer, "pose");
  if (pose->own_base)
    {
      write_word (writer, "base", SW_TYPE_FIGURE_BASE, (int) pose->base);
      if (pose->on != sw_figure_base_get_on (pose->base))
        sw_xml_writer_attribute (writer, "on", side_names[pose->on]);
      write_unless_zero (writer, "anchor", SW_TYPE_FIGURE_ANCHOR, (int) pose->anchor);
    }
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    if ((pose->root_set >> i & 1) != 0)
      sw_xml_writer_attribute_double (writer, sw_figure_root_get_name (i), pose->root_deg[i]);
  write_unless_zero (writer, "breath", SW_TYPE_FIGURE_BREATH, (int) pose->breath);
  write_unless_zero (writer, "eyes", SW_TYPE_FIGURE_EYES, (int) pose->eyes);
  if (pose->belly > 0)
    sw_xml_writer_attribute_double (writer, "belly", pose->belly);
  if (pose->lift > 0)
    sw_xml_writer_attribute_double (writer, "lift", pose->lift);
  if (pose->step > 0)
    sw_xml_writer_attribute_int (writer, "step", pose->step);
  write_extra_attributes (writer, pose->extras);

  write_all_angles (writer, pose);
  write_feet (writer, pose);
  write_hands (writer, pose);
  write_pins (writer, pose);
  write_extra_elements (writer, pose->extras);
  sw_xml_writer_close (writer);
}

static void
write_motion (SwXmlWriter           *writer,
              const SwFigureContent *content)
{
  g_autoptr (GEnumClass) marks = g_type_class_ref (SW_TYPE_FIGURE_MARK);
  g_autoptr (GEnumClass) ways = g_type_class_ref (SW_TYPE_FIGURE_WAY);
  g_autoptr (GString) shown = g_string_new (NULL);
  g_autoptr (GString) toward = g_string_new (NULL);

  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      if (content->shown[i] != SW_FIGURE_MARK_NONE)
        g_string_append_printf (shown, "%s%s", shown->len > 0 ? " " : "",
                                g_enum_get_value (marks, (int) content->shown[i])->value_nick);
      if (content->toward[i] != SW_FIGURE_WAY_NONE)
        g_string_append_printf (toward, "%s%s", toward->len > 0 ? " " : "",
                                g_enum_get_value (ways, (int) content->toward[i])->value_nick);
    }

  sw_xml_writer_open (writer, "motion");
  write_word (writer, "kind", SW_TYPE_FIGURE_MOTION, (int) content->motion);
  sw_xml_writer_attribute (writer, "show", shown->len > 0 ? shown->str : NULL);
  sw_xml_writer_attribute (writer, "toward", toward->len > 0 ? toward->str : NULL);
  write_unless_zero (writer, "about", SW_TYPE_FIGURE_MARK, (int) content->about);
  if (content->radius_deg > 0)
    sw_xml_writer_attribute_double (writer, "radius", content->radius_deg);
  if (content->both_ways)
    sw_xml_writer_attribute (writer, "way", "both");
  if (content->hold)
    sw_xml_writer_attribute (writer, "hold", "yes");
  write_unless_zero (writer, "sides", SW_TYPE_FIGURE_SIDES, (int) content->sides);
  write_unless_zero (writer, "limbs", SW_TYPE_FIGURE_LIMBS, (int) content->limbs);
  sw_xml_writer_close (writer);
}

static void
write_prop (SwXmlWriter            *writer,
            const SwFigurePropSpec *prop)
{
  sw_xml_writer_open (writer, "prop");
  write_word (writer, "kind", SW_TYPE_FIGURE_PROP, (int) prop->kind);
  write_unless_zero (writer, "where", SW_TYPE_FIGURE_WHERE, (int) prop->where);
  write_unless_zero (writer, "under", SW_TYPE_FIGURE_MARK, (int) prop->under);
  write_unless_zero (writer, "in", SW_TYPE_FIGURE_MARK, (int) prop->in);
  write_unless_zero (writer, "from", SW_TYPE_FIGURE_MARK, (int) prop->from);
  write_unless_zero (writer, "between", SW_TYPE_FIGURE_BETWEEN, (int) prop->between);
  write_unless_zero (writer, "thrown", SW_TYPE_FIGURE_THROWN, (int) prop->thrown);
  if (!isnan (prop->height))
    sw_xml_writer_attribute_double (writer, "height", prop->height);
  if (!isnan (prop->distance))
    sw_xml_writer_attribute_double (writer, "distance", prop->distance);
  write_extra_attributes (writer, prop->extras);
  sw_xml_writer_close (writer);
}

static void
write_work (SwXmlWriter        *writer,
            const SwFigureWork *work)
{
  sw_xml_writer_open (writer, "works");
  write_word (writer, "area", SW_TYPE_FIGURE_AREA, (int) work->area);
  if (sw_figure_area_is_sided (work->area))
    sw_xml_writer_attribute (writer, "side", work->right && work->left ? "both" : work->right ? "right" : "left");
  sw_xml_writer_close (writer);
}

static void
write_view (SwXmlWriter           *writer,
            const SwFigureContent *content)
{
  if (isnan (content->view_turn_deg) && isnan (content->view_tilt_deg) && content->frame == SW_FIGURE_FRAME_AUTO
      && content->layout == SW_FIGURE_LAYOUT_AUTO)
    return;

  sw_xml_writer_open (writer, "view");
  if (!isnan (content->view_turn_deg))
    sw_xml_writer_attribute_double (writer, "turn", content->view_turn_deg);
  if (!isnan (content->view_tilt_deg))
    sw_xml_writer_attribute_double (writer, "tilt", content->view_tilt_deg);
  write_unless_zero (writer, "frame", SW_TYPE_FIGURE_FRAME, (int) content->frame);
  write_unless_zero (writer, "layout", SW_TYPE_FIGURE_LAYOUT, (int) content->layout);
  sw_xml_writer_close (writer);
}

static void
write_inset (SwXmlWriter         *writer,
             const SwFigureInset *inset)
{
  if (inset->around == SW_FIGURE_MARK_NONE)
    return;

  sw_xml_writer_open (writer, "inset");
  write_word (writer, "around", SW_TYPE_FIGURE_MARK, (int) inset->around);
  sw_xml_writer_attribute_double (writer, "turn", inset->turn_deg);
  sw_xml_writer_attribute_double (writer, "tilt", inset->tilt_deg);
  sw_xml_writer_attribute_double (writer, "size", inset->size);
  sw_xml_writer_close (writer);
}

/**
 * sw_figure_xml_write:
 * @spec: a figure
 * @writer: where to write it, within the element that holds it
 *
 * Writes the figure element. Reading it back gives an equal figure, and equal figures give equal bytes.
 */
void
sw_figure_xml_write (SwFigureSpec *spec,
                     SwXmlWriter  *writer)
{
  const SwFigureContent *content = sw_figure_spec_get_content (spec);

  sw_xml_writer_open (writer, "figure");
  write_extra_attributes (writer, content->extras);
  for (int i = 0; i < content->n_poses; i++)
    write_pose (writer, content, i);
  write_motion (writer, content);
  for (int i = 0; i < content->n_props; i++)
    write_prop (writer, &content->props[i]);
  for (int i = 0; i < content->n_works; i++)
    write_work (writer, &content->works[i]);
  write_view (writer, content);
  write_inset (writer, &content->inset);
  write_extra_elements (writer, content->extras);
  sw_xml_writer_close (writer);
}
