/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paints the pages into a PDF and begins and ends the structure elements around what is painted. Only elements
 * without children carry content, and furniture is painted while none of them is open, so that the last pass
 * (sw-pdf-finish.c) can tell it apart. */
#include "config.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>

#include "sw-handout.h"
#include "sw-pdf.h"

typedef struct
{
  cairo_t *cr;
  GPtrArray *open;
  GArray *elements;
  SwPdfPictures *pictures;
  double page_height_pt;
  int page;
} Tagger;

/**
 * sw_pdf_format_numbers:
 * @numbers: (array length=n): lengths in points
 *
 * Returns: (transfer full): the numbers as a PDF has them, a space between two
 */
char *
sw_pdf_format_numbers (const double *numbers,
                       guint         n)
{
  GString *text = g_string_new (NULL);
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "",
                            g_ascii_formatd (number, sizeof number, "%.2f", numbers[i]));
  return g_string_free (text, FALSE);
}

static gboolean
is_around (const SwTag *outer,
           const SwTag *inner)
{
  for (const SwTag *tag = inner->parent; tag != NULL; tag = tag->parent)
    if (tag == outer)
      return TRUE;

  return FALSE;
}

/* The place to tap is as tall as the line, not as the ink. */
static char *
dup_link_attributes (const SwPiece *piece)
{
  double left_pt;
  double right_pt;

  sw_piece_get_text_extents (piece, &left_pt, &right_pt);
  {
    const double box[4] = { left_pt, piece->y_pt, right_pt - left_pt, piece->height_pt };
    g_autofree char *numbers = sw_pdf_format_numbers (box, G_N_ELEMENTS (box));

    return g_strdup_printf ("uri='%s' rect=[%s]", piece->uri, numbers);
  }
}

/* @piece: (nullable): its content, when it has any */
static void
begin_element (Tagger        *tagger,
               const SwTag   *tag,
               const SwPiece *piece)
{
  SwPdfElement element = { .tag = tag };
  g_autofree char *attributes = piece != NULL && piece->uri != NULL ? dup_link_attributes (piece) : NULL;

  cairo_tag_begin (tagger->cr, tag->name, attributes);
  g_array_append_val (tagger->elements, element);
}

static void
open_around (Tagger      *tagger,
             const SwTag *tag)
{
  if (tag == NULL || (tagger->open->len > 0 && g_ptr_array_index (tagger->open, tagger->open->len - 1) == tag))
    return;

  open_around (tagger, tag->parent);
  begin_element (tagger, tag, NULL);
  g_ptr_array_add (tagger->open, (gpointer) tag);
}

static void
close_until_around (Tagger      *tagger,
                    const SwTag *tag)
{
  while (tagger->open->len > 0)
    {
      const SwTag *top = g_ptr_array_index (tagger->open, tagger->open->len - 1);

      if (tag != NULL && is_around (top, tag))
        return;
      cairo_tag_end (tagger->cr, top->name);
      g_ptr_array_set_size (tagger->open, (int) tagger->open->len - 1);
    }
}

static void
add_picture (Tagger        *tagger,
             SwPdfElement  *element,
             const SwPiece *piece)
{
  cairo_matrix_t matrix;

  cairo_get_matrix (tagger->cr, &matrix);
  element->picture = sw_pdf_pictures_add (tagger->pictures, piece->figure, piece->width_pt / piece->zoom,
                                          piece->height_pt / piece->zoom);
  element->scale = piece->zoom * matrix.xx;
}

