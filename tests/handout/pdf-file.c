/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Taking a PDF apart, changing and writing it, on files small enough to read. */
#include "config.h"

#include <string.h>

#include "sw-pdf-file.h"
#include "sw-pdf-flate.h"

#define HEAD "%PDF-1.5\n"
#define FIRST "1 0 obj\n<< /Type /Catalog % the first\n /Pages 2 0 R >>\nendobj\n"
#define SECOND "2 0 obj\n<< /Kids [ 3 0 R ] /Count 1 /Name (a \\) 1 (b)) >>\nendobj\n"
#define THIRD "3 0 obj\n<< /Length 4 0 R >>\nstream\nendobj >> endstream\nendstream\nendobj\n"
#define FOURTH "4 0 obj\n   19\nendobj\n"

/* The objects above with their table, and with @to in the place of the first @from. */
static SwPdfFile *
read_file (const char *from,
           const char *to)
{
  static const char *const objects[] = { FIRST, SECOND, THIRD, FOURTH };
  g_autoptr (GString) text = g_string_new (HEAD);
  g_autoptr (GString) table = g_string_new ("xref\n0 5\n0000000000 65535 f \n");
  g_autoptr (GBytes) bytes = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (objects); i++)
    {
      g_string_append_printf (table, "%010u 00000 n \n", (guint) text->len);
      g_string_append (text, objects[i]);
    }
  g_string_append_printf (table, "trailer\n<< /Size 5 /Root 1 0 R /Info 2 0 R >>\nstartxref\n%u\n%%%%EOF",
                          (guint) text->len);
  g_string_append (text, table->str);
  if (from != NULL)
    g_assert_cmpuint (g_string_replace (text, from, to, 1), ==, 1);

  bytes = g_bytes_new (text->str, text->len);
  return sw_pdf_file_new (bytes);
}

static void
assert_value (const SwPdfObject *object,
              const char        *key,
              const char        *expected)
{
  g_autofree char *value = sw_pdf_object_dup_value (object, key);

  g_assert_cmpstr (value, ==, expected);
}

static void
test_read (void)
{
  g_autoptr (SwPdfFile) file = read_file (NULL, NULL);
  g_autofree char *kids = NULL;
  g_autoptr (GArray) ids = NULL;
  const SwPdfObject *stream;

  g_assert_nonnull (file);
  g_assert_cmpuint (sw_pdf_file_find (&file->trailer, "/Root"), ==, 1);
  assert_value (sw_pdf_file_get (file, 1), "/Pages", "2 0 R");
  assert_value (sw_pdf_file_get (file, 1), "/Kids", NULL);
  assert_value (sw_pdf_file_get (file, 2), "/Name", "(a \\) 1 (b))");
  g_assert_true (sw_pdf_object_has (sw_pdf_file_get (file, 1), "/Type", "/Catalog"));
  g_assert_false (sw_pdf_object_has (sw_pdf_file_get (file, 1), "/Type", "/Cat"));

  kids = sw_pdf_object_dup_value (sw_pdf_file_get (file, 2), "/Kids");
  ids = sw_pdf_file_find_all (kids);
  g_assert_cmpuint (ids->len, ==, 1);
  g_assert_cmpuint (g_array_index (ids, guint, 0), ==, 3);

  stream = sw_pdf_file_get (file, 3);
  g_assert_cmpmem (stream->stream, stream->stream_length, "endobj >> endstream", 19);
  /* Its length stands in the stream now. */
  g_assert_null (sw_pdf_file_get (file, 4)->text);
  g_assert_null (sw_pdf_file_get (file, 5));
}

