/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How many syllables a word has, by the rules of its language. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

guint sw_syllables_count_english (const char *word);
guint sw_syllables_count_spanish (const char *word);
guint sw_syllables_count_german (const char *word);

/* For the files of the languages. */
guint sw_syllables_count_parts (const char  *word,
                                guint      (*count_part) (const char *part));
GRegex *sw_syllables_get_regex (GRegex     **place,
                                const char  *pattern);
int sw_syllables_count_matches (GRegex     *regex,
                                const char *word);

G_END_DECLS
