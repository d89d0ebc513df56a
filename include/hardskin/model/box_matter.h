/* Heat and heat flow of what is in a box, as curves over temperature: linear between nodes 10 K
 * apart, so that Newton's method meets the very function it is given. */
#ifndef HARDSKIN_MODEL_BOX_MATTER_H
#define HARDSKIN_MODEL_BOX_MATTER_H

#include <stddef.h>

enum { HS_MATTER_NODES = 114 }; /* 0 to 1130 C */

typedef struct hs_matter {
    double heat[HS_MATTER_NODES]; /* taken up since 0 C, J/m3 */
    double flow[HS_MATTER_NODES]; /* integral of the conductivity since 0 C, W/m */
    double core[HS_MATTER_NODES]; /* heat taken up by the core, J/m3 */
} hs_matter;

/** Carburising compound: bulk density (kg/m3), moisture (kg/kg), factor on its conductivity; the
 *  core is steel to that share, and compound. */
void hs_matter_compound(hs_matter *matter, double density_kg_m3, double moisture, double factor,
                        double steel_share);

/** Constant properties: conductivity (W/(m K)), heat capacities of bed and core (J/(m3 K)). */
void hs_matter_constant(hs_matter *matter, double k_W_mK, double bed_J_m3K, double core_J_m3K);

/** Values and slopes of two curves at once: heat and flow of the compound (core: of the core). */
void hs_matter_both(double *heat, double *c, double *flow, double *k, const hs_matter *matter,
                    int core, double temp_K);

/** Value of a curve and its slope; outside the nodes the end pieces are carried on. */
double hs_matter_at(double *slope, const double curve[HS_MATTER_NODES], double temp_K);

/** Conductivity of the compound by the table's formula (W/(m K)). */
double hs_matter_conductivity(double temp_K);

/** Temperatures the curves hold for (K). */
double hs_matter_low_K(void);
double hs_matter_high_K(void);

#endif
