#include "model/carbon_check.h"

#include "constants.h"

#include <math.h>

static hs_status check_side(const hs_side *side, hs_error *err) {
    if (side->kind == HS_SIDE_CLOSED) return HS_OK;
    if (!(side->carbon_pct >= 0 && side->carbon_pct < 6.67))
        return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 2 %", "a surface cannot hold %g %% of carbon",
                       side->carbon_pct);
    if (side->kind == HS_SIDE_TRANSFER &&
        !(side->transfer_m_s >= 0 && isfinite(side->transfer_m_s)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "1e-8 to 1e-6 m/s is usual",
                       "%g m/s is no surface transfer", side->transfer_m_s);
    return HS_OK;
}

static hs_status check_path(double *hottest_K, const hs_heat *heat, hs_error *err) {
    if (heat->n < 2 || heat->steps > HS_CARBON_MOST_STEPS)
        return hs_fail(err, HS_E_IMPOSSIBLE, "two points or more",
                       "a heat of %zu points in %zu steps is none", heat->n, heat->steps);
    *hottest_K = heat->point[0].temp_K;
    for (size_t i = 1; i < heat->n; i++) {
        if (!(heat->point[i].time_s >= heat->point[i - 1].time_s))
            return hs_fail(err, HS_E_IMPOSSIBLE, "put the log in the order of time",
                           "time runs back at point %zu of the heat", i + 1);
        *hottest_K = fmax(*hottest_K, heat->point[i].temp_K);
    }
    return HS_OK;
}

static hs_status check_diffusivity(double carbon_pct, double hottest_K, const hs_diffusivity *d,
                                   hs_error *err) {
    if (hottest_K < HS_K_AUSTENITE_COLD && d->model != HS_D_CONSTANT) return HS_OK;
    return hs_diffusivity_check(d, carbon_pct, hottest_K, hottest_K, err);
}

/* Path, sides, and the most carbon they can bring. */
static hs_status check_heat(double *carbon_high_pct, double *hottest_K, const hs_heat *heat,
                            hs_error *err) {
    double high = 0;
    hs_status status = check_path(hottest_K, heat, err);
    for (int j = 0; j < 2 && status == HS_OK; j++) {
        status = check_side(&heat->side[j], err);
        if (heat->side[j].kind != HS_SIDE_CLOSED) high = fmax(high, heat->side[j].carbon_pct);
    }
    if (status != HS_OK) return status;
    if (heat->cap_at_acm && *hottest_K >= HS_K_AUSTENITE_COLD) {
        double cap = hs_acm_pct(*hottest_K);
        if (isnan(cap))
            return hs_fail(err, HS_E_RANGE, "740 to 1050 C", "no A_cm line is known at %g C",
                           *hottest_K - HS_K_PHYSICAL_ZERO_CELSIUS);
        high = fmin(high, cap);
    }
    *carbon_high_pct = high;
    return HS_OK;
}

hs_status hs_carbon_heat_check(double *carbon_high_pct, const hs_heat *heat,
                               const hs_diffusivity *d, hs_error *err) {
    double hottest_K, high;
    hs_status status = check_heat(&high, &hottest_K, heat, err);
    if (status == HS_OK) status = check_diffusivity(high, hottest_K, d, err);
    if (status == HS_OK) *carbon_high_pct = high;
    return status;
}

hs_status hs_carbon_check(double *carbon_high_pct, const double *carbon_pct,
                          const hs_carbon_mesh *mesh, const hs_heat *heat, const hs_diffusivity *d,
                          hs_error *err) {
    double hottest_K = 0, high = 0;
    hs_status status = check_heat(&high, &hottest_K, heat, err);
    if (status != HS_OK) return status;
    if (heat->side[1].kind != HS_SIDE_CLOSED && (mesh->cut || !(mesh->area[mesh->n] > 0)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "close side 2, or mesh the whole section",
                       "carbon cannot pass a far side that lies inside the part");
    for (size_t i = 0; i < mesh->n; i++) {
        if (!(carbon_pct[i] >= 0))
            return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 2 %", "%g %% of carbon at %g m",
                           carbon_pct[i], mesh->centre_m[i]);
        high = fmax(high, carbon_pct[i]);
    }
    *carbon_high_pct = high;
    return check_diffusivity(high, hottest_K, d, err);
}
