/* Part and verdict; at stop the dimensions that cannot be ground and what would open them. */
#include "report/sections.h"

#include <string.h>

static void part_line(hs_page *page) {
    const hs_part *p = &page->job->part;
    static const char *const forms[] = {"plate", "bar", "ring", "profile"};
    char size[96] = "";
    hs_words a = {""}, b = {""}, c = hs_page_nominal(page, p->length_m);
    hs_text text = hs_text_start(size, sizeof size);
    if (p->form == HS_PLATE) {
        a = hs_page_nominal(page, p->width_m);
        b = hs_page_nominal(page, p->thickness_m);
        hs_text_add(&text, "%s x %s x %s", c.text, a.text, b.text);
    } else if (p->form == HS_BAR) {
        a = hs_page_nominal(page, p->diameter_m);
        hs_text_add(&text, "diameter %s, length %s", a.text, c.text);
    } else if (p->form == HS_RING) {
        a = hs_page_nominal(page, p->outside_m);
        b = hs_page_nominal(page, p->bore_m);
        hs_text_add(&text, "outside %s, bore %s, length %s", a.text, b.text, c.text);
    } else {
        hs_text_add(&text, "length %s", c.text);
    }
    hs_page_say(page, 0, "%zu %s%s of %s, finished %s", p->quantity, forms[p->form],
                p->quantity == 1 ? "" : "s", p->steel.name, size);
}

/* A face whose own need is above its own may, where the mean of both hides it; -1 none. */
static int shut_side(const hs_result_dimension *d) {
    for (int k = 0; k < 2; k++)
        if (d->side[k].ground && d->side[k].need_m > d->side[k].may_m) return k;
    return -1;
}

static void stop_side(hs_page *page, size_t i, int k) {
    const hs_result_side *s = &page->result->dimension[i].side[k];
    const hs_dimension *d = &page->job->dimension[i];
    hs_words may = hs_page_short(page, s->may_m, HS_DOWN);
    hs_page_say(
        page, 2,
        "STOP %s: face %s needs %s to clean up and its case allows %s%s: %s too little; what %s "
        "has to spare does not help it.",
        d->name, page->job->face[d->face[k]].name, hs_page_short(page, s->need_m, HS_UP).text,
        s->may_m > 0 ? "only " : "none", s->may_m > 0 ? may.text : "",
        hs_page_short(page, s->need_m - s->may_m, HS_UP).text, page->job->face[d->face[!k]].name);
}

/* Nothing is ground: the fire alone decides the size. */
static void stop_unground(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    double wide_m = d->finish_high_m - d->finish_low_m;
    double scatter_m = wide_m + 2 * (d->need_m - d->may_m);
    double asked_m = scatter_m + 2 * page->job->shop.rough_tolerance_m;
    hs_page_say(
        page, 2,
        "STOP %s: not ground, it keeps what the fire leaves, and that scatters over %s; "
        "its tolerance is only %s wide. Grind it, or ask for a tolerance of %s or more: that "
        "scatter, and the shop's rough tolerance.",
        page->job->dimension[i].name, hs_page_short(page, scatter_m, HS_UP).text,
        hs_page_short(page, wide_m, HS_NEAREST).text, hs_page_short(page, asked_m, HS_UP).text);
}

/* A face whose case is shallower at a corner or mask is shut there, not on its flat. */
static void stop_corner(hs_page *page, size_t i) {
    const hs_dimension *d = &page->job->dimension[i];
    for (int k = 0; k < 2; k++) {
        const hs_result_edge *e = &page->result->face[d->face[k]].edge;
        if ((k == 1 && d->face[1] == d->face[0]) || !e->present || !(e->share < 1)) continue;
        hs_page_say(page, 4,
                    e->masked ? "the worst spot of %s is at corner %zu, beside the mask: its case "
                                "is %.0f %% of the flat's there"
                              : "the worst spot of %s is at inner corner %zu: less carbon comes in "
                                "there, and its case is %.0f %% of the flat's",
                    page->job->face[d->face[k]].name, e->corner, 100 * e->share);
    }
}

static void stop_why(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    const char *name = page->job->dimension[i].name;
    double all = hs_text_carried(page->job, i);
    hs_words need = hs_page_short(page, all * d->need_m, HS_UP);
    hs_words may = hs_page_short(page, all * d->may_m, HS_DOWN);
    hs_words apart = hs_page_short(page, all * (d->need_m - d->may_m), HS_UP);
    hs_words side = hs_text_side(page->job, i);
    if (!hs_text_is_ground(page->job, i))
        stop_unground(page, i);
    else if (d->pulled.refused[0])
        hs_page_say(page, 2, "STOP %s: it must not be ground as the sheet holds it.", name);
    else if (!(d->may_m > 0))
        hs_page_say(page, 2, "STOP %s: the case allows no grinding at all; clean-up needs %s %s.",
                    name, need.text, side.text);
    else if (d->need_m > d->may_m)
        hs_page_say(page, 2,
                    "STOP %s: clean-up needs %s %s, the case allows only %s: %s too little.", name,
                    need.text, side.text, may.text, apart.text);
    else if (shut_side(d) >= 0)
        stop_side(page, i, shut_side(d));
    else
        hs_page_say(page, 2,
                    "STOP %s: needs %s, may %s %s, but no rough size is good for both ends of the "
                    "finished tolerance.",
                    name, need.text, may.text, side.text);
}

