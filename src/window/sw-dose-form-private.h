/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose-form.h"
#include "sw-field-row.h"
#include "sw-figure-view.h"
#include "sw-number.h"
#include "sw-place-fields.h"
#include "sw-test-field.h"
#include "sw-text-area.h"
#include "sw-working-button.h"

G_BEGIN_DECLS

/* The parts of a dose that have a row of their own. */
typedef enum
{
  SW_DOSE_FIELD_SETS,
  SW_DOSE_FIELD_REPS,
  SW_DOSE_FIELD_HOLD,
  SW_DOSE_FIELD_TEMPO,
  SW_DOSE_FIELD_LOAD,
  SW_DOSE_FIELD_REST,
  SW_DOSE_FIELD_SIDE,
  SW_DOSE_FIELD_DIRECTIONS,
  SW_DOSE_FIELD_EXTRA,
  SW_DOSE_FIELD_DAYS,
  SW_DOSE_FIELD_TIMES,
  SW_DOSE_FIELD_EFFORT,
  SW_DOSE_FIELD_PAIN,
} SwDoseField;

#define SW_N_DOSE_FIELDS (SW_DOSE_FIELD_PAIN + 1)

struct _SwDoseForm
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwItem *item;
  gboolean refreshing;    /* widgets follow the document: nothing is edited */
  char *shown_line;       /* the line of the dose that was last given or shown, or NULL */
  char *shown_tempo;      /* likewise */
  char *line_complaint;   /* why the line's text is no dose, or NULL */
  guint complaint_timeout;
  char *shown_remarks;

  GtkWidget *box;
  SwFigureView *figure;
  GtkToggleButton *play;
  GtkLabel *name;
  GtkLabel *about;
  GtkEntry *line;
  GtkBox *line_message;
  GtkImage *line_mark;
  GtkLabel *line_words;
  SwWorkingButton *takes;
  SwPlaceFields *place;
  GtkBox *swaps;
  GtkButton *easier;
  GtkButton *harder;
  GtkLabel *demands;
  GtkBox *remarks;
  SwFieldRow *rows[SW_N_DOSE_FIELDS];
  SwNumber *numbers[SW_N_DOSE_FIELDS];  /* NULL where the field is no number */
  SwFieldRow *reps_high_row;
  SwNumber *reps_high;
  GtkEntry *tempo;
  GtkDropDown *load_unit;
  SwTestField *test_field;
  GtkDropDown *side;
  GtkToggleButton *extra_right;
  GtkToggleButton *extra_left;
  SwFieldRow *note_row;
  SwTextArea *note;
  GtkButton *usual;
};

/* sw-dose-form.c */
void sw_dose_form_change (SwDoseForm   *self,
                          const SwDose *dose);

/* sw-dose-form-fields.c */
void sw_dose_form_bind_fields (GtkWidgetClass *widget_class);
void sw_dose_form_init_fields (SwDoseForm *self);
void sw_dose_form_refresh_fields (SwDoseForm *self);
gboolean sw_dose_form_is_about_field (const SwFinding *finding);

G_END_DECLS
