/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The end of the appointment: print, PDF and the entry for the record, each from the pages that the
 * preview shows, and the note in the programme that a handout was given. */
#include "config.h"

#include <glib/gi18n.h>
#include <gtk/gtkunixprint.h>

#include "sw-file-dialogs.h"
#include "sw-file.h"
#include "sw-handout.h"
#include "sw-record-text.h"
#include "sw-window-private.h"

static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

/* Nothing goes out while a finding waits that must be answered. */
static gboolean
may_hand_over (SwWindow *self)
{
  guint n = sw_findings_count_open (sw_document_get_findings (self->document), SW_FINDING_STOP);
  g_autofree char *words = NULL;
  const SwNoticeButton buttons[] = { { _ ("_Show the findings"), "win.show-findings" } };

  if (n == 0)
    return TRUE;

  words = g_strdup_printf (ngettext ("%u finding must be answered before the handout goes out: change the programme, or keep it "
                                     "with a reason.",
                                     "%u findings must be answered before the handout goes out: change the programme, or keep "
                                     "it with reasons.",
                                     n),
                           n);
  sw_window_show_notice (self, words, buttons, G_N_ELEMENTS (buttons));
  return FALSE;
}

static char *
doses_as_lines (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GString) lines = g_string_new (NULL);

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      g_autofree char *line = NULL;

      if (sw_item_get_kind (item) != SW_ITEM_EXERCISE)
        continue;
      line = sw_dose_to_line (sw_item_get_dose (item));
      if (lines->len > 0)
        g_string_append_c (lines, '\n');
      g_string_append_printf (lines, "%s: %s", sw_exercise_get_id (sw_item_get_exercise (item)), line);
    }

  return g_string_free (g_steal_pointer (&lines), FALSE);
}

/* What is handed over, as it is when that begins: edits made meanwhile are not on the pages. */
typedef struct
{
  SwDocument *document;
  SwProgramme *copy;
  char *path;           /* where the PDF is to lie, or NULL */
  char *date;
  char *doses;
} Making;

static Making *
making_new (SwDocument *document,
            const char *path)
{
  SwProgramme *programme = sw_document_get_programme (document);
  Making *making = g_new0 (Making, 1);

  making->document = g_object_ref (document);
  making->copy = sw_programme_copy (programme);
  making->path = g_strdup (path);
  making->date = today ();
  making->doses = doses_as_lines (programme);
  return making;
}

static void
making_free (gpointer data)
{
  Making *making = data;

  g_clear_object (&making->document);
  g_clear_object (&making->copy);
  g_free (making->path);
  g_free (making->date);
  g_free (making->doses);
  g_free (making);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Making, making_free)

static void
note_issue (const Making *making,
            const char   *way,
            GBytes       *pdf)
{
  g_autofree char *hash = sw_file_hash (pdf);
  g_autoptr (SwIssue) issue = sw_issue_new (making->date, way, hash, making->doses, NULL);
  GListStore *issues = sw_programme_get_issues (sw_document_get_programme (making->document));
  gpointer added[] = { issue };

  sw_history_splice (sw_document_get_history (making->document), _ ("Note that the handout was given"), issues,
                     g_list_model_get_n_items (G_LIST_MODEL (issues)), 0, added, 1);
}

/* The PDF */

