#include "hardskin/model/quench_layer.h"

#include "constants.h"

#include <math.h>

enum { IN_CASE = 48 }; /* rows across the case; the others lead on to the middle of the section */

static double carbon_at(const hs_quench_profile *p, double depth_m) {
    size_t i = 1;
    if (p->n < 2 || depth_m >= p->depth_m[p->n - 1]) return p->carbon_pct[p->n - 1];
    while (p->depth_m[i] < depth_m)
        i++;
    double share = (depth_m - p->depth_m[i - 1]) / (p->depth_m[i] - p->depth_m[i - 1]);
    return p->carbon_pct[i - 1] + share * (p->carbon_pct[i] - p->carbon_pct[i - 1]);
}

/* Where the carbon has come down to the total case's; 0 where it never was above. */
static double total_m(const hs_quench_profile *p, double core_pct) {
    double deep_m = 0, limit = core_pct + HS_K_AUSTENITE_TOTAL_CASE;
    for (size_t i = 0; i + 1 < p->n; i++)
        if (p->carbon_pct[i] > limit) deep_m = p->depth_m[i + 1];
    return deep_m;
}

static size_t set_depths(hs_quench_layer *out, double case_m, double half_m) {
    size_t n = 0, rest = HS_QUENCH_LAYERS - (case_m > 0 ? IN_CASE : 0);
    for (size_t i = 0; case_m > 0 && i < IN_CASE; i++)
        out->depth_m[n++] = case_m * (double)i / IN_CASE;
    if (!(half_m > case_m)) {
        out->depth_m[n++] = case_m;
        return n;
    }
    for (size_t i = 0; i < rest; i++)
        out->depth_m[n++] = case_m + (half_m - case_m) * (double)i / (double)(rest - 1);
    return n;
}

hs_status hs_quench_layer_of(hs_quench_layer *out, double *case_m, const hs_quench_profile *profile,
                             const hs_composition *steel, const hs_quenched *quenched,
                             double from_K, hs_error *err) {
    double place[HS_QUENCH_LAYERS], rate[HS_QUENCH_LAYERS], half_m = 0.5 * quenched->size_m;
    if (profile->n == 0 || !(half_m > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "a quench of nothing");
    double core_pct = profile->carbon_pct[profile->n - 1];
    *case_m = fmin(total_m(profile, core_pct), half_m);
    out->n = set_depths(out, *case_m, half_m);
    for (size_t i = 0; i < out->n; i++)
        place[i] = fmax(0, 1 - out->depth_m[i] / half_m);
    hs_quench_rates(rate, place, out->n, quenched, from_K);
    for (size_t i = 0; i < out->n; i++) {
        if (!(rate[i] > 0))
            return hs_fail(err, HS_E_RANGE, "a quench from above 700 C",
                           "no rate of cooling in a quench from %.0f K", from_K);
        double carbon = carbon_at(profile, out->depth_m[i]);
        out->dissolved_pct[i] = fmin(carbon, profile->dissolved_most_pct);
        out->share[i] = hs_structure_of(steel, out->dissolved_pct[i], from_K, rate[i]).martensite;
    }
    return HS_OK;
}
