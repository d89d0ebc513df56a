#include "hardskin/model/pack.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

static const double SECONDS_PER_HOUR = 3600;
static const double INCH_M = 0.0254;

hs_status hs_pack_heat_up(double *heat_up_s, double box_m, hs_error *err) {
    if (!(box_m > 0 && box_m <= HS_K_PACK_BOX_MOST))
        return hs_fail(err, HS_E_RANGE, "a box of at most 1 m", "a box of %g mm", 1000 * box_m);
    *heat_up_s =
        SECONDS_PER_HOUR * (HS_K_PACK_HEAT_UP_BASE + HS_K_PACK_HEAT_UP_PER_INCH * box_m / INCH_M);
    return HS_OK;
}

static hs_status does_not_fit(hs_error *err) {
    return hs_fail(err, HS_E_IMPOSSIBLE, "a larger box: 25 mm of compound all round",
                   "the part does not fit into the box");
}

/* Compound between part and box at the closest place, the part lying as it fits best: longest size
 * along the longest of the box. */
static hs_status fit_part(hs_pack_plan *plan, const double box_m[3], const double part_m[3],
                          hs_error *err) {
    double box[3] = {box_m[0], box_m[1], box_m[2]}, part[3] = {part_m[0], part_m[1], part_m[2]};
    hs_sort(box, 3);
    hs_sort(part, 3);
    double least = INFINITY;
    for (int i = 0; i < 3; i++)
        least = fmin(least, (box[i] - part[i]) / 2);
    if (!(part[0] > 0 && least >= 0)) return does_not_fit(err);
    plan->cover_m = least;
    plan->cover_ok = least >= HS_K_PACK_COVER_LEAST;
    plan->compound_m3 = box[0] * box[1] * box[2] - part[0] * part[1] * part[2];
    return HS_OK;
}

static hs_status fill_box(hs_pack_plan *plan, const double box_m[3], const double part_m[3],
                          hs_error *err) {
    if (part_m[1] != 0 || part_m[2] != 0) return fit_part(plan, box_m, part_m, err);
    double inner_m3 = box_m[0] * box_m[1] * box_m[2];
    if (!(part_m[0] >= 0 && part_m[0] <= inner_m3)) return does_not_fit(err);
    plan->cover_m = NAN;
    plan->cover_ok = -1;
    plan->compound_m3 = inner_m3 - part_m[0];
    return HS_OK;
}

static hs_status check_box(const double box_m[3], const double part_m[3], double moisture,
                           double temp_K, hs_error *err) {
    for (int i = 0; i < 3; i++)
        if (!(box_m[i] > 0 && isfinite(box_m[i]) && isfinite(part_m[i])))
            return hs_fail(err, HS_E_IMPOSSIBLE, "inner sizes above 0", "a box of %g mm",
                           1000 * box_m[i]);
    if (!(moisture >= 0 && moisture <= HS_K_PACK_MOISTURE_MOST))
        return hs_fail(err, HS_E_RANGE, "dry compound has about 5 %", "moisture of %g %%",
                       100 * moisture);
    if (temp_K >= HS_K_PACK_TEMP_LOW && temp_K <= HS_K_PACK_TEMP_HIGH) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "packs are carburised at 850 to 950 C",
                   "a pack at %.0f C is outside 750 to 1100 C",
                   temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
}

/* Ideal gas. The voids hold air when the box is shut; hot charcoal turns steam into as much carbon
 * monoxide and as much hydrogen. Gas of the carbonate and of the charcoal itself is not counted. */
static void fill_gas(hs_pack_plan *plan, double moisture, double temp_K) {
    const double water_kg_mol = 2 * HS_K_PHYSICAL_MASS_H + HS_K_PHYSICAL_MASS_O;
    double mol = plan->compound_kg * moisture / water_kg_mol;
    double void_m3 = HS_K_BOX_HEAT_VOID * plan->compound_m3;
    double hot = temp_K / HS_K_BOX_HEAT_AMBIENT, atm = HS_K_PHYSICAL_ATMOSPHERE;
    plan->gas_m3 = mol * HS_K_PHYSICAL_GAS_CONSTANT * temp_K / atm;
    plan->water_gas_m3 = 2 * plan->gas_m3; /* C + H2O = CO + H2 */
    plan->heating_m3 = void_m3 * (hot - 1);
    plan->sealed_Pa = void_m3 > 0 ? atm * (hot + plan->water_gas_m3 / void_m3) : atm;
    plan->co_m3 = plan->gas_m3 / hot;
}

hs_status hs_pack(hs_pack_plan *out, const double box_m[3], const double part_m[3], double moisture,
                  double temp_K, hs_error *err) {
    hs_pack_plan plan = {0};
    hs_status status = check_box(box_m, part_m, moisture, temp_K, err);
    if (!status) status = fill_box(&plan, box_m, part_m, err);
    double least = fmin(box_m[0], fmin(box_m[1], box_m[2]));
    if (!status) status = hs_pack_heat_up(&plan.heat_up_s, least, err);
    if (status) return status;
    plan.compound_kg = plan.compound_m3 * HS_K_PACK_COMPOUND_DENSITY;
    fill_gas(&plan, moisture, temp_K);
    plan.gas_ratio = (plan.gas_m3 + plan.heating_m3) / (box_m[0] * box_m[1] * box_m[2]);
    plan.must_vent = plan.gas_ratio > HS_K_PACK_VENT_RATIO;
    *out = plan;
    return HS_OK;
}
