/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figure element: read, written and read again; what the schema and the reader think of it. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "case.h"
#include "sw-figure-xml.h"

#define NS "urn:setwright:exercise"

/* The figure as a document of its own. */
static char *
write_out (SwFigureSpec *spec)
{
  g_autoptr (SwXmlWriter) writer = sw_xml_writer_new ();
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *text = NULL;
  const char *at;

  sw_figure_xml_write (spec, writer);
  bytes = sw_xml_writer_end (writer);
  text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  at = strstr (text, "<figure");
  g_assert_nonnull (at);
  return g_strdup_printf ("<figure xmlns=\"" NS "\"%s", at + strlen ("<figure"));
}

static SwFigureSpec *
read_text (const char  *text,
           GError     **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, "case.xml", error);

  return doc != NULL ? sw_figure_xml_read (xmlDocGetRootElement (doc), error) : NULL;
}

static void
validate (const char *text,
          gboolean    valid)
{
  g_autofree char *schema = g_test_build_filename (G_TEST_DIST, "figure-only.rng", NULL);
  g_autofree char *path = NULL;
  g_autofree char *quiet = NULL;
  g_autofree char *loud = NULL;
  g_autoptr (GError) error = NULL;
  int fd = g_file_open_tmp ("figure-XXXXXX.xml", &path, &error);
  char *argv[] = { (char *) "xmllint", (char *) "--noout", (char *) "--relaxng", schema, path, NULL };
  int status = 0;

  g_assert_no_error (error);
  g_close (fd, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_assert_true (g_spawn_sync (NULL, argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &quiet, &loud, &status, &error));
  if (valid != g_spawn_check_wait_status (status, NULL))
    g_error ("%s\n%s", text, loud);
  g_unlink (path);
}

static void
test_round_trip (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autofree char *text = write_out (spec);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwFigureSpec) again = read_text (text, &error);
      g_autofree char *same = write_out (again);

      g_assert_no_error (error);
      g_assert_true (sw_figure_spec_equal (spec, again));
      g_assert_cmpstr (text, ==, same);
      if (i % 4 == 0)
        validate (text, TRUE);
    }
}

static const char whole[]
    = "<figure xmlns=\"" NS "\" later=\"1\">\n"
      "  <pose base=\"half-kneeling\" on=\"left\" anchor=\"knees\" lean=\"4.5\" roll=\"-2\" turn=\"10\" twist=\"3\" "
      "breath=\"in\" eyes=\"closed\" belly=\"0.03\" lift=\"0.05\" step=\"2\" mood=\"calm\">\n"
      "    <low-back bend=\"3\" side=\"-4\" turn=\"5\"/>\n"
      "    <shoulder-blade side=\"both\" forward=\"4\"/>\n"
      "    <shoulder side=\"right\" raise=\"40\" direction=\"30\"/>\n"
      "    <shoulder side=\"left\" raise=\"20\"/>\n"
      "    <fingers side=\"both\" knuckle=\"20\" curl=\"30\" tips=\"-10\" spread=\"5\" index=\"30\" "
      "middle=\"-20\" ring=\"10\"/>\n"
      "    <thumb side=\"left\" out=\"-5\" across=\"60\" bend=\"12\"/>\n"
      "    <foot side=\"right\" pitch=\"free\"/>\n"
      "    <foot side=\"left\" pitch=\"12\"/>\n"
      "    <hand side=\"left\" shape=\"fist\"/>\n"
      "    <pin part=\"hand\" side=\"both\" to=\"hip\" forward=\"0.01\" elbow=\"back\"/>\n"
      "    <pin part=\"foot\" side=\"right\" to=\"point\" forward=\"0.3\" out=\"0.1\" up=\"0.05\" knee=\"out\"/>\n"
      "    <!-- kept -->\n"
      "    <glow strength=\"2\"/>\n"
      "  </pose>\n"
      "  <motion kind=\"circle\" show=\"right-fingers left-thumb\" toward=\"up in\" about=\"right-shoulder\" "
      "radius=\"9\" way=\"both\" hold=\"yes\" sides=\"alternate\" limbs=\"legs\"/>\n"
      "  <prop kind=\"band\" where=\"left\" in=\"right-hand\" height=\"0.5\" distance=\"0.4\" colour=\"red\"/>\n"
      "  <prop kind=\"ball\" in=\"left-hand\" thrown=\"floor\"/>\n"
      "  <prop kind=\"towel\" under=\"right-elbow\"/>\n"
      "  <works area=\"calf\" side=\"both\"/>\n"
      "  <works area=\"belly\"/>\n"
      "  <view turn=\"-40\" tilt=\"8\" frame=\"hand\" layout=\"stacked\"/>\n"
      "  <inset around=\"right-hip\" turn=\"10\" tilt=\"4\" size=\"0.25\"/>\n"
      "  <sound pitch=\"a\"/>\n"
      "</figure>\n";

