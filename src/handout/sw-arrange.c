/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The handout composed and broken into pages, in the best of several ways where there is a choice. */
#include "config.h"

#include "sw-arrange.h"

#include "sw-compose.h"

/* How much of its white space the first page keeps at least. */
#define LEAST_FRONT_GAP 0.35
/* A page filled no further than this has room for more. */
#define ROOMY 0.75
/* Fewer exercises need no list. */
#define FEWEST_AT_A_GLANCE 4
/* A number of another length may move what follows by a line, hardly ever twice. */
#define MOST_SETTLING 3
/* A dose beside a picture on a card for the wall has lines of at least so many characters. */
#define FEWEST_BESIDE 14.0

/* What is being arranged; @large as in SwComposer, of the arrangement chosen. */
typedef struct
{
  SwPages *pages;
  SwComposer *composer;
  GArray *large;
} Arranged;

/* Composes and breaks everything. @large: for each exercise in order whether its picture is drawn large, or NULL. */
static gboolean
lay_out (Arranged     *self,
         SwProgramme  *programme,
         GArray       *large,
         GError      **error)
{
  SwComposer *composer = self->composer;

  sw_pages_clear (self->pages);
  sw_composer_restart (composer);
  sw_measured_begin (composer->measured);
  composer->large = large;
  composer->programme = programme;

  if (composer->layout == SW_LAYOUT_SUMMARY)
    {
      if (!sw_compose_wall (composer, programme, error))
        return FALSE;
    }
  else
    {
      sw_compose_front (composer, programme);
      if (!sw_compose_sessions (composer, programme, error))
        return FALSE;
      sw_compose_back (composer, programme);
    }
  composer->large = NULL;
  composer->programme = NULL;

  sw_pages_init (self->pages, composer);
  return TRUE;
}

/* How the cards for the wall are arranged. */
typedef struct
{
  int n_cards;
  gboolean beside;
  double share;
  double height_pt;
  int n_pages;
} Wall;

/* Of a card's width: how tall its picture may be. */
static const double shares[] = { 0.85, 0.72, 0.6, 0.5, 0.42 };

static gboolean
lay_out_wall_so (Arranged     *self,
                 SwProgramme  *programme,
                 const Wall   *wall,
                 GError      **error)
{
  self->composer->n_cards = wall->n_cards;
  self->composer->picture_beside = wall->beside;
  self->composer->tallest_picture = wall->share;
  return lay_out (self, programme, NULL, error);
}

/* Finds the arrangement of cards with the fewest pages, and of those the one with the largest pictures. A dose beside
 * the picture saves height where the page is wide. Fewer cards stand beside one another where a word would be divided.
 * @first_share: the tallest pictures that are tried
 * @measures: whether the cards are only measured. */
static gboolean
find_wall (Arranged     *self,
           SwProgramme  *programme,
           guint         first_share,
           gboolean      measures,
           Wall         *best,
           GError      **error)
{
  SwComposer *composer = self->composer;
  const SwStyle *style = &composer->style;
  int least = sw_style_get_least_cards (style);
  gboolean done = TRUE;
  SwCardWords words;

  sw_card_words_init (&words, composer, programme);
  composer->picture_beside = FALSE;
  while (least > 1 && !sw_card_has_room (composer, &words, least))
    least--;
  *best = (Wall){ .n_cards = 1, .share = shares[0], .n_pages = G_MAXINT };
  composer->measures = measures;
  for (int way = 0; way < 2; way++)
    for (int n = least; n <= sw_style_get_most_cards (style); n++)
      for (guint i = first_share; i < G_N_ELEMENTS (shares); i++)
        {
          Wall wall = { .n_cards = n, .beside = way == 1, .share = shares[i] };
          double card_pt = sw_card_get_width (composer, n);
          double picture_pt;

          composer->picture_beside = wall.beside;
          picture_pt = sw_card_get_picture_width (composer, card_pt);
          wall.height_pt = shares[i] * picture_pt;
          if ((wall.beside || n > least) && !sw_card_has_room (composer, &words, n))
            break;
          if (wall.beside && card_pt - picture_pt < FEWEST_BESIDE * 0.5 * style->body_pt)
            continue;
          if (best->n_pages == 1 && wall.height_pt <= best->height_pt)
            continue;
          done = done && lay_out_wall_so (self, programme, &wall, error);
          wall.n_pages = self->pages->n_pages;
          if (wall.n_pages < best->n_pages || (wall.n_pages == best->n_pages && wall.height_pt > best->height_pt))
            *best = wall;
        }

  composer->measures = FALSE;
  return done;
}

