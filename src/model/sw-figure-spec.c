/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How an exercise's figure is to be drawn: a value that threads and programmes can share. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-figure-spec.h"

struct _SwFigureSpec
{
  gatomicrefcount ref_count;
  SwFigureContent content;
};

/* By hand, since G_DEFINE_BOXED_TYPE() passes functions as a union, which strict C does not allow. */
GType
sw_figure_spec_get_type (void)
{
  static gsize type = 0;

  if (g_once_init_enter (&type))
    g_once_init_leave (&type, g_boxed_type_register_static (g_intern_static_string ("SwFigureSpec"),
                                                            (GBoxedCopyFunc) sw_figure_spec_ref,
                                                            (GBoxedFreeFunc) sw_figure_spec_unref));
  return type;
}

static gboolean
same_extras (char **a,
             char **b)
{
  static char *none[] = { NULL };

  return g_strv_equal ((const char *const *) (a != NULL ? a : none), (const char *const *) (b != NULL ? b : none));
}

static gboolean
same_number (double a,
             double b)
{
  return (isnan (a) && isnan (b)) || (a <= b && a >= b);
}

static gboolean
same_pin (const SwFigurePin *a,
          const SwFigurePin *b)
{
  return a->limb == b->limb && a->side == b->side && a->to == b->to && a->toward == b->toward
         && same_number (a->offset[0], b->offset[0]) && same_number (a->offset[1], b->offset[1])
         && same_number (a->offset[2], b->offset[2]);
}

static gboolean
same_pose (const SwFigurePose *a,
           const SwFigurePose *b)
{
  if (!a->own_base != !b->own_base
      || (a->own_base && (a->base != b->base || a->on != b->on || a->anchor != b->anchor)))
    return FALSE;
  if (a->breath != b->breath || a->eyes != b->eyes || !same_number (a->belly, b->belly)
      || !same_number (a->lift, b->lift))
    return FALSE;
  if (a->slots_set != b->slots_set || a->root_set != b->root_set || a->n_pins != b->n_pins || a->step != b->step)
    return FALSE;

  for (int i = 0; i < (int) SW_N_SLOTS; i++)
    if ((a->slots_set >> i & 1) != 0 && !same_number (a->slots_deg[i], b->slots_deg[i]))
      return FALSE;
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    if ((a->root_set >> i & 1) != 0 && !same_number (a->root_deg[i], b->root_deg[i]))
      return FALSE;
  for (int side = 0; side < 2; side++)
    {
      if (a->hands[side] != b->hands[side] || a->foot_set[side] != b->foot_set[side])
        return FALSE;
      if (a->foot_set[side]
          && (a->foot_free[side] != b->foot_free[side]
              || (!a->foot_free[side] && !same_number (a->foot_pitch_deg[side], b->foot_pitch_deg[side]))))
        return FALSE;
    }
  for (int i = 0; i < a->n_pins; i++)
    if (!same_pin (&a->pins[i], &b->pins[i]))
      return FALSE;

  return same_extras (a->extras, b->extras);
}

static gboolean
same_prop (const SwFigurePropSpec *a,
           const SwFigurePropSpec *b)
{
  return a->kind == b->kind && a->where == b->where && a->under == b->under && a->in == b->in && a->from == b->from
         && a->between == b->between && a->thrown == b->thrown && same_number (a->height, b->height) && same_number (a->distance, b->distance)
         && same_extras (a->extras, b->extras);
}

static gboolean
same_inset (const SwFigureInset *a,
            const SwFigureInset *b)
{
  return a->around == b->around
         && (a->around == SW_FIGURE_MARK_NONE
             || (same_number (a->turn_deg, b->turn_deg) && same_number (a->tilt_deg, b->tilt_deg)
                 && same_number (a->size, b->size)));
}

static gboolean
same_lists (const SwFigureContent *a,
            const SwFigureContent *b)
{
  if (a->n_poses != b->n_poses || a->n_props != b->n_props || a->n_works != b->n_works)
    return FALSE;

  for (int i = 0; i < a->n_poses; i++)
    if (!same_pose (&a->poses[i], &b->poses[i]))
      return FALSE;
  for (int i = 0; i < a->n_props; i++)
    if (!same_prop (&a->props[i], &b->props[i]))
      return FALSE;
  for (int i = 0; i < a->n_works; i++)
    if (a->works[i].area != b->works[i].area || !a->works[i].right != !b->works[i].right
        || !a->works[i].left != !b->works[i].left)
      return FALSE;

  return TRUE;
}

static SwFigureSide
other_side (SwFigureSide side)
{
  return side == SW_FIGURE_RIGHT ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
}

