/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one safe writer: after a crash at any point the file holds the old or the new content whole. */
#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "sw-file-ops.h"
#include "sw-file.h"

G_DEFINE_QUARK (sw-file-error-quark, sw_file_error)

static int
system_open (const char *path,
             int         flags,
             mode_t      mode)
{
  return open (path, flags, mode);
}

const SwFileOps sw_file_system_ops = {
  .open = system_open,
  .write = write,
  .fchmod = fchmod,
  .fsync = fsync,
  .close = close,
  .rename = rename,
  .link = link,
  .unlink = unlink,
};

static const SwFileOps *file_ops = &sw_file_system_ops;

/**
 * sw_file_set_ops:
 * @ops: (nullable): the operations to use from now on, NULL for the system's own
 *
 * For tests only; not while another thread writes.
 */
void
sw_file_set_ops (const SwFileOps *ops)
{
  file_ops = ops != NULL ? ops : &sw_file_system_ops;
}

/**
 * sw_file_hash:
 * @bytes: a file's content
 *
 * Returns: (transfer full): its SHA-256 in hexadecimal
 */
char *
sw_file_hash (GBytes *bytes)
{
  return g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
}

static gboolean
set_read_error (GError     **error,
                const char  *path,
                int          saved_errno)
{
  g_autofree char *name = g_filename_display_basename (path);

  if (saved_errno == ENOENT)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ,
                 _ ("%s: there is no such file. It may have been moved or renamed."), name);
  else if (saved_errno == EACCES || saved_errno == EPERM)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ,
                 _ ("%s: you are not allowed to read this file. Ask whoever keeps the folder."), name);
  else if (saved_errno == EISDIR)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ, _ ("%s: this is a folder, not a file."), name);
  else
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ,
                 _ ("%s: the file cannot be read (%s). Check the disk or the connection to it."), name,
                 g_strerror (saved_errno));

  return FALSE;
}

static gboolean
set_write_error (GError     **error,
                 const char  *path,
                 int          saved_errno)
{
  g_autofree char *name = g_filename_display_basename (path);

  if (saved_errno == ENOSPC || saved_errno == EDQUOT)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_FULL,
                 _ ("%s was not saved: there is no room left. Free some room, or save to another place."), name);
  else if (saved_errno == EACCES || saved_errno == EPERM || saved_errno == EROFS)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
                 _ ("%s was not saved: the folder does not allow writing. Save to another folder."), name);
  else if (saved_errno == ENOENT || saved_errno == ENOTDIR)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
                 _ ("%s was not saved: its folder is no longer there. Save to another folder."), name);
  else
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
                 _ ("%s was not saved (%s). What was there before is unchanged. Save to another place."), name,
                 g_strerror (saved_errno));

  return FALSE;
}

static GBytes *
read_all (int       fd,
          gsize     max_bytes,
          int      *saved_errno,
          gboolean *too_large)
{
  g_autoptr (GByteArray) content = g_byte_array_new ();
  guint8 buffer[65536];

  *too_large = FALSE;
  for (;;)
    {
      ssize_t n = read (fd, buffer, sizeof buffer);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          *saved_errno = errno;
          return NULL;
        }
      if (n == 0)
        return g_byte_array_free_to_bytes (g_steal_pointer (&content));
      if (content->len + (gsize) n > max_bytes)
        {
          *too_large = TRUE;
          return NULL;
        }
      g_byte_array_append (content, buffer, (guint) n);
    }
}

/**
 * sw_file_read:
 * @path: a file
 * @max_bytes: most bytes it may have, below 4 GiB
 *
 * Reads a whole file, but never more than @max_bytes of it, however large it is or grows.
 *
 * Returns: (transfer full): its content, or NULL with a #SwFileError
 */
