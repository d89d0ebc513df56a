/* One tank with one part in it: its cell, current, charge and time. */
#include "plan/descale_work.h"

#include "constants.h"
#include "hardskin/model/bath.h"
#include "plan/loss.h"
#include "plan/place.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;

/* Scale before rust: it takes more. */
hs_bath_soil hs_descale_soil(const hs_descale_work *w) {
    hs_rust rust = hs_loss_rust_at(w->job, w->at->step);
    if (w->at->scale_m > 0 || rust == HS_NO_RUST) return HS_FORGE_SCALE;
    return rust == HS_RUST_HEAVY ? HS_HEAVY_RUST : HS_LIGHT_RUST;
}

int hs_descale_graphite(const hs_tank *t) {
    return !strcmp(t->anode, "graphite") || !strcmp(t->anode, "carbon");
}

/* A bar beside a rod; else face to face, where the current's tube is not let spread, or two bodies
 * far from each other, where it spreads all it can: the current finds the easier of the two, and so
 * does the gas that is reckoned from it. Both rise with the gap, and pass into each other. */
static hs_status resistance(hs_tank_run *run, const hs_descale_work *w, const hs_tank *t,
                            double area_m2, hs_error *err) {
    const hs_part *part = &w->job->part;
    double k = run->conductivity_S_m, whole_m = part->length_m * area_m2 / w->area_m2;
    if (part->form == HS_BAR && !strcmp(t->anode, "rebar")) {
        double rod_m = t->anode_area_m2 / (2 * PI * part->length_m), bar_m = part->diameter_m / 2;
        run->geometry = "two parallel rods";
        return hs_bath_rods_ohm(&run->bath_ohm, k, t->gap_m + bar_m + rod_m, bar_m, rod_m, whole_m,
                                err);
    }
    double part_m = sqrt(area_m2 / (4 * PI)), anode_m = sqrt(t->anode_area_m2 / (4 * PI));
    double faces_ohm, far_ohm;
    hs_status status =
        hs_bath_plates_ohm(&faces_ohm, k, t->gap_m, fmin(area_m2, t->anode_area_m2), err);
    if (status == HS_OK)
        status =
            hs_bath_compact_ohm(&far_ohm, k, t->gap_m + part_m + anode_m, part_m, anode_m, err);
    if (status != HS_OK) return status;
    run->geometry = far_ohm < faces_ohm ? "the current spread all round" : "plates face to face";
    run->bath_ohm = fmin(far_ohm, faces_ohm);
    return HS_OK;
}

static hs_status conductivity(hs_tank_run *run, const hs_descale_work *w, const hs_tank *t,
                              double soda_pct, hs_error *err) {
    double usual;
    int too_thin = hs_bath_conductivity(&usual, soda_pct, HS_K_DESCALE_BATH_TEMP, NULL) != HS_OK;
    return hs_at_step(hs_bath_conductivity(&run->conductivity_S_m, soda_pct, t->temp_K, err),
                      w->step, too_thin ? "soda" : "bath_temperature", err);
}

hs_status hs_descale_run(hs_tank_run *run, const hs_descale_work *w, const hs_tank *t,
                         double area_m2, hs_error *err) {
    double soda_pct, amps;
    hs_bath_plan plan;
    *run = (hs_tank_run){0};
    hs_status status = hs_bath_anode_check(t->anode, err);
    if (status == HS_OK)
        status = hs_at_step(hs_bath_percent(&soda_pct, t->soda_kg_m3, err), w->step, "soda", err);
    if (status == HS_OK) status = conductivity(run, w, t, soda_pct, err);
    if (status == HS_OK) status = resistance(run, w, t, area_m2, err);
    if (status != HS_OK) return status;
    int anodic = w->step->by == HS_BY_ANODIC_ELECTROLYSIS; /* then the part is the steel anode */
    const hs_bath_cell cell = {.bath_ohm = run->bath_ohm,
                               .leads_ohm = HS_K_DESCALE_LEADS,
                               .part_area_m2 = anodic ? t->anode_area_m2 : area_m2,
                               .anode_area_m2 = anodic ? area_m2 : t->anode_area_m2,
                               .graphite = !anodic && hs_descale_graphite(t)};
    status = hs_bath_amps(&run->bath_amps_A, &cell, t->volts_V, INFINITY, err);
    if (status == HS_OK) status = hs_bath_amps(&amps, &cell, t->volts_V, t->amps_A, err);
    if (status == HS_OK)
        status =
            hs_bath_plan_time(&plan, area_m2, 0, hs_descale_soil(w), w->at->scale_m, amps, err);
    if (status == HS_OK) status = hs_bath_volts(&run->volts_V, &cell, plan.amps_A, err);
    if (status != HS_OK) return status;
    run->amps_A = plan.amps_A;
    run->density_A_m2 = plan.density_A_m2;
    run->charge_Ah = plan.charge_Ah;
    run->time_s = plan.time_s;
    run->time_low_s = plan.time_low_s;
    run->time_high_s = plan.time_high_s;
    run->below_range = plan.below_range;
    return HS_OK;
}
