/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chooses the handout's words by the client's language, never by the locale the program runs in: the therapist's
 * windows and the client's pages are often in different languages.
 *
 * A phrase file is a key file, UTF-8, `data/phrases/LANGUAGE.ini`. A phrase is named GROUP.KEY. In its text
 * `{name}` stands for a value filled in, `~` for a space at which no line may break. A phrase that depends on
 * a number has one key a plural form (`sets.one`, `sets.other`); which forms a language needs is told by
 * `rule` in the group `language` (see sw_plural_form()). English is the reference: any other file must have
 * the same phrases. Besides, the group `language` may say `direction=rtl`, and in `not-for` list tags that are
 * written otherwise and must not fall back to the file (zh-Hant to zh). */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-data-dir.h"
#include "sw-phrases.h"
#include "sw-plural.h"

#define REFERENCE_LANGUAGE "en"
#define FIRST_STRONG_ISOLATE "\342\201\250"
#define POP_DIRECTIONAL_ISOLATE "\342\201\251"

G_DEFINE_QUARK (sw-phrases-error-quark, sw_phrases_error)

struct _SwPhrases
{
  gatomicrefcount ref_count;
  char *language;
  char *rule;
  gboolean right_to_left;
  GHashTable *texts;
};

static char *
with_no_break_spaces (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "~", -1);

  return g_strjoinv ("\302\240", parts);
}

static SwPhrases *
read_file (const char  *path,
           GError     **error)
{
  g_autoptr (SwPhrases) self = g_new0 (SwPhrases, 1);
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autoptr (GError) cause = NULL;
  g_auto (GStrv) groups = NULL;

  g_atomic_ref_count_init (&self->ref_count);
  self->texts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  if (!g_key_file_load_from_file (file, path, G_KEY_FILE_NONE, &cause))
    {
      g_set_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE,
                   _("The handout phrases “%s” cannot be read: %s. Install the program again, or mend the file."),
                   path, cause->message);
      return NULL;
    }

  groups = g_key_file_get_groups (file, NULL);
  for (guint i = 0; groups[i] != NULL; i++)
    {
      g_auto (GStrv) keys = g_key_file_get_keys (file, groups[i], NULL, NULL);

      for (guint j = 0; keys != NULL && keys[j] != NULL; j++)
        {
          g_autofree char *text = g_key_file_get_string (file, groups[i], keys[j], NULL);

          if (text != NULL)
            g_hash_table_insert (self->texts, g_strconcat (groups[i], ".", keys[j], NULL),
                                 with_no_break_spaces (text));
        }
    }

  self->language = g_strdup (g_hash_table_lookup (self->texts, "language.code"));
  self->rule = g_strdup (g_hash_table_lookup (self->texts, "language.rule"));
  self->right_to_left = g_strcmp0 (g_hash_table_lookup (self->texts, "language.direction"), "rtl") == 0;
  if (self->language == NULL || sw_plural_forms (self->rule) == NULL)
    {
      g_set_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE,
                   _("The handout phrases “%s” do not say their language and a known plural rule. "
                     "Add “code” and “rule” to the group “language”."),
                   path);
      return NULL;
    }

  return g_steal_pointer (&self);
}

/* The key without a plural form at its end, or NULL when it has none. */
static char *
dup_plural_stem (const char *key)
{
  static const char *const forms[] = { ".zero", ".one", ".two", ".few", ".many", ".other" };

  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    if (g_str_has_suffix (key, forms[i]))
      return g_strndup (key, strlen (key) - strlen (forms[i]));

  return NULL;
}

static char *
dup_missing_key (SwPhrases  *self,
                 const char *reference_key)
{
  g_autofree char *stem = dup_plural_stem (reference_key);
  const char *const *forms = sw_plural_forms (self->rule);

  if (stem == NULL)
    return sw_phrases_has (self, reference_key) ? NULL : g_strdup (reference_key);

  for (guint i = 0; forms[i] != NULL; i++)
    {
      g_autofree char *key = g_strconcat (stem, ".", forms[i], NULL);

      if (!sw_phrases_has (self, key))
        return g_steal_pointer (&key);
    }

  return NULL;
}

static gboolean
check_complete (SwPhrases  *self,
                const char *path,
                GError    **error)
{
  g_autofree char *reference_path = sw_data_path ("phrases", REFERENCE_LANGUAGE ".ini", NULL);
  g_autoptr (SwPhrases) reference = read_file (reference_path, error);
  g_auto (GStrv) keys = NULL;

  if (reference == NULL)
    return FALSE;

  keys = sw_phrases_dup_keys (reference);
  for (guint i = 0; keys[i] != NULL; i++)
    {
      g_autofree char *missing = dup_missing_key (self, keys[i]);

      if (missing != NULL)
        {
          g_set_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE,
                       _("The handout phrases “%s” lack “%s”. Choose another language for the client, or add "
                         "it."),
                       path, missing);
          return FALSE;
        }
    }

  return TRUE;
}

