/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads the <figure> element of an exercise; sw-figure-xml-write.c writes it. What every element and attribute means, with
 * two whole examples, stands in data/schema/figure.rng; the angles and their limits in src/model/sw-angle.c. */
#include "config.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "sw-enum-types.h"
#include "sw-extras.h"
#include "sw-figure-xml.h"


static char *
list_words (GType type)
{
  g_autoptr (GEnumClass) class = g_type_class_ref (type);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < class->n_values; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", class->values[i].value_nick);

  return g_string_free (text, FALSE);
}

static gboolean
parse_word (const xmlNode  *node,
            const char     *name,
            const char     *word,
            GType           type,
            int            *out,
            GError        **error)
{
  g_autoptr (GEnumClass) class = g_type_class_ref (type);
  g_autofree char *words = NULL;
  GEnumValue *value = g_enum_get_value_by_nick (class, word);

  if (value != NULL)
    {
      *out = value->value;
      return TRUE;
    }

  words = list_words (type);
  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                    _ ("“%s” is “%s”, which no figure knows. Write one of: %s."), name, word, words);
  return FALSE;
}

/* A missing attribute leaves *out alone. */
static gboolean
read_word (const xmlNode  *node,
           const char     *name,
           GType           type,
           void           *out,
           GError        **error)
{
  g_autofree char *word = sw_xml_dup_attribute (node, name);
  int value;

  if (word == NULL)
    return TRUE;
  if (!parse_word (node, name, word, type, &value, error))
    return FALSE;

  memcpy (out, &value, sizeof value);
  return TRUE;
}

/* Rounded to the decimals that are written, so that reading what was written changes nothing. */
static gboolean
read_number (const xmlNode  *node,
             const char     *name,
             double          low,
             double          high,
             double          fallback,
             double         *out,
             GError        **error)
{
  double value = fallback;

  if (!sw_xml_read_double (node, name, low, high, fallback, &value, error))
    return FALSE;

  *out = isnan (value) ? value : round (value * 1e4) / 1e4 + 0.0;
  return TRUE;
}

static gboolean
read_yes (const xmlNode  *node,
          const char     *name,
          gboolean       *out,
          GError        **error)
{
  g_autofree char *word = sw_xml_dup_attribute (node, name);

  if (word == NULL)
    return TRUE;
  if (strcmp (word, "yes") != 0 && strcmp (word, "no") != 0)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("“%s” must be yes or no, not “%s”."), name, word);
      return FALSE;
    }

  *out = strcmp (word, "yes") == 0;
  return TRUE;
}

static gboolean
read_sides (const xmlNode  *node,
            gboolean        on[2],
            GError        **error)
{
  g_autofree char *word = sw_xml_dup_attribute (node, "side");

  on[SW_FIGURE_RIGHT] = word != NULL && (strcmp (word, "right") == 0 || strcmp (word, "both") == 0);
  on[SW_FIGURE_LEFT] = word != NULL && (strcmp (word, "left") == 0 || strcmp (word, "both") == 0);
  if (on[0] || on[1])
    return TRUE;

  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("“%s” needs the attribute “side”: right, left or both."),
                    (const char *) node->name);
  return FALSE;
}

/* An attribute as "@name=value", an element or comment as its text: how unknown things are kept. */
static void
keep_node (GPtrArray     *extras,
           const xmlNode *node)
{
  sw_extras_add_node (extras, NULL, node);
}

static void
keep_attributes (GPtrArray         *extras,
                 const xmlNode     *node,
                 const char *const *known)
{
  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    {
      g_autofree char *value = NULL;

      if (attribute->ns != NULL || g_strv_contains (known, (const char *) attribute->name))
        continue;
      value = sw_xml_dup_attribute (node, (const char *) attribute->name);
      g_ptr_array_add (extras, g_strdup_printf ("@%s=%s", (const char *) attribute->name, value));
    }
}

static char **
extras_to_strv (GPtrArray *extras)
{
  if (extras->len == 0)
    return NULL;

  g_ptr_array_add (extras, NULL);
  return (char **) g_ptr_array_steal (extras, NULL);
}

