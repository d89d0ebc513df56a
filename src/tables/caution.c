#include "hardskin/tables/caution.h"

#include "base/nearest.h"
#include "constants.h"
#include "hardskin/tables/table.h"

#include <stdio.h>
#include <string.h>

enum { MOST_CODES = 128 };

static const hs_table *cautions(void) {
    return hs_table_get(HS_TABLE_CAUTIONS);
}

const char *hs_caution_meaning(const char *level) {
    static const char *const meaning[][2] = {
        {"danger", "will kill or injure seriously if it is not avoided"},
        {"warning", "could kill or injure seriously if it is not avoided"},
        {"caution", "could injure slightly or moderately if it is not avoided"},
        {"notice", "harms part, property or surroundings, not people"}};
    for (size_t i = 0; i < sizeof meaning / sizeof *meaning; i++)
        if (!strcmp(meaning[i][0], level)) return meaning[i][1];
    return "";
}

size_t hs_caution_count(void) {
    return cautions()->rows;
}

void hs_caution_at(hs_caution *out, size_t i) {
    const hs_table *t = cautions();
    *out = (hs_caution){.code = hs_table_text(t, i, HS_CAUTIONS_CODE),
                        .level = hs_table_text(t, i, HS_CAUTIONS_LEVEL),
                        .when = hs_table_text(t, i, HS_CAUTIONS_WHEN),
                        .hazard = hs_table_text(t, i, HS_CAUTIONS_HAZARD),
                        .consequence = hs_table_text(t, i, HS_CAUTIONS_CONSEQUENCE),
                        .avoidance = hs_table_text(t, i, HS_CAUTIONS_AVOIDANCE),
                        .source = hs_table_text(t, i, HS_CAUTIONS_SOURCE),
                        .basis = hs_table_text(t, i, HS_CAUTIONS_BASIS)};
}

hs_status hs_caution_find(hs_caution *out, const char *code, hs_error *err) {
    int row = hs_table_row(cautions(), HS_CAUTIONS_CODE, code);
    if (row >= 0) {
        hs_caution_at(out, (size_t)row);
        return HS_OK;
    }
    const char *codes[MOST_CODES];
    size_t n = 0;
    for (size_t i = 0; i < hs_caution_count() && n < MOST_CODES; i++)
        codes[n++] = hs_table_text(cautions(), i, HS_CAUTIONS_CODE);
    const char *near = hs_nearest(code, codes, n);
    char help[128];
    snprintf(help, sizeof help, "%s%s%s", near ? "did you mean " : "", near ? near : "",
             near ? "?" : "`hardskin why` lists them");
    return hs_fail(err, HS_E_WORD, help, "no caution '%s'", code);
}
