/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The edit actions: each does one step of undo, and is enabled exactly when it would do something. */
#include "config.h"

#include "sample.h"
#include "sw-canvas-drag.h"
#include "sw-edit-actions.h"
#include "sw-finding-fix.h"

typedef struct
{
  SwDocument *document;
  GActionGroup *actions;
} Fixture;

static SwSession *
session_of (Fixture *fixture)
{
  return sw_document_get_session (fixture->document);
}

static SwSection *
nth_section (Fixture *fixture,
             guint    n)
{
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session_of (fixture))), n);

  return section;
}

static SwItem *
nth_item (Fixture *fixture,
          guint    section,
          guint    n)
{
  GListStore *items = sw_section_get_items (nth_section (fixture, section));
  g_autoptr (SwItem) item = g_list_model_get_item (G_LIST_MODEL (items), n);

  return item;
}

static void
add_to_catalogue (GPtrArray  *exercises,
                  const char *id,
                  const char *easier,
                  const char *harder)
{
  SwExerciseFacts facts;
  char *easier_ids[] = { (char *) easier, NULL };
  char *harder_ids[] = { (char *) harder, NULL };

  sample_facts_init (&facts, id);
  facts.easier = easier_ids;
  facts.harder = harder_ids;
  g_ptr_array_add (exercises, sample_exercise_from (&facts, id));
}

/* Warm-up: low. Main: mid, high. The catalogue knows them all, each linked to the next. */
static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new ();
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  const char *ids[] = { "low", "mid", "high" };

  add_to_catalogue (exercises, "low", NULL, "mid");
  add_to_catalogue (exercises, "mid", "low", "high");
  add_to_catalogue (exercises, "high", "gone", "higher");
  add_to_catalogue (exercises, "higher", "gone", NULL);
  sw_catalogue_add (catalogue, exercises);

  fixture->document = sw_document_new (programme, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    sample_append (nth_section (fixture, i == 0 ? 0 : 1),
                   sw_item_new_for_exercise (sw_catalogue_lookup (catalogue, ids[i]), ids[i]));
  sw_document_set_catalogue (fixture->document, catalogue);
  fixture->actions = sw_edit_actions_new (fixture->document);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_assert_finalize_object (fixture->actions);
  g_assert_finalize_object (fixture->document);
}

static gboolean
enabled (Fixture    *fixture,
         const char *name)
{
  g_assert_true (g_action_group_has_action (fixture->actions, name));
  return g_action_group_get_action_enabled (fixture->actions, name);
}

static void
activate (Fixture    *fixture,
          const char *name)
{
  g_assert_true (enabled (fixture, name));
  g_action_group_activate_action (fixture->actions, name, NULL);
}

/* The items of the session: "low | mid high | ", a circuit's members in brackets. */
static char *
session_to_string (Fixture *fixture)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session_of (fixture)));
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      g_string_append (text, i > 0 ? "|" : "");
      for (guint j = 0; j < g_list_model_get_n_items (items); j++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, j);
          g_autofree char *name = sw_item_dup_name (item, NULL);
          guint n_members = g_list_model_get_n_items (G_LIST_MODEL (sw_item_get_items (item)));

          g_string_append (text, j > 0 ? " " : "");
          switch (sw_item_get_kind (item))
            {
            case SW_ITEM_CIRCUIT:
              g_string_append_printf (text, "(%u)", n_members);
              break;
            case SW_ITEM_REST:
              g_string_append_printf (text, "rest%d", sw_item_get_rest_s (item));
              break;
            case SW_ITEM_SELF_CHECK:
              g_string_append (text, "check");
              break;
            case SW_ITEM_EXERCISE:
            default:
              g_string_append (text, name);
              break;
            }
        }
    }

  return g_string_free (text, FALSE);
}

static void
assert_session (Fixture    *fixture,
                const char *expected)
{
  g_autofree char *session = session_to_string (fixture);

  g_assert_cmpstr (session, ==, expected);
}

/* What was done is one step: a single undo brings the session back as it was. */
static void
assert_one_step (Fixture    *fixture,
                 const char *before)
{
  activate (fixture, "undo");
  assert_session (fixture, before);
  activate (fixture, "redo");
}

static void
choose (Fixture *fixture,
        SwItem  *first,
        SwItem  *second)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new ();

  g_ptr_array_add (items, first);
  if (second != NULL)
    g_ptr_array_add (items, second);
  sw_document_choose (fixture->document, items);
}