static gboolean
read_angles (const xmlNode  *node,
             SwFigurePose   *pose,
             GError        **error)
{
  gboolean on[2] = { TRUE, FALSE };
  gboolean sides_read = FALSE;

  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    {
      const char *name = (const char *) attribute->name;
      const SwAngleInfo *info;
      SwAngle angle;
      double value;

      if (strcmp (name, "side") == 0
          && !sw_angle_find ((const char *) node->name, "side", &angle))
        continue;
      if (!sw_angle_find ((const char *) node->name, name, &angle))
        {
          sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                            _ ("“%s” has no angle “%s”. Look at the list of angles for its names."),
                            (const char *) node->name, name);
          return FALSE;
        }
      if (sw_angle_is_sided (angle) && !sides_read && !read_sides (node, on, error))
        return FALSE;
      sides_read = TRUE;

      info = sw_angle_get_info (angle);
      if (!read_number (node, name, info->low_deg - SW_ANGLE_BEYOND_DEG, info->high_deg + SW_ANGLE_BEYOND_DEG, 0,
                        &value, error))
        return FALSE;
      for (int side = 0; side < 2; side++)
        if (on[side])
          {
            int slot = sw_angle_get_slot (angle, (SwFigureSide) side);

            pose->slots_deg[slot] = value;
            pose->slots_set |= G_GUINT64_CONSTANT (1) << slot;
          }
    }

  return TRUE;
}

static gboolean
read_foot (const xmlNode  *node,
           SwFigurePose   *pose,
           GError        **error)
{
  g_autofree char *word = sw_xml_dup_attribute (node, "pitch");
  gboolean free_foot = g_strcmp0 (word, "free") == 0;
  gboolean on[2];
  double pitch = 0.0;

  if (!read_sides (node, on, error))
    return FALSE;
  if (!free_foot && !read_number (node, "pitch", -45, 75, 0, &pitch, error))
    return FALSE;

  for (int side = 0; side < 2; side++)
    if (on[side])
      {
        pose->foot_set[side] = TRUE;
        pose->foot_free[side] = free_foot;
        pose->foot_pitch_deg[side] = pitch;
      }
  return TRUE;
}

static gboolean
read_hand (const xmlNode  *node,
           SwFigurePose   *pose,
           GError        **error)
{
  SwFigureHand shape = SW_FIGURE_HAND_OPEN;
  gboolean on[2];

  if (!read_sides (node, on, error) || !read_word (node, "shape", SW_TYPE_FIGURE_HAND, &shape, error))
    return FALSE;

  for (int side = 0; side < 2; side++)
    if (on[side])
      pose->hands[side] = shape;
  return TRUE;
}

static gboolean
read_pin (const xmlNode  *node,
          SwFigurePose   *pose,
          GError        **error)
{
  SwFigurePin pin = { .limb = SW_FIGURE_LIMB_HAND, .to = SW_FIGURE_PLACE_START };
  gboolean on[2];

  if (!read_sides (node, on, error) || !read_word (node, "part", SW_TYPE_FIGURE_LIMB, &pin.limb, error)
      || !read_word (node, "to", SW_TYPE_FIGURE_PLACE, &pin.to, error)
      || !read_number (node, "forward", -2, 2, 0, &pin.offset[0], error)
      || !read_number (node, "out", -2, 2, 0, &pin.offset[1], error)
      || !read_number (node, "up", -2, 2, 0, &pin.offset[2], error)
      || !read_word (node, pin.limb == SW_FIGURE_LIMB_FOOT ? "knee" : "elbow", SW_TYPE_FIGURE_TOWARD, &pin.toward,
                     error))
    return FALSE;

  for (int side = 0; side < 2; side++)
    {
      if (!on[side])
        continue;
      if (pose->n_pins == SW_FIGURE_MAX_PINS)
        {
          sw_xml_set_error (error, node, SW_XML_ERROR_TOO_LARGE, _ ("a pose has at most %d pins. Leave some out."),
                            SW_FIGURE_MAX_PINS);
          return FALSE;
        }
      pin.side = (SwFigureSide) side;
      pose->pins[pose->n_pins++] = pin;
    }
  return TRUE;
}