/* Many arrangements are tried, so the cards are only measured for it. In languages whose texts need several fonts that
 * may be off by a line and so by a page; then they are set down each time. */
static gboolean
arrange_wall (Arranged     *self,
              SwProgramme  *programme,
              Wall         *best,
              GError      **error)
{
  if (!find_wall (self, programme, 0, TRUE, best, error) || !lay_out_wall_so (self, programme, best, error))
    return FALSE;
  if (self->pages->n_pages == best->n_pages)
    return TRUE;

  return find_wall (self, programme, 0, FALSE, best, error) && lay_out_wall_so (self, programme, best, error);
}

/* What the pictures show is left out where it would cost a page. */
static gboolean
arrange_captions (Arranged     *self,
                  SwProgramme  *programme,
                  GError      **error)
{
  Wall told;
  Wall bare;

  self->composer->captions = TRUE;
  if (!arrange_wall (self, programme, &told, error))
    return FALSE;
  told.n_pages = self->pages->n_pages;
  if (told.n_pages == 1)
    return TRUE;

  /* The smallest pictures tell whether there is a page to save at all. */
  self->composer->captions = FALSE;
  if (!find_wall (self, programme, G_N_ELEMENTS (shares) - 1, TRUE, &bare, error))
    return FALSE;
  if (bare.n_pages < told.n_pages)
    {
      if (!arrange_wall (self, programme, &bare, error))
        return FALSE;
      if (self->pages->n_pages < told.n_pages)
        return TRUE;
    }

  self->composer->captions = TRUE;
  return lay_out_wall_so (self, programme, &told, error);
}

/* The logo is left out where it would cost a page: this one is for the wall, to be seen at a glance. */
static gboolean
lay_out_wall (Arranged     *self,
              SwProgramme  *programme,
              GError      **error)
{
  g_autoptr (SwLogoPicture) logo = NULL;
  int n_pages;

  if (!arrange_captions (self, programme, error))
    return FALSE;
  n_pages = self->pages->n_pages;
  if (self->composer->logo == NULL || n_pages == 1)
    return TRUE;

  logo = g_steal_pointer (&self->composer->logo);
  if (!arrange_captions (self, programme, error))
    return FALSE;
  if (self->pages->n_pages < n_pages)
    return TRUE;
  self->composer->logo = g_steal_pointer (&logo);
  return arrange_captions (self, programme, error);
}

/* Which exercises have a page to themselves, filled no further than @roomy. */
static GArray *
find_lonely (Arranged *self,
             double    roomy,
             guint    *n_lonely)
{
  g_autoptr (GArray) pages = g_array_new (FALSE, FALSE, sizeof (int));
  g_autofree guint *n_on_page = g_new0 (guint, self->pages->n_pages);
  g_autofree double *filled_pt = g_new0 (double, self->pages->n_pages);
  double most_pt = roomy * self->composer->style.page_height_pt;
  GArray *lonely = g_array_new (FALSE, TRUE, sizeof (gboolean));

  for (guint i = 0; i < self->pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (self->pages->places, SwPlace, i);

      filled_pt[place->page] = place->y_pt + place->block->strip.height_pt;
      for (guint k = 0; k < place->block->entries->len; k++)
        if (g_array_index (place->block->entries, SwEntry, k).is_exercise)
          {
            g_array_append_val (pages, place->page);
            n_on_page[place->page]++;
          }
    }

  *n_lonely = 0;
  for (guint i = 0; i < pages->len; i++)
    {
      int page = g_array_index (pages, int, i);
      gboolean alone = n_on_page[page] == 1 && filled_pt[page] <= most_pt;

      g_array_append_val (lonely, alone);
      *n_lonely += alone;
    }
  return lonely;
}

