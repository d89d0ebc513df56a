/* Windows from draws: how far the number of draws lets them be known, shown by other seeds; and the
 * share of good draws, counted from each draw's own sizes. */
#include "plan/decide.h"
#include "job.h"
#include "plan/aim.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

typedef struct run {
    hs_chain chain;
    hs_chain_work scratch;
    hs_draws draws;
    hs_decide_work work;
    hs_window_found found[HS_MAX_DIMENSIONS];
} run_t;

static run_t *start(const hs_job *job) {
    run_t *r = calloc(1, sizeof *r);
    hs_error err = {0};
    if (!r || hs_chain_make(&r->chain, job, &r->scratch, &err) != HS_OK) abort();
    return r;
}

static void decide(run_t *r, size_t n, uint64_t seed) {
    hs_draws_fill(&r->draws, n, seed);
    hs_decide_windows(r->found, &r->chain, &r->draws, r->chain.job->shop.confidence, &r->work);
}

/* independent: the spread of the ends over 60 seeds, against the error each run claims from its own
 * draws. The spread itself is known to 9 %, the mean claim to 2 %; the claim adds the faces and
 * takes the worse end, so it may be larger, by up to a half. */
static void decide__error_of_the_quantiles__is_what_other_seeds_show(void) {
    enum { SEEDS = 60 };
    static test_job t;
    static const size_t numbers[2] = {1024, 4096};
    double claimed[2];
    test_job_plate(&t, "16MnCr5");
    run_t *r = start(&t.job);
    for (int k = 0; k < 2; k++) {
        double sum[2] = {0}, square[2] = {0}, claim = 0;
        for (uint64_t seed = 1; seed <= SEEDS; seed++) {
            decide(r, numbers[k], seed);
            const double end[2] = {r->found[0].rough.low_m, r->found[0].rough.high_m};
            for (int e = 0; e < 2; e++) {
                sum[e] += end[e];
                square[e] += end[e] * end[e];
            }
            claim += r->found[0].error_m / SEEDS;
        }
        double worst = 0;
        for (int e = 0; e < 2; e++) {
            double mean = sum[e] / SEEDS;
            worst = fmax(worst, sqrt(square[e] / SEEDS - mean * mean));
        }
        printf("%zu draws, %d seeds: ends spread %.4f mm (95 %%), claimed %.4f mm\n", numbers[k],
               SEEDS, 1.96e3 * worst, 1e3 * claim);
        CHECK(1.96 * worst < 1.2 * claim && claim < 1.6 * 1.96 * worst);
        claimed[k] = claim;
    }
    /* exact: errors fall with the root of the number, to what 60 claims scatter */
    NEAR(claimed[0] / claimed[1], 2, 0.15);
    free(r);
}

/* exact: q = .95 of a uniform number is known to 1.96 sqrt(.95 * .05 / n) */
static void draws__error_of_a_uniform_quantile__closed_form(void) {
    enum { N = 16384 };
    static double value[N], scratch[N];
    for (int i = 0; i < N; i++)
        value[i] = (i * 7919 % N + 0.5) / N; /* every rank once */
    NEAR(hs_draws_error(value, N, 0.95, scratch), 1.96 * sqrt(0.95 * 0.05 / N), 2.0 / N);
    for (int i = 0; i < N; i++)
        value[i] = INFINITY; /* no case to keep */
    NEAR(hs_draws_error(value, N, 0.05, scratch), 0, 0);
}

/* exact: drawn in two calls or in one, the same windows */
static void decide__more_draws__are_added_to_those_that_stand(void) {
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    run_t *once = start(&t.job), *twice = start(&t.job);
    decide(once, 1500, 3);
    decide(twice, 700, 3);
    hs_draws_take(&twice->draws, 1500);
    hs_decide_more(twice->found, &twice->chain, &twice->draws, 700, t.job.shop.confidence,
                   &twice->work);
    NEAR(twice->found[0].rough.low_m, once->found[0].rough.low_m, 0);
    NEAR(twice->found[0].rough.high_m, once->found[0].rough.high_m, 0);
    NEAR(twice->found[0].joint, once->found[0].joint, 0);
    free(once);
    free(twice);
}

static size_t wanted(const hs_window_found *f, double tolerance_m) {
    hs_job job = {.dimensions = 2, .shop = {.rough_tolerance_m = tolerance_m}};
    return hs_decide_draws(f, &job, 2048);
}

