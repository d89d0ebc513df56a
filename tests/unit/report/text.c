/* The text report, read as the toolmaker reads it. */
#include "hardskin/report/report.h"
#include "made.h"
#include "plan/blank.h"
#include "plan/handbook.h"
#include "report/wrap.h"
#include "support/check.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static size_t widest(const char *report) {
    size_t most = 0;
    while (*report) {
        char line[1024];
        size_t n = strcspn(report, "\n");
        if (n >= sizeof line) return n;
        memcpy(line, report, n);
        line[n] = '\0';
        size_t columns = hs_wrap_columns(line);
        if (columns > most) most = columns;
        report += n + (report[n] == '\n');
    }
    return most;
}

static void text__every_kind_of_result__fits_80_columns(void) {
    static void (*const make[])(made *) = {made_plate, made_stop, made_measured};
    for (size_t i = 0; i < 3; i++)
        for (int inch = 0; inch < 2; inch++) {
            made m;
            make[i](&m);
            m.job.inch_first = inch;
            size_t columns = widest(made_text(&m));
            CHECK(columns > 40);
            CHECK(columns <= 80);
        }
}

static void text__long_words_and_names__fit_80_columns(void) {
    made m;
    made_plate(&m);
    char word[200];
    memset(word, 'x', sizeof word - 1);
    word[sizeof word - 1] = '\0';
    m.job.name = word;
    m.dimension[0].name = word;
    m.face[0].name = word;
    m.read[0].text = word;
    CHECK(widest(made_text(&m)) <= 80);
}

/* design: the rough size stands at the top, mm and inch, stock per side */
static void text__go__rough_size_is_in_the_first_12_lines(void) {
    made m;
    made_plate(&m);
    const char *t = made_text(&m);
    int line = made_line_of(t, "20.690 mm (0.8146 in)");
    CHECK(line > 0 && line <= 12);
    CHECK(made_line_of(t, "stock 0.350 mm per side") == line);
    CHECK(made_line_of(t, "0.419 mm") > line);
    CHECK(made_line_of(t, "0.419 mm") <= 14);
    CHECK(made_line_of(t, "GO") <= 3);
}

/* A bore with stock is smaller: its window starts at may (windows.md, section 3). */
static void text__bore__draws_may_on_the_small_side(void) {
    made m;
    made_plate(&m);
    m.dimension[0].across = HS_ACROSS_BORE;
    m.result.dimension[0].inside = 1;
    const char *t = made_text(&m), *bar = strstr(t, "##O###");
    CHECK(bar != NULL);
    const char *below = bar ? strchr(bar, '\n') : NULL;
    CHECK(below && !strncmp(below + 1 + strspn(below + 1, " "), "may 0.425 mm per side", 21));
    CHECK(made_line_of(t, "need 0.275 mm per side") == made_line_of(t, "may 0.425 mm per side"));
}

static void text__inch_first__swaps_the_units(void) {
    made m;
    made_plate(&m);
    m.job.inch_first = 1;
    const char *t = made_text(&m);
    int line = made_line_of(t, "0.8146 in (20.690 mm)");
    CHECK(line > 0 && line <= 12);
    CHECK(made_line_of(t, "20.690 mm (0.8146 in)") == 0);
}

static void text__stop__first_lines_say_which_why_and_what_helps(void) {
    made m;
    made_stop(&m);
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "GRIND: STOP") == 3);
    int why = made_line_of(t, "STOP thickness: clean-up needs 0.275 mm per side");
    CHECK(why > 0 && why <= 6);
    CHECK(made_line_of(t, "0.074 mm too") > 0); /* exact: .275 - .201 */
    int help = made_line_of(t, "wrap the part for the reheat");
    CHECK(help > why && help <= 12);
    CHECK(made_line_of(t, "xxxxxxxx") > help);
}

/* design: the measured answer replaces the computed one, so it comes before the rough sizes */
static void text__measured__comes_right_after_the_verdict(void) {
    made m;
    made_measured(&m);
    const char *t = made_text(&m);
    int wheel = made_line_of(t, "AFTER HARDENING"), stop = made_line_of(t, "STOP IF");
    CHECK(wheel > 0 && wheel <= 6);
    CHECK(stop > wheel && stop <= 12);
    CHECK(made_line_of(t, "ROUGH SIZE") > stop);
    CHECK(made_line_of(t, "turn the part over at 20.225 mm (0.7963 in)") > 0);
    CHECK(made_line_of(t, "GRIND, by what was measured. The plan before the fire was: GO") == 3);
}

