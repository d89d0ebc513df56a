/* Heat through a body of compound round a core of steel: finite volumes along the one radius,
 * TR-BDF2 in time with an error estimate (Hosea and Shampine, Appl. Num. Math. 20 (1996) 21).
 * The unknowns are temperatures, the balance is of heat: what crosses the wall is what is taken up.
 */
#ifndef HARDSKIN_MODEL_BOX_MARCH_H
#define HARDSKIN_MODEL_BOX_MARCH_H

#include "hardskin/base/status.h"
#include "hardskin/model/box_matter.h"

enum { HS_BOX_CELLS = 64, HS_BOX_CELLS_USUAL = 16 };

/** The wall's area at radius r goes with (r / radius)^exponent: 0 slab, 1 cylinder, 2 sphere. */
typedef struct hs_box_body {
    double radius_m, core_m; /* core_m 0: none */
    double exponent;
    size_t cells; /* of compound, 2 to HS_BOX_CELLS */
} hs_box_body;

/** Temperature of the wall over time: straight up, held, then falling like e^-t. */
typedef struct hs_box_wall {
    double start_K, fire_K, rise_s;     /* from start_K to fire_K in rise_s (0: a step) */
    double off_s, ambient_K, cooling_s; /* from off_s on toward ambient_K */
} hs_box_wall;

double hs_box_wall_temp(const hs_box_wall *wall, double time_s);

/** A march: state and scratch. cell 0 is the core where there is one. */
typedef struct hs_box_march {
    hs_matter matter;
    hs_box_wall wall;
    size_t n;
    int has_core;
    double place[HS_BOX_CELLS + 1];  /* middle of the cells */
    double link[HS_BOX_CELLS + 1];   /* area over distance to the cell outside, or to the wall */
    double volume[HS_BOX_CELLS + 1]; /* of the cells */
    double time_s, step_s, tolerance_K;
    double temp_K[HS_BOX_CELLS + 1], slope[HS_BOX_CELLS + 1]; /* slope: W into each cell */
    double gained_J, start_J; /* through the wall; content at start */
    double wall_W;
    size_t steps, refused;
    double potential[HS_BOX_CELLS + 2], k[HS_BOX_CELLS + 1], heat[HS_BOX_CELLS + 1],
        c[HS_BOX_CELLS + 1]; /* of the cells, the wall last */
    double start[HS_BOX_CELLS + 1], now[HS_BOX_CELLS + 1], base[HS_BOX_CELLS + 1],
        flux[HS_BOX_CELLS + 1], first[HS_BOX_CELLS + 1], right[HS_BOX_CELLS + 1],
        lower[HS_BOX_CELLS + 1], diag[HS_BOX_CELLS + 1], upper[HS_BOX_CELLS + 1],
        scratch[HS_BOX_CELLS + 1];
} hs_box_march;

/** Set up a body all at one temperature at time 0; march->matter and march->wall are set already.
 *  tolerance_K: error a step may make. */
void hs_box_march_start(hs_box_march *march, const hs_box_body *body, double temp_K,
                        double tolerance_K);

/** One accepted step, at most to `end_s`.  Returns HS_OK or HS_E_CONVERGE. */
hs_status hs_box_march_step(hs_box_march *march, double end_s, hs_error *err);

/** The same with a step that is given (for tests of order); no estimate is made. */
hs_status hs_box_march_fixed(hs_box_march *march, double step_s, hs_error *err);

/** Temperature of the core, or of the very centre where there is none; and its rate, K/s. */
double hs_box_march_centre(const hs_box_march *march);
double hs_box_march_rate(const hs_box_march *march);

/** |content - content at start - gained| over what was gained: rounding only. */
double hs_box_march_balance(const hs_box_march *march);

#endif
