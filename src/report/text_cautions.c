/* Cautions, the gravest first; what the answer does not cover. */
#include "report/sections.h"

#include <string.h>

void hs_text_cautions(hs_page *page) {
    static const char *const levels[][2] = {
        {"danger", "DANGER"}, {"warning", "WARNING"}, {"caution", "CAUTION"}, {"notice", "NOTICE"}};
    const hs_result *r = page->result;
    hs_page_heading(page, "CAUTIONS");
    for (size_t level = 0; level < 4; level++)
        for (size_t i = 0; i < r->cautions; i++)
            if (!strcmp(r->caution[i].level, levels[level][0]))
                hs_page_say(page, 2, "%s: %s", levels[level][1], r->caution[i].text);
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
