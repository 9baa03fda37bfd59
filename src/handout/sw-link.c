/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's telephone number and mail address as links. What cannot be dialled or written to as it stands is left
 * alone: a link that leads nowhere is worse than none. */
#include "config.h"

#include <string.h>

#include "sw-link.h"

/* ITU-T E.164 allows 15 digits; fewer than these are no clinic's number. */
#define MOST_DIGITS 15
#define FEWEST_DIGITS 5

/* A slash parts an area's code from the number there, or two numbers: "/5" or "/35" are the last digits of another
 * one, blanks around it part numbers, and so does it behind what is a number without any area's code. */
#define FEWEST_DIGITS_BEHIND_SLASH 3

static gboolean
is_separator (gunichar letter)
{
  return g_unichar_isspace (letter) || g_unichar_type (letter) == G_UNICODE_DASH_PUNCTUATION
         || (letter < 0x80 && strchr ("./()", (int) letter) != NULL);
}

/* Whether no slash of @phone, at whatever place, parts two numbers. */
static gboolean
is_one_number (const char *phone)
{
  gboolean with_code = FALSE;
  gboolean slash = FALSE;
  gunichar last = 0;
  int n_digits = 0;

  for (const char *at = phone; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      if (letter == '/')
        {
          if (g_unichar_isspace (last) || (slash && n_digits < FEWEST_DIGITS_BEHIND_SLASH)
              || (!with_code && n_digits >= FEWEST_DIGITS))
            return FALSE;
          slash = TRUE;
          n_digits = 0;
        }
      else if (last == '/' && g_unichar_isspace (letter))
        return FALSE;
      else if (g_ascii_isdigit (*at))
        {
          with_code |= *at == '0' && n_digits == 0 && !slash;
          n_digits++;
        }
      else if (*at == '+')
        with_code = TRUE;
      last = letter;
    }

  return !slash || n_digits >= FEWEST_DIGITS_BEHIND_SLASH;
}

/**
 * sw_link_dup_phone_uri:
 * @phone: a telephone number as somebody wrote it
 *
 * The number without what only parts it visually (RFC 3966, 5.1.1). "(0)" behind a country's number is not dialled
 * (ITU-T E.123, 7.2 asks not to write it) and left out.
 *
 * Returns: (transfer full) (nullable): its URI; NULL for anything but one number
 */
char *
sw_link_dup_phone_uri (const char *phone)
{
  g_autoptr (GString) uri = g_string_new ("tel:");
  gboolean international = FALSE;
  int n_digits = 0;

  if (!is_one_number (phone))
    return NULL;

  for (const char *at = phone; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      if (g_ascii_isdigit (*at))
        n_digits++;
      else if (*at == '+' && n_digits == 0 && !international)
        international = TRUE;
      else if (!is_separator (letter))
        return NULL;

      if (international && g_str_has_prefix (at, "(0)"))
        at += 2;
      else if (!is_separator (letter))
        g_string_append_c (uri, *at);
    }

  return n_digits >= FEWEST_DIGITS && n_digits <= MOST_DIGITS ? g_string_free (g_steal_pointer (&uri), FALSE) : NULL;
}

/**
 * sw_link_dup_mail_uri:
 * @address: a mail address as somebody wrote it
 *
 * Returns: (transfer full) (nullable): its URI (RFC 6068); NULL for anything but one address
 */
char *
sw_link_dup_mail_uri (const char *address)
{
  g_autofree char *escaped = NULL;

  if (!g_regex_match_simple ("^[^\\s@,;<>]+@[^\\s@,;<>]+\\.[^\\s@,;<>.]+$", address, 0, 0))
    return NULL;

  escaped = g_uri_escape_string (address, "@", FALSE);
  return g_strconcat ("mailto:", escaped, NULL);
}

static void
clear_link (gpointer data)
{
  SwLink *link = data;

  g_free (link->text);
  g_free (link->uri);
  g_free (link->spoken);
}

static void
add_link (GArray     *links,
          const char *text,
          char       *uri,
          char       *spoken)
{
  SwLink link = { g_strdup (text), uri, spoken };

  if (uri != NULL)
    g_array_append_val (links, link);
  else
    clear_link (&link);
}

/**
 * sw_links_new:
 * @phrases: words of the client's language
 * @clinic: whose number and address they are
 *
 * Returns: (transfer full) (element-type SwLink): what can be tapped
 */
GArray *
sw_links_new (SwPhrases *phrases,
              SwClinic  *clinic)
{
  const char *phone = sw_clinic_get_phone (clinic);
  const char *email = sw_clinic_get_email (clinic);
  GArray *links = g_array_new (FALSE, FALSE, sizeof (SwLink));

  g_array_set_clear_func (links, clear_link);
  add_link (links, phone, sw_link_dup_phone_uri (phone),
            sw_phrases_format (phrases, "link.phone", "phone", phone, NULL));
  add_link (links, email, sw_link_dup_mail_uri (email),
            sw_phrases_format (phrases, "link.email", "email", email, NULL));
  return links;
}

/* Whether the place is not within a longer word or number. */
static gboolean
stands_alone (const char *text,
              const char *found,
              gsize       length)
{
  const char *before = found > text ? g_utf8_prev_char (found) : NULL;

  return (before == NULL || !g_unichar_isalnum (g_utf8_get_char (before)))
         && !g_unichar_isalnum (g_utf8_get_char (found + length));
}

/**
 * sw_links_find:
 * @links: (element-type SwLink): what can be tapped
 * @text: a text, valid UTF-8
 * @from: the byte to begin at
 * @at: (out): the byte where it was found
 *
 * Returns: (transfer none) (nullable): the first one in the text
 */
const SwLink *
sw_links_find (GArray     *links,
               const char *text,
               gsize       from,
               gsize      *at)
{
  const SwLink *first = NULL;

  for (guint i = 0; i < links->len; i++)
    {
      const SwLink *link = &g_array_index (links, SwLink, i);
      gsize length = strlen (link->text);
      const char *found = strstr (text + from, link->text);

      while (found != NULL && !stands_alone (text, found, length))
        found = strstr (found + 1, link->text);
      if (found != NULL && (first == NULL || (gsize) (found - text) < *at))
        {
          first = link;
          *at = (gsize) (found - text);
        }
    }

  return first;
}
