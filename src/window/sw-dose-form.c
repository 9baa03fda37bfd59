/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of one exercise item, from its figure down to the note. The fields are in
 * sw-dose-form-fields.c. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-dose-form-private.h"

#include "sw-edits.h"
#include "sw-finding-mark.h"
#include "sw-labels.h"
#include "sw-time-working.h"

/* How long typing must pause before a line that is no dose is complained of. */
#define COMPLAINT_MS 900

G_DEFINE_FINAL_TYPE (SwDoseForm, sw_dose_form, GTK_TYPE_WIDGET)

/**
 * sw_dose_form_change:
 * @self: a form with an item
 * @dose: the dose it shall have; one out of range is none, and changes nothing
 *
 * Gives the item another dose. Changes in a row are one step of undo until the focus moves on.
 */
void
sw_dose_form_change (SwDoseForm   *self,
                     const SwDose *dose)
{
  g_autofree char *name = NULL;
  g_autofree char *label = NULL;

  if (self->item == NULL || !sw_dose_check (dose, NULL))
    return;

  name = sw_item_dup_name (self->item, NULL);
  label = g_strdup_printf (_("Change dose of “%s”"), name);
  sw_history_set_boxed (sw_document_get_history (self->document), label, self->item, "dose", dose);
}

/* Below the line stands either what is not understood in it or how long the item takes: one place, so that
 * little moves while typing. */
static void
show_line_words (SwDoseForm *self)
{
  gboolean wrong = self->line_complaint != NULL && self->complaint_timeout == 0;
  SwClinic *clinic = sw_programme_get_clinic (sw_document_get_programme (self->document));
  g_autoptr (SwWorking) working = sw_time_working_of_item (self->item, clinic);
  g_autofree char *time = sw_label_takes (sw_time_of_item (self->item, clinic));

  gtk_label_set_label (self->line_words, wrong ? self->line_complaint : "");
  sw_working_button_show (self->takes, time, working);
  gtk_widget_set_visible (GTK_WIDGET (self->line_words), wrong);
  gtk_widget_set_visible (GTK_WIDGET (self->takes), !wrong);
  gtk_widget_set_visible (GTK_WIDGET (self->line_mark), wrong);
  if (wrong)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self->line), "error");
      gtk_widget_add_css_class (GTK_WIDGET (self->line_message), "complaint");
    }
  else
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self->line), "error");
      gtk_widget_remove_css_class (GTK_WIDGET (self->line_message), "complaint");
    }
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->line), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static gboolean
complaint_due_cb (gpointer data)
{
  SwDoseForm *self = data;

  self->complaint_timeout = 0;
  if (self->item != NULL)
    show_line_words (self);
  return G_SOURCE_REMOVE;
}

/* Half a word is no mistake yet: what is wrong is said once the typing pauses. */
static void
complain_of_line (SwDoseForm *self,
                  const char *complaint)
{
  gboolean shown = self->line_complaint != NULL && self->complaint_timeout == 0;

  g_free (self->line_complaint);
  self->line_complaint = g_strdup (complaint);
  if (complaint == NULL || !shown)
    g_clear_handle_id (&self->complaint_timeout, g_source_remove);
  if (complaint != NULL && !shown)
    self->complaint_timeout = g_timeout_add (COMPLAINT_MS, complaint_due_cb, self);
  show_line_words (self);
}

/* What is typed counts at once. Text that is no dose stays, and the dose stays what it was. */
static void
line_changed_cb (SwDoseForm *self)
{
  g_autoptr (GError) error = NULL;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->line));
  SwDose dose;

  if (self->item == NULL || self->refreshing)
    return;

  if (!sw_dose_from_line (text, &sw_exercise_get_facts (sw_item_get_exercise (self->item))->dose, &dose, &error))
    {
      complain_of_line (self, error->message);
      return;
    }

  g_free (self->shown_line);
  self->shown_line = sw_dose_to_line (&dose);
  sw_dose_form_change (self, &dose);
  complain_of_line (self, NULL);
}

/* Writes the dose into the line as the program would write it. */
static void
rewrite_line (SwDoseForm *self)
{
  gboolean was_refreshing = self->refreshing;

  g_free (self->shown_line);
  self->shown_line = sw_dose_to_line (sw_item_get_dose (self->item));
  self->refreshing = TRUE;
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (self->line)), self->shown_line) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->line), self->shown_line);
  self->refreshing = was_refreshing;
  complain_of_line (self, NULL);
}

/* A good line is written out; one that is not understood waits for whoever wrote it. */
static void
line_done_cb (SwDoseForm *self)
{
  if (self->item == NULL)
    return;

  g_clear_handle_id (&self->complaint_timeout, g_source_remove);
  if (self->line_complaint == NULL)
    rewrite_line (self);
  else
    show_line_words (self);
}

static gboolean
line_key_cb (SwDoseForm *self,
             guint       key)
{
  if (key != GDK_KEY_Escape || self->item == NULL)
    return GDK_EVENT_PROPAGATE;

  rewrite_line (self);
  return GDK_EVENT_STOP;
}

