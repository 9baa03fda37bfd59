/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pango.h>

#include "sw-figure.h"
#include "sw-ruler.h"
#include "sw-sketches.h"
#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwMeasured:
 *
 * Texts that have been measured and figures that have been solved for a paper, text sizes and a language. Both
 * are never changed again, so that the next handout after an edit can take over what has stayed the same.
 */
typedef struct _SwMeasured SwMeasured;

SwMeasured *sw_measured_new (SwPaper     paper,
                             double      text_points,
                             double      least_pt,
                             const char *language,
                             SwPhrases  *phrases,
                             SwMeasured *before);
SwMeasured *sw_measured_copy (SwMeasured *self);
void sw_measured_free (SwMeasured *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwMeasured, sw_measured_free)

SwPhrases *sw_measured_find_phrases (const SwMeasured *self,
                                     const char       *language);
gboolean sw_measured_follows (const SwMeasured *self);
void sw_measured_begin (SwMeasured *self);
void sw_measured_begin_part (SwMeasured *self);
void sw_measured_finish (SwMeasured *self);
PangoLayout *sw_measured_get_layout (SwMeasured *self,
                                     const char *key);
void sw_measured_add_layout (SwMeasured  *self,
                             char        *key,
                             PangoLayout *layout,
                             gboolean     needed);
SwRuler *sw_measured_get_ruler (SwMeasured *self,
                                const char *key);
void sw_measured_add_ruler (SwMeasured *self,
                            char       *key,
                            SwRuler    *ruler);
SwSketches *sw_measured_get_sketches (SwMeasured *self);
void sw_measured_expect_figure (SwMeasured   *self,
                                SwFigureSpec *spec,
                                gboolean      mirrored);
SwFigure *sw_measured_get_figure (SwMeasured    *self,
                                  SwFigureSpec  *spec,
                                  gboolean       mirrored,
                                  GError       **error);

G_END_DECLS
