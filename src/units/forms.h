/* The forms a quantity may be written in, before any conversion: one amount; a range; an amount
 * with a tolerance. See hardskin/units/quantity.h for what is legal. */
#ifndef HS_UNITS_FORMS_H
#define HS_UNITS_FORMS_H

#include "units/cursor.h"
#include "units/reading.h"

typedef struct hs_draft {
    hs_form form;
    hs_amount value;
    hs_amount other[2]; /* second end of a range, or half width, or upper and lower deviation */
    int sign, other_sign[2];
    size_t others;
    int fixed_other; /* 1: the second deviation was left out and is 0 */
} hs_draft;

/** Read from the cursor on; stops at the first token that does not go on with the form. */
hs_status hs_draft_read(hs_draft *out, hs_cursor *c);

/** Is the next token of that kind? */
int hs_cursor_is(const hs_cursor *c, hs_token_kind kind);

/** hs_fail_at the column of a token. */
hs_status hs_cursor_fail(const hs_cursor *c, size_t token, hs_status status, const char *help,
                         const char *message);

#endif
