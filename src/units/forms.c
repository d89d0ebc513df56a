/* One amount, a range, an amount with a tolerance: what the signs between the numbers mean. */
#include "units/forms.h"

#include <string.h>

int hs_cursor_is(const hs_cursor *c, hs_token_kind kind) {
    return hs_cursor_token(c)->kind == kind;
}

hs_status hs_cursor_fail(const hs_cursor *c, size_t token, hs_status status, const char *help,
                         const char *message) {
    return hs_fail_at(c->err, hs_cursor_column(c, token), status, help, "%s", message);
}

/* A sign that belongs to the number itself: only minus, only where the number begins. */
static hs_status signed_amount(hs_amount *out, int *sign, hs_cursor *c) {
    *sign = hs_cursor_is(c, TOKEN_MINUS) ? -1 : 1;
    if (hs_cursor_is(c, TOKEN_PLUS))
        return hs_cursor_fail(c, c->at, HS_E_NUMBER, "leave the plus out",
                              "a plus before the number: is it a tolerance?");
    if (hs_cursor_is(c, TOKEN_MINUS)) c->at++;
    size_t start = c->at;
    hs_status status = hs_amount_read(out, c);
    if (!status && *sign < 0 && out->parts > 1)
        return hs_cursor_fail(c, start, HS_E_AMBIGUOUS, "write it in one unit",
                              "does the minus hold for all of it?");
    return status;
}

static hs_status range_rest(hs_draft *d, hs_cursor *c) {
    c->at++;
    d->form = HS_FORM_RANGE;
    d->others = 1;
    return signed_amount(&d->other[0], &d->other_sign[0], c);
}

static hs_status plus_minus_rest(hs_draft *d, hs_cursor *c) {
    c->at++;
    d->form = HS_FORM_TOLERANCE;
    d->others = 2;
    hs_status status = hs_amount_read(&d->other[0], c);
    d->other[1] = d->other[0];
    d->other_sign[0] = 1;
    d->other_sign[1] = -1;
    return status;
}

/* The deviation behind the bar; a bare 0 needs no sign. */
static hs_status second_deviation(hs_draft *d, hs_cursor *c) {
    if (hs_cursor_is(c, TOKEN_SLASH)) c->at++;
    d->other_sign[1] = hs_cursor_is(c, TOKEN_MINUS) ? -1 : 1;
    int is_signed = hs_cursor_is(c, TOKEN_MINUS) || hs_cursor_is(c, TOKEN_PLUS);
    if (is_signed) c->at++;
    size_t start = c->at;
    hs_status status = hs_amount_read(&d->other[1], c);
    if (!status && !is_signed && d->other[1].number != 0)
        return hs_cursor_fail(c, start, HS_E_NUMBER, "write +0.03/-0.01 mm",
                              "the second deviation has no sign");
    return status;
}

/* Behind the first deviation: another one, or (after a plus) nothing. */
static hs_status deviations_rest(hs_draft *d, int sign, hs_cursor *c) {
    d->form = HS_FORM_TOLERANCE;
    d->others = 2;
    d->other_sign[0] = sign;
    d->other_sign[1] = 1;
    if (hs_cursor_is(c, TOKEN_SLASH) || hs_cursor_is(c, TOKEN_MINUS)) return second_deviation(d, c);
    /* "1 +1/2 in" and "1 ft +2 in" could be sums */
    if (d->other[0].fraction || d->other[0].parts > 1 ||
        (d->value.has_unit && d->other[0].has_unit &&
         strcmp(d->value.unit.name, d->other[0].unit.name) != 0))
        return hs_cursor_fail(c, d->other[0].first, HS_E_AMBIGUOUS,
                              "a tolerance: 1 +0.01/-0 in; a sum: 1 1/2 in, 1 ft 2 in",
                              "is this plus a tolerance or a sum?");
    d->other[1] = d->other[0];
    d->other[1].number = d->other[1].before = 0;
    d->fixed_other = 1;
    return HS_OK;
}

/* "58-62 HRC", "60 -0.05/-0.10 mm" or something that could be either. */
static hs_status minus_rest(hs_draft *d, hs_cursor *c) {
    size_t minus = c->at++;
    int even = c->token[minus].gap == hs_cursor_token(c)->gap;
    hs_status status = hs_amount_read(&d->other[0], c);
    if (status) return status;
    if (hs_cursor_is(c, TOKEN_SLASH)) return deviations_rest(d, -1, c);
    int mixed_units = d->value.has_unit && d->other[0].has_unit &&
                      strcmp(d->value.unit.name, d->other[0].unit.name) != 0;
    if (!even || d->value.fraction || d->other[0].fraction || d->sign < 0 || mixed_units)
        return hs_cursor_fail(
            c, minus, HS_E_AMBIGUOUS,
            "a range: 8..10 mm; a tolerance: 10 +0/-0.1 mm; a mixed number: 1-1/2 in",
            "is this minus a range, a tolerance or a mixed number?");
    d->form = HS_FORM_RANGE;
    d->others = 1;
    d->other_sign[0] = 1;
    return HS_OK;
}

hs_status hs_draft_read(hs_draft *d, hs_cursor *c) {
    hs_status status = signed_amount(&d->value, &d->sign, c);
    if (status) return status;
    if (hs_cursor_is(c, TOKEN_RANGE)) return range_rest(d, c);
    if (hs_cursor_is(c, TOKEN_PLUS_MINUS)) return plus_minus_rest(d, c);
    if (hs_cursor_is(c, TOKEN_MINUS)) return minus_rest(d, c);
    if (!hs_cursor_is(c, TOKEN_PLUS)) return HS_OK;
    c->at++;
    if ((status = hs_amount_read(&d->other[0], c))) return status;
    return deviations_rest(d, 1, c);
}
