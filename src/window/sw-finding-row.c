/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A finding with its reason, its fix, and the place to say why it is left as it is. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-labels.h"
#include "sw-finding-fix.h"
#include "sw-finding-mark.h"
#include "sw-finding-row.h"
#include "sw-wrap-box.h"

struct _SwFindingRow
{
  GtkWidget parent_instance;

  SwDocument *document;
  char *key;

  GtkImage *mark;
  GtkLabel *level;
  GtkLabel *text;
  GtkLabel *details;
  GtkLabel *why;
  GtkLabel *kept;
  GtkButton *fix;
  GtkButton *swap;
  GtkWidget *show;
  GtkToggleButton *keep;
  GtkWidget *take_back;
  GtkWidget *reason_line;
  GtkEditable *reason;
  GtkWidget *store;
};

G_DEFINE_FINAL_TYPE (SwFindingRow, sw_finding_row, GTK_TYPE_WIDGET)

/* The finding as the last check left it; NULL when it is gone. */
static const SwFinding *
find_finding (SwFindingRow *self)
{
  GPtrArray *findings = sw_document_get_findings (self->document);

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (g_str_equal (finding->key, self->key))
        return finding;
    }

  return NULL;
}

static void
fix_clicked_cb (SwFindingRow *self)
{
  const SwFinding *finding = find_finding (self);

  if (finding != NULL)
    sw_finding_apply_fix (self->document, finding);
}

static void
swap_clicked_cb (SwFindingRow *self)
{
  const SwFinding *finding = find_finding (self);

  if (finding != NULL && finding->fix_exercise != NULL)
    sw_finding_swap (self->document, finding);
}

static void
show_clicked_cb (SwFindingRow *self)
{
  const SwFinding *finding = find_finding (self);

  if (finding != NULL)
    sw_finding_show (self->document, finding);
}

static void
take_back_clicked_cb (SwFindingRow *self)
{
  const SwFinding *finding = find_finding (self);

  if (finding != NULL && finding->answer != NULL)
    sw_finding_take_back (self->document, finding);
}

static void
keep_toggled_cb (SwFindingRow *self)
{
  gboolean open = gtk_toggle_button_get_active (self->keep);

  gtk_widget_set_visible (self->reason_line, open);
  if (open)
    gtk_widget_grab_focus (GTK_WIDGET (self->reason));
}

static char *
dup_reason (SwFindingRow *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (self->reason)));
}

static void
reason_changed_cb (SwFindingRow *self)
{
  g_autofree char *reason = dup_reason (self);

  gtk_widget_set_sensitive (self->store, *reason != '\0');
}

static void
store_clicked_cb (SwFindingRow *self)
{
  const SwFinding *finding = find_finding (self);
  g_autofree char *reason = dup_reason (self);

  if (finding == NULL || finding->answer != NULL || *reason == '\0')
    return;

  gtk_toggle_button_set_active (self->keep, FALSE);
  gtk_editable_set_text (self->reason, "");
  sw_finding_keep (self->document, finding, reason);
}

static void
sw_finding_row_dispose (GObject *object)
{
  SwFindingRow *self = SW_FINDING_ROW (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_finding_row_parent_class)->dispose (object);
}

static void
sw_finding_row_finalize (GObject *object)
{
  g_free (SW_FINDING_ROW (object)->key);

  G_OBJECT_CLASS (sw_finding_row_parent_class)->finalize (object);
}

static void
sw_finding_row_class_init (SwFindingRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_finding_row_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_finding_row_finalize;

  g_type_ensure (SW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-finding-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, mark);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, level);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, text);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, details);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, why);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, kept);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, fix);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, swap);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, show);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, keep);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, take_back);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, reason_line);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, reason);
  gtk_widget_class_bind_template_child (widget_class, SwFindingRow, store);
  gtk_widget_class_bind_template_callback (widget_class, fix_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, swap_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_back_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, keep_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, reason_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, store_clicked_cb);
  gtk_widget_class_set_css_name (widget_class, "finding");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