static int
compare_pins (const void *a,
              const void *b)
{
  const SwFigurePin *p = a;
  const SwFigurePin *q = b;
  int by_limb = (int) p->limb - (int) q->limb;

  return by_limb != 0 ? by_limb : (int) p->side - (int) q->side;
}

static gboolean
read_pose (const xmlNode    *node,
           SwFigureContent  *content,
           GError          **error)
{
  static const char *const known_first[]
      = { "base", "on", "anchor", "lean", "roll", "turn", "twist", "lift", "breath", "eyes", "belly", "step",
          NULL };
  g_autoptr (GPtrArray) extras = g_ptr_array_new_with_free_func (g_free);
  SwFigurePose *pose;

  if (content->n_poses == SW_FIGURE_MAX_POSES)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_TOO_LARGE, _ ("a figure has at most %d poses. Leave some out."),
                        SW_FIGURE_MAX_POSES);
      return FALSE;
    }

  pose = &content->poses[content->n_poses];
  pose->own_base = content->n_poses == 0 || xmlHasProp (node, (const xmlChar *) "base") != NULL;
  if (pose->own_base)
    {
      if (!read_word (node, "base", SW_TYPE_FIGURE_BASE, &pose->base, error))
        return FALSE;
      pose->on = sw_figure_base_get_on (pose->base);
      if (!read_word (node, "on", SW_TYPE_FIGURE_SIDE, &pose->on, error)
          || !read_word (node, "anchor", SW_TYPE_FIGURE_ANCHOR, &pose->anchor, error))
        return FALSE;
    }
  content->n_poses++;

  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    if (xmlHasProp (node, (const xmlChar *) sw_figure_root_get_name (i)) != NULL)
      {
        if (!read_number (node, sw_figure_root_get_name (i), -180, 180, 0, &pose->root_deg[i], error))
          return FALSE;
        pose->root_set |= 1u << i;
      }
  if (!read_word (node, "breath", SW_TYPE_FIGURE_BREATH, &pose->breath, error)
      || !read_word (node, "eyes", SW_TYPE_FIGURE_EYES, &pose->eyes, error)
      || !read_number (node, "belly", 0, SW_FIGURE_MAX_BELLY, 0, &pose->belly, error)
      || !read_number (node, "lift", 0, SW_FIGURE_MAX_LIFT, 0, &pose->lift, error)
      || !sw_xml_read_int (node, "step", 1, SW_FIGURE_MAX_STEP, 0, &pose->step, error))
    return FALSE;
  keep_attributes (extras, node, pose->own_base ? known_first : known_first + 3);

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    {
      const char *name = (const char *) child->name;
      gboolean ours = child->type == XML_ELEMENT_NODE && child->ns != NULL && node->ns != NULL
                      && strcmp ((const char *) child->ns->href, (const char *) node->ns->href) == 0;
      gboolean good = TRUE;

      if (ours && sw_angle_is_element (name))
        good = read_angles (child, pose, error);
      else if (ours && strcmp (name, "foot") == 0)
        good = read_foot (child, pose, error);
      else if (ours && strcmp (name, "hand") == 0)
        good = read_hand (child, pose, error);
      else if (ours && strcmp (name, "pin") == 0)
        good = read_pin (child, pose, error);
      else if (child->type == XML_ELEMENT_NODE || child->type == XML_COMMENT_NODE)
        keep_node (extras, child);
      if (!good)
        return FALSE;
    }

  qsort (pose->pins, (gsize) pose->n_pins, sizeof pose->pins[0], compare_pins);
  pose->extras = extras_to_strv (extras);
  return TRUE;
}