/**
 * sw_phrases_new_from_file:
 * @path: a phrase file
 * @error: return location for an error of the domain %SW_PHRASES_ERROR
 *
 * Reads a phrase file and checks that it has every phrase of the reference language, in all plural forms.
 *
 * Returns: (transfer full) (nullable): the phrases
 */
SwPhrases *
sw_phrases_new_from_file (const char  *path,
                          GError     **error)
{
  g_autoptr (SwPhrases) self = read_file (path, error);

  if (self == NULL)
    return NULL;
  if (strcmp (self->language, REFERENCE_LANGUAGE) != 0 && !check_complete (self, path, error))
    return NULL;

  return g_steal_pointer (&self);
}

/* A language tag comes out of a document and becomes part of a file name: letters, digits and hyphens only. */
static gboolean
is_plain_tag (const char *language)
{
  return *language != '\0' && strlen (language) < 36
         && strspn (language, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") == strlen (language);
}

/* Whether the file says that it is not for that language. */
static gboolean
is_not_for (SwPhrases  *self,
            const char *language)
{
  const char *listed = g_hash_table_lookup (self->texts, "language.not-for");
  g_auto (GStrv) tags = g_strsplit (listed != NULL ? listed : "", " ", -1);

  for (guint i = 0; tags[i] != NULL; i++)
    {
      gsize length = strlen (tags[i]);

      if (length > 0 && g_ascii_strncasecmp (tags[i], language, length) == 0
          && (language[length] == '\0' || language[length] == '-'))
        return TRUE;
    }

  return FALSE;
}

/**
 * sw_phrases_new:
 * @language: BCP 47 tag; subtags are dropped from the right until a file fits ("en-GB" finds "en")
 * @error: return location for %SW_PHRASES_ERROR_LANGUAGE
 *
 * Returns: (transfer full) (nullable): the phrases of the language
 */
SwPhrases *
sw_phrases_new (const char  *language,
                GError     **error)
{
  g_autofree char *tag = g_strdup (language != NULL ? language : "");

  while (is_plain_tag (tag))
    {
      g_autofree char *lower = g_ascii_strdown (tag, -1);
      g_autofree char *name = g_strconcat (lower, ".ini", NULL);
      g_autofree char *path = sw_data_path ("phrases", name, NULL);
      char *hyphen = strrchr (tag, '-');

      if (g_file_test (path, G_FILE_TEST_IS_REGULAR))
        {
          g_autoptr (SwPhrases) self = sw_phrases_new_from_file (path, error);

          if (self == NULL || !is_not_for (self, language))
            return g_steal_pointer (&self);
          break;
        }
      if (hyphen == NULL)
        break;
      *hyphen = '\0';
    }

  g_set_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE,
               _("There are no handout phrases for the language “%s”. Choose another language for the client, "
                 "such as English (en)."),
               language != NULL ? language : "");
  return NULL;
}

/**
 * sw_phrases_list_languages:
 *
 * Returns: (transfer full) (array zero-terminated=1): the languages that there are phrases for, by the names of their
 *   files; in no order
 */
