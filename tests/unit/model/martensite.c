#include "hardskin/model/martensite.h"
#include "support/check.h"

#include <stdio.h>

static const hs_composition PLAIN = {.C = 0}, S1018 = {.C = .18, .Mn = .75, .Si = .2};

static double celsius(double temp_C) {
    return temp_C + 273.15;
}

static hs_hardening quenched(hs_composition steel) {
    return (hs_hardening){.steel = steel, .quench_to_K = 293.15};
}

static double HRC(hs_composition steel, double carbon_pct, double temper_C, double hours) {
    const hs_temper temper = {celsius(temper_C), hours * 3600};
    hs_hardening h = quenched(steel);
    h.temper = &temper;
    h.tempers = hours > 0;
    return hs_hardened_HRC(hs_hardened_HV(&h, carbon_pct, NULL));
}

/* published: ASTM A255, polynomial for 100 % martensite; worked values (contract, case 6) */
static void martensite__a255__matches_worked_values(void) {
    static const double at[][2] = {
        {.2, 44.40}, {.35, 53.47}, {.4, 56.29}, {.6, 64.57}, {.7, 65.78}};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++)
        NEAR(hs_a255_HRC(at[i][0]), at[i][1], 0.006);
    CHECK(isnan(hs_a255_HRC(0.0999)) && isnan(hs_a255_HRC(0.7001)) && isnan(hs_a255_HRC(NAN)));
    CHECK(hs_a255_HRC(0.10) > 38 && hs_a255_HRC(0.10) < 39);
}

/* published: formulae of van Bohemen 2012 and Andrews 1965 worked at .8 %C; maker's cards give a
 * case Ms of 200 C (16MnCr5) and 220 C (C10E): 10 K for the steel's range */
static void martensite__ms__matches_worked_values_and_cards(void) {
    const hs_composition mncr = {.Mn = 1.15, .Si = .25, .Cr = .95}, c10 = {.Mn = .45, .Si = .25};
    NEAR(hs_ms_K(&S1018, .8), celsius(218), 0.5);
    NEAR(hs_ms_K(&mncr, .8), celsius(195), 0.5);
    NEAR(hs_ms_K(&c10, .8), celsius(226), 0.5);
    NEAR(hs_ms_K(&mncr, .8), celsius(200), 10);
    NEAR(hs_ms_K(&c10, .8), celsius(220), 10);
    const hs_composition all = {.Mn = 1, .Si = 1, .Cr = 1, .Ni = 1, .Mo = 1};
    NEAR(hs_ms_K(&PLAIN, 0) - hs_ms_K(&all, 0), 31 + 13 + 10 + 18 + 12, 1e-9);
    NEAR(hs_ms_andrews_K(&PLAIN, .4), celsius(539 - 423 * .4), 1e-9);
    NEAR(hs_ms_andrews_K(&PLAIN, 0) - hs_ms_andrews_K(&all, 0), 30.4 + 17.7 + 12.1 + 7.5, 1e-9);
    /* Andrews is the lower at high carbon, the two meet near .4 %C */
    NEAR(hs_ms_andrews_K(&PLAIN, .4), hs_ms_K(&PLAIN, .4), 10);
    CHECK(hs_ms_andrews_K(&PLAIN, .9) < hs_ms_K(&PLAIN, .9) - 25);
}

/* published: Payson and Savage 1944, Rowland and Lyle 1946, Nehrenberg 1946 (from memory), made for
 * carbon as high as a case's; Andrews's linear one is not and lies 40 K lower there. The doubt of
 * 20 K must hold between them and the default on the steels a shop hardens; on 18CrNiMo7-6 it holds
 * against their middle only. What the range of an analysis adds (Mn, Cr, Ni, Si, as squares) is
 * less than 8 K: 1.5 K more in all, which no depth shows. */
