/* bake, passes: after the tank, and at the wheel. */
#include "cli/quick_topics.h"
#include "constants.h"
#include "hardskin/model/bake.h"
#include "hardskin/model/grind.h"
#include "hardskin/units/hardness.h"

#include <math.h>
#include <string.h>

enum { HARDNESS, CASE, TEMPER, TEMPER_FOR };
static const quick_key bake_keys[] = {
    {"hardness", QUICK_QUANTITY, HS_HARDNESS, NULL, 0, NULL},
    {"case", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"temper", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"temper_for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL},
};

/* Hardest end of what was given, in HRC; NaN when it is too soft for the scale. */
static hs_status hardness_HRC(double *out, const quick_value *v, hs_error *err) {
    const hs_quantity *q = &v[HARDNESS].q;
    if (q->scale == HS_HV && q->high < hs_hardness_HV_of_HRC(20)) {
        *out = NAN;
        return HS_OK;
    }
    return hs_hardness_convert(out, q->high, q->scale, HS_HRC, err);
}

static hs_status run_bake(quick_answer *answer, const quick_value *v, const hs_units *units,
                          hs_error *err) {
    double HRC = NAN;
    hs_bake_plan plan;
    (void)units;
    if (!v[HARDNESS].text == !v[CASE].text)
        return hs_fail(err, HS_E_ARGUMENT,
                       "hardness for a part hard right through, case=yes for "
                       "a case-hardened one",
                       "give either hardness or case=yes");
    if (v[CASE].text && strcmp(v[CASE].text, "yes") != 0)
        return hs_fail(err, HS_E_WORD, "case=yes, or hardness instead", "case is not %s",
                       v[CASE].text);
    hs_status status = v[CASE].text ? HS_OK : hardness_HRC(&HRC, v, err);
    if (status == HS_OK)
        status = hs_bake(&plan, HRC, v[CASE].text != NULL, v[TEMPER].q.value, v[TEMPER_FOR].q.value,
                         err);
    if (status == HS_E_RANGE && HRC > HS_K_HYDROGEN_BAKE_MOST)
        return hs_fail(
            err, HS_E_RANGE,
            "is only its skin so hard? Then case=yes in the place of hardness; hard right "
            "through: brush or blast it, no hydrogen",
            "the table of bakes ends at %g HRC for a part hard right through",
            (double)HS_K_HYDROGEN_BAKE_MOST);
    if (status != HS_OK) return status;
    quick_number(answer, "temperature_C", plan.needed ? plan.temp_K - 273.15 : NAN);
    quick_number(answer, "time_h", plan.needed ? plan.hold_s / 3600 : NAN);
    if (plan.needed)
        quick_note(answer,
                   "start within %.3g h of leaving the tank, %.3g h at the latest; baking lessens "
                   "the risk, it does not end it",
                   plan.start_within_s / 3600, plan.latest_s / 3600);
    if (plan.below_usual)
        quick_note(answer, "caution: the temper allows no more than this; below the usual window");
    quick_word(answer, "verdict", plan.needed ? "bake" : "none");
    return HS_OK;
}

const quick_topic quick_bake = {
    "bake",
    "bake after acid or cathodic cleaning of hard steel",
    bake_keys,
    4,
    "temperature_C, time_h, verdict",
    "least of the table's figure, temper - 30 K, and what softens no more than the temper did "
    "(Hollomon and Jaffe, c = 20)",
    "ASTM B850, ISO 9588 (tables: bake, bake_limits)",
    "mixed (see the table)",
    "up to 51 HRC through-hard; not below 130 C",
    run_bake,
    0,
};

enum {
    STOCK,
    ROUGH_INFEED,
    FINISH_INFEED,
    FINISH_STOCK,
    LENGTH,
    WIDTH,
    WHEEL_WIDTH,
    CROSS_FEED,
    TABLE_SPEED,
    SPARK_OUTS,
    OVERRUN
};
static const quick_key passes_keys[] = {
    {"stock", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"rough_infeed", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"finish_infeed", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"finish_stock", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"length", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"width", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"wheel_width", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"cross_feed", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"table_speed", QUICK_QUANTITY, HS_SPEED, NULL, 1, NULL},
    {"spark_outs", QUICK_QUANTITY, HS_NUMBER, NULL, 0, "2"},
    {"overrun", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
};

static hs_status run_passes(quick_answer *answer, const quick_value *v, const hs_units *units,
                            hs_error *err) {
    double outs = v[SPARK_OUTS].q.value;
    hs_grind_time time;
    (void)units;
    /* The sum is done with whole spark-outs; a moved input may ask for none. */
    if (!(outs >= 0 && outs <= 1000))
        return hs_fail(err, HS_E_IMPOSSIBLE, "spark_outs=2", "that is no number of spark-outs");
    if (v[SPARK_OUTS].given && outs != floor(outs))
        return hs_fail(err, HS_E_IMPOSSIBLE, "spark_outs=2", "spark-outs are whole strokes");
    hs_grind_face face = {
        .stock_m = v[STOCK].q.value,
        .rough_infeed_m = v[ROUGH_INFEED].q.value,
        .finish_infeed_m = v[FINISH_INFEED].q.value,
        .finish_stock_m = v[FINISH_STOCK].q.value,
        .length_m = v[LENGTH].q.value,
        .width_m = v[WIDTH].q.value,
        .wheel_width_m = v[WHEEL_WIDTH].q.value,
        .cross_feed_m = v[CROSS_FEED].q.value,
        .table_speed_m_s = v[TABLE_SPEED].q.value,
        .overrun_m = v[OVERRUN].text ? v[OVERRUN].q.value : v[WHEEL_WIDTH].q.value,
        .spark_outs = (int)outs,
    };
    hs_status status = hs_grind_passes(&time, &face, err);
    if (status != HS_OK) return status;
    quick_number(answer, "strokes", time.strokes);
    quick_number(answer, "time_min", time.time_s / 60);
    quick_note(answer, "%g roughing and %g finishing passes, %g spark-outs, %g crossings each",
               time.rough_passes, time.finish_passes, time.spark_outs, time.crossings);
    return HS_OK;
}

const quick_topic quick_passes = {
    "passes",
    "strokes and time at a surface grinder, one face",
    passes_keys,
    11,
    "strokes, time_min",
    "passes = ceil((z - zf)/ar) + ceil(zf/af) + spark-outs; crossings = ceil((width + wheel)/cross "
    "feed); time = strokes (length + 2 overrun) / speed",
    "arithmetic",
    "computed",
    "sizes, feeds and speed above zero; overrun is the wheel's width unless given",
    run_passes,
    0,
};
