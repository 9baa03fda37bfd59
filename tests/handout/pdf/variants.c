/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * variants FOLDER: the shipped sample as handouts of many kinds, each as NAME.pdf beside NAME.txt, which tells where
 * everything is; for check-variants.py. */
#include "config.h"

#include <string.h>

#include "sw-data-dir.h"
#include "sw-handout.h"
#include "sw-programme-file.h"

#define DAY "2026-11-20"

/* "Exercises 2026", and a note with numbers, brackets and a telephone number. */
#define HEBREW_TITLE "תרגילים 2026"
#define HEBREW_NOTE "שלוש (3) פעמים, 01632 960234, עד 5 מתוך 10."

static const struct
{
  const char *name;
  SwHandoutOptions options;
  gboolean changes;
  gboolean untitled;
  int weeks;
} variants[] = {
  { "full-a4", { SW_PAPER_A4, 14.0, "en", DAY, SW_LAYOUT_FULL }, FALSE },
  { "full-letter", { SW_PAPER_LETTER, 12.0, "en-US", DAY, SW_LAYOUT_FULL }, FALSE },
  { "compact-a4", { SW_PAPER_A4, 12.0, "en", DAY, SW_LAYOUT_COMPACT }, FALSE },
  { "compact-form-letter",
    { SW_PAPER_LETTER, 16.0, "en", DAY, SW_LAYOUT_COMPACT, .save_ink = TRUE, .form = TRUE }, FALSE },
  { "summary-a4", { SW_PAPER_A4, 12.0, "en", DAY, SW_LAYOUT_SUMMARY, .save_ink = TRUE }, FALSE },
  { "summary-landscape", { SW_PAPER_LETTER, 14.0, "en", DAY, SW_LAYOUT_SUMMARY, .landscape = TRUE }, FALSE, TRUE },
  { "large-print-a4", { SW_PAPER_A4, 14.0, "en", DAY, SW_LAYOUT_LARGE_PRINT }, FALSE },
  { "foreign-french-large-form-letter", { SW_PAPER_LETTER, 28.0, "fr", DAY, SW_LAYOUT_LARGE_PRINT, .form = TRUE }, FALSE },
  { "foreign-polish-plan", { SW_PAPER_A4, 18.0, "pl", DAY, SW_LAYOUT_FULL }, FALSE, .weeks = 12 },
  { "form-a4", { SW_PAPER_A4, 14.0, "en", DAY, SW_LAYOUT_FULL, .form = TRUE }, FALSE },
  { "foreign-german-form", { SW_PAPER_A4, 14.0, "de-AT", DAY, SW_LAYOUT_FULL, .form = TRUE }, FALSE },
  { "mirrored-hebrew-form", { SW_PAPER_A4, 14.0, "he", DAY, SW_LAYOUT_FULL, .form = TRUE }, TRUE, TRUE },
  { "mirrored-arabic", { SW_PAPER_A4, 14.0, "ar", DAY, SW_LAYOUT_COMPACT }, FALSE },
};

static SwProgramme *
load (void)
{
  g_autofree char *path = sw_data_path ("samples", "sample.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  SwProgramme *programme = sw_programme_file_load (file, &error);

  g_assert_no_error (error);
  return programme;
}

/* Words of the other direction in the title and in one note. */
static void
change (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  g_object_set (programme, "title", HEBREW_TITLE, NULL);
  g_object_set (g_ptr_array_index (items, 0), "note", HEBREW_NOTE, NULL);
}

static void
take_titles (SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      g_object_set (session, "title", "", NULL);
    }
}

static void
write_file (const char *folder,
            const char *name,
            const char *ending,
            const char *data,
            gsize       length)
{
  g_autofree char *file = g_strconcat (name, ending, NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, data, (gssize) length, &error);
  g_assert_no_error (error);
}

int
main (int   argc,
      char *argv[])
{
  g_return_val_if_fail (argc == 2, 2);

  for (guint i = 0; i < G_N_ELEMENTS (variants); i++)
    {
      g_autoptr (SwProgramme) programme = load ();
      g_autoptr (SwHandout) handout = NULL;
      g_autoptr (GBytes) pdf = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *dump = NULL;
      SwHandoutOptions options = variants[i].options;

      options.parts = SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_SIGNATURE) | SW_SET (SW_PAGE_PART_PLAN);
      if (variants[i].changes)
        change (programme);
      if (variants[i].untitled)
        take_titles (programme);
      g_object_set (sw_programme_get_progression (programme), "weeks", variants[i].weeks, NULL);
      handout = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      g_assert_cmpstr (sw_handout_get_missing (handout), ==, "");
      pdf = sw_handout_to_pdf (handout, &error);
      g_assert_no_error (error);
      dump = sw_handout_dump (handout);
      write_file (argv[1], variants[i].name, ".pdf", g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf));
      write_file (argv[1], variants[i].name, ".txt", dump, strlen (dump));
    }
  return 0;
}
