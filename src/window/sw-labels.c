/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window's words for the vocabularies of the documents, in the therapist's language. They are kept as
 * they stand within a sentence; a label begins with a capital. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-labels.h"

#include "sw-day-name.h"
#include "sw-dose.h"
#include "sw-equipment-name.h"
#include "sw-limit-name.h"
#include "sw-one-max.h"
#include "sw-position-name.h"
#include "sw-precautions.h"
#include "sw-region-name.h"

static const char * const aim_words[] = {
  [SW_AIM_STRENGTH] = N_("strength"),
  [SW_AIM_MOBILITY] = N_("mobility"),
  [SW_AIM_STRETCH] = N_("stretch"),
  [SW_AIM_CONTROL] = N_("control"),
  [SW_AIM_BALANCE] = N_("balance"),
  [SW_AIM_ENDURANCE] = N_("endurance"),
  [SW_AIM_RELAXATION] = N_("relaxation"),
};

static const char * const muscle_words[] = {
  [SW_MUSCLE_NECK_FLEXORS] = N_("neck flexors"),
  [SW_MUSCLE_NECK_EXTENSORS] = N_("neck extensors"),
  [SW_MUSCLE_UPPER_TRAPEZIUS] = N_("upper trapezius"),
  [SW_MUSCLE_LOWER_TRAPEZIUS] = N_("lower trapezius"),
  [SW_MUSCLE_RHOMBOIDS] = N_("rhomboids"),
  [SW_MUSCLE_SERRATUS_ANTERIOR] = N_("serratus anterior"),
  [SW_MUSCLE_ROTATOR_CUFF] = N_("rotator cuff"),
  [SW_MUSCLE_DELTOID] = N_("deltoid"),
  [SW_MUSCLE_PECTORALS] = N_("pectorals"),
  [SW_MUSCLE_LATISSIMUS_DORSI] = N_("latissimus dorsi"),
  [SW_MUSCLE_BICEPS] = N_("biceps"),
  [SW_MUSCLE_TRICEPS] = N_("triceps"),
  [SW_MUSCLE_FOREARM] = N_("forearm"),
  [SW_MUSCLE_ABDOMINALS] = N_("abdominals"),
  [SW_MUSCLE_OBLIQUES] = N_("obliques"),
  [SW_MUSCLE_BACK_EXTENSORS] = N_("back extensors"),
  [SW_MUSCLE_HIP_FLEXORS] = N_("hip flexors"),
  [SW_MUSCLE_GLUTEALS] = N_("gluteals"),
  [SW_MUSCLE_HIP_ABDUCTORS] = N_("hip abductors"),
  [SW_MUSCLE_HIP_ADDUCTORS] = N_("hip adductors"),
  [SW_MUSCLE_HIP_ROTATORS] = N_("hip rotators"),
  [SW_MUSCLE_QUADRICEPS] = N_("quadriceps"),
  [SW_MUSCLE_HAMSTRINGS] = N_("hamstrings"),
  [SW_MUSCLE_CALF] = N_("calf"),
  [SW_MUSCLE_SHIN] = N_("shin"),
  [SW_MUSCLE_PERONEALS] = N_("peroneals"),
  [SW_MUSCLE_FOOT] = N_("foot muscles"),
  [SW_MUSCLE_DIAPHRAGM] = N_("diaphragm"),
  [SW_MUSCLE_PELVIC_FLOOR] = N_("pelvic floor"),
};

static const char * const review_words[] = {
  [SW_REVIEW_STATE_DRAFT] = N_("draft"),
  [SW_REVIEW_STATE_IN_REVIEW] = N_("in review"),
  [SW_REVIEW_STATE_APPROVED] = N_("approved"),
  [SW_REVIEW_STATE_RETIRED] = N_("retired"),
};

static const char * const side_words[] = {
  [SW_SIDE_BOTH] = N_("both together"),
  [SW_SIDE_EACH] = N_("each side"),
  [SW_SIDE_RIGHT] = N_("right"),
  [SW_SIDE_LEFT] = N_("left"),
  [SW_SIDE_ALTERNATING] = N_("alternating"),
};

static const char * const body_side_words[] = {
  [SW_BODY_SIDE_NONE] = N_("no side"),
  [SW_BODY_SIDE_RIGHT] = N_("right"),
  [SW_BODY_SIDE_LEFT] = N_("left"),
};

