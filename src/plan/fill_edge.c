/* Edges in the result: where the case is shallower than the flat's, where it is deeper. */
#include "plan/fill.h"

#include "constants.h"

#include <math.h>

static const double PI = 3.14159265358979324;

/* Level of the carbon a limit asks for, as the edges count it: of the flat's own surface. */
static double level_in_the_middle(const hs_chain *chain, size_t face) {
    static const double middle[HS_INPUTS] = {0};
    const hs_response *r = &chain->response[chain->face[face].axis];
    double least = hs_limit_least(&chain->face[face].wanted, middle);
    return (least - r->core_pct) / (r->surface_pct[1] - r->core_pct);
}

double hs_fill_edge_felt_m(const hs_chain *chain, size_t face) {
    const hs_face_edge *e = &chain->edge[face];
    static const double middle[HS_INPUTS] = {0};
    hs_part_draw draw = hs_chain_draw(chain, middle);
    double along, level = level_in_the_middle(chain, face) / e->lag;
    if (!(e->angle_rad > 0) ||
        hs_edge_along(&along, e->angle_rad, level, HS_K_EDGE_CASE_FELT, NULL) != HS_OK)
        return NAN;
    return along * hs_chain_trial(chain, face, 0, &draw).flat_m;
}

static void fill_inner(hs_result_edge *out, const hs_chain *chain, size_t face) {
    const hs_face_edge *e = &chain->edge[face];
    static const double middle[HS_INPUTS] = {0};
    hs_part_draw draw = hs_chain_draw(chain, middle);
    double sunk_left_m = out->sunk_left_m; /* known from the draws */
    hs_trial t = hs_chain_trial(chain, face, 0, &draw);
    if (!(e->angle_rad > 0) || !(t.flat_m > 0)) return;
    *out = (hs_result_edge){.present = 1,
                            .corner = e->corner,
                            .corner_rad = e->corner_rad,
                            .masked = e->masked,
                            .land = e->land,
                            .share = t.case_m / t.flat_m,
                            .felt_m = hs_fill_edge_felt_m(chain, face),
                            .sunk_left_m = sunk_left_m};
}

/* Broken by so much before the fire, an edge keeps its chamfer after the wheel. */
static double break_m(const hs_result *r, const hs_chain *chain) {
    double most_m = 0;
    for (size_t i = 0; i < chain->job->faces; i++) {
        if (!r->face[i].present) continue;
        if (!isfinite(r->face[i].removal_max_m)) return NAN;
        most_m = fmax(most_m, r->face[i].removal_max_m);
    }
    const double tenth_m = 1e-4, sides = hs_ground_faces_meet(chain->job) ? 2 : 1;
    return ceil((HS_K_EDGE_CASE_CHAMFER + sides * most_m) / tenth_m) * tenth_m;
}

static void fill_outer(hs_result *r, const hs_chain *chain, size_t face) {
    hs_result_case *out = &r->hard;
    hs_edge edge;
    double along, level = level_in_the_middle(chain, face);
    out->outer_rad = hs_outer_edge(chain->job);
    out->outer_depth_m = out->outer_felt_m = NAN;
    out->outer_break_m = break_m(r, chain);
    if (!(out->outer_rad > 0)) return;
    out->outer_keen = out->outer_rad < HS_K_EDGE_CASE_KEEN;
    if (hs_edge_make(&edge, out->outer_rad, NULL) == HS_OK)
        out->outer_depth_m = out->depth_m * hs_edge_inward(&edge, level);
    if (hs_edge_along(&along, out->outer_rad, level, HS_K_EDGE_CASE_EXCESS, NULL) == HS_OK)
        out->outer_felt_m = along * out->depth_m;
    if (out->outer_rad > PI - 0.01) out->outer_rad = 0;
}

static int is_rib(const hs_chain *chain, size_t face, double flat_m) {
    const hs_section *section = &chain->job->part.section;
    size_t edge = chain->job->face[face].edge, n = section->outline.n;
    hs_section_edge own;
    double one, other;
    if (edge == 0 || hs_section_edge_at(&own, section, edge, NULL) != HS_OK) return 0;
    if (hs_section_corner(&one, section, edge, NULL) != HS_OK ||
        hs_section_corner(&other, section, edge % n + 1, NULL) != HS_OK)
        return 0;
    return one < PI - 0.01 && other < PI - 0.01 && own.length_m < HS_K_EDGE_CASE_LAND * flat_m;
}

void hs_fill_edges(hs_result *result, const hs_chain *chain) {
    size_t face = HS_MAX_FACES;
    for (size_t i = 0; i < chain->job->faces; i++) {
        if (!result->face[i].present || chain->face[i].axis == HS_MAX_AXES) continue;
        fill_inner(&result->face[i].edge, chain, i);
        result->face[i].rib = is_rib(chain, i, result->hard.depth_m);
        if (face == HS_MAX_FACES && chain->job->face[i].limit_HV == result->hard.limit_HV) face = i;
    }
    if (face < HS_MAX_FACES && result->hard.hardens) fill_outer(result, chain, face);
}
