/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figures of all shipped exercises: written angles against published norms (read by libxml2 alone), and the solved
 * poses, both sides, against ranges, floor, held places and balance. */
#include "config.h"

#include <libxml/parser.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-figure.h"
#include "sw-xml.h"

/* Fails the test and goes on, so that one run names every fault. */
#define complain(...)              \
  G_STMT_START                      \
  {                                 \
    g_test_message (__VA_ARGS__);   \
    g_test_fail ();                 \
  }                                 \
  G_STMT_END

static const xmlNode *
first_child (const xmlNode *parent,
             const char    *name)
{
  for (const xmlNode *node = parent->children; node != NULL; node = node->next)
    if (node->type == XML_ELEMENT_NODE && strcmp ((const char *) node->name, name) == 0)
      return node;

  return NULL;
}

/* What @pose itself writes for one angle of one side; @side NULL for the spine. */
static gboolean
find_angle (const xmlNode *pose,
            const char    *element,
            const char    *side,
            const char    *motion,
            double        *deg)
{
  for (const xmlNode *node = pose->children; node != NULL; node = node->next)
    {
      g_autofree char *own_side = NULL;
      g_autofree char *text = NULL;

      if (node->type != XML_ELEMENT_NODE || strcmp ((const char *) node->name, element) != 0)
        continue;

      own_side = side != NULL ? sw_xml_dup_attribute (node, "side") : NULL;
      text = sw_xml_dup_attribute (node, motion);
      if (text == NULL || (side != NULL && strcmp (own_side, side) != 0 && strcmp (own_side, "both") != 0))
        continue;

      *deg = g_ascii_strtod (text, NULL);
      return TRUE;
    }

  return FALSE;
}

/* The levels of the spine add up to what the norm speaks of; a later pose has what it does not write from the first. */
static double
sum_angles (const xmlNode *first,
            const xmlNode *pose,
            char         **elements,
            const char    *side,
            const char    *motion)
{
  double sum = 0.0;

  for (guint i = 0; elements[i] != NULL; i++)
    {
      double deg = 0.0;

      if (!find_angle (pose, elements[i], side, motion, &deg))
        find_angle (first, elements[i], side, motion, &deg);
      sum += deg;
    }

  return sum;
}

static void
check_norm (const char    *name,
            const xmlNode *figure,
            char         **cells)
{
  static const char *const sides[] = { "right", "left" };
  g_auto (GStrv) elements = g_strsplit (cells[2], " ", -1);
  gboolean spine = elements[1] != NULL;
  double low = g_ascii_strtod (cells[3], NULL);
  double high = g_ascii_strtod (cells[4], NULL);
  const xmlNode *first = first_child (figure, "pose");

  for (const xmlNode *pose = first; pose != NULL; pose = pose->next)
    {
      if (pose->type != XML_ELEMENT_NODE || strcmp ((const char *) pose->name, "pose") != 0)
        continue;

      for (int i = 0; i < (spine ? 1 : 2); i++)
        {
          double deg = sum_angles (first, pose, elements, spine ? NULL : sides[i], cells[1]);

          if (deg < low || deg > high)
            complain ("%s, line %ld: %s %s of %g is outside the published %g to %g", name, xmlGetLineNo (pose), cells[0],
                      cells[1], deg, low, high);
        }
    }
}

static void
check_file (const char *folder,
            const char *name,
            char      **rows)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (xmlDoc) doc = xmlReadFile (path, NULL, XML_PARSE_NONET);
  const xmlNode *figure;

  g_assert_nonnull (doc);
  figure = first_child (xmlDocGetRootElement (doc), "figure");
  if (figure == NULL || first_child (figure, "pose") == NULL)
    {
      complain ("%s has no figure", name);
      return;
    }

  for (guint i = 1; rows[i] != NULL && *rows[i] != '\0'; i++)
    {
      g_auto (GStrv) cells = g_strsplit (rows[i], ",", 6);

      check_norm (name, figure, cells);
    }
}

static void
test_norms (void)
{
  g_autofree char *table = g_test_build_filename (G_TEST_DIST, "joint-norms.csv", NULL);
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = NULL;
  g_auto (GStrv) rows = NULL;
  const char *name;
  guint n = 0;

  g_file_get_contents (table, &text, NULL, &error);
  g_assert_no_error (error);
  rows = g_strsplit (text, "\n", -1);
  dir = g_dir_open (folder, 0, &error);
  g_assert_no_error (error);

  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".xml"))
      {
        check_file (folder, name, rows);
        n++;
      }
  g_assert_cmpuint (n, >=, 30);
}

static void
check_solved (const char   *id,
              SwFigureSpec *spec,
              gboolean      mirrored)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, &error);
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);
  g_autoptr (GPtrArray) faults = NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) words = NULL;

  g_assert_no_error (error);
  faults = sw_figure_check (figure);
  for (guint i = 0; i < faults->len; i++)
    complain ("%s%s: %s", id, mirrored ? ", mirrored" : "", (const char *) g_ptr_array_index (faults, i));

  text = sw_figure_dup_text (figure, phrases);
  words = g_strsplit (text, " ", -1);
  if (g_strv_length (words) < 3 || g_strv_length (words) > 70)
    complain ("%s: %u words instead of the picture: %s", id, g_strv_length (words), text);
}

static void
test_solved (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      SwFigureSpec *spec = sw_exercise_get_figure (exercise);

      g_assert_nonnull (spec);
      check_solved (sw_exercise_get_id (exercise), spec, FALSE);
      check_solved (sw_exercise_get_id (exercise), spec, TRUE);
    }
}

/* How far ink reaches beyond the cell: the figure is drawn into the middle of a larger white picture. */
static guint
count_ink_outside (SwFigure *figure,
                   int       width,
                   int       height)
{
  const int margin = 12;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, width + 2 * margin, height + 2 * margin);
  cairo_t *cr = cairo_create (surface);
  const guchar *data;
  guint n = 0;

  cairo_translate (cr, margin, margin);
  sw_figure_draw (figure, cr, width, height);
  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  for (int y = 0; y < height + 2 * margin; y++)
    for (int x = 0; x < width + 2 * margin; x++)
      {
        gboolean inside = x >= margin - 1 && x <= width + margin && y >= margin - 1 && y <= height + margin;

        n += !inside && data[y * cairo_image_surface_get_stride (surface) + x] > 0;
      }

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return n;
}

/* The cell of the handout: 50 x 44 mm at 72 dots an inch. */
static void
test_inside (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (catalogue)); i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      g_autoptr (SwFigure) figure = sw_figure_new (sw_exercise_get_figure (exercise), FALSE, &error);
      guint n;

      g_assert_no_error (error);
      n = count_ink_outside (figure, 142, 125);
      if (n > 0)
        complain ("%s: %u dots outside the cell", sw_exercise_get_id (exercise), n);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/catalogue/figures/norms", test_norms);
  g_test_add_func ("/catalogue/figures/solved", test_solved);
  g_test_add_func ("/catalogue/figures/inside", test_inside);

  return g_test_run ();
}
