/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What Cairo 1.16 leaves out of a tagged PDF: language, text alternatives, header cells, list numbering,
 * artifacts, metadata that agrees with itself, and object streams. The structure in the file is compared with
 * the one that was meant, element by element, before anything is attached to it. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include <cairo.h>
#include <glib/gi18n.h>

#include "sw-handout.h"
#include "sw-pdf-flate.h"
#include "sw-pdf-form.h"
#include "sw-pdf-scanner.h"
#include "sw-pdf-sketch.h"

#define DEEPEST 64
#define ANNOTATION_PRINTS "4"

typedef struct
{
  SwPdfFile *file;
  GArray *elements;
  guint n_seen;
  gboolean matches;
  SwPdfForm form;
  GArray *contents;
} Walk;

/* What a page shows: the objects that it and its content are in, what is drawn besides, by its number in the structure,
 * and what becomes of it. */
typedef struct
{
  guint page_id;
  guint id;
  const char *painted;
  gsize length;
  GPtrArray *drawn;
  GString *resources;
  GBytes *finished;
  GError *error;
} Content;

static void
set_failed (GError     **error,
            const char  *why)
{
  g_set_error (
      error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_PDF,
      _ ("The PDF could not be completed: %s. Print the handout instead, or take out what you added last and "
         "try again."),
      why);
}

static void
set_text (SwPdfObject *object,
          const char  *key,
          const char  *text)
{
  g_autofree char *quoted = sw_pdf_quote (text);

  sw_pdf_object_set (object, key, quoted);
}

static SwPdfObject *
find_object (SwPdfFile         *file,
             const SwPdfObject *from,
             const char        *key)
{
  return sw_pdf_file_get (file, sw_pdf_file_find (from, key));
}

/* How a link that Cairo wrote is told to those who cannot see it, and that it is printed. */
static void
attach_link (SwPdfFile         *file,
             const SwPdfObject *element,
             const char        *spoken)
{
  g_autofree char *children = sw_pdf_object_dup_value (element, "/K");
  SwPdfScanner scanner = { children, children != NULL ? strlen (children) : 0, 0 };
  gsize start;

  if (children != NULL && *children == '[')
    scanner.at++;
  while (sw_pdf_scanner_skip_value (&scanner, &start))
    {
      SwPdfObject child = { .text = children + start, .length = scanner.at - start };
      guint id = sw_pdf_file_find (&child, "/Obj");

      if (id > 0 && sw_pdf_object_is_dictionary (sw_pdf_file_get (file, id)))
        {
          set_text (sw_pdf_file_get (file, id), "/Contents", spoken);
          sw_pdf_object_set (sw_pdf_file_get (file, id), "/F", ANNOTATION_PRINTS);
        }
    }
}

static void
attach_figure (SwPdfObject        *element,
               const SwPdfElement *meant)
{
  g_autofree char *box = sw_pdf_format_numbers (meant->box, G_N_ELEMENTS (meant->box));
  g_autofree char *layout = g_strdup_printf ("<</O/Layout/Placement/Block/BBox[%s]>>", box);

  set_text (element, "/Alt", meant->tag->alt);
  sw_pdf_object_set (element, "/A", layout);
}

