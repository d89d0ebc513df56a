#include "plan/grind.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/model/grind.h"
#include "plan/chuck.h"
#include "plan/grind_care.h"
#include "plan/warp.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

/* One dimension as it will lie on the machine. */
typedef struct lie {
    const hs_job *job;
    size_t index;
    const hs_dimension *dimension;
    int bore;
    hs_face_sum face[2]; /* from the hardened surface: no scale, no growth */
    double size_m, shape_m, limit_m, middle_m, total_m;
    int at_bench; /* from what was measured */
    double release_m;
    const hs_result *result;
    double stock_m[2], fire_side_m; /* decided for each face before the fire; NaN at the bench */
} lie;

static hs_grind_step *add(hs_result_grind *out, int face, double to_m) {
    static const hs_grind_step none;
    if (out->steps == HS_MAX_ORDER) return &out->order[HS_MAX_ORDER - 1];
    hs_grind_step *step = &out->order[out->steps++];
    *step = none;
    step->face = face;
    step->to_m = to_m;
    return step;
}

static void what(hs_grind_step *step, const char *text, const char *name) {
    hs_text t = hs_text_start(step->what, sizeof step->what);
    hs_text_add(&t, text, name);
    if (!t.overflow) return;
    t = hs_text_start(step->what, sizeof step->what); /* a name too long for the line */
    hs_text_add(&t, text, "this");
}

static int ground(const lie *l, int k) {
    return l->job->face[l->dimension->face[k]].finish == HS_GROUND;
}

/* Typical growth of each side of a dimension: alike on both, and in proportion to the size. */
static double growth_per_side(const lie *l, const hs_result *result) {
    for (int k = 0; k < 2; k++) {
        const hs_result_face *f = &result->face[l->dimension->face[k]];
        if (!f->present) continue;
        double of_m = l->job->dimension[f->dimension].size.nominal_m;
        return (f->growth_low_m + f->growth_high_m) / 2 * l->dimension->size.nominal_m / of_m;
    }
    return 0;
}

/* Faces counted from the hardened surface; typical growth and scale. */
static void set_faces(lie *l, const hs_result *result, double *fire_m) {
    *fire_m = 0; /* by which the fire changes the size of an outside */
    for (int k = 0; k < 2; k++) {
        const hs_result_face *f = &result->face[l->dimension->face[k]];
        double lost_m = result->scale.lost_m;
        *fire_m += growth_per_side(l, result) - lost_m;
        l->face[k] = (hs_face_sum){.ground = ground(l, k),
                                   .clean_up_m = f->clean_up_m,
                                   .budget_m = f->budget_m - lost_m,
                                   .split_m = f->split_m};
    }
}

static int set_lie(lie *l, const hs_job *job, const hs_result *result, size_t i) {
    const hs_result_dimension *d = &result->dimension[i];
    const hs_result_measured_dimension *m = &result->measured.dimension[i];
    int measured = result->measured_present && m->present && m->verdict != HS_WHEEL_NONE;
    *l = (lie){.job = job, .index = i, .dimension = &job->dimension[i], .result = result};
    if (!ground(l, 0) && !ground(l, 1)) return 0;
    if (measured ? m->verdict == HS_WHEEL_NO : d->verdict == HS_STOP || d->verdict == HS_NONE)
        return 0;
    l->bore = hs_dimension_inside(job, l->dimension);
    double fire_m;
    set_faces(l, result, &fire_m);
    for (int k = 0; k < 2; k++)
        l->stock_m[k] = measured || !d->unequal ? NAN : d->side[k].stock_m;
    l->fire_side_m = fire_m / 2;
    l->at_bench = measured;
    double hardened_m = d->rough_aim_m + (l->bore ? -fire_m : fire_m);
    l->size_m = measured ? m->size_m : hardened_m;
    l->shape_m = measured ? m->shape_m : d->shape_m;
    l->limit_m = measured ? fmin(m->limit_clean_m, m->limit_case_m) : d->shape_limit_m;
    l->middle_m = (l->dimension->size.lower_m + l->dimension->size.upper_m) / 2;
    l->total_m = l->bore ? l->middle_m - l->size_m : l->size_m - l->middle_m;
    return isfinite(l->size_m) && isfinite(l->shape_m);
}

