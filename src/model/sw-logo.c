/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A clinic's picture for the letterhead, as bytes; whether they can be drawn is not known here. */
#include "config.h"

#include <string.h>

#include "sw-logo.h"

/* By hand, since G_DEFINE_BOXED_TYPE converts to a union in a way ISO C does not know. */
GType
sw_logo_get_type (void)
{
  static gsize type;

  if (g_once_init_enter (&type))
    {
      GType registered = g_boxed_type_register_static (g_intern_static_string ("SwLogo"),
                                                       (GBoxedCopyFunc) sw_logo_copy,
                                                       (GBoxedFreeFunc) sw_logo_free);

      g_once_init_leave (&type, registered);
    }
  return type;
}

/**
 * sw_logo_new:
 * @type: what the bytes are
 * @bytes: the picture's file
 *
 * Returns: (transfer full): a logo that holds them
 */
SwLogo *
sw_logo_new (SwLogoType  type,
             GBytes     *bytes)
{
  SwLogo *self = g_new (SwLogo, 1);

  self->type = type;
  self->bytes = g_bytes_ref (bytes);
  return self;
}

/* Whether "<svg" stands in it as a tag. */
static gboolean
looks_like_svg (const char *data,
                gsize       length)
{
  const char *end = data + length;

  for (const char *c = memchr (data, '<', length); c != NULL; c = memchr (c + 1, '<', (gsize) (end - c - 1)))
    {
      const char *name = c + 1;

      /* A prefix, as in "svg:svg". */
      for (const char *p = name; p < end && (g_ascii_isalnum (*p) || *p == ':'); p++)
        if (*p == ':')
          name = p + 1;
      if (end - name > 3 && memcmp (name, "svg", 3) == 0 && !g_ascii_isalnum (name[3]))
        return TRUE;
    }
  return FALSE;
}

/**
 * sw_logo_new_detect:
 * @bytes: a file
 *
 * Tells the type by the content, whatever the file was called.
 *
 * Returns: (transfer full) (nullable): a logo; NULL when the bytes are neither PNG nor SVG, or too many
 */
SwLogo *
sw_logo_new_detect (GBytes *bytes)
{
  /* PNG specification, third edition, 5.2: the signature. */
  static const guint8 png[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  if (length == 0 || length > SW_LOGO_MAX_BYTES)
    return NULL;
  if (length >= sizeof png && memcmp (data, png, sizeof png) == 0)
    return sw_logo_new (SW_LOGO_PNG, bytes);
  if (looks_like_svg (data, length))
    return sw_logo_new (SW_LOGO_SVG, bytes);

  return NULL;
}

SwLogo *
sw_logo_copy (const SwLogo *self)
{
  return sw_logo_new (self->type, self->bytes);
}

void
sw_logo_free (SwLogo *self)
{
  g_bytes_unref (self->bytes);
  g_free (self);
}

/**
 * sw_logo_equal:
 * @a: (nullable): a logo
 * @b: (nullable): another
 *
 * Returns: whether both are the same picture, or none
 */
gboolean
sw_logo_equal (const SwLogo *a,
               const SwLogo *b)
{
  if (a == NULL || b == NULL)
    return a == b;

  return a->type == b->type && g_bytes_equal (a->bytes, b->bytes);
}

/**
 * sw_logo_get_media_type:
 *
 * Returns: its type as the documents call it
 */
const char *
sw_logo_get_media_type (const SwLogo *self)
{
  return self->type == SW_LOGO_PNG ? "image/png" : "image/svg+xml";
}
