#include "hardskin/model/decarb.h"
#include "hardskin/model/oxide.h"
#include "support/check.h"

static double kelvin(double celsius) {
    return celsius + 273.15;
}

static hs_decarb_result open_air(double celsius, double minutes, double carbon_pct) {
    hs_decarb_result r = {NAN, NAN, NAN, NAN, NAN};
    CHECK(hs_decarb(&r, kelvin(celsius), 60 * minutes, carbon_pct, 1, 1, NULL) == HS_OK);
    return r;
}

static void decarb__lambda_at_800__matches_the_check_value(void) {
    /* computed: .8 %C, 800 C: lambda .07982; rim at most .050, .086, .122 mm in 10, 30, 60 min */
    double lambda = NAN;
    CHECK(hs_decarb_lambda(&lambda, kelvin(800), .8, NULL) == HS_OK);
    NEAR(lambda, .07982, .000006);
    const double minutes[] = {10, 30, 60}, rim_mm[] = {.050, .086, .122};
    for (int i = 0; i < 3; i++) {
        hs_decarb_result r = open_air(800, minutes[i], .8);
        NEAR(1000 * r.rim_high_m, rim_mm[i], .0006);
        NEAR(r.rim_m, .6 * r.rim_high_m, 1e-12); /* judgement: nominal .6 of the bound */
    }
}

static void decarb__lambda__balances_the_carbon(void) {
    /* independent: carbon of the profile on both sides of the boundary, integrated numerically;
     * what left = what passed the surface, Da * dC/dx * sqrt time, within the ferrite. */
    double lambda = NAN, Da = 2.0e-6 * exp(-20100 / (1.987 * kelvin(820)));
    double Dg = hs_decarb_diffusivity(kelvin(820)), t = 1800, phi = sqrt(Da / Dg), C0 = .8;
    double Ca = .013 - .4 * (.013 - .0085), Cg = .35 - .4 * (.35 - .19);
    CHECK(hs_decarb_lambda(&lambda, kelvin(820), C0, NULL) == HS_OK);
    double edge = 2 * lambda * sqrt(Da * t), lost = 0, reach = 40 * sqrt(Dg * t);
    for (int i = 0; i < 100000; i++) {
        double x = (i + .5) * reach / 100000;
        double C = x < edge ? Ca * erf(x / (2 * sqrt(Da * t))) / erf(lambda)
                            : C0 - (C0 - Cg) * erfc(x / (2 * sqrt(Dg * t))) / erfc(lambda * phi);
        lost += (C0 - C) * reach / 100000;
    }
    double passed = 2 * Ca / erf(lambda) * sqrt(Da * t / 3.14159265358979323846);
    NEAR(lost / passed, 1, 1e-4);
}

/* Birks and Jackson's own scaling constant for 30 min, .85 %C, as a factor on kp. */
static double their_factor(double celsius) {
    double integral = NAN, theirs_m = sqrt(2 * 57.1e-6 * exp(-21720 / kelvin(celsius)) * 1800);
    CHECK(hs_oxide_hold(&integral, kelvin(celsius), 1800, .85, NULL) == HS_OK);
    double ratio = theirs_m / hs_oxide_lost_m(hs_oxide_W(integral, 1, 1));
    return ratio * ratio;
}

static void decarb__moving_surface__matches_birks_jackson(void) {
    /* published: Birks and Jackson (from memory), 1000 C, 30 min with their own scaling constant:
     * metal lost .0895 mm, .175 to half, .447 to nine tenths. Their law enters as a factor on kp.
     */
    hs_decarb_result r = {NAN, NAN, NAN, NAN, NAN};
    CHECK(hs_decarb(&r, kelvin(1000), 1800, .85, their_factor(1000), 1, NULL) == HS_OK);
    NEAR(1000 * r.lost_m, .0895, .00006);
    NEAR(1000 * r.depth50_m, .175, .0006);
    NEAR(1000 * r.depth90_m, .447, .0006);
    NEAR(r.rim_m, 0, 0);
}