/* Puts a picture where the element's content is, which has nothing else. Returns FALSE where that is not known. */
static gboolean
attach_picture (Walk               *walk,
                const SwPdfObject  *element,
                const SwPdfElement *meant)
{
  g_autofree char *mcid = sw_pdf_object_dup_value (element, "/K");
  Content *content = &g_array_index (walk->contents, Content, (guint)meant->page);
  const double numbers[] = { meant->scale * SW_PDF_SKETCH_UNIT, meant->box[0], meant->top_pt };
  char texts[G_N_ELEMENTS (numbers)][G_ASCII_DTOSTR_BUF_SIZE];
  guint id = sw_pdf_picture_get_id (meant->picture, walk->file);
  g_autofree char *name = NULL;
  guint nth;

  if (mcid == NULL || !g_ascii_isdigit (*mcid) || strchr (mcid, 'R') != NULL)
    return FALSE;

  nth = (guint)strtoul (mcid, NULL, 10);
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    g_ascii_formatd (texts[i], sizeof texts[i], "%.5g", numbers[i]);
  if (content->drawn->len <= nth)
    g_ptr_array_set_size (content->drawn, (int)nth + 1);
  g_free (g_ptr_array_index (content->drawn, nth));
  g_ptr_array_index (content->drawn, nth)
      = g_strdup_printf ("q %s 0 0 %s %s %s cm /P%u Do Q\n", texts[0], texts[0], texts[1], texts[2], id);
  name = g_strdup_printf ("/P%u ", id);
  if (strstr (content->resources->str, name) == NULL)
    g_string_append_printf (content->resources, "%s%u 0 R", name, id);
  return TRUE;
}

static void
attach (Walk               *walk,
        guint               id,
        const SwPdfElement *meant)
{
  const SwTag *tag = meant->tag;
  SwPdfObject *element;

  if (meant->field_name != NULL)
    sw_pdf_form_add (&walk->form, id, meant);

  if (meant->picture != NULL && !attach_picture (walk, sw_pdf_file_get (walk->file, id), meant))
    walk->matches = FALSE;
  element = sw_pdf_file_get (walk->file, id);
  if (meant->field_name == NULL && strcmp (tag->name, "Link") == 0)
    attach_link (walk->file, element, tag->alt);
  else if (meant->field_name == NULL && tag->alt != NULL)
    attach_figure (element, meant);
  if (tag->language != NULL)
    set_text (element, "/Lang", tag->language);
  if (tag->scope != NULL)
    {
      g_autofree char *table = g_strdup_printf ("<</O/Table/Scope/%s>>", tag->scope);

      sw_pdf_object_set (element, "/A", table);
    }
  if (tag->numbering != NULL)
    {
      g_autofree char *list = g_strdup_printf ("<</O/List/ListNumbering/%s>>", tag->numbering);

      sw_pdf_object_set (element, "/A", list);
    }
}

/* Each element of the structure is an object of its own, in the order in which they were begun. */
static void
walk_structure (Walk  *walk,
                guint  id,
                int    depth)
{
  SwPdfObject *element = sw_pdf_file_get (walk->file, id);
  g_autofree char *children = NULL;
  g_autoptr (GArray) ids = NULL;

  if (element == NULL || !sw_pdf_object_is_dictionary (element) || depth > DEEPEST)
    {
      walk->matches = FALSE;
      return;
    }

  children = sw_pdf_object_dup_value (element, "/K");
  if (depth > 0)
    {
      const SwPdfElement *meant;
      g_autofree char *kind = sw_pdf_object_dup_value (element, "/S");

      if (walk->n_seen >= walk->elements->len || kind == NULL)
        {
          walk->matches = FALSE;
          return;
        }
      meant = &g_array_index (walk->elements, SwPdfElement, walk->n_seen++);
      if (strcmp (kind + strlen ("/"), meant->tag->name) != 0)
        {
          walk->matches = FALSE;
          return;
        }
      attach (walk, id, meant);
    }

  ids = sw_pdf_file_find_all (children);
  for (guint i = 0; i < ids->len && walk->matches; i++)
    walk_structure (walk, g_array_index (ids, guint, i), depth + 1);
}

static gboolean
finish_structure (SwPdfFile        *file,
                  const GArray     *pages,
                  GArray           *contents,
                  GArray           *elements,
                  const SwPdfFacts *facts)
{
  Walk walk = { .file = file, .contents = contents, .elements = elements, .matches = TRUE };
  SwPdfObject *root = find_object (file, &file->trailer, "/Root");
  guint structure = sw_pdf_file_find (root, "/StructTreeRoot");

  sw_pdf_form_init (&walk.form, file, pages, facts->field_pt);
  walk_structure (&walk, structure, 0);
  sw_pdf_form_finish (&walk.form);
  return walk.matches && walk.n_seen == elements->len;
}

