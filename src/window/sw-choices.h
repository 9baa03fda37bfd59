/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void sw_choices_fill (GtkDropDown *drop_down,
                      GType        type);
void sw_choices_show (GtkDropDown *drop_down,
                      int          value);

G_END_DECLS