static void stop_dimension(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    stop_why(page, i);
    stop_corner(page, i);
    if (d->note[0]) hs_page_say(page, 4, "%s", d->note);
    if (d->remedies > 0) {
        hs_page_say(page, 4, "%s (%zu changes of this job were computed; these held):",
                    d->remedy[0].verdict == HS_STOP ? "Nothing tried opens it by itself; what helps"
                                                    : "What would open it",
                    page->result->changes_tried);
        hs_text_remedy_list(page, d->remedy, d->remedies, HS_MAX_REMEDIES);
    } else if (hs_text_is_ground(page->job, i)) {
        hs_page_say(page, 4, "Nothing opens it: %zu changes of this job were computed.",
                    page->result->changes_tried);
    }
}

/* 1 where the rough tolerance fits every window and only the chances together fall short. */
static int short_of_chance(const hs_page *page) {
    const hs_result *r = page->result;
    const double noise_m = 1e-9;
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_dimension *d = &r->dimension[i];
        double width_m = d->rough_high_m - d->rough_low_m;
        if (d->verdict == HS_TIGHT && width_m < 2 * page->job->shop.rough_tolerance_m - noise_m)
            return 0;
    }
    return r->confidence.reached < r->confidence.level;
}

static void tight_line(hs_page *page) {
    const hs_result_confidence *c = &page->result->confidence;
    if (!short_of_chance(page)) {
        hs_page_say(page, 0,
                    "GRIND: TIGHT. There is a rough size, but less room than the shop's "
                    "rough tolerance.");
        return;
    }
    hs_page_say(page, 0,
                "GRIND: TIGHT. The shop's rough tolerance fits inside the windows, but at the aim "
                "only %s of parts come out good, all doubts together; %s is asked.",
                hs_page_chance(c->reached, c->at_least).text, hs_page_chance(c->level, 0).text);
}

static int stop_right(const hs_page *page) {
    for (size_t i = 0; i < page->result->rights; i++)
        if (page->result->right[i].stop) return 1;
    return 0;
}

/* A window that is shut stops the part for this route; what is put right in the shop does not. */
static int shut(const hs_page *page) {
    for (size_t i = 0; i < page->job->dimensions; i++)
        if (page->result->dimension[i].verdict == HS_STOP) return 1;
    return 0;
}

static void stop_line(hs_page *page) {
    if (!shut(page) && stop_right(page) && !page->result->untempered)
        hs_page_say(page, 0,
                    "GRIND: STOP until this is put right. The rough sizes below hold after that.");
    else if (page->result->untempered)
        hs_page_say(page, 0,
                    "GRIND: STOP. Not tempered after the last quench: an untempered case cracks "
                    "under the wheel. Put a temper into the route.");
    else
        hs_page_say(page, 0, "GRIND: STOP. Do not machine this part for this route.");
}

static void verdict_line(hs_page *page) {
    switch (page->result->grind) {
    case HS_GO:
        hs_page_say(page, 0, "GRIND: GO%s. The shop's rough tolerance fits inside every window.",
                    page->result->rights > 0 ? ", once this is put right" : "");
        break;
    case HS_TIGHT:
        tight_line(page);
        break;
    case HS_STOP:
        stop_line(page);
        break;
    case HS_NONE:
        hs_page_say(page, 0, "GRIND: nothing to decide, no dimension is ground.");
        break;
    }
}

/* What holds whatever the windows say; of a part that is hard already, what concerns the wheel. */
static void right_lines(hs_page *page) {
    int bench = hs_text_at_bench(page);
    for (size_t i = 0; i < page->result->rights; i++) {
        const hs_result_right *r = &page->result->right[i];
        if (!bench || r->wheel)
            hs_page_say(page, 0, "%s %s", r->stop ? "STOP:" : "PUT RIGHT:", r->text);
    }
}

/* A tank that must not be used stands beside the verdict of the wheel. */
static void descale_line(hs_page *page) {
    const hs_result *r = page->result;
    if (!r->descale_present) return;
    if (r->descale_verdict == HS_CLEAN_STOP)
        hs_page_say(page, 0,
                    "DESCALE: STOP. Not by %s at that step; what instead stands under DESCALE.",
                    r->descale.method);
    else if (r->descale_verdict == HS_CLEAN_CARE)
        hs_page_say(page, 0, "DESCALE: WITH CARE, by %s: read DESCALE before.", r->descale.method);
}

/* After hardening the plan is past: what was measured decides. */
static void bench_line(hs_page *page) {
    const hs_result *r = page->result;
    if (r->measured.verdict == HS_WHEEL_NONE)
        hs_page_say(page, 0,
                    "NOT DECIDED: no size was measured of a ground dimension. The plan before "
                    "the fire was: %s.",
                    hs_text_verdict(r->grind));
    else if (stop_right(page))
        hs_page_say(page, 0,
                    "DO NOT GRIND until this is put right. Then read below what was measured.");
    else
        hs_page_say(page, 0, "%s, by what was measured. The plan before the fire was: %s.",
                    hs_text_wheel(r->measured.verdict), hs_text_verdict(r->grind));
}

/* What is dangerous must not wait for page two. */
static void danger_line(hs_page *page) {
    size_t n = 0;
    for (size_t i = 0; i < page->result->cautions; i++) {
        const char *level = page->result->caution[i].level;
        n += !strcmp(level, "danger") || !strcmp(level, "warning");
    }
    if (n > 0)
        hs_page_say(page, 0,
                    "DANGER or WARNING lines further down: %zu. Read them before the first fire.",
                    n);
}

void hs_text_title(hs_page *page) {
    hs_page_say(page, 0, "%s", page->job->name);
    part_line(page);
    if (hs_text_at_bench(page))
        bench_line(page);
    else
        verdict_line(page);
    right_lines(page);
    descale_line(page);
    danger_line(page);
    if (hs_text_at_bench(page)) return;
    for (size_t i = 0; i < page->job->dimensions; i++)
        if (page->result->dimension[i].verdict == HS_STOP) stop_dimension(page, i);
}
