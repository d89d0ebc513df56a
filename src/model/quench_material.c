#include "hardskin/model/quench_material.h"

#include "constants.h"
#include "hardskin/model/martensite.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <string.h>

static const double MPA = 1e6;

static hs_curve column(size_t value, double unit) {
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH_STEEL);
    hs_curve c = {.n = t->rows};
    for (size_t i = 0; i < t->rows && i < HS_CURVE_POINTS; i++) {
        c.temp_K[i] = HS_K_PHYSICAL_ZERO_CELSIUS + hs_table_number(t, i, HS_QUENCH_STEEL_TEMP);
        c.value[i] = unit * hs_table_number(t, i, value);
    }
    return c;
}

hs_curve hs_curve_flat(double value) {
    return (hs_curve){.n = 1, .temp_K = {HS_K_PHYSICAL_ZERO_CELSIUS}, .value = {value}};
}

void hs_quench_steel_usual(hs_quench_steel *s) {
    *s = (hs_quench_steel){
        .conductivity = {column(HS_QUENCH_STEEL_CONDUCTIVITY_AUSTENITE, 1),
                         column(HS_QUENCH_STEEL_CONDUCTIVITY_MARTENSITE, 1),
                         column(HS_QUENCH_STEEL_CONDUCTIVITY_FERRITE, 1)},
        .heat = {column(HS_QUENCH_STEEL_HEAT_AUSTENITE, 1),
                 column(HS_QUENCH_STEEL_HEAT_MARTENSITE, 1),
                 column(HS_QUENCH_STEEL_HEAT_FERRITE, 1)},
        .yield = {column(HS_QUENCH_STEEL_STRENGTH_AUSTENITE, MPA),
                  column(HS_QUENCH_STEEL_STRENGTH_MARTENSITE, 1),
                  column(HS_QUENCH_STEEL_STRENGTH_FERRITE, MPA)},
        .modulus = column(HS_QUENCH_STEEL_MODULUS, MPA),
        .expansion = {HS_K_QUENCH_CHANGE_EXPANSION_AUSTENITE,
                      HS_K_QUENCH_CHANGE_EXPANSION_MARTENSITE,
                      HS_K_QUENCH_CHANGE_EXPANSION_FERRITE},
        .latent_J_m3 = {0, HS_K_QUENCH_CHANGE_LATENT_MARTENSITE, HS_K_QUENCH_CHANGE_LATENT_FERRITE},
        .soft_start_K = HS_K_QUENCH_CHANGE_SOFT_START,
        .soft_end_K = HS_K_QUENCH_CHANGE_SOFT_END};
}

hs_status hs_quench_film(hs_curve *film, const char *medium, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH_FILM);
    hs_curve c = {0};
    for (size_t i = 0; i < t->rows && c.n < HS_CURVE_POINTS; i++) {
        if (strcmp(hs_table_text(t, i, HS_QUENCH_FILM_MEDIUM), medium)) continue;
        c.temp_K[c.n] = HS_K_PHYSICAL_ZERO_CELSIUS + hs_table_number(t, i, HS_QUENCH_FILM_TEMP);
        c.value[c.n++] = hs_table_number(t, i, HS_QUENCH_FILM_COEFFICIENT);
    }
    if (c.n == 0)
        return hs_fail(err, HS_E_WORD, "water, still water, brine, oil, polymer, air",
                       "no film coefficient of \"%s\" is known", medium);
    *film = c;
    return HS_OK;
}

hs_quench_point hs_quench_point_of(const hs_composition *steel, double dissolved_pct,
                                   double share) {
    double C = dissolved_pct;
    double martensite =
        HS_K_QUENCH_CHANGE_MARTENSITE_STRAIN + HS_K_QUENCH_CHANGE_MARTENSITE_STRAIN_PER_C * C;
    double ferrite =
        HS_K_QUENCH_CHANGE_FERRITE_STRAIN + HS_K_QUENCH_CHANGE_FERRITE_STRAIN_PER_C * C;
    return (hs_quench_point){
        .ms_K = hs_ms_K(steel, C),
        .alpha_1_K = hs_alpha_usual(),
        .share = share,
        .carbon_pct = C,
        .strain = {0, martensite / 300, ferrite / 300}, /* of volume, per cent, to linear */
        .strength_Pa = MPA * (HS_K_QUENCH_CHANGE_MARTENSITE_STRENGTH +
                              HS_K_QUENCH_CHANGE_MARTENSITE_STRENGTH_ROOT * sqrt(C))};
}

double hs_quench_plasticity_most(void) {
    return HS_K_QUENCH_CHANGE_PLASTICITY_MOST;
}

double hs_quench_plasticity_case_least(void) {
    return HS_K_QUENCH_CHANGE_PLASTICITY_CASE_LEAST;
}
