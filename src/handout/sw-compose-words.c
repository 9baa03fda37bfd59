/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words and boxes that several parts of the handout tell alike. */
#include "config.h"

#include <math.h>

#include "sw-compose.h"
#include "sw-time.h"

/**
 * sw_compose_day_key:
 * @group: "day" or "day-short"
 *
 * Returns: (transfer none): the phrase that names the day
 */
const char *
sw_compose_day_key (const char *group,
                    SwDay       day)
{
  static const char *const full[]
      = { "day.monday", "day.tuesday", "day.wednesday", "day.thursday", "day.friday", "day.saturday", "day.sunday" };
  static const char *const brief[] = { "day-short.monday",   "day-short.tuesday", "day-short.wednesday",
                                       "day-short.thursday", "day-short.friday",  "day-short.saturday",
                                       "day-short.sunday" };

  return g_str_equal (group, "day") ? full[day] : brief[day];
}

/**
 * sw_compose_widest_pt:
 * @role: of all the words
 * @keys: (array zero-terminated=1): phrases
 *
 * Returns: the width of the longest
 */
double
sw_compose_widest_pt (SwComposer         *self,
                      SwTextRole          role,
                      const char * const *keys)
{
  int widest = 0;

  for (guint i = 0; keys[i] != NULL; i++)
    {
      int width;

      pango_layout_get_size (sw_composer_get_layout (self, role, -1.0, NULL, sw_phrases_get (self->phrases, keys[i])),
                             &width, NULL);
      widest = MAX (widest, width);
    }

  return (double) widest / PANGO_SCALE;
}

/**
 * sw_compose_widest_day_pt:
 * @role: of the words
 *
 * Returns: the width of the longest short name of a day
 */
double
sw_compose_widest_day_pt (SwComposer *self,
                          SwTextRole  role)
{
  const char *keys[8] = { NULL };

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    keys[day] = sw_compose_day_key ("day-short", day);
  return sw_compose_widest_pt (self, role, keys);
}

/* "Monday, Wednesday and Friday". */
static char *
list_days (SwPhrases *phrases,
           SwSet      days)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;
  guint n = 0;

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    if ((days & SW_SET (day)) != 0)
      {
        g_strv_builder_add (builder, sw_phrases_get (phrases, sw_compose_day_key ("day", day)));
        n++;
      }

  if (n == 0)
    return g_strdup (sw_phrases_get (phrases, "front.days-not-set"));
  if (n == 7)
    return g_strdup (sw_phrases_get (phrases, "day.every"));

  names = g_strv_builder_end (builder);
  return sw_phrases_list (phrases, (const char *const *) names);
}

/**
 * sw_compose_circuit_rest:
 * @circuit: an item of the kind circuit
 *
 * Returns: (transfer full) (nullable): how long to rest between its rounds; NULL for not at all
 */
char *
sw_compose_circuit_rest (SwPhrases *phrases,
                         SwItem    *circuit)
{
  g_autofree char *time = sw_phrases_time (phrases, sw_item_get_rest_s (circuit));

  if (sw_item_get_rest_s (circuit) == 0 || sw_item_get_rounds (circuit) < 2)
    return NULL;
  return sw_phrases_format (phrases, "circuit.rest", "time", time, NULL);
}

static void
collect_exercises (GListModel *items,
                   GPtrArray  *into)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        collect_exercises (G_LIST_MODEL (sw_item_get_items (item)), into);
      else if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        g_ptr_array_add (into, g_steal_pointer (&item));
    }
}

/**
 * sw_compose_collect_exercises:
 * @session: a session
 *
 * Returns: (transfer full) (element-type SwItem): its exercises, those in circuits too, in the order of the pages
 */
GPtrArray *
sw_compose_collect_exercises (SwSession *session)
{
  GPtrArray *exercises = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      collect_exercises (G_LIST_MODEL (sw_section_get_items (section)), exercises);
    }

  return exercises;
}

