/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drop-down over the values of a vocabulary: the position in the list is the value. */
#include "config.h"

#include "sw-choices.h"

#include "sw-labels.h"

/**
 * sw_choices_fill:
 * @drop_down: gets one row a value
 * @type: the GType of an enumeration of the vocabularies
 */
void
sw_choices_fill (GtkDropDown *drop_down,
                 GType        type)
{
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);

  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down));

  for (int value = 0; value < sw_term_get_n_values (type); value++)
    gtk_string_list_append (words, sw_label (type, value));
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (words));
}

/**
 * sw_choices_show:
 * @drop_down: a drop-down filled with a vocabulary
 * @value: the value to show
 *
 * Notifies of nothing when it is shown already.
 */
void
sw_choices_show (GtkDropDown *drop_down,
                 int          value)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down));

  if (gtk_drop_down_get_selected (drop_down) != (guint) value)
    gtk_drop_down_set_selected (drop_down, (guint) value);
}