/* Before the fire the size is not known: the limit is told as the sum to do with it. */
static int stop_by_sum(hs_grind_step *step, const lie *l) {
    const hs_result_bench *b = &l->result->dimension[l->index].bench;
    int inch = l->job->inch_first;
    double times, limit_m;
    const char *word = hs_word_shape(&limit_m, l->job, l->index, l->limit_m);
    (void)hs_word_shape(&times, l->job, l->index, b->times);
    if (l->at_bench || !b->present || !isfinite(b->case_to_m)) return 0;
    hs_word clean = hs_word_length(b->clean_from_m, inch, l->bore ? HS_DOWN : HS_UP);
    hs_word deep = hs_word_length(b->case_to_m, inch, l->bore ? HS_UP : HS_DOWN);
    hs_text t = hs_text_start(step->stop_if, sizeof step->stop_if);
    hs_text_add(&t, "STOP IF %s more than ", word);
    if (times > 1) hs_text_add(&t, "%.3g x ", times);
    hs_text_add(&t,
                l->bore ? "the smaller of %s - H and H - %s" : "the smaller of H - %s and %s - H",
                clean.text, deep.text);
    hs_text_add(&t, ", H the size measured");
    if (limit_m > 0) /* below: all doubts on the bad side leave none, the size measured may */
        hs_text_add(&t, " (%s if it is as planned)", hs_word_length(limit_m, inch, HS_DOWN).text);
    return !t.overflow;
}

static void measure_first(hs_result_grind *out, const lie *l) {
    hs_grind_step *step = add(out, -1, NAN);
    int flat = l->dimension->across == HS_ACROSS_FACES && !l->bore;
    what(step,
         flat ? "%s: measure size and bow, mark the crown side" : "%s: measure size and shape",
         l->dimension->name);
    if (!isfinite(l->limit_m) || stop_by_sum(step, l)) return;
    double reading_m;
    const char *word = hs_word_shape(&reading_m, l->job, l->index, l->limit_m);
    hs_text t = hs_text_start(step->stop_if, sizeof step->stop_if);
    hs_text_add(&t, "STOP IF %s more than %s", word,
                hs_word_length(reading_m, l->job->inch_first, HS_DOWN).text);
}

/* Stock the first face takes: before the fire its share as decided, with what the fire did to its
 * side; else where the measured answer turns, or by what the sums leave it. */
static double first_share(const lie *l, int first) {
    double decided_m = l->stock_m[first] + l->fire_side_m;
    double turned_m = l->result->measured.dimension[l->index].turn_at_m; /* as told before */
    if (l->at_bench && turned_m > 0) return l->size_m - turned_m - l->shape_m / 2;
    if (isfinite(decided_m)) return decided_m;
    double share_m = hs_window_share(l->total_m, l->face, l->shape_m);
    return first ? l->total_m - share_m : share_m;
}

static int crown_side(const lie *l) {
    return l->job->measured.stated &&
           l->job->measured.dimension[l->index].crown == (int)l->dimension->face[1];
}

static void shim(hs_result_grind *out, const lie *l) {
    int answer = 0;
    (void)hs_grind_chuck_flattens(
        &answer, hs_chuck_pull_Pa(l->job, l->dimension, l->dimension->size.nominal_m, l->shape_m),
        NULL);
    hs_grind_step *step = add(out, -1, NAN);
    if (hs_dimension_pulled(l->job, l->dimension))
        what(step,
             "%s: crown up on the chuck, pulled flat: its bow comes back when the chuck lets go",
             l->dimension->name);
    else if (answer < 0)
        what(step, "%s: crown up on the chuck, shim the hollow so that it cannot rock",
             l->dimension->name);
    else
        what(step,
             answer > 0 ? "%s: crown up, shim the hollow: the chuck would pull it flat and the bow "
                          "come back"
                        : "%s: crown up, shim the hollow: the chuck may pull it flat",
             l->dimension->name);
}

