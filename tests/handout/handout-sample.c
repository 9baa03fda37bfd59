/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An invented client, a retired gardener after an ankle sprain, and a programme that uses every kind of item. Built
 * in code so that the tests of the pages do not depend on the catalogue. */
#include "config.h"

#include "handout-sample.h"

typedef struct
{
  const char *id;
  const char *name;
  const char *purpose;
  const char *set_up;
  const char *steps[6];
  const char *form[4];
  const char *errors[3];
  const char *feel;
  const char *easier;
  const char *harder;
  SwSet equipment;
  SwSet cautions;
  const char *dose;
} Entry;

static const Entry entries[] = {
  {
      .id = "ankle-rocks",
      .name = "Ankle rocks",
      .purpose = "Loosens your ankles so that each step rolls more easily.",
      .set_up = "Sit tall on the front half of the chair. Put both feet flat on the floor.",
      .steps = { "Lift your heels and press your toes into the floor.", "Lower your heels slowly.",
                 "Lift the front of both feet and keep your heels down.", "Lower your feet and start again." },
      .form = { "Your knees stay still.", "Both feet move at the same pace." },
      .errors = { "Rushing. Count one, two on the way up and on the way down." },
      .feel = "Front and back of your lower legs",
      .easier = "Rock one foot at a time.",
      .harder = "Stand at the counter and rock from heels to toes.",
      .equipment = SW_SET (SW_EQUIPMENT_CHAIR),
      .dose = "1 x 15",
  },
  {
      .id = "heel-raise-at-counter",
      .name = "Heel raise at the counter",
      .purpose = "Strengthens your calves for walking, stairs and getting up from kneeling.",
      .set_up = "Stand facing the counter with your feet hip-width apart. Rest both hands lightly on it.",
      .steps = { "Press through the balls of your feet.", "Rise onto your toes as high as you can.",
                 "Pause at the top.", "Lower your heels slowly to the floor." },
      .form = { "Your weight stays over your big and second toes.", "Your knees stay straight but not locked.",
                "You rise straight up, not forward." },
      .errors = { "Leaning on your hands. Use them for balance only.",
                  "Rolling onto the outside of your feet. Keep your big toes pressed down." },
      .feel = "Back of your lower legs",
      .easier = "Do it sitting, with your hands on your knees.",
      .harder = "Put more weight on the weaker leg as you lower.",
      .equipment = SW_SET (SW_EQUIPMENT_COUNTER),
      .cautions = SW_SET (SW_CAUTION_FULL_WEIGHT_BEARING) | SW_SET (SW_CAUTION_UNSUPPORTED_STANDING),
      .dose = "3 x 8-12, each side, rest 60 s, tempo 2-1-2-0, +1 set right, effort 6, pain 3",
  },
  {
      .id = "one-leg-stand",
      .name = "Stand on one leg",
      .purpose = "Trains your balance for uneven ground in the garden.",
      .set_up = "Stand tall beside the counter. Keep one hand just above it.",
      .steps = { "Shift your weight onto one leg.", "Lift the other foot a little off the floor.",
                 "Look at a spot straight ahead and hold.", "Put your foot down and rest." },
      .form = { "Your hips stay level.", "Your standing knee is soft, not locked." },
      .errors = { "Hooking the lifted leg on the other. Keep the legs apart." },
      .feel = "The foot, ankle and hip of the leg you stand on",
      .easier = "Keep your fingertips on the counter, or keep your toes on the floor.",
      .harder = "Turn your head slowly from side to side while you hold.",
      .equipment = SW_SET (SW_EQUIPMENT_COUNTER),
      .cautions = SW_SET (SW_CAUTION_ONE_LEG_STANDING) | SW_SET (SW_CAUTION_UNSUPPORTED_STANDING),
      .dose = "3 x hold 30 s, each side, rest 30 s, 2 times a day",
  },
  {
      .id = "sit-to-stand",
      .name = "Sit to stand",
      .purpose = "Builds the leg strength you need to get up from a chair and from a low stool.",
      .set_up = "Put the chair against a wall. Sit on the front half with your feet under your knees.",
      .steps = { "Lean forward from your hips until your nose is over your toes.",
                 "Push through your feet and stand up.", "Stand tall and breathe out.",
                 "Reach your hips back and sit down slowly." },
      .form = { "Your knees point the same way as your toes.", "Your weight is even on both feet." },
      .errors = { "Dropping into the chair. Take three seconds to sit down.",
                  "Letting the knees fall inwards. Push them gently apart." },
      .feel = "Front of your thighs and your buttocks",
      .easier = "Push with your hands on the seat, or put a firm cushion on it.",
      .harder = "Hold a weight close to your chest.",
      .equipment = SW_SET (SW_EQUIPMENT_CHAIR) | SW_SET (SW_EQUIPMENT_DUMBBELL),
      .cautions = SW_SET (SW_CAUTION_BREATH_HOLDING),
      .dose = "2 x 10, 2.5 kg, rest 90 s, effort 7",
  },
  {
      .id = "calf-stretch-wall",
      .name = "Calf stretch at the wall",
      .purpose = "Lets your ankle bend further when you crouch or go downstairs.",
      .set_up = "Stand facing a wall with one foot behind the other. Put both hands on the wall.",
      .steps = { "Keep your back heel down and that knee straight.",
                 "Bend your front knee until you feel a stretch.", "Hold and breathe." },
      .form = { "Both feet point straight at the wall.", "Your back heel stays down." },
      .errors = { "Letting the back foot turn out. Line it up with your knee." },
      .feel = "Back of the lower leg that is behind",
      .easier = "Stand closer to the wall.",
      .harder = "Step the back foot further back.",
      .equipment = SW_SET (SW_EQUIPMENT_WALL),
      .cautions = SW_SET (SW_CAUTION_LONG_HOLD) | SW_SET (SW_CAUTION_CALF_STRETCH),
      .dose = "2 x hold 30 s, each side",
  },
};

