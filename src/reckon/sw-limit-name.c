/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's words for what limits a client. */
#include "config.h"

#include <math.h>
#include <stdio.h>

#include <glib/gi18n.h>

#include "sw-limit-name.h"
#include "sw-loads.h"
#include "sw-region-name.h"
#include "sw-units.h"

/* The way that is counted up, and the one below zero. */
static const struct
{
  const char *name;
  const char *opposite;
} movement_words[] = {
  [SW_MOVEMENT_KNEE_BEND] = { N_("knee flexion"), N_("knee extension beyond straight") },
  [SW_MOVEMENT_HIP_BEND] = { N_("hip flexion"), N_("hip extension") },
  [SW_MOVEMENT_HIP_OUT] = { N_("hip abduction"), N_("hip adduction") },
  [SW_MOVEMENT_HIP_TURN_OUT] = { N_("hip external rotation"), N_("hip internal rotation") },
  [SW_MOVEMENT_ANKLE_UP] = { N_("ankle dorsiflexion"), N_("ankle plantar flexion") },
  [SW_MOVEMENT_ARM_RAISE] = { N_("shoulder elevation"), N_("shoulder extension behind the body") },
  [SW_MOVEMENT_ARM_TURN_OUT] = { N_("shoulder external rotation"), N_("shoulder internal rotation") },
  [SW_MOVEMENT_ELBOW_BEND] = { N_("elbow flexion"), N_("elbow extension beyond straight") },
  [SW_MOVEMENT_PALM_UP] = { N_("forearm supination"), N_("forearm pronation") },
  [SW_MOVEMENT_WRIST_BEND] = { N_("wrist flexion"), N_("wrist extension") },
  [SW_MOVEMENT_BACK_BEND] = { N_("back flexion"), N_("back extension") },
  [SW_MOVEMENT_BACK_TURN] = { N_("back rotation"), N_("back rotation") },
  [SW_MOVEMENT_NECK_BEND] = { N_("neck flexion"), N_("neck extension") },
  [SW_MOVEMENT_NECK_TURN] = { N_("neck rotation"), N_("neck rotation") },
};

static const char * const bearing_words[] = {
  [SW_BEARING_NONE] = N_("no weight"),
  [SW_BEARING_TOUCH] = N_("touching the floor only"),
  [SW_BEARING_PART] = N_("part of the weight"),
  [SW_BEARING_AS_TOLERATED] = N_("weight as tolerated"),
  [SW_BEARING_FULL] = N_("full weight"),
};

/**
 * sw_movement_get_name:
 * @movement: a movement
 *
 * Returns: (transfer none): its clinical name, translated, to stand within a sentence
 */
const char *
sw_movement_get_name (SwMovement movement)
{
  g_return_val_if_fail ((guint) movement < G_N_ELEMENTS (movement_words), "");

  return _(movement_words[movement].name);
}

/**
 * sw_movement_get_opposite_name:
 * @movement: a movement
 *
 * Returns: (transfer none): the clinical name of what angles below zero are, to stand within a sentence
 */
const char *
sw_movement_get_opposite_name (SwMovement movement)
{
  g_return_val_if_fail ((guint) movement < G_N_ELEMENTS (movement_words), "");

  return _(movement_words[movement].opposite);
}

/**
 * sw_bearing_get_name:
 * @bearing: how much weight
 *
 * Returns: (transfer none): its name, translated, to stand within a sentence
 */
const char *
sw_bearing_get_name (SwBearing bearing)
{
  g_return_val_if_fail ((guint) bearing < G_N_ELEMENTS (bearing_words), "");

  return _(bearing_words[bearing]);
}

/**
 * sw_movement_dup_angle:
 * @movement: a movement
 * @degrees: an angle of it
 *
 * Returns: (transfer full): the angle as one speaks of it: "30° of hip internal rotation" for one below zero
 */
char *
sw_movement_dup_angle (SwMovement movement,
                       double     degrees)
{
  int whole = (int) lround (degrees);

  /* Translators: an angle, then a movement ("90° of knee flexion") */
  return g_strdup_printf (_("%d° of %s"), ABS (whole),
                          whole < 0 ? sw_movement_get_opposite_name (movement) : sw_movement_get_name (movement));
}

/**
 * sw_limit_dup_load:
 * @kg: kilograms
 * @units: the client's units
 *
 * Returns: (transfer full): the load in these units; in both, kilograms come first
 */
char *
sw_limit_dup_load (double  kg,
                   SwUnits units)
{
  g_autofree char *in_kg = sw_load_to_text ((SwLoad) { SW_LOAD_KG, kg });
  g_autofree char *in_lb = sw_load_to_text ((SwLoad) { SW_LOAD_LB, floor (sw_lb_from_kg (kg) * 10.0 + 0.5) / 10.0 });

  if (units == SW_UNITS_KG)
    return g_steal_pointer (&in_kg);
  if (units == SW_UNITS_LB)
    return g_steal_pointer (&in_lb);

  return g_strdup_printf ("%s (%s)", in_kg, in_lb);
}

static gboolean
read_day (const char *date,
          GDate      *day)
{
  int year, month, day_of_month;

  if (date == NULL || sscanf (date, "%4d-%2d-%2d", &year, &month, &day_of_month) != 3
      || !g_date_valid_dmy ((GDateDay) day_of_month, (GDateMonth) month, (GDateYear) year))
    return FALSE;

  g_date_clear (day, 1);
  g_date_set_dmy (day, (GDateDay) day_of_month, (GDateMonth) month, (GDateYear) year);
  return TRUE;
}

