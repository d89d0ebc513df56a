/* Appendix: one of the computed quenches, step by step, and the stress it leaves. */
#include "constants.h"
#include "report/sections.h"

#include <math.h>
#include <stdio.h>

enum { ROWS = 8 };

/* In degrees of the report's first system. */
static double degrees(const hs_page *page, double temp_K) {
    double C = temp_K - HS_K_PHYSICAL_ZERO_CELSIUS;
    return page->job->inch_first ? 1.8 * C + 32 : C;
}

static void row(hs_page *page, const hs_result_distortion *d, size_t i) {
    const hs_quench_trace *t = &d->one_quench;
    char bow[256] = "";
    if (!d->ring)
        snprintf(bow, sizeof bow, "  %10s  %10s",
                 hs_page_short(page, d->lever_m2 * t->along_1_m[i], HS_NEAREST).text,
                 hs_page_short(page, d->lever_m2 * t->across_1_m[i], HS_NEAREST).text);
    hs_page_say(page, 2, "%6.1f  %8.0f  %8.0f  %8.0f  %8.0f%s", t->time_s[i],
                degrees(page, t->mark_K[i][HS_MARK_CENTRE]),
                degrees(page, t->mark_K[i][HS_MARK_FASTER]),
                degrees(page, t->mark_K[i][HS_MARK_SLOWER]),
                degrees(page, t->mark_K[i][HS_MARK_CORNER]), bow);
}

/* Rows that divide the way of the centre from hot to cold evenly, and the last. */
static void history(hs_page *page, const hs_result_distortion *d) {
    const hs_quench_trace *t = &d->one_quench;
    double hot_K = t->mark_K[0][HS_MARK_CENTRE];
    double cold_K = t->mark_K[t->moments - 1][HS_MARK_CENTRE];
    int due = 0;
    const char *degree = page->job->inch_first ? "F" : "C";
    hs_page_say(page, 2, "%6s  %6s %s  %6s %s  %6s %s  %6s %s%s", "s", "centre", degree, "faster",
                degree, "slower", degree, "corner", degree,
                d->ring ? "" : "         bow      across");
    for (size_t i = 0; i + 1 < t->moments; i++) {
        double way = (hot_K - t->mark_K[i][HS_MARK_CENTRE]) / (hot_K - cold_K);
        if (i > 0 && way < (double)due / ROWS) continue;
        while (due <= way * ROWS)
            due++;
        row(page, d, i);
    }
    row(page, d, t->moments - 1);
}

static void stress(hs_page *page, const hs_quench_trace *t) {
    size_t last = t->places - 1, middle = 0;
    if (t->places < 3) return;
    for (size_t i = 1; i < t->places; i++)
        if (fabs(t->place_m[i]) < fabs(t->place_m[middle])) middle = i;
    hs_page_say(page, 2,
                "stress left along the part, above 0 tension: %.0f MPa at the slower side, %.0f in "
                "the middle, %.0f at the faster side",
                1e-6 * t->stress_Pa[0], 1e-6 * t->stress_Pa[middle], 1e-6 * t->stress_Pa[last]);
}

void hs_text_one_quench(hs_page *page) {
    const hs_result_distortion *d = &page->result->distortion;
    const hs_quench_trace *t = &d->one_quench;
    if (t->moments == 0) return;
    hs_page_say(page, 2,
                "one of the quenches computed, one side cooled faster by %.0f %%, middle film and "
                "plasticity%s:",
                100 * t->uneven,
                d->ring ? ""
                        : "; a bow above 0 is hollow at the slower side, across is square to it; "
                          "the sign is not to be trusted");
    history(page, d);
    stress(page, t);
}
