/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measures paragraphs and items and sets them down as blocks, columns (sw-flow.c) as blocks of their own. Pango is asked
 * in these two files alone, and there its units become points. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <pango/pangocairo.h>

#include "sw-composer.h"

#define RAIL_PT 3.0
#define LONGEST_NAME 80

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

/**
 * sw_text_dup_whole:
 * @text: a name or title
 *
 * Returns: (transfer full): all of it as one paragraph, for where it may take as many lines as it needs: what somebody
 *   must heed may stand at its end
 */
char *
sw_text_dup_whole (const char *text)
{
  return g_strdelimit (g_utf8_make_valid (text, -1), "\n", ' ');
}

/**
 * sw_text_dup_short:
 * @text: a name or title
 *
 * Returns: (transfer full): the same, or its beginning with an ellipsis where it is longer than any name needs to be;
 *   for where there is no more room
 */
char *
sw_text_dup_short (const char *text)
{
  g_autofree char *line = sw_text_dup_whole (text);
  g_autofree char *start = NULL;

  if (g_utf8_strlen (line, -1) <= LONGEST_NAME)
    return g_steal_pointer (&line);

  start = g_utf8_substring (line, 0, LONGEST_NAME - 1);
  return g_strconcat (start, "…", NULL);
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
 * @clinic: whose handout it is; must outlive the composing
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
    .clinic = clinic,
    .links = sw_links_new (phrases, clinic),
    .check_pages = g_array_new (FALSE, TRUE, sizeof (int)),
  };
  sw_style_init (&self->style, options);
  self->language = g_strdup (options->language);
  self->date = g_strdup (options->date);
  self->captions = TRUE;
  self->style.mirrored = sw_phrases_is_right_to_left (phrases);
  for (SwTextRole role = 0; role < G_N_ELEMENTS (self->contexts); role++)
    {
      g_autoptr (PangoFontDescription) font = sw_style_new_font (&self->style, role);

      self->contexts[role] = new_context (fonts, options->language, self->style.mirrored);
      pango_context_set_font_description (self->contexts[role], font);
    }
  self->plain = pango_attr_list_new ();
  /* A word too long for its line is divided, but a mail address must not get a hyphen that is none of its own. */
  pango_attr_list_insert (self->plain, pango_attr_insert_hyphens_new (FALSE));
  self->measured = sw_measured_new (options->paper, self->style.body_pt, self->style.least_pt, options->language,
                                    phrases, before);
  self->doses = sw_doses_new (phrases);
  sw_composer_restart (self);
}

/* Whether one of the two is the other, or the other in some country: "en" and "en-GB". */
static gboolean
is_same_language (const char *one,
                  const char *other)
{
  gsize length = MIN (strlen (one), strlen (other));

  return g_ascii_strncasecmp (one, other, length) == 0 && (one[length] == '\0' || one[length] == '-')
         && (other[length] == '\0' || other[length] == '-');
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
  g_clear_pointer (&self->heads, g_ptr_array_unref);
  sw_tags_clear (&self->tags);
  self->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_block_free);
  self->heads = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_block_free);
  self->head = NULL;
  sw_tags_init (&self->tags);
  self->parent = sw_tags_add (&self->tags, NULL, "Document");
  self->left_pt = self->style.left_pt;
  self->width_pt = self->style.width_pt;
  self->frame_pt = 0.0;
  self->rail = FALSE;
  self->n_exercises = 0;
  self->n_checks = 0;
  self->text_language = NULL;
}

void
sw_composer_clear (SwComposer *self)
{
  g_clear_pointer (&self->phrases, sw_phrases_unref);
  g_clear_pointer (&self->language, g_free);
  g_clear_pointer (&self->date, g_free);
  g_clear_pointer (&self->blocks, g_ptr_array_unref);
  g_clear_pointer (&self->heads, g_ptr_array_unref);
  g_clear_pointer (&self->measured, sw_measured_free);
  g_clear_pointer (&self->doses, sw_doses_free);
  g_clear_pointer (&self->links, g_array_unref);
  g_clear_pointer (&self->check_pages, g_array_unref);
  for (guint i = 0; i < G_N_ELEMENTS (self->contexts); i++)
    g_clear_object (&self->contexts[i]);
  g_clear_pointer (&self->plain, pango_attr_list_unref);
  g_clear_object (&self->logo);
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

static void
add_rail (SwComposer *self,
          SwBlock    *block,
          double      height_pt,
          gboolean    reaches_up)
{
  SwPiece *rail = sw_block_add (block, SW_PIECE_BOX, NULL, self->style.left_pt, 0.0, RAIL_PT, height_pt);

  rail->reaches_up = reaches_up;
  rail->grey = SW_GREY_RULE;
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
      add_rail (self, flow->block, flow->y_pt, !self->rail_starts);
      self->rail_starts = FALSE;
    }

  flow->block->strip = (SwStrip){ .height_pt = flow->y_pt, .space_pt = space_pt, .keep = keep };
  flow->block->head = self->head;
  if (self->head != NULL)
    flow->block->strip.head_pt = self->head->strip.height_pt;
  g_ptr_array_add (self->blocks, g_steal_pointer (&flow->block));
}

/**
 * sw_composer_set_head:
 * @flow: a column with what is repeated, or %NULL to repeat nothing from now on
 *
 * What is composed from now on has this above it wherever a page begins within it. It belongs to no element of the
 * structure: whoever does not see the pages hears it once.
 */
void
sw_composer_set_head (SwComposer *self,
                      SwFlow     *flow)
{
  self->head = flow != NULL ? g_steal_pointer (&flow->block) : NULL;
  if (self->head == NULL)
    return;
  if (self->rail)
    add_rail (self, self->head, flow->y_pt, FALSE);
  self->head->strip = (SwStrip){ .height_pt = flow->y_pt, .keep = SW_KEEP_TOGETHER };
  g_ptr_array_add (self->heads, self->head);
}

/**
 * sw_composer_keep_together:
 * @first: a block
 *
 * No page ends within what was composed from that block on, as far as it has room on one.
 */
void
sw_composer_keep_together (SwComposer *self,
                           guint       first)
{
  const SwStyle *style = &self->style;
  double room_pt = style->page_height_pt - (first == 0 ? style->top_pt : style->later_top_pt) - style->bottom_pt;
  double height_pt = 0.0;

  for (guint i = first; i < self->blocks->len; i++)
    {
      const SwBlock *block = g_ptr_array_index (self->blocks, i);

      height_pt += block->strip.height_pt + (i > first ? block->strip.space_pt : 0.0);
    }
  for (guint i = first; i + 1 < self->blocks->len && height_pt <= room_pt; i++)
    {
      SwBlock *block = g_ptr_array_index (self->blocks, i);

      if (block->strip.keep == SW_KEEP_FREE)
        block->strip.keep = SW_KEEP_TOGETHER;
    }
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
 * sw_composer_start_page:
 *
 * What is composed next starts a page, unless a heading stands before it that it belongs to.
 */
void
sw_composer_start_page (SwComposer *self)
{
  if (self->blocks->len > 0
      && ((SwBlock *) g_ptr_array_index (self->blocks, self->blocks->len - 1))->strip.keep == SW_KEEP_FREE)
    sw_composer_set_last_keep (self, SW_KEEP_NEVER);
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
