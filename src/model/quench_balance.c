/* No force and no moment: the mean strain and the curvatures of a section of fibres, each elastic
 * and perfectly plastic about the strain at which it is free of stress. */
#include "model/quench_steps.h"

#include "base/pair.h"

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

static hs_pair held_at(hs_pair stress, hs_pair limit) {
    hs_pair below = hs_pair_choose(stress > limit, limit, stress);
    return hs_pair_choose(below < -limit, -limit, below);
}

static hs_pair stress_at(const hs_quench_work *w, size_t k, size_t f, hs_pair strain) {
    return hs_pair_load(&w->tangent[k][f]) * (strain - hs_pair_load(&w->base[k][f]));
}

/* Two fibres from f on, of a section that bends both ways. */
static void add_both(hs_pair sum[9], const hs_quench_work *w, size_t k, size_t f,
                     const hs_pair strain[3]) {
    hs_pair x = hs_pair_load(&w->x_m[f]), y = hs_pair_load(&w->y_m[f]);
    hs_pair area = hs_pair_load(&w->area_m2[f]);
    hs_pair stress = stress_at(w, k, f, strain[0] + strain[1] * y + strain[2] * x);
    hs_pair held = held_at(stress, hs_pair_load(&w->yield[f]));
    hs_pair force = area * held;
    hs_pair stiff = hs_pair_where(held == stress, area * hs_pair_load(&w->tangent[k][f]));
    hs_pair stiff_y = stiff * y, stiff_x = stiff * x;
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

static balance both_ways(const hs_quench_run_state *s, size_t k, const double strain[3]) {
    const hs_pair at[3] = {hs_pair_of(strain[0]), hs_pair_of(strain[1]), hs_pair_of(strain[2])};
    hs_pair sum[9] = {{0, 0}};
    double all[9];
    for (size_t f = 0; f < s->fibres; f += 2)
        add_both(sum, s->w, k, f, at);
    for (int i = 0; i < 9; i++)
        all[i] = hs_pair_sum(sum[i]);
    return (balance){{all[0], all[1], all[2]}, {all[3], all[4], all[5], all[6], all[7], all[8]}};
}

/* Two fibres from f on, of a half that stands for both: it bends along one arm only. */
static void add_one(hs_pair sum[5], const hs_quench_work *w, size_t k, size_t f, hs_pair arm,
                    const hs_pair strain[2]) {
    hs_pair area = hs_pair_load(&w->area_m2[f]);
    hs_pair stress = stress_at(w, k, f, strain[0] + strain[1] * arm);
    hs_pair held = held_at(stress, hs_pair_load(&w->yield[f]));
    hs_pair force = area * held;
    hs_pair stiff = hs_pair_where(held == stress, area * hs_pair_load(&w->tangent[k][f]));
    hs_pair stiff_arm = stiff * arm;
    sum[0] += force;
    sum[1] += force * arm;
    sum[2] += stiff;
    sum[3] += stiff_arm;
    sum[4] += stiff_arm * arm;
}

/* way 1: along y, 2: along x. */
static balance one_way(const hs_quench_run_state *s, size_t k, const double strain[3], int way) {
    const double *arm = way == 1 ? s->w->y_m : s->w->x_m;
    const hs_pair at[2] = {hs_pair_of(strain[0]), hs_pair_of(strain[way])};
    hs_pair sum[5] = {{0, 0}};
    for (size_t f = 0; f < s->fibres; f += 2)
        add_one(sum, s->w, k, f, hs_pair_load(&arm[f]), at);
    balance b = {.tangent = {hs_pair_sum(sum[2])}};
    b.force[0] = hs_pair_sum(sum[0]);
    b.force[way] = hs_pair_sum(sum[1]);
    b.tangent[way] = hs_pair_sum(sum[3]);
    b.tangent[way == 1 ? 3 : 5] = hs_pair_sum(sum[4]);
    b.tangent[way == 1 ? 5 : 3] = s->stiffness[way == 1 ? 5 : 3]; /* nothing bends it */
    return b;
}

static balance balance_at(const hs_quench_run_state *s, size_t k, const double strain[3]) {
    if (!s->c->fold_x && !s->c->fold_y) return both_ways(s, k, strain);
    balance b = one_way(s, k, strain, s->c->fold_x ? 1 : 2);
    if (s->c->fold_x && s->c->fold_y) b.force[1] = b.tangent[1] = 0;
    return b;
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

static hs_pair strain_of(const hs_quench_work *w, size_t k, size_t f) {
    const double *strain = w->strain[k];
    return strain[0] + strain[1] * hs_pair_load(&w->y_m[f]) + strain[2] * hs_pair_load(&w->x_m[f]);
}

/* From the end of one part to the next: what yielded and flowed is kept in the strain free of
 * stress, which moves on with the metal's own. With transformation plasticity flow F the stress is
 * (strain - base) / (1/E + F): what stands before the strain is known. */
static void enter(hs_quench_run_state *s, size_t k) {
    hs_quench_work *w = s->w;
    hs_pair half = hs_pair_of(0.5 * s->c->plasticity_1_Pa[k]);
    for (size_t f = 0; f < s->fibres; f += 2) {
        hs_pair strain = strain_of(w, k, f), flow = half * hs_pair_load(&w->creep[f]);
        hs_pair held = held_at(stress_at(w, k, f, strain), hs_pair_load(&w->was_yield[f]));
        hs_pair back = hs_pair_load(&w->was_compliance[f]) - flow;
        hs_pair_store(&w->base[k][f], strain + hs_pair_load(&w->moved[f]) - held * back);
        hs_pair_store(&w->tangent[k][f], 1 / (hs_pair_load(&w->compliance[f]) + flow));
    }
}

void hs_quench_stress(hs_quench_run_state *s, size_t k) {
    hs_quench_work *w = s->w;
    for (size_t f = 0; f < s->fibres; f += 2) {
        hs_pair stress = stress_at(w, k, f, strain_of(w, k, f));
        hs_pair_store(&w->stress_Pa[k][f], held_at(stress, hs_pair_load(&w->yield[f])));
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
    enter(s, k);
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
