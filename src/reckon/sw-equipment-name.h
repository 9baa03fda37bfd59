/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

const char *sw_equipment_get_name (SwEquipment equipment);
char *sw_equipment_dup_names (SwSet equipment);

G_END_DECLS
