/* The working figures of a descale step: tank, air, acid. The rule: descale_rule.c. */
#include "descale_floor.h"
#include "support/check.h"

#include <string.h>

static const double FARADAY = 96485.33212331001; /* exact: SI 2019 */
static const double PI = 3.14159265358979323846;

static void descale__tank_of_the_worked_figure__has_its_charge_and_time(void) {
    /* computed: 4 dm2, .1 mm scale: 4 + 20 x .1 = 6 Ah/dm2 = 24 Ah; 12 A would take 2 h, the
     * 10 A of the supply 2.4 h. Fresh air .0612 x 10 m3/h, 620 mm */
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 24, 10);
    floor_must(&d, &s);
    NEAR(d.area_m2, .04, 1e-9);
    NEAR(d.amps_A, 10, 1e-9);
    NEAR(d.charge_Ah, 24, 1e-6);
    NEAR(d.time_s, 2.4 * 3600, .01);
    NEAR(d.fresh_air_m3_s, .612 / 3600, 1e-9);
    NEAR(d.spark_distance_m, .620, .001);
    CHECK(d.volts_V > 1.229 && d.volts_V < 24);
    NEAR(d.charge_Ah, d.amps_A * d.time_s / 3600, 1e-12 * d.charge_Ah); /* exact */
    s.step[2].tank.amps_A = 50;
    floor_must(&d, &s);
    NEAR(d.amps_A, 12, 1e-6); /* the edges of the plate, 1 nm thick, count too */
    NEAR(d.time_s, 7200, .01);
    NEAR(d.charge_Ah, d.amps_A * d.time_s / 3600, 1e-12 * d.charge_Ah);
}

static double cell_volts(const hs_result_descale *d, double amps) {
    /* exact: the cell equation of the reference page, written out again here */
    double density_A_cm2 = amps / (d->area_m2 * 1e4);
    return 1.229 + .12 * log10(density_A_cm2 / 1e-6) + .06 * log10(density_A_cm2 / 1e-9) +
           amps * (d->tank.bath_ohm + .03);
}

static void descale__operating_point__solves_the_cell_and_says_what_limits(void) {
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 6, 100); /* the bath */
    floor_must(&d, &s);
    CHECK(d.tank.limit == HS_TANK_LIMIT_BATH && strstr(d.tank.limited, "The bath limits"));
    NEAR(cell_volts(&d, d.amps_A), 6, 1e-9);
    NEAR(d.volts_V, 6, 1e-9);
    NEAR(d.tank.bath_amps_A, d.amps_A, 1e-9);
    CHECK(d.amps_A < d.tank.usual_amps_A);
    floor_tank(&s, 24, 5); /* the supply */
    floor_must(&d, &s);
    CHECK(d.tank.limit == HS_TANK_LIMIT_SUPPLY && strstr(d.tank.limited, "The supply limits"));
    NEAR(cell_volts(&d, 5), d.volts_V, 1e-9);
    NEAR(cell_volts(&d, d.tank.bath_amps_A), 24, 1e-9);
    NEAR(d.tank.most_amps_A, 5, 0);
    floor_tank(&s, 12, 50); /* the area: 3 A/dm2 on 4 dm2 */
    floor_must(&d, &s);
    CHECK(d.tank.limit == HS_TANK_LIMIT_AREA && strstr(d.tank.limited, "Turn the supply down"));
    NEAR(d.tank.usual_amps_A, 12, 1e-6);
    NEAR(cell_volts(&d, d.tank.most_amps_A), 12, 1e-9);
    CHECK(!d.tank.above_practice && d.air.most_fresh_air_m3_s > d.fresh_air_m3_s);
    /* own contract: air for all the supply can give, as the bath may pass more than computed */
    NEAR(d.air.most_fresh_air_m3_s, .0612 * 50 / 3600, 1e-12);
    s.step[2].tank.gap_m = .02; /* so near that it would drive more than 10 A/dm2 */
    floor_must(&d, &s);
    CHECK(d.tank.above_practice && d.tank.most_amps_A > 40);
}

static void descale__temper_before_the_quench__is_none(void) {
    /* exact: the quench undoes it, so no bake can be told and acid stays shut; an untempered part
     * is told to be tempered before anything else */
    shop_floor s;
    hs_result_descale d;
    floor_make(&s, FLOOR_TEMPERED, HS_BY_ACID, "", NEXT_BAKE);
    floor_must(&d, &s);
    CHECK(d.verdict == HS_CLEAN_CARE);
    hs_step quench = s.step[0];
    s.step[0] = s.step[1];
    s.step[1] = quench;
    floor_must(&d, &s);
    CHECK(d.verdict == HS_CLEAN_STOP);
    floor_make(&s, FLOOR_UNTEMPERED, HS_BY_BRUSH, "", NEXT_NOTHING);
    floor_must(&d, &s);
    CHECK(d.alternatives > 0 && !strncmp(d.alternative[0], "temper first", 12));
}

