/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwPagePlan:
 *
 * How a programme's handout is to look. Properties: "layout" (SwLayout), "parts" (guint64, SwSet of SwPagePart),
 * "save-ink" (boolean: no grey panels, no black bands), "landscape" (boolean; only the summary lies on its side),
 * "form" (boolean: the PDF's boxes and lines can be filled in on a screen), "extras" (GStrv).
 */
#define SW_TYPE_PAGE_PLAN (sw_page_plan_get_type ())
G_DECLARE_FINAL_TYPE (SwPagePlan, sw_page_plan, SW, PAGE_PLAN, GObject)

SwPagePlan *sw_page_plan_new (void);
SwPagePlan *sw_page_plan_copy (SwPagePlan *self);
SwLayout sw_page_plan_get_layout (SwPagePlan *self);
SwSet sw_page_plan_get_parts (SwPagePlan *self);
gboolean sw_page_plan_get_save_ink (SwPagePlan *self);
gboolean sw_page_plan_get_landscape (SwPagePlan *self);
gboolean sw_page_plan_get_form (SwPagePlan *self);
const char * const *sw_page_plan_get_extras (SwPagePlan *self);

G_END_DECLS