static void
test_nothing_chosen (Fixture       *fixture,
                     gconstpointer  data G_GNUC_UNUSED)
{
  const char *needy[] = { "undo", "redo", "remove", "duplicate", "cut", "copy", "paste", "shift-up", "shift-down",
                          "choose-none", "make-circuit", "dissolve-circuit", "swap-easier", "swap-harder",
                          "swap-sides" };
  const char *free[] = { "choose-all", "add-rest", "add-self-check", "add-section", "add-session" };

  for (guint i = 0; i < G_N_ELEMENTS (needy); i++)
    g_assert_false (enabled (fixture, needy[i]));
  for (guint i = 0; i < G_N_ELEMENTS (free); i++)
    g_assert_true (enabled (fixture, free[i]));
}

static void
test_remove (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *next = nth_item (fixture, 1, 1);

  choose (fixture, nth_item (fixture, 1, 0), NULL);
  activate (fixture, "remove");
  assert_session (fixture, "low|high|");
  g_assert_true (sw_document_get_chosen_item (fixture->document) == next);
  assert_one_step (fixture, "low|mid high|");

  /* At the end there is nothing that follows: what stands before is chosen. */
  choose (fixture, nth_item (fixture, 1, 0), NULL);
  activate (fixture, "remove");
  g_assert_true (sw_document_get_chosen_item (fixture->document) == nth_item (fixture, 0, 0));
  activate (fixture, "remove");
  assert_session (fixture, "||");
  g_assert_false (enabled (fixture, "remove"));
  g_assert_false (enabled (fixture, "choose-all"));
}

static void
test_duplicate (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  choose (fixture, nth_item (fixture, 1, 0), NULL);
  activate (fixture, "duplicate");
  assert_session (fixture, "low|mid mid high|");
  g_assert_true (sw_document_get_chosen_item (fixture->document) == nth_item (fixture, 1, 1));
  assert_one_step (fixture, "low|mid high|");
}

/* Enabled exactly as long as there is a gap to go to. */
static void
test_shift (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  guint n = 0;

  choose (fixture, nth_item (fixture, 0, 0), NULL);
  g_assert_false (enabled (fixture, "shift-up"));
  while (enabled (fixture, "shift-down"))
    {
      g_autofree char *before = session_to_string (fixture);
      g_autofree char *after = NULL;

      activate (fixture, "shift-down");
      after = session_to_string (fixture);
      g_assert_cmpstr (after, !=, before);
      g_assert_cmpuint (++n, <, 10);
    }
  assert_session (fixture, "|mid high|low");
  g_assert_cmpuint (n, ==, 4);

  while (enabled (fixture, "shift-up"))
    activate (fixture, "shift-up");
  assert_session (fixture, "low|mid high|");
}

static void
test_circuit (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  choose (fixture, nth_item (fixture, 1, 0), NULL);
  g_assert_false (enabled (fixture, "make-circuit"));
  choose (fixture, nth_item (fixture, 1, 0), nth_item (fixture, 1, 1));
  activate (fixture, "make-circuit");
  assert_session (fixture, "low|(2)|");
  assert_one_step (fixture, "low|mid high|");

  choose (fixture, nth_item (fixture, 1, 0), NULL);
  activate (fixture, "dissolve-circuit");
  assert_session (fixture, "low|mid high|");
  g_assert_cmpuint (sw_document_get_chosen (fixture->document)->len, ==, 2);
  assert_one_step (fixture, "low|(2)|");
}

static void
test_insertions (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  choose (fixture, nth_item (fixture, 0, 0), NULL);
  activate (fixture, "add-rest");
  assert_session (fixture, "low rest60|mid high|");
  assert_one_step (fixture, "low|mid high|");

  /* With nothing chosen: at the end of the main work. */
  sw_document_choose_item (fixture->document, NULL);
  activate (fixture, "add-self-check");
  assert_session (fixture, "low rest60|mid high check|");
  g_assert_true (sw_document_get_chosen_item (fixture->document) == nth_item (fixture, 1, 2));
}

