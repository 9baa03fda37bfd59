/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The words and marks of a canvas row, made apart from widgets: a row is drawn anew only when they differ. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-face.h"
#include "sw-edit-labels.h"
#include "sw-labels.h"

static double
middle_s (SwSpan span)
{
  return (span.low_s + span.high_s) / 2.0;
}

static char *
duration (SwSpan span)
{
  return sw_label_duration (span.low_s, span.high_s);
}

static char *
one_line (const char *text)
{
  char *line = g_strstrip (g_strdup (text));

  return g_strdelimit (line, "\n\r\t", ' ');
}

static void
append_part (GString    *text,
             const char *part)
{
  if (part == NULL || *part == '\0')
    return;
  if (text->len > 0)
    g_string_append (text, "; ");
  g_string_append (text, part);
}

static SwCanvasFace *
face_new (SwPosition before,
          SwPosition position)
{
  SwCanvasFace *face = g_new0 (SwCanvasFace, 1);

  face->before = before;
  face->position = position;
  return face;
}

/* Members count within their circuit. */
static SwSpan
span_of_section (const SwClock *clock,
                 SwSection     *section,
                 SwSpan        *start)
{
  SwSpan sum = { 0.0, 0.0 };
  gboolean begun = FALSE;

  *start = (SwSpan){ 0.0, 0.0 };
  for (guint i = 0; clock != NULL && i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);

      if (entry->section != section || entry->circuit != NULL || entry->apart)
        continue;
      if (!begun)
        *start = (SwSpan){ entry->start.low_s - entry->change.low_s, entry->start.high_s - entry->change.high_s };
      begun = TRUE;
      sum.low_s += entry->length.low_s + entry->change.low_s;
      sum.high_s += entry->length.high_s + entry->change.high_s;
    }

  return sum;
}

/**
 * sw_canvas_face_new_for_section:
 * @document: a document
 * @section: a section of the session it shows
 * @position: where the body is meanwhile
 *
 * Returns: (transfer full): the face of a section's header
 */
SwCanvasFace *
sw_canvas_face_new_for_section (SwDocument *document,
                                SwSection  *section,
                                SwPosition  position)
{
  SwCanvasFace *face = face_new (position, position);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (document)));
  SwSpan start;
  SwSpan length = span_of_section (sw_document_get_clock (document), section, &start);
  guint index = 0;

  g_list_store_find (G_LIST_STORE (sections), section, &index);
  face->name = g_strdup (sw_section_get_title (section));
  face->dose = g_strdup (sw_label (SW_TYPE_SECTION_KIND, sw_section_get_kind (section)));
  face->note = g_strdup ("");
  face->start = g_strdup ("");
  face->length = length.high_s > 0.0 ? duration (length) : g_strdup ("");
  /* Translators: a section's name, its place among the sections, how many there are */
  face->label = g_strdup_printf (_ ("%s, section %u of %u"), *face->name != '\0' ? face->name : face->dose,
                                 index + 1, g_list_model_get_n_items (sections));
  face->description = g_strdup (face->length);

  return face;
}

/**
 * sw_canvas_face_new_for_empty:
 * @owner: the section or circuit that holds nothing
 * @position: where the body is meanwhile
 *
 * Returns: (transfer full): the face of the row that stands in for items still to come
 */
SwCanvasFace *
sw_canvas_face_new_for_empty (gpointer   owner,
                              SwPosition position)
{
  SwCanvasFace *face = face_new (position, position);
  g_autofree char *name = sw_edit_object_name (owner);

  face->name = g_strdup (SW_IS_SECTION (owner) ? _ ("Drop an exercise here, or double-click one in the catalogue")
                                               : _ ("Drop the circuit’s exercises here"));
  face->dose = g_strdup ("");
  face->note = g_strdup ("");
  face->start = g_strdup ("");
  face->length = g_strdup ("");
  /* Translators: %s is a section's or circuit's name */
  face->label = g_strdup_printf (_ ("%s: empty"), name);
  face->description = g_strdup (face->name);
  face->last = TRUE;

  return face;
}

static char *
dose_of_item (SwItem *item)
{
  int rounds = sw_item_get_rounds (item);
  int rest_s = sw_item_get_rest_s (item);
  SwSide side = sw_item_get_dose (item)->side;
  g_autofree char *rest = NULL;
  g_autofree char *words = NULL;

  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_EXERCISE:
      return sw_dose_to_line (sw_item_get_dose (item));

    case SW_ITEM_REST:
      return g_strdup (*sw_item_get_title (item) != '\0' ? sw_label (SW_TYPE_ITEM_KIND, SW_ITEM_REST) : "");

    case SW_ITEM_CIRCUIT:
      words = g_strdup_printf (ngettext ("%d round", "%d rounds", rounds), rounds);
      if (rest_s == 0 || rounds < 2)
        return g_steal_pointer (&words);
      rest = sw_label_duration (rest_s, rest_s);
      /* Translators: "3 rounds", then a time */
      return g_strdup_printf (_ ("%s, %s rest between rounds"), words, rest);

    case SW_ITEM_SELF_CHECK:
    default:
      if (side == SW_SIDE_BOTH)
        /* Translators: what the self-check is counted in */
        return g_strdup_printf (_ ("Self-check: %s"), sw_label (SW_TYPE_MEASURE, sw_item_get_measure (item)));
      /* Translators: what the self-check is counted in, then the side */
      return g_strdup_printf (_ ("Self-check: %s, %s"), sw_label (SW_TYPE_MEASURE, sw_item_get_measure (item)),
                              sw_label (SW_TYPE_SIDE, side));
    }
}

