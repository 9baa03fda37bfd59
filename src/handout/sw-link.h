/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-phrases.h"
#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwLink:
 * @text: as it is printed
 * @uri: where it leads
 * @spoken: what is said of it
 *
 * A number or an address that can be tapped wherever it is printed.
 */
typedef struct
{
  char *text;
  char *uri;
  char *spoken;
} SwLink;

GArray *sw_links_new (SwPhrases *phrases,
                      SwClinic  *clinic);
const SwLink *sw_links_find (GArray     *links,
                             const char *text,
                             gsize       from,
                             gsize      *at);
char *sw_link_dup_phone_uri (const char *phone);
char *sw_link_dup_mail_uri (const char *address);

G_END_DECLS
