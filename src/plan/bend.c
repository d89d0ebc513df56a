#include "plan/bend.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/bend_section.h"
#include "plan/warp_frame.h"

#include <math.h>
#include <string.h>

/* Case depths that differ by less than this share bend alike, to well within the doubt. */
static const double AS_DEEP = 0.06;

static double uneven_of(const hs_step *quench) {
    if (quench->uneven >= 0) return quench->uneven;
    return hs_table_number(hs_table_get(HS_TABLE_QUENCH), quench->medium_row,
                           HS_QUENCH_UNEVEN_REFERENCE);
}

static int same(const hs_bend_key *a, const hs_bend_key *b) {
    return a->medium_row == b->medium_row && a->start_K == b->start_K &&
           !memcmp(&a->steel, &b->steel, sizeof a->steel) &&
           !memcmp(a->closed, b->closed, sizeof a->closed);
}

static hs_status layer_of(hs_bend_work *work, double *case_m, const hs_job *job,
                          const hs_route *route, const hs_case_profile *typical,
                          const hs_quenched *quenched, hs_error *err) {
    static const double surface_m = 0;
    const hs_composition *steel = &job->part.steel.mid;
    hs_quench_profile p = {typical->n, typical->depth_m, typical->carbon_pct,
                           hs_acm_pct(route->dissolve_K)};
    if (p.n == 0) {
        p.n = 1;
        p.depth_m = &surface_m;
        p.carbon_pct = &steel->C;
    }
    return hs_quench_layer_of(&work->layer, case_m, &p, steel, quenched, route->dissolve_K, err);
}

static hs_status question_of(hs_bow_question *out, hs_bend *bend, const hs_job *job,
                             const hs_route *route, hs_bend_work *work, hs_error *err) {
    const hs_bend_section *part = &work->part;
    const hs_table *media = hs_table_get(HS_TABLE_QUENCH);
    double first_rad = 0;
    hs_status status = HS_OK;
    if (job->part.form == HS_PROFILE) status = hs_warp_frame(&first_rad, &part->section, err);
    if (status != HS_OK) return status;
    hs_bow_question q = {.section = &part->section,
                         .closed = bend->key.closed,
                         .layer = &work->layer,
                         .case_m = bend->case_m,
                         .steel = &job->part.steel.mid,
                         .medium = hs_table_text(media, bend->key.medium_row, HS_QUENCH_MEDIUM),
                         .start_K = route->dissolve_K,
                         .bath_K = HS_K_PLAN_DOUBT_QUENCH_BATH,
                         .uneven = bend->uneven,
                         .plasticity_high_1_Pa = hs_quench_plasticity_most(),
                         .coarse = bend->coarse,
                         .first_rad = first_rad,
                         .second_only = part->ring,
                         .edge_factor = part->ring ? part->edge_factor : NULL,
                         .diameter_m = part->diameter_m,
                         .mirror_x = part->mirror_x,
                         .mirror_y = part->mirror_y,
                         .alike = part->alike};
    if (!bend->coarse) q.trace = &bend->trace;
    if (bend->case_m > 0) q.plasticity_low_1_Pa = hs_quench_plasticity_case_least();
    *out = q;
    return HS_OK;
}

static hs_status surface_of(hs_bend *bend, const hs_job *job, const hs_route *route,
                            hs_bend_work *work, hs_error *err) {
    hs_bow_question q;
    hs_status status = question_of(&q, bend, job, route, work, err);
    if (status != HS_OK) return status;
    status = hs_bow_surface_make(&bend->surface, &q, &work->quench, err);
    if (status == HS_OK) bend->growth = hs_bow_growth(&work->quench);
    return status;
}

static int as_deep(const hs_bend *a, const hs_bend *b) {
    return fabs(a->case_m - b->case_m) <= AS_DEEP * a->case_m;
}

/* Its runs hold for `wanted`; in a search also those of another case depth. */
static int serves(const hs_bend *b, const hs_bend *wanted) {
    return b->coarse <= wanted->coarse && same(&b->key, &wanted->key) &&
           (wanted->coarse || as_deep(b, wanted));
}

