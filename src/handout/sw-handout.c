/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The handout as a whole: from a programme to pages that anything can draw. */
#include "config.h"

#include <glib/gi18n.h>
#include <pango/pangocairo.h>

#include "sw-arrange.h"
#include "sw-compose.h"
#include "sw-font-check.h"
#include "sw-handout.h"
#include "sw-missing.h"
#include "sw-pdf.h"

/* A warning names no more characters than these. */
#define MOST_NAMED 8
/* By how much of a pixel curves are off on a screen at most. */
#define COARSE 0.2

struct _SwHandout
{
  GObject parent_instance;

  SwComposer composer;
  SwPages pages;
  SwFurniture furniture;
  char *title;
  char *author;
  char *missing;
};

G_DEFINE_FINAL_TYPE (SwHandout, sw_handout, G_TYPE_OBJECT)
G_DEFINE_QUARK (sw-handout-error-quark, sw_handout_error)

static void
sw_handout_finalize (GObject *object)
{
  SwHandout *self = SW_HANDOUT (object);

  sw_pages_clear (&self->pages);
  sw_furniture_clear (&self->furniture);
  sw_composer_clear (&self->composer);
  g_free (self->title);
  g_free (self->author);
  g_free (self->missing);

  G_OBJECT_CLASS (sw_handout_parent_class)->finalize (object);
}

static void
sw_handout_class_init (SwHandoutClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_handout_finalize;
}

static void
sw_handout_init (SwHandout *self)
{
  (void) self;
}

static char *
make_running_head (SwPhrases   *phrases,
                   SwProgramme *programme)
{
  const char *title = sw_programme_get_title (programme);
  const char *name = sw_client_get_name (sw_programme_get_client (programme));
  const char *shown = *title != '\0' ? title : sw_phrases_get (phrases, "front.title");
  g_autofree char *client = NULL;

  if (*name == '\0')
    return g_strdup (shown);
  client = sw_phrases_format (phrases, "front.for", "name", name, NULL);
  return g_strjoin (" · ", shown, client, NULL);
}

static void
make_furniture (SwHandout   *self,
                SwProgramme *programme)
{
  SwPhrases *phrases = self->composer.phrases;
  const char *phone = sw_clinic_get_phone (sw_programme_get_clinic (programme));
  g_autofree char *code = sw_programme_dup_code (programme);
  g_autofree char *code_text = sw_phrases_format (phrases, "page.code", "code", code, NULL);
  g_autofree char *day = sw_phrases_date (phrases, self->composer.date);

  self->furniture.running = make_running_head (phrases, programme);
  self->furniture.code = g_strjoin (" · ", code_text, day, NULL);
  self->furniture.phone
      = *phone != '\0' ? sw_phrases_format (phrases, "page.phone", "phone", phone, NULL) : g_strdup ("");
  self->furniture.number = g_strdup (phone);
  self->title = sw_phrases_format (phrases, "document.title", "code", code, NULL);
  self->author = g_strdup (sw_clinic_get_name (sw_programme_get_clinic (programme)));
}

/* One that cannot be drawn is left out: the words of the letterhead say it all. */
static void
load_logo (SwHandout   *self,
           SwProgramme *programme)
{
  const SwLogo *logo = sw_clinic_get_logo (sw_programme_get_clinic (programme));

  if (logo != NULL && sw_composer_shows (&self->composer, SW_PAGE_PART_LETTERHEAD))
    self->composer.logo = sw_logo_picture_new (logo, NULL);
}

/* Every exercise is told, so its picture will be asked for. */
static void
expect_pictures (SwComposer  *composer,
                 SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE)
      sw_compose_expect_picture (composer, items->pdata[i]);
}

/**
 * sw_handout_new_after:
 * @programme: what to tell the client; nobody may change it until this returns
 * @options: page size, text size, language, date
 * @before: (nullable): what sw_handout_dup_measured() gave of an earlier handout of the programme; nobody else may
 *   use it until this returns
 * @error: return location for an error of the domain %SW_HANDOUT_ERROR
 *
 * Composes, measures and breaks. May run in any thread; the handout may then be drawn from any one thread at a
 * time, the same one for handouts that were made after one another.
 *
 * Returns: (transfer full) (nullable): the handout; it is the same with and without @before, only sooner there
 */
