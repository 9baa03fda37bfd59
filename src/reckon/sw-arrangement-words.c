/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What an order saves, and what keeps it from saving more, in the therapist's language. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-arrangement-words.h"

static double
middle_s (SwSpan span)
{
  return (span.low_s + span.high_s) / 2.0;
}

static char *
time_to_words (double seconds)
{
  g_autofree char *clock = NULL;
  int whole_s = (int) lround (seconds);

  if (whole_s < 60)
    return g_strdup_printf (_("%d s"), whole_s);

  clock = sw_clock_to_words (seconds);
  /* Translators: minutes and seconds. */
  return g_strdup_printf (_("%s min"), clock);
}

static void
append (GString *text,
        char    *words)
{
  /* Translators: between the reasons of a list. */
  g_string_append_printf (text, "%s%s", text->len > 0 ? C_("reasons", ", ") : "", words);
  g_free (words);
}

/* What the time comes from. */
static char *
dup_reasons (const SwArrangement *self)
{
  GString *text = g_string_new (NULL);
  int moves = self->moves_before - self->moves_after;
  int fetches = self->fetches_before - self->fetches_after;
  int together = self->together_before - self->together_after;

  if (moves > 0)
    append (text, g_strdup_printf (ngettext ("%d fewer change of position", "%d fewer changes of position",
                                             (gulong) moves),
                                   moves));
  if (moves < 0)
    append (text, g_strdup_printf (ngettext ("%d more change of position", "%d more changes of position",
                                             (gulong) -moves),
                                   -moves));
  if (fetches > 0)
    append (text, g_strdup_printf (ngettext ("equipment fetched %d time less", "equipment fetched %d times less",
                                             (gulong) fetches),
                                   fetches));
  if (fetches < 0)
    append (text, g_strdup_printf (ngettext ("equipment fetched %d time more", "equipment fetched %d times more",
                                             (gulong) -fetches),
                                   -fetches));
  if (together > 0)
    append (text, g_strdup_printf (ngettext ("%d exercise fewer right after another of the same small muscles",
                                             "%d exercises fewer right after another of the same small muscles",
                                             (gulong) together),
                                   together));
  if (text->len == 0)
    append (text, g_strdup (_("shorter ways between positions")));
  return g_string_free (text, FALSE);
}

/**
 * sw_arrangement_describe:
 * @self: an arrangement
 *
 * Returns: (transfer full): what it would bring, "Saves about 1:20 min: 3 fewer changes of position."
 */
char *
sw_arrangement_describe (const SwArrangement *self)
{
  double saved_s = middle_s (self->before) - middle_s (self->after);
  g_autofree char *time = time_to_words (fabs (saved_s));
  g_autofree char *reasons = dup_reasons (self);

  if (!self->better && self->exact)
    return g_strdup (_("Nothing to gain: in no other order does less time go between the exercises."));
  if (!self->better)
    return g_strdup (_("Nothing to gain: no order was found in which less time goes between the exercises."));
  if (saved_s > 0.5)
    /* Translators: a time, then what it comes from */
    return g_strdup_printf (_("Saves about %s: %s."), time, reasons);
  if (saved_s < -0.5)
    /* Translators: a time, then what it is spent for */
    return g_strdup_printf (_("Takes about %s more: %s."), time, reasons);
  /* Translators: what is gained all the same */
  return g_strdup_printf (_("Takes as long: %s."), reasons);
}

/**
 * sw_arrangement_dup_limits:
 * @session: a session
 * @clinic: whose table tells how long changes take
 *
 * Returns: (transfer full) (array zero-terminated=1): a sentence for each thing that the order keeps to and that takes
 *   time
 */
char **
sw_arrangement_dup_limits (SwSession *session,
                           SwClinic  *clinic)
{
  const struct
  {
    SwArrangementFree free;
    const char *words;
  } limits[] = {
    /* Translators: %s is a time */
    { SW_ARRANGEMENT_FREE_PLACES, _("Items that keep their place cost about %s.") },
    { SW_ARRANGEMENT_FREE_AFTER, _("Items that come after another cost about %s.") },
    { SW_ARRANGEMENT_FREE_MUSCLES, _("That the same small muscles do not work twice in a row costs about %s.") },
  };
  g_autoptr (GStrvBuilder) sentences = g_strv_builder_new ();

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      double cost_s = sw_arrangement_cost_of (session, clinic, limits[i].free);
      g_autofree char *time = time_to_words (cost_s);
      g_autofree char *sentence = g_strdup_printf (limits[i].words, time);

      if (cost_s >= 0.5)
        g_strv_builder_add (sentences, sentence);
    }
  return g_strv_builder_end (sentences);
}