/* Where a block stands. */
static const SwPlace *
find_place (Arranged *self,
            guint     block)
{
  for (guint i = 0; i < self->pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (self->pages->places, SwPlace, i);

      if (place->block == g_ptr_array_index (self->composer->blocks, block))
        return place;
    }
  g_return_val_if_reached (NULL);
}

/* Whether the signs to stop for go on over a page. */
static gboolean
is_stop_torn (Arranged *self)
{
  return find_place (self, self->composer->stop_first)->page != find_place (self, self->composer->stop_last)->page;
}

/* Whether the signs to stop for stand whole on the first page. */
static gboolean
is_stop_first (Arranged *self)
{
  return !is_stop_torn (self) && find_place (self, self->composer->stop_first)->page == 0;
}

/* Lets the first pages have less white space where that keeps the signs to stop for together, on the first page if that
 * can be. */
static gboolean
lay_out_with_front (Arranged     *self,
                    SwProgramme  *programme,
                    GError      **error)
{
  gboolean torn;

  self->composer->front_gap = 1.0;
  if (!lay_out (self, programme, NULL, error))
    return FALSE;
  if (is_stop_first (self))
    return TRUE;

  torn = is_stop_torn (self);
  self->composer->front_gap = LEAST_FRONT_GAP;
  if (!lay_out (self, programme, NULL, error))
    return FALSE;
  if (is_stop_first (self) || (torn && !is_stop_torn (self)))
    return TRUE;

  self->composer->front_gap = 1.0;
  return lay_out (self, programme, NULL, error);
}

/* Whether the page on which a block stands is left with room below it: what follows begins the next one. */
static gboolean
has_room_below (Arranged *self,
                guint     block)
{
  const SwPlace *place = find_place (self, block);

  return find_place (self, block + 1)->page > place->page
         && place->y_pt + place->block->strip.height_pt <= ROOMY * self->composer->style.page_height_pt;
}

/* Tells the exercises at a glance there, unless it costs a page or tears the signs to stop for. @done: (out): whether it
 * does neither */
static gboolean
try_glance (Arranged     *self,
            SwProgramme  *programme,
            SwGlance      glance,
            gboolean     *done,
            GError      **error)
{
  int n_pages = self->pages->n_pages;
  gboolean torn = is_stop_torn (self);

  self->composer->glance = glance;
  if (!lay_out (self, programme, NULL, error))
    return FALSE;
  *done = self->pages->n_pages <= n_pages && (torn || !is_stop_torn (self));
  if (*done)
    return TRUE;

  self->composer->glance = SW_GLANCE_NONE;
  return lay_out (self, programme, NULL, error);
}

/* Tells the exercises at a glance on the first page, with less white space there if need be. */
static gboolean
try_glance_on_front (Arranged     *self,
                     SwProgramme  *programme,
                     gboolean     *done,
                     GError      **error)
{
  double front_gap = self->composer->front_gap;

  if (!try_glance (self, programme, SW_GLANCE_BEFORE_STOP, done, error))
    return FALSE;
  if (*done)
    return TRUE;

  self->composer->front_gap = LEAST_FRONT_GAP;
  if (!try_glance (self, programme, SW_GLANCE_BEFORE_STOP, done, error))
    return FALSE;
  if (*done)
    return TRUE;

  self->composer->front_gap = front_gap;
  return lay_out (self, programme, NULL, error);
}

/* Tells the exercises at a glance where there is room on the first pages, else for a page more, unless they are few. */
static gboolean
add_glance (Arranged     *self,
            SwProgramme  *programme,
            GError      **error)
{
  const SwComposer *composer = self->composer;
  gboolean done = FALSE;

  if (composer->n_exercises < FEWEST_AT_A_GLANCE)
    return TRUE;

  if (composer->stop_first > 0 && has_room_below (self, composer->stop_first - 1)
      && !try_glance_on_front (self, programme, &done, error))
    return FALSE;
  if (!done && has_room_below (self, composer->front_last)
      && !try_glance (self, programme, SW_GLANCE_BEFORE_FIRST, &done, error))
    return FALSE;
  if (done)
    return TRUE;

  self->composer->glance = SW_GLANCE_BEFORE_FIRST;
  if (!lay_out (self, programme, NULL, error))
    return FALSE;
  if (find_place (self, composer->front_last + 1)->scale >= 1.0)
    return TRUE;

  /* A list taller than a page would be in smaller print. */
  self->composer->glance = SW_GLANCE_NONE;
  return lay_out (self, programme, NULL, error);
}

