#include "hardskin/model/box_matter.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

static const double NODE_K = 10;

static double node_temp_K(size_t i) {
    return HS_K_PHYSICAL_ZERO_CELSIUS + NODE_K * (double)i;
}

double hs_matter_low_K(void) {
    return node_temp_K(0);
}

double hs_matter_high_K(void) {
    return node_temp_K(HS_MATTER_NODES - 1);
}

double hs_matter_conductivity(double temp_K) {
    double T3 = temp_K * temp_K * temp_K;
    double rays = 4 * HS_K_BOX_HEAT_EMISSIVITY * HS_K_BOX_HEAT_BOLTZMANN * HS_K_BOX_HEAT_GRAIN * T3;
    double room_K = HS_K_PHYSICAL_ZERO_CELSIUS + 20;
    double gas = HS_K_BOX_HEAT_BED_CONDUCTIVITY * pow(temp_K / room_K, HS_K_BOX_HEAT_BED_EXPONENT);
    double through = 1 / (1 / HS_K_BOX_HEAT_GRAIN_CONDUCTIVITY + 1 / rays);
    return gas + (1 - HS_K_BOX_HEAT_VOID) * through + HS_K_BOX_HEAT_VOID * rays;
}

static double water_J_kg(double temp_K) {
    double share =
        (temp_K - HS_K_BOX_HEAT_BOIL_LOW) / (HS_K_BOX_HEAT_BOIL_HIGH - HS_K_BOX_HEAT_BOIL_LOW);
    return HS_K_BOX_HEAT_WATER_EVAPORATION * fmin(1, fmax(0, share));
}

void hs_matter_compound(hs_matter *matter, double density_kg_m3, double moisture, double factor,
                        double steel_share) {
    const hs_table *table = hs_table_get(HS_TABLE_BOX_ENTHALPY);
    double flow = 0, before = hs_matter_conductivity(node_temp_K(0));
    for (size_t i = 0; i < HS_MATTER_NODES; i++) {
        double T = node_temp_K(i), temp_C = NODE_K * (double)i;
        double k = hs_matter_conductivity(T);
        if (i > 0) flow += 0.5 * NODE_K * (before + k);
        before = k;
        double carbon =
            hs_table_interpolate(table, HS_BOX_ENTHALPY_TEMP, HS_BOX_ENTHALPY_CARBON, temp_C);
        double steel =
            hs_table_interpolate(table, HS_BOX_ENTHALPY_TEMP, HS_BOX_ENTHALPY_STEEL, temp_C);
        matter->flow[i] = factor * flow;
        matter->heat[i] = density_kg_m3 * (carbon + moisture * water_J_kg(T));
        matter->core[i] =
            steel_share * HS_K_BOX_HEAT_STEEL_DENSITY * steel + (1 - steel_share) * matter->heat[i];
    }
}

void hs_matter_constant(hs_matter *matter, double k_W_mK, double bed_J_m3K, double core_J_m3K) {
    for (size_t i = 0; i < HS_MATTER_NODES; i++) {
        double rise_K = NODE_K * (double)i;
        matter->flow[i] = k_W_mK * rise_K;
        matter->heat[i] = bed_J_m3K * rise_K;
        matter->core[i] = core_J_m3K * rise_K;
    }
}

double hs_matter_at(double *slope, const double curve[HS_MATTER_NODES], double temp_K) {
    double place = (temp_K - HS_K_PHYSICAL_ZERO_CELSIUS) / NODE_K;
    size_t i = place > 0 ? (size_t)fmin(place, HS_MATTER_NODES - 2) : 0;
    *slope = (curve[i + 1] - curve[i]) / NODE_K;
    return curve[i] + (place - (double)i) * (curve[i + 1] - curve[i]);
}

void hs_matter_both(double *heat, double *c, double *flow, double *k, const hs_matter *matter,
                    int core, double temp_K) {
    double place = (temp_K - HS_K_PHYSICAL_ZERO_CELSIUS) / NODE_K;
    int last = HS_MATTER_NODES - 2, i = place < last ? (int)place : last;
    if (i < 0) i = 0;
    const double *curve = core ? matter->core : matter->heat;
    double share = place - i, rise = curve[i + 1] - curve[i];
    *heat = curve[i] + share * rise;
    *c = rise / NODE_K;
    rise = matter->flow[i + 1] - matter->flow[i];
    *flow = matter->flow[i] + share * rise;
    *k = rise / NODE_K;
}
