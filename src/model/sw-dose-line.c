/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose line: how a therapist writes a dose, "3 x 12, hold 5 s, 2 kg, each side, rest 60 s".
 *
 * The line states the whole dose. A part it does not mention has its neutral value, see sw_dose_init(); sets
 * and repetitions, which have none worth the name, come from the defaults handed in, and are always
 * written. So each valid dose comes back from its own line unchanged.
 *
 * Written are, in this order and with commas between:
 *
 *     3 x 12 | 3 x 8-12 | 3 x hold 30 s     sets and repetitions, or sets of one hold
 *     hold 5 s                              with repetitions
 *     tempo 2-0-2-0                         lowering, pause, lifting (X: as fast as possible), pause
 *     2.5 kg | 5 lb | 20 N
 *     each side | right | left | alternating
 *     2 directions
 *     +1 set left
 *     rest 60 s
 *     5 days a week
 *     2 times a day
 *     effort 6
 *     pain 3
 *
 * Read is much more: other words, other order, decimal commas, minutes, no commas at all. The reader is a
 * chain of small functions; each takes what it knows from the text or leaves the place as it was. */
#include "config.h"

#include <stdarg.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-dose.h"
#include "sw-units.h"

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

/* One spelling for what has several: small letters, one cross, one dash, one space. */
static char *
simplify (const char *line)
{
  GString *text = g_string_new (NULL);

  for (const char *p = line; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c == 0x00d7 || c == 0x2715)
        c = 'x';
      else if (c == 0x2010 || c == 0x2011 || c == 0x2012 || c == 0x2013 || c == 0x2014 || c == 0x2212)
        c = '-';
      else if (c == 0x2264)
        c = '<';
      else if (g_unichar_isspace (c) || c == 0x00b7)
        c = ' ';
      else
        c = g_unichar_tolower (c);
      g_string_append_unichar (text, c);
    }

  return g_string_free (text, FALSE);
}

static void
skip_spaces (Reader *self)
{
  while (*self->at == ' ')
    self->at++;
}

static gboolean
take_char (Reader *self,
           char    c)
{
  const char *p = self->at;

  while (*p == ' ')
    p++;
  if (*p != c)
    return FALSE;

  self->at = p + 1;
  return TRUE;
}

/* Takes the first of the words given that stands here whole; NULL ends them. */
static gboolean
take_word (Reader     *self,
           const char *first,
           ...)
{
  const char *p = self->at;
  gboolean found = FALSE;
  va_list args;

  while (*p == ' ')
    p++;

  va_start (args, first);
  for (const char *word = first; word != NULL && !found; word = va_arg (args, const char *))
    {
      gsize length = strlen (word);

      if (strncmp (p, word, length) == 0 && !g_unichar_isalpha (g_utf8_get_char (p + length)))
        {
          self->at = p + length;
          found = TRUE;
        }
    }
  va_end (args);

  return found;
}

/* Digits, or a small number as a word. Numbers too long for any dose become one no range allows. */
static gboolean
take_int (Reader *self,
          int    *value)
{
  static const char * const words[] = {
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
  };
  const char *p = self->at;
  int number = 0;

  while (*p == ' ')
    p++;

  if (!g_ascii_isdigit (*p))
    {
      for (guint i = 0; i < G_N_ELEMENTS (words); i++)
        {
          if (take_word (self, words[i], NULL))
            {
              *value = (int) i + 1;
              return TRUE;
            }
        }
      return FALSE;
    }

  for (; g_ascii_isdigit (*p); p++)
    number = MIN (number * 10 + (*p - '0'), 99999);

  self->at = p;
  *value = number;
  return TRUE;
}

