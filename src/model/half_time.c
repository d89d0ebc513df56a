/* Grossmann, Asimow and Urban: two rounds harden alike where they reach the half temperature at the
 * same time. The times come from the series for a plate and a long cylinder (Carslaw and Jaeger,
 * Conduction of Heat in Solids, 2nd ed., 3.11 and 7.7); Biot number H times size. */
#include "hardskin/model/diffusion.h"
#include "hardskin/model/hardenability.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

enum { TERMS = 24 };
static const double PI = 3.14159265358979324;

/* hs_half_time of a round's centre in an ideal quench; the test works it out again. */
static const double IDEAL_ROUND = 0.20052408;

/* Bessel functions J0 and J1 by Bessel's integral over a quarter turn; the rule of midpoints on it
 * gains all digits once four times its points exceed the argument by some fifteen. */
static void bessel(double *j0, double *j1, double x) {
    int points = (int)(x / 4) + 8;
    double even = 0, odd = 0;
    for (int i = 0; i < points; i++) {
        double s = sin(0.5 * PI * (i + 0.5) / points);
        even += cos(x * s);
        odd += s * sin(x * s);
    }
    *j0 = even / points;
    *j1 = odd / points;
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
    double j0, j1;
    bessel(&j0, &j1, x);
    return surface * j0 - inside * x * j1;
}

typedef struct cooling {
    double root[TERMS], size[TERMS];
} cooling;

/* Far out J0 and J1 are cosine and sine of x - pi/4, which gives a place from where Newton has all
 * digits in three steps. */
static double round_far_out(const eigen *e, int k) {
    double biot = e->biot, x = (k + 0.5) * PI;
    for (int i = 0; i < 3; i++)
        x = k * PI + 0.25 * PI + (isinf(biot) ? 0.5 * PI : atan(biot / x));
    for (int i = 0; i < 3; i++) {
        double j0, j1;
        bessel(&j0, &j1, x);
        double surface = isinf(biot) ? 1 : biot / (1 + biot);
        double inside = isinf(biot) ? 0 : 1 / (1 + biot);
        x += (surface * j0 - inside * x * j1) / (surface * j1 + inside * x * j0);
    }
    return x;
}

/* Eigenvalue k lies between the zeros of the flux (sin, J1) and of the value (cos, J0). */
static double eigenvalue(const eigen *e, int k) {
    double low = k * PI, high = (k + 0.6) * PI, root = 0;
    if (e->shape == HS_QUENCHED_ROUND && k >= 2) return round_far_out(e, k);
    if (e->shape == HS_QUENCHED_ROUND) {
        low = k ? (k + 0.2) * PI : 0;
        high = (k + 0.8) * PI;
    }
    return hs_root(&root, eigen_miss, e, low, high, 1e-12) == HS_OK ? root : NAN;
}

static void find_roots(cooling *c, const eigen *e) {
    for (int k = 0; k < TERMS; k++)
        c->root[k] = eigenvalue(e, k);
}

static void find_sizes(cooling *c, const eigen *e, double place) {
    for (int k = 0; k < TERMS; k++) {
        double x = c->root[k];
        if (e->shape == HS_QUENCHED_PLATE) {
            c->size[k] = 2 * sin(x) / (x + sin(x) * cos(x)) * cos(x * place);
        } else {
            double j0, j1, there, unused;
            bessel(&j0, &j1, x);
            bessel(&there, &unused, x * place);
            c->size[k] = 2 * j1 / (x * (j0 * j0 + j1 * j1)) * there;
        }
    }
}

/* Below this Fourier number the terms kept do not carry the series, and no heat has come from the
 * far side yet: a half-space with the same surface coefficient. */
static const double EARLY = 1.2e-3;

/* What a search needs to know. */
typedef struct search {
    cooling series;
    double depth, biot; /* in units of R */
    double left;        /* share of the way to the bath still to go, 1 at the start */
} search;

