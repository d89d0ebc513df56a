#include "plan/descale_tank.h"

#include "constants.h"
#include "hardskin/model/bath.h"
#include "hardskin/model/gas.h"
#include "hardskin/model/pickle.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <string.h>

static const double HOUR_s = 3600, DM2_m2 = 0.01;

/* A tank with nothing left unsaid; what had to be filled in is named. */
static hs_tank filled(hs_text *assumed, const hs_tank *tank, double area_m2) {
    hs_tank t = *tank;
    if (!(t.volts_V > 0 && t.amps_A > 0)) {
        t.volts_V = t.volts_V > 0 ? t.volts_V : HS_K_DESCALE_SUPPLY_VOLTS;
        t.amps_A = t.amps_A > 0 ? t.amps_A : HS_K_DESCALE_SUPPLY_AMPS;
        hs_text_add(assumed, ", supply %.0f V %.0f A", t.volts_V, t.amps_A);
    }
    if (!(t.soda_kg_m3 > 0)) {
        t.soda_kg_m3 = HS_K_BATH_SODA_DEFAULT;
        hs_text_add(assumed, ", soda %.0f g/L", t.soda_kg_m3);
    }
    if (!(t.gap_m > 0)) {
        t.gap_m = HS_K_DESCALE_GAP;
        hs_text_add(assumed, ", gap %.0f mm", t.gap_m * 1e3);
    }
    if (!t.anode || !t.anode[0]) {
        t.anode = "mild steel";
        hs_text_add(assumed, ", anode mild steel");
    }
    if (!(t.anode_area_m2 > 0)) {
        t.anode_area_m2 = area_m2;
        hs_text_add(assumed, ", anode as large as the part");
    }
    if (!(t.temp_K > 0)) {
        t.temp_K = HS_K_DESCALE_BATH_TEMP;
        hs_text_add(assumed, ", bath %.0f C", t.temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    }
    return t;
}

static void fill_room(hs_text *assumed, hs_tank *t) {
    if (t->room_m3 > 0) {
        if (t->air_changes_1_s <= 0) hs_text_add(assumed, ", no air change in the room");
        return;
    }
    t->room_m3 = HS_K_DESCALE_ROOM;
    t->air_changes_1_s = HS_K_DESCALE_AIR_CHANGES / HOUR_s;
    hs_text_add(assumed, ", room %.0f m3 with %.1f air changes/h", t->room_m3,
                HS_K_DESCALE_AIR_CHANGES);
}

static hs_status cell_of(hs_bath_cell *cell, const hs_tank *t, double area_m2, hs_error *err) {
    double soda_pct, conductivity_S_m;
    *cell =
        (hs_bath_cell){.leads_ohm = HS_K_DESCALE_LEADS,
                       .part_area_m2 = area_m2,
                       .anode_area_m2 = t->anode_area_m2,
                       .graphite = !strcmp(t->anode, "graphite") || !strcmp(t->anode, "carbon")};
    hs_status status = hs_bath_anode_check(t->anode, err);
    if (status == HS_OK) status = hs_bath_percent(&soda_pct, t->soda_kg_m3, err);
    if (status == HS_OK) status = hs_bath_conductivity(&conductivity_S_m, soda_pct, t->temp_K, err);
    if (status == HS_OK) /* the smaller electrode throttles: to the safe side in time */
        status = hs_bath_plates_ohm(&cell->bath_ohm, conductivity_S_m, t->gap_m,
                                    fmin(area_m2, t->anode_area_m2), err);
    return status;
}

/* Gas at the current, and how it stands in the room when the work is done. */
static hs_status gas_of(hs_result_descale *out, int *care, hs_text *advice, const hs_tank *t,
                        hs_error *err) {
    hs_gas_rate gas;
    double fraction;
    hs_status status = hs_gas_from_current(&gas, out->amps_A, t->temp_K, err);
    if (status == HS_OK)
        status = hs_gas_room(&fraction, gas.h2_m3_s, t->room_m3, t->air_changes_1_s,
                             out->time_high_s, err);
    if (status != HS_OK) return status;
    out->hydrogen_m3_s = gas.h2_m3_s;
    out->fresh_air_m3_s = gas.fresh_air_m3_s;
    out->opening_m2 = gas.opening_fresh_air_m2;
    out->spark_distance_m = gas.spark_distance_m;
    out->room_pct = 100 * fraction;
    hs_text air = hs_text_start(out->air_rule, sizeof out->air_rule);
    hs_text_add(&air, "%s", gas.governs);
    int thin_air = t->room_m3 * t->air_changes_1_s < gas.fresh_air_m3_s;
    if (fraction < hs_gas_keep_below() && !thin_air) return HS_OK;
    *care = 1;
    hs_text_add(advice, fraction < hs_gas_keep_below()
                            ? " The room has less fresh air than the rule asks: open it."
                            : " The gas would pass 1 %% in this room: work outdoors.");
    return HS_OK;
}

static void soda_advice(int *care, hs_text *advice, const hs_tank *t) {
    double dissolves;
    if (hs_bath_solubility(&dissolves, t->temp_K, NULL) == HS_OK &&
        t->soda_kg_m3 > dissolves * HS_K_BATH_DENSITY_0) {
        *care = 1;
        hs_text_add(advice, " So much soda does not dissolve at this temperature.");
    }
    if (t->tub_m3 > 0)
        hs_text_add(advice, " Soda: %.0f g anhydrous or %.0f g crystals.",
                    1e3 * t->soda_kg_m3 * t->tub_m3,
                    1e3 * hs_bath_soda_mass(HS_SODA_CRYSTALS, t->soda_kg_m3 * t->tub_m3));
}

static hs_status operate(hs_result_descale *out, hs_bath_plan *plan, const hs_tank *t,
                         const hs_descale_part *part, hs_error *err) {
    hs_bath_cell cell;
    double amps;
    hs_status status = cell_of(&cell, t, part->area_m2, err);
    if (status == HS_OK) status = hs_bath_amps(&amps, &cell, t->volts_V, t->amps_A, err);
    if (status == HS_OK)
        status =
            hs_bath_plan_time(plan, part->area_m2, 0, HS_FORGE_SCALE, part->scale_m, amps, err);
    if (status == HS_OK) status = hs_bath_volts(&out->volts_V, &cell, plan->amps_A, err);
    if (status != HS_OK) return status;
    out->amps_A = plan->amps_A;
    out->charge_Ah = plan->charge_Ah;
    out->time_s = plan->time_s;
    out->time_low_s = plan->time_low_s;
    out->time_high_s = plan->time_high_s;
    return HS_OK;
}

hs_status hs_descale_current(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                             const hs_tank *tank, const hs_descale_part *part, hs_error *err) {
    hs_tank t = filled(assumed, tank, part->area_m2);
    hs_bath_plan plan;
    fill_room(assumed, &t);
    hs_status status = operate(out, &plan, &t, part, err);
    if (status == HS_OK) status = gas_of(out, care, advice, &t, err);
    if (status != HS_OK) return status;
    if (plan.below_range)
        hs_text_add(advice, " The supply is small for this part: expect it to take long.");
    hs_text_add(advice, " Brush and look every half hour.");
    soda_advice(care, advice, &t);
    return HS_OK;
}

hs_status hs_descale_anodic(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                            const hs_tank *tank, const hs_descale_part *part, hs_error *err) {
    hs_tank t = filled(assumed, tank, part->area_m2);
    hs_bath_plan plan;
    fill_room(assumed, &t);
    hs_status status = operate(out, &plan, &t, part, err);
    if (status != HS_OK) return status;
    out->time_low_s = HS_K_DESCALE_ANODIC_LOW;
    out->time_high_s = HS_K_DESCALE_ANODIC_HIGH;
    out->time_s = 0.5 * (out->time_low_s + out->time_high_s);
    out->charge_Ah = out->amps_A * out->time_s / HOUR_s;
    status = gas_of(out, care, advice, &t, err);
    if (status != HS_OK) return status;
    hs_text_add(advice, " Minutes only: on the positive lead the part itself is eaten.");
    soda_advice(care, advice, &t);
    return HS_OK;
}

static double usual_strength(const char *acid) {
    const hs_table *t = hs_table_get(HS_TABLE_ACIDS);
    for (size_t row = 0; row < t->rows; row++)
        if (!strcmp(acid, hs_table_text(t, row, HS_ACIDS_ACID)) ||
            !strcmp(acid, hs_table_text(t, row, HS_ACIDS_ALIAS)))
            return hs_table_number(t, row, HS_ACIDS_USUAL);
    return NAN; /* hs_pickle refuses the word */
}

hs_status hs_descale_acid(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                          const hs_tank *tank, const hs_descale_part *part, hs_error *err) {
    const char *acid = tank->acid && tank->acid[0] ? tank->acid : "citric";
    double tub_m3 = tank->tub_m3 > 0 ? tank->tub_m3 : HS_K_DESCALE_TUB;
    double strength_pct = tank->acid_pct > 0 ? tank->acid_pct : usual_strength(acid);
    hs_pickle_plan plan;
    hs_status status =
        hs_pickle(&plan, acid, strength_pct, tub_m3, part->area_m2, part->scale_m, err);
    if (status != HS_OK) return status;
    if (!(tank->acid_pct > 0)) hs_text_add(assumed, ", %s %.0f %%", acid, strength_pct);
    if (!(tank->tub_m3 > 0)) hs_text_add(assumed, ", tub %.0f L", tub_m3 * 1e3);
    out->time_low_s = plan.time_low_s;
    out->time_high_s = plan.time_high_s;
    out->time_s = sqrt(plan.time_low_s * plan.time_high_s);
    hs_text_add(advice,
                " The scale takes %.0f g of acid of the %.0f g in the tub; %.0f g of soda "
                "neutralise it.",
                1e3 * plan.acid_kg, 10 * strength_pct * tub_m3 * 1e3, 1e3 * plan.soda_kg);
    if (plan.spent) {
        *care = 1;
        hs_text_add(advice, " That is more than there is.");
    }
    return HS_OK;
}

void hs_descale_usual_time(double *low_s, double *high_s, hs_descale_method by,
                           const hs_descale_part *part) {
    double dm2 = part->area_m2 / DM2_m2;
    hs_bath_plan bath;
    hs_pickle_plan acid;
    *low_s = *high_s = 0;
    if (by == HS_BY_BRUSH || by == HS_BY_BLAST) {
        int brush = by == HS_BY_BRUSH;
        *low_s = dm2 * (brush ? HS_K_DESCALE_BRUSH_LOW : HS_K_DESCALE_BLAST_LOW);
        *high_s = dm2 * (brush ? HS_K_DESCALE_BRUSH_HIGH : HS_K_DESCALE_BLAST_HIGH);
    } else if (by == HS_BY_ANODIC_ELECTROLYSIS) {
        *low_s = HS_K_DESCALE_ANODIC_LOW;
        *high_s = HS_K_DESCALE_ANODIC_HIGH;
    } else if (by == HS_BY_ACID &&
               hs_pickle(&acid, "citric", usual_strength("citric"), HS_K_DESCALE_TUB, part->area_m2,
                         part->scale_m, NULL) == HS_OK) {
        *low_s = acid.time_low_s;
        *high_s = acid.time_high_s;
    } else if (by == HS_BY_ELECTROLYSIS &&
               hs_bath_plan_time(&bath, part->area_m2, 0, HS_FORGE_SCALE, part->scale_m,
                                 HS_K_DESCALE_SUPPLY_AMPS, NULL) == HS_OK) {
        *low_s = bath.time_low_s;
        *high_s = bath.time_high_s;
    }
}
