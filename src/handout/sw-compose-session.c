/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sessions and sections with their headings, and the small items between the exercises: rests and circuits. */
#include "config.h"

#include "sw-compose.h"

#define CIRCUIT_INDENT_PT 12.0

static void
compose_session_heading (SwComposer *self,
                         SwSession  *session)
{
  double body_pt = self->style.body_pt;
  g_autofree char *own = sw_text_dup_whole (sw_session_get_title (session));
  const char *title = *own != '\0' ? own : sw_phrases_get (self->phrases, "front.title");
  g_autofree char *outline = sw_text_dup_short (title);
  g_autofree char *when = sw_compose_when (self->phrases, self->clinic, session);
  SwFlow flow;

  if (self->layout == SW_LAYOUT_LARGE_PRINT)
    sw_composer_start_page (self);
  flow = sw_composer_begin (self);
  sw_flow_box (&flow, flow.left_pt, 0.0, flow.width_pt, 2.0, SW_GREY_TEXT);
  sw_flow_space (&flow, 2.0 + 0.35 * body_pt);
  sw_flow_text_in (&flow, SW_TEXT_SESSION, "H2", title);
  sw_flow_text_in (&flow, SW_TEXT_BODY, "P", when);
  sw_flow_entry (&flow, NULL, outline, 1);
  sw_composer_end (&flow, 2.0 * body_pt, SW_KEEP_ALWAYS);
}

static char *
dup_section_title (SwComposer *self,
                   SwSection  *section)
{
  static const char *const keys[] = {
    [SW_SECTION_WARM_UP] = "section.warm-up",
    [SW_SECTION_MAIN] = "section.main",
    [SW_SECTION_COOL_DOWN] = "section.cool-down",
    [SW_SECTION_OWN] = "section.own",
  };
  g_autofree char *title = sw_text_dup_whole (sw_section_get_title (section));

  if (sw_text_is_set (title))
    return g_steal_pointer (&title);

  return g_strdup (sw_phrases_get (self->phrases, keys[sw_section_get_kind (section)]));
}

static void
compose_section_heading (SwComposer *self,
                         const char *title)
{
  double body_pt = self->style.body_pt;
  SwFlow flow;

  if (self->layout == SW_LAYOUT_LARGE_PRINT)
    sw_composer_start_page (self);
  flow = sw_composer_begin (self);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H3", title);
  sw_flow_space (&flow, 0.15 * body_pt);
  sw_flow_box (&flow, flow.left_pt, flow.y_pt, flow.width_pt, 0.7, SW_GREY_RULE);
  sw_flow_space (&flow, 0.7);
  sw_composer_end (&flow, 1.3 * body_pt, SW_KEEP_ALWAYS);
}

/**
 * sw_compose_rest_in:
 * @item: an item of the kind rest
 * @role: of its words
 *
 * What to rest for and how long, without the therapist's note.
 */
void
sw_compose_rest_in (SwFlow     *flow,
                    SwItem     *item,
                    SwTextRole  role)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, role);
  g_autofree char *title = sw_text_dup_whole (sw_item_get_title (item));
  g_autofree char *time = sw_phrases_time (self->phrases, sw_item_get_rest_s (item));
  const char *shown = sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "rest.title");
  g_autofree char *line = sw_phrases_format (self->phrases, "rest.line", "title", shown, "time", time, NULL);
  SwFlow words = *flow;

  sw_flow_entry (flow, sw_item_get_id (item), NULL, 0);
  sw_flow_symbol (flow, SW_SYMBOL_REST, flow->left_pt, flow->y_pt + 0.1 * size_pt, 1.2 * size_pt, SW_GREY_TEXT);
  words.left_pt += 1.8 * size_pt;
  words.width_pt -= 1.8 * size_pt;
  sw_flow_text_in (&words, role, "P", line);
  flow->y_pt = words.y_pt;
}

/**
 * sw_compose_rest:
 * @item: an item of the kind rest
 */
void
sw_compose_rest (SwComposer *self,
                 SwItem     *item)
{
  double body_pt = self->style.body_pt;
  SwFlow flow = sw_composer_begin (self);

  sw_compose_rest_in (&flow, item, SW_TEXT_STRONG);
  sw_composer_end (&flow, 1.3 * body_pt, SW_KEEP_TOGETHER);
  if (sw_text_is_set (sw_item_get_note (item)))
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, sw_item_get_note (item), 0.1 * body_pt, SW_KEEP_TOGETHER);
  sw_composer_set_last_keep (self, SW_KEEP_FREE);
}

