/* Cautions, each before the first thing it belongs to; what the answer does not cover. */
#include "report/sections.h"

#include <string.h>

static const char *const levels[][2] = {
    {"danger", "DANGER"}, {"warning", "WARNING"}, {"caution", "CAUTION"}, {"notice", "NOTICE"}};

static int belongs(const hs_result_caution *c, hs_moment before, size_t step) {
    return c->before == before && (before != HS_BEFORE_STEP || c->step == step);
}

/* All of one moment, the gravest first, under its heading; nothing where there are none. */
static void group(hs_page *page, hs_moment before, size_t step, const char *heading) {
    const hs_result *r = page->result;
    int any = 0;
    for (size_t level = 0; level < 4; level++)
        for (size_t i = 0; i < r->cautions; i++) {
            const hs_result_caution *c = &r->caution[i];
            if (!belongs(c, before, step) || strcmp(c->level, levels[level][0]) != 0) continue;
            if (!any) hs_page_say(page, 2, "Before %s", heading);
            any = 1;
            hs_page_say(page, 4, "%s: %s %s %s", levels[level][1], c->hazard, c->consequence,
                        c->avoidance);
        }
}

void hs_text_cautions(hs_page *page) {
    const hs_result *r = page->result;
    hs_page_heading(page, "CAUTIONS, each before the first step it belongs to");
    group(page, HS_BEFORE_ALL, 0, "anything else");
    for (size_t i = 0; i < HS_MAX_STEPS; i++)
        group(page, HS_BEFORE_STEP, i, i < r->steps ? r->step[i].text : "that step");
    group(page, HS_BEFORE_TEST_PIECE, 0, "the test piece is etched or broken");
    group(page, HS_BEFORE_GRINDING, 0, "grinding");
    hs_page_say(page, 2,
                "The usual cautions are shown, not all of them. Local codes, the makers' "
                "data sheets and licensed practice come first.");
}

void hs_text_not_covered(hs_page *page) {
    const hs_result *r = page->result;
    hs_page_heading(page, "NOT COVERED, AND WHAT WAS ASSUMED");
    for (size_t i = 0; i < r->limits; i++)
        hs_page_say(page, 2, "- %s", r->limit[i]);
    if (r->limits == 0) hs_page_say(page, 2, "- nothing was noted");
}