char **
sw_phrases_list_languages (void)
{
  g_autofree char *folder = sw_data_path ("phrases", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (const char *name = dir != NULL ? g_dir_read_name (dir) : NULL; name != NULL; name = g_dir_read_name (dir))
    if (g_str_has_suffix (name, ".ini"))
      {
        g_autofree char *language = g_strndup (name, strlen (name) - strlen (".ini"));

        g_strv_builder_add (builder, language);
      }

  return g_strv_builder_end (builder);
}

SwPhrases *
sw_phrases_ref (SwPhrases *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
sw_phrases_unref (SwPhrases *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;

  g_hash_table_unref (self->texts);
  g_free (self->language);
  g_free (self->rule);
  g_free (self);
}

/**
 * sw_phrases_get_language:
 *
 * Returns: (transfer none): the BCP 47 tag the phrase file states
 */
const char *
sw_phrases_get_language (SwPhrases *self)
{
  return self->language;
}

/**
 * sw_phrases_is_right_to_left:
 *
 * Returns: whether lines of the language run from the right
 */
gboolean
sw_phrases_is_right_to_left (SwPhrases *self)
{
  return self->right_to_left;
}

gboolean
sw_phrases_has (SwPhrases  *self,
                const char *key)
{
  return g_hash_table_contains (self->texts, key);
}

/**
 * sw_phrases_dup_keys:
 *
 * Returns: (transfer full) (array zero-terminated=1): all keys, sorted
 */
char **
sw_phrases_dup_keys (SwPhrases *self)
{
  g_autoptr (GList) keys = g_list_sort (g_hash_table_get_keys (self->texts), (GCompareFunc) strcmp);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (GList *key = keys; key != NULL; key = key->next)
    g_strv_builder_add (builder, key->data);

  return g_strv_builder_end (builder);
}

/**
 * sw_phrases_get:
 * @key: GROUP.KEY of a phrase; that it exists is our own promise, kept by a test
 *
 * Returns: (transfer none): the text
 */
const char *
sw_phrases_get (SwPhrases  *self,
                const char *key)
{
  const char *text = g_hash_table_lookup (self->texts, key);

  g_return_val_if_fail (text != NULL, key);
  return text;
}

static const char *
find_value (const char *name,
            gsize       name_length,
            va_list     pairs)
{
  const char *value = NULL;
  va_list rest;

  va_copy (rest, pairs);
  for (const char *key = va_arg (rest, const char *); key != NULL; key = va_arg (rest, const char *))
    {
      const char *candidate = va_arg (rest, const char *);

      if (strlen (key) == name_length && strncmp (key, name, name_length) == 0)
        {
          value = candidate;
          break;
        }
    }
  va_end (rest);

  return value;
}

/* In a line from right to left a telephone number or a foreign name would come out with its parts swapped; isolated,
 * it stays as it is. Words of the language itself and bare numbers need no help. */
static void
append_value (SwPhrases  *self,
              const char *value,
              GString    *out)
{
  gboolean apart = self->right_to_left && strspn (value, "0123456789") < strlen (value);

  for (const char *c = value; apart && *c != '\0'; c = g_utf8_next_char (c))
    {
      GUnicodeScript script = g_unichar_get_script (g_utf8_get_char (c));

      apart = script != G_UNICODE_SCRIPT_ARABIC && script != G_UNICODE_SCRIPT_HEBREW;
    }

  if (apart)
    g_string_append (out, FIRST_STRONG_ISOLATE);
  g_string_append (out, value);
  if (apart)
    g_string_append (out, POP_DIRECTIONAL_ISOLATE);
}

/* Fills in {name}; a name that is not among the pairs takes @n when it is "n", and else stays as it is. */
static char *
fill_in (SwPhrases  *self,
         const char *text,
         const char *n,
         va_list     pairs)
{
  GString *out = g_string_new (NULL);

  while (*text != '\0')
    {
      const char *end = *text == '{' ? strchr (text, '}') : NULL;
      const char *value = NULL;

      if (end != NULL)
        value = find_value (text + 1, (gsize) (end - text - 1), pairs);
      if (end != NULL && value == NULL && n != NULL && strncmp (text, "{n}", 3) == 0)
        value = n;

      if (value != NULL)
        {
          append_value (self, value, out);
          text = end + 1;
        }
      else
        g_string_append_c (out, *text++);
    }

  return g_string_free (out, FALSE);
}

/**
 * sw_phrases_format:
 * @key: GROUP.KEY of a phrase
 * @...: names and values (strings) to fill in, then %NULL
 *
 * Returns: (transfer full): the text with `{name}` replaced
 */
char *
sw_phrases_format (SwPhrases  *self,
                   const char *key,
                   ...)
{
  va_list pairs;
  char *text;

  va_start (pairs, key);
  text = fill_in (self, sw_phrases_get (self, key), NULL, pairs);
  va_end (pairs);

  return text;
}

/**
 * sw_phrases_count:
 * @key: GROUP.KEY of a phrase with plural forms, without the form
 * @n: the number that decides the form; fills in `{n}` unless the pairs do
 * @...: names and values (strings) to fill in, then %NULL
 *
 * Returns: (transfer full): the text in the right plural form
 */
char *
sw_phrases_count (SwPhrases  *self,
                  const char *key,
                  int         n,
                  ...)
{
  g_autofree char *full_key = g_strconcat (key, ".", sw_plural_form (self->rule, n), NULL);
  g_autofree char *digits = g_strdup_printf ("%d", n);
  va_list pairs;
  char *text;

  va_start (pairs, n);
  text = fill_in (self, sw_phrases_get (self, full_key), digits, pairs);
  va_end (pairs);

  return text;
}

/**
 * sw_phrases_count_range:
 * @key: GROUP.KEY of a phrase with plural forms, without the form
 * @low: 1 or more
 * @high: not less than @low
 * @...: names and values (strings) to fill in, then %NULL
 *
 * Returns: (transfer full): the text in the plural form that goes with "8 to 12", which fills in `{n}`
 */
char *
sw_phrases_count_range (SwPhrases  *self,
                        const char *key,
                        int         low,
                        int         high,
                        ...)
{
  g_autofree char *full_key = g_strconcat (key, ".", sw_plural_range_form (self->rule, low, high), NULL);
  g_autofree char *range = sw_phrases_range (self, low, high);
  va_list pairs;
  char *text;

  va_start (pairs, high);
  text = fill_in (self, sw_phrases_get (self, full_key), range, pairs);
  va_end (pairs);

  return text;
}
