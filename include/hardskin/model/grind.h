/* The wheel: passes, strokes and time; how a magnetic chuck flattens a bow; where burn begins. */
#ifndef HARDSKIN_MODEL_GRIND_H
#define HARDSKIN_MODEL_GRIND_H

#include "hardskin/base/status.h"

typedef struct hs_grind_face {
    double stock_m; /* to take off this face, >= 0 */
    double rough_infeed_m, finish_infeed_m, finish_stock_m;
    double length_m, width_m; /* of the face, length along the table */
    double wheel_width_m, cross_feed_m, table_speed_m_s;
    double overrun_m; /* at each end; the sheet's default is the wheel's width */
    int spark_outs;   /* passes without infeed, >= 0 */
} hs_grind_face;

typedef struct hs_grind_time {
    double rough_passes, finish_passes, spark_outs;
    double crossings; /* table strokes per pass */
    double strokes;   /* passes * crossings */
    double time_s;
} hs_grind_time;

/** Passes, strokes and time of one face.
 *  Passes = ceil((z - zf)/ar) + ceil(zf/af) + spark-outs; a stock below zf is all finished.
 *  Time = strokes * (length + 2 overrun)/speed; crossings = ceil((width + wheel)/cross feed).
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for a size, feed or speed that is not > 0.
 *  Source   tables/grinding.csv; arithmetic */
HS_API hs_status hs_grind_passes(hs_grind_time *out, const hs_grind_face *face, hs_error *err);

/** Pressure (Pa) that presses a bow flat: 6.4 E h^3 f / L^4.
 *    bow_m, thickness_m, length_m  in  > 0, bow >= 0
 *  Returns  HS_OK; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_grind_flatten_Pa(double *pressure_Pa, double bow_m, double thickness_m,
                                     double length_m, hs_error *err);

/** The same for any section: `stiffness_m4` its second moment against a load square to the chuck,
 *  `width_m` of the face it lies on; a rectangle of height h and that width has width h^3/12.
 *  Source   beam on two supports under uniform load, as above (tables/grinding.csv) */
HS_API hs_status hs_grind_flatten_section_Pa(double *pressure_Pa, double bow_m, double stiffness_m4,
                                             double width_m, double length_m, hs_error *err);

/** Does a magnetic chuck pull that bow flat? -1 no, shim not needed for holding it; 0 doubtful;
 *  1 yes: the bow comes back when the current is off, so shim the hollow. */
HS_API hs_status hs_grind_chuck_flattens(int *answer, double pressure_Pa, hs_error *err);

/** Specific energy (J/m3) above which the hardened surface burns, and length of contact (m).
 *    infeed_m, wheel_m (diameter), table_speed_m_s  in  > 0
 *  Returns  HS_OK; HS_E_IMPOSSIBLE.
 *  Source   Malkin, from memory (tables/grinding.csv). Tempering damage begins well below. */
HS_API hs_status hs_grind_burn_J_m3(double *energy_J_m3, double infeed_m, double wheel_m,
                                    double table_speed_m_s, hs_error *err);
HS_API hs_status hs_grind_contact_m(double *contact_m, double infeed_m, double wheel_m,
                                    hs_error *err);

/** Removal rate per width of wheel (m2/s): infeed * table speed. */
HS_API double hs_grind_rate_m2_s(double infeed_m, double table_speed_m_s);

#endif
