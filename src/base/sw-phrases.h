/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define SW_PHRASES_ERROR (sw_phrases_error_quark ())

/**
 * SwPhrasesError:
 * @SW_PHRASES_ERROR_LANGUAGE: there are no phrases for the language, or not all
 */
typedef enum
{
  SW_PHRASES_ERROR_LANGUAGE,
} SwPhrasesError;

GQuark sw_phrases_error_quark (void);

/**
 * SwPhrases:
 *
 * The words for clients in one language, read from `data/phrases/LANGUAGE.ini`. Immutable after loading
 * and therefore free to share between threads. The file format is described in sw-phrases.c.
 */
typedef struct _SwPhrases SwPhrases;

SwPhrases *sw_phrases_new (const char  *language,
                           GError     **error);
SwPhrases *sw_phrases_new_from_file (const char  *path,
                                     GError     **error);
char **sw_phrases_list_languages (void);
SwPhrases *sw_phrases_ref (SwPhrases *self);
void sw_phrases_unref (SwPhrases *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwPhrases, sw_phrases_unref)

const char *sw_phrases_get_language (SwPhrases *self);
gboolean sw_phrases_is_right_to_left (SwPhrases *self);
gboolean sw_phrases_has (SwPhrases  *self,
                         const char *key);
const char *sw_phrases_get (SwPhrases  *self,
                            const char *key);
char *sw_phrases_format (SwPhrases  *self,
                         const char *key,
                         ...) G_GNUC_NULL_TERMINATED;
char *sw_phrases_count (SwPhrases  *self,
                        const char *key,
                        int         n,
                        ...) G_GNUC_NULL_TERMINATED;
char *sw_phrases_number (SwPhrases *self,
                         double     value,
                         int        max_decimals);
char *sw_phrases_range (SwPhrases *self,
                        int        low,
                        int        high);
char *sw_phrases_count_range (SwPhrases  *self,
                              const char *key,
                              int         low,
                              int         high,
                              ...) G_GNUC_NULL_TERMINATED;
char *sw_phrases_time (SwPhrases *self,
                       int        seconds);
char *sw_phrases_date (SwPhrases  *self,
                       const char *iso_day);
char *sw_phrases_list (SwPhrases          *self,
                       const char * const *words);
char *sw_phrases_sentences (SwPhrases          *self,
                            const char * const *sentences);
char *sw_phrases_capitalise (const char *text);

char **sw_phrases_dup_keys (SwPhrases *self);

G_END_DECLS
