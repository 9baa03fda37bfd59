/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marking what lies outside the structure, on content streams small enough to read. */
#include "config.h"

#include <string.h>

#include "sw-pdf.h"

static void
assert_marked (const char *content,
               const char *expected)
{
  g_autoptr (GBytes) marked = sw_pdf_mark_artifacts (content, strlen (content), NULL);
  g_autofree char *text = g_strndup (g_bytes_get_data (marked, NULL), g_bytes_get_size (marked));

  g_assert_cmpstr (text, ==, expected);
}

static void
test_nothing_outside (void)
{
  assert_marked ("q /P << /MCID 0 >> BDC 0 0 m 1 1 l S EMC Q", "q /P << /MCID 0 >> BDC 0 0 m 1 1 l S EMC\n Q");
}

static void
test_before_and_after (void)
{
  assert_marked ("0 0 5 5 re f /P <</MCID 0>> BDC BT (a) Tj ET EMC 1 1 5 5 re S",
                 "/Artifact BMC\n0 0 5 5 re f \nEMC\n/P <</MCID 0>> BDC BT (a) Tj ET EMC\n"
                 "/Artifact BMC\n 1 1 5 5 re S\nEMC\n");
}

/* A mark with no place in the structure may lie within a text object and must not be cut at. */
static void
test_mark_without_place (void)
{
  assert_marked ("BT /Span <</ActualText (x)>> BDC (a) Tj EMC ET /P <</MCID 3>> BDC f EMC",
                 "/Artifact BMC\nBT /Span <</ActualText (x)>> BDC (a) Tj EMC ET \nEMC\n"
                 "/P <</MCID 3>> BDC f EMC\n");
}

static void
test_nested (void)
{
  assert_marked ("/P <</MCID 0>> BDC /Span BMC f EMC f EMC",
                 "/P <</MCID 0>> BDC /Span BMC f EMC f EMC\n");
}

/* Words inside strings, comments, names and images are no operators. */
static void
test_lookalikes (void)
{
  assert_marked ("(f EMC \\) S \\\\) pop", "(f EMC \\) S \\\\) pop");
  assert_marked ("(a (f) S) x % f S\nn", "(a (f) S) x % f S\nn");
  assert_marked ("/f <66> /S [ (f) ] n", "/f <66> /S [ (f) ] n");
  assert_marked ("BI /W 1 ID f EMC BDC /MCID \nEI Q", "/Artifact BMC\nBI /W 1 ID f EMC BDC /MCID \nEI Q\nEMC\n");
}

/* Places on paths get no finer than hundredths of a point; other numbers stay, and so does all that is scaled. */
static void
test_rounded (void)
{
  assert_marked ("10.12345 -0.004 m 9.999 -7.5049 l 1 2 3.125 4.5 5.001 6.10 c",
                 "10.12 0 m 10 -7.5 l 1 2 3.13 4.5 5 6.1 c");
  assert_marked ("0.05499 12345.678 100 .5 re\nn", "0.05 12345.68 100 0.5 re\nn");
  assert_marked ("q 1 0 0 -1 3.14159 2.71828 cm 1.2345 0 m Q", "q 1 0 0 -1 3.14159 2.71828 cm 1.23 0 m Q");
  assert_marked ("q 50 0 0 50 0 0 cm q 0.12345 0 m Q 0.12345 0 l Q 0.12345 0 m",
                 "q 50 0 0 50 0 0 cm q 0.12345 0 m Q 0.12345 0 l Q 0.12 0 m");
  assert_marked ("1.23456 w 0.12345 0.12345 0.12345 rg 1 0 0 1 0.12345 0 Tm", "1.23456 w 0.12345 0.12345 0.12345 rg "
                                                                             "1 0 0 1 0.12345 0 Tm");
  assert_marked ("1.2345 m 1e-3 2.2222 l -- 1.11111 m", "1.2345 m 1e-3 2.22 l -- 1.11 m");
}

/* Broken content must neither crash nor lose bytes. */
static void
test_broken (void)
{
  static const char *const broken[] = { "(abc", "<ab", "EMC EMC", "/P <</MCID 0>> BDC f", "BI ID", "\\", ")", ">>" };

  for (guint i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      g_autoptr (GBytes) marked = sw_pdf_mark_artifacts (broken[i], strlen (broken[i]), NULL);

      g_assert_cmpuint (g_bytes_get_size (marked), >=, strlen (broken[i]));
    }
}

/* What is drawn besides comes last in its place in the structure, and nowhere else. */
static void
test_drawn (void)
{
  static const char content[] = "/Figure <</MCID 0>> BDC EMC /P <</MCID 1>> BDC /Span BMC f EMC EMC /Figure <</MCID 2>> BDC EMC";
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  g_autoptr (GBytes) marked = NULL;
  g_autofree char *text = NULL;

  g_ptr_array_add (drawn, (gpointer)"/One Do\n");
  g_ptr_array_add (drawn, NULL);
  g_ptr_array_add (drawn, (gpointer)"/Other Do\n");
  marked = sw_pdf_mark_artifacts (content, strlen (content), drawn);
  text = g_strndup (g_bytes_get_data (marked, NULL), g_bytes_get_size (marked));
  g_assert_cmpstr (text, ==,
                   "/Figure <</MCID 0>> BDC /One Do\nEMC\n /P <</MCID 1>> BDC /Span BMC f EMC EMC\n "
                   "/Figure <</MCID 2>> BDC /Other Do\nEMC\n");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pdf-content/nothing-outside", test_nothing_outside);
  g_test_add_func ("/pdf-content/before-and-after", test_before_and_after);
  g_test_add_func ("/pdf-content/mark-without-place", test_mark_without_place);
  g_test_add_func ("/pdf-content/nested", test_nested);
  g_test_add_func ("/pdf-content/lookalikes", test_lookalikes);
  g_test_add_func ("/pdf-content/rounded", test_rounded);
  g_test_add_func ("/pdf-content/broken", test_broken);
  g_test_add_func ("/pdf-content/drawn", test_drawn);
  return g_test_run ();
}