static void
add_findings (SwCanvasFace *face,
              GPtrArray    *findings,
              SwItem       *item)
{
  g_autoptr (GString) text = NULL;

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (finding->item != item || finding->answer != NULL)
        continue;
      if (text == NULL)
        text = g_string_new (NULL);
      else
        g_string_append_c (text, '\n');
      g_string_append (text, finding->text);
      face->level = MAX (face->level, finding->level);
    }

  if (text != NULL)
    face->finding = g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_clock (SwCanvasFace       *face,
           const SwClockEntry *entry,
           gboolean            is_first)
{
  g_autofree char *change = NULL;

  g_autofree char *length = duration (entry->length);

  if (entry->apart)
    {
      face->start = g_strdup ("");
      /* Translators: how long a self-check takes, which is done on the first day and before visits only */
      face->length = g_strdup_printf (_ ("%s before visits"), length);
      return;
    }

  face->start = sw_clock_to_words (middle_s (entry->start));
  face->length = g_steal_pointer (&length);
  if (is_first)
    face->change = g_strdup (sw_label (SW_TYPE_POSITION, entry->position));
  if (is_first || !entry->moves)
    return;

  change = duration (entry->change);
  /* Translators: a body position, then the time it takes to get into it */
  face->change = g_strdup_printf (_ ("%s · %s to change"), sw_label (SW_TYPE_POSITION, entry->position), change);
}

/* Where the session begins the position is named as well, though nothing changes there. */
static gboolean
is_first_exercise (SwDocument *document,
                   SwItem     *item)
{
  const SwClock *clock = sw_document_get_clock (document);

  for (guint i = 0; i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);

      if (sw_item_get_kind (entry->item) == SW_ITEM_EXERCISE)
        return entry->item == item;
    }

  return FALSE;
}

static char *
describe (const SwCanvasFace *face)
{
  g_autoptr (GString) text = g_string_new (NULL);

  append_part (text, face->dose);
  append_part (text, face->length);
  append_part (text, face->change != NULL ? face->change : sw_label (SW_TYPE_POSITION, face->position));
  append_part (text, face->note);
  append_part (text, face->finding);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/**
 * sw_canvas_face_new_for_item:
 * @document: a document
 * @item: an item of the session it shows
 * @entry: (nullable): the item's line of the clock
 * @before: where the body is before it
 * @number: which of the session's exercises it is, from 1; 0 when it is none
 * @n_exercises: how many exercises the session has
 *
 * Returns: (transfer full): the item's face
 */
SwCanvasFace *
sw_canvas_face_new_for_item (SwDocument         *document,
                             SwItem             *item,
                             const SwClockEntry *entry,
                             SwPosition          before,
                             guint               number,
                             guint               n_exercises)
{
  SwCanvasFace *face = face_new (before, entry != NULL ? entry->position : before);

  face->name = sw_edit_object_name (item);
  face->number = number;
  face->dose = dose_of_item (item);
  face->note = one_line (sw_item_get_note (item));
  face->mirrored = sw_item_get_dose (item)->side == SW_SIDE_LEFT;
  if (sw_item_get_exercise (item) != NULL)
    face->exercise = g_object_ref (sw_item_get_exercise (item));

  if (entry != NULL)
    add_clock (face, entry, is_first_exercise (document, item));
  else
    face->start = g_strdup (""), face->length = g_strdup ("");
  add_findings (face, sw_document_get_findings (document), item);

  if (number > 0)
    /* Translators: an exercise's name, its number in the session, how many there are */
    face->label = g_strdup_printf (_ ("%s, %u of %u"), face->name, number, n_exercises);
  else
    face->label = g_strdup (face->name);
  face->description = describe (face);

  return face;
}

/**
 * sw_canvas_face_equal:
 * @a: a face
 * @b: another
 *
 * Returns: whether they look and read the same
 */
gboolean
sw_canvas_face_equal (const SwCanvasFace *a,
                      const SwCanvasFace *b)
{
  return a->number == b->number && a->level == b->level && a->before == b->before && a->position == b->position
         && a->last == b->last && a->mirrored == b->mirrored && a->exercise == b->exercise
         && g_str_equal (a->name, b->name) && g_str_equal (a->dose, b->dose) && g_str_equal (a->note, b->note)
         && g_str_equal (a->start, b->start) && g_str_equal (a->length, b->length)
         && g_strcmp0 (a->change, b->change) == 0 && g_strcmp0 (a->finding, b->finding) == 0
         && g_str_equal (a->label, b->label) && g_str_equal (a->description, b->description);
}

/**
 * sw_canvas_face_free:
 * @face: (transfer full): a face
 */
void
sw_canvas_face_free (SwCanvasFace *face)
{
  g_free (face->name);
  g_free (face->dose);
  g_free (face->note);
  g_free (face->start);
  g_free (face->length);
  g_free (face->change);
  g_free (face->finding);
  g_free (face->label);
  g_free (face->description);
  g_clear_object (&face->exercise);
  g_free (face);
}
