#include "plan/descale_work.h"

#include "constants.h"
#include "hardskin/model/gas.h"
#include "hardskin/model/pickle.h"
#include "hardskin/tables/table.h"
#include "plan/place.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static int row_of(const char *acid) {
    const hs_table *t = hs_table_get(HS_TABLE_ACIDS);
    int row = hs_table_row(t, HS_ACIDS_ACID, acid);
    return row >= 0 ? row : hs_table_row(t, HS_ACIDS_ALIAS, acid);
}

/* The scale makes no hydrogen; the metal under it does. */
static hs_status put_hydrogen(hs_descale_work *w, const hs_pickle_plan *plan, hs_error *err) {
    hs_result_acid *acid = &w->out->acid;
    double metal_kg = w->area_m2 * w->out->stock_taken_high_m * HS_K_PHYSICAL_IRON_DENSITY;
    double oxide_kg_mol = HS_K_PHYSICAL_MASS_FE + HS_K_PHYSICAL_MASS_O;
    double all_kg =
        plan->capacity_kg * HS_K_PHYSICAL_MASS_FE / oxide_kg_mol; /* two H+ either way */
    hs_status status = hs_gas_from_iron(&acid->hydrogen_m3, metal_kg, HS_K_DESCALE_GAS_TEMP, err);
    if (status == HS_OK)
        status = hs_gas_from_iron(&acid->all_hydrogen_m3, all_kg, HS_K_DESCALE_GAS_TEMP, err);
    return status;
}

hs_status hs_descale_acid(hs_descale_work *w, hs_error *err) {
    const hs_tank *tank = &w->step->tank;
    const hs_table *table = hs_table_get(HS_TABLE_ACIDS);
    const char *name = tank->acid && tank->acid[0] ? tank->acid : "citric";
    double tub_m3 = tank->tub_m3 > 0 ? tank->tub_m3 : HS_K_DESCALE_TUB;
    int row = row_of(name); /* an unknown one is refused by hs_pickle */
    double strength_pct = tank->acid_pct;
    if (!(strength_pct > 0))
        strength_pct = row < 0 ? NAN : hs_table_number(table, (size_t)row, HS_ACIDS_USUAL);
    hs_pickle_plan plan;
    hs_result_descale *out = w->out;
    hs_status status =
        hs_pickle(&plan, name, strength_pct, tub_m3, w->area_m2, w->at->scale_m, err);
    if (status != HS_OK) return hs_at_step(status, w->step, "acid", err);
    if (!(tank->acid_pct > 0)) hs_text_add(&w->assumed, ", %s %.0f %%", name, strength_pct);
    if (!(tank->tub_m3 > 0)) hs_text_add(&w->assumed, ", tub %.0f L", tub_m3 * 1e3);
    out->time_low_s = plan.time_low_s;
    out->time_high_s = plan.time_high_s;
    out->time_s = sqrt(plan.time_low_s * plan.time_high_s);
    out->acid = (hs_result_acid){.present = 1,
                                 .strength_pct = strength_pct,
                                 .volume_m3 = tub_m3,
                                 .bath_kg = 10 * strength_pct * tub_m3, /* 1 % = 10 kg/m3 */
                                 .scale_kg = plan.scale_kg,
                                 .taken_kg = plan.acid_kg,
                                 .capacity_kg = plan.capacity_kg,
                                 .soda_kg = plan.soda_kg,
                                 .soda_low_m3 = plan.soda_kg / HS_K_DESCALE_NEUTRALISE_HIGH,
                                 .soda_high_m3 = plan.soda_kg / HS_K_DESCALE_NEUTRALISE_LOW,
                                 .dip_low_kg = tub_m3 * HS_K_DESCALE_NEUTRALISE_LOW,
                                 .dip_high_kg = tub_m3 * HS_K_DESCALE_NEUTRALISE_HIGH,
                                 .temp_low_K = plan.temp_low_K,
                                 .temp_high_K = plan.temp_high_K,
                                 .note = hs_table_text(table, (size_t)row, HS_ACIDS_NOTE)};
    snprintf(out->acid.name, sizeof out->acid.name, "%s", name);
    if (plan.spent) {
        w->care = 1;
        hs_text_add(&w->advice, " The scale takes more acid than there is: a larger or stronger "
                                "bath.");
    }
    return put_hydrogen(w, &plan, err);
}