/* A number with a decimal point or comma; at most as many digits as a number can hold exactly. */
static gboolean
take_decimal (Reader *self,
              double *value)
{
  char digits[16];
  gsize n = 0;
  const char *p = self->at;

  while (*p == ' ')
    p++;
  while (g_ascii_isdigit (*p) && n < 7)
    digits[n++] = *p++;
  if (n == 0)
    return FALSE;
  if ((*p == '.' || *p == ',') && g_ascii_isdigit (p[1]))
    {
      digits[n++] = '.';
      p++;
      while (g_ascii_isdigit (*p) && n < sizeof digits - 1)
        digits[n++] = *p++;
    }
  digits[n] = '\0';

  self->at = p;
  *value = g_ascii_strtod (digits, NULL);
  return TRUE;
}

/* Seconds or minutes: how many seconds one is, or 0 when no such unit stands here. */
static int
take_time_unit (Reader *self)
{
  if (take_word (self, "s", "sec", "secs", "second", "seconds", NULL))
    return 1;
  if (take_word (self, "min", "mins", "minute", "minutes", NULL))
    return 60;

  return 0;
}

/* "60", "60 s", "1 min", "1.5 min", "1:30". */
static gboolean
take_seconds (Reader *self,
              int    *seconds)
{
  const char *start = self->at;
  double decimal;
  int unit;

  if (take_decimal (self, &decimal) && take_word (self, "min", "mins", "minute", "minutes", NULL))
    {
      *seconds = (int) (decimal * 60.0 + 0.5);
      return TRUE;
    }

  self->at = start;
  if (!take_int (self, seconds))
    return FALSE;
  if (*self->at == ':' && g_ascii_isdigit (self->at[1]))
    {
      int rest;

      self->at++;
      if (!take_int (self, &rest) || rest > 59)
        return FALSE;
      *seconds = *seconds * 60 + rest;
      return TRUE;
    }

  unit = take_time_unit (self);
  if (unit != 0)
    *seconds *= unit;
  return TRUE;
}

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

static gboolean
take_range (Reader *self,
            int    *low,
            int    *high)
{
  const char *after_low;

  if (!take_int (self, low))
    return FALSE;

  *high = *low;
  after_low = self->at;
  if ((take_char (self, '-') || take_word (self, "to", NULL)) && take_int (self, high))
    return TRUE;

  *high = *low;
  self->at = after_low;
  return TRUE;
}

/* "x 3" after a hold: so many sets of it. */
static gboolean
read_times_held (Reader *self)
{
  if (!take_char (self, 'x') && !take_char (self, '*'))
    return TRUE;
  if (!take_int (self, &self->dose.sets))
    return FALSE;

  self->dose.reps_low = self->dose.reps_high = 0;
  return claim (self, PART_SETS | PART_REPS);
}

