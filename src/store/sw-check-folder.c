/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What only shows when the exercises of a folder are seen together: links that do not answer each other, chains of
 * harder exercises that bite their own tail, names that mean two exercises. Links to what is not there are told of where
 * the folder is read. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-check-folder.h"
#include "sw-exercise.h"
#include "sw-exercise-line.h"
#include "sw-problem.h"

/* Where the search for loops has been. */
typedef enum
{
  PLACE_NEW,
  PLACE_OPEN, /* on the way that is being followed */
  PLACE_DONE,
} Place;

typedef struct
{
  const char *folder;
  GPtrArray *exercises;
  GPtrArray *problems;
  GHashTable *by_id;  /* id -> place in @exercises plus 1 */
  GPtrArray **harder; /* of each exercise the numbers of those that are harder, whichever of the two says so */
  Place *places;
  GArray *way;        /* of guint: the exercises followed at present */
} Subject;

static SwExercise *
nth (Subject *self,
     guint    n)
{
  return g_ptr_array_index (self->exercises, n);
}

static SwExercise *
find (Subject    *self,
      const char *id)
{
  guint place = GPOINTER_TO_UINT (g_hash_table_lookup (self->by_id, id));

  return place > 0 ? nth (self, place - 1) : NULL;
}

static void
add (Subject        *self,
     SwExercise     *exercise,
     SwFindingLevel  level,
     const char     *element,
     const char     *content,
     const char     *text)
{
  g_autofree char *name = g_strconcat (sw_exercise_get_id (exercise), ".xml", NULL);
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  long line = sw_exercise_find_line_in_file (path, element, content);

  g_ptr_array_add (self->problems, sw_problem_new_at_level (path, line, level, text));
}

static gboolean
names (char       **ids,
       const char  *id)
{
  return g_strv_contains ((const char * const *) ids, id);
}

/* A link both ways in one direction is a loop, and told of as such. */
static void
check_answers (Subject    *self,
               SwExercise *exercise,
               gboolean    harder)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  char **ids = harder ? facts->harder : facts->easier;

  for (guint i = 0; ids[i] != NULL; i++)
    {
      SwExercise *other = find (self, ids[i]);
      const SwExerciseFacts *theirs = other != NULL ? sw_exercise_get_facts (other) : NULL;
      g_autofree char *text = NULL;

      if (theirs == NULL || names (harder ? theirs->easier : theirs->harder, facts->id)
          || names (harder ? theirs->harder : theirs->easier, facts->id))
        continue;

      text = harder ? g_strdup_printf (_("“%s” is said to be harder, but does not name this one as easier. Add "
                                         "<easier ref=\"%s\"/> there, or remove the link here."),
                                       ids[i], facts->id)
                    : g_strdup_printf (_("“%s” is said to be easier, but does not name this one as harder. Add "
                                         "<harder ref=\"%s\"/> there, or remove the link here."),
                                       ids[i], facts->id);
      add (self, exercise, SW_FINDING_ASK, harder ? "harder" : "easier", ids[i], text);
    }
}

static void
add_harder (Subject    *self,
            const char *easier,
            const char *harder)
{
  guint from = GPOINTER_TO_UINT (g_hash_table_lookup (self->by_id, easier));
  gpointer to = g_hash_table_lookup (self->by_id, harder);

  if (from > 0 && to != NULL && !g_ptr_array_find (self->harder[from - 1], to, NULL))
    g_ptr_array_add (self->harder[from - 1], to);
}

/* The way from where @n stands on it, and back to @n: "a → b → a". */
static void
add_loop (Subject *self,
          guint    n)
{
  GString *loop = g_string_new (NULL);
  guint first = 0;
  SwExercise *last;
  g_autofree char *text = NULL;

  while (g_array_index (self->way, guint, first) != n)
    first++;
  for (guint i = first; i < self->way->len; i++)
    g_string_append_printf (loop, "%s → ", sw_exercise_get_id (nth (self, g_array_index (self->way, guint, i))));
  g_string_append (loop, sw_exercise_get_id (nth (self, n)));

  last = nth (self, g_array_index (self->way, guint, self->way->len - 1));
  text = g_strdup_printf (_("its harder exercises lead back to it: %s. Remove one of the links."), loop->str);
  if (names (sw_exercise_get_facts (last)->harder, sw_exercise_get_id (nth (self, n))))
    add (self, last, SW_FINDING_STOP, "harder", sw_exercise_get_id (nth (self, n)), text);
  else
    add (self, nth (self, n), SW_FINDING_STOP, "easier", sw_exercise_get_id (last), text);
  g_string_free (loop, TRUE);
}

