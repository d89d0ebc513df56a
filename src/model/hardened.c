#include "hardskin/model/austenite.h"
#include "hardskin/model/martensite.h"
#include "hardskin/model/structure.h"

#include "base/num.h"
#include "constants.h"
#include "model/e140.h"

#include <math.h>

/* What does not depend on the carbon, worked out once for a search. */
typedef struct ready {
    const hs_hardening *h;
    double most_pct; /* carbon the austenite can hold */
    double one_hour_K;
    double limit_HV;
} ready;

static ready prepare(const hs_hardening *h) {
    ready r = {.h = h, .most_pct = INFINITY};
    if (h->dissolve_K > 0) r.most_pct = hs_acm_pct(h->dissolve_K);
    r.one_hour_K = hs_temper_equivalent_K(h->temper, h->tempers);
    return r;
}

/* Hardness after a temper: less by the drop, in HRC, where the tables count it. */
static double tempered(const ready *r, double martensite_HV, double carbon_pct) {
    if (r->one_hour_K == 0) return martensite_HV;
    double drop = hs_temper_drop_HRC(r->one_hour_K, carbon_pct);
    if (drop == 0) return martensite_HV;
    return hs_e140_HV(hs_e140_HRC(martensite_HV) - drop);
}

/* A doubt in HRC turned into HV by the local slope of E140, so that it may leave the table. */
static double shifted(double hardness_HV, double shift_HRC) {
    if (shift_HRC == 0) return hardness_HV;
    double hrc = hs_e140_HRC(hardness_HV);
    double centre = isnan(hrc) ? 20.5 : fmin(67.5, fmax(20.5, hrc));
    double slope = hs_e140_HV(centre + 0.5) - hs_e140_HV(centre - 0.5);
    return hardness_HV + shift_HRC * slope;
}

static double martensite_HV(double carbon_pct) {
    return carbon_pct < HS_K_MARTENSITE_A255_LOW ? hs_lath_martensite_HV(carbon_pct)
                                                 : hs_martensite_HV(carbon_pct);
}

static double hardness(const ready *r, double carbon_pct, double *retained, double rate_K_s) {
    const hs_hardening *h = r->h;
    if (isnan(r->most_pct)) return NAN;
    double dissolved = fmin(carbon_pct, r->most_pct), soft_HV = 0;
    hs_structure found = {1, 0, 0};
    if (rate_K_s > 0) {
        found = hs_structure_of(&h->steel, dissolved, h->dissolve_K, rate_K_s);
        soft_HV = hs_soft_part_HV(&found, &h->steel, dissolved, rate_K_s);
    }
    double austenite = hs_retained_austenite(hs_ms_K(&h->steel, dissolved) + h->ms_shift_K,
                                             HS_K_MARTENSITE_ALPHA, h->quench_to_K);
    double martensite = tempered(r, martensite_HV(dissolved), dissolved);
    double mixed = (1 - austenite) * martensite + austenite * HS_K_MARTENSITE_AUSTENITE_HV;
    if (retained) *retained = austenite * found.martensite;
    return shifted(found.martensite * mixed + soft_HV, h->hardness_shift_HRC);
}

double hs_hardened_HV(const hs_hardening *h, double carbon_pct, double *retained) {
    ready r = prepare(h);
    if (!(carbon_pct >= HS_K_MARTENSITE_A255_LOW)) return NAN;
    return hardness(&r, carbon_pct, retained, h->rate_K_s);
}

void hs_hardened_many(double *hardness_HV, const double *carbon_pct, size_t n,
                      const hs_hardening *h) {
    ready r = prepare(h);
    for (size_t i = 0; i < n; i++)
        hardness_HV[i] =
            hardness(&r, fmax(carbon_pct[i], HS_K_MARTENSITE_LATH_LOW), NULL, h->rate_K_s);
}

void hs_hardened_at_rates(double *hardness_HV, const double *carbon_pct, const double *rate_K_s,
                          size_t n, const hs_hardening *h) {
    ready r = prepare(h);
    for (size_t i = 0; i < n; i++)
        hardness_HV[i] =
            hardness(&r, fmax(carbon_pct[i], HS_K_MARTENSITE_LATH_LOW), NULL, rate_K_s[i]);
}

static double miss(double carbon_pct, const void *context) {
    const ready *r = context;
    return hardness(r, carbon_pct, NULL, r->h->rate_K_s) - r->limit_HV;
}

/* The hardness has one peak between .7 and .9 %C, also where it is mixed: the share of martensite
 * rises with the carbon. The steps climb to the limit before it. */
double hs_hardened_carbon(const hs_hardening *h, double limit_HV) {
    static const double STEP = 0.08;
    ready r = prepare(h);
    r.limit_HV = limit_HV;
    double low = HS_K_MARTENSITE_A255_LOW;
    if (!(miss(low, &r) < 0)) return NAN;
    for (double high = low + STEP; high < HS_K_MARTENSITE_HIGH_C + STEP; high += STEP) {
        double carbon = 0;
        if (miss(high, &r) < 0) {
            low = high;
            continue;
        }
        return hs_root(&carbon, miss, &r, low, high, 1e-8) == HS_OK ? carbon : NAN;
    }
    return NAN;
}

hs_status hs_hardening_check(const hs_hardening *h, hs_error *err) {
    if (h->dissolve_K > 0 && isnan(hs_acm_pct(h->dissolve_K)))
        return hs_fail(err, HS_E_RANGE, "740 to 1050 C",
                       "no A_cm line is known at %g C, the heat before the quench",
                       h->dissolve_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    if (h->rate_K_s > 0 && !(h->dissolve_K > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "a rate of cooling without a heat to cool from");
    if (!(h->quench_to_K > 0 && isfinite(h->quench_to_K)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "20 C is usual", "a quench to %g K", h->quench_to_K);
    return hs_temper_check(h->temper, h->tempers, err);
}

double hs_hardened_HRC(double hardness_HV) {
    return hs_e140_HRC(hardness_HV);
}
