/* What the quench leaves of case and core in a plan. */
#include "plan/harden.h"
#include "constants.h"
#include "hardskin/tables/table.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static const double middle[HS_INPUTS] = {0};
static hs_chain_work work;
static hs_chain chain;

static hs_status in_water(test_job *t, double limit_HV, hs_error *err) {
    test_job_plate(t, "C15E");
    t->step[3].medium = "water";
    t->step[3].medium_row = (size_t)hs_table_row(hs_table_get(HS_TABLE_QUENCH), 0, "water");
    t->face[0].limit_HV = t->face[1].limit_HV = limit_HV;
    t->face[0].hardness_HV = t->face[1].hardness_HV = 0;
    return hs_chain_make(&chain, &t->job, &work, err);
}

static double depth_mm(void) {
    hs_part_draw draw = hs_chain_draw(&chain, middle);
    return 1e3 * hs_chain_trial(&chain, 0, 0, &draw).case_m;
}

/* exact: the hardness falls inward, so a lower limit lies deeper; the one asked of the profile
 * itself is met there, to 5 % of the hardness: the limit takes one rate, the profile its own at
 * each depth. practice: a C15E core of 20 mm from water stays soft, 130 to 230 HV; no source */
static void harden__low_limit_on_a_soft_core__has_a_depth(void) {
    static const double limits_HV[] = {600, 550, 450, 350, 300};
    static test_job t;
    double last_mm = 0;
    for (size_t i = 0; i < 5; i++) {
        CHECK(in_water(&t, limits_HV[i], NULL) == HS_OK);
        double now_mm = depth_mm();
        printf("C15E, water, to %.0f HV: %.3f mm\n", limits_HV[i], now_mm);
        CHECK(now_mm > last_mm + 1e-3);
        last_mm = now_mm;
        double profile_m = 0;
        CHECK(hs_case_depth(&profile_m, &chain.response[0].typical, limits_HV[i], NULL) == HS_OK);
        NEAR(now_mm / (1e3 * profile_m), 1, 0.05);
    }
    CHECK(chain.core_HV.mid > 130 && chain.core_HV.mid < 230);
    CHECK(chain.core_HV.low < chain.core_HV.mid && chain.core_HV.mid < chain.core_HV.high);
    const hs_case_profile *p = &chain.response[0].typical;
    double end_HV = p->hardness_HV[0];
    for (size_t i = 1; i < p->n; i++)
        end_HV = fmin(end_HV, p->hardness_HV[i]);
    NEAR(end_HV / chain.core_HV.mid, 1, 0.02); /* the profile ends at the core */
}

static void harden__limit_below_the_core__is_refused_in_words(void) {
    static test_job t;
    hs_error err = {0};
    CHECK(in_water(&t, 120, &err) == HS_E_RANGE);
    CHECK(strstr(err.message, "the core reaches") != NULL);
}

/* own contract: a case that takes more than half of what lies behind it, from both sides of a flat
 * or from all round a bar, is refused; 16 h at 925 C bring more than 1.1 mm (exact: 2.2 of 4 mm) */
static void harden__case_through_half_the_part__is_refused(void) {
    static test_job t;
    hs_error err = {0};
    test_job_bar(&t, "16MnCr5");
    t.job.part.diameter_m = 4e-3;
    t.dimension[0].size = (hs_size){4e-3, 3.987e-3, 4e-3, ""};
    CHECK(hs_chain_make(&chain, &t.job, &work, &err) == HS_E_THROUGH);
    CHECK(strstr(err.message, "both sides") && strstr(err.message, "4.00 mm"));
    test_job_plate(&t, "16MnCr5");
    t.job.part.thickness_m = 4e-3;
    t.dimension[0].size = (hs_size){4e-3, 3.987e-3, 4e-3, ""};
    CHECK(hs_chain_make(&chain, &t.job, &work, &err) == HS_E_THROUGH);
    test_job_bar(&t, "16MnCr5");
    CHECK(hs_chain_make(&chain, &t.job, &work, NULL) == HS_OK);
}

/* own contract: a slower quench and a leaner steel never deepen the case */
static void harden__slower_quench__never_deepens_the_case(void) {
    static test_job t;
    double z[HS_INPUTS] = {0}, last_m = 0;
    CHECK(in_water(&t, 550, NULL) == HS_OK);
    for (double share = -3; share <= 3; share += 0.25) {
        z[HS_IN_QUENCH] = share;
        hs_part_draw draw = hs_chain_draw(&chain, z);
        double now_m = hs_chain_trial(&chain, 0, 0, &draw).case_m;
        CHECK(now_m >= last_m - 1e-9);
        last_m = now_m;
    }
    CHECK(last_m > 0);
}

