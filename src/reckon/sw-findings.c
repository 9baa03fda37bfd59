/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks a programme: the client, the clinic and its sessions here, its exercises in
 * sw-findings-item.c, how it reads in sw-findings-reading.c. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-feasibility.h"
#include "sw-time.h"

/* Henry and others, Phys Ther 1999;79:270-277: of 2, 5 and 8 exercises, 2 were performed better than 8; reported compliance did
 * not differ. Bachmann and others, Phys Med Rehab Kuror 2018;28:20-31, a review: 2 to 4. */
#define MOST_EXERCISES 4

static SwAnswer *
find_answer (SwProgramme *programme,
             const char  *key)
{
  GListModel *answers = G_LIST_MODEL (sw_programme_get_answers (programme));

  /* The latest of several. */
  for (guint i = g_list_model_get_n_items (answers); i > 0; i--)
    {
      g_autoptr (SwAnswer) answer = g_list_model_get_item (answers, i - 1);

      if (g_str_equal (sw_answer_get_finding (answer), key))
        return g_steal_pointer (&answer);
    }

  return NULL;
}

/**
 * sw_checking_add:
 * @self: the checking
 * @level: how severe
 * @item: (nullable): what it is about
 * @key: (transfer full): names it in the programme, the same on every check
 * @text: (transfer full): what was found
 * @why: why it matters and the source of the rule
 *
 * Adds a finding without a fix, with the answer the programme has for it.
 *
 * Returns: (transfer none): the finding
 */
SwFinding *
sw_checking_add (SwChecking     *self,
                 SwFindingLevel  level,
                 SwItem         *item,
                 char           *key,
                 char           *text,
                 const char     *why)
{
  SwFinding *finding = g_new0 (SwFinding, 1);

  finding->level = level;
  finding->key = key;
  finding->item = item != NULL ? g_object_ref (item) : NULL;
  finding->text = text;
  finding->why = g_strdup (why);
  finding->answer = find_answer (self->programme, key);
  g_ptr_array_add (self->findings, finding);
  return finding;
}

/**
 * sw_checking_fix:
 * @finding: a finding
 * @fix: what would answer it
 * @label: what that would do, for a button
 */
void
sw_checking_fix (SwFinding  *finding,
                 SwFix       fix,
                 const char *label)
{
  finding->fix = fix;
  g_free (finding->fix_label);
  finding->fix_label = g_strdup (label);
}

static void
check_people (SwChecking *self)
{
  SwClient *client = sw_programme_get_client (self->programme);
  SwClinic *clinic = sw_programme_get_clinic (self->programme);
  SwFinding *finding;

  if (*sw_client_get_name (client) == '\0')
    {
      finding = sw_checking_add (self, SW_FINDING_ASK, NULL, g_strdup ("client-name"),
                                 g_strdup (_("The client has no name.")),
                                 _("The handout is the client's own and must not be mixed up."));
      sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
    }
  if (*sw_clinic_get_phone (clinic) == '\0')
    {
      finding = sw_checking_add (self, SW_FINDING_ASK, NULL, g_strdup ("clinic-phone"),
                                 g_strdup (_("The clinic has no phone number.")),
                                 _("The handout says when to stop and whom to call."));
      sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
    }
}

/* Common practice: from this age on, ask every client about falls. */
#define ASK_ABOUT_FALLS_FROM 65

static void
check_falls (SwChecking *self)
{
  const SwSet balance = SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING)
                        | SW_SET (SW_CAUTION_EYES_CLOSED);
  SwClient *client = sw_programme_get_client (self->programme);
  int birth_year = sw_client_get_birth_year (client);
  int year = (int) g_ascii_strtoll (self->today, NULL, 10);
  g_autoptr (GPtrArray) exercises = NULL;

  if (birth_year == 0 || year - birth_year < ASK_ABOUT_FALLS_FROM
      || (sw_client_get_precautions (client) & SW_SET (SW_PRECAUTION_FALL_RISK)) != 0)
    return;

  exercises = sw_programme_dup_exercises (self->programme);
  for (guint i = 0; i < exercises->len; i++)
    {
      if ((sw_exercise_get_facts (exercises->pdata[i])->cautions & balance) != 0)
        {
          SwFinding *finding;

          finding = sw_checking_add (self, SW_FINDING_TELL, NULL, g_strdup ("falls"),
                                     g_strdup_printf (_("The client turns %d this year, and balance is trained."),
                                                      year - birth_year),
                                     _("Ask about falls in the past year, and note the risk if there is one "
                                       "(common practice from 65 on)."));
          sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
          return;
        }
    }
}

