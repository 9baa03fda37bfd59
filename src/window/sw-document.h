/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"
#include "sw-finding.h"
#include "sw-history.h"
#include "sw-programme-file.h"
#include "sw-programme.h"
#include "sw-time.h"

G_BEGIN_DECLS

/**
 * SwDocument:
 *
 * An open programme: its history, its file, the session on the canvas, what is chosen there, and what was
 * reckoned of it. The panes look at a document and at nothing else; they change it through its history.
 *
 * Properties: "session" (SwSession), "file" (SwProgrammeFile, nullable).
 * Signals: "changed" after every edit, undo and redo, when clock and findings are up to date again, and
 * when another session is shown; "chosen-changed" when other items are chosen.
 */
#define SW_TYPE_DOCUMENT (sw_document_get_type ())
G_DECLARE_FINAL_TYPE (SwDocument, sw_document, SW, DOCUMENT, GObject)

SwDocument *sw_document_new (SwProgramme     *programme,
                             SwProgrammeFile *file);
SwProgramme *sw_document_get_programme (SwDocument *self);
SwHistory *sw_document_get_history (SwDocument *self);
SwProgrammeFile *sw_document_get_file (SwDocument *self);
void sw_document_set_file (SwDocument      *self,
                           SwProgrammeFile *file);
void sw_document_set_catalogue (SwDocument  *self,
                                SwCatalogue *catalogue);
SwCatalogue *sw_document_get_catalogue (SwDocument *self);
SwSession *sw_document_get_session (SwDocument *self);
void sw_document_set_session (SwDocument *self,
                              SwSession  *session);
const SwClock *sw_document_get_clock (SwDocument *self);
const SwReadabilityReport *sw_document_get_reading (SwDocument *self);
GPtrArray *sw_document_get_findings (SwDocument *self);
const char *sw_document_get_today (SwDocument *self);
GPtrArray *sw_document_get_chosen (SwDocument *self);
SwItem *sw_document_get_chosen_item (SwDocument *self);
void sw_document_choose (SwDocument *self,
                         GPtrArray  *items);
void sw_document_choose_item (SwDocument *self,
                              SwItem     *item);
char *sw_document_dup_name (SwDocument *self);

G_END_DECLS
