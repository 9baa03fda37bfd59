/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What Cairo 1.16 leaves out of a tagged PDF, added by libqpdf: language, text alternatives, header cells, list
 * numbering, artifacts, metadata that agrees with itself, and object streams. The structure in the file is compared
 * with the one that was meant, element by element, before anything is attached to it. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include <glib/gi18n.h>
#include <qpdf/qpdf-c.h>

#include "sw-handout.h"
#include "sw-pdf-form.h"

#define DEEPEST 64
#define ANNOTATION_PRINTS 4

typedef struct
{
  qpdf_data q;
  GArray *elements;
  guint n_seen;
  gboolean matches;
  SwPdfForm form;
} Walk;

static void
free_qpdf (qpdf_data *q)
{
  if (*q != NULL)
    qpdf_cleanup (q);
}

typedef qpdf_data SwQpdf;
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwQpdf, free_qpdf)

static void
set_failed (GError    **error,
            const char *why)
{
  g_set_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_PDF,
               _("The PDF could not be completed: %s. Print the handout instead, or take out what you added last and "
                 "try again."),
               why);
}

/* A warning here is a mistake of ours: what we write must be beyond reproach. */
static gboolean
is_fine (qpdf_data       q,
         QPDF_ERROR_CODE code,
         GError        **error)
{
  if ((code & QPDF_ERRORS) != 0 || qpdf_has_error (q))
    {
      set_failed (error, qpdf_get_error_full_text (q, qpdf_get_error (q)));
      return FALSE;
    }
  if (qpdf_more_warnings (q))
    {
      set_failed (error, qpdf_get_error_full_text (q, qpdf_next_warning (q)));
      return FALSE;
    }

  return TRUE;
}

static void
set_text (qpdf_data   q,
          qpdf_oh     dictionary,
          const char *key,
          const char *text)
{
  qpdf_oh_replace_key (q, dictionary, key, qpdf_oh_new_unicode_string (q, text));
}

static void
set_parsed (qpdf_data   q,
            qpdf_oh     dictionary,
            const char *key,
            const char *value)
{
  qpdf_oh_replace_key (q, dictionary, key, qpdf_oh_parse (q, value));
}

/* How a link that Cairo wrote is told to those who cannot see it, and that it is printed. */
static void
attach_link (qpdf_data   q,
             qpdf_oh     element,
             const char *spoken)
{
  qpdf_oh children = qpdf_oh_get_key (q, element, "/K");
  int n = qpdf_oh_is_array (q, children) ? qpdf_oh_get_array_n_items (q, children) : 0;

  for (int i = 0; i < n; i++)
    {
      qpdf_oh child = qpdf_oh_get_array_item (q, children, i);

      if (qpdf_oh_is_dictionary (q, child) && qpdf_oh_has_key (q, child, "/Obj"))
        {
          qpdf_oh annotation = qpdf_oh_get_key (q, child, "/Obj");

          set_text (q, annotation, "/Contents", spoken);
          qpdf_oh_replace_key (q, annotation, "/F", qpdf_oh_new_integer (q, ANNOTATION_PRINTS));
        }
    }
}

static void
attach_figure (qpdf_data           q,
               qpdf_oh             element,
               const SwPdfElement *meant)
{
  g_autofree char *box = sw_pdf_format_numbers (meant->box, G_N_ELEMENTS (meant->box));
  g_autofree char *layout = g_strdup_printf ("<</O/Layout/Placement/Block/BBox[%s]>>", box);

  set_text (q, element, "/Alt", meant->tag->alt);
  set_parsed (q, element, "/A", layout);
}

static void
attach (Walk               *walk,
        qpdf_oh             element,
        const SwPdfElement *meant)
{
  qpdf_data q = walk->q;
  const SwTag *tag = meant->tag;

  if (meant->field_name != NULL)
    sw_pdf_form_add (&walk->form, element, meant);
  else if (strcmp (tag->name, "Link") == 0)
    attach_link (q, element, tag->alt);
  else if (tag->alt != NULL)
    attach_figure (q, element, meant);
  if (tag->language != NULL)
    qpdf_oh_replace_key (q, element, "/Lang", qpdf_oh_new_string (q, tag->language));
  if (tag->scope != NULL)
    {
      g_autofree char *table = g_strdup_printf ("<</O/Table/Scope/%s>>", tag->scope);

      set_parsed (q, element, "/A", table);
    }
  if (tag->numbering != NULL)
    {
      g_autofree char *list = g_strdup_printf ("<</O/List/ListNumbering/%s>>", tag->numbering);

      set_parsed (q, element, "/A", list);
    }
}

