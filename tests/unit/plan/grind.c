#include "plan/grind.h"
#include "support/check.h"

#include <string.h>

static const double TIGHT = 1e-12;
static hs_result result; /* large: not on the stack */

typedef struct bench {
    hs_job job;
    hs_dimension dimension[3];
    hs_face face[3];
    hs_result_grind out;
} bench;

/* The worked plate, planned: R 20.69, V .33, c .08, B .62, d .02, m .01, g 0 .. .01. */
static void plate(bench *b) {
    memset(b, 0, sizeof *b);
    memset(&result, 0, sizeof result);
    b->dimension[0] = (hs_dimension){.name = "thickness",
                                     .across = HS_ACROSS_FACES,
                                     .size = {20e-3, 19.979e-3, 20e-3, "h7"},
                                     .face = {0, 1}};
    for (size_t k = 0; k < 2; k++) {
        b->face[k] = (hs_face){.name = k ? "bottom" : "top", .finish = HS_GROUND};
        result.face[k] = (hs_result_face){.present = 1,
                                          .clean_up_m = 80e-6,
                                          .budget_m = 620e-6,
                                          .split_m = 20e-6,
                                          .growth_high_m = 10e-6,
                                          .lost_high_m = 10e-6};
    }
    b->job =
        (hs_job){.part = {.form = HS_PLATE, .length_m = 0.3, .width_m = 0.06, .thickness_m = 0.02},
                 .dimensions = 1,
                 .faces = 2};
    b->job.shop.grinding = (hs_grinding){"surface", 20e-6, 5e-6, 40e-6, 25e-3, 10e-3, 0.25};
    result.scale.lost_m = 10e-6;
    hs_result_dimension *d = &result.dimension[0];
    d->verdict = HS_GO;
    d->rough_aim_m = 20.69e-3;
    d->shape_m = 0.33e-3;
    d->shape_limit_m = 0.419e-3;
}

static void plan(bench *b) {
    b->job.dimension = b->dimension;
    b->job.face = b->face;
    hs_grind_plan(&b->out, &b->job, &result);
}

static const hs_grind_step *step(const bench *b, const char *word) {
    for (size_t i = 0; i < b->out.steps; i++)
        if (strstr(b->out.order[i].what, word)) return &b->out.order[i];
    return NULL;
}

static void grind__plate__turns_at_the_size_that_shares_the_stock(void) {
    bench b;
    plate(&b);
    plan(&b);
    CHECK(b.out.steps == 5);
    const hs_grind_step *first = step(&b, "top: grind until clean");
    CHECK(first != NULL && first->face == 0);
    /* H = 20.69 + 2(.005 - .01) = 20.68; turn at H - (H - 19.9895 + .33)/2 = 20.16975 */
    if (first) NEAR(first->to_m, 20.170e-3, TIGHT);
    /* at the least size the crown has lost B' - d = .59: 20.68 - .59 = 20.09 */
    CHECK(first && strstr(first->stop_if, "20.090 mm") != NULL);
    CHECK(strstr(b.out.order[0].stop_if, "0.419 mm") != NULL);
    CHECK(b.out.order[4].to_m > 19.989e-3 && b.out.order[4].to_m < 19.9905e-3);
    const hs_grind_step *second = step(&b, "bottom: turn");
    CHECK(second && second->to_m > b.out.order[4].to_m && second->to_m < first->to_m);
    /* passes: the crown loses .34525 + .165: (.51025 - .04)/.02 -> 24, + 8 + 2 = 34 passes of 9
     * crossings on each of two faces */
    NEAR(b.out.strokes, 2 * 34 * 9, 0);
    NEAR(b.out.time_s, 2 * 34 * 9 * (0.3 + 2 * 0.025) / 0.25, 1e-6);
}

