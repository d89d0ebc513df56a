#include "cli/quick_air.h"

#include "cli/quick_lookup.h"

hs_status quick_air_find(quick_air *air, const char *word, hs_error *err) {
    quick_row row;
    hs_status status = quick_row_find(&row, "atmosphere", word, "in", err);
    if (status != HS_OK) return status;
    *air =
        (quick_air){quick_cell(&row, "low"), quick_cell(&row, "factor"), quick_cell(&row, "high")};
    return HS_OK;
}
