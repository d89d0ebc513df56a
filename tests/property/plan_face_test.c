/* What a plan prints of a ground face, against parts ground point by point by the virtual grinder.
 * `own:` no outside figures here; the outside thing is the geometry in grinder.c. */
#include "hardskin/plan/plan.h"
#include "plan/decide.h"
#include "property/true_part.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>

enum { PARTS = 4000 };

static hs_result plan(const hs_job *job) {
    static hs_result r;
    test_job_plan(&r, job);
    return r;
}

typedef struct share {
    double less_case, less_taken; /* of parts with less case left, less taken off, than printed */
} share;

/* All parts ground to the bad end of the finished tolerance: the shop may make them all like that.
 */
static share beyond_the_print(const hs_job *job, size_t index, vg_kind kind) {
    static hs_chain chain;
    static hs_chain_work work;
    hs_result r = plan(job);
    const hs_dimension *d = &job->dimension[index];
    const hs_result_face *f = &r.face[d->face[0]];
    int bore = kind == VG_RING_BORE;
    long thin = 0, little = 0;
    CHECK(r.dimension[index].verdict == HS_GO || r.dimension[index].verdict == HS_TIGHT);
    CHECK(hs_chain_make(&chain, job, &work, NULL) == HS_OK);
    for (uint32_t i = 0; i < PARTS; i++) {
        vg_part p = true_part(&chain, &r, index, i, kind);
        p.wanted_m[0] = p.wanted_m[1] = 0;
        p.hard_to_m[0] = p.hard_to_m[1] = INFINITY;
        double deep_m = bore ? d->size.upper_m : d->size.lower_m;
        double shallow_m = bore ? d->size.lower_m : d->size.upper_m;
        /* growth counts on the rough size there, on the nominal one in the plan: a hair */
        const double hair_m = 1e-6;
        thin += true_part_ground(p, deep_m).case_m < f->case_left_min_m - hair_m;
        p.clean_up_m[0] = p.clean_up_m[1] = 0;
        little += true_part_ground(p, shallow_m).clean_m < f->removal_min_m - hair_m;
    }
    share out = {(double)thin / PARTS, (double)little / PARTS};
    printf("%s: %.1f %% have less case than printed, %.1f %% lose less than printed\n", d->name,
           100 * out.less_case, 100 * out.less_taken);
    return out;
}

/* 5 % asked; three standard errors of the two samples (4000 and 2048 draws) are 1.8 %. */
static const double most = 0.05 + 0.018;

static void check_all(double rough_tolerance_m, double finish_um) {
    static test_job t;
    static const vg_kind kinds[] = {VG_PLATE, VG_OLD_CENTRES, VG_RING_OUTSIDE, VG_RING_BORE};
    for (int k = 0; k < 4; k++) {
        if (k == 0) test_job_plate(&t, "16MnCr5");
        if (k == 1) test_job_bar(&t, "16MnCr5");
        if (k >= 2) test_job_ring(&t, "20MnCr5");
        size_t index = k == 3;
        t.job.shop.rough_tolerance_m = rough_tolerance_m;
        hs_size *size = &t.dimension[index].size;
        size->lower_m = size->upper_m - finish_um * 1e-6;
        share s = beyond_the_print(&t.job, index, kinds[k]);
        CHECK(s.less_case <= most);
        CHECK(s.less_taken <= most);
    }
}

static void face__close_tolerances__case_left_is_not_more_than_parts_have(void) {
    check_all(0.02e-3, 20);
}

static void face__wide_rough_tolerance__case_left_is_not_more_than_parts_have(void) {
    check_all(0.12e-3, 20);
}

static void face__wide_finish__case_left_is_not_more_than_parts_have(void) {
    check_all(0.02e-3, 160);
}

HS_TEST_MAIN("property_plan_face",
             TEST(face__close_tolerances__case_left_is_not_more_than_parts_have),
             TEST(face__wide_rough_tolerance__case_left_is_not_more_than_parts_have),
             TEST(face__wide_finish__case_left_is_not_more_than_parts_have))
