/* Faraday's law for the tank, soda by its forms, leads, anodes. */
#include "hardskin/model/bath.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

static const double SECONDS_PER_HOUR = 3600;

/* Atoms of the oxide and electrons that one formula unit takes up. */
typedef struct half_reaction {
    double Fe, O, H, electrons;
} half_reaction;

static const half_reaction reactions[] = {
    [HS_FEO_TO_FE] = {1, 1, 0, 2},           [HS_FE3O4_TO_FE] = {3, 4, 0, 8},
    [HS_FE2O3_TO_FE] = {2, 3, 0, 6},         [HS_FEOOH_TO_FE] = {1, 2, 1, 3},
    [HS_FE2O3_TO_FE3O4] = {2, 3, 0, 2. / 3}, /* Fe(III) to 8/3: a third each */
    [HS_FEOOH_TO_FE3O4] = {1, 2, 1, 1. / 3},
};

double hs_bath_reduction_Ah_kg(hs_bath_reduction reaction) {
    const half_reaction *r = &reactions[reaction];
    double kg_mol =
        r->Fe * HS_K_PHYSICAL_MASS_FE + r->O * HS_K_PHYSICAL_MASS_O + r->H * HS_K_PHYSICAL_MASS_H;
    return r->electrons * HS_K_PHYSICAL_FARADAY / (kg_mol * SECONDS_PER_HOUR);
}

double hs_bath_anode_loss_kg_Ah(void) {
    return SECONDS_PER_HOUR * HS_K_PHYSICAL_MASS_FE / (2 * HS_K_PHYSICAL_FARADAY);
}

double hs_bath_water_loss_kg_Ah(void) {
    double kg_mol = 2 * HS_K_PHYSICAL_MASS_H + HS_K_PHYSICAL_MASS_O;
    return SECONDS_PER_HOUR * kg_mol / (2 * HS_K_PHYSICAL_FARADAY);
}

double hs_bath_soda_mass(hs_soda form, double anhydrous) {
    switch (form) {
    case HS_SODA_ANHYDROUS:
        return anhydrous * HS_K_BATH_SODA_MASS_ANHYDROUS;
    case HS_SODA_MONOHYDRATE:
        return anhydrous * HS_K_BATH_SODA_MASS_MONOHYDRATE;
    case HS_SODA_CRYSTALS:
        return anhydrous * HS_K_BATH_SODA_MASS_CRYSTALS;
    case HS_SODA_FROM_BICARBONATE:
        return anhydrous / HS_K_BATH_SODA_FROM_BICARBONATE;
    }
    return NAN;
}

hs_status hs_bath_cable_mm2(double *mm2, double amps, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_CABLE);
    if (!(amps >= 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a current of 0 or more", "a lead for %g A", amps);
    for (size_t row = 0; row < t->rows; row++)
        if (amps <= hs_table_number(t, row, HS_CABLE_AMPS)) {
            *mm2 = hs_table_number(t, row, HS_CABLE_AREA);
            return HS_OK;
        }
    return hs_fail(err, HS_E_RANGE, "less current, or ask an electrician",
                   "%g A is more than the table of leads covers", amps);
}

hs_status hs_bath_anode_check(const char *name, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_ELECTRODE);
    int row = hs_table_row(t, HS_ELECTRODE_MATERIAL, name);
    if (row < 0)
        return hs_fail(err, HS_E_WORD, "mild steel (bare) or graphite",
                       "'%s' is no anode the table knows", name);
    if (hs_table_number(t, (size_t)row, HS_ELECTRODE_ALLOWED) > 0) return HS_OK;
    return hs_fail(err, HS_E_FORBIDDEN, "use bare mild steel or graphite",
                   "'%s' is forbidden as an anode: %s", name,
                   hs_table_text(t, (size_t)row, HS_ELECTRODE_REASON));
}
