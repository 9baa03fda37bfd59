/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * FaultKind:
 * @FAULT_NONE: nothing fails; operations are only counted
 * @FAULT_ONCE: the chosen operation fails, those after it do not
 * @FAULT_FOR_GOOD: it and all after it fail
 * @FAULT_KILL: the process ends at once, as by kill -9, before the operation
 * @FAULT_LINKS: hard links are refused, as on disks that know none
 * @FAULT_MODES: modes cannot be changed, as on disks that know none
 * @FAULT_SHORT: every write takes but one byte
 */
typedef enum
{
  FAULT_NONE,
  FAULT_ONCE,
  FAULT_FOR_GOOD,
  FAULT_KILL,
  FAULT_LINKS,
  FAULT_MODES,
  FAULT_SHORT,
} FaultKind;

void fault_begin (FaultKind kind,
                  int       operation,
                  int       error_number);
int fault_end (void);

G_END_DECLS
