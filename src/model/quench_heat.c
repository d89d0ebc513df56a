/* Heat in the section: RKC2, a stabilised explicit method of second order (Sommeijer, Shampine and
 * Verwer, J. Comput. Appl. Math. 88 (1998) 315): no linear algebra, any film law. */
#include "model/quench_steps.h"

#include <math.h>
#include <string.h>

static const double MOST_CHANGE_K = 20; /* of a step */
enum { MOST_STAGES = 200, MOST_TRIES = 60 };

/* Conductivity and heat capacity of the nodes; latent heat counts while a node falls below its
 * coldest so far. */
static void node_properties(hs_quench_run_state *s, const double *temp_K) {
    const hs_quench_case *c = s->c;
    hs_quench_work *w = s->w;
    const hs_quench_steel *steel = c->steel;
    double span = steel->soft_start_K - steel->soft_end_K;
    for (size_t i = 0; i < c->mesh->nodes; i++) {
        const hs_quench_point *p = &c->node[i];
        double T = temp_K[i], been = fmin(T, w->coldest_K[i]);
        double hard = hs_quench_hard(p, been), soft = hs_quench_soft(p, steel, been);
        double left = 1 - hard - soft;
        w->conductivity[i] = left * hs_quench_table(s, HS_Q_CONDUCTIVITY, T);
        double heat = left * hs_quench_table(s, HS_Q_HEAT, T);
        if (hard > 0) {
            w->conductivity[i] += hard * hs_quench_table(s, HS_Q_CONDUCTIVITY + HS_MARTENSITE, T);
            heat += hard * hs_quench_table(s, HS_Q_HEAT + HS_MARTENSITE, T);
        }
        if (soft > 0) {
            w->conductivity[i] += soft * hs_quench_table(s, HS_Q_CONDUCTIVITY + HS_FERRITE, T);
            heat += soft * hs_quench_table(s, HS_Q_HEAT + HS_FERRITE, T);
        }
        if (T <= w->coldest_K[i]) {
            if (T < p->ms_K)
                heat += steel->latent_J_m3[HS_MARTENSITE] * p->alpha_1_K * (p->share - hard);
            if (T < steel->soft_start_K && T > steel->soft_end_K && p->share < 1)
                heat += steel->latent_J_m3[HS_FERRITE] * (1 - p->share) / span;
        }
        w->capacity[i] = heat;
    }
}

static double edge_factor(const hs_quench_bath *b, const hs_quench_segment *seg) {
    if (seg->edge == 0) return b->factor * b->hole_factor;
    double own = b->edge_factor ? b->edge_factor[seg->edge - 1] : 1;
    return b->factor * own * (1 + 0.5 * b->uneven * (seg->nx * b->ax + seg->ny * b->ay));
}

/* Heat into the nodes through the edges (W/m); returns what leaves the section. */
static double film(hs_quench_run_state *s, double *flux, const double *temp_K) {
    const hs_quench_mesh *mesh = s->c->mesh;
    double out = 0;
    for (size_t k = 0; k < mesh->segments; k++) {
        const hs_quench_segment *seg = &mesh->segment[k];
        const unsigned short *node = mesh->cell[seg->cell].node;
        double factor = 0.5 * seg->length_m * edge_factor(&s->c->bath, seg);
        for (int g = 0; g < 2; g++) {
            const double *weight = seg->weight[g];
            double T = 0;
            for (int i = 0; i < 4; i++)
                T += weight[i] * temp_K[node[i]];
            double q = factor * hs_quench_table(s, HS_Q_FILM, T) * (T - s->c->bath.bath_K);
            out += q;
            for (int i = 0; i < 4; i++)
                flux[node[i]] -= weight[i] * q;
        }
    }
    return out;
}

/* dT/dt of the nodes; returns the heat that leaves, W/m. */
static double rate(hs_quench_run_state *s, double *out, const double *temp_K) {
    static const int pair[6][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}};
    const hs_quench_mesh *mesh = s->c->mesh;
    hs_quench_work *w = s->w;
    node_properties(s, temp_K);
    memset(out, 0, mesh->nodes * sizeof *out);
    for (size_t k = 0; k < mesh->cells; k++) {
        const hs_quench_cell *cell = &mesh->cell[k];
        const unsigned short *n = cell->node;
        double conductivity = 0.25 * (w->conductivity[n[0]] + w->conductivity[n[1]] +
                                      w->conductivity[n[2]] + w->conductivity[n[3]]);
        for (int i = 0; i < 6; i++) {
            size_t a = n[pair[i][0]], b = n[pair[i][1]];
            double q = conductivity * cell->link[i] * (temp_K[b] - temp_K[a]);
            out[a] += q;
            out[b] -= q;
        }
    }
    double lost = film(s, out, temp_K);
    for (size_t i = 0; i < mesh->nodes; i++)
        out[i] /= w->capacity[i] * w->bound[i];
    s->cost.evaluations++;
    return lost;
}

