/* Appendix: steel, steps, case profile, tables with their hash, every quantity as read. */
#include "report/sections.h"

#include "hardskin/tables/table.h"

#include <math.h>
#include <stdio.h>

static void steel_lines(hs_page *page) {
    const hs_steel *s = &page->job->part.steel;
    hs_page_heading(page, "A1 Steel as reckoned with, wt %");
    hs_page_say(page, 2,
                "%s%s%s: C %.3f, Mn %.2f, Si %.2f, Cr %.2f, Ni %.2f, Mo %.2f; basis: %s%s%s",
                s->name, s->standard[0] ? ", " : "", s->standard, s->mid.C, s->mid.Mn, s->mid.Si,
                s->mid.Cr, s->mid.Ni, s->mid.Mo, s->basis ? s->basis : "the sheet",
                s->source ? ", source: " : "", s->source ? s->source : "");
}

static void step_lines(hs_page *page) {
    const hs_result *r = page->result;
    int doubtful = 0;
    if (r->steps == 0) return;
    hs_page_heading(page, "A2 After each step");
    hs_page_say(page, 2, "%4s  %7s  %7s  %s", "HRC", "case mm", "lost mm", "step");
    for (size_t i = 0; i < r->steps; i++) {
        const hs_result_step *s = &r->step[i];
        char hard[16] = "soft";
        if (isfinite(s->hardness_HRC)) {
            snprintf(hard, sizeof hard, "%.0f", s->hardness_HRC);
        } else if (s->cooled_HRC > 0) {
            snprintf(hard, sizeof hard, "%.0f?", s->cooled_HRC);
            doubtful = 1;
        }
        hs_page_say(page, 2, "%4s  %7.3f  %7.4f  %s", hard, s->case_depth_m * 1e3, s->lost_m * 1e3,
                    s->text);
    }
    hs_page_say(page, 2,
                "Case to %.0f HV, as if hardened with what it then has; lost as scale per side.",
                r->hard.limit_HV);
    if (doubtful) hs_page_say(page, 2, "?: the most that its cooling without a quench may leave.");
    hs_text_heats(page);
}

static void profile_lines(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    if (!c->present || c->points == 0) return;
    hs_page_heading(page, "A3 Case profile, from the rough-machined surface");
    hs_page_say(page, 2, "%8s  %8s  %9s  %6s", "mm", "in", "carbon, %", "HV");
    for (size_t i = 0; i < c->points; i++)
        hs_page_say(page, 2, "%8.3f  %8.4f  %9.3f  %6.0f", c->profile[i].depth_m * 1e3,
                    c->profile[i].depth_m / 0.0254, c->profile[i].carbon_pct,
                    c->profile[i].hardness_HV);
}

static void bow_lines(hs_page *page) {
    const hs_result_distortion *d = &page->result->distortion;
    if (!(d->bow_m > 0) && d->terms == 0) return;
    const char *what = d->ring ? "ovality" : "bow";
    int straightened = isfinite(d->straightened_m);
    hs_page_heading(page, "A4 Bow and growth over the length");
    hs_page_say(
        page, 2, "%s%s: typical %s, 1 part in 20 has %s or more; %smade of", what,
        straightened ? " once straightened" : "", hs_page_length(page, d->bow_m, HS_NEAREST).text,
        hs_page_length(page, d->bow_high_m, HS_UP).text, straightened ? "before that it is " : "");
    for (size_t i = 0; i < d->terms; i++)
        hs_page_say(page, 2, "  %s  %s", hs_page_short(page, d->because[i].value_m, HS_UP).text,
                    d->because[i].term);
    hs_page_say(page, 2,
                "to compare: %s by the plain rule of medium and height (one standard deviation)",
                hs_page_short(page, d->plain_m, HS_NEAREST).text);
    hs_page_say(page, 2,
                "stress of the skin along the part, as quenched, evenly: about %.0f MPa of %s",
                fabs(d->skin_Pa) * 1e-6, d->skin_Pa > 0 ? "tension" : "pressure");
    hs_page_say(page, 2, "growth of the length: %s",
                hs_page_length(page, d->growth_m, HS_NEAREST).text);
    hs_text_one_quench(page);
}

static void table_lines(hs_page *page) {
    hs_page_heading(page, "A5 Tables in this program: name, basis, sources (hardskin tables NAME)");
    hs_page_say(page, 2, "version %s, tables %s, sheet %016llx, samples %zu", HS_VERSION,
                hs_table_hash(), page->job->hash, page->result->confidence.samples);
    for (int i = 0; i < HS_TABLE_COUNT; i++) {
        const hs_table *t = hs_table_get((hs_table_id)i);
        hs_page_say(page, 2, "%-21s %-13s %s", t->id, t->basis, t->source);
    }
}

static void read_lines(hs_page *page) {
    hs_page_heading(page, "A6 Every quantity as read");
    for (size_t i = 0; i < page->job->reads; i++) {
        const hs_read *q = &page->job->read[i];
        hs_page_say(page, 2, "%-34s %-18s = %.6g %s", q->pointer, q->text, q->value, q->unit);
    }
}

static void caution_sources(hs_page *page) {
    const hs_result *r = page->result;
    if (r->cautions == 0) return;
    hs_page_heading(page, "A7 Cautions by code (hardskin why CODE) and source");
    for (size_t i = 0; i < r->cautions; i++)
        hs_page_say(page, 2, "%-24s %s", r->caution[i].code, r->caution[i].source);
}

void hs_text_appendix(hs_page *page) {
    hs_page_heading(page, "APPENDIX");
    steel_lines(page);
    step_lines(page);
    profile_lines(page);
    bow_lines(page);
    table_lines(page);
    read_lines(page);
    caution_sources(page);
}
