/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between the parts of the programme's reader. */
#pragma once

#include "sw-extras.h"
#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwReading:
 * @programme: what is filled
 * @extras: (element-type utf8): the programme's own
 * @exercises: (element-type utf8 SwExercise): the snapshots in the file, by id
 * @ids: (element-type utf8): of the items read so far
 *
 * What is gathered while a programme is read.
 */
typedef struct
{
  SwProgramme *programme;
  GPtrArray *extras;
  GHashTable *exercises;
  GHashTable *ids;
} SwReading;

char *sw_reading_string (const xmlNode *node,
                         const char    *name);
char *sw_reading_leaf (xmlNode    *node,
                       const char *path,
                       GPtrArray  *extras);
void sw_reading_strings (gpointer           object,
                         const xmlNode     *node,
                         const char *const *names);
void sw_reading_line (xmlNode    *node,
                      GString   **lines,
                      guint      *n,
                      GPtrArray  *extras);
void sw_reading_set_second (const xmlNode  *node,
                            const char     *name,
                            GError        **error);
gboolean sw_reading_client (xmlNode    *node,
                            SwReading  *reading,
                            GError    **error);
gboolean sw_reading_clinic (xmlNode    *node,
                            SwReading  *reading,
                            GError    **error);
gboolean sw_reading_item (xmlNode     *node,
                          GListStore  *items,
                          gboolean     in_circuit,
                          SwReading   *reading,
                          gboolean    *known,
                          GError     **error);

G_END_DECLS
