/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields in a PDF: boxes to tick and lines to type on, each a widget on the page and an element of the
 * structure. No script, and nothing that a reader of the file would have to draw before the first entry. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-pdf-form.h"
#include "sw-pdf-scanner.h"

#define MOST_LETTERS_OF_NUMBER 20
#define MOST_LETTERS_OF_WORDS 80

/* What is typed is drawn by the reader of the file, in a font that each has. */
#define FONTS "<</Font<</Helv<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>>>>>"

/* The table that leads from annotations to their elements. */
static SwPdfObject *
find_numbers (SwPdfFile *file)
{
  static const char *const way[] = { "/Root", "/StructTreeRoot", "/ParentTree" };
  SwPdfObject *object = &file->trailer;

  for (guint i = 0; i < G_N_ELEMENTS (way) && object != NULL; i++)
    object = sw_pdf_file_get (file, sw_pdf_file_find (object, way[i]));
  return object != NULL && sw_pdf_object_is_dictionary (object) ? object : NULL;
}

/* The table has numbers and references in turn, in the order of the numbers. */
static guint
find_next_number (SwPdfFile *file)
{
  const SwPdfObject *table = find_numbers (file);
  g_autofree char *numbers = table != NULL ? sw_pdf_object_dup_value (table, "/Nums") : NULL;
  SwPdfScanner scanner = { numbers, numbers != NULL ? strlen (numbers) : 0, strlen ("[") };
  guint next = 0;
  gsize start;

  while (numbers != NULL && sw_pdf_scanner_skip_value (&scanner, &start))
    if (numbers[scanner.at - 1] != 'R')
      next = (guint)strtoul (numbers + start, NULL, 10) + 1;
  return next;
}

/**
 * sw_pdf_form_init:
 * @file: a PDF with a structure, as Cairo writes it; outlives @form
 * @pages: (element-type guint): the numbers of its pages; outlives @form
 * @text_pt: size of what is typed in
 */
void
sw_pdf_form_init (SwPdfForm    *form,
                  SwPdfFile    *file,
                  const GArray *pages,
                  double        text_pt)
{
  *form = (SwPdfForm){
    .file = file,
    .pages = pages,
    .annotations = g_ptr_array_new (),
    .fields = g_string_new (NULL),
    .numbers = g_string_new (NULL),
    .next_number = find_next_number (file),
    .looks = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL),
    .text_pt = text_pt,
  };
  g_ptr_array_set_size (form->annotations, (int)pages->len);
}

static char *
dup_tick (const double size[2])
{
  const double points[]
      = { 0.22 * size[0], 0.52 * size[1], 0.42 * size[0], 0.28 * size[1], 0.78 * size[0], 0.76 * size[1] };
  const double line = 0.13 * MIN (size[0], size[1]);
  g_autofree char *width = sw_pdf_format_numbers (&line, 1);
  g_autofree char *start = sw_pdf_format_numbers (points, 2);
  g_autofree char *turn = sw_pdf_format_numbers (points + 2, 2);
  g_autofree char *end = sw_pdf_format_numbers (points + 4, 2);

  return g_strdup_printf ("q 1 J 1 j 0 G %s w %s m %s l %s l S Q\n", width, start, turn, end);
}

/* A stream that draws a field; the page itself draws its box or its line. */
static guint
get_look (SwPdfForm    *form,
          const char   *kind,
          const double  size[2],
          const char   *content)
{
  const double box[4] = { 0.0, 0.0, size[0], size[1] };
  g_autofree char *numbers = sw_pdf_format_numbers (box, G_N_ELEMENTS (box));
  g_autofree char *key = g_strconcat (kind, " ", numbers, NULL);
  gpointer known;
  guint look;

  if (g_hash_table_lookup_extended (form->looks, key, NULL, &known))
    return GPOINTER_TO_UINT (known);

  look = sw_pdf_file_add (form->file,
                          g_strdup_printf ("<</Type/XObject/Subtype/Form/BBox[%s]/Resources<<>>>>", numbers));
  sw_pdf_object_take_stream (sw_pdf_file_get (form->file, look), g_bytes_new (content, strlen (content)));
  g_hash_table_insert (form->looks, g_steal_pointer (&key), GUINT_TO_POINTER (look));
  return look;
}

