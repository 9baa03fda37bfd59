/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One result of checking a programme. */
#include "config.h"

#include "sw-finding.h"

/**
 * sw_finding_free:
 * @finding: (transfer full) (nullable): a finding
 */
void
sw_finding_free (SwFinding *finding)
{
  if (finding == NULL)
    return;

  g_free (finding->key);
  g_clear_object (&finding->item);
  g_free (finding->text);
  g_free (finding->why);
  g_strfreev (finding->details);
  g_free (finding->fix_label);
  g_clear_object (&finding->fix_exercise);
  g_clear_object (&finding->fix_item);
  g_clear_object (&finding->fix_session);
  g_clear_pointer (&finding->fix_moving, g_ptr_array_unref);
  g_clear_object (&finding->answer);
  g_free (finding);
}

/**
 * sw_findings_count_open:
 * @findings: (element-type SwFinding): findings
 * @level: a level
 *
 * Returns: how many findings of just this level have no answer yet
 */
guint
sw_findings_count_open (GPtrArray      *findings,
                        SwFindingLevel  level)
{
  guint n = 0;

  g_return_val_if_fail (findings != NULL, 0);

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      n += finding->level == level && finding->answer == NULL;
    }

  return n;
}
