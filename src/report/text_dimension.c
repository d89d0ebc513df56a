/* Rough sizes, shape limit, the window drawn, what need is made of. */
#include "report/bar.h"
#include "report/sections.h"

#include <math.h>
#include <string.h>

static int has_size(const hs_result_dimension *d) {
    return isfinite(d->rough_aim_m);
}

/* "stock 0.290 mm per side", "stock 0.300 mm on top", "stock top 0.310 mm, bottom ..." */
static void add_stock(hs_text *text, const hs_page *page, size_t i) {
    const hs_job *job = page->job;
    const hs_result_dimension *d = &page->result->dimension[i];
    if (!d->unequal) {
        hs_text_add(text, "stock %s %s",
                    hs_page_short(page, hs_text_carried(job, i) * d->stock_m, HS_NEAREST).text,
                    hs_text_side(job, i).text);
        return;
    }
    for (int k = 0; k < 2; k++)
        hs_text_add(text, "%s%s %s", k ? ", " : "stock ", job->face[job->dimension[i].face[k]].name,
                    hs_page_short(page, d->side[k].stock_m, HS_NEAREST).text);
}

static void rough_line(hs_page *page, size_t i) {
    const hs_job *job = page->job;
    const hs_result_dimension *d = &page->result->dimension[i];
    const char *name = job->dimension[i].name;
    if (!has_size(d)) {
        hs_page_say(page, 2, "%-12s %s", name,
                    d->verdict == HS_STOP ? "STOP: no rough size"
                    : d->note[0]          ? d->note
                                          : "not ground");
        return;
    }
    hs_words aim = hs_page_size(page, d->rough_aim_m, d->rough_aim_in, HS_NEAREST);
    if (!hs_text_is_ground(job, i)) {
        hs_page_say(page, 2, "%-12s %s, as hardened, not ground  %s", name, aim.text,
                    hs_text_verdict(d->verdict));
        return;
    }
    char words[320];
    hs_text stock = hs_text_start(words, sizeof words);
    add_stock(&stock, page, i);
    hs_page_say(page, 2, "%-12s %s, %s  %s", name, aim.text, words, hs_text_verdict(d->verdict));
}

void hs_text_rough(hs_page *page) {
    hs_words t = hs_page_length(page, page->job->shop.rough_tolerance_m, HS_DOWN);
    if (hs_text_at_bench(page))
        hs_page_heading(page, "THE PLAN BEFORE THE FIRE (for comparison)");
    else
        hs_text_add(&page->text, "\n");
    hs_page_say(page, 0, "ROUGH SIZE TO MACHINE, before the fire, \302\261%s", t.text);
    for (size_t i = 0; i < page->job->dimensions; i++)
        rough_line(page, i);
}

/* What the instrument reads when the shape makes V, and how it is called. */
static double bench_reading(const char **word, const hs_job *job, const hs_dimension *d, double V) {
    *word = "bow + half the corner lift";
    if (d->across == HS_ACROSS_FACES) return V;
    *word = "squareness of the ends (run-out across the face)";
    if (d->across == HS_ACROSS_ENDS) return V;
    *word = "ovality (largest - smallest diameter)";
    if (job->part.form == HS_RING) return 2 * V;
    *word = job->part.held == HS_CHUCK ? "run-out at the free end, as held (TIR)"
            : job->part.held == HS_REMADE_CENTRES
                ? "run-out between the remade centres (TIR; twice that in the old ones)"
                : "run-out between centres (TIR; the bow is half of it)";
    return V;
}

