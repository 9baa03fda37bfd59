/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How severe a finding is, as a symbol and a word: the same on a row of the canvas and in the list below. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-finding-mark.h"

typedef struct
{
  const char *icon;
  const char *word;
  const char *css_class;
} Mark;

static const Mark marks[] = {
  [SW_FINDING_TELL] = { "dialog-information-symbolic", N_ ("To know"), "tell" },
  [SW_FINDING_ASK] = { "dialog-question-symbolic", N_ ("To look at"), "ask" },
  [SW_FINDING_STOP] = { "dialog-warning-symbolic", N_ ("To answer"), "stop" },
};

/**
 * sw_finding_mark_word:
 * @level: how severe
 *
 * Returns: the level's word: what it asks of the therapist
 */
const char *
sw_finding_mark_word (SwFindingLevel level)
{
  g_return_val_if_fail (level <= SW_FINDING_STOP, "");
  return _ (marks[level].word);
}

static void
set_class (GtkImage   *image,
           const char *css_class)
{
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    gtk_widget_remove_css_class (GTK_WIDGET (image), marks[i].css_class);
  if (css_class != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (image), css_class);
}

static void
set_name (GtkImage   *image,
          const char *word,
          const char *words)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_PROPERTY_LABEL, word,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

/**
 * sw_finding_mark_show:
 * @image: becomes the level's symbol
 * @level: how severe
 * @words: (nullable): what was found; NULL hides the symbol
 */
void
sw_finding_mark_show (GtkImage       *image,
                      SwFindingLevel  level,
                      const char     *words)
{
  g_return_if_fail (GTK_IS_IMAGE (image));
  g_return_if_fail (level <= SW_FINDING_STOP);

  gtk_widget_set_visible (GTK_WIDGET (image), words != NULL);
  gtk_widget_set_tooltip_text (GTK_WIDGET (image), words);
  if (words == NULL)
    return;

  gtk_image_set_from_icon_name (image, marks[level].icon);
  set_class (image, marks[level].css_class);
  set_name (image, _ (marks[level].word), words);
}

/**
 * sw_finding_mark_show_kept:
 * @image: becomes the symbol of a finding that was answered with a reason
 * @words: what was found
 */
void
sw_finding_mark_show_kept (GtkImage   *image,
                           const char *words)
{
  g_return_if_fail (GTK_IS_IMAGE (image));

  gtk_widget_set_visible (GTK_WIDGET (image), TRUE);
  gtk_widget_set_tooltip_text (GTK_WIDGET (image), words);
  gtk_image_set_from_icon_name (image, "object-select-symbolic");
  set_class (image, NULL);
  set_name (image, _ ("Kept"), words);
}
