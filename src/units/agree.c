#include "units/agree.h"

#include <string.h>

static int is_one_of(const char *name, const char *const *names) {
    for (; *names; names++)
        if (!strcmp(name, *names)) return 1;
    return 0;
}

/* Units of the other system than metric, as far as one quantity could mix them. */
static int is_customary(const hs_unit_row *unit) {
    static const char *const names[] = {"in",
                                        "inch",
                                        "inches",
                                        "\"",
                                        "ft",
                                        "foot",
                                        "feet",
                                        "'",
                                        "thou",
                                        "in2",
                                        "ft2",
                                        "in3",
                                        "ft3",
                                        "lb",
                                        "oz",
                                        "F",
                                        "\xC2\xB0"
                                        "F",
                                        "degF",
                                        "psi",
                                        "ksi",
                                        NULL};
    return is_one_of(unit->name, names) || !strncmp(unit->name, "ft/", 3) ||
           !strncmp(unit->name, "in/", 3);
}

static int takes_fractions(hs_kind kind) {
    return kind == HS_LENGTH || kind == HS_CASE_DEPTH || kind == HS_AREA || kind == HS_VOLUME ||
           kind == HS_MASS || kind == HS_TIME || kind == HS_RATE || kind == HS_NUMBER;
}

static hs_status check_one(const hs_draft *d, const hs_amount *a, const hs_cursor *c) {
    if (is_customary(&a->unit) != is_customary(&d->value.unit))
        return hs_cursor_fail(c, a->first, HS_E_UNIT, "write all of it in one unit",
                              "inch and metric units in one quantity");
    if (a->fraction && !takes_fractions(c->expected))
        return hs_cursor_fail(c, a->first, HS_E_NUMBER, "write it as a decimal",
                              "a fraction does not belong here");
    return HS_OK;
}

hs_status hs_draft_agree(const hs_draft *d, const hs_cursor *c) {
    const hs_amount *all[] = {&d->value, &d->other[0], &d->other[1]};
    for (size_t i = 0; i < 1 + d->others; i++) {
        hs_status status = check_one(d, all[i], c);
        if (status) return status;
    }
    const hs_amount *upper = &d->other[0];
    if (d->fixed_other && hs_unit_difference(&upper->unit, upper->number) >
                              hs_unit_difference(&d->value.unit, d->value.number))
        return hs_cursor_fail(c, upper->first, HS_E_AMBIGUOUS,
                              "write the limits: 0.8..1.2 mm, or both deviations: 0.8 +0.4/-0 mm",
                              "the tolerance is wider than the value: is it a sum?");
    return HS_OK;
}
