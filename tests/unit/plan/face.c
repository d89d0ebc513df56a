/* What is told of a ground face: removal, case left, share of the case, counted from the draws by
 * the sums of the reference page on windows. */
#include "hardskin/model/case.h"
#include "plan/decide.h"
#include "plan/fill.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>

enum { N = 2000 };

typedef struct run {
    hs_chain chain;
    hs_chain_work scratch;
    hs_draws draws;
    hs_decide_work work;
    hs_window_found found[HS_MAX_DIMENSIONS];
    hs_result_face face;
    double least[N], most[N], left[N], typical[N], lost[N];
} run_t;

static double share_below(const double *value, double limit) {
    size_t below = 0;
    for (size_t i = 0; i < N; i++)
        below += value[i] < limit;
    return (double)below / N;
}

/* exact: windows section 1. Stock to the end of the finished tolerance that leaves most, or least,
 * on the part; alike on both sides, for both ask the same. */
static void count(run_t *r, const hs_job *job, size_t index) {
    const hs_dimension *d = &job->dimension[index];
    double sign = r->found[index].inside ? -1 : 1;
    double shallow_m = sign > 0 ? d->size.upper_m : d->size.lower_m;
    double deep_m = sign > 0 ? d->size.lower_m : d->size.upper_m;
    double middle_m = 0.5 * (shallow_m + deep_m);
    for (size_t i = 0; i < N; i++) {
        double g = hs_warp_growth(&r->chain.warp, job, d, r->draws.z[i]);
        hs_trial t = hs_chain_trial(&r->chain, d->face[0], g, &r->work.part[i]);
        double V = r->work.dimension[index].shape_m[i], split = t.sum.split_m;
        double lost_m = t.sum.lost_high_m;
        double rough_m =
            r->found[index].aim_m + job->shop.rough_tolerance_m * r->draws.rough[i][index];
        double thin_m = 0.5 * sign * (rough_m - shallow_m),
               thick_m = 0.5 * sign * (rough_m - deep_m);
        r->least[i] = thin_m + g - lost_m - V / 2 - split;
        r->most[i] = thick_m + g - lost_m + V / 2 + split;
        r->lost[i] = thick_m + g + V / 2 + split; /* of the case: scale comes off the stock */
        r->left[i] = t.case_m - r->lost[i];
        r->typical[i] =
            t.case_m - (0.5 * sign * (r->found[index].aim_m - middle_m) + g + V / 2 + split);
    }
}

static void compare(run_t *r, const hs_job *job, size_t index) {
    static const double middle[HS_INPUTS] = {0};
    const hs_result_face *f = &r->face;
    double q = job->shop.confidence, um = 1e-6, slack = 1.0 / N;
    hs_fill_face(&r->face, &r->found[index], &r->chain, index, 0, &r->draws, &r->work);
    count(r, job, index);
    /* rounded to the safe side: 1 - q of the parts at most lie beyond, and a micrometre on more */
    CHECK(share_below(r->least, f->removal_min_m) <= 1 - q + slack);
    CHECK(share_below(r->least, f->removal_min_m + um) >= 1 - q - slack);
    CHECK(share_below(r->most, f->removal_max_m) >= q - slack);
    CHECK(share_below(r->most, f->removal_max_m - um) <= q + slack);
    CHECK(share_below(r->left, f->case_left_min_m) <= 1 - q + slack);
    CHECK(share_below(r->left, f->case_left_min_m + um) >= 1 - q - slack);
    NEAR(share_below(r->typical, f->case_left_typical_m), 0.5, 2 * slack);
    NEAR(share_below(r->lost, f->case_lost_m), q, 2 * slack);
    NEAR(f->case_left_min_m * 1e6, round(f->case_left_min_m * 1e6), 1e-6);
    hs_part_draw draw = hs_chain_draw(&r->chain, middle);
    size_t face = job->dimension[index].face[0];
    double depth_m = hs_chain_trial(&r->chain, face, 0, &draw).case_m;
    NEAR(f->share_of_case_pct, 100 * f->case_lost_m / depth_m, 1e-9);
    /* own: the profile read where the wheel comes deepest; a flat face has no corners */
    const hs_case_profile *p = &r->chain.response[r->chain.face[face].axis].typical;
    NEAR(f->hardness_left_HV, hs_case_hardness_at(p, f->case_lost_m), 0.1);
}

/* exact: counted. Metal lost and bow at both ends, and the mass of scale over the whole surface. */
static void compare_part(run_t *r, const hs_job *job, double surface_m2) {
    static double column[N];
    static hs_result_scale scale;
    static hs_result_distortion warp; /* with its whole quench: not on the stack */
    double q = job->shop.confidence, slack = 1.0 / N;
    hs_fill_scale(&scale, &r->chain, &r->draws, column);
    hs_fill_distortion(&warp, &r->chain, &r->draws, column);
    for (size_t i = 0; i < N; i++) {
        const double *z = r->draws.z[i];
        double x_m, y_m;
        hs_warp_bow(&x_m, &y_m, &r->chain.warp, z);
        r->most[i] =
            job->part.form == HS_RING ? hs_warp_ovality(&r->chain.warp, z) : hypot(x_m, y_m);
        r->lost[i] =
            hs_loss_metal(&r->chain.loss, job->steps, z) + hs_loss_taken(&r->chain.loss, z);
    }
    NEAR(share_below(r->lost, scale.lost_low_m), 1 - q, 2 * slack);
    NEAR(share_below(r->lost, scale.lost_high_m), q, 2 * slack);
    NEAR(share_below(r->most, warp.bow_m), 0.5, 2 * slack);
    NEAR(share_below(r->most, warp.bow_high_m), 0.95, 2 * slack);
    NEAR(scale.mass_kg, hs_loss_mass_kg_m2(&r->chain.loss) * surface_m2, 1e-6 * scale.mass_kg);
    CHECK(scale.mass_kg > 0);
}

static void face__told__is_what_the_draws_count(void) {
    static test_job t;
    static const double asked[] = {0.8, 0.95};
    /* exact: surfaces of the plate, the bar and the ring, mm2 */
    const double pi = acos(-1),
                 surface_mm2[] = {2 * (300. * 60 + 300 * 20 + 60 * 20),
                                  pi * 30 * 160 + pi * 30 * 30 / 2,
                                  pi * (70 + 45) * 50 + pi * (70 * 70 - 45 * 45) / 2};
    run_t *r = calloc(1, sizeof *r);
    CHECK(r != NULL);
    for (int form = 0; r && form < 3; form++) {
        if (form == 0) test_job_plate(&t, "16MnCr5");
        if (form == 1) test_job_bar(&t, "16MnCr5");
        if (form == 2) test_job_ring(&t, "20MnCr5");
        CHECK(hs_chain_make(&r->chain, &t.job, &r->scratch, NULL) == HS_OK);
        for (int a = 0; a < 2; a++) {
            t.job.shop.confidence = asked[a];
            hs_draws_fill(&r->draws, N, 5);
            hs_decide_windows(r->found, &r->chain, &r->draws, asked[a], &r->work);
            compare_part(r, &t.job, 1e-6 * surface_mm2[form]);
            for (size_t i = 0; i < t.job.dimensions; i++) {
                CHECK(r->found[i].verdict != HS_STOP);
                compare(r, &t.job, i);
            }
        }
    }
    free(r);
}

HS_TEST_MAIN("plan_face", TEST(face__told__is_what_the_draws_count))
