/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part of a session: a kind, a title and its items. */
#include "config.h"

#include "sw-section.h"

#include "sw-fields.h"

struct _SwSection
{
  GObject parent_instance;

  int kind;
  char *title;
  GListStore *items;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwSection, sw_section, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_KIND,
  PROP_TITLE,
  PROP_ITEMS,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_section_get_property (GObject    *object,
                         guint       property_id,
                         GValue     *value,
                         GParamSpec *pspec)
{
  SwSection *self = SW_SECTION (object);

  switch (property_id)
    {
    case PROP_KIND:
      g_value_set_enum (value, self->kind);
      break;
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_ITEMS:
      g_value_set_object (value, self->items);
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
sw_section_set_property (GObject      *object,
                         guint         property_id,
                         const GValue *value,
                         GParamSpec   *pspec)
{
  SwSection *self = SW_SECTION (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_KIND:
      changed = sw_field_set_int (&self->kind, g_value_get_enum (value));
      break;
    case PROP_TITLE:
      changed = sw_field_set_string (&self->title, g_value_get_string (value));
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
sw_section_finalize (GObject *object)
{
  SwSection *self = SW_SECTION (object);

  g_free (self->title);
  g_object_unref (self->items);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_section_parent_class)->finalize (object);
}

static void
sw_section_class_init (SwSectionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_section_get_property;
  object_class->set_property = sw_section_set_property;
  object_class->finalize = sw_section_finalize;

  properties[PROP_KIND] = g_param_spec_enum ("kind", NULL, NULL, SW_TYPE_SECTION_KIND,
                                             SW_SECTION_WARM_UP, flags);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", flags);
  properties[PROP_ITEMS] = g_param_spec_object ("items", NULL, NULL, G_TYPE_LIST_STORE,
                                                G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_section_init (SwSection *self)
{
  self->items = g_list_store_new (SW_TYPE_ITEM);
  sw_field_set_string (&self->title, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_section_new:
 * @kind: what part of the session it is
 * @title: (nullable): its title; NULL or "" for the kind's usual name
 *
 * Returns: (transfer full): a section without items
 */
SwSection *
sw_section_new (SwSectionKind  kind,
                const char    *title)
{
  return g_object_new (SW_TYPE_SECTION, "kind", kind, "title", title, NULL);
}

/* What came after an item comes after that item's copy. */
static void
follow_copies (SwSection *self,
               SwSection *copy)
{
  GListModel *items = G_LIST_MODEL (self->items);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      g_autoptr (SwItem) item_copy = g_list_model_get_item (G_LIST_MODEL (copy->items), i);

      g_hash_table_insert (ids, (gpointer) sw_item_get_id (item), (gpointer) sw_item_get_id (item_copy));
    }
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      g_autoptr (SwItem) item_copy = g_list_model_get_item (G_LIST_MODEL (copy->items), i);
      const char *after = g_hash_table_lookup (ids, sw_item_get_after (item));

      if (after != NULL)
        g_object_set (item_copy, "after", after, NULL);
    }
}

/**
 * sw_section_copy:
 * @self: a section
 * @new_ids: whether its items get new ids, see sw_item_copy()
 *
 * Returns: (transfer full): a copy with copies of its items
 */
SwSection *
sw_section_copy (SwSection *self,
                 gboolean   new_ids)
{
  SwSection *copy;

  g_return_val_if_fail (SW_IS_SECTION (self), NULL);

  copy = sw_section_new ((SwSectionKind) self->kind, self->title);
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->items)); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);
      g_autoptr (SwItem) item_copy = sw_item_copy (item, new_ids);

      g_list_store_append (copy->items, item_copy);
    }
  if (new_ids)
    follow_copies (self, copy);

  return copy;
}

/**
 * sw_section_get_kind:
 * @self: a section
 *
 * Returns: what part of the session it is
 */
SwSectionKind
sw_section_get_kind (SwSection *self)
{
  g_return_val_if_fail (SW_IS_SECTION (self), SW_SECTION_OWN);

  return (SwSectionKind) self->kind;
}

/**
 * sw_section_get_title:
 * @self: a section
 *
 * Returns: (transfer none): its title, "" for the kind's usual name
 */
const char *
sw_section_get_title (SwSection *self)
{
  g_return_val_if_fail (SW_IS_SECTION (self), NULL);

  return self->title;
}

/**
 * sw_section_get_items:
 * @self: a section
 *
 * Returns: (transfer none) (element-type SwItem): its items
 */
GListStore *
sw_section_get_items (SwSection *self)
{
  g_return_val_if_fail (SW_IS_SECTION (self), NULL);

  return self->items;
}

/**
 * sw_section_get_extras:
 * @self: a section
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_section_get_extras (SwSection *self)
{
  g_return_val_if_fail (SW_IS_SECTION (self), NULL);

  return (const char * const *) self->extras;
}