/* A part that must not be ground: said first, not where to turn it; what helps with its outcome. */
static void text__measured_no__is_the_first_thing_said(void) {
    made m;
    made_measured(&m);
    hs_result_measured_dimension *d = &m.result.measured.dimension[0];
    m.result.measured_verdict = m.result.measured.verdict = d->verdict = HS_WHEEL_NO;
    d->limit_clean_m = -0.1e-3;
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "DO NOT GRIND, by what was measured") == 3);
    CHECK(made_line_of(t, "GRIND: GO") == 0 && made_line_of(t, "turn the part over") == 0);
    CHECK(made_line_of(t, "the wheel takes 0.110") == 0 && made_line_of(t, "up none, for the") > 0);
    CHECK(made_line_of(t, "Nothing that was tried makes it fit to grind") > 0);
    d->limit_clean_m = 0.460e-3;
    d->fits = 1; /* it is soft, or not tempered: no way of grinding is missing */
    t = made_text(&m);
    CHECK(made_line_of(t, "Nothing that was tried") == 0 &&
          made_line_of(t, "what it lacks is told") > 0);
    d->remedies = 1;
    d->remedy[0] = (hs_remedy){.what = "straighten warm", .gain_m = 1e-4, .verdict = HS_TIGHT};
    CHECK(made_line_of(made_text(&m), "1. straighten warm: then GRIND WITH CARE") > 0);
}

/* The numbers printed below "need ... =" are read back and added: they give the printed need. */
static void text__because__adds_up_as_printed(void) {
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    d->because[0].value_m = 0.0803e-3; /* each rounds down, together they do not */
    d->because[1].value_m = 0.0103e-3;
    d->because[2].value_m = 0.1654e-3;
    d->because[4].value_m = 0.0190e-3;
    const char *at = strstr(made_text(&m), "need 0.275 mm (0.0109 in) per side =");
    CHECK(at != NULL);
    if (!at) return;
    double sum = 0;
    for (size_t i = 0; i < d->terms; i++) {
        at = strchr(at, '\n') + 1;
        sum += strtod(at, NULL);
    }
    NEAR(sum, 0.275, 1e-9);
}

static void text__certain_results__never_print_0_or_100_percent(void) {
    made m;
    made_plate(&m);
    for (int i = 0; i < 2; i++) {
        m.result.confidence.reached = m.result.confidence.reached_batch = i;
        const char *t = made_text(&m);
        CHECK(strstr(t, " 0 %") == NULL && strstr(t, " 0.0 %") == NULL);
        CHECK(strstr(t, "100 %") == NULL && strstr(t, "100.0 %") == NULL);
        CHECK(strstr(t, i ? "at least 99.99 %" : "less than 0.1 %") != NULL);
    }
}

/* own contract: the core is told with its doubt and what it is made of, most first */
static void text__core__is_told_with_its_doubt_and_its_structure(void) {
    made m;
    made_plate(&m);
    CHECK(strstr(made_text(&m), "core: 350 HV (290 to 400 HV), about 60 % bainite, about 40 %") !=
          NULL);
    m.result.hard.core_martensite_pct = 99;
    m.result.hard.core_bainite_pct = 1;
    CHECK(strstr(made_text(&m), "core: 350 HV (290 to 400 HV), martensite\n") != NULL);
    m.result.hard.margin = 0.8;
    CHECK(strstr(made_text(&m), "whether the case hardens fully is in doubt") != NULL);
    m.result.hard.hardens = 0;
    CHECK(strstr(made_text(&m), "THE CASE DOES NOT HARDEN") != NULL);
}

static void text__cautions__gravest_first(void) {
    made m;
    made_plate(&m);
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "DANGER: A hot part") > 0);
    CHECK(made_line_of(t, "CAUTION: Hot boxes flare. They singe. Open the box") >
          made_line_of(t, "DANGER: A hot part"));
    int before = made_line_of(t, "Before quench in oil");
    CHECK(before > 0 && before < made_line_of(t, "DANGER: A hot part"));
    CHECK(made_line_of(t, "CAUTIONS") < made_line_of(t, "GRIND, in this order"));
    CHECK(made_line_of(t, "/route/0/at") > made_line_of(t, "APPENDIX"));
}

static void text__stop_if__is_said_once(void) {
    made m;
    made_plate(&m);
    CHECK(made_line_of(made_text(&m), "STOP IF it is not clean") > 0);
    snprintf(m.result.grind_plan.order[0].stop_if, 64, "STOP IF it is not clean");
    CHECK(made_line_of(made_text(&m), "STOP IF it is not clean") > 0);
    CHECK(made_line_of(made_text(&m), "STOP IF STOP IF") == 0);
}

