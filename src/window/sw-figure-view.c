/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A figure on the screen: a cached picture at rest, the motion while it plays. */
#include "config.h"

#include "sw-figure-view.h"
#include "sw-phrases.h"

/* There in 1.2 s, a short stop, back in 1.2 s, a short stop: slow enough to follow across the desk. */
#define HOVER_MS 250

struct _SwFigureView
{
  GtkWidget parent_instance;

  SwPictures *pictures;
  SwExercise *exercise;
  gulong ready_handler;
  gboolean mirrored;
  gboolean playing;
  gboolean play_on_hover;
  GtkEventController *hover;
  guint hover_timeout;
  guint tick;
  gint64 started_us;
  int width_px;
  int height_px;
};

G_DEFINE_FINAL_TYPE (SwFigureView, sw_figure_view, GTK_TYPE_WIDGET)

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  (void) clock;
  (void) data;
  gtk_widget_queue_draw (widget);
  return G_SOURCE_CONTINUE;
}

static void
stop_hover_timeout (SwFigureView *self)
{
  g_clear_handle_id (&self->hover_timeout, g_source_remove);
}

static gboolean
hovered_cb (gpointer data)
{
  SwFigureView *self = data;

  self->hover_timeout = 0;
  sw_figure_view_set_playing (self, TRUE);
  return G_SOURCE_REMOVE;
}

static void
entered_cb (SwFigureView *self)
{
  if (self->play_on_hover && self->hover_timeout == 0)
    self->hover_timeout = g_timeout_add (HOVER_MS, hovered_cb, self);
}

static void
left_cb (SwFigureView *self)
{
  stop_hover_timeout (self);
  if (self->play_on_hover)
    sw_figure_view_set_playing (self, FALSE);
}

static void
ready_cb (SwFigureView *self,
          SwExercise   *exercise)
{
  if (exercise == NULL || exercise == self->exercise)
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
sw_figure_view_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  SwFigureView *self = SW_FIGURE_VIEW (widget);

  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width_px : self->height_px;
  *minimum_baseline = *natural_baseline = -1;
}

static void
snapshot_motion (SwFigureView *self,
                 GtkSnapshot  *snapshot,
                 int           width,
                 int           height)
{
  SwFigure *figure = sw_pictures_get_figure (self->pictures, self->exercise, self->mirrored);
  gint64 now = gdk_frame_clock_get_frame_time (gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  cairo_t *cr;

  if (figure == NULL)
    return;
  if (self->started_us == 0)
    self->started_us = now;

  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  sw_figure_draw_at (figure, cr, width, height,
                     sw_figure_get_phase (figure, (double) (now - self->started_us) / 1e6));
  cairo_destroy (cr);
}

static void
sw_figure_view_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  SwFigureView *self = SW_FIGURE_VIEW (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, width, height);
  GskRoundedRect paper;
  GdkTexture *texture;

  if (self->exercise == NULL || self->pictures == NULL || width <= 0 || height <= 0)
    return;

  gsk_rounded_rect_init_from_rect (&paper, &bounds, 6.0f);
  gtk_snapshot_push_rounded_clip (snapshot, &paper);
  gtk_snapshot_append_color (snapshot, &(GdkRGBA){ 1.0f, 1.0f, 1.0f, 1.0f }, &bounds);

  if (self->playing)
    {
      snapshot_motion (self, snapshot, width, height);
    }
  else
    {
      texture = sw_pictures_lookup (self->pictures, self->exercise, self->mirrored, width, height,
                                    gtk_widget_get_scale_factor (widget));
      if (texture != NULL)
        gtk_snapshot_append_texture (snapshot, texture, &bounds);
    }

  gtk_snapshot_pop (snapshot);
}

static void
sw_figure_view_unmap (GtkWidget *widget)
{
  SwFigureView *self = SW_FIGURE_VIEW (widget);

  stop_hover_timeout (self);
  sw_figure_view_set_playing (self, FALSE);
  GTK_WIDGET_CLASS (sw_figure_view_parent_class)->unmap (widget);
}

static void
sw_figure_view_dispose (GObject *object)
{
  SwFigureView *self = SW_FIGURE_VIEW (object);

  stop_hover_timeout (self);
  if (self->tick != 0)
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
      self->tick = 0;
    }
  if (self->pictures != NULL)
    g_clear_signal_handler (&self->ready_handler, self->pictures);
  g_clear_object (&self->pictures);
  g_clear_object (&self->exercise);

  G_OBJECT_CLASS (sw_figure_view_parent_class)->dispose (object);
}