static void
mirror_pose (const SwFigurePose *from,
             SwFigurePose       *to)
{
  *to = *from;
  to->on = other_side (from->on);
  if (from->anchor == SW_FIGURE_ANCHOR_RIGHT_FOOT)
    to->anchor = SW_FIGURE_ANCHOR_LEFT_FOOT;
  else if (from->anchor == SW_FIGURE_ANCHOR_LEFT_FOOT)
    to->anchor = SW_FIGURE_ANCHOR_RIGHT_FOOT;
  to->slots_set = 0;

  for (int i = 0; i < (int) SW_N_SLOTS; i++)
    {
      SwFigureSide side;
      SwAngle angle = sw_angle_from_slot (i, &side);
      int target = sw_angle_get_slot (angle, other_side (side));

      to->slots_deg[target] = sw_angle_get_mirror_sign (angle) * from->slots_deg[i];
      if ((from->slots_set >> i & 1) != 0)
        to->slots_set |= G_GUINT64_CONSTANT (1) << target;
    }
  for (int i = SW_FIGURE_ROOT_ROLL; i <= SW_FIGURE_ROOT_TWIST; i++)
    to->root_deg[i] = -from->root_deg[i];
  for (int side = 0; side < 2; side++)
    {
      to->hands[side] = from->hands[1 - side];
      to->foot_set[side] = from->foot_set[1 - side];
      to->foot_free[side] = from->foot_free[1 - side];
      to->foot_pitch_deg[side] = from->foot_pitch_deg[1 - side];
    }
  for (int i = 0; i < from->n_pins; i++)
    {
      to->pins[i].side = other_side (from->pins[i].side);
      if (from->pins[i].to == SW_FIGURE_PLACE_POINT)
        to->pins[i].offset[1] = -from->pins[i].offset[1];
    }
  to->extras = g_strdupv (from->extras);
}

static SwFigureWhere
mirror_where (SwFigureWhere where)
{
  if (where == SW_FIGURE_WHERE_RIGHT)
    return SW_FIGURE_WHERE_LEFT;
  if (where == SW_FIGURE_WHERE_LEFT)
    return SW_FIGURE_WHERE_RIGHT;

  return where;
}

static void
mirror_prop (const SwFigurePropSpec *from,
             SwFigurePropSpec       *to)
{
  *to = *from;
  to->where = mirror_where (from->where);
  to->under = sw_figure_mark_get_mirrored (from->under);
  to->in = sw_figure_mark_get_mirrored (from->in);
  to->from = sw_figure_mark_get_mirrored (from->from);
  to->extras = g_strdupv (from->extras);
}

/**
 * sw_figure_content_init:
 * @content: (out caller-allocates): memory to fill
 *
 * A standing figure without any pose yet.
 */
void
sw_figure_content_init (SwFigureContent *content)
{
  memset (content, 0, sizeof *content);
  for (int i = 0; i < SW_FIGURE_MAX_POSES; i++)
    content->poses[i].on = SW_FIGURE_LEFT;
  content->poses[0].own_base = TRUE;
  content->view_turn_deg = NAN;
  content->view_tilt_deg = NAN;
}

/**
 * sw_figure_content_clear:
 * @content: what sw_figure_content_init() filled
 */
void
sw_figure_content_clear (SwFigureContent *content)
{
  for (int i = 0; i < SW_FIGURE_MAX_POSES; i++)
    g_clear_pointer (&content->poses[i].extras, g_strfreev);
  for (int i = 0; i < SW_FIGURE_MAX_PROPS; i++)
    g_clear_pointer (&content->props[i].extras, g_strfreev);
  g_clear_pointer (&content->extras, g_strfreev);
}

/**
 * sw_figure_spec_new_take:
 * @content: what the figure holds, at least one pose; emptied, and to be cleared all the same
 *
 * Returns: (transfer full): the figure's description
 */
SwFigureSpec *
sw_figure_spec_new_take (SwFigureContent *content)
{
  SwFigureSpec *self;

  g_return_val_if_fail (content->n_poses >= 1 && content->n_poses <= SW_FIGURE_MAX_POSES, NULL);

  self = g_new0 (SwFigureSpec, 1);
  g_atomic_ref_count_init (&self->ref_count);
  self->content = *content;
  sw_figure_content_init (content);
  return self;
}

/**
 * sw_figure_spec_new_mirrored:
 * @spec: a figure
 *
 * Returns: (transfer full): the same with left and right exchanged, seen in the mirror
 */
