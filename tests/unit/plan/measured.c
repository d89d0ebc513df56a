/* The measured branch: worked figures of the reference page on windows (sections 5 and 6), and the
 * plan's own sums fed back as if they had been measured. */
#include "measured_bench.h"
#include "support/check.h"

#include <string.h>

static const double TIGHT = 1e-12;

static void measured__worked_plate__printed_figures(void) {
    /* exact: section 6, last line */
    bench_job b;
    worked_plate(&b);
    const hs_result_measured_dimension *d = judge(&b);
    CHECK(d->verdict == HS_WHEEL_GRIND && b.out.verdict == HS_WHEEL_GRIND);
    NEAR(d->limit_clean_m, 0.460e-3, TIGHT);
    NEAR(d->limit_case_m, 0.499e-3, TIGHT);
    NEAR(d->turn_at_m, 20.225e-3, TIGHT);
    NEAR(d->shape_m, 0.2e-3, TIGHT);
    CHECK(strstr(d->stop_if[0], "0.460 mm") != NULL);
    CHECK(strstr(d->stop_if[1], "0.499 mm") != NULL);
    /* removal: (H - F)/2 -+ (V/2 + d): .33 - .12 and .3405 + .12 */
    NEAR(d->removal_min_m, 0.210e-3, TIGHT);
    NEAR(d->removal_max_m, 0.461e-3, TIGHT);
    NEAR(d->case_left_min_m, 0.749e-3, TIGHT); /* 1.21 - .4605 = .7495, down */
    NEAR(sum_of(d), 0.460e-3, TIGHT);
    CHECK(d->remedies == 0);
}

static void measured__over_the_bow__takes_the_bow_off(void) {
    bench_job b;
    worked_plate(&b);
    b.job.measured.dimension[0].how = HS_OVER_THE_BOW;
    b.job.measured.dimension[0].size_m = 20.86e-3;
    NEAR(judge(&b)->size_m, 20.66e-3, TIGHT);
    /* a bow read over half the length is four times as large over the whole */
    worked_plate(&b);
    b.job.measured.dimension[0].bow_m = 0.05e-3;
    b.job.measured.dimension[0].over_m = 0.15;
    NEAR(judge(&b)->shape_m, 0.2e-3, TIGHT);
    b.job.measured.dimension[0].run_out_m = 0.3e-3; /* the ends of a plate run out */
    NEAR(judge(&b)->shape_m, 0.3e-3, TIGHT);
}

static void measured__corner_lift_and_doubt__add_to_the_bow(void) {
    /* exact: windows section 2, V = bow + half the corner lift; judgement: a bow is read to the
     * larger of .02 mm and a tenth */
    bench_job b;
    worked_plate(&b);
    b.job.measured.dimension[0].corner_lift_m = 0.06e-3;
    NEAR(judge(&b)->shape_m, 0.23e-3, TIGHT);
    NEAR(judge(&b)->shape_high_m, 0.23e-3 * 1.1, TIGHT);
    b.job.measured.dimension[0].corner_lift_m = 0;
    b.job.measured.dimension[0].bow_m = 0.1e-3;
    NEAR(judge(&b)->shape_high_m, 0.12e-3, TIGHT);
    b.job.measured.dimension[0].bow_m = 0.05e-3;
    b.job.part.held = HS_PULLED_FLAT; /* the bow is not under the wheel, the lift is */
    b.job.measured.dimension[0].corner_lift_m = 0.06e-3;
    NEAR(judge(&b)->shape_m, 0.03e-3, TIGHT);
}

static void measured__near_the_limit__care_then_no(void) {
    /* doubt: size .01 and bow the larger of .02 and 10 %: clean-up holds against doubt up to
     * V + .1 V = .46 - .01, V = .409 */
    bench_job b;
    worked_plate(&b);
    b.job.measured.dimension[0].bow_m = 0.408e-3;
    b.in.face[0].case_m = b.in.face[1].case_m = 1.5e-3;
    b.in.face[0].case_low_m = b.in.face[1].case_low_m = 1.4e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_GRIND);
    b.job.measured.dimension[0].bow_m = 0.410e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    b.job.measured.dimension[0].bow_m = 0.459e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    b.job.measured.dimension[0].bow_m = 0.461e-3;
    const hs_result_measured_dimension *d = judge(&b);
    CHECK(d->verdict == HS_WHEEL_NO && b.out.verdict == HS_WHEEL_NO);
    CHECK(strstr(d->note, "clean up") != NULL && strstr(d->note, "0.001 mm") != NULL);
    /* grinding on to the small end: limit .460 + 3/4 of .021 */
    const hs_remedy *r = remedy(d, "other end");
    CHECK(r && r->verdict == HS_TIGHT);
    if (r) NEAR(r->gain_m, 0.75 * 0.021e-3 / 2, TIGHT);
    CHECK(remedy(d, "straighten") && remedy(d, "straighten")->verdict == HS_GO);
    CHECK(remedy(d, "straighten") && strstr(remedy(d, "straighten")->text, "170 C"));
    CHECK(remedy(d, "straighten") && strstr(remedy(d, "straighten")->text, "crack"));
    CHECK(remedy(d, "patch") && remedy(d, "patch")->verdict != HS_GO);
    CHECK(!remedy(d, "centres"));
}