static void grind__measured__replaces_what_was_expected(void) {
    bench b;
    plate(&b);
    result.measured_present = 1;
    result.measured.dimension[0] = (hs_result_measured_dimension){.present = 1,
                                                                  .verdict = HS_WHEEL_GRIND,
                                                                  .size_m = 20.66e-3,
                                                                  .shape_m = 0.2e-3,
                                                                  .limit_clean_m = 0.46e-3,
                                                                  .limit_case_m = 0.499e-3};
    b.job.measured.stated = 1;
    b.job.measured.dimension[0].crown = 1;
    plan(&b);
    const hs_grind_step *first = step(&b, "bottom: grind until clean"); /* the crown side first */
    CHECK(first != NULL);
    if (first) NEAR(first->to_m, 20.225e-3, TIGHT); /* exact: windows page, section 6 */
    CHECK(strstr(b.out.order[0].stop_if, "0.460 mm") != NULL);
    result.measured.dimension[0].verdict = HS_WHEEL_NO;
    plan(&b);
    CHECK(b.out.steps == 0 && strstr(b.out.note, "thickness") != NULL);
}

static void grind__thin_plate__is_shimmed_because_the_chuck_would_flatten_it(void) {
    /* computed: 10 mm thick over 300 mm the chuck pulls .3 mm flat, 40 mm thick it does not */
    bench b;
    plate(&b);
    b.dimension[0].size = (hs_size){10e-3, 9.985e-3, 10e-3, "h7"};
    result.dimension[0].rough_aim_m = 10.69e-3;
    plan(&b);
    CHECK(step(&b, "would pull it flat") != NULL);
    plate(&b);
    b.dimension[0].size = (hs_size){40e-3, 39.975e-3, 40e-3, "h7"};
    result.dimension[0].rough_aim_m = 40.69e-3;
    plan(&b);
    CHECK(step(&b, "cannot rock") != NULL);
}

static void grind__shut_window__no_steps_but_a_note(void) {
    bench b;
    plate(&b);
    result.dimension[0].verdict = HS_STOP;
    result.dimension[0].rough_aim_m = NAN;
    plan(&b);
    CHECK(b.out.steps == 0 && b.out.note[0]);
    CHECK(b.out.strokes == 0 && b.out.time_s == 0);
}

static void grind__one_face_as_hardened__is_not_turned(void) {
    bench b;
    plate(&b);
    b.face[1].finish = HS_AS_HARDENED;
    result.face[1].present = 0;
    plan(&b);
    CHECK(step(&b, "turn") == NULL && step(&b, "top: grind to size") != NULL);
    plate(&b);
    b.face[0].finish = HS_AS_HARDENED;
    plan(&b);
    CHECK(step(&b, "turn") == NULL && step(&b, "bottom: grind to size") != NULL);
}

static void grind__ring__end_then_bore_then_outside(void) {
    bench b;
    plate(&b);
    b.job.part.form = HS_RING;
    b.job.dimensions = b.job.faces = 3;
    const char *names[3] = {"outside", "bore", "ends"};
    const hs_across across[3] = {HS_ACROSS_OUTSIDE, HS_ACROSS_BORE, HS_ACROSS_ENDS};
    for (size_t i = 0; i < 3; i++) {
        b.face[i] = (hs_face){.name = names[i], .finish = HS_GROUND};
        b.dimension[i] = (hs_dimension){.name = names[i],
                                        .across = across[i],
                                        .size = {40e-3, 39.99e-3, 40.01e-3, ""},
                                        .face = {i, i}};
        result.face[i] = result.face[0];
        result.dimension[i] = result.dimension[0];
        result.dimension[i].rough_aim_m = i == 1 ? 39.3e-3 : 40.7e-3;
    }
    plan(&b);
    size_t at[3] = {0, 0, 0};
    for (size_t i = 0; i < b.out.steps; i++)
        for (size_t k = 0; k < 3; k++)
            if (b.out.order[i].face == (int)k) at[k] = i;
    CHECK(at[2] < at[1] && at[1] < at[0]);
    b.job.part.form = HS_BAR; /* a bar's ends come last, squared on its outside */
    b.job.dimensions = 3;
    const hs_grind_step *bore = step(&b, "bore: grind at rough");
    CHECK(bore && bore->to_m < 40e-3 && bore->to_m > 39.3e-3); /* a bore grows under the wheel */
    CHECK(strstr(step(&b, "outside: measure")->stop_if, "0.838 mm") != NULL); /* ovality: 2 V */
    plan(&b);
    for (size_t i = 0; i < b.out.steps; i++)
        for (size_t k = 0; k < 3; k++)
            if (b.out.order[i].face == (int)k) at[k] = i;
    CHECK(at[0] < at[2]);
}

