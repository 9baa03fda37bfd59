/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For this layer's own files: a word as search compares it. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define SW_WORD_MAX_LETTERS 31

/**
 * SwWord:
 * @letters: small letters and digits without accents, ended by 0
 * @n_letters: how many
 * @signature: which letters occur, modulo 32
 */
typedef struct
{
  gunichar letters[SW_WORD_MAX_LETTERS + 1];
  guint n_letters;
  guint32 signature;
} SwWord;

guint sw_word_hash (gconstpointer key);
int sw_word_compare (const SwWord *a,
                     const SwWord *b);
gboolean sw_word_equal (gconstpointer a,
                        gconstpointer b);
gboolean sw_word_take (const char **text,
                       SwWord      *word);
void sw_word_drop_plural (SwWord *word);
guint sw_word_get_allowed_errors (const SwWord *word);
gboolean sw_word_is_within (const SwWord *typed,
                            const SwWord *word,
                            guint         limit,
                            gboolean      as_beginning);

G_END_DECLS
