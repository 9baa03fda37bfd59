/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks the extra sets of one exercise item against the test they are given for: they come when the sides differ by
 * more than the clinic calls alike, and go when they do not. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-course.h"
#include "sw-units.h"

static const char *
get_why (void)
{
  return _("A difference alone is no sign of anything: in people without complaints the sides differ by up to 23 to "
           "40 % (Bohannon and Andrews, Percept Mot Skills 1999;89:878-880). The clinic sets what it calls alike.");
}

static void
set_dose (SwFinding    *finding,
          const SwDose *dose,
          const char   *label)
{
  finding->fix_dose = *dose;
  sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
}

/* The measured difference is in the key, so that an answer does not cover another one. */
static char *
dup_key (SwItem           *item,
         const char       *word,
         const SwSymmetry *symmetry)
{
  return g_strdup_printf ("sides-%s:%s:%ld", word, sw_item_get_id (item), lround (symmetry->difference_percent));
}

static void
add_alike (SwChecking       *self,
           SwItem           *item,
           const char       *name,
           const SwSymmetry *symmetry,
           int               alike_percent)
{
  SwDose fixed = *sw_item_get_dose (item);
  g_autofree char *difference = sw_number_to_string (symmetry->difference_percent, 1);
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_TELL, item, dup_key (item, "alike", symmetry),
                             g_strdup_printf (_("“%s” has extra sets for one side, and the sides are alike now: they "
                                                "differ by %s %%, and up to %d %% is alike."),
                                              name, difference, alike_percent),
                             get_why ());
  fixed.extra_sets = 0;
  fixed.extra_side = SW_BODY_SIDE_NONE;
  set_dose (finding, &fixed, _("Take the extra sets off"));
}

static void
add_other_side (SwChecking       *self,
                SwItem           *item,
                const char       *name,
                const SwSymmetry *symmetry)
{
  gboolean left = symmetry->lesser == SW_BODY_SIDE_LEFT;
  SwDose fixed = *sw_item_get_dose (item);
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_ASK, item, dup_key (item, "other", symmetry),
                             g_strdup_printf (left ? _("“%s” has extra sets on the right, but the left side is the "
                                                       "lesser one in “%s”.")
                                              : _("“%s” has extra sets on the left, but the right side is the lesser "
                                                  "one in “%s”."),
                                              name, sw_item_get_test (item)),
                             get_why ());
  fixed.extra_side = symmetry->lesser;
  set_dose (finding, &fixed, left ? _("Give them to the left") : _("Give them to the right"));
}

static void
add_differ (SwChecking       *self,
            SwItem           *item,
            const char       *name,
            const SwSymmetry *symmetry,
            int               alike_percent)
{
  gboolean left = symmetry->lesser == SW_BODY_SIDE_LEFT;
  SwDose fixed = *sw_item_get_dose (item);
  g_autofree char *difference = sw_number_to_string (symmetry->difference_percent, 1);
  SwFinding *finding;

  finding = sw_checking_add (self, SW_FINDING_TELL, item, dup_key (item, "differ", symmetry),
                             g_strdup_printf (left ? _("“%s”: in “%s” the left side reaches %s %% less than the right, "
                                                       "and up to %d %% is alike.")
                                              : _("“%s”: in “%s” the right side reaches %s %% less than the left, and "
                                                  "up to %d %% is alike."),
                                              name, sw_item_get_test (item), difference, alike_percent),
                             get_why ());
  fixed.extra_sets = 1;
  fixed.extra_side = symmetry->lesser;
  set_dose (finding, &fixed, left ? _("One more set on the left until the sides are alike")
            : _("One more set on the right until the sides are alike"));
}

/**
 * sw_checking_sides:
 * @self: the checking
 * @item: an exercise item of the programme
 *
 * Adds what there is to say on its extra sets when it names a test that was measured on both sides.
 */
void
sw_checking_sides (SwChecking *self,
                   SwItem     *item)
{
  int alike_percent = sw_clinic_get_alike_percent (sw_programme_get_clinic (self->programme));
  const SwDose *dose = sw_item_get_dose (item);
  SwMeasurement *latest = sw_course_find_latest (self->programme, sw_item_get_test (item));
  g_autofree char *name = NULL;
  SwSymmetry symmetry;

  if ((dose->side != SW_SIDE_EACH && dose->side != SW_SIDE_ALTERNATING) || latest == NULL
      || !sw_course_compare (latest, &symmetry))
    return;

  name = sw_item_dup_name (item, NULL);
  if (sw_symmetry_is_alike (&symmetry, alike_percent))
    {
      if (dose->extra_sets > 0)
        add_alike (self, item, name, &symmetry, alike_percent);
    }
  else if (dose->extra_sets == 0)
    add_differ (self, item, name, &symmetry, alike_percent);
  else if (dose->extra_side != symmetry.lesser)
    add_other_side (self, item, name, &symmetry);
}
