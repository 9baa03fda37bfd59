/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Files that are damaged or hostile are refused quickly, with file, line and what to do. */
#include "config.h"

#include <string.h>
#include <sys/resource.h>

#include "sw-xml-writer.h"
#include "sw-xml.h"

static xmlDoc *
parse (const char  *text,
       GError     **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return sw_xml_parse_bytes (bytes, "client.setwright", error);
}

static void
assert_refused (const char *text,
                SwXmlError  code,
                long        line)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (parse (text, &error));
  g_assert_error (error, SW_XML_ERROR, (int) code);
  g_assert_true (g_str_has_prefix (error->message, "client.setwright"));
  g_assert_cmpint (sw_xml_error_get_line (error), ==, line);
  g_assert_true (g_str_has_suffix (error->message, sw_xml_error_get_words (error)));
}

static void
test_good (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = parse ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<a b=\"1 &lt; 2\">\n<c>é<![CDATA[<]]></c></a>", &error);
  const xmlNode *root;
  g_autofree char *attribute = NULL;
  g_autofree char *text = NULL;

  g_assert_no_error (error);
  root = xmlDocGetRootElement (doc);
  attribute = sw_xml_dup_attribute (root, "b");
  text = sw_xml_dup_text (root);
  g_assert_cmpstr (attribute, ==, "1 < 2");
  g_assert_cmpstr (text, ==, "\né<");
  g_assert_null (sw_xml_dup_attribute (root, "c"));
  g_assert_cmpint (sw_xml_get_line (root), ==, 2);
}

/* Cut off anywhere, a document is refused; only the last line feed can be missing. */
static void
test_truncated (void)
{
  const char *whole = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<a b=\"1\"><!-- c --><d>Zoë &amp; Bob</d></a>\n";

  for (gsize length = 0; length < strlen (whole) - 1; length++)
    {
      g_autofree char *text = g_strndup (whole, length);
      g_autoptr (GError) error = NULL;

      g_assert_null (parse (text, &error));
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
    }
}

static void
test_encoding (void)
{
  static const char utf16[] = "\xff\xfe<\0a\0/\0>\0";
  g_autoptr (GBytes) wide = g_bytes_new_static (utf16, sizeof utf16 - 1);
  g_autoptr (GBytes) zero = g_bytes_new_static ("<a>\0</a>", 8);
  g_autoptr (GError) wide_error = NULL;
  g_autoptr (GError) zero_error = NULL;

  assert_refused ("<?xml version=\"1.0\"?>\n<a>\nZo\xeb</a>", SW_XML_ERROR_MALFORMED, 3);
  assert_refused ("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>\n<a>Zoe</a>", SW_XML_ERROR_MALFORMED, 1);
  assert_refused ("<?xml version=\"1.0\" encoding=\"UTF-16\"?>\n<a/>", SW_XML_ERROR_MALFORMED, 1);
  g_assert_null (sw_xml_parse_bytes (wide, "client.setwright", &wide_error));
  g_assert_error (wide_error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
  g_assert_null (sw_xml_parse_bytes (zero, "client.setwright", &zero_error));
  g_assert_error (zero_error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
}

static void
test_malformed (void)
{
  assert_refused ("", SW_XML_ERROR_MALFORMED, 0);
  assert_refused ("no document", SW_XML_ERROR_MALFORMED, 1);
  assert_refused ("<a>\n<b>\n</a>", SW_XML_ERROR_MALFORMED, 3);
  assert_refused ("<a b='1' b='2'/>", SW_XML_ERROR_MALFORMED, 1);
  assert_refused ("<a>\n&unknown;</a>", SW_XML_ERROR_MALFORMED, 2);
  assert_refused ("<x:a/>", SW_XML_ERROR_MALFORMED, 1);
}

static void
test_forbidden (void)
{
  assert_refused ("<!DOCTYPE a><a/>", SW_XML_ERROR_FORBIDDEN, 1);
  assert_refused ("<!DOCTYPE a SYSTEM \"http://192.0.2.1/a.dtd\"><a/>", SW_XML_ERROR_FORBIDDEN, 1);
  assert_refused ("<?xml version=\"1.0\"?>\n<!DOCTYPE a [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>\n<a>&e;</a>",
                  SW_XML_ERROR_FORBIDDEN, 2);
  assert_refused ("<!DOCTYPE a [<!ENTITY % p SYSTEM \"file:///etc/passwd\"> %p;]><a/>", SW_XML_ERROR_FORBIDDEN, 1);
}

static void
test_entity_bomb (void)
{
  GString *text = g_string_new ("<!DOCTYPE a [<!ENTITY e0 \"ten letters\">");
  g_autofree char *bomb = NULL;

  for (int i = 1; i < 30; i++)
    g_string_append_printf (text, "<!ENTITY e%d \"&e%d;&e%d;&e%d;&e%d;\">", i, i - 1, i - 1, i - 1, i - 1);
  g_string_append (text, "]><a>&e29;</a>");
  bomb = g_string_free (text, FALSE);
  assert_refused (bomb, SW_XML_ERROR_FORBIDDEN, 1);
}

static char *
nest (int depth)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < depth; i++)
    g_string_append (text, "<a>");
  for (int i = 0; i < depth; i++)
    g_string_append (text, "</a>");

  return g_string_free (text, FALSE);
}