/* Asked: less than half of +-t, a quarter of the whole. */
static void decide__number_of_draws__by_the_root_and_only_where_it_matters(void) {
    hs_window_found f[2] = {{.verdict = HS_GO, .grounds = 2, .rough = {1, 1.1}, .error_m = 40e-6},
                            {.verdict = HS_GO, .rough = {1, 1.1}, .error_m = 9e-3}};
    CHECK(wanted(f, 82e-6) == 2048); /* the second is not ground */
    /* exact: (40/30)^2 times 2048, and 15 % more; never more than 2.5 times at once */
    NEAR((double)wanted(f, 60e-6), 1.15 * 16 / 9 * 2048, 1);
    CHECK(wanted(f, 2e-6) == 5120);
    f[0].rough = (hs_limits){1, 0.9999}; /* shut by .1 mm, known to .04 */
    f[0].verdict = HS_STOP;
    CHECK(wanted(f, 2e-6) == 2048 && hs_decide_error(f, 2) <= 0);
    f[0].rough.high_m = 1 - 30e-6; /* shut by less than it is known */
    CHECK(wanted(f, 2e-6) == 5120);
}

static double by_slack(const run_t *r, size_t i) {
    const hs_job *job = r->chain.job;
    size_t good = 0;
    for (size_t k = 0; k < r->draws.n; k++) {
        double rough_m = r->found[i].aim_m + job->shop.rough_tolerance_m * r->draws.rough[k][i];
        good += hs_aim_slack(&r->found[i], &r->work.dimension[i], &job->dimension[i].size, rough_m,
                             k) >= 0;
    }
    return (double)good / (double)r->draws.n;
}

/* independent: the slack of each draw at the aim, one by one */
static void decide__share_of_good_draws__is_that_of_the_slacks(void) {
    static test_job t;
    for (int way = 0; way < 4; way++) {
        test_job_plate(&t, "16MnCr5");
        if (way == 1) t.face[1].case_m = 0.2e-3; /* two faces of different demand */
        if (way == 2) t.face[1].finish = HS_AS_HARDENED;
        if (way == 3) t.face[0].finish = t.face[1].finish = HS_AS_HARDENED;
        run_t *r = start(&t.job);
        decide(r, 1000, 7);
        CHECK(r->found[0].joint > 0);
        NEAR(r->found[0].joint, by_slack(r, 0), 1e-12);
        free(r);
    }
}

static double share_at_most(const double *value, size_t n, double limit) {
    size_t inside = 0;
    for (size_t i = 0; i < n; i++)
        inside += value[i] <= limit;
    return (double)inside / (double)n;
}

/* independent: counted. Of the parts as many need no more than need, and bear no less than may, as
 * the shop asks; each letter of a face stands at the side that hurts. */
static void decide__need_and_may__hold_for_as_many_as_asked(void) {
    enum { N = 2000 };
    static test_job t;
    static double clean[N], budget[N], split[N], lost[N], growth[N];
    static const double asked[] = {0.8, 0.95};
    test_job_plate(&t, "16MnCr5");
    t.face[1].case_m = 0.4e-3;
    for (int a = 0; a < 2; a++) {
        t.job.shop.confidence = asked[a];
        run_t *r = start(&t.job);
        decide(r, N, 5);
        const hs_window_found *f = &r->found[0];
        for (int k = 0; k < 2; k++) {
            const hs_dimension_draws *d = &r->work.dimension[0];
            NEAR(share_at_most(d->need_m[k], N, f->need_m[k]), asked[a], 2.0 / N);
            NEAR(share_at_most(d->may_m[k], N, f->may_m[k]), 1 - asked[a], 2.0 / N);
            for (size_t i = 0; i < N; i++) {
                growth[i] = hs_warp_growth(&r->chain.warp, &t.job, &t.dimension[0], r->draws.z[i]);
                hs_trial trial = hs_chain_trial(&r->chain, (size_t)k, growth[i], &r->work.part[i]);
                clean[i] = trial.sum.clean_up_m;
                budget[i] = trial.sum.budget_m;
                split[i] = trial.sum.split_m;
                lost[i] = trial.sum.lost_high_m;
            }
            NEAR(share_at_most(clean, N, f->bad[k].clean_up_m), asked[a], 2.0 / N);
            NEAR(share_at_most(budget, N, f->bad[k].budget_m), 1 - asked[a], 2.0 / N);
            NEAR(share_at_most(split, N, f->bad[k].split_m), asked[a], 2.0 / N);
            NEAR(share_at_most(lost, N, f->bad[k].lost_low_m), 1 - asked[a], 2.0 / N);
            NEAR(share_at_most(lost, N, f->bad[k].lost_high_m), asked[a], 2.0 / N);
            NEAR(share_at_most(growth, N, f->bad[k].growth_low_m), 1 - asked[a], 2.0 / N);
            NEAR(share_at_most(growth, N, f->bad[k].growth_high_m), asked[a], 2.0 / N);
        }
        NEAR(share_at_most(r->work.dimension[0].shape_m, N, f->shape_typical_m), 0.5, 2.0 / N);
        NEAR(share_at_most(r->work.dimension[0].shape_m, N, f->shape_high_m), 0.95, 2.0 / N);
        free(r);
    }
}

