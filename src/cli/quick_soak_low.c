#include "cli/quick_soak_low.h"

#include "base/num.h"
#include "base/random.h"
#include "cli/quick_lookup.h"
#include "constants.h"
#include "plan/draw.h"

#include <math.h>

/* What is short of the middle in one box of 20, as a share of what the bound of 95 % either way is.
 */
static double one_sided(void) {
    return hs_draw_share(hs_normal_quantile(0.95));
}

/* How far the medium's surface carbon may lie below what is reckoned with. */
static double surface_less(const quick_value *v) {
    if (v[CASE_SURFACE].text) return v[CASE_SURFACE].q.value - v[CASE_SURFACE].q.low;
    const hs_table *t = hs_table_get(HS_TABLE_SURFACE_CARBON);
    size_t row = 0;
    if (!v[CASE_IN].text ||
        quick_row(&row, HS_TABLE_SURFACE_CARBON, v[CASE_IN].text, "in", NULL) != HS_OK)
        return 0;
    return hs_table_number(t, row, HS_SURFACE_CARBON_VALUE) -
           hs_table_number(t, row, HS_SURFACE_CARBON_LOW);
}

static double diffusivity_bound(const quick_value *v) {
    hs_steel steel;
    int alloyed = v[CASE_STEEL].text && hs_steel_find(&steel, v[CASE_STEEL].text, NULL) == HS_OK &&
                  steel.alloyed;
    double sigma =
        alloyed ? HS_K_PLAN_DOUBT_DIFFUSIVITY_ALLOYED : HS_K_PLAN_DOUBT_DIFFUSIVITY_PLAIN;
    return exp(-sigma / hs_draw_share(1));
}

/* By how much the depth falls short of the middle's with one input at its low bound; no case at all
 * counts as all of it. */
static double short_by(const quick_carburising *low, double time_s, double middle_m) {
    quick_case hard;
    if (quick_case_depth(&hard, low, time_s, NULL) != HS_OK) return middle_m;
    return fmax(0, middle_m - hard.depth_m);
}

hs_status quick_soak_low_depth(double *depth_m, const quick_carburising *c, const quick_value *v,
                               double time_s, hs_error *err) {
    quick_case hard;
    hs_status status = quick_case_depth(&hard, c, time_s, err);
    if (status != HS_OK) return status;
    quick_carburising cold = *c, lean = *c, slow = *c;
    const hs_quantity *at = &v[CASE_AT].q;
    cold.at_K -= at->spread ? at->value - at->low : HS_K_PLAN_DOUBT_TEMP_BOUND;
    lean.side.carbon_pct -= surface_less(v);
    slow.diffusivity = diffusivity_bound(v);
    double by_fire = short_by(&cold, time_s, hard.depth_m);
    double by_medium = short_by(&lean, time_s, hard.depth_m);
    double by_spread = short_by(&slow, time_s, hard.depth_m);
    *depth_m =
        hard.depth_m -
        one_sided() * sqrt(by_fire * by_fire + by_medium * by_medium + by_spread * by_spread +
                           HS_K_PLAN_DOUBT_PACK_SCATTER * HS_K_PLAN_DOUBT_PACK_SCATTER);
    return HS_OK;
}

typedef struct wanted {
    const quick_carburising *c;
    const quick_value *v;
    double depth_m;
} wanted;

static double beyond(double log_time, const void *context) {
    const wanted *w = context;
    double depth_m;
    if (quick_soak_low_depth(&depth_m, w->c, w->v, exp(log_time), NULL) != HS_OK)
        return -w->depth_m;
    return depth_m - w->depth_m;
}

hs_status quick_soak_low_time(double *time_s, const quick_carburising *c, const quick_value *v,
                              double depth_m, double shortest_s, double longest_s, hs_error *err) {
    wanted w = {c, v, depth_m};
    double log_time = 0;
    if (hs_root(&log_time, beyond, &w, log(shortest_s), log(longest_s), 1e-5) != HS_OK)
        return hs_fail(err, HS_E_CONVERGE, "another depth, heat or surface carbon",
                       "no soak of up to %.0f h surely gives that depth", longest_s / 3600);
    *time_s = exp(log_time);
    return HS_OK;
}