static void
test_depth (void)
{
  g_autofree char *just = nest (SW_XML_MAX_DEPTH);
  g_autofree char *beyond = nest (SW_XML_MAX_DEPTH + 1);
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = parse (just, &error);

  g_assert_no_error (error);
  g_assert_nonnull (doc);
  assert_refused (beyond, SW_XML_ERROR_TOO_LARGE, 1);
}

static long
peak_memory_kb (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return usage.ru_maxrss;
}

/* As many bytes as a document may have, in the shapes that cost a parser most. */
static void
test_hostile (void)
{
  static const char *const shapes[] = { "<a>", "<a/>", "<?a b?>", "<!--a-->", "&#38;", "<a b=\"\" c=\"\" d=\"\" e=\"\"/>" };
  gsize most = SW_XML_MAX_BYTES - 16;

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    {
      GString *text = g_string_sized_new (most + 64);
      g_autofree char *whole = NULL;
      g_autoptr (GError) error = NULL;
      g_autoptr (xmlDoc) doc = NULL;
      long before;

      g_string_append (text, "<r>");
      while (text->len + strlen (shapes[i]) < most)
        g_string_append (text, shapes[i]);
      g_string_append (text, "</r>");
      whole = g_string_free (text, FALSE);

      before = peak_memory_kb ();
      doc = parse (whole, &error);
      if (g_str_equal (shapes[i], "&#38;"))
        g_assert_no_error (error);
      else
        g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_TOO_LARGE);
      g_test_message ("%s costs %ld kB at most", shapes[i], peak_memory_kb () - before);
#ifndef __SANITIZE_ADDRESS__
      g_assert_cmpint (peak_memory_kb () - before, <, 500 * 1024);
#endif
    }
}

/* The parser compares attributes pairwise: a hundred thousand would take minutes, whatever their values hold. */
static void
test_attributes (void)
{
  static const char *const values[] = { "\"\"", "\">\"", "'\">'", "\"'\"" };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      GString *text = g_string_new ("<a");
      g_autofree char *whole = NULL;

      for (int j = 0; j < 100000; j++)
        g_string_append_printf (text, " b%d=%s", j, values[i]);
      g_string_append (text, "/>");
      whole = g_string_free (text, FALSE);
      assert_refused (whole, SW_XML_ERROR_TOO_LARGE, 1);
    }
}

/* Only attributes are counted: not what their values, a text, a comment or an instruction hold. */
static void
test_equals_signs (void)
{
  g_autofree char *signs = g_strnfill (16 * 1024, '=');
  const char *const shapes[] = { "<a>%s</a>", "<a b=\"%s\"/>", "<a b='%s'/>", "<a><![CDATA[%s]]></a>",
                                 "<a><!--it's %s--></a>", "<a><?b %s?></a>" };

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    {
      g_auto (GStrv) around = g_strsplit (shapes[i], "%s", 2);
      g_autofree char *whole = g_strconcat (around[0], signs, around[1], NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (xmlDoc) doc = parse (whole, &error);

      g_assert_no_error (error);
      g_assert_nonnull (doc);
    }
}

static void
test_too_many_bytes (void)
{
  g_autofree char *text = g_strnfill (SW_XML_MAX_BYTES + 1, ' ');

  assert_refused (text, SW_XML_ERROR_TOO_LARGE, 0);
}

/* libxml2 itself counts an element's lines in 16 bits. */
static void
test_long_file (void)
{
  g_autofree char *lines = g_strnfill (100000, '\n');
  g_autofree char *text = g_strconcat ("<a>", lines, "<b c=\"x\"/><d>\n</d></a>", NULL);
  g_autoptr (xmlDoc) doc = parse (text, NULL);
  g_autoptr (GError) error = NULL;
  const xmlNode *b = xmlDocGetRootElement (doc)->children->next;
  int value = 7;

  g_assert_cmpint (sw_xml_get_line (b), ==, 100001);
  g_assert_cmpint (sw_xml_get_line (b->next), ==, 100001);
  g_assert_false (sw_xml_read_int (b, "c", 0, 9, 0, &value, &error));
  g_assert_cmpint (value, ==, 7);
  g_assert_cmpint (sw_xml_error_get_line (error), ==, 100001);
  g_assert_true (g_str_has_prefix (error->message, "client.setwright, line 100001: "));
}

static void
test_numbers (void)
{
  g_autoptr (xmlDoc) doc = parse ("<a i='12' n='-3' x='1x' e='' d='2.5' h='0x10' k='1e3' c='2,5' big='99999999999999999999'/>", NULL);
  const xmlNode *a = xmlDocGetRootElement (doc);
  static const char *const bad_ints[] = { "x", "e", "d", "big", "n" };
  static const char *const bad_doubles[] = { "x", "e", "h", "k", "c", "big" };
  int i = 0;
  double d = 0.0;

  g_assert_true (sw_xml_read_int (a, "i", 0, 12, 5, &i, NULL));
  g_assert_cmpint (i, ==, 12);
  g_assert_true (sw_xml_read_int (a, "absent", 0, 12, 5, &i, NULL));
  g_assert_cmpint (i, ==, 5);
  g_assert_true (sw_xml_read_double (a, "d", 0.0, 9.0, 1.0, &d, NULL));
  g_assert_cmpfloat (d, ==, 2.5);

  for (guint n = 0; n < G_N_ELEMENTS (bad_ints); n++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (sw_xml_read_int (a, bad_ints[n], 0, 100, 0, &i, &error));
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_RANGE);
    }
  for (guint n = 0; n < G_N_ELEMENTS (bad_doubles); n++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (sw_xml_read_double (a, bad_doubles[n], 0.0, 100.0, 0.0, &d, &error));
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_RANGE);
    }
}

