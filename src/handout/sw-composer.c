/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measures paragraphs, lists and boxes and sets them down as blocks. Here alone Pango is asked, and here alone its
 * units become points. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <fribidi.h>
#include <pango/pangocairo.h>

#include "sw-composer.h"
#include "sw-flow-lines.h"

/* Times the font's own line height (about 1.36 em in Noto Sans), so lines are some 1.25 em apart. */
#define LINE_FACTOR 0.92f
#define HEADING_LINE_FACTOR 0.88f
#define RAIL_PT 3.0
#define STRONG_GAP "  "
#define FIRST_STRONG_ISOLATE "\342\201\250"
#define POP_ISOLATE "\342\201\251"

/**
 * sw_text_is_set:
 * @text: (nullable): a text
 *
 * Returns: whether there is anything to print
 */
gboolean
sw_text_is_set (const char *text)
{
  return text != NULL && *text != '\0';
}

/* The direction of the first letter that has one (Unicode Standard Annex 9, rules P2 and P3). */
static FriBidiParType
find_direction (const char *text)
{
  glong n;
  g_autofree gunichar *letters = g_utf8_to_ucs4_fast (text, -1, &n);
  g_autofree FriBidiCharType *types = g_new (FriBidiCharType, n + 1);

  fribidi_get_bidi_types (letters, (FriBidiStrIndex) n, types);
  return fribidi_get_par_direction (types, (FriBidiStrIndex) n);
}

static gboolean
is_right_to_left (const char *text)
{
  return find_direction (text) == FRIBIDI_PAR_RTL;
}

static gboolean
is_left_to_right (const char *text)
{
  return find_direction (text) == FRIBIDI_PAR_LTR;
}

static PangoContext *
new_context (PangoFontMap *fonts,
             const char   *language,
             gboolean      right_to_left)
{
  PangoContext *context = pango_font_map_create_context (fonts);
  cairo_font_options_t *options = cairo_font_options_create ();

  /* Screen and paper must break lines alike, so nothing may be rounded to the pixels of either. */
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_cairo_context_set_resolution (context, 72.0);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_context_set_base_dir (context, right_to_left ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_context_set_language (context, pango_language_from_string (language));
  return context;
}

/**
 * sw_composer_init:
 * @fonts: a font map no other thread uses meanwhile
 * @phrases: words of the client's language
 * @options: what the handout is to look like
 * @clinic: whose number and address can be tapped
 * @before: (nullable): what was measured for the handout before
 */
void
sw_composer_init (SwComposer             *self,
                  PangoFontMap           *fonts,
                  SwPhrases              *phrases,
                  const SwHandoutOptions *options,
                  SwClinic               *clinic,
                SwMeasured             *before)
{
  *self = (SwComposer){
    .phrases = sw_phrases_ref (phrases),
    .layout = options->layout,
    .parts = options->parts,
    .form = options->form,
    .links = sw_links_new (phrases, clinic),
  };
  sw_style_init (&self->style, options);
  self->language = g_strdup (options->language);
  self->date = g_strdup (options->date);
  self->style.mirrored = is_right_to_left (sw_phrases_get (phrases, "front.title"));
  self->context = new_context (fonts, options->language, self->style.mirrored);
  self->measured = sw_measured_new (options->paper, self->style.body_pt, options->language, before);
  sw_composer_restart (self);
}

/**
 * sw_composer_isolate:
 * @text: a text of any origin within one of the handout's
 *
 * Among words written from right to left a telephone number would change the order of its groups, and words of the
 * other direction would lend their full stop to those around them (Unicode Standard Annex 9, 2.7: isolate them).
 *
 * Returns: (transfer full): the text; with its own direction where the handout is written from right to left
 */
char *
sw_composer_isolate (const SwComposer *self,
                     const char       *text)
{
  return self->style.mirrored ? g_strconcat (FIRST_STRONG_ISOLATE, text, POP_ISOLATE, NULL) : g_strdup (text);
}

/**
 * sw_composer_shows:
 * @part: a part that may be left out
 *
 * Returns: whether the handout shows it
 */
gboolean
sw_composer_shows (const SwComposer *self,
                   SwPagePart        part)
{
  return (self->parts & SW_SET (part)) != 0;
}

/**
 * sw_composer_restart:
 *
 * Forgets what has been composed, but not what has been measured and solved.
 */
void
sw_composer_restart (SwComposer *self)
{
  g_clear_pointer (&self->blocks, g_ptr_array_unref);
  sw_tags_clear (&self->tags);
  self->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_block_free);
  sw_tags_init (&self->tags);
  self->parent = sw_tags_add (&self->tags, NULL, "Document");
  self->left_pt = self->style.left_pt;
  self->width_pt = self->style.width_pt;
  self->frame_pt = 0.0;
  self->rail = FALSE;
  self->n_exercises = 0;
  self->n_checks = 0;
}

