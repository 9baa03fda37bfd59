/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was set for the client, in plain words: only what was entered, and nothing of why. */
#include "config.h"

#include <math.h>

#include "sw-care-limits.h"
#include "sw-dose-words.h"
#include "sw-limit-check.h"

/* What not to go beyond, by the side: up, and below zero. Back and neck have one line, or one for each side they turn to. */
static const struct
{
  const char *to[2];
  const char *from[2];
} ends[] = {
  [SW_MOVEMENT_KNEE_BEND] = { { "limit.knee-bend-right", "limit.knee-bend-left" },
                              { "limit.knee-straighten-right", "limit.knee-straighten-left" } },
  [SW_MOVEMENT_HIP_BEND] = { { "limit.hip-bend-right", "limit.hip-bend-left" },
                             { "limit.hip-back-right", "limit.hip-back-left" } },
  [SW_MOVEMENT_HIP_OUT] = { { "limit.leg-out-right", "limit.leg-out-left" },
                            { "limit.leg-across-right", "limit.leg-across-left" } },
  [SW_MOVEMENT_HIP_TURN_OUT] = { { "limit.leg-turn-out-right", "limit.leg-turn-out-left" },
                                 { "limit.leg-turn-in-right", "limit.leg-turn-in-left" } },
  [SW_MOVEMENT_ANKLE_UP] = { { "limit.foot-up-right", "limit.foot-up-left" },
                             { "limit.foot-down-right", "limit.foot-down-left" } },
  [SW_MOVEMENT_ARM_RAISE] = { { "limit.arm-raise-right", "limit.arm-raise-left" },
                              { "limit.arm-back-right", "limit.arm-back-left" } },
  [SW_MOVEMENT_ARM_TURN_OUT] = { { "limit.arm-turn-out-right", "limit.arm-turn-out-left" },
                                 { "limit.arm-turn-in-right", "limit.arm-turn-in-left" } },
  [SW_MOVEMENT_ELBOW_BEND] = { { "limit.elbow-bend-right", "limit.elbow-bend-left" },
                               { "limit.elbow-straighten-right", "limit.elbow-straighten-left" } },
  [SW_MOVEMENT_PALM_UP] = { { "limit.palm-up-right", "limit.palm-up-left" },
                            { "limit.palm-down-right", "limit.palm-down-left" } },
  [SW_MOVEMENT_WRIST_BEND] = { { "limit.wrist-bend-right", "limit.wrist-bend-left" },
                               { "limit.wrist-back-right", "limit.wrist-back-left" } },
  [SW_MOVEMENT_BACK_BEND] = { { "limit.back-bend", "limit.back-bend" }, { "limit.back-arch", "limit.back-arch" } },
  [SW_MOVEMENT_BACK_TURN] = { { "limit.back-turn-right", "limit.back-turn-left" }, { NULL, NULL } },
  [SW_MOVEMENT_NECK_BEND] = { { "limit.neck-bend", "limit.neck-bend" }, { "limit.neck-back", "limit.neck-back" } },
  [SW_MOVEMENT_NECK_TURN] = { { "limit.neck-turn-right", "limit.neck-turn-left" }, { NULL, NULL } },
};

static const char * const weights[][2] = {
  [SW_BEARING_NONE] = { "limit.weight-none-right", "limit.weight-none-left" },
  [SW_BEARING_TOUCH] = { "limit.weight-touch-right", "limit.weight-touch-left" },
  [SW_BEARING_PART] = { "limit.weight-told-right", "limit.weight-told-left" },
  [SW_BEARING_AS_TOLERATED] = { "limit.weight-tolerated-right", "limit.weight-tolerated-left" },
};

static const char * const weight_parts[2] = { "limit.weight-part-right", "limit.weight-part-left" };

static void
take_once (GPtrArray *words,
           char      *text)
{
  if (g_ptr_array_find_with_equal_func (words, text, g_str_equal, NULL))
    g_free (text);
  else
    g_ptr_array_add (words, text);
}