static void
test_swap (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  /* One step easier and one step harder are in the session already. */
  choose (fixture, nth_item (fixture, 1, 0), NULL);
  g_assert_false (enabled (fixture, "swap-easier"));
  activate (fixture, "swap-harder");
  assert_session (fixture, "low|higher high|");
  assert_one_step (fixture, "low|mid high|");

  /* The easier one of "higher" is not in the catalogue, a harder one does not exist. */
  g_assert_false (enabled (fixture, "swap-easier"));
  g_assert_false (enabled (fixture, "swap-harder"));
}

static void
test_swap_sides (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = nth_item (fixture, 1, 0);
  SwDose dose = *sw_item_get_dose (item);

  dose.side = SW_SIDE_EACH;
  dose.extra_sets = 1;
  dose.extra_side = SW_BODY_SIDE_RIGHT;
  sw_history_set_boxed (sw_document_get_history (fixture->document), "Dose", item, "dose", &dose);
  choose (fixture, item, NULL);
  activate (fixture, "swap-sides");
  g_assert_cmpint (sw_item_get_dose (item)->side, ==, SW_SIDE_EACH);
  g_assert_cmpint (sw_item_get_dose (item)->extra_side, ==, SW_BODY_SIDE_LEFT);
  activate (fixture, "undo");
  g_assert_cmpint (sw_item_get_dose (item)->extra_side, ==, SW_BODY_SIDE_RIGHT);
}

static void
test_sections (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  g_action_group_activate_action (fixture->actions, "section-down", g_variant_new_int32 (0));
  assert_session (fixture, "mid high|low|");
  assert_one_step (fixture, "low|mid high|");

  choose (fixture, nth_item (fixture, 0, 0), NULL);
  g_action_group_activate_action (fixture->actions, "add-section", g_variant_new_string ("own"));
  assert_session (fixture, "mid high||low|");
  g_assert_cmpint (sw_section_get_kind (nth_section (fixture, 1)), ==, SW_SECTION_OWN);

  g_action_group_activate_action (fixture->actions, "rename-section", g_variant_new ("(is)", -1, "Garden"));
  g_assert_cmpstr (sw_section_get_title (nth_section (fixture, 0)), ==, "Garden");
  g_action_group_activate_action (fixture->actions, "duplicate-section", g_variant_new_int32 (0));
  assert_session (fixture, "mid high|mid high||low|");
  g_action_group_activate_action (fixture->actions, "remove-section", g_variant_new_int32 (1));
  assert_session (fixture, "mid high||low|");
  assert_one_step (fixture, "mid high|mid high||low|");
}

static int
session_shown (Fixture *fixture)
{
  g_autoptr (GVariant) state = g_action_group_get_action_state (fixture->actions, "show-session");

  return g_variant_get_int32 (state);
}

static void
test_sessions (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  SwSession *first = session_of (fixture);

  g_assert_false (enabled (fixture, "remove-session"));
  activate (fixture, "duplicate-session");
  g_assert_true (session_of (fixture) != first);
  assert_session (fixture, "low|mid high|");
  g_assert_cmpstr (sw_session_get_title (session_of (fixture)), ==, "Session, second");
  g_assert_cmpint (session_shown (fixture), ==, 1);

  activate (fixture, "add-session");
  assert_session (fixture, "||");
  g_assert_cmpint (session_shown (fixture), ==, 2);
  activate (fixture, "remove-session");
  g_assert_cmpint (session_shown (fixture), ==, 1);

  g_action_group_change_action_state (fixture->actions, "show-session", g_variant_new_int32 (0));
  g_assert_true (session_of (fixture) == first);
  g_action_group_change_action_state (fixture->actions, "show-session", g_variant_new_int32 (7));
  g_assert_true (session_of (fixture) == first);
  activate (fixture, "remove-session");
  g_assert_true (session_of (fixture) != first);
  g_assert_false (enabled (fixture, "remove-session"));
}