static const char * const direction_words[] = {
  [SW_DIRECTION_KIND_ONE] = N_("one way"),
  [SW_DIRECTION_KIND_FORWARD_BACKWARD] = N_("forward and backward"),
  [SW_DIRECTION_KIND_LEFT_RIGHT] = N_("to the left and right"),
  [SW_DIRECTION_KIND_UP_DOWN] = N_("up and down"),
  [SW_DIRECTION_KIND_IN_OUT] = N_("in and out"),
  [SW_DIRECTION_KIND_BOTH_WAYS_ROUND] = N_("both ways round"),
  [SW_DIRECTION_KIND_SEVERAL] = N_("several directions"),
};

static const char * const units_words[] = {
  [SW_UNITS_KG] = N_("kilograms"),
  [SW_UNITS_LB] = N_("pounds"),
  [SW_UNITS_BOTH] = N_("kilograms and pounds"),
};

static const char * const paper_words[] = {
  [SW_PAPER_A4] = N_("A4"),
  [SW_PAPER_LETTER] = N_("Letter"),
};

static const char * const company_words[] = {
  [SW_COMPANY_NOT_STATED] = N_("not stated"),
  [SW_COMPANY_ALONE] = N_("alone"),
  [SW_COMPANY_AT_FIRST] = N_("someone near at first"),
  [SW_COMPANY_ALWAYS] = N_("someone near every time"),
};

static const char * const layout_words[] = {
  [SW_LAYOUT_FULL] = N_("full"),
  [SW_LAYOUT_COMPACT] = N_("compact"),
  [SW_LAYOUT_SUMMARY] = N_("summary"),
  [SW_LAYOUT_LARGE_PRINT] = N_("large print"),
};

static const char * const page_part_words[] = {
  [SW_PAGE_PART_LETTERHEAD] = N_("letterhead"),
  [SW_PAGE_PART_PURPOSE] = N_("goals"),
  [SW_PAGE_PART_WEEK] = N_("the week"),
  [SW_PAGE_PART_EQUIPMENT] = N_("equipment needed"),
  [SW_PAGE_PART_TIMELINE] = N_("bar of the session’s time"),
  [SW_PAGE_PART_STOP_SIGNS] = N_("signs to stop for"),
  [SW_PAGE_PART_PAIN_GUIDE] = N_("guide to pain and effort"),
  [SW_PAGE_PART_KEY] = N_("key to the pictures"),
  [SW_PAGE_PART_MISTAKES] = N_("mistakes to avoid"),
  [SW_PAGE_PART_WAYS] = N_("if too hard or too easy"),
  [SW_PAGE_PART_SELF_CHECK] = N_("self-checks"),
  [SW_PAGE_PART_LOG] = N_("log to fill in"),
  [SW_PAGE_PART_SIGNATURE] = N_("lines to sign"),
  [SW_PAGE_PART_PLAN] = N_("plan over the weeks, where there is one"),
};

static const char * const section_words[] = {
  [SW_SECTION_WARM_UP] = N_("warm-up"),
  [SW_SECTION_MAIN] = N_("main work"),
  [SW_SECTION_COOL_DOWN] = N_("cool-down"),
  [SW_SECTION_OWN] = N_("own section"),
};

static const char * const item_words[] = {
  [SW_ITEM_EXERCISE] = N_("exercise"),
  [SW_ITEM_REST] = N_("rest"),
  [SW_ITEM_CIRCUIT] = N_("circuit"),
  [SW_ITEM_SELF_CHECK] = N_("self-check"),
};

static const char * const settled_words[] = {
  /* Translators: whether pain was back to the usual the morning after */
  [SW_SETTLED_UNKNOWN] = N_("not asked"),
  [SW_SETTLED_YES] = N_("settled"),
  [SW_SETTLED_NO] = N_("not settled"),
};

static const char * const better_words[] = {
  [SW_BETTER_NOT_STATED] = N_("not stated"),
  [SW_BETTER_HIGHER] = N_("a higher result"),
  [SW_BETTER_LOWER] = N_("a lower result"),
};

