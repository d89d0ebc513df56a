/* The only place that calls PCRE2: two patterns, compiled once, run under tight limits. */
#ifndef HS_UNITS_PATTERN_H
#define HS_UNITS_PATTERN_H

#include "units/fold.h"

/* In the order of the groups of the token pattern. */
typedef enum hs_token_kind {
    TOKEN_END,
    TOKEN_UNIT,
    TOKEN_FRACTION,
    TOKEN_NUMBER,
    TOKEN_RANGE,
    TOKEN_PLUS_MINUS,
    TOKEN_PLUS,
    TOKEN_MINUS,
    TOKEN_SLASH,
    TOKEN_DELTA,
    TOKEN_DIAMETER,
    TOKEN_COMMA,
    TOKEN_COLON
} hs_token_kind;

typedef struct hs_token {
    hs_token_kind kind;
    size_t start, length; /* in the folded text */
    int gap;              /* spaces stand before it */
} hs_token;

enum { TOKENS = 48 };

/** Cut the whole folded text into tokens, a TOKEN_END last. Fails on the first byte that begins
 *  none, and when a limit of the pattern engine is reached. */
hs_status hs_tokens(hs_token tokens[TOKENS], size_t *n, const hs_units *units,
                    const hs_folded *text, hs_error *err);

typedef struct hs_fit_text {
    size_t number, number_length; /* in the folded text */
    size_t zone, zone_length;
    size_t grade, grade_length;
} hs_fit_text;

/** Is the whole text a nominal size and a fit class? *found says so. */
hs_status hs_fit_match(hs_fit_text *out, int *found, const hs_units *units, const hs_folded *text,
                       hs_error *err);

#endif
