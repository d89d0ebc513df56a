/* martensite: what a quench makes of austenite with so much carbon. */
#include "cli/quick_steel.h"
#include "cli/quick_topics.h"
#include "hardskin/model/austenite.h"
#include "hardskin/model/martensite.h"

#include <math.h>

enum { STEEL, CARBON, AT, TEMPER, TEMPER_FOR };
static const quick_key keys[] = {
    {"steel", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"carbon", QUICK_QUANTITY, HS_PERCENT, NULL, 0, NULL},
    {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, NULL},
    {"temper", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, NULL},
    {"temper_for", QUICK_QUANTITY, HS_TIME, NULL, 0, "1 h"},
};

static hs_status run(quick_answer *answer, const quick_value *v, const hs_units *units,
                     hs_error *err) {
    hs_composition steel;
    double retained = 0;
    (void)units;
    if (!v[STEEL].text && !v[CARBON].text)
        return hs_fail(err, HS_E_ARGUMENT, "steel=16MnCr5 or carbon=\"0.8 %\"",
                       "this sum needs a steel or a carbon");
    hs_status status =
        quick_steel(&steel, answer, v[STEEL].text, v[CARBON].text ? v[CARBON].q.value : -1, err);
    if (status != HS_OK) return status;
    hs_temper temper = {v[TEMPER].q.value, v[TEMPER_FOR].q.value};
    hs_hardening h = {.steel = steel,
                      .dissolve_K = v[AT].text ? v[AT].q.value : 0,
                      .quench_to_K = 293.15,
                      .temper = &temper,
                      .tempers = v[TEMPER].text ? 1 : 0};
    status = hs_hardening_check(&h, err);
    if (status != HS_OK) return status;
    double HV = hs_hardened_HV(&h, steel.C, &retained);
    double dissolved = v[AT].text ? fmin(steel.C, hs_acm_pct(h.dissolve_K)) : steel.C;
    if (!isfinite(HV))
        return hs_fail(err, HS_E_RANGE, "from 0.10 % of carbon up",
                       "the hardness of martensite with %.4g %% of carbon is not known", steel.C);
    double ms_K = hs_ms_K(&steel, dissolved);
    quick_number(answer, "ms_C", ms_K - 273.15);
    quick_number(answer, "retained_austenite_pct", retained * 100);
    quick_number(answer, "HV", HV);
    quick_number(answer, "HRC", hs_hardened_HRC(HV));
    if (dissolved < steel.C)
        quick_note(answer, "only %.4g %% of carbon dissolves at that heat; the rest stays carbide",
                   dissolved);
    quick_note(answer,
               "quenched to 20 C, no austenite stabilised; by van Bohemen's constant there "
               "is %.3g %% of it, the low bound",
               hs_retained_austenite(ms_K, hs_alpha(&steel, dissolved), h.quench_to_K) * 100);
    return HS_OK;
}

const quick_topic quick_martensite = {
    "martensite",
    "martensite start, retained austenite and hardness after a full quench",
    keys,
    5,
    "ms_C, retained_austenite_pct, HV, HRC",
    "Ms = 565 - alloy - 600 (1 - exp(-0.96 C)); austenite = exp(-0.011 (Ms - 20 C)); "
    "HV = (1 - f) HV_M + f 225",
    "van Bohemen 2012, Koistinen and Marburger 1959, ASTM A255, E140 (tables: martensite, temper)",
    "read; martensite above 0.7 %C and the temper drop: judgement",
    "0.10 %C up; temper 50 to 300 C; at 740 to 1050 C",
    run,
    0,
};