sw_finding_row_init (SwFindingRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_finding_row_new:
 * @document: whose findings are shown
 * @key: which finding
 *
 * Returns: (transfer floating): a row that shows nothing yet
 */
GtkWidget *
sw_finding_row_new (SwDocument *document,
                    const char *key)
{
  SwFindingRow *self = g_object_new (SW_TYPE_FINDING_ROW, NULL);

  self->document = g_object_ref (document);
  self->key = g_strdup (key);
  return GTK_WIDGET (self);
}

/**
 * sw_finding_row_get_key:
 *
 * Returns: which finding it shows
 */
const char *
sw_finding_row_get_key (SwFindingRow *self)
{
  g_return_val_if_fail (SW_IS_FINDING_ROW (self), NULL);
  return self->key;
}

static void
show_kept (SwFindingRow *self,
           SwAnswer     *answer)
{
  g_autofree char *words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->kept), answer != NULL);
  gtk_widget_set_visible (self->take_back, answer != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->keep), answer == NULL);
  if (answer == NULL)
    return;

  gtk_toggle_button_set_active (self->keep, FALSE);
  if (*sw_answer_get_by (answer) != '\0')
    /* Translators: a date, who kept it, the reason */
    words = g_strdup_printf (_ ("Kept on %s by %s: %s"), sw_answer_get_date (answer), sw_answer_get_by (answer),
                             sw_answer_get_reason (answer));
  else
    /* Translators: a date, the reason */
    words = g_strdup_printf (_ ("Kept on %s: %s"), sw_answer_get_date (answer), sw_answer_get_reason (answer));
  gtk_label_set_label (self->kept, words);
}

static void
show_details (SwFindingRow    *self,
              const SwFinding *finding)
{
  g_autofree char *lines = finding->details != NULL ? g_strjoinv ("\n", finding->details) : g_strdup ("");

  gtk_label_set_label (self->details, lines);
  gtk_widget_set_visible (GTK_WIDGET (self->details), *lines != '\0');
}

static void
show_fixes (SwFindingRow    *self,
            const SwFinding *finding)
{
  gboolean fix_is_show = finding->fix == SW_FIX_SHOW_ITEM;
  gboolean offers_swap = finding->fix != SW_FIX_SWAP_EXERCISE && finding->fix_exercise != NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->fix), finding->fix != SW_FIX_NONE && finding->answer == NULL);
  if (finding->fix_label != NULL)
    gtk_button_set_label (self->fix, finding->fix_label);
  gtk_widget_set_visible (self->show, finding->item != NULL && !(fix_is_show && finding->answer == NULL));

  gtk_widget_set_visible (GTK_WIDGET (self->swap), offers_swap && finding->answer == NULL);
  if (offers_swap)
    {
      g_autofree char *name = sw_edit_object_name (finding->fix_exercise);
      g_autofree char *label = g_strdup_printf (_ ("Swap for “%s”"), name);

      gtk_button_set_label (self->swap, label);
    }
}

/**
 * sw_finding_row_refresh:
 * @finding: the finding of the row's key, as it is now
 *
 * Shows it; a reason that is being typed is left alone.
 */
void
sw_finding_row_refresh (SwFindingRow    *self,
                        const SwFinding *finding)
{
  const char *word;
  g_autofree char *name = NULL;

  g_return_if_fail (SW_IS_FINDING_ROW (self));
  g_return_if_fail (finding != NULL);

  if (finding->answer != NULL)
    sw_finding_mark_show_kept (self->mark, finding->text);
  else
    sw_finding_mark_show (self->mark, finding->level, finding->text);
  word = finding->answer != NULL ? _ ("Kept") : sw_finding_mark_word (finding->level);
  gtk_label_set_label (self->level, word);
  gtk_label_set_label (self->text, finding->text);
  show_details (self, finding);
  gtk_label_set_label (self->why, finding->why);
  gtk_widget_set_visible (GTK_WIDGET (self->why), finding->why != NULL && *finding->why != '\0');
  show_kept (self, finding->answer);
  show_fixes (self, finding);

  name = g_strdup_printf ("%s: %s", word, finding->text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}
