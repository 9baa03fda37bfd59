/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sys/types.h>

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwFileOps:
 *
 * The operations by which sw-file.c touches the disk. Each behaves like the system call of its name: -1 and errno
 * on failure. Tests put a table in its place in which the n-th operation fails.
 */
typedef struct
{
  int (*open) (const char *path,
               int         flags,
               mode_t      mode);
  ssize_t (*write) (int         fd,
                    const void *data,
                    size_t      length);
  int (*fchmod) (int    fd,
                 mode_t mode);
  int (*fsync) (int fd);
  int (*close) (int fd);
  int (*rename) (const char *from,
                 const char *to);
  int (*link) (const char *from,
               const char *to);
  int (*unlink) (const char *path);
} SwFileOps;

extern const SwFileOps sw_file_system_ops;

void sw_file_set_ops (const SwFileOps *ops);

G_END_DECLS
