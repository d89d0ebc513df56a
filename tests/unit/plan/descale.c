#include "plan/descale.h"

#include "support/check.h"

#include <string.h>

static double kelvin(double celsius) {
    return celsius + 273.15;
}

/* A plate of 4 dm2: 120 x 100 x 36.4 mm would do; here 200 x 100 mm with no thickness to speak of,
 * so that the worked figure's area is met: 2 (.2 x .1) = .04 m2. */
static hs_part thin_plate(void) {
    return (hs_part){
        .form = HS_PLATE, .length_m = .2, .width_m = .1, .thickness_m = 1e-9, .quantity = 1};
}

typedef struct shop_floor {
    hs_step step[3];
    hs_job job;
} shop_floor;

static void set_up(shop_floor *s, hs_descale_method by, const char *accepted) {
    *s = (shop_floor){0};
    s->step[0] = (hs_step){.kind = HS_TEMPER,
                           .temp_K = {kelvin(180), kelvin(180), kelvin(180)},
                           .hold_s = {7200, 7200, 7200}};
    s->step[1] = (hs_step){.kind = HS_DESCALE, .by = by};
    s->step[1].tank = (hs_tank){.accepted = accepted, .acid = "", .anode = ""};
    s->job = (hs_job){.part = thin_plate(), .step = s->step, .steps = 2};
}

typedef enum condition { SOFT, FRESH, TEMPERED, LOW_TEMPER, THROUGH_SOFT, THROUGH_HARD } condition;

static hs_status plan_at(hs_result_descale *out, const shop_floor *s, condition at) {
    static const struct {
        double HRC;
        int hardened, tempered;
        double temper_C;
    } state[] = {{NAN, 0, 0, NAN}, {64, 1, 0, NAN},   {60, 1, 1, 180},
                 {62, 1, 1, 120},  {30.9, 0, 1, 600}, {31, 0, 1, 400}};
    return hs_descale_plan(out, &s->job, 1, state[at].HRC, state[at].hardened, state[at].tempered,
                           1e-4, kelvin(state[at].temper_C), NULL);
}

/* The hydrogen rule, step by hardness by method by acceptance.
 * published: ISO 9587:2007 (excerpt), ISO 27831-1:2008 (secondary): no cathodic treatment from
 * 1000 MPa = 31 HRC up nor of surface-hardened parts; ASTM B850 ER-14/15 (from memory): bake at
 * 130 C at least, so that a temper of 120 C allows none. Own contract: untempered never. */
static void descale__every_state_and_way__has_its_verdict(void) {
    enum { no = 0, yes = 1 };
    static const struct {
        condition at;
        hs_descale_method by;
        int accepted;
        hs_clean verdict;
        int bake;
    } row[] = {
        /* state         way                        accepted  verdict         bake */
        {SOFT, HS_BY_BRUSH, no, HS_CLEAN_OK, no},
        {SOFT, HS_BY_ACID, no, HS_CLEAN_OK, no},
        {SOFT, HS_BY_ELECTROLYSIS, no, HS_CLEAN_OK, no},
        {SOFT, HS_BY_ANODIC_ELECTROLYSIS, no, HS_CLEAN_OK, no},
        {FRESH, HS_BY_BRUSH, no, HS_CLEAN_OK, no},
        {FRESH, HS_BY_BLAST, no, HS_CLEAN_OK, no},
        {FRESH, HS_BY_ACID, no, HS_CLEAN_STOP, no},
        {FRESH, HS_BY_ACID, yes, HS_CLEAN_STOP, no},
        {FRESH, HS_BY_ELECTROLYSIS, no, HS_CLEAN_STOP, no},
        {FRESH, HS_BY_ELECTROLYSIS, yes, HS_CLEAN_STOP, no},
        {FRESH, HS_BY_ANODIC_ELECTROLYSIS, no, HS_CLEAN_CARE, no},
        {TEMPERED, HS_BY_BRUSH, no, HS_CLEAN_OK, no},
        {TEMPERED, HS_BY_BLAST, no, HS_CLEAN_OK, no},
        {TEMPERED, HS_BY_ACID, no, HS_CLEAN_CARE, yes},
        {TEMPERED, HS_BY_ELECTROLYSIS, no, HS_CLEAN_STOP, no},
        {TEMPERED, HS_BY_ELECTROLYSIS, yes, HS_CLEAN_CARE, yes},
        {TEMPERED, HS_BY_ANODIC_ELECTROLYSIS, no, HS_CLEAN_CARE, no},
        {LOW_TEMPER, HS_BY_ACID, no, HS_CLEAN_STOP, no},
        {LOW_TEMPER, HS_BY_ELECTROLYSIS, yes, HS_CLEAN_STOP, no},
        {THROUGH_SOFT, HS_BY_ELECTROLYSIS, no, HS_CLEAN_OK, no},
        {THROUGH_HARD, HS_BY_ELECTROLYSIS, no, HS_CLEAN_STOP, no},
        {THROUGH_HARD, HS_BY_ELECTROLYSIS, yes, HS_CLEAN_CARE, yes},
        {THROUGH_HARD, HS_BY_ACID, no, HS_CLEAN_CARE, yes},
    };
    for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
        shop_floor s;
        hs_result_descale d = {.verdict = HS_CLEAN_NONE};
        set_up(&s, row[i].by, row[i].accepted ? "the foreman, on the day" : "");
        s.step[1].tank.room_m3 = 100; /* air enough: only hydrogen in the steel is asked here */
        s.step[1].tank.air_changes_1_s = 2. / 3600;
        int done = plan_at(&d, &s, row[i].at) == HS_OK;
        if (!done || d.verdict != row[i].verdict || (d.bake_s > 0) != row[i].bake)
            printf("row %zu: verdict %d, wanted %d: %s\n", i, (int)d.verdict, (int)row[i].verdict,
                   d.text);
        CHECK(done);
        CHECK(d.verdict == row[i].verdict);
        CHECK((d.bake_s > 0) == row[i].bake);
        CHECK(d.text[0] && d.method[0]);
    }
}

