#include "plan/descale_state.h"

#include "constants.h"

#include <math.h>

double hs_descale_rate(const hs_heat_point *point, size_t n) {
    const double at_K = HS_K_DESCALE_RATE_AT;
    double rate_K_s = 0;
    for (size_t i = 1; i < n; i++) {
        double down_K = point[i - 1].temp_K - point[i].temp_K;
        double time_s = point[i].time_s - point[i - 1].time_s;
        if (!(down_K > 0 && time_s > 0)) continue;
        if (point[i - 1].temp_K <= at_K) break;
        rate_K_s = down_K / time_s;
    }
    return rate_K_s;
}

/* The heat whose cooling the part comes from; NULL: a quench, a soft anneal, or none. */
static const hs_route_heat *cooling_of(const hs_chain *chain, size_t step) {
    const hs_route_heat *found = NULL;
    const hs_job *job = chain->job;
    for (size_t i = 0; i < chain->route.heats && chain->route.heat[i].step < step; i++)
        found = &chain->route.heat[i];
    if (!found || job->step[found->step].kind != HS_COOL) return NULL;
    for (size_t i = found->step; i < step; i++)
        if (job->step[i].kind == HS_STRESS_RELIEVE || job->step[i].kind == HS_QUENCH) return NULL;
    return found;
}

/* The hardest a slow cooling leaves between the core's carbon and the surface's. In air the rate is
 * an upper figure: its coefficient is that of the start, far above 700 C. */
static double cooled_HV(const hs_chain *chain, const hs_route_heat *cooling, double *martensite) {
    hs_hardening h = chain->hardening;
    h.tempers = 0;
    h.dissolve_K = cooling->point[0].temp_K;
    h.rate_K_s = hs_descale_rate(cooling->point, cooling->n);
    *martensite = 0;
    if (!(h.rate_K_s > 0) || chain->axes.n == 0) return NAN;
    double most_HV = NAN, surface_pct = chain->response[0].typical.carbon_pct[0];
    const double step_pct = 0.05; /* fine beside the doubt of the structure */
    for (double carbon = chain->job->part.steel.mid.C; carbon <= surface_pct + step_pct;
         carbon += step_pct) {
        double pct = fmin(carbon, surface_pct);
        most_HV = fmax(most_HV, hs_hardened_HV(&h, pct, NULL));
        hs_structure s = hs_structure_of(&h.steel, pct, h.dissolve_K, h.rate_K_s);
        *martensite = fmax(*martensite, s.martensite);
    }
    return most_HV;
}

static int quenched_before(const hs_job *job, size_t step) {
    int quenched = 0;
    for (size_t i = 0; i < step; i++) {
        hs_step_kind kind = job->step[i].kind;
        if (kind == HS_QUENCH) quenched = 1;
        if (kind == HS_CARBURISE || kind == HS_REHEAT) quenched = 0;
    }
    return quenched;
}

hs_descale_at hs_descale_state(const hs_chain *chain, size_t step) {
    const hs_job *job = chain->job;
    hs_descale_at at = {.step = step,
                        .surface_HRC = NAN,
                        .core_HRC = NAN,
                        .hardened = quenched_before(job, step),
                        .scale_m = hs_loss_standing_m(&chain->loss, step)};
    if (at.hardened) {
        at.surface_HRC = hs_hardened_HRC(hs_chain_surface_HV(chain, step));
        at.core_HRC = hs_hardened_HRC(chain->core_HV.mid);
        at.tempered = hs_route_tempered_before(job, step);
        return at;
    }
    const hs_route_heat *cooling = cooling_of(chain, step);
    if (!cooling) return at;
    double martensite;
    at.surface_HRC = hs_hardened_HRC(cooled_HV(chain, cooling, &martensite));
    at.self_hard = at.surface_HRC >= HS_K_HYDROGEN_HARD_FROM;
    at.hardened = at.self_hard;
    at.tempered = at.self_hard && martensite < HS_K_DESCALE_SOME_MARTENSITE;
    return at;
}
