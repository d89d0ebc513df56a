/* pickle, pack: the acid bath and the carburising box. */
#include "cli/quick_topics.h"
#include "constants.h"
#include "hardskin/model/box_heat.h"
#include "hardskin/model/pack.h"
#include "hardskin/model/pickle.h"
#include "hardskin/units/split.h"

enum { ACID, VOLUME, AREA, SCALE };
static const quick_key pickle_keys[] = {
    {"acid", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"volume", QUICK_QUANTITY, HS_VOLUME, NULL, 1, NULL},
    {"area", QUICK_QUANTITY, HS_AREA, NULL, 1, NULL},
    {"scale", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
};

static hs_status run_pickle(quick_answer *answer, const quick_value *v, const hs_units *units,
                            hs_error *err) {
    const char *acid = NULL;
    double percent = 0;
    hs_pickle_plan plan;
    hs_status status = hs_acid_read(&acid, &percent, units, v[ACID].text, err);
    if (status == HS_OK)
        status = hs_pickle(&plan, acid, percent, v[VOLUME].q.value, v[AREA].q.value,
                           v[SCALE].q.value, err);
    if (status != HS_OK) return status;
    quick_number(answer, "acid_g", plan.acid_kg * 1e3);
    quick_number(answer, "capacity_g", plan.capacity_kg * 1e3);
    quick_number(answer, "soda_to_neutralise_g", plan.soda_kg * 1e3);
    quick_number(answer, "time_low_h", plan.time_low_s / 3600);
    quick_number(answer, "time_high_h", plan.time_high_s / 3600);
    quick_note(answer,
               "at %.3g to %.3g C; acid into water, never water into acid; acid charges "
               "hard steel with hydrogen (hardskin quick bake)",
               plan.temp_low_K - 273.15, plan.temp_high_K - 273.15);
    if (plan.spent) quick_note(answer, "caution: the scale would take more acid than there is");
    return HS_OK;
}

const quick_topic quick_pickle = {
    "pickle",
    "acid bath for scale: what it takes up, how to neutralise it",
    pickle_keys,
    4,
    "acid_g, capacity_g, soda_to_neutralise_g, time_low_h, time_high_h",
    "FeO + 2 H+; soda for the whole fresh bath",
    "stoichiometry; times: tables acids",
    "computed; times from memory",
    "strength inside the table of acids",
    run_pickle,
    0,
};

enum { BOX, PART, MOISTURE };
static const quick_key pack_keys[] = {
    {"box", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"part", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"moisture", QUICK_QUANTITY, HS_PERCENT, NULL, 0, "5 %"},
};

/* "0.4 L" or "300 x 60 x 20 mm"; when neither reads, the sizes' fault is told. */
static hs_status read_part(double part_m[3], const hs_units *units, const char *text,
                           hs_error *err) {
    hs_quantity volume;
    if (hs_quantity_read(&volume, units, text, HS_VOLUME, NULL) != HS_OK)
        return hs_box_read(part_m, units, text, err);
    part_m[0] = volume.value;
    part_m[1] = part_m[2] = 0;
    return HS_OK;
}

/* Heat-up by conduction through the compound, beside the planning fit. */
static hs_status add_heat_up(quick_answer *answer, const double box_m[3], double part_m3,
                             double moisture, hs_error *err) {
    hs_box_work work;
    hs_box_lag lag;
    const hs_box_load load = {.size_m = {box_m[0], box_m[1], box_m[2]},
                              .steel_m3 = part_m3,
                              .moisture = moisture,
                              .speed = 1};
    hs_error why = {0};
    hs_status status = hs_box_heat_up(&lag, &load, HS_K_PACK_TEMP_DEFAULT, &work, &why);
    if (status == HS_E_IMPOSSIBLE) { /* the sum above holds for any part that fits */
        quick_note(answer, "no heat-up computed: %s", why.message);
        return HS_OK;
    }
    if (status != HS_OK) {
        if (err) *err = why;
        return status;
    }
    quick_number(answer, "heat_up_computed_h", lag.at_heat_s / 3600);
    quick_range(answer, "heat_up_computed_range_h", lag.low_s / 3600, lag.high_s / 3600);
    quick_note(answer, "heat_up_h is the planning fit for any box; heat_up_computed_h follows this "
                       "part through the compound, fire on to within 10 K of 925 C");
    return HS_OK;
}

static double volume_m3(const double part_m[3]) {
    return part_m[1] > 0 ? part_m[0] * part_m[1] * part_m[2] : part_m[0];
}

static hs_status run_pack(quick_answer *answer, const quick_value *v, const hs_units *units,
                          hs_error *err) {
    double box_m[3], part_m[3];
    hs_pack_plan plan;
    hs_status status = hs_box_read(box_m, units, v[BOX].text, err);
    if (status == HS_OK) status = read_part(part_m, units, v[PART].text, err);
    if (status == HS_OK)
        status =
            hs_pack(&plan, box_m, part_m, v[MOISTURE].q.value / 100, HS_K_PACK_TEMP_DEFAULT, err);
    if (status != HS_OK) return status;
    quick_number(answer, "compound_L", plan.compound_m3 * 1e3);
    quick_number(answer, "compound_kg", plan.compound_kg);
    quick_number(answer, "cover_mm", plan.cover_m * 1e3);
    quick_number(answer, "heat_up_h", plan.heat_up_s / 3600);
    quick_number(answer, "gas_L", plan.gas_m3 * 1e3);
    status = add_heat_up(answer, box_m, volume_m3(part_m), v[MOISTURE].q.value / 100, err);
    if (status != HS_OK) return status;
    quick_word(answer, "verdict",
               plan.must_vent ? "lute the lid so that it can breathe: gas-tight it would burst"
                              : "little gas, but never seal a box gas-tight");
    if (plan.cover_ok == 0) quick_note(answer, "caution: less than 25 mm of compound on some side");
    quick_note(answer, "the moisture driven out is steam and burns as water gas outside the box: "
                       "fire, and carbon monoxide; work in moving air");
    return HS_OK;
}

const quick_topic quick_pack = {
    "pack",
    "the carburising box: compound, cover, time to heat through, gas",
    pack_keys,
    3,
    "compound_L, compound_kg, cover_mm, heat_up_h, gas_L, heat_up_computed_h, "
    "heat_up_computed_range_h, verdict",
    "box less part; heat-up 1 h + 0.38 h per inch of the least inner size; gas = steam of the "
    "moisture at 925 C, 1 atm; computed heat-up: conduction through the compound to steel in the "
    "middle",
    "The Working of Steel 1921 (tables: pack, box_heat)",
    "mixed: read, from memory, judgement (see the table)",
    "box up to 1 m, moisture up to 50 %",
    run_pack,
    0,
};
