/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is done in one sitting: a title, the days and its sections. */
#include "config.h"

#include "sw-session.h"

#include "sw-fields.h"

struct _SwSession
{
  GObject parent_instance;

  char *title;
  SwSet days;
  GListStore *sections;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwSession, sw_session, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_DAYS,
  PROP_SECTIONS,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_session_get_property (GObject    *object,
                         guint       property_id,
                         GValue     *value,
                         GParamSpec *pspec)
{
  SwSession *self = SW_SESSION (object);

  switch (property_id)
    {
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_DAYS:
      g_value_set_uint64 (value, self->days);
      break;
    case PROP_SECTIONS:
      g_value_set_object (value, self->sections);
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
sw_session_set_property (GObject      *object,
                         guint         property_id,
                         const GValue *value,
                         GParamSpec   *pspec)
{
  SwSession *self = SW_SESSION (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_TITLE:
      changed = sw_field_set_string (&self->title, g_value_get_string (value));
      break;
    case PROP_DAYS:
      changed = self->days != g_value_get_uint64 (value);
      self->days = g_value_get_uint64 (value);
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
sw_session_finalize (GObject *object)
{
  SwSession *self = SW_SESSION (object);

  g_free (self->title);
  g_object_unref (self->sections);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_session_parent_class)->finalize (object);
}

static void
sw_session_class_init (SwSessionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_session_get_property;
  object_class->set_property = sw_session_set_property;
  object_class->finalize = sw_session_finalize;

  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", flags);
  properties[PROP_DAYS] = g_param_spec_uint64 ("days", NULL, NULL, 0, G_MAXUINT64, 0, flags);
  properties[PROP_SECTIONS] = g_param_spec_object ("sections", NULL, NULL, G_TYPE_LIST_STORE,
                                                   G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_session_init (SwSession *self)
{
  self->sections = g_list_store_new (SW_TYPE_SECTION);
  sw_field_set_string (&self->title, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_session_new:
 * @title: (nullable): its title
 * @days: a set of #SwDay; empty when not chosen yet
 *
 * Returns: (transfer full): a session without sections
 */
SwSession *
sw_session_new (const char *title,
                SwSet       days)
{
  return g_object_new (SW_TYPE_SESSION, "title", title, "days", days, NULL);
}

/**
 * sw_session_new_standard:
 * @title: (nullable): its title
 *
 * Returns: (transfer full): a session with empty sections for warm-up, main work and cool-down, no days
 *   chosen
 */
SwSession *
sw_session_new_standard (const char *title)
{
  static const SwSectionKind kinds[] = { SW_SECTION_WARM_UP, SW_SECTION_MAIN, SW_SECTION_COOL_DOWN };
  SwSession *self = sw_session_new (title, 0);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (SwSection) section = sw_section_new (kinds[i], NULL);

      g_list_store_append (self->sections, section);
    }

  return self;
}

/**
 * sw_session_copy:
 * @self: a session
 * @new_ids: whether its items get new ids, see sw_item_copy()
 *
 * Returns: (transfer full): a copy with copies of its sections
 */
SwSession *
sw_session_copy (SwSession *self,
                 gboolean   new_ids)
{
  SwSession *copy;

  g_return_val_if_fail (SW_IS_SESSION (self), NULL);

  copy = sw_session_new (self->title, self->days);
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->sections)); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (self->sections), i);
      g_autoptr (SwSection) section_copy = sw_section_copy (section, new_ids);

      g_list_store_append (copy->sections, section_copy);
    }

  return copy;
}

/**
 * sw_session_get_n_days:
 * @self: a session
 *
 * Returns: on how many days a week it is done, 0 when not chosen yet
 */
int
sw_session_get_n_days (SwSession *self)
{
  int n = 0;

  g_return_val_if_fail (SW_IS_SESSION (self), 0);

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    n += (self->days & SW_SET (day)) != 0;

  return n;
}

/**
 * sw_session_get_title:
 * @self: a session
 *
 * Returns: (transfer none): its title
 */
const char *
sw_session_get_title (SwSession *self)
{
  g_return_val_if_fail (SW_IS_SESSION (self), NULL);

  return self->title;
}

/**
 * sw_session_get_days:
 * @self: a session
 *
 * Returns: a set of #SwDay, empty when not chosen yet
 */
SwSet
sw_session_get_days (SwSession *self)
{
  g_return_val_if_fail (SW_IS_SESSION (self), 0);

  return self->days;
}

/**
 * sw_session_get_sections:
 * @self: a session
 *
 * Returns: (transfer none) (element-type SwSection): its sections
 */
GListStore *
sw_session_get_sections (SwSession *self)
{
  g_return_val_if_fail (SW_IS_SESSION (self), NULL);

  return self->sections;
}

/**
 * sw_session_dup_items:
 * @self: a session
 *
 * Returns: (transfer full) (element-type SwItem): all its items in order, a circuit's members behind it
 */
GPtrArray *
sw_session_dup_items (SwSession *self)
{
  GPtrArray *all = g_ptr_array_new_with_free_func (g_object_unref);

  g_return_val_if_fail (SW_IS_SESSION (self), all);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->sections)); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (self->sections), i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint j = 0; j < g_list_model_get_n_items (items); j++)
        {
          SwItem *item = g_list_model_get_item (items, j);
          GListModel *members = G_LIST_MODEL (sw_item_get_items (item));

          g_ptr_array_add (all, item);
          for (guint k = 0; k < g_list_model_get_n_items (members); k++)
            g_ptr_array_add (all, g_list_model_get_item (members, k));
        }
    }

  return all;
}

/**
 * sw_session_get_extras:
 * @self: a session
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_session_get_extras (SwSession *self)
{
  g_return_val_if_fail (SW_IS_SESSION (self), NULL);

  return (const char * const *) self->extras;
}
