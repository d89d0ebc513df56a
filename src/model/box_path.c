#include "hardskin/model/box_path.h"

#include <math.h>

enum { PARTS = 4 }; /* of a step, when it is looked at for thinning */

static const double CHORD_K = 1;

hs_status hs_box_record_add(hs_box_record *r, double time_s, double temp_K, double rate_K_s,
                            hs_error *err) {
    if (r->n == HS_BOX_RECORD)
        return hs_fail(err, HS_E_CONVERGE, "another size of box",
                       "the heat of the box takes more than %d steps", HS_BOX_RECORD);
    r->time_s[r->n] = time_s;
    r->temp_K[r->n] = temp_K;
    r->rate_K_s[r->n] = rate_K_s;
    r->n++;
    return HS_OK;
}

double hs_box_record_at(const hs_box_record *r, size_t i, double time_s) {
    double h = r->time_s[i + 1] - r->time_s[i];
    double s = (time_s - r->time_s[i]) / h, t = 1 - s;
    double low = r->temp_K[i], high = r->temp_K[i + 1];
    return t * t * (low * (1 + 2 * s) + s * h * r->rate_K_s[i]) +
           s * s * (high * (1 + 2 * t) - t * h * r->rate_K_s[i + 1]);
}

double hs_box_record_cross(const hs_box_record *r, size_t i, double temp_K) {
    double a = r->time_s[i], b = r->time_s[i + 1];
    int rising = r->temp_K[i + 1] > r->temp_K[i];
    for (int k = 0; k < 60; k++) {
        double middle = 0.5 * (a + b);
        int beyond = rising ? hs_box_record_at(r, i, middle) >= temp_K
                            : hs_box_record_at(r, i, middle) <= temp_K;
        if (beyond)
            b = middle;
        else
            a = middle;
    }
    return 0.5 * (a + b);
}

/* Place k of the finer path: PARTS places a step. */
static hs_heat_point fine(const hs_box_record *r, size_t first, size_t k) {
    size_t i = first + k / PARTS;
    if (k % PARTS == 0) return (hs_heat_point){r->time_s[i], r->temp_K[i]};
    double share = (double)(k % PARTS) / PARTS;
    double t = r->time_s[i] + share * (r->time_s[i + 1] - r->time_s[i]);
    return (hs_heat_point){t, hs_box_record_at(r, i, t)};
}

/* One pass: from each point kept, the farthest next one whose chord stays within `chord_K`. The
 * bounds are the slopes that pass all places between within it. */
static size_t thin(hs_heat_point *out, const hs_box_record *r, size_t first, size_t last,
                   double chord_K) {
    size_t places = (last - first) * PARTS, n = 0;
    hs_heat_point kept = fine(r, first, 0), before = kept;
    double low = -INFINITY, high = INFINITY;
    out[n++] = kept;
    for (size_t k = 1; k <= places; k++) {
        hs_heat_point p = fine(r, first, k);
        double dt = p.time_s - kept.time_s, slope = (p.temp_K - kept.temp_K) / dt;
        if (slope < low || slope > high) {
            if (n == HS_BOX_POINTS) return n + 1;
            out[n++] = kept = before;
            dt = p.time_s - kept.time_s;
            low = -INFINITY, high = INFINITY;
        }
        low = fmax(low, (p.temp_K - chord_K - kept.temp_K) / dt);
        high = fmin(high, (p.temp_K + chord_K - kept.temp_K) / dt);
        before = p;
    }
    if (n == HS_BOX_POINTS) return n + 1;
    out[n++] = before;
    return n;
}

size_t hs_box_record_thin(hs_heat_point out[HS_BOX_POINTS], double *chord_K, const hs_box_record *r,
                          size_t first, size_t last) {
    size_t n = HS_BOX_POINTS + 1;
    for (*chord_K = CHORD_K; n > HS_BOX_POINTS; *chord_K *= 1.5) {
        n = thin(out, r, first, last, *chord_K);
        if (n <= HS_BOX_POINTS) break;
    }
    for (size_t i = n; i-- > 0;)
        out[i].time_s -= out[0].time_s;
    return n;
}
