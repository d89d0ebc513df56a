#include "hardskin/model/bake.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "model/e140.h"

#include <math.h>
#include <string.h>

static const double SECONDS_PER_HOUR = 3600;

static int is_hard(double hardness_HRC) {
    return hardness_HRC >= HS_K_HYDROGEN_HARD_FROM; /* NaN = soft */
}

static hs_status check_hardness(double hardness_HRC, hs_error *err) {
    if (isnan(hardness_HRC) || (hardness_HRC >= 0 && hardness_HRC <= 70)) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 70 HRC", "a steel of %g HRC", hardness_HRC);
}

hs_status hs_hydrogen_rule(hs_hydrogen_verdict *out, double hardness_HRC, int surface_hardened,
                           int tempered, hs_hydrogen_way way, hs_error *err) {
    hs_status status = check_hardness(hardness_HRC, err);
    if (status) return status;
    hs_hydrogen_verdict v = {HS_HYDROGEN_ALLOWED, HS_BECAUSE_NO_HYDROGEN, 0};
    int into_steel = way == HS_HYDROGEN_ACID || way == HS_HYDROGEN_CATHODIC;
    int hard = surface_hardened || is_hard(hardness_HRC);
    if (into_steel && !hard) v.reason = HS_BECAUSE_SOFT;
    if (into_steel && hard && !tempered) {
        v.answer = HS_HYDROGEN_NEVER;
        v.reason = HS_BECAUSE_UNTEMPERED;
    } else if (into_steel && hard) {
        v.answer = way == HS_HYDROGEN_ACID ? HS_HYDROGEN_WITH_BAKE : HS_HYDROGEN_BARRED;
        v.reason = surface_hardened ? HS_BECAUSE_SURFACE_HARDENED : HS_BECAUSE_HARD;
        v.bake_after = 1;
    }
    *out = v;
    return HS_OK;
}

hs_status hs_hydrogen_limit(int *passed, double *limit_HRC, size_t row, double layer_HRC,
                            double core_HRC, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_HYDROGEN_LIMITS);
    hs_status status = check_hardness(layer_HRC, err);
    if (status == HS_OK) status = check_hardness(core_HRC, err);
    if (status == HS_OK && row >= t->rows)
        return hs_fail(err, HS_E_RANGE, "rows of hydrogen_limits", "no such limit");
    if (status != HS_OK) return status;
    double limit = hs_table_number(t, row, HS_HYDROGEN_LIMITS_LIMIT_HRC);
    if (isnan(limit)) limit = hs_e140_HRC(hs_table_number(t, row, HS_HYDROGEN_LIMITS_LIMIT_HV));
    int core = !strcmp(hs_table_text(t, row, HS_HYDROGEN_LIMITS_ON), "core");
    *passed = (core ? core_HRC : layer_HRC) >= limit;
    if (limit_HRC) *limit_HRC = limit;
    return HS_OK;
}

const char *hs_hydrogen_text(hs_hydrogen_reason reason) {
    switch (reason) {
    case HS_BECAUSE_NO_HYDROGEN:
        return "this way brings no hydrogen into the steel";
    case HS_BECAUSE_SOFT:
        return "the part is softer than 31 HRC at this step";
    case HS_BECAUSE_HARD:
        return "steel of 31 HRC and more takes up hydrogen and may crack later "
               "(ISO 9587, ISO 27831-1)";
    case HS_BECAUSE_SURFACE_HARDENED:
        return "a surface-hardened part counts as hard as its layer; it takes up hydrogen and may "
               "crack later (ISO 9587)";
    case HS_BECAUSE_UNTEMPERED:
        return "untempered martensite with hydrogen cracks: temper first";
    }
    return "";
}

double hs_bake_equal_temper_K(double temper_K, double temper_s, double hold_s, double c) {
    return temper_K * (c + log10(temper_s / SECONDS_PER_HOUR)) /
           (c + log10(hold_s / SECONDS_PER_HOUR));
}

/* Row of the bake for a part, -1 if its hardness is in none. */
static int find_row(const hs_table *t, double hardness_HRC, int surface_hardened) {
    for (size_t row = 0; row < t->rows; row++) {
        int surface = hs_table_number(t, row, HS_BAKE_SURFACE) > 0;
        double low = hs_table_number(t, row, HS_BAKE_LOW);
        double high = hs_table_number(t, row, HS_BAKE_HIGH);
        int last = high >= HS_K_HYDROGEN_BAKE_MOST;
        int inside = hardness_HRC >= low && (hardness_HRC < high || (last && hardness_HRC == high));
        if (surface == (surface_hardened != 0) && (surface || inside)) return (int)row;
    }
    return -1;
}

static hs_status check_temper(double temper_K, double temper_s, hs_error *err) {
    if (temper_K > HS_K_BAKE_LIMITS_TEMPER_LEAST && isfinite(temper_K) && temper_s > 0 &&
        isfinite(temper_s))
        return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "give the last temper: temperature and time",
                   "untempered steel is not baked but tempered, above 100 C");
}

/* Temperature the table, the temper and its time allow. */
static double bake_temperature(double table_high_K, double temper_K, double temper_s,
                               double hold_s) {
    double softening =
        hs_bake_equal_temper_K(temper_K, temper_s, hold_s, HS_K_BAKE_LIMITS_HOLLOMON_C);
    return fmin(table_high_K, fmin(temper_K - HS_K_BAKE_LIMITS_BELOW_TEMPER, softening));
}

hs_status hs_bake(hs_bake_plan *out, double hardness_HRC, int surface_hardened, double temper_K,
                  double temper_s, hs_error *err) {
    hs_status status = surface_hardened ? HS_OK : check_hardness(hardness_HRC, err);
    if (!status) status = check_temper(temper_K, temper_s, err);
    if (status) return status;
    hs_bake_plan plan = {0};
    if (!surface_hardened && !is_hard(hardness_HRC)) {
        *out = plan;
        return HS_OK;
    }
    const hs_table *t = hs_table_get(HS_TABLE_BAKE);
    int row = find_row(t, hardness_HRC, surface_hardened);
    if (row < 0)
        return hs_fail(err, HS_E_RANGE, "do not bring hydrogen into it: brush or blast",
                       "the table of bakes ends at 51 HRC");
    plan.needed = 1;
    plan.hold_s = hs_table_number(t, (size_t)row, HS_BAKE_HOLD_LOW) * SECONDS_PER_HOUR;
    plan.hold_high_s = hs_table_number(t, (size_t)row, HS_BAKE_HOLD_HIGH) * SECONDS_PER_HOUR;
    double low_K = hs_table_number(t, (size_t)row, HS_BAKE_TEMP_LOW) + HS_K_PHYSICAL_ZERO_CELSIUS;
    double high_K = hs_table_number(t, (size_t)row, HS_BAKE_TEMP_HIGH) + HS_K_PHYSICAL_ZERO_CELSIUS;
    plan.temp_K = bake_temperature(high_K, temper_K, temper_s, plan.hold_high_s);
    if (plan.temp_K < HS_K_BAKE_LIMITS_LEAST)
        return hs_fail(err, HS_E_RANGE, "brush or blast instead: no hydrogen, no bake",
                       "after this temper the bake may not pass %.0f C, too cool to drive hydrogen "
                       "out (130 C)",
                       plan.temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    plan.below_usual = plan.temp_K < low_K;
    plan.start_within_s = HS_K_BAKE_LIMITS_START_WITHIN;
    plan.latest_s = HS_K_BAKE_LIMITS_LATEST;
    *out = plan;
    return HS_OK;
}