void
sw_composer_clear (SwComposer *self)
{
  g_clear_pointer (&self->phrases, sw_phrases_unref);
  g_clear_pointer (&self->language, g_free);
  g_clear_pointer (&self->date, g_free);
  g_clear_pointer (&self->blocks, g_ptr_array_unref);
  g_clear_pointer (&self->measured, sw_measured_free);
  g_clear_pointer (&self->links, g_array_unref);
  g_clear_object (&self->context);
  sw_tags_clear (&self->tags);
}

/**
 * sw_composer_open:
 * @name: structure type of an element that holds others
 *
 * Everything composed until the matching sw_composer_close() goes into it.
 */
SwTag *
sw_composer_open (SwComposer *self,
                  const char *name)
{
  self->parent = sw_tags_add (&self->tags, self->parent, name);
  return self->parent;
}

void
sw_composer_close (SwComposer *self)
{
  self->parent = self->parent->parent;
}

/* Whether one of the two is the other, or the other in some country: "en" and "en-GB". */
static gboolean
is_same_language (const char *one,
                  const char *other)
{
  gsize length = MIN (strlen (one), strlen (other));

  return g_ascii_strncasecmp (one, other, length) == 0 && strchr ("-", one[length]) != NULL
         && strchr ("-", other[length]) != NULL;
}

/**
 * sw_composer_find_other_language:
 * @language: BCP 47 tag of a text
 *
 * Returns: (transfer none) (nullable): the tag, interned, when the text is not in the handout's language
 */
const char *
sw_composer_find_other_language (SwComposer *self,
                                 const char *language)
{
  return is_same_language (self->language, language) ? NULL : g_intern_string (language);
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

static gsize
get_strong_length (const char *strong)
{
  return strong != NULL ? strlen (strong) + strlen (STRONG_GAP) : 0;
}

static PangoLayout *
new_layout (SwComposer *self,
            SwTextRole  role,
            int         width,
            const char *language,
            const char *strong,
            const char *text)
{
  PangoLayout *layout = pango_layout_new (self->context);
  g_autoptr (PangoFontDescription) font = sw_style_new_font (&self->style, role);
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *isolated = sw_composer_isolate (self, valid);
  g_autofree char *whole = strong != NULL ? g_strconcat (strong, STRONG_GAP, isolated, NULL) : NULL;
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_layout_set_font_description (layout, font);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, role <= SW_TEXT_NAME ? HEADING_LINE_FACTOR : LINE_FACTOR);
  pango_layout_set_width (layout, width);
  /* All begins at the right then; Pango itself swaps the sides of lines that run against the context's direction. */
  if (self->style.mirrored && !is_left_to_right (valid))
    pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);

  if (strong != NULL)
    {
      add_attribute (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD), 0, strlen (strong));
      pango_layout_set_text (layout, whole, -1);
    }
  else
    pango_layout_set_text (layout, valid, -1);
  if (language != NULL)
    add_attribute (attributes, pango_attr_language_new (pango_language_from_string (language)),
                   get_strong_length (strong), G_MAXUINT);
  /* A word too long for its line is divided, but a mail address must not get a hyphen that is none of its own. */
  add_attribute (attributes, pango_attr_insert_hyphens_new (FALSE), 0, G_MAXUINT);
  pango_layout_set_attributes (layout, attributes);

  return layout;
}

