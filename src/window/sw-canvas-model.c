/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Turns the nested lists of a session into the flat one that a list view wants. */
#include "config.h"

#include "sw-canvas-model.h"

struct _SwCanvasModel
{
  GObject parent_instance;

  SwDocument *document;
  GPtrArray *rows;
  GHashTable *rows_by_object; /* section or item -> its row */
  GHashTable *empty_rows;     /* section or circuit -> the row that stands in for its items */
  GHashTable *chosen;         /* set of items */
};

static void sw_canvas_model_list_model_init (GListModelInterface *interface);
static void sw_canvas_model_selection_model_init (GtkSelectionModelInterface *interface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SwCanvasModel, sw_canvas_model, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, sw_canvas_model_list_model_init)
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_SELECTION_MODEL, sw_canvas_model_selection_model_init))

enum
{
  ROWS_ABOUT_TO_CHANGE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The row of @object if there was one, else a new one; kept for the next time in either case. */
static SwCanvasRow *
row_for (GHashTable *before,
         GHashTable *after,
         gpointer    object,
         gboolean    is_empty)
{
  SwCanvasRow *row = g_hash_table_lookup (before, object);

  row = row != NULL ? g_object_ref (row) : sw_canvas_row_new (is_empty);
  g_hash_table_insert (after, g_object_ref (object), row);
  return row;
}

/* The rows as they should stand now, and where each of them stands. */
typedef struct
{
  GPtrArray *rows;
  GHashTable *rows_by_object;
  GHashTable *empty_rows;
} Layout;

static void
add_row (SwCanvasModel *self,
         Layout        *layout,
         SwSection     *section,
         SwItem        *circuit,
         SwItem        *item)
{
  gpointer object = item != NULL ? (gpointer) item : section;
  SwCanvasRow *row = row_for (self->rows_by_object, layout->rows_by_object, object, FALSE);

  sw_canvas_row_set_place (row, section, circuit, item);
  g_ptr_array_add (layout->rows, g_object_ref (row));
}

static void
add_empty_row (SwCanvasModel *self,
               Layout        *layout,
               SwSection     *section,
               SwItem        *circuit)
{
  gpointer owner = circuit != NULL ? (gpointer) circuit : section;
  SwCanvasRow *row = row_for (self->empty_rows, layout->empty_rows, owner, TRUE);

  sw_canvas_row_set_place (row, section, circuit, NULL);
  g_ptr_array_add (layout->rows, g_object_ref (row));
}

static void
add_items (SwCanvasModel *self,
           Layout        *layout,
           SwSection     *section,
           SwItem        *circuit,
           GListModel    *items)
{
  guint n = g_list_model_get_n_items (items);

  if (n == 0)
    add_empty_row (self, layout, section, circuit);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      add_row (self, layout, section, circuit, item);
      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT && circuit == NULL)
        add_items (self, layout, section, item, G_LIST_MODEL (sw_item_get_items (item)));
    }
}

static void
lay_out (SwCanvasModel *self,
         Layout        *layout)
{
  SwSession *session = sw_document_get_session (self->document);
  GListModel *sections;

  layout->rows = g_ptr_array_new_with_free_func (g_object_unref);
  layout->rows_by_object = g_hash_table_new_full (NULL, NULL, g_object_unref, g_object_unref);
  layout->empty_rows = g_hash_table_new_full (NULL, NULL, g_object_unref, g_object_unref);
  if (session == NULL)
    return;

  sections = G_LIST_MODEL (sw_session_get_sections (session));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      add_row (self, layout, section, NULL, NULL);
      add_items (self, layout, section, NULL, G_LIST_MODEL (sw_section_get_items (section)));
    }
}

static gboolean
is_exercise (SwCanvasRow *row)
{
  SwItem *item = sw_canvas_row_get_item (row);

  return item != NULL && sw_item_get_kind (item) == SW_ITEM_EXERCISE;
}

static gboolean
ends_circuit (GPtrArray *rows,
              guint      position)
{
  SwItem *circuit = sw_canvas_row_get_circuit (rows->pdata[position]);

  return circuit != NULL
         && (position + 1 == rows->len || sw_canvas_row_get_circuit (rows->pdata[position + 1]) != circuit);
}

/* The entries of the clock stand in the order of the rows, so that one walk finds them all. */
static const SwClockEntry *
next_entry (const SwClock *clock,
            guint         *cursor,
            SwItem        *item)
{
  for (guint i = *cursor; clock != NULL && i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);

      if (entry->item == item)
        {
          *cursor = i + 1;
          return entry;
        }
    }

  return NULL;
}

