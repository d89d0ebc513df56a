/* A surface of quenches, read: linear in unevenness, film and plasticity. */
#include "hardskin/model/quench_bow.h"

#include <math.h>

/* Place between rising levels: index of the lower one and the share towards the next. */
static size_t between(double *share, const double *level, size_t n, double at) {
    size_t i = 0;
    *share = 0;
    if (n < 2) return 0;
    while (i + 2 < n && at > level[i + 1])
        i++;
    *share = fmin(1, fmax(0, (at - level[i]) / (level[i + 1] - level[i])));
    return i;
}

static double read(const double table[HS_BOW_FILMS][HS_BOW_PLASTICITIES][2], size_t f, double df,
                   size_t k, double dk, size_t last, int i) {
    size_t next = k < last ? k + 1 : k;
    double low = (1 - dk) * table[f][k][i] + dk * table[f][next][i];
    double high = (1 - dk) * table[f + 1][k][i] + dk * table[f + 1][next][i];
    return low + df * (high - low);
}

void hs_bow_surface_at(double *kappa_x, double *kappa_y, const hs_bow_surface *s, double uneven,
                       double direction, double film_log, double plasticity_1_Pa) {
    double df, dk, kappa[2];
    size_t f = between(&df, s->film_log, HS_BOW_FILMS, film_log);
    size_t k = between(&dk, s->plasticity_1_Pa, s->plasticities, plasticity_1_Pa);
    double part[2] = {uneven * cos(direction), uneven * sin(direction)};
    for (int i = 0; i < 2; i++) {
        kappa[i] = read(s->even, f, df, k, dk, s->plasticities - 1, i);
        for (int axis = 0; axis < 2; axis++) {
            int side = 2 * axis + (part[axis] < 0);
            kappa[i] +=
                fabs(part[axis]) * read(s->side[side], f, df, k, dk, s->plasticities - 1, i);
        }
    }
    *kappa_x = kappa[0];
    *kappa_y = kappa[1];
}

static double read_peak(const double table[HS_BOW_FILMS][HS_BOW_PLASTICITIES], size_t f, double df,
                        size_t k, double dk, size_t last) {
    size_t next = k < last ? k + 1 : k;
    double low = (1 - dk) * table[f][k] + dk * table[f][next];
    double high = (1 - dk) * table[f + 1][k] + dk * table[f + 1][next];
    return low + df * (high - low);
}

double hs_bow_peak_at(const hs_bow_surface *s, double uneven, double film_log,
                      double plasticity_1_Pa) {
    double df, dk;
    size_t f = between(&df, s->film_log, HS_BOW_FILMS, film_log), last = s->plasticities - 1;
    size_t k = between(&dk, s->plasticity_1_Pa, s->plasticities, plasticity_1_Pa);
    double even = read_peak(s->peak_even_1_m, f, df, k, dk, last);
    double side = read_peak(s->peak_side_1_m, f, df, k, dk, last);
    return fmax(even, even + uneven * (side - even));
}