static double series_left(const search *s, double fourier) {
    const cooling *c = &s->series;
    double sum = 0;
    for (int k = 0; k < TERMS; k++)
        sum += c->size[k] * exp(-c->root[k] * c->root[k] * fourier);
    return sum;
}

static double half_space_left(const search *s, double fourier) {
    double root = sqrt(fourier), z = s->depth / (2 * root), lost = erfc(z);
    if (!isinf(s->biot)) lost -= exp(-z * z) * hs_scaled_erfc(z + s->biot * root);
    return 1 - lost;
}

static double series_above(double log_fourier, const void *context) {
    const search *s = context;
    return series_left(s, exp(log_fourier)) - s->left;
}

static double half_space_above(double log_fourier, const void *context) {
    const search *s = context;
    return half_space_left(s, exp(log_fourier)) - s->left;
}

/* Fourier number at which `left` is left at a place, and whether the half-space is what gave it. */
static double fall_time(search *s, int *early, const eigen *e, double place) {
    double found = 0, first = log(EARLY), last = log((10 + 10 / s->biot) / s->left);
    s->depth = 1 - place;
    find_sizes(&s->series, e, place);
    *early = series_above(first, s) <= 0;
    /* a round has less steel behind its surface than a half-space, which is a little late */
    if (*early && half_space_above(first, s) > 0) return EARLY;
    hs_status status = *early ? hs_root(&found, half_space_above, s, log(1e-12), first, 1e-10)
                              : hs_root(&found, series_above, s, first, last, 1e-10);
    return status == HS_OK ? exp(found) : NAN;
}

double hs_half_time(hs_quenched_shape shape, double biot, double place) {
    const eigen e = {shape, biot};
    search s = {.biot = biot, .left = 0.5};
    int early = 0;
    if (!(biot > 0 && place >= 0 && place <= 1)) return NAN;
    if (isinf(biot) && place == 1) return 0;
    find_roots(&s.series, &e);
    return fall_time(&s, &early, &e, place);
}

double hs_ideal_diameter_needed(const hs_quenched *q, double place) {
    if (!(q->size_m > 0 && q->severity_1_m > 0)) return NAN;
    double here = hs_half_time(q->shape, q->severity_1_m * q->size_m, place);
    return q->size_m * sqrt(here / IDEAL_ROUND);
}

/* Fall per Fourier number, 1 for the whole way, when `left` is left. */
static double slope_there(search *s, const eigen *e, double place) {
    const double step = 1e-3;
    int early = 0;
    double fourier = fall_time(s, &early, e, place);
    double sooner = fourier * (1 - step), later = fourier * (1 + step);
    double fall = early ? half_space_left(s, sooner) - half_space_left(s, later)
                        : series_left(s, sooner) - series_left(s, later);
    return fall / (later - sooner);
}

void hs_quench_rates(double *rate_K_s, const double *place, size_t n, const hs_quenched *q,
                     double from_K) {
    double bath_K = HS_K_HARDENABILITY_BATH_TEMP, at_K = HS_K_HARDENABILITY_RATE_TEMP;
    double half = 0.5 * q->size_m;
    const eigen e = {q->shape, q->severity_1_m * q->size_m};
    int good = q->size_m > 0 && q->severity_1_m > 0 && from_K > at_K;
    search s = {.biot = e.biot, .left = (at_K - bath_K) / (from_K - bath_K)};
    double unit = HS_K_HARDENABILITY_AUSTENITE_DIFFUSIVITY / (half * half) * (from_K - bath_K);
    if (good) find_roots(&s.series, &e);
    for (size_t i = 0; i < n; i++) {
        if (!good || !(place[i] >= 0 && place[i] <= 1))
            rate_K_s[i] = NAN;
        else if (isinf(e.biot) && place[i] == 1)
            rate_K_s[i] = INFINITY;
        else
            rate_K_s[i] = unit * slope_there(&s, &e, place[i]);
    }
}
