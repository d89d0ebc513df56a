/* From the written form to numbers in SI. */
#include "units/reading.h"
#include "units/agree.h"
#include "units/forms.h"

#include <stdio.h>
#include <string.h>

static hs_status check_all_read(const hs_cursor *c) {
    if (hs_cursor_is(c, TOKEN_END)) return HS_OK;
    const hs_token *t = hs_cursor_token(c);
    const char *word = hs_cursor_bytes(c, t);
    if (t->length == 3 && (!memcmp(word, "min", 3) || !memcmp(word, "max", 3)) &&
        (c->expected == HS_CASE_DEPTH || c->expected == HS_HARDNESS))
        return hs_cursor_fail(c, c->at, HS_E_UNIT,
                              "write the least by itself, or the range: 0.8..1.2 mm, 58..62 HRC",
                              "'min' and 'max' are not read here");
    if (hs_cursor_is(c, TOKEN_UNIT))
        return hs_cursor_fail(c, c->at, HS_E_UNIT, hs_kind_forms(c->expected),
                              "a second unit stands here");
    return hs_cursor_fail(c, c->at, HS_E_NUMBER, hs_kind_forms(c->expected),
                          "this does not belong to the quantity");
}

static hs_status missing_unit(const hs_cursor *c, const hs_amount *a) {
    const hs_token *token = &c->token[a->first];
    char help[320];
    snprintf(help, sizeof help, "%s is written %s", hs_kind_words(c->expected),
             hs_kind_forms(c->expected));
    return hs_fail_at(c->err, hs_cursor_column(c, a->first), HS_E_NO_UNIT, help,
                      "the number '%.*s' has no unit", (int)token->length,
                      hs_cursor_bytes(c, token));
}

/* The last number's unit holds for those before it that have none; a bare unit only if none has. */
static hs_status share_unit(hs_draft *d, const hs_cursor *c, const char *bare_unit) {
    hs_amount *last = d->others ? &d->other[d->others - 1] : &d->value;
    if (d->fixed_other) last = &d->other[0];
    int none = !d->value.has_unit && !last->has_unit && !(d->others && d->other[0].has_unit);
    if (none && c->expected == HS_NUMBER) {
        last->unit = (hs_unit_row){"", "number", 1, 1, 0};
        last->has_unit = 1;
    } else if (none && bare_unit && hs_unit_find(&last->unit, bare_unit, strlen(bare_unit))) {
        last->has_unit = 1;
    }
    /* "25 mm +0.03/0": a zero takes the unit before it */
    if (!last->has_unit && d->others && last->number == 0 && d->other[0].has_unit) {
        last->unit = d->other[0].unit;
        last->has_unit = 1;
    }
    if (!last->has_unit) return missing_unit(c, last);
    hs_amount *all[] = {&d->value, &d->other[0], &d->other[1]};
    for (size_t i = 0; i < 1 + d->others; i++) {
        if (!all[i]->has_unit) all[i]->unit = last->unit;
        all[i]->has_unit = 1;
        if (c->expected == HS_TEMPERATURE_DIFFERENCE) all[i]->unit.add = 0;
        hs_status status = hs_amount_check(all[i], c);
        if (status) return status;
    }
    return HS_OK;
}

static double point(const hs_amount *a, int sign) {
    return a->parts > 1 ? sign * (a->before + hs_unit_difference(&a->unit, a->number))
                        : hs_unit_point(&a->unit, sign * a->number);
}

static double difference(const hs_amount *a, int sign) {
    return sign * (a->before + hs_unit_difference(&a->unit, a->number));
}

static hs_status finish_range(hs_reading *r, const hs_draft *d, const hs_cursor *c) {
    const hs_amount *high = &d->other[0];
    if (c->expected == HS_HARDNESS && strcmp(d->value.unit.name, high->unit.name))
        return hs_cursor_fail(c, high->first, HS_E_UNIT, "write 58..62 HRC",
                              "the two ends stand on different scales");
    r->low = point(&d->value, d->sign);
    r->high = point(high, d->other_sign[0]);
    r->value = r->low + (r->high - r->low) / 2;
    if (r->low < r->high) return HS_OK;
    return hs_cursor_fail(c, d->value.first, HS_E_NUMBER,
                          "write the smaller value first: 58..62 HRC", "the range does not rise");
}

