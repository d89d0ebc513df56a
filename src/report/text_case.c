/* The case and what the wheel leaves of it; the biggest doubts. */
#include "report/sections.h"

#include <math.h>
#include <stdio.h>

/* What this quench needs in hardenability, and what the steel has of it. */
static void hardening_line(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    if (!c->hardens)
        hs_page_say(page, 2,
                    "THE CASE DOES NOT HARDEN in this quench and section: it has %.2f of the "
                    "hardenability that takes, %.2f at best; carbon %.2f %%",
                    c->margin, c->margin_high, c->surface_carbon_pct);
    else if (c->margin < 1)
        hs_page_say(page, 2,
                    "whether the case hardens fully is in doubt: it has %.2f (%.2f to %.2f) of the "
                    "hardenability that takes; harden a test piece of this section first",
                    c->margin, c->margin_low, c->margin_high);
    else if (c->margin_low < 1)
        hs_page_say(page, 2,
                    "the case hardens in a brisk quench; a sluggish one and a lean heat of this "
                    "steel leave it partly soft: it has %.1f (%.1f to %.1f) times the "
                    "hardenability that takes",
                    c->margin, c->margin_low, c->margin_high);
}

/* What the core is made of, most first; what nobody would find under the microscope is left out. */
static void made_of(hs_text *out, const hs_result_case *c) {
    const double share[3] = {c->core_martensite_pct, c->core_bainite_pct,
                             100 - c->core_martensite_pct - c->core_bainite_pct};
    static const char *const name[3] = {"martensite", "bainite", "ferrite and pearlite"};
    int used[3] = {0};
    for (int n = 0; n < 3; n++) {
        int most = -1;
        for (int k = 0; k < 3; k++)
            if (!used[k] && (most < 0 || share[k] > share[most])) most = k;
        used[most] = 1;
        if (share[most] < 2.5) return;
        if (share[most] > 97.5)
            hs_text_add(out, "%s", name[most]);
        else
            hs_text_add(out, "%s about %.0f %% %s", n ? "," : "", 5 * round(share[most] / 5),
                        name[most]);
    }
}

static void core_line(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    char words[160];
    hs_text list = hs_text_start(words, sizeof words);
    made_of(&list, c);
    hs_page_say(page, 2, "core: %.0f HV (%.0f to %.0f HV), %s", c->core_HV,
                10 * floor(c->core_low_HV / 10), 10 * ceil(c->core_high_HV / 10),
                words[0] == ' ' ? words + 1 : words);
}

static void case_lines(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    hs_words mid = hs_page_length(page, c->depth_m, HS_DOWN);
    hs_words low = hs_page_length(page, c->depth_low_m, HS_DOWN);
    hs_words total = hs_page_length(page, c->total_m, HS_NEAREST);
    hs_words rim = hs_page_length(page, c->soft_rim_m, HS_UP);
    hs_page_say(page, 2, "as hardened, to %.0f HV: %s typical", c->limit_HV, mid.text);
    hs_page_say(page, 2, "low side: %s; total case: %s", low.text, total.text);
    if (c->reading.plan) hs_text_reading(page);
    hardening_line(page);
    if (c->hardens)
        hs_page_say(page, 2, "surface: %s, carbon %.2f %%, retained austenite %.0f %%",
                    hs_page_hardness(c->surface_HV).text, c->surface_carbon_pct,
                    c->retained_austenite_pct);
    if (c->hardens && c->retained_austenite_pct > 25)
        hs_page_say(page, 2,
                    "a sub-zero treatment (-80 C within the hour, then temper) would leave about "
                    "%.0f %% of austenite; the part grows and can crack: not on sharp corners",
                    c->sub_zero_austenite_pct);
    core_line(page);
    if (c->soft_rim_m > 0) hs_page_say(page, 2, "soft rim to be ground off: %s", rim.text);
    hs_text_outer_edge(page);
}