/* exact: a printed size is a whole thousandth of a millimetre, or ten-thousandth of an inch */
static void decide__aim__can_be_written_in_the_unit_of_the_sheet(void) {
    static test_job t;
    static const double last_place_m[] = {1e-6, 2.54e-6};
    for (int inch = 0; inch < 2; inch++) {
        test_job_plate(&t, "16MnCr5");
        t.job.inch_first = inch;
        run_t *r = start(&t.job);
        decide(r, 1000, 7);
        double places = r->found[0].aim_m / last_place_m[inch];
        CHECK(r->found[0].verdict != HS_STOP);
        NEAR(places, round(places), 1e-6);
        CHECK(r->found[0].aim_m >= r->found[0].rough.low_m);
        CHECK(r->found[0].aim_m <= r->found[0].rough.high_m);
        free(r);
    }
}

/* exact: windows section 3: go where the whole rough tolerance fits, plus and minus */
static void decide__verdict__takes_the_tolerance_on_both_sides(void) {
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    t.job.shop.confidence = 0.5; /* most parts are good anywhere inside: the width alone decides */
    run_t *r = start(&t.job);
    decide(r, 1000, 7);
    double width_m = r->found[0].rough.high_m - r->found[0].rough.low_m;
    CHECK(width_m > 0);
    t.job.shop.rough_tolerance_m = 0.51 * width_m;
    decide(r, 1000, 7);
    CHECK(r->found[0].verdict == HS_TIGHT && r->found[0].joint > 0.5);
    t.job.shop.rough_tolerance_m = 0.25 * width_m;
    decide(r, 1000, 7);
    CHECK(r->found[0].verdict == HS_GO);
    free(r);
    hs_window_found go[2] = {{.verdict = HS_GO}, {.verdict = HS_GO}};
    CHECK(hs_decide_part(go, 2, 0.96, 0.95) == HS_GO);
    CHECK(hs_decide_part(go, 2, 0.94, 0.95) == HS_TIGHT); /* design: the joint one may lower it */
    go[1].verdict = HS_STOP;
    CHECK(hs_decide_part(go, 2, 0.99, 0.95) == HS_STOP);
}

/* exact: the windows of a changed job are those of that job by itself, also where a face of it is
 * masked that was ground before */
static void decide__again__is_as_from_the_start(void) {
    static test_job t, masked;
    static hs_window_found before[HS_MAX_DIMENSIONS];
    test_job_plate(&t, "16MnCr5");
    t.face[1].case_m = t.face[1].hardness_HV = 0;
    run_t *r = start(&t.job);
    decide(r, 1000, 7);
    memcpy(before, r->found, sizeof before);
    CHECK(before[0].grounds == 2);
    test_job_plate(&masked, "16MnCr5");
    masked.face[1] = t.face[1];
    masked.face[1].finish = HS_SOFT;
    masked.step[0].hold_s = (hs_span){72000, 72000, 72000};
    run_t *m = start(&masked.job);
    decide(m, 1000, 7);
    for (int all = 0; all < 2; all++) {
        before[0].verdict = HS_TIGHT; /* one that is asked for */
        hs_decide_again(r->found, before, &m->chain, &m->draws, all, &r->work);
        CHECK(r->found[0].grounds == 1 && m->found[0].grounds == 1);
        CHECK(r->found[0].verdict == m->found[0].verdict);
        CHECK(r->found[0].rough.low_m == m->found[0].rough.low_m);
        CHECK(r->found[0].rough.high_m == m->found[0].rough.high_m);
        CHECK(r->found[0].bad[0].budget_m == m->found[0].bad[0].budget_m);
    }
    free(r);
    free(m);
}

HS_TEST_MAIN("plan_decide", TEST(decide__error_of_the_quantiles__is_what_other_seeds_show),
             TEST(draws__error_of_a_uniform_quantile__closed_form),
             TEST(decide__more_draws__are_added_to_those_that_stand),
             TEST(decide__number_of_draws__by_the_root_and_only_where_it_matters),
             TEST(decide__share_of_good_draws__is_that_of_the_slacks),
             TEST(decide__need_and_may__hold_for_as_many_as_asked),
             TEST(decide__aim__can_be_written_in_the_unit_of_the_sheet),
             TEST(decide__verdict__takes_the_tolerance_on_both_sides),
             TEST(decide__again__is_as_from_the_start))