static void
test_silent (void)
{
  if (g_test_subprocess ())
    {
      test_malformed ();
      test_forbidden ();
      return;
    }

  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
  g_test_trap_assert_stderr ("");
}

static gpointer
parse_often (gpointer data)
{
  for (int i = 0; i < 200; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (xmlDoc) good = parse ("<a><b/></a>", NULL);

      g_assert_nonnull (good);
      g_assert_null (parse ("<a><b></a>", &error));
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
    }

  return data;
}

static void
test_threads (void)
{
  GThread *threads[8];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("parse", parse_often, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

static void
test_writer (void)
{
  g_autoptr (SwXmlWriter) writer = sw_xml_writer_new ();
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = NULL;
  g_autofree char *attribute = NULL;
  g_autofree char *text = NULL;
  g_autofree char *written = NULL;
  const char *hard = "<&>\"' \t\r\n é";

  sw_xml_writer_open (writer, "a");
  sw_xml_writer_attribute (writer, "b", hard);
  sw_xml_writer_attribute (writer, "left-out", NULL);
  sw_xml_writer_attribute_int (writer, "i", -3);
  sw_xml_writer_attribute_double (writer, "d", 2.50);
  sw_xml_writer_open (writer, "empty");
  sw_xml_writer_close (writer);
  sw_xml_writer_text_element (writer, "t", hard);
  sw_xml_writer_open (writer, "u");
  sw_xml_writer_attribute (writer, "v", "1");
  sw_xml_writer_text (writer, "w");
  sw_xml_writer_close (writer);
  sw_xml_writer_raw (writer, "<!-- kept -->");
  sw_xml_writer_close (writer);
  bytes = sw_xml_writer_end (writer);

  written = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  g_assert_cmpstr (written, ==,
                   "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                   "<a b=\"&lt;&amp;&gt;&quot;' &#9;&#13;&#10; é\" i=\"-3\" d=\"2.5\">\n"
                   "  <empty/>\n"
                   "  <t>&lt;&amp;&gt;\"' \t&#13;\n é</t>\n"
                   "  <u v=\"1\">w</u>\n"
                   "  <!-- kept -->\n"
                   "</a>\n");

  doc = sw_xml_parse_bytes (bytes, "a", &error);
  g_assert_no_error (error);
  attribute = sw_xml_dup_attribute (xmlDocGetRootElement (doc), "b");
  text = sw_xml_dup_text (xmlDocGetRootElement (doc)->children->next->next->next);
  g_assert_cmpstr (attribute, ==, hard);
  g_assert_cmpstr (text, ==, hard);
}

/* What no XML 1.0 document may hold (its section 2.2) never gets into a file of ours. */
static void
test_writer_refuses (void)
{
  GString *escaped = g_string_new (NULL);
  g_autofree char *text = NULL;

  sw_xml_escape (escaped, "a\x01\x0b\x1f"
                          "b\xef\xbf\xbe\xef\xbf\xbf"
                          "c\xff"
                          "d\x7f",
                 FALSE);
  text = g_string_free (escaped, FALSE);
  g_assert_cmpstr (text, ==, "abc\xef\xbf\xbd"
                             "d\x7f");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/base/xml/good", test_good);
  g_test_add_func ("/base/xml/truncated", test_truncated);
  g_test_add_func ("/base/xml/encoding", test_encoding);
  g_test_add_func ("/base/xml/malformed", test_malformed);
  g_test_add_func ("/base/xml/forbidden", test_forbidden);
  g_test_add_func ("/base/xml/entity-bomb", test_entity_bomb);
  g_test_add_func ("/base/xml/depth", test_depth);
  g_test_add_func ("/base/xml/hostile", test_hostile);
  g_test_add_func ("/base/xml/attributes", test_attributes);
  g_test_add_func ("/base/xml/equals-signs", test_equals_signs);
  g_test_add_func ("/base/xml/too-many-bytes", test_too_many_bytes);
  g_test_add_func ("/base/xml/long-file", test_long_file);
  g_test_add_func ("/base/xml/numbers", test_numbers);
  g_test_add_func ("/base/xml/silent", test_silent);
  g_test_add_func ("/base/xml/threads", test_threads);
  g_test_add_func ("/base/xml-writer/escapes", test_writer);
  g_test_add_func ("/base/xml-writer/refuses", test_writer_refuses);
  return g_test_run ();
}