static void
clear_content (gpointer data)
{
  Content *content = data;

  g_ptr_array_unref (content->drawn);
  g_string_free (content->resources, TRUE);
  g_clear_pointer (&content->finished, g_bytes_unref);
  g_clear_error (&content->error);
}

static void
finish_content (gpointer data,
                gpointer user_data)
{
  Content *content = data;
  g_autoptr (GBytes) painted = sw_pdf_inflate (content->painted, content->length, &content->error);
  g_autoptr (GBytes) marked = NULL;

  (void) user_data;
  if (painted == NULL)
    return;
  marked = sw_pdf_mark_artifacts (g_bytes_get_data (painted, NULL), g_bytes_get_size (painted), content->drawn);
  content->finished = sw_pdf_deflate (g_bytes_get_data (marked, NULL), g_bytes_get_size (marked));
}

/* Finds what each page shows. */
static GArray *
find_contents (SwPdfFile    *file,
               const GArray *pages,
               GError      **error)
{
  g_autoptr (GArray) contents = g_array_new (FALSE, TRUE, sizeof (Content));

  g_array_set_clear_func (contents, clear_content);
  for (guint i = 0; i < pages->len; i++)
    {
      SwPdfObject *page = sw_pdf_file_get (file, g_array_index (pages, guint, i));
      guint id = page != NULL ? sw_pdf_file_find (page, "/Contents") : 0;
      const SwPdfObject *object = sw_pdf_file_get (file, id);
      Content content = { .page_id = g_array_index (pages, guint, i), .id = id };

      if (id == 0 || object == NULL || object->stream == NULL || !sw_pdf_object_has (page, "/Type", "/Page")
          || !sw_pdf_object_has (object, "/Filter", "/FlateDecode"))
        {
          set_failed (error, _("a page has no content"));
          return NULL;
        }
      content.drawn = g_ptr_array_new_with_free_func (g_free);
      content.resources = g_string_new (NULL);
      content.painted = object->stream;
      content.length = object->stream_length;
      g_array_append_val (contents, content);
      sw_pdf_object_set (page, "/Tabs", "/S");
    }

  return g_steal_pointer (&contents);
}

/* What a page draws besides has to be named in its resources. */
static void
add_resources (SwPdfFile     *file,
               const Content *content)
{
  SwPdfObject *page = sw_pdf_file_get (file, content->page_id);
  guint id = sw_pdf_file_find (page, "/Resources");

  if (content->resources->len > 0)
    sw_pdf_object_extend (id > 0 ? sw_pdf_file_get (file, id) : page, "/XObject", content->resources->str);
}

/* No page has to wait for another: as many at once as the computer can work at. */
static gboolean
finish_pages (SwPdfFile    *file,
              GArray       *contents,
              GError      **error)
{
  GThreadPool *pool;

  pool = g_thread_pool_new (finish_content, NULL, (int) g_get_num_processors (), FALSE, NULL);
  for (guint i = 0; i < contents->len; i++)
    g_thread_pool_push (pool, &g_array_index (contents, Content, i), NULL);
  g_thread_pool_free (pool, FALSE, TRUE);

  for (guint i = 0; i < contents->len; i++)
    {
      Content *content = &g_array_index (contents, Content, i);

      if (content->finished == NULL)
        {
          set_failed (error, content->error->message);
          return FALSE;
        }
      sw_pdf_object_take_stream (sw_pdf_file_get (file, content->id), g_steal_pointer (&content->finished));
      add_resources (file, content);
    }
  return TRUE;
}

static void
finish_fonts (SwPdfFile *file)
{
  for (guint id = 1; id < file->objects->len; id++)
    {
      SwPdfObject *object = sw_pdf_file_get (file, id);

      if (sw_pdf_object_has (object, "/Subtype", "/CIDFontType2"))
        sw_pdf_object_set (object, "/CIDToGIDMap", "/Identity");
    }
}