/* The same at the bench, with the size as it will be measured. */
static void bench_sum(hs_page *page, size_t i, double k) {
    const hs_result_dimension *d = &page->result->dimension[i];
    const hs_result_bench *b = &d->bench;
    if (!b->present) return;
    hs_words clean = hs_page_short(page, b->clean_from_m, d->inside ? HS_DOWN : HS_UP);
    hs_words deep = hs_page_short(page, b->case_to_m, d->inside ? HS_UP : HS_DOWN);
    char times[16] = "", most[80] = "";
    hs_text t = hs_text_start(times, sizeof times), m = hs_text_start(most, sizeof most);
    if (k * b->times != 1) hs_text_add(&t, "%.3g x ", k * b->times);
    if (isfinite(b->most_m) && d->unequal)
        hs_text_add(&m, ", and never more than %s",
                    hs_page_short(page, k * b->most_m, HS_DOWN).text);
    const char *h = page->job->dimension[i].name;
    if (!isfinite(b->case_to_m))
        hs_page_say(page, 15,
                    d->inside ? "at the bench: STOP IF it is more than %s(%s - %s)"
                              : "at the bench: STOP IF it is more than %s(%s - %s)",
                    times, d->inside ? clean.text : h, d->inside ? h : clean.text);
    else if (d->inside)
        hs_page_say(page, 15,
                    "at the bench: STOP IF it is more than %sthe smaller of %s - H and H - %s%s; "
                    "H = %s as measured",
                    times, clean.text, deep.text, most, h);
    else
        hs_page_say(page, 15,
                    "at the bench: STOP IF it is more than %sthe smaller of H - %s and %s - H%s; "
                    "H = %s as measured",
                    times, clean.text, deep.text, most, h);
}

static void shape_line(hs_page *page, size_t i) {
    const hs_job *job = page->job;
    const hs_result_dimension *d = &page->result->dimension[i];
    const hs_dimension *dimension = &job->dimension[i];
    if (d->verdict == HS_NONE || !hs_text_is_ground(job, i)) return;
    const char *word;
    double k = bench_reading(&word, job, dimension, 1);
    hs_words limit = hs_page_length(page, k * d->shape_limit_m, HS_DOWN);
    const hs_result_pulled *p = &d->pulled;
    hs_words usual = hs_page_short(page, p->present ? p->sprung_m : k * d->shape_m, HS_NEAREST);
    hs_words high = hs_page_short(page, p->present ? p->sprung_high_m : k * d->shape_high_m, HS_UP);
    int flat = dimension->across == HS_ACROSS_FACES && job->part.length_m > 0;
    hs_words over = hs_page_nominal(page, job->part.length_m);
    const char *most = !has_size(d)            ? "no limit to give, the window is closed"
                       : d->shape_limit_m <= 0 ? "none, when all doubts fall on the bad side"
                                               : limit.text;
    hs_page_say(page, 2, "%-12s %s%s", dimension->name, d->shape_limit_m > 0 ? "at most " : "",
                most);
    if (d->pulled.present) word = "bow, which the chuck pulls flat and which comes back";
    hs_page_say(page, 15, "%s%s%s", word, flat ? ", over " : "", flat ? over.text : "");
    hs_page_say(page, 15, "to expect: typical %s; 1 part in 20 has %s or more", usual.text,
                high.text);
    if (d->shape_high_m > d->shape_limit_m)
        hs_page_say(page, 15,
                    "%s may pass the limit, which takes all else at its worst: such a part is not "
                    "lost; write what was measured into the sheet and plan again",
                    d->shape_m > d->shape_limit_m ? "most parts" : "more than 1 part in 20");
    const double more_m = 10e-6; /* of what nobody reads there is no line */
    if (d->shape_limit_middle_m > d->shape_limit_m + more_m)
        hs_page_say(page, 15, "with the rough size at mid window: at most %s",
                    hs_page_short(page, k * d->shape_limit_middle_m, HS_DOWN).text);
    int judged = hs_text_at_bench(page) && job->measured.dimension[i].size_given;
    if (has_size(d) && !judged) bench_sum(page, i, k); /* else it stands above, as measured */
}

static int any_ground(const hs_page *page) {
    int any = 0;
    for (size_t i = 0; i < page->job->dimensions; i++)
        any |= page->result->dimension[i].verdict != HS_NONE && hs_text_is_ground(page->job, i);
    return any;
}