/* One or two words of a list, such as the parts that arrows follow. */
static gboolean
read_words (const xmlNode  *node,
            const char     *name,
            GType           type,
            int             words_out[SW_FIGURE_MAX_SHOWN],
            GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);
  g_auto (GStrv) words = g_strsplit (text != NULL ? text : "", " ", SW_FIGURE_MAX_SHOWN + 1);

  for (int i = 0; words[i] != NULL; i++)
    {
      if (i == SW_FIGURE_MAX_SHOWN)
        {
          sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("“%s” names at most two, not “%s”."), name, text);
          return FALSE;
        }
      if (!parse_word (node, name, words[i], type, &words_out[i], error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_motion (const xmlNode    *node,
             SwFigureContent  *content,
             GError          **error)
{
  g_autofree char *way = sw_xml_dup_attribute (node, "way");
  int shown[SW_FIGURE_MAX_SHOWN] = { SW_FIGURE_MARK_NONE };
  int toward[SW_FIGURE_MAX_SHOWN] = { SW_FIGURE_WAY_NONE };

  if (!read_word (node, "kind", SW_TYPE_FIGURE_MOTION, &content->motion, error)
      || !read_word (node, "about", SW_TYPE_FIGURE_MARK, &content->about, error)
      || !read_number (node, "radius", 0, 90, 0, &content->radius_deg, error)
      || !read_yes (node, "hold", &content->hold, error)
      || !read_word (node, "sides", SW_TYPE_FIGURE_SIDES, &content->sides, error)
      || !read_word (node, "limbs", SW_TYPE_FIGURE_LIMBS, &content->limbs, error))
    return FALSE;

  if (!read_words (node, "show", SW_TYPE_FIGURE_MARK, shown, error)
      || !read_words (node, "toward", SW_TYPE_FIGURE_WAY, toward, error))
    return FALSE;

  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      content->shown[i] = (SwFigureMark) shown[i];
      content->toward[i] = (SwFigureWay) toward[i];
    }
  if (content->motion == SW_FIGURE_MOTION_PRESS
      && (content->shown[0] == SW_FIGURE_MARK_NONE || content->toward[0] == SW_FIGURE_WAY_NONE))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("a press needs “show”, what presses, and “toward”, where to."));
      return FALSE;
    }
  if (way != NULL && strcmp (way, "one") != 0 && strcmp (way, "both") != 0)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID, _ ("“way” must be one or both, not “%s”."), way);
      return FALSE;
    }

  content->both_ways = g_strcmp0 (way, "both") == 0;
  return TRUE;
}

static gboolean
read_prop (const xmlNode    *node,
           SwFigureContent  *content,
           GError          **error)
{
  static const char *const known[] = { "kind", "where", "under", "in", "from", "between", "thrown", "height", "distance", NULL };
  g_autoptr (GPtrArray) extras = g_ptr_array_new_with_free_func (g_free);
  SwFigurePropSpec *prop;

  if (content->n_props == SW_FIGURE_MAX_PROPS)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_TOO_LARGE, _ ("a figure has at most %d props. Leave some out."),
                        SW_FIGURE_MAX_PROPS);
      return FALSE;
    }

  prop = &content->props[content->n_props++];
  if (!read_word (node, "kind", SW_TYPE_FIGURE_PROP, &prop->kind, error)
      || !read_word (node, "where", SW_TYPE_FIGURE_WHERE, &prop->where, error)
      || !read_word (node, "under", SW_TYPE_FIGURE_MARK, &prop->under, error)
      || !read_word (node, "in", SW_TYPE_FIGURE_MARK, &prop->in, error)
      || !read_word (node, "from", SW_TYPE_FIGURE_MARK, &prop->from, error)
      || !read_word (node, "between", SW_TYPE_FIGURE_BETWEEN, &prop->between, error)
      || !read_word (node, "thrown", SW_TYPE_FIGURE_THROWN, &prop->thrown, error)
      || !read_number (node, "height", 0, 2, NAN, &prop->height, error)
      || !read_number (node, "distance", 0, 2, NAN, &prop->distance, error))
    return FALSE;

  keep_attributes (extras, node, known);
  prop->extras = extras_to_strv (extras);
  return TRUE;
}

static gboolean
read_works (const xmlNode    *node,
            SwFigureContent  *content,
            GError          **error)
{
  SwFigureArea area = SW_FIGURE_AREA_CALF;
  SwFigureWork *work;
  gboolean on[2] = { TRUE, TRUE };

  if (content->n_works == SW_FIGURE_MAX_WORKS)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_TOO_LARGE,
                        _ ("a figure has at most %d working areas. Leave some out."), SW_FIGURE_MAX_WORKS);
      return FALSE;
    }
  if (!read_word (node, "area", SW_TYPE_FIGURE_AREA, &area, error))
    return FALSE;
  if (sw_figure_area_is_sided (area) && !read_sides (node, on, error))
    return FALSE;

  work = &content->works[content->n_works++];
  work->area = area;
  work->right = on[SW_FIGURE_RIGHT];
  work->left = on[SW_FIGURE_LEFT];
  return TRUE;
}

