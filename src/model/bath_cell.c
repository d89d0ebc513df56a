/* Voltage and current of the cell, charge and time, heat and water. */
#include "hardskin/model/bath.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

static const double SECONDS_PER_HOUR = 3600;

static hs_status check_cell(const hs_bath_cell *cell, hs_error *err) {
    int possible = cell->bath_ohm >= 0 && cell->leads_ohm >= 0 && cell->part_area_m2 > 0 &&
                   cell->anode_area_m2 > 0 && isfinite(cell->bath_ohm) &&
                   isfinite(cell->leads_ohm) && isfinite(cell->part_area_m2) &&
                   isfinite(cell->anode_area_m2);
    if (possible) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "areas above 0, resistances of 0 or more",
                   "no cell can be computed from these values");
}

/* Tafel's law; below the exchange current it would turn negative, where it does not hold. */
static double overvoltage(double slope_V, double amps, double area_m2, double exchange_A_m2) {
    return fmax(0, slope_V * log10(amps / area_m2 / exchange_A_m2));
}

static double cell_volts(const hs_bath_cell *cell, double amps) {
    double cathode =
        overvoltage(HS_K_BATH_TAFEL_CATHODE, amps, cell->part_area_m2, HS_K_BATH_EXCHANGE_CATHODE);
    double anode =
        overvoltage(HS_K_BATH_TAFEL_ANODE, amps, cell->anode_area_m2, HS_K_BATH_EXCHANGE_ANODE);
    if (cell->graphite) anode += HS_K_BATH_GRAPHITE_EXTRA;
    return HS_K_BATH_WATER_SPLIT + cathode + anode + amps * (cell->bath_ohm + cell->leads_ohm);
}

hs_status hs_bath_volts(double *volts, const hs_bath_cell *cell, double amps, hs_error *err) {
    hs_status status = check_cell(cell, err);
    if (status) return status;
    if (!(amps > 0 && isfinite(amps)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a current above 0", "a cell at %g A", amps);
    *volts = cell_volts(cell, amps);
    return HS_OK;
}

typedef struct supply {
    const hs_bath_cell *cell;
    double volts;
} supply;

static double excess_volts(double amps, const void *context) {
    const supply *s = context;
    return cell_volts(s->cell, amps) - s->volts;
}

hs_status hs_bath_amps(double *amps, const hs_bath_cell *cell, double supply_V, double supply_A,
                       hs_error *err) {
    hs_status status = check_cell(cell, err);
    if (status) return status;
    if (!(supply_V > 0 && supply_A > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a supply of some volts and amperes",
                       "a supply of %g V and %g A", supply_V, supply_A);
    supply s = {cell, supply_V};
    double least = HS_K_BATH_EXCHANGE_CATHODE * cell->part_area_m2;
    if (excess_volts(least, &s) >= 0)
        return hs_fail(err, HS_E_CONVERGE, "a supply of 6 to 12 V",
                       "%g V does not split water at a useful current", supply_V);
    if (isfinite(supply_A) && excess_volts(supply_A, &s) <= 0) {
        *amps = supply_A;
        return HS_OK;
    }
    double most = least;
    while (excess_volts(most, &s) < 0 && most < 1e9)
        most *= 10;
    /* so close that the volts are right to 1e-12 V whatever the resistance */
    double found = 0, width_A = 1e-12 / fmax(1, cell->bath_ohm + cell->leads_ohm);
    status = hs_root(&found, excess_volts, &s, least, most, width_A);
    if (status) return hs_fail(err, status, "", "the cell has no working point");
    *amps = found;
    return HS_OK;
}

/* Charge per area, Ah/m2. */
static double charge_of(hs_bath_soil soil, double scale_m) {
    if (soil == HS_LIGHT_RUST) return HS_K_BATH_CHARGE_LIGHT_RUST;
    if (soil == HS_HEAVY_RUST) return HS_K_BATH_CHARGE_HEAVY_RUST;
    return fmin(HS_K_BATH_CHARGE_MOST,
                HS_K_BATH_CHARGE_SCALE + HS_K_BATH_CHARGE_PER_SCALE * scale_m);
}

hs_status hs_bath_plan_time(hs_bath_plan *out, double area_m2, double density_A_m2,
                            hs_bath_soil soil, double scale_m, double supply_A, hs_error *err) {
    double wanted = density_A_m2 == 0 ? HS_K_BATH_DENSITY_DEFAULT : density_A_m2;
    if (!(wanted >= HS_K_BATH_DENSITY_LOW && wanted <= HS_K_BATH_DENSITY_HIGH))
        return hs_fail(err, HS_E_RANGE, "3 A/dm2 is usual", "%g A/dm2 is outside 1 to 10 A/dm2",
                       wanted / 100);
    if (!(area_m2 > 0 && isfinite(area_m2) && scale_m >= 0 && supply_A > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "an area and a supply above 0, a scale of 0 or more",
                       "no current can be planned from these values");
    hs_bath_plan plan = {0};
    plan.supply_limits = supply_A < wanted * area_m2;
    plan.amps_A = plan.supply_limits ? supply_A : wanted * area_m2;
    plan.density_A_m2 = plan.amps_A / area_m2;
    plan.below_range = plan.density_A_m2 < HS_K_BATH_DENSITY_LOW;
    plan.charge_Ah = charge_of(soil, scale_m) * area_m2;
    plan.time_s = plan.charge_Ah / plan.amps_A * SECONDS_PER_HOUR;
    plan.time_low_s = plan.time_s / HS_K_BATH_TIME_SPREAD;
    plan.time_high_s = plan.time_s * HS_K_BATH_TIME_SPREAD;
    *out = plan;
    return HS_OK;
}

double hs_bath_heating_K_s(double volts, double amps, double volume_m3) {
    return volts * amps / (volume_m3 * HS_K_PHYSICAL_WATER_DENSITY * HS_K_PHYSICAL_WATER_HEAT);
}