/* "Morning", or "Session 2" for one without a title. */
static char *
dup_session_name (SwSession *session,
                  guint      number)
{
  if (*sw_session_get_title (session) != '\0')
    return g_strdup (sw_session_get_title (session));

  /* Translators: a session without a title of its own, by its number. */
  return g_strdup_printf (_("Session %u"), number);
}

/* What stands for the session in a finding's key, in every language: an answer goes with the session's title when others
 * are put before it. */
static char *
dup_session_mark (SwSession *session,
                  guint      number)
{
  const char *title = sw_session_get_title (session);

  return *title != '\0' ? g_strdup (title) : g_strdup_printf ("%u", number);
}

/* Two sessions; the client has to find time for both, but not at once. */
static gboolean
fix_by_split (SwChecking *self,
              SwFinding  *finding,
              SwSession  *session)
{
  g_autoptr (GPtrArray) half = sw_feasibility_find_half (session, sw_programme_get_clinic (self->programme));

  if (half->len == 0)
    return FALSE;

  finding->fix_session = g_object_ref (session);
  finding->fix_moving = g_steal_pointer (&half);
  sw_checking_fix (finding, SW_FIX_SPLIT_SESSION, _("Split over two sessions"));
  return TRUE;
}

/* What is much too long is not mended set by set. */
#define MUCH_TOO_LONG 1.5

static void
fix_length (SwChecking *self,
            SwFinding  *finding,
            SwSession  *session,
            double      times_too_long)
{
  SwDose fewer;
  SwItem *item;
  g_autofree char *name = NULL;
  g_autofree char *label = NULL;

  if (times_too_long >= MUCH_TOO_LONG && fix_by_split (self, finding, session))
    return;
  item = sw_feasibility_find_set (session, sw_programme_get_clinic (self->programme), &fewer);
  if (item == NULL)
    {
      if (!fix_by_split (self, finding, session))
        sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
      return;
    }

  name = sw_item_dup_name (item, NULL);
  /* Translators: %s is an exercise */
  label = g_strdup_printf (_("One set fewer of “%s”"), name);
  finding->fix_dose = fewer;
  finding->fix_item = g_object_ref (item);
  sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
}

static void
check_length (SwChecking *self,
              SwSession  *session,
              const char *name,
              const char *mark)
{
  int minutes = sw_client_get_minutes (sw_programme_get_client (self->programme));
  g_autoptr (SwClock) clock = sw_clock_new (session, sw_programme_get_clinic (self->programme));
  int low = sw_span_low_minutes (clock->total);
  int high = sw_span_high_minutes (clock->total);
  SwFinding *finding;

  if (minutes == 0 || high <= minutes)
    return;

  finding = sw_checking_add (self, clock->total.low_s > minutes * 60.0 ? SW_FINDING_ASK : SW_FINDING_TELL, NULL,
                             g_strdup_printf ("length:%s:%d:%d", mark, minutes, high),
                             g_strdup_printf (ngettext ("“%s” takes %d to %d minutes; the client has %d minute.",
                                                        "“%s” takes %d to %d minutes; the client has %d minutes.",
                                                        (unsigned long) minutes),
                                              name, low, high, minutes),
                             _("What does not fit into the day is left out. Fewer exercises, fewer sets, or "
                               "shorter rests."));
  fix_length (self, finding, session, clock->total.low_s / (minutes * 60.0));
}

static void
check_days (SwChecking *self,
            SwSession  *session,
            GPtrArray  *items,
            const char *name,
            const char *mark)
{
  guint n_open = 0;

  for (guint i = 0; i < items->len; i++)
    {
      n_open += sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE
                && sw_item_get_dose (items->pdata[i])->days_a_week == 0;
    }
  if (n_open == 0 || sw_session_get_days (session) != 0)
    return;

  sw_checking_add (self, SW_FINDING_ASK, NULL, g_strdup_printf ("days:%s", mark),
                   g_strdup_printf (_("“%s” has no days."), name),
                   _("The handout cannot say how often. Choose the days of the session, or the days a week of "
                     "each exercise."));
}

