/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads a dose line, see sw-dose-line.c: many words, any order, decimal commas, minutes, no commas at all.
 * Each function knows one part; it takes it whole, or fails with a hint at what would be understood. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-dose.h"

#include "sw-dose-words.h"
#include "sw-line.h"

typedef enum
{
  PART_SETS = 1 << 0,
  PART_REPS = 1 << 1,
  PART_HOLD = 1 << 2,
  PART_TEMPO = 1 << 3,
  PART_LOAD = 1 << 4,
  PART_SIDE = 1 << 5,
  PART_DIRECTIONS = 1 << 6,
  PART_EXTRA = 1 << 7,
  PART_REST = 1 << 8,
  PART_DAYS = 1 << 9,
  PART_TIMES = 1 << 10,
  PART_EFFORT = 1 << 11,
  PART_PAIN = 1 << 12,
} Part;

typedef struct
{
  const char *at;    /* what is still to be read, in small letters */
  guint seen;        /* parts read so far */
  gboolean twice;    /* whether one of them came a second time */
  const char *hint;  /* what would be understood at this place, or NULL */
  SwDose dose;
} Reader;

/* Marks @part as read; a second time is a contradiction that only its writer can solve. */
static gboolean
claim (Reader *self,
       guint   parts)
{
  if ((self->seen & parts) != 0)
    {
      self->twice = TRUE;
      return FALSE;
    }

  self->seen |= parts;
  return TRUE;
}

/* "x 3" after a hold: so many sets of it. */
static gboolean
read_times_held (Reader *self)
{
  if (!sw_dose_words_take_cross (&self->at))
    return TRUE;
  if (!sw_line_take_int (&self->at, &self->dose.sets))
    return FALSE;

  self->dose.reps_low = self->dose.reps_high = 0;
  return claim (self, PART_SETS | PART_REPS);
}

static gboolean
read_hold (Reader *self)
{
  int seconds;

  self->hint = _("write the hold as “hold 5 s”");
  sw_line_take_word (&self->at, "for", "of", "each", NULL);
  if (!sw_line_take_seconds (&self->at, &seconds) || !claim (self, PART_HOLD))
    return FALSE;

  self->dose.hold_s = seconds;
  return read_times_held (self);
}

/* What follows "3 x": repetitions, a range of them, or a hold instead of them. */
static gboolean
read_reps (Reader *self)
{
  int low, high, unit;

  self->hint = _("write sets and repetitions as “3 x 12”, or “3 x hold 30 s”");
  if (!claim (self, PART_REPS))
    return FALSE;

  if (sw_line_take_word (&self->at, "hold", "holds", "holding", NULL))
    {
      self->dose.reps_low = self->dose.reps_high = 0;
      return read_hold (self);
    }
  if (!sw_line_take_range (&self->at, &low, &high))
    return FALSE;

  unit = low == high ? sw_line_take_time_unit (&self->at) : 0;
  if (unit != 0)
    {
      sw_line_take_word (&self->at, "hold", "holds", NULL);
      self->dose.reps_low = self->dose.reps_high = 0;
      self->dose.hold_s = low * unit;
      return claim (self, PART_HOLD);
    }

  sw_line_take_word (&self->at, "repetitions", "repetition", "reps", "rep", NULL);
  self->dose.reps_low = low;
  self->dose.reps_high = high;
  return TRUE;
}

static gboolean
read_sets (Reader *self,
           int     sets)
{
  if (!claim (self, PART_SETS))
    return FALSE;

  self->dose.sets = sets;
  return TRUE;
}

static gboolean
read_frequency (Reader *self,
                int     count,
                char    per)
{
  if (!claim (self, per == 'd' ? PART_TIMES : PART_DAYS))
    return FALSE;

  if (per == 'd')
    self->dose.times_a_day = count;
  else
    self->dose.days_a_week = count;
  return TRUE;
}

/* "+1 set left", "1 extra set on the left", after the number and the word for "more". */
static gboolean
read_extra (Reader *self,
            int     count)
{
  SwBodySide side;

  self->hint = _("write extra sets with their side, as “+1 set left”");
  sw_line_take_word (&self->at, "extra", "more", NULL);
  sw_line_take_word (&self->at, "set", "sets", NULL);
  sw_line_take_word (&self->at, "extra", "more", NULL);
  sw_line_take_word (&self->at, "on", "for", NULL);
  sw_line_take_word (&self->at, "the", NULL);
  side = sw_dose_words_take_body_side (&self->at);
  if (side == SW_BODY_SIDE_NONE || count == 0 || !claim (self, PART_EXTRA))
    return FALSE;

  self->dose.extra_sets = count;
  self->dose.extra_side = side;
  return TRUE;
}