static gboolean
read_hold (Reader *self)
{
  int seconds;

  self->hint = _("write the hold as “hold 5 s”");
  take_word (self, "for", "of", "each", NULL);
  if (!take_seconds (self, &seconds) || !claim (self, PART_HOLD))
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

  if (take_word (self, "hold", "holds", "holding", NULL))
    {
      self->dose.reps_low = self->dose.reps_high = 0;
      return read_hold (self);
    }
  if (!take_range (self, &low, &high))
    return FALSE;

  unit = low == high ? take_time_unit (self) : 0;
  if (unit != 0)
    {
      take_word (self, "hold", "holds", NULL);
      self->dose.reps_low = self->dose.reps_high = 0;
      self->dose.hold_s = low * unit;
      return claim (self, PART_HOLD);
    }

  take_word (self, "repetitions", "repetition", "reps", "rep", NULL);
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

/* Takes "day" or "week" with the little words before it; 'd', 'w' or 0. */
static char
take_per (Reader *self)
{
  const char *start = self->at;

  if (take_word (self, "daily", NULL))
    return 'd';
  if (take_word (self, "weekly", NULL))
    return 'w';
  if (take_word (self, "a", "per", "each", "every", "the", NULL) || take_char (self, '/'))
    {
      if (take_word (self, "day", NULL))
        return 'd';
      if (take_word (self, "week", "wk", NULL))
        return 'w';
    }

  self->at = start;
  return 0;
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

static SwBodySide
take_body_side (Reader *self)
{
  SwBodySide side;

  if (take_word (self, "right", "r", NULL))
    side = SW_BODY_SIDE_RIGHT;
  else if (take_word (self, "left", "l", NULL))
    side = SW_BODY_SIDE_LEFT;
  else
    return SW_BODY_SIDE_NONE;

  take_word (self, "side", "leg", "arm", "foot", "hand", NULL);
  take_word (self, "only", NULL);
  return side;
}

/* "+1 set left", "1 extra set on the left", after the number and the word for "more". */
static gboolean
read_extra (Reader *self,
            int     count)
{
  SwBodySide side;

  self->hint = _("write extra sets with their side, as “+1 set left”");
  take_word (self, "extra", "more", NULL);
  take_word (self, "set", "sets", NULL);
  take_word (self, "extra", "more", NULL);
  take_word (self, "on", "for", NULL);
  take_word (self, "the", NULL);
  side = take_body_side (self);
  if (side == SW_BODY_SIDE_NONE || count == 0 || !claim (self, PART_EXTRA))
    return FALSE;

  self->dose.extra_sets = count;
  self->dose.extra_side = side;
  return TRUE;
}

static gboolean
take_load_unit (Reader     *self,
                SwLoadUnit *unit)
{
  if (take_word (self, "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", NULL))
    *unit = SW_LOAD_KG;
  else if (take_word (self, "lb", "lbs", "pound", "pounds", NULL))
    *unit = SW_LOAD_LB;
  else if (take_word (self, "n", "newton", "newtons", NULL))
    *unit = SW_LOAD_NEWTON;
  else
    return FALSE;

  return TRUE;
}

/* The three or four numbers of a tempo; compact ones, "2020" and "30x0", only after the word "tempo". */
static gboolean
take_tempo (Reader   *self,
            gboolean  compact,
            SwTempo  *tempo)
{
  const char *start = self->at;
  int value[4] = { 0, 0, 0, 0 };
  int n = 0;

  skip_spaces (self);
  if (compact)
    {
      const char *p = self->at;

      while (n < 4 && (g_ascii_isdigit (*p) || (*p == 'x' && n == 2)))
        {
          value[n++] = *p == 'x' ? -1 : *p - '0';
          p++;
        }
      if (n >= 3 && !g_ascii_isalnum (*p) && *p != '-' && *p != '/' && *p != ':')
        {
          self->at = p;
          *tempo = (SwTempo) { TRUE, value[0], value[1], value[2], value[3] };
          return TRUE;
        }
      n = 0;
      value[3] = 0;
    }

  while (n < 4)
    {
      if (n == 2 && take_char (self, 'x'))
        value[n++] = -1;
      else if (take_int (self, &value[n]))
        n++;
      else
        break;
      if (n == 4 || !(take_char (self, '-') || take_char (self, '/') || take_char (self, ':')))
        break;
    }
  if (n < 3 || self->at[-1] == '-' || self->at[-1] == '/' || self->at[-1] == ':')
    {
      self->at = start;
      return FALSE;
    }

  *tempo = (SwTempo) { TRUE, value[0], value[1], value[2], n > 3 ? value[3] : 0 };
  return TRUE;
}

static gboolean
read_tempo (Reader   *self,
            gboolean  compact)
{
  SwTempo tempo;

  self->hint = _("write the tempo as “tempo 2-0-2-0”: lowering, pause, lifting, pause");
  if (!take_tempo (self, compact, &tempo) || !claim (self, PART_TEMPO))
    return FALSE;

  self->dose.tempo = tempo;
  return TRUE;
}

static gboolean
read_load (Reader *self)
{
  SwLoad load;

  if (!take_decimal (self, &load.value) || !take_load_unit (self, &load.unit) || !claim (self, PART_LOAD))
    return FALSE;

  self->dose.load = load;
  return TRUE;
}

static gboolean
read_rest (Reader *self)
{
  int seconds;

  self->hint = _("write the rest as “rest 60 s”");
  take_word (self, "for", "of", NULL);
  if (!take_seconds (self, &seconds) || !claim (self, PART_REST))
    return FALSE;
  if (take_word (self, "between", NULL))
    take_word (self, "sets", NULL);

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
  if (!take_range (self, &low, &high))
    return FALSE;

  if (low == high && (take_char (self, 'x') || take_char (self, '*') || take_word (self, "by", NULL)))
    {
      per = take_per (self);
      if (per != 0)
        return read_frequency (self, low, per);
      return read_sets (self, low) && read_reps (self);
    }
  if (take_word (self, "repetitions", "repetition", "reps", "rep", NULL))
    {
      if (!claim (self, PART_REPS))
        return FALSE;
      self->dose.reps_low = low;
      self->dose.reps_high = high;
      return TRUE;
    }
  if (low != high)
    return FALSE;

  if (take_word (self, "extra", "more", NULL))
    return read_extra (self, low);
  if (take_word (self, "set", "sets", "round", "rounds", NULL))
    {
      if (take_word (self, "extra", "more", NULL))
        return read_extra (self, low);
      if (take_word (self, "of", "by", NULL) || take_char (self, 'x') || take_char (self, '*'))
        return read_sets (self, low) && read_reps (self);
      return read_sets (self, low);
    }
  if (take_word (self, "direction", "directions", "way", "ways", NULL))
    {
      if (!claim (self, PART_DIRECTIONS))
        return FALSE;
      self->dose.directions = low;
      return TRUE;
    }
  if (take_word (self, "day", "days", NULL))
    {
      take_per (self);
      return read_frequency (self, low, 'w');
    }

  take_word (self, "time", "times", NULL);
  per = take_per (self);
  return per != 0 && read_frequency (self, low, per);
}

/* "5 s hold", "60 s rest". */
static gboolean
read_time_first (Reader *self)
{
  const char *start = self->at;
  int value, unit;

  if (!take_int (self, &value))
    return FALSE;
  unit = take_time_unit (self);
  if (unit == 0)
    return FALSE;

  if (take_word (self, "hold", "holds", NULL))
    {
      if (!claim (self, PART_HOLD))
        return FALSE;
      self->dose.hold_s = value * unit;
      return read_times_held (self);
    }
  if (take_word (self, "rest", "pause", NULL))
    {
      self->at = start;
      return read_rest (self) && take_word (self, "rest", "pause", NULL);
    }

  return FALSE;
}

static gboolean
read_number (Reader *self)
{
  gboolean (* const readers[]) (Reader *) = { read_load, read_time_first, read_counted };
  const char *start = self->at;
  SwTempo tempo;

  if (take_tempo (self, FALSE, &tempo))
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

/* The number of an effort or pain limit, "6", "up to 6", "at most 6 of 10". */
static gboolean
take_rating (Reader *self,
             int    *rating)
{
  int ten;

  take_word (self, "limit", "below", "under", "max", "maximum", NULL);
  if (take_word (self, "up", NULL))
    take_word (self, "to", NULL);
  if (take_word (self, "at", NULL))
    take_word (self, "most", NULL);
  if (take_char (self, '<'))
    take_char (self, '=');
  if (!take_int (self, rating))
    return FALSE;

  if (take_char (self, '/'))
    return take_int (self, &ten) && ten == 10;
  if (take_word (self, "of", NULL) || (take_word (self, "out", NULL) && take_word (self, "of", NULL)))
    return take_int (self, &ten) && ten == 10;
  return TRUE;
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
  if (take_word (self, "load", "weight", NULL))
    return claim (self, PART_LOAD);
  if (take_word (self, "rest", "pause", NULL))
    return claim (self, PART_REST);
  if (take_word (self, "hold", NULL))
    return claim (self, PART_HOLD);
  if (take_word (self, "pain", NULL) && claim (self, PART_PAIN))
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
  if (take_word (self, "day", NULL))
    return read_frequency (self, 7, 'w');
  if (!take_word (self, "side", "leg", "arm", "foot", "hand", NULL) && needs_noun)
    return FALSE;

  return read_side (self, SW_SIDE_EACH);
}

static gboolean
read_worded_frequency (Reader *self,
                       int     count)
{
  char per = take_per (self);

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
  if (!take_rating (self, &rating) || !claim (self, part))
    return FALSE;

  *limit = rating;
  return TRUE;
}

static gboolean
read_worded (Reader *self)
{
  SwBodySide side;

  if (take_word (self, "hold", "holds", "holding", NULL))
    return read_hold (self);
  if (take_word (self, "tempo", NULL))
    return read_tempo (self, TRUE);
  if (take_word (self, "rest", "pause", NULL))
    return read_rest (self);
  if (take_word (self, "each", NULL))
    return read_each (self, FALSE);
  if (take_word (self, "every", "per", NULL) || take_char (self, '/'))
    return read_each (self, TRUE);
  if (take_word (self, "both", "together", NULL))
    {
      take_word (self, "sides", "legs", "arms", "feet", "hands", NULL);
      take_word (self, "together", NULL);
      return read_side (self, SW_SIDE_BOTH);
    }
  if (take_word (self, "alternating", "alternate", "alternately", NULL))
    {
      take_word (self, "sides", "legs", "arms", "feet", "hands", NULL);
      return read_side (self, SW_SIDE_ALTERNATING);
    }
  side = take_body_side (self);
  if (side != SW_BODY_SIDE_NONE)
    return read_side (self, side == SW_BODY_SIDE_RIGHT ? SW_SIDE_RIGHT : SW_SIDE_LEFT);
  if (take_word (self, "effort", "rpe", "exertion", NULL))
    return read_limit (self, PART_EFFORT, &self->dose.effort_limit);
  if (take_word (self, "pain", NULL))
    return read_limit (self, PART_PAIN, &self->dose.pain_limit);
  if (take_word (self, "extra", "more", NULL) || take_char (self, '+'))
    {
      int count = 1;

      take_int (self, &count);
      return read_extra (self, count);
    }
  if (take_word (self, "once", NULL))
    return read_worded_frequency (self, 1);
  if (take_word (self, "twice", NULL))
    return read_worded_frequency (self, 2);
  if (take_word (self, "daily", NULL))
    return read_frequency (self, 7, 'w');
  if (take_word (self, "bodyweight", NULL))
    return claim (self, PART_LOAD);
  if (take_word (self, "no", "without", NULL))
    return read_none_of (self);

  return FALSE;
}

/* Between parts: punctuation, and words that only join. */
static void
skip_between (Reader *self)
{
  for (;;)
    {
      skip_spaces (self);
      if (*self->at == ',' || *self->at == ';' || *self->at == '.' || *self->at == '&'
          || *self->at == '@')
        self->at++;
      else if (!take_word (self, "and", "with", "at", "then", "load", "weight", NULL))
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
 * Returns: whether @line is a dose within all ranges
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

  text = g_utf8_validate (line, -1, NULL) ? simplify (line) : g_strdup ("?");
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

  *dose = reader.dose;
  return TRUE;
}

/**
 * sw_tempo_to_string:
 * @tempo: a tempo
 *
 * Returns: (transfer full): four numbers such as "2-0-2-0", X for a lift as fast as possible; "" when no
 *   tempo is set
 */
char *
sw_tempo_to_string (const SwTempo *tempo)
{
  if (!tempo->set)
    return g_strdup ("");
  if (tempo->lift_s < 0)
    return g_strdup_printf ("%d-%d-X-%d", tempo->lower_s, tempo->low_pause_s, tempo->top_pause_s);

  return g_strdup_printf ("%d-%d-%d-%d", tempo->lower_s, tempo->low_pause_s,
                          tempo->lift_s, tempo->top_pause_s);
}

/**
 * sw_tempo_from_string:
 * @text: three or four numbers such as "2-0-2" or "2-0-X-1"; "" for no tempo
 * @tempo: (out): the tempo; untouched on failure
 *
 * Returns: whether @text is a tempo, each phase from 0 to 60 seconds
 */
gboolean
sw_tempo_from_string (const char *text,
                      SwTempo    *tempo)
{
  g_autofree char *simple = NULL;
  SwTempo read = { 0 };
  Reader reader = { 0 };

  g_return_val_if_fail (text != NULL, FALSE);

  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  simple = simplify (text);
  reader.at = g_strstrip (simple);
  if (*reader.at != '\0' && (!take_tempo (&reader, TRUE, &read) || *reader.at != '\0'))
    return FALSE;
  if (read.lower_s > 60 || read.low_pause_s > 60 || read.lift_s > 60 || read.top_pause_s > 60)
    return FALSE;

  *tempo = read;
  return TRUE;
}

static void
append_load (GString *line,
             SwLoad   load)
{
  static const char * const units[] = { "", "kg", "lb", "N" };
  g_autofree char *number = NULL;

  if (load.unit == SW_LOAD_NONE)
    return;

  number = sw_number_to_string (load.value, 3);
  g_string_append_printf (line, ", %s %s", number, units[load.unit]);
}

/**
 * sw_dose_to_line:
 * @dose: a dose that passes sw_dose_check()
 *
 * Returns: (transfer full): the line a therapist would write; sw_dose_from_line() makes it @dose again
 */
char *
sw_dose_to_line (const SwDose *dose)
{
  static const char * const sides[] = { "", ", each side", ", right", ", left", ", alternating" };
  GString *line = g_string_new (NULL);

  g_string_append_printf (line, "%d x ", dose->sets);
  if (dose->reps_low == 0 && dose->reps_high == 0)
    g_string_append_printf (line, "hold %d s", dose->hold_s);
  else if (dose->reps_low == dose->reps_high)
    g_string_append_printf (line, "%d", dose->reps_low);
  else
    g_string_append_printf (line, "%d-%d", dose->reps_low, dose->reps_high);

  if (dose->reps_high > 0 && dose->hold_s > 0)
    g_string_append_printf (line, ", hold %d s", dose->hold_s);
  if (dose->tempo.set)
    {
      g_autofree char *tempo = sw_tempo_to_string (&dose->tempo);

      g_string_append_printf (line, ", tempo %s", tempo);
    }
  append_load (line, dose->load);
  g_string_append (line, sides[dose->side]);
  if (dose->directions != 1)
    g_string_append_printf (line, ", %d directions", dose->directions);
  if (dose->extra_sets > 0)
    g_string_append_printf (line, ", +%d %s %s", dose->extra_sets, dose->extra_sets == 1 ? "set" : "sets",
                            dose->extra_side == SW_BODY_SIDE_RIGHT ? "right" : "left");
  if (dose->rest_s > 0)
    g_string_append_printf (line, ", rest %d s", dose->rest_s);
  if (dose->days_a_week > 0)
    g_string_append_printf (line, ", %d %s a week", dose->days_a_week, dose->days_a_week == 1 ? "day" : "days");
  if (dose->times_a_day != 1)
    g_string_append_printf (line, ", %d times a day", dose->times_a_day);
  if (dose->effort_limit > 0)
    g_string_append_printf (line, ", effort %d", dose->effort_limit);
  if (dose->pain_limit >= 0)
    g_string_append_printf (line, ", pain %d", dose->pain_limit);

  return g_string_free (line, FALSE);
}
