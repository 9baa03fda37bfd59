/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether this computer has letters for a language. A client must not get pages of empty boxes, nor sentences with a
 * word missing. */
#include "config.h"

#include <glib/gi18n.h>
#include <pango/pangofc-font.h>

#include "sw-font-check.h"
#include "sw-handout.h"

/**
 * sw_font_is_lossy:
 * @font: a font that Pango chose
 *
 * Fonts with CFF outlines lose letters on the way to PDF: cairo 1.16 leaves out, without a word, characters of
 * Noto Sans CJK such as U+5982.
 *
 * Returns: whether it is such a font
 */
gboolean
sw_font_is_lossy (PangoFont *font)
{
  FcPattern *pattern = PANGO_IS_FC_FONT (font) ? pango_fc_font_get_pattern (PANGO_FC_FONT (font)) : NULL;
  FcChar8 *format = NULL;

  return pattern != NULL && FcPatternGetString (pattern, FC_FONTFORMAT, 0, &format) == FcResultMatch
         && g_str_equal ((const char *) format, "CFF");
}

static gboolean
has_lossy_run (PangoLayout *layout)
{
  for (GSList *lines = pango_layout_get_lines_readonly (layout); lines != NULL; lines = lines->next)
    for (GSList *runs = ((PangoLayoutLine *) lines->data)->runs; runs != NULL; runs = runs->next)
      if (sw_font_is_lossy (((PangoLayoutRun *) runs->data)->item->analysis.font))
        return TRUE;

  return FALSE;
}

/**
 * sw_font_check:
 * @context: what the handout is measured with
 * @error: return location for %SW_HANDOUT_ERROR_FONT
 *
 * Returns: whether the warning that every handout carries can be printed in full
 */
gboolean
sw_font_check (PangoContext   *context,
               const SwStyle  *style,
               SwPhrases      *phrases,
               GError        **error)
{
  static const SwTextRole roles[] = { SW_TEXT_NAME, SW_TEXT_SMALL };

  for (guint i = 0; i < G_N_ELEMENTS (roles); i++)
    {
      g_autoptr (PangoLayout) layout = pango_layout_new (context);
      g_autoptr (PangoFontDescription) font = sw_style_new_font (style, roles[i]);
      g_autofree char *text = g_strjoin ("\n", sw_phrases_get (phrases, "stop.heading"),
                                         sw_phrases_get (phrases, "stop.stroke"),
                                         sw_phrases_get (phrases, "stop.first"), NULL);

      pango_layout_set_font_description (layout, font);
      pango_layout_set_text (layout, text, -1);
      if (pango_layout_get_unknown_glyphs_count (layout) == 0 && !has_lossy_run (layout))
        continue;

      g_set_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_FONT,
                   _("This computer has no font that can print the language “%s” in full. Install a TrueType font for "
                     "it (for Chinese WenQuanYi Micro Hei, for others Noto Sans), or choose another language for the "
                     "client."),
                   sw_phrases_get_language (phrases));
      return FALSE;
    }

  return TRUE;
}
