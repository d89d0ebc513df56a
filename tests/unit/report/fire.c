/* Box, fire and holes in the text report, as a user reads them. */
#include "hardskin/report/report.h"
#include "made.h"
#include "support/check.h"

#include <string.h>

static made m;

/* The report with its line breaks taken out. */
static const char *flat(void) {
    static char report[60000], text[60000];
    size_t n = 0;
    CHECK(hs_report_text(report, sizeof report, &m.job, &m.result) == HS_OK);
    for (const char *c = report; *c && n + 1 < sizeof text; c++) {
        int blank = *c == ' ' || *c == '\n';
        if (blank && n > 0 && text[n - 1] == ' ') continue;
        text[n++] = blank ? ' ' : *c;
    }
    text[n] = '\0';
    return text;
}

static int says(const char *words) {
    int found = strstr(flat(), words) != NULL;
    if (!found) printf("not said: %s\n", words);
    return found;
}

static void pack(void) {
    made_plate(&m);
    m.result.packs = 1;
    m.result.pack[0] = (hs_result_pack){.box_given = 1,
                                        .box_m = {.15, .15, .35},
                                        .compound_m3 = 7.155e-3,
                                        .compound_kg = 2.862,
                                        .compound_low_kg = 1.789,
                                        .compound_high_kg = 4.293,
                                        .cover_m = .065,
                                        .long_m = .35,
                                        .temp_K = 1198.15,
                                        .heat_up_s = 3.5 * 3600,
                                        .heat_up_low_s = 2.5 * 3600,
                                        .heat_up_high_s = 5 * 3600,
                                        .moisture = .05,
                                        .steam_m3 = .7812,
                                        .water_gas_m3 = 1.5624,
                                        .heating_m3 = 9.94e-3,
                                        .sealed_Pa = 496e5,
                                        .co_m3 = .1911,
                                        .co_room_m3 = 159.3};
}

static void fire__a_box__tells_compound_gas_and_limits(void) {
    pack();
    CHECK(says("PACK AND FIRE box: 150 mm is its least inner size"));
    CHECK(says("150.0 mm x 150.0 mm x 350.0 mm"));
    CHECK(says("compound: 7.2 L, about 2.9 kg (1.8 to 4.3 kg"));
    CHECK(says("65.0 mm of it between one part alone and the box; 25 mm all round at least"));
    CHECK(says("it heats through in 3.5 h (2.5 to 5.0 h)"));
    CHECK(says("is 780 L of steam at 925 C, on hot charcoal up to 1600 L"));
    CHECK(says("heating drives out 10 L more") || says("heating drives out 9.9 L more"));
    CHECK(says("never weld"));
    m.job.inch_first = 1;
    CHECK(says("of steam at 1697 F, on hot charcoal") && says("0.99 in all round at least"));
    m.job.inch_first = 0;
    CHECK(says("up to 190 L cold, enough to bring a shut room of 160 m3 to 1200 ppm"));
    /* published: OSHA, NIOSH, EN 50291 (tables/SOURCES.md: co-osha, co-zno, co-alarm) */
    CHECK(says("50 ppm over a shift (OSHA), 35 ppm and never above 200 (NIOSH)"));
    CHECK(says("within 3 min at 300 ppm") && says("at 50 ppm (EN 50291)"));
    CHECK(!strstr(flat(), "TOO LITTLE") && !strstr(flat(), "or more fires"));
}

static void fire__what_is_wrong_with_a_box__is_loud(void) {
    pack();
    m.result.pack[0].thin_cover = 1;
    m.result.pack[0].cover_m = .0204;
    CHECK(says("20.4 mm of it between one part alone and the box: TOO LITTLE, take a larger box"));
    pack();
    m.result.pack[0].long_m = .6627;
    m.job.part.quantity = 4;
    CHECK(says("4 parts take a box 662.7 mm long, or more fires"));
    pack();
    m.result.pack[0].box_given = 0;
    CHECK(says("box: none in the sheet; taken as the least that covers"));
    pack();
    m.result.pack[0].heat_up_high_s = NAN;
    CHECK(says("it heats through in 3.5 h, if at all"));
}

static void fire__oil__is_in_litres_rounded_up(void) {
    made_plate(&m);
    m.result.oil = (hs_result_oil){
        .present = 1, .part_kg = 2.826, .part_m3 = 23.58e-3, .all_m3 = 47.17e-3, .rise_K = 42.3};
    m.job.part.quantity = 2;
    CHECK(says("QUENCH TANK quench oil: at least 24 L for one part of 2.8 kg, 48 L for all 2"));
    CHECK(says("it warms by 43 C"));
    made_plate(&m);
    CHECK(!strstr(flat(), "QUENCH TANK") && !strstr(flat(), "PACK AND FIRE"));
}

static void hole(double open_mm, double least_mm, int closes, int thread) {
    static hs_feature feature[1];
    made_plate(&m);
    feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = 1e-3, .thread = thread};
    m.job.feature = feature;
    m.job.features = 1;
    m.result.scale.lost_m = m.result.scale.lost_high_m = 60e-6;
    m.result.scale.holes = 1;
    m.result.scale.hole[0] = (hs_result_hole){.open_m = open_mm * 1e-3,
                                              .open_least_m = least_mm * 1e-3,
                                              .bare_m = 1.12e-3,
                                              .bare_most_m = 1.2e-3,
                                              .thread_m = thread ? .2e-3 : 0,
                                              .thread_most_m = thread ? .3e-3 : 0,
                                              .closes = closes};
}

static void scale__in_a_hole__is_told_by_how_much_it_takes(void) {
    hole(.8, .6, 0, 0);
    CHECK(says("hole 1 mm: its scale leaves 0.800 mm open, at worst 0.600 mm; freed of it 1.120 mm "
               "wide, at most 1.200 mm"));
    hole(.5, .3, 1, 0);
    CHECK(says("at worst 0.300 mm: NEARLY CLOSED"));
    hole(.2, 0, 1, 0);
    CHECK(says("hole 1 mm: scale may FILL it"));
    hole(.8, .6, 0, 1);
    CHECK(says("its pitch diameter closes by 0.200 mm, at most 0.300 mm"));
    hole(.999, .995, 0, 0);
    CHECK(says("scale takes less than 0.010 mm of the width of its holes and slots"));
}

HS_TEST_MAIN("report_fire", TEST(fire__a_box__tells_compound_gas_and_limits),
             TEST(fire__what_is_wrong_with_a_box__is_loud),
             TEST(fire__oil__is_in_litres_rounded_up),
             TEST(scale__in_a_hole__is_told_by_how_much_it_takes))
