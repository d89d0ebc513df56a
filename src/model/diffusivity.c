#include "model/diffusivity.h"
#include "hardskin/tables/table.h"

#include "constants.h"

#include <math.h>

/* The model's row in diffusivity_limits, or -1. */
static int limits_row(hs_diffusivity_model model) {
    static const char *const name[] = {"agren", "tibbetts", "lee"};
    if (model < HS_D_AGREN || model > HS_D_LEE) return -1;
    return hs_table_row(hs_table_get(HS_TABLE_DIFFUSIVITY_LIMITS), HS_DIFFUSIVITY_LIMITS_MODEL,
                        name[model]);
}

static hs_status check_constant(const hs_diffusivity *d, double temp_low_K, hs_error *err) {
    if (!(d->D0_m2_s > 0 && isfinite(d->D0_m2_s) && d->Q_J_mol >= 0 && isfinite(d->Q_J_mol)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "D0 above 0, Q 0 or more",
                       "D0 %g m2/s with Q %g J/mol is no diffusivity", d->D0_m2_s, d->Q_J_mol);
    if (d->Q_J_mol > 0 && !(temp_low_K > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "give the temperature of the heat",
                       "no diffusivity at %g K", temp_low_K);
    return HS_OK;
}

hs_status hs_diffusivity_check(const hs_diffusivity *d, double carbon_high_pct, double temp_low_K,
                               double temp_high_K, hs_error *err) {
    if (!(d->factor > 0 && isfinite(d->factor)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a factor above 0", "%g times the diffusivity is none",
                       d->factor);
    if (d->model == HS_D_CONSTANT) return check_constant(d, temp_low_K, err);
    int row = limits_row(d->model);
    if (row < 0) return hs_fail(err, HS_E_INTERNAL, "", "no diffusivity model %d", (int)d->model);
    const hs_table *t = hs_table_get(HS_TABLE_DIFFUSIVITY_LIMITS);
    const char *name = hs_table_text(t, (size_t)row, HS_DIFFUSIVITY_LIMITS_MODEL);
    double low = hs_table_number(t, (size_t)row, HS_DIFFUSIVITY_LIMITS_LOW);
    double high = hs_table_number(t, (size_t)row, HS_DIFFUSIVITY_LIMITS_HIGH);
    double carbon = hs_table_number(t, (size_t)row, HS_DIFFUSIVITY_LIMITS_CARBON);
    if (!(temp_low_K >= low && temp_high_K <= high))
        return hs_fail(err, HS_E_RANGE, "a heat inside the range, or another diffusivity model",
                       "%g to %g C lies outside %s's diffusivity (%g to %g C)",
                       temp_low_K - HS_K_PHYSICAL_ZERO_CELSIUS,
                       temp_high_K - HS_K_PHYSICAL_ZERO_CELSIUS, name,
                       low - HS_K_PHYSICAL_ZERO_CELSIUS, high - HS_K_PHYSICAL_ZERO_CELSIUS);
    if (!(carbon_high_pct >= 0 && carbon_high_pct <= carbon))
        return hs_fail(err, HS_E_RANGE, "less carbon, or another diffusivity model",
                       "%g %%C lies outside %s's diffusivity (0 to %g %%)", carbon_high_pct, name,
                       carbon);
    return HS_OK;
}

/* Lee: D = (a + b C) exp(c + e C + f C^2) once temperature and steel are fixed. */
static void prepare_lee(hs_diffusivity_at *at, const hs_composition *s, double temp_K) {
    const double share[] = {s->Mn, s->Si, s->Ni, s->Cr, s->Mo, s->Al};
    static const char *const name[] = {"Mn", "Si", "Ni", "Cr", "Mo", "Al"};
    const hs_table *t = hs_table_get(HS_TABLE_DIFFUSIVITY_LEE);
    double D0 = HS_K_DIFFUSIVITY_LEE_D0, Q = HS_K_DIFFUSIVITY_LEE_Q;
    for (size_t i = 0; i < sizeof share / sizeof *share; i++) {
        int row = hs_table_row(t, HS_DIFFUSIVITY_LEE_ELEMENT, name[i]);
        D0 += share[i] * hs_table_number(t, (size_t)row, HS_DIFFUSIVITY_LEE_D0);
        Q += share[i] * hs_table_number(t, (size_t)row, HS_DIFFUSIVITY_LEE_Q);
    }
    double RT = HS_K_PHYSICAL_GAS_CONSTANT * temp_K;
    at->front = D0;
    at->front_C = HS_K_DIFFUSIVITY_LEE_PER_C * (1 - HS_K_DIFFUSIVITY_LEE_C_CR * s->Cr);
    at->power = -Q / RT;
    at->power_C = -HS_K_DIFFUSIVITY_LEE_Q_PER_C / RT;
    at->power_C2 = -HS_K_DIFFUSIVITY_LEE_Q_PER_C2 / RT;
}

void hs_diffusivity_prepare(hs_diffusivity_at *at, const hs_diffusivity *d, double temp_K) {
    *at = (hs_diffusivity_at){.model = d->model};
    double RT_cal = HS_K_DIFFUSIVITY_GAS_CONSTANT_CAL * temp_K;
    double away = 1 / temp_K - HS_K_DIFFUSIVITY_AGREN_INVERSE_T;
    switch (d->model) {
    case HS_D_AGREN:
        at->front = HS_K_DIFFUSIVITY_AGREN_D0;
        at->thermo = HS_K_DIFFUSIVITY_AGREN_THERMO / temp_K;
        at->power = -away * HS_K_DIFFUSIVITY_AGREN_Q;
        at->power_C = away * HS_K_DIFFUSIVITY_AGREN_Q_PER_Y;
        break;
    case HS_D_TIBBETTS:
        at->front = HS_K_DIFFUSIVITY_TIBBETTS_D0;
        at->power = -HS_K_DIFFUSIVITY_TIBBETTS_Q / RT_cal;
        at->power_C = HS_K_DIFFUSIVITY_TIBBETTS_Q_PER_C / RT_cal - HS_K_DIFFUSIVITY_TIBBETTS_PER_C;
        break;
    case HS_D_LEE:
        prepare_lee(at, &d->steel, temp_K);
        break;
    default:
        at->front = d->D0_m2_s;
        if (d->Q_J_mol > 0) at->front *= exp(-d->Q_J_mol / (HS_K_PHYSICAL_GAS_CONSTANT * temp_K));
    }
    at->front *= d->factor;
    at->front_C *= d->factor;
}

double hs_diffusivity_of(const hs_diffusivity_at *at, double carbon_pct) {
    static const double per_iron = HS_K_PHYSICAL_MASS_FE / HS_K_PHYSICAL_MASS_C;
    if (at->model == HS_D_CONSTANT) return at->front;
    if (at->model == HS_D_AGREN) {
        double y = carbon_pct * per_iron / (100 - carbon_pct);
        return at->front * (1 + y * (1 - y) * at->thermo) * exp(at->power + at->power_C * y);
    }
    return (at->front + at->front_C * carbon_pct) *
           exp(at->power + carbon_pct * (at->power_C + at->power_C2 * carbon_pct));
}

double hs_diffusivity_value(const hs_diffusivity *d, double carbon_pct, double temp_K) {
    hs_diffusivity_at at;
    hs_diffusivity_prepare(&at, d, temp_K);
    return hs_diffusivity_of(&at, carbon_pct);
}
