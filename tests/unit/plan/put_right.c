/* What must be put right first: box, bake, infeed. */
#include "plan/put_right.h"

#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static test_job t;
static hs_result r; /* large: not on the stack */

static const hs_result_right *put_right(const char *word) {
    hs_put_right(&r, &t.job);
    for (size_t i = 0; i < r.rights; i++)
        if (strstr(r.right[i].text, word)) return &r.right[i];
    return NULL;
}

static void start(void) {
    test_job_plate(&t, "16MnCr5");
    memset(&r, 0, sizeof r);
    r.grind = HS_GO;
}

/* exact: a part of 20 mm in a box of 30 has 5 mm round it; 20 + 2 x 25 = 70 mm are the least */
static void right__thin_cover__names_the_box_it_takes(void) {
    start();
    r.packs = 1;
    r.pack[0] = (hs_result_pack){.box_m = {30e-3, 0.2, 0.4}, .cover_m = 5e-3, .thin_cover = 1};
    const hs_result_right *box = put_right("box");
    CHECK(box && strstr(box->text, "5 mm of compound") && strstr(box->text, "70 mm inside"));
    CHECK(box && !box->stop && !box->wheel && r.grind == HS_GO);
    r.pack[0].thin_cover = 0;
    CHECK(put_right("box") == NULL);
}

/* exact: 30 K below a temper of 170 C is 140 C, and the table's 160 C and what 2 h at 170 C have
 * softened (157 C for 8 h: 443.15 (20 + lg 2)/(20 + lg 8) K) are above */
static void right__bake_hotter_than_its_temper_allows__is_told(void) {
    start();
    t.step[6] = (hs_step){.kind = HS_BAKE,
                          .pointer = "",
                          .temp_K = {523.15, 523.15, 523.15},
                          .hold_s = {28800, 28800, 28800}};
    t.job.steps = 7;
    const hs_result_right *bake = put_right("bake");
    CHECK(bake && strstr(bake->text, "250 C") && strstr(bake->text, "140 C at most"));
    CHECK(bake && !bake->stop && r.grind == HS_GO);
    t.step[6].temp_K = (hs_span){413.15, 413.15, 413.15};
    CHECK(put_right("bake") == NULL);
}

/* published: Malkin's burn (tables/grinding.csv) 6.2 + 7.42 d^.25 a^-.75 v^-.5 J/mm3, mm and s,
 * with d 200, v 250 comes down to the 13.8 that any chip takes at a = .1427 mm, by hand */
static void right__infeed__care_above_the_most_and_stop_where_every_wheel_burns(void) {
    start();
    t.job.shop.grinding.rough_infeed_m = 50e-6;
    CHECK(put_right("infeed") == NULL && r.rights == 0);
    t.job.shop.grinding.rough_infeed_m = 51e-6; /* judgement: .05 mm is the most */
    CHECK(put_right("0.051 mm") && !r.right[0].stop && r.right[0].wheel && r.grind == HS_GO);
    t.job.shop.grinding.rough_infeed_m = 142e-6;
    const hs_result_right *much = put_right("infeed");
    CHECK(much && !much->stop && much->wheel && r.grind == HS_GO);
    t.job.shop.grinding.rough_infeed_m = 144e-6;
    r.measured_verdict = r.measured.verdict = HS_WHEEL_GRIND;
    const hs_result_right *burns = put_right("infeed");
    CHECK(burns && burns->stop && burns->wheel && r.grind == HS_STOP);
    CHECK(r.measured_verdict == HS_WHEEL_NO && r.measured.verdict == HS_WHEEL_NO);
    start();
    r.grind = HS_NONE; /* nothing is ground: nobody asks the wheel */
    t.job.shop.grinding.rough_infeed_m = 2e-3;
    CHECK(put_right("infeed") == NULL && r.grind == HS_NONE);
}

HS_TEST_MAIN("plan put right", TEST(right__thin_cover__names_the_box_it_takes),
             TEST(right__bake_hotter_than_its_temper_allows__is_told),
             TEST(right__infeed__care_above_the_most_and_stop_where_every_wheel_burns))