/* How a drawing writes it; J423 beside it where the job is in inch. */
static void drawing_lines(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    if (page->job->inch_first && isfinite(c->effective_m))
        hs_page_say(page, 2, "effective case to 50 HRC (as SAE J423 counts it): %s typical",
                    hs_page_length(page, c->effective_m, HS_DOWN).text);
    if (c->drawing[0])
        hs_page_say(page, 2,
                    "to order from a hardener, before grinding: %s (ISO 15787, a suggestion; the "
                    "upper deviation from memory)",
                    c->drawing);
    if (c->other_limit)
        hs_page_say(page, 2,
                    "Three case depths down it still has %.0f HV, 450 or more: ISO 18203 then has "
                    "another limit agreed, above 550 HV in steps of 25.",
                    c->deep_HV);
}

/* Do two faces print the same figures? Then they share their lines. */
static int same_face(const hs_page *page, size_t i, size_t k) {
    const hs_result_face *a = &page->result->face[i], *b = &page->result->face[k];
    const hs_face *x = &page->job->face[i], *y = &page->job->face[k];
    const double tiny_m = 1e-7;
    return a->present && b->present && fabs(a->removal_min_m - b->removal_min_m) < tiny_m &&
           fabs(a->removal_max_m - b->removal_max_m) < tiny_m &&
           fabs(a->case_left_min_m - b->case_left_min_m) < tiny_m &&
           fabs(a->case_left_typical_m - b->case_left_typical_m) < tiny_m &&
           fabs(a->case_lost_m - b->case_lost_m) < tiny_m && a->edge.corner == b->edge.corner &&
           a->rib == b->rib && !(fabs(a->edge.share - b->edge.share) > 0.005) &&
           fabs(a->hardness_left_HV - b->hardness_left_HV) < 0.5 &&
           fabs(x->case_m - y->case_m) < tiny_m && fabs(x->hardness_HV - y->hardness_HV) < 0.5;
}

static int first_of_its_like(const hs_page *page, size_t i) {
    for (size_t k = 0; k < i; k++)
        if (same_face(page, k, i)) return 0;
    return 1;
}

static void face_names(hs_text *names, const hs_page *page, size_t i) {
    hs_text_add(names, "%s", page->job->face[i].name);
    for (size_t k = i + 1; k < page->job->faces; k++)
        if (same_face(page, i, k)) hs_text_add(names, ", %s", page->job->face[k].name);
}

/* What the finished face may be tested with; only where the case left is known. */
static void test_line(hs_page *page, const hs_result_face *f) {
    static const hs_hardness_test offered[] = {HS_TEST_HRC,  HS_TEST_HRA,   HS_TEST_HR30N,
                                               HS_TEST_HV10, HS_TEST_HR15N, HS_TEST_HV1};
    char list[64];
    hs_text text = hs_text_start(list, sizeof list);
    size_t named = 0;
    for (size_t k = 0; k < sizeof offered / sizeof *offered && named < 4; k++)
        if (f->test_with >> offered[k] & 1u) {
            hs_text_add(&text, "%s%s", named ? ", " : "", hs_test_name(offered[k]));
            named++;
        }
    hs_text_add(&text, "%sfiles", named ? " or " : "");
    int reads_low = !(f->test_with >> HS_TEST_HRC & 1u) && isfinite(f->hrc_needs_m);
    hs_page_say(page, 4, "test the finished face with %s%s%s%s", list,
                reads_low ? "; a C reading needs " : "",
                reads_low ? hs_page_short(page, f->hrc_needs_m, HS_UP).text : "",
                reads_low ? " of case: here it may read low, and a low one proves nothing" : "");
}

