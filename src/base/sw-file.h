/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define SW_FILE_ERROR (sw_file_error_quark ())

/**
 * SwFileError:
 * @SW_FILE_ERROR_READ: the file is missing or cannot be read
 * @SW_FILE_ERROR_WRITE: the folder cannot be written to
 * @SW_FILE_ERROR_FULL: no room is left
 * @SW_FILE_ERROR_CHANGED: the file is no longer the one that was read
 * @SW_FILE_ERROR_TOO_LARGE: larger than the caller's limit
 */
typedef enum
{
  SW_FILE_ERROR_READ,
  SW_FILE_ERROR_WRITE,
  SW_FILE_ERROR_FULL,
  SW_FILE_ERROR_CHANGED,
  SW_FILE_ERROR_TOO_LARGE,
} SwFileError;

GQuark sw_file_error_quark (void);

char *sw_file_hash (GBytes *bytes);
GBytes *sw_file_read (const char  *path,
                      gsize        max_bytes,
                      GError     **error);
gboolean sw_file_write (const char  *path,
                        GBytes      *bytes,
                        const char  *expected_hash,
                        gboolean     keep_previous,
                        GError     **error);

G_END_DECLS