SwFigureSpec *
sw_figure_spec_new_mirrored (SwFigureSpec *spec)
{
  const SwFigureContent *from = &spec->content;
  g_auto (SwFigureContent) to = *from;

  to.mirrored = !from->mirrored;
  for (int i = 0; i < from->n_poses; i++)
    mirror_pose (&from->poses[i], &to.poses[i]);
  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      to.shown[i] = sw_figure_mark_get_mirrored (from->shown[i]);
      to.toward[i] = sw_figure_way_get_mirrored (from->toward[i]);
    }
  to.about = sw_figure_mark_get_mirrored (from->about);
  for (int i = 0; i < from->n_props; i++)
    mirror_prop (&from->props[i], &to.props[i]);
  for (int i = 0; i < from->n_works; i++)
    {
      to.works[i].right = from->works[i].left;
      to.works[i].left = from->works[i].right;
    }
  to.view_turn_deg = -from->view_turn_deg;
  to.inset.around = sw_figure_mark_get_mirrored (from->inset.around);
  to.inset.turn_deg = -from->inset.turn_deg;
  to.extras = g_strdupv (from->extras);
  return sw_figure_spec_new_take (&to);
}

/**
 * sw_figure_spec_ref:
 *
 * Returns: (transfer full): @self
 */
SwFigureSpec *
sw_figure_spec_ref (SwFigureSpec *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

/**
 * sw_figure_spec_unref:
 */
void
sw_figure_spec_unref (SwFigureSpec *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;

  sw_figure_content_clear (&self->content);
  g_free (self);
}

/**
 * sw_figure_spec_equal:
 * @a: (nullable): a figure
 * @b: (nullable): another
 *
 * Returns: whether both draw the same and would be written the same
 */
gboolean
sw_figure_spec_equal (SwFigureSpec *a,
                      SwFigureSpec *b)
{
  const SwFigureContent *p;
  const SwFigureContent *q;

  if (a == b)
    return TRUE;
  if (a == NULL || b == NULL)
    return FALSE;

  p = &a->content;
  q = &b->content;
  return p->motion == q->motion && p->sides == q->sides && p->limbs == q->limbs && same_inset (&p->inset, &q->inset)
         && p->shown[0] == q->shown[0] && p->shown[1] == q->shown[1] && p->about == q->about
         && p->toward[0] == q->toward[0] && p->toward[1] == q->toward[1]
         && same_number (p->radius_deg, q->radius_deg) && !p->both_ways == !q->both_ways && !p->hold == !q->hold
         && same_number (p->view_turn_deg, q->view_turn_deg) && same_number (p->view_tilt_deg, q->view_tilt_deg)
         && p->frame == q->frame && p->layout == q->layout && same_lists (p, q) && same_extras (p->extras, q->extras);
}

/**
 * sw_figure_spec_get_content:
 *
 * Returns: (transfer none): what it holds
 */
const SwFigureContent *
sw_figure_spec_get_content (SwFigureSpec *self)
{
  return &self->content;
}

/**
 * sw_figure_mark_get_mirrored:
 * @mark: a place on the body
 *
 * Returns: the same on the other side
 */
SwFigureMark
sw_figure_mark_get_mirrored (SwFigureMark mark)
{
  int sided = (int) mark - (int) SW_FIGURE_MARK_RIGHT_SHOULDER;

  return sided < 0 ? mark : SW_FIGURE_MARK_RIGHT_SHOULDER + (SwFigureMark) (sided ^ 1);
}

/**
 * sw_figure_way_get_mirrored:
 * @way: where to something presses
 *
 * Returns: the same with left and right exchanged
 */
SwFigureWay
sw_figure_way_get_mirrored (SwFigureWay way)
{
  if (way == SW_FIGURE_WAY_RIGHT)
    return SW_FIGURE_WAY_LEFT;

  return way == SW_FIGURE_WAY_LEFT ? SW_FIGURE_WAY_RIGHT : way;
}

/**
 * sw_figure_base_get_on:
 * @base: a base pose
 *
 * Returns: the side that is meant when nothing is said: the side lain on, the knee on the floor
 */
SwFigureSide
sw_figure_base_get_on (SwFigureBase base)
{
  return base == SW_FIGURE_BASE_HALF_KNEELING ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;
}

/**
 * sw_figure_root_get_name:
 * @root: SW_FIGURE_ROOT_LEAN and so on
 *
 * Returns: its attribute in documents
 */
const char *
sw_figure_root_get_name (int root)
{
  static const char *const names[SW_FIGURE_N_ROOT] = { "lean", "roll", "turn", "twist" };

  g_return_val_if_fail (root >= 0 && root < SW_FIGURE_N_ROOT, NULL);

  return names[root];
}

/**
 * sw_figure_area_is_sided:
 * @area: what works
 *
 * Returns: whether it exists on both sides
 */
gboolean
sw_figure_area_is_sided (SwFigureArea area)
{
  return area != SW_FIGURE_AREA_BELLY && area != SW_FIGURE_AREA_LOW_BACK && area != SW_FIGURE_AREA_UPPER_BACK
         && area != SW_FIGURE_AREA_NECK_FRONT && area != SW_FIGURE_AREA_NECK_BACK;
}