static void martensite__ms_of_a_case__formulas_lie_inside_the_doubt(void) {
    static const char *const names[] = {"C10E", "C15E", "1018", "16MnCr5", "20MnCr5", "8620"};
    const double c = .8, doubt = 20;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        hs_steel steel;
        CHECK(hs_steel_find(&steel, names[i], NULL) == HS_OK);
        const hs_composition *s = &steel.mid;
        double rest = 32.4 * s->Mn + 10.8 * s->Si + 16.2 * s->Ni + 10.8 * s->Mo;
        double payson = celsius(499 - 308 * c - 27 * s->Cr - rest);
        double rowland = celsius(499 - 324 * c - 27 * s->Cr - rest);
        double nehrenberg = celsius(499 - 292 * c - 22 * s->Cr - rest), ms = hs_ms_K(s, c);
        NEAR(ms, payson, doubt);
        NEAR(ms, (payson + rowland + nehrenberg) / 3, doubt);
        NEAR(ms, rowland, 1.25 * doubt); /* one in twenty may lie outside a 95 % bound */
        NEAR(ms, nehrenberg, 1.25 * doubt);
        double range = 0.5 * hypot(hypot(31 * (steel.high.Mn - steel.low.Mn),
                                         10 * (steel.high.Cr - steel.low.Cr)),
                                   18 * (steel.high.Ni - steel.low.Ni));
        CHECK(range < 8);
        printf("Ms at .8 %%C, %s: %.0f; others %.0f %.0f %.0f; range of the analysis %.1f K\n",
               names[i], ms - 273.15, payson - 273.15, rowland - 273.15, nehrenberg - 273.15,
               range);
    }
}

/* published: Koistinen and Marburger 1959; worked for 1018 at .8 %C (contract, case 6) */
static void martensite__retained_austenite__matches_worked_values(void) {
    double ms = hs_ms_K(&S1018, .8);
    NEAR(hs_retained_austenite(ms, hs_alpha_usual(), 293.15), .114, 0.0006);
    NEAR(hs_retained_austenite(ms, hs_alpha(&S1018, .8), 293.15), .078, 0.0006);
    NEAR(hs_retained_austenite(ms, hs_alpha_usual(), ms + 1), 1, 0);
    NEAR(hs_retained_austenite(ms, hs_alpha_usual(), ms), 1, 0);
    const hs_composition all = {.Mn = 1, .Si = 1, .Cr = 1, .Ni = 1, .Mo = 1};
    NEAR(hs_alpha(&PLAIN, .5) - hs_alpha(&all, .5), (.14 + .21 + .11 + .08 + .05) * 1e-3, 1e-15);
}

/* independent: the same definitions worked elsewhere (contract, case 6); tolerance: printed digits.
 * exact: up to .7 %C plain Fe-C quenched to 20 C is A255 itself. */
static void martensite__mixed_back__matches_worked_values(void) {
    static const double plain[][2] = {{.6, 64.57}, {.7, 65.78},  {.8, 66.00},
                                      {.9, 65.82}, {1.0, 65.10}, {1.2, 63.19}};
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
        NEAR(HRC(PLAIN, plain[i][0], 0, 0), plain[i][1], 0.006);
    for (double carbon = .10; carbon <= .70; carbon += .05)
        NEAR(HRC(PLAIN, carbon, 0, 0), hs_a255_HRC(carbon), 1e-9);
    NEAR(HRC(PLAIN, .697, 0, 0), hs_a255_HRC(.697), 1e-9);
    NEAR(HRC(S1018, .8, 0, 0), 65.40, 0.006);
    NEAR(HRC(S1018, .9, 0, 0), 65.01, 0.006);
    NEAR(HRC(S1018, .8, 165, 3), 62.41, 0.006);
}

/* practice: a water-quenched case reads above 65 HRC, and tempered some hours at 160 to 170 C
 * between 55 and 63; common practice, no source */
static void martensite__water_quenched_case__reads_as_in_the_trade(void) {
    CHECK(HRC(S1018, .80, 0, 0) > 65);
    CHECK(HRC(S1018, .85, 0, 0) > 65);
    CHECK(HRC(S1018, .80, 165, 3) > 55 && HRC(S1018, .80, 165, 3) < 63);
    CHECK(HRC(S1018, .60, 165, 3) > 55 && HRC(S1018, .60, 165, 3) < 63);
}

