/* Bar as it is listed: kinds, sizes, tolerances, straightness. */
#ifndef HS_PLAN_BLANK_LIST_H
#define HS_PLAN_BLANK_LIST_H

#include <stddef.h>

/** What the part asks of a bar. A round asks width_m only (thickness_m 0). */
typedef struct hs_bar_asked {
    double width_m, thickness_m; /* rough sizes, the width the larger */
    double length_m;             /* over which its straightness counts */
    int inch, bright;
} hs_bar_asked;

/** One bar of the lists, and what of it is lost. */
typedef struct hs_bar {
    const char *form, *standard;
    double width_m, thickness_m; /* round and square: thickness_m = width_m */
    double under_width_m, under_thickness_m;
    double skin_m; /* rolled, per side; 0 on bright bar */
    double bow_m;  /* straightness over the length */
    int found;
} hs_bar;

/** The bar of least section that holds the part after tolerance, bow and skin; found = 0 if none.
 *  With `round` the lists of rounds are asked, else those of flats and squares. */
void hs_bar_choose(hs_bar *out, const hs_bar_asked *asked, int round);

/** Largest listed round diameter or flat thickness and width (m). */
void hs_bar_largest(double *width_m, double *thickness_m, const hs_bar_asked *asked, int round);

#endif
