/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is needed for the exercises: each thing as picture and words. */
#include "config.h"

#include "sw-compose.h"
#include "sw-dose-words.h"
#include "sw-units.h"

/* In body text's sizes: the side of a picture, the least width of a thing with its words, and between two. */
#define PICTURE 1.7
#define LEAST_WIDTH 11.0
#define GAP 0.15

/* So long a hold is timed by a clock, a shorter one is counted. */
#define LEAST_TIMED_S 10

/* A thing that is needed: a clock or a piece of equipment. */
typedef struct
{
  gboolean clock;
  SwEquipment equipment;
} Need;

/* @exercises: (element-type SwExercise) */
static SwSet
collect_equipment (GPtrArray *exercises)
{
  SwSet equipment = 0;

  for (guint i = 0; i < exercises->len; i++)
    equipment |= sw_exercise_get_facts (exercises->pdata[i])->equipment;

  return equipment;
}

static gboolean
is_timed (SwItem *item)
{
  const SwDose *dose = sw_item_get_dose (item);

  if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
    return dose->hold_s >= LEAST_TIMED_S || (dose->rest_s > 0 && dose->sets + dose->extra_sets > 1);
  return (sw_item_get_kind (item) == SW_ITEM_REST || sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
         && sw_item_get_rest_s (item) > 0;
}

/* Returns: (element-type Need): in the order of the page */
static GArray *
collect_needs (SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
  SwSet equipment = collect_equipment (exercises);
  GArray *needs = g_array_new (FALSE, FALSE, sizeof (Need));
  gboolean timed = FALSE;

  for (int thing = 0; thing < sw_term_get_n_values (SW_TYPE_EQUIPMENT); thing++)
    if ((equipment & SW_SET (thing)) != 0)
      g_array_append_val (needs, ((Need){ FALSE, (SwEquipment) thing }));
  for (guint i = 0; i < items->len; i++)
    timed = timed || is_timed (items->pdata[i]);
  if (timed)
    g_array_append_val (needs, ((Need){ TRUE, 0 }));
  return needs;
}

/* What a dose's load is that of. */
static const SwEquipment weights[] = { SW_EQUIPMENT_DUMBBELL, SW_EQUIPMENT_ANKLE_WEIGHT, SW_EQUIPMENT_CABLE };
static const SwEquipment pulls[] = { SW_EQUIPMENT_BAND, SW_EQUIPMENT_LOOP_BAND, SW_EQUIPMENT_CABLE };

/* Returns: whether the load of an exercise that needs @equipment is that of @thing: no other thing can have it */
static gboolean
is_load_of (SwLoadUnit  unit,
            SwSet       equipment,
            SwEquipment thing)
{
  const SwEquipment *things = unit == SW_LOAD_NEWTON ? pulls : weights;
  SwSet loaded = 0;

  if (unit == SW_LOAD_NONE)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (weights); i++)
    loaded |= equipment & SW_SET (things[i]);
  return loaded == SW_SET (thing);
}

static double
get_load_kg (SwLoad load)
{
  return load.unit == SW_LOAD_LB ? sw_kg_from_lb (load.value) : load.value;
}

/* A load, and whether it is needed twice. */
typedef struct
{
  SwLoad load;
  gboolean pair;
} NeededLoad;

static int
compare_loads (gconstpointer a,
               gconstpointer b)
{
  const NeededLoad *one = a;
  const NeededLoad *other = b;
  double first = get_load_kg (one->load);
  double second = get_load_kg (other->load);

  /* Two of them serve for one. */
  return first < second ? -1 : first > second ? 1 : other->pair - one->pair;
}

/* Whether the load is held in each hand, as the picture has it. */
static gboolean
is_pair (SwExercise *exercise)
{
  SwFigureSpec *spec = sw_exercise_get_figure (exercise);
  const SwFigureContent *content = spec != NULL ? sw_figure_spec_get_content (spec) : NULL;
  int n = 0;

  for (int i = 0; content != NULL && i < content->n_props; i++)
    n += content->props[i].kind == SW_FIGURE_PROP_DUMBBELL || content->props[i].kind == SW_FIGURE_PROP_CUFF;
  return n == 2;
}