static SwExercise *
make_exercise (const Entry  *entry,
               SwFigureSpec *figure)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  SwExerciseText *text = sw_exercise_text_new ("en");
  SwExerciseFacts facts = {
    .id = (char *) entry->id,
    .revision = 1,
    .region = SW_REGION_ANKLE,
    .equipment = entry->equipment,
    .cautions = entry->cautions,
    .pace_s = 4.0,
  };

  sw_dose_init (&facts.dose);
  g_free (text->name);
  g_free (text->purpose);
  g_free (text->set_up);
  g_strfreev (text->steps);
  g_strfreev (text->form_points);
  g_strfreev (text->errors);
  text->name = g_strdup (entry->name);
  text->purpose = g_strdup (entry->purpose);
  text->set_up = g_strdup (entry->set_up);
  text->steps = g_strdupv ((char **) entry->steps);
  text->form_points = g_strdupv ((char **) entry->form);
  text->errors = g_strdupv ((char **) entry->errors);
  text->feel = g_strdup (entry->feel);
  text->easier = g_strdup (entry->easier);
  text->harder = g_strdup (entry->harder);
  g_ptr_array_add (texts, text);

  return sw_exercise_new (&facts, texts, figure, NULL);
}

static SwItem *
make_item (const Entry  *entry,
           const char   *item_id,
           SwFigureSpec *figure)
{
  g_autoptr (SwExercise) exercise = make_exercise (entry, figure);
  g_autoptr (GError) error = NULL;
  SwItem *item = sw_item_new_for_exercise (exercise, item_id);
  SwDose neutral;
  SwDose dose;

  sw_dose_init (&neutral);
  sw_dose_from_line (entry->dose, &neutral, &dose, &error);
  g_assert_no_error (error);
  g_object_set (item, "dose", &dose, NULL);
  return item;
}

static void
append (SwSection *section,
        SwItem    *item)
{
  g_list_store_append (sw_section_get_items (section), item);
  g_object_unref (item);
}

static void
set_people (SwProgramme *programme)
{
  g_object_set (programme, "title", "Steady on your feet", NULL);
  g_object_set (sw_programme_get_client (programme),
                "name", "Robin Alder",
                "goals", "Walk to the allotment and back without a stick.",
                "precautions", SW_SET (SW_PRECAUTION_HIGH_BLOOD_PRESSURE) | SW_SET (SW_PRECAUTION_FALL_RISK),
                "equipment", SW_SET (SW_EQUIPMENT_CHAIR) | SW_SET (SW_EQUIPMENT_COUNTER),
                "minutes", 25,
                "units", SW_UNITS_BOTH,
                "text-points", 14.0,
                "language", "en",
                NULL);
  g_object_set (sw_programme_get_clinic (programme),
                "name", "Millbrook Physiotherapy",
                "therapist", "Sam Hollis",
                "phone", "01632 960123",
                "email", "hello@millbrook.example.org",
                "address", "4 Weir Lane, Millbrook",
                "emergency-number", "112",
                NULL);
}

