/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's own details: what is remembered, and what is not. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "sw-clinic-defaults.h"

static SwClinic *
clinic_new (const char *name,
            const char *phone)
{
  return g_object_new (SW_TYPE_CLINIC, "name", name, "phone", phone, NULL);
}

static void
save (SwClinic *before,
      SwClinic *after)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_clinic_defaults_save (before, after, &error));
  g_assert_no_error (error);
}

static void
expect (const char *name,
        const char *phone)
{
  g_autoptr (SwClinic) loaded = sw_clinic_new ();

  sw_clinic_defaults_load (loaded);
  g_assert_cmpstr (sw_clinic_get_name (loaded), ==, name);
  g_assert_cmpstr (sw_clinic_get_phone (loaded), ==, phone);
}

/* A colleague's programme: saved as it is it changes nothing, and one field of it only that field. */
static void
test_colleague (void)
{
  g_autoptr (SwClinic) empty = sw_clinic_new ();
  g_autoptr (SwClinic) own = clinic_new ("Riverside", "555 0100");
  g_autoptr (SwClinic) theirs = clinic_new ("Hilltop", "555 0199");
  g_autoptr (SwClinic) corrected = clinic_new ("Hilltop", "555 0101");

  save (empty, own);
  expect ("Riverside", "555 0100");
  save (theirs, theirs);
  expect ("Riverside", "555 0100");
  save (theirs, corrected);
  expect ("Riverside", "555 0101");
}

/* A field that was emptied is remembered as empty. */
static void
test_emptied (void)
{
  g_autoptr (SwClinic) own = clinic_new ("Riverside", "555 0100");
  g_autoptr (SwClinic) without = clinic_new ("Riverside", "");

  save (without, own);
  expect ("Riverside", "555 0100");
  save (own, without);
  expect ("Riverside", "");
}

/* What changes take is remembered one by one too; nonsense in the file is not taken over. */
static void
test_changes (void)
{
  g_autofree char *path = g_build_filename (g_get_user_config_dir (), "setwright", "clinic.ini", NULL);
  g_autoptr (SwClinic) usual = sw_clinic_new ();
  g_autoptr (SwClinic) slow = g_object_new (SW_TYPE_CLINIC, "floor-high-seconds", 90, NULL);
  g_autoptr (SwClinic) loaded = sw_clinic_new ();
  g_autoptr (SwClinic) damaged = sw_clinic_new ();
  int low_s, high_s;

  save (usual, slow);
  sw_clinic_defaults_load (loaded);
  sw_clinic_get_transition (loaded, SW_TRANSITION_FLOOR, &low_s, &high_s);
  g_assert_cmpint (low_s, ==, 15);
  g_assert_cmpint (high_s, ==, 90);

  g_assert_true (g_file_set_contents (path, "[Clinic]\nfloor-high-seconds=-5\nturn-low-seconds=x\n", -1, NULL));
  sw_clinic_defaults_load (damaged);
  g_assert_true (sw_clinic_has_usual_transitions (damaged));
}

/* A damaged file is no hindrance: it is written anew with what was changed. */
static void
test_damaged (void)
{
  g_autofree char *path = g_build_filename (g_get_user_config_dir (), "setwright", "clinic.ini", NULL);
  g_autoptr (SwClinic) empty = sw_clinic_new ();
  g_autoptr (SwClinic) own = clinic_new ("Riverside", "555 0100");

  g_assert_true (g_file_set_contents (path, "[Clinic\nname", -1, NULL));
  expect ("", "");
  save (empty, own);
  expect ("Riverside", "555 0100");
}

int
main (int   argc,
      char *argv[])
{
  g_autofree char *folder = g_dir_make_tmp ("setwright-test-XXXXXX", NULL);
  g_autofree char *inner = g_build_filename (folder, "setwright", NULL);
  g_autofree char *settings = g_build_filename (inner, "clinic.ini", NULL);
  int status;

  /* GLib looks for the settings' folder once. */
  g_setenv ("XDG_CONFIG_HOME", folder, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/clinic-defaults/colleague", test_colleague);
  g_test_add_func ("/store/clinic-defaults/emptied", test_emptied);
  g_test_add_func ("/store/clinic-defaults/changes", test_changes);
  g_test_add_func ("/store/clinic-defaults/damaged", test_damaged);
  status = g_test_run ();

  g_remove (settings);
  g_rmdir (inner);
  g_rmdir (folder);
  return status;
}