static gboolean
read_inset (const xmlNode    *node,
            SwFigureContent  *content,
            GError          **error)
{
  SwFigureInset *inset = &content->inset;

  if (!read_word (node, "around", SW_TYPE_FIGURE_MARK, &inset->around, error)
      || !read_number (node, "turn", -180, 180, -90, &inset->turn_deg, error)
      || !read_number (node, "tilt", -30, 89, 0, &inset->tilt_deg, error)
      || !read_number (node, "size", 0.05, 1, 0.3, &inset->size, error))
    return FALSE;
  if (inset->around != SW_FIGURE_MARK_NONE)
    return TRUE;

  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                    _ ("“inset” needs the attribute “around”: the part of the body in its middle."));
  return FALSE;
}

/* Poses that start from bases of their own are pictures in a row, not ends of one motion. */
static gboolean
check_bases (const xmlNode          *node,
             const SwFigureContent  *content,
             GError                **error)
{
  for (int i = 1; i < content->n_poses; i++)
    if (content->poses[i].own_base && content->motion != SW_FIGURE_MOTION_STEPS)
      {
        sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                          _ ("pose %d has a base of its own. Make the motion's kind “steps”, or leave the base out."),
                          i + 1);
        return FALSE;
      }

  return TRUE;
}

static gboolean
read_view (const xmlNode    *node,
           SwFigureContent  *content,
           GError          **error)
{
  return read_number (node, "turn", -180, 180, NAN, &content->view_turn_deg, error)
         && read_number (node, "tilt", -30, 89, NAN, &content->view_tilt_deg, error)
         && read_word (node, "frame", SW_TYPE_FIGURE_FRAME, &content->frame, error)
         && read_word (node, "layout", SW_TYPE_FIGURE_LAYOUT, &content->layout, error);
}

/**
 * sw_figure_xml_read:
 * @node: a figure element; its children are taken in the namespace it has itself
 *
 * Returns: (transfer full): the figure, or NULL with a #SwXmlError
 */
SwFigureSpec *
sw_figure_xml_read (const xmlNode  *node,
                    GError        **error)
{
  static const char *const known[] = { NULL };
  g_auto (SwFigureContent) content;
  g_autoptr (GPtrArray) extras = g_ptr_array_new_with_free_func (g_free);

  sw_figure_content_init (&content);
  keep_attributes (extras, node, known);

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    {
      const char *name = (const char *) child->name;
      gboolean ours = child->type == XML_ELEMENT_NODE && child->ns != NULL && node->ns != NULL
                      && strcmp ((const char *) child->ns->href, (const char *) node->ns->href) == 0;
      gboolean good = TRUE;

      if (ours && strcmp (name, "pose") == 0)
        good = read_pose (child, &content, error);
      else if (ours && strcmp (name, "motion") == 0)
        good = read_motion (child, &content, error);
      else if (ours && strcmp (name, "prop") == 0)
        good = read_prop (child, &content, error);
      else if (ours && strcmp (name, "works") == 0)
        good = read_works (child, &content, error);
      else if (ours && strcmp (name, "view") == 0)
        good = read_view (child, &content, error);
      else if (ours && strcmp (name, "inset") == 0)
        good = read_inset (child, &content, error);
      else if (child->type == XML_ELEMENT_NODE || child->type == XML_COMMENT_NODE)
        keep_node (extras, child);
      if (!good)
        return NULL;
    }

  if (content.n_poses == 0)
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                        _ ("the figure has no pose. Add a “pose” element with a base."));
      return NULL;
    }

  if (!check_bases (node, &content, error))
    return NULL;

  content.extras = extras_to_strv (extras);
  return sw_figure_spec_new_take (&content);
}
