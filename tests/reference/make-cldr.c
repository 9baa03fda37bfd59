/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * make-cldr LANGUAGE...: writes what Unicode CLDR, through ICU, says of languages, as the table cldr.csv. */
#include "config.h"

#include <stdio.h>
#include <stdlib.h>

#include <glib.h>
#include <unicode/udat.h>
#include <unicode/uformattedvalue.h>
#include <unicode/ulistformatter.h>
#include <unicode/unumberformatter.h>
#include <unicode/unumberrangeformatter.h>
#include <unicode/upluralrules.h>
#include <unicode/ustring.h>
#include <unicode/uversion.h>

#define HIGHEST_NUMBER 200
#define HIGHEST_OF_RANGE 30
#define LONGEST 256

static const char *const forms[] = { "zero", "one", "two", "few", "many", "other" };

static void
check (UErrorCode  status,
       const char *what)
{
  if (U_FAILURE (status))
    {
      g_printerr ("%s: %s\n", what, u_errorName (status));
      exit (1);
    }
}

static char *
to_utf8 (const UChar *text,
         int32_t      length)
{
  return g_utf16_to_utf8 ((const gunichar2 *) text, length, NULL, NULL, NULL);
}

static char *
dup_form (const UPluralRules *rules,
          int                 n)
{
  UErrorCode status = U_ZERO_ERROR;
  UChar text[LONGEST];
  int32_t length = uplrules_select (rules, n, text, LONGEST, &status);

  check (status, "plural");
  return to_utf8 (text, length);
}

/* The numbers of each form, as runs. */
static void
write_plurals (const char         *language,
               const UPluralRules *rules)
{
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autoptr (GString) runs = g_string_new (NULL);
      int first = -1;

      for (int n = 0; n <= HIGHEST_NUMBER + 1; n++)
        {
          g_autofree char *form = n <= HIGHEST_NUMBER ? dup_form (rules, n) : NULL;
          gboolean same = g_strcmp0 (form, forms[i]) == 0;

          if (same && first < 0)
            first = n;
          if (same || first < 0)
            continue;
          g_string_append_printf (runs, "%s%d-%d", runs->len > 0 ? " " : "", first, n - 1);
          first = -1;
        }
      if (runs->len > 0)
        printf ("plural|%s|%s|%s\n", language, forms[i], runs->str);
    }
}

static char *
dup_range_form (const UPluralRules     *rules,
                UNumberRangeFormatter  *formatter,
                int                     low,
                int                     high)
{
  UErrorCode status = U_ZERO_ERROR;
  UFormattedNumberRange *range = unumrf_openResult (&status);
  UChar text[LONGEST];
  int32_t length;

  unumrf_formatDoubleRange (formatter, low, high, range, &status);
  length = uplrules_selectForRange (rules, range, text, LONGEST, &status);
  check (status, "range");
  unumrf_closeResult (range);
  return to_utf8 (text, length);
}

/* Ranges whose form is not that of their last number. */
static void
write_ranges (const char         *language,
              const UPluralRules *rules)
{
  UErrorCode status = U_ZERO_ERROR;
  UNumberRangeFormatter *formatter = unumrf_openForSkeletonWithCollapseAndIdentityFallback (
      u"", 0, UNUM_RANGE_COLLAPSE_NONE, UNUM_IDENTITY_FALLBACK_RANGE, language, NULL, &status);
  g_autoptr (GString) pairs = g_string_new (NULL);

  check (status, "range");
  for (int low = 1; low < HIGHEST_OF_RANGE; low++)
    for (int high = low + 1; high <= HIGHEST_OF_RANGE; high++)
      {
        g_autofree char *form = dup_range_form (rules, formatter, low, high);
        g_autofree char *last = dup_form (rules, high);

        if (!g_str_equal (form, last))
          g_string_append_printf (pairs, "%s%d-%d %s", pairs->len > 0 ? ", " : "", low, high, form);
      }
  printf ("range-unlike-last|%s||%s\n", language, pairs->str);
  unumrf_close (formatter);
}

