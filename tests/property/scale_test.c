/* Open heats one after the other, at random: hotter, longer, a leaner flame, more oxygen, scale
 * knocked off in between: the part never loses less metal, at any draw of the doubts. Steels at any
 * temperature of the model by themselves; routes at 760 to 1200 C, where the soft rim is known. */
#include "base/random.h"
#include "constants.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"
#include "plan/loss.h"
#include "support/check.h"
#include "support/flames.h"

#include <string.h>

enum { ROUTES = 20000, MOST = 6 };

enum { LEAN = 4 }; /* of test_flames */

/* A heat: up in rise_s, held, down as fast. */
typedef struct open_heat {
    double temp_K, rise_s, hold_s, oxygen;
    size_t flame;
    int descale; /* after it: 0 none, 1 brush, 2 acid */
} open_heat;

typedef struct open_route {
    size_t n;
    open_heat heat[MOST];
    double surface_pct, z[HS_INPUTS];
} open_route;

static double uniform(unsigned i, unsigned k) {
    return hs_random_uniform(77, i, k);
}

static void draw(open_route *r, unsigned i) {
    *r = (open_route){.n = 1 + (size_t)(MOST * uniform(i, 0)), .surface_pct = .1 + uniform(i, 1)};
    r->z[HS_IN_OXIDE] = hs_random_normal(77, i, 2);
    r->z[HS_IN_ATMOSPHERE] = 1.5 * hs_random_normal(77, i, 3);
    for (unsigned k = 0; k < r->n; k++) {
        open_heat *h = &r->heat[k];
        unsigned key = 10 + 8 * k;
        h->temp_K = 1033.2 + 430 * uniform(i, key);
        h->rise_s = uniform(i, key + 1) < .5 ? 0 : 3600 * uniform(i, key + 2);
        h->hold_s = 30 * exp(7 * uniform(i, key + 3));
        h->flame = (size_t)(TEST_FLAMES * uniform(i, key + 4));
        if (h->flame >= LEAN && uniform(i, key + 5) < .6)
            h->oxygen = .002 * pow(100, uniform(i, key + 6));
        h->descale = (int)(3 * uniform(i, key + 7));
    }
}

static void put_heat(hs_job *job, hs_step *step, hs_route *route, const open_heat *h) {
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    size_t row = (size_t)hs_table_row(t, 0, test_flames[h->flame]);
    hs_route_heat *heat = &route->heat[route->heats++];
    heat->step = job->steps;
    heat->multiplier_low = hs_table_number(t, row, HS_ATMOSPHERE_LOW);
    heat->multiplier = hs_table_number(t, row, HS_ATMOSPHERE_MULTIPLIER);
    heat->multiplier_high = hs_table_number(t, row, HS_ATMOSPHERE_HIGH);
    heat->open = heat->multiplier_high > 0;
    heat->n = 4;
    heat->point[0] = (hs_heat_point){0, 293.15};
    heat->point[1] = (hs_heat_point){h->rise_s, h->temp_K};
    heat->point[2] = (hs_heat_point){h->rise_s + h->hold_s, h->temp_K};
    heat->point[3] = (hs_heat_point){2 * h->rise_s + h->hold_s, 293.15};
    step[job->steps++] = (hs_step){.kind = HS_REHEAT, .oxygen = h->oxygen};
    if (h->descale)
        step[job->steps++] =
            (hs_step){.kind = HS_DESCALE, .by = h->descale == 1 ? HS_BY_BRUSH : HS_BY_ACID};
}

/* Metal lost outside, and in a hole. */
static void lost(double out_m[2], const open_route *r) {
    static hs_step step[2 * MOST];
    static hs_route route;
    static hs_loss loss;
    hs_job job = {.step = step};
    route.heats = 0;
    memset(route.heat, 0, MOST * sizeof *route.heat);
    for (size_t k = 0; k < r->n; k++)
        put_heat(&job, step, &route, &r->heat[k]);
    CHECK(hs_loss_make(&loss, &job, &route, r->surface_pct, NULL) == HS_OK);
    out_m[0] = hs_loss_metal(&loss, job.steps, r->z);
    out_m[1] = hs_loss_in_hole(&loss, r->z).in_all_m;
}

/* One thing made worse; 0 where it cannot be. */
static int worsen(open_route *r, unsigned i, int how) {
    open_heat *h = &r->heat[(size_t)((double)r->n * uniform(i, 4))];
    switch (how) {
    case 0:
        h->temp_K += (1473.1 - h->temp_K) * uniform(i, 5);
        return 1;
    case 1:
        h->hold_s *= 1 + uniform(i, 5);
        return 1;
    case 2:
        if (h->flame + 1 == TEST_FLAMES || h->oxygen > 0) return 0;
        h->flame++;
        return 1;
    case 3:
        if (!(h->oxygen > 0)) return 0;
        h->oxygen = fmin(.21, h->oxygen * (1 + uniform(i, 5)));
        return 1;
    case 4: /* said no more: the parabolic law is the most it can be */
        if (!(h->oxygen > 0)) return 0;
        h->oxygen = 0;
        return 1;
    default:
        if (h->descale) return 0;
        h->descale = 2;
        return 1;
    }
}

static void scale__hotter_longer_leaner_brushed__never_loses_less(void) {
    size_t tried[6] = {0}, less[6] = {0};
    for (unsigned i = 0; i < ROUTES; i++) {
        open_route route, worse;
        double before[2], after[2];
        int how = (int)(i % 6);
        draw(&route, i);
        worse = route;
        if (!worsen(&worse, i, how)) continue;
        lost(before, &route);
        lost(after, &worse);
        tried[how]++;
        const double slack = 1 - 1e-12; /* rounding */
        int fails = after[0] < slack * before[0] || after[1] < slack * before[1];
        if (fails && less[how]++ < 3)
            printf("way %d, route %u: %.9g, %.9g um after %.9g, %.9g\n", how, i, 1e6 * after[0],
                   1e6 * after[1], 1e6 * before[0], 1e6 * before[1]);
    }
    for (int how = 0; how < 6; how++) {
        CHECK(tried[how] > 500);
        CHECK(less[how] == 0);
    }
}

/* By itself over the whole range of the scale, ends of the band and every atmosphere. */
static void scale__every_atmosphere__over_the_whole_range(void) {
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    static const size_t ends[] = {HS_ATMOSPHERE_LOW, HS_ATMOSPHERE_MULTIPLIER, HS_ATMOSPHERE_HIGH};
    for (int e = 0; e < 3; e++)
        for (double C = .05; C < 1.2; C += .15) {
            double cooler[TEST_FLAMES] = {0};
            for (double T = 773.15; T <= 1523.15; T += 2.5) {
                double leaner = 0, integral = 0;
                CHECK(hs_oxide_hold(&integral, T, 1200, C, NULL) == HS_OK);
                for (size_t f = 0; f < TEST_FLAMES; f++) {
                    size_t row = (size_t)hs_table_row(t, 0, test_flames[f]);
                    double m = hs_table_number(t, row, ends[e]);
                    double W = hs_oxide_W(integral, 1, m),
                           longer = hs_oxide_W(1.1 * integral, 1, m);
                    CHECK(W >= cooler[f] && W >= leaner && longer >= W);
                    cooler[f] = leaner = W;
                }
            }
        }
}

HS_TEST_MAIN("property scale", TEST(scale__hotter_longer_leaner_brushed__never_loses_less),
             TEST(scale__every_atmosphere__over_the_whole_range))
