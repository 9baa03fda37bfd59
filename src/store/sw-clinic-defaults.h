/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-clinic.h"

G_BEGIN_DECLS

void sw_clinic_defaults_load (SwClinic *clinic);
gboolean sw_clinic_defaults_save (SwClinic  *before,
                                  SwClinic  *after,
                                  GError   **error);

G_END_DECLS