static void
content_begins (gpointer       data,
                const SwTag   *tag,
                const SwPiece *piece)
{
  Tagger *tagger = data;
  SwPdfElement *element;
  double left_pt = piece->x_pt;
  double top_pt = piece->y_pt;
  double right_pt = piece->x_pt + piece->width_pt;
  double bottom_pt = piece->y_pt + piece->height_pt;

  close_until_around (tagger, tag);
  open_around (tagger, tag->parent);
  begin_element (tagger, tag, piece);

  cairo_user_to_device (tagger->cr, &left_pt, &top_pt);
  cairo_user_to_device (tagger->cr, &right_pt, &bottom_pt);
  element = &g_array_index (tagger->elements, SwPdfElement, tagger->elements->len - 1);
  element->has_box = TRUE;
  element->page = tagger->page;
  element->field = piece->field;
  element->field_name = piece->field_name;
  element->top_pt = top_pt;
  if (piece->kind == SW_PIECE_FIGURE)
    add_picture (tagger, element, piece);
  element->box[0] = left_pt;
  element->box[1] = tagger->page_height_pt - bottom_pt;
  element->box[2] = right_pt;
  element->box[3] = tagger->page_height_pt - top_pt;
}

static void
content_ends (gpointer     data,
              const SwTag *tag)
{
  Tagger *tagger = data;

  cairo_tag_end (tagger->cr, tag->name);
}

static cairo_status_t
collect (void                *closure,
         const unsigned char *data,
         unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
add_outline (cairo_surface_t *surface,
             const SwPages   *pages)
{
  int parent = CAIRO_PDF_OUTLINE_ROOT;

  for (guint i = 0; i < pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (pages->places, SwPlace, i);

      for (guint k = 0; k < place->block->entries->len; k++)
        {
          const SwEntry *entry = &g_array_index (place->block->entries, SwEntry, k);
          gboolean top = entry->outline_level == 1;
          g_autofree char *target = g_strdup_printf ("page=%d pos=[%d %d]", place->page + 1, (int) entry->left_pt,
                                                     (int) place->y_pt);
          int id;

          if (entry->outline == NULL)
            continue;
          id = cairo_pdf_surface_add_outline (surface, top ? CAIRO_PDF_OUTLINE_ROOT : parent, entry->outline, target,
                                              top ? CAIRO_PDF_OUTLINE_FLAG_OPEN : 0);
          if (top)
            parent = id;
        }
    }
}

static void
set_metadata (cairo_surface_t  *surface,
              const SwPdfFacts *facts)
{
  g_autofree char *moment = g_strconcat (facts->date, "T00:00:00Z", NULL);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, facts->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, facts->subject);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Setwright " SW_VERSION);
  if (*facts->author != '\0')
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, facts->author);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, moment);
}

/**
 * sw_pdf_new:
 * @pages: the pages
 * @composer: what they were made by
 * @furniture: what every page carries
 * @facts: what the file says about itself
 * @error: return location for %SW_HANDOUT_ERROR_PDF
 *
 * Returns: (transfer full) (nullable): a tagged PDF; the same bytes for the same input
 */
GBytes *
sw_pdf_new (const SwPages     *pages,
            SwComposer        *composer,
            const SwFurniture *furniture,
            const SwPdfFacts  *facts,
            GError           **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GArray) elements = g_array_new (FALSE, TRUE, sizeof (SwPdfElement));
  g_autoptr (GPtrArray) open = g_ptr_array_new ();
  g_autoptr (SwPdfPictures) pictures = sw_pdf_pictures_new ();
  g_autoptr (GBytes) pdf = NULL;
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (collect, bytes, composer->style.page_width_pt,
                                                                  composer->style.page_height_pt);
  cairo_t *cr = cairo_create (surface);
  Tagger tagger = { cr, open, elements, pictures, composer->style.page_height_pt, 0 };
  SwTagSink sink = { content_begins, content_ends, &tagger };
  cairo_status_t status;

  set_metadata (surface, facts);
  add_outline (surface, pages);
  for (int page = 0; page < pages->n_pages; page++)
    {
      tagger.page = page;
      sw_pages_paint (pages, composer, furniture, page, cr, &sink);
      if (page + 1 == pages->n_pages)
        close_until_around (&tagger, NULL);
      cairo_show_page (cr);
    }

  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_PDF,
                   _("The handout could not be made into a PDF: %s. Print it instead, or take out what you added "
                     "last and try again."),
                   cairo_status_to_string (status));
      return NULL;
    }

  sw_pdf_pictures_wait (pictures);
  pdf = g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
  return sw_pdf_finish (pdf, elements, facts, error);
}