static char *
dup_degrees (SwPhrases  *phrases,
             const char *key,
             double      degrees)
{
  g_autofree char *number = sw_phrases_number (phrases, fabs (round (degrees)), 0);

  return sw_phrases_format (phrases, key, "n", number, NULL);
}

static gboolean
has_side (SwLimit *limit,
          int      side)
{
  return sw_limit_get_side (limit) == SW_BODY_SIDE_NONE
         || sw_limit_get_side (limit) == (side == SW_FIGURE_LEFT ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_RIGHT);
}

/* A joint that must stay bent has words of its own; other ranges without zero are too rare for more than a reminder. */
static void
add_range (SwPhrases *phrases,
           SwLimit   *limit,
           int        side,
           GPtrArray *words)
{
  SwMovement movement = sw_limit_get_movement (limit);
  double from_deg = round (sw_limit_get_from_deg (limit));
  double to_deg = round (sw_limit_get_to_deg (limit));
  gboolean stays_bent = movement == SW_MOVEMENT_KNEE_BEND || movement == SW_MOVEMENT_ELBOW_BEND;

  if (sw_movement_goes_to_sides (movement))
    from_deg = NAN;
  if (to_deg < 0.0 || (from_deg > 0.0 && !stays_bent))
    {
      take_once (words, g_strdup (sw_phrases_get (phrases, "limit.as-told")));
      return;
    }

  if (!isnan (to_deg))
    take_once (words, dup_degrees (phrases, ends[movement].to[side], to_deg));
  if (!isnan (from_deg) && (!stays_bent || from_deg > 0.0))
    take_once (words, dup_degrees (phrases, ends[movement].from[side], from_deg));
}

static void
add_weight (SwPhrases *phrases,
            SwLimit   *limit,
            int        side,
            SwUnits    units,
            GPtrArray *words)
{
  SwBearing bearing = sw_limit_get_bearing (limit);

  if (bearing == SW_BEARING_FULL)
    return;

  if (bearing == SW_BEARING_PART && !isnan (sw_limit_get_kg (limit)))
    {
      g_autofree char *load = sw_load_words (phrases, (SwLoad) { SW_LOAD_KG, sw_limit_get_kg (limit) }, units);

      take_once (words, sw_phrases_format (phrases, weight_parts[side], "load", load, NULL));
      return;
    }

  take_once (words, g_strdup (sw_phrases_get (phrases, weights[bearing][side])));
}

static void
add_limit (SwPhrases *phrases,
           SwLimit   *limit,
           SwUnits    units,
           GPtrArray *words)
{
  if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_LOAD)
    {
      g_autofree char *load = sw_load_words (phrases, (SwLoad) { SW_LOAD_KG, sw_limit_get_kg (limit) }, units);

      take_once (words, sw_phrases_format (phrases, "limit.load", "load", load, NULL));
      return;
    }

  for (int side = 0; side < 2; side++)
    {
      if (!has_side (limit, side))
        continue;
      if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_RANGE)
        add_range (phrases, limit, side, words);
      else if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_WEIGHT_BEARING)
        add_weight (phrases, limit, side, units, words);
    }
}

/**
 * sw_care_limit_words:
 * @phrases: the client's language
 * @limits: (nullable) (element-type SwLimit): what was set for the client
 * @exercise: (nullable): an exercise; NULL for what holds at all times, which is the weight on a leg
 * @dose: (nullable): how it is to be done
 * @units: the client's units
 *
 * Returns: (transfer full) (array zero-terminated=1): the sentences on the limits that concern it, none twice
 */
char **
sw_care_limit_words (SwPhrases    *phrases,
                     GListModel   *limits,
                     SwExercise   *exercise,
                     const SwDose *dose,
                     SwUnits       units)
{
  GPtrArray *words = g_ptr_array_new ();

  for (guint i = 0; limits != NULL && i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);

      if (exercise == NULL ? sw_limit_get_kind (limit) == SW_LIMIT_KIND_WEIGHT_BEARING
                           : sw_limit_concerns (limit, exercise, dose))
        add_limit (phrases, limit, units, words);
    }

  g_ptr_array_add (words, NULL);
  return (char **) g_ptr_array_free (words, FALSE);
}
