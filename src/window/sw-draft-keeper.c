/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * When the draft of an open programme is written and when it is removed. */
#include "config.h"

#include "sw-draft-keeper.h"

#include "sw-drafts.h"

/* A crash loses at most the edits of this long, and of the write itself. */
#define DELAY_S 2

struct _SwDraftKeeper
{
  GObject parent_instance;

  SwDocument *document;
  char *path;
  guint timeout;
  gboolean wanted;    /* edits since the last write began */
  gboolean writing;
  gboolean unwanted;  /* what is being written is to be removed when it is there */
};

G_DEFINE_FINAL_TYPE (SwDraftKeeper, sw_draft_keeper, G_TYPE_OBJECT)

enum
{
  FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void write_draft (SwDraftKeeper *self);

static gboolean
due_cb (gpointer data)
{
  SwDraftKeeper *self = data;

  self->timeout = 0;
  write_draft (self);
  return G_SOURCE_REMOVE;
}

static void
schedule (SwDraftKeeper *self)
{
  self->wanted = TRUE;
  if (self->timeout == 0 && !self->writing)
    self->timeout = g_timeout_add_seconds (DELAY_S, due_cb, self);
}

static void
remove_draft (SwDraftKeeper *self)
{
  g_autoptr (GError) error = NULL;

  if (!sw_draft_discard (self->path, &error))
    g_signal_emit (self, signals[FAILED], 0, error);
}

static void
written_cb (GObject      *object,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (SwDraftKeeper) self = data;
  g_autoptr (GError) error = NULL;
  GApplication *application = g_application_get_default ();

  (void) object;
  self->writing = FALSE;
  if (!sw_draft_write_finish (result, &error))
    g_signal_emit (self, signals[FAILED], 0, error);
  if (self->unwanted)
    {
      self->unwanted = FALSE;
      remove_draft (self);
    }
  if (self->wanted)
    schedule (self);

  if (application != NULL)
    g_application_release (application);
}

static void
write_draft (SwDraftKeeper *self)
{
  SwProgrammeFile *file = sw_document_get_file (self->document);
  GApplication *application = g_application_get_default ();

  self->wanted = FALSE;
  self->writing = TRUE;
  /* The program must not end before a draft that nobody wants any more can be removed. */
  if (application != NULL)
    g_application_hold (application);
  sw_draft_write_async (self->path, sw_document_get_programme (self->document),
                        file != NULL ? sw_programme_file_get_path (file) : NULL,
                        file != NULL ? sw_programme_file_get_hash (file) : NULL, NULL, written_cb, g_object_ref (self));
}

/* After an edit, an undo, a save. */
static void
look (SwDraftKeeper *self)
{
  if (sw_history_get_modified (sw_document_get_history (self->document)))
    schedule (self);
  else
    sw_draft_keeper_discard (self);
}

static void
sw_draft_keeper_dispose (GObject *object)
{
  SwDraftKeeper *self = SW_DRAFT_KEEPER (object);

  g_clear_handle_id (&self->timeout, g_source_remove);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_draft_keeper_parent_class)->dispose (object);
}

static void
sw_draft_keeper_finalize (GObject *object)
{
  SwDraftKeeper *self = SW_DRAFT_KEEPER (object);

  g_free (self->path);

  G_OBJECT_CLASS (sw_draft_keeper_parent_class)->finalize (object);
}

static void
sw_draft_keeper_class_init (SwDraftKeeperClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_draft_keeper_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_draft_keeper_finalize;

  signals[FAILED] = g_signal_new ("failed", SW_TYPE_DRAFT_KEEPER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_ERROR);
}

static void
sw_draft_keeper_init (SwDraftKeeper *self)
{
  (void) self;
}

/**
 * sw_draft_keeper_new:
 * @document: an open programme
 * @path: (nullable): the draft it was recovered from, which goes on to be its draft
 *
 * Returns: (transfer full): the keeper of its draft
 */
SwDraftKeeper *
sw_draft_keeper_new (SwDocument *document,
                     const char *path)
{
  SwDraftKeeper *self;
  SwHistory *history;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_DRAFT_KEEPER, NULL);
  self->document = g_object_ref (document);
  self->path = path != NULL ? g_strdup (path) : sw_draft_dup_new_path ();

  history = sw_document_get_history (document);
  g_signal_connect_object (history, "changed", G_CALLBACK (look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (history, "notify::modified", G_CALLBACK (look), self, G_CONNECT_SWAPPED);
  if (sw_history_get_modified (history))
    schedule (self);
  return self;
}

/**
 * sw_draft_keeper_discard:
 *
 * Removes the draft, now or when the write that is under way is over; later edits are kept again.
 */
void
sw_draft_keeper_discard (SwDraftKeeper *self)
{
  g_return_if_fail (SW_IS_DRAFT_KEEPER (self));

  g_clear_handle_id (&self->timeout, g_source_remove);
  self->wanted = FALSE;
  if (self->writing)
    self->unwanted = TRUE;
  else
    remove_draft (self);
}
