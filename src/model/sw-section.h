/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-item.h"

G_BEGIN_DECLS

/**
 * SwSection:
 *
 * A part of a session. Properties: "kind" (SwSectionKind), "title" (string; "" means the kind's usual
 * name), "items" (GListStore of SwItem, read only), "extras" (GStrv).
 */
#define SW_TYPE_SECTION (sw_section_get_type ())
G_DECLARE_FINAL_TYPE (SwSection, sw_section, SW, SECTION, GObject)

SwSection *sw_section_new (SwSectionKind  kind,
                           const char    *title);
SwSection *sw_section_copy (SwSection *self,
                            gboolean   new_ids);
SwSectionKind sw_section_get_kind (SwSection *self);
const char *sw_section_get_title (SwSection *self);
GListStore *sw_section_get_items (SwSection *self);
const char * const *sw_section_get_extras (SwSection *self);

G_END_DECLS
