/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwDraftKeeper:
 *
 * Keeps the draft of one open programme: while there are changes that are not saved, one is written two seconds
 * after the first edit that no draft holds, however fast the edits follow one another; when all is saved, it is
 * removed. The draft stays where it is when the keeper is let go of.
 *
 * Signal "failed" (GError): edits could not be written, or a draft not be removed.
 */
#define SW_TYPE_DRAFT_KEEPER (sw_draft_keeper_get_type ())
G_DECLARE_FINAL_TYPE (SwDraftKeeper, sw_draft_keeper, SW, DRAFT_KEEPER, GObject)

SwDraftKeeper *sw_draft_keeper_new (SwDocument *document,
                                    const char *path);
void sw_draft_keeper_discard (SwDraftKeeper *self);

G_END_DECLS
