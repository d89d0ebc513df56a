#include "plan/remedy_search.h"

#include <math.h>

int hs_search_wanted(const hs_window_found *before) {
    return before->verdict == HS_TIGHT || (before->verdict == HS_STOP && before->grounds > 0);
}

double hs_search_width(const hs_window_found *f) {
    double width_m = 0.5 * (f->rough.high_m - f->rough.low_m);
    return f->refused ? fmin(0, width_m) : width_m;
}

hs_status hs_search_run(hs_search *s, const hs_variant *variant, int fire) {
    const hs_job *job = &variant->job;
    hs_chain *chain = &s->work->chain;
    hs_status status = fire ? hs_chain_fire(chain, s->chain, job, s->scratch, NULL)
                            : hs_chain_again(chain, s->chain, job, s->scratch, NULL);
    s->ran++;
    if (status != HS_OK) return status;
    chain->reading = s->chain->reading; /* what it told of this fire holds for a longer one too */
    hs_decide_again(s->work->found, s->before, chain, &s->work->few, 0, s->decide);
    return HS_OK;
}

void hs_search_confirm(hs_search *s, const hs_variant *variant) {
    s->work->chain.job = &variant->job;
    /* a quench that ran coarse runs whole as well; if it should not, the coarse one stands */
    (void)hs_chain_whole(&s->work->chain, s->scratch, NULL);
    size_t n = 0, wanted = hs_draws_wanted(variant->job.shop.confidence);
    while (wanted > n) {
        n = wanted;
        hs_draws_take(s->draws, n);
        hs_decide_again(s->work->found, s->before, &s->work->chain, s->draws, 1, s->decide);
        wanted = hs_decide_draws(s->work->found, &variant->job, n);
    }
}

size_t hs_search_opens(const hs_search *s) {
    size_t n = 0;
    for (size_t i = 0; i < s->job->dimensions; i++)
        n += hs_search_wanted(&s->before[i]) && s->work->found[i].verdict == HS_GO;
    return n;
}

size_t hs_search_wants(const hs_search *s) {
    size_t n = 0;
    for (size_t i = 0; i < s->job->dimensions; i++)
        n += hs_search_wanted(&s->before[i]) != 0;
    return n;
}

int hs_search_spoils(const hs_search *s) {
    for (size_t i = 0; i < s->job->dimensions; i++)
        if (s->work->found[i].verdict > s->before[i].verdict) return 1;
    return 0;
}

double hs_search_total(const hs_search *s) {
    const double refused_m = -10e-3; /* to be rid of that comes first */
    double sum = 0;
    for (size_t i = 0; i < s->job->dimensions; i++) {
        const hs_window_found *f = &s->work->found[i];
        if (!hs_search_wanted(&s->before[i])) continue;
        sum += f->refused ? refused_m : fmin(hs_search_width(f), 1e-3);
    }
    return sum;
}

double hs_search_gain(const hs_search *s) {
    double most_m = -INFINITY;
    for (size_t i = 0; i < s->job->dimensions; i++)
        if (hs_search_wanted(&s->before[i]))
            most_m = fmax(most_m, hs_search_width(&s->work->found[i]) - s->few_m[i]);
    return most_m;
}

int hs_search_near(const hs_search *s) {
    const double hair_m = 50e-6; /* few draws and a coarse quench were seen to err by .035 mm */
    for (size_t i = 0; i < s->job->dimensions; i++) {
        const hs_window_found *f = &s->work->found[i];
        if (!hs_search_wanted(&s->before[i]) || f->verdict == HS_GO) continue;
        if (f->refused || hs_search_width(f) < s->job->shop.rough_tolerance_m - hair_m) return 0;
    }
    return 1;
}

void hs_search_widths(double width_m[HS_MAX_DIMENSIONS], const hs_search *s) {
    for (size_t i = 0; i < s->job->dimensions; i++)
        width_m[i] = hs_search_width(&s->work->found[i]);
}
