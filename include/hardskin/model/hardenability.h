/* Does the section harden? Ideal diameter, Grossmann's equal half-temperature times, soft core. */
#ifndef HARDSKIN_MODEL_HARDENABILITY_H
#define HARDSKIN_MODEL_HARDENABILITY_H

#include "hardskin/base/status.h"
#include "hardskin/tables/steel.h"

/** Ideal diameter (m) of ASTM A255, grain size 7: the round whose centre is half martensite in an
 *  ideal quench.
 *
 *    di_m        double          out
 *    at_least    int             out  1 when an element lies beyond its last factor, which was then
 *                                     used at its end: the true value is larger; may be NULL
 *    steel       hs_composition  in   its C is not used
 *    carbon_pct  double          in   .01 to .90
 *
 *  Returns  HS_OK; HS_E_RANGE for carbon outside.
 *  Source   ASTM A255 (tables/hardenability.csv, hardenability_carbon.csv) */
HS_API hs_status hs_ideal_diameter(double *di_m, int *at_least, const hs_composition *steel,
                                   double carbon_pct, hs_error *err);

typedef enum hs_quenched_shape { HS_QUENCHED_ROUND, HS_QUENCHED_PLATE } hs_quenched_shape;

/** A section in a quench. severity_1_m is Grossmann's H = h/2k in 1/m (1 /in = 39.37 /m). */
typedef struct hs_quenched {
    hs_quenched_shape shape;
    double size_m; /* diameter or thickness */
    double severity_1_m;
} hs_quenched;

/** Fourier number a t / R^2 (R half the size) at which the place has lost half of its way to the
 *  bath's temperature: Heisler's series.
 *
 *    biot   double  in   h R / k; INFINITY = ideal quench
 *    place  double  in   0 centre to 1 surface; the surface in an ideal quench needs none: 0 */
HS_API double hs_half_time(hs_quenched_shape shape, double biot, double place);

/** The ideal diameter (m) a steel needs so that this place of the section cools to half as fast as
 *  the centre of that ideal round (Grossmann, Asimow and Urban 1939: equal half-temperature times).
 *  NaN for a size or severity not above 0. */
HS_API double hs_ideal_diameter_needed(const hs_quenched *quenched, double place);

/** Does the case harden fully? Asks the half-temperature time at `depth_m` (0: at the surface, as
 *  usual) and the hardenability of .8 %C. So a plain-carbon case hardens in oil to a section of
 *  about 6 mm, in moving water to about 50 mm, as the trade has it (judgement).
 *    margin  double  out  ideal diameter at hand over the one needed: hardens from 1 up
 *  About .2 ms. Returns HS_OK (look at margin); HS_E_RANGE, HS_E_IMPOSSIBLE. */
HS_API hs_status hs_case_hardens(double *margin, const hs_composition *steel,
                                 const hs_quenched *quenched, double depth_m, hs_error *err);

/** Hardness (HV) of the core: as-quenched martensite of its carbon (ASTM A255) where its centre
 *  gets half martensite or more, else the ferrite and pearlite estimate of Maynier et al. 1978
 *  (from memory).
 *    hardness_HV  double       out
 *    hardened     int          out  may be NULL
 *    quenched     hs_quenched  in   NULL: taken as hardened
 *  Returns HS_OK; HS_E_RANGE for a core carbon outside .10 to .70 % when hardened, or .01 to .90.
 */
HS_API hs_status hs_core_HV(double *hardness_HV, int *hardened, const hs_composition *steel,
                            double core_pct, const hs_quenched *quenched, hs_error *err);

/** Hardness (HV) of ferrite and pearlite cooled at a rate (K/s at 700 C), Maynier et al. 1978. */
HS_API double hs_ferrite_pearlite_HV(const hs_composition *steel, double carbon_pct,
                                     double rate_K_s);

#endif
