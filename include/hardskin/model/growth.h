/* Growth on hardening: volume from the soft state (ferrite and carbide) to martensite, retained
 * austenite and undissolved carbide. One set of figures (Lement 1959); sets must not be mixed. */
#ifndef HARDSKIN_MODEL_GROWTH_H
#define HARDSKIN_MODEL_GROWTH_H

#include "hardskin/base/status.h"

#include <stddef.h>

/** A piece of the section that hardened alike. Volume shares in per cent; the rest is martensite.
 */
typedef struct hs_growth_layer {
    double area_m2;       /* or any weight >= 0 */
    double dissolved_pct; /* carbon dissolved in the austenite before the quench, wt % */
    double carbide_pct;   /* undissolved carbide, volume % */
    double austenite_pct; /* retained austenite, volume % */
    double soft_pct;      /* left as ferrite and carbide (a core that does not harden), volume % */
} hs_growth_layer;

/** Change of volume of one layer against the soft state.
 *    volume_pct  double  out  per cent of the volume; linear growth is a third
 *    layer               in   shares 0..100, together <= 100; carbon 0..2.2 wt %
 *  Returns  HS_OK; HS_E_IMPOSSIBLE.
 *  Source   Lement 1959, from memory (tables/growth.csv) */
HS_API hs_status hs_growth_volume(double *volume_pct, const hs_growth_layer *layer, hs_error *err);

/** Linear growth of a section: a third of the mean change of volume, weighted by area.
 *    strain  double  out  m per m
 *    layer, n        in   at least one with a weight
 *  Returns  HS_OK; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_growth_linear(double *strain, const hs_growth_layer *layer, size_t n,
                                  hs_error *err);

/** Volume share of cementite (per cent) that holds the carbon the reheat does not dissolve.
 *  0 where all is dissolved. */
HS_API double hs_growth_carbide_pct(double carbon_pct, double dissolved_pct);

#endif
