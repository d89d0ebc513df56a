/* Fibres in the quench: one strain per place, elastic and perfectly plastic, with what the
 * transformation adds; mean strain and the two curvatures follow from no force and no moment. */
#include "model/quench_steps.h"

#include "base/lanes.h"

#include <math.h>
#include <string.h>

static const double COOL_SUBSTEP_K = 12, HARD_SUBSTEP_K = 5;
static const double REFERENCE_K = 293.15; /* strains of transformation are those at 20 C */

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

/* Stiffness of the cold section: the scale of what is small. */
static void measure(hs_quench_run_state *s) {
    const hs_quench_work *w = s->w;
    double E = hs_quench_table(s, HS_Q_MODULUS, s->c->bath.bath_K);
    memset(s->stiffness, 0, sizeof s->stiffness);
    for (size_t f = 0; f < s->fibres; f++) {
        double EA = E * w->area_m2[f], x = w->x_m[f], y = w->y_m[f];
        s->stiffness[0] += EA;
        s->stiffness[1] += EA * y;
        s->stiffness[2] += EA * x;
        s->stiffness[3] += EA * y * y;
        s->stiffness[4] += EA * x * y;
        s->stiffness[5] += EA * x * x;
    }
    if (s->c->fold_x) s->stiffness[2] = s->stiffness[4] = 0;
    if (s->c->fold_y) s->stiffness[1] = s->stiffness[4] = 0;
}

/* Fibres of no metal at the end, to a whole number of lanes. Returns how many there are then. */
static size_t pad(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    size_t f = s->fibres;
    for (; f % HS_LANES != 0; f++) {
        w->x_m[f] = w->y_m[f] = w->area_m2[f] = w->moved[f] = w->creep[f] = 0;
        w->yield[f] = w->was_yield[f] = 0;
        w->compliance[f] = w->was_compliance[f] = 1;
    }
    return f;
}

void hs_quench_fibres_start(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    choose(s);
    measure(s);
    for (size_t f = 0; f < s->fibres; f++) {
        w->fibre_K[f] = s->c->start_K;
        w->hard[f] = w->soft[f] = w->free[f] = w->yield[f] = 0;
        w->compliance[f] = 1;
    }
    size_t padded = pad(s);
    for (size_t k = 0; k < s->c->n; k++) {
        memset(w->base[k], 0, padded * sizeof *w->base[k]);
        memset(w->tangent[k], 0, padded * sizeof *w->tangent[k]);
        memset(w->strain[k], 0, sizeof w->strain[k]);
        memset(w->change[k], 0, sizeof w->change[k]);
    }
}

void hs_quench_fibres_end(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    for (size_t k = 0; k < s->c->n; k++) {
        hs_quench_stress(s, k);
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
    double hard = hs_most(w->hard[f], hs_quench_hard(s, p, T));
    double soft = hs_most(w->soft[f], hs_quench_soft(p, steel, T)), left = 1 - hard - soft;
    double formed = hard - w->hard[f] + soft - w->soft[f];
    const double *expansion = steel->expansion;
    double shrunk = expansion[HS_AUSTENITE] * (REFERENCE_K - s->c->start_K);
    double warm = T - REFERENCE_K, was = w->free[f];
    w->was_yield[f] = w->yield[f];
    w->was_compliance[f] = w->compliance[f];
    w->free[f] = left * expansion[HS_AUSTENITE] * (T - s->c->start_K);
    if (hard > 0)
        w->free[f] += hard * (shrunk + p->strain[HS_MARTENSITE] + expansion[HS_MARTENSITE] * warm);
    if (soft > 0)
        w->free[f] += soft * (shrunk + p->strain[HS_FERRITE] + expansion[HS_FERRITE] * warm);
    hs_quench_spot at = hs_quench_spot_of(s, T);
    w->compliance[f] = 1 / hs_quench_read(s, HS_Q_MODULUS, at);
    w->yield[f] = left * hs_quench_read(s, HS_Q_YIELD + HS_AUSTENITE, at);
    if (hard > 0)
        w->yield[f] += hard * p->strength_Pa * hs_quench_read(s, HS_Q_YIELD + HS_MARTENSITE, at);
    if (soft > 0) w->yield[f] += soft * hs_quench_read(s, HS_Q_YIELD + HS_FERRITE, at);
    w->moved[f] = w->free[f] - was;
    w->creep[f] = 2 * (left + 0.5 * formed) * formed;
    w->hard[f] = hard;
    w->soft[f] = soft;
    w->fibre_K[f] = T;
}

/* Does a place transform between two temperatures? */
static int changes(const hs_quench_run_state *s, const hs_quench_point *p, double from_K,
                   double to_K) {
    const hs_quench_steel *steel = s->c->steel;
    if (to_K < p->ms_K) return 1;
    return p->share < 1 && to_K < steel->soft_start_K && from_K > steel->soft_end_K;
}

static double next_of(const hs_quench_run_state *s, const hs_quench_fibre *fibre) {
    const unsigned short *node = s->c->mesh->cell[fibre->cell].node;
    double T = 0;
    for (int i = 0; i < 4; i++)
        T += fibre->weight[i] * s->w->next_K[s->w->net.node_of[node[i]]];
    return T;
}

/* How many parts a step of the heat is cut into for the fibres; notes where they are bound for. */
static size_t parts_of(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    double most = 0, most_hard = 0;
    for (size_t f = 0; f < s->fibres; f++) {
        const hs_quench_fibre *fibre = &s->c->mesh->fibre[w->index[f]];
        /* a fibre at the rim of a cut cell is read beyond its corners */
        double T = hs_most(next_of(s, fibre), s->c->bath.bath_K);
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
        s->cost.substeps++;
        for (size_t k = 0; k < s->c->n; k++) {
            if (!hs_quench_settle(s, k))
                return hs_fail(err, HS_E_CONVERGE, "", "the fibres of the quench do not settle");
            note_peak(&s->left[k], w->strain[k], s->time_s - (1 - share) * step_s);
        }
    }
    return HS_OK;
}
