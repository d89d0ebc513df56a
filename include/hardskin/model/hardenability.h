/* Does the section harden? Ideal diameter, Grossmann's equal half-temperature times, soft core. */
#ifndef HARDSKIN_MODEL_HARDENABILITY_H
#define HARDSKIN_MODEL_HARDENABILITY_H

#include "hardskin/base/status.h"
#include "hardskin/model/structure.h"
#include "hardskin/tables/steel.h"

#include <stddef.h>

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

/** Does the case harden fully? Asked at the surface, with the hardenability of .8 %C, by two ways
 *  that know nothing of each other:
 *    the ideal diameter of ASTM A255 over the one the half-temperature time there asks for;
 *    the rate at 700 C there over Maynier's for 90 % martensite, as a ratio of diameters (square
 *    root).
 *  The margin is their geometric mean: so a case on lean plain steel hardens in oil to a section of
 *  about 6 mm, in moving water to 50 mm and more, as the trade has it (judgement); by the first way
 *  alone water would not harden C15E of 20 mm, which it does, by the second alone oil would harden
 *  1018 of 15 mm, which it does not surely. The surface is asked, not the case depth: towards the
 *  core hs_hardened_HV with a rate counts what the falling carbon leaves soft.
 *
 *    margin  double  out  hardens from 1 up
 *    spread  double  out  half the distance of the two ways in ln; may be NULL
 *    from_K  double  in   heat before the quench, above 700 C
 *  About .5 ms. Returns HS_OK (look at margin); HS_E_RANGE, HS_E_IMPOSSIBLE. */
HS_API hs_status hs_case_hardens(double *margin, double *spread, const hs_composition *steel,
                                 const hs_quenched *quenched, double from_K, hs_error *err);

/** Rates of cooling (K/s) as a place passes 700 C, from the same series as the half times.
 *
 *    rate_K_s  n doubles    out  NaN where the place or the quench is not one, or from_K <= 700 C
 *    place     n doubles    in   0 centre to 1 surface
 *    from_K    double       in   heat before the quench
 *
 *  Basis: the severity as one coefficient from start to end, no latent heat, diffusivity of hot
 *  austenite. The centre of a 25 mm round so comes out at the end-quench distances the trade's
 *  charts give it (tests/unit/model/structure.c). */
HS_API void hs_quench_rates(double *rate_K_s, const double *place, size_t n,
                            const hs_quenched *quenched, double from_K);

/** Hardness (HV) of the core as quenched: martensite, bainite, ferrite and pearlite by the rate at
 *  the centre (hs_structure_of), each with its own hardness, weighted.
 *    hardness_HV  double        out
 *    structure    hs_structure  out  may be NULL
 *    quenched     hs_quenched   in   NULL: taken as all martensite
 *    from_K       double        in   heat before the quench, above 700 C; not used without a quench
 *  Returns HS_OK; HS_E_RANGE for a core carbon outside .02 to .70 %, HS_E_IMPOSSIBLE. */
HS_API hs_status hs_core_HV(double *hardness_HV, hs_structure *structure,
                            const hs_composition *steel, double core_pct,
                            const hs_quenched *quenched, double from_K, hs_error *err);

/** The same at a known rate (K/s at 700 C); INFINITY: all martensite. */
HS_API hs_status hs_core_at_rate(double *hardness_HV, hs_structure *structure,
                                 const hs_composition *steel, double core_pct, double rate_K_s,
                                 double from_K, hs_error *err);

#endif
