/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The handout's pages, made beside the window, which goes on meanwhile. */
#include "config.h"

#include "sw-pages-make.h"

typedef struct
{
  SwProgramme *programme; /* a copy for the worker alone */
  SwHandoutOptions options;
  SwMeasured *before;     /* of the handout shown, or NULL */
  char *language;
  char *date;
} Request;

static void
request_free (gpointer data)
{
  Request *request = data;

  g_object_unref (request->programme);
  g_clear_pointer (&request->before, sw_measured_free);
  g_free (request->language);
  g_free (request->date);
  g_free (request);
}

static Request *
request_new (SwProgramme *programme,
             SwHandout   *shown)
{
  Request *request = g_new0 (Request, 1);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  request->programme = sw_programme_copy (programme);
  request->before = shown != NULL ? sw_handout_dup_measured (shown) : NULL;
  request->date = g_date_time_format (now, "%Y-%m-%d");
  sw_handout_options_init (&request->options, request->programme, request->date);
  request->language = g_strdup (request->options.language);
  request->options.language = request->language;
  request->options.date = request->date;
  return request;
}

static void
make_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Request *request = data;
  GError *error = NULL;
  SwHandout *handout = NULL;

  (void) source;
  (void) cancellable;
  if (g_task_return_error_if_cancelled (task))
    return;

  handout = sw_handout_new_after (request->programme, &request->options, request->before, &error);
  if (handout != NULL)
    g_task_return_pointer (task, handout, g_object_unref);
  else
    g_task_return_error (task, error);
}

/**
 * sw_pages_make_async:
 * @source: (type GObject): who asks
 * @programme: whose handout, as it is now
 * @shown: (nullable): the handout made before; what did not change since is not measured again
 * @cancellable: ends it
 * @callback: calls sw_pages_make_finish()
 */
void
sw_pages_make_async (gpointer             source,
                     SwProgramme         *programme,
                     SwHandout           *shown,
                     GCancellable        *cancellable,
                     GAsyncReadyCallback  callback)
{
  g_autoptr (GTask) task = g_task_new (source, cancellable, callback, NULL);

  g_task_set_check_cancellable (task, TRUE);
  g_task_set_task_data (task, request_new (programme, shown), request_free);
  g_task_run_in_thread (task, make_in_thread);
}

/**
 * sw_pages_make_finish:
 *
 * Returns: (transfer full): the handout of today, or NULL with an error worded for the therapist
 */
SwHandout *
sw_pages_make_finish (GAsyncResult  *result,
                      GError       **error)
{
  g_return_val_if_fail (G_IS_TASK (result), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