GBytes *
sw_file_read (const char  *path,
              gsize        max_bytes,
              GError     **error)
{
  GBytes *bytes;
  gboolean too_large;
  int saved_errno = 0;
  int fd;

  g_return_val_if_fail (path != NULL, NULL);

  /* Without O_NONBLOCK a named pipe would keep us waiting for a writer. */
  fd = open (path, O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
  if (fd < 0)
    {
      set_read_error (error, path, errno);
      return NULL;
    }

  bytes = read_all (fd, max_bytes, &saved_errno, &too_large);
  close (fd);
  if (bytes == NULL && too_large)
    {
      g_autofree char *name = g_filename_display_basename (path);
      g_autofree char *most = g_format_size (max_bytes);

      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_TOO_LARGE,
                   _ ("%s: the file is larger than %s. It is not one of ours, or it is damaged."), name, most);
    }
  else if (bytes == NULL)
    {
      set_read_error (error, path, saved_errno);
    }

  return bytes;
}

/* What is about to be written may be there already: a save that failed only at the very last step. */
static gboolean
check_unchanged (const char  *path,
                 GBytes      *bytes,
                 const char  *expected_hash,
                 GError     **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *hash = NULL;
  g_autoptr (GBytes) there = NULL;
  struct stat status;

  if (stat (path, &status) != 0 && errno == ENOENT)
    {
      if (*expected_hash == '\0')
        return TRUE;
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED,
                   _ ("%s was not saved: somebody has moved or removed the file since it was opened."), name);
      return FALSE;
    }

  there = sw_file_read (path, G_MAXUINT32, error);
  if (there == NULL)
    return FALSE;

  hash = sw_file_hash (there);
  if (strcmp (hash, expected_hash) == 0 || g_bytes_equal (there, bytes))
    return TRUE;

  if (*expected_hash == '\0')
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED,
                 _ ("%s was not saved: there is already a file of that name."), name);
  else
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED,
                 _ ("%s was not saved: somebody else has changed the file since it was opened."), name);
  return FALSE;
}

static gboolean
write_all (int           fd,
           const guint8 *data,
           gsize         length)
{
  while (length > 0)
    {
      ssize_t n = file_ops->write (fd, data, length);

      if (n < 0 && errno == EINTR)
        continue;
      if (n == 0)
        errno = ENOSPC;
      if (n <= 0)
        return FALSE;
      data += n;
      length -= (gsize) n;
    }

  return TRUE;
}

/* A file is born with 0600. Disks that know no modes refuse others; what was saved matters more. */
static gboolean
set_mode (int    fd,
          mode_t mode)
{
  return mode == 0600 || file_ops->fchmod (fd, mode) == 0 || errno == EPERM || errno == ENOTSUP;
}

/* Writes, flushes and closes; on failure errno tells why, and the descriptor is closed all the same. */
static gboolean
fill (int     fd,
      GBytes *bytes,
      mode_t  mode)
{
  gsize length;
  const guint8 *data = g_bytes_get_data (bytes, &length);
  int saved_errno;

  if (set_mode (fd, mode) && write_all (fd, data, length) && file_ops->fsync (fd) == 0)
    return file_ops->close (fd) == 0;

  saved_errno = errno;
  file_ops->close (fd);
  errno = saved_errno;
  return FALSE;
}

static int
open_beside (const char  *path,
             char       **beside)
{
  for (int attempt = 0; attempt < 16; attempt++)
    {
      g_autofree char *folder = g_path_get_dirname (path);
      g_autofree char *name = g_strdup_printf (".setwright-%d-%08x.tmp", (int) getpid (), g_random_int ());
      g_autofree char *candidate = g_build_filename (folder, name, NULL);
      int fd = file_ops->open (candidate, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);

      if (fd >= 0)
        {
          *beside = g_steal_pointer (&candidate);
          return fd;
        }
      if (errno != EEXIST)
        return -1;
    }

  return -1;
}

