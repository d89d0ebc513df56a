#include "hardskin/units/size.h"
#include "units/cursor.h"
#include "units/pattern.h"
#include "units/reading.h"

#include <stdio.h>
#include <string.h>

static void copy(char *out, size_t size, const hs_folded *text, size_t start, size_t length) {
    snprintf(out, size, "%.*s", (int)length, text->text + start);
}

static hs_status fit_read(hs_size *out, const hs_folded *text, const hs_fit_text *fit,
                          hs_error *err) {
    char zone[4], grade[4];
    double nominal_mm, lower_m, upper_m;
    copy(zone, sizeof zone, text, fit->zone, fit->zone_length);
    copy(grade, sizeof grade, text, fit->grade, fit->grade_length);
    if (!hs_decimal(&nominal_mm, text->text + fit->number, fit->number_length))
        return hs_fail_at(err, text->column[fit->number], HS_E_NUMBER, "write 20 h7",
                          "more digits than any size has");
    /* h07 is no class */
    int number = grade[0] == '0' ? 0 : grade[0] - '0';
    if (grade[1]) number = number ? 10 * number + (grade[1] - '0') : 0;
    hs_status status = hs_fit_limits(&lower_m, &upper_m, nominal_mm / 1e3, zone, number, err);
    if (status && err) err->column = text->column[status == HS_E_WORD ? fit->zone : fit->number];
    if (status) return status;
    hs_size size = {nominal_mm / 1e3, nominal_mm / 1e3 + lower_m, nominal_mm / 1e3 + upper_m, ""};
    snprintf(size.fit, sizeof size.fit, "%s%s", zone, grade);
    *out = size;
    return HS_OK;
}

static hs_status written_read(hs_size *out, const hs_units *units, const char *text,
                              hs_error *err) {
    const hs_reading_rules rules = {HS_LENGTH, NULL};
    hs_reading r;
    hs_status status = hs_read(&r, units, text, &rules, err);
    if (status) return status;
    if (r.form == HS_FORM_SINGLE)
        return hs_fail_at(err, 1, HS_E_NUMBER,
                          "write 20 h7, 20 ±0.02 mm, 20 +0/-0.03 mm or 19.97..20.00 mm",
                          "a size needs its tolerance");
    *out = (hs_size){r.value, r.low, r.high, ""};
    return HS_OK;
}

hs_status hs_size_read(hs_size *out, const hs_units *units, const char *text, hs_error *err) {
    hs_folded folded;
    hs_fit_text fit;
    hs_size size;
    int found;
    hs_status status = hs_fold(&folded, text, err);
    if (!status) status = hs_fit_match(&fit, &found, units, &folded, err);
    if (status) return status;
    status = found ? fit_read(&size, &folded, &fit, err) : written_read(&size, units, text, err);
    if (status) return status;
    if (!(size.lower_m > 0))
        return hs_fail_at(err, 1, HS_E_IMPOSSIBLE, "write 20 h7 or 20 ±0.02 mm",
                          "the lower limit of a size lies above zero");
    *out = size;
    return HS_OK;
}
