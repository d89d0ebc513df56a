/* After hardening: the answer from what was measured. It comes before the plan. */
#include "report/sections.h"

#include <math.h>

const char *hs_text_wheel(hs_wheel verdict) {
    static const char *const words[] = {"nothing to decide", "GRIND", "GRIND WITH CARE",
                                        "DO NOT GRIND"};
    return words[verdict];
}

/* How the shape was read: "bow 0.200 mm over 300 mm, crown top, corner lift 0.020 mm". */
static void add_shape_read(hs_text *text, const hs_page *page, size_t i) {
    const hs_job *job = page->job;
    const hs_measured_dimension *m = &job->measured.dimension[i];
    hs_form form = job->part.form;
    if (form == HS_BAR || form == HS_RING) {
        double read_m = form == HS_BAR ? m->run_out_m : m->ovality_m;
        hs_text_add(text, "%s %s", form == HS_BAR ? "run-out" : "ovality",
                    hs_page_short(page, read_m, HS_NEAREST).text);
        return;
    }
    hs_text_add(text, "bow %s over %s", hs_page_short(page, m->bow_m, HS_NEAREST).text,
                hs_page_nominal(page, m->over_m > 0 ? m->over_m : job->part.length_m).text);
    if (m->crown >= 0) hs_text_add(text, ", crown %s", job->face[m->crown].name);
    if (m->corner_lift_m > 0)
        hs_text_add(text, ", corner lift %s",
                    hs_page_short(page, m->corner_lift_m, HS_NEAREST).text);
}

static void as_read(hs_page *page, size_t i) {
    const hs_measured_dimension *m = &page->job->measured.dimension[i];
    char line[320] = "";
    hs_text text = hs_text_start(line, sizeof line);
    if (m->size_given)
        hs_text_add(&text, "%s %s", hs_page_length(page, m->size_m, HS_NEAREST).text,
                    m->how == HS_OVER_THE_BOW ? "over the bow, on the plate" : "by micrometer");
    if (m->ground_m > 0)
        hs_text_add(&text, ", up to %s a side ground off already",
                    hs_page_short(page, m->ground_m, HS_NEAREST).text);
    if (m->size_given && m->shape_given) hs_text_add(&text, "; ");
    if (m->shape_given) add_shape_read(&text, page, i);
    if (line[0]) hs_page_say(page, 4, "measured: %s", line);
}

/* "to clean up 0.548 mm, for the case 0.898 mm"; a limit below nothing allows nothing. */
static void add_limits(hs_text *text, const hs_page *page, double clean_m, double case_m) {
    const double limit_m[2] = {clean_m, case_m};
    static const char *const what[2] = {"to clean up", "for the case"};
    for (int k = 0; k < 2; k++)
        hs_text_add(text, "%s%s %s", k ? ", " : "", what[k],
                    isinf(limit_m[k])   ? "anything"
                    : isnan(limit_m[k]) ? "not known"
                    : limit_m[k] < 0    ? "none"
                                        : hs_page_short(page, limit_m[k], HS_DOWN).text);
}

/* In what the instrument reads: of a ring's ovality half lies under the wheel. */
static void shape_lines(hs_page *page, size_t i) {
    const hs_result_measured_dimension *d = &page->result->measured.dimension[i];
    hs_form form = page->job->part.form;
    hs_across across = page->job->dimension[i].across;
    int ring = form == HS_RING && across != HS_ACROSS_ENDS;
    double k = ring ? 2 : 1;
    const char *word = ring                        ? "ovality"
                       : across == HS_ACROSS_FACES ? "bow and half the corner lift"
                                                   : "run-out";
    char line[160];
    hs_text text = hs_text_start(line, sizeof line);
    add_limits(&text, page, k * d->limit_clean_m, k * d->limit_case_m);
    hs_page_say(page, 4, "%s counted %s; allowed: %s", word,
                hs_page_length(page, k * d->shape_m, HS_UP).text, line);
    text = hs_text_start(line, sizeof line);
    add_limits(&text, page, k * d->limit_clean_low_m, k * d->limit_case_low_m);
    if (d->shape_high_m > 0)
        hs_page_say(page, 4, "with the doubt against us %s; allowed: %s",
                    hs_page_short(page, k * d->shape_high_m, HS_UP).text, line);
}

