#include "plan/reading_make.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double middle[HS_INPUTS] = {0};

static const char *reads(hs_case_way way) {
    return hs_table_text(hs_table_get(HS_TABLE_CASE_WAYS), (size_t)way, HS_CASE_WAYS_READS);
}

static double number(hs_case_way way, size_t column) {
    return hs_table_number(hs_table_get(HS_TABLE_CASE_WAYS), (size_t)way, column);
}

double hs_reading_expected(const hs_chain *chain, size_t face, hs_case_way way, double limit_HV) {
    const hs_response *r = &chain->response[chain->face[face].axis];
    if (!strcmp(reads(way), "hardness")) return hs_chain_depth_to(chain, face, limit_HV);
    double carbon_pct = number(way, HS_CASE_WAYS_CARBON);
    if (!strcmp(reads(way), "above core")) carbon_pct += chain->job->part.steel.mid.C;
    hs_response_draw draw = hs_response_at(r, &chain->job->part.steel, middle);
    double depth_m = hs_response_depth(r, carbon_pct, &draw);
    return chain->reading.plan && chain->reading.factor > 0 ? chain->reading.factor * depth_m
                                                            : depth_m;
}

/* Case at the worst spot of a face, in the middle, less what is wanted of it. */
static double budget_m(const hs_chain *chain, size_t i) {
    const hs_face_chain *f = &chain->face[i];
    const hs_face *face = &chain->job->face[i];
    hs_part_draw typical = {.z = middle};
    typical.carbon = hs_response_at(&chain->response[f->axis], &chain->job->part.steel, middle);
    double share = hs_chain_edge_share(chain, i, &f->wanted, &typical);
    return share * hs_chain_depth_to(chain, i, face->limit_HV) - face->case_m;
}

size_t hs_reading_face(const hs_chain *chain) {
    size_t worst = HS_MAX_FACES;
    double least_m = INFINITY;
    if (chain->reading.present) return chain->reading.face;
    for (size_t i = 0; i < chain->job->faces; i++) {
        const hs_face *face = &chain->job->face[i];
        if (chain->face[i].axis == HS_MAX_AXES) continue;
        if (worst == HS_MAX_FACES) worst = i;
        if (face->finish != HS_GROUND || !hs_face_asks(face)) continue;
        double m = budget_m(chain, i);
        if (m < least_m) worst = i;
        least_m = fmin(least_m, m);
    }
    return worst;
}

static int bench_read(const hs_job *job) {
    for (size_t i = 0; i < job->dimensions; i++)
        if (job->measured.dimension[i].size_given || job->measured.dimension[i].shape_given)
            return 1;
    return 0;
}

static hs_status ask_back(const hs_job *job, const char *what, double computed_m, hs_error *err) {
    const hs_measured *m = &job->measured;
    hs_status status = hs_fail(
        err, HS_E_DISAGREE,
        "is it per side, in the unit meant, on the right piece, and is the route right? Read it "
        "again; if it is so, add \"checked\": true beside the depth",
        "a case of %s was read, %s %s", hs_word_length(m->case_m, job->inch_first, HS_NEAREST).text,
        what, hs_word_length(computed_m, job->inch_first, HS_NEAREST).text);
    if (err && m->case_pointer) snprintf(err->pointer, sizeof err->pointer, "%s", m->case_pointer);
    return status;
}

hs_status hs_reading_make(hs_reading *reading, const hs_chain *chain, hs_error *err) {
    const hs_job *job = chain->job;
    const hs_measured *m = &job->measured;
    *reading = (hs_reading){0};
    if (!m->stated || !(m->case_m > 0) || chain->axes.n == 0) return HS_OK;
    double lost_m =
        hs_loss_metal(&chain->loss, job->steps, middle) + hs_loss_taken(&chain->loss, middle);
    hs_reading r = {.present = 1,
                    .plan = !bench_read(job),
                    .of_hardness = !strcmp(reads(m->case_way), "hardness"),
                    .limit_HV = NAN,
                    .read_m = m->case_m,
                    .from_blank_m = m->case_m + lost_m};
    if (r.of_hardness) r.limit_HV = m->case_limit_HV;
    r.face = hs_reading_face(chain);
    r.computed_m = hs_reading_expected(chain, r.face, m->case_way, m->case_limit_HV);
    if (r.computed_m > 0) r.factor = r.from_blank_m / r.computed_m;
    r.doubt_m = 1e-3 * number(m->case_way, HS_CASE_WAYS_DOUBT);
    r.doubt_here_m = fmax(r.doubt_m, m->on_part ? HS_K_MEASURED_DOUBT_CASE_ON_PART
                                                : HS_K_MEASURED_DOUBT_CASE_TEST_PIECE);
    double total_m = hs_reading_expected(chain, r.face, HS_CASE_ETCH, 0) - lost_m;
    double there_m = r.computed_m - lost_m;
    if (!m->case_checked && r.read_m > HS_K_READING_LIMITS_MOST_TOTAL * total_m)
        return ask_back(job, "more than 1.5 times the total case computed,", total_m, err);
    if (!m->case_checked && r.read_m < HS_K_READING_LIMITS_LEAST_SHARE * there_m)
        return ask_back(job, "less than a third of what was computed for that way of reading,",
                        there_m, err);
    *reading = r;
    return HS_OK;
}
