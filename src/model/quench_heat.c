/* Heat in the section, marched by base/rkc; the last component is the heat that has left (J/m), so
 * that it balances to rounding where the heat capacity is constant. */
#include "model/quench_steps.h"

#include "base/rkc.h"

#include <math.h>
#include <string.h>

static const double MOST_CHANGE_K = 20; /* of a step */
enum { MOST_TRIES = 60 };
static const int pair[6][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}};

/* The temperatures above which what has turned stays as it is: set once a step, for a heat capacity
 * that jumped whenever a stage wavered would keep the steps short. */
static void hold(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    for (size_t i = 0; i < w->net.nodes; i++)
        w->held_K[i] = w->temp_K[i] > w->coldest_K[i] ? w->coldest_K[i] : INFINITY;
}

/* Conductivity and heat capacity of the nodes, with the latent heat where a node transforms. */
static void node_properties(hs_quench_run_state *s, const double *temp_K) {
    const hs_quench_case *c = s->c;
    hs_quench_work *w = s->w;
    const hs_quench_steel *steel = c->steel;
    double span = steel->soft_start_K - steel->soft_end_K;
    for (size_t i = 0; i < w->net.nodes; i++) {
        const hs_quench_point *p = &c->node[w->net.mesh_node[i]];
        double T = temp_K[i], been = hs_least(T, w->held_K[i]);
        double hard = hs_quench_hard(s, p, been), soft = hs_quench_soft(p, steel, been);
        double left = 1 - hard - soft;
        hs_quench_spot at = hs_quench_spot_of(s, T);
        w->conductivity[i] = left * hs_quench_read(s, HS_Q_CONDUCTIVITY, at);
        double heat = left * hs_quench_read(s, HS_Q_HEAT, at);
        if (hard > 0) {
            w->conductivity[i] += hard * hs_quench_read(s, HS_Q_CONDUCTIVITY + HS_MARTENSITE, at);
            heat += hard * hs_quench_read(s, HS_Q_HEAT + HS_MARTENSITE, at);
        }
        if (soft > 0) {
            w->conductivity[i] += soft * hs_quench_read(s, HS_Q_CONDUCTIVITY + HS_FERRITE, at);
            heat += soft * hs_quench_read(s, HS_Q_HEAT + HS_FERRITE, at);
        }
        w->sensible[i] = heat;
        if (T <= w->held_K[i]) {
            if (T < p->ms_K)
                heat += steel->latent_J_m3[HS_MARTENSITE] * p->alpha_1_K * (p->share - hard);
            if (T < steel->soft_start_K && T > steel->soft_end_K && p->share < 1)
                heat += steel->latent_J_m3[HS_FERRITE] * (1 - p->share) / span;
        }
        w->capacity[i] = heat;
    }
}

/* Heat into the nodes through the edges (W/m); returns what leaves the section. */
static double film(hs_quench_run_state *s, double *flux, const double *temp_K) {
    const hs_quench_net *net = &s->w->net;
    double out = 0;
    for (size_t k = 0; k < net->segments; k++) {
        const hs_quench_net_film *seg = &net->film[k];
        const unsigned short *node = seg->node;
        for (int g = 0; g < 2; g++) {
            const double *weight = seg->weight[g];
            double T = 0;
            for (int i = 0; i < 4; i++)
                T += weight[i] * temp_K[node[i]];
            double q = seg->width_m * hs_quench_table(s, HS_Q_FILM, T) * (T - s->c->bath.bath_K);
            out += q;
            for (int i = 0; i < 4; i++)
                flux[node[i]] -= weight[i] * q;
        }
    }
    return out;
}