static void
check_content (SwChecking *self,
               SwSession  *session,
               GPtrArray  *items,
               const char *name,
               const char *mark)
{
  guint n_exercises = 0;

  for (guint i = 0; i < items->len; i++)
    n_exercises += sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE;

  if (n_exercises == 0)
    {
      sw_checking_add (self, SW_FINDING_ASK, NULL, g_strdup_printf ("empty:%s", mark),
                       g_strdup_printf (_("“%s” has no exercise."), name),
                       _("An empty session would be printed as an empty page. Add exercises or remove it."));
      return;
    }

  if (n_exercises > MOST_EXERCISES)
    fix_by_split (self,
                  sw_checking_add (self, SW_FINDING_TELL, NULL, g_strdup_printf ("many:%s:%u", mark, n_exercises),
                                   g_strdup_printf (_("“%s” has %u exercises."), name, n_exercises),
                                   _("A comparison of 2, 5 and 8 exercises found 2 done better than 8, and no difference in "
                                     "reported compliance (Henry and others 1999). A later review advises 2 to 4 (Bachmann and "
                                     "others 2018).")),
                  session);

  if (sw_item_get_kind (items->pdata[items->len - 1]) != SW_ITEM_SELF_CHECK)
    sw_checking_add (self, SW_FINDING_TELL, NULL, g_strdup_printf ("self-check:%s", mark),
                     g_strdup_printf (_("“%s” does not end with a self-check."), name),
                     _("A small test at the end, of the kind taken at the start, shows client and therapist "
                       "what changed (common practice)."));
}

static int
compare_levels (gconstpointer a,
                gconstpointer b)
{
  const SwFinding *first = *(const SwFinding * const *) a;
  const SwFinding *second = *(const SwFinding * const *) b;

  return (int) second->level - (int) first->level;
}

/**
 * sw_findings_collect_with:
 * @programme: a programme
 * @catalogue: (nullable): where fixes look for other exercises; without it none is swapped
 * @today: the present day, YYYY-MM-DD
 * @reading: (nullable): how the programme's words read, where that can be told in its language
 *
 * Checks a programme. Each finding has a key that stays the same until what was found is another: the
 * answer to a load, a precaution or a missing thing does not cover another exercise or a higher load.
 *
 * Returns: (transfer full) (element-type SwFinding): the findings, the most severe first, otherwise in the
 *   order of the document
 */
GPtrArray *
sw_findings_collect_with (SwProgramme               *programme,
                          SwCatalogue               *catalogue,
                          const char                *today,
                          const SwReadabilityReport *reading)
{
  SwChecking checking = { programme, catalogue, today, reading, NULL, NULL };
  GListModel *sessions;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  checking.findings = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_finding_free);
  check_people (&checking);
  check_falls (&checking);
  sw_checking_limits (&checking);
  sw_checking_loads (&checking);

  sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_session_dup_items (session);
      g_autofree char *name = dup_session_name (session, i + 1);
      g_autofree char *mark = dup_session_mark (session, i + 1);

      check_content (&checking, session, items, name, mark);
      check_length (&checking, session, name, mark);
      check_days (&checking, session, items, name, mark);
      for (guint j = 0; j < items->len; j++)
        {
          if (sw_item_get_kind (items->pdata[j]) != SW_ITEM_EXERCISE)
            continue;
          sw_checking_exercise (&checking, items->pdata[j]);
          sw_checking_progress (&checking, items->pdata[j]);
        }
    }

  sw_checking_reading (&checking);

  g_clear_pointer (&checking.swaps, sw_swaps_free);
  g_ptr_array_sort (checking.findings, compare_levels);
  return checking.findings;
}

/**
 * sw_findings_collect:
 * @programme: a programme
 * @catalogue: (nullable): where fixes look for other exercises; without it none is swapped
 * @today: the present day, YYYY-MM-DD
 *
 * The same as sw_findings_collect_with() for who does not know how the words read.
 *
 * Returns: (transfer full) (element-type SwFinding): the findings
 */
GPtrArray *
sw_findings_collect (SwProgramme *programme,
                     SwCatalogue *catalogue,
                     const char  *today)
{
  g_autoptr (SwReadabilityReport) reading = NULL;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  reading = sw_readability_report_new_for_programme (programme);
  return sw_findings_collect_with (programme, catalogue, today, reading);
}