static void
update_faces (SwCanvasModel *self)
{
  const SwClock *clock = sw_document_get_clock (self->document);
  SwPosition position = SW_POSITION_STANDING;
  guint n_exercises = 0, number = 0, cursor = 0;

  if (clock != NULL && clock->entries->len > 0)
    position = g_array_index (clock->entries, SwClockEntry, 0).position;
  for (guint i = 0; i < self->rows->len; i++)
    n_exercises += is_exercise (self->rows->pdata[i]);

  for (guint i = 0; i < self->rows->len; i++)
    {
      SwCanvasRow *row = self->rows->pdata[i];
      SwItem *item = sw_canvas_row_get_item (row);
      SwItem *circuit = sw_canvas_row_get_circuit (row);
      SwCanvasFace *face;

      if (sw_canvas_row_get_kind (row) == SW_CANVAS_ROW_EMPTY)
        face = sw_canvas_face_new_for_empty (circuit != NULL ? (gpointer) circuit : sw_canvas_row_get_section (row),
                                             position);
      else if (item == NULL)
        face = sw_canvas_face_new_for_section (self->document, sw_canvas_row_get_section (row), position);
      else
        face = sw_canvas_face_new_for_item (self->document, item, next_entry (clock, &cursor, item), position,
                                            is_exercise (row) ? ++number : 0, n_exercises);
      face->last = ends_circuit (self->rows, i);
      position = face->position;
      sw_canvas_row_take_face (row, face);
    }
}

static void
update_chosen (SwCanvasModel *self)
{
  GPtrArray *chosen = sw_document_get_chosen (self->document);

  g_hash_table_remove_all (self->chosen);
  for (guint i = 0; i < chosen->len; i++)
    g_hash_table_add (self->chosen, g_object_ref (chosen->pdata[i]));
}

static void
document_changed_cb (SwCanvasModel *self)
{
  guint n_before = self->rows->len;
  guint shorter, head = 0, tail = 0;
  g_autoptr (GPtrArray) before = NULL;
  Layout layout;

  lay_out (self, &layout);
  shorter = MIN (n_before, layout.rows->len);
  while (head < shorter && self->rows->pdata[head] == layout.rows->pdata[head])
    head++;
  while (tail < shorter - head
         && self->rows->pdata[n_before - 1 - tail] == layout.rows->pdata[layout.rows->len - 1 - tail])
    tail++;
  if (head + tail < n_before || head + tail < layout.rows->len)
    g_signal_emit (self, signals[ROWS_ABOUT_TO_CHANGE], 0, head, n_before - head - tail);

  before = g_steal_pointer (&self->rows);
  self->rows = layout.rows;
  g_hash_table_unref (self->rows_by_object);
  self->rows_by_object = layout.rows_by_object;
  g_hash_table_unref (self->empty_rows);
  self->empty_rows = layout.empty_rows;
  update_faces (self);

  if (head + tail < n_before || head + tail < self->rows->len)
    g_list_model_items_changed (G_LIST_MODEL (self), head, n_before - head - tail, self->rows->len - head - tail);
}

static void
chosen_changed_cb (SwCanvasModel *self)
{
  update_chosen (self);
  if (self->rows->len > 0)
    gtk_selection_model_selection_changed (GTK_SELECTION_MODEL (self), 0, self->rows->len);
}

static GType
sw_canvas_model_get_item_type (GListModel *model)
{
  (void) model;
  return SW_TYPE_CANVAS_ROW;
}

static guint
sw_canvas_model_get_n_items (GListModel *model)
{
  return SW_CANVAS_MODEL (model)->rows->len;
}

static gpointer
sw_canvas_model_get_item (GListModel *model,
                          guint       position)
{
  SwCanvasModel *self = SW_CANVAS_MODEL (model);

  return position < self->rows->len ? g_object_ref (self->rows->pdata[position]) : NULL;
}

static void
sw_canvas_model_list_model_init (GListModelInterface *interface)
{
  interface->get_item_type = sw_canvas_model_get_item_type;
  interface->get_n_items = sw_canvas_model_get_n_items;
  interface->get_item = sw_canvas_model_get_item;
}

static gboolean
sw_canvas_model_is_selected (GtkSelectionModel *model,
                             guint              position)
{
  SwCanvasModel *self = SW_CANVAS_MODEL (model);
  SwItem *item = position < self->rows->len ? sw_canvas_row_get_item (self->rows->pdata[position]) : NULL;

  return item != NULL && g_hash_table_contains (self->chosen, item);
}

