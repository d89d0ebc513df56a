#include "model/carbon_clock.h"

#include "constants.h"

#include <math.h>

/* A ramp is cut into parts of at most this many kelvin; over 10 K the diffusivity changes by about
 * a fifth, and two Gauss points integrate it to 1e-6. */
static const double PART_K = 10;

/* The hot share of a segment: from..to as shares of its length. Returns 0 when there is none. */
static int hot_share(double *from, double *to, const hs_carbon_clock *clock, size_t segment) {
    double T0 = clock->heat->point[segment].temp_K, T1 = clock->heat->point[segment + 1].temp_K;
    *from = 0;
    *to = 1;
    if (T0 < clock->cold_K && T1 < clock->cold_K) return 0;
    if (T0 < clock->cold_K) *from = (clock->cold_K - T0) / (T1 - T0);
    if (T1 < clock->cold_K) *to = (clock->cold_K - T0) / (T1 - T0);
    return 1;
}

static int parts_of(const hs_carbon_clock *clock, double from, double to, size_t segment) {
    double span = clock->heat->point[segment + 1].temp_K - clock->heat->point[segment].temp_K;
    return 1 + (int)fmin(1000, fabs(span * (to - from)) / PART_K);
}

/* Load one part; returns 0 when the segment has no such part. */
static int load(hs_carbon_clock *clock, size_t segment, int part) {
    double from, to;
    if (!hot_share(&from, &to, clock, segment)) return 0;
    int parts = parts_of(clock, from, to, segment);
    if (part >= parts) return 0;
    const hs_heat_point *p = &clock->heat->point[segment];
    double a = from + (to - from) * part / parts, b = from + (to - from) * (part + 1) / parts;
    double span = p[1].temp_K - p[0].temp_K, seconds = (b - a) * (p[1].time_s - p[0].time_s);
    clock->temp0_K = p[0].temp_K + a * span;
    clock->temp1_K = p[0].temp_K + b * span;
    clock->D0 = hs_diffusivity_value(clock->d, clock->carbon_pct, clock->temp0_K);
    clock->D1 = hs_diffusivity_value(clock->d, clock->carbon_pct, clock->temp1_K);
    double middle = 0.5 * (clock->temp0_K + clock->temp1_K);
    double reach = 0.5 * (clock->temp1_K - clock->temp0_K) / sqrt(3);
    clock->width_m2 = seconds * 0.5 *
                      (hs_diffusivity_value(clock->d, clock->carbon_pct, middle - reach) +
                       hs_diffusivity_value(clock->d, clock->carbon_pct, middle + reach));
    return 1;
}

/* Step to the next part that is worth something; 0 at the end of the heat. */
static int next(hs_carbon_clock *clock) {
    clock->start_m2 += clock->width_m2;
    clock->width_m2 = 0;
    clock->part++;
    while (clock->segment + 1 < clock->heat->n) {
        if (load(clock, clock->segment, clock->part)) return 1;
        clock->segment++;
        clock->part = 0;
    }
    return 0;
}

void hs_carbon_clock_start(hs_carbon_clock *clock, const hs_heat *heat, const hs_diffusivity *d,
                           double carbon_pct) {
    *clock = (hs_carbon_clock){.heat = heat, .d = d, .carbon_pct = carbon_pct, .part = -1};
    int anywhere = d->model == HS_D_CONSTANT && !heat->cap_at_acm;
    clock->cold_K = anywhere ? -INFINITY : HS_K_AUSTENITE_COLD;
    clock->temp0_K = clock->temp1_K = heat->point[0].temp_K;
    next(clock);
}

double hs_carbon_clock_temp(hs_carbon_clock *clock, double spread_m2) {
    while (spread_m2 > clock->start_m2 + clock->width_m2 && next(clock))
        continue;
    if (!(clock->width_m2 > 0)) return clock->temp1_K;
    double share = fmin(1, fmax(0, (spread_m2 - clock->start_m2) / clock->width_m2));
    /* Share of the part's time, the diffusivity being straight between its ends. */
    double rise = clock->D1 - clock->D0, mean = 0.5 * (clock->D0 + clock->D1);
    double root = sqrt(clock->D0 * clock->D0 + 2 * rise * mean * share);
    double gone = fmin(1, 2 * mean * share / (clock->D0 + root));
    return clock->temp0_K + gone * (clock->temp1_K - clock->temp0_K);
}

double hs_carbon_spread(const hs_heat *heat, const hs_diffusivity *d, double carbon_pct) {
    hs_carbon_clock clock;
    hs_carbon_clock_start(&clock, heat, d, carbon_pct);
    while (next(&clock))
        continue;
    return clock.start_m2;
}

double hs_carbon_reach(const hs_heat *heat, size_t heats, const hs_diffusivity *d,
                       double carbon_high_pct) {
    double sum = 0;
    for (size_t i = 0; i < heats; i++)
        sum += hs_carbon_spread(&heat[i], d, carbon_high_pct);
    return 6 * sqrt(sum);
}

double hs_carbon_cold_K(void) {
    return HS_K_AUSTENITE_COLD;
}
