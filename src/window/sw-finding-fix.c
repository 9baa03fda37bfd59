/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What answers a finding: a change of the programme, or the clinician's reason for leaving it. Each is one
 * step of undo. A finding belongs to its document's last check: it is gone once something was changed. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-labels.h"
#include "sw-edits.h"
#include "sw-finding-fix.h"

/**
 * sw_finding_show:
 * @document: a document
 * @finding: one of its findings
 *
 * Chooses the item it is about, in whichever session that is; without an item it chooses nothing, so that the
 * client is shown.
 */
void
sw_finding_show (SwDocument      *document,
                 const SwFinding *finding)
{
  g_autoptr (SwItem) item = NULL;
  GListModel *sessions;

  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (finding != NULL);

  g_set_object (&item, finding->item);
  sessions = G_LIST_MODEL (sw_programme_get_sessions (sw_document_get_programme (document)));
  for (guint i = 0; item != NULL && i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_session_dup_items (session);

      if (g_ptr_array_find (items, item, NULL))
        {
          sw_document_set_session (document, session);
          break;
        }
    }
  sw_document_choose_item (document, item);
}

static void
remove_item (SwDocument      *document,
             const SwFinding *finding)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);

  g_ptr_array_add (items, g_object_ref (finding->item));
  sw_edit_remove (sw_document_get_history (document), sw_document_get_programme (document), items,
                  finding->fix_label);
}

/**
 * sw_finding_swap:
 * @document: a document
 * @finding: one of its findings that knows another exercise
 *
 * Puts that exercise in the item's place.
 */
void
sw_finding_swap (SwDocument      *document,
                 const SwFinding *finding)
{
  g_autofree char *label = NULL;

  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (finding != NULL && finding->item != NULL && finding->fix_exercise != NULL);

  label = sw_edit_label_for_swap (finding->item, finding->fix_exercise);
  sw_edit_swap_exercise (sw_document_get_history (document), sw_document_get_programme (document), finding->item,
                         finding->fix_exercise, label);
}

/**
 * sw_finding_apply_fix:
 * @document: a document
 * @finding: one of its findings
 *
 * Does what the finding's button says. Nothing for a finding without a fix.
 */
void
sw_finding_apply_fix (SwDocument      *document,
                      const SwFinding *finding)
{
  SwHistory *history;
  SwClient *client;

  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (finding != NULL);

  history = sw_document_get_history (document);
  client = sw_programme_get_client (sw_document_get_programme (document));
  switch (finding->fix)
    {
    case SW_FIX_SHOW_ITEM:
      sw_finding_show (document, finding);
      break;
    case SW_FIX_REMOVE_ITEM:
      remove_item (document, finding);
      break;
    case SW_FIX_SWAP_EXERCISE:
      sw_finding_swap (document, finding);
      break;
    case SW_FIX_SET_DOSE:
      sw_history_set_boxed (history, finding->fix_label, finding->fix_item != NULL ? finding->fix_item : finding->item,
                            "dose", &finding->fix_dose);
      sw_history_stop_merging (history);
      break;
    case SW_FIX_SPLIT_SESSION:
      sw_edit_split_session (history, sw_document_get_programme (document), finding->fix_session, finding->fix_moving,
                             finding->fix_label);
      break;
    case SW_FIX_ADD_EQUIPMENT:
      sw_history_set_int (history, finding->fix_label, client, "equipment",
                          (gint64) (sw_client_get_equipment (client) | finding->fix_equipment));
      sw_history_stop_merging (history);
      break;
    case SW_FIX_SHOW_CLIENT:
      sw_document_choose_item (document, NULL);
      break;
    case SW_FIX_NONE:
    default:
      break;
    }
}

/**
 * sw_finding_keep:
 * @document: a document
 * @finding: one of its findings, not answered yet
 * @reason: why what it speaks against is kept; not empty
 *
 * Stores the reason as the finding's answer, dated today.
 */
void
sw_finding_keep (SwDocument      *document,
                 const SwFinding *finding,
                 const char      *reason)
{
  SwProgramme *programme;
  GListStore *answers;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (SwAnswer) answer = NULL;
  gpointer addition;

  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (finding != NULL && finding->answer == NULL);
  g_return_if_fail (reason != NULL && *reason != '\0');

  programme = sw_document_get_programme (document);
  answers = sw_programme_get_answers (programme);
  answer = sw_answer_new (finding->key, reason, today, sw_clinic_get_therapist (sw_programme_get_clinic (programme)),
                          NULL);
  addition = answer;
  sw_history_splice (sw_document_get_history (document), _ ("Keep with a reason"), answers,
                     g_list_model_get_n_items (G_LIST_MODEL (answers)), 0, &addition, 1);
}

/**
 * sw_finding_take_back:
 * @document: a document
 * @finding: one of its findings, answered
 *
 * Removes the answer: the finding is open again.
 */
void
sw_finding_take_back (SwDocument      *document,
                      const SwFinding *finding)
{
  GListStore *answers;
  guint position;

  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (finding != NULL && finding->answer != NULL);

  answers = sw_programme_get_answers (sw_document_get_programme (document));
  if (g_list_store_find (answers, finding->answer, &position))
    sw_history_splice (sw_document_get_history (document), _ ("Take the reason back"), answers, position, 1, NULL, 0);
}