/* Only items can be chosen; a header that is selected merely ends the choice of others. */
static gboolean
sw_canvas_model_set_selection (GtkSelectionModel *model,
                               GtkBitset         *selected,
                               GtkBitset         *mask)
{
  SwCanvasModel *self = SW_CANVAS_MODEL (model);
  g_autoptr (GPtrArray) items = g_ptr_array_new ();

  for (guint i = 0; i < self->rows->len; i++)
    {
      SwItem *item = sw_canvas_row_get_item (self->rows->pdata[i]);
      gboolean choose = gtk_bitset_contains (mask, i) ? gtk_bitset_contains (selected, i)
                                                      : sw_canvas_model_is_selected (model, i);

      if (item != NULL && choose)
        g_ptr_array_add (items, item);
    }

  sw_document_choose (self->document, items);
  return TRUE;
}

static void
sw_canvas_model_selection_model_init (GtkSelectionModelInterface *interface)
{
  interface->is_selected = sw_canvas_model_is_selected;
  interface->set_selection = sw_canvas_model_set_selection;
}

static void
sw_canvas_model_dispose (GObject *object)
{
  SwCanvasModel *self = SW_CANVAS_MODEL (object);

  g_clear_object (&self->document);
  g_ptr_array_set_size (self->rows, 0);
  g_hash_table_remove_all (self->rows_by_object);
  g_hash_table_remove_all (self->empty_rows);
  g_hash_table_remove_all (self->chosen);

  G_OBJECT_CLASS (sw_canvas_model_parent_class)->dispose (object);
}

static void
sw_canvas_model_finalize (GObject *object)
{
  SwCanvasModel *self = SW_CANVAS_MODEL (object);

  g_ptr_array_unref (self->rows);
  g_hash_table_unref (self->rows_by_object);
  g_hash_table_unref (self->empty_rows);
  g_hash_table_unref (self->chosen);

  G_OBJECT_CLASS (sw_canvas_model_parent_class)->finalize (object);
}

static void
sw_canvas_model_class_init (SwCanvasModelClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = sw_canvas_model_dispose;
  object_class->finalize = sw_canvas_model_finalize;

  signals[ROWS_ABOUT_TO_CHANGE] = g_signal_new ("rows-about-to-change", SW_TYPE_CANVAS_MODEL, G_SIGNAL_RUN_LAST, 0,
                                                NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_UINT);
}

static void
sw_canvas_model_init (SwCanvasModel *self)
{
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  self->rows_by_object = g_hash_table_new_full (NULL, NULL, g_object_unref, g_object_unref);
  self->empty_rows = g_hash_table_new_full (NULL, NULL, g_object_unref, g_object_unref);
  self->chosen = g_hash_table_new_full (NULL, NULL, g_object_unref, NULL);
}

/**
 * sw_canvas_model_new:
 * @document: the document whose session is listed
 *
 * Returns: (transfer full): the rows of the session it shows, from now on kept up to date
 */
SwCanvasModel *
sw_canvas_model_new (SwDocument *document)
{
  SwCanvasModel *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_CANVAS_MODEL, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "chosen-changed", G_CALLBACK (chosen_changed_cb), self, G_CONNECT_SWAPPED);
  update_chosen (self);
  document_changed_cb (self);

  return self;
}

/**
 * sw_canvas_model_get_row:
 * @position: where, from 0
 *
 * Returns: (transfer none) (nullable): the row there, NULL beyond the end
 */
SwCanvasRow *
sw_canvas_model_get_row (SwCanvasModel *self,
                         guint          position)
{
  g_return_val_if_fail (SW_IS_CANVAS_MODEL (self), NULL);
  return position < self->rows->len ? self->rows->pdata[position] : NULL;
}

/**
 * sw_canvas_model_find:
 * @object: a section or an item
 *
 * Returns: the position of its row, or %GTK_INVALID_LIST_POSITION when it is not in the session shown
 */
guint
sw_canvas_model_find (SwCanvasModel *self,
                      gpointer       object)
{
  g_return_val_if_fail (SW_IS_CANVAS_MODEL (self), GTK_INVALID_LIST_POSITION);

  return sw_canvas_model_find_row (self, g_hash_table_lookup (self->rows_by_object, object));
}

/**
 * sw_canvas_model_find_row:
 * @row: (nullable): a row
 *
 * Returns: its position, or %GTK_INVALID_LIST_POSITION when it is not in the list
 */
guint
sw_canvas_model_find_row (SwCanvasModel *self,
                          SwCanvasRow   *row)
{
  guint position;

  g_return_val_if_fail (SW_IS_CANVAS_MODEL (self), GTK_INVALID_LIST_POSITION);

  return row != NULL && g_ptr_array_find (self->rows, row, &position) ? position : GTK_INVALID_LIST_POSITION;
}
