/* The case of a part in a box: what `case` and `soak` have in common. */
#ifndef HS_CLI_QUICK_CASE_H
#define HS_CLI_QUICK_CASE_H

#include "cli/quick.h"
#include "hardskin/model/carbon_course.h"
#include "hardskin/model/case.h"
#include "hardskin/model/hardenability_doubt.h"

/** Keys of both, in this order; the last stands for `for` in case, `want` in soak. */
enum {
    CASE_STEEL,
    CASE_CORE,
    CASE_AT,
    CASE_SURFACE,
    CASE_IN,
    CASE_TRANSFER,
    CASE_REHEAT,
    CASE_QUENCH,
    CASE_TEMPER,
    CASE_TEMPER_FOR,
    CASE_LIMIT,
    CASE_THICKNESS,
    CASE_LAST,
    CASE_KEYS
};

#define CASE_KEY_LIST                                                                              \
    {"steel", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},                                               \
        {"core", QUICK_QUANTITY, HS_PERCENT, NULL, 0, NULL},                                       \
        {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},                                     \
        {"surface", QUICK_QUANTITY, HS_PERCENT, NULL, 0, NULL},                                    \
        {"in", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},                                              \
        {"transfer", QUICK_QUANTITY, HS_SPEED, "m/s", 0, NULL},                                    \
        {"reheat", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, NULL},                                 \
        {"quench", QUICK_WORD, HS_NUMBER, NULL, 0, "water"},                                       \
        {"temper", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, NULL},                                 \
        {"temper_for", QUICK_QUANTITY, HS_TIME, NULL, 0, "2 h"},                                   \
        {"limit", QUICK_QUANTITY, HS_HARDNESS, NULL, 0, "550 HV"}, {                               \
        "thickness", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL                                      \
    }

/** The keys as the models take them. */
typedef struct quick_carburising {
    hs_composition steel;
    double at_K, dissolve_K, limit_HV;
    double thickness_m; /* 0: thick */
    hs_side side;
    hs_temper temper;
    size_t tempers;
    hs_quench_range quench;
    double diffusivity; /* factor on D; 1 */
} quick_carburising;

typedef struct quick_case {
    hs_case_profile profile;
    double depth_m, surface_pct, surface_HV, retained;
    hs_carbon_accuracy accuracy;
} quick_case;

/** From values to models; what was assumed goes into the notes. */
hs_status quick_carburising_read(quick_carburising *c, quick_answer *answer,
                                 const quick_value *value, hs_error *err);

/** Profile and case depth after a soak, quenched and tempered. */
hs_status quick_case_depth(quick_case *out, const quick_carburising *c, double time_s,
                           hs_error *err);

#endif
