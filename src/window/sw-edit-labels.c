/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What undo calls an edit, so that it reads the same whether it was made by mouse, menu or key. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-labels.h"
#include "sw-labels.h"

static char *
name_or_kind (const char *name,
              GType       type,
              int         kind)
{
  return g_strdup (name != NULL && *name != '\0' ? name : sw_label (type, kind));
}

/**
 * sw_edit_object_name:
 * @object: a session, section, item or exercise
 *
 * Returns: (transfer full): what the window calls it; its kind when it has no name of its own
 */
char *
sw_edit_object_name (gpointer object)
{
  g_return_val_if_fail (G_IS_OBJECT (object), NULL);

  if (SW_IS_EXERCISE (object))
    return g_strdup (sw_exercise_get_text (object, NULL)->name);

  if (SW_IS_ITEM (object))
    {
      g_autofree char *name = sw_item_dup_name (object, NULL);

      return name_or_kind (name, SW_TYPE_ITEM_KIND, sw_item_get_kind (object));
    }

  if (SW_IS_SECTION (object))
    return name_or_kind (sw_section_get_title (object), SW_TYPE_SECTION_KIND, sw_section_get_kind (object));

  if (SW_IS_SESSION (object) && *sw_session_get_title (object) != '\0')
    return g_strdup (sw_session_get_title (object));

  return g_strdup (_ ("Session"));
}

static char *
label_of_one (SwEditVerb  verb,
              const char *name)
{
  switch (verb)
    {
    case SW_EDIT_VERB_ADD:
      return g_strdup_printf (_ ("Add “%s”"), name);
    case SW_EDIT_VERB_REMOVE:
      return g_strdup_printf (_ ("Remove “%s”"), name);
    case SW_EDIT_VERB_MOVE:
      return g_strdup_printf (_ ("Move “%s”"), name);
    case SW_EDIT_VERB_DUPLICATE:
      return g_strdup_printf (_ ("Duplicate “%s”"), name);
    case SW_EDIT_VERB_CUT:
      return g_strdup_printf (_ ("Cut “%s”"), name);
    case SW_EDIT_VERB_PASTE:
    default:
      return g_strdup_printf (_ ("Paste “%s”"), name);
    }
}

static char *
label_of_many (SwEditVerb verb,
               guint      n)
{
  switch (verb)
    {
    case SW_EDIT_VERB_ADD:
      return g_strdup_printf (ngettext ("Add %u item", "Add %u items", n), n);
    case SW_EDIT_VERB_REMOVE:
      return g_strdup_printf (ngettext ("Remove %u item", "Remove %u items", n), n);
    case SW_EDIT_VERB_MOVE:
      return g_strdup_printf (ngettext ("Move %u item", "Move %u items", n), n);
    case SW_EDIT_VERB_DUPLICATE:
      return g_strdup_printf (ngettext ("Duplicate %u item", "Duplicate %u items", n), n);
    case SW_EDIT_VERB_CUT:
      return g_strdup_printf (ngettext ("Cut %u item", "Cut %u items", n), n);
    case SW_EDIT_VERB_PASTE:
    default:
      return g_strdup_printf (ngettext ("Paste %u item", "Paste %u items", n), n);
    }
}

/**
 * sw_edit_label:
 * @verb: what is done
 * @objects: (element-type GObject): to what
 *
 * Returns: (transfer full): a phrase for undo, such as: Move “Heel raise”
 */
char *
sw_edit_label (SwEditVerb verb,
               GPtrArray *objects)
{
  g_return_val_if_fail (objects != NULL, NULL);

  if (objects->len == 1)
    return sw_edit_label_for (verb, g_ptr_array_index (objects, 0));

  return label_of_many (verb, objects->len);
}

/**
 * sw_edit_label_for:
 * @verb: what is done
 * @object: to what
 *
 * Returns: (transfer full): see sw_edit_label()
 */
char *
sw_edit_label_for (SwEditVerb verb,
                   gpointer   object)
{
  g_autofree char *name = sw_edit_object_name (object);

  return label_of_one (verb, name);
}

/**
 * sw_edit_label_for_swap:
 * @item: an exercise item
 * @exercise: what is put in its place
 *
 * Returns: (transfer full): what undo calls that
 */
char *
sw_edit_label_for_swap (SwItem     *item,
                        SwExercise *exercise)
{
  g_autofree char *before = sw_edit_object_name (item);
  g_autofree char *after = sw_edit_object_name (exercise);

  /* Translators: names of two exercises: the one that was there and the one that takes its place */
  return g_strdup_printf (_ ("Swap “%s” for “%s”"), before, after);
}
