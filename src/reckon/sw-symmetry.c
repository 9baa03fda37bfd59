/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the sides of the body compare in a test. What is known of people without complaints stands here too: sides
 * differ, and a difference alone says nothing. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-symmetry.h"

/* The rule that the dominant side is 5 to 10 % stronger is in many hands and has little behind it. */
static const SwSymmetryFact facts[] = {
  { N_("Grip of right-handers: right hand over left"), N_("about 12.7 % (all people 10.7 %)"),
    "Petersen and others, Am J Occup Ther 1989;43:444-447" },
  { N_("Grip of left-handers: left hand over right"), N_("no difference (−0.1 %)"),
    "Petersen and others, Am J Occup Ther 1989;43:444-447" },
  { N_("Arms, pooled: dominant over other side"), N_("about 11.6 %"),
    "Foley and others, Sci Rep 2025, doi 10.1038/s41598-025-87413-w" },
  { N_("Shoulder rotators: dominant over other side"), N_("0 to 10 %, often no clear difference"),
    N_("Clinical overview (weak evidence)") },
  { N_("Normal spread between the sides, age 50 to 79, by muscle"), N_("up to 23 to 40 %"),
    "Bohannon and Andrews, Percept Mot Skills 1999;89:878-880" },
};

/**
 * sw_symmetry_get_index:
 * @involved: result of the side in question, 0 or more, in any unit
 * @uninvolved: result of the other side, in the same unit
 * @better: which result is the better one; of a timed course the lower, and the ratio is flipped
 *
 * The limb symmetry index (common practice; criterion of 90 % as in Kyritsis and others, Br J Sports Med
 * 2016;50:946-951). Above 100 when the side in question is the better one.
 *
 * Returns: percent, 0 or more; NaN when it is not known which result is better, for values below 0 and for nothing to
 *   compare with
 */
double
sw_symmetry_get_index (double   involved,
                       double   uninvolved,
                       SwBetter better)
{
  double part = better == SW_BETTER_LOWER ? uninvolved : involved;
  double whole = better == SW_BETTER_LOWER ? involved : uninvolved;

  if (better == SW_BETTER_NOT_STATED || !(part >= 0.0) || !(whole > 0.0) || isinf (part) || isinf (whole))
    return NAN;

  return 100.0 * part / whole;
}

/**
 * sw_symmetry_compare:
 * @left: result of the left side, 0 or more, in any unit
 * @right: result of the right side, in the same unit
 * @better: which result is the better one
 * @symmetry: (out): the lesser side against the other; left alone on failure
 *
 * As sw_symmetry_get_index(), with the lesser side as the one in question.
 *
 * Returns: whether they can be compared
 */
gboolean
sw_symmetry_compare (double      left,
                     double      right,
                     SwBetter    better,
                     SwSymmetry *symmetry)
{
  gboolean left_less = better == SW_BETTER_LOWER ? left > right : left < right;
  double index = left_less ? sw_symmetry_get_index (left, right, better)
                 : sw_symmetry_get_index (right, left, better);

  if (isnan (index))
    return FALSE;

  symmetry->index_percent = index;
  symmetry->difference_percent = 100.0 - index;
  symmetry->lesser = left_less ? SW_BODY_SIDE_LEFT : left < right || left > right ? SW_BODY_SIDE_RIGHT
                     : SW_BODY_SIDE_NONE;
  return TRUE;
}

/**
 * sw_symmetry_is_alike:
 * @symmetry: how the sides compare
 * @threshold_percent: the greatest difference the clinic calls alike, 1..50
 *
 * Returns: whether the difference is at most that; compared before anything is rounded
 */
gboolean
sw_symmetry_is_alike (const SwSymmetry *symmetry,
                      int               threshold_percent)
{
  return symmetry->difference_percent <= threshold_percent + 1e-9;
}

/**
 * sw_symmetry_get_facts:
 * @n_facts: (out): how many
 *
 * Returns: (transfer none) (array length=n_facts): what is known of the sides of people without complaints; the words
 *   are marked for translation
 */
const SwSymmetryFact *
sw_symmetry_get_facts (guint *n_facts)
{
  *n_facts = G_N_ELEMENTS (facts);
  return facts;
}