static void descale__part_as_anode__has_the_anode_s_overvoltage(void) {
    /* exact: the same cell turned round: the plate that is hung in is the cathode, of its own area,
     * the part the steel anode */
    shop_floor s;
    hs_result_descale d;
    floor_make(&s, FLOOR_TEMPERED, HS_BY_ANODIC_ELECTROLYSIS, "", NEXT_NOTHING);
    s.step[2].tank.volts_V = 24;
    s.step[2].tank.amps_A = 5;
    s.step[2].tank.anode_area_m2 = .0025;
    floor_must(&d, &s);
    double cathode_A_cm2 = d.amps_A / 25, anode_A_cm2 = d.amps_A / (d.area_m2 * 1e4);
    NEAR(d.volts_V,
         1.229 + .12 * log10(cathode_A_cm2 / 1e-6) + .06 * log10(anode_A_cm2 / 1e-9) +
             d.amps_A * (d.tank.bath_ohm + .03),
         1e-9);
}

static void descale__bath__has_its_masses(void) {
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 24, 10);
    s.step[2].tank.tub_m3 = .020;
    floor_must(&d, &s);
    /* computed: 20 L at 50 g/L = 1000 g anhydrous = 2700 g crystals; 1.1700, / .6308 */
    NEAR(d.tank.soda_kg[0], 1.000, 1e-12);
    NEAR(d.tank.soda_kg[1], 1.1700, .0001);
    NEAR(d.tank.soda_kg[2], 2.700, .0006);
    NEAR(d.tank.soda_kg[3], 1 / .6308, .0001);
    /* exact: Faraday; .336 g of water and 1.042 g of iron per Ah */
    NEAR(d.tank.water_kg, d.charge_Ah * 3600 * .018015 / (2 * FARADAY), 1e-12 * d.tank.water_kg);
    NEAR(d.tank.anode_kg, d.charge_Ah * 3600 * .055845 / (2 * FARADAY), 1e-12 * d.tank.anode_kg);
    NEAR(d.tank.water_kg * 1e3, .336 * 24, .02);
    /* exact: half of 4 dm2 x 3 mm x 7874 kg/m3 over 25.0 g a job */
    NEAR(d.tank.anode_jobs, floor(.5 * .04 * .003 * 7874 / d.tank.anode_kg), 0);
    NEAR(d.tank.anode_jobs, 18, 0);
    /* computed: 10 A at 12 V heat 20 L by 5.2 K/h; here at the cell's own volts */
    NEAR(d.tank.heating_K_s * 3600, 5.2 * d.volts_V / 12, .06);
    NEAR(d.tank.cable_mm2, 1.5, 0); /* from memory: 19.5 A on 1.5 mm2 */
    s.step[2].tank.amps_A = 30;
    floor_must(&d, &s);
    NEAR(d.tank.cable_mm2, 4, 0); /* for the supply's 30 A, not the 12 A of the part */
    s.step[2].tank.amps_A = 60;
    floor_must(&d, &s);
    CHECK(isnan(d.tank.cable_mm2));
    s.step[2].tank.anode = "graphite";
    floor_must(&d, &s);
    NEAR(d.tank.anode_kg, 0, 0);
    CHECK(isnan(d.tank.anode_jobs));
}

static void descale__small_tub__grows_hot(void) {
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 24, 10);
    floor_must(&d, &s);
    CHECK(isinf(d.tank.hot_s) && isinf(d.tank.boils_s)); /* 40 L: a few kelvin an hour */
    s.step[2].tank.tub_m3 = .002;
    floor_must(&d, &s);
    /* exact: from 20 C to 50 C and to 100 C at a constant rate */
    NEAR(d.tank.hot_s * d.tank.heating_K_s, 30, 1e-9);
    NEAR(d.tank.boils_s * d.tank.heating_K_s, 80, 1e-9);
    CHECK(d.tank.hot_s < d.time_high_s);
}