static void
write_symbols (const char        *what,
               const char        *language,
               const UDateFormat *dates,
               UDateFormatSymbolType type,
               int                first)
{
  UErrorCode status = U_ZERO_ERROR;

  for (int i = first; i < udat_countSymbols (dates, type); i++)
    {
      UChar text[LONGEST];
      int32_t length = udat_getSymbols (dates, type, i, text, LONGEST, &status);
      g_autofree char *name = to_utf8 (text, length);

      check (status, what);
      printf ("%s|%s|%d|%s\n", what, language, i - first + 1, name);
    }
}

static void
write_dates (const char *language)
{
  static const struct
  {
    const char *day;
    double milliseconds;
  } days[] = { { "2026-02-03", 1770076800e3 }, { "2026-11-20", 1795132800e3 } };
  UErrorCode status = U_ZERO_ERROR;
  UDateFormat *dates = udat_open (UDAT_NONE, UDAT_LONG, language, u"UTC", 3, NULL, 0, &status);

  check (status, "dates");
  write_symbols ("month", language, dates, UDAT_MONTHS, 0);
  write_symbols ("day", language, dates, UDAT_STANDALONE_WEEKDAYS, 1);
  write_symbols ("day-short", language, dates, UDAT_STANDALONE_SHORT_WEEKDAYS, 1);
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      UChar text[LONGEST];
      int32_t length = udat_format (dates, days[i].milliseconds, text, LONGEST, NULL, &status);
      g_autofree char *date = to_utf8 (text, length);

      check (status, "date");
      printf ("date|%s|%s|%s\n", language, days[i].day, date);
    }
  udat_close (dates);
}

static void
write_number (const char *language)
{
  UErrorCode status = U_ZERO_ERROR;
  UNumberFormatter *formatter = unumf_openForSkeletonAndLocale (u"", 0, language, &status);
  UFormattedNumber *number = unumf_openResult (&status);
  UChar text[LONGEST];
  int32_t length;
  g_autofree char *told = NULL;

  unumf_formatDouble (formatter, -2.5, number, &status);
  length = unumf_resultToString (number, text, LONGEST, &status);
  check (status, "number");
  told = to_utf8 (text, length);
  printf ("number|%s|-2.5|%s\n", language, told);
  unumf_closeResult (number);
  unumf_close (formatter);
}

static void
write_list (const char *language)
{
  static const UChar *const words[] = { u"A", u"B", u"C", u"D" };
  UErrorCode status = U_ZERO_ERROR;
  UListFormatter *lists = ulistfmt_open (language, &status);

  for (int n = 2; n <= 4; n += 2)
    {
      UChar text[LONGEST];
      int32_t length = ulistfmt_format (lists, (const UChar *const *) words, NULL, n, text, LONGEST, &status);
      g_autofree char *list = to_utf8 (text, length);

      check (status, "list");
      printf ("list|%s|%d|%s\n", language, n, list);
    }
  ulistfmt_close (lists);
}

int
main (int    argc,
      char **argv)
{
  printf ("# What languages do with numbers, days and lists. Source: Unicode CLDR as in ICU %s, which wrote this table\n"
          "# (build/tests/reference/make-cldr; for ar as ar-u-nu-latn). plural: the numbers of 0 to %d with each form;\n"
          "# range-unlike-last: ranges of 1 to %d whose form is not that of their last number; day 1 is Sunday.\n",
          U_ICU_VERSION, HIGHEST_NUMBER, HIGHEST_OF_RANGE);
  for (int i = 1; i < argc; i++)
    {
      UErrorCode status = U_ZERO_ERROR;
      UPluralRules *rules = uplrules_open (argv[i], &status);

      check (status, argv[i]);
      write_plurals (argv[i], rules);
      write_ranges (argv[i], rules);
      write_dates (argv[i]);
      write_number (argv[i]);
      write_list (argv[i]);
      uplrules_close (rules);
    }
  return 0;
}