/* What the size measures when one face has lost so much in the mean: its highest spot has lost half
 * the shape more, or, in a slot, its narrowest place has. */
static double size_after(const lie *l, double removal_m) {
    if (l->bore) return l->size_m + removal_m + l->shape_m / 2;
    return hs_window_turn_at(l->size_m, removal_m, l->shape_m);
}

/* Below this size the first face has lost what its case can spare, or what the other one needs. */
static void stop_unless_clean(hs_grind_step *step, const lie *l, int k) {
    double most_m = l->total_m + (l->dimension->size.upper_m - l->dimension->size.lower_m) / 2;
    double may_m = hs_face_may(&l->face[k], l->shape_m);
    double left_m = most_m - hs_face_need(&l->face[!k], l->shape_m);
    int other = l->face[!k].ground && left_m < may_m;
    double at_m = size_after(l, other ? left_m : may_m);
    hs_text t = hs_text_start(step->stop_if, sizeof step->stop_if);
    hs_text_add(&t, "STOP IF not clean all over at %s (measured %s): %s",
                hs_word_length(at_m, l->job->inch_first, l->bore ? HS_DOWN : HS_UP).text,
                l->bore ? "where it is narrowest" : "on the crown",
                other ? "the other side would not clean up any more"
                      : "the case is too thin to go on");
}

static void stop_unless_clean_at_size(hs_grind_step *step, const lie *l) {
    double end_m = l->bore ? l->dimension->size.upper_m : l->dimension->size.lower_m;
    hs_text t = hs_text_start(step->stop_if, sizeof step->stop_if);
    hs_text_add(&t, "STOP IF not clean all over at %s: the end of the tolerance",
                hs_word_length(end_m, l->job->inch_first, l->bore ? HS_DOWN : HS_UP).text);
}

/* A fine face is sparked out longer. */
static int spark_outs(const lie *l) {
    int fine = 0;
    for (int k = 0; k < 2; k++) {
        double ra_m = l->job->face[l->dimension->face[k]].roughness_m;
        fine |= ground(l, k) && ra_m > 0 && ra_m <= HS_K_GRINDING_FINE_ROUGHNESS * (1 + 1e-9);
    }
    return (int)(fine ? HS_K_GRINDING_SPARK_OUTS_FINE : HS_K_GRINDING_SPARK_OUTS);
}

/* Passes from the first touch: the highest spot loses the mean and half the shape. */
static hs_grind_time passes_of(const lie *l, double mean_m) {
    const hs_grinding *g = &l->job->shop.grinding;
    const hs_part *part = &l->job->part;
    int flat = l->dimension->across == HS_ACROSS_FACES;
    double width_m = part->form == HS_PLATE ? part->width_m : 0;
    const char *name = l->job->face[l->dimension->face[0]].name;
    if (!strcmp(name, "front") || !strcmp(name, "back")) width_m = part->thickness_m;
    if (!flat) width_m = part->length_m; /* of a round only the passes count */
    hs_grind_face face = {.stock_m = fmax(0, mean_m + l->shape_m / 2),
                          .rough_infeed_m = g->rough_infeed_m,
                          .finish_infeed_m = g->finish_infeed_m,
                          .finish_stock_m = g->finish_stock_m,
                          .length_m = part->length_m,
                          .width_m = width_m > 0 ? width_m : g->wheel_width_m,
                          .wheel_width_m = g->wheel_width_m,
                          .cross_feed_m = g->cross_feed_m,
                          .table_speed_m_s = g->table_speed_m_s,
                          .overrun_m = g->wheel_width_m,
                          .spark_outs = spark_outs(l)};
    hs_grind_time time = {0};
    if (hs_grind_passes(&time, &face, NULL) != HS_OK) return (hs_grind_time){0};
    if (!(flat && width_m > 0)) time.strokes = time.time_s = 0;
    return time;
}

static hs_grind_time add_time(hs_result_grind *out, const lie *l, double mean_m) {
    hs_grind_time time = passes_of(l, mean_m);
    out->strokes += time.strokes;
    out->time_s += time.time_s;
    return time;
}

