/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-finding.h"

G_BEGIN_DECLS

const char *sw_finding_mark_word (SwFindingLevel level);
void sw_finding_mark_show (GtkImage       *image,
                           SwFindingLevel  level,
                           const char     *words);
void sw_finding_mark_show_kept (GtkImage   *image,
                                const char *words);

G_END_DECLS
