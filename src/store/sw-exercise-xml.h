/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"
#include "sw-xml.h"
#include "sw-xml-writer.h"

G_BEGIN_DECLS

#define SW_EXERCISE_NS "urn:setwright:exercise"
#define SW_EXERCISE_VERSION 1

SwExercise *sw_exercise_from_bytes (GBytes      *bytes,
                                    const char  *name,
                                    GError     **error);
GBytes *sw_exercise_to_bytes (SwExercise *exercise);
SwExercise *sw_exercise_read (xmlNode  *node,
                              GError  **error);
void sw_exercise_write (SwExercise  *exercise,
                        SwXmlWriter *writer);

G_END_DECLS