static void descale__small_current__is_told_what_raises_it(void) {
    shop_floor s;
    hs_result_descale d, again;
    floor_tank(&s, 3.2, 20);
    floor_must(&d, &s);
    CHECK(d.tank.below_practice && d.tank.density_A_m2 < 100);
    CHECK(d.tank.limit == HS_TANK_LIMIT_BATH);
    CHECK(d.tank.remedies >= 5);
    int nearer = 0, soda = 0, warmer = 0, supply = 0;
    for (size_t i = 0; i < d.tank.remedies; i++) {
        const hs_tank_remedy *r = &d.tank.remedy[i];
        CHECK(r->density_A_m2 > d.tank.density_A_m2);
        /* half of a part far from its anode gets more than half of the current: denser, but in all
         * it takes longer */
        CHECK(r->time_s < d.time_s || strstr(r->what, "half of the part"));
        if (i > 0) CHECK(r->density_A_m2 <= d.tank.remedy[i - 1].density_A_m2);
        nearer |= !strncmp(r->what, "anode nearer, 75 mm", 19);
        soda |= !strncmp(r->what, "more soda, 100 g/L", 18);
        warmer |= !strncmp(r->what, "warmer bath, 40 C", 17);
        supply |= strstr(r->what, "V ") && strstr(r->what, "isolated");
    }
    CHECK(nearer && soda && warmer && supply);
    /* exact: what is offered is what the changed sheet gives */
    for (size_t i = 0; i < d.tank.remedies; i++) {
        const hs_tank_remedy *r = &d.tank.remedy[i];
        if (strncmp(r->what, "anode nearer, 75 mm", 19)) continue;
        shop_floor changed = s;
        changed.step[2].tank.gap_m = .075;
        floor_must(&again, &changed);
        NEAR(again.amps_A, r->amps_A, 1e-9);
        NEAR(again.time_s, r->time_s, 1e-6);
    }
    floor_tank(&s, 12, 2); /* the supply limits: the bath's remedies gain nothing */
    floor_must(&d, &s);
    CHECK(d.tank.below_practice && d.tank.limit == HS_TANK_LIMIT_SUPPLY);
    CHECK(d.tank.remedies == 2);
    CHECK(strstr(d.tank.remedy[0].what, "supply of") != NULL);
    CHECK(strstr(d.tank.remedy[1].what, "half of the part") != NULL);
    NEAR(d.tank.remedy[1].density_A_m2, 2 * d.tank.density_A_m2, 1e-6);
    NEAR(d.tank.remedy[1].time_s, d.time_s, 1e-3); /* exact: the charge is the same */
    floor_tank(&s, 12, 10);                        /* enough: nothing to say */
    floor_must(&d, &s);
    CHECK(!d.tank.below_practice && d.tank.remedies == 0);
}

static void descale__several_parts__share_the_current(void) {
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 24, 10);
    floor_must(&d, &s);
    CHECK(d.tank.batch_s == 0);
    s.job.part.quantity = 3;
    floor_must(&d, &s);
    NEAR(d.tank.batch_s, 3 * d.time_s, 1e-6);
    NEAR(d.tank.together_A_m2, 10 / .12, 1e-4); /* exact: 10 A on 12 dm2 */
    NEAR(d.tank.together_s, 3 * d.time_s, 1);
}

static void descale__geometry__follows_the_sheet(void) {
    shop_floor s;
    hs_result_descale d;
    floor_tank(&s, 12, 100);
    floor_must(&d, &s);
    CHECK(!strcmp(d.tank.geometry, "the current spread all round"));
    s.step[2].tank.gap_m = .05; /* face to face is the easier way */
    floor_must(&d, &s);
    CHECK(!strcmp(d.tank.geometry, "plates face to face"));
    NEAR(d.tank.bath_ohm, .05 / (d.tank.conductivity_S_m * .04), 1e-6);
    s.step[2].tank.gap_m = .3;
    floor_must(&d, &s);
    CHECK(!strcmp(d.tank.geometry, "the current spread all round"));
    double a = sqrt(.04 / (4 * PI)); /* exact: two spheres of that surface, first order */
    NEAR(d.tank.bath_ohm, (2 / a - 2 / (.3 + 2 * a)) / (4 * PI * d.tank.conductivity_S_m), 1e-6);
    /* a bar of 20 mm beside a rod of 12 mm: acosh of the reference page */
    s.job.part = (hs_part){.form = HS_BAR, .length_m = .3, .diameter_m = .02, .quantity = 1};
    s.step[2].tank.anode = "rebar";
    s.step[2].tank.anode_area_m2 = 2 * PI * .006 * .3;
    s.step[2].tank.gap_m = .15 - .016;
    floor_must(&d, &s);
    CHECK(!strcmp(d.tank.geometry, "two parallel rods"));
    NEAR(d.tank.bath_ohm * d.tank.conductivity_S_m / 4.70, .6683, .00006); /* computed there */
}