static void grind__sizes_on_the_way__leave_the_finish_stock(void) {
    /* exact, mm: .04 a side left for finish infeed; ends H 40.69, turn .345 + .165 below it */
    bench b;
    plate(&b);
    b.job.measured.dimension[0].crown = 1; /* not stated: a crown there counts for nothing */
    plan(&b);
    const hs_grind_step *second = step(&b, "bottom: turn");
    CHECK(second != NULL);
    if (second) NEAR(second->to_m, 20.0295e-3, 0.5e-6 + TIGHT); /* to the nearest .001 */
    CHECK(strstr(b.out.note, "dress") != NULL);
    const hs_across across[3] = {HS_ACROSS_OUTSIDE, HS_ACROSS_BORE, HS_ACROSS_ENDS};
    const double to_m[3] = {40.080e-3, 39.920e-3, 40.180e-3};
    for (size_t i = 0; i < 3; i++) {
        plate(&b);
        b.job.part.form = HS_RING;
        b.face[0].name = "it";
        b.dimension[0] = (hs_dimension){.name = "this",
                                        .across = across[i],
                                        .size = {40e-3, 39.99e-3, 40.01e-3, ""},
                                        .face = {0, 0}};
        result.dimension[0].rough_aim_m = i == 1 ? 39.3e-3 : 40.7e-3;
        plan(&b);
        const hs_grind_step *on = step(&b, i == 2 ? "first end" : "rough infeed");
        CHECK(on != NULL);
        if (on) NEAR(on->to_m, to_m[i], TIGHT);
        const char *end = i == 1 ? "40.010 mm" : "39.990 mm"; /* of the tolerance */
        CHECK(on && (i == 2 || strstr(on->stop_if, end)));
    }
}

static void grind__narrow_faces__take_fewer_crossings(void) {
    bench b;
    for (int k = 0; k < 2; k++) {
        plate(&b);
        b.face[0].name = k ? "back" : "front";
        b.face[1].name = k ? "front" : "back";
        plan(&b);
        NEAR(b.out.strokes, 2 * 34 * 5, 0); /* (20 + 25)/10 rounded up */
    }
    b.job.shop.grinding.table_speed_m_s = 0; /* feeds not known */
    plan(&b);
    CHECK(b.out.strokes == 0 && b.out.steps > 0);
}

static void grind__nothing_to_grind__no_steps(void) {
    bench b;
    plate(&b);
    result.dimension[0].verdict = HS_NONE;
    plan(&b);
    CHECK(b.out.steps == 0);
    plate(&b);
    b.face[0].finish = b.face[1].finish = HS_AS_HARDENED;
    plan(&b);
    CHECK(b.out.steps == 0 && !b.out.note[0]);
    plate(&b);
    result.dimension[0].shape_m = NAN;
    plan(&b);
    CHECK(b.out.steps == 0);
    plate(&b); /* one ground face that may not be ground is said, too */
    b.face[1].finish = HS_AS_HARDENED;
    result.dimension[0].verdict = HS_STOP;
    plan(&b);
    CHECK(b.out.steps == 0 && strstr(b.out.note, "thickness") != NULL);
}

HS_TEST_MAIN("plan_grind", TEST(grind__plate__turns_at_the_size_that_shares_the_stock),
             TEST(grind__measured__replaces_what_was_expected),
             TEST(grind__thin_plate__is_shimmed_because_the_chuck_would_flatten_it),
             TEST(grind__shut_window__no_steps_but_a_note),
             TEST(grind__one_face_as_hardened__is_not_turned),
             TEST(grind__sizes_on_the_way__leave_the_finish_stock),
             TEST(grind__narrow_faces__take_fewer_crossings),
             TEST(grind__nothing_to_grind__no_steps), TEST(grind__ring__end_then_bore_then_outside))
