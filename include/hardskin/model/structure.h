/* What a rate of cooling makes of austenite: martensite, bainite, ferrite with pearlite; after
 * Maynier, Jungmann and Dollet 1978 (the Creusot-Loire system). */
#ifndef HARDSKIN_MODEL_STRUCTURE_H
#define HARDSKIN_MODEL_STRUCTURE_H

#include "hardskin/base/status.h"
#include "hardskin/tables/steel.h"

/** Shares, adding up to 1; retained austenite counts with the martensite. */
typedef struct hs_structure {
    double martensite, bainite, soft; /* soft: ferrite with pearlite */
} hs_structure;

/** Structure after cooling.
 *
 *    steel        hs_composition  in  its C is not used
 *    carbon_pct   double          in  dissolved in the austenite, to .90 (more counts as .90)
 *    austenite_K  double          in  heat before the quench, stands for the austenitising
 * parameter rate_K_s     double          in  at 700 C; INFINITY: all martensite
 *
 *  Between the published rates the shares are linear in the logarithm of the rate. Above .50 %C the
 *  system has no data: there the critical rates fall on as one over the square of the carbon factor
 *  of ASTM A255 (equal rates at the centre go with the square of the diameter).
 *  Checked against the end-quench bands of EN 10084 (tests/unit/model/structure.c): the middle of
 *  a steel's analysis lies inside them.
 *  Source   tables/critical_rate.csv */
HS_API hs_structure hs_structure_of(const hs_composition *steel, double carbon_pct,
                                    double austenite_K, double rate_K_s);

/** The rate (K/s at 700 C) at which a steel still becomes 90 % martensite. As above. */
HS_API double hs_rate_for_martensite(const hs_composition *steel, double carbon_pct,
                                     double austenite_K);

/** Hardness (HV) of ferrite with pearlite, and of bainite, cooled at a rate (K/s at 700 C).
 *  Carbon above .50 % counts as .50. Source: tables/hardenability.csv */
HS_API double hs_ferrite_pearlite_HV(const hs_composition *steel, double carbon_pct,
                                     double rate_K_s);
HS_API double hs_bainite_HV(const hs_composition *steel, double carbon_pct, double rate_K_s);

/** Hardness (HV) of what is not martensite, weighted; 0 when all is martensite. */
HS_API double hs_soft_part_HV(const hs_structure *structure, const hs_composition *steel,
                              double carbon_pct, double rate_K_s);

#endif
