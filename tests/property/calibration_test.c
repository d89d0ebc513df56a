/* Does a plan that promises 95 % keep it? Truths are drawn from the stated distributions by other
 * numbers than the plan's, and ground by the virtual grinder, every dimension of a part from the
 * same draw. `own:` no outside figures; the outside thing is the geometry in grinder.c. */
#include "base/random.h"
#include "hardskin/plan/plan.h"
#include "property/true_part.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <math.h>
#include <stdlib.h>

enum { PARTS = 10000 };

typedef struct bench {
    hs_chain chain;
    hs_chain_work work;
    hs_result result;
    test_job job;
} bench;

static int plan(hs_result *r, const hs_job *job) {
    return test_job_try(r, job, NULL) == HS_OK;
}

static void ask(bench *b, double case_m) {
    for (size_t k = 0; k < b->job.job.faces; k++)
        if (b->job.face[k].finish == HS_GROUND) b->job.face[k].case_m = case_m;
}

/* Is it a go? The wanted case is in the sums, not in the chain. */
static int is_go(const bench *b, const hs_draws *draws) {
    static hs_decide_work work;
    static hs_window_found found[HS_MAX_DIMENSIONS];
    const hs_job *job = &b->job.job;
    hs_decide_windows(found, &b->chain, draws, job->shop.confidence, &work);
    double joint = hs_decide_joint(found, &b->chain, draws, &work);
    return hs_decide_part(found, job->dimensions, joint, job->shop.confidence) == HS_GO;
}

/* Ask for more case until the plan is no go any more, and keep the last go: a promise with room to
 * spare would be kept whatever its doubts. */
static void tighten(bench *b) {
    static hs_draws draws;
    double low = 0.1e-3, high = 1.2e-3;
    hs_draws_fill(&draws, hs_draws_wanted(b->job.job.shop.confidence), 1912); /* as the plan's */
    for (int i = 0; i < 9; i++) {
        double wanted = 0.5 * (low + high);
        ask(b, wanted);
        *(is_go(b, &draws) ? &low : &high) = wanted;
    }
    ask(b, low);
}

static int stands(const bench *b, uint32_t sample, const vg_kind *kinds) {
    const hs_job *job = &b->job.job;
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_size *size = &job->dimension[i].size;
        double share = hs_random_uniform(79, sample, (uint32_t)i);
        double finish_m = size->lower_m + share * (size->upper_m - size->lower_m);
        vg_part p = true_part(&b->chain, &b->result, i, sample, kinds[i]);
        vg_result g = true_part_ground(p, finish_m);
        if (!(g.clean_m >= 0 && g.case_m >= 0 && g.hard_m >= 0)) return 0;
    }
    return 1;
}

static void calibrate(const char *name, bench *b, const vg_kind *kinds) {
    CHECK(hs_chain_make(&b->chain, &b->job.job, &b->work, NULL) == HS_OK);
    tighten(b);
    CHECK(plan(&b->result, &b->job.job) && b->result.grind == HS_GO);
    long good = 0;
    for (uint32_t i = 0; i < PARTS; i++)
        good += stands(b, i, kinds);
    double share = (double)good / PARTS, error = sqrt(0.95 * 0.05 / PARTS);
    printf("%-6s asks %.2f mm of case; plan says %.1f %%, %.2f %% of %d parts succeed "
           "(one-sided 99 %% binomial bound: %.2f %%)\n",
           name, 1e3 * b->job.face[0].case_m, 100 * b->result.confidence.reached, 100 * share,
           PARTS, 100 * (share - 2.326 * error));
    /* the plan stands at 95 % of its own 2048 draws: both samples have their chance, together .5 %
     * (one standard deviation); a share below the one-sided 99 % bound of it is a broken promise */
    double chance = sqrt(0.95 * 0.05 * (1.0 / PARTS + 1.0 / 2048));
    CHECK(share >= 0.95 - 2.33 * chance);
    CHECK(share < 0.9999); /* the bench can see a failure */
}

static void calibration__plates__keep_what_is_promised(void) {
    static bench b;
    static const vg_kind kinds[] = {VG_PLATE};
    test_job_plate(&b.job, "16MnCr5");
    calibrate("plate", &b, kinds);
}

static void calibration__bars__keep_what_is_promised(void) {
    static bench b;
    static const vg_kind kinds[] = {VG_OLD_CENTRES};
    test_job_bar(&b.job, "16MnCr5");
    calibrate("bar", &b, kinds);
}

static void calibration__rings__keep_what_is_promised(void) {
    static bench b;
    static const vg_kind kinds[] = {VG_RING_OUTSIDE, VG_RING_BORE};
    test_job_ring(&b.job, "20MnCr5");
    calibrate("ring", &b, kinds);
}

HS_TEST_MAIN("property_calibration", TEST(calibration__plates__keep_what_is_promised),
             TEST(calibration__bars__keep_what_is_promised),
             TEST(calibration__rings__keep_what_is_promised))