static void
play_toggled_cb (SwDoseForm *self)
{
  gboolean playing = gtk_toggle_button_get_active (self->play);

  sw_figure_view_set_playing (self->figure, playing);
  gtk_button_set_icon_name (GTK_BUTTON (self->play), playing ? "media-playback-pause-symbolic"
                            : "media-playback-start-symbolic");
}

static void
note_changed_cb (SwDoseForm *self)
{
  g_autofree char *text = NULL;
  g_autofree char *name = NULL;
  g_autofree char *label = NULL;

  if (self->item == NULL)
    return;

  text = sw_text_area_dup_text (self->note);
  name = sw_item_dup_name (self->item, NULL);
  label = g_strdup_printf (_("Change note of “%s”"), name);
  sw_history_set_string (sw_document_get_history (self->document), label, self->item, "note", text);
}

static void
usual_clicked_cb (SwDoseForm *self)
{
  sw_dose_form_change (self, &sw_exercise_get_facts (sw_item_get_exercise (self->item))->dose);
}

/* The nearest linked exercise that the catalogue has, or NULL. */
static SwExercise *
find_linked (SwDoseForm *self,
             gboolean    harder)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (self->item));
  SwCatalogue *catalogue = sw_document_get_catalogue (self->document);
  char **links = harder ? facts->harder : facts->easier;

  for (guint i = 0; catalogue != NULL && links[i] != NULL; i++)
    {
      SwExercise *linked = sw_catalogue_lookup (catalogue, links[i]);

      if (linked != NULL)
        return linked;
    }

  return NULL;
}

static void
swap_clicked_cb (SwDoseForm *self,
                 GtkButton  *button)
{
  SwExercise *linked = find_linked (self, button == self->harder);
  g_autofree char *name = NULL;
  g_autofree char *label = NULL;

  if (linked == NULL)
    return;

  name = sw_item_dup_name (self->item, NULL);
  label = g_strdup_printf (_("Swap “%s” for “%s”"), name, sw_exercise_get_text (linked, NULL)->name);
  sw_edit_swap_exercise (sw_document_get_history (self->document), sw_document_get_programme (self->document),
                         self->item, linked, label);
}

static void
show_swap (GtkButton  *button,
           SwExercise *linked,
           const char *words)
{
  g_autofree char *label = NULL;

  gtk_widget_set_visible (GTK_WIDGET (button), linked != NULL);
  if (linked == NULL)
    return;

  label = g_strdup_printf (words, sw_exercise_get_text (linked, NULL)->name);
  gtk_label_set_label (GTK_LABEL (gtk_button_get_child (button)), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
refresh_head (SwDoseForm *self)
{
  SwExercise *exercise = sw_item_get_exercise (self->item);
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  const char *name = sw_exercise_get_text (exercise, NULL)->name;
  g_autofree char *equipment = sw_label_set (SW_TYPE_EQUIPMENT, facts->equipment);
  g_autofree char *about = NULL;
  g_autofree char *cautions = sw_label_set (SW_TYPE_CAUTION, facts->cautions);
  g_autofree char *demands = NULL;

  about = g_strdup_printf ("%s%s%s", sw_label (SW_TYPE_POSITION, (int) facts->position),
                           *equipment != '\0' ? " · " : "", equipment);
  /* Translators: %s lists what an exercise asks of the body, such as "Kneeling, weight on the hands". */
  demands = g_strdup_printf (_("Asks of the body: %s"), cautions);

  sw_figure_view_set_exercise (self->figure, exercise, sw_item_get_dose (self->item)->side == SW_SIDE_LEFT);
  sw_figure_view_describe (self->figure, name);
  gtk_label_set_label (self->name, name);
  gtk_label_set_label (self->about, about);
  gtk_label_set_label (self->demands, demands);
  gtk_widget_set_visible (GTK_WIDGET (self->demands), facts->cautions != 0);
  show_swap (self->easier, find_linked (self, FALSE), _("Easier: %s"));
  show_swap (self->harder, find_linked (self, TRUE), _("Harder: %s"));
}

static GtkWidget *
remark_new (const SwFinding *finding)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *mark = gtk_image_new ();
  GtkWidget *words = gtk_label_new (NULL);
  g_autofree char *text = NULL;

  if (finding->answer != NULL)
    text = g_strdup_printf (_("%s Kept, because: %s"), finding->text, sw_answer_get_reason (finding->answer));
  else
    text = g_strdup (finding->text);

  sw_finding_mark_show (GTK_IMAGE (mark), finding->level, finding->text);
  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_label_set_label (GTK_LABEL (words), text);
  gtk_label_set_xalign (GTK_LABEL (words), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_tooltip_text (words, finding->why);
  gtk_widget_add_css_class (box, "field-finding");
  gtk_box_append (GTK_BOX (box), mark);
  gtk_box_append (GTK_BOX (box), words);
  return box;
}

/* What speaks against the exercise itself, such as a precaution; made anew only when it is something else. */
static void
refresh_remarks (SwDoseForm *self)
{
  GPtrArray *findings = sw_document_get_findings (self->document);
  g_autoptr (GPtrArray) shown = g_ptr_array_new ();
  g_autoptr (GString) keys = g_string_new (NULL);
  GtkWidget *child;

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (finding->item != self->item || sw_dose_form_is_about_field (finding))
        continue;
      g_ptr_array_add (shown, (gpointer) finding);
      g_string_append_printf (keys, "%s\n%s\n%s\n", finding->key, finding->text,
                              finding->answer != NULL ? sw_answer_get_reason (finding->answer) : "");
    }
  if (g_strcmp0 (self->shown_remarks, keys->str) == 0)
    return;

  g_free (self->shown_remarks);
  self->shown_remarks = g_strdup (keys->str);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->remarks))) != NULL)
    gtk_box_remove (self->remarks, child);
  for (guint i = 0; i < shown->len; i++)
    gtk_box_append (self->remarks, remark_new (g_ptr_array_index (shown, i)));
  gtk_widget_set_visible (GTK_WIDGET (self->remarks), shown->len > 0);
}