SwHandout *
sw_handout_new_after (SwProgramme             *programme,
                      const SwHandoutOptions  *options,
                      SwMeasured              *before,
                      GError                 **error)
{
  g_autoptr (SwHandout) self = NULL;
  g_autoptr (SwPhrases) phrases = sw_measured_find_phrases (before, options->language);
  g_autoptr (PangoFontMap) fonts = NULL;

  if (phrases == NULL)
    phrases = sw_phrases_new (options->language, error);
  if (phrases == NULL)
    return NULL;

  self = g_object_new (SW_TYPE_HANDOUT, NULL);
  fonts = pango_cairo_font_map_new ();
  sw_composer_init (&self->composer, fonts, phrases, options, sw_programme_get_clinic (programme), before);
  expect_pictures (&self->composer, programme);
  load_logo (self, programme);
  /* What was measured before was checked then: loading the fonts is most of what an edit would cost. */
  if (!sw_measured_follows (self->composer.measured)
      && !sw_font_check (self->composer.contexts[SW_TEXT_BODY], &self->composer.style, phrases, error))
    return NULL;
  if (!sw_arrange (&self->pages, &self->composer, programme, error))
    return NULL;

  make_furniture (self, programme);
  self->missing = sw_missing_find (&self->pages, &self->composer, &self->furniture);
  if (sw_measured_follows (self->composer.measured))
    sw_pages_expect_numbers (&self->pages, &self->composer);
  sw_measured_finish (self->composer.measured);
  return g_steal_pointer (&self);
}

/**
 * sw_handout_new:
 * @programme: what to tell the client; nobody may change it until this returns
 * @options: page size, text size, language, date
 * @error: return location for an error of the domain %SW_HANDOUT_ERROR
 *
 * The same as sw_handout_new_after() with nothing before.
 *
 * Returns: (transfer full) (nullable): the handout
 */
SwHandout *
sw_handout_new (SwProgramme             *programme,
                const SwHandoutOptions  *options,
                GError                 **error)
{
  return sw_handout_new_after (programme, options, NULL, error);
}

/**
 * sw_handout_dup_measured:
 *
 * To be called in the thread that draws the handout.
 *
 * Returns: (transfer full): what was measured for it, for the next one
 */
SwMeasured *
sw_handout_dup_measured (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);

  return sw_measured_copy (self->composer.measured);
}

int
sw_handout_get_n_pages (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), 0);

  return self->pages.n_pages;
}

double
sw_handout_get_page_width_pt (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), 0.0);

  return self->composer.style.page_width_pt;
}

double
sw_handout_get_page_height_pt (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), 0.0);

  return self->composer.style.page_height_pt;
}

/**
 * sw_handout_find_page_of_item:
 * @item_id: id of an item of the programme
 *
 * Returns: the page the item starts on, from 0; -1 when it is on none
 */
int
sw_handout_find_page_of_item (SwHandout  *self,
                              const char *item_id)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), -1);

  for (guint i = 0; item_id != NULL && i < self->pages.places->len; i++)
    {
      const SwPlace *place = &g_array_index (self->pages.places, SwPlace, i);

      for (guint k = 0; k < place->block->entries->len; k++)
        if (g_strcmp0 (g_array_index (place->block->entries, SwEntry, k).item_id, item_id) == 0)
          return place->page;
    }

  return -1;
}

/* Whether the block at @place is kept with the next one: then both belong to one item. */
static gboolean
is_kept_with_next (const SwPlace *place)
{
  SwKeep keep = place->block->strip.keep;

  return keep == SW_KEEP_TOGETHER || keep == SW_KEEP_ALWAYS;
}

/**
 * sw_handout_find_item_at:
 * @page: from 0
 * @x_pt: points from the left edge of the page
 * @y_pt: points from the top of the page
 *
 * Returns: (transfer none) (nullable): id of the item whose part of the page that is; NULL between the items and
 *   outside them
 */
