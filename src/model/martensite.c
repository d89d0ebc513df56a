#include "hardskin/model/martensite.h"

#include "constants.h"
#include "model/e140.h"

#include <math.h>

static const hs_composition PLAIN; /* Fe-C */

double hs_ms_K(const hs_composition *s, double carbon_pct) {
    return HS_K_MARTENSITE_MS_BASE - HS_K_MARTENSITE_MS_MN * s->Mn - HS_K_MARTENSITE_MS_SI * s->Si -
           HS_K_MARTENSITE_MS_CR * s->Cr - HS_K_MARTENSITE_MS_NI * s->Ni -
           HS_K_MARTENSITE_MS_MO * s->Mo -
           HS_K_MARTENSITE_MS_CARBON * (1 - exp(-HS_K_MARTENSITE_MS_CARBON_RATE * carbon_pct));
}

double hs_ms_andrews_K(const hs_composition *s, double carbon_pct) {
    return HS_K_MARTENSITE_ANDREWS_BASE - HS_K_MARTENSITE_ANDREWS_C * carbon_pct -
           HS_K_MARTENSITE_ANDREWS_MN * s->Mn - HS_K_MARTENSITE_ANDREWS_NI * s->Ni -
           HS_K_MARTENSITE_ANDREWS_CR * s->Cr - HS_K_MARTENSITE_ANDREWS_MO * s->Mo;
}

double hs_alpha(const hs_composition *s, double carbon_pct) {
    return HS_K_MARTENSITE_ALPHA_BASE - HS_K_MARTENSITE_ALPHA_MN * s->Mn -
           HS_K_MARTENSITE_ALPHA_SI * s->Si - HS_K_MARTENSITE_ALPHA_CR * s->Cr -
           HS_K_MARTENSITE_ALPHA_NI * s->Ni - HS_K_MARTENSITE_ALPHA_MO * s->Mo -
           HS_K_MARTENSITE_ALPHA_CARBON *
               (1 - exp(-HS_K_MARTENSITE_ALPHA_CARBON_RATE * carbon_pct));
}

double hs_alpha_usual(void) {
    return HS_K_MARTENSITE_ALPHA;
}

double hs_retained_austenite(double ms_K, double alpha, double quench_to_K) {
    return quench_to_K >= ms_K ? 1 : exp(-alpha * (ms_K - quench_to_K));
}

/* The polynomial of A255, inside its range. */
static double a255(double c) {
    return HS_K_MARTENSITE_A255_0 +
           c * (HS_K_MARTENSITE_A255_1 +
                c * (HS_K_MARTENSITE_A255_2 +
                     c * (HS_K_MARTENSITE_A255_3 +
                          c * (HS_K_MARTENSITE_A255_4 + c * HS_K_MARTENSITE_A255_5))));
}

double hs_a255_HRC(double carbon_pct) {
    if (!(carbon_pct >= HS_K_MARTENSITE_A255_LOW && carbon_pct <= HS_K_MARTENSITE_A255_HIGH))
        return NAN;
    return a255(carbon_pct);
}

/* A255 is measured with its retained austenite in it: taken out here, so that the austenite of
 * another steel or quench can be put in. */
static double without_austenite(double carbon_pct) {
    double austenite = hs_retained_austenite(hs_ms_K(&PLAIN, carbon_pct), HS_K_MARTENSITE_ALPHA,
                                             HS_K_MARTENSITE_A255_QUENCHED_TO);
    double as_quenched_HV = hs_e140_HV(a255(carbon_pct));
    return (as_quenched_HV - austenite * HS_K_MARTENSITE_AUSTENITE_HV) / (1 - austenite);
}

static double between(double x, double x0, double y0, double x1, double y1) {
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}

double hs_martensite_HV(double carbon_pct) {
    double c = carbon_pct, end = HS_K_MARTENSITE_A255_HIGH;
    if (!(c >= HS_K_MARTENSITE_A255_LOW)) return NAN;
    if (c <= end) return without_austenite(c);
    if (c <= HS_K_MARTENSITE_HIGH_MID_C)
        return between(c, end, without_austenite(end), HS_K_MARTENSITE_HIGH_MID_C,
                       HS_K_MARTENSITE_HIGH_MID_HV);
    if (c < HS_K_MARTENSITE_HIGH_C)
        return between(c, HS_K_MARTENSITE_HIGH_MID_C, HS_K_MARTENSITE_HIGH_MID_HV,
                       HS_K_MARTENSITE_HIGH_C, HS_K_MARTENSITE_HIGH_HV);
    return HS_K_MARTENSITE_HIGH_HV;
}

double hs_lath_martensite_HV(double carbon_pct) {
    double end = HS_K_MARTENSITE_A255_LOW;
    if (!(carbon_pct >= HS_K_MARTENSITE_LATH_LOW && carbon_pct <= HS_K_MARTENSITE_A255_HIGH))
        return NAN;
    if (carbon_pct >= end) return without_austenite(carbon_pct);
    return without_austenite(end) - HS_K_MARTENSITE_LATH_SLOPE * (end - carbon_pct);
}