static void set_case(bench_job *b, double case_m, double low_m) {
    b->in.case_read = 1;
    for (int f = 0; f < 2; f++) {
        b->in.face[f].case_m = case_m;
        b->in.face[f].case_low_m = low_m;
    }
}

static void measured__case_on_the_test_piece__moves_budget_and_takes_its_doubt(void) {
    bench_job b;
    worked_plate(&b);
    set_case(&b, 1.11e-3, 1.01e-3);
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(b.out.case_m, 1.11e-3, TIGHT);
    NEAR(b.out.case_low_m, 1.01e-3, TIGHT);
    NEAR(d->limit_case_m, 0.299e-3, TIGHT); /* .1 less case is .2 less shape */
    CHECK(d->verdict == HS_WHEEL_CARE);     /* .099 against doubt, .2 measured */
    set_case(&b, 1.05e-3, 0.95e-3);
    d = judge(&b);
    CHECK(d->verdict == HS_WHEEL_NO);
    CHECK(strstr(d->note, "too deep") != NULL);
}

static void measured__bar_on_old_centres__remaking_them_halves_the_run_out(void) {
    bench_job b;
    worked_plate(&b);
    b.job.part.form = HS_BAR;
    b.job.part.held = HS_OLD_CENTRES;
    b.dimension[0] = (hs_dimension){.name = "diameter",
                                    .across = HS_ACROSS_OUTSIDE,
                                    .size = {30e-3, 29.979e-3, 30e-3, "h7"},
                                    .face = {0, 0}};
    b.job.measured.dimension[0] = (hs_measured_dimension){
        .size_given = 1, .shape_given = 1, .size_m = 30.66e-3, .run_out_m = 0.5e-3, .crown = -1};
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(d->shape_m, 0.5e-3, TIGHT);
    CHECK(d->verdict == HS_WHEEL_NO);
    CHECK(isnan(d->turn_at_m));
    const hs_remedy *r = remedy(d, "centres");
    CHECK(r && r->verdict == HS_GO); /* .25 against .46 and .499 */
    if (r) NEAR(r->gain_m, 0.125e-3, TIGHT);
    CHECK(strstr(d->stop_if[0], "run-out") != NULL);
}

static void measured__bore__is_reckoned_the_other_way_round(void) {
    bench_job b;
    worked_plate(&b);
    worked_bore(&b, 0.2e-3);
    const hs_result_measured_dimension *d = judge(&b);
    /* exact: clean V <= F_lo - H - 2(c + d) = .3; case V <= H - F_hi + 2(B' - d) = .655 */
    NEAR(d->shape_m, 0.1e-3, TIGHT);
    NEAR(d->limit_clean_m, 0.300e-3, TIGHT);
    NEAR(d->limit_case_m, 0.655e-3, TIGHT);
    NEAR(sum_of(d), 0.300e-3, TIGHT);
    CHECK(d->verdict == HS_WHEEL_GRIND);
    CHECK(strstr(d->stop_if[0], "0.600 mm") != NULL); /* in ovality, twice V */
    /* .25 - .05 - .02 and .2625 + .05 + .02 */
    NEAR(d->removal_min_m, 0.180e-3, TIGHT);
    NEAR(d->removal_max_m, 0.333e-3, TIGHT);
}

