/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a part of an exercise takes least room is found by trying several widths. Pango would shape the words anew at
 * each; their widths stay the same, and breaking lines is adding them up. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-ruler.h"

/* How tall the fonts of a word or a line are. */
typedef struct
{
  int ascent;
  int descent;
  int height;
} Tall;

/* @ink: all but a space at its end; @space: that; @ends: whether a line always ends behind it. */
typedef struct
{
  int ink;
  int space;
  Tall tall;
  gboolean ends;
} Word;

/* @factor: of a line's own height, from one line to the next; @empty: how tall a line without words is. */
struct _SwRuler
{
  double factor;
  int empty;
  guint n_words;
  Word words[];
};

typedef struct
{
  int width;
  Tall tall;
} Letter;

static void
join (Tall       *one,
      const Tall *other)
{
  one->ascent = MAX (one->ascent, other->ascent);
  one->descent = MAX (one->descent, other->descent);
  one->height = MAX (one->height, other->height);
}

/* As Pango tells lines apart. */
static Tall
get_tall (PangoGlyphItem *run)
{
  PangoFont *font = run->item->analysis.font;
  PangoFontMetrics *metrics = pango_font_get_metrics (font, run->item->analysis.language);
  PangoRectangle extents;
  Tall tall;

  pango_glyph_string_extents (run->glyphs, font, NULL, &extents);
  tall = (Tall){ PANGO_ASCENT (extents), PANGO_DESCENT (extents), pango_font_metrics_get_height (metrics) };
  pango_font_metrics_unref (metrics);
  return tall;
}

static void
note_run (PangoGlyphItem *run,
          const char     *text,
          Letter         *letters)
{
  const char *at = text + run->item->offset;
  g_autofree int *widths = g_new (int, run->item->num_chars);
  Tall tall = get_tall (run);

  pango_glyph_item_get_logical_widths (run, text, widths);
  for (int i = 0; i < run->item->num_chars; i++, at = g_utf8_next_char (at))
    letters[at - text] = (Letter){ widths[i], tall };
}

/* Each letter, by the byte where it begins. */
static Letter *
measure_letters (PangoLayout *layout)
{
  const char *text = pango_layout_get_text (layout);
  Letter *letters = g_new0 (Letter, strlen (text) + 1);

  for (GSList *lines = pango_layout_get_lines_readonly (layout); lines != NULL; lines = lines->next)
    for (GSList *runs = ((PangoLayoutLine *) lines->data)->runs; runs != NULL; runs = runs->next)
      note_run (runs->data, text, letters);

  return letters;
}

/* Adds a letter to the last word. Only the last white space of a word has no need of room where a line ends. */
static void
add_letter (Word         *word,
            const Letter *letter,
            gboolean      white,
            int           space)
{
  join (&word->tall, &letter->tall);
  word->ink += word->space;
  word->space = 0;
  if (white)
    word->space = space > 0 ? space : letter->width;
  else
    word->ink += letter->width;
}

static SwRuler *
new_from_words (PangoLayout *layout,
                const Word  *words,
                guint        n_words)
{
  SwRuler *self = g_atomic_rc_box_alloc0 (sizeof (SwRuler) + n_words * sizeof (Word));

  self->factor = (double) pango_layout_get_line_spacing (layout);
  self->n_words = n_words;
  memcpy (self->words, words, n_words * sizeof (Word));
  for (GSList *lines = pango_layout_get_lines_readonly (layout); lines != NULL; lines = lines->next)
    {
      int height;

      pango_layout_line_get_height (lines->data, &height);
      self->empty = MAX (self->empty, height);
    }
  return self;
}

/**
 * sw_ruler_new:
 * @layout: a text, measured at whatever width
 * @space: how wide a space is: Pango takes the width from one that a line ends with
 *
 * Returns: (transfer full): the widths of its words; the same for every width of @layout
 */
SwRuler *
sw_ruler_new (PangoLayout *layout,
              int          space)
{
  int n_attributes;
  const PangoLogAttr *attributes = pango_layout_get_log_attrs_readonly (layout, &n_attributes);
  const char *text = pango_layout_get_text (layout);
  g_autofree Letter *letters = measure_letters (layout);
  g_autofree Word *words = g_new0 (Word, n_attributes + 1);
  guint n = 0;
  int i = 0;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at), i++)
    {
      if (i > 0 && (attributes[i].is_line_break || attributes[i].is_mandatory_break))
        words[n++].ends = attributes[i].is_mandatory_break;
      add_letter (&words[n], &letters[at - text], attributes[i].is_white, *at == ' ' ? space : 0);
    }

  return new_from_words (layout, words, n + 1);
}

SwRuler *
sw_ruler_ref (SwRuler *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
sw_ruler_unref (SwRuler *self)
{
  g_atomic_rc_box_release (self);
}

/* From the baseline of the line before to that of one. */
static int
get_step (const SwRuler *self,
          const Tall    *line)
{
  return (int) floor (self->factor * (line->height > 0 ? line->height : self->empty));
}

/* Breaks the text into lines. @height: of all of them. */
static int
break_lines (const SwRuler *self,
             int            width,
             int           *height)
{
  Tall line = { 0 };
  int n = 1;
  int x = 0;

  *height = 0;
  for (guint i = 0; i < self->n_words; i++)
    {
      const Word *word = &self->words[i];
      gboolean ended = i > 0 && self->words[i - 1].ends;
      int n_more = MAX (0, word->ink - 1) / width;

      if (ended || (x > 0 && x + word->ink > width))
        {
          *height += n == 1 ? line.ascent : get_step (self, &line);
          line = (Tall){ 0 };
          n++;
          x = 0;
        }
      join (&line, &word->tall);
      /* What is too long for any line is divided where a line ends. */
      if (n_more > 0)
        {
          *height += (n == 1 ? line.ascent : get_step (self, &line)) + (n_more - 1) * get_step (self, &line);
          n += n_more;
        }
      x += n_more > 0 ? (word->ink - 1) % width + 1 : word->ink;
      x += word->space;
    }

  *height += (n == 1 ? line.ascent : get_step (self, &line)) + line.descent;
  if (n == 1 && *height == 0)
    *height = self->empty;
  return n;
}

/**
 * sw_ruler_count_lines:
 * @width: room for a line, in units of Pango
 *
 * Returns: how many lines the text takes
 */
int
sw_ruler_count_lines (const SwRuler *self,
                      int            width)
{
  int height;

  return break_lines (self, width, &height);
}

/**
 * sw_ruler_get_height_pt:
 * @width: room for a line, in units of Pango
 *
 * Returns: how tall the text is then, points
 */
double
sw_ruler_get_height_pt (const SwRuler *self,
                        int            width)
{
  int height;

  break_lines (self, width, &height);
  return (double) height / PANGO_SCALE;
}
