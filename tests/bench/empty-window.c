/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The floor for the window's start: a GTK program that shows nothing but a window with a header bar. */
#include <gtk/gtk.h>

static void
activate_cb (GtkApplication *application)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), 1360, 840);
  gtk_window_set_titlebar (GTK_WINDOW (window), gtk_header_bar_new ());
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GtkApplication) application = gtk_application_new ("org.setwright.EmptyWindow", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
