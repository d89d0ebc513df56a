/* What the finished faces may be tested with, and the case as a drawing would ask for it. */
#include "plan/fill.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/hardness.h"
#include "plan/chd.h"
#include "plan/reading_make.h"

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
            least_m = fmax(least_m, (face->case_m + r->face[i].case_lost_m) /
                                        (r->face[i].edge.present ? r->face[i].edge.share : 1));
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

/* The files of a set on either side of the limit. */
static void fill_files(hs_result_case *out, const hs_chain *chain) {
    const hs_table *t = hs_table_get(HS_TABLE_HARDNESS_FILES);
    double limit_HRC = hs_hardness_HRC_of_HV(out->limit_HV);
    out->file_HRC[0] = out->file_HRC[1] = NAN;
    for (size_t r = 0; r < t->rows; r++) {
        double class_HRC = hs_table_number(t, r, HS_HARDNESS_FILES_CLASS);
        if (class_HRC < limit_HRC) out->file_HRC[0] = class_HRC;
        if (class_HRC >= limit_HRC && isnan(out->file_HRC[1])) out->file_HRC[1] = class_HRC;
    }
    for (int k = 0; k < 2; k++)
        out->file_m[k] =
            isnan(out->file_HRC[k])
                ? NAN
                : hs_chain_depth_to(chain, out->face, hs_hardness_HV_of_HRC(out->file_HRC[k]));
}

static void fill_ways(hs_result_case *out, const hs_chain *chain) {
    const hs_reading *r = &chain->reading;
    for (int way = 0; way < HS_CASE_WAYS; way++)
        out->way_m[way] = hs_reading_expected(chain, out->face, (hs_case_way)way, out->limit_HV);
    fill_files(out, chain);
    out->reading = (hs_result_reading){.present = r->present,
                                       .plan = r->plan,
                                       .read_m = r->read_m,
                                       .factor = r->factor,
                                       .doubt_m = r->plan ? r->doubt_m : r->doubt_here_m};
    if (r->computed_m > 0) out->reading.computed_m = r->computed_m - (r->from_blank_m - r->read_m);
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
    if (!r->hard.present) return;
    size_t axis = chain->face[r->hard.face].axis;
    fill_ways(&r->hard, chain);
    if (!(r->hard.depth_m > 0)) return;
    double effective_HV = hs_hardness_HV_of_HRC(HS_K_CHD_EFFECTIVE);
    r->hard.effective_m = hs_chain_depth_to(chain, r->hard.face, effective_HV);
    if (!(r->hard.effective_m > 0)) r->hard.effective_m = NAN;
    r->hard.deep_HV = deep_HV(chain, axis, r->hard.depth_m);
    r->hard.other_limit =
        r->hard.limit_HV <= HS_K_CHD_LIMIT && r->hard.deep_HV >= HS_K_CHD_DEEP_LIMIT;
    order_case(r, chain);
}
