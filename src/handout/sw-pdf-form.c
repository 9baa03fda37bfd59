/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields in a PDF: boxes to tick and lines to type on, each a widget on the page and an element of the structure. No
 * script, and nothing that a reader of the file would have to draw before the first entry. */
#include "config.h"

#include <string.h>

#include "sw-pdf-form.h"

#define MOST_LETTERS_OF_NUMBER 20
#define MOST_LETTERS_OF_WORDS 80

/* What is typed is drawn by the reader of the file, in a font that each has. */
#define FONTS \
  "<</Font<</Helv<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>>>>>"

/**
 * sw_pdf_form_init:
 * @q: a PDF with a structure, as Cairo writes it
 * @text_pt: size of what is typed in
 */
void
sw_pdf_form_init (SwPdfForm *form,
                  qpdf_data  q,
                  double     text_pt)
{
  qpdf_oh structure = qpdf_oh_get_key (q, qpdf_get_root (q), "/StructTreeRoot");
  qpdf_oh numbers = qpdf_oh_get_key (q, qpdf_oh_get_key (q, structure, "/ParentTree"), "/Nums");
  int n = qpdf_oh_is_array (q, numbers) ? qpdf_oh_get_array_n_items (q, numbers) : 0;

  *form = (SwPdfForm){
    .q = q,
    .fields = qpdf_oh_new_array (q),
    .numbers = numbers,
    .next_number = n > 1 ? qpdf_oh_get_int_value_as_int (q, qpdf_oh_get_array_item (q, numbers, n - 2)) + 1 : 0,
    .looks = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL),
    .text_pt = text_pt,
  };
}

static char *
dup_tick (const double size[2])
{
  const double points[] = { 0.22 * size[0], 0.52 * size[1], 0.42 * size[0],
                            0.28 * size[1], 0.78 * size[0], 0.76 * size[1] };
  const double line = 0.13 * MIN (size[0], size[1]);
  g_autofree char *width = sw_pdf_format_numbers (&line, 1);
  g_autofree char *start = sw_pdf_format_numbers (points, 2);
  g_autofree char *turn = sw_pdf_format_numbers (points + 2, 2);
  g_autofree char *end = sw_pdf_format_numbers (points + 4, 2);

  return g_strdup_printf ("q 1 J 1 j 0 G %s w %s m %s l %s l S Q\n", width, start, turn, end);
}

/* A stream that draws a field; the page itself draws its box or its line. */
static qpdf_oh
get_look (SwPdfForm    *form,
          const char   *kind,
          const double  size[2],
          const char   *content)
{
  qpdf_data q = form->q;
  const double box[4] = { 0.0, 0.0, size[0], size[1] };
  g_autofree char *numbers = sw_pdf_format_numbers (box, G_N_ELEMENTS (box));
  g_autofree char *key = g_strconcat (kind, " ", numbers, NULL);
  g_autofree char *bounds = g_strdup_printf ("[%s]", numbers);
  gpointer known;
  qpdf_oh look;
  qpdf_oh dictionary;

  if (g_hash_table_lookup_extended (form->looks, key, NULL, &known))
    return GPOINTER_TO_UINT (known);

  look = qpdf_oh_new_stream (q);
  dictionary = qpdf_oh_get_dict (q, look);
  qpdf_oh_replace_stream_data (q, look, (const unsigned char *) content, strlen (content), qpdf_oh_new_null (q),
                               qpdf_oh_new_null (q));
  qpdf_oh_replace_key (q, dictionary, "/Type", qpdf_oh_new_name (q, "/XObject"));
  qpdf_oh_replace_key (q, dictionary, "/Subtype", qpdf_oh_new_name (q, "/Form"));
  qpdf_oh_replace_key (q, dictionary, "/BBox", qpdf_oh_parse (q, bounds));
  qpdf_oh_replace_key (q, dictionary, "/Resources", qpdf_oh_new_dictionary (q));
  g_hash_table_insert (form->looks, g_steal_pointer (&key), GUINT_TO_POINTER (look));
  return look;
}

static qpdf_oh
make_tick_box (SwPdfForm    *form,
               const double  size[2])
{
  qpdf_data q = form->q;
  qpdf_oh box = qpdf_oh_parse (q, "<</Type/Annot/Subtype/Widget/FT/Btn/F 4/V/Off/AS/Off>>");
  qpdf_oh states = qpdf_oh_new_dictionary (q);
  qpdf_oh looks = qpdf_oh_new_dictionary (q);
  g_autofree char *tick = dup_tick (size);

  qpdf_oh_replace_key (q, states, "/Yes", get_look (form, "ticked", size, tick));
  qpdf_oh_replace_key (q, states, "/Off", get_look (form, "off", size, "q Q\n"));
  qpdf_oh_replace_key (q, looks, "/N", states);
  qpdf_oh_replace_key (q, box, "/AP", looks);
  return box;
}

