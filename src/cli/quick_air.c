#include "cli/quick_air.h"

#include "cli/quick_lookup.h"
#include "constants.h"

hs_status quick_air_find(quick_air *air, const char *word, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    size_t row = 0;
    hs_status status = quick_row(&row, HS_TABLE_ATMOSPHERE, word, "in", err);
    if (status != HS_OK) return status;
    *air = (quick_air){hs_table_number(t, row, HS_ATMOSPHERE_LOW),
                       hs_table_number(t, row, HS_ATMOSPHERE_MULTIPLIER),
                       hs_table_number(t, row, HS_ATMOSPHERE_HIGH)};
    return HS_OK;
}
