#include "plan/one_side.h"

#include "hardskin/model/bow.h"
#include "plan/bend_section.h"

#include <math.h>

static const double EVEN = 1e-6; /* of the outline's length: as much soft as opposite */

/* Unit vector from the soft faces to the cased ones; 0: they balance. Sides of an outline, as
 * vectors, add up to nothing: the sum of the soft ones is what the cased ones have too much. */
static int towards_case(double *x, double *y, const hs_outline *outline, const int *closed) {
    double sum_x = 0, sum_y = 0, length = 0, twice_area = 0;
    for (size_t i = 0; i < outline->n; i++) {
        hs_point a = outline->point[i], b = outline->point[(i + 1) % outline->n];
        length += hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        twice_area += a.x_m * b.y_m - b.x_m * a.y_m;
        if (!closed[i]) continue;
        sum_x += b.x_m - a.x_m;
        sum_y += b.y_m - a.y_m;
    }
    double size = hypot(sum_x, sum_y);
    if (!(size > EVEN * length)) return 0;
    double turn = twice_area < 0 ? -1 : 1; /* inwards is a left turn where it runs that way round */
    *x = -turn * sum_y / size;
    *y = turn * sum_x / size;
    return 1;
}

hs_one_side hs_one_side_of(const hs_warp *warp, const hs_job *job) {
    hs_one_side out = {0};
    const hs_bow_surface *s = &warp->bend.surface;
    hs_bend_section part;
    int closed[HS_MAX_OUTLINE];
    double x, y;
    if (job->part.form != HS_PLATE && job->part.form != HS_PROFILE) return out;
    if (!(warp->bend.case_m > 0)) return out;
    hs_bend_section_of(&part, closed, job);
    if (!towards_case(&x, &y, &part.section.outline, closed)) return out;
    out = (hs_one_side){1, INFINITY, -INFINITY};
    for (int film = 0; film < HS_BOW_FILMS; film++)
        for (size_t k = 0; k < s->plasticities; k++) {
            const double *kappa = s->even[film][k]; /* strain = kappa_x y + kappa_y x */
            double bow_m = hs_bow_sag_m(kappa[0] * y + kappa[1] * x, warp->length_m);
            out.low_m = fmin(out.low_m, bow_m);
            out.high_m = fmax(out.high_m, bow_m);
        }
    return out;
}
