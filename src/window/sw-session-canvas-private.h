/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the files that share the session canvas: head, rows, dragging. */
#pragma once

#include "sw-canvas-model.h"
#include "sw-canvas-row-view.h"
#include "sw-session-canvas.h"

G_BEGIN_DECLS

#define SW_N_DAYS (SW_DAY_SUNDAY + 1)

struct _SwSessionCanvas
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwPictures *pictures;
  SwCanvasModel *model;
  GHashTable *views;       /* SwCanvasRow -> the SwCanvasRowView that shows it now; neither owned */
  gboolean refreshing;     /* own widgets are being set from the document */

  GtkText *title;
  GtkLabel *time;
  GtkWidget *sessions;
  GtkWidget *days;
  GtkWidget *day_buttons[SW_N_DAYS];
  GtkStack *stack;
  GtkScrolledWindow *scroller;
  GtkListView *list;
  GMenuModel *item_menu;
  GtkWidget *popover;      /* the context menu while it is there */

  guint width_idle;
  guint reveal_tick;
  int reveal_frames;       /* frames still to wait until new rows have their sizes */
  gboolean focus_wanted;   /* the row revealed shall get the focus */

  GtkDropTarget *drop_target; /* of the list, which owns it */
  SwCanvasRowView *marked; /* shows the gap; not owned, in @views as long as it is set */
  double drag_x;           /* pointer in the list while something is dragged over it */
  double drag_y;
  guint scroll_tick;
  gint64 scrolled_us;
};

/* A place something can be dropped into, and where the line that shows it stands. */
typedef struct
{
  GListStore *list;
  guint position;
  SwCanvasRowView *view; /* NULL below the last row */
  SwDropMark mark;
  gboolean in_circuit;
} SwCanvasGap;

/* sw-session-canvas.c */
void sw_session_canvas_reveal_chosen (SwSessionCanvas *self,
                                      gboolean         focus);

/* sw-session-canvas-head.c */
void sw_session_canvas_init_head (SwSessionCanvas *self);
void sw_session_canvas_refresh_head (SwSessionCanvas *self);
void sw_session_canvas_title_changed_cb (SwSessionCanvas *self);
void sw_session_canvas_title_left_cb (SwSessionCanvas *self);

/* sw-session-canvas-drag.c */
void sw_session_canvas_add_drag_source (SwSessionCanvas *self,
                                        SwCanvasRowView *view);
void sw_session_canvas_init_drops (SwSessionCanvas *self);
void sw_session_canvas_stop_drops (SwSessionCanvas *self);
void sw_session_canvas_forget_mark (SwSessionCanvas *self,
                                    SwCanvasRowView *view);

/* sw-session-canvas-gap.c */
SwCanvasRowView *sw_session_canvas_find_view_at (SwSessionCanvas *self,
                                                 double           x,
                                                 double           y);
gboolean sw_session_canvas_find_gap (SwSessionCanvas *self,
                                     const GValue    *value,
                                     double           x,
                                     double           y,
                                     SwCanvasGap     *gap);

G_END_DECLS
