/* All that a plan would refuse, told at once: each place once, and the plan's own refusal among
 * them. */
#include "hardskin/plan/plan.h"

#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>
#include <string.h>

enum { MOST = 8 };
static test_job t;
static hs_error fault[MOST];
static size_t faults;

static void start(void) {
    static const char *const place[] = {"/route/0", "/route/1", "/route/2",
                                        "/route/3", "/route/4", "/route/5"};
    test_job_plate(&t, "16MnCr5");
    for (size_t i = 0; i < 6; i++)
        t.step[i].pointer = place[i];
}

static hs_span just(double value) {
    return (hs_span){value, value, value};
}

static hs_status ask(size_t most) {
    void *work = malloc(hs_plan_work_size());
    hs_status status = work ? hs_plan_check(fault, &faults, most, &t.job, work) : HS_E_MEMORY;
    free(work);
    return status;
}

static size_t at(const char *place) {
    size_t i = 0;
    while (i < faults && strncmp(fault[i].pointer, place, strlen(place)) != 0)
        i++;
    return i;
}

/* own contract (plan.h): the status is that of the first; what `plan` itself refuses is told, and
 * in its words */
static void agrees_with_plan(void) {
    static hs_result result;
    hs_error own = {0};
    CHECK(faults > 0 && ask(MOST) == fault[0].status);
    CHECK(test_job_try(&result, &t.job, &own) != HS_OK);
    size_t i = at(own.pointer);
    CHECK(i < faults && !strcmp(fault[i].message, own.message) && fault[i].status == own.status);
}

static void check__a_sound_job__has_no_fault(void) {
    start();
    CHECK(ask(MOST) == HS_OK && faults == 0);
}

static void check__several_faults__are_told_once_each(void) {
    start();
    t.step[0].temp_K = just(1500 + 273.15); /* above every law of diffusion */
    t.step[4].temp_K = just(650 + 273.15);  /* above the table of tempers */
    t.step[5].by = HS_BY_ACID;              /* of no acid */
    t.step[5].tank.acid = "treacle";
    CHECK(ask(MOST) != HS_OK && faults == 3);
    CHECK(at("/route/0/at") < faults && strstr(fault[at("/route/0/at")].message, "1500 C"));
    CHECK(at("/route/4/at") < faults && strstr(fault[at("/route/4/at")].message, "650 C"));
    CHECK(at("/route/5/acid") < faults && strstr(fault[at("/route/5/acid")].message, "treacle"));
    agrees_with_plan();
    CHECK(ask(2) == fault[0].status && faults == 2); /* no more than there is room for */
}

static void check__one_fault__is_the_plan_s_own(void) {
    start();
    t.step[4].temp_K = just(650 + 273.15);
    CHECK(ask(MOST) == HS_E_RANGE && faults == 1 && at("/route/4/at") == 0);
    agrees_with_plan();
    start();
    t.step[0].box_m = 1.2; /* what only the fire asks */
    CHECK(ask(MOST) == HS_E_RANGE && faults == 1 && at("/route/0") == 0);
    agrees_with_plan();
    start();
    t.job.shop.confidence = 0.3; /* of no step */
    CHECK(ask(MOST) == HS_E_IMPOSSIBLE && faults == 1 && strstr(fault[0].message, "confidence"));
    agrees_with_plan();
}

/* own contract: a fault at a key stands for its whole step; step 1 is not step 10 */
static void check__the_nearer_place__stands_for_its_own_step(void) {
    start();
    t.step[0].box_m = 1.2; /* refused by the heat at the box, by the fire as a step */
    CHECK(ask(MOST) != HS_OK && faults == 1 && !strcmp(fault[0].pointer, "/route/0/box"));
    start();
    t.step[1] = t.step[5];
    t.step[1].pointer = "/route/10";
    t.step[1].by = HS_BY_ACID;
    t.step[1].tank.acid = "treacle";
    t.step[5].pointer = "/route/1";
    t.step[5].by = HS_BY_ANODIC_ELECTROLYSIS;
    t.step[5].tank =
        (hs_tank){.acid = "", .anode = "", .accepted = "", .room_m3 = 30, .air_changes_1_s = -1};
    CHECK(ask(MOST) != HS_OK && faults == 2);
    CHECK(!strcmp(fault[0].pointer, "/route/10/acid") && !strcmp(fault[1].pointer, "/route/1"));
}

HS_TEST_MAIN("plan check", TEST(check__a_sound_job__has_no_fault),
             TEST(check__several_faults__are_told_once_each),
             TEST(check__one_fault__is_the_plan_s_own),
             TEST(check__the_nearer_place__stands_for_its_own_step))
