/* The cautions that reports print (tables/cautions.csv), by their code. */
#ifndef HARDSKIN_TABLES_CAUTION_H
#define HARDSKIN_TABLES_CAUTION_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_caution {
    const char *code;
    const char *level; /* danger, warning, caution, notice: meaning of ANSI Z535.4 */
    const char *when;  /* what calls it, in words */
    const char *hazard, *consequence, *avoidance; /* one sentence each */
    const char *source, *basis;
} hs_caution;

/** A caution by its code, e.g. "no-lid".
 *  Returns  HS_OK; HS_E_WORD with the nearest code in the help. Output untouched on failure. */
HS_API hs_status hs_caution_find(hs_caution *out, const char *code, hs_error *err);

/** What a level means, in one line; "" for a word that is none.
 *  Source   ANSI Z535.4-2007 clause 4.14 (tables/SOURCES.md: signal-words) */
HS_API const char *hs_caution_meaning(const char *level);

/** How many cautions there are, and caution i (0-based; must exist), in order of the route. */
HS_API size_t hs_caution_count(void);
HS_API void hs_caution_at(hs_caution *out, size_t i);

#endif