static void
refresh_line (SwDoseForm *self)
{
  g_autofree char *line = sw_dose_to_line (sw_item_get_dose (self->item));

  if (g_strcmp0 (self->shown_line, line) != 0)
    rewrite_line (self);
  else
    show_line_words (self);
}

static gboolean
sw_dose_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_DOSE_FORM (widget)->line));
}

static void
sw_dose_form_dispose (GObject *object)
{
  SwDoseForm *self = SW_DOSE_FORM (object);

  g_clear_handle_id (&self->complaint_timeout, g_source_remove);
  g_clear_object (&self->item);
  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_dose_form_parent_class)->dispose (object);
}

static void
sw_dose_form_finalize (GObject *object)
{
  SwDoseForm *self = SW_DOSE_FORM (object);

  g_free (self->shown_line);
  g_free (self->shown_tempo);
  g_free (self->shown_remarks);
  g_free (self->line_complaint);

  G_OBJECT_CLASS (sw_dose_form_parent_class)->finalize (object);
}

static void
sw_dose_form_class_init (SwDoseFormClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = sw_dose_form_dispose;
  object_class->finalize = sw_dose_form_finalize;
  widget_class->grab_focus = sw_dose_form_grab_focus;

  g_type_ensure (SW_TYPE_FIELD_ROW);
  g_type_ensure (SW_TYPE_FIGURE_VIEW);
  g_type_ensure (SW_TYPE_NUMBER);
  g_type_ensure (SW_TYPE_PLACE_FIELDS);
  g_type_ensure (SW_TYPE_TEST_FIELD);
  g_type_ensure (SW_TYPE_TEXT_AREA);
  g_type_ensure (SW_TYPE_WORKING_BUTTON);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-dose-form.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, box);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, figure);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, play);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, name);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, about);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, line);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, line_message);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, line_mark);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, line_words);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, takes);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, place);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, swaps);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, easier);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, harder);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, demands);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, remarks);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, note_row);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, note);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, usual);
  sw_dose_form_bind_fields (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, line_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, line_done_cb);
  gtk_widget_class_bind_template_callback (widget_class, line_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, play_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, note_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, swap_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, usual_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_dose_form_init (SwDoseForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_dose_form_init_fields (self);
  sw_figure_view_set_play_on_hover (self->figure, TRUE);
}

/**
 * sw_dose_form_set_pictures:
 * @self: a form
 * @pictures: where figures come from
 */
void
sw_dose_form_set_pictures (SwDoseForm *self,
                           SwPictures *pictures)
{
  g_return_if_fail (SW_IS_DOSE_FORM (self));

  sw_figure_view_set_pictures (self->figure, pictures);
}

/**
 * sw_dose_form_set_item:
 * @self: a form
 * @document: (nullable): the document of the item
 * @item: (nullable): the exercise item to show; NULL for none
 */
void
sw_dose_form_set_item (SwDoseForm *self,
                       SwDocument *document,
                       SwItem     *item)
{
  g_return_if_fail (SW_IS_DOSE_FORM (self));

  g_set_object (&self->document, document);
  if (!g_set_object (&self->item, item))
    return;

  /* What was being typed belongs to the item before. */
  gtk_toggle_button_set_active (self->play, FALSE);
  g_clear_pointer (&self->shown_line, g_free);
  g_clear_pointer (&self->shown_tempo, g_free);
  g_clear_pointer (&self->shown_remarks, g_free);
  sw_dose_form_refresh (self);
}

/**
 * sw_dose_form_refresh:
 * @self: a form
 *
 * Shows the item as it is now; what is being typed and means the same stays as it is.
 */
void
sw_dose_form_refresh (SwDoseForm *self)
{
  g_return_if_fail (SW_IS_DOSE_FORM (self));

  if (self->item == NULL || sw_item_get_exercise (self->item) == NULL || self->refreshing)
    return;

  self->refreshing = TRUE;
  refresh_head (self);
  refresh_line (self);
  refresh_remarks (self);
  sw_dose_form_refresh_fields (self);
  sw_test_field_show (self->test_field, self->document, self->item);
  sw_text_area_set_text (self->note, sw_item_get_note (self->item));
  sw_place_fields_show (self->place, self->document, self->item);
  self->refreshing = FALSE;
}