/* What is special of a box to tick. */
static char *
dup_tick_box (SwPdfForm    *form,
              const double  size[2])
{
  g_autofree char *tick = dup_tick (size);

  return g_strdup_printf ("/FT/Btn/V/Off/AS/Off/AP<</N<</Yes %u 0 R/Off %u 0 R>>>>",
                          get_look (form, "ticked", size, tick), get_look (form, "off", size, "q Q\n"));
}

/* What is special of a line to type on. */
static char *
dup_line (SwPdfForm    *form,
          const double  size[2],
          int           most_letters)
{
  g_autofree char *points = sw_pdf_format_numbers (&form->text_pt, 1);

  return g_strdup_printf ("/FT/Tx/AP<</N %u 0 R>>/DA(/Helv %s Tf 0 g)/MaxLen %d",
                          get_look (form, "empty", size, "/Tx BMC\nEMC\n"), points, most_letters);
}

static char *
dup_kind (SwPdfForm          *form,
          const SwPdfElement *meant)
{
  const double size[2] = { meant->box[2] - meant->box[0], meant->box[3] - meant->box[1] };

  switch (meant->field)
    {
    case SW_FIELD_TICK:
      return dup_tick_box (form, size);
    case SW_FIELD_NUMBER:
      return dup_line (form, size, MOST_LETTERS_OF_NUMBER);
    case SW_FIELD_WORDS:
    default:
      return dup_line (form, size, MOST_LETTERS_OF_WORDS);
    }
}

/**
 * sw_pdf_form_add:
 * @element_id: number of an element of type Form
 * @meant: what it stands for
 *
 * Adds the field to its page, the form and the structure.
 */
void
sw_pdf_form_add (SwPdfForm          *form,
                 guint               element_id,
                 const SwPdfElement *meant)
{
  guint page = g_array_index (form->pages, guint, meant->page);
  GString **annotations = (GString **)&g_ptr_array_index (form->annotations, meant->page);
  g_autofree char *kind = dup_kind (form, meant);
  g_autofree char *box = sw_pdf_format_numbers (meant->box, G_N_ELEMENTS (meant->box));
  g_autofree char *name = sw_pdf_quote (meant->field_name);
  g_autofree char *label = sw_pdf_quote (meant->tag->alt);
  guint field = sw_pdf_file_add (
      form->file, g_strdup_printf ("<</Type/Annot/Subtype/Widget/F 4/Rect[%s]/P %u 0 R/StructParent %u"
                                   "/T%s/TU%s%s>>",
                                   box, page, form->next_number, name, label, kind));
  g_autofree char *reference = g_strdup_printf ("<</Type/OBJR/Obj %u 0 R/Pg %u 0 R>>", field, page);

  if (*annotations == NULL)
    *annotations = g_string_new (NULL);
  g_string_append_printf (*annotations, " %u 0 R", field);
  g_string_append_printf (form->fields, " %u 0 R", field);
  g_string_append_printf (form->numbers, " %u %u 0 R", form->next_number++, element_id);
  sw_pdf_object_append (sw_pdf_file_get (form->file, element_id), "/K", reference);
}

static void
finish_pages (SwPdfForm *form)
{
  for (guint i = 0; i < form->annotations->len; i++)
    {
      GString *annotations = g_ptr_array_index (form->annotations, i);

      if (annotations == NULL)
        continue;
      sw_pdf_object_append (sw_pdf_file_get (form->file, g_array_index (form->pages, guint, i)), "/Annots",
                            annotations->str);
      g_string_free (annotations, TRUE);
    }
}

/**
 * sw_pdf_form_finish:
 *
 * Puts the form into the file, if it has any field. @form can be forgotten then.
 */
void
sw_pdf_form_finish (SwPdfForm *form)
{
  if (form->fields->len > 0)
    {
      SwPdfObject *root = sw_pdf_file_get (form->file, sw_pdf_file_find (&form->file->trailer, "/Root"));
      SwPdfObject *numbers = find_numbers (form->file);
      g_autofree char *dictionary
          = g_strdup_printf ("<</Fields[%s]/DA(/Helv 12 Tf 0 g)/DR%s>>", form->fields->str, FONTS);

      sw_pdf_object_set (root, "/AcroForm", dictionary);
      if (numbers != NULL)
        sw_pdf_object_append (numbers, "/Nums", form->numbers->str);
    }

  finish_pages (form);
  g_clear_pointer (&form->annotations, g_ptr_array_unref);
  g_string_free (g_steal_pointer (&form->fields), TRUE);
  g_string_free (g_steal_pointer (&form->numbers), TRUE);
  g_clear_pointer (&form->looks, g_hash_table_unref);
}
