/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The filters of the catalogue together, and what they ask of a search. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-filter-bar.h"
#include "sw-filter-button.h"
#include "sw-labels.h"

struct _SwFilterBar
{
  GtkWidget parent_instance;

  SwFilterButton *region;
  SwFilterButton *position;
  SwFilterButton *equipment;
  SwFilterButton *aim;
  SwFilterButton *review;

  SwSet client_equipment;
  gboolean clearing;
};

G_DEFINE_FINAL_TYPE (SwFilterBar, sw_filter_bar, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
filter_changed_cb (SwFilterBar *self)
{
  if (!self->clearing)
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
update_equipment_detail (SwFilterBar *self)
{
  g_autofree char *words = NULL;

  if (self->client_equipment == 0)
    words = g_strdup (_("Nothing is noted for this client yet."));
  else
    words = sw_label_set (SW_TYPE_EQUIPMENT, self->client_equipment);

  sw_filter_button_set_switch_detail (self->equipment, words);
}

static void
sw_filter_bar_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_filter_bar_parent_class)->dispose (object);
}

static void
sw_filter_bar_class_init (SwFilterBarClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_filter_bar_dispose;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_FILTER_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_FILTER_BUTTON);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_GRID_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "filters");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-filter-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFilterBar, region);
  gtk_widget_class_bind_template_child (widget_class, SwFilterBar, position);
  gtk_widget_class_bind_template_child (widget_class, SwFilterBar, equipment);
  gtk_widget_class_bind_template_child (widget_class, SwFilterBar, aim);
  gtk_widget_class_bind_template_child (widget_class, SwFilterBar, review);
  gtk_widget_class_bind_template_callback (widget_class, filter_changed_cb);
}

static void
sw_filter_bar_init (SwFilterBar *self)
{
  GtkGridLayout *layout;

  gtk_widget_init_template (GTK_WIDGET (self));

  layout = GTK_GRID_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self)));
  gtk_grid_layout_set_column_homogeneous (layout, TRUE);
  gtk_grid_layout_set_column_spacing (layout, 6);
  gtk_grid_layout_set_row_spacing (layout, 6);

  sw_filter_button_set_vocabulary (self->region, _("Region"), SW_TYPE_REGION);
  sw_filter_button_set_vocabulary (self->position, _("Position"), SW_TYPE_POSITION);
  sw_filter_button_set_vocabulary (self->equipment, _("Equipment"), SW_TYPE_EQUIPMENT);
  sw_filter_button_set_vocabulary (self->aim, _("Aim"), SW_TYPE_AIM);
  sw_filter_button_set_vocabulary (self->review, _("Review"), SW_TYPE_REVIEW_STATE);
  sw_filter_button_set_switch (self->equipment, _("Only what the client has"), _("Client’s own"));
  update_equipment_detail (self);
}

/**
 * sw_filter_bar_get_filter:
 * @filter: (out): what the filters ask for
 *
 * With the client's equipment asked for, ticked equipment is let through as well: what could be lent.
 */
void
sw_filter_bar_get_filter (SwFilterBar    *self,
                          SwSearchFilter *filter)
{
  g_return_if_fail (SW_IS_FILTER_BAR (self));
  g_return_if_fail (filter != NULL);

  filter->regions = sw_filter_button_get_values (self->region);
  filter->positions = sw_filter_button_get_values (self->position);
  filter->aims = sw_filter_button_get_values (self->aim);
  filter->reviews = sw_filter_button_get_values (self->review);
  filter->limit_equipment = sw_filter_button_get_any (self->equipment);
  filter->equipment = sw_filter_button_get_values (self->equipment);
  if (sw_filter_button_get_switched (self->equipment))
    filter->equipment |= self->client_equipment;
}

/**
 * sw_filter_bar_get_any:
 *
 * Returns: whether anything is filtered
 */
gboolean
sw_filter_bar_get_any (SwFilterBar *self)
{
  g_return_val_if_fail (SW_IS_FILTER_BAR (self), FALSE);

  return sw_filter_button_get_any (self->region) || sw_filter_button_get_any (self->position)
         || sw_filter_button_get_any (self->equipment) || sw_filter_button_get_any (self->aim)
         || sw_filter_button_get_any (self->review);
}

/**
 * sw_filter_bar_set_client_equipment:
 * @equipment: set of #SwEquipment the client has at home
 */
void
sw_filter_bar_set_client_equipment (SwFilterBar *self,
                                    SwSet        equipment)
{
  g_return_if_fail (SW_IS_FILTER_BAR (self));

  if (self->client_equipment == equipment)
    return;

  self->client_equipment = equipment;
  update_equipment_detail (self);
  if (sw_filter_button_get_switched (self->equipment))
    g_signal_emit (self, signals[CHANGED], 0);
}

/**
 * sw_filter_bar_clear:
 *
 * Lets everything through again; "changed" comes once.
 */
void
sw_filter_bar_clear (SwFilterBar *self)
{
  g_return_if_fail (SW_IS_FILTER_BAR (self));

  if (!sw_filter_bar_get_any (self))
    return;

  self->clearing = TRUE;
  sw_filter_button_clear (self->region);
  sw_filter_button_clear (self->position);
  sw_filter_button_clear (self->equipment);
  sw_filter_button_clear (self->aim);
  sw_filter_button_clear (self->review);
  self->clearing = FALSE;

  g_signal_emit (self, signals[CHANGED], 0);
}