/* How often a day all exercises of the session are done; 1 when they differ. */
static int
common_times_a_day (SwSession *session)
{
  g_autoptr (GPtrArray) exercises = sw_compose_collect_exercises (session);
  int common = 0;

  for (guint i = 0; i < exercises->len; i++)
    {
      int times = sw_item_get_dose (exercises->pdata[i])->times_a_day;

      if (common != 0 && times != common)
        return 1;
      common = times;
    }

  return MAX (common, 1);
}

/**
 * sw_compose_when:
 * @phrases: the handout's words
 * @clinic: whose table tells how long changes take
 * @session: a session
 *
 * Returns: (transfer full): "Monday, Wednesday and Friday. About 18 to 21 minutes.": of a day without self-checks
 */
char *
sw_compose_when (SwPhrases *phrases,
                 SwClinic  *clinic,
                 SwSession *session)
{
  g_autoptr (SwClock) clock = sw_clock_new (session, clinic);
  g_autofree char *names = list_days (phrases, sw_session_get_days (session));
  g_autofree char *days = sw_phrases_capitalise (names);
  g_autofree char *time = NULL;
  g_autofree char *often = NULL;
  int low = sw_span_low_minutes (clock->total);
  int high = sw_span_high_minutes (clock->total);
  int times = common_times_a_day (session);

  if (high == 0)
    return sw_phrases_format (phrases, "front.week-line-no-time", "days", days, NULL);

  time = sw_phrases_count_range (phrases, "front.minutes", low, high, NULL);
  if (times < 2)
    return sw_phrases_format (phrases, "front.week-line", "days", days, "time", time, NULL);

  often = sw_phrases_count (phrases, "front.times-a-day", times, NULL);
  return sw_phrases_format (phrases, "front.week-line-often", "days", days, "often", often, "time", time, NULL);
}

/**
 * sw_compose_equipment:
 * @equipment: set of #SwEquipment
 *
 * Returns: (transfer full) (array zero-terminated=1): what the client calls each
 */
char **
sw_compose_equipment (SwPhrases *phrases,
                      SwSet      equipment)
{
  static const struct
  {
    SwEquipment equipment;
    const char *key;
  } names[] = {
    { SW_EQUIPMENT_CHAIR, "equipment.chair" },
    { SW_EQUIPMENT_WALL, "equipment.wall" },
    { SW_EQUIPMENT_COUNTER, "equipment.counter" },
    { SW_EQUIPMENT_TABLE, "equipment.table" },
    { SW_EQUIPMENT_STEP, "equipment.step" },
    { SW_EQUIPMENT_MAT, "equipment.mat" },
    { SW_EQUIPMENT_BED, "equipment.bed" },
    { SW_EQUIPMENT_TOWEL, "equipment.towel" },
    { SW_EQUIPMENT_PILLOW, "equipment.pillow" },
    { SW_EQUIPMENT_CUSHION, "equipment.cushion" },
    { SW_EQUIPMENT_BAND, "equipment.band" },
    { SW_EQUIPMENT_LOOP_BAND, "equipment.loop-band" },
    { SW_EQUIPMENT_DUMBBELL, "equipment.dumbbell" },
    { SW_EQUIPMENT_ANKLE_WEIGHT, "equipment.ankle-weight" },
    { SW_EQUIPMENT_BALL, "equipment.ball" },
    { SW_EQUIPMENT_STICK, "equipment.stick" },
    { SW_EQUIPMENT_FOAM_ROLLER, "equipment.foam-roller" },
    { SW_EQUIPMENT_BLOCK, "equipment.block" },
    { SW_EQUIPMENT_CABLE, "equipment.cable" },
  };
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if ((equipment & SW_SET (names[i].equipment)) != 0)
      g_strv_builder_add (builder, sw_phrases_get (phrases, names[i].key));

  return g_strv_builder_end (builder);
}

/**
 * sw_compose_clinic:
 *
 * Returns: (transfer full): therapist and clinic, whichever are stated; "" for neither
 */
