/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the handout's pages look, decided where they are seen. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-pages-button.h"

#include "sw-handout-options.h"
#include "sw-labels.h"
#include "sw-shortcuts.h"

#define N_LAYOUTS (SW_LAYOUT_LARGE_PRINT + 1)
#define N_PARTS (SW_PAGE_PART_PLAN + 1)

/* What one gets, in a line. */
static const char * const layout_explanations[N_LAYOUTS] = {
  [SW_LAYOUT_FULL] = N_("All pictures and all words"),
  [SW_LAYOUT_COMPACT] = N_("Cards with picture, dose and how to get ready"),
  [SW_LAYOUT_SUMMARY] = N_("For the wall: pictures, names and doses"),
  [SW_LAYOUT_LARGE_PRINT] = N_("As full, with text of at least 18 pt"),
};

struct _SwPagesButton
{
  GtkWidget parent_instance;

  GtkMenuButton *button;
  GtkBox *layouts;
  GtkCheckButton *landscape;
  GtkCheckButton *save_ink;
  GtkBox *ways;
  GtkBox *parts;
  GtkLabel *no_more;

  GtkCheckButton *form;
  GtkCheckButton *layout_radios[N_LAYOUTS];
  GtkCheckButton *part_checks[N_PARTS];

  SwDocument *document;
  gboolean refreshing;
};

G_DEFINE_FINAL_TYPE (SwPagesButton, sw_pages_button, GTK_TYPE_WIDGET)

static SwPagePlan *
get_plan (SwPagesButton *self)
{
  return sw_programme_get_page_plan (sw_document_get_programme (self->document));
}

/* One step of undo, even when the same was chosen before. */
static void
set (SwPagesButton *self,
     const char    *label,
     const char    *property,
     gint64         value)
{
  SwHistory *history = sw_document_get_history (self->document);

  sw_history_stop_merging (history);
  sw_history_set_int (history, label, get_plan (self), property, value);
  sw_history_stop_merging (history);
}

static gboolean
may_set (SwPagesButton *self)
{
  return self->document != NULL && !self->refreshing;
}

static void
layout_toggled_cb (SwPagesButton  *self,
                   GtkCheckButton *radio)
{
  if (!may_set (self) || !gtk_check_button_get_active (radio))
    return;

  for (int layout = 0; layout < N_LAYOUTS; layout++)
    if (self->layout_radios[layout] == radio)
      set (self, _("Change the layout of the pages"), "layout", layout);
}

static void
landscape_toggled_cb (SwPagesButton *self)
{
  if (may_set (self))
    set (self, _("Turn the page"), "landscape", gtk_check_button_get_active (self->landscape));
}

static void
save_ink_toggled_cb (SwPagesButton *self)
{
  gboolean save = gtk_check_button_get_active (self->save_ink);

  if (may_set (self))
    set (self, save ? _("Save ink") : _("Do not save ink"), "save-ink", save);
}

static void
form_toggled_cb (SwPagesButton *self)
{
  gboolean form = gtk_check_button_get_active (self->form);

  if (may_set (self))
    set (self, form ? _("Make the PDF one to fill in") : _("Make the PDF one to read only"), "form", form);
}

static void
part_toggled_cb (SwPagesButton  *self,
                 GtkCheckButton *check)
{
  SwSet parts;

  if (!may_set (self))
    return;

  parts = sw_page_plan_get_parts (get_plan (self));
  for (int part = 0; part < N_PARTS; part++)
    if (self->part_checks[part] == check)
      {
        gboolean shown = gtk_check_button_get_active (check);
        /* Translators: a part of the handout, for example “Goals” */
        g_autofree char *label = g_strdup_printf (shown ? _("Show “%s”") : _("Leave out “%s”"),
                                                  sw_label (SW_TYPE_PAGE_PART, part));

        set (self, label, "parts", (gint64) (shown ? parts | SW_SET (part) : parts & ~SW_SET (part)));
      }
}

/* What comes of a check button's choice, or why it cannot be chosen. */
static void
explain (GtkCheckButton *check,
         const char     *explanation)
{
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_last_child (gtk_check_button_get_child (check))), explanation);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, explanation, -1);
}

/* Shows the plan as it is now; only parts that the layout has can be chosen, and only where there is something to fill
 * in can it be filled in on a screen. */
