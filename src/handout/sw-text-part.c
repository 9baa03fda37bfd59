/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Divides a text where a link begins or ends and where its language changes. */
#include "config.h"

#include <string.h>

#include "sw-text-part.h"

static void
add_part (GArray       *parts,
          gsize         start,
          gsize         end,
          const SwLink *link,
          const char   *language)
{
  SwTextPart part = { (int) start, (int) end, link, link == NULL ? language : NULL };

  if (start < end)
    g_array_append_val (parts, part);
}

/* Divides what is in one language. */
static void
add_language (GArray     *parts,
              GArray     *links,
              const char *text,
              gsize       start,
              gsize       end,
              const char *language)
{
  const SwLink *link;
  gsize at;

  while ((link = sw_links_find (links, text, start, &at)) != NULL && at + strlen (link->text) <= end)
    {
      add_part (parts, start, at, NULL, language);
      add_part (parts, at, at + strlen (link->text), link, language);
      start = at + strlen (link->text);
    }
  add_part (parts, start, end, NULL, language);
}

/**
 * sw_text_parts_new:
 * @links: (element-type SwLink): what can be tapped
 * @text: a text, valid UTF-8
 * @strong_length: how many of its bytes are words of the document that stand before it
 * @language: (nullable): BCP 47 tag of the rest when it is not the document's language; interned
 *
 * Returns: (transfer full) (element-type SwTextPart): the parts, one after another; none of an empty text
 */
GArray *
sw_text_parts_new (GArray     *links,
                   const char *text,
                   gsize       strong_length,
                   const char *language)
{
  GArray *parts = g_array_new (FALSE, FALSE, sizeof (SwTextPart));
  gsize own = language != NULL ? strong_length : 0;

  add_language (parts, links, text, 0, own, NULL);
  add_language (parts, links, text, own, strlen (text), language);
  return parts;
}
