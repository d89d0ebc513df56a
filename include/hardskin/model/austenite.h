/* Austenite: how fast carbon moves in it, how much it holds, and where it begins. */
#ifndef HARDSKIN_MODEL_AUSTENITE_H
#define HARDSKIN_MODEL_AUSTENITE_H

#include "hardskin/base/status.h"
#include "hardskin/tables/steel.h"

typedef enum hs_diffusivity_model {
    HS_D_AGREN,    /* Fe-C; the default */
    HS_D_TIBBETTS, /* Fe-C */
    HS_D_LEE,      /* low-alloy steel, opt-in */
    HS_D_CONSTANT  /* textbook problems */
} hs_diffusivity_model;

/** Which diffusivity, and with what. Zeroed, with factor 1: plain Fe-C after Agren. */
typedef struct hs_diffusivity {
    hs_diffusivity_model model;
    double D0_m2_s, Q_J_mol; /* HS_D_CONSTANT only; Q 0: D0 is the diffusivity itself */
    hs_composition steel;    /* HS_D_LEE only */
    double factor;           /* multiplies D; 1 unless the doubt is sampled */
} hs_diffusivity;

/** Is the model known to hold over these carbons (0 to carbon_high_pct) and temperatures?
 *
 *  Agren 727 to 1150 C; Tibbetts 850 to 1100 C and C < 1.3 %; Lee 850 to 1100 C; constant: any
 *  temperature above 0 K.
 *  Returns  HS_OK; HS_E_RANGE outside; HS_E_IMPOSSIBLE for a factor, D0 or Q that is no
 * diffusivity. Source   tables/diffusivity_limits.csv */
HS_API hs_status hs_diffusivity_check(const hs_diffusivity *d, double carbon_high_pct,
                                      double temp_low_K, double temp_high_K, hs_error *err);

/** Diffusivity of carbon in austenite, m2/s. Unchecked: hs_diffusivity_check tells where it holds.
 *
 *    carbon_pct  double  in  wt %
 *    temp_K      double  in  K
 *
 *  Source   Agren 1986, Tibbetts 1980, Lee, Matlock and Van Tyne 2011 (tables/diffusivity.csv,
 *           diffusivity_lee.csv) */
HS_API double hs_diffusivity_value(const hs_diffusivity *d, double carbon_pct, double temp_K);

/** Most carbon austenite holds beside cementite (the A_cm line), wt %; NaN outside 740 to 1050 C.
 *  Source   fit to Fe-C parameters recalled from memory (tables/austenite.csv) */
HS_API double hs_acm_pct(double temp_K);

/** Start of austenite on heating, K: Ae1 = 723 C - 10.7 Mn ...  (Andrews 1965). */
HS_API double hs_ae1_K(const hs_composition *steel);

/** End of ferrite on heating, K: Ae3 (Andrews 1965); NaN where C is not 0 to .6 %. */
HS_API double hs_ae3_K(const hs_composition *steel);

/** Gunnarson's alloy factor Cp/C: a carbon potential Cp brings a steel to C = Cp / ratio.
 *  Source   Gunnarson 1967, from memory (tables/austenite.csv) */
HS_API double hs_gunnarson_ratio(const hs_composition *steel);

/** Activity of carbon in Fe-C austenite against graphite (Ellis et al. 1963, from memory). */
HS_API double hs_carbon_activity(double carbon_pct, double temp_K);

#endif