static gboolean compose_items (SwComposer  *self,
                               GListModel  *items,
                               SwClient    *client,
                               const char  *heading,
                               GError     **error);

static int
count_exercises (GListModel *items)
{
  int n = 0;

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      n += sw_item_get_kind (item) == SW_ITEM_EXERCISE;
    }

  return n;
}

/* What is said again where the circuit goes on over a page: nobody should have to turn back for the rounds. */
static void
set_circuit_head (SwComposer *self,
                  const char *title,
                  const char *what,
                  const char *rest)
{
  g_autofree char *name = sw_text_dup_short (title);
  g_autofree char *heading = sw_phrases_format (self->phrases, "circuit.continued", "title", name, NULL);
  g_autofree char *text = sw_phrases_sentences (self->phrases, (const char *const[]){ what, rest, NULL });
  SwFlow flow = sw_composer_begin (self);

  sw_flow_text (&flow, SW_TEXT_SMALL, NULL, heading, text);
  sw_flow_space (&flow, 0.9 * self->style.body_pt);
  sw_composer_set_head (self, &flow);
}

static void
compose_circuit_heading (SwComposer *self,
                         SwItem     *circuit,
                         const char *heading)
{
  double body_pt = self->style.body_pt;
  g_autofree char *own = sw_text_dup_whole (sw_item_get_title (circuit));
  const char *title = sw_text_is_set (own) ? own : sw_phrases_get (self->phrases, "circuit.title");
  g_autofree char *rounds = sw_phrases_count (self->phrases, "circuit.rounds", sw_item_get_rounds (circuit), NULL);
  int n_exercises = count_exercises (G_LIST_MODEL (sw_item_get_items (circuit)));
  g_autofree char *what
      = n_exercises > 0 ? sw_phrases_count (self->phrases, "circuit.do", n_exercises, "rounds", rounds, NULL)
                        : sw_phrases_capitalise (rounds);
  g_autofree char *rest = sw_compose_circuit_rest (self->phrases, circuit);
  SwFlow flow = sw_composer_begin (self);

  sw_flow_entry (&flow, sw_item_get_id (circuit), NULL, 0);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, heading, title);
  sw_flow_text_in (&flow, SW_TEXT_STRONG, "P", what);
  if (rest != NULL)
    sw_flow_text_in (&flow, SW_TEXT_BODY, "P", rest);
  sw_composer_end (&flow, 1.5 * body_pt, SW_KEEP_ALWAYS);
  if (sw_text_is_set (sw_item_get_note (circuit)))
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, sw_item_get_note (circuit), 0.1 * body_pt, SW_KEEP_ALWAYS);
  set_circuit_head (self, title, what, rest);
}

/* A rail down the left side shows what belongs to the circuit, over pages too. */
static gboolean
compose_circuit (SwComposer *self,
                 SwItem     *circuit,
                 SwClient   *client,
                 GError    **error)
{
  guint first = self->blocks->len;
  gboolean fine;

  sw_composer_open (self, "Sect");
  self->left_pt += CIRCUIT_INDENT_PT;
  self->width_pt -= CIRCUIT_INDENT_PT;
  self->rail = self->rail_starts = TRUE;
  compose_circuit_heading (self, circuit, self->layout == SW_LAYOUT_COMPACT ? "H3" : "H4");
  fine = compose_items (self, G_LIST_MODEL (sw_item_get_items (circuit)), client,
                        self->layout == SW_LAYOUT_COMPACT ? "H4" : "H5", error);
  sw_composer_set_head (self, NULL);
  self->rail = FALSE;
  self->left_pt -= CIRCUIT_INDENT_PT;
  self->width_pt += CIRCUIT_INDENT_PT;
  sw_composer_close (self);
  sw_composer_keep_together (self, first);
  sw_composer_set_last_keep (self, SW_KEEP_FREE);
  return fine;
}

