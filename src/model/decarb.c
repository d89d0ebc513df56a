#include "hardskin/model/decarb.h"

#include "base/num.h"
#include "constants.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

/* Everything the profile under the surface needs, depths from the old surface. */
typedef struct front {
    double carbon_pct;  /* before */
    double at_edge_pct; /* where the profile begins */
    double edge_m;      /* there */
    double reach_m;     /* 2 sqrt(D t) of the austenite */
} front;

double hs_decarb_diffusivity(double temp_K) {
    return HS_K_DECARB_LIMITS_AUSTENITE_D0 * exp(-HS_K_DECARB_LIMITS_AUSTENITE_Q_OVER_R / temp_K);
}

static double ferrite_diffusivity(double temp_K) {
    return HS_K_DECARB_LIMITS_FERRITE_D0 *
           exp(-HS_K_DECARB_LIMITS_FERRITE_Q / (HS_K_DECARB_LIMITS_GAS_CONSTANT_CAL * temp_K));
}

static hs_status check_temperature(double temp_K, double high_K, hs_error *err) {
    if (temp_K >= HS_K_DECARB_LIMITS_RANGE_LOW && temp_K <= high_K) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "decarburisation is known from 760 to 1200 C",
                   "decarburisation at %.0f C is outside the range of the model",
                   temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
}

/* Balance of carbon at the boundary of rim and austenite, as a function of lambda. */
typedef struct balance {
    double sqrt_Da, sqrt_Dg, phi;
    double ferrite_pct, austenite_pct, carbon_pct;
} balance;

static double rim_balance(double lambda, const void *context) {
    const balance *b = context;
    double x = lambda * b->phi;
    double out = b->sqrt_Da / sqrt(PI) * b->ferrite_pct * exp(-lambda * lambda) / erf(lambda);
    double in = b->sqrt_Dg / sqrt(PI) * (b->carbon_pct - b->austenite_pct) * exp(-x * x) / erfc(x);
    return (b->austenite_pct - b->ferrite_pct) * lambda * b->sqrt_Da - out + in;
}

static hs_status make_balance(balance *b, double temp_K, double carbon_pct, hs_error *err) {
    const hs_table *table = hs_table_get(HS_TABLE_DECARB);
    double at_C = temp_K - HS_K_PHYSICAL_ZERO_CELSIUS;
    b->ferrite_pct = hs_table_interpolate(table, HS_DECARB_TEMP, HS_DECARB_FERRITE_C, at_C);
    b->austenite_pct = hs_table_interpolate(table, HS_DECARB_TEMP, HS_DECARB_AUSTENITE_C, at_C);
    b->sqrt_Da = sqrt(ferrite_diffusivity(temp_K));
    b->sqrt_Dg = sqrt(hs_decarb_diffusivity(temp_K));
    b->phi = b->sqrt_Da / b->sqrt_Dg;
    if (!(carbon_pct > 1.01 * b->ferrite_pct)) /* nearer to it the rim would have no end */
        return hs_fail(err, HS_E_RANGE, "more carbon, or a higher temperature",
                       "with %g %% carbon the steel is all ferrite at %.0f C", carbon_pct, at_C);
    /* Ferrite already there lets the rim grow with no gradient behind it. */
    b->austenite_pct = fmin(b->austenite_pct, carbon_pct);
    b->carbon_pct = carbon_pct;
    return HS_OK;
}

/* Upper end: where exp and erfc of lambda * phi are still normal numbers. */
static hs_status solve_lambda(double *lambda, const balance *b, hs_error *err) {
    double low = 1e-12;
    if (rim_balance(low, b) >= 0) { /* no carbon gets through ferrite: no rim (910 C) */
        *lambda = 0;
        return HS_OK;
    }
    hs_status status = hs_root(lambda, rim_balance, b, low, 25 / b->phi, 1e-15);
    if (status) return hs_fail(err, status, "", "the ferrite rim has no solution here");
    return HS_OK;
}

hs_status hs_decarb_lambda(double *lambda, double temp_K, double carbon_pct, hs_error *err) {
    balance b;
    double found = 0;
    hs_status status = check_temperature(temp_K, HS_K_DECARB_LIMITS_RIM_TO, err);
    if (!status) status = make_balance(&b, temp_K, carbon_pct, err);
    if (!status) status = solve_lambda(&found, &b, err);
    if (!status) *lambda = found;
    return status;
}

/* ln of the wanted erfc keeps the root well scaled however deep it lies. */
static double erfc_excess(double x, const void *context) {
    return log(erfc(x)) - *(const double *)context;
}

/* Depth from the old surface where the carbon is `share` of what it was; the edge if it is more
 * already there. */
