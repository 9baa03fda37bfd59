/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What laying out a handout costs is measuring texts and solving figures. After an edit nearly all of them are as
 * they were: this is where they are kept for the next time. */
#include "config.h"

#include "sw-measured.h"

/* With more texts than this a handout is long: memory counts then, not the few milliseconds after an edit. */
#define MANY_TEXTS 3000

struct _SwMeasured
{
  SwPaper paper;
  double text_points;
  double least_pt;
  char *language;
  SwPhrases *phrases;
  guint pass;
  guint part;
  GPtrArray *parts;    /* of each part of the handout the keys of the texts that were made for it */
  GHashTable *texts;   /* text with role and width -> Text */
  GHashTable *rulers;  /* text with role -> SwRuler */
  GHashTable *figures; /* Solved, its own key */
  GThreadPool *solvers; /* NULL while there is nothing to solve */
  GMutex lock;          /* of what is being solved */
  GCond solved;
  SwSketches *sketches;
  SwMeasured *before;  /* (unowned): where to look for what is not here yet, or NULL */
};

/* @pass: the last one that asked for it. */
typedef struct
{
  PangoLayout *layout;
  guint pass;
} Text;

/* The spec is kept alive by its entry, so that its address stays its own. @figure and @error are NULL
 * while it is being solved. */
typedef struct
{
  SwFigureSpec *spec;
  gboolean mirrored;
  SwFigure *figure;
  GError *error;
} Solved;

static Text *
text_new (PangoLayout *layout,
          guint        pass)
{
  Text *text = g_new (Text, 1);

  *text = (Text){ layout, pass };
  return text;
}

static void
text_free (gpointer data)
{
  Text *text = data;

  g_object_unref (text->layout);
  g_free (text);
}

/* @figure: (transfer full) (nullable): the figure, when it is solved already */
static Solved *
solved_new (SwFigureSpec *spec,
            gboolean      mirrored,
            SwFigure     *figure)
{
  Solved *solved = g_new (Solved, 1);

  *solved = (Solved){ sw_figure_spec_ref (spec), !!mirrored, figure, NULL };
  return solved;
}

static void
solved_free (gpointer data)
{
  Solved *solved = data;

  sw_figure_spec_unref (solved->spec);
  g_clear_object (&solved->figure);
  g_clear_error (&solved->error);
  g_free (solved);
}

static guint
solved_hash (gconstpointer data)
{
  const Solved *solved = data;

  return g_direct_hash (solved->spec) ^ (guint) solved->mirrored;
}

static gboolean
solved_equal (gconstpointer a,
              gconstpointer b)
{
  const Solved *one = a;
  const Solved *other = b;

  return one->spec == other->spec && one->mirrored == other->mirrored;
}

static gboolean
fits (const SwMeasured *self,
      const SwMeasured *other)
{
  return self->paper == other->paper && self->text_points == other->text_points
         && self->least_pt == other->least_pt && g_strcmp0 (self->language, other->language) == 0;
}

/**
 * sw_measured_new:
 * @paper: the paper
 * @text_points: the body size
 * @least_pt: the size no text falls below, which decides that of the smaller ones
 * @language: BCP 47 tag
 * @phrases: the phrases of that language
 * @before: (nullable): what was measured for the handout before this one; nobody else may use it meanwhile. Not
 *   looked at when it is for another paper, other sizes or another language
 *
 * Returns: (transfer full): nothing measured yet
 */
SwMeasured *
sw_measured_new (SwPaper     paper,
                 double      text_points,
                 double      least_pt,
                 const char *language,
                 SwPhrases  *phrases,
                 SwMeasured *before)
{
  SwMeasured *self = g_new0 (SwMeasured, 1);

  /* What is measured before the first pass begins is needed, too. */
  self->pass = 1;
  self->paper = paper;
  self->text_points = text_points;
  self->least_pt = least_pt;
  self->language = g_strdup (language);
  self->phrases = sw_phrases_ref (phrases);
  self->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  self->texts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, text_free);
  self->rulers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) sw_ruler_unref);
  self->figures = g_hash_table_new_full (solved_hash, solved_equal, solved_free, NULL);
  g_mutex_init (&self->lock);
  g_cond_init (&self->solved);
  if (before != NULL && fits (self, before))
    self->before = before;
  self->sketches = self->before != NULL ? sw_sketches_ref (before->sketches) : sw_sketches_new ();

  return self;
}

/**
 * sw_measured_copy:
 * @self: what has been measured
 *
 * Returns: (transfer full): the same, to be handed to another thread; texts and figures themselves are shared
 */
