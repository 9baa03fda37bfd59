/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/**
 * SwSpan:
 * @low_s: seconds, when everything goes quickly
 * @high_s: seconds, when it does not; never below @low_s
 *
 * How long something takes, as a range.
 */
typedef struct
{
  double low_s;
  double high_s;
} SwSpan;

static inline SwSpan
sw_span_add (SwSpan a,
             SwSpan b)
{
  return (SwSpan){ a.low_s + b.low_s, a.high_s + b.high_s };
}

static inline SwSpan
sw_span_times (SwSpan span,
               double n)
{
  return (SwSpan){ span.low_s * n, span.high_s * n };
}

/* Whole minutes that hold the span, wherever a session's are told: what takes any time at all takes one. */
static inline int
sw_span_low_minutes (SwSpan span)
{
  return span.high_s > 0.0 ? MAX (1, (int) floor (span.low_s / 60.0)) : 0;
}

static inline int
sw_span_high_minutes (SwSpan span)
{
  return (int) ceil (span.high_s / 60.0);
}

char *sw_clock_to_words (double seconds);
char *sw_span_to_words (SwSpan span);

G_END_DECLS