static hs_status finish_tolerance(hs_reading *r, const hs_draft *d, const hs_cursor *c) {
    double a = difference(&d->other[0], d->other_sign[0]);
    double b = difference(&d->other[1], d->other_sign[1]);
    if (c->expected == HS_HARDNESS && strcmp(d->value.unit.name, d->other[0].unit.name))
        return hs_cursor_fail(c, d->other[0].first, HS_E_UNIT, "write 60 ±2 HRC",
                              "the tolerance stands on another scale");
    if (a == b)
        return hs_cursor_fail(c, d->other[0].first, HS_E_NUMBER, "write the limits it may reach",
                              "the tolerance is nothing wide");
    r->value = point(&d->value, d->sign);
    r->low = r->value + (a < b ? a : b);
    r->high = r->value + (a < b ? b : a);
    return HS_OK;
}

static hs_status finish(hs_reading *out, hs_draft *d, const hs_cursor *c, const char *bare_unit) {
    hs_status status = check_all_read(c);
    if (!status) status = share_unit(d, c, bare_unit);
    if (!status) status = hs_draft_agree(d, c);
    if (status) return status;
    hs_reading r = {.form = d->form, .unit = d->others ? d->other[0].unit : d->value.unit};
    if (d->form == HS_FORM_RANGE)
        status = finish_range(&r, d, c);
    else if (d->form == HS_FORM_TOLERANCE)
        status = finish_tolerance(&r, d, c);
    else
        r.value = r.low = r.high = point(&d->value, d->sign);
    if (!status) *out = r;
    return status;
}

static int take_word(hs_cursor *c, const char *word) {
    const hs_token *token = hs_cursor_token(c);
    size_t length = strlen(word);
    if (token->kind != TOKEN_UNIT || token->length != length ||
        memcmp(hs_cursor_bytes(c, token), word, length) != 0)
        return 0;
    c->at++;
    return 1;
}

/* Words and signs that may stand before the number. */
static hs_status prefix_read(int *delta, hs_cursor *c) {
    *delta = hs_cursor_is(c, TOKEN_DELTA);
    if (*delta && c->expected != HS_TEMPERATURE_DIFFERENCE)
        return hs_cursor_fail(c, c->at, HS_E_UNIT, hs_kind_forms(c->expected),
                              "a difference of temperature does not belong here");
    if (*delta) c->at++;
    if (hs_cursor_is(c, TOKEN_DIAMETER) && c->expected == HS_LENGTH) c->at++;
    if (c->expected == HS_CASE_DEPTH) take_word(c, "CHD");
    if (c->expected == HS_ROUGHNESS) take_word(c, "Ra");
    return HS_OK;
}

/* Degrees without the delta could be a point; kelvin are the same either way. */
static hs_status check_difference(const hs_draft *d, int delta, const hs_cursor *c) {
    if (c->expected != HS_TEMPERATURE_DIFFERENCE || delta) return HS_OK;
    if (d->value.has_unit && !strcmp(d->value.unit.name, "K")) return HS_OK;
    if (!d->value.has_unit) return HS_OK;
    return hs_cursor_fail(c, d->value.first, HS_E_AMBIGUOUS, "write 15 K or Δ15 C",
                          "is this a temperature or a difference?");
}

static hs_status start(hs_cursor *c, hs_folded *folded, const hs_units *units, const char *text,
                       hs_kind expected, hs_error *err) {
    hs_status status = hs_fold(folded, text, err);
    if (status) return status;
    c->text = folded;
    c->expected = expected;
    c->err = err;
    return hs_tokens(c->token, &c->count, units, folded, err);
}

hs_status hs_read(hs_reading *out, const hs_units *units, const char *text,
                  const hs_reading_rules *rules, hs_error *err) {
    hs_folded folded;
    hs_cursor c = {0};
    hs_draft d = {0};
    int delta;
    hs_status status = start(&c, &folded, units, text, rules->expected, err);
    if (!status) status = prefix_read(&delta, &c);
    if (!status) status = hs_draft_read(&d, &c);
    if (!status) status = check_difference(&d, delta, &c);
    return status ? status : finish(out, &d, &c, rules->bare_unit);
}

hs_status hs_read_plus_minus(hs_reading *out, const hs_units *units, const char *text,
                             const hs_reading_rules *rules, hs_error *err) {
    hs_folded folded;
    hs_cursor c = {0};
    hs_draft d = {0};
    hs_status status = start(&c, &folded, units, text, rules->expected, err);
    if (status) return status;
    if (!hs_cursor_is(&c, TOKEN_PLUS_MINUS))
        return hs_cursor_fail(&c, 0, HS_E_NUMBER, "write ±0.05 mm (or +/-0.05 mm)",
                              "a tolerance by itself begins with ±");
    c.at++;
    d.sign = 1;
    status = hs_amount_read(&d.value, &c);
    return status ? status : finish(out, &d, &c, rules->bare_unit);
}
