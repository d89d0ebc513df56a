#include "hardskin/model/quench_bow.h"

#include "base/num.h"
#include "base/random.h"
#include "constants.h"
#include "hardskin/model/growth.h"

#include <math.h>

static const double PI = 3.14159265358979323846, BOUND_95 = 1.959963984540054;
static const uint64_t SEED = 1;

static double uniform(double z) {
    return 0.5 * erfc(-z / sqrt(2.0));
}

typedef struct place {
    double uneven, film_log, plasticity_1_Pa;
    double soft; /* factor: where a soft core changes is not known */
} place;

static place drawn(const hs_bow_surface *s, double uneven, const double z[HS_BOW_INPUTS]) {
    double low = s->plasticity_1_Pa[0], high = s->plasticity_1_Pa[s->plasticities - 1];
    return (place){.uneven =
                       s->uneven > 0 ? uneven / s->uneven * fabs(z[HS_BOW_UNEVEN]) / BOUND_95 : 0,
                   .film_log = log(HS_K_QUENCH_CHANGE_FILM_FACTOR) * z[HS_BOW_FILM] / BOUND_95,
                   .plasticity_1_Pa = low + (high - low) * uniform(z[HS_BOW_PLASTICITY]),
                   .soft = 1 + HS_K_QUENCH_CHANGE_DOUBT_SOFT * s->soft * z[HS_BOW_SOFT]};
}

/* Of the model, one standard deviation (1/m): none where nothing bends on the way. */
static double doubt_at(const hs_bow_surface *s, const place *at) {
    return s->doubt_share * hs_bow_peak_at(s, at->uneven, at->film_log, at->plasticity_1_Pa);
}

void hs_bow_curvatures(double *kappa_x, double *kappa_y, const hs_bow_surface *s, double uneven,
                       const double z[HS_BOW_INPUTS]) {
    double side = floor(fmin(7, 8 * uniform(z[HS_BOW_SIDE]))) * PI / 4;
    place at = drawn(s, uneven, z);
    hs_bow_surface_at(kappa_x, kappa_y, s, at.uneven, side, at.film_log, at.plasticity_1_Pa);
    double doubt = doubt_at(s, &at);
    double first = doubt * z[HS_BOW_MODEL_X], second = doubt * z[HS_BOW_MODEL_Y];
    *kappa_x = at.soft * *kappa_x + first * s->axis_y[0] + second * s->axis_y[2];
    *kappa_y = at.soft * *kappa_y + first * s->axis_x[0] + second * s->axis_x[2];
}

double hs_bow_swing(const hs_bow_surface *s, double uneven, const double z[HS_BOW_INPUTS]) {
    double one[2], other[2];
    place at = drawn(s, uneven, z);
    hs_bow_surface_at(&one[0], &one[1], s, at.uneven, PI / 2, at.film_log, at.plasticity_1_Pa);
    hs_bow_surface_at(&other[0], &other[1], s, at.uneven, -PI / 2, at.film_log, at.plasticity_1_Pa);
    double along[2] = {s->axis_y[2], s->axis_x[2]};
    double swing = 0.5 * ((one[0] - other[0]) * along[0] + (one[1] - other[1]) * along[1]);
    place even = at;
    even.uneven = 0; /* what an even quench does is the same on both sides */
    return at.soft * swing + (doubt_at(s, &at) - doubt_at(s, &even)) * z[HS_BOW_MODEL_Y];
}

static void one(double *x_m, double *y_m, const hs_bow_surface *s, double length_m, uint32_t i) {
    double z[HS_BOW_INPUTS], kappa_x, kappa_y, lever = length_m * length_m / 8;
    for (uint32_t k = 0; k < HS_BOW_INPUTS; k++)
        z[k] = hs_random_normal(SEED, i, k);
    hs_bow_curvatures(&kappa_x, &kappa_y, s, s->uneven, z);
    *y_m = lever * kappa_x;
    *x_m = lever * kappa_y;
}

static double quantile(const hs_bow_surface *s, double length_m, double *column, int what,
                       double q) {
    for (uint32_t i = 0; i < HS_BOW_DRAWS; i++) {
        double x, y;
        one(&x, &y, s, length_m, i);
        column[i] = what == 0 ? hypot(x, y) : what == 1 ? fabs(x) : fabs(y);
    }
    return hs_quantile_of(column, HS_BOW_DRAWS, q);
}

void hs_bow_draw(hs_bow_envelope *out, const hs_bow_surface *s, double length_m, double *column) {
    out->bow_m = quantile(s, length_m, column, 0, 0.5);
    out->low_m = hs_quantile_of(column, HS_BOW_DRAWS, 0.05);
    out->high_m = hs_quantile_of(column, HS_BOW_DRAWS, 0.95);
    out->x_m = quantile(s, length_m, column, 1, 0.5);
    out->y_m = quantile(s, length_m, column, 2, 0.5);
}

double hs_bow_growth(const hs_bow_work *w) {
    double sum = 0, area = 0, room_K = HS_K_PHYSICAL_ZERO_CELSIUS + 20;
    for (size_t f = 0; f < w->mesh.fibres; f++) {
        const hs_quench_point *p = &w->fibre[f];
        double left = p->ms_K > room_K ? exp(-p->alpha_1_K * (p->ms_K - room_K)) : 1, volume;
        hs_growth_layer layer = {.area_m2 = 1,
                                 .dissolved_pct = p->carbon_pct,
                                 .austenite_pct = 100 * p->share * left,
                                 .soft_pct = 100 * (1 - p->share)};
        if (hs_growth_volume(&volume, &layer, NULL) != HS_OK) return NAN;
        sum += w->mesh.fibre[f].area_m2 * volume / 300;
        area += w->mesh.fibre[f].area_m2;
    }
    return sum / area;
}
