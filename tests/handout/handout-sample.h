/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

SwFigureSpec *handout_sample_new_figure (SwFigureMotion motion,
                                         SwFigureBreath breath);
SwProgramme *handout_sample_new (SwFigureSpec *figure);
SwProgramme *handout_sample_new_long (guint         n_exercises,
                                      SwFigureSpec *figure);

G_END_DECLS
