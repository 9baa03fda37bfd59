/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's own details, so that a new programme need not ask for them again. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "sw-clinic-defaults.h"
#include "sw-file.h"

#define GROUP "Clinic"
#define MAX_BYTES SW_LOGO_MAX_BYTES

static const char *const fields[]
    = { "name", "therapist", "qualification", "phone", "email", "address", "emergency-number", "bands" };

static char *
defaults_path (const char *name)
{
  return g_build_filename (g_get_user_config_dir (), "setwright", name, NULL);
}

/* The logo has a file of its own, which any program that shows pictures can open. */
static char *
logo_path (void)
{
  return defaults_path ("clinic-logo");
}

static void
load_logo (SwClinic *clinic)
{
  g_autofree char *path = logo_path ();
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_LOGO_MAX_BYTES, NULL);
  g_autoptr (SwLogo) logo = bytes != NULL ? sw_logo_new_detect (bytes) : NULL;

  if (logo != NULL)
    g_object_set (clinic, "logo", logo, NULL);
}

/* Writes @bytes, or takes the file away for NULL; does nothing when that is so already. */
static gboolean
save_file (const char  *path,
           GBytes      *bytes,
           GError     **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GBytes) old = sw_file_read (path, MAX_BYTES, NULL);

  if (bytes == NULL)
    {
      g_unlink (path);
      return TRUE;
    }
  if (old != NULL && g_bytes_equal (old, bytes))
    return TRUE;

  g_mkdir_with_parents (folder, 0700);
  return sw_file_write (path, bytes, NULL, FALSE, error);
}

/* The remembered values as they are now; an empty file for none or a damaged one. */
static GKeyFile *
read_fields (const char *path)
{
  GKeyFile *file = g_key_file_new ();
  g_autoptr (GBytes) bytes = sw_file_read (path, MAX_BYTES, NULL);

  if (bytes != NULL && !g_key_file_load_from_bytes (file, bytes, G_KEY_FILE_NONE, NULL))
    {
      g_key_file_unref (file);
      file = g_key_file_new ();
    }
  return file;
}

/* Numbers the clinic sets: how it reckons, and how long things take it. */
static const struct
{
  const char *name;
  int least;
  int most;
} numbers[] = {
  { "max-formula", 0, SW_MAX_FORMULA_WATHAN },
  { "alike-percent", 1, SW_CLINIC_MOST_ALIKE_PERCENT },
  { "card-low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "card-high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "turn-low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "turn-high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "seat-low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "seat-high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "floor-low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "floor-high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "fetch-low-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
  { "fetch-high-seconds", 0, SW_CLINIC_MOST_TRANSITION_S },
};

/**
 * sw_clinic_defaults_load:
 * @clinic: a new clinic, whose fields take the remembered values
 *
 * A missing or damaged file leaves the fields empty; the next save writes it anew.
 */
void
sw_clinic_defaults_load (SwClinic *clinic)
{
  g_autofree char *path = defaults_path ("clinic.ini");
  g_autoptr (GKeyFile) file = read_fields (path);

  g_return_if_fail (SW_IS_CLINIC (clinic));

  load_logo (clinic);
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_autofree char *value = g_key_file_get_string (file, GROUP, fields[i], NULL);

      if (value != NULL && g_utf8_validate (value, -1, NULL))
        g_object_set (clinic, fields[i], value, NULL);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autoptr (GError) missing = NULL;
      int value = g_key_file_get_integer (file, GROUP, numbers[i].name, &missing);

      if (missing == NULL && value >= numbers[i].least && value <= numbers[i].most)
        g_object_set (clinic, numbers[i].name, value, NULL);
    }
}

static gboolean
save_fields (SwClinic  *before,
             SwClinic  *after,
             GError   **error)
{
  g_autofree char *path = defaults_path ("clinic.ini");
  g_autoptr (GKeyFile) file = read_fields (path);
  g_autoptr (GBytes) bytes = NULL;
  gboolean changed = FALSE;
  char *text;
  gsize length;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_autofree char *old = NULL;
      g_autofree char *new = NULL;

      g_object_get (before, fields[i], &old, NULL);
      g_object_get (after, fields[i], &new, NULL);
      if (strcmp (old, new) == 0)
        continue;
      g_key_file_set_string (file, GROUP, fields[i], new);
      changed = TRUE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      int old, new;

      g_object_get (before, numbers[i].name, &old, NULL);
      g_object_get (after, numbers[i].name, &new, NULL);
      if (old == new)
        continue;
      g_key_file_set_integer (file, GROUP, numbers[i].name, new);
      changed = TRUE;
    }
  if (!changed)
    return TRUE;

  text = g_key_file_to_data (file, &length, NULL);
  bytes = g_bytes_new_take (text, length);
  return save_file (path, bytes, error);
}

static gboolean
save_logo (SwClinic  *before,
           SwClinic  *after,
           GError   **error)
{
  const SwLogo *logo = sw_clinic_get_logo (after);
  g_autofree char *path = logo_path ();

  if (sw_logo_equal (sw_clinic_get_logo (before), logo))
    return TRUE;

  return save_file (path, logo != NULL ? logo->bytes : NULL, error);
}

/**
 * sw_clinic_defaults_save:
 * @before: the clinic as its programme was opened or last saved
 * @after: the clinic now
 * @error: return location for a #SwFileError
 *
 * Remembers the fields that were changed, and only those: a colleague's programme has a colleague's details,
 * and to save it is not to take them over.
 *
 * Returns: whether the files hold what was changed
 */
gboolean
sw_clinic_defaults_save (SwClinic  *before,
                         SwClinic  *after,
                         GError   **error)
{
  g_return_val_if_fail (SW_IS_CLINIC (before), FALSE);
  g_return_val_if_fail (SW_IS_CLINIC (after), FALSE);

  return save_fields (before, after, error) && save_logo (before, after, error);
}
