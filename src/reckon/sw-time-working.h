/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-session.h"
#include "sw-clinic.h"
#include "sw-working.h"

G_BEGIN_DECLS

SwWorking *sw_time_working_of_item (SwItem   *item,
                                    SwClinic *clinic);
SwWorking *sw_time_working_of_session (SwSession *session,
                                       SwClinic  *clinic);

G_END_DECLS
