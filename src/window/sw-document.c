/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One place where the panes of a window meet: the programme, and what is reckoned from it after each edit. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-document.h"

struct _SwDocument
{
  GObject parent_instance;

  SwProgramme *programme;
  SwHistory *history;
  SwProgrammeFile *file;
  SwCatalogue *catalogue;
  SwSession *session;
  SwClock *clock;
  SwReadabilityReport *reading;
  GPtrArray *findings;
  GPtrArray *chosen;
  char *today;        /* as of the last reckoning */
};

G_DEFINE_FINAL_TYPE (SwDocument, sw_document, G_TYPE_OBJECT)

enum
{
  PROP_SESSION = 1,
  PROP_FILE,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  CHANGED,
  CHOSEN_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
reckon (SwDocument *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  g_clear_pointer (&self->clock, sw_clock_free);
  g_clear_pointer (&self->reading, sw_readability_report_free);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  if (self->session != NULL)
    self->clock = sw_clock_new (self->session, sw_programme_get_clinic (self->programme));
  self->reading = sw_readability_report_new_for_programme (self->programme);
  g_free (self->today);
  self->today = g_date_time_format (now, "%Y-%m-%d");
  self->findings = sw_findings_collect_with (self->programme, self->catalogue, self->today, self->reading);
}

/* An undo may take away the session that is shown: show its neighbour instead. */
static void
keep_session (SwDocument *self)
{
  GListStore *sessions = sw_programme_get_sessions (self->programme);
  g_autoptr (SwSession) first = NULL;
  guint position;

  if (self->session != NULL && g_list_store_find (sessions, self->session, &position))
    return;

  first = g_list_model_get_item (G_LIST_MODEL (sessions), 0);
  if (g_set_object (&self->session, first))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SESSION]);
}

/* What is no longer in the programme can no longer be chosen. */
static void
keep_chosen (SwDocument *self)
{
  gboolean dropped = FALSE;

  for (guint i = self->chosen->len; i > 0; i--)
    {
      guint position;

      if (sw_programme_find_list (self->programme, g_ptr_array_index (self->chosen, i - 1), &position) == NULL)
        {
          g_ptr_array_remove_index (self->chosen, i - 1);
          dropped = TRUE;
        }
    }

  if (dropped)
    g_signal_emit (self, signals[CHOSEN_CHANGED], 0);
}

static void
history_changed_cb (SwDocument *self)
{
  keep_session (self);
  reckon (self);
  g_signal_emit (self, signals[CHANGED], 0);
  keep_chosen (self);
}

static void
sw_document_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  SwDocument *self = SW_DOCUMENT (object);

  switch (id)
    {
    case PROP_SESSION:
      g_value_set_object (value, self->session);
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sw_document_dispose (GObject *object)
{
  SwDocument *self = SW_DOCUMENT (object);

  g_clear_pointer (&self->clock, sw_clock_free);
  g_clear_pointer (&self->reading, sw_readability_report_free);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_clear_pointer (&self->chosen, g_ptr_array_unref);
  g_clear_pointer (&self->today, g_free);
  g_clear_object (&self->session);
  g_clear_object (&self->catalogue);
  g_clear_object (&self->file);
  g_clear_object (&self->history);
  g_clear_object (&self->programme);

  G_OBJECT_CLASS (sw_document_parent_class)->dispose (object);
}

static void
sw_document_class_init (SwDocumentClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->get_property = sw_document_get_property;
  object_class->dispose = sw_document_dispose;

  props[PROP_SESSION] = g_param_spec_object ("session", NULL, NULL, SW_TYPE_SESSION,
                                             G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, SW_TYPE_PROGRAMME_FILE,
                                          G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[CHOSEN_CHANGED] = g_signal_new ("chosen-changed", SW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_document_init (SwDocument *self)
{
  self->history = sw_history_new ();
  self->chosen = g_ptr_array_new_with_free_func (g_object_unref);
  g_signal_connect_swapped (self->history, "changed", G_CALLBACK (history_changed_cb), self);
}

/**
 * sw_document_new:
 * @programme: (transfer none): the programme; from now on changed through the document's history only
 * @file: (nullable): where it lies, NULL when it was never saved
 *
 * Returns: (transfer full): a document that shows the programme's first session, nothing chosen
 */
SwDocument *
sw_document_new (SwProgramme     *programme,
                 SwProgrammeFile *file)
{
  SwDocument *self;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  self = g_object_new (SW_TYPE_DOCUMENT, NULL);
  self->programme = g_object_ref (programme);
  g_set_object (&self->file, file);
  keep_session (self);
  reckon (self);

  return self;
}

/**
 * sw_document_get_programme:
 *
 * Returns: (transfer none): the programme
 */
SwProgramme *
sw_document_get_programme (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->programme;
}

/**
 * sw_document_get_history:
 *
 * Returns: (transfer none): the one way to change the programme
 */
SwHistory *
sw_document_get_history (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->history;
}

/**
 * sw_document_get_file:
 *
 * Returns: (transfer none) (nullable): where the programme lies
 */
SwProgrammeFile *
sw_document_get_file (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->file;
}

/**
 * sw_document_set_file:
 * @file: (nullable): where the programme lies from now on
 */
void
sw_document_set_file (SwDocument      *self,
                      SwProgrammeFile *file)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  if (g_set_object (&self->file, file))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE]);
}

/**
 * sw_document_set_catalogue:
 * @catalogue: (nullable): where swaps are looked for; findings are made anew
 */
void
sw_document_set_catalogue (SwDocument  *self,
                           SwCatalogue *catalogue)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  if (!g_set_object (&self->catalogue, catalogue))
    return;

  reckon (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

/**
 * sw_document_get_catalogue:
 *
 * Returns: (transfer none) (nullable): the catalogue, NULL while it is being loaded
 */
SwCatalogue *
sw_document_get_catalogue (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->catalogue;
}

/**
 * sw_document_get_session:
 *
 * Returns: (transfer none) (nullable): the session on the canvas; NULL only in a programme without any
 */
SwSession *
sw_document_get_session (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->session;
}

/**
 * sw_document_set_session:
 * @session: a session of the programme, to be shown on the canvas
 */
void
sw_document_set_session (SwDocument *self,
                         SwSession  *session)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (SW_IS_SESSION (session));

  if (!g_set_object (&self->session, session))
    return;

  reckon (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SESSION]);
  g_signal_emit (self, signals[CHANGED], 0);
  sw_document_choose_item (self, NULL);
}