static hs_status depth_to(double *depth_m, const front *f, double share, hs_error *err) {
    double missing = (1 - share) * f->carbon_pct, at_edge = f->carbon_pct - f->at_edge_pct;
    *depth_m = f->edge_m;
    if (missing >= at_edge || f->reach_m <= 0) return HS_OK;
    double x0 = f->edge_m / f->reach_m, x = 0;
    double target = log(erfc(x0) * missing / at_edge);
    hs_status status = hs_root(&x, erfc_excess, &target, x0, x0 + 6, 1e-14);
    if (status) return hs_fail(err, status, "", "the decarburised depth has no solution here");
    *depth_m = x * f->reach_m;
    return HS_OK;
}

/* Oxygen (kg/m2) that the lost carbon needs to leave as CO. The profile's integral is closed:
 * of erfc(x/r) from x0 r on, r (exp(-x0^2)/sqrt(pi) - x0 erfc(x0)). */
static double oxygen_for_carbon(const front *f) {
    double x0 = f->reach_m > 0 ? f->edge_m / f->reach_m : 0;
    double tail = f->reach_m * (exp(-x0 * x0) / sqrt(PI) - x0 * erfc(x0)) / erfc(x0);
    double carbon_m = f->carbon_pct * f->edge_m + (f->carbon_pct - f->at_edge_pct) * tail;
    return carbon_m / 100 * HS_K_PHYSICAL_IRON_DENSITY * HS_K_PHYSICAL_MASS_O /
           HS_K_PHYSICAL_MASS_C;
}

static double share_supplied(const front *f, double W_kg_m2, double atmosphere) {
    if (atmosphere >= 1) return 1;
    double needed = oxygen_for_carbon(f);
    return needed > W_kg_m2 ? W_kg_m2 / needed : 1;
}

/* Depths from the new surface; no depth is less than the rim. */
static hs_status fill(hs_decarb_result *out, const front *f, double rim_high_m, double share,
                      hs_error *err) {
    double half = 0, tenth = 0;
    hs_status status = depth_to(&half, f, 0.5, err);
    if (!status) status = depth_to(&tenth, f, 0.9, err);
    if (status) return status;
    out->rim_high_m = share * rim_high_m;
    out->rim_m = HS_K_DECARB_LIMITS_RIM_SHARE * out->rim_high_m;
    out->depth50_m = fmax(share * (half - out->lost_m), out->rim_m);
    out->depth90_m = fmax(share * (tenth - out->lost_m), out->rim_m);
    return HS_OK;
}

static hs_status check_inputs(double hold_s, double carbon_pct, double kp_factor, double atmosphere,
                              hs_error *err) {
    int possible = hold_s >= 0 && isfinite(hold_s) && carbon_pct > 0 &&
                   carbon_pct <= HS_K_OXIDATION_CARBON_MOST && kp_factor >= 0 && atmosphere >= 0;
    if (possible && isfinite(kp_factor) && isfinite(atmosphere)) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "a time of 0 or more, carbon above 0 and up to 2.2 %",
                   "no decarburisation can be computed from these values");
}

/* Edge of the profile: the rim's below 910 C, the new surface above; and where scale eats in faster
 * than the rim grows (from about 883 C on), the new surface as well, or the depths would fall as
 * the fire gets hotter. */
static hs_status make_front(front *f, double *rim_high_m, double temp_K, double hold_s,
                            double lost_m, hs_error *err) {
    f->reach_m = 2 * sqrt(hs_decarb_diffusivity(temp_K) * hold_s);
    f->at_edge_pct = 0;
    f->edge_m = lost_m;
    *rim_high_m = 0;
    if (temp_K >= HS_K_DECARB_LIMITS_RIM_TO) return HS_OK;
    balance b;
    double lambda = 0;
    hs_status status = make_balance(&b, temp_K, f->carbon_pct, err);
    if (!status) status = solve_lambda(&lambda, &b, err);
    if (status) return status;
    *rim_high_m = 2 * lambda * b.sqrt_Da * sqrt(hold_s);
    f->edge_m = fmax(lost_m, *rim_high_m);
    f->at_edge_pct = b.austenite_pct;
    return HS_OK;
}

hs_status hs_decarb(hs_decarb_result *out, double temp_K, double hold_s, double carbon_pct,
                    double kp_factor, double atmosphere, hs_error *err) {
    hs_status status = check_temperature(temp_K, HS_K_DECARB_LIMITS_RANGE_HIGH, err);
    if (!status) status = check_inputs(hold_s, carbon_pct, kp_factor, atmosphere, err);
    double integral = 0, rim_high_m = 0;
    if (!status) status = hs_oxide_hold(&integral, temp_K, hold_s, carbon_pct, err);
    if (status) return status;
    double W_kg_m2 = hs_oxide_W(integral, kp_factor, atmosphere);
    hs_decarb_result result = {.lost_m = hs_oxide_lost_m(W_kg_m2)};
    front f = {.carbon_pct = carbon_pct};
    status = make_front(&f, &rim_high_m, temp_K, hold_s, result.lost_m, err);
    if (status) return status;
    double share = share_supplied(&f, W_kg_m2, atmosphere);
    status = fill(&result, &f, rim_high_m, share, err);
    if (!status) *out = result;
    return status;
}
