/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-logo.h"

G_BEGIN_DECLS

#define SW_LOGO_ERROR (sw_logo_error_quark ())

/**
 * SwLogoError:
 * @SW_LOGO_ERROR_TYPE: neither PNG nor SVG
 * @SW_LOGO_ERROR_SIZE: too many bytes or pixels
 * @SW_LOGO_ERROR_CONTENT: damaged, or not to be drawn from this file alone
 * @SW_LOGO_ERROR_PALE: not to be seen on white paper in shades of grey
 */
typedef enum
{
  SW_LOGO_ERROR_TYPE,
  SW_LOGO_ERROR_SIZE,
  SW_LOGO_ERROR_CONTENT,
  SW_LOGO_ERROR_PALE,
} SwLogoError;

GQuark sw_logo_error_quark (void);

SwLogo *sw_logo_from_file (const char  *path,
                           GError     **error);
SwLogo *sw_logo_from_bytes (GBytes  *bytes,
                            GError **error);

G_END_DECLS
