/* Sizes that cannot have been measured on this part are asked back, not judged. */
#include "plan/measured_ask.h"
#include "plan/chain.h"
#include "plan/warp.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>

static const char help[] =
    "is it this dimension of this part, in the unit meant, and was it read as \"how\" says? "
    "Measure again; if it is so, add \"checked\": true beside the size";

static hs_status ask(const hs_measured_dimension *m, hs_status status, hs_error *err) {
    if (err && m->pointer) snprintf(err->pointer, sizeof err->pointer, "%s", m->pointer);
    return status;
}

/* How many of its faces the wheel takes, a diameter counting twice; 0 where one asks no case. */
static int cased_sides(const hs_job *job, const hs_dimension *d) {
    int sides = 0;
    for (int k = 0; k < 2; k++) {
        const hs_face *f = &job->face[d->face[k]];
        if (f->finish != HS_GROUND) continue;
        if (!hs_face_asks(f)) return 0;
        sides++;
    }
    return sides;
}

static hs_status ask_of(const hs_job *job, size_t i, double total_m, hs_error *err) {
    const hs_dimension *d = &job->dimension[i];
    const hs_measured_dimension *m = &job->measured.dimension[i];
    int inside = hs_dimension_inside(job, d), inch = job->inch_first;
    double size_m = hs_bench_size(job, i);
    double end_m = inside ? d->size.upper_m : d->size.lower_m; /* nothing beyond is a part */
    double stock_m = inside ? end_m - size_m : size_m - end_m;
    hs_word is = hs_word_length(size_m, inch, HS_NEAREST);
    hs_word end = hs_word_length(end_m, inch, HS_NEAREST);
    if (stock_m < -HS_BENCH_NOISE_M)
        return ask(m,
                   hs_fail(err, HS_E_DISAGREE, help,
                           "%s was measured as %s, %s than the finished size may be, %s", d->name,
                           is.text, inside ? "larger" : "smaller", end.text),
                   err);
    int sides = cased_sides(job, d);
    double left_m = total_m - m->ground_m;
    if (sides == 0 || !(total_m > 0) || stock_m / sides <= left_m) return HS_OK;
    return ask(m,
               hs_fail(err, HS_E_DISAGREE, help,
                       "%s was measured as %s: %s a side to come off, and the whole case is only "
                       "%s deep",
                       d->name, is.text, hs_word_length(stock_m / sides, inch, HS_NEAREST).text,
                       hs_word_length(left_m, inch, HS_NEAREST).text),
               err);
}

hs_status hs_measured_ask(const hs_job *job, double total_m, hs_error *err) {
    for (size_t i = 0; job->measured.stated && i < job->dimensions; i++) {
        const hs_measured_dimension *m = &job->measured.dimension[i];
        if (!m->size_given || m->size_checked || !hs_dimension_ground(job, i)) continue;
        hs_status status = ask_of(job, i, total_m, err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}
