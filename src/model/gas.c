#include "hardskin/model/gas.h"

#include "constants.h"

#include <math.h>

static const double SECONDS_PER_HOUR = 3600;
static const double HOTTEST_K = 373.15;

/* Faraday and the ideal gas: m3/s per ampere and electron. */
static double gas_rate(double amps, double electrons, double temp_K) {
    return amps / (electrons * HS_K_PHYSICAL_FARADAY) * HS_K_PHYSICAL_GAS_CONSTANT * temp_K /
           HS_K_PHYSICAL_ATMOSPHERE;
}

static void set_air(hs_gas_rate *gas, double amps) {
    double battery_m3_h = HS_K_HYDROGEN_BATTERY_ROOM_AIR * amps;
    gas->air_battery_room_m3_s = battery_m3_h / SECONDS_PER_HOUR;
    gas->air_workplace_m3_s = HS_K_HYDROGEN_WORKPLACE_AIR * amps / SECONDS_PER_HOUR;
    int battery = gas->air_battery_room_m3_s > gas->air_workplace_m3_s;
    gas->fresh_air_m3_s = battery ? gas->air_battery_room_m3_s : gas->air_workplace_m3_s;
    gas->governs =
        battery ? "IEC 62485-2 (battery rooms)" : "workplace guide (dilution 26, factor 5)";
    gas->opening_m2 = HS_K_HYDROGEN_OPENING * battery_m3_h / 1e4;
    gas->opening_fresh_air_m2 =
        HS_K_HYDROGEN_OPENING * gas->fresh_air_m3_s * SECONDS_PER_HOUR / 1e4;
}

static hs_status check_temp(double temp_K, hs_error *err) {
    if (temp_K >= HS_K_PHYSICAL_ZERO_CELSIUS && temp_K <= HOTTEST_K) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "a temperature of 0 to 100 C",
                   "gas at %.0f C is outside 0 to 100 C", temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
}

hs_status hs_gas_from_iron(double *h2_m3, double mass_kg, double temp_K, hs_error *err) {
    if (!(mass_kg >= 0 && isfinite(mass_kg)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a mass of 0 or more", "gas from %g kg of iron",
                       mass_kg);
    hs_status status = check_temp(temp_K, err);
    if (status != HS_OK) return status;
    *h2_m3 = mass_kg / HS_K_PHYSICAL_MASS_FE * HS_K_PHYSICAL_GAS_CONSTANT * temp_K /
             HS_K_PHYSICAL_ATMOSPHERE;
    return HS_OK;
}

hs_status hs_gas_from_current(hs_gas_rate *out, double amps, double temp_K, hs_error *err) {
    if (!(amps >= 0 && isfinite(amps)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a current of 0 or more", "gas from %g A", amps);
    hs_status status = check_temp(temp_K, err);
    if (status != HS_OK) return status;
    hs_gas_rate gas = {0};
    gas.h2_m3_s = gas_rate(amps, 2, temp_K);
    gas.o2_m3_s = gas_rate(amps, 4, temp_K);
    set_air(&gas, amps);
    double formula_m = HS_K_HYDROGEN_SPARK_FORMULA * cbrt(1000 * amps) / 1000;
    gas.spark_distance_m = fmax(formula_m, HS_K_HYDROGEN_SPARK_LEAST);
    *out = gas;
    return HS_OK;
}

hs_status hs_gas_room(double *fraction, double h2_m3_s, double room_m3, double air_changes_1_s,
                      double time_s, hs_error *err) {
    int possible = h2_m3_s >= 0 && room_m3 > 0 && air_changes_1_s >= 0 && time_s >= 0;
    int endless = air_changes_1_s == 0 && isinf(time_s);
    if (!possible || endless || !isfinite(h2_m3_s) || !isfinite(room_m3))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a room and a time above 0, air changes of 0 or more",
                       "no room can be computed from these values");
    double filled = h2_m3_s / room_m3; /* per second */
    *fraction = air_changes_1_s == 0 ? filled * time_s
                                     : -filled / air_changes_1_s * expm1(-air_changes_1_s * time_s);
    return HS_OK;
}

hs_status hs_gas_headspace_s(double *time_s, double fraction, double h2_m3_s, double headspace_m3,
                             hs_error *err) {
    if (!(fraction >= 0 && fraction <= 1 && h2_m3_s > 0 && headspace_m3 > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a share of 0 to 1, gas and volume above 0",
                       "no time can be computed from these values");
    *time_s = fraction * headspace_m3 / h2_m3_s;
    return HS_OK;
}

double hs_gas_explosive_limit(void) {
    return HS_K_HYDROGEN_EXPLOSIVE_LIMIT;
}

double hs_gas_keep_below(void) {
    return HS_K_HYDROGEN_KEEP_BELOW;
}