static void measured__plan_fed_back__has_the_same_margins(void) {
    /* With H = R + 2 g - 2 m and depths less m, the limits of the bench are those of the plan. */
    for (int bore = 0; bore < 2; bore++) {
        hs_face_sum plan = {1, 70e-6, 700e-6, 15e-6, 12e-6, 12e-6, 9e-6, 9e-6};
        hs_face_sum both[2] = {plan, plan};
        hs_limits finish = {24.99e-3, 25.01e-3};
        double rough_m = bore ? 24.3e-3 : 25.7e-3, sign = bore ? -1 : 1;
        double size_m = rough_m + sign * (2 * 9e-6 - 2 * 12e-6);
        hs_limits rough = {rough_m, rough_m};
        hs_shape_limits of_plan = hs_window_shape_limits(bore, finish, rough, both);
        bench_job b;
        worked_plate(&b);
        b.job.part.form = HS_RING;
        b.dimension[0].across = bore ? HS_ACROSS_BORE : HS_ACROSS_OUTSIDE;
        b.dimension[0].size = (hs_size){25e-3, finish.low_m, finish.high_m, ""};
        b.dimension[0].face[1] = 0;
        b.face[0].case_m = 0;
        b.in.split_m[0] = 15e-6;
        b.in.face[0] = (hs_measured_face){
            70e-6, 70e-6, 700e-6 - 12e-6, 700e-6 - 12e-6, INFINITY, INFINITY, 0, 0};
        b.job.measured.dimension[0] = (hs_measured_dimension){
            .size_given = 1, .shape_given = 1, .size_m = size_m, .ovality_m = 0.2e-3};
        const hs_result_measured_dimension *d = judge(&b);
        NEAR(d->limit_clean_m, hs_window_round(of_plan.clean_m, 0, HS_DOWN), TIGHT);
        NEAR(d->limit_case_m, hs_window_round(of_plan.case_m, 0, HS_DOWN), TIGHT);
    }
}

static void measured__what_is_missing__is_said_and_not_guessed(void) {
    bench_job b;
    worked_plate(&b);
    b.job.measured.dimension[0].size_given = 0;
    const hs_result_measured_dimension *d = judge(&b);
    CHECK(d->present && d->verdict == HS_WHEEL_NONE && d->note[0]);
    worked_plate(&b);
    b.job.measured.dimension[0].shape_given = 0;
    d = judge(&b);
    NEAR(d->shape_m, 0.2e-3, TIGHT);
    CHECK(strstr(d->note, "Shape not measured") != NULL);
    CHECK(d->verdict == HS_WHEEL_CARE && d->remedies == 0); /* own contract: not looked at */
    worked_plate(&b); /* hardness alone: too soft is no, hard enough decides nothing */
    b.job.measured.dimension[0].size_given = b.job.measured.dimension[0].shape_given = 0;
    b.face[0].hardness_HV = b.face[1].hardness_HV = 653;
    b.job.measured.hardness_low_HV = b.job.measured.hardness_high_HV = 400;
    d = judge(&b);
    CHECK(d->present && d->verdict == HS_WHEEL_NO && strstr(d->note, "softer than asked"));
    b.in.face[0].soft_rim_m = 0.2e-3;
    d = judge(&b);
    CHECK(d->verdict == HS_WHEEL_NONE && strstr(d->note, "soft rim") != NULL);
    b.job.measured.hardness_low_HV = b.job.measured.hardness_high_HV = 700;
    d = judge(&b);
    CHECK(d->present && d->verdict == HS_WHEEL_NONE && !strstr(d->note, "softer"));
    worked_plate(&b);
    b.in.face[0].clean_up_m = NAN;
    CHECK(judge(&b)->verdict == HS_WHEEL_NO); /* NaN grinds nothing */
}

static void measured__unequal_faces__share_and_turn_by_what_each_may_lose(void) {
    /* exact, mm: face 0 need .20 may .49, face 1 need .15 may .58 (B' the hardness's .70); shares
     * .3291 + .3414 of H - F_mid = .6705; sum limits .51 and .589, face 0 alone .49 */
    bench_job b;
    worked_plate(&b);
    b.in.face[1].clean_up_m = b.in.face[1].clean_up_high_m = 30e-6;
    b.in.face[1].case_m = 1.5e-3;
    b.in.face[1].hard_to_m = 0.7e-3;
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(d->limit_clean_m, 0.510e-3, TIGHT);
    NEAR(d->limit_case_m, 0.490e-3, TIGHT);
    NEAR(d->turn_at_m, 20.231e-3, TIGHT);
    NEAR(d->removal_min_m, 0.204e-3, TIGHT);
    NEAR(d->removal_max_m, 0.468e-3, TIGHT);
    NEAR(d->case_left_min_m, 0.756e-3, TIGHT);
    NEAR(b.out.case_m, 1.21e-3, TIGHT);
    b.job.measured.dimension[0].crown = 1;
    NEAR(judge(&b)->turn_at_m, 20.219e-3, TIGHT);
    hs_measured_face swap = b.in.face[0]; /* the other way round: the faces change places */
    b.in.face[0] = b.in.face[1];
    b.in.face[1] = swap;
    d = judge(&b);
    NEAR(d->turn_at_m, 20.231e-3, TIGHT);
    NEAR(d->removal_min_m, 0.204e-3, TIGHT);
    NEAR(d->case_left_min_m, 0.756e-3, TIGHT);
    /* the terms are those of the middle, also where the bad side is worse */
    b.in.face[0].clean_up_high_m = b.in.face[1].clean_up_high_m = 0.1e-3;
    NEAR(sum_of(judge(&b)), 0.510e-3, TIGHT);
}

