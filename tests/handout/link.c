/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers and addresses as links, and the texts they are found in. */
#include "config.h"

#include <string.h>

#include "sw-text-part.h"

static void
test_phone (void)
{
  static const struct
  {
    const char *phone;
    const char *uri;
  } cases[] = {
    { "01632 960123", "tel:01632960123" },
    { "+44 (0)1632 960-123", "tel:+441632960123" },
    { "(01632) 960.123", "tel:01632960123" },
    { "01632\302\240960\342\200\221123", "tel:01632960123" },
    { "030/123 45 67", "tel:0301234567" },
    { "030/12 34 56", "tel:030123456" },
    { "+49 30/123 456", "tel:+4930123456" },
    { "030/123-456/78", NULL },
    { "960234 / 960235", NULL },
    { "960234 /960235", NULL },
    { "960234/ 960235", NULL },
    { "960234/960235", NULL },
    { "01632 960234/5", NULL },
    { "01632 960234/35", NULL },
    { "01632 960234/", NULL },
    { "", NULL },
    { "112", NULL },
    { "1234567890123456", NULL },
    { "01632 960123 or 01632 960124", NULL },
    { "01632 960123 ext. 4", NULL },
    { "01632+960123", NULL },
    { "++44 1632 960123", NULL },
    { "0163\330\2402 960123", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *uri = sw_link_dup_phone_uri (cases[i].phone);

      g_assert_cmpstr (uri, ==, cases[i].uri);
    }
}

static void
test_mail (void)
{
  static const struct
  {
    const char *address;
    const char *uri;
  } cases[] = {
    { "hello@millbrook.example.org", "mailto:hello@millbrook.example.org" },
    { "o'neill+clinic@example.org", "mailto:o%27neill%2Bclinic@example.org" },
    { "gr\303\274n@example.org", "mailto:gr%C3%BCn@example.org" },
    { "a'\\b@example.org", "mailto:a%27%5Cb@example.org" },
    { "", NULL },
    { "hello", NULL },
    { "hello@millbrook", NULL },
    { "one@example.org, two@example.org", NULL },
    { "one@example.org;two@example.org", NULL },
    { "Mill <one@example.org>", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *uri = sw_link_dup_mail_uri (cases[i].address);

      g_assert_cmpstr (uri, ==, cases[i].uri);
    }
}

static GArray *
make_links (const char *phone,
            const char *email)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", &error);
  g_autoptr (SwProgramme) programme = sw_programme_new ("5e7a11c0-3c55-4d5e-9a4b-0f6d3b2a9c11");

  g_assert_no_error (error);
  g_object_set (sw_programme_get_clinic (programme), "phone", phone, "email", email, NULL);
  return sw_links_new (phrases, sw_programme_get_clinic (programme));
}

/* The parts as "[link]", "<language>" or plain, one after another. */
static char *
describe (GArray     *links,
          const char *text,
          gsize       strong_length,
          const char *language)
{
  g_autoptr (GArray) parts = sw_text_parts_new (links, text, strong_length, language);
  GString *out = g_string_new (NULL);
  int at = 0;

  for (guint i = 0; i < parts->len; i++)
    {
      const SwTextPart *part = &g_array_index (parts, SwTextPart, i);
      g_autofree char *words = g_strndup (text + part->start, (gsize) (part->end - part->start));

      g_assert_cmpint (part->start, ==, at);
      at = part->end;
      if (part->link != NULL)
        g_string_append_printf (out, "[%s]", words);
      else if (part->language != NULL)
        g_string_append_printf (out, "<%s:%s>", part->language, words);
      else
        g_string_append_printf (out, "|%s|", words);
    }
  g_assert_cmpint (at, ==, (int) strlen (text));
  return g_string_free (out, FALSE);
}

static void
assert_parts (GArray     *links,
              const char *text,
              gsize       strong_length,
              const char *language,
              const char *expected)
{
  g_autofree char *described = describe (links, text, strong_length, language);

  g_assert_cmpstr (described, ==, expected);
}

static void
test_parts (void)
{
  g_autoptr (GArray) links = make_links ("01632 960123", "a@b.example");

  assert_parts (links, "", 0, NULL, "");
  assert_parts (links, "No link.", 0, NULL, "|No link.|");
  assert_parts (links, "Call 01632 960123.", 0, NULL, "|Call |[01632 960123]|.|");
  assert_parts (links, "a@b.example, 01632 960123", 0, NULL, "[a@b.example]|, |[01632 960123]");
  assert_parts (links, "01632 960123 01632 960123", 0, NULL, "[01632 960123]| |[01632 960123]");
  assert_parts (links, "Label  Text.", 7, NULL, "|Label  Text.|");
  assert_parts (links, "Label  Text.", 7, "es", "|Label  |<es:Text.>");
  assert_parts (links, "Text.", 0, "es", "<es:Text.>");
  assert_parts (links, "Label  Texto 01632 960123.", 7, "es", "|Label  |<es:Texto >[01632 960123]<es:.>");
}

/* A number within a longer one is another number. */
static void
test_within (void)
{
  g_autoptr (GArray) links = make_links ("01632 960123", "a@b.example");

  assert_parts (links, "01632 9601234", 0, NULL, "|01632 9601234|");
  assert_parts (links, "101632 960123", 0, NULL, "|101632 960123|");
  assert_parts (links, "\303\251a@b.example", 0, NULL, "|\303\251a@b.example|");
  assert_parts (links, "101632 960123, 01632 960123", 0, NULL, "|101632 960123, |[01632 960123]");
}

static void
test_none (void)
{
  g_autoptr (GArray) links = make_links ("", "");

  g_assert_cmpuint (links->len, ==, 0);
  assert_parts (links, "Call 01632 960123.", 0, NULL, "|Call 01632 960123.|");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/link/phone", test_phone);
  g_test_add_func ("/link/mail", test_mail);
  g_test_add_func ("/link/parts", test_parts);
  g_test_add_func ("/link/within", test_within);
  g_test_add_func ("/link/none", test_none);
  return g_test_run ();
}