static void decarb__scale_faster_than_the_rim__is_near_birks_jackson(void) {
    /* published: Birks and Jackson (from memory), 900 C, 30 min: metal lost .0433 mm, .099 mm to
     * half, .252 to nine tenths. Their law has no ferrite and holds from 910 C up; here the little
     * carbon of austenite beside ferrite is left at the edge: 4 % and 1 % less. */
    hs_decarb_result r = {NAN, NAN, NAN, NAN, NAN};
    CHECK(hs_decarb(&r, kelvin(900), 1800, .85, their_factor(900), 1, NULL) == HS_OK);
    NEAR(1000 * r.lost_m, .0433, .00006);
    NEAR(1000 * r.depth50_m, .099, .04 * .099); /* the loss is theirs by the factor */
    NEAR(1000 * r.depth90_m, .252, .01 * .252);
    /* exact: their law at 911 C, solved by halving: what is left of the carbon at those depths */
    double T = kelvin(911), reach = 2 * sqrt(hs_decarb_diffusivity(T) * 1800);
    CHECK(hs_decarb(&r, T, 1800, .85, their_factor(911), 1, NULL) == HS_OK);
    double whole = erfc(r.lost_m / reach);
    NEAR(erfc((r.depth50_m + r.lost_m) / reach) / whole, .5, 1e-9);
    NEAR(erfc((r.depth90_m + r.lost_m) / reach) / whole, .1, 1e-9);
}

static void decarb__no_scale__is_the_error_function(void) {
    /* exact: with a vanishing loss C = C0 erf(x/2 sqrt(Dt)); erf(.4769363) = .5, erf(1.1630872) =.9
     */
    hs_decarb_result r = {NAN, NAN, NAN, NAN, NAN};
    double reach = 2 * sqrt(hs_decarb_diffusivity(kelvin(950)) * 900);
    CHECK(hs_decarb(&r, kelvin(950), 900, .9, 0, 1, NULL) == HS_OK);
    NEAR(r.depth50_m / reach, .4769362762044699, 1e-9);
    NEAR(r.depth90_m / reach, 1.163087153676674, 1e-9);
}

static void decarb__case_reheated_in_the_open__lies_in_the_known_range(void) {
    /* computed, range of the reference: 760 to 850 C, 10 to 60 min: metal lost 8 to 44 um, rim at
     * most .12 mm, nine tenths of the carbon .07 to .31 mm below the OLD surface */
    for (double celsius = 760; celsius <= 850; celsius += 10)
        for (double minutes = 10; minutes <= 60; minutes += 10) {
            hs_decarb_result r = open_air(celsius, minutes, .8);
            CHECK(r.lost_m >= 8e-6 && r.lost_m <= 44.1e-6);
            CHECK(r.rim_high_m <= .1245e-3);
            CHECK(r.depth90_m + r.lost_m >= .07e-3 && r.depth90_m + r.lost_m <= .31e-3);
            CHECK(r.rim_m < r.depth50_m && r.depth50_m <= r.depth90_m);
        }
}

static void decarb__rim__vanishes_at_910(void) {
    double lambda = NAN;
    CHECK(hs_decarb_lambda(&lambda, kelvin(909.99), .8, NULL) == HS_OK);
    CHECK(lambda > 0 && lambda < 2e-3);
    hs_decarb_result below = open_air(909.99, 30, .8), above = open_air(910.01, 30, .8);
    CHECK(below.rim_high_m < 2e-6);
    NEAR(above.rim_m, 0, 0);
    /* exact: without a rim below and without carbon at the edge above, both are one law there */
    NEAR(below.depth50_m / above.depth50_m, 1, 1e-3);
    NEAR(below.depth90_m / above.depth90_m, 1, 1e-3);
}

static void decarb__hotter_than_the_rim_grows__reaches_deeper(void) {
    /* where scale eats in faster than the rim grows; below, the rim itself is thickest near 800 C
     */
    for (double minutes = 10; minutes <= 120; minutes += 55) {
        hs_decarb_result before = {0};
        for (double celsius = 890; celsius <= 1200; celsius += 1) {
            hs_decarb_result r = open_air(celsius, minutes, .8);
            CHECK(r.depth50_m >= before.depth50_m && r.depth90_m >= before.depth90_m);
            before = r;
        }
    }
}

static void decarb__longer__never_reaches_less_deep(void) {
    for (double celsius = 760; celsius <= 1200; celsius += 10) {
        hs_decarb_result before = {0};
        for (double minutes = 1; minutes <= 121; minutes += 10) {
            hs_decarb_result r = open_air(celsius, minutes, .8);
            CHECK(r.rim_m >= before.rim_m && r.depth50_m >= before.depth50_m);
            CHECK(r.depth90_m >= before.depth90_m && r.lost_m >= before.lost_m);
            before = r;
        }
    }
}

