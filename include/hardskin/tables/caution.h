/* The cautions of the trade (tables/cautions.csv): one code, one text, one source. Which of them a
 * job shows is decided by plan; what they say stands in the table alone. */
#ifndef HARDSKIN_TABLES_CAUTION_H
#define HARDSKIN_TABLES_CAUTION_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_caution {
    const char *code;   /* "quench-oil-fire" */
    const char *level;  /* danger | warning | caution | notice (ANSI Z535.4) */
    const char *when;   /* key of the step or condition that calls for it: "quench oil" */
    const char *text;   /* hazard, consequence, how to avoid it */
    const char *why;    /* reason or figures behind it, "" if the text says all */
    const char *source; /* key into tables/SOURCES.md */
    const char *basis;
} hs_caution;

/** The caution of that code (letter case counts). The texts belong to the table.
 *  Returns  1 when it is there; 0 when not, the output untouched. */
HS_API int hs_caution_find(hs_caution *caution, const char *code);

/** How many cautions there are, and the one of row i (0-based; i must exist). Rows stand in the
 *  order of the route, so that going through them by `when` keeps that order. */
HS_API size_t hs_caution_count(void);
HS_API void hs_caution_at(hs_caution *caution, size_t i);

#endif
