/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text alternatives: short, true to the poses, with the right side named. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-enum-types.h"
#include "sw-figure.h"

static char *
text_of (const char *xml,
         gboolean    mirrored)
{
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
  g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, NULL);

  return sw_figure_dup_text (figure, phrases);
}

static void
test_words (void)
{
  const char *leg = "<pose base='on-back'/><pose><hip side='right' bend='46'/></pose><motion kind='there-and-back'/>";
  g_autofree char *right = text_of (leg, FALSE);
  const char *hand = "<pose base='standing'><shoulder side='right' raise='30' direction='90'/>"
                     "<elbow side='right' bend='150'/></pose>"
                     "<pose><fingers side='right' knuckle='80' curl='90'/></pose><view turn='90' frame='hand'/>";
  g_autofree char *fist = text_of (hand, TRUE);
  g_autofree char *left = text_of (leg, TRUE);
  g_autofree char *both = text_of (
      "<pose base='standing'/><pose><knee side='both' bend='40'/><hip side='both' bend='40'/></pose>", FALSE);
  g_autofree char *hold = text_of (
      "<pose base='side-lying'/><motion kind='still' hold='yes'/><prop kind='pillow' under='head'/>", FALSE);

  g_assert_cmpstr (fist, ==, "View into the palm. Left hand, close. Left fingers curl from 0 to 90 degrees. Left knuckles "
                             "bend from 0 to 80 degrees. Then back.");
  g_assert_cmpstr (right, ==, "Side view. Lying on the back. Right hip bends from -3 to 46 degrees. Then back.");
  g_assert_cmpstr (left, ==, "Side view. Lying on the back. Left hip bends from -3 to 46 degrees. Then back.");
  g_assert_nonnull (strstr (both, "Knees bend from 0 to 40 degrees."));
  g_assert_cmpstr (hold, ==, "Front view. Lying on the left side, with a pillow. Hold there.");
}

static void
test_short (void)
{
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      g_autofree char *text = sw_figure_dup_text (figure, phrases);
      g_auto (GStrv) words = g_strsplit (text, " ", -1);

      g_test_message ("%s", text);
      g_assert_cmpuint (g_strv_length (words), <=, strstr (text, "3:") != NULL ? 70 : 45);
      g_assert_cmpuint (g_strv_length (words), >=, 3);
      g_assert_null (strpbrk (text, "%{}"));
    }
}

/* In every language the text is whole, and its first letter a capital where there are capitals. */
static void
test_languages (void)
{
  g_auto (GStrv) languages = sw_phrases_list_languages ();
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, TRUE, NULL);

      for (guint j = 0; languages[j] != NULL; j++)
        {
          g_autoptr (SwPhrases) phrases = sw_phrases_new (languages[j], NULL);
          g_autofree char *text = sw_figure_dup_text (figure, phrases);

          g_test_message ("%s: %s", languages[j], text);
          g_assert_cmpint (g_utf8_strlen (text, -1), >=, 5);
          g_assert_null (strpbrk (text, "%{}~"));
          g_assert_false (g_unichar_islower (g_utf8_get_char (text)));
        }
    }
}

static void
test_steps (void)
{
  g_autofree char *text = text_of ("<pose base='face-down'/><pose base='standing'/><pose><hip side='left' bend='40'/>"
                                   "<knee side='left' bend='60'/></pose><motion kind='steps'/>",
                                   FALSE);

  g_assert_cmpstr (text, ==,
                   "1: Lying face down. 2: Standing. 3: Left knee bends from 0 to 60 degrees. Left hip bends from 0 to 40 "
                   "degrees.");
}

static void
check_nicks (SwPhrases  *phrases,
             const char *group,
             GType       type,
             int         first)
{
  g_autoptr (GEnumClass) class = g_type_class_ref (type);

  for (guint i = 0; i < class->n_values; i++)
    {
      g_autofree char *key = g_strconcat (group, ".", class->values[i].value_nick, NULL);

      if (class->values[i].value >= first && !sw_phrases_has (phrases, key))
        g_error ("no phrase %s", key);
    }
}

/* Every base, thing, mark and angle that a figure may have can be told. */
static void
test_complete (void)
{
  static const char *const sides[] = { "-right", "-left", "-both" };
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);
  g_autoptr (GEnumClass) bases = g_type_class_ref (SW_TYPE_FIGURE_BASE);

  for (guint i = 0; i < bases->n_values; i++)
    {
      g_autofree char *xml = g_strdup_printf ("<pose base='%s' on='left'/>", bases->values[i].value_nick);
      g_autofree char *text = text_of (xml, FALSE);
      g_autofree char *key = g_strconcat ("figure-base.", bases->values[i].value_nick, NULL);

      /* A base that lies or kneels on one side says which. */
      g_assert_true (sw_phrases_has (phrases, key) != (strstr (text, "left") != NULL));
    }
  check_nicks (phrases, "figure-prop", SW_TYPE_FIGURE_PROP, SW_FIGURE_PROP_CHAIR);
  check_nicks (phrases, "figure-mark", SW_TYPE_FIGURE_MARK, SW_FIGURE_MARK_HIPS);
  check_nicks (phrases, "figure-press", SW_TYPE_FIGURE_MARK, SW_FIGURE_MARK_HIPS);
  check_nicks (phrases, "figure-way", SW_TYPE_FIGURE_WAY, SW_FIGURE_WAY_UP);
  check_nicks (phrases, "figure-throw", SW_TYPE_FIGURE_THROWN, SW_FIGURE_THROWN_WALL);
  for (int i = 0; i < (int) SW_N_ANGLES; i++)
    {
      const SwAngleInfo *info = sw_angle_get_info ((SwAngle) i);

      for (int side = 0; side < (sw_angle_is_sided ((SwAngle) i) ? 3 : 1); side++)
        for (int less = 0; less < 2; less++)
          {
            g_autofree char *key
                = g_strconcat ("figure-angle.", info->element, "-", info->attribute,
                               sw_angle_is_sided ((SwAngle) i) ? sides[side] : "", less ? "-less" : "-more", NULL);

            if (!sw_phrases_has (phrases, key))
              g_error ("no phrase %s", key);
          }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/text/words", test_words);
  g_test_add_func ("/text/short", test_short);
  g_test_add_func ("/text/complete", test_complete);
  g_test_add_func ("/text/languages", test_languages);
  g_test_add_func ("/text/steps", test_steps);
  return g_test_run ();
}
