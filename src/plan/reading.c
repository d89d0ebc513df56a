#include "plan/reading.h"

#include <math.h>

double hs_reading_depth(const hs_reading *reading, const hs_response *r, const hs_steel *steel,
                        const hs_limit *limit, const double z[HS_INPUTS]) {
    static const double middle[HS_INPUTS] = {0};
    hs_response_draw draw = hs_response_at(r, steel, middle);
    double drawn_m = reading->doubt_m * hs_draw_share(z[HS_IN_READING]);
    if (!(reading->factor > 0)) /* it holds where it was read, and further for softer limits */
        return limit->hardness_HV <= reading->limit_HV ? fmax(0, reading->from_blank_m + drawn_m)
                                                       : 0;
    int read_there = reading->of_hardness && limit->hardness_HV == reading->limit_HV;
    double carbon_pct = hs_limit_least(limit, read_there ? middle : z);
    double depth_m = hs_response_depth(r, carbon_pct, &draw);
    return depth_m > 0 ? fmax(0, reading->factor * depth_m + drawn_m) : 0;
}
