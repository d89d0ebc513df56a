/* Oil for a quench: how much it takes, and how far that warms. */
#ifndef HARDSKIN_MODEL_QUENCH_OIL_H
#define HARDSKIN_MODEL_QUENCH_OIL_H

#include "hardskin/base/status.h"

typedef struct hs_quench_oil {
    double volume_m3; /* least, by the trade's rule: a gallon a pound */
    double rise_K;    /* of that oil, all the heat of the steel in it */
} hs_quench_oil;

/** Oil for what is quenched at once.
 *    steel_kg  double  in  > 0
 *    from_K    double  in  temperature of the part, 293.15 to 1403.15 K
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for such a mass; HS_E_RANGE for the temperature.
 *  Source   rule of one US gallon to the pound (tables/quench_oil.csv); heat of steel as in
 *           tables/box_enthalpy.csv; loss to air and tank neglected */
HS_API hs_status hs_quench_oil_for(hs_quench_oil *out, double steel_kg, double from_K,
                                   hs_error *err);

#endif