static SwItem *
make_rest (void)
{
  SwItem *rest = sw_item_new (SW_ITEM_REST, "i6");

  g_object_set (rest, "title", "Sit down and get your breath back", "rest-seconds", 90, NULL);
  return rest;
}

static SwItem *
make_circuit (SwFigureSpec *figure)
{
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "i7");
  g_autoptr (SwItem) first = make_item (&entries[0], "i8", figure);
  g_autoptr (SwItem) second = make_item (&entries[3], "i9", figure);

  g_object_set (circuit, "title", "Up and down", "rounds", 2, "rest-seconds", 60, NULL);
  g_list_store_append (sw_item_get_items (circuit), first);
  g_list_store_append (sw_item_get_items (circuit), second);
  return circuit;
}

static SwItem *
make_check (void)
{
  SwItem *check = sw_item_new (SW_ITEM_SELF_CHECK, "i10");
  SwDose dose;

  sw_dose_init (&dose);
  dose.side = SW_SIDE_EACH;
  g_object_set (check, "title", "How long can you stand on one leg beside the counter?", "measure",
                SW_MEASURE_SECONDS, "dose", &dose, NULL);
  return check;
}

/* Somebody who sits and, if anything, presses the head back or breathes. */
SwFigureSpec *
handout_sample_new_figure (SwFigureMotion motion,
                           SwFigureBreath breath)
{
  g_auto (SwFigureContent) content;

  sw_figure_content_init (&content);
  content.n_poses = 1;
  content.poses[0].base = SW_FIGURE_BASE_SITTING;
  content.poses[0].breath = breath;
  content.motion = motion;
  content.shown[0] = SW_FIGURE_MARK_HEAD;
  content.toward[0] = SW_FIGURE_WAY_BACK;
  return sw_figure_spec_new_take (&content);
}

/**
 * handout_sample_new:
 * @figure: (nullable): the picture every exercise gets
 *
 * Returns: (transfer full): a programme with each kind of item
 */
SwProgramme *
handout_sample_new (SwFigureSpec *figure)
{
  SwProgramme *programme = sw_programme_new ("5e7a11c0-3c55-4d5e-9a4b-0f6d3b2a9c11");
  g_autoptr (SwSession) session
      = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY) | SW_SET (SW_DAY_WEDNESDAY) | SW_SET (SW_DAY_FRIDAY));
  g_autoptr (SwSection) warm_up = sw_section_new (SW_SECTION_WARM_UP, "");
  g_autoptr (SwSection) main_work = sw_section_new (SW_SECTION_MAIN, "");
  g_autoptr (SwSection) cool_down = sw_section_new (SW_SECTION_COOL_DOWN, "");
  SwItem *noted = make_item (&entries[1], "i2", figure);

  set_people (programme);
  g_object_set (noted, "note", "Your right calf is the weaker one, so it gets one set more for now.", NULL);
  append (warm_up, make_item (&entries[0], "i1", figure));
  append (main_work, noted);
  append (main_work, make_item (&entries[2], "i3", figure));
  append (main_work, make_rest ());
  append (main_work, make_item (&entries[3], "i4", figure));
  append (main_work, make_circuit (figure));
  append (cool_down, make_item (&entries[4], "i5", figure));
  append (cool_down, make_check ());

  g_list_store_append (sw_session_get_sections (session), warm_up);
  g_list_store_append (sw_session_get_sections (session), main_work);
  g_list_store_append (sw_session_get_sections (session), cool_down);
  g_list_store_append (sw_programme_get_sessions (programme), session);
  return programme;
}

/**
 * handout_sample_new_long:
 * @n_exercises: how many
 * @figure: (nullable): the picture every exercise gets
 *
 * Returns: (transfer full): a programme of one session of that many exercises
 */
SwProgramme *
handout_sample_new_long (guint         n_exercises,
                         SwFigureSpec *figure)
{
  SwProgramme *programme = sw_programme_new ("5e7a11c0-3c55-4d5e-9a4b-0f6d3b2a9c11");
  g_autoptr (SwSession) session = sw_session_new ("Long day", SW_SET (SW_DAY_MONDAY));
  g_autoptr (SwSection) section = sw_section_new (SW_SECTION_MAIN, "");

  set_people (programme);
  for (guint i = 0; i < n_exercises; i++)
    {
      g_autofree char *id = g_strdup_printf ("i%u", i);

      append (section, make_item (&entries[i % G_N_ELEMENTS (entries)], id, figure));
    }
  g_list_store_append (sw_session_get_sections (session), section);
  g_list_store_append (sw_programme_get_sessions (programme), session);
  return programme;
}