static void descale__tank_of_the_worked_figure__has_its_charge_and_time(void) {
    /* computed: 4 dm2, .1 mm scale: 4 + 20 x .1 = 6 Ah/dm2 = 24 Ah; 12 A would take 2 h, the
     * 10 A of the supply 2.4 h. IEC 62485-2 at 10 A: .0612 x 10 m3/h, 620 mm */
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ELECTROLYSIS, "");
    s.step[1].tank.volts_V = 24;
    s.step[1].tank.amps_A = 10;
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    NEAR(d.area_m2, .04, 1e-9);
    NEAR(d.amps_A, 10, 1e-9);
    NEAR(d.charge_Ah, 24, 1e-6);
    NEAR(d.time_s, 2.4 * 3600, .01);
    NEAR(d.fresh_air_m3_s, .612 / 3600, 1e-9);
    NEAR(d.spark_distance_m, .620, .001);
    CHECK(d.volts_V > 1.229 && d.volts_V < 24);
    s.step[1].tank.amps_A = 50;
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    NEAR(d.amps_A, 12, 1e-6); /* the edges of the plate, 1 nm thick, count too */
    NEAR(d.time_s, 7200, .01);
}

static void descale__a_weak_supply__takes_longer(void) {
    shop_floor s;
    hs_result_descale strong, weak;
    set_up(&s, HS_BY_ELECTROLYSIS, "");
    s.step[1].tank = (hs_tank){.volts_V = 12, .amps_A = 10, .acid = "", .anode = ""};
    CHECK(plan_at(&strong, &s, SOFT) == HS_OK);
    s.step[1].tank.volts_V = 6;
    CHECK(plan_at(&weak, &s, SOFT) == HS_OK);
    CHECK(weak.amps_A < strong.amps_A && weak.time_s > strong.time_s);
    CHECK(weak.hydrogen_m3_s < strong.hydrogen_m3_s);
}

static void descale__closed_small_room__is_care(void) {
    /* exact: hydrogen of 10 A for hours into 2 m3 without air passes 1 % */
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ELECTROLYSIS, "");
    s.step[1].tank.room_m3 = 2;
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(d.verdict == HS_CLEAN_CARE);
    NEAR(d.room_pct, 100 * d.hydrogen_m3_s * d.time_high_s / 2, 1e-6);
    CHECK(d.room_pct > 1 && strstr(d.text, "outdoors") != NULL);
    s.step[1].tank.room_m3 = 1000; /* a hall without any air: little hydrogen, but the rule asks */
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(d.verdict == HS_CLEAN_CARE && d.room_pct < 1 && strstr(d.text, "fresh air"));
    s.step[1].tank.room_m3 = 100;
    s.step[1].tank.air_changes_1_s = 2. / 3600;
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(d.verdict == HS_CLEAN_OK && d.room_pct < 1);
}

static void descale__forbidden_anode__is_refused(void) {
    /* own contract: a stainless anode names its hazard */
    shop_floor s;
    hs_result_descale d = {.area_m2 = -1};
    hs_error err = {.status = HS_OK};
    set_up(&s, HS_BY_ELECTROLYSIS, "");
    s.step[1].tank.anode = "stainless";
    CHECK(hs_descale_plan(&d, &s.job, 1, NAN, 0, 0, 1e-4, NAN, &err) == HS_E_FORBIDDEN);
    CHECK(strstr(err.message, "chrom") || strstr(err.help, "chrom"));
    CHECK(d.area_m2 == -1);
}