SwMeasured *
sw_measured_copy (SwMeasured *self)
{
  SwMeasured *copy = sw_measured_new (self->paper, self->text_points, self->least_pt, self->language, self->phrases,
                                       NULL);
  GHashTableIter iter;
  gpointer key;
  gpointer value;

  sw_sketches_unref (copy->sketches);
  copy->sketches = sw_sketches_ref (self->sketches);
  g_hash_table_iter_init (&iter, self->texts);
  while (g_hash_table_iter_next (&iter, &key, &value))
    g_hash_table_insert (copy->texts, g_strdup (key), text_new (g_object_ref (((Text *) value)->layout), 0));

  g_hash_table_iter_init (&iter, self->rulers);
  while (g_hash_table_iter_next (&iter, &key, &value))
    g_hash_table_insert (copy->rulers, g_strdup (key), sw_ruler_ref (value));

  g_hash_table_iter_init (&iter, self->figures);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    {
      const Solved *solved = key;

      if (solved->figure != NULL)
        g_hash_table_add (copy->figures, solved_new (solved->spec, solved->mirrored, g_object_ref (solved->figure)));
    }

  return copy;
}

static void
finish_solving (SwMeasured *self)
{
  if (self->solvers != NULL)
    g_thread_pool_free (g_steal_pointer (&self->solvers), FALSE, TRUE);
}

/**
 * sw_measured_free:
 * @self: (transfer full) (nullable): what has been measured
 */
void
sw_measured_free (SwMeasured *self)
{
  if (self == NULL)
    return;

  finish_solving (self);
  g_mutex_clear (&self->lock);
  g_cond_clear (&self->solved);
  g_free (self->language);
  sw_phrases_unref (self->phrases);
  g_ptr_array_unref (self->parts);
  g_hash_table_unref (self->texts);
  g_hash_table_unref (self->rulers);
  g_hash_table_unref (self->figures);
  sw_sketches_unref (self->sketches);
  g_free (self);
}

/**
 * sw_measured_find_phrases:
 * @self: (nullable): what was measured for an earlier handout
 * @language: BCP 47 tag
 *
 * Returns: (transfer full) (nullable): the phrases of that language, when the handout was in it
 */
SwPhrases *
sw_measured_find_phrases (const SwMeasured *self,
                          const char       *language)
{
  return self != NULL && g_strcmp0 (self->language, language) == 0 ? sw_phrases_ref (self->phrases) : NULL;
}

/**
 * sw_measured_follows:
 *
 * Returns: whether it looks at what was measured before, for the same paper, size and language
 */
gboolean
sw_measured_follows (const SwMeasured *self)
{
  return self->before != NULL;
}

/* The keys of the texts that are made now belong to the texts. */
static GPtrArray *
get_part (SwMeasured *self)
{
  while (self->parts->len <= self->part)
    g_ptr_array_add (self->parts, g_ptr_array_new ());
  return g_ptr_array_index (self->parts, self->part);
}

static void
add_text (SwMeasured  *self,
          char        *key,
          PangoLayout *layout,
          guint        pass)
{
  g_hash_table_insert (self->texts, key, text_new (layout, pass));
  g_ptr_array_add (get_part (self), key);
}

/* An earlier pass is composed again after an edit, and asks for its texts once more. */
static gboolean
is_left_over (const SwMeasured *self,
              const Text       *text)
{
  return text->pass == 0 || (text->pass != self->pass && g_hash_table_size (self->texts) > MANY_TEXTS);
}

/**
 * sw_measured_begin:
 *
 * Begins a pass of composing; the texts of the last one stay until the part they were made for has been composed again.
 */
void
sw_measured_begin (SwMeasured *self)
{
  self->pass++;
  self->part = 0;
}

/**
 * sw_measured_begin_part:
 *
 * Begins the next part of the handout, the same one in each pass. Of a long handout it drops the texts that were
 * made for the part that ends and are not in it this time, so that it is never held twice.
 */
void
sw_measured_begin_part (SwMeasured *self)
{
  GPtrArray *keys = get_part (self);

  for (guint i = keys->len; i-- > 0;)
    {
      const char *key = g_ptr_array_index (keys, i);

      if (!is_left_over (self, g_hash_table_lookup (self->texts, key)))
        continue;
      g_ptr_array_remove_index_fast (keys, i);
      g_hash_table_remove (self->texts, key);
    }
  self->part++;
}

/**
 * sw_measured_finish:
 *
 * Drops the texts that nothing asked for, of a long handout also those of earlier passes, and looks only at its own from
 * now on; to be called before what was given as "before" goes away.
 */
void
sw_measured_finish (SwMeasured *self)
{
  GHashTableIter iter;
  gpointer text;

  finish_solving (self);
  self->before = NULL;
  g_ptr_array_set_size (self->parts, 0);
  g_hash_table_iter_init (&iter, self->texts);
  while (g_hash_table_iter_next (&iter, NULL, &text))
    if (is_left_over (self, text))
      g_hash_table_iter_remove (&iter);
}

/**
 * sw_measured_get_layout:
 * @key: names text, role and width
 *
 * Returns: (transfer none) (nullable): the measured text
 */
