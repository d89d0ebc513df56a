/* Sealed soaks: hotter or longer is never less deep (hotter: where the surface stands at a carbon.
 * A transfer that does not grow with the heat feeds a faster diffusion: the surface is leaner and a
 * rich level may lie less deep); a plate carburised on both faces tends to the
 * single face as it thickens, and never gets deeper by it. */
#include "base/random.h"
#include "hardskin/model/carbon_course.h"
#include "support/check.h"

enum { PAIRS = 10000 };
static const double SHARE = 0.002, FLOOR_M = 1e-6; /* the mesh's own error, carbon_course.h; seen
                                                      smaller than a fifth of a per cent */

typedef struct sealed {
    double temp_K, hours, surface_pct, transfer_m_s, half_m, rise_s;
} sealed;

static double soak(const sealed *s, double carbon_pct) {
    static hs_carbon_end end;
    static const hs_diffusivity d = {.factor = 1};
    const hs_heat_point path[3] = {
        {0, 293.15}, {s->rise_s, s->temp_K}, {s->rise_s + s->hours * 3600, s->temp_K}};
    const hs_heat heat = {.point = path,
                          .n = 3,
                          .side = {{s->transfer_m_s > 0 ? HS_SIDE_TRANSFER : HS_SIDE_FIXED,
                                    s->surface_pct, s->transfer_m_s}},
                          .cap_at_acm = 1};
    double reach_m = hs_carbon_reach(&heat, 1, &d, s->surface_pct);
    const hs_carbon_course course = {.size_m = s->half_m,
                                     .reach_m = fmin(reach_m, s->half_m),
                                     .core_pct = .18,
                                     .heat = &heat,
                                     .heats = 1,
                                     .d = &d};
    CHECK(hs_carbon_course_run(&end, &course, 0, NULL) == HS_OK);
    return hs_carbon_course_depth(&end, &course, carbon_pct);
}

static double uniform(unsigned i, unsigned k) {
    return hs_random_uniform(31, i, k);
}

static void soak__hotter_or_longer__is_never_less_deep(void) {
    static const double transfers[] = {0, 1e-7, 2e-8};
    int violations = 0, strict = 0, deeper = 0;
    for (unsigned i = 0; i < PAIRS; i++) {
        sealed less = {.temp_K = 1123.15 + 140 * uniform(i, 0),
                       .hours = .5 * pow(60, uniform(i, 1)),
                       .surface_pct = .7 + .6 * uniform(i, 2),
                       .transfer_m_s = transfers[(int)(3 * uniform(i, 3))],
                       .half_m = .5e-3 + 9.5e-3 * uniform(i, 4),
                       .rise_s = 1800 + 9000 * uniform(i, 5)};
        sealed more = less;
        if (uniform(i, 6) < .5 && less.transfer_m_s == 0)
            more.temp_K += 60 * uniform(i, 7);
        else
            more.hours *= 1 + uniform(i, 7);
        double carbon_pct = .28 + .35 * uniform(i, 8);
        double a = soak(&less, carbon_pct), b = soak(&more, carbon_pct);
        violations += !(b >= a * (1 - SHARE) - FLOOR_M);
        strict += b < a;
        deeper += b > a;
    }
    printf("%d pairs of soaks: %d deeper, %d less deep by less than %.1f %% + 1 um, %d by more\n",
           PAIRS, deeper, strict - violations, 100 * SHARE, violations);
    CHECK(violations == 0);
    CHECK(deeper > PAIRS / 2);
}

/* Both faces, the whole plate meshed. */
static double both_faces(double thickness_m, double carbon_pct) {
    static hs_carbon_end end;
    static const hs_diffusivity d = {.factor = 1};
    const hs_heat_point hold[2] = {{0, 1198.15}, {28800, 1198.15}};
    const hs_side side = {HS_SIDE_FIXED, .9, 0};
    const hs_heat heat = {.point = hold, .n = 2, .side = {side, side}};
    const hs_carbon_course course = {
        .size_m = thickness_m, .core_pct = .18, .heat = &heat, .heats = 1, .d = &d};
    CHECK(hs_carbon_course_run(&end, &course, 192, NULL) == HS_OK);
    return hs_carbon_course_depth(&end, &course, carbon_pct);
}

static void soak__both_faces__tend_to_the_single_one(void) {
    const sealed one_face = {
        .temp_K = 1198.15, .hours = 8, .surface_pct = .9, .half_m = .1, .rise_s = 0};
    double single = soak(&one_face, .35), last = INFINITY, first = 0;
    for (double thickness_m = 3e-3; thickness_m < 13e-3; thickness_m += .5e-3) {
        double depth = both_faces(thickness_m, .35);
        if (first == 0) first = depth;
        CHECK(depth <= last * (1 + SHARE) + FLOOR_M);
        CHECK(depth >= single * (1 - SHARE) - FLOOR_M);
        last = depth;
    }
    printf(".35 %%C after 8 h at 925 C: plate of 3 mm %.4f, of 12.5 mm %.4f, single face %.4f mm\n",
           1e3 * first, 1e3 * last, 1e3 * single);
    NEAR(last, single, SHARE * single + FLOOR_M);
    CHECK(first > 1.02 * single);
}

HS_TEST_MAIN("property soak", TEST(soak__hotter_or_longer__is_never_less_deep),
             TEST(soak__both_faces__tend_to_the_single_one))
