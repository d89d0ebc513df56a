/* Remedies: solved for, confirmed on all dimensions, none that breaks another. */
#include "plan/remedy_search.h"

#include "constants.h"
#include "hardskin/plan/plan.h"
#include "hardskin/tables/table.h"
#include "plan/variant.h"
#include "plan/variant_part.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static hs_status plan(hs_result *r, const test_job *t) {
    return test_job_try(r, &t->job, NULL);
}

static const hs_remedy *find(const hs_result_dimension *d, const char *what) {
    for (size_t i = 0; i < d->remedies; i++)
        if (strstr(d->remedy[i].what, what)) return &d->remedy[i];
    return NULL;
}

static void soak(test_job *t, double hours) {
    t->step[0].hold_s = (hs_span){hours * 3600, hours * 3600, hours * 3600};
}

/* "longer soak: 14 h 30 min" */
static double hours_of(const hs_remedy *r) {
    int h = 0, min = 0;
    if (!r || sscanf(r->what, "longer soak: %d h %d min", &h, &min) < 1) return NAN;
    return h + min / 60.0;
}

static void variant__wrap__takes_every_open_reheat(void) {
    static test_job t;
    static hs_variant v;
    size_t n, open = (size_t)hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, "open lean flame");
    size_t wrapped = (size_t)hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, "wrapped");
    test_job_plate(&t, "16MnCr5");
    t.step[1] = t.step[2]; /* two heats in the open, one after the other */
    t.step[1].medium_row = t.step[2].medium_row = open;
    hs_variant_start(&v, &t.job);
    CHECK(hs_changes(&n)[0].change(&v, 0) && strstr(v.what, "every reheat") != NULL);
    CHECK(v.step[1].medium_row == wrapped && v.step[2].medium_row == wrapped);
    CHECK(!hs_changes(&n)[0].change(&v, 0)); /* nothing left to wrap */
}

static void remedy__longer_soak__is_the_shortest_half_hour_that_opens(void) {
    /* independent: the whole plan run again at the soak named, and at half an hour less */
    static test_job t;
    static hs_result r;
    static const double starts[] = {2, 6};
    for (int k = 0; k < 2; k++) {
        test_job_plate(&t, "16MnCr5");
        soak(&t, starts[k]);
        CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_STOP);
        const hs_remedy *longer = find(&r.dimension[0], "longer soak");
        double hours = hours_of(longer);
        printf("16MnCr5, %g h: longer soak %g h\n", starts[k], hours);
        CHECK(longer && longer->verdict == HS_GO && hours > starts[k]);
        soak(&t, hours);
        CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_GO);
        soak(&t, hours - 0.5);
        CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict != HS_GO);
    }
}

static void soak__longer__is_never_worse_until_the_case_goes_through(void) {
    /* own: the window opens with the depth as long as the surface does not turn to austenite */
    static test_job t;
    static hs_result r;
    double width_m = -1;
    int verdict = HS_STOP, through = 0;
    for (double hours = 2; hours <= 150 && !through; hours *= 1.6) {
        test_job_plate(&t, "C15E");
        t.job.part.thickness_m = 0.006;
        t.dimension[0].size = (hs_size){6e-3, 5.988e-3, 6e-3, ""};
        t.step[0].surface_carbon_pct = (hs_span){0.6, 0.7, 0.8};
        t.step[3].medium_row = (size_t)hs_table_row(hs_table_get(HS_TABLE_QUENCH), 0, "water");
        soak(&t, hours);
        hs_status status = plan(&r, &t);
        through = status == HS_E_THROUGH;
        if (through) continue;
        CHECK(status == HS_OK);
        double now_m = r.dimension[0].may_m - r.dimension[0].need_m;
        CHECK(now_m >= width_m - 2e-6); /* printed limits are rounded by 1 um each */
        CHECK((int)r.dimension[0].verdict <= verdict);
        width_m = now_m;
        verdict = (int)r.dimension[0].verdict;
    }
    CHECK(through);
}

static void remedy__no_soak_long_enough__is_said(void) {
    static test_job t;
    static hs_result r;
    test_job_plate(&t, "C15E"); /* case through the wall long before it is deep enough */
    t.job.part.thickness_m = 0.007;
    t.dimension[0].size = (hs_size){7e-3, 6.988e-3, 7e-3, ""};
    soak(&t, 6);
    t.face[0].case_m = t.face[1].case_m = 1.4e-3;
    t.step[3].medium_row = (size_t)hs_table_row(hs_table_get(HS_TABLE_QUENCH), 0, "water");
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_STOP);
    printf("no soak: %s\n", r.dimension[0].note);
    CHECK(strstr(r.dimension[0].note, "through half the wall") != NULL);
    const hs_remedy *longer = find(&r.dimension[0], "longer soak");
    CHECK(!longer || longer->verdict == HS_STOP);
}

