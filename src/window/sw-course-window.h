/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwCourseWindow:
 *
 * The client's tests over the visits, how the sides compare, and the extra sets that follow from that.
 */
#define SW_TYPE_COURSE_WINDOW (sw_course_window_get_type ())
G_DECLARE_FINAL_TYPE (SwCourseWindow, sw_course_window, SW, COURSE_WINDOW, GtkWindow)

GtkWidget *sw_course_window_new (GtkWindow  *parent,
                                 SwDocument *document);

G_END_DECLS
