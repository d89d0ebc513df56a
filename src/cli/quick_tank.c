/* bath, gas: the tank and the room it stands in. */
#include "cli/quick_topics.h"
#include "hardskin/model/bath.h"
#include "hardskin/model/gas.h"

enum { SODA, TEMPERATURE, GAP, AREA, VOLTS, LEADS };
static const quick_key bath_keys[] = {
    {"soda", QUICK_QUANTITY, HS_CONCENTRATION, NULL, 1, NULL},
    {"temperature", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"gap", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"area", QUICK_QUANTITY, HS_AREA, NULL, 1, NULL},
    {"volts", QUICK_QUANTITY, HS_VOLTAGE, NULL, 1, NULL},
    {"leads", QUICK_QUANTITY, HS_RESISTANCE, "ohm", 0, "0 ohm"},
};

static hs_status run_bath(quick_answer *answer, const quick_value *v, const hs_units *units,
                          hs_error *err) {
    double percent = 0, conductivity = 0, ohm = 0, amps = 0, area = v[AREA].q.value;
    (void)units;
    hs_status status = hs_bath_percent(&percent, v[SODA].q.value, err);
    if (status == HS_OK)
        status = hs_bath_conductivity(&conductivity, percent, v[TEMPERATURE].q.value, err);
    if (status == HS_OK) status = hs_bath_plates_ohm(&ohm, conductivity, v[GAP].q.value, area, err);
    if (status != HS_OK) return status;
    hs_bath_cell cell = {.bath_ohm = ohm,
                         .leads_ohm = v[LEADS].q.value,
                         .part_area_m2 = area,
                         .anode_area_m2 = area};
    status = hs_bath_amps(&amps, &cell, v[VOLTS].q.value, 1e6, err);
    if (status != HS_OK) return status;
    quick_number(answer, "conductivity_S_m", conductivity);
    quick_number(answer, "resistance_ohm", ohm);
    quick_number(answer, "amps", amps);
    quick_note(answer,
               "%.3g mass %% of anhydrous soda; two plates face to face, steel anode; the "
               "part on the negative lead",
               percent);
    quick_note(answer, "the gas is explosive: no lid, no spark, fresh air (hardskin quick gas)");
    return HS_OK;
}

const quick_topic quick_bath = {
    "bath",
    "the soda bath: conductivity, resistance, current",
    bath_keys,
    6,
    "conductivity_S_m, resistance_ohm, amps",
    "R = gap / (conductivity area); V = 1.229 + overvoltages (Tafel) + I (R + leads)",
    "CRC Handbook (tables: conductivity, bath, electrode)",
    "from memory; electrode constants: judgement",
    "0.5 to 15 mass % soda, 10 to 50 C",
    run_bath,
    0,
};

enum { CURRENT, G_TEMPERATURE, ROOM, AIR_CHANGES, FOR };
static const quick_key gas_keys[] = {
    {"current", QUICK_QUANTITY, HS_CURRENT, NULL, 1, NULL},
    {"temperature", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, "25 C"},
    {"room", QUICK_QUANTITY, HS_VOLUME, NULL, 0, NULL},
    {"air_changes", QUICK_QUANTITY, HS_RATE, NULL, 0, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 0, NULL},
};

/* Without a time: the steady state, which a sealed room has not. */
static hs_status add_room(quick_answer *answer, const quick_value *v, double h2_m3_s,
                          hs_error *err) {
    double fraction = 0, changes = v[AIR_CHANGES].text ? v[AIR_CHANGES].q.value : 0;
    if (!v[ROOM].text && (v[AIR_CHANGES].text || v[FOR].text))
        return hs_fail(err, HS_E_ARGUMENT, "room=\"30 m3\"",
                       "air_changes and for say something only with room");
    if (!v[ROOM].text) return HS_OK;
    if (!v[FOR].text && !(changes > 0))
        return hs_fail(err, HS_E_ARGUMENT, "for=\"1 h\" or air_changes=\"0.5 /h\"",
                       "a sealed room fills without end: say for how long");
    double time_s = v[FOR].text ? v[FOR].q.value : 1e12;
    hs_status status = hs_gas_room(&fraction, h2_m3_s, v[ROOM].q.value, changes, time_s, err);
    if (status != HS_OK) return status;
    quick_number(answer, "room_pct", fraction * 100);
    quick_note(answer, "a room mixes badly: more stands under the ceiling; keep below %g %%",
               hs_gas_keep_below() * 100);
    if (fraction > hs_gas_keep_below())
        quick_note(answer, "DANGER: above that limit (explosive from %g %% up)",
                   hs_gas_explosive_limit() * 100);
    return HS_OK;
}

static hs_status run_gas(quick_answer *answer, const quick_value *v, const hs_units *units,
                         hs_error *err) {
    hs_gas_rate rate;
    (void)units;
    hs_status status =
        hs_gas_from_current(&rate, v[CURRENT].q.value, v[G_TEMPERATURE].q.value, err);
    if (status != HS_OK) return status;
    quick_number(answer, "h2_L_h", rate.h2_m3_s * 3.6e6);
    quick_number(answer, "fresh_air_m3_h", rate.fresh_air_m3_s * 3600);
    quick_number(answer, "opening_cm2", rate.opening_m2 * 1e4);
    quick_number(answer, "spark_distance_mm", rate.spark_distance_m * 1e3);
    status = add_room(answer, v, rate.h2_m3_s, err);
    quick_note(answer,
               "fresh air by two rules: battery rooms (IEC 62485-2) %.4g m3/h, work places "
               "%.4g m3/h; taken: %s",
               rate.air_battery_room_m3_s * 3600, rate.air_workplace_m3_s * 3600, rate.governs);
    quick_note(
        answer,
        "opening: of each of two natural vents by the first rule; %.4g cm2 for the air taken, "
        "which a plan uses; foam on the bath explodes whatever the room",
        rate.opening_fresh_air_m2 * 1e4);
    return status;
}

const quick_topic quick_gas = {
    "gas",
    "hydrogen from a tank and the air it needs",
    gas_keys,
    5,
    "h2_L_h, fresh_air_m3_h, opening_cm2, spark_distance_mm, room_pct",
    "Faraday; Q = 0.05 I or 0.0612 I m3/h, the larger; vents 28 cm2 per m3/h; "
    "max(28.8 cube root of mA, 500) mm",
    "IEC 62485-2, EN 62485-3, a second guide (tables: hydrogen)",
    "mostly read; local codes come first",
    "0 to 100 C, all of the current taken to make hydrogen",
    run_gas,
    0,
};
