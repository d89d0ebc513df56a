/* Fibres in the quench: one strain per place, elastic and perfectly plastic, with what the
 * transformation adds; mean strain and the two curvatures follow from no force and no moment. */
#include "model/quench_steps.h"

#include "base/pair.h"

#include <math.h>
#include <string.h>

static const double COOL_SUBSTEP_K = 12, HARD_SUBSTEP_K = 5;
static const double REFERENCE_K = 293.15; /* strains of transformation are those at 20 C */
enum { MOST_NEWTON = 60, MOST_HALVINGS = 30 };

/* How often a fibre counts: twice where it stands for its mirror image, 0 where that stands for it.
 */
static int counts(int fold, double at_m, double small_m) {
    if (!fold || fabs(at_m) <= small_m) return 1;
    return at_m > 0 ? 2 : 0;
}

static void choose(hs_quench_run_state *s) {
    const hs_quench_mesh *mesh = s->c->mesh;
    hs_quench_work *w = s->w;
    double small_m = 1e-6 * mesh->spacing_m;
    s->fibres = 0;
    for (size_t f = 0; f < mesh->fibres; f++) {
        const hs_quench_fibre *fibre = &mesh->fibre[f];
        int times =
            counts(s->c->fold_x, fibre->x_m, small_m) * counts(s->c->fold_y, fibre->y_m, small_m);
        if (times == 0) continue;
        w->index[s->fibres] = (unsigned short)f;
        w->x_m[s->fibres] = fibre->x_m;
        w->y_m[s->fibres] = fibre->y_m;
        w->area_m2[s->fibres++] = times * fibre->area_m2;
    }
}

/* The last pair is filled up with a fibre of no metal. */
static void pad(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    size_t f = s->fibres;
    if (f % 2 == 0) return;
    w->x_m[f] = w->y_m[f] = w->area_m2[f] = w->tangent[f] = w->base[f] = w->yield[f] = 0;
}

void hs_quench_fibres_start(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    choose(s);
    pad(s);
    for (size_t f = 0; f < s->fibres; f++) {
        w->fibre_K[f] = s->c->start_K;
        w->hard[f] = w->soft[f] = 0;
    }
    for (size_t k = 0; k < s->c->n; k++) {
        memset(w->plastic[k], 0, s->fibres * sizeof *w->plastic[k]);
        memset(w->stress_Pa[k], 0, s->fibres * sizeof *w->stress_Pa[k]);
        memset(w->strain[k], 0, sizeof w->strain[k]);
        memset(w->change[k], 0, sizeof w->change[k]);
    }
}

void hs_quench_fibres_end(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    for (size_t k = 0; k < s->c->n; k++) {
        size_t f = s->fibres; /* backwards, for no index is below its place */
        for (size_t i = s->c->mesh->fibres; i-- > 0;)
            w->stress_Pa[k][i] = f > 0 && w->index[f - 1] == i ? w->stress_Pa[k][--f] : NAN;
    }
}

/* What one fibre is when it has come to temp_K: free strain, modulus, strength, and by how much
 * the stress flows (per 1/Pa of plasticity). */
static void advance_fibre(hs_quench_run_state *s, size_t f, double T) {
    hs_quench_work *w = s->w;
    const hs_quench_steel *steel = s->c->steel;
    const hs_quench_point *p = &s->c->fibre[w->index[f]];
    double hard = hs_most(w->hard[f], hs_quench_hard(p, T));
    double soft = hs_most(w->soft[f], hs_quench_soft(p, steel, T)), left = 1 - hard - soft;
    double formed = hard - w->hard[f] + soft - w->soft[f];
    const double *expansion = steel->expansion;
    double shrunk = expansion[HS_AUSTENITE] * (REFERENCE_K - s->c->start_K);
    double warm = T - REFERENCE_K;
    w->free[f] = left * expansion[HS_AUSTENITE] * (T - s->c->start_K);
    if (hard > 0)
        w->free[f] += hard * (shrunk + p->strain[HS_MARTENSITE] + expansion[HS_MARTENSITE] * warm);
    if (soft > 0)
        w->free[f] += soft * (shrunk + p->strain[HS_FERRITE] + expansion[HS_FERRITE] * warm);
    hs_quench_spot at = hs_quench_spot_of(s, T);
    w->modulus[f] = hs_quench_read(s, HS_Q_MODULUS, at);
    w->yield[f] = left * hs_quench_read(s, HS_Q_YIELD + HS_AUSTENITE, at);
    if (hard > 0)
        w->yield[f] += hard * p->strength_Pa * hs_quench_read(s, HS_Q_YIELD + HS_MARTENSITE, at);
    if (soft > 0) w->yield[f] += soft * hs_quench_read(s, HS_Q_YIELD + HS_FERRITE, at);
    w->creep[f] = 2 * (left + 0.5 * formed) * formed;
    w->hard[f] = hard;
    w->soft[f] = soft;
    w->fibre_K[f] = T;
}