static const char * const measure_words[] = {
  [SW_MEASURE_SECONDS] = N_("seconds"),
  [SW_MEASURE_REPETITIONS] = N_("repetitions"),
  [SW_MEASURE_DEGREES] = N_("degrees"),
  [SW_MEASURE_CENTIMETRES] = N_("centimetres"),
  [SW_MEASURE_KILOGRAMS] = N_("kilograms"),
  [SW_MEASURE_NEWTONS] = N_("newtons"),
  [SW_MEASURE_RATING_0_TO_10] = N_("rating, 0 to 10"),
  [SW_MEASURE_POUNDS] = N_("pounds"),
};

static const char * const limit_kind_words[] = {
  [SW_LIMIT_KIND_LOAD] = N_("load"),
  [SW_LIMIT_KIND_RANGE] = N_("range of movement"),
  [SW_LIMIT_KIND_WEIGHT_BEARING] = N_("weight on the leg"),
  [SW_LIMIT_KIND_SURGERY] = N_("day of an operation"),
};

static const char * const load_unit_words[] = {
  [SW_LOAD_NONE] = N_("no load"),
  [SW_LOAD_KG] = N_("kg"),
  [SW_LOAD_LB] = N_("lb"),
  [SW_LOAD_NEWTON] = N_("N"),
};

static const char *
word_at (const char * const *words,
         gsize               n_words,
         int                 value)
{
  g_return_val_if_fail (value >= 0 && (gsize) value < n_words, "");

  return _(words[value]);
}

/* The word as it stands within a sentence. */
static const char *
get_word (GType type,
          int   value)
{
#define WORDS_OF(wanted, words) if (type == (wanted)) return word_at ((words), G_N_ELEMENTS (words), value)
  WORDS_OF (SW_TYPE_AIM, aim_words);
  WORDS_OF (SW_TYPE_MUSCLE, muscle_words);
  WORDS_OF (SW_TYPE_REVIEW_STATE, review_words);
  WORDS_OF (SW_TYPE_SIDE, side_words);
  WORDS_OF (SW_TYPE_BODY_SIDE, body_side_words);
  WORDS_OF (SW_TYPE_DIRECTION_KIND, direction_words);
  WORDS_OF (SW_TYPE_UNITS, units_words);
  WORDS_OF (SW_TYPE_PAPER, paper_words);
  WORDS_OF (SW_TYPE_COMPANY, company_words);
  WORDS_OF (SW_TYPE_LAYOUT, layout_words);
  WORDS_OF (SW_TYPE_PAGE_PART, page_part_words);
  WORDS_OF (SW_TYPE_SECTION_KIND, section_words);
  WORDS_OF (SW_TYPE_ITEM_KIND, item_words);
  WORDS_OF (SW_TYPE_MEASURE, measure_words);
  WORDS_OF (SW_TYPE_BETTER, better_words);
  WORDS_OF (SW_TYPE_SETTLED, settled_words);
  WORDS_OF (SW_TYPE_LIMIT_KIND, limit_kind_words);
#undef WORDS_OF
  if (type == SW_TYPE_MAX_FORMULA)
    return sw_one_max_get_formula ((SwMaxFormula) value)->name;
  if (type == SW_TYPE_DAY)
    return sw_day_get_name ((SwDay) value);
  if (type == SW_TYPE_EQUIPMENT)
    return sw_equipment_get_name ((SwEquipment) value);
  if (type == SW_TYPE_POSITION)
    return sw_position_get_name ((SwPosition) value);
  if (type == SW_TYPE_REGION)
    return sw_region_get_name ((SwRegion) value);
  if (type == SW_TYPE_MOVEMENT)
    return sw_movement_get_name ((SwMovement) value);
  if (type == SW_TYPE_BEARING)
    return sw_bearing_get_name ((SwBearing) value);
  if (type == SW_TYPE_PRECAUTION)
    return sw_precaution_get_name ((SwPrecaution) value);
  if (type == SW_TYPE_CAUTION)
    return sw_caution_get_name ((SwCaution) value);

  g_return_val_if_reached ("");
}

/**
 * sw_label_capitalised:
 * @words: words as they stand within a sentence
 *
 * Returns: (transfer full): as they stand alone
 */
char *
sw_label_capitalised (const char *words)
{
  GString *label = g_string_new (NULL);

  if (*words != '\0')
    {
      g_string_append_unichar (label, g_unichar_totitle (g_utf8_get_char (words)));
      g_string_append (label, g_utf8_next_char (words));
    }

  return g_string_free (label, FALSE);
}