static gboolean
name_is (qpdf_data   q,
         qpdf_oh     dictionary,
         const char *key,
         const char *name)
{
  qpdf_oh value = qpdf_oh_get_key (q, dictionary, key);
  gboolean is = qpdf_oh_is_name (q, value) && strcmp (qpdf_oh_get_name (q, value) + 1, name) == 0;

  qpdf_oh_release (q, value);
  return is;
}

static void
walk_structure (Walk   *walk,
                qpdf_oh element,
                int     depth)
{
  qpdf_data q = walk->q;
  qpdf_oh kind;
  qpdf_oh children;
  int n;

  if (depth > DEEPEST || !qpdf_oh_is_dictionary (q, element))
    return;

  kind = qpdf_oh_get_key (q, element, "/S");
  if (depth > 0 && qpdf_oh_is_name (q, kind))
    {
      const SwPdfElement *meant;

      if (walk->n_seen >= walk->elements->len)
        {
          walk->matches = FALSE;
          return;
        }
      meant = &g_array_index (walk->elements, SwPdfElement, walk->n_seen++);
      if (strcmp (qpdf_oh_get_name (q, kind) + 1, meant->tag->name) != 0)
        {
          walk->matches = FALSE;
          return;
        }
      attach (walk, element, meant);
    }

  children = qpdf_oh_get_key (q, element, "/K");
  if (qpdf_oh_is_dictionary (q, children))
    walk_structure (walk, children, depth + 1);
  n = qpdf_oh_is_array (q, children) ? qpdf_oh_get_array_n_items (q, children) : 0;
  for (int i = 0; i < n && walk->matches; i++)
    {
      qpdf_oh child = qpdf_oh_get_array_item (q, children, i);

      walk_structure (walk, child, depth + 1);
      qpdf_oh_release (q, child);
    }
  qpdf_oh_release (q, children);
  qpdf_oh_release (q, kind);
}

static gboolean
finish_structure (qpdf_data         q,
                  GArray           *elements,
                  const SwPdfFacts *facts,
                  GError          **error)
{
  Walk walk = { .q = q, .elements = elements, .matches = TRUE };

  sw_pdf_form_init (&walk.form, q, facts->field_pt);
  walk_structure (&walk, qpdf_oh_get_key (q, qpdf_get_root (q), "/StructTreeRoot"), 0);
  sw_pdf_form_finish (&walk.form);
  if (walk.matches && walk.n_seen == elements->len)
    return TRUE;

  set_failed (error, _("its structure is not the one that was meant"));
  return FALSE;
}

static gboolean
finish_page (qpdf_data q,
             qpdf_oh   page,
             GError  **error)
{
  unsigned char *content = NULL;
  size_t length = 0;
  g_autoptr (GBytes) marked = NULL;
  qpdf_oh stream;

  if (!is_fine (q, qpdf_oh_get_page_content_data (q, page, &content, &length), error))
    return FALSE;
  marked = sw_pdf_mark_artifacts ((const char *) content, length);
  free (content);

  stream = qpdf_oh_new_stream (q);
  qpdf_oh_replace_stream_data (q, stream, g_bytes_get_data (marked, NULL), g_bytes_get_size (marked),
                               qpdf_oh_new_null (q), qpdf_oh_new_null (q));
  qpdf_oh_replace_key (q, page, "/Contents", stream);
  qpdf_oh_replace_key (q, page, "/Tabs", qpdf_oh_new_name (q, "/S"));
  return TRUE;
}

static void
finish_fonts (qpdf_data q)
{
  long long size = qpdf_oh_get_int_value (q, qpdf_oh_get_key (q, qpdf_get_trailer (q), "/Size"));

  for (int id = 1; id < size; id++)
    {
      qpdf_oh object = qpdf_get_object_by_id (q, id, 0);

      if (qpdf_oh_is_dictionary (q, object) && name_is (q, object, "/Subtype", "CIDFontType2")
          && !qpdf_oh_has_key (q, object, "/CIDToGIDMap"))
        qpdf_oh_replace_key (q, object, "/CIDToGIDMap", qpdf_oh_new_name (q, "/Identity"));
      qpdf_oh_release (q, object);
    }
}