PangoLayout *
sw_measured_get_layout (SwMeasured *self,
                        const char *key)
{
  Text *text = g_hash_table_lookup (self->texts, key);

  if (text == NULL && self->before != NULL)
    {
      const Text *known = g_hash_table_lookup (self->before->texts, key);

      if (known != NULL)
        add_text (self, g_strdup (key), g_object_ref (known->layout), self->pass);
      return known != NULL ? known->layout : NULL;
    }
  if (text == NULL)
    return NULL;

  text->pass = self->pass;
  return text->layout;
}

/**
 * sw_measured_add_layout:
 * @key: (transfer full): names text, role and width
 * @layout: (transfer full): the text
 * @needed: whether it has been asked for, not only how tall it is
 */
void
sw_measured_add_layout (SwMeasured  *self,
                        char        *key,
                        PangoLayout *layout,
                        gboolean     needed)
{
  add_text (self, key, layout, needed ? self->pass : 0);
}

/**
 * sw_measured_get_ruler:
 * @key: names text and role
 *
 * Returns: (transfer none) (nullable): the widths of the text's words
 */
SwRuler *
sw_measured_get_ruler (SwMeasured *self,
                       const char *key)
{
  SwRuler *ruler = g_hash_table_lookup (self->rulers, key);

  if (ruler == NULL && self->before != NULL)
    {
      ruler = g_hash_table_lookup (self->before->rulers, key);
      if (ruler != NULL)
        g_hash_table_insert (self->rulers, g_strdup (key), sw_ruler_ref (ruler));
    }

  return ruler;
}

/**
 * sw_measured_add_ruler:
 * @key: (transfer full): names text and role
 * @ruler: (transfer full): the widths of the text's words
 */
void
sw_measured_add_ruler (SwMeasured *self,
                       char       *key,
                       SwRuler    *ruler)
{
  g_hash_table_insert (self->rulers, key, ruler);
}

/**
 * sw_measured_get_sketches:
 *
 * Returns: (transfer none): the pictures that were drawn last; for the thread alone that draws the handout
 */
SwSketches *
sw_measured_get_sketches (SwMeasured *self)
{
  return self->sketches;
}

static const Solved *
find_solved (const SwMeasured *self,
             SwFigureSpec     *spec,
             gboolean          mirrored)
{
  const Solved wanted = { .spec = spec, .mirrored = !!mirrored };

  return g_hash_table_lookup (self->figures, &wanted);
}

static void
solve (gpointer data,
       gpointer user_data)
{
  SwMeasured *self = user_data;
  Solved *solved = data;
  g_autoptr (GError) error = NULL;
  SwFigure *figure = sw_figure_new (solved->spec, solved->mirrored, &error);

  g_mutex_lock (&self->lock);
  solved->figure = figure;
  solved->error = g_steal_pointer (&error);
  g_cond_broadcast (&self->solved);
  g_mutex_unlock (&self->lock);
}

/* Takes over what was solved before. Returns whether it was. */
static gboolean
take_solved (SwMeasured   *self,
             SwFigureSpec *spec,
             gboolean      mirrored)
{
  const Solved *known = self->before != NULL ? find_solved (self->before, spec, mirrored) : NULL;

  if (known != NULL)
    g_hash_table_add (self->figures, solved_new (spec, mirrored, g_object_ref (known->figure)));
  return known != NULL;
}

/**
 * sw_measured_expect_figure:
 * @spec: how a figure is to be drawn that will be asked for
 * @mirrored: whether the other side works
 *
 * Begins to solve it in a thread, unless it is known: no figure has to wait for another, nor the texts for them.
 */
void
sw_measured_expect_figure (SwMeasured   *self,
                           SwFigureSpec *spec,
                           gboolean      mirrored)
{
  Solved *solved;

  if (find_solved (self, spec, mirrored) != NULL || take_solved (self, spec, mirrored))
    return;

  if (self->solvers == NULL)
    self->solvers = g_thread_pool_new (solve, self, (int) g_get_num_processors (), FALSE, NULL);
  solved = solved_new (spec, mirrored, NULL);
  g_hash_table_add (self->figures, solved);
  g_thread_pool_push (self->solvers, solved, NULL);
}

/**
 * sw_measured_get_figure:
 * @spec: how the figure is to be drawn
 * @mirrored: whether the other side works
 * @error: return location for an error of figures
 *
 * Returns: (transfer none) (nullable): the solved figure
 */
SwFigure *
sw_measured_get_figure (SwMeasured    *self,
                        SwFigureSpec  *spec,
                        gboolean       mirrored,
                        GError       **error)
{
  const Solved *solved;

  sw_measured_expect_figure (self, spec, mirrored);
  solved = find_solved (self, spec, mirrored);
  g_mutex_lock (&self->lock);
  while (solved->figure == NULL && solved->error == NULL)
    g_cond_wait (&self->solved, &self->lock);
  g_mutex_unlock (&self->lock);

  if (solved->error != NULL)
    g_propagate_error (error, g_error_copy (solved->error));
  return solved->figure;
}
