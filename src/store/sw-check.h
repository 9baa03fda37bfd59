/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwCheckResult:
 * @SW_CHECK_CLEAN: nothing that must be answered
 * @SW_CHECK_STOP: something must be corrected or answered
 * @SW_CHECK_UNREADABLE: a file could not be read
 *
 * The worst that was met, as the exit status of a command.
 */
typedef enum
{
  SW_CHECK_CLEAN = 0,
  SW_CHECK_STOP = 1,
  SW_CHECK_UNREADABLE = 2,
} SwCheckResult;

SwCheckResult sw_check_path (const char *path,
                             const char *date,
                             GString    *lines);

G_END_DECLS
