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

static SwSet
collect_equipment (SwProgramme *programme)
{
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
  SwSet equipment = 0;

  for (guint i = 0; i < exercises->len; i++)
    equipment |= sw_exercise_get_facts (g_ptr_array_index (exercises, i))->equipment;

  return equipment;
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

static int
compare_loads (gconstpointer a,
               gconstpointer b)
{
  double first = get_load_kg (*(const SwLoad *) a);
  double second = get_load_kg (*(const SwLoad *) b);

  return first < second ? -1 : first > second;
}

/* Returns: (nullable): every load the programme states for a thing, from light to heavy */
static char *
dup_loads (SwComposer  *self,
           SwProgramme *programme,
           SwEquipment  thing)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (GArray) loads = g_array_new (FALSE, FALSE, sizeof (SwLoad));
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  SwUnits units = sw_client_get_units (sw_programme_get_client (programme));

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      const SwDose *dose = sw_item_get_dose (item);

      if (sw_item_get_kind (item) == SW_ITEM_EXERCISE
          && is_load_of (dose->load.unit, sw_exercise_get_facts (sw_item_get_exercise (item))->equipment, thing))
        g_array_append_val (loads, dose->load);
    }
  if (loads->len == 0)
    return NULL;

  g_array_sort (loads, compare_loads);
  for (guint i = 0; i < loads->len; i++)
    {
      g_autofree char *load = sw_load_words (self->phrases, g_array_index (loads, SwLoad, i), units);

      if (words->len == 0 || !g_str_equal (g_ptr_array_index (words, words->len - 1), load))
        g_ptr_array_add (words, g_steal_pointer (&load));
    }
  g_ptr_array_add (words, NULL);
  return sw_phrases_list (self->phrases, (const char *const *) words->pdata);
}

/* "a hand weight: 2 kg and 5 kg" */
static char *
dup_thing (SwComposer  *self,
           SwProgramme *programme,
           SwEquipment  thing)
{
  g_auto (GStrv) words = sw_compose_equipment (self->phrases, SW_SET (thing));
  g_autofree char *loads = dup_loads (self, programme, thing);

  if (loads == NULL)
    return g_strdup (words[0]);
  return sw_phrases_format (self->phrases, "front.need-loads", "thing", words[0], "loads", loads, NULL);
}

/* Picture and words, each halfway down the taller of them. */
static void
add_thing (SwFlow      *flow,
           SwTag       *list,
           SwProgramme *programme,
           SwEquipment  equipment)
{
  SwComposer *self = flow->composer;
  g_autofree char *words = dup_thing (self, programme, equipment);
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

  piece = sw_block_add (flow->block, SW_PIECE_EQUIPMENT, NULL, flow->left_pt, flow->y_pt - MIN (0.0, spare_pt) / 2.0,
                        picture_pt, picture_pt);
  piece->equipment = equipment;
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
             SwSet   equipment)
{
  SwComposer *self = flow->composer;

  sw_flow_text_in (flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "front.need"));
  sw_flow_space (flow, 0.15 * self->style.body_pt);
  if (equipment == 0)
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
  SwSet equipment = collect_equipment (programme);
  int n = 0;

  for (int thing = 0; thing < sw_term_get_n_values (SW_TYPE_EQUIPMENT); thing++)
    n += (equipment & SW_SET (thing)) != 0;
  return n;
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
  SwSet equipment = collect_equipment (programme);
  SwTag *list;

  add_heading (flow, equipment);
  if (equipment == 0)
    return;

  list = add_list (self);
  for (int thing = 0; thing < sw_term_get_n_values (SW_TYPE_EQUIPMENT); thing++)
    if ((equipment & SW_SET (thing)) != 0)
      {
        add_thing (flow, list, programme, (SwEquipment) thing);
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
  SwSet equipment = collect_equipment (programme);
  double least_pt = LEAST_WIDTH * body_pt;
  int n_columns = MAX (1, (int) ((self->width_pt + self->style.column_gap_pt) / (least_pt + self->style.column_gap_pt)));
  double width_pt = (self->width_pt - (n_columns - 1) * self->style.column_gap_pt) / n_columns;
  SwFlow row = sw_composer_begin (self);
  SwTag *list = NULL;
  int n = 0;
  double bottom_pt = 0.0;

  add_heading (&row, equipment);
  sw_composer_end (&row, space_pt, equipment != 0 ? SW_KEEP_ALWAYS : SW_KEEP_FREE);
  for (int thing = 0; thing < sw_term_get_n_values (SW_TYPE_EQUIPMENT); thing++)
    {
      SwFlow cell;

      if ((equipment & SW_SET (thing)) == 0)
        continue;
      if (list == NULL)
        list = add_list (self);
      if (n % n_columns == 0)
        {
          row = sw_composer_begin (self);
          bottom_pt = 0.0;
        }
      cell = row;
      cell.left_pt += n % n_columns * (width_pt + self->style.column_gap_pt);
      cell.width_pt = width_pt;
      add_thing (&cell, list, programme, (SwEquipment) thing);
      bottom_pt = MAX (bottom_pt, cell.y_pt);
      n++;
      equipment &= ~SW_SET (thing);
      if (n % n_columns == 0 || equipment == 0)
        {
          row.y_pt = bottom_pt;
          sw_composer_end (&row, GAP * body_pt, equipment != 0 ? SW_KEEP_TOGETHER : SW_KEEP_FREE);
        }
    }
}