static void martensite__by_itself__rises_and_has_no_jump(void) {
    double last = hs_martensite_HV(.10);
    for (double carbon = .11; carbon < 1.3; carbon += .01) {
        double now = hs_martensite_HV(carbon);
        CHECK(now >= last && now - last < 15);
        last = now;
    }
    NEAR(hs_martensite_HV(.80), 925, 1e-9);
    NEAR(hs_martensite_HV(.85), 932.5, 1e-9);
    NEAR(hs_martensite_HV(1.5), 940, 0);
    NEAR(hs_martensite_HV(.75), .5 * (hs_martensite_HV(.70) + 925), 1e-9);
    CHECK(isnan(hs_martensite_HV(.099)) && isnan(hs_martensite_HV(NAN)));
}

/* published: Hollomon and Jaffe with c = 16; exact: 453.15 (16 + log10 2)/16 = 461.68 K */
static void martensite__temper_time__follows_hollomon_and_jaffe(void) {
    const hs_temper two = {celsius(180), 7200}, one = {celsius(180), 3600};
    NEAR(hs_temper_equivalent_K(&two, 1), celsius(188.5), 0.05);
    NEAR(hs_temper_equivalent_K(&one, 1), celsius(180), 1e-9);
    NEAR(hs_temper_equivalent_K(NULL, 0), 0, 0);
    /* exact: the same temper twice is one of twice the time; a cool one after a hot one is nothing
     */
    const hs_temper twice[2] = {one, one}, mixed[2] = {{celsius(200), 3600}, {celsius(100), 3600}};
    NEAR(hs_temper_equivalent_K(twice, 2), hs_temper_equivalent_K(&two, 1), 1e-9);
    NEAR(hs_temper_equivalent_K(mixed, 2), celsius(200), 0.01);
    CHECK(hs_temper_equivalent_K(mixed, 2) > celsius(200));
}

/* published: steel maker's card (contract, case 6); between its rows a straight line */
static void martensite__temper_drop__matches_the_card(void) {
    static const double card[][2] = {{50, 0}, {100, 1}, {150, 2}, {200, 3.5}, {250, 5}, {300, 7}};
    for (size_t i = 0; i < sizeof card / sizeof *card; i++)
        NEAR(hs_temper_drop_HRC(celsius(card[i][0]), .9), card[i][1], 1e-9);
    NEAR(hs_temper_drop_HRC(celsius(175), .8), 2.75, 1e-9);
    NEAR(hs_temper_drop_HRC(celsius(200), .475), 1.75, 1e-9);
    NEAR(hs_temper_drop_HRC(celsius(200), .15), 0, 0);
    NEAR(hs_temper_drop_HRC(celsius(200), .10), 0, 0);
    NEAR(hs_temper_drop_HRC(celsius(30), .9), 0, 0);
    CHECK(isnan(hs_temper_drop_HRC(celsius(351), .9)));
}

/* own contract: quick.md, ranges: temper drop 50 to 300 C */
static void martensite__temper_outside__is_refused(void) {
    hs_temper t = {celsius(49.9), 3600};
    CHECK(hs_temper_check(&t, 1, NULL) == HS_E_RANGE);
    t.temp_K = celsius(300.1);
    CHECK(hs_temper_check(&t, 1, NULL) == HS_E_RANGE);
    t.temp_K = NAN;
    CHECK(hs_temper_check(&t, 1, NULL) == HS_E_RANGE);
    t.temp_K = celsius(300);
    CHECK(hs_temper_check(&t, 1, NULL) == HS_OK);
    t.hold_s = 2 * 3600;
    CHECK(hs_temper_check(&t, 1, NULL) == HS_OK);
    t.hold_s = 400 * 3600;
    CHECK(hs_temper_check(&t, 1, NULL) == HS_E_RANGE);
    t.hold_s = 0;
    CHECK(hs_temper_check(&t, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_temper_check(NULL, 0, NULL) == HS_OK);
    hs_hardening h = quenched(PLAIN);
    h.dissolve_K = celsius(730);
    CHECK(hs_hardening_check(&h, NULL) == HS_E_RANGE);
    CHECK(isnan(hs_hardened_HV(&h, .8, NULL)) && isnan(hs_hardened_carbon(&h, 550)));
    h.dissolve_K = 0;
    h.quench_to_K = 0;
    CHECK(hs_hardening_check(&h, NULL) == HS_E_IMPOSSIBLE);
}

static double carbon_at_550(hs_composition steel, double temper_C) {
    const hs_temper temper = {celsius(temper_C), 3600};
    hs_hardening h = quenched(steel);
    h.temper = &temper;
    h.tempers = temper_C > 0;
    return hs_hardened_carbon(&h, 550);
}

/* independent: the same definitions worked elsewhere (contract, case 6); tolerance: printed digits.
 * published: EN 10052 counts a case to .35 %C, which these support. */
static void martensite__carbon_at_550__matches_worked_values(void) {
    static const double at[][3] = {{0, .3313, .3331},
                                   {150, .3415, .3435},
                                   {180, .3463, .3484},
                                   {200, .3497, .3518},
                                   {250, .3591, .3614}};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
        NEAR(carbon_at_550(PLAIN, at[i][0]), at[i][1], 0.00006);
        NEAR(carbon_at_550(S1018, at[i][0]), at[i][2], 0.00006);
    }
    hs_hardening h = quenched(PLAIN);
    for (double limit = 400; limit < 840; limit += 20)
        NEAR(hs_hardened_HV(&h, hs_hardened_carbon(&h, limit), NULL), limit, 1e-4);
    CHECK(isnan(hs_hardened_carbon(&h, 900)) && isnan(hs_hardened_carbon(&h, 300)) &&
          isnan(hs_hardened_carbon(&h, NAN)));
}