static qpdf_oh
make_line (SwPdfForm    *form,
           const double  size[2],
           int           most_letters)
{
  qpdf_data q = form->q;
  qpdf_oh line = qpdf_oh_parse (q, "<</Type/Annot/Subtype/Widget/FT/Tx/F 4>>");
  qpdf_oh looks = qpdf_oh_new_dictionary (q);
  g_autofree char *points = sw_pdf_format_numbers (&form->text_pt, 1);
  g_autofree char *text_look = g_strdup_printf ("/Helv %s Tf 0 g", points);

  qpdf_oh_replace_key (q, looks, "/N", get_look (form, "empty", size, "/Tx BMC\nEMC\n"));
  qpdf_oh_replace_key (q, line, "/AP", looks);
  qpdf_oh_replace_key (q, line, "/DA", qpdf_oh_new_string (q, text_look));
  qpdf_oh_replace_key (q, line, "/MaxLen", qpdf_oh_new_integer (q, most_letters));
  return line;
}

static qpdf_oh
make_field (SwPdfForm          *form,
            const SwPdfElement *meant)
{
  const double size[2] = { meant->box[2] - meant->box[0], meant->box[3] - meant->box[1] };

  switch (meant->field)
    {
    case SW_FIELD_TICK:
      return make_tick_box (form, size);
    case SW_FIELD_NUMBER:
      return make_line (form, size, MOST_LETTERS_OF_NUMBER);
    case SW_FIELD_WORDS:
    default:
      return make_line (form, size, MOST_LETTERS_OF_WORDS);
    }
}

/* What is in the array under @key, made an array first if it is none. */
static qpdf_oh
get_array (qpdf_data   q,
           qpdf_oh     dictionary,
           const char *key)
{
  qpdf_oh array = qpdf_oh_get_key (q, dictionary, key);
  qpdf_oh made;

  if (qpdf_oh_is_array (q, array))
    return array;

  made = qpdf_oh_new_array (q);
  if (!qpdf_oh_is_null (q, array))
    qpdf_oh_append_item (q, made, array);
  qpdf_oh_replace_key (q, dictionary, key, made);
  return qpdf_oh_get_key (q, dictionary, key);
}

/**
 * sw_pdf_form_add:
 * @element: an element of type Form
 * @meant: what it stands for
 *
 * Adds the field to its page, the form and the structure.
 */
void
sw_pdf_form_add (SwPdfForm          *form,
                 qpdf_oh             element,
                 const SwPdfElement *meant)
{
  qpdf_data q = form->q;
  qpdf_oh page = qpdf_get_page_n (q, (size_t) meant->page);
  g_autofree char *numbers = sw_pdf_format_numbers (meant->box, G_N_ELEMENTS (meant->box));
  g_autofree char *box = g_strdup_printf ("[%s]", numbers);
  qpdf_oh field = make_field (form, meant);
  qpdf_oh reference = qpdf_oh_parse (q, "<</Type/OBJR>>");

  qpdf_oh_replace_key (q, field, "/Rect", qpdf_oh_parse (q, box));
  qpdf_oh_replace_key (q, field, "/T", qpdf_oh_new_string (q, meant->field_name));
  qpdf_oh_replace_key (q, field, "/TU", qpdf_oh_new_unicode_string (q, meant->tag->alt));
  qpdf_oh_replace_key (q, field, "/P", page);
  qpdf_oh_replace_key (q, field, "/StructParent", qpdf_oh_new_integer (q, form->next_number));
  field = qpdf_make_indirect_object (q, field);

  qpdf_oh_append_item (q, get_array (q, page, "/Annots"), field);
  qpdf_oh_append_item (q, form->fields, field);
  qpdf_oh_append_item (q, form->numbers, qpdf_oh_new_integer (q, form->next_number++));
  qpdf_oh_append_item (q, form->numbers, element);

  qpdf_oh_replace_key (q, reference, "/Obj", field);
  qpdf_oh_replace_key (q, reference, "/Pg", page);
  qpdf_oh_append_item (q, get_array (q, element, "/K"), reference);
}

/**
 * sw_pdf_form_finish:
 *
 * Puts the form into the file, if it has any field. @form can be forgotten then.
 */
void
sw_pdf_form_finish (SwPdfForm *form)
{
  qpdf_data q = form->q;

  if (qpdf_oh_get_array_n_items (q, form->fields) > 0)
    {
      qpdf_oh dictionary = qpdf_oh_new_dictionary (q);

      qpdf_oh_replace_key (q, dictionary, "/Fields", form->fields);
      qpdf_oh_replace_key (q, dictionary, "/DA", qpdf_oh_new_string (q, "/Helv 12 Tf 0 g"));
      qpdf_oh_replace_key (q, dictionary, "/DR", qpdf_oh_parse (q, FONTS));
      qpdf_oh_replace_key (q, qpdf_get_root (q), "/AcroForm", dictionary);
    }
  g_clear_pointer (&form->looks, g_hash_table_unref);
}