/* Gershgorin's bound on the rates at the temperatures node_properties was last called with. */
static double radius(hs_quench_run_state *s, const double *temp_K) {
    static const int pair[6][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}};
    const hs_quench_mesh *mesh = s->c->mesh;
    hs_quench_work *w = s->w;
    double *sum = w->stage[4], most = 0;
    memset(sum, 0, mesh->nodes * sizeof *sum);
    for (size_t k = 0; k < mesh->cells; k++) {
        const unsigned short *n = mesh->cell[k].node;
        double conductivity = fmax(fmax(w->conductivity[n[0]], w->conductivity[n[1]]),
                                   fmax(w->conductivity[n[2]], w->conductivity[n[3]]));
        for (int i = 0; i < 6; i++) {
            double link = 2 * conductivity * fabs(mesh->cell[k].link[i]);
            sum[n[pair[i][0]]] += link;
            sum[n[pair[i][1]]] += link;
        }
    }
    for (size_t k = 0; k < mesh->segments; k++) {
        const hs_quench_segment *seg = &mesh->segment[k];
        const unsigned short *n = mesh->cell[seg->cell].node;
        double factor = 0.5 * seg->length_m * edge_factor(&s->c->bath, seg);
        for (int g = 0; g < 2; g++) {
            double T = 0;
            for (int i = 0; i < 4; i++)
                T += seg->weight[g][i] * temp_K[n[i]];
            double h = hs_quench_table(s, HS_Q_FILM, T), up = hs_quench_table(s, HS_Q_FILM, T + 5);
            double slope = h + fmax(0, (up - h) / 5) * (T - s->c->bath.bath_K);
            for (int i = 0; i < 4; i++)
                sum[n[i]] += factor * slope * seg->weight[g][i];
        }
    }
    for (size_t i = 0; i < mesh->nodes; i++)
        most = fmax(most, sum[i] / (w->capacity[i] * w->bound[i]));
    return most;
}

/* Lumped areas with a floor under slivers, whose nodes would else ask for ever shorter steps. */
static void floor_areas(hs_quench_run_state *s) {
    static const int pair[6][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}};
    const hs_quench_mesh *mesh = s->c->mesh;
    double *sum = s->w->stage[0];
    memset(sum, 0, mesh->nodes * sizeof *sum);
    for (size_t k = 0; k < mesh->cells; k++)
        for (int i = 0; i < 6; i++) {
            double link = fabs(mesh->cell[k].link[i]);
            sum[mesh->cell[k].node[pair[i][0]]] += link;
            sum[mesh->cell[k].node[pair[i][1]]] += link;
        }
    double square = mesh->spacing_m * mesh->spacing_m / 24;
    for (size_t i = 0; i < mesh->nodes; i++)
        s->w->bound[i] = fmax(mesh->node_area_m2[i], sum[i] * square);
}

void hs_quench_heat_start(hs_quench_run_state *s, double *try_s) {
    hs_quench_work *w = s->w;
    for (size_t i = 0; i < s->c->mesh->nodes; i++)
        w->temp_K[i] = w->coldest_K[i] = s->c->start_K;
    floor_areas(s);
    rate(s, w->stage[0], w->temp_K);
    double most = 0;
    for (size_t i = 0; i < s->c->mesh->nodes; i++)
        most = fmax(most, fabs(w->stage[0][i]));
    *try_s = 0.5 / fmax(most, 1e-9);
}

/* One RKC2 step of h seconds: rate at the start in stage[0], result in next_K. The heat lost
 * (first_W_m: rate at the start) is carried as one more component, so that it balances to rounding
 * where the heat capacity is constant. Returns it in J/m. */
