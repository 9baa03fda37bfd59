/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-box.h"

G_BEGIN_DECLS

#define SW_MOTIF_MAX_EGGS 30
#define SW_MOTIF_MAX_LINE 24
#define SW_MOTIF_MAX_SEAMS 24

typedef enum
{
  SW_INK_NEAR,
  SW_INK_FAR,
  SW_INK_START,
} SwInk;

/**
 * SwMotif:
 * @part: which part of the body, -1 for a thing
 * @prop: for a thing: its number in the figure
 * @body: the body it belongs to
 * @under: set of #SwPart bits that are always drawn after it
 * @over: set of #SwPart bits that are always drawn before it
 * @tone: for a thing: its fill
 * @folds: for a thing: whether it is soft and shows folds
 * @hidden: whether so little of it shows that it would look like dirt
 * @style: how it is drawn
 * @outlines: of its hulls
 * @n_outlines: how many
 * @extent: round all of them
 * @eggs: ellipsoids that fill it, for depth; once the items are sorted only the first
 * @n_eggs: how many
 * @line: for what is thin, a band or cord: its middle; it has no outlines then
 * @n_line: how many places that has
 * @line_width: how broad it is, parts of stature; 0 for a cord
 * @line_ink: tone of a band's edges
 * @seams: short lines upon a thing that tell what it is
 * @n_seams: how many
 * @camera: (nullable): for furniture: the view, and then @box is what it is
 * @box: a piece of furniture in front of some of the body
 * @joint: where it hangs on its parent
 * @end: its far end
 *
 * One thing to draw as a whole, in front of some others and behind the rest. It is no larger than what it holds: a long
 * programme has some fifty thousand of them.
 */
typedef struct
{
  int part;
  int prop;
  const SwBody *body;
  guint under;
  guint over;
  double tone;
  gboolean folds;
  gboolean hidden;
  SwInk style;
  SwOutline *outlines;
  int n_outlines;
  SwExtent extent;
  SwEgg *eggs;
  int n_eggs;
  SwSpot *line;
  int n_line;
  double line_width;
  double line_ink;
  SwSpot (*seams)[2];
  int n_seams;
  const SwCamera *camera;
  SwBox box;
  SwSpot joint;
  SwSpot end;
} SwMotif;

/**
 * SwMotifs:
 *
 * All motifs of one picture, and the order in which they are drawn.
 */
typedef struct
{
  SwMotif *items;
  int *order;
  int n_items;
} SwMotifs;

void sw_motif_clear (SwMotif *self);
void sw_motifs_clear (SwMotifs *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwMotifs, sw_motifs_clear)

SwMotif *sw_motifs_add_part (SwMotifs        *self,
                           const SwBody   *body,
                           SwPart          part,
                           SwInk         style,
                           const SwCamera *camera,
                           double          tolerance);
SwMotif *sw_motifs_add_thing (SwMotifs     *self,
                            int          prop,
                            const SwEgg *eggs,
                            const int   *hull_sizes,
                            int          n_hulls,
                            double       tolerance);
SwMotif *sw_motifs_add_line (SwMotifs       *self,
                             int             prop,
                             const SwCamera *camera,
                             const SwVector *line,
                             int             n_line,
                             double          width);
SwMotif *sw_motifs_add_box (SwMotifs       *self,
                            const SwBox    *box,
                            const SwCamera *camera,
                            double          tolerance);
void sw_motif_add_seam (SwMotif        *self,
                        const SwCamera *camera,
                        SwVector        from,
                        SwVector        to);
void sw_motifs_sort (SwMotifs *self);
double sw_motifs_get_share_seen (const SwMotifs *self,
                                int            nth);
void sw_motifs_hide_scraps (SwMotifs *self);
gboolean sw_motifs_joined (const SwMotif *a,
                          const SwMotif *b,
                          SwSpot       *joint,
                          double       *radius);
gboolean sw_motif_holds (const SwMotif *item,
                        double        x,
                        double        y);
SwInk sw_part_get_style (const SwBody   *body,
                           SwPart          part,
                           const SwCamera *camera);

G_END_DECLS
