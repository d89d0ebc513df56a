/* After hardening: the answer from what was measured. It comes before the plan. */
#include "report/sections.h"

#include <math.h>

static const char *wheel_words(hs_wheel verdict) {
    static const char *const words[] = {"nothing to decide", "GRIND", "GRIND WITH CARE",
                                        "DO NOT GRIND"};
    return words[verdict];
}

static void dimension_lines(hs_page *page, size_t i) {
    const hs_result_measured_dimension *d = &page->result->measured.dimension[i];
    hs_words size = hs_page_length(page, d->size_m, HS_NEAREST);
    hs_words shape = hs_page_length(page, d->shape_m, HS_UP);
    hs_words turn = hs_page_length(page, d->turn_at_m, HS_NEAREST);
    hs_words clean = hs_page_short(page, d->limit_clean_m, HS_DOWN);
    hs_words deep = hs_page_short(page, d->limit_case_m, HS_DOWN);
    hs_page_say(page, 2, "%s: %s", page->job->dimension[i].name, wheel_words(d->verdict));
    for (int k = 0; k < 2; k++)
        if (d->stop_if[k][0]) hs_page_say(page, 4, "%s", d->stop_if[k]);
    if (d->verdict == HS_WHEEL_NONE) {
        if (d->note[0]) hs_page_say(page, 4, "%s", d->note);
        return;
    }
    if (isfinite(d->turn_at_m) && page->job->dimension[i].across == HS_ACROSS_FACES)
        hs_page_say(page, 4, "turn the part over at %s", turn.text);
    hs_page_say(page, 4, "size without the bow %s, shape counted %s", size.text, shape.text);
    hs_page_say(page, 4, "the shape may be %s (clean-up) and %s (case)",
                isfinite(d->limit_clean_m) ? clean.text : "anything",
                isfinite(d->limit_case_m) ? deep.text : "anything");
    hs_words min = hs_page_short(page, d->removal_min_m, HS_DOWN);
    hs_words max = hs_page_short(page, d->removal_max_m, HS_UP);
    hs_words left = hs_page_short(page, d->case_left_min_m, HS_DOWN);
    hs_page_say(page, 4, "the wheel takes %s to %s per side", min.text, max.text);
    if (isfinite(d->case_left_min_m))
        hs_page_say(page, 4, "case left at the worst spot %s", left.text);
    if (d->note[0]) hs_page_say(page, 4, "%s", d->note);
}

static void remedy_lines(hs_page *page, const hs_result_measured_dimension *d) {
    for (size_t k = 0; k < d->remedies; k++)
        hs_page_say(page, 6, "%zu. %s%s%s", k + 1, d->remedy[k].what,
                    d->remedy[k].text[0] ? ": " : "", d->remedy[k].text);
}

int hs_text_at_bench(const hs_page *page) {
    const hs_result *r = page->result;
    for (size_t i = 0; r->measured_present && i < page->job->dimensions; i++)
        if (r->measured.dimension[i].present) return 1;
    return 0;
}

void hs_text_measured(hs_page *page) {
    const hs_result *r = page->result;
    if (!hs_text_at_bench(page)) return;
    hs_page_heading(page, "AFTER HARDENING, FROM WHAT WAS MEASURED");
    hs_page_say(page, 0, "%s", wheel_words(r->measured.verdict));
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_measured_dimension *d = &r->measured.dimension[i];
        if (!d->present) continue;
        dimension_lines(page, i);
        if (d->remedies > 0) hs_page_say(page, 4, "what would help, each computed:");
        remedy_lines(page, d);
    }
    if (!r->hard.reading.plan) hs_text_reading(page);
    if (isfinite(r->measured.case_m))
        hs_page_say(page, 2, "case from the hardened surface %s, low side %s",
                    hs_page_length(page, r->measured.case_m, HS_DOWN).text,
                    hs_page_length(page, r->measured.case_low_m, HS_DOWN).text);
}
