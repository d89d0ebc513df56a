/* The carburising box: compound, cover, time to heat through, gas. */
#ifndef HARDSKIN_MODEL_PACK_H
#define HARDSKIN_MODEL_PACK_H

#include "hardskin/base/status.h"

typedef struct hs_pack_plan {
    double compound_m3, compound_kg; /* loose */
    double cover_m;      /* least compound between part and box; NaN when only a volume was given */
    int cover_ok;        /* at least the usual 25 mm; -1 when not known */
    double heat_up_s;    /* until the box's centre is at heat: planning fit */
    double gas_m3;       /* steam of the moisture, at the temperature of the fire, 1 atm */
    double water_gas_m3; /* the same once hot charcoal has made it CO and hydrogen: twice */
    double heating_m3;   /* gas that heating alone drives out of the voids, at heat, 1 atm */
    double gas_ratio;    /* gas_m3 and heating_m3 over the inner volume of the box */
    double sealed_Pa;    /* what its gas would come to if none could leave (ideal gas, CO and H2) */
    double co_m3;        /* carbon monoxide of that water gas, at 20 C, 1 atm */
    int must_vent; /* 1: sealed gas-tight, this box would burst; lute it so that it can breathe */
} hs_pack_plan;

/** What a box needs.
 *    box_m[3]    double  in   inner sizes, > 0
 *    part_m[3]   double  in   sizes of the part, or of the pile of parts;
 *                             if [1] and [2] are 0, [0] is its VOLUME in m3
 *    moisture    double  in   of the compound, kg per kg, 0 to .5
 *    temp_K      double  in   of the fire, 1023.15 to 1373.15 K
 *  Returns  HS_OK; HS_E_IMPOSSIBLE when the part does not fit; HS_E_RANGE.
 *  Source   The Working of Steel 1921 (tables/pack.csv), judgement for the gas */
HS_API hs_status hs_pack(hs_pack_plan *out, const double box_m[3], const double part_m[3],
                         double moisture, double temp_K, hs_error *err);

/** Heat-up to the centre of a box of that least inner size (s). Any size in (0, 1] m, else
 *  HS_E_RANGE. */
HS_API hs_status hs_pack_heat_up(double *heat_up_s, double box_m, hs_error *err);

#endif
