/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * File operations that fail when a test wants them to. */
#include "config.h"

#include <errno.h>
#include <unistd.h>

#include "fault-ops.h"
#include "sw-file-ops.h"

static FaultKind fault_kind;
static int fault_operation; /* from 1 */
static int fault_errno;
static int n_operations;

static gboolean
fails (void)
{
  n_operations++;
  if (fault_kind == FAULT_KILL && n_operations == fault_operation)
    _exit (137);

  if ((fault_kind == FAULT_ONCE && n_operations == fault_operation)
      || (fault_kind == FAULT_FOR_GOOD && n_operations >= fault_operation))
    {
      errno = fault_errno;
      return TRUE;
    }

  return FALSE;
}

static int
faulty_open (const char *path,
             int         flags,
             mode_t      mode)
{
  return fails () ? -1 : sw_file_system_ops.open (path, flags, mode);
}

static ssize_t
faulty_write (int         fd,
              const void *data,
              size_t      length)
{
  if (fails ())
    return -1;

  return sw_file_system_ops.write (fd, data, fault_kind == FAULT_SHORT ? MIN (length, 1) : length);
}

static int
faulty_fchmod (int    fd,
               mode_t mode)
{
  if (fault_kind == FAULT_MODES)
    {
      errno = EPERM;
      return -1;
    }

  return fails () ? -1 : sw_file_system_ops.fchmod (fd, mode);
}

static int
faulty_fsync (int fd)
{
  return fails () ? -1 : sw_file_system_ops.fsync (fd);
}

/* The descriptor is gone even when closing fails. */
static int
faulty_close (int fd)
{
  gboolean failing = fails ();
  int saved_errno = errno;
  int result = sw_file_system_ops.close (fd);

  if (!failing)
    return result;

  errno = saved_errno;
  return -1;
}

static int
faulty_rename (const char *from,
               const char *to)
{
  return fails () ? -1 : sw_file_system_ops.rename (from, to);
}

static int
faulty_link (const char *from,
             const char *to)
{
  if (fault_kind == FAULT_LINKS)
    {
      errno = EPERM;
      return -1;
    }

  return fails () ? -1 : sw_file_system_ops.link (from, to);
}

static int
faulty_unlink (const char *path)
{
  return fails () ? -1 : sw_file_system_ops.unlink (path);
}

static const SwFileOps faulty_ops = {
  .open = faulty_open,
  .write = faulty_write,
  .fchmod = faulty_fchmod,
  .fsync = faulty_fsync,
  .close = faulty_close,
  .rename = faulty_rename,
  .link = faulty_link,
  .unlink = faulty_unlink,
};

/**
 * fault_begin:
 * @kind: what is to go wrong
 * @operation: at which operation, from 1
 * @error_number: with which errno
 */
void
fault_begin (FaultKind kind,
             int       operation,
             int       error_number)
{
  fault_kind = kind;
  fault_operation = operation;
  fault_errno = error_number;
  n_operations = 0;
  sw_file_set_ops (&faulty_ops);
}

/**
 * fault_end:
 *
 * Returns: how many operations there were
 */
int
fault_end (void)
{
  sw_file_set_ops (NULL);
  return n_operations;
}