static PangoLayout *
get_layout (SwComposer *self,
            SwTextRole  role,
            double      width_pt,
            const char *language,
            const char *strong,
            const char *text)
{
  int width = width_pt < 0.0 ? -1 : (int) floor (MAX (width_pt, 1.0) * PANGO_SCALE);
  g_autofree char *key = g_strdup_printf ("%d %d %s %s\n%s", role, width, language != NULL ? language : "",
                                          strong != NULL ? strong : "", text);
  PangoLayout *layout = sw_measured_get_layout (self->measured, key);

  if (layout == NULL)
    {
      layout = new_layout (self, role, width, language, strong, text);
      sw_measured_add_layout (self->measured, g_steal_pointer (&key), layout);
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
  return get_layout (self, role, width_pt, NULL, strong, text);
}

/**
 * sw_composer_begin:
 *
 * Begins a block the width of what is composed now.
 *
 * Returns: its column; finish with sw_composer_end()
 */
SwFlow
sw_composer_begin (SwComposer *self)
{
  SwFlow flow = {
    .composer = self,
    .block = sw_block_new (),
    .left_pt = self->left_pt,
    .width_pt = self->width_pt,
    .y_pt = self->frame_pt > 0.0 && self->frame_starts ? 0.45 * self->style.body_pt : 0.0,
  };

  return flow;
}

static void
add_frame (SwFlow *flow,
           double  line_pt)
{
  SwComposer *self = flow->composer;
  double sides[] = { self->frame_left_pt, self->frame_left_pt + self->frame_width_pt - line_pt };

  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      SwPiece *side = sw_block_add (flow->block, SW_PIECE_BOX, NULL, sides[i], 0.0, line_pt, flow->y_pt);

      side->reaches_up = !self->frame_starts;
    }

  if (self->frame_starts)
    sw_flow_box (flow, self->frame_left_pt, 0.0, self->frame_width_pt, line_pt, SW_GREY_TEXT);
  self->frame_starts = FALSE;
}

/**
 * sw_composer_end:
 * @flow: the column whose end is the end of the block
 * @space_pt: white space before the block, unless it starts a page
 * @keep: whether a page may end after it
 */
void
sw_composer_end (SwFlow *flow,
                 double  space_pt,
                 SwKeep  keep)
{
  SwComposer *self = flow->composer;

  if (self->frame_pt > 0.0)
    add_frame (flow, self->frame_pt);
  if (self->rail)
    {
      SwPiece *rail
          = sw_block_add (flow->block, SW_PIECE_BOX, NULL, self->style.left_pt, 0.0, RAIL_PT, flow->y_pt);

      rail->reaches_up = !self->rail_starts;
      self->rail_starts = FALSE;
      rail->grey = SW_GREY_RULE;
    }

  flow->block->strip = (SwStrip){ .height_pt = flow->y_pt, .space_pt = space_pt, .keep = keep };
  g_ptr_array_add (self->blocks, g_steal_pointer (&flow->block));
}

/**
 * sw_composer_set_last_keep:
 * @keep: whether a page may end after the last block composed
 */
void
sw_composer_set_last_keep (SwComposer *self,
                           SwKeep      keep)
{
  if (self->blocks->len > 0)
    {
      SwBlock *last = g_ptr_array_index (self->blocks, self->blocks->len - 1);

      last->strip.keep = keep;
    }
}

/**
 * sw_composer_open_frame:
 * @line_pt: width of its line
 *
 * What is composed until sw_composer_close_frame() stands in a frame, which may go on over pages.
 */
void
sw_composer_open_frame (SwComposer *self,
                        double      line_pt)
{
  double pad_pt = 0.9 * self->style.body_pt;

  self->frame_pt = line_pt;
  self->frame_starts = TRUE;
  self->frame_left_pt = self->left_pt;
  self->frame_width_pt = self->width_pt;
  self->left_pt += pad_pt;
  self->width_pt -= 2.0 * pad_pt;
}

void
sw_composer_close_frame (SwComposer *self)
{
  SwBlock *last = g_ptr_array_index (self->blocks, self->blocks->len - 1);
  double more_pt = 0.5 * self->style.body_pt;

  for (guint i = 0; i < last->pieces->len; i++)
    {
      SwPiece *piece = &g_array_index (last->pieces, SwPiece, i);

      if (piece->kind == SW_PIECE_BOX && piece->tag == NULL && piece->height_pt == last->strip.height_pt)
        piece->height_pt += more_pt;
    }
  last->strip.height_pt += more_pt;
  sw_block_add (last, SW_PIECE_BOX, NULL, self->frame_left_pt, last->strip.height_pt - self->frame_pt,
                self->frame_width_pt, self->frame_pt);

  self->left_pt = self->frame_left_pt;
  self->width_pt = self->frame_width_pt;
  self->frame_pt = 0.0;
}

/**
 * sw_composer_paragraph:
 * @role: decides size and weight
 * @tag_name: structure type, "P" or a heading
 * @strong: (nullable): words in bold before the text
 * @text: the text, of any length
 * @space_pt: white space before it
 * @keep: whether a page may end after it
 *
 * Sets a paragraph as a block of its own. One that would take more than half a page is divided between lines, so
 * that no text of any length can run off the paper.
 */
