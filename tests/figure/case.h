/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"

G_BEGIN_DECLS

SwFigureSpec *test_case_load (const char *path);
SwFigureSpec *test_case_parse (const char *xml);
GPtrArray *test_case_list (void);
GPtrArray *test_case_list_own (void);
GPtrArray *test_reference_rows (const char *name);

G_END_DECLS