/* For disks that know no hard links. */
static gboolean
copy_to (const char *path,
         const char *kept,
         mode_t      mode)
{
  g_autoptr (GBytes) old = sw_file_read (path, G_MAXUINT32, NULL);
  g_autofree char *beside = NULL;
  int saved_errno;
  int fd;

  if (old == NULL)
    {
      errno = EIO;
      return FALSE;
    }

  fd = open_beside (path, &beside);
  if (fd < 0)
    return FALSE;
  if (fill (fd, old, mode) && file_ops->rename (beside, kept) == 0)
    return TRUE;

  saved_errno = errno;
  file_ops->unlink (beside);
  errno = saved_errno;
  return FALSE;
}

/* The name of the previous version: "name~", as editors use; file managers hide it. */
static gboolean
keep_old (const char *path,
          mode_t      mode)
{
  g_autofree char *kept = g_strconcat (path, "~", NULL);

  if (file_ops->unlink (kept) != 0 && errno != ENOENT)
    return FALSE;
  if (file_ops->link (path, kept) == 0)
    return TRUE;
  if (errno == EPERM || errno == ENOTSUP || errno == ENOSYS || errno == EMLINK || errno == EXDEV)
    return copy_to (path, kept, mode);

  return FALSE;
}

static gboolean
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = file_ops->open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
  int saved_errno = 0;

  if (fd < 0)
    return FALSE;

  /* Some shares cannot sync a folder and say so by EINVAL; nothing better can be done there. */
  if (file_ops->fsync (fd) != 0 && errno != EINVAL)
    saved_errno = errno;
  if (file_ops->close (fd) != 0 && saved_errno == 0)
    saved_errno = errno;

  errno = saved_errno;
  return saved_errno == 0;
}

/* The one failure after which the new content is there: only whether it stays is not known. */
static gboolean
set_unsure_error (GError     **error,
                  const char  *path,
                  int          saved_errno)
{
  g_autofree char *name = g_filename_display_basename (path);

  g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
               _ ("%s was written, but the disk did not confirm it (%s). Save once more, or to another place."), name,
               g_strerror (saved_errno));
  return FALSE;
}

/**
 * sw_file_write:
 * @path: the file to write; a symbolic link is followed
 * @bytes: its new content
 * @expected_hash: (nullable): what sw_file_hash() of the content on disk must be, "" for "no file yet", NULL
 *   for whatever is there
 * @keep_previous: whether to keep the content on disk as "name~"
 *
 * Writes beside, flushes, renames over and flushes the folder. A new file is readable by its owner only, an
 * existing one keeps its mode. Whatever fails, @path holds its old or its new content whole.
 *
 * Returns: whether @path holds the new content for good, else FALSE with a #SwFileError
 */
gboolean
sw_file_write (const char  *path,
               GBytes      *bytes,
               const char  *expected_hash,
               gboolean     keep_previous,
               GError     **error)
{
  g_autofree char *target = NULL;
  g_autofree char *beside = NULL;
  struct stat status;
  gboolean there;
  mode_t mode = 0600;
  int saved_errno;
  int fd;

  g_return_val_if_fail (path != NULL, FALSE);
  g_return_val_if_fail (bytes != NULL, FALSE);

  target = realpath (path, NULL);
  if (target == NULL)
    target = g_strdup (path);

  if (expected_hash != NULL && !check_unchanged (target, bytes, expected_hash, error))
    return FALSE;
  there = stat (target, &status) == 0;
  if (there)
    mode = status.st_mode & 07777;

  fd = open_beside (target, &beside);
  if (fd < 0)
    return set_write_error (error, path, errno);

  if (fill (fd, bytes, mode) && (!keep_previous || !there || keep_old (target, mode))
      && file_ops->rename (beside, target) == 0)
    return sync_folder (target) ? TRUE : set_unsure_error (error, path, errno);

  saved_errno = errno;
  file_ops->unlink (beside);
  return set_write_error (error, path, saved_errno);
}