/**
 * sw_document_get_clock:
 *
 * Returns: (nullable): the running clock of the session on the canvas, valid until the next "changed"
 */
const SwClock *
sw_document_get_clock (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->clock;
}

/**
 * sw_document_get_reading:
 *
 * Returns: (transfer none) (nullable): how the words for the client read, valid until the next "changed"; %NULL in a
 *   language where that cannot be told
 */
const SwReadabilityReport *
sw_document_get_reading (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->reading;
}

/**
 * sw_document_get_findings:
 *
 * Returns: (transfer none) (element-type SwFinding): what checking found, valid until the next "changed"
 */
GPtrArray *
sw_document_get_findings (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->findings;
}

/**
 * sw_document_get_today:
 *
 * Returns: (transfer none): the day of the last reckoning, YYYY-MM-DD
 */
const char *
sw_document_get_today (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->today;
}

/**
 * sw_document_get_chosen:
 *
 * Returns: (transfer none) (element-type SwItem): the chosen items, in no particular order; may be empty
 */
GPtrArray *
sw_document_get_chosen (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->chosen;
}

/**
 * sw_document_get_chosen_item:
 *
 * Returns: (transfer none) (nullable): the chosen item when exactly one is chosen
 */
SwItem *
sw_document_get_chosen_item (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->chosen->len == 1 ? g_ptr_array_index (self->chosen, 0) : NULL;
}

static gboolean
same_items (GPtrArray *a,
            GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    if (g_ptr_array_index (a, i) != g_ptr_array_index (b, i))
      return FALSE;

  return TRUE;
}

/**
 * sw_document_choose:
 * @items: (element-type SwItem): the items to choose; may be empty
 *
 * Choosing something else ends the merging of edits, so that typing into two items undoes in two steps.
 */
void
sw_document_choose (SwDocument *self,
                    GPtrArray  *items)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (items != NULL);

  if (same_items (self->chosen, items))
    return;

  g_ptr_array_set_size (self->chosen, 0);
  for (guint i = 0; i < items->len; i++)
    g_ptr_array_add (self->chosen, g_object_ref (g_ptr_array_index (items, i)));

  sw_history_stop_merging (self->history);
  g_signal_emit (self, signals[CHOSEN_CHANGED], 0);
}

/**
 * sw_document_choose_item:
 * @item: (nullable): the only item to choose, or NULL for none
 */
void
sw_document_choose_item (SwDocument *self,
                         SwItem     *item)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new ();

  if (item != NULL)
    g_ptr_array_add (items, item);
  sw_document_choose (self, items);
}

/**
 * sw_document_dup_name:
 *
 * Returns: (transfer full): what a window title calls the document: client and title, whichever are known
 */
char *
sw_document_dup_name (SwDocument *self)
{
  const char *client;
  const char *title;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);

  client = sw_client_get_name (sw_programme_get_client (self->programme));
  title = sw_programme_get_title (self->programme);

  if (*client != '\0' && *title != '\0')
    return g_strdup_printf ("%s – %s", client, title);
  if (*client != '\0')
    return g_strdup (client);
  if (*title != '\0')
    return g_strdup (title);
  return g_strdup (_("New programme"));
}
