#include "measured_bench.h"

#include <math.h>
#include <string.h>

void worked_plate(bench_job *b) {
    memset(b, 0, sizeof *b);
    b->dimension[0] = (hs_dimension){.name = "thickness",
                                     .across = HS_ACROSS_FACES,
                                     .size = {20e-3, 19.979e-3, 20e-3, "h7"},
                                     .face = {0, 1}};
    for (int i = 0; i < 2; i++) {
        b->face[i] = (hs_face){.name = i ? "bottom" : "top",
                               .finish = HS_GROUND,
                               .stated = 1,
                               .case_m = 0.6e-3,
                               .limit_HV = 550};
        b->in.face[i] = (hs_measured_face){.clean_up_m = 80e-6,
                                           .clean_up_high_m = 80e-6,
                                           .case_m = 1.21e-3,
                                           .case_low_m = 1.11e-3,
                                           .hard_to_m = INFINITY,
                                           .hard_to_low_m = INFINITY};
    }
    b->step[0] = (hs_step){.kind = HS_TEMPER, .temp_K = {443.15, 443.15, 443.15}};
    b->in.split_m[0] = 20e-6;
    b->in.shape_m[0] = 0.2e-3;
    b->in.shape_high_m[0] = 0.3e-3;
    b->job.part.form = HS_PLATE;
    b->job.part.length_m = 0.3;
    b->job.dimensions = 1;
    b->job.faces = 2;
    b->job.steps = 1;
    b->job.measured.stated = 1;
    b->job.measured.dimension[0] = (hs_measured_dimension){
        .size_given = 1, .shape_given = 1, .size_m = 20.66e-3, .bow_m = 0.2e-3, .crown = 0};
}

void worked_bore(bench_job *b, double ovality_m) {
    b->job.part.form = HS_RING;
    b->dimension[0] = (hs_dimension){.name = "bore",
                                     .across = HS_ACROSS_BORE,
                                     .size = {40e-3, 40.000e-3, 40.025e-3, "H7"},
                                     .face = {0, 0}};
    b->job.measured.dimension[0] = (hs_measured_dimension){
        .size_given = 1, .shape_given = 1, .size_m = 39.5e-3, .ovality_m = ovality_m, .crown = -1};
}

const hs_result_measured_dimension *judge(bench_job *b) {
    b->job.dimension = b->dimension;
    b->job.face = b->face;
    b->job.step = b->step;
    hs_measured_judge(&b->out, &b->job, &b->in);
    return &b->out.dimension[0];
}

double sum_of(const hs_result_measured_dimension *d) {
    double sum = 0;
    for (size_t i = 0; i < d->terms; i++)
        sum += d->because[i].value_m;
    return sum;
}

const hs_remedy *remedy(const hs_result_measured_dimension *d, const char *word) {
    for (size_t i = 0; i < d->remedies; i++)
        if (strstr(d->remedy[i].what, word)) return &d->remedy[i];
    return NULL;
}
