#include "model/quench_clip.h"

#include <math.h>

/* Signed distance inside the limit: side -1 keeps what lies above it, +1 what lies below. */
static double inside(hs_point p, int coordinate, double limit, int side) {
    double value = coordinate ? p.y_m : p.x_m;
    return side * (limit - value);
}

static hs_point crossing(hs_point p, hs_point q, double dp, double dq, int coordinate,
                         double limit) {
    double t = dp / (dp - dq);
    hs_point cut = {p.x_m + t * (q.x_m - p.x_m), p.y_m + t * (q.y_m - p.y_m)};
    if (coordinate)
        cut.y_m = limit;
    else
        cut.x_m = limit;
    return cut;
}

/* Sutherland and Hodgman, Comm. ACM 17 (1974) 32, one half-plane. */
static size_t cut_half(hs_point *out, const hs_point *in, size_t n, int coordinate, double limit,
                       int side) {
    size_t kept = 0;
    for (size_t i = 0; i < n; i++) {
        hs_point p = in[i], q = in[i + 1 < n ? i + 1 : 0];
        double dp = inside(p, coordinate, limit, side), dq = inside(q, coordinate, limit, side);
        if (kept + 2 > HS_CLIP_POINTS) return HS_CLIP_POINTS + 1;
        if (dp >= 0) out[kept++] = p;
        if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0))
            out[kept++] = crossing(p, q, dp, dq, coordinate, limit);
    }
    return kept;
}

int hs_clip_between(hs_clip *out, const hs_clip *in, int coordinate, double low, double high,
                    hs_clip_work *work) {
    size_t used = 0;
    out->loops = in->loops;
    for (size_t k = 0; k < in->loops; k++) {
        const hs_point *loop = &in->point[in->start[k]];
        size_t n = in->start[k + 1] - in->start[k];
        n = cut_half(work->a, loop, n, coordinate, low, -1);
        if (n <= HS_CLIP_POINTS) n = cut_half(work->b, work->a, n, coordinate, high, 1);
        if (n > HS_CLIP_POINTS || used + n > HS_CLIP_ALL) return 0;
        out->start[k] = used;
        for (size_t i = 0; i < n; i++)
            out->point[used++] = work->b[i];
    }
    out->start[in->loops] = used;
    return 1;
}

static hs_clip_moments measure_loop(const hs_point *p, size_t n, double x0, double y0, double dx,
                                    double dy) {
    hs_clip_moments m = {0};
    for (size_t i = 0; i < n; i++) {
        hs_point q = p[i + 1 < n ? i + 1 : 0];
        double a = (p[i].x_m - x0) / dx, b = (p[i].y_m - y0) / dy;
        double c = (q.x_m - x0) / dx, d = (q.y_m - y0) / dy, cross = a * d - c * b;
        m.A += cross / 2;
        m.x += cross * (a + c) / 6;
        m.y += cross * (b + d) / 6;
        m.xx += cross * (a * a + a * c + c * c) / 12;
        m.yy += cross * (b * b + b * d + d * d) / 12;
        m.xy += cross * (a * d + 2 * a * b + 2 * c * d + c * b) / 24;
    }
    return m;
}

hs_clip_moments hs_clip_measure(const hs_clip *clip, double x0, double y0, double dx, double dy) {
    hs_clip_moments sum = {0};
    for (size_t k = 0; k < clip->loops; k++) {
        size_t n = clip->start[k + 1] - clip->start[k];
        hs_clip_moments m = measure_loop(&clip->point[clip->start[k]], n, x0, y0, dx, dy);
        double sign = k ? -1 : 1;
        sum.A += sign * m.A;
        sum.x += sign * m.x;
        sum.y += sign * m.y;
        sum.xx += sign * m.xx;
        sum.yy += sign * m.yy;
        sum.xy += sign * m.xy;
    }
    return sum;
}