/* Where the wheel may touch it: when to stop, where to turn, what it takes and leaves. */
static void wheel_lines(hs_page *page, size_t i) {
    const hs_result_measured_dimension *d = &page->result->measured.dimension[i];
    hs_words turn = hs_page_length(page, d->turn_at_m, HS_NEAREST);
    hs_words min = hs_page_short(page, d->removal_min_m, HS_DOWN);
    hs_words max = hs_page_short(page, d->removal_max_m, HS_UP);
    hs_words left = hs_page_short(page, d->case_left_min_m, HS_DOWN);
    if (isfinite(d->turn_at_m) && page->job->dimension[i].across == HS_ACROSS_FACES)
        hs_page_say(page, 4, "turn the part over at %s", turn.text);
    hs_page_say(page, 4, "the wheel takes %s to %s per side", min.text, max.text);
    if (isfinite(d->case_left_min_m))
        hs_page_say(page, 4, "case left at the worst spot %s", left.text);
}

static void dimension_lines(hs_page *page, size_t i) {
    const hs_result_measured_dimension *d = &page->result->measured.dimension[i];
    hs_page_say(page, 2, "%s: %s", page->job->dimension[i].name, hs_text_wheel(d->verdict));
    int first = d->verdict == HS_WHEEL_NO || d->verdict == HS_WHEEL_CARE; /* why, at once */
    if (first && d->note[0]) hs_page_say(page, 4, "%s", d->note);
    for (int k = 0; k < 2; k++)
        if (d->stop_if[k][0]) hs_page_say(page, 4, "%s", d->stop_if[k]);
    as_read(page, i);
    if (d->verdict != HS_WHEEL_NONE) shape_lines(page, i);
    if (d->verdict == HS_WHEEL_GRIND || d->verdict == HS_WHEEL_CARE) wheel_lines(page, i);
    if (!first && d->note[0]) hs_page_say(page, 4, "%s", d->note);
}

static void remedy_lines(hs_page *page, const hs_result_measured_dimension *d) {
    static const char *const then[] = {"", "then GRIND", "then GRIND WITH CARE", ""};
    if (d->remedies > 0)
        hs_page_say(page, 4, "what would help, each judged again:");
    else if (d->verdict == HS_WHEEL_NO && d->fits)
        hs_page_say(page, 4, "Size and shape would let it be ground: what it lacks is told above.");
    else if (d->verdict == HS_WHEEL_NO)
        hs_page_say(page, 4, "Nothing that was tried makes it fit to grind.");
    for (size_t k = 0; k < d->remedies; k++)
        hs_page_say(page, 6, "%zu. %s: %s%s%s", k + 1, d->remedy[k].what,
                    then[d->remedy[k].verdict], d->remedy[k].text[0] ? ". " : "",
                    d->remedy[k].text);
}

static void hardness_line(hs_page *page) {
    const hs_measured *m = &page->job->measured;
    if (!(m->hardness_high_HV > 0)) return;
    hs_page_say(
        page, 2, "hardness of the surface read: %s%s%s", m->hardness_text ? m->hardness_text : "",
        m->hardness_by && m->hardness_by[0] ? " by " : "", m->hardness_by ? m->hardness_by : "");
}

int hs_text_at_bench(const hs_page *page) {
    const hs_result *r = page->result;
    for (size_t i = 0; r->measured_present && i < page->job->dimensions; i++)
        if (r->measured.dimension[i].present) return 1;
    return 0;
}

static int any_ground_off(const hs_job *job) {
    for (size_t i = 0; i < job->dimensions; i++)
        if (job->measured.dimension[i].ground_m > 0) return 1;
    return 0;
}

void hs_text_measured(hs_page *page) {
    const hs_result *r = page->result;
    if (!hs_text_at_bench(page)) return;
    hs_page_heading(page, "AFTER HARDENING, FROM WHAT WAS MEASURED");
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_measured_dimension *d = &r->measured.dimension[i];
        if (!d->present) continue;
        dimension_lines(page, i);
        remedy_lines(page, d);
    }
    hardness_line(page);
    if (!r->hard.reading.plan) hs_text_reading(page);
    if (isfinite(r->measured.case_m))
        hs_page_say(page, 2, "case from the %s %s, low side %s",
                    any_ground_off(page->job) ? "surface as it is ground now" : "hardened surface",
                    hs_page_length(page, r->measured.case_m, HS_DOWN).text,
                    hs_page_length(page, r->measured.case_low_m, HS_DOWN).text);
}