/**
 * sw_label:
 * @type: the GType of an enumeration of the vocabularies, or of #SwLoadUnit
 * @value: one of its values
 *
 * Returns: (transfer none): the word for it, to stand by itself: "Each side", "Hip abductors", "kg"
 */
const char *
sw_label (GType type,
          int   value)
{
  g_autofree char *label = NULL;

  if (type == SW_TYPE_LOAD_UNIT && value != SW_LOAD_NONE)
    return word_at (load_unit_words, G_N_ELEMENTS (load_unit_words), value);
  if (type == SW_TYPE_LOAD_UNIT)
    label = sw_label_capitalised (word_at (load_unit_words, G_N_ELEMENTS (load_unit_words), value));
  else
    label = sw_label_capitalised (get_word (type, value));

  /* As many strings as there are words, so that they may live as long as the program. */
  return g_intern_string (label);
}

/**
 * sw_label_set:
 * @type: the GType of an enumeration of the vocabularies
 * @set: a set of its values
 *
 * Returns: (transfer full): the words in the order of the enumeration, "Chair, step, towel"; "" when empty
 */
char *
sw_label_set (GType type,
              SwSet set)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (int value = 0; value < sw_term_get_n_values (type); value++)
    {
      if ((set & SW_SET (value)) == 0)
        continue;
      if (words->len > 0)
        /* Translators: between the words of a list. */
        g_string_append (words, C_("list", ", "));
      g_string_append (words, get_word (type, value));
    }

  return sw_label_capitalised (words->str);
}

/**
 * sw_label_day_short:
 * @day: a day of the week
 *
 * Returns: (transfer none): its short name, "Mon"
 */
const char *
sw_label_day_short (SwDay day)
{
  static const char * const words[] = {
    [SW_DAY_MONDAY] = N_("Mon"),
    [SW_DAY_TUESDAY] = N_("Tue"),
    [SW_DAY_WEDNESDAY] = N_("Wed"),
    [SW_DAY_THURSDAY] = N_("Thu"),
    [SW_DAY_FRIDAY] = N_("Fri"),
    [SW_DAY_SATURDAY] = N_("Sat"),
    [SW_DAY_SUNDAY] = N_("Sun"),
  };

  return word_at (words, G_N_ELEMENTS (words), (int) day);
}

/**
 * sw_label_duration:
 * @low_s: seconds at least, from 0
 * @high_s: seconds at most, from @low_s
 *
 * How long something takes, as short as it can be said: seconds below one and a half minutes, else whole
 * minutes.
 *
 * Returns: (transfer full): "45 s", "40–55 s", "5 min", "18–21 min"
 */
char *
sw_label_duration (double low_s,
                   double high_s)
{
  double unit_s = high_s < 90.0 ? 1.0 : 60.0;
  int low = (int) lround (low_s / unit_s);
  int high = (int) lround (high_s / unit_s);

  if (unit_s < 60.0)
    return low == high
           /* Translators: seconds. */
           ? g_strdup_printf (_("%d s"), high)
           /* Translators: seconds, from and to. */
           : g_strdup_printf (_("%d–%d s"), low, high);

  return low == high
         /* Translators: minutes. */
         ? g_strdup_printf (_("%d min"), high)
         /* Translators: minutes, from and to. */
         : g_strdup_printf (_("%d–%d min"), low, high);
}

/**
 * sw_label_session:
 * @total: how long a session takes on a usual day
 *
 * Its minutes as the handout tells them: whole ones that hold the span.
 *
 * Returns: (transfer full): "5 min", "18–21 min"; below one and a half minutes "40–55 s"
 */
char *
sw_label_session (SwSpan total)
{
  if (total.high_s < 90.0)
    return sw_label_duration (total.low_s, total.high_s);

  return sw_label_duration (sw_span_low_minutes (total) * 60.0, sw_span_high_minutes (total) * 60.0);
}

/**
 * sw_label_takes:
 * @span: how long an item takes
 *
 * To the second: what is typed into a dose can be seen in it.
 *
 * Returns: (transfer full): "Takes 4:24 min", "Takes 2:04–2:20 min"
 */
char *
sw_label_takes (SwSpan span)
{
  g_autofree char *words = sw_span_to_words (span);

  /* Translators: minutes and seconds, perhaps from and to. */
  return g_strdup_printf (_("Takes %s min"), words);
}