static void
follow (Subject *self,
        guint    n)
{
  self->places[n] = PLACE_OPEN;
  g_array_append_val (self->way, n);
  for (guint i = 0; i < self->harder[n]->len; i++)
    {
      guint next = GPOINTER_TO_UINT (self->harder[n]->pdata[i]) - 1;

      if (self->places[next] == PLACE_NEW)
        follow (self, next);
      else if (self->places[next] == PLACE_OPEN)
        add_loop (self, next);
    }
  g_array_set_size (self->way, self->way->len - 1);
  self->places[n] = PLACE_DONE;
}

static void
check_loops (Subject *self)
{
  guint n = self->exercises->len;

  self->harder = g_new (GPtrArray *, n);
  self->places = g_new0 (Place, n);
  self->way = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < n; i++)
    self->harder[i] = g_ptr_array_new ();
  for (guint i = 0; i < n; i++)
    {
      const SwExerciseFacts *facts = sw_exercise_get_facts (nth (self, i));

      for (guint j = 0; facts->harder[j] != NULL; j++)
        add_harder (self, facts->id, facts->harder[j]);
      for (guint j = 0; facts->easier[j] != NULL; j++)
        add_harder (self, facts->easier[j], facts->id);
    }

  for (guint i = 0; i < n; i++)
    if (self->places[i] == PLACE_NEW)
      follow (self, i);

  for (guint i = 0; i < n; i++)
    g_ptr_array_unref (self->harder[i]);
  g_free (self->harder);
  g_free (self->places);
  g_array_unref (self->way);
}

/* Names are compared in one language, whatever the case. */
static char *
dup_key (const SwExerciseText *text,
         const char           *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  return g_strdup_printf ("%s %s", text->language, folded);
}

static void
check_name (Subject              *self,
            SwExercise           *exercise,
            const SwExerciseText *text,
            GHashTable           *by_name)
{
  char *key = dup_key (text, text->name);
  SwExercise *other = g_hash_table_lookup (by_name, key);
  g_autofree char *words = NULL;

  if (other == NULL)
    {
      g_hash_table_insert (by_name, key, exercise);
      return;
    }

  g_free (key);
  words = g_strdup_printf (_("“%s” is the name of “%s” too. Give one of the two another name."), text->name,
                           sw_exercise_get_id (other));
  add (self, exercise, SW_FINDING_STOP, "name", text->name, words);
}

static void
check_synonyms (Subject              *self,
                SwExercise           *exercise,
                const SwExerciseText *text,
                GHashTable           *by_name)
{
  for (guint i = 0; text->synonyms[i] != NULL; i++)
    {
      g_autofree char *key = dup_key (text, text->synonyms[i]);
      SwExercise *other = g_hash_table_lookup (by_name, key);
      g_autofree char *words = NULL;

      if (other == NULL || other == exercise)
        continue;

      words = g_strdup_printf (_("“%s” is the name of “%s”, which is then not told apart from this one. Remove or change "
                                 "the synonym."),
                               text->synonyms[i], sw_exercise_get_id (other));
      add (self, exercise, SW_FINDING_ASK, "synonym", text->synonyms[i], words);
    }
}

static void
check_names (Subject *self)
{
  g_autoptr (GHashTable) by_name = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < self->exercises->len; i++)
    for (guint j = 0; j < sw_exercise_get_n_texts (nth (self, i)); j++)
      check_name (self, nth (self, i), sw_exercise_get_nth_text (nth (self, i), j), by_name);
  for (guint i = 0; i < self->exercises->len; i++)
    for (guint j = 0; j < sw_exercise_get_n_texts (nth (self, i)); j++)
      check_synonyms (self, nth (self, i), sw_exercise_get_nth_text (nth (self, i), j), by_name);
}

/**
 * sw_check_folder:
 * @folder: a path
 * @exercises: (element-type SwExercise): all exercises of the folder
 * @problems: (element-type SwProblem): takes what is found
 *
 * Checks how the exercises of a folder go together.
 */
void
sw_check_folder (const char *folder,
                 GPtrArray  *exercises,
                 GPtrArray  *problems)
{
  g_autoptr (GHashTable) by_id = g_hash_table_new (g_str_hash, g_str_equal);
  Subject self = { .folder = folder, .exercises = exercises, .problems = problems, .by_id = by_id };

  for (guint i = 0; i < exercises->len; i++)
    g_hash_table_insert (by_id, (gpointer) sw_exercise_get_id (exercises->pdata[i]), GUINT_TO_POINTER (i + 1));

  for (guint i = 0; i < exercises->len; i++)
    {
      check_answers (&self, exercises->pdata[i], FALSE);
      check_answers (&self, exercises->pdata[i], TRUE);
    }
  check_loops (&self);
  check_names (&self);
}
