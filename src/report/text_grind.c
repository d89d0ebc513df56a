/* The grinding order, with sizes at which to stop. */
#include "report/sections.h"

#include <math.h>
#include <string.h>

void hs_text_grind(hs_page *page) {
    const hs_result_grind *g = &page->result->grind_plan;
    char time[48];
    if (g->steps == 0) return;
    hs_page_heading(page, "GRIND, in this order");
    for (size_t i = 0; i < g->steps; i++) {
        const hs_grind_step *s = &g->order[i];
        hs_words to = hs_page_length(page, s->to_m, HS_NEAREST);
        hs_page_say(page, 2, "%zu. %s%s%s", i + 1, s->what, isfinite(s->to_m) ? ", to " : "",
                    isfinite(s->to_m) ? to.text : "");
        if (s->passes > 0)
            hs_page_say(page, 6, "about %.0f pass%s", s->passes, s->passes > 1 ? "es" : "");
        if (s->stop_if[0])
            hs_page_say(page, 6, "%s%s", strncmp(s->stop_if, "STOP", 4) ? "STOP IF " : "",
                        s->stop_if);
    }
    if (g->strokes > 0 && hs_format_time(time, sizeof time, g->time_s, HS_UP))
        hs_page_say(page, 2, "about %.0f strokes of the table, %s at the machine for each part",
                    g->strokes, time);
    for (size_t i = 0; i < g->cares; i++)
        hs_page_say(page, 2, "%s", g->care[i]);
    if (g->note[0]) hs_page_say(page, 2, "%s", g->note);
}
