/* How fast a plate, a round bar or a square bar cools (or warms) in a bath: conduction inside, a
 * film at the surface, constant properties. */
#ifndef HARDSKIN_MODEL_COOLING_H
#define HARDSKIN_MODEL_COOLING_H

#include "hardskin/model/quench.h"

enum { HS_COOLING_NODES = 4900 };

typedef enum hs_cooling_shape { HS_COOL_PLATE, HS_COOL_BAR, HS_COOL_SQUARE } hs_cooling_shape;

typedef struct hs_cooling {
    hs_cooling_shape shape;
    double size_m; /* thickness, diameter, side */
    hs_curve film; /* W/(m2 K) over the surface temperature */
    double conductivity_W_mK, heat_J_m3K;
    double from_K, to_K; /* the part throughout; the bath */
    double time_s;
} hs_cooling;

typedef struct hs_cooling_work {
    double temp_K[HS_COOLING_NODES], next_K[HS_COOLING_NODES], stage[5 * HS_COOLING_NODES];
} hs_cooling_work;

/** Temperature (K) in the middle and at the surface (of a square: middle of a side).
 *  Second order in space and time; within .1 K of the exact series.
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for sizes, times or properties that are none; HS_E_CONVERGE. */
HS_API hs_status hs_cooling_run(double *centre_K, double *surface_K, const hs_cooling *c,
                                hs_cooling_work *work, hs_error *err);

/** Conductivity and heat capacity of hot steel to reckon with where none is given (tables). */
HS_API double hs_cooling_conductivity(void);
HS_API double hs_cooling_heat(void);

#endif
