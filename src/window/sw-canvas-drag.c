/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One parcel for all ways of carrying items about, so that all of them do the same. */
#include "config.h"

#include "sw-canvas-drag.h"
#include "sw-edit-labels.h"

struct _SwCanvasDrag
{
  GObject parent_instance;

  SwProgramme *programme;
  GPtrArray *objects;
};

G_DEFINE_FINAL_TYPE (SwCanvasDrag, sw_canvas_drag, G_TYPE_OBJECT)

static void
sw_canvas_drag_dispose (GObject *object)
{
  SwCanvasDrag *self = SW_CANVAS_DRAG (object);

  g_clear_object (&self->programme);
  g_clear_pointer (&self->objects, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_canvas_drag_parent_class)->dispose (object);
}

static void
sw_canvas_drag_class_init (SwCanvasDragClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_canvas_drag_dispose;
}

static void
sw_canvas_drag_init (SwCanvasDrag *self)
{
  self->objects = g_ptr_array_new_with_free_func (g_object_unref);
}

/**
 * sw_canvas_drag_new:
 * @programme: where they come from
 * @objects: (element-type GObject): items, or sections
 *
 * Returns: (transfer full): a parcel of them, in the given order
 */
SwCanvasDrag *
sw_canvas_drag_new (SwProgramme *programme,
                    GPtrArray   *objects)
{
  SwCanvasDrag *self;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);
  g_return_val_if_fail (objects != NULL, NULL);

  self = g_object_new (SW_TYPE_CANVAS_DRAG, NULL);
  self->programme = g_object_ref (programme);
  for (guint i = 0; i < objects->len; i++)
    g_ptr_array_add (self->objects, g_object_ref (objects->pdata[i]));
  return self;
}

/**
 * sw_canvas_drag_get_programme:
 *
 * Returns: (transfer none): where the objects come from
 */
SwProgramme *
sw_canvas_drag_get_programme (SwCanvasDrag *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), NULL);
  return self->programme;
}

/**
 * sw_canvas_drag_get_objects:
 *
 * Returns: (transfer none) (element-type GObject): the objects
 */
GPtrArray *
sw_canvas_drag_get_objects (SwCanvasDrag *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), NULL);
  return self->objects;
}

/* Whether another of the objects holds @item: it is copied with that one. */
static gboolean
is_held (SwCanvasDrag *self,
         gpointer      object)
{
  for (guint i = 0; i < self->objects->len; i++)
    {
      gpointer other = self->objects->pdata[i];

      if (SW_IS_ITEM (other) && SW_IS_ITEM (object)
          && g_list_store_find (sw_item_get_items (other), object, NULL))
        return TRUE;
    }

  return FALSE;
}

static void take_own_snapshots (GListModel  *items,
                                SwProgramme *programme);

/* What comes from another programme may have another text of the same exercise: one id means one text. */
static void
take_own_snapshot (SwItem      *item,
                   SwProgramme *programme)
{
  if (sw_item_get_kind (item) == SW_ITEM_EXERCISE && sw_item_get_exercise (item) != NULL)
    g_object_set (item, "exercise", sw_programme_own_snapshot (programme, sw_item_get_exercise (item)), NULL);
  else if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
    take_own_snapshots (G_LIST_MODEL (sw_item_get_items (item)), programme);
}

static void
take_own_snapshots (GListModel  *items,
                    SwProgramme *programme)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      take_own_snapshot (item, programme);
    }
}

/**
 * sw_canvas_drag_dup_copies:
 * @programme: what the copies are for; they hold its own snapshots of the exercises it has already
 *
 * Returns: (transfer full) (element-type GObject): copies of the objects with new ids, members of a circuit
 *   within the copy of their circuit if that is carried too
 */
GPtrArray *
sw_canvas_drag_dup_copies (SwCanvasDrag *self,
                           SwProgramme  *programme)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func (g_object_unref);

  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), copies);

  for (guint i = 0; i < self->objects->len; i++)
    {
      gpointer object = self->objects->pdata[i];

      if (SW_IS_SECTION (object))
        {
          SwSection *copy = sw_section_copy (object, TRUE);

          take_own_snapshots (G_LIST_MODEL (sw_section_get_items (copy)), programme);
          g_ptr_array_add (copies, copy);
        }
      else if (!is_held (self, object))
        {
          SwItem *copy = sw_item_copy (object, TRUE);

          take_own_snapshot (copy, programme);
          g_ptr_array_add (copies, copy);
        }
    }

  return copies;
}

/**
 * sw_canvas_drag_has_section:
 *
 * Returns: whether it carries a section; then it carries nothing else
 */
gboolean
sw_canvas_drag_has_section (SwCanvasDrag *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), FALSE);
  return self->objects->len > 0 && SW_IS_SECTION (self->objects->pdata[0]);
}

/**
 * sw_canvas_drag_has_circuit:
 *
 * Returns: whether it carries a circuit, which no circuit can take in
 */
gboolean
sw_canvas_drag_has_circuit (SwCanvasDrag *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), FALSE);

  for (guint i = 0; i < self->objects->len; i++)
    if (SW_IS_ITEM (self->objects->pdata[i]) && sw_item_get_kind (self->objects->pdata[i]) == SW_ITEM_CIRCUIT)
      return TRUE;

  return FALSE;
}

/**
 * sw_canvas_drag_to_text:
 *
 * Returns: (transfer full): the objects in words, one a line, for other programs
 */
char *
sw_canvas_drag_to_text (SwCanvasDrag *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  g_return_val_if_fail (SW_IS_CANVAS_DRAG (self), NULL);

  for (guint i = 0; i < self->objects->len; i++)
    {
      gpointer object = self->objects->pdata[i];
      g_autofree char *name = sw_edit_object_name (object);

      g_string_append (text, name);
      if (SW_IS_ITEM (object) && sw_item_get_kind (object) == SW_ITEM_EXERCISE)
        {
          g_autofree char *dose = sw_dose_to_line (sw_item_get_dose (object));

          g_string_append_printf (text, ": %s", dose);
        }
      g_string_append_c (text, '\n');
    }

  return g_string_free (g_steal_pointer (&text), FALSE);
}
