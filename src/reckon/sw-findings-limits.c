/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks a programme against what was set for the client: loads, ranges, weight on a leg, and the days of operations. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-limit-check.h"
#include "sw-limit-name.h"
#include "sw-precautions.h"
#include "sw-loads.h"
#include "sw-units.h"

/* Two limits that say the same are one. */
static gboolean
is_found (SwChecking *self,
          const char *key)
{
  for (guint i = 0; i < self->findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (self->findings, i);

      if (strcmp (finding->key, key) == 0)
        return TRUE;
    }

  return FALSE;
}

static char *
dup_source (SwLimit *limit)
{
  if (*sw_limit_get_note (limit) == '\0')
    return g_strdup (_("It is among the client's limits; who set it is not noted."));

  /* Translators: who set a limit, and where that stands */
  return g_strdup_printf (_("It is among the client's limits: %s"), sw_limit_get_note (limit));
}

static const char *
get_side_mark (SwBodySide side)
{
  return sw_term_to_nick (SW_TYPE_BODY_SIDE, (int) side);
}

static char *
dup_degrees (double degrees)
{
  return isnan (degrees) ? g_strdup ("") : g_strdup_printf ("%ld", lround (degrees));
}

/* What stands for the limit in a key: another value is another finding. */
static char *
dup_mark (SwLimit *limit)
{
  g_autofree char *kg = isnan (sw_limit_get_kg (limit)) ? g_strdup ("") : sw_number_to_string (sw_limit_get_kg (limit), 2);
  g_autofree char *from = dup_degrees (sw_limit_get_from_deg (limit));
  g_autofree char *to = dup_degrees (sw_limit_get_to_deg (limit));
  const char *side = get_side_mark (sw_limit_get_side (limit));

  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      return g_strdup_printf ("limit-load:%s:%s:%s", sw_term_to_nick (SW_TYPE_REGION, (int) sw_limit_get_region (limit)),
                              side, kg);
    case SW_LIMIT_KIND_RANGE:
      return g_strdup_printf ("limit-range:%s:%s:%s:%s",
                              sw_term_to_nick (SW_TYPE_MOVEMENT, (int) sw_limit_get_movement (limit)), side, from, to);
    case SW_LIMIT_KIND_WEIGHT_BEARING:
      return g_strdup_printf ("limit-weight:%s:%s", sw_term_to_nick (SW_TYPE_BEARING, (int) sw_limit_get_bearing (limit)),
                              side);
    case SW_LIMIT_KIND_SURGERY:
    default:
      return g_strdup_printf ("surgery:%s:%s", side, sw_limit_get_date (limit));
    }
}

static void
add_load (SwChecking    *self,
          SwItem        *item,
          SwLimit       *limit,
          const char    *key,
          const char    *name,
          const char    *why)
{
  const SwDose *dose = sw_item_get_dose (item);
  SwUnits units = sw_client_get_units (sw_programme_get_client (self->programme));
  g_autofree char *load = sw_limit_dup_load (sw_load_to_kg (dose->load), units);
  g_autofree char *allowed = sw_limit_dup_load (sw_limit_get_kg (limit), units);
  g_autofree char *label = NULL;
  g_autofree char *fixed_load = NULL;
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_STOP, item, g_strdup (key),
                             /* Translators: an exercise, its load, the load that is allowed for the client */
                             g_strdup_printf (_("“%s” has a load of %s; for this client it may be %s at most."), name, load,
                                              allowed),
                             why);
  finding->fix_dose = *dose;
  if (sw_limit_get_kg (limit) <= 0.0)
    {
      finding->fix_dose.load = (SwLoad) { SW_LOAD_NONE, 0.0 };
      sw_checking_fix (finding, SW_FIX_SET_DOSE, _("Do it without a load"));
      return;
    }
  finding->fix_dose.load = sw_load_in_unit ((SwLoad) { SW_LOAD_KG, sw_limit_get_kg (limit) }, dose->load.unit);
  fixed_load = sw_load_to_text (finding->fix_dose.load);
  label = g_strdup_printf (_("Set the load to %s"), fixed_load);
  sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
}

static char *
dup_allowed (SwLimit *limit,
             double   degrees)
{
  SwMovement movement = sw_limit_get_movement (limit);
  double to_deg = sw_limit_get_to_deg (limit);
  double from_deg = sw_limit_get_from_deg (limit);

  return sw_movement_dup_angle (movement, !isnan (to_deg) && degrees > to_deg ? to_deg : from_deg);
}

