/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which form of a word goes with a number. Source: Unicode CLDR, language plural rules, cardinal, restricted to whole
 * numbers below a million; the handout counts nothing else. tests/reference/cldr.csv checks them. */
#include "config.h"

#include "sw-plural.h"

typedef struct
{
  const char *rule;
  const char *forms[7];
} PluralRule;

/* Forms are named as in CLDR and told in its order. */
static const PluralRule plural_rules[] = {
  { "none", { "other", NULL } },
  { "one", { "one", "other", NULL } },
  { "zero-and-one", { "one", "other", NULL } },
  { "east-slavic", { "one", "few", "many", NULL } },
  { "polish", { "one", "few", "many", NULL } },
  { "czech", { "one", "few", "other", NULL } },
  { "hebrew", { "one", "two", "other", NULL } },
  { "arabic", { "zero", "one", "two", "few", "many", "other", NULL } },
};

/**
 * sw_plural_forms:
 * @rule: (nullable): a plural rule
 *
 * Returns: (array zero-terminated=1) (nullable): the forms a language with that rule needs; %NULL for an
 *   unknown rule
 */
const char * const *
sw_plural_forms (const char *rule)
{
  for (guint i = 0; i < G_N_ELEMENTS (plural_rules); i++)
    if (g_strcmp0 (plural_rules[i].rule, rule) == 0)
      return (const char * const *) plural_rules[i].forms;

  return NULL;
}

static gboolean
ends_in_2_to_4 (int n)
{
  return n % 10 >= 2 && n % 10 <= 4 && (n % 100 < 12 || n % 100 > 14);
}

static const char *
arabic_form (int n)
{
  if (n <= 2)
    return n == 0 ? "zero" : n == 1 ? "one" : "two";
  if (n % 100 >= 3)
    return n % 100 <= 10 ? "few" : "many";

  return "other";
}

/**
 * sw_plural_form:
 * @rule: "none" (Chinese, Japanese), "one" (English, German, Spanish), "zero-and-one" (French, Hindi),
 *   "east-slavic" (Russian, Ukrainian), "polish", "czech", "hebrew" or "arabic"
 * @n: a whole number, not negative
 *
 * Returns: "zero", "one", "two", "few", "many" or "other"
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
  if (g_strcmp0 (rule, "hebrew") == 0)
    return n == 1 ? "one" : (n == 2 ? "two" : "other");
  if (g_strcmp0 (rule, "arabic") == 0)
    return arabic_form (n);

  return "other";
}

/**
 * sw_plural_range_form:
 * @rule: a plural rule
 * @low: 1 or more
 * @high: not less than @low
 *
 * Which form goes with "8 to 12": that of the last number, but for "1 to 2" in languages with a form for two, whose
 * word may stand without its number. Source: Unicode CLDR, plural ranges.
 *
 * Returns: the form
 */
const char *
sw_plural_range_form (const char *rule,
                      int         low,
                      int         high)
{
  const char *form = sw_plural_form (rule, high);

  return low < high && g_str_equal (form, "two") ? "other" : form;
}
