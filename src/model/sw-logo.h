/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum
{
  SW_LOGO_PNG,
  SW_LOGO_SVG,
} SwLogoType;

/* The largest that a document holds. */
#define SW_LOGO_MAX_BYTES (256 * 1024)

/**
 * SwLogo:
 * @type: what the bytes are
 * @bytes: the picture's file, 1 to SW_LOGO_MAX_BYTES
 *
 * A clinic's picture for the letterhead. Never changes; copies share the bytes.
 */
typedef struct
{
  SwLogoType type;
  GBytes *bytes;
} SwLogo;

#define SW_TYPE_LOGO (sw_logo_get_type ())
GType sw_logo_get_type (void);

SwLogo *sw_logo_new (SwLogoType  type,
                     GBytes     *bytes);
SwLogo *sw_logo_new_detect (GBytes *bytes);
SwLogo *sw_logo_copy (const SwLogo *self);
void sw_logo_free (SwLogo *self);
gboolean sw_logo_equal (const SwLogo *a,
                        const SwLogo *b);
const char *sw_logo_get_media_type (const SwLogo *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwLogo, sw_logo_free)

G_END_DECLS
