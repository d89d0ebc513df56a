/* What a plan prints of a ground face, against parts ground point by point by the virtual grinder.
 * `own:` no outside figures here; the outside thing is the geometry in grinder.c. */
#include "base/random.h"
#include "hardskin/plan/plan.h"
#include "plan/decide.h"
#include "property/grinder.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>

enum { PARTS = 4000 };

static hs_result plan(const hs_job *job) {
    static hs_result r;
    hs_error err = {0};
    void *work = malloc(hs_plan_work_size());
    hs_status status = work ? hs_plan(&r, job, work, &err) : HS_E_MEMORY;
    if (status != HS_OK) printf("plan failed: %s\n", err.message);
    CHECK(status == HS_OK);
    free(work);
    return r;
}

/* One part of a dimension as it may really come out: other draws than the plan's. */
static vg_part roll(const hs_chain *chain, const hs_result *r, size_t index, uint32_t sample,
                    vg_kind kind) {
    const hs_job *job = chain->job;
    const hs_dimension *d = &job->dimension[index];
    double z[HS_INPUTS];
    for (uint32_t k = 0; k < HS_INPUTS; k++)
        z[k] = hs_random_normal(77, sample, k);
    hs_part_draw draw = hs_chain_draw(chain, z);
    double growth_m = hs_warp_growth(&chain->warp, job, d, z);
    double shape_m = hs_warp_shape(&chain->warp, job, d, draw.bow_x_m, draw.bow_y_m, z);
    double place = 2 * hs_random_uniform(78, sample, 0) - 1;
    vg_part p = {.kind = kind,
                 .length_m = job->part.length_m,
                 .width_m = job->part.width_m > 0 ? job->part.width_m : 0.01,
                 .rough_m = r->dimension[index].rough_aim_m + place * job->shop.rough_tolerance_m,
                 .scale_m = draw.lost_m,
                 .set_m = draw.set_up_m};
    p.strain = 2 * growth_m / d->size.nominal_m;
    if (kind == VG_RING_BORE) p.strain = -p.strain;
    p.bow_m = kind == VG_OLD_CENTRES ? shape_m / 2 : shape_m;
    p.ovality_m = 2 * shape_m;
    for (int k = 0; k < 2; k++) {
        hs_trial t = hs_chain_trial(chain, d->face[k], growth_m, &draw);
        p.clean_up_m[k] = t.sum.clean_up_m;
        p.case_m[k] = t.case_m;
        p.hard_to_m[k] = INFINITY;
    }
    return p;
}

/* Worst over where the wheel may be off. */
static vg_result grind(vg_part p, double finish_m) {
    p.finish_m = finish_m;
    p.first_share_m = 0.5 * (p.rough_m - finish_m);
    vg_result worst = {INFINITY, INFINITY, INFINITY};
    for (int k = 0; k < 4; k++) {
        p.set_angle = k * acos(-1) / 2;
        vg_result one = vg_grind(&p);
        worst.case_m = fmin(worst.case_m, one.case_m);
        worst.clean_m = fmin(worst.clean_m, one.clean_m);
    }
    return worst;
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
        vg_part p = roll(&chain, &r, index, i, kind);
        double deep_m = bore ? d->size.upper_m : d->size.lower_m;
        double shallow_m = bore ? d->size.lower_m : d->size.upper_m;
        /* growth counts on the rough size there, on the nominal one in the plan: a hair */
        const double hair_m = 1e-6;
        thin += grind(p, deep_m).case_m < f->case_left_min_m - hair_m;
        p.clean_up_m[0] = p.clean_up_m[1] = 0;
        little += grind(p, shallow_m).clean_m < f->removal_min_m - hair_m;
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