static double stages(hs_quench_run_state *s, double h, size_t count, double first_W_m) {
    hs_quench_work *w = s->w;
    size_t n = s->c->mesh->nodes;
    double *first = w->stage[0], *f = w->stage[1], *y0 = w->stage[2], *y1 = w->stage[3],
           *y2 = w->stage[4];
    double m = (double)count, w0 = 1 + 2 / (13 * m * m), root = w0 * w0 - 1;
    double arg = m * log(w0 + sqrt(root));
    double w1 = sinh(arg) * root / (cosh(arg) * m * sqrt(root) - w0 * sinh(arg));
    double b1 = 1 / (4 * w0 * w0), b2 = b1, mu1 = w1 * b1;
    double e0 = 0, e1 = h * mu1 * first_W_m;
    double z1 = w0, z2 = 1, d1 = 1, d2 = 0, dd1 = 0, dd2 = 0;
    for (size_t i = 0; i < n; i++) {
        y0[i] = w->temp_K[i];
        y1[i] = w->temp_K[i] + h * mu1 * first[i];
    }
    for (size_t j = 2; j <= count; j++) {
        double z = 2 * w0 * z1 - z2, d = 2 * w0 * d1 - d2 + 2 * z1,
               dd = 2 * w0 * dd1 - dd2 + 4 * d1;
        double b = dd / (d * d), a1 = 1 - z1 * b1;
        double mu = 2 * w0 * b / b1, nu = -b / b2, tilde = mu * w1 / w0, gamma = -tilde * a1;
        double lost = rate(s, f, y1);
        double e2 = mu * e1 + nu * e0 + h * (tilde * lost + gamma * first_W_m);
        e0 = e1, e1 = e2;
        for (size_t i = 0; i < n; i++)
            y2[i] = mu * y1[i] + nu * y0[i] + (1 - mu - nu) * w->temp_K[i] +
                    h * (tilde * f[i] + gamma * first[i]);
        double *spare = y0;
        y0 = y1;
        y1 = y2;
        y2 = spare;
        z2 = z1, z1 = z;
        d2 = d1, d1 = d;
        dd2 = dd1, dd1 = dd;
        b2 = b1, b1 = b;
    }
    memcpy(w->next_K, y1, n * sizeof *y1);
    return e1;
}

/* Share of the tolerance a step used; its largest change. */
static double judge(hs_quench_run_state *s, double *change_K, double h) {
    hs_quench_work *w = s->w;
    size_t n = s->c->mesh->nodes;
    double sum = 0, tolerance = s->c->tolerance_K > 0 ? s->c->tolerance_K : 1;
    *change_K = 0;
    for (size_t i = 0; i < n; i++) {
        double miss = 0.8 * (w->temp_K[i] - w->next_K[i]) +
                      0.4 * h * (w->stage[0][i] + w->stage[1][i]);
        sum += miss * miss;
        *change_K = fmax(*change_K, fabs(w->next_K[i] - w->temp_K[i]));
    }
    return sqrt(sum / (double)n) / tolerance;
}

hs_status hs_quench_heat_step(hs_quench_run_state *s, double *taken_s, double *try_s,
                              hs_error *err) {
    hs_quench_work *w = s->w;
    double h = *try_s, lost = rate(s, w->stage[0], w->temp_K);
    s->radius_1_s = radius(s, w->temp_K);
    for (int k = 0; k < MOST_TRIES; k++) {
        size_t count = (size_t)ceil(sqrt(1 + 1.54 * h * s->radius_1_s)) + 1;
        if (count < 3) count = 3;
        if (count > MOST_STAGES) {
            count = MOST_STAGES;
            h = (double)(count * count - 1) / (1.54 * s->radius_1_s);
        }
        double change_K = 0;
        double out_J_m = stages(s, h, count, lost);
        rate(s, w->stage[1], w->next_K);
        double used = judge(s, &change_K, h);
        double shrink = fmin(0.8 / cbrt(fmax(used, 1e-6)), 0.9 * MOST_CHANGE_K / fmax(change_K, 1e-6));
        if (used <= 1 && change_K <= MOST_CHANGE_K) {
            s->heat_out_J_m += out_J_m;
            *taken_s = h;
            *try_s = h * fmin(3, fmax(0.3, shrink));
            s->time_s += h;
            s->cost.steps++;
            return HS_OK;
        }
        s->cost.rejected++;
        h *= fmin(0.7, fmax(0.1, shrink));
    }
    return hs_fail(err, HS_E_CONVERGE, "a wider spacing", "the heat of the quench does not settle");
}
