/* The solver's own error estimate against the finest mesh, over random sections and heats. */
#include "base/random.h"
#include "hardskin/model/carbon_course.h"
#include "support/check.h"

enum { CONDITIONS = 60 };
static const double SHARE = 0.005, FLOOR_M = 1e-6, FLAT_PCT = 0.001; /* promised: carbon_course.h */
static const double READING_M = 0.2e-6; /* under a fifth of the floor nothing is told apart */

static double uniform(unsigned i, unsigned k) {
    return hs_random_uniform(77, i, k);
}

/* Rise, soak, box cooling, reheat in the box: one to three heats of them. */
typedef struct condition {
    hs_heat_point rise_and_soak[3], cooling[2], reheat[3];
    hs_heat heat[3];
    hs_diffusivity d;
    hs_carbon_course course;
    double surface_pct;
} condition;

static void make_heats(condition *c, unsigned i, int both) {
    static const double transfers[] = {0, 1e-7, 2e-8};
    double T = 1123.15 + 200 * uniform(i, 0), soak_s = 1800 * pow(96, uniform(i, 1));
    double rise_s = 3600 + 7200 * uniform(i, 5), transfer = transfers[(int)(3 * uniform(i, 2))];
    double cooling_s = (T - 1013) / 50 * 3600 * uniform(i, 6), again_K = 1093 + 40 * uniform(i, 7);
    hs_side side = {transfer > 0 ? HS_SIDE_TRANSFER : HS_SIDE_FIXED, .7 + .5 * uniform(i, 4),
                    transfer};
    hs_side closed = {.kind = HS_SIDE_CLOSED};
    c->rise_and_soak[0] = (hs_heat_point){0, 1013.2};
    c->rise_and_soak[1] = (hs_heat_point){rise_s, T};
    c->rise_and_soak[2] = (hs_heat_point){rise_s + soak_s, T};
    c->cooling[0] = (hs_heat_point){0, T};
    c->cooling[1] = (hs_heat_point){cooling_s, 1013};
    c->reheat[0] = (hs_heat_point){0, 1013.2};
    c->reheat[1] = (hs_heat_point){1800, again_K};
    c->reheat[2] = (hs_heat_point){5400, again_K};
    c->heat[0] = (hs_heat){c->rise_and_soak, 3, {side, both ? side : closed}, 1, 0};
    c->heat[1] = (hs_heat){c->cooling, 2, {closed, closed}, 1, 0};
    c->heat[2] = (hs_heat){c->reheat, 3, {closed, closed}, 1, 0};
    c->surface_pct = fmin(side.carbon_pct, hs_acm_pct(T));
}

/* From walls a seventh of what carbon can reach, in which the fronts meet, to thick ones. */
static void make(condition *c, unsigned i) {
    hs_shape shape = (hs_shape)(int)(4 * uniform(i, 3));
    int both = uniform(i, 8) < .5 && shape != HS_CYLINDER;
    make_heats(c, i, both);
    c->d = (hs_diffusivity){.factor = 1};
    size_t heats = 1 + (size_t)(3 * uniform(i, 9));
    double reach_m = hs_carbon_reach(c->heat, heats, &c->d, c->surface_pct);
    double wall_m = reach_m * (.15 + 1.5 * uniform(i, 10) * uniform(i, 10));
    double inner_m = shape >= HS_TUBE ? wall_m * (.2 + 2 * uniform(i, 11)) : 0;
    double half_m = both ? .5 * wall_m : wall_m;
    double whole_m = !both ? reach_m : shape == HS_SLAB ? half_m : 0;
    c->course = (hs_carbon_course){.shape = shape,
                                   .size_m = wall_m + inner_m,
                                   .inner_radius_m = inner_m,
                                   .reach_m = reach_m < half_m ? reach_m : whole_m,
                                   .core_pct = .1 + .15 * uniform(i, 12),
                                   .heat = c->heat,
                                   .heats = heats,
                                   .d = &c->d};
}

typedef struct tally {
    int depths, under, flat, meshes[4];
    double worst_share, worst_under_m, balance;
} tally;

/* Carbon at a depth; where the whole wall is meant, the least in it. */
static double carbon_there(const hs_carbon_end *fine, double depth_m) {
    if (depth_m < fine->mesh.edge_m[fine->mesh.n] - 1e-12)
        return hs_carbon_at(&fine->mesh, fine->carbon_pct, fine->uptake.surface_pct, depth_m);
    double least = INFINITY;
    for (size_t i = 0; i < fine->mesh.n; i++)
        least = fmin(least, fine->carbon_pct[i]);
    return least;
}

static void compare(tally *t, const condition *c, const hs_carbon_end *fine, double carbon_pct,
                    double depth_m, double error_m) {
    double true_m = hs_carbon_course_depth(fine, &c->course, carbon_pct);
    if (depth_m <= 0 && true_m <= 0) return;
    double error = fabs(depth_m - true_m);
    double there = carbon_there(fine, depth_m);
    t->depths++;
    if (!(error <= error_m + READING_M)) {
        t->under++;
        t->worst_under_m = fmax(t->worst_under_m, error - error_m);
    }
    if (error > SHARE * true_m + FLOOR_M) {
        t->flat++;
        NEAR(there, carbon_pct, FLAT_PCT);
        return;
    }
    t->worst_share = fmax(t->worst_share, fmax(0, error - FLOOR_M) / true_m);
}

/* Promised: every depth within .5 % and 1 um of the converged one (or .001 % of carbon in a wall
 * that has levelled out), and the estimate above the true error in all but one of twenty */
static void course__random_heats__keep_what_the_estimate_promises(void) {
    static hs_carbon_end end, fine;
    static condition c;
    tally t = {0};
    for (unsigned i = 0; i < CONDITIONS; i++) {
        hs_carbon_accuracy accuracy = {0};
        make(&c, i);
        hs_carbon_levels levels = hs_carbon_levels_usual(c.course.core_pct, c.surface_pct);
        CHECK(hs_carbon_course_refine(&end, &accuracy, &c.course, &levels, NULL) == HS_OK);
        CHECK(hs_carbon_course_run(&fine, &c.course, HS_CARBON_CELLS, NULL) == HS_OK);
        for (size_t m = accuracy.cells; m > HS_CARBON_CELLS_USUAL; m /= 2)
            t.meshes[m == accuracy.cells ? 1 : 2]++;
        t.balance = fmax(t.balance, fmax(end.uptake.balance_error, fine.uptake.balance_error));
        for (size_t k = 0; k < levels.n; k++)
            compare(&t, &c, &fine, levels.carbon_pct[k],
                    hs_carbon_course_depth(&end, &c.course, levels.carbon_pct[k]),
                    accuracy.error_m[k]);
    }
    printf("%d conditions, %d depths: worst error %.2f %% beyond 1 um; %d in levelled walls; true "
           "error above the estimate in %d, by at most %.1f um; %d needed more than the usual "
           "cells\n",
           CONDITIONS, t.depths, 100 * t.worst_share, t.flat, t.under, 1e6 * t.worst_under_m,
           t.meshes[1]);
    CHECK(t.depths > 200 && t.worst_share > 0 && t.meshes[1] > 0);
    printf("balance of carbon: at worst %.1e of it\n", t.balance);
    CHECK(t.balance < 1e-11); /* rounding, of up to a thousand steps on 384 cells */
    CHECK(t.under <= t.depths / 20);
    CHECK(t.worst_under_m < 3e-6);
    CHECK(t.flat <= t.depths / 50);
}

HS_TEST_MAIN("property carbon_course", TEST(course__random_heats__keep_what_the_estimate_promises))
