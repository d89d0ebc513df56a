/* The first lines of the text report: verdict, what must be put right, why it is stop. */
#include "hardskin/report/report.h"
#include "made.h"
#include "support/check.h"

#include <string.h>

static void title__headline__says_why(void) {
    /* own contract: tight by room and tight by chance are two things; no temper, no wheel */
    made m;
    made_plate(&m);
    hs_result_dimension *d = &m.result.dimension[0];
    m.result.grind = d->verdict = HS_TIGHT;
    m.job.shop.rough_tolerance_m = 0.05e-3;
    m.result.confidence.level = .95;
    m.result.confidence.reached = .93;
    d->rough_high_m = d->rough_low_m + 0.1e-3;
    const char *out = made_text(&m);
    CHECK(strstr(out, "only 93.0 % of parts") && strstr(out, "95.0 % is asked"));
    d->rough_high_m = d->rough_low_m + 0.099e-3;
    CHECK(strstr(made_text(&m), "less room than") != NULL);
    made_plate(&m);
    m.result.grind = HS_STOP;
    m.result.untempered = 1;
    CHECK(strstr(made_text(&m), "GRIND: STOP. Not tempered") != NULL);
}

static void title__put_right__stands_under_the_verdict(void) {
    /* own contract: what decides whatever the windows say is not left to page two */
    made m;
    made_plate(&m);
    m.result.rights = 1;
    m.result.right[0] = (hs_result_right){0, 0, "The box is too small: take another."};
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "GRIND: GO, once this is put right") == 3);
    CHECK(made_line_of(t, "PUT RIGHT: The box") == made_line_of(t, "GRIND: GO") + 2);
    m.result.right[0] = (hs_result_right){1, 1, "Rough infeed 2.000 mm: every wheel burns."};
    m.result.grind = HS_STOP;
    t = made_text(&m);
    CHECK(made_line_of(t, "GRIND: STOP until this is put right") == 3);
    CHECK(made_line_of(t, "STOP: Rough infeed") == 4);
    CHECK(strstr(t, "20.690 mm (0.8146 in)") != NULL); /* the sizes hold after that */
    made_measured(&m);
    m.result.rights = 2;
    m.result.right[0] = (hs_result_right){0, 0, "The box is too small: take another."};
    m.result.right[1] = (hs_result_right){1, 1, "Rough infeed 2.000 mm: every wheel burns."};
    t = made_text(&m);
    CHECK(made_line_of(t, "DO NOT GRIND until this is put right") == 3);
    CHECK(strstr(t, "STOP: Rough infeed") && !strstr(t, "The box is too small")); /* it is past */
}

/* exact: need .010 and may -.040 a side: the fire scatters .1 mm more than a tolerance of .021 */
static void title__unground_stop__says_what_the_fire_scatters(void) {
    made m;
    made_stop(&m);
    for (int k = 0; k < 2; k++)
        m.face[m.dimension[0].face[k]].finish = HS_AS_HARDENED;
    m.result.dimension[0].need_m = 0.010e-3;
    m.result.dimension[0].may_m = -0.040e-3;
    m.job.shop.rough_tolerance_m = 0.05e-3;
    const char *t = made_text(&m);
    CHECK(strstr(t, "the case allows no grinding") == NULL);
    CHECK(strstr(t, "0.121 mm") != NULL && strstr(t, "0.221 mm") != NULL);
}

static void title__corner__is_named_where_it_shuts_a_face(void) {
    made m;
    made_stop(&m);
    m.result.face[m.dimension[0].face[0]].edge =
        (hs_result_edge){.present = 1, .corner = 4, .share = 0.72};
    const char *t = made_text(&m);
    CHECK(made_line_of(t, "inner corner 4") > 0 &&
          made_line_of(t, "inner corner 4") < made_line_of(t, "ROUGH SIZE"));
    CHECK(strstr(t, "72 %") != NULL);
}

HS_TEST_MAIN("report title", TEST(title__headline__says_why),
             TEST(title__put_right__stands_under_the_verdict),
             TEST(title__unground_stop__says_what_the_fire_scatters),
             TEST(title__corner__is_named_where_it_shuts_a_face))
