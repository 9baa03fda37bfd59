/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What an item looks like in the session. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-item-view.h"
#include "sw-figure-view.h"
#include "sw-finding-mark.h"
#include "sw-position-ribbon.h"

struct _SwCanvasItemView
{
  GtkWidget parent_instance;

  GtkLabel *start;
  SwPositionRibbon *ribbon;
  GtkWidget *content;
  GtkLabel *change;
  GtkWidget *grip;
  SwFigureView *figure;
  GtkImage *kind;
  GtkLabel *number;
  GtkLabel *name;
  GtkImage *mark;
  GtkLabel *length;
  GtkLabel *dose;
  GtkLabel *note;
};

G_DEFINE_FINAL_TYPE (SwCanvasItemView, sw_canvas_item_view, GTK_TYPE_WIDGET)

static void
set_words (GtkLabel   *label,
           const char *words)
{
  gtk_label_set_label (label, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (label), words != NULL && *words != '\0');
}

static void
set_class (GtkWidget  *widget,
           const char *name,
           gboolean    on)
{
  if (on)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

static void
show_kind (SwCanvasItemView *self,
           SwCanvasRowKind   kind,
           gboolean          in_circuit,
           gboolean          last)
{
  GtkWidget *widget = GTK_WIDGET (self);

  set_class (widget, "empty", kind == SW_CANVAS_ROW_EMPTY);
  set_class (widget, "circuit", kind == SW_CANVAS_ROW_CIRCUIT);
  set_class (self->content, "member", in_circuit);
  set_class (self->content, "last", in_circuit && last);
  gtk_widget_set_visible (self->grip, kind != SW_CANVAS_ROW_EMPTY);
}

/* What has no figure has a symbol in its place, so that names stand below each other. */
static void
show_symbol (SwCanvasItemView *self,
             SwItem           *item)
{
  static const char *const symbols[] = {
    [SW_ITEM_EXERCISE] = NULL,
    [SW_ITEM_REST] = "media-playback-pause-symbolic",
    [SW_ITEM_CIRCUIT] = "media-playlist-repeat-symbolic",
    [SW_ITEM_SELF_CHECK] = "object-select-symbolic",
  };
  const char *symbol = item != NULL ? symbols[sw_item_get_kind (item)] : NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->kind), symbol != NULL);
  if (symbol != NULL)
    gtk_image_set_from_icon_name (self->kind, symbol);
}

static void
sw_canvas_item_view_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_canvas_item_view_parent_class)->dispose (object);
}

static void
sw_canvas_item_view_class_init (SwCanvasItemViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_canvas_item_view_dispose;

  g_type_ensure (SW_TYPE_POSITION_RIBBON);
  g_type_ensure (SW_TYPE_FIGURE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-canvas-item-view.ui");
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, start);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, ribbon);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, content);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, change);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, grip);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, figure);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, kind);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, number);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, name);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, mark);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, length);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, dose);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasItemView, note);
  gtk_widget_class_set_css_name (widget_class, "canvas-item");
}

static void
sw_canvas_item_view_init (SwCanvasItemView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_canvas_item_view_new:
 * @pictures: (nullable): where figures come from
 *
 * Returns: (transfer floating): a view that shows no row yet
 */
GtkWidget *
sw_canvas_item_view_new (SwPictures *pictures)
{
  SwCanvasItemView *self = g_object_new (SW_TYPE_CANVAS_ITEM_VIEW, NULL);

  if (pictures != NULL)
    sw_figure_view_set_pictures (self->figure, pictures);
  return GTK_WIDGET (self);
}

/**
 * sw_canvas_item_view_show_row:
 * @row: a row of any kind but a section's header
 *
 * Shows the row as it is now.
 */
void
sw_canvas_item_view_show_row (SwCanvasItemView *self,
                              SwCanvasRow      *row)
{
  const SwCanvasFace *face;
  g_autofree char *number = NULL;

  g_return_if_fail (SW_IS_CANVAS_ITEM_VIEW (self));
  g_return_if_fail (SW_IS_CANVAS_ROW (row));

  face = sw_canvas_row_get_face (row);
  show_kind (self, sw_canvas_row_get_kind (row), sw_canvas_row_get_circuit (row) != NULL, face->last);
  if (face->number > 0)
    number = g_strdup_printf ("%u", face->number);

  gtk_label_set_label (self->start, face->start);
  sw_position_ribbon_set_positions (self->ribbon, face->before, face->position);
  set_words (self->change, face->change);
  sw_figure_view_set_exercise (self->figure, face->exercise, face->mirrored);
  gtk_widget_set_visible (GTK_WIDGET (self->figure), face->exercise != NULL);
  show_symbol (self, sw_canvas_row_get_item (row));
  set_words (self->number, number);
  gtk_label_set_label (self->name, face->name);
  sw_finding_mark_show (self->mark, face->level, face->finding);
  gtk_label_set_label (self->length, face->length);
  set_words (self->dose, face->dose);
  set_words (self->note, face->note);
}
