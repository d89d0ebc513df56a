#include "property/true_part.h"

#include "base/random.h"

#include <math.h>

vg_part true_part(const hs_chain *chain, const hs_result *r, size_t index, uint32_t sample,
                  vg_kind kind) {
    const hs_job *job = chain->job;
    const hs_dimension *d = &job->dimension[index];
    double z[HS_INPUTS];
    for (uint32_t k = 0; k < HS_INPUTS; k++)
        z[k] = hs_random_normal(77, sample, k);
    hs_part_draw draw = hs_chain_draw(chain, z);
    double growth_m = hs_warp_growth(&chain->warp, job, d, z);
    double shape_m = hs_warp_shape(&chain->warp, job, d, draw.bow_x_m, draw.bow_y_m, z);
    double place = 2 * hs_random_uniform(78, sample, 0) - 1;
    vg_part p = {.kind = kind,
                 .length_m = job->part.length_m,
                 .width_m = job->part.width_m > 0 ? job->part.width_m : 0.01,
                 .rough_m = r->dimension[index].rough_aim_m + place * job->shop.rough_tolerance_m,
                 .scale_m = draw.lost_m,
                 .set_m = draw.set_up_m};
    p.strain = 2 * growth_m / d->size.nominal_m;
    if (kind == VG_RING_BORE) p.strain = -p.strain;
    p.bow_m = kind == VG_OLD_CENTRES ? shape_m / 2 : shape_m;
    p.ovality_m = 2 * shape_m;
    for (int k = 0; k < 2; k++) {
        hs_trial t = hs_chain_trial(chain, d->face[k], growth_m, &draw);
        p.clean_up_m[k] = t.sum.clean_up_m;
        p.case_m[k] = t.case_m;
        p.wanted_m[k] = job->face[d->face[k]].case_m;
        p.hard_to_m[k] = job->face[d->face[k]].hardness_HV > 0
                             ? hs_chain_hard_to(chain, d->face[k], &draw)
                             : INFINITY;
    }
    return p;
}

vg_result true_part_ground(vg_part p, double finish_m) {
    p.finish_m = finish_m;
    p.first_share_m = 0.5 * (p.rough_m - finish_m);
    vg_result worst = {INFINITY, INFINITY, INFINITY};
    for (int k = 0; k < 4; k++) {
        p.set_angle = k * acos(-1) / 2;
        vg_result one = vg_grind(&p);
        worst.case_m = fmin(worst.case_m, one.case_m);
        worst.clean_m = fmin(worst.clean_m, one.clean_m);
        worst.hard_m = fmin(worst.hard_m, one.hard_m);
    }
    return worst;
}
