/* The soda bath: conductivity, resistance, cell, charge, heat. The part is on the NEGATIVE lead. */
#ifndef HARDSKIN_MODEL_BATH_H
#define HARDSKIN_MODEL_BATH_H

#include "hardskin/base/status.h"

/** Mass per cent of anhydrous soda in a bath of so many kg per m3 (= g/L) at 20 C.
 *  Returns  HS_OK; HS_E_IMPOSSIBLE below 0; HS_E_RANGE above 15 %. */
HS_API hs_status hs_bath_percent(double *soda_pct, double soda_kg_m3, hs_error *err);

/** Conductivity of sodium carbonate in water, log-log between the table's strengths.
 *    conductivity_S_m  double  out
 *    soda_pct          double  in   anhydrous, .5 to 15 mass %
 *    temp_K            double  in   283.15 to 323.15 K (10 to 50 C)
 *  Returns  HS_OK; HS_E_RANGE.
 *  Source   CRC Handbook, from memory (tables/conductivity.csv, bath.csv) */
HS_API hs_status hs_bath_conductivity(double *conductivity_S_m, double soda_pct, double temp_K,
                                      hs_error *err);

/** Does so much soda dissolve? Solubility in kg anhydrous per kg water, 0 to 40 C, linear between.
 *  Returns  HS_OK; HS_E_RANGE. */
HS_API hs_status hs_bath_solubility(double *kg_per_kg, double temp_K, hs_error *err);

/** Two plates face to face (ohm): gap / (conductivity * area of one). All > 0, else
 *  HS_E_IMPOSSIBLE. */
HS_API hs_status hs_bath_plates_ohm(double *ohm, double conductivity_S_m, double gap_m,
                                    double area_m2, hs_error *err);

/** Two parallel rods (ohm), centres `apart_m` from each other, `length_m` in the bath.
 *  HS_E_IMPOSSIBLE if they overlap. */
HS_API hs_status hs_bath_rods_ohm(double *ohm, double conductivity_S_m, double apart_m,
                                  double radius1_m, double radius2_m, double length_m,
                                  hs_error *err);

/** A compact part of radius a with the anode far away on all sides (ohm): 1/(4 pi k a). */
HS_API hs_status hs_bath_far_ohm(double *ohm, double conductivity_S_m, double radius_m,
                                 hs_error *err);

/** Two compact bodies of radii r1 and r2 (of the sphere with their surface), centres `apart_m` from
 *  each other in a wide bath (ohm): (1/r1 + 1/r2 - 2/D)/(4 pi k), the first order of the two
 *  spheres; tends to hs_bath_far_ohm with D and r2 large. HS_E_IMPOSSIBLE if they overlap. */
HS_API hs_status hs_bath_compact_ohm(double *ohm, double conductivity_S_m, double apart_m,
                                     double radius1_m, double radius2_m, hs_error *err);

typedef struct hs_bath_cell {
    double bath_ohm, leads_ohm;
    double part_area_m2, anode_area_m2;
    int graphite; /* anode: 1 graphite, 0 mild steel */
} hs_bath_cell;

/** Voltage over the cell and its leads at a current, and the current a supply drives through it.
 *
 *    volts, amps         double  out
 *    cell                        in   resistances >= 0, areas > 0
 *    amps                double  in   hs_bath_volts: > 0
 *    supply_V, supply_A  double  in   most the supply gives, > 0; amperes may be INFINITY
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE; hs_bath_amps also HS_E_CONVERGE when the voltage is below what
 *           splits water at a useful current.
 *  Source   Tafel's law with constants by judgement (tables/bath.csv) */
HS_API hs_status hs_bath_volts(double *volts, const hs_bath_cell *cell, double amps, hs_error *err);
HS_API hs_status hs_bath_amps(double *amps, const hs_bath_cell *cell, double supply_V,
                              double supply_A, hs_error *err);

/** What the tank is to lift. */
typedef enum hs_bath_soil { HS_LIGHT_RUST, HS_HEAVY_RUST, HS_FORGE_SCALE } hs_bath_soil;

typedef struct hs_bath_plan {
    double amps_A; /* wanted, or what the supply gives if that is less */
    double charge_Ah;
    double density_A_m2;                    /* of the current on the part */
    double time_s, time_low_s, time_high_s; /* low and high: half and twice (judgement) */
    int supply_limits;                      /* the supply gives less than the wanted density */
    int below_range;                        /* density below the useful range of bath.csv */
} hs_bath_plan;

/** Charge, current and time for a part. A planning figure: brush and look every half hour.
 *    area_m2      double  in   of the part, > 0
 *    density_A_m2 double  in   wanted, 100 to 1000 A/m2 (1 to 10 A/dm2); 0 = default 300
 *    soil, scale_m        in   scale thickness per side, forge scale only
 *    supply_A     double  in   most the supply or the cell gives; INFINITY = no limit
 *  Returns  HS_OK; HS_E_RANGE for the density; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_bath_plan_time(hs_bath_plan *out, double area_m2, double density_A_m2,
                                   hs_bath_soil soil, double scale_m, double supply_A,
                                   hs_error *err);

/** Charge that reduces an oxide, electrons from the standard equation (Ah per kg of oxide). */
typedef enum hs_bath_reduction {
    HS_FEO_TO_FE,
    HS_FE3O4_TO_FE,
    HS_FE2O3_TO_FE,
    HS_FEOOH_TO_FE,
    HS_FE2O3_TO_FE3O4,
    HS_FEOOH_TO_FE3O4
} hs_bath_reduction;
HS_API double hs_bath_reduction_Ah_kg(hs_bath_reduction reaction);

/** Iron a steel anode loses at most (kg per Ah), and water split (kg per Ah). */
HS_API double hs_bath_anode_loss_kg_Ah(void);
HS_API double hs_bath_water_loss_kg_Ah(void);

/** Heating of the bath (K/s): volts * amps into `volume_m3` of water, no loss to the room. */
HS_API double hs_bath_heating_K_s(double volts, double amps, double volume_m3);

/** Forms soda is sold in. */
typedef enum hs_soda {
    HS_SODA_ANHYDROUS,
    HS_SODA_MONOHYDRATE,
    HS_SODA_CRYSTALS,        /* washing soda, decahydrate */
    HS_SODA_FROM_BICARBONATE /* baking soda, to be baked first */
} hs_soda;

/** Mass of a form that holds so much anhydrous soda (same unit as given). */
HS_API double hs_bath_soda_mass(hs_soda form, double anhydrous);

/** Smallest lead (copper, mm2) that carries the current. HS_E_RANGE above the table. */
HS_API hs_status hs_bath_cable_mm2(double *mm2, double amps, hs_error *err);

/** May this be the anode? name as typed, e.g. "mild steel".
 *  Returns  HS_OK; HS_E_FORBIDDEN with the hazard; HS_E_WORD if the table does not know it. */
HS_API hs_status hs_bath_anode_check(const char *name, hs_error *err);

#endif