void
sw_composer_paragraph (SwComposer *self,
                       SwTextRole  role,
                       const char *tag_name,
                       const char *strong,
                       const char *text,
                       double      space_pt,
                       SwKeep      keep)
{
  PangoLayout *layout = sw_composer_get_layout (self, role, self->width_pt, strong, text);
  int n_lines = pango_layout_get_line_count (layout);
  double line_pt = sw_lines_get_height_pt (layout, 0, n_lines, NULL) / n_lines;
  int most = MAX (1, (int) (0.5 * self->style.page_height_pt / line_pt));
  SwTag *tag = sw_tags_add (&self->tags, self->parent, tag_name);

  for (int first = 0; first < n_lines; first += most)
    {
      int n = MIN (most, n_lines - first);
      SwFlow flow = sw_composer_begin (self);

      sw_flow_lines (&flow, role, n_lines <= most ? tag : sw_tags_add (&self->tags, tag, "Span"), layout,
                     get_strong_length (strong), first, n);
      sw_composer_end (&flow, first == 0 ? space_pt : 0.0, first + n < n_lines ? SW_KEEP_TOGETHER : keep);
    }
}

/**
 * sw_flow_entry:
 * @item_id: (nullable): the item that is told in this column
 * @outline: (nullable): its line in the outline
 * @outline_level: 1 for a session, 2 for an exercise
 */
void
sw_flow_entry (SwFlow     *flow,
               const char *item_id,
               const char *outline,
               int         outline_level)
{
  SwEntry entry = {
    .item_id = (char *) item_id,
    .is_exercise = item_id != NULL && outline_level == 2,
    .outline = (char *) outline,
    .outline_level = outline_level,
    .left_pt = flow->left_pt,
    .width_pt = flow->width_pt,
  };

  sw_block_add_entry (flow->block, &entry);
}

void
sw_flow_space (SwFlow *flow,
               double  points)
{
  flow->y_pt += points;
}

/**
 * sw_flow_text:
 * @tag: (nullable): the element whose content this is
 * @strong: (nullable): words in bold before the text
 */
void
sw_flow_text (SwFlow     *flow,
              SwTextRole  role,
              SwTag      *tag,
              const char *strong,
              const char *text)
{
  PangoLayout *layout = get_layout (flow->composer, role, flow->width_pt, flow->language, strong, text);

  sw_flow_lines (flow, role, tag, layout, get_strong_length (strong), 0, pango_layout_get_line_count (layout));
}

/**
 * sw_flow_text_in:
 * @tag_name: structure type of a new element for the text
 */
void
sw_flow_text_in (SwFlow     *flow,
                 SwTextRole  role,
                 const char *tag_name,
                 const char *text)
{
  SwComposer *self = flow->composer;

  sw_flow_text (flow, role, sw_tags_add (&self->tags, self->parent, tag_name), NULL, text);
}

/**
 * sw_flow_item:
 * @list: an element of type L
 * @symbol: the sign before the text
 *
 * An item of a list without numbers.
 */
void
sw_flow_item (SwFlow     *flow,
              SwTextRole  role,
              SwTag      *list,
              SwSymbol    symbol,
              const char *text)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, role);
  double indent_pt = 1.35 * size_pt;
  SwFlow column = *flow;
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwTag *body = sw_tags_add (&self->tags, item, "LBody");

  sw_flow_symbol (flow, symbol, flow->left_pt, flow->y_pt + 0.22 * size_pt, 0.88 * size_pt, SW_GREY_TEXT);
  column.left_pt += indent_pt;
  column.width_pt -= indent_pt;
  sw_flow_text (&column, role, body, NULL, text);
  flow->y_pt = column.y_pt;
}

/**
 * sw_flow_numbered_item:
 * @list: an element of type L
 * @number: from 1
 */
void
sw_flow_numbered_item (SwFlow     *flow,
                       SwTextRole  role,
                       SwTag      *list,
                       int         number,
                       const char *text)
{
  SwComposer *self = flow->composer;
  double indent_pt = (number < 10 ? 1.35 : 1.9) * sw_style_get_size_pt (&self->style, role);
  g_autofree char *label = g_strdup_printf ("%d.", number);
  SwFlow column = *flow;
  SwFlow label_column = *flow;
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwTag *label_tag = sw_tags_add (&self->tags, item, "Lbl");
  SwTag *body = sw_tags_add (&self->tags, item, "LBody");

  label_column.width_pt = 2.0 * indent_pt;
  label_column.language = NULL;
  sw_flow_text (&label_column, role == SW_TEXT_SMALL ? SW_TEXT_SMALL_STRONG : SW_TEXT_STRONG, label_tag, NULL, label);
  column.left_pt += indent_pt;
  column.width_pt -= indent_pt;
  sw_flow_text (&column, role, body, NULL, text);
  flow->y_pt = column.y_pt;
}

