/* hardness, chart: tables the trade reads by hand. */
#include "cli/quick_topics.h"
#include "hardskin/model/chart.h"
#include "hardskin/units/hardness.h"

enum { AT, FOR };
static const quick_key chart_keys[] = {
    {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL},
};

static hs_status run_chart(quick_answer *answer, const quick_value *v, const hs_units *units,
                           hs_error *err) {
    double depth_m = 0;
    (void)units;
    hs_status status = hs_chart_total_case(&depth_m, v[AT].q.value, v[FOR].q.value, err);
    if (status == HS_OK) quick_number(answer, "total_case_mm", depth_m * 1e3);
    return status;
}

const quick_topic quick_chart = {
    "chart",
    "total case by the trade's chart, saturated surface, hours at heat",
    chart_keys,
    2,
    "total_case_mm",
    "d (in) = 31.6 sqrt(h) / 10^(6700 / (F + 460))",
    "F. E. Harris, Metal Progress 1943 (tables: chart)",
    "read",
    "815 to 983 C (1500 to 1800 F), 0.25 to 48 h",
    run_chart,
    0,
};

enum { VALUE, TO };
static const quick_key hardness_keys[] = {
    {"value", QUICK_QUANTITY, HS_HARDNESS, NULL, 1, NULL},
    {"to", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
};

static hs_status run_hardness(quick_answer *answer, const quick_value *v, const hs_units *units,
                              hs_error *err) {
    const hs_quantity *q = &v[VALUE].q;
    hs_scale to = hs_scale_named(v[TO].text);
    double low = 0, high = 0;
    (void)units;
    if (to == HS_SCALE_NONE)
        return hs_fail(err, HS_E_WORD, "HRC, HV, HBW, HRA, HR15N or HR30N", "no scale is called %s",
                       v[TO].text);
    hs_status status = hs_hardness_convert(&low, q->low, q->scale, to, err);
    if (status == HS_OK) status = hs_hardness_convert(&high, q->high, q->scale, to, err);
    if (status != HS_OK) return status;
    if (q->spread)
        quick_range(answer, "value", low, high);
    else
        quick_number(answer, "value", low);
    quick_word(answer, "scale", hs_scale_name(to));
    quick_note(answer, "hardness scales convert by table only, to about 1 HRC either way");
    double ball = to == HS_HBW ? high : q->scale == HS_HBW ? q->high : 0;
    if (hs_hardness_beyond_ball(ball))
        quick_note(answer, "caution: above 650 HBW the ball itself gives way; use HV or HRC");
    return HS_OK;
}

const quick_topic quick_hardness = {
    "hardness",
    "from one hardness scale to another",
    hardness_keys,
    2,
    "value, scale",
    "linear between the rows of the table, through HRC",
    "ASTM E140, A370 (tables: e140)",
    "HV and HRA read; HBW partly, HR15N and HR30N wholly from memory",
    "20 to 68 HRC, 238 to 940 HV, 226 to 739 HBW, 60.5 to 83.9 HRA, 69.4 to 93.2 HR15N, 41.5 "
    "to 84.4 HR30N",
    run_hardness,
    0,
};
