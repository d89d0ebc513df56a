#include "plan/descale_work.h"

#include "constants.h"
#include "hardskin/model/bath.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double HOUR_s = 3600, DM2_m2 = 0.01;

hs_tank hs_descale_filled(hs_descale_work *w) {
    hs_tank t = w->step->tank;
    hs_text *assumed = &w->assumed;
    if (!(t.volts_V > 0 && t.amps_A > 0)) {
        t.volts_V = t.volts_V > 0 ? t.volts_V : HS_K_DESCALE_SUPPLY_VOLTS;
        t.amps_A = t.amps_A > 0 ? t.amps_A : HS_K_DESCALE_SUPPLY_AMPS;
        hs_text_add(assumed, ", supply %.0f V %.0f A", t.volts_V, t.amps_A);
    }
    if (!(t.tub_m3 > 0)) {
        t.tub_m3 = HS_K_DESCALE_TUB;
        hs_text_add(assumed, ", tub %.0f L", t.tub_m3 * 1e3);
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
        t.anode_area_m2 = w->area_m2;
        hs_text_add(assumed, ", anode as large as the part");
    }
    if (!(t.temp_K > 0)) {
        t.temp_K = HS_K_DESCALE_BATH_TEMP;
        hs_text_add(assumed, ", bath %.0f C", t.temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    }
    if (t.room_m3 > 0) {
        if (t.air_changes_1_s <= 0) hs_text_add(assumed, ", no air change in the room");
        return t;
    }
    t.room_m3 = HS_K_DESCALE_ROOM;
    t.air_changes_1_s = HS_K_DESCALE_AIR_CHANGES / HOUR_s;
    hs_text_add(assumed, ", room %.0f m3 with %.1f air changes/h", t.room_m3,
                HS_K_DESCALE_AIR_CHANGES);
    return t;
}

static void tell_limit(hs_result_tank *tank, const hs_tank *t, const hs_tank_run *run) {
    hs_text text = hs_text_start(tank->limited, sizeof tank->limited);
    double usual = tank->usual_amps_A;
    if (run->amps_A >= usual) {
        tank->limit = HS_TANK_LIMIT_AREA;
        hs_text_add(&text, "The part's area sets it: %.1f A is the usual 3 A/dm2.", usual);
        if (tank->most_amps_A > 1.05 * usual)
            hs_text_add(&text, " Turn the supply down: untouched it would drive %.1f A.",
                        tank->most_amps_A);
    } else if (run->bath_amps_A < t->amps_A) {
        tank->limit = HS_TANK_LIMIT_BATH;
        hs_text_add(&text,
                    "The bath limits it: at %.0f V no more passes, though the supply could give "
                    "%.0f A and the part would take %.1f A.",
                    t->volts_V, t->amps_A, usual);
    } else {
        tank->limit = HS_TANK_LIMIT_SUPPLY;
        hs_text_add(&text,
                    "The supply limits it: at %.0f V the bath would pass %.1f A and the part would "
                    "take %.1f A.",
                    t->volts_V, run->bath_amps_A, usual);
    }
}

static void put_heat(hs_result_descale *out, const hs_tank *t) {
    hs_result_tank *tank = &out->tank;
    tank->heating_K_s = hs_bath_heating_K_s(out->volts_V, out->amps_A, t->tub_m3);
    tank->hot_s = (HS_K_BATH_TEMP_HIGH - t->temp_K) / tank->heating_K_s;
    tank->boils_s = (HS_K_DESCALE_BOIL - t->temp_K) / tank->heating_K_s;
    if (tank->hot_s > out->time_high_s) tank->hot_s = INFINITY;
    if (tank->boils_s > out->time_high_s) tank->boils_s = INFINITY;
}

static void put_matter(hs_result_descale *out, const hs_tank *t, hs_descale_method by) {
    hs_result_tank *tank = &out->tank;
    int wears = !hs_descale_graphite(t) && by != HS_BY_ANODIC_ELECTROLYSIS;
    double anode_kg = t->anode_area_m2 * HS_K_DESCALE_ANODE_THICKNESS * HS_K_PHYSICAL_IRON_DENSITY;
    tank->volume_m3 = t->tub_m3;
    tank->soda_kg_m3 = t->soda_kg_m3;
    for (int form = 0; form < HS_SODA_FORMS; form++)
        tank->soda_kg[form] = hs_bath_soda_mass((hs_soda)form, t->soda_kg_m3 * t->tub_m3);
    tank->water_kg = hs_bath_water_loss_kg_Ah() * out->charge_Ah;
    tank->anode_kg = wears ? hs_bath_anode_loss_kg_Ah() * out->charge_Ah : 0;
    tank->anode_jobs = wears ? floor(HS_K_DESCALE_ANODE_WEAR * anode_kg / tank->anode_kg) : NAN;
    if (hs_bath_cable_mm2(&tank->cable_mm2, t->amps_A, NULL) != HS_OK) tank->cable_mm2 = NAN;
}

static void check_soda(hs_descale_work *w, const hs_tank *t) {
    double dissolves;
    if (hs_bath_solubility(&dissolves, t->temp_K, NULL) != HS_OK ||
        t->soda_kg_m3 <= dissolves * HS_K_BATH_DENSITY_0)
        return;
    w->care = 1;
    hs_text_add(&w->advice, " So much soda does not dissolve at this temperature.");
}

static hs_status operate(hs_descale_work *w, hs_tank *t, hs_tank_run *run, hs_error *err) {
    hs_result_descale *out = w->out;
    *t = hs_descale_filled(w);
    hs_status status = hs_descale_run(run, w, t, w->area_m2, err);
    if (status != HS_OK) return status;
    out->amps_A = run->amps_A;
    out->volts_V = run->volts_V;
    out->charge_Ah = run->charge_Ah;
    out->time_s = run->time_s;
    out->time_low_s = run->time_low_s;
    out->time_high_s = run->time_high_s;
    out->tank = (hs_result_tank){.present = 1,
                                 .conductivity_S_m = run->conductivity_S_m,
                                 .bath_ohm = run->bath_ohm,
                                 .geometry = run->geometry,
                                 .density_A_m2 = run->density_A_m2,
                                 .bath_amps_A = run->bath_amps_A,
                                 .most_amps_A = fmin(run->bath_amps_A, t->amps_A),
                                 .usual_amps_A = HS_K_BATH_DENSITY_DEFAULT * w->area_m2,
                                 .below_practice = run->below_range};
    out->tank.above_practice =
        out->tank.most_amps_A > HS_K_BATH_DENSITY_HIGH * w->area_m2; /* if not turned down */
    tell_limit(&out->tank, t, run);
    return HS_OK;
}

/* Once the time is known. */
static hs_status finish(hs_descale_work *w, const hs_tank *t, hs_error *err) {
    put_heat(w->out, t);
    put_matter(w->out, t, w->step->by);
    check_soda(w, t);
    return hs_descale_air(w, t, err);
}

hs_status hs_descale_current(hs_descale_work *w, hs_error *err) {
    hs_tank t;
    hs_tank_run run;
    hs_status status = operate(w, &t, &run, err);
    if (status == HS_OK) status = finish(w, &t, err);
    if (status != HS_OK) return status;
    if (run.below_range) hs_descale_raise(w, &t);
    return HS_OK;
}

hs_status hs_descale_anodic(hs_descale_work *w, hs_error *err) {
    hs_tank t;
    hs_tank_run run;
    hs_result_descale *out = w->out;
    hs_status status = operate(w, &t, &run, err);
    if (status != HS_OK) return status;
    out->time_low_s = HS_K_DESCALE_ANODIC_LOW;
    out->time_high_s = HS_K_DESCALE_ANODIC_HIGH;
    out->time_s = 0.5 * (out->time_low_s + out->time_high_s);
    out->charge_Ah = out->amps_A * out->time_s / HOUR_s;
    hs_text_add(&w->advice, " Minutes only: on the positive lead the part itself is eaten.");
    return finish(w, &t, err);
}

void hs_descale_usual_time(double *low_s, double *high_s, hs_descale_method by,
                           const hs_descale_work *w) {
    double area_m2 = w->area_m2, dm2 = area_m2 / DM2_m2;
    const hs_table *acids = hs_table_get(HS_TABLE_ACIDS);
    size_t citric = (size_t)hs_table_row(acids, HS_ACIDS_ACID, "citric");
    hs_bath_plan bath;
    *low_s = *high_s = 0;
    switch (by) {
    case HS_BY_BRUSH:
        *low_s = dm2 * HS_K_DESCALE_BRUSH_LOW;
        *high_s = dm2 * HS_K_DESCALE_BRUSH_HIGH;
        break;
    case HS_BY_BLAST:
        *low_s = dm2 * HS_K_DESCALE_BLAST_LOW;
        *high_s = dm2 * HS_K_DESCALE_BLAST_HIGH;
        break;
    case HS_BY_FLAP_DISC:
        *low_s = dm2 * HS_K_DESCALE_FLAP_LOW;
        *high_s = dm2 * HS_K_DESCALE_FLAP_HIGH;
        break;
    case HS_BY_ANODIC_ELECTROLYSIS:
        *low_s = HS_K_DESCALE_ANODIC_LOW;
        *high_s = HS_K_DESCALE_ANODIC_HIGH;
        break;
    case HS_BY_ACID:
        *low_s = hs_table_number(acids, citric, HS_ACIDS_TIME_LOW) * HOUR_s;
        *high_s = hs_table_number(acids, citric, HS_ACIDS_TIME_HIGH) * HOUR_s;
        break;
    case HS_BY_ELECTROLYSIS:
        if (hs_bath_plan_time(&bath, area_m2, 0, hs_descale_soil(w), w->at->scale_m,
                              HS_K_DESCALE_SUPPLY_AMPS, NULL) != HS_OK)
            break;
        *low_s = bath.time_low_s;
        *high_s = bath.time_high_s;
        break;
    }
}
