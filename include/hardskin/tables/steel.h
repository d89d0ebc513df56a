/* The steels a shop case-hardens, with their analysis ranges (tables/steels.csv). */
#ifndef HARDSKIN_TABLES_STEEL_H
#define HARDSKIN_TABLES_STEEL_H

#include "hardskin/base/status.h"

#include <stddef.h>

/** Analysis in weight per cent. */
typedef struct hs_composition {
    double C, Mn, Si, Cr, Ni, Mo, Cu, V, Al, S, P, Pb;
} hs_composition;

typedef struct hs_steel {
    char name[32], standard[32];
    hs_composition low, mid, high; /* range of the standard; mid is what is reckoned with */
    int only_maxima;               /* the standard names maxima only: mid is an assumption */
    int alloyed;                   /* diffusivity models differ more on it */
    const char *basis, *source, *note;
} hs_steel;

/** A steel by its name or other name, letter case not counted ("C15E", "EN3B", "AISI 1018").
 *
 *  mid is the middle of the range; where only a maximum is known: Si .25, Mn two thirds of the
 *  maximum, C the maximum less .03 (own rule, quick sums), Cu and the like half the maximum.
 *  Returns  HS_OK, or HS_E_STEEL with the nearest name in the help. Output untouched on failure.
 *  Source   tables/steels.csv, a source and a basis per row. */
HS_API hs_status hs_steel_find(hs_steel *steel, const char *name, hs_error *err);

/** How many steels the table holds, and the steel of row i (0-based; i must exist). */
HS_API size_t hs_steel_count(void);
HS_API void hs_steel_at(hs_steel *steel, size_t i);

#endif
