/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

GBytes *sw_figure_sheet_to_pdf (GPtrArray   *exercises,
                                const char  *date,
                                GError     **error);

G_END_DECLS