char *
sw_compose_clinic (SwPhrases *phrases,
                   SwClinic  *clinic)
{
  const char *name = sw_clinic_get_name (clinic);
  const char *qualification = sw_clinic_get_qualification (clinic);
  g_autofree char *therapist = g_strdup (sw_clinic_get_therapist (clinic));

  if (*therapist != '\0' && *qualification != '\0')
    {
      g_autofree char *alone = g_steal_pointer (&therapist);

      therapist = sw_phrases_format (phrases, "front.therapist-qualified", "therapist", alone, "qualification",
                                     qualification, NULL);
    }
  if (*name != '\0' && *therapist != '\0')
    return sw_phrases_format (phrases, "front.from", "therapist", therapist, "clinic", name, NULL);
  return *name != '\0' ? g_strdup (name) : g_steal_pointer (&therapist);
}

/* The last day of so many weeks that begin on @date, ISO 8601; NULL for one that no calendar has. */
static GDateTime *
find_last_day (const char *date,
               int         weeks)
{
  g_autofree char *stamp = g_strconcat (date, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) day = g_date_time_new_from_iso8601 (stamp, NULL);

  return day != NULL ? g_date_time_add_days (day, 7 * weeks - 1) : NULL;
}

/* Returns: (transfer full) (nullable): for how long the programme is meant */
static char *
dup_how_long (SwPhrases   *phrases,
              SwProgramme *programme,
              const char  *date)
{
  int weeks = sw_progression_get_number (sw_programme_get_progression (programme), "weeks");
  g_autoptr (GDateTime) last = weeks > 0 ? find_last_day (date, weeks) : NULL;
  g_autofree char *iso = last != NULL ? g_date_time_format (last, "%Y-%m-%d") : NULL;
  g_autofree char *day = NULL;
  const char *weekday;

  if (iso == NULL)
    return NULL;
  day = sw_phrases_date (phrases, iso);
  weekday = sw_phrases_get (phrases, sw_compose_day_key ("day", SW_DAY_MONDAY + g_date_time_get_day_of_week (last) - 1));
  return sw_phrases_count (phrases, "plan.weeks", weeks, "weekday", weekday, "date", day, NULL);
}

/**
 * sw_compose_plan:
 * @date: the day of the handout
 *
 * Returns: (transfer full): for how long the programme is meant and whether somebody is to be near; "" where the
 *   therapist states neither
 */
char *
sw_compose_plan (SwPhrases   *phrases,
                 SwProgramme *programme,
                 const char  *date)
{
  static const char *const company_keys[] = {
    [SW_COMPANY_NOT_STATED] = NULL,
    [SW_COMPANY_ALONE] = "plan.alone",
    [SW_COMPANY_AT_FIRST] = "plan.at-first",
    [SW_COMPANY_ALWAYS] = "plan.always",
  };
  const char *company = company_keys[sw_programme_get_company (programme)];
  g_autofree char *how_long = dup_how_long (phrases, programme, date);
  const char *sentences[3] = { NULL };
  int n = 0;

  if (how_long != NULL)
    sentences[n++] = how_long;
  if (company != NULL)
    sentences[n++] = sw_phrases_get (phrases, company);
  return sw_phrases_sentences (phrases, sentences);
}

/**
 * sw_flow_blank:
 * @label: what is asked for
 * @most_pt: how long the line is at most
 * @name: (transfer full): of the place to fill in
 * @said: (transfer full): what is said of it in a form
 *
 * A line to write on, behind its label.
 */
void
sw_flow_blank (SwFlow     *flow,
               const char *label,
               double      most_pt,
               char       *name,
               char       *said)
{
  SwComposer *self = flow->composer;
  double field_pt = 1.4 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE);
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_STRONG, -1.0, NULL, label);
  double left_pt;
  double line_pt;
  int width;

  pango_layout_get_size (layout, &width, NULL);
  left_pt = flow->left_pt + (double) width / PANGO_SCALE + 0.5 * self->style.body_pt;
  line_pt = MIN (most_pt, flow->left_pt + flow->width_pt - left_pt);
  sw_flow_text_in (flow, SW_TEXT_STRONG, "P", label);
  sw_flow_box (flow, left_pt, flow->y_pt - 2.0, line_pt, 0.8, SW_GREY_TEXT);
  sw_flow_field (flow, self->parent, SW_FIELD_NUMBER, left_pt, flow->y_pt - 2.0 - field_pt, line_pt, field_pt, name,
                 said);
}