/* Thickness wants depth; width wants a hardness, and more carbon leaves more austenite there. */
static void two_wants(test_job *t, double hardness_HV, const char *medium) {
    const hs_table *s = hs_table_get(HS_TABLE_SURFACE_CARBON);
    test_job_plate(t, "18CrNiMo7-6");
    t->job.part.condition = HS_STRESS_RELIEVED;
    t->step[3].uneven = 0.05;
    soak(t, 14);
    t->step[0].box_m = 0; /* the hold alone: two chosen sides of one edge */
    t->step[0].medium = "charcoal";
    t->step[0].surface_carbon_pct = (hs_span){0.65, 0.7, 0.75};
    if (medium) {
        size_t row = (size_t)hs_table_row(s, 0, medium);
        t->step[0].surface_carbon_pct = (hs_span){hs_table_number(s, row, HS_SURFACE_CARBON_LOW),
                                                  hs_table_number(s, row, HS_SURFACE_CARBON_VALUE),
                                                  hs_table_number(s, row, HS_SURFACE_CARBON_HIGH)};
    }
    t->face[0].hardness_HV = t->face[1].hardness_HV = 0;
    t->face[0].case_m = t->face[1].case_m = 1.1e-3;
    for (int k = 2; k < 4; k++) {
        t->face[k].finish = HS_GROUND;
        t->face[k].case_m = 0.1e-3;
        t->face[k].hardness_HV = hardness_HV;
    }
    t->dimension[1] = t->dimension[0];
    t->dimension[1].name = "width";
    t->dimension[1].size = (hs_size){60e-3, 59.97e-3, 60e-3, ""};
    t->dimension[1].face[0] = 2;
    t->dimension[1].face[1] = 3;
    t->job.dimensions = 2;
}

static void remedy__that_closes_another_dimension__is_not_offered(void) {
    /* independent: the whole plan run again with the richer medium */
    static test_job t;
    static hs_result r;
    static const double asked_HV[] = {660, 690};
    for (int closes = 0; closes < 2; closes++) {
        two_wants(&t, asked_HV[closes], NULL);
        CHECK(plan(&r, &t) == HS_OK);
        CHECK(r.dimension[0].verdict == HS_STOP && r.dimension[1].verdict == HS_GO);
        CHECK((find(&r.dimension[0], "charcoal with carbonate") == NULL) == closes);
        two_wants(&t, asked_HV[closes], "charcoal with carbonate");
        CHECK(plan(&r, &t) == HS_OK);
        CHECK((r.dimension[1].verdict > HS_GO) == closes);
    }
}

static void remedy__stress_in_the_stock__is_taken_out_first(void) {
    /* independent: the whole plan run again with the changed job gives the verdict offered */
    static test_job t;
    static hs_result r;
    test_job_plate(&t, "16MnCr5");
    t.job.part.condition = HS_COLD_DRAWN;
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_STOP);
    const hs_remedy *relief = find(&r.dimension[0], "stress relieve");
    CHECK(relief != NULL);
    hs_verdict offered = relief ? relief->verdict : HS_NONE;
    t.job.part.condition = HS_STRESS_RELIEVED;
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == offered);
}

static void remedy__wide_finish_tolerance__is_used_at_its_full_end(void) {
    /* exact: R <= F_lo + 2 may: half of a tolerance of .2 mm opens by .1 mm on size, .05 a side */
    static test_job t;
    static hs_result r;
    static hs_variant v;
    test_job_plate(&t, "16MnCr5");
    t.dimension[0].size.lower_m = t.dimension[0].size.upper_m - 0.2e-3;
    soak(&t, 12);
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict != HS_GO);
    const hs_remedy *fuller = find(&r.dimension[0], "finish in the fuller");
    CHECK(fuller != NULL);
    if (fuller) CHECK(fuller->gain_m > 50e-6 - 2e-6); /* half: .05; a quarter .075 */
    hs_variant_start(&v, &t.job);
    CHECK(hs_variant_finish_end(&v, 0));
    NEAR(v.dimension[0].size.upper_m, t.dimension[0].size.upper_m, 1e-15);
    NEAR(v.dimension[0].size.lower_m, t.dimension[0].size.upper_m - 0.1e-3, 1e-12);
}

/* own contract: a shop that buys by the inch is offered its own steels, of the table */
static void remedy__another_steel__is_one_the_shop_can_buy(void) {
    static test_job t;
    static hs_variant v;
    static const char *const want[2] = {"another steel: 20MnCr5", "another steel: 8620"};
    for (int inch = 0; inch < 2; inch++) {
        size_t n;
        int found = 0;
        test_job_plate(&t, "16MnCr5");
        t.job.shop.stock = inch ? HS_STOCK_INCH : HS_STOCK_EN;
        const hs_change *changes = hs_changes(&n);
        for (size_t i = 0; i < n; i++)
            for (int size = 0; size < changes[i].sizes; size++) {
                hs_variant_start(&v, &t.job);
                if (!changes[i].change(&v, size)) continue;
                found += !strcmp(v.what, want[inch]);
                CHECK(strcmp(v.what, want[!inch]) != 0);
            }
        CHECK(found > 0);
    }
}

