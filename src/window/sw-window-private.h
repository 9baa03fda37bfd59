/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue-pane.h"
#include "sw-drafts.h"
#include "sw-findings-bar.h"
#include "sw-inspector.h"
#include "sw-notice.h"
#include "sw-preview.h"
#include "sw-session-canvas.h"
#include "sw-window.h"

G_BEGIN_DECLS

struct _SwWindow
{
  GtkApplicationWindow parent_instance;

  SwDocument *document;
  gulong first_frame_handler;
  gboolean drawn;          /* whether the first frame is on the screen */
  char *path_to_open;      /* a file asked for before that, or NULL */
  GCancellable *cancellable;
  guint draft_timeout;
  gboolean draft_wanted;   /* edits since the last draft or save */
  gboolean draft_writing;
  gboolean saving;
  gboolean close_after_save;
  gboolean close_without_asking;
  GPtrArray *drafts;       /* SwDraft, waiting to be offered */
  guint toast_timeout;

  GtkLabel *title;
  GtkLabel *subtitle;
  GtkMenuButton *menu_button;
  SwNotice *notice;
  GtkBox *body;
  GtkPaned *panes;
  int pages_px;            /* width of the left pane's other child, the one not shown; 0 before it was */
  GtkStack *left;
  GtkBox *work;
  SwCataloguePane *catalogue_pane;
  SwPreview *preview;
  SwSessionCanvas *canvas;
  SwInspector *inspector;
  SwFindingsBar *findings_bar;
  GtkRevealer *toast;
  GtkLabel *toast_words;
  GtkButton *toast_button;
  GtkSpinner *busy;
  GtkOverlay *overlay;
  GtkWidget *motion;       /* the large figure over the panes, or NULL */
};

/* sw-window-files.c */
void sw_window_add_file_actions (SwWindow *self);
void sw_window_schedule_draft (SwWindow *self);
void sw_window_stop_drafts (SwWindow *self);
gboolean sw_window_ask_before_close (SwWindow *self);

/* sw-window-handover.c */
void sw_window_add_handover_actions (SwWindow *self);

/* sw-window.c */
void sw_window_set_document (SwWindow   *self,
                             SwDocument *document);
void sw_window_show_toast (SwWindow   *self,
                           const char *words,
                           const char *button,
                           const char *action);
void sw_window_show_error (SwWindow     *self,
                           const GError *error);

G_END_DECLS