static gboolean
read_tempo (Reader   *self,
            gboolean  compact)
{
  SwTempo tempo;

  self->hint = _("write the tempo as “tempo 2-0-2-0”: lowering, pause, lifting, pause");
  if (!sw_dose_words_take_tempo (&self->at, compact, &tempo) || !claim (self, PART_TEMPO))
    return FALSE;

  self->dose.tempo = tempo;
  return TRUE;
}

static gboolean
read_load (Reader *self)
{
  SwLoad load;

  if (!sw_line_take_decimal (&self->at, &load.value) || !sw_dose_words_take_load_unit (&self->at, &load.unit)
      || !claim (self, PART_LOAD))
    return FALSE;

  self->dose.load = load;
  return TRUE;
}

static gboolean
read_rest (Reader *self)
{
  int seconds;

  self->hint = _("write the rest as “rest 60 s”");
  sw_line_take_word (&self->at, "for", "of", NULL);
  if (!sw_line_take_seconds (&self->at, &seconds) || !claim (self, PART_REST))
    return FALSE;
  if (sw_line_take_word (&self->at, "between", NULL))
    sw_line_take_word (&self->at, "sets", NULL);

  self->dose.rest_s = seconds;
  return TRUE;
}

/* What follows a number that is neither a load nor a tempo. */
static gboolean
read_counted (Reader *self)
{
  int low, high;
  char per;

  self->hint = _("say what is counted: “12 repetitions”, “3 sets”, “2 kg”, “5 s hold”, “60 s rest”, "
                 "“2 directions”, “5 days a week” or “2 times a day”");
  if (!sw_line_take_range (&self->at, &low, &high))
    return FALSE;

  if (low == high && (sw_dose_words_take_cross (&self->at) || sw_line_take_word (&self->at, "by", NULL)))
    {
      per = sw_dose_words_take_per (&self->at);
      if (per != 0)
        return read_frequency (self, low, per);
      return read_sets (self, low) && read_reps (self);
    }
  if (sw_line_take_word (&self->at, "repetitions", "repetition", "reps", "rep", NULL))
    {
      if (!claim (self, PART_REPS))
        return FALSE;
      self->dose.reps_low = low;
      self->dose.reps_high = high;
      return TRUE;
    }
  if (low != high)
    return FALSE;

  if (sw_line_take_word (&self->at, "extra", "more", NULL))
    return read_extra (self, low);
  if (sw_line_take_word (&self->at, "set", "sets", "round", "rounds", NULL))
    {
      if (sw_line_take_word (&self->at, "extra", "more", NULL))
        return read_extra (self, low);
      if (sw_line_take_word (&self->at, "of", "by", NULL) || sw_dose_words_take_cross (&self->at))
        return read_sets (self, low) && read_reps (self);
      return read_sets (self, low);
    }
  if (sw_line_take_word (&self->at, "direction", "directions", "way", "ways", NULL))
    {
      if (!claim (self, PART_DIRECTIONS))
        return FALSE;
      self->dose.directions = low;
      return TRUE;
    }
  if (sw_line_take_word (&self->at, "day", "days", NULL))
    {
      sw_dose_words_take_per (&self->at);
      return read_frequency (self, low, 'w');
    }

  sw_line_take_word (&self->at, "time", "times", NULL);
  per = sw_dose_words_take_per (&self->at);
  return per != 0 && read_frequency (self, low, per);
}

/* "5 s hold", "60 s rest". */
static gboolean
read_time_first (Reader *self)
{
  const char *start = self->at;
  int value, unit;

  if (!sw_line_take_int (&self->at, &value))
    return FALSE;
  unit = sw_line_take_time_unit (&self->at);
  if (unit == 0)
    return FALSE;

  if (sw_line_take_word (&self->at, "hold", "holds", NULL))
    {
      if (!claim (self, PART_HOLD))
        return FALSE;
      self->dose.hold_s = value * unit;
      return read_times_held (self);
    }
  if (sw_line_take_word (&self->at, "rest", "pause", NULL))
    {
      self->at = start;
      return read_rest (self) && sw_line_take_word (&self->at, "rest", "pause", NULL);
    }

  return FALSE;
}

