/* Grossmann, Asimow and Urban: two rounds harden alike where they reach the half temperature at the
 * same time. The times come from the series for a plate and a long cylinder (Carslaw and Jaeger,
 * Conduction of Heat in Solids, 2nd ed., 3.11 and 7.7); Biot number H times size. */
#include "hardskin/model/hardenability.h"

#include "base/num.h"

#include <math.h>

enum { TERMS = 12, POINTS = 64 };
static const double PI = 3.14159265358979324;

/* Bessel functions J0 and J1 by Bessel's integral; the trapezium rule on it gains all digits once
 * it has more points than the argument. */
static double bessel(int order, double x) {
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
        double angle = PI * (i + 0.5) / POINTS;
        sum += cos(order * angle - x * sin(angle));
    }
    return sum / POINTS;
}

typedef struct eigen {
    hs_quenched_shape shape;
    double biot;
} eigen;

/* Zero at an eigenvalue; divided by 1 + Bi so that an ideal quench is a number. */
static double eigen_miss(double x, const void *context) {
    const eigen *e = context;
    double surface = isinf(e->biot) ? 1 : e->biot / (1 + e->biot);
    double inside = isinf(e->biot) ? 0 : 1 / (1 + e->biot);
    if (e->shape == HS_QUENCHED_PLATE) return surface * cos(x) - inside * x * sin(x);
    return surface * bessel(0, x) - inside * x * bessel(1, x);
}

typedef struct cooling {
    double root[TERMS], size[TERMS];
} cooling;

/* Eigenvalue k lies between the zeros of the flux (sin, J1) and of the value (cos, J0). */
static double eigenvalue(const eigen *e, int k) {
    double low = k * PI, high = (k + 0.5) * PI, root = 0;
    if (e->shape == HS_QUENCHED_ROUND) {
        low = k ? (k + 0.2) * PI : 0;
        high = (k + 0.8) * PI;
    }
    return hs_root(&root, eigen_miss, e, low, high, 1e-12) == HS_OK ? root : NAN;
}

static void prepare(cooling *c, const eigen *e, double place) {
    for (int k = 0; k < TERMS; k++) {
        double x = eigenvalue(e, k);
        c->root[k] = x;
        if (e->shape == HS_QUENCHED_PLATE) {
            c->size[k] = 2 * sin(x) / (x + sin(x) * cos(x)) * cos(x * place);
        } else {
            double j0 = bessel(0, x), j1 = bessel(1, x);
            c->size[k] = 2 * j1 / (x * (j0 * j0 + j1 * j1)) * bessel(0, x * place);
        }
    }
}

static double above_half(double log_fourier, const void *context) {
    const cooling *c = context;
    double sum = 0, fourier = exp(log_fourier);
    for (int k = 0; k < TERMS; k++)
        sum += c->size[k] * exp(-c->root[k] * c->root[k] * fourier);
    return sum - 0.5;
}

double hs_half_time(hs_quenched_shape shape, double biot, double place) {
    const eigen e = {shape, biot};
    cooling c;
    double log_fourier = 0;
    if (!(biot > 0 && place >= 0 && place <= 1)) return NAN;
    if (isinf(biot) && place == 1) return 0;
    prepare(&c, &e, place);
    /* Below 5e-3 the terms kept do not carry the series; so early it is as good as at once. */
    double low = log(5e-3), high = log(10 + 10 / biot);
    if (above_half(low, &c) <= 0) return 0;
    return hs_root(&log_fourier, above_half, &c, low, high, 1e-10) == HS_OK ? exp(log_fourier)
                                                                            : NAN;
}

double hs_ideal_diameter_needed(const hs_quenched *q, double place) {
    if (!(q->size_m > 0 && q->severity_1_m > 0)) return NAN;
    double ideal = hs_half_time(HS_QUENCHED_ROUND, INFINITY, 0);
    double here = hs_half_time(q->shape, q->severity_1_m * q->size_m, place);
    return q->size_m * sqrt(here / ideal);
}
