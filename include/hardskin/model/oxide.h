/* Scale: what a hot part loses to the air. Parabolic law W^2 = integral of kp dt, W the oxygen
 * taken up per area. One nominal constant for everybody; its doubt is a factor on kp
 * (oxidation.csv: band_low .. band_high), the atmosphere a factor on W (tables/atmosphere.csv). */
#ifndef HARDSKIN_MODEL_OXIDE_H
#define HARDSKIN_MODEL_OXIDE_H

#include "hardskin/base/status.h"
#include "hardskin/model/carbon.h"

#include <stddef.h>

/** Nominal parabolic constant of steel in air.
 *
 *  Pure iron after Stanley up to 650 C and Paidassi from 750 C up, log-linear in the temperature
 *  between; times .90 for low carbon, .35 for a carburised surface.
 *
 *    kp_kg2_m4_s  double  out  oxygen uptake squared per time (kg2 m-4 s-1)
 *    temp_K       double  in   773.15 to 1523.15 K
 *    carbon_pct   double  in   carbon at the surface, 0 to 2.2 wt %
 *
 *  Returns  HS_OK; HS_E_RANGE outside 500 to 1250 C; HS_E_IMPOSSIBLE for such a carbon.
 *  Source   Paidassi 1958, Stanley et al. 1951, Birks and Jackson 1970 (tables/oxidation.csv) */
HS_API hs_status hs_oxide_kp(double *kp_kg2_m4_s, double temp_K, double carbon_pct, hs_error *err);

/** Integral of kp over a hold at one temperature: kp * hold_s, kg2 m-4. Integrals of several heats
 *  add where the scale stays on; where it is knocked off, the losses add.
 *  Returns as hs_oxide_kp; HS_E_IMPOSSIBLE for a negative time. */
HS_API hs_status hs_oxide_hold(double *integral_kg2_m4, double temp_K, double hold_s,
                               double carbon_pct, hs_error *err);

/** Integral of kp over a measured or planned heat, linear between its points.
 *
 *  What is below 500 C counts nothing: an hour just under 500 C would add less than 4 um in
 *  squares to what the hot part of the heat takes, a temper heat up to 300 C less than .1 um.
 *
 *    integral_kg2_m4  double  out  integral of kp dt (kg2 m-4)
 *    path, n                  in   at least 2 points, times rising (equal times = a jump)
 *    carbon_pct       double  in   carbon at the surface, 0 to 2.2 wt %
 *
 *  Returns  HS_OK; HS_E_RANGE for a point above 1250 C; HS_E_IMPOSSIBLE for falling times.
 *  Verified against the closed form of holds; quadrature error below 1e-9 relative. */
HS_API hs_status hs_oxide_uptake(double *integral_kg2_m4, const hs_heat_point *path, size_t n,
                                 double carbon_pct, hs_error *err);

/** Oxygen uptake W (kg/m2) = atmosphere * sqrt(kp_factor * integral). Both factors >= 0, else NaN.
 *    kp_factor   1 nominal, .5 to 2 the band
 *    atmosphere  1 open air, 0 sealed pack */
HS_API double hs_oxide_W(double integral_kg2_m4, double kp_factor, double atmosphere);

/** Metal lost per side (m) for an oxygen uptake W (kg/m2). */
HS_API double hs_oxide_lost_m(double W_kg_m2);

/** Thickness of the scale (m) for an oxygen uptake W (kg/m2) and a porosity 0 .. .25. */
HS_API double hs_oxide_scale_m(double W_kg_m2, double porosity);

/** Mass of the scale per area (kg/m2) for an oxygen uptake W (kg/m2). */
HS_API double hs_oxide_scale_kg_m2(double W_kg_m2);

/** Oxygen uptake when the gas film limits the start: W^2 + (kp/kl) W = kp t.
 *
 *    W_kg_m2          double  out  oxygen uptake, below the parabolic one
 *    kp_kg2_m4_s      double  in   > 0
 *    oxygen_fraction  double  in   of the gas by volume, above 0 to 1
 *    temp_K           double  in   773.15 to 1523.15 K
 *    hold_s           double  in   >= 0
 *
 *  Returns  HS_OK; HS_E_RANGE for the temperature; HS_E_IMPOSSIBLE for the other inputs.
 *  Source   film coefficient .03 m/s at 1000 C: judgement (tables/oxidation.csv); it goes with
 *           T^1.75, so that a hotter part never takes up less */
HS_API hs_status hs_oxide_film_limited(double *W_kg_m2, double kp_kg2_m4_s, double oxygen_fraction,
                                       double temp_K, double hold_s, hs_error *err);

/** A piece of a heat under that law: its integral of kp, and kp/kl. */
typedef struct hs_oxide_piece {
    double integral_kg2_m4, slowing_kg_m2;
} hs_oxide_piece;

enum { HS_OXIDE_PIECES = 32 };

/** A whole heat in pieces of equal time, kp/kl of each its mean weighted with kp; to be taken one
 *  after the other by hs_oxide_grown. The integrals add up to that of hs_oxide_uptake.
 *
 *    piece                out  HS_OXIDE_PIECES of them; integral 0 where it is below 500 C
 *    path, n, carbon_pct  in   as hs_oxide_uptake
 *
 *  Returns  as hs_oxide_uptake; HS_E_IMPOSSIBLE for such an oxygen. Output untouched on failure.
 *  Verified against the law stepped in time, on a ramp and a hold: 1 % at 1 % of oxygen and more;
 *  a hold at one temperature is exact. */
HS_API hs_status hs_oxide_film_pieces(hs_oxide_piece piece[HS_OXIDE_PIECES],
                                      const hs_heat_point *path, size_t n, double carbon_pct,
                                      double oxygen_fraction, hs_error *err);

/** Oxygen uptake at the end of a heat that found W0 on the part: the root of
 *  W^2 + slowing W = W0^2 + slowing W0 + integral (all kg/m2 or kg2/m4, >= 0).
 *  slowing 0 is the parabolic law. */
HS_API double hs_oxide_grown(double W0_kg_m2, double integral_kg2_m4, double slowing_kg_m2);

#endif