/* Returns: (nullable): every load the programme states for a thing, from light to heavy */
static char *
dup_loads (SwComposer  *self,
           SwProgramme *programme,
           SwEquipment  thing)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GArray) loads = g_array_new (FALSE, FALSE, sizeof (NeededLoad));
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  SwUnits units = sw_client_get_units (sw_programme_get_client (programme));

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      const SwDose *dose = sw_item_get_dose (item);

      if (sw_item_get_kind (item) == SW_ITEM_EXERCISE
          && is_load_of (dose->load.unit, sw_exercise_get_facts (sw_item_get_exercise (item))->equipment, thing))
        g_array_append_val (loads, ((NeededLoad){ dose->load, is_pair (sw_item_get_exercise (item)) }));
    }
  if (loads->len == 0)
    return NULL;

  g_array_sort (loads, compare_loads);
  for (guint i = 0; i < loads->len; i++)
    {
      const NeededLoad *needed = &g_array_index (loads, NeededLoad, i);
      g_autofree char *load = NULL;

      if (i > 0 && get_load_kg (needed->load) == get_load_kg (needed[-1].load))
        continue;
      load = sw_load_words (self->phrases, needed->load, units);
      g_ptr_array_add (words, needed->pair ? sw_phrases_format (self->phrases, "front.need-pair", "load", load, NULL)
                                           : g_steal_pointer (&load));
    }
  g_ptr_array_add (words, NULL);
  return sw_phrases_list (self->phrases, (const char *const *) words->pdata);
}

/* @items: (element-type SwItem): exercises */
static gboolean
needs_thing (GPtrArray   *items,
             SwEquipment  thing)
{
  for (guint i = 0; i < items->len; i++)
    if ((sw_exercise_get_facts (sw_item_get_exercise (items->pdata[i]))->equipment & SW_SET (thing)) != 0)
      return TRUE;

  return FALSE;
}

/* Returns: (nullable): the sessions that need a thing; NULL when each does or one has no name */
static char *
dup_sessions (SwComposer  *self,
              SwProgramme *programme,
              SwEquipment  thing)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_compose_collect_exercises (session);
      g_autofree char *title = sw_text_dup_short (sw_session_get_title (session));

      if (!needs_thing (items, thing))
        continue;
      if (*title == '\0')
        return NULL;
      g_ptr_array_add (titles, g_steal_pointer (&title));
    }
  if (titles->len == n_sessions)
    return NULL;
  g_ptr_array_add (titles, NULL);
  return sw_phrases_list (self->phrases, (const char *const *) titles->pdata);
}

/* "a hand weight: 2 kg and 2 × 5 kg (Gym)" */
static char *
dup_thing (SwComposer  *self,
           SwProgramme *programme,
           SwEquipment  thing)
{
  g_auto (GStrv) names = sw_compose_equipment (self->phrases, SW_SET (thing));
  g_autofree char *loads = dup_loads (self, programme, thing);
  g_autofree char *sessions = dup_sessions (self, programme, thing);
  g_autofree char *words = loads == NULL ? g_strdup (names[0])
                                         : sw_phrases_format (self->phrases, "front.need-loads", "thing", names[0],
                                                              "loads", loads, NULL);

  if (sessions == NULL)
    return g_steal_pointer (&words);
  return sw_phrases_format (self->phrases, "front.need-in", "thing", words, "sessions", sessions, NULL);
}

/* Picture and words, each halfway down the taller of them. */
static void
add_thing (SwFlow      *flow,
           SwTag       *list,
           SwProgramme *programme,
           const Need  *need)
{
  SwComposer *self = flow->composer;
  g_autofree char *words = need->clock ? g_strdup (sw_phrases_get (self->phrases, "front.need-clock"))
                                       : dup_thing (self, programme, need->equipment);
  double picture_pt = PICTURE * self->style.body_pt;
  double indent_pt = picture_pt + 0.6 * self->style.body_pt;
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwFlow column = *flow;
  guint first = flow->block->pieces->len;
  double spare_pt;
  SwPiece *piece;

  column.left_pt += indent_pt;
  column.width_pt -= indent_pt;
  sw_flow_text (&column, SW_TEXT_BODY, sw_tags_add (&self->tags, item, "LBody"), NULL, words);
  spare_pt = picture_pt - (column.y_pt - flow->y_pt);
  for (guint i = first; i < flow->block->pieces->len && spare_pt > 0.0; i++)
    g_array_index (flow->block->pieces, SwPiece, i).y_pt += spare_pt / 2.0;

  if (need->clock)
    sw_flow_symbol (flow, SW_SYMBOL_REST, flow->left_pt + 0.1 * picture_pt,
                    flow->y_pt - MIN (0.0, spare_pt) / 2.0 + 0.1 * picture_pt, 0.8 * picture_pt, SW_GREY_TEXT);
  else
    {
      piece = sw_block_add (flow->block, SW_PIECE_EQUIPMENT, NULL, flow->left_pt,
                            flow->y_pt - MIN (0.0, spare_pt) / 2.0, picture_pt, picture_pt);
      piece->equipment = need->equipment;
    }
  flow->y_pt = MAX (column.y_pt, flow->y_pt + picture_pt);
}