static void decarb__little_oxygen__shrinks_all_depths_to_nothing(void) {
    hs_decarb_result before = {0};
    for (double supply = 0; supply <= 1.0001; supply += .05) {
        hs_decarb_result r = {NAN, NAN, NAN, NAN, NAN};
        CHECK(hs_decarb(&r, kelvin(820), 1200, .8, 1, supply, NULL) == HS_OK);
        CHECK(r.rim_high_m >= before.rim_high_m);
        if (supply == 0) {
            NEAR(r.rim_high_m, 0, 0);
            NEAR(r.depth90_m, 0, 0);
            NEAR(r.lost_m, 0, 0);
        }
        before = r;
    }
    /* open air has oxygen enough: the limit does not touch it */
    hs_decarb_result nearly = {NAN, NAN, NAN, NAN, NAN};
    CHECK(hs_decarb(&nearly, kelvin(820), 1200, .8, 1, .999, NULL) == HS_OK);
    NEAR(nearly.rim_high_m, open_air(820, 20, .8).rim_high_m, 1e-15);
}

static void decarb__two_phase_steel__still_has_a_rim(void) {
    hs_decarb_result r = open_air(780, 30, .3); /* ferrite and austenite at heat */
    CHECK(r.rim_m > 0 && isfinite(r.depth90_m) && r.depth90_m >= r.rim_m);
    NEAR(r.depth90_m, r.depth50_m, 0); /* nothing behind the edge but what was there */
    /* exact: no gradient behind the rim, so sqrt(pi) lambda exp(lambda^2) erf(lambda) =
     * Ca/(C0 - Ca), with Ca halfway between the rows of 760 and 800 C */
    double lambda = NAN, Ca = (.0165 + .013) / 2;
    CHECK(hs_decarb_lambda(&lambda, kelvin(780), .3, NULL) == HS_OK);
    double left = sqrt(3.14159265358979323846) * lambda * exp(lambda * lambda) * erf(lambda);
    NEAR(left, Ca / (.3 - Ca), 1e-9);
}

static void decarb__outside_its_range__refuses(void) {
    hs_decarb_result r = {.rim_m = 7};
    CHECK(hs_decarb(&r, kelvin(759), 60, .8, 1, 1, NULL) == HS_E_RANGE);
    CHECK(hs_decarb(&r, kelvin(1201), 60, .8, 1, 1, NULL) == HS_E_RANGE);
    CHECK(hs_decarb(&r, NAN, 60, .8, 1, 1, NULL) == HS_E_RANGE);
    CHECK(hs_decarb(&r, kelvin(800), -1, .8, 1, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_decarb(&r, kelvin(800), 60, 0, 1, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_decarb(&r, kelvin(800), 60, NAN, 1, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_decarb(&r, kelvin(800), 60, .8, 1, -1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_decarb(&r, kelvin(800), 60, .012, 1, 1, NULL) == HS_E_RANGE);
    CHECK(hs_decarb_lambda(&r.rim_m, kelvin(920), .8, NULL) == HS_E_RANGE);
    NEAR(r.rim_m, 7, 0);
    r = open_air(850, 0, .8); /* no time, nothing */
    NEAR(r.rim_m + r.depth50_m + r.depth90_m + r.lost_m, 0, 0);
}

HS_TEST_MAIN("model decarb", TEST(decarb__lambda_at_800__matches_the_check_value),
             TEST(decarb__lambda__balances_the_carbon),
             TEST(decarb__moving_surface__matches_birks_jackson),
             TEST(decarb__scale_faster_than_the_rim__is_near_birks_jackson),
             TEST(decarb__no_scale__is_the_error_function),
             TEST(decarb__case_reheated_in_the_open__lies_in_the_known_range),
             TEST(decarb__rim__vanishes_at_910),
             TEST(decarb__hotter_than_the_rim_grows__reaches_deeper),
             TEST(decarb__longer__never_reaches_less_deep),
             TEST(decarb__little_oxygen__shrinks_all_depths_to_nothing),
             TEST(decarb__two_phase_steel__still_has_a_rim),
             TEST(decarb__outside_its_range__refuses))