static void
sw_figure_view_class_init (SwFigureViewClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = sw_figure_view_dispose;
  widget_class->measure = sw_figure_view_measure;
  widget_class->snapshot = sw_figure_view_snapshot;
  widget_class->unmap = sw_figure_view_unmap;

  gtk_widget_class_set_css_name (widget_class, "figure");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_figure_view_init (SwFigureView *self)
{
  self->width_px = 64;
  self->height_px = 56;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);

  self->hover = gtk_event_controller_motion_new ();
  g_signal_connect_swapped (self->hover, "enter", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (self->hover, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), self->hover);
}

/**
 * sw_figure_view_new:
 * @pictures: (nullable): where pictures come from; may be set later
 * @width_px: least and natural width in logical pixels
 * @height_px: least and natural height in logical pixels
 *
 * Returns: (transfer floating): a view that shows no figure yet
 */
GtkWidget *
sw_figure_view_new (SwPictures *pictures,
                    int         width_px,
                    int         height_px)
{
  SwFigureView *self = g_object_new (SW_TYPE_FIGURE_VIEW, NULL);

  self->width_px = width_px;
  self->height_px = height_px;
  if (pictures != NULL)
    sw_figure_view_set_pictures (self, pictures);

  return GTK_WIDGET (self);
}

/**
 * sw_figure_view_set_pictures:
 * @pictures: where pictures come from
 */
void
sw_figure_view_set_pictures (SwFigureView *self,
                             SwPictures   *pictures)
{
  g_return_if_fail (SW_IS_FIGURE_VIEW (self));
  g_return_if_fail (SW_IS_PICTURES (pictures));

  if (self->pictures == pictures)
    return;

  if (self->pictures != NULL)
    g_clear_signal_handler (&self->ready_handler, self->pictures);
  g_set_object (&self->pictures, pictures);
  self->ready_handler = g_signal_connect_swapped (pictures, "ready", G_CALLBACK (ready_cb), self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * sw_figure_view_set_exercise:
 * @exercise: (nullable): whose figure to show
 * @mirrored: whether the other side works
 */
void
sw_figure_view_set_exercise (SwFigureView *self,
                             SwExercise   *exercise,
                             gboolean      mirrored)
{
  g_return_if_fail (SW_IS_FIGURE_VIEW (self));

  mirrored = !!mirrored;
  if (self->exercise == exercise && self->mirrored == mirrored)
    return;

  g_set_object (&self->exercise, exercise);
  self->mirrored = mirrored;
  self->started_us = 0;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* What the handout would say about figures in the window's language. */
static SwPhrases *
window_phrases (void)
{
  static SwPhrases *phrases;
  const char *const *names = g_get_language_names ();

  for (guint i = 0; phrases == NULL && names[i] != NULL; i++)
    {
      g_autofree char *tag = g_strdelimit (g_strdup (names[i]), "_", '-');

      phrases = sw_phrases_new (tag, NULL);
    }
  if (phrases == NULL)
    phrases = sw_phrases_new ("en", NULL);

  return phrases;
}

/**
 * sw_figure_view_describe:
 * @name: what the picture is called
 *
 * Tells a screen reader the name, and in words what the figure shows.
 */
void
sw_figure_view_describe (SwFigureView *self,
                         const char   *name)
{
  SwFigure *figure = NULL;
  SwPhrases *phrases = window_phrases ();
  g_autofree char *words = NULL;

  g_return_if_fail (SW_IS_FIGURE_VIEW (self));

  if (self->pictures != NULL && self->exercise != NULL)
    figure = sw_pictures_get_figure (self->pictures, self->exercise, self->mirrored);
  words = figure != NULL && phrases != NULL ? sw_figure_dup_text (figure, phrases) : g_strdup ("");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

/**
 * sw_figure_view_set_playing:
 * @playing: whether to show the motion, from its start, again and again
 */
void
sw_figure_view_set_playing (SwFigureView *self,
                            gboolean      playing)
{
  g_return_if_fail (SW_IS_FIGURE_VIEW (self));

  playing = !!playing;
  if (self->playing == playing)
    return;

  self->playing = playing;
  self->started_us = 0;
  if (playing)
    {
      self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
    }
  else
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
      self->tick = 0;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * sw_figure_view_get_playing:
 *
 * Returns: whether the motion is being shown
 */
gboolean
sw_figure_view_get_playing (SwFigureView *self)
{
  g_return_val_if_fail (SW_IS_FIGURE_VIEW (self), FALSE);
  return self->playing;
}

/**
 * sw_figure_view_set_play_on_hover:
 * @on: whether the motion plays while the pointer rests on the figure
 */
void
sw_figure_view_set_play_on_hover (SwFigureView *self,
                                  gboolean      on)
{
  g_return_if_fail (SW_IS_FIGURE_VIEW (self));
  self->play_on_hover = on;
}
