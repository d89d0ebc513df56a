/* No force and no moment: the mean strain and the curvatures of a section of fibres, each elastic
 * and perfectly plastic about the strain at which it is free of stress. */
#include "model/quench_steps.h"

#include "base/lanes.h"

#include <math.h>
#include <string.h>

enum { MOST_NEWTON = 60, MOST_HALVINGS = 30 };
/* Newton ends where what is left would strain the section less than this: .1 um of bow in a metre.
 */
static const double SMALL = 1e-10;
static const double STIFFENED = 1e-6; /* of the elastic stiffness, where all yields */

typedef struct balance {
    double force[3];   /* N, moment about x, about y: of stress times 1, y, x */
    double tangent[6]; /* 1 y x / yy xy xx times the stiffness */
} balance;

/* Of a section that bends both ways: force, its moments, and the stiffness of what does not yield.
 */
HS_WIDE static void both_ways(double total[9], const hs_quench_work *w, size_t k, size_t fibres,
                              const double strain[3]) {
    hs_lanes sum[9] = {{0}}, x, y, area, tangent, base, limit;
    for (size_t f = 0; f < fibres; f += HS_LANES) {
        HS_LANES_LOAD(x, &w->x_m[f]);
        HS_LANES_LOAD(y, &w->y_m[f]);
        HS_LANES_LOAD(area, &w->area_m2[f]);
        HS_LANES_LOAD(tangent, &w->tangent[k][f]);
        HS_LANES_LOAD(base, &w->base[k][f]);
        HS_LANES_LOAD(limit, &w->yield[f]);
        hs_lanes stress = tangent * (strain[0] + strain[1] * y + strain[2] * x - base);
        hs_lanes held = HS_LANES_HELD(stress, limit), force = area * held;
        hs_lanes stiff = HS_LANES_WHERE(held == stress, area * tangent);
        hs_lanes stiff_y = stiff * y, stiff_x = stiff * x;
        sum[0] += force;
        sum[1] += force * y;
        sum[2] += force * x;
        sum[3] += stiff;
        sum[4] += stiff_y;
        sum[5] += stiff_x;
        sum[6] += stiff_y * y;
        sum[7] += stiff_x * y;
        sum[8] += stiff_x * x;
    }
    for (int i = 0; i < 9; i++)
        total[i] = HS_LANES_SUM(sum[i]);
}

/* Of a half that stands for both, which bends along one arm only. */
HS_WIDE static void one_way(double total[5], const hs_quench_work *w, size_t k, size_t fibres,
                            const double *arm_m, const double strain[2]) {
    hs_lanes sum[5] = {{0}}, arm, area, tangent, base, limit;
    for (size_t f = 0; f < fibres; f += HS_LANES) {
        HS_LANES_LOAD(arm, &arm_m[f]);
        HS_LANES_LOAD(area, &w->area_m2[f]);
        HS_LANES_LOAD(tangent, &w->tangent[k][f]);
        HS_LANES_LOAD(base, &w->base[k][f]);
        HS_LANES_LOAD(limit, &w->yield[f]);
        hs_lanes stress = tangent * (strain[0] + strain[1] * arm - base);
        hs_lanes held = HS_LANES_HELD(stress, limit), force = area * held;
        hs_lanes stiff = HS_LANES_WHERE(held == stress, area * tangent), stiff_arm = stiff * arm;
        sum[0] += force;
        sum[1] += force * arm;
        sum[2] += stiff;
        sum[3] += stiff_arm;
        sum[4] += stiff_arm * arm;
    }
    for (int i = 0; i < 5; i++)
        total[i] = HS_LANES_SUM(sum[i]);
}

/* way 1: along y, 2: along x. */
static balance folded(const hs_quench_run_state *s, size_t k, const double strain[3], int way) {
    const double at[2] = {strain[0], strain[way]};
    int square = way == 1 ? 3 : 5, other = way == 1 ? 5 : 3;
    double total[5];
    one_way(total, s->w, k, s->fibres, way == 1 ? s->w->y_m : s->w->x_m, at);
    balance b = {.force = {total[0]}, .tangent = {total[2]}};
    b.force[way] = total[1];
    b.tangent[way] = total[3];
    b.tangent[square] = total[4];
    b.tangent[other] = s->stiffness[other]; /* nothing bends it */
    return b;
}

static balance balance_at(const hs_quench_run_state *s, size_t k, const double strain[3]) {
    if (s->c->fold_x || s->c->fold_y) {
        balance b = folded(s, k, strain, s->c->fold_x ? 1 : 2);
        if (s->c->fold_x && s->c->fold_y) b.force[1] = b.tangent[1] = 0;
        return b;
    }
    double t[9];
    both_ways(t, s->w, k, s->fibres, strain);
    return (balance){{t[0], t[1], t[2]}, {t[3], t[4], t[5], t[6], t[7], t[8]}};
}

