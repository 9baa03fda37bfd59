/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sw-number.h"

typedef struct
{
  GtkWidget *window;
  SwNumber *number;
  GtkSpinButton *spin;
  guint n_changed;
} Fixture;

static void
changed_cb (Fixture *self)
{
  self->n_changed++;
}

/* What typing does: the text becomes another, and nothing else happens. */
static void
type (Fixture    *self,
      const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->spin), text);
}

/* What leaving the field does. */
static void
leave (Fixture *self)
{
  gtk_spin_button_update (self->spin);
}

static const char *
text_of (Fixture *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->spin));
}

static void
set_up (Fixture    *self,
        const char *first_property,
        ...)
{
  va_list args;

  va_start (args, first_property);
  self->number = SW_NUMBER (g_object_new_valist (SW_TYPE_NUMBER, first_property, args));
  va_end (args);

  self->n_changed = 0;
  self->window = gtk_window_new ();
  self->spin = GTK_SPIN_BUTTON (gtk_widget_get_first_child (GTK_WIDGET (self->number)));
  gtk_window_set_child (GTK_WINDOW (self->window), GTK_WIDGET (self->number));
  g_signal_connect_swapped (self->number, "changed", G_CALLBACK (changed_cb), self);
}

static void
tear_down (Fixture *self)
{
  g_object_add_weak_pointer (G_OBJECT (self->number), (gpointer *) &self->number);
  gtk_window_destroy (GTK_WINDOW (self->window));
  g_assert_null (self->number);
}

static void
test_counts_while_typing (void)
{
  Fixture f;

  set_up (&f, "lower", 0.0, "upper", 200.0, NULL);
  sw_number_set_value (f.number, 10.0);
  g_assert_cmpuint (f.n_changed, ==, 0);
  g_assert_cmpstr (text_of (&f), ==, "10");

  type (&f, "1");
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 1.0);
  type (&f, "12");
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 12.0);
  g_assert_cmpuint (f.n_changed, ==, 2);

  /* The same value in other digits is no change, and stays as it is typed until the field is left. */
  type (&f, "012");
  g_assert_cmpuint (f.n_changed, ==, 2);
  g_assert_cmpstr (text_of (&f), ==, "012");
  leave (&f);
  g_assert_cmpstr (text_of (&f), ==, "12");
  g_assert_cmpuint (f.n_changed, ==, 2);
  tear_down (&f);
}

static void
test_refuses (void)
{
  const char *bad[] = { "25", "0", "-3", "2.5", "many", "1e9", "3 4", "inf", "nan", "9999999999999999999999" };
  Fixture f;

  set_up (&f, "lower", 1.0, "upper", 20.0, NULL);
  sw_number_set_value (f.number, 3.0);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      type (&f, bad[i]);
      g_assert_cmpstr (text_of (&f), ==, bad[i]);
      g_assert_nonnull (sw_number_get_complaint (f.number));
      g_assert_cmpfloat (sw_number_get_value (f.number), ==, 3.0);

      leave (&f);
      g_assert_cmpstr (text_of (&f), ==, "3");
      g_assert_null (sw_number_get_complaint (f.number));
    }
  g_assert_cmpuint (f.n_changed, ==, 0);

  /* Nothing at all is only unfinished. */
  type (&f, "");
  g_assert_null (sw_number_get_complaint (f.number));
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 3.0);
  leave (&f);
  g_assert_cmpstr (text_of (&f), ==, "3");
  tear_down (&f);
}

static void
test_decimals (void)
{
  Fixture f;

  set_up (&f, "lower", 0.0, "upper", 500.0, "step", 0.5, "digits", 3, NULL);
  sw_number_set_value (f.number, 2.0);
  g_assert_cmpstr (text_of (&f), ==, "2");

  type (&f, "7,");
  type (&f, "7,5");
  g_assert_cmpfloat_with_epsilon (sw_number_get_value (f.number), 7.5, 1e-9);
  type (&f, "2.");
  g_assert_cmpfloat_with_epsilon (sw_number_get_value (f.number), 2.0, 1e-9);

  /* What is shown again while one types leaves the text alone; another value takes its place. */
  sw_number_set_value (f.number, 2.0);
  g_assert_cmpstr (text_of (&f), ==, "2.");
  sw_number_set_value (f.number, 2.25);
  g_assert_cmpstr (text_of (&f), ==, "2.25");
  gtk_spin_button_spin (f.spin, GTK_SPIN_STEP_FORWARD, 0.5);
  g_assert_cmpfloat_with_epsilon (sw_number_get_value (f.number), 2.75, 1e-9);
  tear_down (&f);
}

static void
test_none (void)
{
  Fixture f;

  set_up (&f, "lower", 1900.0, "upper", 2100.0, "none", 0.0, "first", 1960.0, NULL);
  sw_number_set_value (f.number, 0.0);
  g_assert_cmpstr (text_of (&f), ==, "");

  /* A year on its way is neither a value nor a mistake. */
  type (&f, "1");
  type (&f, "195");
  g_assert_null (sw_number_get_complaint (f.number));
  g_assert_cmpuint (f.n_changed, ==, 0);
  type (&f, "1955");
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 1955.0);
  type (&f, "19550");
  g_assert_nonnull (sw_number_get_complaint (f.number));
  type (&f, "");
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 0.0);
  g_assert_null (sw_number_get_complaint (f.number));

  gtk_spin_button_spin (f.spin, GTK_SPIN_STEP_FORWARD, 1.0);
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 1960.0);
  g_assert_cmpstr (text_of (&f), ==, "1960");

  sw_number_set_value (f.number, 1900.0);
  gtk_spin_button_spin (f.spin, GTK_SPIN_STEP_BACKWARD, 1.0);
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 0.0);
  g_assert_cmpstr (text_of (&f), ==, "");
  tear_down (&f);
}

static void
test_upper (void)
{
  Fixture f;

  set_up (&f, "lower", 0.0, "upper", 500.0, NULL);
  sw_number_set_value (f.number, 400.0);
  type (&f, "600");
  g_assert_nonnull (sw_number_get_complaint (f.number));
  sw_number_set_upper (f.number, 1100.0);
  type (&f, "601");
  g_assert_null (sw_number_get_complaint (f.number));
  g_assert_cmpfloat (sw_number_get_value (f.number), ==, 601.0);
  g_assert_cmpuint (f.n_changed, ==, 1);
  tear_down (&f);
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/number/counts-while-typing", test_counts_while_typing);
  g_test_add_func ("/number/refuses", test_refuses);
  g_test_add_func ("/number/decimals", test_decimals);
  g_test_add_func ("/number/none", test_none);
  g_test_add_func ("/number/upper", test_upper);

  return g_test_run ();
}