/* Nothing is known of how far it goes. */
static void
add_unknown_range (SwChecking *self,
                   SwItem     *item,
                   SwLimit    *limit,
                   const char *key,
                   const char *name,
                   const char *why)
{
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_ASK, item, g_strdup (key),
                             /* Translators: an exercise, a movement ("knee flexion") */
                             g_strdup_printf (_("“%s” has no picture: does it keep to the limit of %s?"), name,
                                              sw_movement_get_name (sw_limit_get_movement (limit))),
                             why);
  sw_checking_fix_by_swap (self, finding, SW_SWAP_ANY);
}

static void
add_range (SwChecking          *self,
           SwItem              *item,
           SwLimit             *limit,
           const SwLimitBreach *breach,
           const char          *key,
           const char          *name,
           const char          *why)
{
  g_autofree char *angle = sw_movement_dup_angle (sw_limit_get_movement (limit), breach->degrees);
  g_autofree char *allowed = dup_allowed (limit, breach->degrees);
  g_autofree char *full_why = g_strdup_printf ("%s %s", _("The angle is that of the picture; who does it may go further."),
                                               why);
  char *text;
  SwFinding *finding;

  if (breach->side == SW_BODY_SIDE_RIGHT)
    /* Translators: an exercise, an angle ("100° of knee flexion"), the end of what is allowed, likewise */
    text = g_strdup_printf (_("“%s” goes to %s on the right; the limit is %s."), name, angle, allowed);
  else if (breach->side == SW_BODY_SIDE_LEFT)
    text = g_strdup_printf (_("“%s” goes to %s on the left; the limit is %s."), name, angle, allowed);
  else
    text = g_strdup_printf (_("“%s” goes to %s; the limit is %s."), name, angle, allowed);

  finding = sw_checking_add (self, SW_FINDING_STOP, item, g_strdup (key), text, full_why);
  sw_checking_fix_by_swap (self, finding, SW_SWAP_ANY);
}

/* What is allowed, as the clinician reads it: "no weight on the left leg". */
static char *
dup_weight (SwChecking *self,
            SwLimit    *limit)
{
  const char *bearing = sw_bearing_get_name (sw_limit_get_bearing (limit));
  g_autofree char *amount = NULL;

  if (sw_limit_get_bearing (limit) == SW_BEARING_PART && !isnan (sw_limit_get_kg (limit)))
    {
      g_autofree char *kg = sw_limit_dup_load (sw_limit_get_kg (limit),
                                               sw_client_get_units (sw_programme_get_client (self->programme)));

      amount = g_strdup_printf ("%s (%s)", bearing, kg);
    }
  else
    amount = g_strdup (bearing);

  if (sw_limit_get_side (limit) == SW_BODY_SIDE_RIGHT)
    /* Translators: how much weight, such as "no weight" */
    return g_strdup_printf (_("right leg, %s"), amount);
  if (sw_limit_get_side (limit) == SW_BODY_SIDE_LEFT)
    return g_strdup_printf (_("left leg, %s"), amount);

  return g_strdup_printf (_("both legs, %s"), amount);
}

static void
add_weight (SwChecking          *self,
            SwItem              *item,
            SwLimit             *limit,
            const SwLimitBreach *breach,
            const char          *key,
            const char          *name,
            const char          *why)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (item));
  gboolean kneels = (facts->cautions & SW_SET (SW_CAUTION_KNEELING)) != 0;
  g_autofree char *weight = dup_weight (self, limit);
  char *text;
  SwFinding *finding;

  if (breach->level == SW_FINDING_STOP)
    /* Translators: an exercise, what is allowed ("left leg, no weight") */
    text = g_strdup_printf (_("“%s” puts the body's weight on a leg that may not carry it: %s."), name, weight);
  else if (breach->level == SW_FINDING_TELL)
    text = g_strdup_printf (_("“%s” is done with the weight on the legs: %s."), name, weight);
  else if (kneels)
    text = g_strdup_printf (_("“%s” puts weight on a knee: %s."), name, weight);
  else
    text = g_strdup_printf (_("“%s” is done on the other leg, but is it safe to get there? %s."), name, weight);

  finding = sw_checking_add (self, breach->level, item, g_strdup (key), text, why);
  if (breach->level > SW_FINDING_TELL)
    sw_checking_fix_by_swap (self, finding, SW_SWAP_ANY);
}

