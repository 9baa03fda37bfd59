/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A ruler against Pango itself: the same lines at every width. */
#include "config.h"

#include <pango/pangocairo.h>

#include "sw-ruler.h"

#define SIZE_PT 12.0

/* @off: by how many lines it may be off. */
typedef struct
{
  const char *text;
  int off;
} Case;

static PangoLayout *
new_layout (const char *text)
{
  g_autoptr (PangoFontMap) fonts = pango_cairo_font_map_new ();
  PangoContext *context = pango_font_map_create_context (fonts);
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("Noto Sans");
  PangoLayout *layout = pango_layout_new (context);

  pango_context_set_round_glyph_positions (context, FALSE);
  pango_font_description_set_absolute_size (font, SIZE_PT * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, 0.92f);
  pango_layout_set_text (layout, text, -1);
  g_object_unref (context);
  return layout;
}

static int
get_space (void)
{
  g_autoptr (PangoLayout) layout = new_layout (" ");
  int width;

  pango_layout_get_size (layout, &width, NULL);
  return width;
}

static SwRuler *
new_ruler (const char *text,
           int         width)
{
  g_autoptr (PangoLayout) layout = new_layout (text);

  pango_layout_set_width (layout, width);
  return sw_ruler_new (layout, get_space ());
}

static void
test_lines (gconstpointer data)
{
  const char *text = ((const Case *) data)->text;
  int off = ((const Case *) data)->off;
  g_autoptr (PangoLayout) layout = new_layout (text);
  g_autoptr (SwRuler) wide = new_ruler (text, -1);
  g_autoptr (SwRuler) narrow = new_ruler (text, 70 * PANGO_SCALE);

  for (int width = 70 * PANGO_SCALE; width < 500 * PANGO_SCALE; width += 7 * PANGO_SCALE)
    {
      int n_lines;
      int height;

      pango_layout_set_width (layout, width);
      pango_layout_get_size (layout, NULL, &height);
      n_lines = pango_layout_get_line_count (layout);
      g_assert_cmpint (ABS (sw_ruler_count_lines (wide, width) - n_lines), <=, off);
      g_assert_cmpint (ABS (sw_ruler_count_lines (narrow, width) - n_lines), <=, off);
      g_assert_cmpfloat_with_epsilon (sw_ruler_get_height_pt (wide, width), (double) height / PANGO_SCALE,
                                      0.01 + off * 1.5 * SIZE_PT);
    }
}

int
main (int    argc,
      char **argv)
{
  /* Where a text needs several fonts, it may be off by a little: enough to choose by. */
  static const Case words = { "Stand tall, feet as wide as your hips. Slide one foot back - slowly!", 0 };
  static const Case word = { "Slowly", 0 };
  static const Case empty = { "", 0 };
  static const Case lines = { "First one thing.\nThen another, which is a longer one.\n\nThen rest.", 0 };
  static const Case kept = { "Hold for 30\302\240seconds, then rest for 1\302\240minute  and  go on.", 0 };
  static const Case chinese = { "双脚与臀同宽站立。一只脚慢慢向后滑动，身体保持直立，然后换另一侧。", 1 };
  static const Case hebrew = { "עמדו זקוף, כפות הרגליים ברוחב האגן. החליקו רגל אחת 10 פעמים לאחור.", 1 };
  static const Case several = { "Heben Sie das Bein: एक दो तीन 十. Zehn Mal, dann links.", 1 };

  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/handout/ruler/words", &words, test_lines);
  g_test_add_data_func ("/handout/ruler/word", &word, test_lines);
  g_test_add_data_func ("/handout/ruler/empty", &empty, test_lines);
  g_test_add_data_func ("/handout/ruler/lines", &lines, test_lines);
  g_test_add_data_func ("/handout/ruler/kept-together", &kept, test_lines);
  g_test_add_data_func ("/handout/ruler/chinese", &chinese, test_lines);
  g_test_add_data_func ("/handout/ruler/hebrew", &hebrew, test_lines);
  g_test_add_data_func ("/handout/ruler/several-fonts", &several, test_lines);
  return g_test_run ();
}
