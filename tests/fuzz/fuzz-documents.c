/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes at all as a programme and as an exercise: refused with an error, or read so that writing and reading
 * again changes nothing. */
#include "config.h"

#include "fuzz.h"
#include "sw-exercise-xml.h"
#include "sw-programme-xml.h"

static void
try_programme (GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_from_bytes (bytes, "fuzz", &error);
  g_autoptr (SwProgramme) again = NULL;
  g_autoptr (GBytes) written = NULL;
  g_autoptr (GBytes) rewritten = NULL;

  g_assert_true ((programme == NULL) == (error != NULL));
  if (programme == NULL)
    return;

  written = sw_programme_to_bytes (programme);
  again = sw_programme_from_bytes (written, "written", &error);
  g_assert_no_error (error);
  rewritten = sw_programme_to_bytes (again);
  g_assert_true (g_bytes_equal (written, rewritten));
}

static void
try_exercise (GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwExercise) exercise = sw_exercise_from_bytes (bytes, "fuzz", &error);
  g_autoptr (SwExercise) again = NULL;
  g_autoptr (GBytes) written = NULL;
  g_autoptr (GBytes) rewritten = NULL;

  g_assert_true ((exercise == NULL) == (error != NULL));
  if (exercise == NULL)
    return;

  written = sw_exercise_to_bytes (exercise);
  again = sw_exercise_from_bytes (written, "written", &error);
  g_assert_no_error (error);
  rewritten = sw_exercise_to_bytes (again);
  g_assert_true (g_bytes_equal (written, rewritten));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, size);

  try_programme (bytes);
  try_exercise (bytes);
  return 0;
}