static gboolean
read_number (Reader *self)
{
  gboolean (* const readers[]) (Reader *) = { read_load, read_time_first, read_counted };
  const char *start = self->at;
  SwTempo tempo;

  if (sw_dose_words_take_tempo (&self->at, FALSE, &tempo))
    {
      self->at = start;
      return read_tempo (self, FALSE);
    }

  for (guint i = 0; i < G_N_ELEMENTS (readers); i++)
    {
      self->at = start;
      if (readers[i] (self))
        return TRUE;
      if (self->twice)
        return FALSE;
    }

  return FALSE;
}

static gboolean
read_side (Reader *self,
           SwSide  side)
{
  if (!claim (self, PART_SIDE))
    return FALSE;

  self->dose.side = side;
  return TRUE;
}

static gboolean
read_none_of (Reader *self)
{
  self->hint = _("write “no load”, “no rest” or “no pain”");
  if (sw_line_take_word (&self->at, "load", "weight", NULL))
    return claim (self, PART_LOAD);
  if (sw_line_take_word (&self->at, "rest", "pause", NULL))
    return claim (self, PART_REST);
  if (sw_line_take_word (&self->at, "hold", NULL))
    return claim (self, PART_HOLD);
  if (sw_line_take_word (&self->at, "pain", NULL) && claim (self, PART_PAIN))
    {
      self->dose.pain_limit = 0;
      return TRUE;
    }

  return FALSE;
}

/* "each side", or "each" alone; after "per" or "every" the noun has to follow. */
static gboolean
read_each (Reader   *self,
           gboolean  needs_noun)
{
  self->hint = _("write “each side”, or how often as “5 days a week”");
  if (sw_line_take_word (&self->at, "day", NULL))
    return read_frequency (self, 7, 'w');
  if (!sw_line_take_word (&self->at, "side", "leg", "arm", "foot", "hand", NULL) && needs_noun)
    return FALSE;

  return read_side (self, SW_SIDE_EACH);
}

static gboolean
read_worded_frequency (Reader *self,
                       int     count)
{
  char per = sw_dose_words_take_per (&self->at);

  self->hint = _("write how often as “5 days a week” or “2 times a day”");
  return per != 0 && read_frequency (self, count, per);
}

static gboolean
read_limit (Reader *self,
            guint   part,
            int    *limit)
{
  int rating;

  self->hint = _("write a limit on the scale from 0 to 10, as “effort 6” or “pain 3”");
  if (!sw_dose_words_take_rating (&self->at, &rating) || !claim (self, part))
    return FALSE;

  *limit = rating;
  return TRUE;
}

static gboolean
read_worded (Reader *self)
{
  SwBodySide side;

  if (sw_line_take_word (&self->at, "hold", "holds", "holding", NULL))
    return read_hold (self);
  if (sw_line_take_word (&self->at, "tempo", NULL))
    return read_tempo (self, TRUE);
  if (sw_line_take_word (&self->at, "rest", "pause", NULL))
    return read_rest (self);
  if (sw_line_take_word (&self->at, "each", NULL))
    return read_each (self, FALSE);
  if (sw_line_take_word (&self->at, "every", "per", NULL) || sw_line_take_char (&self->at, '/'))
    return read_each (self, TRUE);
  if (sw_line_take_word (&self->at, "both", "together", NULL))
    {
      sw_line_take_word (&self->at, "sides", "legs", "arms", "feet", "hands", NULL);
      sw_line_take_word (&self->at, "together", NULL);
      return read_side (self, SW_SIDE_BOTH);
    }
  if (sw_line_take_word (&self->at, "alternating", "alternate", "alternately", NULL))
    {
      sw_line_take_word (&self->at, "sides", "legs", "arms", "feet", "hands", NULL);
      return read_side (self, SW_SIDE_ALTERNATING);
    }
  side = sw_dose_words_take_body_side (&self->at);
  if (side != SW_BODY_SIDE_NONE)
    return read_side (self, side == SW_BODY_SIDE_RIGHT ? SW_SIDE_RIGHT : SW_SIDE_LEFT);
  if (sw_line_take_word (&self->at, "effort", "rpe", "exertion", NULL))
    return read_limit (self, PART_EFFORT, &self->dose.effort_limit);
  if (sw_line_take_word (&self->at, "pain", NULL))
    return read_limit (self, PART_PAIN, &self->dose.pain_limit);
  if (sw_line_take_word (&self->at, "extra", "more", NULL) || sw_line_take_char (&self->at, '+'))
    {
      int count = 1;

      sw_line_take_int (&self->at, &count);
      return read_extra (self, count);
    }
  if (sw_line_take_word (&self->at, "once", NULL))
    return read_worded_frequency (self, 1);
  if (sw_line_take_word (&self->at, "twice", NULL))
    return read_worded_frequency (self, 2);
  if (sw_line_take_word (&self->at, "daily", NULL))
    return read_frequency (self, 7, 'w');
  if (sw_line_take_word (&self->at, "bodyweight", NULL))
    return claim (self, PART_LOAD);
  if (sw_line_take_word (&self->at, "no", "without", NULL))
    return read_none_of (self);

  return FALSE;
}

