#include "model/quench_steps.h"

#include <math.h>

double hs_curve_at(const hs_curve *c, double temp_K) {
    if (c->n == 0) return NAN;
    if (temp_K <= c->temp_K[0]) return c->value[0];
    for (size_t i = 1; i < c->n; i++) {
        if (temp_K > c->temp_K[i]) continue;
        double share = (temp_K - c->temp_K[i - 1]) / (c->temp_K[i] - c->temp_K[i - 1]);
        return c->value[i - 1] + share * (c->value[i] - c->value[i - 1]);
    }
    return c->value[c->n - 1];
}

static void fill_row(hs_quench_run_state *s, int row, const hs_curve *curve) {
    for (size_t i = 0; i < HS_QUENCH_GRID_K; i++)
        s->w->table[row][i] = curve->n ? hs_curve_at(curve, s->low_K + (double)i / s->per_K) : 0;
}

void hs_quench_tables(hs_quench_run_state *s) {
    const hs_quench_steel *steel = s->c->steel;
    s->low_K = s->c->bath.bath_K - 5;
    s->per_K = (HS_QUENCH_GRID_K - 1) / (s->c->start_K + 5 - s->low_K);
    for (int p = 0; p < HS_PHASES; p++) {
        fill_row(s, HS_Q_CONDUCTIVITY + p, &steel->conductivity[p]);
        fill_row(s, HS_Q_HEAT + p, &steel->heat[p]);
        fill_row(s, HS_Q_YIELD + p, &steel->yield[p]);
    }
    fill_row(s, HS_Q_MODULUS, &steel->modulus);
    fill_row(s, HS_Q_FILM, &s->c->bath.film);
    for (size_t i = 0; i < HS_QUENCH_KEPT; i++)
        s->w->kept[i] = exp(-(double)i / HS_QUENCH_KEPT_PER_1);
}