/* What a circuit holds is carried once, within its circuit. */
static void
test_parcel (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwCanvasDrag) parcel = NULL;
  g_autoptr (GPtrArray) copies = NULL;
  g_autofree char *text = NULL;

  choose (fixture, nth_item (fixture, 1, 0), nth_item (fixture, 1, 1));
  activate (fixture, "make-circuit");
  activate (fixture, "choose-all");
  g_assert_cmpuint (sw_document_get_chosen (fixture->document)->len, ==, 4);

  parcel = sw_canvas_drag_new (sw_document_get_programme (fixture->document),
                               sw_document_get_chosen (fixture->document));
  g_assert_true (sw_canvas_drag_has_circuit (parcel));
  g_assert_false (sw_canvas_drag_has_section (parcel));
  copies = sw_canvas_drag_dup_copies (parcel, sw_document_get_programme (fixture->document));
  g_assert_cmpuint (copies->len, ==, 2);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_item_get_items (copies->pdata[1]))), ==, 2);
  g_assert_cmpstr (sw_item_get_id (copies->pdata[0]), !=, sw_item_get_id (nth_item (fixture, 0, 0)));

  text = sw_canvas_drag_to_text (parcel);
  g_assert_true (g_str_has_prefix (text, "low: "));
}

static const SwFinding *
find_finding (Fixture *fixture,
              SwFix    fix)
{
  GPtrArray *findings = sw_document_get_findings (fixture->document);

  for (guint i = 0; i < findings->len; i++)
    if (((const SwFinding *) findings->pdata[i])->fix == fix)
      return findings->pdata[i];

  return NULL;
}

/* A finding's fix answers it in one step; a reason does too, and can be taken back. */
static void
test_findings (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = nth_item (fixture, 1, 0);
  SwHistory *history = sw_document_get_history (fixture->document);
  GListModel *answers = G_LIST_MODEL (sw_programme_get_answers (sw_document_get_programme (fixture->document)));
  SwDose dose = *sw_item_get_dose (item);
  const SwFinding *finding;
  g_autofree char *key = NULL;

  dose.load = (SwLoad){ SW_LOAD_KG, 40.0 };
  sw_history_set_boxed (history, "Dose", item, "dose", &dose);
  finding = find_finding (fixture, SW_FIX_SET_DOSE);
  g_assert_nonnull (finding);
  g_assert_true (finding->item == item);
  key = g_strdup (finding->key);

  sw_finding_keep (fixture->document, finding, "Used to more at work.");
  g_assert_cmpuint (g_list_model_get_n_items (answers), ==, 1);
  finding = find_finding (fixture, SW_FIX_SET_DOSE);
  g_assert_cmpstr (finding->key, ==, key);
  g_assert_cmpstr (sw_answer_get_reason (finding->answer), ==, "Used to more at work.");
  sw_finding_take_back (fixture->document, finding);
  g_assert_cmpuint (g_list_model_get_n_items (answers), ==, 0);

  sw_finding_show (fixture->document, find_finding (fixture, SW_FIX_SET_DOSE));
  g_assert_true (sw_document_get_chosen_item (fixture->document) == item);
  sw_finding_apply_fix (fixture->document, find_finding (fixture, SW_FIX_SET_DOSE));
  g_assert_null (find_finding (fixture, SW_FIX_SET_DOSE));
  g_assert_cmpfloat (sw_item_get_dose (item)->load.value, <, 40.0);
  activate (fixture, "undo");
  g_assert_cmpfloat (sw_item_get_dose (item)->load.value, ==, 40.0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/edit-actions/nothing-chosen", Fixture, NULL, set_up, test_nothing_chosen, tear_down);
  g_test_add ("/edit-actions/remove", Fixture, NULL, set_up, test_remove, tear_down);
  g_test_add ("/edit-actions/duplicate", Fixture, NULL, set_up, test_duplicate, tear_down);
  g_test_add ("/edit-actions/shift", Fixture, NULL, set_up, test_shift, tear_down);
  g_test_add ("/edit-actions/circuit", Fixture, NULL, set_up, test_circuit, tear_down);
  g_test_add ("/edit-actions/insertions", Fixture, NULL, set_up, test_insertions, tear_down);
  g_test_add ("/edit-actions/swap", Fixture, NULL, set_up, test_swap, tear_down);
  g_test_add ("/edit-actions/swap-sides", Fixture, NULL, set_up, test_swap_sides, tear_down);
  g_test_add ("/edit-actions/sections", Fixture, NULL, set_up, test_sections, tear_down);
  g_test_add ("/edit-actions/sessions", Fixture, NULL, set_up, test_sessions, tear_down);
  g_test_add ("/edit-actions/parcel", Fixture, NULL, set_up, test_parcel, tear_down);
  g_test_add ("/edit-actions/findings", Fixture, NULL, set_up, test_findings, tear_down);

  return g_test_run ();
}