void hs_text_shape(hs_page *page) {
    if (!any_ground(page)) return;
    hs_page_heading(page, "SHAPE LIMIT of the hardened part, to be still ground: measure, compare");
    for (size_t i = 0; i < page->job->dimensions; i++)
        shape_line(page, i);
}

/* Only the sum is cut before the fire; the wheel shares it as the faces' windows ask. */
static void split_lines(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    for (int k = 0; k < 2; k++)
        hs_page_say(page, 6, "%s: need %s, may %s, takes %s of the stock",
                    page->job->face[page->job->dimension[i].face[k]].name,
                    hs_page_short(page, d->side[k].need_m, HS_UP).text,
                    hs_page_short(page, d->side[k].may_m, HS_DOWN).text,
                    hs_page_short(page, d->side[k].stock_m, HS_NEAREST).text);
    if (d->halved != d->verdict)
        hs_page_say(page, 6,
                    "shared alike between them it would be %s: turn at the size in the "
                    "grinding order",
                    hs_text_verdict(d->halved));
}

/* More stock than in the middle is ground off only where it saves parts. */
static void say_past_middle(hs_page *page, const hs_result_dimension *d) {
    const double seen_m = 10e-6;
    double past_m = d->rough_aim_m - (d->rough_low_m + d->rough_high_m) / 2;
    if (d->inside) past_m = -past_m;
    if (!(past_m > seen_m)) return;
    const char *why =
        d->joint > d->joint_middle
            ? "at the aim %s of parts come out good, in the middle %s: shape and scale "
              "scatter more than the case, so the aim lies past the middle"
            : "the aim lies past the middle: %s of parts come out good there, %s in the "
              "middle, but it bears the more shape";
    hs_page_say(page, 6, why, hs_page_chance(d->joint, 0).text,
                hs_page_chance(d->joint_middle, 0).text);
}

/* Is one of two ground faces without a window of its own? */
static int face_closed(const hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    if (hs_text_carried(page->job, i) > 1) return 0;
    for (int k = 0; k < 2; k++)
        if (d->side[k].ground && d->side[k].may_m < d->side[k].need_m) return 1;
    return 0;
}

static void draw_closed(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    char bar[HS_BAR_WIDTH + 1];
    double all = hs_text_carried(page->job, i);
    hs_words need = hs_page_short(page, all * d->need_m, HS_UP);
    hs_words may = hs_page_short(page, all * d->may_m, HS_DOWN);
    hs_words side = hs_text_side(page->job, i);
    hs_bar_crossed(bar);
    hs_page_say(page, 2, "%s: closed", page->job->dimension[i].name);
    hs_page_say(page, 6, "%s", bar);
    if (d->pulled.refused[0])
        hs_page_say(page, 6, "%s", d->pulled.refused);
    else if (!hs_text_is_ground(page->job, i))
        hs_page_say(page, 6, "what the fire does to it scatters more than its tolerance is wide");
    else if (d->may_m < d->need_m && !(d->may_m > 0))
        hs_page_say(page, 6, "the case leaves nothing to grind; need %s %s", need.text, side.text);
    else if (d->may_m < d->need_m)
        hs_page_say(page, 6, "may %s %s < need %s %s", may.text, side.text, need.text, side.text);
    else if (!face_closed(page, i))
        hs_page_say(page, 6,
                    "may %s and need %s %s, but no rough size is good for both ends of the "
                    "finished tolerance",
                    may.text, need.text, side.text);
    else
        hs_page_say(page, 6,
                    "in the mean of its faces may %s and need %s per side, but one of them has "
                    "no window of its own",
                    may.text, need.text);
}