/* Between parts: punctuation, and words that only join. */
static void
skip_between (Reader *self)
{
  for (;;)
    {
      sw_line_skip_spaces (&self->at);
      if (*self->at == ',' || *self->at == ';' || *self->at == '.' || *self->at == '&'
          || *self->at == '@')
        self->at++;
      else if (!sw_line_take_word (&self->at, "and", "with", "at", "then", "load", "weight", NULL))
        return;
    }
}

static void
set_syntax_error (Reader      *self,
                  const char  *part,
                  GError     **error)
{
  const char *end = strpbrk (part, ",;");
  g_autofree char *quoted = end != NULL ? g_strndup (part, (gsize) (end - part)) : g_strdup (part);

  g_strchomp (quoted);
  if (self->twice)
    g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_SYNTAX,
                 _("“%s”: this part of the dose is given twice. Leave out one of the two."), quoted);
  else
    g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_SYNTAX,
                 /* Translators: the second %s says what to write instead. */
                 _("“%s” is not understood; %s."), quoted,
                 self->hint != NULL ? self->hint
                 : _("write for example “3 x 12, hold 5 s, 2 kg, each side, rest 60 s”"));
}

/**
 * sw_dose_from_line:
 * @line: what the therapist wrote
 * @defaults: (nullable): gives sets and repetitions when @line names none of them; NULL: one set of ten
 * @dose: (out): the dose; untouched on failure
 * @error: return location for a #SwDoseError
 *
 * Reads a dose line. It states the whole dose: what it does not mention is not asked for, see
 * sw_dose_init(). The error quotes the part that was not understood and says what would be.
 *
 * Returns: whether @line is a dose within all ranges, and one that asks for something
 */
gboolean
sw_dose_from_line (const char    *line,
                   const SwDose  *defaults,
                   SwDose        *dose,
                   GError       **error)
{
  g_autofree char *text = NULL;
  Reader reader = { 0 };

  g_return_val_if_fail (line != NULL, FALSE);
  g_return_val_if_fail (dose != NULL, FALSE);

  text = g_utf8_validate (line, -1, NULL) ? sw_line_simplify (line) : g_strdup ("?");
  reader.at = text;
  sw_dose_init (&reader.dose);
  if (defaults != NULL)
    {
      reader.dose.sets = defaults->sets;
      reader.dose.reps_low = defaults->reps_low;
      reader.dose.reps_high = defaults->reps_high;
    }

  for (skip_between (&reader); *reader.at != '\0'; skip_between (&reader))
    {
      const char *part = reader.at;

      reader.hint = NULL;
      if (!read_worded (&reader) && (reader.hint != NULL || reader.twice || !read_number (&reader)))
        {
          set_syntax_error (&reader, part, error);
          return FALSE;
        }
    }

  if (reader.seen == 0)
    {
      g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_SYNTAX,
                   _("The dose is empty; write for example “3 x 12, hold 5 s, each side, rest 60 s”."));
      return FALSE;
    }
  if (!sw_dose_check (&reader.dose, error))
    return FALSE;
  if (reader.dose.reps_high == 0 && reader.dose.hold_s == 0)
    {
      g_set_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE,
                   _("The dose has no repetitions and no hold; write how much to do as “3 x 12” or "
                     "“3 x hold 30 s”."));
      return FALSE;
    }

  *dose = reader.dose;
  return TRUE;
}