static void
make_pdf_in_thread (GTask        *task,
                    gpointer      source,
                    gpointer      data,
                    GCancellable *cancellable)
{
  const Making *making = data;
  SwHandoutOptions options;
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GBytes) pdf = NULL;
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  sw_handout_options_init (&options, making->copy, making->date);
  handout = sw_handout_new (making->copy, &options, &error);
  if (handout != NULL)
    pdf = sw_handout_to_pdf (handout, &error);
  if (pdf != NULL && making->path != NULL && !sw_file_write (making->path, pdf, NULL, FALSE, &error))
    g_clear_pointer (&pdf, g_bytes_unref);

  if (pdf != NULL)
    g_task_return_pointer (task, g_steal_pointer (&pdf), (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

static void
make_pdf (SwWindow            *self,
          Making              *making,
          GAsyncReadyCallback  callback)
{
  g_autoptr (GTask) task = g_task_new (self, self->cancellable, callback, NULL);

  gtk_spinner_start (self->busy);
  g_task_set_task_data (task, making, making_free);
  g_task_run_in_thread (task, make_pdf_in_thread);
}

static void
pdf_made_cb (GObject      *object,
             GAsyncResult *result,
             gpointer      data)
{
  SwWindow *self = SW_WINDOW (object);
  const Making *making = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = g_task_propagate_pointer (G_TASK (result), &error);
  g_autofree char *action = NULL;
  g_autofree char *uri = NULL;

  (void) data;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  gtk_spinner_stop (self->busy);
  if (pdf == NULL)
    {
      sw_window_show_error (self, error);
      return;
    }

  note_issue (making, "pdf", pdf);
  uri = g_filename_to_uri (making->path, NULL, NULL);
  action = g_action_print_detailed_name ("win.show-file", g_variant_new_string (uri));
  sw_window_show_toast (self, _ ("The handout is saved."), _ ("Open it"), action);
}

static void
pdf_chosen_cb (GObject      *object,
               GAsyncResult *result,
               gpointer      data)
{
  g_autofree char *path = sw_file_dialog_finish (result, NULL);

  (void) data;
  if (path != NULL)
    make_pdf (SW_WINDOW (object), making_new (SW_WINDOW (object)->document, path), pdf_made_cb);
}

/* Whether the PDF has what can be filled in on a screen, by the therapist's choice. */
static gboolean
is_form (SwPagePlan *plan)
{
  SwSet to_fill_in = sw_handout_parts_to_fill_in (sw_page_plan_get_layout (plan));

  return sw_page_plan_get_form (plan) && (sw_page_plan_get_parts (plan) & to_fill_in) != 0;
}

static void
save_pdf_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  SwWindow *self = data;
  gboolean form = is_form (sw_programme_get_page_plan (sw_document_get_programme (self->document)));

  (void) action;
  (void) parameter;
  if (may_hand_over (self))
    sw_file_dialog_save_async (GTK_WINDOW (self), form ? SW_FILE_KIND_FORM : SW_FILE_KIND_PDF,
                               form ? _ ("handout-to-fill-in.pdf") : _ ("handout.pdf"), self->cancellable,
                               pdf_chosen_cb, NULL);
}

static void
show_file_activated_cb (GSimpleAction *action,
                        GVariant      *parameter,
                        gpointer       data)
{
  (void) action;
  (void) data;
  g_app_info_launch_default_for_uri_async (g_variant_get_string (parameter, NULL), NULL, NULL, NULL, NULL);
}

/* Printing */

typedef struct
{
  SwWindow *window;    /* NULL when it was closed meanwhile */
  Making *making;      /* until the pages are printed */
  SwHandout *handout;  /* made of the copy */
} Printing;

static void
printing_free (gpointer  data,
               GClosure *closure)
{
  Printing *printing = data;

  (void) closure;
  g_clear_pointer (&printing->making, making_free);
  g_clear_object (&printing->handout);
  g_clear_weak_pointer (&printing->window);
  g_free (printing);
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page,
              const Printing    *printing)
{
  (void) operation;
  sw_handout_draw_page (printing->handout, page, gtk_print_context_get_cairo_context (context));
}

static void
noted_cb (GObject      *object,
          GAsyncResult *result,
          gpointer      data)
{
  SwWindow *self = SW_WINDOW (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = g_task_propagate_pointer (G_TASK (result), &error);

  (void) data;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  gtk_spinner_stop (self->busy);
  if (pdf != NULL)
    {
      note_issue (g_task_get_task_data (G_TASK (result)), "print", pdf);
    }
  else
    {
      g_prefix_error (&error, "%s ", _ ("The handout was printed, but that could not be noted in the programme."));
      sw_window_show_error (self, error);
    }
}

static void
print_done_cb (GtkPrintOperation       *operation,
               GtkPrintOperationResult  result,
               Printing                *printing)
{
  g_autoptr (GError) error = NULL;

  if (printing->window == NULL)
    return;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      gtk_print_operation_get_error (operation, &error);
      sw_window_show_error (printing->window, error);
    }
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    {
      make_pdf (printing->window, g_steal_pointer (&printing->making), noted_cb);
    }
}

static void
print_activated_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       data)
{
  SwWindow *self = data;
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GtkPageSetup) setup = NULL;
  g_autoptr (GtkPaperSize) paper = NULL;
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (Making) making = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  Printing *printing;

  (void) action;
  (void) parameter;
  if (!may_hand_over (self))
    return;

  making = making_new (self->document, NULL);
  sw_handout_options_init (&options, making->copy, making->date);
  handout = sw_handout_new (making->copy, &options, &error);
  if (handout == NULL)
    {
      sw_window_show_error (self, error);
      return;
    }

  paper = gtk_paper_size_new (options.paper == SW_PAPER_A4 ? GTK_PAPER_NAME_A4 : GTK_PAPER_NAME_LETTER);
  setup = gtk_page_setup_new ();
  gtk_page_setup_set_paper_size (setup, paper);
  if (sw_handout_get_page_width_pt (handout) > sw_handout_get_page_height_pt (handout))
    gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_LANDSCAPE);

  operation = gtk_print_operation_new ();
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_n_pages (operation, sw_handout_get_n_pages (handout));
  gtk_print_operation_set_job_name (operation, _ ("Exercise programme"));
  gtk_print_operation_set_allow_async (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);

  printing = g_new0 (Printing, 1);
  g_set_weak_pointer (&printing->window, self);
  printing->making = g_steal_pointer (&making);
  printing->handout = g_steal_pointer (&handout);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), printing);
  g_signal_connect_data (operation, "done", G_CALLBACK (print_done_cb), printing, printing_free, 0);

  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error)
      == GTK_PRINT_OPERATION_RESULT_ERROR)
    sw_window_show_error (self, error);
}

/* The clinic's record, and the findings */

static void
copy_record_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwWindow *self = data;
  g_autofree char *date = today ();
  g_autofree char *text = sw_record_text (sw_document_get_programme (self->document), date);

  (void) action;
  (void) parameter;
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
  sw_window_show_toast (self, _ ("The entry for the clinic's record is on the clipboard."), NULL, NULL);
}

static void
show_findings_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_findings_bar_open (SW_WINDOW (data)->findings_bar);
}

static const GActionEntry entries[] = {
  { .name = "save-pdf", .activate = save_pdf_activated_cb },
  { .name = "print", .activate = print_activated_cb },
  { .name = "show-file", .activate = show_file_activated_cb, .parameter_type = "s" },
  { .name = "copy-record", .activate = copy_record_activated_cb },
  { .name = "show-findings", .activate = show_findings_activated_cb },
};

/**
 * sw_window_add_handover_actions:
 */
void
sw_window_add_handover_actions (SwWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