static char *
make_xmp (qpdf_data         q,
          const SwPdfFacts *facts)
{
  const char *info_producer = qpdf_get_info_key (q, "/Producer");
  g_autofree char *producer = g_markup_escape_text (info_producer != NULL ? info_producer : "", -1);
  g_autofree char *title = g_markup_escape_text (facts->title, -1);
  g_autofree char *author = g_markup_escape_text (facts->author, -1);
  g_autofree char *subject = g_markup_escape_text (facts->subject, -1);
  g_autofree char *language = g_markup_escape_text (facts->language, -1);
  g_autofree char *creator
      = *author != '\0' ? g_strdup_printf ("<dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>", author)
                        : g_strdup ("");

  return g_strdup_printf (
      "<?xpacket begin=\"\357\273\277\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" "
      "xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">"
      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:title>"
      "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:description>"
      "<dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>%s"
      "<xmp:CreatorTool>Setwright " SW_VERSION "</xmp:CreatorTool>"
      "<xmp:CreateDate>%sT00:00:00Z</xmp:CreateDate><pdf:Producer>%s</pdf:Producer>"
      "</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>",
      title, subject, language, creator, facts->date, producer);
}

static void
finish_metadata (qpdf_data         q,
                 const SwPdfFacts *facts)
{
  qpdf_oh root = qpdf_get_root (q);
  g_autofree char *xmp = make_xmp (q, facts);
  g_auto (GStrv) date = g_strsplit (facts->date, "-", 3);
  g_autofree char *digits = g_strjoinv ("", date);
  g_autofree char *moment = g_strdup_printf ("D:%s000000Z", digits);
  qpdf_oh stream = qpdf_oh_new_stream (q);
  qpdf_oh dictionary = qpdf_oh_get_dict (q, stream);

  qpdf_oh_replace_key (q, dictionary, "/Type", qpdf_oh_new_name (q, "/Metadata"));
  qpdf_oh_replace_key (q, dictionary, "/Subtype", qpdf_oh_new_name (q, "/XML"));
  qpdf_oh_replace_stream_data (q, stream, (const unsigned char *) xmp, strlen (xmp), qpdf_oh_new_null (q),
                               qpdf_oh_new_null (q));
  qpdf_oh_replace_key (q, root, "/Metadata", stream);
  qpdf_oh_replace_key (q, root, "/Lang", qpdf_oh_new_string (q, facts->language));
  set_parsed (q, root, "/ViewerPreferences", "<</DisplayDocTitle true>>");
  /* The numbers that are printed at the foot. */
  set_parsed (q, root, "/PageLabels", "<</Nums[0<</S/D>>]>>");
  qpdf_set_info_key (q, "/CreationDate", moment);
}

static GBytes *
write_bytes (qpdf_data q,
             GError  **error)
{
  if (!is_fine (q, qpdf_init_write_memory (q), error))
    return NULL;

  qpdf_set_deterministic_ID (q, QPDF_TRUE);
  qpdf_set_object_stream_mode (q, qpdf_o_generate);
  if (!is_fine (q, qpdf_write (q), error))
    return NULL;

  return g_bytes_new (qpdf_get_buffer (q), qpdf_get_buffer_length (q));
}

/**
 * sw_pdf_finish:
 * @pdf: a PDF as Cairo wrote it
 * @elements: (element-type SwPdfElement): the structure in the order its elements were begun
 * @facts: what the file says about itself
 * @error: return location for %SW_HANDOUT_ERROR_PDF
 *
 * Returns: (transfer full) (nullable): the complete PDF
 */
GBytes *
sw_pdf_finish (GBytes           *pdf,
               GArray           *elements,
               const SwPdfFacts *facts,
               GError          **error)
{
  g_auto (SwQpdf) q = qpdf_init ();
  gsize length;
  const char *data = g_bytes_get_data (pdf, &length);

  qpdf_silence_errors (q);
  qpdf_set_suppress_warnings (q, QPDF_TRUE);
  if (!is_fine (q, qpdf_read_memory (q, "handout", data, length, NULL), error))
    return NULL;

  if (!finish_structure (q, elements, facts, error))
    return NULL;
  for (int page = 0; page < qpdf_get_num_pages (q); page++)
    if (!finish_page (q, qpdf_get_page_n (q, (size_t) page), error))
      return NULL;
  finish_fonts (q);
  finish_metadata (q, facts);

  return write_bytes (q, error);
}