static void measured__one_face_ground__carries_everything(void) {
    /* exact, mm: V <= 2 (.4 - .1) and <= 2 (.59 - .421) */
    for (int k = 0; k < 2; k++) {
        bench_job b;
        worked_plate(&b);
        b.face[!k].finish = HS_AS_HARDENED;
        b.job.measured.dimension[0].size_m = 20.4e-3;
        b.job.measured.dimension[0].bow_m = 0.1e-3;
        const hs_result_measured_dimension *d = judge(&b);
        NEAR(d->limit_clean_m, 0.600e-3, TIGHT);
        NEAR(d->limit_case_m, 0.338e-3, TIGHT);
        CHECK(isnan(d->turn_at_m));
        NEAR(d->removal_min_m, 0.330e-3, TIGHT);
        NEAR(d->removal_max_m, 0.491e-3, TIGHT);
        NEAR(d->case_left_min_m, 0.719e-3, TIGHT);
        NEAR(sum_of(d), 0.600e-3, TIGHT);
        b.job.measured.dimension[0].size_m = 20.66e-3;
        d = judge(&b);
        CHECK(d->verdict == HS_WHEEL_NO && strstr(d->stop_if[1], "whatever the shape"));
        b.face[k].finish = HS_AS_HARDENED;
        d = judge(&b);
        CHECK(d->verdict == HS_WHEEL_NONE && strstr(d->note, "No face"));
    }
}

static void measured__hardness_depth__is_a_budget_of_its_own(void) {
    /* exact, mm: B' .5 from the hardness: V <= 19.979 - 20.66 + .96 = .279 */
    bench_job b;
    worked_plate(&b);
    for (int f = 0; f < 2; f++) {
        b.in.face[f].hard_to_m = b.in.face[f].hard_to_low_m = 0.5e-3;
        b.in.face[f].case_low_m = b.in.face[f].case_m;
    }
    b.job.measured.dimension[0].bow_m = 0.1e-3;
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(d->limit_case_m, 0.279e-3, TIGHT);
    CHECK(d->verdict == HS_WHEEL_GRIND); /* .12 against .269 */
    for (int f = 0; f < 2; f++)
        b.in.face[f].hard_to_low_m = 0.4e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE); /* .12 against .069 */
    CHECK(strstr(d->note, "Case not measured") != NULL);
    b.in.case_read = 1; /* a case of which nothing was computed is measured all the same */
    CHECK(strstr(judge(&b)->note, "Case not measured") == NULL);
}

static void measured__case_side__takes_the_larger_size(void) {
    /* exact, mm: case limit .499; with the size .01 larger .489, against V and a tenth */
    bench_job b;
    worked_plate(&b);
    for (int f = 0; f < 2; f++) {
        b.in.face[f].case_low_m = b.in.face[f].case_m;
        b.in.face[f].clean_up_m = b.in.face[f].clean_up_high_m = 0;
    }
    b.job.measured.dimension[0].bow_m = 0.444e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_GRIND);
    b.job.measured.dimension[0].bow_m = 0.446e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
}

static void measured__rounding__to_the_safe_side(void) {
    bench_job b;
    worked_plate(&b);
    b.job.measured.dimension[0].size_m = 20.6605e-3;
    b.job.measured.dimension[0].bow_m = 0.6e-3;
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(d->limit_clean_m, 0.460e-3, TIGHT); /* .4605 */
    NEAR(d->limit_case_m, 0.498e-3, TIGHT);  /* .4985 */
    /* half of .1395 and of .1015, up */
    CHECK(strstr(d->note, "0.070 mm") != NULL && strstr(d->note, "0.051 mm") != NULL);
    NEAR(d->removal_min_m, 0.010e-3, TIGHT); /* .33025 - .32 = .01025 */
    b.job.inch_first = 1;
    d = judge(&b);
    NEAR(d->limit_clean_m, 0.0181 * 25.4e-3, TIGHT); /* .01813 in */
    CHECK(strstr(d->stop_if[0], "0.0181 in") != NULL);
}