static void face_lines(hs_page *page, size_t i) {
    const hs_face *face = &page->job->face[i];
    const hs_result_face *f = &page->result->face[i];
    hs_words lost = hs_page_short(page, f->case_lost_m, HS_UP);
    hs_words least = hs_page_short(page, f->case_left_min_m, HS_DOWN);
    hs_words usual = hs_page_short(page, f->case_left_typical_m, HS_DOWN);
    hs_words wanted = hs_page_short(page, face->case_m, HS_UP);
    hs_words min = hs_page_short(page, f->removal_min_m, HS_DOWN);
    hs_words max = hs_page_short(page, f->removal_max_m, HS_UP);
    if (!isfinite(f->removal_max_m)) { /* at stop there is no size to grind from */
        hs_page_say(page, 2,
                    "%s: wanted %s to %.0f HV; no rough size, so no figure of what is left",
                    face->name, wanted.text, face->limit_HV);
        return;
    }
    char names[512];
    hs_text list = hs_text_start(names, sizeof names);
    face_names(&list, page, i);
    hs_page_say(page, 2, "%s: the wheel takes %s to %s per side", names, min.text, max.text);
    hs_text_inner_edge(page, i);
    hs_page_say(page, 4, "worst spot loses %s of case, %.0f %% of it%s", lost.text,
                f->share_of_case_pct, f->share_of_case_pct > 33 ? " (more than a third)" : "");
    if (face->case_m > 0)
        hs_page_say(page, 4, "left: at least %s, typical %s; wanted %s to %.0f HV", least.text,
                    usual.text, wanted.text, face->limit_HV);
    else
        hs_page_say(page, 4, "left: at least %s, typical %s; none asked", least.text, usual.text);
    hs_text_sunk_corner(page, i);
    if (face->hardness_HV > 0 && isfinite(f->hardness_left_HV))
        hs_page_say(page, 4, "hardness left there: %s, asked %s",
                    hs_page_hardness(f->hardness_left_HV).text,
                    face->hardness_text && face->hardness_text[0]
                        ? face->hardness_text
                        : hs_page_hardness(face->hardness_HV).text);
    if (f->drawing[0])
        hs_page_say(page, 4, "on the drawing, finished: %s (suggestion)", f->drawing);
    if (f->case_left_min_m > 0 && (face->case_m > 0 || face->hardness_HV > 0)) test_line(page, f);
}

/* What keeps a face soft: it is the shop's to do, and a cut after the quench is too late. */
static void soft_line(hs_page *page, size_t i) {
    const hs_result_case *c = &page->result->hard;
    const hs_job *job = page->job;
    int reheated = 0, hard = 0; /* since the last carburise */
    for (size_t k = 0; k < job->steps; k++) {
        if (job->step[k].kind == HS_CARBURISE) reheated = hard = 0;
        hard |= job->step[k].kind == HS_QUENCH;
        reheated |= job->step[k].kind == HS_REHEAT && !hard;
    }
    if (reheated && c->total_high_m > 0)
        hs_page_say(page, 2,
                    "%s: to be soft, mask it (clay, stop-off paint, copper), or leave more than %s "
                    "per side on it and cut that off while the part is soft, before the reheat",
                    job->face[i].name, hs_page_short(page, c->total_high_m, HS_UP).text);
    else
        hs_page_say(page, 2, "%s: to be soft, mask it (clay, stop-off paint, copper)",
                    job->face[i].name);
}

void hs_text_case(hs_page *page) {
    hs_page_heading(page, "CASE (depths from the rough-machined surface)");
    if (!page->result->hard.present) {
        hs_page_say(page, 2, "no case: nothing in the route carburises and hardens a ground face");
        hs_text_scale(page);
        return;
    }
    case_lines(page);
    hs_text_scale(page);
    drawing_lines(page);
    for (size_t i = 0; i < page->job->faces; i++)
        if (page->result->face[i].present && first_of_its_like(page, i)) face_lines(page, i);
    for (size_t i = 0; i < page->job->faces; i++)
        if (page->job->face[i].finish == HS_SOFT) soft_line(page, i);
}