/* practice: a lean core (C10E, 1010) is hardened in water every day; no source */
static void harden__lean_core__is_answered(void) {
    static const char *const steels[] = {"C10E", "1010", "12L14"};
    static test_job t;
    for (size_t i = 0; i < 3; i++) {
        test_job_plate(&t, steels[i]);
        t.job.part.steel.mid.C = 0.07;
        t.step[3].medium_row = (size_t)hs_table_row(hs_table_get(HS_TABLE_QUENCH), 0, "brine");
        CHECK(hs_chain_make(&chain, &t.job, &work, NULL) == HS_OK);
        CHECK(chain.core_HV.mid > 100 && chain.core_HV.mid < 330);
        CHECK(hs_harden_margin(&chain).mid > 1);
    }
}

static void harden__section__cools_by_its_thinnest_wall_and_the_bath_s_severity(void) {
    /* published: Grossmann's severities, 1/in (from memory), middle of oil's .25 to .50 and moved
     * water's 1.0 to 1.6; exact: 1 in = 25.4 mm */
    static test_job t;
    CHECK(in_water(&t, 550, NULL) == HS_OK);
    hs_quenched q = hs_harden_section(&chain);
    NEAR(q.severity_1_m, 1.3 / 0.0254, 1e-9);
    NEAR(q.size_m, 20e-3, 1e-12);
    CHECK(q.shape == HS_QUENCHED_PLATE);
    test_job_bar(&t, "16MnCr5");
    CHECK(hs_chain_carbon(&chain, &t.job, HS_RESPONSE_MIDDLE, &work, NULL) == HS_OK);
    q = hs_harden_section(&chain);
    NEAR(q.severity_1_m, 0.375 / 0.0254, 1e-9);
    NEAR(q.size_m, 30e-3, 1e-12);
    CHECK(q.shape == HS_QUENCHED_ROUND);
    test_job_ring(&t, "20MnCr5");
    CHECK(hs_chain_carbon(&chain, &t.job, HS_RESPONSE_MIDDLE, &work, NULL) == HS_OK);
    NEAR(hs_harden_section(&chain).size_m, 12.5e-3, 1e-12); /* half of 70 - 45 */
}

static void harden__severity_of_the_bath__is_a_range(void) {
    /* exact: of a steel that is known the rate is in doubt by the formulas and by half of what lies
     * between the ends of the bath's severity, 1.0 and 1.6 per inch, as squares; the ends of margin
     * and core lie no nearer than those severities by themselves put them */
    static test_job t;
    static const double surface = 1;
    double rate[2], margin[2], core_HV[2];
    hs_error err = {0};
    test_job_plate(&t, "C15E");
    t.step[3].medium = "water";
    t.step[3].medium_row = (size_t)hs_table_row(hs_table_get(HS_TABLE_QUENCH), 0, "water");
    t.job.part.steel.low = t.job.part.steel.high = t.job.part.steel.mid;
    CHECK(hs_chain_carbon(&chain, &t.job, HS_RESPONSE_MIDDLE, &work, &err) == HS_OK);
    const hs_composition *steel = &t.job.part.steel.mid;
    hs_quenched q = hs_harden_section(&chain);
    double from_K = chain.route.dissolve_K;
    for (int k = 0; k < 2; k++) {
        q.severity_1_m = (k ? 1.6 : 1.0) / 0.0254;
        hs_quench_rates(&rate[k], &surface, 1, &q, from_K);
        CHECK(hs_case_hardens(&margin[k], NULL, steel, &q, from_K, NULL) == HS_OK);
        CHECK(hs_core_HV(&core_HV[k], NULL, steel, steel->C, &q, from_K, NULL) == HS_OK);
    }
    double half = 0.5 * log(rate[1] / rate[0]);
    CHECK(half > 0.05);
    NEAR(chain.face[0].rate_bound, hypot(log(HS_K_HARDENABILITY_RATE_DOUBT), half), 1e-9);
    CHECK(chain.face[0].margin.low <= margin[0] && chain.face[0].margin.high >= margin[1]);
    CHECK(chain.core_HV.low <= core_HV[0] && chain.core_HV.high >= core_HV[1]);
}

HS_TEST_MAIN("plan harden", TEST(harden__case_through_half_the_part__is_refused),
             TEST(harden__low_limit_on_a_soft_core__has_a_depth),
             TEST(harden__limit_below_the_core__is_refused_in_words),
             TEST(harden__slower_quench__never_deepens_the_case),
             TEST(harden__lean_core__is_answered),
             TEST(harden__section__cools_by_its_thinnest_wall_and_the_bath_s_severity),
             TEST(harden__severity_of_the_bath__is_a_range))
