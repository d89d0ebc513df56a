#include "plan/measured_input.h"

#include <math.h>

/* Everything counts from the hardened surface: the blank's less what the fire took. A reading puts
 * its own depth and doubt in the place of the computed ones. */
static void measured_face(hs_measured_face *out, const hs_chain *chain, size_t face,
                          const hs_result *r) {
    static const double middle[HS_INPUTS] = {0};
    hs_part_draw draw = hs_chain_draw(chain, middle);
    hs_trial t = hs_chain_trial(chain, face, 0, &draw);
    const hs_face *f = &chain->job->face[face];
    const hs_face_chain *c = &chain->face[face];
    const hs_reading *reading = &chain->reading;
    const hs_result_face *bad = &r->face[face];
    double lost_m = r->scale.lost_m;
    out->clean_up_m = t.sum.clean_up_m;
    out->clean_up_high_m = bad->present ? bad->clean_up_m : t.sum.clean_up_m;
    out->hard_to_m = out->hard_to_low_m = INFINITY;
    if (c->axis == HS_MAX_AXES) return;
    double low_m = (r->hard.depth_m - r->hard.depth_low_m) + (r->scale.lost_high_m - lost_m);
    double case_m = t.case_m, hard_to_m = hs_chain_hard_to(chain, face, &draw);
    if (reading->present) {
        const hs_response *axis = &chain->response[c->axis];
        const hs_steel *steel = &chain->job->part.steel;
        low_m = reading->doubt_here_m;
        /* read away from edges */
        case_m = hs_chain_edge_share(chain, face, &c->wanted, &draw) *
                 hs_reading_depth(reading, axis, steel, &c->wanted, middle);
        hard_to_m = hs_chain_edge_share(chain, face, &c->asked, &draw) *
                    hs_reading_depth(reading, axis, steel, &c->asked, middle);
    }
    out->case_m = case_m - lost_m;
    out->case_low_m = out->case_m - low_m;
    out->soft_rim_m = r->hard.soft_rim_m;
    if (!hs_face_asks(f)) out->free_m = t.sum.budget_m - lost_m;
    if (!(f->hardness_HV > 0)) return;
    out->hard_to_m = hard_to_m - lost_m;
    out->hard_to_low_m = out->hard_to_m - low_m;
}

/* What is ground off is gone: the case counts from the surface as it is. */
static void take_off(hs_measured_face *face, double ground_m) {
    face->case_m -= ground_m;
    face->case_low_m -= ground_m;
    face->hard_to_m -= ground_m;
    face->hard_to_low_m -= ground_m;
    if (face->free_m > 0) face->free_m = fmax(face->free_m - ground_m, HS_BENCH_NOISE_M);
}

static double ground_of(const hs_job *job, size_t face) {
    double most_m = 0;
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_dimension *d = &job->dimension[i];
        if (d->face[0] == face || d->face[1] == face)
            most_m = fmax(most_m, job->measured.dimension[i].ground_m);
    }
    return job->face[face].finish == HS_GROUND ? most_m : 0;
}

void hs_measured_input_make(hs_measured_input *in, const hs_chain *chain,
                            const hs_window_found *found, const hs_result *r) {
    const hs_job *job = chain->job;
    *in = (hs_measured_input){.case_read = chain->reading.present};
    for (size_t i = 0; i < job->faces; i++) {
        measured_face(&in->face[i], chain, i, r);
        take_off(&in->face[i], ground_of(job, i));
    }
    for (size_t i = 0; i < job->dimensions; i++) {
        in->split_m[i] = fmax(found[i].bad[0].split_m, found[i].bad[1].split_m);
        in->shape_m[i] = found[i].shape_typical_m;
        in->shape_high_m[i] = found[i].shape_high_m;
        in->sprung_m[i] = found[i].sprung_m;
        in->sprung_high_m[i] = found[i].sprung_high_m;
    }
}
