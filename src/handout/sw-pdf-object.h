/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwPdfObject:
 * @text: its value, of a stream the dictionary; NULL for an object that is not there
 * @length: of @text
 * @own: (nullable): what @text points to where it is not a part of the file that was read
 * @stream: (nullable): the bytes of a stream, as they are filtered
 * @stream_length: how many they are
 * @own_stream: (nullable): what @stream points to where it is not a part of the file that was read
 *
 * A numbered object of a PDF. Its value stays text: what is looked up in it is found, what is put in is
 * inserted.
 */
typedef struct
{
  const char *text;
  gsize length;
  char *own;
  const char *stream;
  gsize stream_length;
  GBytes *own_stream;
} SwPdfObject;

void sw_pdf_object_clear (SwPdfObject *self);
gboolean sw_pdf_object_is_dictionary (const SwPdfObject *self);
void sw_pdf_object_take_text (SwPdfObject *self,
                              char        *text);
void sw_pdf_object_take_stream (SwPdfObject *self,
                                GBytes      *stream);
char *sw_pdf_object_dup_value (const SwPdfObject *self,
                               const char        *key);
gboolean sw_pdf_object_has (const SwPdfObject *self,
                            const char        *key,
                            const char        *value);
void sw_pdf_object_set (SwPdfObject *self,
                        const char  *key,
                        const char  *value);
void sw_pdf_object_append (SwPdfObject *self,
                           const char  *key,
                           const char  *values);
void sw_pdf_object_extend (SwPdfObject *self,
                           const char  *key,
                           const char  *entries);
char *sw_pdf_quote (const char *text);

G_END_DECLS