static void
refresh (SwPagesButton *self)
{
  SwPagePlan *plan = get_plan (self);
  SwLayout layout = sw_page_plan_get_layout (plan);
  SwSet parts = sw_page_plan_get_parts (plan);
  SwSet possible = sw_handout_parts_of_layout (layout);
  SwSet to_fill_in = sw_handout_parts_to_fill_in (layout);

  self->refreshing = TRUE;
  gtk_check_button_set_active (self->layout_radios[layout], TRUE);
  gtk_check_button_set_active (self->landscape, sw_page_plan_get_landscape (plan));
  gtk_widget_set_visible (GTK_WIDGET (self->landscape), layout == SW_LAYOUT_SUMMARY);
  gtk_check_button_set_active (self->save_ink, sw_page_plan_get_save_ink (plan));
  gtk_check_button_set_active (self->form, sw_page_plan_get_form (plan));
  gtk_widget_set_visible (GTK_WIDGET (self->form), to_fill_in != 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->form), (parts & to_fill_in) != 0);
  explain (self->form, (parts & to_fill_in) != 0
                         ? _("Boxes can be ticked, lines written on. On paper nothing changes.")
                         : _("Needs self-checks, a log or lines to sign: now nothing is left to fill in."));
  for (int part = 0; part < N_PARTS; part++)
    {
      gtk_check_button_set_active (self->part_checks[part], (parts & SW_SET (part)) != 0);
      gtk_widget_set_visible (GTK_WIDGET (self->part_checks[part]), (possible & SW_SET (part)) != 0);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->no_more), layout == SW_LAYOUT_SUMMARY);
  self->refreshing = FALSE;
}

static GtkWidget *
words_new (const char *words)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
  return label;
}

/* A check button that says what it is and, smaller below, what comes of it. */
static GtkCheckButton *
explained_check_new (const char *name,
                     const char *explanation)
{
  GtkWidget *check = gtk_check_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *small = words_new (NULL);

  gtk_widget_add_css_class (small, "dim");
  gtk_widget_add_css_class (small, "small-words");
  gtk_box_append (GTK_BOX (box), words_new (name));
  gtk_box_append (GTK_BOX (box), small);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (check), box);
  gtk_widget_add_css_class (check, "explained");
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  explain (GTK_CHECK_BUTTON (check), explanation);
  return GTK_CHECK_BUTTON (check);
}

static GtkCheckButton *
part_check_new (SwPagePart part)
{
  const char *name = sw_label (SW_TYPE_PAGE_PART, (int) part);

  if (part == SW_PAGE_PART_STOP_SIGNS)
    return explained_check_new (name, _("When off, a short stop box stays"));
  return GTK_CHECK_BUTTON (gtk_check_button_new_with_label (name));
}

static void
fill (SwPagesButton *self)
{
  for (int layout = 0; layout < N_LAYOUTS; layout++)
    {
      GtkCheckButton *radio = explained_check_new (sw_label (SW_TYPE_LAYOUT, layout), _(layout_explanations[layout]));

      gtk_check_button_set_group (radio, layout > 0 ? self->layout_radios[0] : NULL);
      g_signal_connect_object (radio, "toggled", G_CALLBACK (layout_toggled_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (self->layouts, GTK_WIDGET (radio));
      self->layout_radios[layout] = radio;
    }

  self->form = explained_check_new (_("PDF to fill in on a tablet"), "");
  g_signal_connect_object (self->form, "toggled", G_CALLBACK (form_toggled_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->ways, GTK_WIDGET (self->form));

  for (int part = 0; part < N_PARTS; part++)
    {
      GtkCheckButton *check = part_check_new ((SwPagePart) part);

      g_signal_connect_object (check, "toggled", G_CALLBACK (part_toggled_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (self->parts, GTK_WIDGET (check));
      self->part_checks[part] = check;
    }
}

static void
forget_document (SwPagesButton *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static gboolean
sw_pages_button_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_PAGES_BUTTON (widget)->button));
}

static void
sw_pages_button_dispose (GObject *object)
{
  GtkWidget *child;

  forget_document (SW_PAGES_BUTTON (object));
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_pages_button_parent_class)->dispose (object);
}

static void
sw_pages_button_class_init (SwPagesButtonClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_pages_button_dispose;
  widget_class->grab_focus = sw_pages_button_grab_focus;

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-pages-button.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, button);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, layouts);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, landscape);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, save_ink);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, ways);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, parts);
  gtk_widget_class_bind_template_child (widget_class, SwPagesButton, no_more);
  gtk_widget_class_bind_template_callback (widget_class, landscape_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_ink_toggled_cb);
}

static void
sw_pages_button_init (SwPagesButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill (self);

  /* A popover keeps its keys to itself; undo and the rest are to work there too. */
  sw_shortcuts_add_to_widget (GTK_WIDGET (gtk_menu_button_get_popover (self->button)), SW_SHORTCUT_EVERYWHERE);
}

/**
 * sw_pages_button_set_document:
 * @self: a button
 * @document: (nullable): whose pages are planned
 */
void
sw_pages_button_set_document (SwPagesButton *self,
                              SwDocument    *document)
{
  g_return_if_fail (SW_IS_PAGES_BUTTON (self));

  forget_document (self);
  gtk_widget_set_sensitive (GTK_WIDGET (self), document != NULL);
  if (document == NULL)
    return;

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (refresh), self);
  refresh (self);
}

/**
 * sw_pages_button_open:
 * @self: a button
 *
 * Shows the choices, as a press on the button does.
 */
void
sw_pages_button_open (SwPagesButton *self)
{
  g_return_if_fail (SW_IS_PAGES_BUTTON (self));

  gtk_menu_button_popup (self->button);
}