/* Solve tangent * step = -force, the tangent stiffened a little where all yields. */
static void newton_step(double step[3], const balance *b, const double stiffness[6]) {
    double t[6];
    for (int i = 0; i < 6; i++)
        t[i] = b->tangent[i] + STIFFENED * stiffness[i];
    double a = t[0], p = t[1], q = t[2], c = t[3], d = t[4], e = t[5];
    double r0 = -b->force[0], r1 = -b->force[1], r2 = -b->force[2];
    double c1 = c - p * p / a, d1 = d - p * q / a, e1 = e - q * q / a;
    double s1 = r1 - p * r0 / a, s2 = r2 - q * r0 / a;
    double e2 = e1 - d1 * d1 / c1, last = (s2 - d1 * s1 / c1) / e2;
    step[2] = last;
    step[1] = (s1 - d1 * last) / c1;
    step[0] = (r0 - p * step[1] - q * last) / a;
}

static double along(const balance *b, const double step[3]) {
    return b->force[0] * step[0] + b->force[1] * step[1] + b->force[2] * step[2];
}

/* From the end of one part to the next: what yielded and flowed is kept in the strain free of
 * stress, which moves on with the metal's own. With transformation plasticity flow F the stress is
 * (strain - base) / (1/E + F): what stands before the strain is known. */
HS_WIDE static void enter(hs_quench_work *w, size_t k, size_t fibres, double plasticity_1_Pa) {
    const double *e = w->strain[k], half_1_Pa = 0.5 * plasticity_1_Pa;
    hs_lanes x, y, tangent, base, limit, creep, moved, was, now;
    for (size_t f = 0; f < fibres; f += HS_LANES) {
        HS_LANES_LOAD(x, &w->x_m[f]);
        HS_LANES_LOAD(y, &w->y_m[f]);
        HS_LANES_LOAD(tangent, &w->tangent[k][f]);
        HS_LANES_LOAD(base, &w->base[k][f]);
        HS_LANES_LOAD(limit, &w->was_yield[f]);
        HS_LANES_LOAD(creep, &w->creep[f]);
        HS_LANES_LOAD(moved, &w->moved[f]);
        HS_LANES_LOAD(was, &w->was_compliance[f]);
        HS_LANES_LOAD(now, &w->compliance[f]);
        hs_lanes strain = e[0] + e[1] * y + e[2] * x, stress = tangent * (strain - base);
        hs_lanes held = HS_LANES_HELD(stress, limit), flow = half_1_Pa * creep;
        base = strain + moved - held * (was - flow);
        tangent = 1 / (now + flow);
        HS_LANES_STORE(&w->base[k][f], base);
        HS_LANES_STORE(&w->tangent[k][f], tangent);
    }
}

void hs_quench_stress(hs_quench_run_state *s, size_t k) {
    hs_quench_work *w = s->w;
    const double *e = w->strain[k];
    for (size_t f = 0; f < s->fibres; f++) {
        double strain = e[0] + e[1] * w->y_m[f] + e[2] * w->x_m[f];
        double stress = w->tangent[k][f] * (strain - w->base[k][f]), limit = w->yield[f];
        w->stress_Pa[k][f] = hs_least(limit, hs_most(-limit, stress));
    }
}

/* A step of Newton's, shortened where it would climb past the lowest point along it. */
static balance go(double strain[3], hs_quench_run_state *s, size_t k, const balance *now) {
    double step[3], next[3], t = 1;
    newton_step(step, now, s->stiffness);
    double slope = along(now, step);
    balance then = *now;
    for (int j = 0; j < MOST_HALVINGS; j++) {
        for (int m = 0; m < 3; m++)
            next[m] = strain[m] + t * step[m];
        then = balance_at(s, k, next);
        s->cost.iterations++;
        double there = along(&then, step);
        if (there <= 0.5 * fabs(slope)) break;
        t *= fmax(0.1, slope / (slope - there));
    }
    memcpy(strain, next, sizeof next);
    return then;
}

/* Newton on the convex potential whose gradient is the force. */
int hs_quench_settle(hs_quench_run_state *s, size_t k) {
    double *strain = s->w->strain[k], *change = s->w->change[k];
    double small = SMALL * s->stiffness[0]; /* a strain over the section */
    double arm = sqrt((s->stiffness[3] + s->stiffness[5]) / s->stiffness[0]);
    enter(s->w, k, s->fibres, s->c->plasticity_1_Pa[k]);
    const double before[3] = {strain[0], strain[1], strain[2]};
    for (int m = 0; m < 3; m++)
        strain[m] += change[m]; /* on as in the last part */
    balance now = balance_at(s, k, strain);
    for (int i = 0; i < MOST_NEWTON; i++) {
        double miss = fabs(now.force[0]) + (fabs(now.force[1]) + fabs(now.force[2])) / arm;
        if (miss < small) {
            for (int m = 0; m < 3; m++)
                change[m] = strain[m] - before[m];
            return 1;
        }
        now = go(strain, s, k, &now);
    }
    return 0;
}