static void
test_damaged (void)
{
  static const struct
  {
    const char *from;
    const char *to;
  } cases[] = {
    { "startxref", "startxxxx" },
    { "xref\n0 5", "xref\n1 5" },
    { "xref\n0 5", "xref\n0 6" },
    { "xref\n0 5", "xref\n0 99999999" },
    { "0000000009", "0000000010" },
    { "0000000009", "9999999999" },
    { "endobj", "endxxx" },
    { "/Pages 2 0 R >>", "/Pages 2 0 R ]>" },
    { "/Length 4 0 R", "/Length 9 0 R" },
    { "/Length 4 0 R", "/Lxngth 4 0 R" },
    { "   19\n", "   91\n" },
    { "   19\n", "   -1\n" },
    { "   19\n", "   18\n" },
    { "trailer\n<<", "trailer\n[[" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_null (read_file (cases[i].from, cases[i].to));
}

static void
test_change (void)
{
  SwPdfObject object = { 0 };

  sw_pdf_object_take_text (&object, g_strdup ("<</A<</K 1>>/K 2/L[3 0 R]>>"));
  sw_pdf_object_set (&object, "/K", "[5]");
  g_assert_cmpstr (object.text, ==, "<</A<</K 1>> /K [5]/L[3 0 R]>>");
  sw_pdf_object_set (&object, "/M", "(m)");
  g_assert_cmpstr (object.text, ==, "<</A<</K 1>> /K [5]/L[3 0 R] /M (m)>>");
  sw_pdf_object_append (&object, "/L", "4 0 R");
  assert_value (&object, "/L", "[3 0 R 4 0 R]");
  sw_pdf_object_append (&object, "/M", "6");
  assert_value (&object, "/M", "[(m) 6]");
  sw_pdf_object_append (&object, "/N", "7");
  assert_value (&object, "/N", "[ 7]");
  sw_pdf_object_clear (&object);
}

static void
test_quote (void)
{
  g_autofree char *plain = sw_pdf_quote ("a (b) \\");
  g_autofree char *wide = sw_pdf_quote ("é\360\235\204\236");
  g_autofree char *lines = sw_pdf_quote ("a\nb");

  g_assert_cmpstr (plain, ==, "(a \\(b\\) \\\\)");
  g_assert_cmpstr (wide, ==, "<FEFF00E9D834DD1E>");
  g_assert_cmpstr (lines, ==, "<FEFF0061000A0062>");
}

static void
test_flate (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GBytes) packed = NULL;
  g_autoptr (GBytes) unpacked = NULL;
  g_autoptr (GBytes) broken = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;
  const char *data;

  for (int i = 0; i < 5000; i++)
    g_string_append (text, "again and ");
  packed = sw_pdf_deflate (text->str, text->len);
  data = g_bytes_get_data (packed, &length);
  g_assert_cmpuint (length, <, text->len / 100);
  unpacked = sw_pdf_inflate (data, length, &error);
  g_assert_no_error (error);
  g_assert_cmpmem (g_bytes_get_data (unpacked, NULL), g_bytes_get_size (unpacked), text->str, text->len);

  broken = sw_pdf_inflate (data, length / 2, &error);
  g_assert_null (broken);
  g_assert_nonnull (error);
}

/* What is in an object stream of the file, unpacked; it is the first one that is packed. */
static char *
dup_packed (GBytes *pdf)
{
  gsize length;
  const char *data = g_bytes_get_data (pdf, &length);
  const char *packed = g_strstr_len (data, (gssize) length, "/ObjStm");
  const char *start;
  g_autoptr (GBytes) unpacked = NULL;

  g_assert_nonnull (packed);
  start = g_strstr_len (packed, (gssize) (length - (gsize) (packed - data)), "stream\n") + strlen ("stream\n");
  unpacked = sw_pdf_inflate (start, length - (gsize) (start - data), NULL);
  g_assert_nonnull (unpacked);
  return g_strndup (g_bytes_get_data (unpacked, NULL), g_bytes_get_size (unpacked));
}

static void
test_write (void)
{
  g_autoptr (SwPdfFile) file = read_file (NULL, NULL);
  g_autoptr (GBytes) first = NULL;
  g_autoptr (GBytes) second = NULL;
  g_autofree char *packed = NULL;
  const char *data;
  gsize length;

  g_assert_nonnull (file);
  g_assert_cmpuint (sw_pdf_file_add (file, g_strdup ("[ 1 ]")), ==, 5);
  first = sw_pdf_file_write (file);
  second = sw_pdf_file_write (file);
  g_assert_true (g_bytes_equal (first, second));

  data = g_bytes_get_data (first, &length);
  g_assert_true (g_str_has_prefix (data, HEAD));
  g_assert_nonnull (g_strstr_len (data, (gssize) length,
                                  "3 0 obj\n<</Length 19>>\nstream\nendobj >> endstream\nendstream\nendobj\n"));
  packed = dup_packed (first);
  g_assert_cmpstr (packed, ==,
                   "1 0 2 30 5 72 <</Type/Catalog/Pages 2 0 R>>\n<</Kids[3 0 R]/Count 1/Name(a \\) 1 (b))>>\n[1]\n");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/handout/pdf-file/read", test_read);
  g_test_add_func ("/handout/pdf-file/damaged", test_damaged);
  g_test_add_func ("/handout/pdf-file/change", test_change);
  g_test_add_func ("/handout/pdf-file/quote", test_quote);
  g_test_add_func ("/handout/pdf-file/flate", test_flate);
  g_test_add_func ("/handout/pdf-file/write", test_write);
  return g_test_run ();
}
