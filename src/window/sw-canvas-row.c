/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a row of the canvas stands for, apart from how it is shown. */
#include "config.h"

#include "sw-canvas-row.h"

struct _SwCanvasRow
{
  GObject parent_instance;

  gboolean is_empty;
  gboolean place_changed;
  SwSection *section;
  SwItem *circuit;
  SwItem *item;
  SwCanvasFace *face;
};

G_DEFINE_FINAL_TYPE (SwCanvasRow, sw_canvas_row, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
sw_canvas_row_dispose (GObject *object)
{
  SwCanvasRow *self = SW_CANVAS_ROW (object);

  g_clear_object (&self->section);
  g_clear_object (&self->circuit);
  g_clear_object (&self->item);
  g_clear_pointer (&self->face, sw_canvas_face_free);

  G_OBJECT_CLASS (sw_canvas_row_parent_class)->dispose (object);
}

static void
sw_canvas_row_class_init (SwCanvasRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_canvas_row_dispose;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_CANVAS_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
sw_canvas_row_init (SwCanvasRow *self)
{
  (void) self;
}

/**
 * sw_canvas_row_new:
 * @is_empty: whether it stands in for the items of an empty section or circuit
 *
 * Returns: (transfer full): a row without a place and a face
 */
SwCanvasRow *
sw_canvas_row_new (gboolean is_empty)
{
  SwCanvasRow *self = g_object_new (SW_TYPE_CANVAS_ROW, NULL);

  self->is_empty = is_empty;
  return self;
}

/**
 * sw_canvas_row_set_place:
 * @section: the section it is in, or whose header it is
 * @circuit: (nullable): the circuit it is a member of
 * @item: (nullable): the item
 *
 * Says where the row stands. The next face announces the change.
 */
void
sw_canvas_row_set_place (SwCanvasRow *self,
                         SwSection   *section,
                         SwItem      *circuit,
                         SwItem      *item)
{
  SwCanvasRowKind before;

  g_return_if_fail (SW_IS_CANVAS_ROW (self));

  before = sw_canvas_row_get_kind (self);
  g_set_object (&self->section, section);
  g_set_object (&self->circuit, circuit);
  g_set_object (&self->item, item);
  self->place_changed |= before != sw_canvas_row_get_kind (self);
}

/**
 * sw_canvas_row_take_face:
 * @face: (transfer full): what it shows from now on
 *
 * Emits "changed" when that differs from what it showed.
 */
void
sw_canvas_row_take_face (SwCanvasRow  *self,
                         SwCanvasFace *face)
{
  g_autoptr (SwCanvasFace) before = NULL;

  g_return_if_fail (SW_IS_CANVAS_ROW (self));
  g_return_if_fail (face != NULL);

  before = g_steal_pointer (&self->face);
  self->face = face;
  if (before == NULL || self->place_changed || !sw_canvas_face_equal (before, face))
    {
      self->place_changed = FALSE;
      g_signal_emit (self, signals[CHANGED], 0);
    }
}

/**
 * sw_canvas_row_get_kind:
 *
 * Returns: what it stands for
 */
SwCanvasRowKind
sw_canvas_row_get_kind (SwCanvasRow *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW (self), SW_CANVAS_ROW_EMPTY);

  if (self->is_empty)
    return SW_CANVAS_ROW_EMPTY;
  if (self->item == NULL)
    return SW_CANVAS_ROW_SECTION;
  if (self->circuit != NULL)
    return SW_CANVAS_ROW_MEMBER;
  return sw_item_get_kind (self->item) == SW_ITEM_CIRCUIT ? SW_CANVAS_ROW_CIRCUIT : SW_CANVAS_ROW_ITEM;
}

/**
 * sw_canvas_row_get_section:
 *
 * Returns: (transfer none): the section it is in, or whose header it is
 */
SwSection *
sw_canvas_row_get_section (SwCanvasRow *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW (self), NULL);
  return self->section;
}

/**
 * sw_canvas_row_get_circuit:
 *
 * Returns: (transfer none) (nullable): the circuit it is a member of
 */
SwItem *
sw_canvas_row_get_circuit (SwCanvasRow *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW (self), NULL);
  return self->circuit;
}

/**
 * sw_canvas_row_get_item:
 *
 * Returns: (transfer none) (nullable): the item it stands for
 */
SwItem *
sw_canvas_row_get_item (SwCanvasRow *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW (self), NULL);
  return self->item;
}

/**
 * sw_canvas_row_get_face:
 *
 * Returns: what it shows, valid until its next "changed"; not NULL for rows of a model
 */
const SwCanvasFace *
sw_canvas_row_get_face (SwCanvasRow *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW (self), NULL);
  return self->face;
}