/* Ends of the bar: on a bore the smaller size carries the more stock. */
static void draw_bar(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    char bar[HS_BAR_WIDTH + 1], left[160], right[160];
    double all = hs_text_carried(page->job, i);
    hs_words need = hs_page_short(page, all * d->need_m, HS_UP);
    hs_words may = hs_page_short(page, all * d->may_m, HS_DOWN);
    hs_words side = hs_text_side(page->job, i);
    int bore = d->inside;
    hs_bar_window(bar, d->rough_low_m, d->rough_high_m, d->rough_aim_m,
                  page->job->shop.rough_tolerance_m);
    hs_page_say(page, 6, "%s", bar);
    hs_text a = hs_text_start(left, sizeof left), b = hs_text_start(right, sizeof right);
    hs_text_add(&a, "%s %s %s", bore ? "may" : "need", bore ? may.text : need.text, side.text);
    hs_text_add(&b, "%s %s %s", bore ? "need" : "may", bore ? need.text : may.text, side.text);
    hs_page_say(page, 6, "%s%*s%s", left,
                (int)(HS_BAR_WIDTH > a.length + b.length ? HS_BAR_WIDTH - a.length - b.length : 1),
                "", right);
}

static void draw_window(hs_page *page, size_t i) {
    const hs_result_dimension *d = &page->result->dimension[i];
    if (d->verdict == HS_NONE) return;
    if (!has_size(d)) {
        draw_closed(page, i);
        return;
    }
    hs_words low = hs_page_size(page, d->rough_low_m, d->rough_low_in, HS_UP);
    hs_words high = hs_page_size(page, d->rough_high_m, d->rough_high_in, HS_DOWN);
    hs_page_say(page, 2, "%s: rough size from %s to %s", page->job->dimension[i].name, low.text,
                high.text);
    if (!hs_text_is_ground(page->job, i)) {
        hs_page_say(page, 6, "%s", d->note);
        return;
    }
    draw_bar(page, i);
    say_past_middle(page, d);
    if (d->unequal) split_lines(page, i);
    if (d->note[0]) hs_page_say(page, 6, "%s", d->note);
}

void hs_text_windows(hs_page *page) {
    if (page->result->grind == HS_NONE) return;
    hs_page_heading(page, "WINDOW  | ends  [##O##] what the shop will offer, O the aim");
    for (size_t i = 0; i < page->job->dimensions; i++)
        draw_window(page, i);
}

static void handbook_line(hs_page *page, const hs_handbook *h) {
    hs_words value = hs_page_length(page, h->value_m, HS_NEAREST);
    if (!h->present) return;
    hs_page_say(page, 4, "Handbook allowance for comparison: %s per side (%s)%s%s", value.text,
                h->source, h->why[0] ? ": " : "", h->why);
}

/* Printed so that the printed terms add up to the printed sum: what rounding leaves over goes to
 * the largest term. */
static void need_terms(hs_page *page, const hs_result_dimension *d, double all) {
    double scale = page->job->inch_first ? 1 / 0.0254 : 1e3;
    int decimals = page->job->inch_first ? 4 : 3;
    double shown[HS_MAX_TERMS];
    double left = hs_round_to(all * d->need_m * scale, decimals, HS_UP);
    size_t largest = 0;
    for (size_t k = 0; k < d->terms; k++) {
        shown[k] = hs_round_to(all * d->because[k].value_m * scale, decimals, HS_NEAREST);
        left -= shown[k];
        if (fabs(shown[k]) > fabs(shown[largest])) largest = k;
    }
    if (d->terms > 0) shown[largest] += left;
    for (size_t k = 0; k < d->terms; k++) {
        char number[48] = "";
        hs_format_number(number, sizeof number, shown[k], decimals, HS_NEAREST);
        hs_page_say(page, 4, "%10s  %s", number, d->because[k].term);
    }
}

void hs_text_need(hs_page *page) {
    if (!any_ground(page)) return;
    hs_page_heading(page, "WHAT NEED IS MADE OF (scale comes off the stock, not off the case)");
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_dimension *d = &page->result->dimension[i];
        if (d->verdict == HS_NONE || !hs_text_is_ground(page->job, i)) continue;
        double all = hs_text_carried(page->job, i);
        hs_words need = hs_page_length(page, all * d->need_m, HS_UP);
        hs_page_say(page, 2, "%s: need %s %s =", page->job->dimension[i].name, need.text,
                    hs_text_side(page->job, i).text);
        need_terms(page, d, all);
        handbook_line(page, &d->handbook);
    }
}
