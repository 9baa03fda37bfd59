/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks what is written down of loads: whether it can be read at all, and the client's own limit. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-bands.h"
#include "sw-checking.h"
#include "sw-loads.h"

static SwLoadUnit
get_unit (SwChecking *self)
{
  return sw_client_get_units (sw_programme_get_client (self->programme)) == SW_UNITS_LB ? SW_LOAD_LB : SW_LOAD_KG;
}

static void
add_unread (SwChecking *self,
            const char *key,
            char       *text)
{
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_ASK, NULL, g_strdup (key), text,
                             _("What cannot be read is not reckoned with: a load may come out too heavy."));
  sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
}

/**
 * sw_checking_loads:
 * @self: the checking
 *
 * Adds what cannot be read of the client's loads, the client's limit and the clinic's bands.
 */
void
sw_checking_loads (SwChecking *self)
{
  SwClient *client = sw_programme_get_client (self->programme);
  SwClinic *clinic = sw_programme_get_clinic (self->programme);
  g_autoptr (GArray) loads = sw_loads_from_text (sw_client_get_loads (client), get_unit (self));
  g_autoptr (GArray) limit = sw_loads_from_text (sw_client_get_load_limit (client), get_unit (self));
  g_autoptr (GPtrArray) bands = sw_bands_from_text (sw_clinic_get_bands (clinic));

  if (loads == NULL)
    add_unread (self, "loads-unread",
                g_strdup_printf (_("The client’s loads cannot be read: “%s”. Write them as “1, 2.5, 5 kg”."),
                                 sw_client_get_loads (client)));
  if (limit == NULL || limit->len > 1)
    add_unread (self, "load-limit-unread",
                g_strdup_printf (_("The client’s heaviest load cannot be read: “%s”. Write one load, such as “5 kg”."),
                                 sw_client_get_load_limit (client)));
  if (bands == NULL)
    add_unread (self, "bands-unread",
                g_strdup (_("The clinic’s bands cannot be read. Write one a line, such as “2: 25 N at 100 %”.")));
}

/**
 * sw_checking_client_limit:
 * @self: the checking
 * @item: an exercise item of the programme
 *
 * Adds a load that is above the heaviest the client may have.
 */
void
sw_checking_client_limit (SwChecking *self,
                          SwItem     *item)
{
  g_autoptr (GArray) limits = sw_loads_from_text (sw_client_get_load_limit (sw_programme_get_client (self->programme)),
                                                  get_unit (self));
  SwDose fixed = *sw_item_get_dose (item);
  g_autofree char *name = NULL;
  g_autofree char *load = NULL;
  g_autofree char *limit = NULL;
  g_autofree char *fixed_load = NULL;
  g_autofree char *label = NULL;
  SwFinding *finding;

  if (limits == NULL || limits->len != 1
      || sw_load_to_kg (fixed.load) <= sw_load_to_kg (g_array_index (limits, SwLoad, 0)) + 1e-9)
    return;

  name = sw_item_dup_name (item, NULL);
  load = sw_load_to_text (fixed.load);
  limit = sw_load_to_text (g_array_index (limits, SwLoad, 0));
  finding = sw_checking_add (self, SW_FINDING_STOP, item,
                             g_strdup_printf ("client-load-limit:%s:%s:%s", sw_item_get_id (item), load, limit),
                             g_strdup_printf (_("“%s” has a load of %s; the heaviest for this client is %s."), name,
                                              load, limit),
                             _("The limit is noted with the client."));
  fixed.load = sw_load_in_unit (g_array_index (limits, SwLoad, 0), fixed.load.unit);
  fixed_load = sw_load_to_text (fixed.load);
  label = g_strdup_printf (_("Set the load to %s"), fixed_load);
  finding->fix_dose = fixed;
  sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
}