/* A dimension left as hardened has a size but no stock, window or shape limit. */
static void text__as_hardened__no_stock_and_no_shape_limit(void) {
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[1];
    d->verdict = HS_GO;
    d->rough_aim_m = 59.93e-3;
    d->rough_aim_in = 2.3595;
    d->stock_m = 0.0025e-3;
    d->shape_limit_m = 0.7e-3;
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "59.930 mm (2.3595 in), as hardened, not ground") == 8);
    CHECK(made_line_of(t, "0.700 mm") == 0);
}

/* The shape limit as the sum to do at the bench; one ground face carries all of the stock. */
static void text__bench_sum_and_one_ground_face__as_the_bench_needs_them(void) {
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    d->bench = (hs_result_bench){1, 20.2e-3, 21.159e-3, 1, INFINITY};
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "STOP IF it is more than the smaller of H") > 0);
    CHECK(made_line_of(t, "20.200 mm and 21.159 mm - H") > 0);
    CHECK(made_line_of(t, "stock 0.350 mm per side") > 0);
    m.face[1].finish = HS_AS_HARDENED;
    d->bench.times = 2;
    t = made_text(&m);
    CHECK(made_line_of(t, "stock 0.701 mm on top") > 0 &&
          made_line_of(t, "need 0.550 mm on top") > 0);
    CHECK(made_line_of(t, "2 x the smaller of H") > 0);
}

/* Shut by the finished tolerance alone: no face is to blame. */
static void text__one_face_shut_by_its_tolerance__blames_no_face(void) {
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    m.face[1].finish = HS_AS_HARDENED;
    d->verdict = HS_STOP;
    d->rough_aim_m = NAN;
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "may 0.850 mm and need 0.550 mm on top, but no rough size is good") > 0);
    CHECK(made_line_of(t, "no window of its own") == 0);
}

/* The text of a soft face says what the shop has to do for it, and to what depth carbon goes. */
static void text__soft_face__is_masked_or_cut_in_time(void) {
    made m;
    made_plate(&m);
    m.face[1].finish = HS_SOFT;
    m.result.hard.total_high_m = 2.2617e-3; /* exact: 2.1 x 1.40 / 1.30 = 2.2615; printed up */
    m.step[0].kind = HS_CARBURISE;
    m.job.steps = 1;
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "bottom: to be soft, mask it") > 0 &&
          made_line_of(t, "or leave more") == 0);
    m.step[0].kind = HS_REHEAT;
    t = made_text(&m);
    CHECK(made_line_of(t, "2.262 mm per side on it and cut that off") > 0);
}

/* Two faces of different demand: each with its share, and which of them shuts a window. */
static void text__unequal_faces__each_with_its_own_figures(void) {
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    d->unequal = 1;
    d->halved = HS_STOP;
    d->side[0] = (hs_result_side){1, 0.275e-3, 0.300e-3, 0.290e-3};
    d->side[1] = (hs_result_side){1, 0.275e-3, 0.550e-3, 0.410e-3};
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "stock top 0.290 mm, bottom 0.410 mm") > 0);
    CHECK(made_line_of(t, "shared alike between them it would be STOP") > 0);
    made_stop(&m);
    d->need_m = 0.2e-3;
    d->may_m = 0.3e-3;
    d->side[0] = (hs_result_side){1, 0.200e-3, 0.150e-3, NAN};
    d->side[1] = (hs_result_side){1, 0.200e-3, 0.450e-3, NAN};
    t = made_text(&m);
    CHECK(made_line_of(t, "face top needs 0.200 mm to clean up and its case allows only") > 0);
    CHECK(made_line_of(t, "what bottom has to spare") > 0);
}

/* A bar between centres with the made window, 0.275 to 0.425 per side; the report's own words. */
static const char *bar_report(made *m, double diameter_m, double length_m, int inch) {
    made_plate(m);
    m->job.inch_first = inch;
    m->job.part.form = HS_BAR;
    m->job.part.diameter_m = diameter_m;
    m->job.part.length_m = length_m;
    m->dimension[0].across = HS_ACROSS_OUTSIDE;
    m->dimension[0].face[1] = 0;
    m->dimension[0].size = (hs_size){diameter_m, diameter_m - 25e-6, diameter_m, "h7"};
    hs_handbook_compare(&m->result.dimension[0].handbook, &m->job, &m->result, 0);
    return made_text(m);
}