/* exact: carbon above A_cm of the reheat (.8446 at 760 C) makes no difference */
static void martensite__reheat__limits_the_dissolved_carbon(void) {
    hs_hardening h = quenched(S1018);
    double austenite_low, austenite_high, free_austenite;
    h.dissolve_K = celsius(760);
    NEAR(hs_hardened_HV(&h, 1.1, &austenite_high), hs_hardened_HV(&h, .8446, &austenite_low), 0.05);
    NEAR(austenite_high, austenite_low, 1e-4);
    CHECK(hs_hardened_HV(&h, .5, NULL) > 0);
    h.dissolve_K = 0;
    CHECK(hs_hardened_HV(&h, 1.1, &free_austenite) > 0 && free_austenite > austenite_high + .05);
}

static void martensite__doubt__shifts_the_answer(void) {
    hs_hardening h = quenched(S1018);
    double centre = hs_hardened_HV(&h, .8, NULL), low_carbon = hs_hardened_HV(&h, .12, NULL), f0,
           f1;
    h.hardness_shift_HRC = -1;
    NEAR(hs_hardened_HRC(centre) - hs_hardened_HRC(hs_hardened_HV(&h, .8, NULL)), 1, 0.02);
    h.hardness_shift_HRC = 4;
    CHECK(hs_hardened_HV(&h, .8, NULL) > centre + 100 &&
          hs_hardened_HV(&h, .12, NULL) > low_carbon);
    h.hardness_shift_HRC = 0;
    hs_hardened_HV(&h, .8, &f0);
    h.ms_shift_K = -20;
    CHECK(hs_hardened_HV(&h, .8, &f1) < centre);
    NEAR(f1 / f0, exp(.011 * 20), 1e-9);
    const double carbon[3] = {.05, .10, .8};
    double HV[3];
    hs_hardened_many(HV, carbon, 3, &h);
    /* published: Maynier 1978, 949 HV per % of carbon in martensite, of which 1 % is austenite */
    NEAR(HV[1] - HV[0], 949 * .05, 1);
    NEAR(HV[2], hs_hardened_HV(&h, .8, NULL), 0);
}

HS_TEST_MAIN("model martensite", TEST(martensite__a255__matches_worked_values),
             TEST(martensite__ms__matches_worked_values_and_cards),
             TEST(martensite__ms_of_a_case__formulas_lie_inside_the_doubt),
             TEST(martensite__retained_austenite__matches_worked_values),
             TEST(martensite__mixed_back__matches_worked_values),
             TEST(martensite__water_quenched_case__reads_as_in_the_trade),
             TEST(martensite__by_itself__rises_and_has_no_jump),
             TEST(martensite__temper_time__follows_hollomon_and_jaffe),
             TEST(martensite__temper_drop__matches_the_card),
             TEST(martensite__temper_outside__is_refused),
             TEST(martensite__carbon_at_550__matches_worked_values),
             TEST(martensite__reheat__limits_the_dissolved_carbon),
             TEST(martensite__doubt__shifts_the_answer))