/* The one of the nearest depth; NULL: none. */
static const hs_bend *known(const hs_bend *like, const hs_bend_work *work, const hs_bend *wanted) {
    const hs_bend *best = like && serves(like, wanted) ? like : NULL;
    for (size_t i = 0; i < work->known; i++) {
        const hs_bend *b = &work->bend[i];
        if (!serves(b, wanted)) continue;
        if (!best || fabs(b->case_m - wanted->case_m) < fabs(best->case_m - wanted->case_m))
            best = b;
    }
    return best;
}

/* Runs of another depth are good enough to search with, not to answer with. */
static void take_over(hs_bend *out, const hs_bend *found) {
    hs_bend_key key = out->key;
    double uneven = out->uneven, case_m = out->case_m;
    int coarse = found->coarse || !as_deep(found, out);
    *out = *found;
    out->key = key;
    out->uneven = uneven;
    out->coarse = coarse;
    if (coarse) out->case_m = case_m;
}

/* All of a bend but its runs: what would be asked of them. */
static hs_status begin(hs_bend *out, const hs_job *job, const hs_route *route,
                       const hs_case_profile *typical, const hs_quenched *quenched,
                       hs_bend_work *work, hs_error *err) {
    const hs_step *quench = &job->step[route->quench];
    *out = (hs_bend){.key = {.medium_row = quench->medium_row,
                             .start_K = route->dissolve_K,
                             .steel = job->part.steel.mid},
                     .uneven = uneven_of(quench)};
    hs_bend_section_of(&work->part, out->key.closed, job);
    return layer_of(work, &out->case_m, job, route, typical, quenched, err);
}

hs_status hs_bend_check(const hs_job *job, const hs_route *route, const hs_case_profile *typical,
                        const hs_quenched *quenched, hs_bend_work *work, hs_error *err) {
    hs_bend one;
    hs_bow_question q;
    hs_status status = begin(&one, job, route, typical, quenched, work, err);
    if (status == HS_OK) status = question_of(&q, &one, job, route, work, err);
    if (status == HS_OK) status = hs_bow_check(&q, &work->quench, err);
    if (status != HS_E_TOO_LARGE) return status;
    return hs_fail(err, HS_E_RANGE, "fewer corners and holes, a stouter section, true sizes",
                   "the section is too long and thin, or has too many corners, for its quench to "
                   "be computed");
}

hs_status hs_bend_make(hs_bend *bend, const hs_bend *like, const hs_job *job, const hs_route *route,
                       const hs_case_profile *typical, const hs_quenched *quenched, int coarse,
                       hs_bend_work *work, hs_error *err) {
    hs_bend out;
    hs_status status = begin(&out, job, route, typical, quenched, work, err);
    if (status != HS_OK) return status;
    out.coarse = coarse;
    const hs_bend *found = known(like, work, &out);
    if (found) {
        take_over(&out, found);
        *bend = out;
        return HS_OK;
    }
    status = surface_of(&out, job, route, work, err);
    if (status != HS_OK) return status;
    if (work->known < HS_BENDS_KNOWN) work->bend[work->known++] = out;
    *bend = out;
    return HS_OK;
}

static void inputs(double to[HS_BOW_INPUTS], const double z[HS_INPUTS]) {
    to[HS_BOW_UNEVEN] = z[HS_IN_UNEVEN];
    to[HS_BOW_SIDE] = z[HS_IN_SIDE];
    to[HS_BOW_FILM] = z[HS_IN_FILM];
    to[HS_BOW_PLASTICITY] = z[HS_IN_PLASTICITY];
    to[HS_BOW_MODEL_X] = z[HS_IN_MODEL_X];
    to[HS_BOW_MODEL_Y] = z[HS_IN_MODEL_Y];
    to[HS_BOW_SOFT] = z[HS_IN_SOFT];
}

void hs_bend_draw(double *x_1_m, double *y_1_m, const hs_bend *bend, const double z[HS_INPUTS]) {
    double in[HS_BOW_INPUTS];
    inputs(in, z);
    hs_bow_curvatures(y_1_m, x_1_m, &bend->surface, bend->uneven, in);
}

/* Outside and bore washed unlike each other, this way at one quarter and the other way at the
 * next. */
double hs_bend_ring(const hs_bend *bend, const double z[HS_INPUTS]) {
    double in[HS_BOW_INPUTS];
    inputs(in, z);
    return hs_bow_swing(&bend->surface, bend->uneven, in);
}