static char *
make_xmp (const SwPdfFacts *facts,
          const char       *producer)
{
  g_autofree char *title = g_markup_escape_text (facts->title, -1);
  g_autofree char *author = g_markup_escape_text (facts->author, -1);
  g_autofree char *subject = g_markup_escape_text (facts->subject, -1);
  g_autofree char *language = g_markup_escape_text (facts->language, -1);
  g_autofree char *creator
      = *author != '\0'
            ? g_strdup_printf ("<dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>", author)
            : g_strdup ("");

  return g_strdup_printf (
      "<?xpacket begin=\"\357\273\277\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF "
      "xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
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
finish_metadata (SwPdfFile        *file,
                 const SwPdfFacts *facts)
{
  g_autofree char *producer = g_strconcat ("cairo ", cairo_version_string (), NULL);
  g_autofree char *xmp = make_xmp (facts, producer);
  g_auto (GStrv) date = g_strsplit (facts->date, "-", 3);
  g_autofree char *digits = g_strjoinv ("", date);
  g_autofree char *moment = g_strdup_printf ("(D:%s000000Z)", digits);
  guint id = sw_pdf_file_add (file, g_strdup ("<</Type/Metadata/Subtype/XML>>"));
  g_autofree char *reference = g_strdup_printf ("%u 0 R", id);
  SwPdfObject *root = find_object (file, &file->trailer, "/Root");
  SwPdfObject *info = find_object (file, &file->trailer, "/Info");

  /* Not packed, so that who looks for it finds it without knowing how to read a PDF. */
  sw_pdf_object_take_stream (sw_pdf_file_get (file, id), g_bytes_new (xmp, strlen (xmp)));
  sw_pdf_object_set (root, "/Metadata", reference);
  set_text (root, "/Lang", facts->language);
  sw_pdf_object_set (root, "/ViewerPreferences", "<</DisplayDocTitle true>>");
  /* The numbers that are printed at the foot. */
  sw_pdf_object_set (root, "/PageLabels", "<</Nums[0<</S/D>>]>>");
  sw_pdf_object_set (info, "/CreationDate", moment);
  set_text (info, "/Producer", producer);
}

/* The numbers of the pages' objects; Cairo lists all of them in one place. */
static GArray *
find_pages (SwPdfFile         *file,
            const SwPdfObject *root)
{
  const SwPdfObject *tree = find_object (file, root, "/Pages");
  g_autofree char *kids = tree != NULL ? sw_pdf_object_dup_value (tree, "/Kids") : NULL;

  return sw_pdf_file_find_all (kids);
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
sw_pdf_finish (GBytes            *pdf,
               GArray            *elements,
               const SwPdfFacts  *facts,
               GError           **error)
{
  g_autoptr (SwPdfFile) file = sw_pdf_file_new (pdf);
  const SwPdfObject *root = file != NULL ? find_object (file, &file->trailer, "/Root") : NULL;
  const SwPdfObject *info = file != NULL ? find_object (file, &file->trailer, "/Info") : NULL;
  g_autoptr (GArray) pages = NULL;
  g_autoptr (GArray) contents = NULL;

  if (root == NULL || info == NULL || !sw_pdf_object_is_dictionary (root)
      || !sw_pdf_object_is_dictionary (info))
    {
      set_failed (error, _ ("it is not written as expected"));
      return NULL;
    }

  pages = find_pages (file, root);
  contents = find_contents (file, pages, error);
  if (contents == NULL)
    return NULL;
  if (!finish_structure (file, pages, contents, elements, facts))
    {
      set_failed (error, _ ("its structure is not the one that was meant"));
      return NULL;
    }
  if (!finish_pages (file, contents, error))
    return NULL;
  finish_fonts (file);
  finish_metadata (file, facts);

  return sw_pdf_file_write (file);
}
