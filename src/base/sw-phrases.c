/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chooses the handout's words by the client's language, never by the locale the program runs in: the therapist's
 * windows and the client's pages are often in different languages.
 *
 * A phrase file is a key file, UTF-8, `data/phrases/LANGUAGE.ini`. A phrase is named GROUP.KEY. In its text
 * `{name}` stands for a value filled in, `~` for a space at which no line may break. A phrase that depends on
 * a number has one key a plural form (`sets.one`, `sets.other`); which forms a language needs is told by
 * `rule` in the group `language` (see sw_plural_form()). English is the reference: any other file must have
 * the same phrases. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-data-dir.h"
#include "sw-phrases.h"
#include "sw-units.h"

#define REFERENCE_LANGUAGE "en"

G_DEFINE_QUARK (sw-phrases-error-quark, sw_phrases_error)

struct _SwPhrases
{
  gatomicrefcount ref_count;
  char *language;
  char *rule;
  GHashTable *texts;
};

typedef struct
{
  const char *rule;
  const char *forms[5];
} PluralRule;

/* Categories and their names as in the Unicode CLDR plural rules for whole numbers. */
static const PluralRule plural_rules[] = {
  { "none", { "other", NULL } },
  { "one", { "one", "other", NULL } },
  { "zero-and-one", { "one", "other", NULL } },
  { "east-slavic", { "one", "few", "many", NULL } },
  { "polish", { "one", "few", "many", NULL } },
  { "czech", { "one", "few", "other", NULL } },
};

static const PluralRule *
find_rule (const char *rule)
{
  for (guint i = 0; i < G_N_ELEMENTS (plural_rules); i++)
    if (g_strcmp0 (plural_rules[i].rule, rule) == 0)
      return &plural_rules[i];

  return NULL;
}

/**
 * sw_plural_forms:
 * @rule: a plural rule
 *
 * Returns: (array zero-terminated=1) (nullable): the forms a language with that rule needs; %NULL for an
 *   unknown rule
 */
const char * const *
sw_plural_forms (const char *rule)
{
  const PluralRule *found = find_rule (rule);

  return found != NULL ? (const char * const *) found->forms : NULL;
}

static gboolean
ends_in_2_to_4 (int n)
{
  return n % 10 >= 2 && n % 10 <= 4 && (n % 100 < 12 || n % 100 > 14);
}

/**
 * sw_plural_form:
 * @rule: "none", "one", "zero-and-one", "east-slavic", "polish" or "czech"
 * @n: a whole number, not negative
 *
 * Which form of a phrase goes with a number. Source: Unicode CLDR plural rules, restricted to whole numbers
 * ("one": English, German, Spanish...; "zero-and-one": French; "east-slavic": Russian, Ukrainian).
 *
 * Returns: "one", "few", "many" or "other"
 */
const char *
sw_plural_form (const char *rule,
                int         n)
{
  if (g_strcmp0 (rule, "one") == 0)
    return n == 1 ? "one" : "other";
  if (g_strcmp0 (rule, "zero-and-one") == 0)
    return n <= 1 ? "one" : "other";
  if (g_strcmp0 (rule, "czech") == 0)
    return n == 1 ? "one" : (n >= 2 && n <= 4 ? "few" : "other");
  if (g_strcmp0 (rule, "polish") == 0)
    return n == 1 ? "one" : (ends_in_2_to_4 (n) ? "few" : "many");
  if (g_strcmp0 (rule, "east-slavic") == 0)
    return n % 10 == 1 && n % 100 != 11 ? "one" : (ends_in_2_to_4 (n) ? "few" : "many");

  return "other";
}

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
  if (self->language == NULL || find_rule (self->rule) == NULL)
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
  static const char *const forms[] = { ".one", ".few", ".many", ".other" };

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
        return sw_phrases_new_from_file (path, error);
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

/* Fills in {name}; a name that is not among the pairs takes @n when it is "n", and else stays as it is. */
static char *
fill_in (const char *text,
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
          g_string_append (out, value);
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
  text = fill_in (sw_phrases_get (self, key), NULL, pairs);
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
  text = fill_in (sw_phrases_get (self, full_key), digits, pairs);
  va_end (pairs);

  return text;
}

/**
 * sw_phrases_number:
 * @value: a finite number
 * @max_decimals: most digits behind the decimal sign, 0..6
 *
 * Returns: (transfer full): the number with the language's decimal sign, without needless zeros
 */
char *
sw_phrases_number (SwPhrases *self,
                   double     value,
                   int        max_decimals)
{
  g_autofree char *text = sw_number_to_string (value, max_decimals);
  g_auto (GStrv) parts = g_strsplit (text, ".", 2);

  return g_strjoinv (sw_phrases_get (self, "number.decimal"), parts);
}

/**
 * sw_phrases_range:
 *
 * Returns: (transfer full): "8 to 12", or just "12" when both are the same
 */
char *
sw_phrases_range (SwPhrases *self,
                  int        low,
                  int        high)
{
  g_autofree char *low_text = g_strdup_printf ("%d", low);
  g_autofree char *high_text = g_strdup_printf ("%d", high);

  if (low == high)
    return g_steal_pointer (&high_text);

  return sw_phrases_format (self, "number.range", "low", low_text, "high", high_text, NULL);
}

/**
 * sw_phrases_time:
 * @seconds: 0 or more
 *
 * Returns: (transfer full): "45 seconds"; from two minutes on, whole minutes are told as minutes
 */
char *
sw_phrases_time (SwPhrases *self,
                 int        seconds)
{
  if (seconds >= 120 && seconds % 60 == 0)
    return sw_phrases_count (self, "time.minutes", seconds / 60, NULL);

  return sw_phrases_count (self, "time.seconds", seconds, NULL);
}

/**
 * sw_phrases_date:
 * @iso_day: a day as YYYY-MM-DD
 *
 * Returns: (transfer full): the day in words of the language; @iso_day itself when it is no such day
 */
char *
sw_phrases_date (SwPhrases  *self,
                 const char *iso_day)
{
  g_autofree char *stamp = g_strconcat (iso_day, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) moment = g_date_time_new_from_iso8601 (stamp, NULL);
  g_autofree char *month_key = NULL;
  g_autofree char *day = NULL;
  g_autofree char *year = NULL;

  if (moment == NULL)
    return g_strdup (iso_day);

  month_key = g_strdup_printf ("month.%d", g_date_time_get_month (moment));
  day = g_strdup_printf ("%d", g_date_time_get_day_of_month (moment));
  year = g_strdup_printf ("%d", g_date_time_get_year (moment));
  return sw_phrases_format (self, "date.day", "day", day, "month", sw_phrases_get (self, month_key), "year", year,
                            NULL);
}

/**
 * sw_phrases_list:
 * @words: (array zero-terminated=1): words or phrases
 *
 * Returns: (transfer full): "a", "a and b", "a, b and c"; "" for none
 */
char *
sw_phrases_list (SwPhrases          *self,
                 const char * const *words)
{
  guint n = g_strv_length ((char **) words);
  g_autofree char *text = g_strdup (n > 0 ? words[0] : "");

  for (guint i = 1; i < n; i++)
    {
      char *longer = sw_phrases_format (self, i + 1 == n ? "list.last" : "list.next", "before", text, "word",
                                        words[i], NULL);

      g_free (text);
      text = longer;
    }

  return g_steal_pointer (&text);
}