static gboolean
compose_other (SwComposer  *self,
               SwItem      *item,
               SwClient    *client,
               const char  *heading,
               GError     **error)
{
  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_REST:
      sw_compose_rest (self, item);
      break;
    case SW_ITEM_CIRCUIT:
      return compose_circuit (self, item, client, error);
    case SW_ITEM_SELF_CHECK:
      if (sw_composer_shows (self, SW_PAGE_PART_SELF_CHECK))
        sw_compose_check (self, item, heading);
      break;
    case SW_ITEM_EXERCISE:
    default:
      g_assert_not_reached ();
    }

  return TRUE;
}

static gboolean
compose_items_fully (SwComposer  *self,
                     GListModel  *items,
                     SwClient    *client,
                     const char  *heading,
                     GError     **error)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      gboolean fine = sw_item_get_kind (item) == SW_ITEM_EXERCISE
                          ? sw_compose_exercise (self, item, client, heading, error)
                          : compose_other (self, item, client, heading, error);

      if (!fine)
        return FALSE;
    }

  return TRUE;
}

/* Takes exercises into @briefs, and composes these when something comes that is no card.
 * @section: (nullable): name of the section that begins */
static gboolean
compose_items_briefly (SwComposer  *self,
                       GListModel  *items,
                       const char  *section,
                       GArray      *briefs,
                       SwClient    *client,
                       const char  *heading,
                       GError     **error)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      SwItemKind kind = sw_item_get_kind (item);

      if (kind == SW_ITEM_EXERCISE)
        sw_briefs_add (briefs, item, section);
      else if (kind != SW_ITEM_REST || section != NULL || !sw_briefs_add_rest (briefs, item))
        {
          if (!sw_compose_briefs (self, briefs, client, heading, error))
            return FALSE;
          if (section != NULL)
            compose_section_heading (self, section);
          if (!compose_other (self, item, client, heading, error))
            return FALSE;
        }
      section = NULL;
    }

  return TRUE;
}

/* What belongs together by itself: a circuit. */
static gboolean
compose_items (SwComposer  *self,
               GListModel  *items,
               SwClient    *client,
               const char  *heading,
               GError     **error)
{
  g_autoptr (GArray) briefs = NULL;

  if (self->layout != SW_LAYOUT_COMPACT)
    return compose_items_fully (self, items, client, heading, error);

  briefs = sw_briefs_new ();
  return compose_items_briefly (self, items, NULL, briefs, client, heading, error)
         && sw_compose_briefs (self, briefs, client, heading, error);
}

static gboolean
compose_section (SwComposer  *self,
                 SwSection   *section,
                 GArray      *briefs,
                 SwClient    *client,
                 GError     **error)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));
  g_autofree char *title = dup_section_title (self, section);
  gboolean fine;

  if (g_list_model_get_n_items (items) == 0)
    return TRUE;
  if (self->layout == SW_LAYOUT_COMPACT)
    return compose_items_briefly (self, items, title, briefs, client, "H3", error);

  sw_composer_open (self, "Sect");
  compose_section_heading (self, title);
  fine = compose_items_fully (self, items, client, "H4", error);
  sw_composer_close (self);
  return fine;
}

static gboolean
compose_session (SwComposer  *self,
                 SwSession   *session,
                 SwClient    *client,
                 GError     **error)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  g_autoptr (GArray) briefs = sw_briefs_new ();

  compose_session_heading (self, session);
  if (sw_composer_shows (self, SW_PAGE_PART_TIMELINE))
    sw_compose_timeline (self, session);
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      if (!compose_section (self, section, briefs, client, error))
        return FALSE;
    }
  if (!sw_compose_briefs (self, briefs, client, "H3", error))
    return FALSE;

  sw_composer_set_last_keep (self, SW_KEEP_FREE);
  return TRUE;
}

/**
 * sw_compose_sessions:
 * @programme: whose sessions to tell
 * @error: return location for an error of %SW_HANDOUT_ERROR
 *
 * Returns: whether every exercise could be composed
 */
gboolean
sw_compose_sessions (SwComposer   *self,
                     SwProgramme  *programme,
                     GError      **error)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      gboolean fine;

      sw_composer_open (self, "Sect");
      fine = compose_session (self, session, sw_programme_get_client (programme), error);
      sw_composer_close (self);
      if (!fine)
        return FALSE;
    }

  return TRUE;
}
