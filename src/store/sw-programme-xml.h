/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

#define SW_PROGRAMME_NS "urn:setwright:programme"
#define SW_PROGRAMME_VERSION 1

SwProgramme *sw_programme_from_bytes (GBytes      *bytes,
                                      const char  *name,
                                      GError     **error);
GBytes *sw_programme_to_bytes (SwProgramme *programme);

G_END_DECLS
