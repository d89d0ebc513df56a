/* The case at the edges: shallower at inner corners, deeper at outer ones. */
#include "report/sections.h"

#include <math.h>
#include <stdio.h>

static const double DEGREES = 180 / 3.14159265358979324;

void hs_text_inner_edge(hs_page *page, size_t face) {
    const hs_result_face *f = &page->result->face[face];
    const hs_result_edge *e = &f->edge;
    hs_words felt = hs_page_coarse(page, e->felt_m, HS_UP);
    if (f->rib)
        hs_page_say(page, 4,
                    "so narrow that the cases of its sides meet: hard right through, and "
                    "brittle");
    if (!e->present) return;
    char where[64];
    if (e->masked)
        snprintf(where, sizeof where, "at corner %zu, beyond which it is masked,", e->corner);
    else
        snprintf(where, sizeof where, "at inner corner %zu (%.0f degrees)", e->corner,
                 e->corner_rad * DEGREES);
    if (e->land)
        hs_page_say(page, 4,
                    "worst spot: a narrow face between two inner corners or masks, judged as one "
                    "edge: case %.0f %% of the flat's",
                    100 * e->share);
    else if (isfinite(e->felt_m) && e->felt_m > 0)
        hs_page_say(page, 4, "worst spot %s case %.0f %% of the flat's; felt for %s along the face",
                    where, 100 * e->share, felt.text);
    else
        hs_page_say(page, 4, "worst spot %s case %.0f %% of the flat's", where, 100 * e->share);
}

void hs_text_sunk_corner(hs_page *page, size_t face) {
    const hs_result_edge *e = &page->result->face[face].edge;
    double wanted_m = page->job->face[face].case_m;
    if (!e->present || !isfinite(e->sunk_left_m)) return;
    hs_page_say(page, 4, "in the corner itself, both faces ground and no relief groove: %s left%s",
                hs_page_short(page, e->sunk_left_m, HS_DOWN).text,
                e->sunk_left_m < wanted_m ? ", less than is wanted: cut the groove (see GRIND)"
                                          : "");
}

void hs_text_outer_edge(hs_page *page) {
    const hs_result_case *c = &page->result->hard;
    if (!(c->outer_rad > 0) || !c->hardens) return;
    if (isfinite(c->outer_depth_m) && isfinite(c->outer_felt_m))
        hs_page_say(
            page, 2,
            "outer edges (%.0f degrees): case %s deep from the edge inward, deeper than the "
            "flat's for %s along the face",
            c->outer_rad * DEGREES, hs_page_coarse(page, c->outer_depth_m, HS_NEAREST).text,
            hs_page_coarse(page, c->outer_felt_m, HS_UP).text);
    if (c->outer_keen)
        hs_page_say(page, 2, "the keen edge of %.0f degrees is hard right through: it chips",
                    c->outer_rad * DEGREES);
    if (isfinite(c->outer_break_m))
        hs_page_say(page, 2, "break the outer edges before the fire, %s wide, against chipping",
                    hs_page_coarse(page, c->outer_break_m, HS_NEAREST).text);
}
