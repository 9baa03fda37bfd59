/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rules of progress as data: what a therapist reads, and which numbers he or she may change. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-progress-rule.h"

static const SwProgressRule rules[] = {
  { SW_PROGRESS_RULE_PAIN,
    N_("Pain over {pain-limit} of 10 during or after the exercise, or over the limit its dose states"),
    N_("A load at least {ease-percent} % lighter; without a load fewer sets or repetitions, or an easier exercise"),
    N_("Thomee 1997; Silbernagel and others, Am J Sports Med 2007;35:897-906. How much lighter is common practice"),
    { "pain-limit", "ease-percent", NULL } },
  { SW_PROGRESS_RULE_UNSETTLED,
    N_("Pain not back to the usual by the next morning, that is within 24 hours"),
    N_("A load at least {ease-percent} % lighter; without a load fewer sets or repetitions, or an easier exercise"),
    N_("Silbernagel and others, Am J Sports Med 2007;35:897-906. How much lighter is common practice"),
    { "ease-percent", NULL } },
  { SW_PROGRESS_RULE_CONTROL,
    N_("Control lost: the exercise could not be done the way it is shown"),
    N_("A load at least {ease-percent} % lighter; without a load fewer repetitions, or an easier exercise"),
    N_("Common practice"),
    { "ease-percent", NULL } },
  { SW_PROGRESS_RULE_WORSE,
    N_("At least {worse-by} points more pain after than before"),
    N_("A load at least {ease-percent} % lighter; without a load fewer sets or repetitions, or an easier exercise"),
    N_("A change of 2 points is one that counts: Farrar and others, Pain 2001;94:149-158. How much lighter is common "
       "practice"),
    { "worse-by", "ease-percent", NULL } },
  { SW_PROGRESS_RULE_MORE,
    N_("At least {extra-repetitions} repetitions more than asked in the last set, in {sessions} sessions running, all sets "
       "done, and pain either up to 2 of 10 or settled by the next morning"),
    N_("The next load, at most {step-percent} % heavier; where there is none, more repetitions, then one set more with fewer, "
       "then a harder exercise"),
    N_("Two more in two sessions: Baechle and Earle, Essentials of Strength Training and Conditioning. 2 to 10 %: ACSM, Med "
       "Sci Sports Exerc 2009;41:687-708. Pain up to 2 and the rest is common practice"),
    { "extra-repetitions", "sessions", "step-percent", NULL } },
  { SW_PROGRESS_RULE_FIRST_WEEKS,
    N_("The plan’s first weeks: {first-weeks}"),
    N_("Get used to it: the dose stays as it is"),
    N_("Common practice"),
    { "first-weeks", NULL } },
  { SW_PROGRESS_RULE_PLANNED_STEP,
    N_("After that, each time the week before went well; weeks from one step to the next: {step-weeks}"),
    N_("One step: a load at most {step-percent} % heavier; where there is none, at most {step-repetitions} repetitions more, "
       "then one set more with fewer, at most 10 % more together. A stretch is held 5 s longer"),
    N_("2 to 10 %, and how many sets and repetitions: ACSM, Med Sci Sports Exerc 2009;41:687-708. Stretches: ACSM, Med Sci "
       "Sports Exerc 2011;43:1334-1359. How often is common practice"),
    { "step-weeks", "step-repetitions", NULL } },
  { SW_PROGRESS_RULE_LAST_WEEKS,
    N_("The plan’s last weeks: {last-weeks}"),
    N_("Keep it: the dose stays what it has become"),
    N_("Common practice"),
    { "last-weeks", NULL } },
};

G_STATIC_ASSERT (G_N_ELEMENTS (rules) == SW_PROGRESS_N_RULES);

/* What a field for the number is called, and its unit. */
static const struct
{
  const char *number;
  const char *name;
  const char *unit;
} names[] = {
  { "extra-repetitions", N_("Repetitions more than asked"), N_("repetitions") },
  { "sessions", N_("Sessions running"), N_("sessions") },
  { "step-percent", N_("Heavier by at most"), N_("%") },
  { "step-repetitions", N_("Repetitions more in a step, at most"), N_("repetitions") },
  { "pain-limit", N_("Most pain"), N_("of 10") },
  { "worse-by", N_("More pain after than before"), N_("points") },
  { "ease-percent", N_("Lighter by at least"), N_("%") },
  { "weeks", N_("Length of the plan"), N_("weeks") },
  { "first-weeks", N_("To get used to it"), N_("weeks") },
  { "last-weeks", N_("To keep it"), N_("weeks") },
  { "step-weeks", N_("From one step to the next"), N_("weeks") },
};

/**
 * sw_progress_rule_get:
 * @kind: which one
 *
 * Returns: (transfer none): the rule
 */
const SwProgressRule *
sw_progress_rule_get (SwProgressRuleKind kind)
{
  return &rules[kind];
}

static char *
dup_with_numbers (const char    *words,
                  SwProgression *progression)
{
  const char * const *numbers = sw_progression_get_number_names ();
  g_autoptr (GString) text = g_string_new (words);

  for (guint i = 0; numbers[i] != NULL; i++)
    {
      g_autofree char *place = g_strdup_printf ("{%s}", numbers[i]);
      g_autofree char *value = g_strdup_printf ("%d", sw_progression_get_number (progression, numbers[i]));

      g_string_replace (text, place, value, 0);
    }

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/**
 * sw_progress_rule_dup_when:
 * @rule: a rule
 * @progression: the numbers
 *
 * Returns: (transfer full): what must have happened, translated
 */
char *
sw_progress_rule_dup_when (const SwProgressRule *rule,
                           SwProgression        *progression)
{
  return dup_with_numbers (_(rule->when), progression);
}

/**
 * sw_progress_rule_dup_then:
 * @rule: a rule
 * @progression: the numbers
 *
 * Returns: (transfer full): what is proposed then, translated
 */
char *
sw_progress_rule_dup_then (const SwProgressRule *rule,
                           SwProgression        *progression)
{
  return dup_with_numbers (_(rule->then), progression);
}

static guint
find_name (const char *number)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      if (strcmp (names[i].number, number) == 0)
        return i;
    }

  g_return_val_if_reached (0);
}

/**
 * sw_progress_number_get_name:
 * @number: one of sw_progression_get_number_names()
 *
 * Returns: (transfer none): what its field is called, translated
 */
const char *
sw_progress_number_get_name (const char *number)
{
  return _(names[find_name (number)].name);
}

/**
 * sw_progress_number_get_unit:
 * @number: one of sw_progression_get_number_names()
 *
 * Returns: (transfer none): its unit, translated
 */
const char *
sw_progress_number_get_unit (const char *number)
{
  return _(names[find_name (number)].unit);
}
