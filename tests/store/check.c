/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A folder of faulty exercises: each fault is told of once, at its line, and nothing else is. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "sw-check.h"
#include "sw-file.h"

#define TODAY "2026-11-20"

/* Nothing is wrong with it once ID stands for its id; the lines are counted in the cases below. */
static const char good[] = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                           "<exercise xmlns=\"urn:setwright:exercise\" version=\"1\" id=\"ID\" revision=\"1\">\n"
                           "  <about region=\"knee\" position=\"sitting\" section=\"main\" aims=\"strength\" pace-seconds=\"4\"/>\n"
                           "  <dose sets=\"2\" repetitions=\"8-12\" rest-seconds=\"60\"/>\n"
                           "  <review state=\"draft\" due=\"2027-05-31\"/>\n"
                           "  <text xml:lang=\"en\">\n"
                           "    <name>Name of ID</name>\n"
                           "    <purpose>This makes your legs strong.</purpose>\n"
                           "    <set-up>Sit on a chair.</set-up>\n"
                           "    <step>Lift your foot.</step>\n"
                           "    <step>Lower it.</step>\n"
                           "    <form-point>You sit tall.</form-point>\n"
                           "    <error>You lean back. Sit up.</error>\n"
                           "    <feel>You feel your thigh.</feel>\n"
                           "    <easier-way>Lift it less high.</easier-way>\n"
                           "  </text>\n"
                           "  <figure>\n"
                           "    <pose base=\"sitting\"/>\n"
                           "  </figure>\n"
                           "</exercise>\n";

#define LINKS "  <review state=\"draft\" due=\"2027-05-31\"/>\n"

typedef struct
{
  const char *id;
  const char *old;
  const char *new;
} Case;

typedef struct
{
  const char *place; /* file and line and level */
  const char *words; /* part of the text */
} Wanted;

typedef struct
{
  char *folder;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  fixture->folder = g_dir_make_tmp ("setwright-check-XXXXXX", NULL);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
}

static void
write_file (const Fixture *fixture,
            const char    *id,
            const char    *text)
{
  g_autofree char *name = g_strconcat (id, ".xml", NULL);
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
write_case (const Fixture *fixture,
            const Case    *one)
{
  g_autoptr (GString) text = g_string_new (good);

  g_string_replace (text, "ID", one->id, 0);
  if (one->old != NULL)
    g_assert_cmpuint (g_string_replace (text, one->old, one->new, 1), ==, 1);
  write_file (fixture, one->id, text->str);
}

/* Checks the folder with @cases and finds just what is wanted, in that order. */
static void
assert_found (const Fixture *fixture,
              const Case    *cases,
              gsize          n_cases,
              const Wanted  *wanted,
              gsize          n_wanted,
              SwCheckResult  result)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_auto (GStrv) lines = NULL;

  for (gsize i = 0; i < n_cases; i++)
    write_case (fixture, &cases[i]);
  g_assert_cmpint (sw_check_path (fixture->folder, TODAY, text), ==, result);
  g_test_message ("%s", text->str);

  lines = g_strsplit (text->str, "\n", -1);
  for (gsize i = 0; i < n_wanted; i++)
    {
      g_autofree char *start = g_strdup_printf ("%s/%s: ", fixture->folder, wanted[i].place);

      g_assert_nonnull (lines[i]);
      if (!g_str_has_prefix (lines[i], start) || strstr (lines[i], wanted[i].words) == NULL)
        g_error ("“%s … %s” is not “%s”", start, wanted[i].words, lines[i]);
    }
  g_assert_cmpuint (MAX (g_strv_length (lines), 1), ==, n_wanted + 1);
}

#define ASSERT_FOUND(fixture, cases, wanted, result) \
  assert_found ((fixture), (cases), G_N_ELEMENTS (cases), (wanted), G_N_ELEMENTS (wanted), (result))

static void
test_good (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "a", LINKS, LINKS "  <harder ref=\"b\"/>\n" },
    { "b", LINKS, "  <dose-reason>For once.</dose-reason>\n" LINKS "  <easier ref=\"a\"/>\n" },
  };

  assert_found (fixture, cases, G_N_ELEMENTS (cases), NULL, 0, SW_CHECK_CLEAN);
}

static void
test_parts (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "easier", "    <easier-way>Lift it less high.</easier-way>\n", "" },
    { "error", "    <error>You lean back. Sit up.</error>\n", "" },
    { "feel", "    <feel>You feel your thigh.</feel>\n", "" },
    { "figure", "  <figure>\n    <pose base=\"sitting\"/>\n  </figure>\n", "" },
    { "form", "    <form-point>You sit tall.</form-point>\n", "" },
    { "many", "    <step>Lower it.</step>\n",
      "    <step>1.</step>\n    <step>2.</step>\n    <step>3.</step>\n    <step>4.</step>\n    <step>5.</step>\n"
      "    <step>Last.</step>\n" },
    { "purpose", "    <purpose>This makes your legs strong.</purpose>\n", "" },
    { "steps", "    <step>Lift your foot.</step>\n    <step>Lower it.</step>\n", "" },
  };
  static const Wanted wanted[] = {
    { "easier.xml:6: ask", "<easier-way>" }, { "error.xml:6: ask", "<error>" },
    { "feel.xml:6: ask", "<feel>" },         { "figure.xml:1: ask", "<figure>" },
    { "form.xml:6: ask", "<form-point>" },   { "many.xml:16: ask", "7 steps" },
    { "purpose.xml:6: ask", "<purpose>" },   { "steps.xml:6: ask", "<step>" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_CLEAN);
}

