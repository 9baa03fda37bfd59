/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "sw-handout-options.h"
#include "sw-measured.h"

G_BEGIN_DECLS

#define SW_HANDOUT_ERROR (sw_handout_error_quark ())

typedef enum
{
  SW_HANDOUT_ERROR_FIGURE,
  SW_HANDOUT_ERROR_FONT,
  SW_HANDOUT_ERROR_PDF,
  SW_HANDOUT_ERROR_WRITE,
} SwHandoutError;

GQuark sw_handout_error_quark (void);

/**
 * SwHandout:
 *
 * The pages for one client, laid out and ready to draw: the same for preview, printer and PDF. Immutable; made
 * from a programme that no other thread changes meanwhile (give a worker a sw_programme_copy()).
 */
#define SW_TYPE_HANDOUT (sw_handout_get_type ())
G_DECLARE_FINAL_TYPE (SwHandout, sw_handout, SW, HANDOUT, GObject)

SwHandout *sw_handout_new (SwProgramme             *programme,
                           const SwHandoutOptions  *options,
                           GError                 **error);
SwHandout *sw_handout_new_after (SwProgramme             *programme,
                                 const SwHandoutOptions  *options,
                                 SwMeasured              *before,
                                 GError                 **error);
SwMeasured *sw_handout_dup_measured (SwHandout *self);
int sw_handout_get_n_pages (SwHandout *self);
double sw_handout_get_page_width_pt (SwHandout *self);
double sw_handout_get_page_height_pt (SwHandout *self);
int sw_handout_find_page_of_item (SwHandout  *self,
                                  const char *item_id);
const char *sw_handout_find_item_at (SwHandout *self,
                                     int        page,
                                     double     x_pt,
                                     double     y_pt);
void sw_handout_draw_page (SwHandout *self,
                           int        page,
                           cairo_t   *cr);
const char *sw_handout_get_missing (SwHandout *self);
char *sw_handout_dup_warning (SwHandout *self);
char *sw_handout_dump (SwHandout *self);
GBytes *sw_handout_to_pdf (SwHandout  *self,
                           GError    **error);

G_END_DECLS
