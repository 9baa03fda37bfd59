/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue-pane.h"
#include "sw-draft-keeper.h"
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
  gboolean loading;        /* whether a file is being read */
  GCancellable *cancellable;
  SwDraftKeeper *draft_keeper;
  SwClinic *clinic;        /* as the programme was opened or last saved with it */
  gboolean saving;
  gboolean save_waiting;   /* a save asked for while another is under way, */
  gboolean overwrite_waiting;
  SwProgrammeFile *file_waiting;  /* to where, NULL for the programme's own file */
  gboolean close_after_save;
  gboolean close_without_asking;
  GPtrArray *drafts;       /* SwDraft, waiting to be offered; or NULL */
  gboolean offer_shown;    /* whether the notice offers the first of them */
  gboolean offer_waiting;  /* whether that offer is to come when the notice is closed */
  guint offer_source;
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
gboolean sw_window_ask_before_close (SwWindow *self);

/* sw-window-drafts.c */
void sw_window_add_draft_actions (SwWindow *self);
void sw_window_offer_next_draft (SwWindow *self);
void sw_window_notice_closed (SwWindow *self);

/* sw-window-handover.c */
void sw_window_add_handover_actions (SwWindow *self);

/* sw-window-motion.c */
void sw_window_add_motion_actions (SwWindow *self);

/* sw-window-words.c */
void sw_window_show_toast (SwWindow   *self,
                           const char *words,
                           const char *button,
                           const char *action);
void sw_window_close_toast (SwWindow *self);
void sw_window_show_notice (SwWindow             *self,
                            const char           *words,
                            const SwNoticeButton *buttons,
                            guint                 n_buttons);
void sw_window_show_error (SwWindow     *self,
                           const GError *error);

/* sw-window.c */
void sw_window_set_document (SwWindow   *self,
                             SwDocument *document,
                             const char *draft_path);
gboolean sw_window_is_loading (SwWindow *self);

G_END_DECLS