/* Every word of the format, and what a newer version may add, comes back byte by byte. */
static void
test_everything (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwFigureSpec) spec = read_text (whole, &error);
  g_autofree char *text = NULL;

  g_assert_no_error (error);
  text = write_out (spec);
  g_assert_cmpstr (text, ==, whole);
  validate (whole, TRUE);
}

static void
test_bad (void)
{
  static const struct
  {
    const char *inner;
    int code;
    const char *word;
    gboolean schema_sees;
  } bad[] = {
    { "", SW_XML_ERROR_INVALID, "no pose", TRUE },
    { "<pose base='floating'/>", SW_XML_ERROR_INVALID, "standing, sitting", TRUE },
    { "<pose><knee side='right' bend='190'/></pose>", SW_XML_ERROR_RANGE, "from -15 to 155", TRUE },
    { "<pose><fingers side='right' curl='120'/></pose>", SW_XML_ERROR_RANGE, "from -15 to 115", TRUE },
    { "<pose><thumb side='both' turn='5'/></pose>", SW_XML_ERROR_INVALID, "no angle", TRUE },
    { "<pose><knee side='right' bend='much'/></pose>", SW_XML_ERROR_RANGE, "much", TRUE },
    { "<pose><knee bend='10'/></pose>", SW_XML_ERROR_INVALID, "side", TRUE },
    { "<pose><knee side='right' turn='10'/></pose>", SW_XML_ERROR_INVALID, "no angle", TRUE },
    { "<pose><pin part='hand' side='left' to='moon'/></pose>", SW_XML_ERROR_INVALID, "moon", TRUE },
    { "<pose/><pose/><pose/><pose/><pose/><pose/><pose/>", SW_XML_ERROR_TOO_LARGE, "at most 6", FALSE },
    { "<pose/><pose base='sitting'/>", SW_XML_ERROR_INVALID, "steps", FALSE },
    { "<pose/><inset turn='0'/>", SW_XML_ERROR_INVALID, "around", TRUE },
    { "<pose/><motion limbs='wings'/>", SW_XML_ERROR_INVALID, "legs", TRUE },
    { "<pose lift='0.4'/>", SW_XML_ERROR_RANGE, "0.3", TRUE },
    { "<pose step='21'/>", SW_XML_ERROR_RANGE, "20", TRUE },
    { "<pose/><motion sides='three'/>", SW_XML_ERROR_INVALID, "alternate", TRUE },
    { "<pose/><motion show='head head head'/>", SW_XML_ERROR_INVALID, "at most two", TRUE },
    { "<pose/><motion kind='press' show='head'/>", SW_XML_ERROR_INVALID, "toward", FALSE },
    { "<pose/><motion kind='press' show='head' toward='home'/>", SW_XML_ERROR_INVALID, "forward, back", TRUE },
    { "<pose breath='sideways'/>", SW_XML_ERROR_INVALID, "in, out", TRUE },
    { "<pose belly='0.1'/>", SW_XML_ERROR_RANGE, "0.06", TRUE },
    { "<pose/><prop kind='rocket'/>", SW_XML_ERROR_INVALID, "rocket", TRUE },
    { "<pose/><prop kind='ball' in='right-hand' thrown='away'/>", SW_XML_ERROR_INVALID, "wall, floor", TRUE },
    { "<pose/><works area='calf'/>", SW_XML_ERROR_INVALID, "side", FALSE },
    { "<pose/><view tilt='nan'/>", SW_XML_ERROR_RANGE, "tilt", TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *text = g_strdup_printf ("<figure xmlns=\"" NS "\">\n%s\n</figure>", bad[i].inner);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwFigureSpec) spec = read_text (text, &error);

      g_assert_null (spec);
      g_assert_error (error, SW_XML_ERROR, bad[i].code);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, "case.xml, line "));
      g_assert_nonnull (strstr (error->message, bad[i].word));
      if (bad[i].schema_sees)
        validate (text, FALSE);
    }
}

static void
test_too_many (void)
{
  static const char *const repeated[]
      = { "<prop kind='ball'/>", "<works area='belly'/>" };

  for (gsize i = 0; i < G_N_ELEMENTS (repeated); i++)
    {
      g_autoptr (GString) text = g_string_new ("<figure xmlns=\"" NS "\"><pose/>");
      g_autoptr (GError) error = NULL;
      g_autoptr (SwFigureSpec) spec = NULL;

      for (int k = 0; k < 1000; k++)
        g_string_append (text, repeated[i]);
      g_string_append (text, "</figure>");
      spec = read_text (text->str, &error);
      g_assert_null (spec);
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_TOO_LARGE);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/figure-xml/round-trip", test_round_trip);
  g_test_add_func ("/figure-xml/everything", test_everything);
  g_test_add_func ("/figure-xml/bad", test_bad);
  g_test_add_func ("/figure-xml/too-many", test_too_many);
  return g_test_run ();
}
