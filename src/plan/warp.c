#include "plan/warp.h"

#include "constants.h"
#include "hardskin/model/bow.h"
#include "hardskin/model/growth.h"
#include "hardskin/tables/table.h"
#include "plan/cool.h"
#include "plan/warp_frame.h"

#include <math.h>
#include <string.h>

static double spread_of_quench(const hs_step *quench) {
    const hs_table *table = hs_table_get(HS_TABLE_QUENCH);
    double beta = hs_table_number(table, quench->medium_row, HS_QUENCH_SIGMA_BETA);
    double usual = hs_table_number(table, quench->medium_row, HS_QUENCH_UNEVEN_REFERENCE);
    return quench->uneven >= 0 ? beta * quench->uneven / usual : beta;
}

static hs_status random_bow(hs_warp *warp, const hs_job *job, hs_error *err) {
    double x_m, y_m, kappa_x, kappa_y;
    hs_warp_heights(&x_m, &y_m, &job->part, warp->axis_rad);
    hs_status status = hs_bow_random(&kappa_x, warp->beta, x_m, err);
    if (status == HS_OK) status = hs_bow_random(&kappa_y, warp->beta, y_m, err);
    if (status != HS_OK) return status;
    if (job->part.form == HS_RING) {
        /* Curvature kappa cos 2t round a ring of radius R moves its wall by kappa R^2 / 3: largest
         * less smallest diameter is four times that (thin inextensible ring). */
        double mean_m = 0.25 * (job->part.outside_m + job->part.bore_m);
        warp->sigma_ovality_m = 4 * kappa_y * mean_m * mean_m / 3;
        return HS_OK;
    }
    warp->sigma_x_m = hs_bow_sag_m(kappa_x, job->part.length_m);
    warp->sigma_y_m = hs_bow_sag_m(kappa_y, job->part.length_m);
    return HS_OK;
}

/* Growth of one node of the profile, and of steel that stays soft (0 by definition). */
static double volume_growth(const hs_route *route, const hs_steel *steel, double carbon_pct,
                            double dissolved_most_pct) {
    hs_hardening h = {.steel = steel->mid,
                      .dissolve_K = route->dissolve_K,
                      .quench_to_K = HS_K_PLAN_DOUBT_QUENCH_BATH};
    double austenite = 0, volume = 0;
    hs_hardened_HV(&h, fmax(carbon_pct, 0.1), &austenite);
    hs_growth_layer layer = {.area_m2 = 1,
                             .dissolved_pct = fmin(carbon_pct, dissolved_most_pct),
                             .carbide_pct = hs_growth_carbide_pct(carbon_pct, dissolved_most_pct),
                             .austenite_pct = 100 * austenite};
    if (hs_growth_volume(&volume, &layer, NULL) != HS_OK) return 0;
    return volume / 300;
}

typedef struct strains {
    double mean, core, layer,
        layer_m; /* of the section; of the core; extra of the case, its depth */
} strains;

static int edge_exposed(const hs_job *job, size_t edge) {
    for (size_t i = 0; i < job->faces; i++)
        if (job->face[i].edge == edge && job->face[i].finish == HS_SOFT) return 0;
    return 1;
}

static int named_exposed(const hs_job *job, const char *name) {
    for (size_t i = 0; i < job->faces; i++)
        if (!strcmp(job->face[i].name, name)) return job->face[i].finish != HS_SOFT;
    return 1;
}

/* Perimeter of the section that is not masked. */
static double exposed_m(const hs_job *job, const hs_bulk *bulk) {
    const hs_part *p = &job->part;
    const double turn = 3.14159265358979323846; /* perimeter of a circle over its diameter */
    double sides_m[] = {p->width_m,          p->width_m,       p->thickness_m,      p->thickness_m,
                        turn * p->outside_m, turn * p->bore_m, turn * p->diameter_m};
    static const char *const names[] = {"top",     "bottom", "front",  "back",
                                        "outside", "bore",   "outside"};
    double open_m = bulk->perimeter_m;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (!named_exposed(job, names[i])) open_m -= sides_m[i];
    for (size_t k = 1; p->form == HS_PROFILE && k <= p->section.outline.n; k++) {
        hs_section_edge edge;
        if (edge_exposed(job, k)) continue;
        if (hs_section_edge_at(&edge, &p->section, k, NULL) == HS_OK) open_m -= edge.length_m;
    }
    return fmax(0, open_m);
}

/* Case cells over the exposed perimeter, the rest of the section core. */
static strains section_strains(const hs_job *job, const hs_route *route, const hs_case_profile *p,
                               int core_hardens) {
    const hs_steel *steel = &job->part.steel;
    double most = hs_acm_pct(route->dissolve_K), core_pct = p->carbon_pct[p->n - 1];
    strains out = {0};
    if (core_hardens) out.core = volume_growth(route, steel, core_pct, most);
    hs_bulk bulk = hs_bulk_of(&job->part);
    double extra = 0;
    for (size_t i = 1; i < p->n; i++) {
        double carbon = 0.5 * (p->carbon_pct[i] + p->carbon_pct[i - 1]);
        double thick_m = p->depth_m[i] - p->depth_m[i - 1];
        if (carbon <= core_pct + HS_K_AUSTENITE_TOTAL_CASE) break;
        extra += (volume_growth(route, steel, carbon, most) - out.core) * thick_m;
        out.layer_m = p->depth_m[i];
    }
    double cased_m2 = fmin(exposed_m(job, &bulk) * out.layer_m, bulk.section_m2);
    if (out.layer_m > 0) out.layer = extra / out.layer_m;
    out.mean = out.core + out.layer * cased_m2 / bulk.section_m2;
    return out;
}