const char *
sw_handout_find_item_at (SwHandout *self,
                         int        page,
                         double     x_pt,
                         double     y_pt)
{
  const SwPlace *places;
  guint at;

  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);
  g_return_val_if_fail (page >= 0 && page < self->pages.n_pages, NULL);

  if (self->composer.style.mirrored)
    x_pt = self->composer.style.page_width_pt - x_pt;
  places = (const SwPlace *) (gpointer) self->pages.places->data;
  for (at = 0; at < self->pages.places->len; at++)
    if (places[at].page == page && y_pt >= places[at].y_pt
        && y_pt < places[at].y_pt + places[at].block->strip.height_pt * places[at].scale)
      break;
  if (at == self->pages.places->len)
    return NULL;

  while (sw_block_find_item (places[at].block, x_pt) == NULL && at > 0 && is_kept_with_next (&places[at - 1]))
    at--;

  return sw_block_find_item (places[at].block, x_pt);
}

/**
 * sw_handout_draw_page:
 * @page: from 0
 * @cr: one unit is one point; the origin is the top left corner of the paper. The paper itself is not painted.
 */
void
sw_handout_draw_page (SwHandout *self,
                      int        page,
                      cairo_t   *cr)
{
  g_return_if_fail (SW_IS_HANDOUT (self));
  g_return_if_fail (page >= 0 && page < self->pages.n_pages);

  cairo_save (cr);
  /* On a screen the pictures are most of the work; the eye sees no difference there, and paper has no pixels. */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  cairo_set_tolerance (cr, COARSE);
  sw_pages_paint (&self->pages, &self->composer, &self->furniture, page, cr, NULL);
  cairo_restore (cr);
}

/**
 * sw_handout_get_missing:
 *
 * Returns: (transfer none): each character that no installed font can print, once, in the order of the pages; "" for
 *   none
 */
const char *
sw_handout_get_missing (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);

  return self->missing;
}

/**
 * sw_handout_dup_warning:
 *
 * Returns: (transfer full) (nullable): what the therapist should know before these pages are given to anybody
 */
char *
sw_handout_dup_warning (SwHandout *self)
{
  g_autoptr (GString) names = g_string_new (NULL);
  int n = 0;

  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);

  for (const char *at = self->missing; *at != '\0' && n < MOST_NAMED; at = g_utf8_next_char (at), n++)
    {
      gunichar letter = g_utf8_get_char (at);

      g_string_append (names, n > 0 ? ", " : "");
      g_string_append_unichar (names, letter);
      g_string_append_printf (names, " (U+%04X)", letter);
    }
  if (n == 0)
    return NULL;
  if (g_utf8_strlen (self->missing, -1) > n)
    g_string_append (names, ", …");

  return g_strdup_printf (_("No installed font can print these characters: %s. The pages have empty boxes or nothing "
                            "in their place. Install a TrueType font that has them, or write it in another way."),
                          names->str);
}

/**
 * sw_handout_dump:
 *
 * Returns: (transfer full): everything on the pages and where it is, as text to compare
 */
char *
sw_handout_dump (SwHandout *self)
{
  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);

  return sw_pages_dump (&self->pages, &self->composer);
}

/**
 * sw_handout_to_pdf:
 * @error: return location for %SW_HANDOUT_ERROR_PDF
 *
 * Returns: (transfer full) (nullable): the handout as a tagged PDF; the same handout gives the same bytes
 */
GBytes *
sw_handout_to_pdf (SwHandout  *self,
                   GError    **error)
{
  SwPdfFacts facts;

  g_return_val_if_fail (SW_IS_HANDOUT (self), NULL);

  facts = (SwPdfFacts){
    .title = self->title,
    .author = self->author,
    .subject = sw_phrases_get (self->composer.phrases, "document.subject"),
    .language = self->composer.language,
    .date = self->composer.date,
    .field_pt = sw_style_get_size_pt (&self->composer.style, SW_TEXT_TABLE),
  };
  return sw_pdf_new (&self->pages, &self->composer, &self->furniture, &facts, error);
}
