/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The suggested view shows the plane in which a limb moves. */
#include "config.h"

#include <math.h>

#include "case.h"
#include "sw-view.h"

static void
suggest (const char *xml,
         double     *turn_deg,
         double     *tilt_deg)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);

  sw_view_suggest (spec, turn_deg, tilt_deg);
  g_assert_cmpfloat (sw_view_score (spec, *turn_deg, *tilt_deg), >=, sw_view_score (spec, *turn_deg + 75, *tilt_deg));
}

static void
test_planes (void)
{
  double turn;
  double tilt;

  /* Forward: from the side. Sideways: from the front or the back. */
  suggest ("<pose base='standing'/><pose><hip side='right' bend='70'/><knee side='right' bend='70'/></pose>", &turn,
           &tilt);
  g_assert_cmpfloat (fabs (sin (turn * G_PI / 180)), >, 0.7);
  g_assert_cmpfloat (tilt, <, 30);
  suggest ("<pose base='standing'><shoulder side='both' raise='10' direction='0'/></pose><pose><shoulder side='both' "
           "raise='90'/></pose>",
           &turn, &tilt);
  g_assert_cmpfloat (fabs (cos (turn * G_PI / 180)), >, 0.7);
  /* Circles of outstretched arms: where the circle is seen as one. */
  suggest ("<pose base='standing'><shoulder side='both' raise='88' direction='0'/></pose>"
           "<motion kind='circle' show='right-hand left-hand' radius='12'/>",
           &turn, &tilt);
  g_assert_cmpfloat (fabs (sin (turn * G_PI / 180)), >, 0.2);
}

static void
test_lying (void)
{
  double turn;
  double tilt;

  suggest ("<pose base='on-back'/><pose><hip side='right' bend='46'/></pose>", &turn, &tilt);
  g_assert_cmpfloat (fabs (sin (turn * G_PI / 180)), >, 0.7);
  g_assert_cmpfloat (tilt, <, 30);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/view/planes", test_planes);
  g_test_add_func ("/view/lying", test_lying);
  return g_test_run ();
}
