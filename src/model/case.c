#include "hardskin/model/case.h"
#include "hardskin/tables/table.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

static const double MM = 1e-3;

static void put(hs_case_profile *p, double depth_m, double carbon_pct) {
    p->depth_m[p->n] = depth_m;
    p->carbon_pct[p->n] = carbon_pct;
    p->hardness_HV[p->n] = NAN;
    p->n++;
}

void hs_case_from_mesh(hs_case_profile *profile, const hs_carbon_mesh *mesh,
                       const double *carbon_pct, const double surface_pct[2], int from_face_2) {
    size_t n = mesh->n;
    double whole = mesh->edge_m[n];
    double face[2] = {surface_pct ? surface_pct[0] : carbon_pct[0],
                      surface_pct ? surface_pct[1] : carbon_pct[n - 1]};
    profile->n = 0;
    put(profile, 0, face[from_face_2 ? 1 : 0]);
    for (size_t k = 0; k < n; k++) {
        size_t i = from_face_2 ? n - 1 - k : k;
        put(profile, from_face_2 ? whole - mesh->centre_m[i] : mesh->centre_m[i], carbon_pct[i]);
    }
    put(profile, whole, face[from_face_2 ? 0 : 1]);
}

hs_status hs_case_harden(hs_case_profile *profile, const hs_hardening *h, hs_error *err) {
    hs_status status = hs_hardening_check(h, err);
    if (status != HS_OK) return status;
    hs_hardened_many(profile->hardness_HV, profile->carbon_pct, profile->n, h);
    return HS_OK;
}

/* Rates over depth are smooth: a few places, their logarithms linear between. */
enum { PLACES = 9 };

static double rate_there(const double log_rate[PLACES], double depth, double half) {
    double mirrored = depth <= half ? depth : fmax(0, 2 * half - depth);
    double at = sqrt(mirrored / half) * (PLACES - 1);
    size_t k = at >= PLACES - 1 ? PLACES - 2 : (size_t)at;
    return exp(log_rate[k] + (at - (double)k) * (log_rate[k + 1] - log_rate[k]));
}

hs_status hs_case_harden_in(hs_case_profile *profile, const hs_hardening *h,
                            const hs_quenched *quenched, double from_K, hs_error *err) {
    double share[PLACES], log_rate[PLACES], rate[HS_CASE_NODES];
    double half_m = 0.5 * quenched->size_m;
    hs_status status = hs_hardening_check(h, err);
    if (status != HS_OK) return status;
    for (size_t k = 0; k < PLACES; k++) { /* closer together near the face */
        double depth = (double)k / (PLACES - 1);
        share[k] = 1 - depth * depth;
    }
    hs_quench_rates(log_rate, share, PLACES, quenched, from_K);
    for (size_t k = 0; k < PLACES; k++) {
        if (!(log_rate[k] > 0 && isfinite(log_rate[k])))
            return hs_fail(err, HS_E_RANGE, "above 700 C, a size and a severity above 0",
                           "no rate of cooling for a section of %g m from %g K", quenched->size_m,
                           from_K);
        log_rate[k] = log(log_rate[k]);
    }
    for (size_t i = 0; i < profile->n; i++)
        rate[i] = rate_there(log_rate, profile->depth_m[i], half_m);
    hs_hardened_at_rates(profile->hardness_HV, profile->carbon_pct, rate, profile->n, h);
    return HS_OK;
}

static double place(const double *x, const double *y, size_t i, double level) {
    return x[i] + (x[i + 1] - x[i]) * (y[i] - level) / (y[i] - y[i + 1]);
}

/* Deepest place where y falls through the level. */
static int falls(double *depth_m, const hs_case_profile *p, const double *y, double level) {
    for (size_t i = p->n - 1; i-- > 0;)
        if (y[i] >= level && y[i + 1] < level) {
            *depth_m = place(p->depth_m, y, i, level);
            return 1;
        }
    return 0;
}

hs_status hs_case_depth(double *depth_m, const hs_case_profile *profile, double limit_HV,
                        hs_error *err) {
    const double *y = profile->hardness_HV;
    if (profile->n < 2 || !(limit_HV > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "no case to read at %g HV", limit_HV);
    if (falls(depth_m, profile, y, limit_HV)) return HS_OK;
    if (y[profile->n - 1] >= limit_HV)
        return hs_fail(err, HS_E_RANGE, "a higher limit, or read the hardness of the core",
                       "the part is above %g HV all through: it has no case depth", limit_HV);
    return hs_fail(err, HS_E_RANGE, "a longer soak, more carbon, a sharper quench",
                   "the case nowhere reaches %g HV", limit_HV);
}

hs_status hs_case_total(double *depth_m, const hs_case_profile *profile, double core_pct,
                        hs_error *err) {
    if (profile->n >= 2 &&
        falls(depth_m, profile, profile->carbon_pct, core_pct + HS_K_AUSTENITE_TOTAL_CASE))
        return HS_OK;
    return hs_fail(err, HS_E_RANGE, "", "the carbon nowhere falls to core + %g %%",
                   HS_K_AUSTENITE_TOTAL_CASE);
}

hs_status hs_case_soft_rim(double *depth_m, const hs_case_profile *profile, double limit_HV,
                           hs_error *err) {
    const double *y = profile->hardness_HV;
    for (size_t i = 0; i < profile->n; i++) {
        if (!(y[i] >= limit_HV)) continue;
        *depth_m = i ? place(profile->depth_m, y, i - 1, limit_HV) : 0;
        return HS_OK;
    }
    return hs_fail(err, HS_E_RANGE, "a longer soak, more carbon, a sharper quench",
                   "the case nowhere reaches %g HV", limit_HV);
}

hs_status hs_case_deepest(double *depth_m, const hs_case_profile *profile, double hardness_HV,
                          hs_error *err) {
    if (profile->n >= 2 && profile->hardness_HV[profile->n - 1] >= hardness_HV) {
        *depth_m = profile->depth_m[profile->n - 1];
        return HS_OK;
    }
    return hs_case_depth(depth_m, profile, hardness_HV, err);
}

double hs_case_hardness_at(const hs_case_profile *profile, double depth_m) {
    if (profile->n < 2) return NAN;
    return hs_interpolate(profile->depth_m, profile->hardness_HV, profile->n, depth_m);
}

double hs_case_carbon_at(const hs_case_profile *profile, double depth_m) {
    if (profile->n < 2) return NAN;
    return hs_interpolate(profile->depth_m, profile->carbon_pct, profile->n, depth_m);
}

double hs_case_tolerance(double depth_m) {
    const hs_table *t = hs_table_get(HS_TABLE_CHD_DEVIATION);
    double upper = NAN, top = hs_table_number(t, t->rows - 1, HS_CHD_DEVIATION_DEPTH) * MM;
    if (!(depth_m <= top + 1e-9)) return NAN;
    for (size_t r = 0; r < t->rows; r++)
        if (depth_m >= hs_table_number(t, r, HS_CHD_DEVIATION_DEPTH) * MM - 1e-9)
            upper = hs_table_number(t, r, HS_CHD_DEVIATION_UPPER) * MM;
    return upper;
}