static void driver_line(hs_page *page, const hs_driver *d) {
    if (d->share_pct >= 99.5)
        hs_page_say(page, 4, "over 99 %%  %s", d->name);
    else if (d->share_pct < 1)
        hs_page_say(page, 4, "under 1 %%  %s", d->name);
    else
        hs_page_say(page, 4, "%7.0f %%  %s", d->share_pct, d->name);
}

/* What the number of draws leaves open, and what was asked of it. */
static void draws_line(hs_page *page) {
    const hs_result_confidence *c = &page->result->confidence;
    if (c->error_m > 0)
        hs_page_say(page, 2,
                    "%zu draws: their number leaves the ends of the rough sizes known to "
                    "\302\261%s (95 %%); asked: less than a quarter of the rough tolerance, %s%s",
                    c->samples, hs_page_short(page, c->error_m, HS_UP).text,
                    hs_page_short(page, c->error_asked_m, HS_DOWN).text,
                    c->error_m < c->error_asked_m ? "" : ". NOT REACHED: no more draws are made");
    else
        hs_page_say(page, 2,
                    "%zu draws; what is shut is shut by more than their number leaves open",
                    c->samples);
}

static void batch_line(hs_page *page) {
    const hs_result_confidence *c = &page->result->confidence;
    char error[32] = "";
    if (page->job->part.quantity == 1) return;
    if (isnan(c->reached_batch)) {
        hs_page_say(page, 2, "all %zu parts good: not reckoned for so many in one box",
                    page->job->part.quantity);
        return;
    }
    if (c->batch_error > 0)
        snprintf(error, sizeof error, " \302\261%.1f %%", fmax(0.1, 100 * c->batch_error));
    hs_page_say(page, 2, "all %zu parts good: %s%s (%s if nothing were shared)",
                page->job->part.quantity, hs_page_chance(c->reached_batch, c->batch_at_least).text,
                error, hs_page_chance(c->batch_apart, c->at_least).text);
    hs_page_say(page, 4,
                "shared: steel, box, fire, bath, temper; each its own: stock, place in "
                "the box, bow, set-up");
}

/* "59 % bow ..., 11 % ..."; what a figure's doubt is made of, the small left out. */
static void side_drivers(hs_page *page, const char *name, const char *side, const hs_driver *d,
                         size_t n) {
    const double seen_pct = 5;
    char list[320] = "";
    hs_text t = hs_text_start(list, sizeof list);
    for (size_t i = 0; i < n && d[i].share_pct >= seen_pct; i++)
        hs_text_add(&t, "%s%s %.0f %%", i > 0 ? "; " : "", d[i].name, fmin(99, d[i].share_pct));
    if (list[0]) hs_page_say(page, 4, "%s, %s: %s", name, side, list);
}

static void dimension_drivers(hs_page *page) {
    hs_page_say(page, 2, "what makes the doubt of need and of may:");
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_dimension *d = &page->result->dimension[i];
        const char *name = page->job->dimension[i].name;
        side_drivers(page, name, "need", d->need_driver, d->need_drivers);
        side_drivers(page, name, "may", d->may_driver, d->may_drivers);
    }
}

void hs_text_doubts(hs_page *page) {
    const hs_result_confidence *c = &page->result->confidence;
    if (c->samples == 0 || page->result->grind == HS_NONE) return;
    hs_page_heading(page, "DOUBT");
    hs_page_say(page, 2, "asked: %s, of one part, all faces together",
                hs_page_chance(c->level, 0).text);
    int shut = 0;
    for (size_t i = 0; i < page->job->dimensions; i++)
        shut |= page->result->dimension[i].verdict == HS_STOP;
    hs_page_say(page, 2, "reached %s: %s", shut ? "at the best size there would be" : "at the aim",
                hs_page_chance(c->reached, c->at_least).text);
    batch_line(page);
    draws_line(page);
    if (c->drivers == 0) return;
    hs_page_say(page, 2, "share of the doubt, biggest first:");
    for (size_t i = 0; i < c->drivers && i < 5; i++)
        driver_line(page, &c->driver[i]);
    dimension_drivers(page);
}
