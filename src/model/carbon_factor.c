#include "model/carbon_factor.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

double hs_carbon_factor_in(double carbon_pct) {
    const hs_table *t = hs_table_get(HS_TABLE_HARDENABILITY_CARBON);
    for (size_t r = 0; r < t->rows; r++)
        if (carbon_pct <= hs_table_number(t, r, HS_HARDENABILITY_CARBON_UPTO))
            return hs_table_number(t, r, HS_HARDENABILITY_CARBON_CONSTANT) +
                   carbon_pct *
                       (hs_table_number(t, r, HS_HARDENABILITY_CARBON_LINEAR) +
                        carbon_pct * hs_table_number(t, r, HS_HARDENABILITY_CARBON_SQUARE));
    return NAN;
}
