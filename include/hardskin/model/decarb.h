/* Carbon lost from a hot surface in open air: the soft rim under the scale. */
#ifndef HARDSKIN_MODEL_DECARB_H
#define HARDSKIN_MODEL_DECARB_H

#include "hardskin/base/status.h"

/** Depths from the new surface, scale gone (m). */
typedef struct hs_decarb_result {
    double rim_m;      /* free ferrite, nominal; 0 from 910 C up */
    double rim_high_m; /* its upper bound */
    double depth50_m;  /* to half the carbon there was */
    double depth90_m;  /* to nine tenths */
    double lost_m;     /* metal lost as scale meanwhile */
} hs_decarb_result;

/** Soft rim and decarburised depth of one heat at one temperature.
 *
 *  From 910 C up: austenite with a moving surface at zero carbon. Below: a ferrite rim grows into
 *  the austenite, its thickness from the balance of carbon at the boundary; nominal = .6 of that
 *  bound; where scale eats in faster than it grows, the surface moves with the scale. Where
 *  the oxygen that reaches the steel (atmosphere < 1) is less than what the carbon needs to leave
 *  as CO, all depths shrink in proportion (judgement); atmosphere 0 leaves 0.
 *
 *    out         hs_decarb_result  out
 *    temp_K      double            in  1033.15 to 1473.15 K (760 to 1200 C)
 *    hold_s      double            in  >= 0
 *    carbon_pct  double            in  carbon before, at the surface, > 0 to 2.2 wt %
 *    kp_factor   double            in  on the scaling constant: 1 nominal, .5 to 2 the band
 *    atmosphere  double            in  on the oxygen uptake: 1 open air, 0 sealed
 *
 *  Returns  HS_OK; HS_E_RANGE for the temperature, or a carbon so low that the steel is all
 *           ferrite there; HS_E_IMPOSSIBLE for the other inputs.
 *  Source   Birks and Jackson 1970 (tables/decarb.csv, decarb_limits.csv), from memory */
HS_API hs_status hs_decarb(hs_decarb_result *out, double temp_K, double hold_s, double carbon_pct,
                           double kp_factor, double atmosphere, hs_error *err);

/** Diffusivity of carbon in low-carbon austenite used there (m2/s). */
HS_API double hs_decarb_diffusivity(double temp_K);

/** The constant lambda of the ferrite rim, rim = 2 lambda sqrt(D_ferrite t).
 *    lambda      double  out
 *    temp_K      double  in   1033.15 to 1183.15 K (760 to 910 C)
 *    carbon_pct  double  in   carbon before, wt %
 *  Returns as hs_decarb. */
HS_API hs_status hs_decarb_lambda(double *lambda, double temp_K, double carbon_pct, hs_error *err);

#endif