static void measured__reads_soft__no_unless_a_rim_explains_it(void) {
    bench_job b;
    worked_plate(&b);
    b.face[0].hardness_HV = b.face[1].hardness_HV = 650;
    b.job.measured.hardness_low_HV = 560;
    b.job.measured.hardness_high_HV = 620;
    CHECK(judge(&b)->verdict == HS_WHEEL_NO);
    b.in.face[0].soft_rim_m = 0.0505e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    CHECK(strstr(b.out.dimension[0].note, "0.051 mm") != NULL);
    CHECK(b.out.verdict == HS_WHEEL_CARE);
    b.in.face[0].soft_rim_m = 0; /* low end below, middle above what is asked */
    b.job.measured.hardness_high_HV = 760;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    b.job.measured.hardness_low_HV = 660;
    b.job.measured.hardness_high_HV = 720;
    CHECK(judge(&b)->verdict == HS_WHEEL_GRIND);
}

static void measured__files_straddle_what_is_asked__care_not_no(void) {
    /* own contract: a band has no middle; only one wholly below condemns */
    bench_job b;
    worked_plate(&b);
    b.face[0].hardness_HV = b.face[1].hardness_HV = 653; /* 58 HRC */
    b.job.measured.hardness_low_HV = 595;                /* 55 .. 60 HRC: middle below */
    b.job.measured.hardness_high_HV = 697;
    CHECK(judge(&b)->verdict == HS_WHEEL_NO);
    b.job.measured.by_files = 1;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    CHECK(strstr(b.out.dimension[0].note, "files") != NULL);
    b.job.measured.hardness_low_HV = 513; /* 50 .. 55 HRC */
    b.job.measured.hardness_high_HV = 595;
    CHECK(judge(&b)->verdict == HS_WHEEL_NO);
    CHECK(!strncmp(b.out.dimension[0].note, "SOFT SKIN: the files' band lies wholly below", 44));
    b.in.face[0].soft_rim_m = 0.05e-3; /* it may explain it: not before that was looked at */
    CHECK(judge(&b)->verdict == HS_WHEEL_NO && b.out.verdict == HS_WHEEL_NO);
    CHECK(strstr(b.out.dimension[0].note, "0.050 mm") != NULL);
}

static void measured__C_reading_on_a_thin_case__condemns_nothing(void) {
    /* exact: 55 HRC needs (100 - 55) x .002 x 10 = .9 mm of case, ISO 6508-1 */
    bench_job b;
    worked_plate(&b);
    b.face[0].hardness_HV = b.face[1].hardness_HV = 653;
    b.job.measured.hardness_low_HV = b.job.measured.hardness_high_HV = 595;
    b.job.measured.hardness_scale = HS_HRC;
    set_case(&b, 0.91e-3, 0.9e-3);
    judge(&b);
    CHECK(strstr(b.out.dimension[0].note, "no steel harder") != NULL);
    set_case(&b, 0.89e-3, 0.8e-3);
    judge(&b);
    CHECK(strstr(b.out.dimension[0].note, "reads low") != NULL);
    b.job.measured.hardness_scale = HS_HR30N;
    judge(&b);
    CHECK(strstr(b.out.dimension[0].note, "no steel harder") != NULL);
}

HS_TEST_MAIN("plan_measured", TEST(measured__worked_plate__printed_figures),
             TEST(measured__over_the_bow__takes_the_bow_off),
             TEST(measured__corner_lift_and_doubt__add_to_the_bow),
             TEST(measured__near_the_limit__care_then_no),
             TEST(measured__case_on_the_test_piece__moves_budget_and_takes_its_doubt),
             TEST(measured__bar_on_old_centres__remaking_them_halves_the_run_out),
             TEST(measured__bore__is_reckoned_the_other_way_round),
             TEST(measured__plan_fed_back__has_the_same_margins),
             TEST(measured__what_is_missing__is_said_and_not_guessed),
             TEST(measured__unequal_faces__share_and_turn_by_what_each_may_lose),
             TEST(measured__one_face_ground__carries_everything),
             TEST(measured__hardness_depth__is_a_budget_of_its_own),
             TEST(measured__case_side__takes_the_larger_size),
             TEST(measured__rounding__to_the_safe_side),
             TEST(measured__reads_soft__no_unless_a_rim_explains_it),
             TEST(measured__files_straddle_what_is_asked__care_not_no),
             TEST(measured__C_reading_on_a_thin_case__condemns_nothing))