/* One side alone loses its stressed skin: it draws hollow there. */
static void say_release(hs_result_grind *out, const lie *l, double ground_m, int back) {
    hs_text note =
        hs_text_start(out->note + strlen(out->note), sizeof out->note - strlen(out->note));
    const double seen_m = 5e-6; /* by no indicator */
    int inch = l->job->inch_first;
    if (!(l->release_m >= seen_m)) return;
    hs_text_add(&note,
                "%s: %s off one side alone lets it draw hollow on that side by about %s over its "
                "length, the skin being pressed: %s ",
                l->dimension->name, hs_word_length(ground_m, inch, HS_NEAREST).text,
                hs_word_length(l->release_m, inch, HS_NEAREST).text,
                back ? "measure the bow again when it is turned, shim anew; the second side takes "
                       "most of it back."
                     : "it stays so, for the other side keeps its skin. Ask for a flatness that "
                       "allows it, or grind both.");
}

static void two_flats(hs_result_grind *out, lie *l) {
    int first = crown_side(l), second = !first;
    size_t a = l->dimension->face[first], b = l->dimension->face[second];
    double share_m = first_share(l, first);
    double turn_m = size_after(l, share_m);
    int inch = l->job->inch_first;
    hs_grind_step *step = add(out, (int)a, hs_window_round(turn_m, inch, HS_NEAREST));
    what(step,
         l->bore ? "%s: grind until clean all over; then change sides, at the narrowest"
                 : "%s: grind until clean all over; then turn, measured on the crown",
         l->job->face[a].name);
    stop_unless_clean(step, l, first);
    hs_grind_time one = add_time(out, l, share_m), two = add_time(out, l, l->total_m - share_m);
    step->passes = one.rough_passes;
    double left_m = fmax(0, fmin(l->job->shop.grinding.finish_stock_m, l->total_m - share_m));
    step = add(
        out, (int)b,
        hs_window_round(l->bore ? l->middle_m - left_m : l->middle_m + left_m, inch, HS_NEAREST));
    what(step,
         l->bore ? "%s: grind until clean, then equal removals from both sides"
                 : "%s: grind until clean, then equal removals from both sides",
         l->job->face[b].name);
    stop_unless_clean_at_size(step, l);
    step->passes = two.rough_passes;
    step = add(out, (int)b, hs_window_round(l->middle_m, inch, HS_NEAREST));
    what(step, "%s: last cuts at finish infeed, spark out both sides", l->dimension->name);
    step->passes = one.finish_passes + one.spark_outs + two.finish_passes + two.spark_outs;
    l->release_m = hs_grind_release_m(l->job, l->result, l->index, l->size_m, share_m);
    say_release(out, l, share_m, 1);
}

static void one_flat(hs_result_grind *out, lie *l, int k) {
    size_t face = l->dimension->face[k];
    hs_grind_step *step =
        add(out, (int)face, hs_window_round(l->middle_m, l->job->inch_first, HS_NEAREST));
    what(step, "%s: grind to size, spark out; the other face stays as hardened",
         l->job->face[face].name);
    stop_unless_clean_at_size(step, l);
    hs_grind_time time = add_time(out, l, l->total_m);
    step->passes = time.rough_passes + time.finish_passes + time.spark_outs;
    l->release_m = hs_grind_release_m(l->job, l->result, l->index, l->size_m, l->total_m);
    say_release(out, l, l->total_m, 0);
}

