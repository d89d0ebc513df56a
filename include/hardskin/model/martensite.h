/* What the quench makes of austenite: martensite start, retained austenite, hardness, temper. */
#ifndef HARDSKIN_MODEL_MARTENSITE_H
#define HARDSKIN_MODEL_MARTENSITE_H

#include "hardskin/base/status.h"
#include "hardskin/tables/steel.h"

#include <stddef.h>

/** Start of martensite (K) at a carbon in a steel (whose own C is not used): van Bohemen 2012.
 *  A zeroed composition is plain Fe-C. */
HS_API double hs_ms_K(const hs_composition *steel, double carbon_pct);

/** The same after Andrews 1965, linear: too low at high carbon. */
HS_API double hs_ms_andrews_K(const hs_composition *steel, double carbon_pct);

/** Koistinen-Marburger constant after van Bohemen (1/K): gives the lower bound of the retained
 *  austenite; hs_alpha_usual() is .011. */
HS_API double hs_alpha(const hs_composition *steel, double carbon_pct);
HS_API double hs_alpha_usual(void);

/** Share of austenite left at quench_to_K, 0 to 1 (Koistinen and Marburger 1959); 1 above Ms. */
HS_API double hs_retained_austenite(double ms_K, double alpha, double quench_to_K);

/** ASTM A255: hardness (HRC) of 100 % martensite as quenched, retained austenite in it.
 *  NaN outside .10 to .70 %C. */
HS_API double hs_a255_HRC(double carbon_pct);

/** Hardness (HV) of martensite by itself: A255 with the austenite of plain Fe-C taken out, above
 *  .7 %C the table's two points. NaN below .10 %C. Basis: judgement on A255. */
HS_API double hs_martensite_HV(double carbon_pct);

/** The same down to .02 %C: below .10 % by the slope Maynier et al. 1978 give martensite, 949 HV
 * per % of carbon. Basis: judgement; for soft cores and decarburised rims. NaN outside .02 to .70.
 */
HS_API double hs_lath_martensite_HV(double carbon_pct);

/** One temper or bake. */
typedef struct hs_temper {
    double temp_K, hold_s;
} hs_temper;

/** Are these within the temper table: 50 to 300 C, time above 0, and together no more than its
 *  last row? Returns HS_OK; HS_E_RANGE; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_temper_check(const hs_temper *temper, size_t tempers, hs_error *err);

/** The one-hour temperature (K) that does what all of them did: each is turned by Hollomon and
 *  Jaffe (c = 16) into time at the hottest of them, the times are added. 0 when there is none. */
HS_API double hs_temper_equivalent_K(const hs_temper *temper, size_t tempers);

/** What a one-hour temper takes from martensite, HRC (positive). NaN beyond the table. */
HS_API double hs_temper_drop_HRC(double one_hour_K, double carbon_pct);

/** One steel through quench and tempers. */
typedef struct hs_hardening {
    hs_composition steel;    /* C in it is not used */
    double dissolve_K;       /* heat before the quench: carbon above A_cm there stays carbide;
                                740 to 1050 C; 0 = all dissolves */
    double quench_to_K;      /* usually 293.15 */
    const hs_temper *temper; /* tempers and bakes after the last quench */
    size_t tempers;
    double rate_K_s;   /* of cooling at 700 C; what it leaves of bainite, ferrite and pearlite
                          is mixed in (hs_structure_of). 0 = all martensite */
    double ms_shift_K; /* doubt; 0 */
    double hardness_shift_HRC; /* doubt, on the final hardness; 0 */
} hs_hardening;

/** Returns HS_OK when the functions below have an answer for every carbon of .10 % and more. */
HS_API hs_status hs_hardening_check(const hs_hardening *h, hs_error *err);

/** Hardness (HV) at a carbon: martensite by itself after the temper drop, austenite, and at a given
 *  rate what has become bainite, ferrite or pearlite (which a low temper leaves as it is).
 *
 *    h           hs_hardening  in
 *    carbon_pct  double        in   >= .10; what the part holds, before the A_cm limit
 *    retained    double        out  share of austenite, 0 to 1; may be NULL
 *
 *  Returns NaN below .10 %C or where hs_hardening_check fails. */
HS_API double hs_hardened_HV(const hs_hardening *h, double carbon_pct, double *retained);

/** The same for n carbons at once; carbon below .10 % (a decarburised rim, a lean core)
 *  by hs_lath_martensite_HV, not below .02 %. */
HS_API void hs_hardened_many(double *hardness_HV, const double *carbon_pct, size_t n,
                             const hs_hardening *h);

/** The same with a rate of cooling (K/s at 700 C) of each; h->rate_K_s is not used. */
HS_API void hs_hardened_at_rates(double *hardness_HV, const double *carbon_pct,
                                 const double *rate_K_s, size_t n, const hs_hardening *h);

/** The carbon at which the hardness reaches a limit, on the rising branch; NaN when it never does
 *  or does so already at .10 %. */
HS_API double hs_hardened_carbon(const hs_hardening *h, double limit_HV);

/** HRC of a computed hardness by ASTM E140; NaN outside it. */
HS_API double hs_hardened_HRC(double hardness_HV);

#endif
