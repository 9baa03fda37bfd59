/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window. All it does begins in SwApplication. */
#include "config.h"

#include <glib/gi18n.h>
#include <locale.h>

#include "sw-application.h"

int
main (int    argc,
      char **argv)
{
  g_autoptr (SwApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (SW_GETTEXT_PACKAGE, SW_LOCALE_DIR);
  bind_textdomain_codeset (SW_GETTEXT_PACKAGE, "UTF-8");
  textdomain (SW_GETTEXT_PACKAGE);
  g_set_prgname ("setwright");
  g_set_application_name ("Setwright");

  application = sw_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
