/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose element, the same in exercises and programmes. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-dose-xml.h"
#include "sw-xml-values.h"

static const char *const known[] = { "sets",       "repetitions", "hold-seconds", "tempo",       "load",
                                     "rest-seconds", "side",      "directions",   "extra-sets",  "extra-side",
                                     "days-a-week",  "times-a-day", "effort-limit", "pain-limit", NULL };

static gboolean
parse_repetitions (const char *text,
                   int        *low,
                   int        *high)
{
  const char *hyphen = strchr (text, '-');
  g_autofree char *first = hyphen != NULL ? g_strndup (text, (gsize) (hyphen - text)) : g_strdup (text);
  gint64 a, b;

  if (!g_ascii_string_to_signed (first, 10, 0, 200, &a, NULL))
    return FALSE;
  b = a;
  if (hyphen != NULL && !g_ascii_string_to_signed (hyphen + 1, 10, MAX (a, 1), 200, &b, NULL))
    return FALSE;

  /* "0" is a hold; a range from nothing to something is neither. */
  if (a == 0 && b > 0)
    return FALSE;

  *low = (int) a;
  *high = (int) b;
  return TRUE;
}

static gboolean
read_repetitions (const xmlNode  *node,
                  SwDose         *dose,
                  GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, "repetitions");

  if (text == NULL || parse_repetitions (text, &dose->reps_low, &dose->reps_high))
    return TRUE;

  sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
                    _ ("“repetitions” must be a number from 0 to 200 or a range such as “8-12”, not “%s”. Correct it and open "
                       "the file again."),
                    text);
  return FALSE;
}

static gboolean
read_tempo (const xmlNode  *node,
            SwDose         *dose,
            GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, "tempo");

  if (text == NULL || sw_tempo_from_string (text, &dose->tempo))
    return TRUE;

  sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
                    _ ("“tempo” must be seconds of lowering, pause, lifting and pause such as “3-1-2-0”, not “%s”. Correct it "
                       "and open the file again."),
                    text);
  return FALSE;
}

static gboolean
read_sides (const xmlNode  *node,
            SwDose         *dose,
            GError        **error)
{
  int side, extra_side;

  if (!sw_xml_read_term (node, "side", SW_TYPE_SIDE, SW_SIDE_BOTH, &side, error)
      || !sw_xml_read_term (node, "extra-side", SW_TYPE_BODY_SIDE, SW_BODY_SIDE_NONE, &extra_side, error)
      || !sw_xml_read_int (node, "extra-sets", 0, 10, 0, &dose->extra_sets, error))
    return FALSE;

  dose->side = (SwSide) side;
  dose->extra_side = (SwBodySide) extra_side;
  if ((dose->extra_sets > 0) == (extra_side != SW_BODY_SIDE_NONE))
    return TRUE;

  sw_xml_set_error (error, node, SW_XML_ERROR_INVALID,
                    _ ("“extra-sets” and “extra-side” go together: how many more sets, and for which side. Write both or "
                       "neither."));
  return FALSE;
}

/**
 * sw_dose_read:
 * @node: a dose element
 * @dose: (out): what it says; absent attributes are those of sw_dose_init(). Left alone on failure
 * @extras: (element-type utf8): takes what is unknown, as "dose/..."
 *
 * Returns: FALSE with a #SwXmlError when something in it is outside the limits of #SwDose
 */
gboolean
sw_dose_read (xmlNode    *node,
              SwDose     *dose,
              GPtrArray  *extras,
              GError    **error)
{
  g_autoptr (GError) range = NULL;
  SwDose read;

  sw_dose_init (&read);
  if (!sw_xml_read_int (node, "sets", 1, 20, read.sets, &read.sets, error)
      || !read_repetitions (node, &read, error)
      || !sw_xml_read_int (node, "hold-seconds", 0, 600, 0, &read.hold_s, error)
      || !read_tempo (node, &read, error)
      || !sw_xml_read_load (node, "load", &read.load, error)
      || !sw_xml_read_int (node, "rest-seconds", 0, 900, 0, &read.rest_s, error)
      || !read_sides (node, &read, error)
      || !sw_xml_read_int (node, "directions", 1, 8, 1, &read.directions, error)
      || !sw_xml_read_int (node, "days-a-week", 0, 7, 0, &read.days_a_week, error)
      || !sw_xml_read_int (node, "times-a-day", 1, 10, 1, &read.times_a_day, error)
      || !sw_xml_read_int (node, "effort-limit", 0, 10, 0, &read.effort_limit, error)
      || !sw_xml_read_int (node, "pain-limit", 0, 10, -1, &read.pain_limit, error))
    return FALSE;

  if (!sw_dose_check (&read, &range))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_RANGE, "%s", range->message);
      return FALSE;
    }

  sw_extras_add_attributes (extras, "dose", node, known);
  sw_extras_add_children (extras, "dose", node);
  *dose = read;
  return TRUE;
}

static void
write_int (SwXmlWriter *writer,
           const char  *name,
           int          value,
           int          usual)
{
  if (value != usual)
    sw_xml_writer_attribute_int (writer, name, value);
}

static void
write_repetitions (SwXmlWriter  *writer,
                   const SwDose *dose,
                   const SwDose *usual)
{
  g_autofree char *range = NULL;

  if (dose->reps_low == usual->reps_low && dose->reps_high == usual->reps_high)
    return;

  if (dose->reps_low == dose->reps_high)
    {
      sw_xml_writer_attribute_int (writer, "repetitions", dose->reps_low);
      return;
    }

  range = g_strdup_printf ("%d-%d", dose->reps_low, dose->reps_high);
  sw_xml_writer_attribute (writer, "repetitions", range);
}

/**
 * sw_dose_write:
 * @dose: a dose that passes sw_dose_check()
 * @extras: (array zero-terminated=1): the extras of the object it belongs to
 * @writer: where to
 *
 * Values that sw_dose_init() has too are left out.
 */
void
sw_dose_write (const SwDose       *dose,
               const char * const *extras,
               SwXmlWriter        *writer)
{
  g_autofree char *tempo = dose->tempo.set ? sw_tempo_to_string (&dose->tempo) : NULL;
  SwDose usual;

  sw_dose_init (&usual);
  sw_xml_writer_open (writer, "dose");
  write_int (writer, "sets", dose->sets, usual.sets);
  write_repetitions (writer, dose, &usual);
  write_int (writer, "hold-seconds", dose->hold_s, usual.hold_s);
  sw_xml_writer_attribute (writer, "tempo", tempo);
  sw_xml_write_load (writer, "load", dose->load);
  write_int (writer, "rest-seconds", dose->rest_s, usual.rest_s);
  if (dose->side != usual.side)
    sw_xml_write_term (writer, "side", SW_TYPE_SIDE, dose->side);
  write_int (writer, "directions", dose->directions, usual.directions);
  if (dose->extra_sets > 0)
    {
      sw_xml_writer_attribute_int (writer, "extra-sets", dose->extra_sets);
      sw_xml_write_term (writer, "extra-side", SW_TYPE_BODY_SIDE, dose->extra_side);
    }
  write_int (writer, "days-a-week", dose->days_a_week, usual.days_a_week);
  write_int (writer, "times-a-day", dose->times_a_day, usual.times_a_day);
  write_int (writer, "effort-limit", dose->effort_limit, usual.effort_limit);
  write_int (writer, "pain-limit", dose->pain_limit, usual.pain_limit);
  sw_extras_write_attributes (extras, "dose", writer);
  sw_extras_write_nodes (extras, "dose", writer);
  sw_xml_writer_close (writer);
}