/**
 * sw_limit_count_days:
 * @date: a day, ISO 8601
 * @today: the present day, likewise
 * @n_days: (out): how many days there are from @date to @today
 *
 * Returns: whether both are days
 */
gboolean
sw_limit_count_days (const char *date,
                     const char *today,
                     int        *n_days)
{
  GDate then, now;

  if (!read_day (date, &then) || !read_day (today, &now))
    return FALSE;

  *n_days = g_date_days_between (&then, &now);
  return TRUE;
}

/**
 * sw_limit_dup_since:
 * @date: a day, ISO 8601
 * @today: the present day, likewise
 *
 * Returns: (transfer full) (nullable): how long ago @date was, in weeks and days ("6 weeks and 2 days ago"), or how many days
 *   there are to it; NULL when either is no day
 */
char *
sw_limit_dup_since (const char *date,
                    const char *today)
{
  g_autofree char *in_weeks = NULL;
  g_autofree char *in_days = NULL;
  int n_days;

  if (!sw_limit_count_days (date, today, &n_days))
    return NULL;

  if (n_days == 0)
    return g_strdup (_("today"));
  if (n_days < 0)
    return g_strdup_printf (ngettext ("in %d day", "in %d days", (unsigned long) -n_days), -n_days);

  in_weeks = g_strdup_printf (ngettext ("%d week", "%d weeks", (unsigned long) (n_days / 7)), n_days / 7);
  in_days = g_strdup_printf (ngettext ("%d day", "%d days", (unsigned long) (n_days % 7)), n_days % 7);
  if (n_days < 7)
    /* Translators: "3 days" or "6 weeks" */
    return g_strdup_printf (_("%s ago"), in_days);
  if (n_days % 7 == 0)
    return g_strdup_printf (_("%s ago"), in_weeks);

  /* Translators: "6 weeks", then "2 days" */
  return g_strdup_printf (_("%s and %s ago"), in_weeks, in_days);
}

static char *
dup_range (SwLimit *limit)
{
  SwMovement movement = sw_limit_get_movement (limit);
  double from_deg = sw_movement_goes_to_sides (movement) ? NAN : sw_limit_get_from_deg (limit);
  double to_deg = sw_limit_get_to_deg (limit);
  g_autofree char *from = isnan (from_deg) ? NULL : sw_movement_dup_angle (movement, from_deg);
  g_autofree char *to = isnan (to_deg) ? NULL : sw_movement_dup_angle (movement, to_deg);

  if (from != NULL && to != NULL)
    /* Translators: two angles, such as "10° of hip extension" and "90° of hip flexion" */
    return g_strdup_printf (_("from %s to %s"), from, to);
  if (to != NULL)
    return g_strdup_printf (_("up to %s"), to);
  if (from != NULL)
    return g_strdup_printf (_("from %s on"), from);

  return g_strdup_printf (_("%s, no value"), sw_movement_get_name (movement));
}

static char *
dup_value (SwLimit *limit,
           SwUnits  units)
{
  g_autofree char *load = isnan (sw_limit_get_kg (limit)) ? g_strdup (_("no value"))
                                                          : sw_limit_dup_load (sw_limit_get_kg (limit), units);

  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      /* Translators: a region is told before */
      return g_strdup_printf (_("load at most %s"), load);
    case SW_LIMIT_KIND_RANGE:
      return dup_range (limit);
    case SW_LIMIT_KIND_WEIGHT_BEARING:
      if (sw_limit_get_bearing (limit) == SW_BEARING_PART && !isnan (sw_limit_get_kg (limit)))
        return g_strdup_printf (_("weight on the leg: %s, at most %s"), sw_bearing_get_name (SW_BEARING_PART), load);
      return g_strdup_printf (_("weight on the leg: %s"), sw_bearing_get_name (sw_limit_get_bearing (limit)));
    case SW_LIMIT_KIND_SURGERY:
    default:
      return g_strdup_printf (_("operation “%s” on %s"), sw_limit_get_name (limit),
                              *sw_limit_get_date (limit) == '\0' ? _("a day that is not noted") : sw_limit_get_date (limit));
    }
}

/**
 * sw_limit_dup_text:
 * @limit: a limit
 * @units: the client's units
 *
 * Returns: (transfer full): what it says, on one line, for the therapist
 */
char *
sw_limit_dup_text (SwLimit *limit,
                   SwUnits  units)
{
  g_autofree char *value = dup_value (limit, units);
  gboolean load = sw_limit_get_kind (limit) == SW_LIMIT_KIND_LOAD;
  const char *region = load ? sw_region_get_name (sw_limit_get_region (limit)) : NULL;
  g_autofree char *where = region == NULL ? g_steal_pointer (&value) : g_strdup_printf ("%s, %s", region, value);

  if (sw_limit_get_side (limit) == SW_BODY_SIDE_RIGHT)
    return g_strdup_printf (_("right: %s"), where);
  if (sw_limit_get_side (limit) == SW_BODY_SIDE_LEFT)
    return g_strdup_printf (_("left: %s"), where);

  return g_steal_pointer (&where);
}