static void descale__what_the_sheet_left_out__is_named(void) {
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ELECTROLYSIS, "");
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(strstr(d.text, "Assumed") && strstr(d.text, "12 V") && strstr(d.text, "50 g/L"));
    /* also where the text is longest, with more about who accepted than anybody reads */
    set_up(&s, HS_BY_ELECTROLYSIS,
           "the foreman and the owner of the works, both of them, in writing, on the day before "
           "the part went into the tub");
    s.step[1].tank.tub_m3 = .04;
    CHECK(plan_at(&d, &s, TEMPERED) == HS_OK);
    CHECK(strstr(d.text, "accepted (the foreman") && strstr(d.text, "crystals"));
    CHECK(strstr(d.text, "Assumed") && strstr(d.text, "room 30 m3"));
    set_up(&s, HS_BY_BRUSH, "");
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(!strstr(d.text, "Assumed"));
    CHECK(d.amps_A == 0 && d.hydrogen_m3_s == 0);
    CHECK(d.time_low_s > 0 && d.time_low_s < d.time_high_s);
}

static void descale__acid__tells_its_amounts(void) {
    /* exact: FeO + 2 H+: 1.783 g of citric acid per g FeO; 40 L of 10 % hold 4 kg */
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ACID, "");
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(strstr(d.text, "4000 g") != NULL && strstr(d.text, "citric 10 %") != NULL);
    NEAR(d.time_low_s, 3600, .5);
    NEAR(d.time_high_s, 4 * 3600, .5);
    s.step[1].tank.tub_m3 = 1e-4; /* a tenth of a litre is spent long before */
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(d.verdict == HS_CLEAN_CARE && strstr(d.text, "more than there is"));
}

static void descale__alternatives__never_hold_what_is_barred(void) {
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ELECTROLYSIS, "the foreman");
    CHECK(plan_at(&d, &s, TEMPERED) == HS_OK);
    CHECK(d.alternatives == 4);
    CHECK(!strncmp(d.alternative[0], "no scale", 8));
    CHECK(!strncmp(d.alternative[1], "blast", 5));
    CHECK(!strncmp(d.alternative[2], "brush", 5));
    CHECK(!strncmp(d.alternative[3], "anodic", 6));
    set_up(&s, HS_BY_ACID, "the foreman"); /* a risk accepted here is no advice to take another */
    CHECK(plan_at(&d, &s, TEMPERED) == HS_OK);
    for (size_t i = 0; i < d.alternatives; i++)
        CHECK(strncmp(d.alternative[i], "electro", 7) != 0);
    set_up(&s, HS_BY_BRUSH, "");
    CHECK(plan_at(&d, &s, FRESH) == HS_OK);
    for (size_t i = 0; i < d.alternatives; i++)
        CHECK(strncmp(d.alternative[i], "acid", 4) && strncmp(d.alternative[i], "electro", 7));
    CHECK(plan_at(&d, &s, SOFT) == HS_OK);
    CHECK(!strncmp(d.alternative[0], "blast", 5) && !strncmp(d.alternative[1], "electro", 7));
}

static void descale__bake__says_when_the_route_lacks_it(void) {
    shop_floor s;
    hs_result_descale d;
    set_up(&s, HS_BY_ACID, "");
    CHECK(plan_at(&d, &s, TEMPERED) == HS_OK);
    NEAR(d.bake_temp_K, kelvin(150), 1e-9); /* published: temper less 30 K, ISO 9588 (memory) */
    NEAR(d.bake_s, 8 * 3600, 0);
    CHECK(strstr(d.bake, "add it") != NULL);
    s.step[2] = (hs_step){.kind = HS_BAKE};
    s.job.steps = 3;
    CHECK(plan_at(&d, &s, TEMPERED) == HS_OK);
    CHECK(strstr(d.bake, "add it") == NULL && strstr(d.bake, "no guarantee") != NULL);
}

static void descale__area__is_that_of_the_form(void) {
    /* exact: closed forms */
    double a;
    hs_part part = {.form = HS_PLATE, .length_m = 3, .width_m = 2, .thickness_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 22, 1e-12);
    part = (hs_part){.form = HS_BAR, .length_m = 2, .diameter_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 2.5 * 3.14159265358979, 1e-9);
    part = (hs_part){.form = HS_RING, .length_m = 1, .outside_m = 2, .bore_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 4.5 * 3.14159265358979, 1e-9); /* walls 3 pi, ends 2 x .75 pi */
    hs_point square[] = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    part = (hs_part){.form = HS_PROFILE, .length_m = 3, .section = {.outline = {square, 4}}};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 14, 1e-9);
    part.length_m = 0;
    part.form = HS_BAR;
    CHECK(hs_part_area(&a, &part, NULL) == HS_E_IMPOSSIBLE);
}

HS_TEST_MAIN("descale", TEST(descale__every_state_and_way__has_its_verdict),
             TEST(descale__tank_of_the_worked_figure__has_its_charge_and_time),
             TEST(descale__a_weak_supply__takes_longer), TEST(descale__closed_small_room__is_care),
             TEST(descale__forbidden_anode__is_refused),
             TEST(descale__what_the_sheet_left_out__is_named),
             TEST(descale__acid__tells_its_amounts),
             TEST(descale__alternatives__never_hold_what_is_barred),
             TEST(descale__bake__says_when_the_route_lacks_it),
             TEST(descale__area__is_that_of_the_form))
