/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The document of one client, and ways to find things in it. */
#include "config.h"

#include <string.h>

#include "sw-programme.h"

#include "sw-fields.h"

#define CODE_LENGTH 8

struct _SwProgramme
{
  GObject parent_instance;

  char *id;
  char *title;
  int company;
  char *progress;
  SwClient *client;
  SwClinic *clinic;
  SwPagePlan *page_plan;
  SwProgression *progression;
  GListStore *sessions;
  GListStore *limits;
  GListStore *measurements;
  GListStore *diary;
  GListStore *answers;
  GListStore *issues;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwProgramme, sw_programme, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_ID,
  PROP_TITLE,
  PROP_COMPANY,
  PROP_PROGRESS,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_programme_get_property (GObject    *object,
                           guint       property_id,
                           GValue     *value,
                           GParamSpec *pspec)
{
  SwProgramme *self = SW_PROGRAMME (object);

  switch (property_id)
    {
    case PROP_ID:
      g_value_set_string (value, self->id);
      break;
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_COMPANY:
      g_value_set_enum (value, self->company);
      break;
    case PROP_PROGRESS:
      g_value_set_string (value, self->progress);
      break;
    case PROP_EXTRAS:
      g_value_set_boxed (value, self->extras);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

static void
sw_programme_set_property (GObject      *object,
                           guint         property_id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  SwProgramme *self = SW_PROGRAMME (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_ID:
      self->id = g_value_dup_string (value);
      break;
    case PROP_TITLE:
      changed = sw_field_set_string (&self->title, g_value_get_string (value));
      break;
    case PROP_COMPANY:
      changed = sw_field_set_int (&self->company, g_value_get_enum (value));
      break;
    case PROP_PROGRESS:
      changed = sw_field_set_string (&self->progress, g_value_get_string (value));
      break;
    case PROP_EXTRAS:
      changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_programme_constructed (GObject *object)
{
  SwProgramme *self = SW_PROGRAMME (object);

  G_OBJECT_CLASS (sw_programme_parent_class)->constructed (object);

  if (self->id == NULL)
    self->id = g_uuid_string_random ();
}

static void
sw_programme_finalize (GObject *object)
{
  SwProgramme *self = SW_PROGRAMME (object);

  g_free (self->id);
  g_free (self->title);
  g_free (self->progress);
  g_object_unref (self->client);
  g_object_unref (self->clinic);
  g_object_unref (self->page_plan);
  g_object_unref (self->progression);
  g_object_unref (self->sessions);
  g_object_unref (self->limits);
  g_object_unref (self->measurements);
  g_object_unref (self->diary);
  g_object_unref (self->answers);
  g_object_unref (self->issues);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_programme_parent_class)->finalize (object);
}

static void
sw_programme_class_init (SwProgrammeClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_programme_get_property;
  object_class->set_property = sw_programme_set_property;
  object_class->constructed = sw_programme_constructed;
  object_class->finalize = sw_programme_finalize;

  properties[PROP_ID] = g_param_spec_string ("id", NULL, NULL, NULL,
                                             G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY
                                             | G_PARAM_STATIC_STRINGS);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", flags);
  properties[PROP_COMPANY]
      = g_param_spec_enum ("company", NULL, NULL, SW_TYPE_COMPANY, SW_COMPANY_NOT_STATED, flags);
  properties[PROP_PROGRESS] = g_param_spec_string ("progress", NULL, NULL, "", flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_programme_init (SwProgramme *self)
{
  self->client = sw_client_new ();
  self->clinic = sw_clinic_new ();
  self->page_plan = sw_page_plan_new ();
  self->progression = sw_progression_new ();
  self->sessions = g_list_store_new (SW_TYPE_SESSION);
  self->limits = g_list_store_new (SW_TYPE_LIMIT);
  self->measurements = g_list_store_new (SW_TYPE_MEASUREMENT);
  self->diary = g_list_store_new (SW_TYPE_DIARY_ENTRY);
  self->answers = g_list_store_new (SW_TYPE_ANSWER);
  self->issues = g_list_store_new (SW_TYPE_ISSUE);
  sw_field_set_string (&self->title, "");
  sw_field_set_string (&self->progress, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_programme_new:
 * @id: (nullable): its id; NULL makes a random UUID
 *
 * Returns: (transfer full): a programme with nothing in it
 */
SwProgramme *
sw_programme_new (const char *id)
{
  return g_object_new (SW_TYPE_PROGRAMME, "id", id, NULL);
}

/**
 * sw_programme_new_standard:
 *
 * Returns: (transfer full): a new programme with one session of the three usual sections, none of them
 *   titled: words for people are the caller's business
 */
SwProgramme *
sw_programme_new_standard (void)
{
  SwProgramme *self = sw_programme_new (NULL);
  g_autoptr (SwSession) session = sw_session_new_standard (NULL);

  g_list_store_append (self->sessions, session);
  return self;
}

static void
copy_parts (SwProgramme *self,
            SwProgramme *copy)
{
  g_object_unref (copy->client);
  copy->client = sw_client_copy (self->client);
  g_object_unref (copy->clinic);
  copy->clinic = sw_clinic_copy (self->clinic);
}

/* The title, the pages, what there is to do and how that is to change. */
static void
copy_work (SwProgramme *self,
           SwProgramme *copy,
           gboolean     new_ids)
{
  sw_field_set_string (&copy->title, self->title);
  sw_field_set_string (&copy->progress, self->progress);
  g_object_unref (copy->page_plan);
  copy->page_plan = sw_page_plan_copy (self->page_plan);
  g_object_unref (copy->progression);
  copy->progression = sw_progression_copy (self->progression);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->sessions)); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (self->sessions), i);
      g_autoptr (SwSession) session_copy = sw_session_copy (session, new_ids);

      g_list_store_append (copy->sessions, session_copy);
    }
}

/* Answers and issues never change, so that both programmes may hold the same ones. */
static void
share_all (GListStore *from,
           GListStore *to)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (from)); i++)
    {
      g_autoptr (GObject) object = g_list_model_get_item (G_LIST_MODEL (from), i);

      g_list_store_append (to, object);
    }
}

/**
 * sw_programme_copy:
 * @self: a programme
 *
 * Makes the snapshot that work off the main thread is given.
 *
 * Returns: (transfer full): an equal programme, ids included, that shares nothing which can change
 */
SwProgramme *
sw_programme_copy (SwProgramme *self)
{
  SwProgramme *copy;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  copy = sw_programme_new (self->id);
  copy_parts (self, copy);
  copy_work (self, copy, FALSE);
  copy->company = self->company;
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  share_all (self->answers, copy->answers);
  share_all (self->issues, copy->issues);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->limits)); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (G_LIST_MODEL (self->limits), i);
      g_autoptr (SwLimit) limit_copy = sw_limit_copy (limit);

      g_list_store_append (copy->limits, limit_copy);
    }
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->measurements)); i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (G_LIST_MODEL (self->measurements), i);
      g_autoptr (SwMeasurement) measurement_copy = sw_measurement_copy (measurement);

      g_list_store_append (copy->measurements, measurement_copy);
    }
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->diary)); i++)
    {
      g_autoptr (SwDiaryEntry) entry = g_list_model_get_item (G_LIST_MODEL (self->diary), i);
      g_autoptr (SwDiaryEntry) entry_copy = sw_diary_entry_copy (entry);

      g_list_store_append (copy->diary, entry_copy);
    }

  return copy;
}