/* dT/dt of the nodes, and the heat that leaves, W/m. */
static void rate(double *out, const double *temp_K, void *context) {
    hs_quench_run_state *s = context;
    hs_quench_work *w = s->w;
    const hs_quench_net *net = &w->net;
    node_properties(s, temp_K);
    memset(out, 0, net->nodes * sizeof *out);
    for (size_t k = 0; k < net->cells; k++) {
        const hs_quench_net_cell *cell = &net->cell[k];
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
    out[net->nodes] = film(s, out, temp_K);
    for (size_t i = 0; i < net->nodes; i++)
        out[i] /= w->capacity[i] * w->bound[i];
    s->cost.evaluations++;
}

/* Gershgorin's bound on the rates at the temperatures node_properties was last called with; without
 * latent heat, which is not given off where a stage warms a node. */
static double radius(hs_quench_run_state *s, const double *temp_K) {
    hs_quench_work *w = s->w;
    const hs_quench_net *net = &w->net;
    double *sum = w->stage + 4 * (net->nodes + 1), most = 0;
    memset(sum, 0, net->nodes * sizeof *sum);
    for (size_t k = 0; k < net->cells; k++) {
        const unsigned short *n = net->cell[k].node;
        double conductivity = hs_most(hs_most(w->conductivity[n[0]], w->conductivity[n[1]]),
                                      hs_most(w->conductivity[n[2]], w->conductivity[n[3]]));
        for (int i = 0; i < 6; i++) {
            double link = 2 * conductivity * fabs(net->cell[k].link[i]);
            sum[n[pair[i][0]]] += link;
            sum[n[pair[i][1]]] += link;
        }
    }
    for (size_t k = 0; k < net->segments; k++) {
        const hs_quench_net_film *seg = &net->film[k];
        const unsigned short *n = seg->node;
        for (int g = 0; g < 2; g++) {
            double T = 0;
            for (int i = 0; i < 4; i++)
                T += seg->weight[g][i] * temp_K[n[i]];
            double h = hs_quench_table(s, HS_Q_FILM, T), up = hs_quench_table(s, HS_Q_FILM, T + 5);
            double slope = h + hs_most(0, (up - h) / 5) * (T - s->c->bath.bath_K);
            for (int i = 0; i < 4; i++)
                sum[n[i]] += seg->width_m * slope * seg->weight[g][i];
        }
    }
    for (size_t i = 0; i < net->nodes; i++)
        most = hs_most(most, sum[i] / (w->sensible[i] * w->bound[i]));
    return most;
}

/* Lumped areas with a floor under slivers, whose nodes would else ask for ever shorter steps. */
static void floor_areas(hs_quench_run_state *s) {
    const hs_quench_net *net = &s->w->net;
    double *sum = s->w->stage;
    memset(sum, 0, net->nodes * sizeof *sum);
    for (size_t k = 0; k < net->cells; k++) {
        const hs_quench_net_cell *cell = &net->cell[k];
        for (int i = 0; i < 6; i++) {
            double area = fabs(cell->link[i]) * cell->thin_m * cell->thin_m / 24;
            sum[cell->node[pair[i][0]]] += area;
            sum[cell->node[pair[i][1]]] += area;
        }
    }
    for (size_t i = 0; i < net->nodes; i++)
        s->w->bound[i] = fmax(net->area_m2[i], sum[i]);
}

void hs_quench_heat_start(hs_quench_run_state *s, double *try_s) {
    hs_quench_work *w = s->w;
    hs_quench_net_make(&w->net, s->c);
    for (size_t i = 0; i < w->net.nodes; i++)
        w->temp_K[i] = w->coldest_K[i] = s->c->start_K;
    hold(s);
    floor_areas(s);
    w->temp_K[w->net.nodes] = 0;
    rate(w->stage, w->temp_K, s);
    double most = 0;
    for (size_t i = 0; i < w->net.nodes; i++)
        most = fmax(most, fabs(w->stage[i]));
    *try_s = 0.5 / fmax(most, 1e-9);
}

/* Share of the tolerance a step used, its error taken over the metal: a node of hardly any is at
 * once where its neighbours hold it, and the estimate, made for what moves, is far too high there.
 * And the largest change. */
static double judge(hs_quench_run_state *s, double *change_K, double h) {
    hs_quench_work *w = s->w;
    size_t n = w->net.nodes;
    double sum = 0, all = 0, tolerance = s->c->tolerance_K > 0 ? s->c->tolerance_K : 1;
    *change_K = 0;
    for (size_t i = 0; i < n; i++) {
        double miss = hs_rkc_error(w->next_K, w->temp_K, n + 1, h, w->stage, i);
        sum += w->net.area_m2[i] * miss * miss;
        all += w->net.area_m2[i];
        *change_K = hs_most(*change_K, fabs(w->next_K[i] - w->temp_K[i]));
    }
    return sqrt(sum / all) / tolerance;
}

hs_status hs_quench_heat_step(hs_quench_run_state *s, double *taken_s, double *try_s,
                              hs_error *err) {
    hs_quench_work *w = s->w;
    size_t n = w->net.nodes + 1;
    double h = *try_s;
    hold(s);
    rate(w->stage, w->temp_K, s);
    double fastest = radius(s, w->temp_K);
    for (int k = 0; k < MOST_TRIES; k++) {
        double change_K = 0;
        size_t stages = hs_rkc_stages(&h, fastest);
        hs_rkc_step(w->next_K, w->temp_K, n, h, stages, rate, s, w->stage);
        double used = judge(s, &change_K, h);
        double room = 0.9 * MOST_CHANGE_K / fmax(change_K, 1e-6);
        double factor = fmin(0.8 / cbrt(fmax(used, 1e-6)), room);
        if (used <= 1 && change_K <= MOST_CHANGE_K) {
            *taken_s = h;
            *try_s = h * fmin(3, fmax(0.3, factor));
            s->time_s += h;
            s->cost.steps++;
            return HS_OK;
        }
        s->cost.rejected++;
        h *= fmin(0.7, fmax(0.1, factor));
    }
    return hs_fail(err, HS_E_CONVERGE, "a wider spacing", "the heat of the quench does not settle");
}
