#include "hardskin/model/quench_oil.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

hs_status hs_quench_oil_for(hs_quench_oil *out, double steel_kg, double from_K, hs_error *err) {
    if (!(steel_kg > 0 && isfinite(steel_kg)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a mass above 0", "%g kg of steel", steel_kg);
    double from_C = from_K - HS_K_PHYSICAL_ZERO_CELSIUS;
    double heat_J_kg = hs_table_interpolate(hs_table_get(HS_TABLE_BOX_ENTHALPY),
                                            HS_BOX_ENTHALPY_TEMP, HS_BOX_ENTHALPY_STEEL, from_C);
    if (!(heat_J_kg >= 0)) /* counted from 20 C */
        return hs_fail(err, HS_E_RANGE, "20 to 1130 C", "a quench from %.0f C", from_C);
    double oil_kg = steel_kg * HS_K_QUENCH_OIL_VOLUME_PER_STEEL * HS_K_QUENCH_OIL_DENSITY;
    *out = (hs_quench_oil){.volume_m3 = steel_kg * HS_K_QUENCH_OIL_VOLUME_PER_STEEL,
                           .rise_K = steel_kg * heat_J_kg / (oil_kg * HS_K_QUENCH_OIL_HEAT)};
    return HS_OK;
}
