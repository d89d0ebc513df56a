#include "hardskin/units/quantity.h"
#include "units/reading.h"

#include <stdio.h>

/* Kinds that may lie below zero: a length as a coordinate or a growth, points of temperature. */
static int may_be_negative(hs_kind kind) {
    return kind == HS_LENGTH || kind == HS_TEMPERATURE || kind == HS_TEMPERATURE_DIFFERENCE ||
           kind == HS_STRESS || kind == HS_NUMBER;
}

static hs_status check_possible(const hs_reading *r, hs_kind kind, hs_error *err) {
    if (kind == HS_TEMPERATURE && r->low < 0)
        return hs_fail_at(err, 1, HS_E_IMPOSSIBLE, "write 925 C or 1700 F",
                          "this lies below absolute zero");
    if (!may_be_negative(kind) && r->low < 0)
        return hs_fail_at(err, 1, HS_E_IMPOSSIBLE, hs_kind_forms(kind), "%s cannot be negative",
                          hs_kind_words(kind));
    return HS_OK;
}

static void fill(hs_quantity *out, const hs_reading *r, hs_kind kind) {
    const char *unit = kind == HS_HARDNESS ? r->unit.name : hs_kind_unit(kind);
    *out = (hs_quantity){.kind = kind, .value = r->value, .low = r->low, .high = r->high};
    out->spread = r->form != HS_FORM_SINGLE;
    if (kind == HS_HARDNESS) out->scale = hs_scale_named(r->unit.name);
    snprintf(out->unit, sizeof out->unit, "%s", unit);
}

hs_status hs_quantity_read_bare(hs_quantity *out, const hs_units *units, const char *text,
                                hs_kind expected, const char *bare_unit, hs_error *err) {
    const hs_reading_rules rules = {expected, bare_unit};
    hs_reading reading;
    hs_status status = hs_read(&reading, units, text, &rules, err);
    if (!status) status = check_possible(&reading, expected, err);
    if (!status) fill(out, &reading, expected);
    return status;
}

hs_status hs_quantity_read(hs_quantity *out, const hs_units *units, const char *text,
                           hs_kind expected, hs_error *err) {
    return hs_quantity_read_bare(out, units, text, expected, NULL, err);
}

hs_status hs_quantity_read_plus_minus(hs_quantity *out, const hs_units *units, const char *text,
                                      hs_kind expected, hs_error *err) {
    const hs_reading_rules rules = {expected, NULL};
    hs_reading reading;
    hs_status status = hs_read_plus_minus(&reading, units, text, &rules, err);
    if (status) return status;
    if (!(reading.value > 0))
        return hs_fail_at(err, 1, HS_E_IMPOSSIBLE, "write ±0.05 mm",
                          "a tolerance is more than nothing");
    reading.low = -reading.value;
    reading.high = reading.value;
    reading.form = HS_FORM_TOLERANCE;
    fill(out, &reading, expected);
    return HS_OK;
}
