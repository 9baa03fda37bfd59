/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "sw-document.h"

G_BEGIN_DECLS

GActionGroup *sw_edit_actions_new (SwDocument *document);

G_END_DECLS