/**
 * sw_programme_new_from:
 * @self: a programme
 *
 * Begins a programme for another client with what is in this one. All that is about the client or was decided for
 * him or her stays behind: limits, measurements, the diary, answers to findings, issues, who is to be near, and of the client
 * all but the paper, the
 * units and the language of the pages. The clinic is left empty, too.
 *
 * Returns: (transfer full): a new programme with ids of its own
 */
SwProgramme *
sw_programme_new_from (SwProgramme *self)
{
  SwProgramme *new;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  new = sw_programme_new (NULL);
  copy_work (self, new, TRUE);
  g_object_set (new->client,
                "paper", sw_client_get_paper (self->client),
                "units", sw_client_get_units (self->client),
                "language", sw_client_get_language (self->client),
                NULL);
  return new;
}

/**
 * sw_programme_dup_code:
 *
 * Returns: (transfer full): the beginning of the id, short enough to be read out on the telephone: by it the pages and
 *   the clinic's record name the programme
 */
char *
sw_programme_dup_code (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return g_strndup (self->id, CODE_LENGTH);
}

/**
 * sw_programme_get_id:
 * @self: a programme
 *
 * Returns: (transfer none): its id
 */
const char *
sw_programme_get_id (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->id;
}

/**
 * sw_programme_get_title:
 * @self: a programme
 *
 * Returns: (transfer none): its title
 */
const char *
sw_programme_get_title (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->title;
}

/**
 * sw_programme_get_company:
 * @self: a programme
 *
 * Returns: whether somebody is to be near while the client exercises
 */
SwCompany
sw_programme_get_company (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), SW_COMPANY_NOT_STATED);

  return (SwCompany) self->company;
}

/**
 * sw_programme_get_progress:
 * @self: a programme
 *
 * Returns: (transfer none): when and how the client makes it harder, in the therapist's words; "" when not stated
 */
const char *
sw_programme_get_progress (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->progress;
}

/**
 * sw_programme_get_client:
 * @self: a programme
 *
 * Returns: (transfer none): who it is for
 */
SwClient *
sw_programme_get_client (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->client;
}

/**
 * sw_programme_get_clinic:
 * @self: a programme
 *
 * Returns: (transfer none): who hands it over
 */
SwClinic *
sw_programme_get_clinic (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->clinic;
}

/**
 * sw_programme_get_page_plan:
 * @self: a programme
 *
 * Returns: (transfer none): how its handout is to look
 */
SwPagePlan *
sw_programme_get_page_plan (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->page_plan;
}

/**
 * sw_programme_get_sessions:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwSession): its sessions
 */
GListStore *
sw_programme_get_sessions (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->sessions;
}

/**
 * sw_programme_get_limits:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwLimit): what surgeons and clinicians have set for the client
 */
GListStore *
sw_programme_get_limits (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->limits;
}

/**
 * sw_programme_get_measurements:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwMeasurement): its measurements
 */
GListStore *
sw_programme_get_measurements (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->measurements;
}

/**
 * sw_programme_get_progression:
 * @self: a programme
 *
 * Returns: (transfer none): how its doses are to change
 */
SwProgression *
sw_programme_get_progression (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->progression;
}

/**
 * sw_programme_get_diary:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwDiaryEntry): what the client reports
 */
GListStore *
sw_programme_get_diary (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->diary;
}

/**
 * sw_programme_get_answers:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwAnswer): the answers to its findings
 */
GListStore *
sw_programme_get_answers (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->answers;
}

/**
 * sw_programme_get_issues:
 * @self: a programme
 *
 * Returns: (transfer none) (element-type SwIssue): the handouts given out
 */
GListStore *
sw_programme_get_issues (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return self->issues;
}

/**
 * sw_programme_get_extras:
 * @self: a programme
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_programme_get_extras (SwProgramme *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  return (const char * const *) self->extras;
}