/* published: three allowances (worked examples of the reference pages, 8 to 10), beside what the
 * report says for the same part */
static void text__published_allowances__beside_the_report_s(void) {
    made m;
    /* OST 1.41512-86, table P8: dia 30 to 50 after hardening .3 + .1 mm, single stage .4, on
     * diameter: the table printed is the same, .2 per side */
    const char *t = bar_report(&m, 40e-3, 0.1, 0);
    CHECK(made_line_of(t, "Handbook allowance for comparison: 0.200 mm (0.0079 in) per side") > 0);
    NEAR(2 * m.result.dimension[0].handbook.value_m, 0.4e-3, 1e-9);
    CHECK(strstr(m.result.dimension[0].handbook.why, "value is 0.075 mm short of") != NULL);
    /* Chicago Tube, centreless: 4.750 in finished, allowance .024 in on diameter. The table, for
     * shafts between centres, says .6 mm = .0236 in at 250 long: less than half of .001 apart */
    t = bar_report(&m, 4.75 * 0.0254, 0.25, 1);
    CHECK(made_line_of(t, "Handbook allowance for comparison: 0.0118 in (0.300 mm) per side") > 0);
    NEAR(2 * m.result.dimension[0].handbook.value_m / 0.0254, 0.024, 0.0005);
    CHECK(made_line_of(t, "both fit") > 0); /* between need .275 and may .425 mm */
    /* usalloys.com: finish 6 in, 1.6 % per side, 6/.968 = 6.198 in, order 6.25. The report has no
     * bar, for the AISI skin of .250 in a side would leave 5.75, and says the mill's figure */
    m.job.part.diameter_m = m.result.dimension[0].rough_high_m = 6 * 0.0254;
    m.job.shop.stock = HS_STOCK_INCH;
    m.face[0].name = "outside";
    hs_blank_choose(&m.result.blank, &m.job, &m.result);
    t = made_text(&m);
    CHECK(made_line_of(t, "Not in stock up to 6.0 in") > 0);
    CHECK(made_line_of(t, "1.6 % of the bar per side, 6.1984 in") > 0); /* 6.19835, up */
}

static void text__remedy_that_opens_nothing__claims_no_opening(void) {
    made m;
    made_stop(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    d->remedy[0].gain_m = 0;
    d->remedy[0].verdict = HS_GO;
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "1. wrap the part for the reheat: then GO") > 0);
    CHECK(made_line_of(t, "window opens by 0.000") == 0);
}

static void text__too_small_a_buffer__fails_and_stays_inside(void) {
    made m;
    made_plate(&m);
    size_t whole = strlen(made_text(&m)) + 1;
    static char small[MADE_REPORT];
    for (size_t size = 0; size < whole; size += size < 40 ? 1 : 97) {
        memset(small, 'Z', sizeof small);
        CHECK(hs_report_text(small, size, &m.job, &m.result) == HS_E_MEMORY);
        CHECK(small[size] == 'Z');
        CHECK(size == 0 || memchr(small, '\0', size) != NULL);
    }
    CHECK(hs_report_text(small, whole, &m.job, &m.result) == HS_OK);
}

HS_TEST_MAIN("report_text", TEST(text__core__is_told_with_its_doubt_and_its_structure),
             TEST(text__every_kind_of_result__fits_80_columns),
             TEST(text__long_words_and_names__fit_80_columns),
             TEST(text__go__rough_size_is_in_the_first_12_lines),
             TEST(text__bore__draws_may_on_the_small_side), TEST(text__inch_first__swaps_the_units),
             TEST(text__stop__first_lines_say_which_why_and_what_helps),
             TEST(text__measured__comes_right_after_the_verdict),
             TEST(text__measured_no__is_the_first_thing_said),
             TEST(text__because__adds_up_as_printed),
             TEST(text__certain_results__never_print_0_or_100_percent),
             TEST(text__cautions__gravest_first), TEST(text__stop_if__is_said_once),
             TEST(text__as_hardened__no_stock_and_no_shape_limit),
             TEST(text__bench_sum_and_one_ground_face__as_the_bench_needs_them),
             TEST(text__one_face_shut_by_its_tolerance__blames_no_face),
             TEST(text__soft_face__is_masked_or_cut_in_time),
             TEST(text__unequal_faces__each_with_its_own_figures),
             TEST(text__published_allowances__beside_the_report_s),
             TEST(text__remedy_that_opens_nothing__claims_no_opening),
             TEST(text__too_small_a_buffer__fails_and_stays_inside))