/* The line of a figure is that of its element. */
static void
test_shown_steps (Fixture       *fixture,
                  gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "last", "<pose base=\"sitting\"/>", "<pose base=\"sitting\" step=\"2\"/>" },
    { "none", "<pose base=\"sitting\"/>", "<pose base=\"sitting\" step=\"3\"/>" },
  };
  static const Wanted wanted[] = {
    { "none.xml:17: ask", "pose 1 of the figure shows step 3" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_CLEAN);
}

static void
test_links (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "alone", LINKS, LINKS "  <easier ref=\"good\"/>\n" },
    { "good", NULL, NULL },
    { "itself", LINKS, LINKS "  <harder ref=\"itself\"/>\n" },
    { "lost", LINKS, LINKS "  <harder ref=\"nowhere\"/>\n" },
    { "ring-a", LINKS, LINKS "  <easier ref=\"ring-c\"/>\n  <harder ref=\"ring-b\"/>\n" },
    { "ring-b", LINKS, LINKS "  <easier ref=\"ring-a\"/>\n  <harder ref=\"ring-c\"/>\n" },
    { "ring-c", LINKS, LINKS "  <easier ref=\"ring-b\"/>\n  <harder ref=\"ring-a\"/>\n" },
    { "two-a", LINKS, LINKS "  <harder ref=\"two-b\"/>\n" },
    { "two-b", LINKS, LINKS "  <harder ref=\"two-a\"/>\n" },
  };
  static const Wanted wanted[] = {
    { "alone.xml:6: ask", "<harder ref=\"alone\"/>" },
    { "itself.xml:6: stop", "itself → itself" },
    { "lost.xml:6: stop", "“nowhere”" },
    { "ring-c.xml:7: stop", "ring-a → ring-b → ring-c → ring-a" },
    { "two-b.xml:6: stop", "two-a → two-b → two-a" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_STOP);
}

static void
test_names (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "a", NULL, NULL },
    { "b", "<name>Name of b</name>", "<name>name of A</name>" },
    { "c", "</name>\n", "</name>\n    <synonym>Other</synonym>\n    <synonym>NAME OF D</synonym>\n" },
    { "d", "</name>\n", "</name>\n    <synonym>Name of d</synonym>\n    <synonym>Other</synonym>\n" },
  };
  static const Wanted wanted[] = {
    { "b.xml:7: stop", "“name of A” is the name of “a” too" },
    { "c.xml:9: ask", "“NAME OF D” is the name of “d”" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_STOP);
}

static void
test_dose_and_review (Fixture       *fixture,
                      gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "dose", "sets=\"2\" repetitions=\"8-12\" rest-seconds=\"60\"", "sets=\"5\" repetitions=\"6\" rest-seconds=\"20\"" },
    { "due", "2027-05-31", "2026-11-19" },
    { "due-today", "2027-05-31", "2026-11-20" },
    { "reason", "sets=\"2\" repetitions=\"8-12\" rest-seconds=\"60\"/>",
      "sets=\"5\" repetitions=\"6\" rest-seconds=\"20\"/>\n  <dose-reason>It is so.</dose-reason>" },
    { "retired", "state=\"draft\" due=\"2027-05-31\"", "state=\"retired\" due=\"2020-05-31\"" },
  };
  static const Wanted wanted[] = {
    { "dose.xml:4: ask", "sets 5, not 1-3; repetitions 6, not 8-15; rest 20 s, not 60-180 s (ACSM" },
    { "due.xml:5: tell", "2026-11-19" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_CLEAN);
}

static void
test_grade (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = {
    { "hard", "<set-up>Sit on a chair.</set-up>",
      "<set-up>Sit. Assume a comfortable position with bilateral flexion. Initiate a bilateral isometric contraction of "
      "the gluteal musculature while continuing diaphragmatic respiration throughout. Subsequently discontinue the "
      "activity immediately.</set-up>" },
    { "other", "xml:lang=\"en\"", "xml:lang=\"la\"" },
  };
  static const Wanted wanted[] = {
    { "hard.xml:9: ask", "first in “Initiate a bilateral" },
  };

  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_CLEAN);
}

static void
test_unreadable (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  static const Case cases[] = { { "good", NULL, NULL } };
  static const Wanted wanted[] = { { "truncated.xml:1: stop", "" } };

  write_file (fixture, "truncated", "<exercise");
  ASSERT_FOUND (fixture, cases, wanted, SW_CHECK_UNREADABLE);
}

#define ADD(name, function) g_test_add ("/store/check/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("good", test_good);
  ADD ("parts", test_parts);
  ADD ("shown-steps", test_shown_steps);
  ADD ("links", test_links);
  ADD ("names", test_names);
  ADD ("dose-and-review", test_dose_and_review);
  ADD ("grade", test_grade);
  ADD ("unreadable", test_unreadable);
  return g_test_run ();
}
