/* What the finished faces may be tested with, and the case as a drawing would ask for it. */
#include "plan/fill.h"

#include "constants.h"
#include "hardskin/units/hardness.h"
#include "plan/chd.h"

#include <math.h>

static void test_face(hs_result_face *out, const hs_face *face) {
    double hardness_HV = face->hardness_HV > 0 ? face->hardness_HV : face->limit_HV;
    out->test_with = 0;
    out->hrc_needs_m = NAN;
    (void)hs_test_layer(&out->hrc_needs_m, HS_TEST_HRC, hardness_HV, NULL);
    for (int t = 0; t < HS_TESTS; t++)
        if (hs_test_fits((hs_hardness_test)t, out->case_left_min_m, hardness_HV))
            out->test_with |= 1u << t;
}

/* To be ordered as hardened: what the finished face wants, and what the worst spot loses. */
static void order_case(hs_result *r, const hs_chain *chain) {
    const hs_job *job = chain->job;
    const double tenth_m = 1e-4;
    double least_m = 0;
    for (size_t i = 0; i < job->faces; i++) {
        const hs_face *face = &job->face[i];
        if (!r->face[i].present || face->limit_HV != r->hard.limit_HV) continue;
        if (face->case_m > 0 && r->face[i].case_lost_m > 0)
            least_m = fmax(least_m, face->case_m + r->face[i].case_lost_m);
    }
    if (least_m > 0)
        hs_chd_write(r->hard.drawing, sizeof r->hard.drawing, ceil(least_m / tenth_m) * tenth_m,
                     r->hard.limit_HV);
}

static double deep_HV(const hs_chain *chain, size_t axis, double depth_m) {
    const hs_case_profile *p = &chain->response[axis].typical;
    double at_m = HS_K_CHD_DEEP_TIMES * depth_m;
    if (at_m >= p->depth_m[p->n - 1]) return chain->core_HV.mid;
    return hs_case_hardness_at(p, at_m);
}

void hs_fill_readings(hs_result *r, const hs_chain *chain) {
    const hs_job *job = chain->job;
    for (size_t i = 0; i < job->faces; i++) {
        if (!r->face[i].present) continue;
        test_face(&r->face[i], &job->face[i]);
        if (job->face[i].case_m > 0)
            hs_chd_write(r->face[i].drawing, sizeof r->face[i].drawing, job->face[i].case_m,
                         job->face[i].limit_HV);
    }
    if (!r->hard.present || !(r->hard.depth_m > 0)) return;
    size_t axis = chain->face[r->hard.face].axis;
    double effective_HV = hs_hardness_HV_of_HRC(HS_K_CHD_EFFECTIVE);
    r->hard.effective_m = hs_chain_depth_to(chain, axis, effective_HV);
    if (!(r->hard.effective_m > 0)) r->hard.effective_m = NAN;
    r->hard.deep_HV = deep_HV(chain, axis, r->hard.depth_m);
    r->hard.other_limit =
        r->hard.limit_HV <= HS_K_CHD_LIMIT && r->hard.deep_HV >= HS_K_CHD_DEEP_LIMIT;
    order_case(r, chain);
}