/* Draws the pictures of exercises that have a page to themselves large: of as many as cost no page. */
static gboolean
enlarge_pictures (Arranged     *self,
                  SwProgramme  *programme,
                  GError      **error)
{
  static const double roomy[] = { 0.85, 0.75, 0.65 };
  int n_pages = self->pages->n_pages;
  guint n_tried = G_MAXUINT;

  if (!self->composer->style.columns)
    return TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (roomy); i++)
    {
      guint n_lonely;
      g_autoptr (GArray) lonely = find_lonely (self, roomy[i], &n_lonely);

      if (n_lonely == 0)
        return TRUE;
      if (n_lonely == n_tried)
        continue;
      n_tried = n_lonely;
      if (!lay_out (self, programme, lonely, error))
        return FALSE;
      if (self->pages->n_pages <= n_pages)
        {
          self->large = g_array_ref (lonely);
          return TRUE;
        }
      if (!lay_out (self, programme, NULL, error))
        return FALSE;
    }
  return TRUE;
}

/* Returns: the page of an item, from 1; 0 when it is on none */
static int
find_page (Arranged   *self,
           const char *item_id)
{
  for (guint i = 0; i < self->pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (self->pages->places, SwPlace, i);

      for (guint k = 0; k < place->block->entries->len; k++)
        if (g_strcmp0 (g_array_index (place->block->entries, SwEntry, k).item_id, item_id) == 0)
          return place->page + 1;
    }
  return 0;
}

/* Returns: whether a self-check stands on another page than the first page says */
static gboolean
find_check_pages (Arranged    *self,
                  SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  GArray *pages = self->composer->check_pages;
  gboolean changed = FALSE;

  g_array_set_size (pages, g_list_model_get_n_items (sessions));
  for (guint i = 0; i < pages->len; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (SwItem) check = sw_compose_find_check (session);
      int page = check != NULL ? find_page (self, sw_item_get_id (check)) : 0;

      changed = changed || page != g_array_index (pages, int, i);
      g_array_index (pages, int, i) = page;
    }
  return changed;
}

/* The first page says where the self-checks are, which is known only now. */
static gboolean
tell_check_pages (Arranged     *self,
                  SwProgramme  *programme,
                  GError      **error)
{
  for (int i = 0; i < MOST_SETTLING && find_check_pages (self, programme); i++)
    if (!lay_out (self, programme, self->large, error))
      return FALSE;
  return TRUE;
}

static gboolean
arrange_pages (Arranged     *self,
               SwProgramme  *programme,
               GError      **error)
{
  return lay_out_with_front (self, programme, error) && add_glance (self, programme, error)
         && (self->composer->layout == SW_LAYOUT_COMPACT || enlarge_pictures (self, programme, error))
         && tell_check_pages (self, programme, error);
}

/**
 * sw_arrange:
 * @pages: to be filled
 * @composer: with nothing composed
 * @programme: what to tell
 * @error: return location for an error of %SW_HANDOUT_ERROR
 *
 * Composes everything and breaks it into pages, in several ways where the layout leaves a choice.
 *
 * Returns: whether every exercise could be composed
 */
gboolean
sw_arrange (SwPages      *pages,
            SwComposer   *composer,
            SwProgramme  *programme,
            GError      **error)
{
  Arranged self = { pages, composer, NULL };
  gboolean done;

  done = composer->layout == SW_LAYOUT_SUMMARY ? lay_out_wall (&self, programme, error)
                                               : arrange_pages (&self, programme, error);
  g_clear_pointer (&self.large, g_array_unref);
  return done;
}