/**
 * sw_flow_list:
 * @symbol: the sign before each text
 * @texts: (array zero-terminated=1): the items, at least one
 */
void
sw_flow_list (SwFlow             *flow,
              SwTextRole          role,
              SwSymbol            symbol,
              const char * const *texts)
{
  SwComposer *self = flow->composer;
  SwTag *list = sw_tags_add (&self->tags, self->parent, "L");

  list->numbering = "Disc";
  for (guint i = 0; texts[i] != NULL; i++)
    {
      if (i > 0)
        sw_flow_space (flow, 0.08 * self->style.body_pt);
      sw_flow_item (flow, role, list, symbol, texts[i]);
    }
}

void
sw_flow_symbol (SwFlow  *flow,
                SwSymbol symbol,
                double   x_pt,
                double   y_pt,
                double   size_pt,
                double   grey)
{
  SwPiece *piece = sw_block_add (flow->block, SW_PIECE_SYMBOL, NULL, x_pt, y_pt, size_pt, size_pt);

  piece->symbol = symbol;
  piece->grey = grey;
}

void
sw_flow_box (SwFlow *flow,
             double  x_pt,
             double  y_pt,
             double  width_pt,
             double  height_pt,
             double  grey)
{
  SwPiece *piece = sw_block_add (flow->block, SW_PIECE_BOX, NULL, x_pt, y_pt, width_pt, height_pt);

  piece->grey = grey;
}

/**
 * sw_flow_boxed:
 * @symbol: the sign in the box
 * @frame_pt: width of the frame's line; the heavier the more it matters
 * @heading: words in bold that stand first
 *
 * A short text in a box the width of the column: frame, sign and heading words, so that it needs no colour.
 */
void
sw_flow_boxed (SwFlow     *flow,
               SwSymbol    symbol,
               double      frame_pt,
               SwTextRole  role,
               const char *heading,
               const char *text)
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  double pad_pt = 0.4 * body_pt;
  double sign_pt = 1.4 * body_pt;
  double top_pt = flow->y_pt;
  SwFlow inner = *flow;
  double height_pt;

  sw_flow_symbol (flow, symbol, flow->left_pt + pad_pt + frame_pt, top_pt + frame_pt + pad_pt, sign_pt,
                  SW_GREY_TEXT);
  inner.left_pt += frame_pt + 1.9 * pad_pt + sign_pt;
  inner.width_pt -= 2.0 * frame_pt + 2.9 * pad_pt + sign_pt;
  inner.y_pt += frame_pt + pad_pt;
  sw_flow_text (&inner, role, sw_tags_add (&self->tags, self->parent, "P"), heading, text);
  height_pt = MAX (inner.y_pt - top_pt, frame_pt + pad_pt + sign_pt) + pad_pt + frame_pt;

  sw_flow_box (flow, flow->left_pt, top_pt, flow->width_pt, frame_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt, top_pt + height_pt - frame_pt, flow->width_pt, frame_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt, top_pt, frame_pt, height_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt + flow->width_pt - frame_pt, top_pt, frame_pt, height_pt, SW_GREY_TEXT);
  flow->y_pt = top_pt + height_pt;
}

/**
 * sw_flow_signed:
 * @symbol: the sign at the beginning
 * @heading: words in bold that stand first
 *
 * A short text with a sign before it, without a box.
 */
void
sw_flow_signed (SwFlow     *flow,
                SwSymbol    symbol,
                SwTextRole  role,
                const char *heading,
                const char *text)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, role);
  double sign_pt = 1.25 * size_pt;
  SwFlow inner = *flow;

  sw_flow_symbol (flow, symbol, flow->left_pt, flow->y_pt + 0.05 * size_pt, sign_pt, SW_GREY_TEXT);
  inner.left_pt += sign_pt + 0.4 * size_pt;
  inner.width_pt -= sign_pt + 0.4 * size_pt;
  sw_flow_text (&inner, role, sw_tags_add (&self->tags, self->parent, "P"), heading, text);
  flow->y_pt = MAX (inner.y_pt, flow->y_pt + sign_pt);
}
