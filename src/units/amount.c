/* An amount: a number with its unit, or several that go down a ladder (1 ft 2 in, 1 h 30 min). */
#include "units/cursor.h"

#include <stdio.h>
#include <string.h>

static int same_size(const hs_unit_row *unit, const char *name) {
    hs_unit_row other;
    return hs_unit_find(&other, name, strlen(name)) && !strcmp(unit->kind, other.kind) &&
           unit->multiply * other.divide == other.multiply * unit->divide;
}

/* May `low` follow `high` without a sign between? Only where the trade writes so. */
static int goes_down(const hs_unit_row *high, const hs_unit_row *low) {
    if (hs_unit_is(high, HS_TIME) && hs_unit_is(low, HS_TIME))
        return high->multiply / high->divide > low->multiply / low->divide;
    return (same_size(high, "ft") && same_size(low, "in")) ||
           (same_size(high, "lb") && same_size(low, "oz"));
}

static hs_status unit_read(hs_unit_row *out, hs_cursor *c) {
    const hs_token *token = hs_cursor_token(c);
    int column = hs_cursor_column(c, c->at);
    if (!hs_unit_find(out, hs_cursor_bytes(c, token), token->length))
        return hs_unit_refuse(c->err, column, hs_cursor_bytes(c, token), token->length,
                              c->expected);
    if (!hs_unit_is(out, c->expected)) {
        char help[320];
        snprintf(help, sizeof help, "%s is written %s", hs_kind_words(c->expected),
                 hs_kind_forms(c->expected));
        return hs_fail_at(c->err, column, HS_E_UNIT, help, "'%s' measures %s, but %s belongs here",
                          out->name, out->kind, hs_kind_words(c->expected));
    }
    c->at++;
    return HS_OK;
}

hs_status hs_amount_check(const hs_amount *a, const hs_cursor *c) {
    if (!same_size(&a->unit, "thou") || a->number >= 0.1 || a->number == 0) return HS_OK;
    return hs_fail_at(c->err, hs_cursor_column(c, a->first), HS_E_AMBIGUOUS,
                      "write inches (0.005 in) or thousandths (5 thou)",
                      "less than a tenth of a thou: were inches meant?");
}

/* The part just read stands above another one: it must be whole, and its step a real one. */
static hs_status check_ladder(const hs_amount *above, const hs_amount *part, size_t first,
                              const hs_cursor *c) {
    int column = hs_cursor_column(c, first);
    if (!part->has_unit)
        return hs_fail_at(c->err, column, HS_E_NO_UNIT, "write 1 h 30 min, or 1 ft 6 in",
                          "the last number has no unit");
    if (!goes_down(&above->unit, &part->unit))
        return hs_fail_at(c->err, column, HS_E_NUMBER, hs_kind_forms(c->expected),
                          "two quantities where one belongs");
    if (above->fraction || above->number != (double)(long long)above->number)
        return hs_fail_at(c->err, hs_cursor_column(c, above->first), HS_E_NUMBER,
                          "write 1 h 30 min, or 1.5 h",
                          "only the last number may have decimals or a fraction");
    if (hs_unit_difference(&part->unit, part->number) >= hs_unit_difference(&above->unit, 1))
        return hs_fail_at(c->err, column, HS_E_NUMBER, "carry the whole ones over: 2 h 30 min",
                          "'%s' runs past one '%s'", part->unit.name, above->unit.name);
    return HS_OK;
}

static hs_status part_read(hs_amount *part, hs_cursor *c) {
    part->first = c->at;
    hs_status status = hs_number_read(&part->number, &part->fraction, c);
    if (status) return status;
    part->has_unit = hs_cursor_token(c)->kind == TOKEN_UNIT;
    if (part->has_unit && (status = unit_read(&part->unit, c))) return status;
    return part->has_unit ? hs_amount_check(part, c) : HS_OK;
}

static int number_follows(const hs_cursor *c) {
    hs_token_kind kind = hs_cursor_token(c)->kind;
    return kind == TOKEN_NUMBER || kind == TOKEN_FRACTION;
}

/* "1/h" alone at the beginning, where the 1 was taken for a part of the unit. */
static hs_status reciprocal_read(hs_amount *out, hs_cursor *c) {
    *out = (hs_amount){.first = c->at, .number = 1, .parts = 1, .has_unit = 1};
    return unit_read(&out->unit, c);
}

hs_status hs_amount_read(hs_amount *out, hs_cursor *c) {
    const hs_token *token = hs_cursor_token(c);
    if (c->at == 0 && token->kind == TOKEN_UNIT && !strncmp(hs_cursor_bytes(c, token), "1/", 2))
        return reciprocal_read(out, c);
    hs_amount amount = {0};
    hs_status status = part_read(&amount, c);
    if (status) return status;
    size_t first = amount.first;
    amount.parts = 1;
    while (amount.has_unit && number_follows(c)) {
        hs_amount part = {0};
        if ((status = part_read(&part, c))) return status;
        if ((status = check_ladder(&amount, &part, part.first, c))) return status;
        part.before = amount.before + hs_unit_difference(&amount.unit, amount.number);
        part.parts = amount.parts + 1;
        amount = part;
    }
    amount.first = first;
    *out = amount;
    return HS_OK;
}