static SwTag *
add_list (SwComposer *self)
{
  SwTag *list = sw_tags_add (&self->tags, self->parent, "L");

  list->numbering = "Disc";
  return list;
}

static void
add_heading (SwFlow *flow,
             guint   n_needs)
{
  SwComposer *self = flow->composer;

  sw_flow_text_in (flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "front.need"));
  sw_flow_space (flow, 0.15 * self->style.body_pt);
  if (n_needs == 0)
    sw_flow_text_in (flow, SW_TEXT_BODY, "P", sw_phrases_get (self->phrases, "front.need-nothing"));
}

/**
 * sw_compose_count_needs:
 *
 * Returns: how many things are needed
 */
int
sw_compose_count_needs (SwProgramme *programme)
{
  g_autoptr (GArray) needs = collect_needs (programme);

  return (int) needs->len;
}

/**
 * sw_compose_needs_in:
 * @flow: a column
 * @programme: the programme
 *
 * Heading and things, one below another.
 */
void
sw_compose_needs_in (SwFlow      *flow,
                     SwProgramme *programme)
{
  SwComposer *self = flow->composer;
  g_autoptr (GArray) needs = collect_needs (programme);
  SwTag *list;

  add_heading (flow, needs->len);
  if (needs->len == 0)
    return;

  list = add_list (self);
  for (guint i = 0; i < needs->len; i++)
    {
      add_thing (flow, list, programme, &g_array_index (needs, Need, i));
      sw_flow_space (flow, GAP * self->style.body_pt);
    }
}

/**
 * sw_compose_needs:
 * @space_pt: white space before
 *
 * Heading and things as blocks of their own, as many things beside one another as have room.
 */
void
sw_compose_needs (SwComposer  *self,
                  SwProgramme *programme,
                  double       space_pt)
{
  double body_pt = self->style.body_pt;
  g_autoptr (GArray) needs = collect_needs (programme);
  double least_pt = LEAST_WIDTH * body_pt;
  guint n_columns
      = MAX (1, (guint) ((self->width_pt + self->style.column_gap_pt) / (least_pt + self->style.column_gap_pt)));
  double width_pt = (self->width_pt - (n_columns - 1) * self->style.column_gap_pt) / n_columns;
  SwFlow row = sw_composer_begin (self);
  SwTag *list;
  double bottom_pt = 0.0;

  add_heading (&row, needs->len);
  sw_composer_end (&row, space_pt, needs->len > 0 ? SW_KEEP_ALWAYS : SW_KEEP_FREE);
  if (needs->len == 0)
    return;

  list = add_list (self);
  for (guint i = 0; i < needs->len; i++)
    {
      gboolean last = i + 1 == needs->len;
      SwFlow cell;

      if (i % n_columns == 0)
        {
          row = sw_composer_begin (self);
          bottom_pt = 0.0;
        }
      cell = row;
      cell.left_pt += i % n_columns * (width_pt + self->style.column_gap_pt);
      cell.width_pt = width_pt;
      add_thing (&cell, list, programme, &g_array_index (needs, Need, i));
      bottom_pt = MAX (bottom_pt, cell.y_pt);
      if ((i + 1) % n_columns == 0 || last)
        {
          row.y_pt = bottom_pt;
          sw_composer_end (&row, GAP * body_pt, last ? SW_KEEP_FREE : SW_KEEP_TOGETHER);
        }
    }
}
