/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How a programme's handout is to look: the therapist's choice, kept with the programme. */
#include "config.h"

#include "sw-page-plan.h"

#include "sw-fields.h"

enum
{
  PROP_0,
  PROP_LAYOUT,
  PROP_PARTS,
  PROP_SAVE_INK,
  PROP_LANDSCAPE,
  PROP_FORM,
  PROP_EXTRAS,
  N_PROPS,
};

struct _SwPagePlan
{
  GObject parent_instance;

  int layout;
  SwSet parts;
  int save_ink;
  int landscape;
  int form;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwPagePlan, sw_page_plan, G_TYPE_OBJECT)

static GParamSpec *properties[N_PROPS];

static void
sw_page_plan_get_property (GObject    *object,
                           guint       property_id,
                           GValue     *value,
                           GParamSpec *pspec)
{
  SwPagePlan *self = SW_PAGE_PLAN (object);

  switch (property_id)
    {
    case PROP_LAYOUT:
      g_value_set_enum (value, self->layout);
      break;
    case PROP_PARTS:
      g_value_set_uint64 (value, self->parts);
      break;
    case PROP_SAVE_INK:
      g_value_set_boolean (value, self->save_ink);
      break;
    case PROP_LANDSCAPE:
      g_value_set_boolean (value, self->landscape);
      break;
    case PROP_FORM:
      g_value_set_boolean (value, self->form);
      break;
    case PROP_EXTRAS:
      g_value_set_boxed (value, self->extras);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

static void
sw_page_plan_set_property (GObject      *object,
                           guint         property_id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  SwPagePlan *self = SW_PAGE_PLAN (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_LAYOUT:
      changed = sw_field_set_int (&self->layout, g_value_get_enum (value));
      break;
    case PROP_PARTS:
      changed = self->parts != g_value_get_uint64 (value);
      self->parts = g_value_get_uint64 (value);
      break;
    case PROP_SAVE_INK:
      changed = sw_field_set_int (&self->save_ink, g_value_get_boolean (value));
      break;
    case PROP_LANDSCAPE:
      changed = sw_field_set_int (&self->landscape, g_value_get_boolean (value));
      break;
    case PROP_FORM:
      changed = sw_field_set_int (&self->form, g_value_get_boolean (value));
      break;
    case PROP_EXTRAS:
      changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_page_plan_finalize (GObject *object)
{
  SwPagePlan *self = SW_PAGE_PLAN (object);

  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_page_plan_parent_class)->finalize (object);
}

static void
sw_page_plan_class_init (SwPagePlanClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_page_plan_get_property;
  object_class->set_property = sw_page_plan_set_property;
  object_class->finalize = sw_page_plan_finalize;

  properties[PROP_LAYOUT] = g_param_spec_enum ("layout", NULL, NULL, SW_TYPE_LAYOUT, SW_LAYOUT_FULL, flags);
  properties[PROP_PARTS] = g_param_spec_uint64 ("parts", NULL, NULL, 0, G_MAXUINT64, SW_PAGE_PARTS_USUAL, flags);
  properties[PROP_SAVE_INK] = g_param_spec_boolean ("save-ink", NULL, NULL, FALSE, flags);
  properties[PROP_LANDSCAPE] = g_param_spec_boolean ("landscape", NULL, NULL, FALSE, flags);
  properties[PROP_FORM] = g_param_spec_boolean ("form", NULL, NULL, FALSE, flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_page_plan_init (SwPagePlan *self)
{
  self->layout = SW_LAYOUT_FULL;
  self->parts = SW_PAGE_PARTS_USUAL;
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_page_plan_new:
 *
 * Returns: (transfer full): the usual plan: whole exercises, everything but a line to sign
 */
SwPagePlan *
sw_page_plan_new (void)
{
  return g_object_new (SW_TYPE_PAGE_PLAN, NULL);
}

/**
 * sw_page_plan_copy:
 * @self: a plan
 *
 * Returns: (transfer full): an equal one of its own
 */
SwPagePlan *
sw_page_plan_copy (SwPagePlan *self)
{
  SwPagePlan *copy;

  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), NULL);

  copy = sw_page_plan_new ();
  copy->layout = self->layout;
  copy->parts = self->parts;
  copy->save_ink = self->save_ink;
  copy->landscape = self->landscape;
  copy->form = self->form;
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  return copy;
}

SwLayout
sw_page_plan_get_layout (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), SW_LAYOUT_FULL);

  return (SwLayout) self->layout;
}

/**
 * sw_page_plan_get_parts:
 * @self: a plan
 *
 * Returns: set of #SwPagePart that the handout shows
 */
SwSet
sw_page_plan_get_parts (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), 0);

  return self->parts;
}

gboolean
sw_page_plan_get_save_ink (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), FALSE);

  return self->save_ink;
}

gboolean
sw_page_plan_get_landscape (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), FALSE);

  return self->landscape;
}

gboolean
sw_page_plan_get_form (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), FALSE);

  return self->form;
}

/**
 * sw_page_plan_get_extras:
 * @self: a plan
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_page_plan_get_extras (SwPagePlan *self)
{
  g_return_val_if_fail (SW_IS_PAGE_PLAN (self), NULL);

  return (const char * const *) self->extras;
}
