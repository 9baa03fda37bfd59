/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue-pane.h"
#include "sw-exercise-card.h"
#include "sw-exercise-details.h"
#include "sw-exercise-list.h"
#include "sw-filter-bar.h"

G_BEGIN_DECLS

struct _SwCataloguePane
{
  GtkWidget parent_instance;

  GtkSearchEntry *search_entry;
  SwFilterBar *filters;
  GtkLabel *hits;
  GtkButton *clear;
  GtkPaned *paned;
  GtkStack *stack;
  GtkSpinner *spinner;
  GtkWidget *loading;
  GtkWidget *results;
  GtkWidget *nothing;
  GtkLabel *nothing_words;
  GtkGridView *grid;
  SwExerciseDetails *details;
  GtkPopover *menu;

  SwDocument *document;
  SwCatalogue *catalogue;
  gulong catalogue_handler;
  SwPictures *pictures;
  SwSearch *search;         /* NULL until the catalogue is indexed */
  GCancellable *indexing;   /* of the index being made, or NULL */
  SwExerciseList *list;
  GtkSingleSelection *selection;
  GPtrArray *cards;         /* SwExerciseCard, all that are alive; unowned */
  GSimpleActionGroup *actions;

  GPtrArray *related;       /* SwExercise: shown in place of what the search finds, or NULL */
  char *related_words;
  gboolean clearing;
};

/* sw-catalogue-pane-actions.c */
void sw_catalogue_pane_add_actions (SwCataloguePane *self);
void sw_catalogue_pane_update_actions (SwCataloguePane *self);
void sw_catalogue_pane_open_menu (SwCataloguePane *self,
                                  GtkWidget       *widget,
                                  double           x,
                                  double           y);

/* sw-catalogue-pane-search.c */
void sw_catalogue_pane_index (SwCataloguePane *self);
void sw_catalogue_pane_stop_indexing (SwCataloguePane *self);
void sw_catalogue_pane_find (SwCataloguePane *self,
                             gboolean         from_top);
void sw_catalogue_pane_forget_related (SwCataloguePane *self);
void sw_catalogue_pane_show_related (SwCataloguePane *self,
                                     GPtrArray       *exercises,
                                     char            *words);
void sw_catalogue_pane_clear (SwCataloguePane *self);

/* sw-catalogue-pane.c */
void sw_catalogue_pane_choose (SwCataloguePane *self,
                               SwExercise      *exercise);
gboolean sw_catalogue_pane_focus_results (SwCataloguePane *self);
void sw_catalogue_pane_update_details (SwCataloguePane *self);
SwExerciseCard *sw_catalogue_pane_get_card (SwCataloguePane *self);
SwSet sw_catalogue_pane_get_precautions (SwCataloguePane *self);

G_END_DECLS
