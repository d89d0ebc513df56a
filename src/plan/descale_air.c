/* What the tank's gas does to the room: of one part, and of all parts of the job. */
#include "plan/descale_work.h"

#include "constants.h"
#include "hardskin/model/gas.h"

#include <math.h>
#include <stdio.h>

static const double HOUR_s = 3600;

static hs_status in_room(double *share, const hs_gas_rate *gas, const hs_tank *t, double time_s,
                         hs_error *err) {
    return hs_gas_room(share, gas->h2_m3_s, t->room_m3, t->air_changes_1_s, time_s, err);
}

/* One after the other, or all of them sharing the current: the worse decides. */
static hs_status put_all(hs_descale_work *w, const hs_tank *t, const hs_gas_rate *one,
                         hs_error *err) {
    hs_result_descale *out = w->out;
    hs_result_air *air = &out->air;
    hs_tank_run run;
    hs_gas_rate gas;
    double n = (double)w->job->part.quantity, in_turn, at_once = 0;
    air->all_pct = air->all_amps_A = air->all_hydrogen_m3_s = NAN;
    air->all_fresh_air_m3_s = air->all_opening_m2 = air->all_spark_m = NAN;
    if (!(n > 1)) return HS_OK;
    hs_status status = in_room(&in_turn, one, t, n * out->time_high_s, err);
    if (status != HS_OK) return status;
    air->all_pct = 100 * in_turn;
    if (w->step->by != HS_BY_ELECTROLYSIS) return HS_OK; /* anodic: each is watched by itself */
    out->tank.batch_s = n * out->time_s;
    if (hs_descale_run(&run, w, t, n * w->area_m2, NULL) != HS_OK) return HS_OK;
    out->tank.together_A_m2 = run.density_A_m2;
    out->tank.together_s = run.time_s;
    status = hs_gas_from_current(&gas, run.amps_A, t->temp_K, err);
    if (status == HS_OK) status = in_room(&at_once, &gas, t, run.time_high_s, err);
    if (status != HS_OK) return status;
    air->all_pct = 100 * fmax(in_turn, at_once);
    air->all_amps_A = run.amps_A;
    air->all_hydrogen_m3_s = gas.h2_m3_s;
    air->all_fresh_air_m3_s = gas.fresh_air_m3_s;
    air->all_opening_m2 = gas.opening_fresh_air_m2;
    air->all_spark_m = gas.spark_distance_m;
    return HS_OK;
}

static void put_lid(hs_result_air *air, const hs_gas_rate *gas) {
    air->lid_m3 = HS_K_DESCALE_LID_SPACE;
    hs_gas_headspace_s(&air->lid_keep_s, hs_gas_keep_below(), gas->h2_m3_s, air->lid_m3, NULL);
    hs_gas_headspace_s(&air->lid_explosive_s, hs_gas_explosive_limit(), gas->h2_m3_s, air->lid_m3,
                       NULL);
}

/* Gas at the current of one part, and how it stands in the room when that part is done. */
static hs_status put_one(hs_descale_work *w, const hs_tank *t, const hs_gas_rate *gas,
                         hs_error *err) {
    hs_result_descale *out = w->out;
    hs_gas_rate most; /* the bath's resistance is an upper bound: it may pass all there is */
    double end, hour, steady = NAN;
    hs_status status = hs_gas_from_current(&most, t->amps_A, t->temp_K, err);
    if (status == HS_OK) status = in_room(&end, gas, t, out->time_high_s, err);
    if (status == HS_OK) status = in_room(&hour, gas, t, HOUR_s, err);
    if (status == HS_OK && t->air_changes_1_s > 0) status = in_room(&steady, gas, t, INFINITY, err);
    if (status != HS_OK) return status;
    out->hydrogen_m3_s = gas->h2_m3_s;
    out->fresh_air_m3_s = gas->fresh_air_m3_s;
    out->opening_m2 = gas->opening_fresh_air_m2; /* of the air that governs: to the safe side */
    out->spark_distance_m = gas->spark_distance_m;
    out->room_pct = 100 * end;
    snprintf(out->air_rule, sizeof out->air_rule, "%s", gas->governs);
    out->air =
        (hs_result_air){.present = 1,
                        .oxygen_m3_s = gas->o2_m3_s,
                        .battery_m3_s = gas->air_battery_room_m3_s,
                        .workplace_m3_s = gas->air_workplace_m3_s,
                        .battery_opening_m2 = gas->opening_m2,
                        .hour_pct = 100 * hour,
                        .steady_pct = 100 * steady,
                        .supply_A = t->amps_A,
                        .most_fresh_air_m3_s = most.fresh_air_m3_s,
                        .most_opening_m2 = most.opening_fresh_air_m2,
                        .near_m = HS_K_HYDROGEN_NEAR,
                        .room_least_m3 = HS_K_HYDROGEN_NATURAL_ROOM * gas->fresh_air_m3_s * HOUR_s};
    put_lid(&out->air, gas);
    return HS_OK;
}

hs_status hs_descale_air(hs_descale_work *w, const hs_tank *t, hs_error *err) {
    const hs_result_air *air = &w->out->air;
    hs_gas_rate gas;
    hs_status status = hs_gas_from_current(&gas, w->out->amps_A, t->temp_K, err);
    if (status == HS_OK) status = put_one(w, t, &gas, err);
    if (status == HS_OK) status = put_all(w, t, &gas, err);
    if (status != HS_OK) return status;
    /* fmax passes over the NaN of a single part */
    int passes = fmax(w->out->room_pct, air->all_pct) >= 100 * hs_gas_keep_below();
    double asked_m3_s = fmax(gas.fresh_air_m3_s, air->all_fresh_air_m3_s);
    int thin_air = t->room_m3 * t->air_changes_1_s < asked_m3_s;
    if (!passes && !thin_air) return HS_OK;
    w->care = 1;
    hs_text_add(&w->advice, passes ? " The gas would pass 1 %% in this room: work outdoors."
                                   : " The room has less fresh air than the rule asks: open it.");
    return HS_OK;
}
