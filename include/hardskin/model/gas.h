/* The gas a tank gives off and the air it needs. All of the current is taken to make hydrogen.
 * Foam on the bath is an explosive mixture whatever the room: no lid, no spark. */
#ifndef HARDSKIN_MODEL_GAS_H
#define HARDSKIN_MODEL_GAS_H

#include "hardskin/base/status.h"

typedef struct hs_gas_rate {
    double h2_m3_s, o2_m3_s;      /* at the temperature, 1 atm */
    double air_battery_room_m3_s; /* IEC 62485-2: .05 m3/h per A */
    double air_workplace_m3_s;    /* the stricter guide: .0612 m3/h per A */
    double fresh_air_m3_s;        /* the larger of the two */
    const char *governs;          /* its name */
    double opening_m2;            /* natural vent, inlet and outlet each: 28 cm2 per m3/h of
                                     IEC 62485-2's own air: the published figure */
    double opening_fresh_air_m2;  /* the same for the larger air flow: to the safe side, used by
                                     plan */
    double spark_distance_m;      /* no flame or spark nearer: max(formula, 500 mm) */
} hs_gas_rate;

/** Gas and fresh air for a tank at a current.
 *    amps    double  in  >= 0
 *    temp_K  double  in  273.15 to 373.15 K, of the gas
 *  Returns  HS_OK; HS_E_IMPOSSIBLE; HS_E_RANGE for the temperature.
 *  Source   Faraday; IEC 62485-2 (read second-hand), a second guide (tables/hydrogen.csv) */
HS_API hs_status hs_gas_from_current(hs_gas_rate *out, double amps, double temp_K, hs_error *err);

/** Hydrogen in a well-mixed room after a time. A real room is worse at the ceiling.
 *
 *    fraction         double  out  of the volume; not capped: above 1 means full of gas
 *    h2_m3_s          double  in   >= 0
 *    room_m3          double  in   > 0
 *    air_changes_1_s  double  in   >= 0 (0 = sealed)
 *    time_s           double  in   >= 0; INFINITY for the steady state of an aired room
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_gas_room(double *fraction, double h2_m3_s, double room_m3,
                             double air_changes_1_s, double time_s, hs_error *err);

/** Time until a closed headspace holds the fraction (s): fraction * volume / rate. */
HS_API hs_status hs_gas_headspace_s(double *time_s, double fraction, double h2_m3_s,
                                    double headspace_m3, hs_error *err);

/** Hydrogen (m3, 1 atm) of iron an acid dissolves: one molecule an atom, Fe + 2 H+. The scale
 * itself makes none. mass_kg >= 0; temp_K as above. Returns  HS_OK; HS_E_IMPOSSIBLE; HS_E_RANGE for
 * the temperature. */
HS_API hs_status hs_gas_from_iron(double *h2_m3, double mass_kg, double temp_K, hs_error *err);

/** Volume fractions of the lower explosive limit and of the limit to keep below. */
HS_API double hs_gas_explosive_limit(void);
HS_API double hs_gas_keep_below(void);

#endif
