#include "plan/driver.h"

#include <math.h>
#include <stdio.h>

/* Sums over the draws of an input, straight and by its size, and with the value. */
typedef struct sums {
    double x[HS_INPUTS], xx[HS_INPUTS], xy[HS_INPUTS];
} sums;

static void add_draw(sums *straight, sums *by_size, const double z[HS_INPUTS], double y) {
    for (int k = 0; k < HS_INPUTS; k++) {
        double size = fabs(z[k]);
        straight->x[k] += z[k];
        straight->xx[k] += z[k] * z[k];
        straight->xy[k] += z[k] * y;
        by_size->x[k] += size;
        by_size->xx[k] += size * size;
        by_size->xy[k] += size * y;
    }
}

/* Square of the correlation; y has the mean 0 and the sum of squares yy. */
static double squared(const sums *s, int k, double yy, double n) {
    double vx = s->xx[k] - s->x[k] * s->x[k] / n;
    return vx > 1e-12 * s->xx[k] ? s->xy[k] * s->xy[k] / (vx * yy) : 0;
}

static void insert(hs_driver *driver, size_t *n, size_t most, const char *name, double share) {
    size_t at = *n < most ? (*n)++ : most;
    if (at == most) {
        if (driver[most - 1].share_pct >= share) return;
        at = most - 1;
    }
    for (; at > 0 && driver[at - 1].share_pct < share; at--)
        driver[at] = driver[at - 1];
    snprintf(driver[at].name, sizeof driver[at].name, "%s", name);
    driver[at].share_pct = share;
}

size_t hs_drivers_find(hs_driver *driver, size_t most, const hs_draws *draws, const double *value) {
    sums straight = {0}, by_size = {0};
    double n = (double)draws->n, mean = 0, yy = 0, share[HS_INPUTS], all = 0;
    for (size_t i = 0; i < draws->n; i++)
        mean += value[i] / n;
    for (size_t i = 0; i < draws->n; i++) {
        double y = value[i] - mean;
        yy += y * y;
        add_draw(&straight, &by_size, draws->z[i], y);
    }
    if (!(yy > 0 && isfinite(yy))) return 0;
    const double noise = 8 / n; /* squares of two chance correlations */
    for (int k = 0; k < HS_INPUTS; k++) {
        share[k] = squared(&straight, k, yy, n) + squared(&by_size, k, yy, n);
        if (share[k] <= noise) share[k] = 0;
        all += share[k];
    }
    size_t found = 0;
    for (int k = 0; k < HS_INPUTS; k++)
        if (share[k] > 0)
            insert(driver, &found, most, hs_input_name((hs_input)k), 100 * share[k] / all);
    return found;
}