static void descale__a_weak_supply__takes_longer(void) {
    shop_floor s;
    hs_result_descale strong, weak;
    floor_tank(&s, 12, 10);
    floor_must(&strong, &s);
    s.step[2].tank.volts_V = 6;
    floor_must(&weak, &s);
    CHECK(weak.amps_A < strong.amps_A && weak.time_s > strong.time_s);
    CHECK(weak.hydrogen_m3_s < strong.hydrogen_m3_s);
}

static void descale__impossible_tanks__are_refused(void) {
    shop_floor s;
    hs_result_descale d = {.area_m2 = -1};
    hs_error err = {.status = HS_OK};
    floor_make(&s, FLOOR_SOFT, HS_BY_ELECTROLYSIS, "", NEXT_NOTHING);
    s.step[2].tank.anode = "stainless"; /* own contract: it names its hazard */
    CHECK(floor_plan(&d, &s, &err) == HS_E_FORBIDDEN);
    CHECK(strstr(err.message, "chrom") || strstr(err.help, "chrom"));
    s.step[2].tank.anode = "mild steel";
    s.step[2].tank.soda_kg_m3 = 1; /* hardly any soda: no conductivity is known */
    CHECK(floor_plan(&d, &s, &err) == HS_E_RANGE);
    s.step[2].tank.soda_kg_m3 = 50;
    s.job.part.thickness_m = .025; /* exact: half a litre and more into half a litre */
    s.step[2].tank.tub_m3 = .0005;
    CHECK(floor_plan(&d, &s, &err) == HS_E_IMPOSSIBLE && strstr(err.message, "0.5 L"));
    s.job.part.thickness_m = 1e-9;
    s.step[2].tank.tub_m3 = 0;
    s.step[2].tank.volts_V = 1.2; /* splits no water */
    s.step[2].tank.amps_A = 10;
    CHECK(floor_plan(&d, &s, &err) == HS_E_CONVERGE);
    CHECK(d.area_m2 == -1);
    /* limiting case, next to no gap: the leads and the overvoltages remain */
    s.step[2].tank.volts_V = 12;
    s.step[2].tank.amps_A = 1000;
    s.step[2].tank.gap_m = 1e-9;
    floor_must(&d, &s);
    CHECK(d.tank.most_amps_A < (12 - 1.229) / .03);
    NEAR(cell_volts(&d, d.tank.most_amps_A), 12, 1e-9);
}

static void descale__what_the_sheet_left_out__is_named(void) {
    shop_floor s;
    hs_result_descale d;
    floor_make(&s, FLOOR_SOFT, HS_BY_ELECTROLYSIS, "", NEXT_NOTHING);
    floor_must(&d, &s);
    CHECK(strstr(d.text, "Assumed") && strstr(d.text, "12 V") && strstr(d.text, "50 g/L"));
    CHECK(strstr(d.text, "tub 40 L") != NULL);
    /* also where the text is longest, with more about who accepted than anybody reads */
    floor_make(&s, FLOOR_TEMPERED, HS_BY_ELECTROLYSIS,
               "the foreman and the owner of the works, both of them, in writing, on the day "
               "before the part went into the tub, 2026-05-04",
               NEXT_BAKE);
    s.step[2].tank.room_m3 = 2;
    s.step[2].tank.soda_kg_m3 = 110;
    s.step[2].tank.temp_K = floor_kelvin(10);
    floor_must(&d, &s);
    CHECK(strstr(d.text, "accepted (the foreman") && strstr(d.text, "outdoors"));
    CHECK(strstr(d.text, "Assumed") && strstr(d.text, "no air change in the room."));
    floor_make(&s, FLOOR_SOFT, HS_BY_BRUSH, "", NEXT_NOTHING);
    floor_must(&d, &s);
    CHECK(!strstr(d.text, "Assumed"));
    CHECK(d.amps_A == 0 && d.hydrogen_m3_s == 0 && !d.tank.present && !d.acid.present);
    CHECK(d.time_low_s > 0 && d.time_low_s < d.time_high_s);
}