static void
add_breach (SwChecking          *self,
            SwItem              *item,
            SwLimit             *limit,
            const SwLimitBreach *breach)
{
  g_autofree char *name = sw_item_dup_name (item, NULL);
  g_autofree char *why = dup_source (limit);
  g_autofree char *mark = dup_mark (limit);
  g_autofree char *load = sw_load_to_text (sw_item_get_dose (item)->load);
  g_autofree char *degrees = dup_degrees (breach->degrees);
  const char *what = sw_limit_get_kind (limit) == SW_LIMIT_KIND_LOAD ? load
                     : sw_limit_get_kind (limit) == SW_LIMIT_KIND_RANGE ? degrees
                     : sw_term_to_nick (SW_TYPE_FINDING_LEVEL, (int) breach->level);
  g_autofree char *key = g_strdup_printf ("%s:%s:%s:%s:%s", mark, sw_item_get_id (item),
                                          sw_exercise_get_id (sw_item_get_exercise (item)), what,
                                          get_side_mark (breach->side));

  if (is_found (self, key))
    return;

  if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_LOAD)
    add_load (self, item, limit, key, name, why);
  else if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_RANGE && isnan (breach->degrees))
    add_unknown_range (self, item, limit, key, name, why);
  else if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_RANGE)
    add_range (self, item, limit, breach, key, name, why);
  else
    add_weight (self, item, limit, breach, key, name, why);
}

/**
 * sw_checking_item_limits:
 * @self: the checking
 * @item: an exercise item of the programme that has its exercise
 *
 * Adds what of the item is beyond the client's limits.
 */
void
sw_checking_item_limits (SwChecking *self,
                         SwItem     *item)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (self->programme));

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);
      SwLimitBreach breach;

      if (sw_limit_find_breach (limit, sw_item_get_exercise (item), sw_item_get_dose (item), &breach))
        add_breach (self, item, limit, &breach);
    }
}

/* A limit without a value would otherwise be passed over in silence. */
static void
check_complete (SwChecking *self,
                SwLimit    *limit)
{
  g_autofree char *mark = dup_mark (limit);
  g_autofree char *key = g_strdup_printf ("limit-empty:%s", mark);
  SwFinding *finding;

  if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_SURGERY || sw_limit_is_complete (limit) || is_found (self, key))
    return;

  finding = sw_checking_add (self, SW_FINDING_ASK, NULL, g_steal_pointer (&key),
                             g_strdup (_("One of the client's limits has no value that exercises can be held against.")),
                             _("Nothing is assumed. Enter the value the surgeon or clinician has set, or remove the limit."));
  sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
}

static void
check_surgery (SwChecking *self,
               SwLimit    *limit)
{
  g_autofree char *mark = dup_mark (limit);
  g_autofree char *since = sw_limit_dup_since (sw_limit_get_date (limit), self->today);
  g_autofree char *key = g_strdup_printf ("%s:%s", mark, sw_limit_get_name (limit));
  const char *name = sw_limit_get_name (limit);

  if (since == NULL || is_found (self, key))
    return;

  sw_checking_add (self, SW_FINDING_TELL, NULL, g_steal_pointer (&key),
                   *name == '\0' ? g_strdup_printf (_("The operation: %s."), since)
                                 /* Translators: an operation, then "6 weeks and 2 days ago" */
                                 : g_strdup_printf (_("“%s”: %s."), name, since),
                   _("What is allowed when is the surgeon's decision; the program only counts the days."));
}

/**
 * sw_checking_dup_surgery_since:
 * @self: the checking
 * @precaution: a client's condition
 *
 * Returns: (transfer full) (nullable): how long ago the operation was that it comes from, if its day was entered
 */
char *
sw_checking_dup_surgery_since (SwChecking   *self,
                               SwPrecaution  precaution)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (self->programme));

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);

      if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_SURGERY && sw_limit_get_precaution (limit) == (int) precaution)
        {
          char *since = sw_limit_dup_since (sw_limit_get_date (limit), self->today);

          if (since != NULL)
            return since;
        }
    }

  return NULL;
}

static void
check_unknown_days (SwChecking *self)
{
  SwSet precautions = sw_client_get_precautions (sw_programme_get_client (self->programme));

  for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
    {
      g_autofree char *since = NULL;
      SwFinding *finding;

      if ((precautions & SW_SET (precaution)) == 0 || !sw_precaution_is_surgical ((SwPrecaution) precaution))
        continue;
      since = sw_checking_dup_surgery_since (self, (SwPrecaution) precaution);
      if (since != NULL)
        continue;

      finding = sw_checking_add (self, SW_FINDING_TELL, NULL,
                                 g_strdup_printf ("surgery-day:%s", sw_term_to_nick (SW_TYPE_PRECAUTION, precaution)),
                                 /* Translators: a client's condition */
                                 g_strdup_printf (_("It is not noted when the operation was: %s."),
                                                  sw_precaution_get_name ((SwPrecaution) precaution)),
                                 _("What is allowed depends on the time since then. It is never assumed."));
      sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
    }
}

/**
 * sw_checking_limits:
 * @self: the checking
 *
 * Adds what there is to find at the limits themselves: values that are missing, and how long ago operations were.
 */
void
sw_checking_limits (SwChecking *self)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (self->programme));

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);

      check_complete (self, limit);
      if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_SURGERY)
        check_surgery (self, limit);
    }
  check_unknown_days (self);
}