/* Free strain of one exposed edge's case, integrated about the centroid. */
static void add_edge(hs_bow_load *load, const hs_section_properties *s, hs_point middle, double nx,
                     double ny, double length_m, const strains *e) {
    double area = length_m * e->layer_m;
    double x = middle.x_m - 0.5 * nx * e->layer_m - s->x_m;
    double y = middle.y_m - 0.5 * ny * e->layer_m - s->y_m;
    load->E0_m2 += e->layer * area;
    load->Qx_m3 += e->layer * area * y;
    load->Qy_m3 += e->layer * area * x;
}

static void plate_load(hs_bow_load *load, const hs_section_properties *s, const hs_job *job,
                       const strains *e) {
    double w = job->part.width_m, t = job->part.thickness_m;
    if (named_exposed(job, "top")) add_edge(load, s, (hs_point){0, t / 2}, 0, 1, w, e);
    if (named_exposed(job, "bottom")) add_edge(load, s, (hs_point){0, -t / 2}, 0, -1, w, e);
    if (named_exposed(job, "front")) add_edge(load, s, (hs_point){w / 2, 0}, 1, 0, t, e);
    if (named_exposed(job, "back")) add_edge(load, s, (hs_point){-w / 2, 0}, -1, 0, t, e);
}

static hs_status profile_load(hs_bow_load *load, const hs_section_properties *s, const hs_job *job,
                              const strains *e, hs_error *err) {
    for (size_t k = 1; k <= job->part.section.outline.n; k++) {
        hs_section_edge edge;
        hs_status status = hs_section_edge_at(&edge, &job->part.section, k, err);
        if (status != HS_OK) return status;
        if (edge_exposed(job, k))
            add_edge(load, s, edge.middle, edge.nx, edge.ny, edge.length_m, e);
    }
    return HS_OK;
}

/* A case that is not alike all round the section bends it (elastic, generalised plane strain). */
static hs_status uneven_case(hs_warp *warp, const hs_job *job, const strains *e, hs_error *err) {
    hs_section_properties s;
    hs_bow_load load = {0};
    hs_bow_shape shape;
    hs_status status = HS_OK;
    if (job->part.form == HS_PLATE) {
        status = hs_section_plate(&s, job->part.width_m, job->part.thickness_m, err);
        if (status == HS_OK) plate_load(&load, &s, job, e);
    } else if (job->part.form == HS_PROFILE) {
        status = hs_section_measure(&s, &job->part.section, err);
        if (status == HS_OK) status = profile_load(&load, &s, job, e, err);
    } else {
        return HS_OK;
    }
    if (status == HS_OK) status = hs_bow_elastic(&shape, &s, &load, err);
    if (status != HS_OK) return status;
    double x_m = hs_bow_sag_m(shape.kappa_y_1_m, job->part.length_m);
    double y_m = hs_bow_sag_m(shape.kappa_x_1_m, job->part.length_m);
    double c = cos(warp->axis_rad), sine = sin(warp->axis_rad);
    /* With their signs: across a slanted face the two add or cancel. */
    warp->one_sided_x_m = c * x_m + sine * y_m;
    warp->one_sided_y_m = c * y_m - sine * x_m;
    /* Rounding of a symmetric section is no bow. */
    if (fabs(warp->one_sided_y_m) < 1e-12) warp->one_sided_y_m = 0;
    if (fabs(warp->one_sided_x_m) < 1e-12) warp->one_sided_x_m = 0;
    return HS_OK;
}

static double straightened_to(const hs_job *job, size_t quench) {
    double left_m = INFINITY;
    for (size_t i = quench + 1; i < job->steps; i++)
        if (job->step[i].kind == HS_STRAIGHTEN) left_m = job->step[i].left_m;
    return left_m;
}

hs_status hs_warp_make(hs_warp *warp, const hs_job *job, const hs_route *route, const hs_axes *axes,
                       const hs_case_profile *typical, int core_hardens, hs_error *err) {
    *warp = (hs_warp){.beta = spread_of_quench(&job->step[route->quench]),
                      .left_m = straightened_to(job, route->quench)};
    hs_status status = HS_OK;
    if (job->part.form == HS_PROFILE)
        status = hs_warp_frame(&warp->axis_rad, &job->part.section, err);
    if (status == HS_OK) status = random_bow(warp, job, err);
    if (status != HS_OK || axes->n == 0) return status;
    strains e = section_strains(job, route, typical, core_hardens);
    warp->growth = e.mean;
    return uneven_case(warp, job, &e, err);
}
