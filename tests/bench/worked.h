/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <time.h>

/* Milliseconds this process has worked: what else the machine does must not count. */
static inline double
worked_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1000.0 + (double) now.tv_nsec / 1e6;
}