static void round_face(hs_result_grind *out, const lie *l) {
    static const char *const held[] = {
        [HS_OLD_CENTRES] = "%s: clean the old centres, set between them, try the run-out",
        [HS_REMADE_CENTRES] = "%s: set so that middle and ends run out alike, regrind the centres",
        [HS_CHUCK] = "%s: hold on one end, set the held end to run true"};
    const char *name = l->dimension->name;
    int ring = l->job->part.form == HS_RING;
    const char *set = l->bore ? "%s: hold lightly, set to its own mean circle"
                              : "%s: on a mandrel in the ground bore, or set to its mean circle";
    what(add(out, -1, NAN), ring ? set : held[l->job->part.held], name);
    int inch = l->job->inch_first, face = (int)l->dimension->face[0];
    double left_m = fmax(0, fmin(2 * l->job->shop.grinding.finish_stock_m, l->total_m));
    double rough_m = l->bore ? l->middle_m - left_m : l->middle_m + left_m;
    hs_grind_step *step = add(out, face, hs_window_round(rough_m, inch, HS_NEAREST));
    what(step, "%s: grind at rough infeed until clean all over", l->job->face[face].name);
    stop_unless_clean_at_size(step, l);
    hs_grind_time time = passes_of(l, l->total_m / 2);
    step->passes = time.rough_passes;
    step = add(out, face, hs_window_round(l->middle_m, inch, HS_NEAREST));
    what(step, "%s: last cuts at finish infeed, spark out", name);
    step->passes = time.finish_passes + time.spark_outs;
}

static void both_ends(hs_result_grind *out, const lie *l) {
    int inch = l->job->inch_first, face = (int)l->dimension->face[0];
    double turn_m = hs_window_turn_at(l->size_m, l->total_m / 2, l->shape_m);
    hs_grind_step *step = add(out, face, hs_window_round(turn_m, inch, HS_NEAREST));
    what(step, "%s: first end square to the axis until clean; turn at this size", "ends");
    stop_unless_clean(step, l, 0);
    step = add(out, face, hs_window_round(l->middle_m, inch, HS_NEAREST));
    what(step, "%s: second end to size, spark out", "ends");
    stop_unless_clean_at_size(step, l);
}

static void grind_dimension(hs_result_grind *out, lie *l) {
    measure_first(out, l);
    if (l->dimension->across == HS_ACROSS_ENDS) {
        both_ends(out, l);
    } else if (l->dimension->across != HS_ACROSS_FACES) {
        round_face(out, l);
    } else {
        if (l->bore)
            what(add(out, -1, NAN), "%s: set it so that both sides run alike along the length",
                 l->dimension->name);
        else
            shim(out, l);
        if (l->face[0].ground && l->face[1].ground)
            two_flats(out, l);
        else
            one_flat(out, l, l->face[0].ground ? 0 : 1);
    }
}

static void note_on(hs_result_grind *out, const char *format, const char *word) {
    size_t used = strlen(out->note);
    hs_text note = hs_text_start(out->note + used, sizeof out->note - used);
    hs_text_add(&note, format, word);
}

/* A ring stands on a ground end before its bore, and its bore carries the outside; a bar's ends
 * are squared on its ground outside. */
static int rank(const hs_job *job, size_t i) {
    hs_across across = job->dimension[i].across;
    if (job->part.form == HS_RING)
        return across == HS_ACROSS_ENDS ? 0 : across == HS_ACROSS_BORE ? 1 : 2;
    return across == HS_ACROSS_ENDS ? 2 : 1;
}

void hs_grind_plan(hs_result_grind *out, const hs_job *job, const hs_result *result) {
    memset(out, 0, sizeof *out);
    for (int now = 0; now <= 2; now++)
        for (size_t i = 0; i < job->dimensions; i++) {
            lie l;
            if (rank(job, i) != now) continue;
            if (set_lie(&l, job, result, i))
                grind_dimension(out, &l);
            else if (ground(&l, 0) || ground(&l, 1))
                note_on(out, "%s: not to be ground as it stands. ", l.dimension->name);
        }
    for (size_t i = 0; i < job->faces && out->steps > 0; i++)
        if (result->face[i].edge.present && !result->face[i].edge.masked) {
            note_on(out, "%s",
                    "No wheel finishes an inner corner: before the fire cut a relief groove into "
                    "it, a little wider and deeper than the stock. ");
            break;
        }
    if (out->steps > 0)
        note_on(out, "%s",
                "Sizes are those to expect; measure before each step. Flood well, dress "
                "often: heat softens a hard skin before it shows.");
    hs_grind_care(out, job, result);
}
