#include "plan/fill.h"

#include "base/num.h"
#include "constants.h"
#include "hardskin/units/hardness.h"
#include "plan/cool.h"
#include "plan/reading_make.h"

#include <math.h>
#include <stdio.h>

/* `scale` on the depths: a reading of the case. */
static void thin_profile(hs_result_case *out, const hs_case_profile *p, double scale) {
    double end_m = fmin(p->depth_m[p->n - 1], 1.3 * out->total_m);
    enum { ROWS = 33 };
    for (size_t i = 0; i < ROWS; i++) {
        double depth_m = end_m * (double)i / (ROWS - 1);
        out->profile[i] = (hs_profile_point){scale * depth_m, hs_case_carbon_at(p, depth_m),
                                             hs_case_hardness_at(p, depth_m)};
    }
    out->total_m *= scale;
    out->points = ROWS;
}

/* Case depth over the draws, and at the middle. */
static void case_depths(hs_result_case *out, const hs_chain *chain, size_t face,
                        const hs_draws *draws, hs_decide_work *work) {
    static const double middle[HS_INPUTS] = {0};
    hs_part_draw typical = hs_chain_draw(chain, middle);
    double q = chain->job->shop.confidence, *column = work->column[0];
    for (size_t i = 0; i < draws->n; i++)
        column[i] = hs_chain_trial(chain, face, 0, &work->part[i]).flat_m;
    out->depth_m = hs_chain_trial(chain, face, 0, &typical).flat_m;
    out->depth_low_m = hs_quantile_of(column, draws->n, 1 - q);
    out->depth_high_m = hs_quantile_of(column, draws->n, q);
}

static void fill_hard(hs_result_case *out, const hs_chain *chain, size_t face,
                      const hs_draws *draws, hs_decide_work *work) {
    static const double middle[HS_INPUTS] = {0};
    const hs_case_profile *p = &chain->response[chain->face[face].axis].typical;
    double retained = 0;
    *out = (hs_result_case){.present = 1,
                            .face = face,
                            .limit_HV = chain->job->face[face].limit_HV,
                            .surface_carbon_pct = p->carbon_pct[0],
                            .margin_low = chain->face[face].margin.low,
                            .margin = chain->face[face].margin.mid,
                            .margin_high = chain->face[face].margin.high,
                            .core_HV = chain->core_HV.mid,
                            .core_low_HV = chain->core_HV.low,
                            .core_high_HV = chain->core_HV.high,
                            .core_martensite_pct = 100 * chain->core.martensite,
                            .core_bainite_pct = 100 * chain->core.bainite,
                            .core_hardens = chain->core.martensite >= 0.5,
                            .dissolved_pct = hs_acm_pct(chain->route.dissolve_K)};
    case_depths(out, chain, face, draws, work);
    hs_hardening h = chain->hardening;
    h.rate_K_s = chain->face[face].surface_rate_K_s;
    out->surface_HV = hs_hardened_HV(&h, p->carbon_pct[0], &retained);
    double colder = 0;
    h.quench_to_K = HS_K_PLAN_DOUBT_SUB_ZERO;
    hs_hardened_HV(&h, p->carbon_pct[0], &colder);
    out->sub_zero_austenite_pct = 100 * colder;
    out->hardens = out->margin_high >= 1;
    if (!out->hardens) out->surface_HV = NAN;
    out->surface_HRC = hs_hardened_HRC(out->surface_HV);
    out->core_HRC = hs_hardened_HRC(out->core_HV);
    out->retained_austenite_pct = 100 * retained;
    out->soft_rim_m =
        hs_loss_rim(&chain->loss, hs_limit_least(&chain->face[face].asked, middle), middle);
    double reach_m = p->depth_m[p->n - 1];
    if (hs_case_total(&out->total_m, p, chain->job->part.steel.mid.C, NULL) != HS_OK)
        out->total_m = reach_m;
    const hs_reading *reading = &chain->reading;
    thin_profile(out, p, reading->plan && reading->factor > 0 ? reading->factor : 1);
    /* it scatters alike */
    double times = out->depth_m > 0 ? out->depth_high_m / out->depth_m : 1;
    out->total_high_m = times * out->total_m;
}

void hs_fill_case(hs_result *result, const hs_chain *chain, const hs_draws *draws,
                  hs_decide_work *work) {
    size_t face = hs_reading_face(chain);
    if (face < HS_MAX_FACES) fill_hard(&result->hard, chain, face, draws, work);
    hs_fill_scale(&result->scale, chain, draws, work->column[0]);
    hs_fill_distortion(&result->distortion, chain, draws, work->column[0]);
}
