#include "hardskin/model/hardenability_doubt.h"

#include "constants.h"

#include <math.h>

enum { ELEMENTS = 8 }; /* those with a factor of hardenability, and carbon */

static double *element(hs_composition *s, size_t k) {
    double *all[ELEMENTS] = {&s->C, &s->Mn, &s->Si, &s->Cr, &s->Ni, &s->Mo, &s->Cu, &s->V};
    return all[k];
}

/* The middle analysis with one element at an end of its range. */
static hs_composition moved(const hs_steel *steel, size_t k, int high) {
    hs_composition out = steel->mid, end = high ? steel->high : steel->low;
    *element(&out, k) = *element(&end, k);
    return out;
}

/* Moves to either side, kept as sums of squares. */
typedef struct sides {
    double down, up;
} sides;

static void add(sides *s, double move) {
    if (move < 0) s->down += move * move;
    if (move > 0) s->up += move * move;
}

/* What is asked of both ways when only the steel changes: the quench cancels. */
static hs_status log_hardenability(double *log_margin, const hs_composition *s, double from_K,
                                   hs_error *err) {
    const double carbon_pct = HS_K_HARDENABILITY_CASE_CARBON;
    double di_m = 0;
    hs_status status = hs_ideal_diameter(&di_m, NULL, s, carbon_pct, err);
    if (status != HS_OK) return status;
    *log_margin = 0.5 * log(di_m) - 0.25 * log(hs_rate_for_martensite(s, carbon_pct, from_K));
    return HS_OK;
}

hs_status hs_case_margin_band(hs_band *margin, const hs_steel *steel, const hs_quench_range *quench,
                              double from_K, hs_error *err) {
    double mid = 0, low = 0, high = 0, spread = 0, here = 0, there = 0;
    hs_status status = hs_case_hardens(&mid, &spread, &steel->mid, &quench->mid, from_K, err);
    if (status == HS_OK)
        status = hs_case_hardens(&low, NULL, &steel->mid, &quench->low, from_K, err);
    if (status == HS_OK)
        status = hs_case_hardens(&high, NULL, &steel->mid, &quench->high, from_K, err);
    if (status == HS_OK) status = log_hardenability(&here, &steel->mid, from_K, err);
    if (status != HS_OK) return status;
    double own = hypot(log(1 + HS_K_HARDENABILITY_MARGIN_DOUBT), spread);
    sides s = {own * own, own * own};
    add(&s, log(low / mid));
    add(&s, log(high / mid));
    for (size_t k = 1; k < ELEMENTS; k++)
        for (int end = 0; end < 2; end++) {
            hs_composition other = moved(steel, k, end);
            status = log_hardenability(&there, &other, from_K, err);
            if (status != HS_OK) return status;
            add(&s, there - here);
        }
    *margin = (hs_band){mid * exp(-sqrt(s.down)), mid, mid * exp(sqrt(s.up))};
    return HS_OK;
}

hs_status hs_rate_doubt(double *ln_bound, const hs_steel *steel, const hs_quench_range *quench,
                        double carbon_pct, double from_K, hs_error *err) {
    static const double surface = 1;
    double low = 0, high = 0, own = log(HS_K_HARDENABILITY_RATE_DOUBT);
    hs_quench_rates(&low, &surface, 1, &quench->low, from_K);
    hs_quench_rates(&high, &surface, 1, &quench->high, from_K);
    if (!(low > 0 && isfinite(high)))
        return hs_fail(err, HS_E_RANGE, "above 700 C", "no quench hardens from %g K", from_K);
    double half = 0.5 * log(high / low), sum = own * own + half * half;
    for (size_t k = 1; k < ELEMENTS; k++) {
        hs_composition lean = moved(steel, k, 0), rich = moved(steel, k, 1);
        half = 0.5 * log(hs_rate_for_martensite(&lean, carbon_pct, from_K) /
                         hs_rate_for_martensite(&rich, carbon_pct, from_K));
        sum += half * half;
    }
    *ln_bound = sqrt(sum);
    return HS_OK;
}

hs_status hs_core_band(hs_band *hardness_HV, hs_structure *structure, const hs_steel *steel,
                       const hs_quench_range *quench, double from_K, hs_error *err) {
    static const double centre = 0;
    const hs_quenched *at[3] = {&quench->low, &quench->mid, &quench->high};
    const hs_composition *mid_steel = &steel->mid;
    double rate[3], mid = 0, there = 0, own = HS_K_HARDENABILITY_CORE_DOUBT;
    for (size_t i = 0; i < 3; i++)
        hs_quench_rates(&rate[i], &centre, 1, at[i], from_K);
    hs_status status =
        hs_core_at_rate(&mid, structure, mid_steel, mid_steel->C, rate[1], from_K, err);
    sides s = {own * own, own * own};
    for (size_t i = 0; status == HS_OK && i < 3; i += 2) {
        status = hs_core_at_rate(&there, NULL, mid_steel, mid_steel->C, rate[i], from_K, err);
        add(&s, there - mid);
    }
    for (size_t k = 0; status == HS_OK && k < 2 * ELEMENTS; k++) {
        hs_composition other = moved(steel, k / 2, (int)(k % 2));
        double carbon_pct = fmax(other.C, HS_K_MARTENSITE_LATH_LOW);
        status = hs_core_at_rate(&there, NULL, &other, carbon_pct, rate[1], from_K, err);
        add(&s, there - mid);
    }
    if (status != HS_OK) return status;
    *hardness_HV = (hs_band){mid - sqrt(s.down), mid, mid + sqrt(s.up)};
    return HS_OK;
}
