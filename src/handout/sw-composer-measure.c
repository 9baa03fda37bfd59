/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measures texts, each only once for a width, and tells how tall they would be without measuring them again. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <fribidi.h>

#include "sw-composer.h"

/* Times the font's own line height (about 1.36 em in Noto Sans), so lines are some 1.25 em apart. */
#define LINE_FACTOR 0.92f
#define HEADING_LINE_FACTOR 0.88f
#define STRONG_GAP "  "
#define FIRST_STRONG_ISOLATE "\342\201\250"
#define POP_ISOLATE "\342\201\251"

/* Whether the first letter that has a direction leads to the right (Unicode Standard Annex 9, rules P2 and P3). */
static gboolean
is_left_to_right (const char *text)
{
  glong n;
  g_autofree gunichar *letters = g_utf8_to_ucs4_fast (text, -1, &n);
  g_autofree FriBidiCharType *types = g_new (FriBidiCharType, n + 1);

  fribidi_get_bidi_types (letters, (FriBidiStrIndex) n, types);
  return fribidi_get_par_direction (types, (FriBidiStrIndex) n) == FRIBIDI_PAR_LTR;
}

/**
 * sw_composer_get_strong_length:
 * @strong: (nullable): words in bold that stand before a text
 *
 * Returns: how many bytes they take in the measured text, with the gap behind them
 */
gsize
sw_composer_get_strong_length (const char *strong)
{
  return strong != NULL ? strlen (strong) + strlen (STRONG_GAP) : 0;
}

/* Words in bold and a text behind them. Among words written from right to left those of the other direction would lend
 * their full stop to the others (Unicode Standard Annex 9, 2.7: isolate them). */
static char *
join_strong (SwComposer *self,
             const char *strong,
             const char *text)
{
  if (self->style.mirrored)
    return g_strconcat (strong, STRONG_GAP, FIRST_STRONG_ISOLATE, text, POP_ISOLATE, NULL);
  return g_strconcat (strong, STRONG_GAP, text, NULL);
}

static void
add_attribute (PangoAttrList  *attributes,
               PangoAttribute *attribute,
               gsize           start,
               gsize           end)
{
  attribute->start_index = (guint) start;
  attribute->end_index = (guint) end;
  pango_attr_list_insert (attributes, attribute);
}

static PangoAttrList *
new_attributes (SwComposer *self,
                const char *strong)
{
  PangoAttrList *attributes;

  if (strong == NULL && self->text_language == NULL)
    return pango_attr_list_ref (self->plain);

  attributes = pango_attr_list_copy (self->plain);
  if (strong != NULL)
    add_attribute (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD), 0, strlen (strong));
  if (self->text_language != NULL)
    add_attribute (attributes, pango_attr_language_new (pango_language_from_string (self->text_language)),
                   sw_composer_get_strong_length (strong), G_MAXUINT);
  return attributes;
}

static PangoLayout *
new_layout (SwComposer *self,
            SwTextRole  role,
            int         width,
            const char *strong,
            const char *text)
{
  PangoLayout *layout = pango_layout_new (self->contexts[role]);
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *whole = strong != NULL ? join_strong (self, strong, valid) : g_strdup (valid);
  g_autoptr (PangoAttrList) attributes = new_attributes (self, strong);

  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, role <= SW_TEXT_NAME ? HEADING_LINE_FACTOR : LINE_FACTOR);
  pango_layout_set_width (layout, width);
  /* All begins at the right then; Pango itself swaps the sides of lines that run against the context's direction. */
  if (self->style.mirrored && !is_left_to_right (strong != NULL ? strong : valid))
    pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);

  pango_layout_set_text (layout, whole, -1);
  pango_layout_set_attributes (layout, attributes);

  return layout;
}

static int
get_units (double width_pt)
{
  return width_pt < 0.0 ? -1 : (int) floor (MAX (width_pt, 1.0) * PANGO_SCALE);
}

/* Names a text and how it is set; with @width also the room it has. */
static char *
make_key (SwComposer *self,
          SwTextRole  role,
          const char *width,
          const char *strong,
          const char *text)
{
  return g_strdup_printf ("%d %s %s %s\n%s", role, width, self->text_language != NULL ? self->text_language : "",
                          strong != NULL ? strong : "", text);
}

static PangoLayout *
get_layout (SwComposer *self,
            SwTextRole  role,
            int         width,
            const char *strong,
            const char *text,
            gboolean    needed)
{
  char width_text[16];
  g_autofree char *key = NULL;
  PangoLayout *layout;

  g_snprintf (width_text, sizeof width_text, "%d", width);
  key = make_key (self, role, width_text, strong, text);
  layout = sw_measured_get_layout (self->measured, key);
  if (layout == NULL)
    {
      layout = new_layout (self, role, width, strong, text);
      sw_measured_add_layout (self->measured, g_steal_pointer (&key), layout, needed);
    }
  return layout;
}

/**
 * sw_composer_get_layout:
 * @role: decides size and weight
 * @width_pt: room for a line; below 0 for unlimited
 * @strong: (nullable): words in bold that stand before the text on the same line
 * @text: the text, of any origin
 *
 * Returns: (transfer none): the measured text; shared, so not to be changed
 */
PangoLayout *
sw_composer_get_layout (SwComposer *self,
                        SwTextRole  role,
                        double      width_pt,
                        const char *strong,
                        const char *text)
{
  return get_layout (self, role, get_units (width_pt), strong, text, TRUE);
}

/**
 * sw_composer_get_height_pt:
 * @role: decides size and weight
 * @width_pt: room for a line
 * @strong: (nullable): words in bold that stand before the text on the same line
 * @text: the text, of any origin
 *
 * Returns: how tall the text would be; known without shaping it once more when it has been asked for at another width
 */
double
sw_composer_get_height_pt (SwComposer *self,
                           SwTextRole  role,
                           double      width_pt,
                           const char *strong,
                           const char *text)
{
  g_autofree char *key = make_key (self, role, "", strong, text);
  SwRuler *ruler = sw_measured_get_ruler (self->measured, key);

  if (ruler == NULL)
    {
      int space;

      pango_layout_get_size (get_layout (self, role, -1, NULL, " ", TRUE), &space, NULL);
      ruler = sw_ruler_new (get_layout (self, role, get_units (width_pt), strong, text, FALSE), space);
      sw_measured_add_ruler (self->measured, g_steal_pointer (&key), ruler);
    }
  return sw_ruler_get_height_pt (ruler, get_units (width_pt));
}