static void less_case__stops_at_half_of_what_is_wanted(void) {
    /* own rule: .1 to .4 mm off, no face below half of its own, no size twice */
    static test_job t;
    static hs_variant v;
    test_job_plate(&t, "16MnCr5");
    const double wanted_m[] = {0.5e-3, 0.3e-3};
    const double left_m[4][2] = {{0.4e-3, 0.2e-3}, {0.3e-3, 0.15e-3}, {0.25e-3, 0.15e-3}, {0, 0}};
    for (int size = 0; size < 4; size++) {
        hs_variant_start(&v, &t.job);
        for (int k = 0; k < 2; k++)
            v.face[k].case_m = wanted_m[k];
        int any = hs_variant_less_case(&v, size);
        CHECK(any == (size < 3));
        for (int k = 0; k < 2 && any; k++)
            NEAR(v.face[k].case_m, left_m[size][k], 1e-12);
    }
}

static void mask__only_a_face_that_asks_nothing__is_masked(void) {
    static test_job t;
    static hs_variant v;
    test_job_plate(&t, "16MnCr5");
    hs_variant_start(&v, &t.job);
    CHECK(!hs_variant_mask(&v, 0));
    t.face[1].case_m = t.face[1].hardness_HV = 0;
    hs_variant_start(&v, &t.job);
    CHECK(hs_variant_mask(&v, 0));
    CHECK(v.face[1].finish == HS_SOFT && v.face[0].finish == HS_GROUND);
}

/* independent: the whole plan run again with the bake named gives the verdict offered */
static void remedy__hot_bake__is_offered_cooler(void) {
    static test_job t;
    static hs_result r;
    test_job_plate(&t, "16MnCr5");
    t.step[5].by = HS_BY_ACID;
    t.step[6] = (hs_step){.kind = HS_BAKE,
                          .pointer = "",
                          .temp_K = {523.15, 523.15, 523.15},
                          .hold_s = {28800, 28800, 28800}};
    t.job.steps = 7;
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_STOP);
    const hs_remedy *bake = find(&r.dimension[0], "bake cooler: 140 C");
    const hs_remedy *brush = find(&r.dimension[0], "descale by brush");
    CHECK(bake && bake->verdict < HS_STOP && brush && brush->verdict < HS_STOP);
    hs_verdict offered = bake ? bake->verdict : HS_NONE;
    t.step[6].temp_K = (hs_span){413.15, 413.15, 413.15};
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == offered);
}

static const hs_change *change_named(hs_variant *v, const test_job *t, const char *word) {
    size_t n;
    const hs_change *changes = hs_changes(&n);
    for (size_t i = 0; i < n; i++)
        for (int size = 0; size < changes[i].sizes; size++) {
            hs_variant_start(v, &t->job);
            if (changes[i].change(v, size) && strstr(v->what, word)) return &changes[i];
        }
    return NULL;
}

/* own contract: what the sheet has already is no remedy; still water is moved, not called stronger
 */
static void remedy__quench__is_another_than_the_sheets(void) {
    static test_job t;
    static hs_variant v;
    const hs_table *media = hs_table_get(HS_TABLE_QUENCH);
    test_job_plate(&t, "C15E");
    t.step[3].medium_row = (size_t)hs_table_row(media, 0, "still water");
    CHECK(change_named(&v, &t, "quench: water") == NULL);
    CHECK(change_named(&v, &t, "move the part in the water") != NULL);
    t.step[3].medium_row = (size_t)hs_table_row(media, 0, "water");
    CHECK(change_named(&v, &t, "water") == NULL);
    const hs_change *stronger = change_named(&v, &t, "stronger quench: brine");
    CHECK(stronger && stronger->soft);
}

/* own contract: a part that is hard through gets no stronger quench */
static void remedy__hard_through__no_stronger_quench(void) {
    static test_job t;
    static hs_result r;
    test_job_plate(&t, "18CrNiMo7-6");
    soak(&t, 4);
    CHECK(plan(&r, &t) == HS_OK && r.dimension[0].verdict == HS_STOP);
    CHECK(r.hard.margin_low >= 1 && r.hard.core_hardens);
    CHECK(r.dimension[0].remedies > 0 && find(&r.dimension[0], "stronger quench") == NULL);
}

HS_TEST_MAIN("plan remedy", TEST(remedy__hot_bake__is_offered_cooler),
             TEST(remedy__quench__is_another_than_the_sheets),
             TEST(remedy__hard_through__no_stronger_quench),
             TEST(variant__wrap__takes_every_open_reheat),
             TEST(remedy__longer_soak__is_the_shortest_half_hour_that_opens),
             TEST(soak__longer__is_never_worse_until_the_case_goes_through),
             TEST(remedy__no_soak_long_enough__is_said),
             TEST(remedy__stress_in_the_stock__is_taken_out_first),
             TEST(remedy__wide_finish_tolerance__is_used_at_its_full_end),
             TEST(remedy__another_steel__is_one_the_shop_can_buy),
             TEST(less_case__stops_at_half_of_what_is_wanted),
             TEST(mask__only_a_face_that_asks_nothing__is_masked),
             TEST(remedy__that_closes_another_dimension__is_not_offered))