typedef struct balance {
    double force[3];   /* N, moment about x, about y: of stress times 1, y, x */
    double tangent[6]; /* 1 y x / yy xy xx times the stiffness */
} balance;

/* With transformation plasticity flow F the stress is E / (1 + E F) * (strain - base): what stands
 * before the strain is known. */
static void prepare(hs_quench_run_state *s, size_t k) {
    hs_quench_work *w = s->w;
    double K = s->c->plasticity_1_Pa[k];
    for (size_t f = 0; f < s->fibres; f++) {
        double flow = 0.5 * K * w->creep[f];
        w->base[f] = w->free[f] + w->plastic[k][f] + flow * w->stress_Pa[k][f];
        w->tangent[f] = w->modulus[f] / (1 + w->modulus[f] * flow);
    }
}

static double held_at(double stress, double limit) {
    double below = stress > limit ? limit : stress;
    return below < -limit ? -limit : below;
}

/* Two fibres from f on. */
static void add_pair(hs_pair sum[9], const hs_quench_work *w, size_t f, const hs_pair strain[3]) {
    hs_pair x = hs_pair_load(&w->x_m[f]), y = hs_pair_load(&w->y_m[f]);
    hs_pair area = hs_pair_load(&w->area_m2[f]), tangent = hs_pair_load(&w->tangent[f]);
    hs_pair limit = hs_pair_load(&w->yield[f]), e = strain[0] + strain[1] * y + strain[2] * x;
    hs_pair stress = tangent * (e - hs_pair_load(&w->base[f]));
    hs_pair held = hs_pair_choose(stress > limit, limit, stress);
    held = hs_pair_choose(held < -limit, -limit, held);
    hs_pair force = area * held, stiff = hs_pair_where(held == stress, area * tangent);
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

/* A half stands for both: no moment across its mirror. */
static void fold(balance *b, const hs_quench_case *c) {
    if (c->fold_x) b->force[2] = b->tangent[2] = b->tangent[4] = 0;
    if (c->fold_y) b->force[1] = b->tangent[1] = b->tangent[4] = 0;
}

static balance balance_at(const hs_quench_run_state *s, const double strain[3]) {
    const hs_pair at[3] = {hs_pair_of(strain[0]), hs_pair_of(strain[1]), hs_pair_of(strain[2])};
    hs_pair sum[9] = {{0, 0}};
    double all[9];
    for (size_t f = 0; f < s->fibres; f += 2)
        add_pair(sum, s->w, f, at);
    for (int i = 0; i < 9; i++)
        all[i] = hs_pair_sum(sum[i]);
    balance b = {{all[0], all[1], all[2]}, {all[3], all[4], all[5], all[6], all[7], all[8]}};
    fold(&b, s->c);
    return b;
}

/* Solve tangent * step = -force, the tangent stiffened a little where all yields. */
static void newton_step(double step[3], const balance *b, const balance *elastic) {
    double t[6];
    for (int i = 0; i < 6; i++)
        t[i] = b->tangent[i] + 1e-6 * elastic->tangent[i];
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

static balance elastic_balance(const hs_quench_run_state *s) {
    const hs_quench_work *w = s->w;
    balance b = {{0}, {0}};
    for (size_t f = 0; f < s->fibres; f++) {
        double EA = w->modulus[f] * w->area_m2[f], x = w->x_m[f], y = w->y_m[f];
        b.tangent[0] += EA;
        b.tangent[1] += EA * y;
        b.tangent[2] += EA * x;
        b.tangent[3] += EA * y * y;
        b.tangent[4] += EA * x * y;
        b.tangent[5] += EA * x * x;
    }
    fold(&b, s->c);
    return b;
}

/* Newton on the convex potential whose gradient is the force: a step may not climb past the
 * lowest point along it. */
static int settle(hs_quench_run_state *s, size_t k, const balance *elastic) {
    double *strain = s->w->strain[k];
    double small = 1e-10 * elastic->tangent[0]; /* a strain over the section */
    double arm = sqrt((elastic->tangent[3] + elastic->tangent[5]) / elastic->tangent[0]);
    prepare(s, k);
    const double before[3] = {strain[0], strain[1], strain[2]};
    for (int m = 0; m < 3; m++)
        strain[m] += s->w->change[k][m]; /* on as in the last part */
    balance now = balance_at(s, strain);
    for (int i = 0; i < MOST_NEWTON; i++) {
        double step[3], next[3], t = 1;
        double miss = fabs(now.force[0]) + (fabs(now.force[1]) + fabs(now.force[2])) / arm;
        if (miss < small) {
            for (int m = 0; m < 3; m++)
                s->w->change[k][m] = strain[m] - before[m];
            return 1;
        }
        newton_step(step, &now, elastic);
        double slope = along(&now, step);
        balance then = now;
        for (int j = 0; j < MOST_HALVINGS; j++) {
            for (int m = 0; m < 3; m++)
                next[m] = strain[m] + t * step[m];
            then = balance_at(s, next);
            s->cost.iterations++;
            double there = along(&then, step);
            if (there <= 0.5 * fabs(slope)) break;
            t *= fmax(0.1, slope / (slope - there));
        }
        memcpy(strain, next, sizeof next);
        now = then;
    }
    return 0;
}

static void store(hs_quench_run_state *s, size_t k) {
    hs_quench_work *w = s->w;
    const double *strain = w->strain[k];
    for (size_t f = 0; f < s->fibres; f++) {
        double e = strain[0] + strain[1] * w->y_m[f] + strain[2] * w->x_m[f];
        double held = held_at(w->tangent[f] * (e - w->base[f]), w->yield[f]);
        w->plastic[k][f] = e - w->free[f] - held / w->modulus[f];
        w->stress_Pa[k][f] = held;
    }
}

/* Does a place transform between two temperatures? */
static int changes(const hs_quench_run_state *s, const hs_quench_point *p, double from_K,
                   double to_K) {
    const hs_quench_steel *steel = s->c->steel;
    if (to_K < p->ms_K) return 1;
    return p->share < 1 && to_K < steel->soft_start_K && from_K > steel->soft_end_K;
}

static double temp_of(const hs_quench_fibre *fibre, const hs_quench_mesh *mesh,
                      const double *node_K) {
    const unsigned short *node = mesh->cell[fibre->cell].node;
    double T = 0;
    for (int i = 0; i < 4; i++)
        T += fibre->weight[i] * node_K[node[i]];
    return T;
}

/* How many parts a step of the heat is cut into for the fibres; notes where they are bound for. */
static size_t parts_of(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    double most = 0, most_hard = 0;
    for (size_t f = 0; f < s->fibres; f++) {
        const hs_quench_fibre *fibre = &s->c->mesh->fibre[w->index[f]];
        /* a fibre at the rim of a cut cell is read beyond its corners */
        double T = hs_most(temp_of(fibre, s->c->mesh, w->next_K), s->c->bath.bath_K);
        w->from_K[f] = w->fibre_K[f];
        w->to_K[f] = T;
        double change = fabs(T - w->fibre_K[f]);
        most = hs_most(most, change);
        if (changes(s, &s->c->fibre[w->index[f]], w->fibre_K[f], T))
            most_hard = hs_most(most_hard, change);
    }
    double hard_K = s->c->substep_K > 0 ? s->c->substep_K : HARD_SUBSTEP_K;
    double parts = fmax(most / (hard_K / HARD_SUBSTEP_K * COOL_SUBSTEP_K), most_hard / hard_K);
    return (size_t)fmax(1, ceil(parts));
}

static void note_peak(hs_quench_left *left, const double *strain, double time_s) {
    double before = fmax(fabs(left->peak_kappa_x_1_m), fabs(left->peak_kappa_y_1_m));
    if (fmax(fabs(strain[1]), fabs(strain[2])) > before) left->peak_time_s = time_s;
    left->peak_1_m = fmax(left->peak_1_m, hypot(strain[1], strain[2]));
    if (fabs(strain[1]) > fabs(left->peak_kappa_x_1_m)) left->peak_kappa_x_1_m = strain[1];
    if (fabs(strain[2]) > fabs(left->peak_kappa_y_1_m)) left->peak_kappa_y_1_m = strain[2];
}

hs_status hs_quench_fibres_step(hs_quench_run_state *s, double step_s, hs_error *err) {
    hs_quench_work *w = s->w;
    size_t parts = parts_of(s);
    for (size_t part = 1; part <= parts; part++) {
        double share = (double)part / (double)parts;
        for (size_t f = 0; f < s->fibres; f++) {
            advance_fibre(s, f, w->from_K[f] + share * (w->to_K[f] - w->from_K[f]));
        }
        balance elastic = elastic_balance(s);
        s->cost.substeps++;
        for (size_t k = 0; k < s->c->n; k++) {
            if (!settle(s, k, &elastic))
                return hs_fail(err, HS_E_CONVERGE, "", "the fibres of the quench do not settle");
            store(s, k);
            note_peak(&s->left[k], w->strain[k], s->time_s - (1 - share) * step_s);
        }
    }
    return HS_OK;
}