static void descale__anodic__is_short_and_wears_no_anode(void) {
    shop_floor s;
    hs_result_descale d, cathodic;
    floor_make(&s, FLOOR_TEMPERED, HS_BY_ANODIC_ELECTROLYSIS, "", NEXT_NOTHING);
    floor_must(&d, &s);
    NEAR(d.time_high_s, 900, 1e-9); /* published: 10 to 15 minutes in plating practice (read) */
    CHECK(strstr(d.text, "POSITIVE") && strstr(d.text, "Minutes only"));
    CHECK(d.tank.anode_kg == 0 && isnan(d.tank.anode_jobs) && d.bake_s == 0);
    NEAR(d.charge_Ah, d.amps_A * d.time_s / 3600, 1e-12);
    floor_make(&s, FLOOR_SOFT, HS_BY_ELECTROLYSIS, "", NEXT_NOTHING);
    floor_must(&cathodic, &s);
    CHECK(d.stock_taken_high_m > cathodic.stock_taken_high_m);
}

static void descale__acid__tells_its_amounts(void) {
    shop_floor s;
    hs_result_descale d;
    floor_make(&s, FLOOR_SOFT, HS_BY_ACID, "", NEXT_NOTHING);
    floor_must(&d, &s);
    CHECK(d.acid.present && !strcmp(d.acid.name, "citric") && strstr(d.text, "citric 10 %"));
    /* exact: 40 L of 10 % hold 4 kg; 4 dm2 x .1 mm of dense scale weigh 4 x 5.675 g; FeO + 2 H+:
     * 1.783 g of citric acid per g of FeO; 3/2 soda per acid */
    NEAR(d.acid.bath_kg, 4, 1e-12);
    NEAR(d.acid.scale_kg, .04 * 1e-4 * 5675, 1e-8);
    NEAR(d.acid.taken_kg, 1.783 * d.acid.scale_kg, 1e-5);
    NEAR(d.acid.capacity_kg, 4 / 1.783, .001);
    NEAR(d.acid.soda_kg, 4 / .192123 * 1.5 * .105988, .001);
    NEAR(d.acid.soda_low_m3 * 50, d.acid.soda_kg, 1e-12); /* exact: 5 % and 2 % solutions */
    NEAR(d.acid.soda_high_m3 * 20, d.acid.soda_kg, 1e-12);
    NEAR(d.acid.dip_low_kg, .8, 1e-12);
    NEAR(d.acid.dip_high_kg, 2, 1e-12);
    /* exact: Fe + 2 H+: 4 dm2 x 5 um x 7874 kg/m3 of iron, a mole of gas each at 25 C */
    double mol = .04 * 5e-6 * 7874 / .055845;
    NEAR(d.acid.hydrogen_m3, mol * 8.31446261815324 * 298.15 / 101325, 1e-7);
    /* exact: three protons of 4 kg, two for a mole of gas */
    mol = 4 / .192123 * 3 / 2;
    NEAR(d.acid.all_hydrogen_m3, mol * 8.31446261815324 * 298.15 / 101325, 1e-5);
    NEAR(d.time_low_s, 3600, .5); /* common practice: 1 to 4 h */
    NEAR(d.time_high_s, 4 * 3600, .5);
    s.step[2].tank.tub_m3 = 1e-4; /* a tenth of a litre is spent long before */
    floor_must(&d, &s);
    CHECK(d.verdict == HS_CLEAN_CARE && strstr(d.text, "more acid than there is"));
    s.step[2].tank = (hs_tank){.acid = "vinegar", .acid_pct = 5, .tub_m3 = .001, .accepted = ""};
    floor_must(&d, &s);
    /* computed: 1 L of 5 % vinegar dissolves at most 29.9 g of FeO and needs 44 g of soda */
    NEAR(d.acid.capacity_kg * 1e3, 29.9, .06);
    NEAR(d.acid.soda_kg * 1e3, 44, .6);
    NEAR(d.time_high_s, 5 * 24 * 3600, 1); /* overnight to five days, and perhaps nothing */
    CHECK(strstr(d.acid.note, "without effect") != NULL);
}

HS_TEST_MAIN("descale", TEST(descale__tank_of_the_worked_figure__has_its_charge_and_time),
             TEST(descale__operating_point__solves_the_cell_and_says_what_limits),
             TEST(descale__bath__has_its_masses), TEST(descale__small_tub__grows_hot),
             TEST(descale__small_current__is_told_what_raises_it),
             TEST(descale__several_parts__share_the_current),
             TEST(descale__geometry__follows_the_sheet), TEST(descale__a_weak_supply__takes_longer),
             TEST(descale__impossible_tanks__are_refused),
             TEST(descale__what_the_sheet_left_out__is_named),
             TEST(descale__anodic__is_short_and_wears_no_anode),
             TEST(descale__part_as_anode__has_the_anode_s_overvoltage),
             TEST(descale__temper_before_the_quench__is_none),
             TEST(descale__acid__tells_its_amounts))
