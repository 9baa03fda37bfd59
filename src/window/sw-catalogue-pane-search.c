/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the catalogue shows: the index of its words, what a search finds, and what is said when it finds nothing. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-catalogue-pane-private.h"

static gboolean
has_query (SwCataloguePane *self)
{
  return *gtk_editable_get_text (GTK_EDITABLE (self->search_entry)) != '\0';
}

static gboolean
is_narrowed (SwCataloguePane *self)
{
  return self->related != NULL || has_query (self) || sw_filter_bar_get_any (self->filters);
}

static void
show_page (SwCataloguePane *self,
           GtkWidget       *page)
{
  gtk_spinner_set_spinning (self->spinner, page == self->loading);
  gtk_stack_set_visible_child (self->stack, page);
}

static void
show_hits (SwCataloguePane *self,
           guint            n_hits)
{
  g_autofree char *count = g_strdup_printf (ngettext ("%u exercise", "%u exercises", n_hits), n_hits);
  g_autofree char *words = NULL;

  if (self->related_words != NULL)
    /* Translators: what is shown and how many: "Easier than Bridge: 2 exercises" */
    words = g_strdup_printf (_("%s: %s"), self->related_words, count);

  gtk_label_set_label (self->hits, words != NULL ? words : count);
  gtk_widget_set_sensitive (GTK_WIDGET (self->clear), is_narrowed (self));
}

/* Says what stands in the way, so that one can tell a typing error from too narrow a filter. */
static void
show_nothing (SwCataloguePane *self)
{
  const char *query = gtk_editable_get_text (GTK_EDITABLE (self->search_entry));
  g_autofree char *words = NULL;

  if (self->related != NULL)
    words = g_strdup (_("The catalogue has none."));
  else if (has_query (self) && sw_filter_bar_get_any (self->filters))
    words = g_strdup_printf (_("No exercise fits “%s” and the filters."), query);
  else if (has_query (self))
    words = g_strdup_printf (_("No exercise fits “%s”."), query);
  else if (sw_filter_bar_get_any (self->filters))
    words = g_strdup (_("No exercise fits the filters."));
  else
    words = g_strdup (_("The catalogue is empty."));

  gtk_label_set_label (self->nothing_words, words);
  show_page (self, self->nothing);
}

/**
 * sw_catalogue_pane_find:
 * @from_top: whether the question changed, so that the view begins at the best hits; when only the answer did, it
 *   stays where it is
 *
 * Fills the list anew.
 */
void
sw_catalogue_pane_find (SwCataloguePane *self,
                        gboolean         from_top)
{
  g_autoptr (GPtrArray) found = NULL;
  GPtrArray *exercises;
  SwSearchFilter filter;

  if (self->search == NULL)
    {
      gtk_label_set_label (self->hits, "");
      gtk_widget_set_sensitive (GTK_WIDGET (self->clear), FALSE);
      show_page (self, self->loading);
      return;
    }

  if (self->related == NULL)
    {
      sw_filter_bar_get_filter (self->filters, &filter);
      found = sw_search_find (self->search, gtk_editable_get_text (GTK_EDITABLE (self->search_entry)), &filter);
    }

  exercises = self->related != NULL ? self->related : found;
  sw_exercise_list_set (self->list, exercises);
  show_hits (self, exercises->len);
  if (exercises->len == 0)
    {
      show_nothing (self);
      return;
    }

  show_page (self, self->results);
  if (from_top)
    gtk_widget_activate_action (GTK_WIDGET (self->grid), "list.scroll-to-item", "u", 0);
}

/**
 * sw_catalogue_pane_forget_related:
 *
 * What the search finds is shown again at the next sw_catalogue_pane_find().
 */
void
sw_catalogue_pane_forget_related (SwCataloguePane *self)
{
  g_clear_pointer (&self->related, g_ptr_array_unref);
  g_clear_pointer (&self->related_words, g_free);
}

static void
index_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  (void) source;
  (void) cancellable;
  g_task_return_pointer (task, sw_search_new (data, pango_language_to_string (pango_language_get_default ())),
                         (GDestroyNotify) sw_search_free);
}

static void
indexed_cb (GObject      *object,
            GAsyncResult *result,
            gpointer      data)
{
  SwCataloguePane *self = SW_CATALOGUE_PANE (object);
  g_autoptr (SwSearch) search = g_task_propagate_pointer (G_TASK (result), NULL);

  (void) data;
  if (search == NULL || g_task_get_cancellable (G_TASK (result)) != self->indexing)
    return;

  g_clear_object (&self->indexing);
  g_clear_pointer (&self->search, sw_search_free);
  self->search = g_steal_pointer (&search);
  sw_catalogue_pane_forget_related (self);
  sw_catalogue_pane_find (self, FALSE);
}

/**
 * sw_catalogue_pane_stop_indexing:
 *
 * An index under way comes to nothing.
 */
void
sw_catalogue_pane_stop_indexing (SwCataloguePane *self)
{
  if (self->indexing != NULL)
    g_cancellable_cancel (self->indexing);
  g_clear_object (&self->indexing);
}

/**
 * sw_catalogue_pane_index:
 *
 * Indexes a copy of the catalogue in a worker: a large one takes longer than a frame, and until then the old index
 * serves.
 */
void
sw_catalogue_pane_index (SwCataloguePane *self)
{
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GTask) task = NULL;
  SwCatalogue *copy;

  sw_catalogue_pane_stop_indexing (self);
  if (self->catalogue == NULL)
    {
      g_clear_pointer (&self->search, sw_search_free);
      sw_catalogue_pane_forget_related (self);
      sw_catalogue_pane_find (self, FALSE);
      return;
    }

  copy = sw_catalogue_new ();
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->catalogue)); i++)
    g_ptr_array_add (exercises, g_list_model_get_item (G_LIST_MODEL (self->catalogue), i));
  sw_catalogue_add (copy, exercises);

  self->indexing = g_cancellable_new ();
  task = g_task_new (self, self->indexing, indexed_cb, NULL);
  g_task_set_task_data (task, copy, g_object_unref);
  g_task_run_in_thread (task, index_in_thread);
}

/* Empties search and filters without an answer in between. */
static void
forget_question (SwCataloguePane *self)
{
  self->clearing = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  sw_filter_bar_clear (self->filters);
  self->clearing = FALSE;

  sw_catalogue_pane_forget_related (self);
}

/**
 * sw_catalogue_pane_show_related:
 * @exercises: (transfer none) (element-type SwExercise): what to show
 * @words: (transfer full): what they are, above them
 *
 * Shows these exercises in place of what the search finds, until the next search or filter.
 */
void
sw_catalogue_pane_show_related (SwCataloguePane *self,
                                GPtrArray       *exercises,
                                char            *words)
{
  forget_question (self);
  self->related = g_ptr_array_ref (exercises);
  self->related_words = words;
  sw_catalogue_pane_find (self, TRUE);
}

/**
 * sw_catalogue_pane_clear:
 *
 * Shows the whole catalogue again.
 */
void
sw_catalogue_pane_clear (SwCataloguePane *self)
{
  forget_question (self);
  sw_catalogue_pane_find (self, TRUE);
}
