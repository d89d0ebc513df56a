/* Carbon in a wedge, from the face values it has at the start of an odd sine series in the angle;
 * each term spreads along the radius by a Kummer function. */
#include "hardskin/model/edge_case.h"

#include "base/num.h"

#include <math.h>

static const double PI = 3.14159265358979324;
static const double FARTHEST = 8; /* distance over 2 sqrt(D t): nothing has come there */
static const double LEVEL[HS_EDGE_LEVELS] = {.02, .05, .1, .2, .3,  .4, .5,
                                             .6,  .7,  .8, .9, .95, .98};
enum { LAST = HS_EDGE_LEVELS - 1, ORDER_MOST = 160 }; /* gamma of 161 is still a number */

/* Radial part of the term of order v at s = r^2/(4 D t): 0 at the edge, 1 far away. Kummer's
 * transformation keeps every term of M positive. */
static double radial(double v, double s) {
    double term = exp(-s), sum = term;
    for (int k = 0; k < 1000 && (term > 1e-17 * sum || k < s); k++) {
        term *= (0.5 * v + 1 + k) / (v + 1 + k) * s / (k + 1);
        sum += term;
    }
    return tgamma(0.5 * v + 1) / tgamma(v + 1) * pow(s, 0.5 * v) * sum;
}

/* 1 - y. */
static double lack(double angle, double direction, double distance) {
    double s = distance * distance, sum = 0;
    if (!(s > 0)) return 0;
    for (int n = 1; n * PI / angle <= ORDER_MOST; n += 2) {
        double v = n * PI / angle, term = radial(v, s) / n;
        sum += term * sin(v * direction);
        if (term < 1e-14) break;
    }
    return 4 / PI * sum;
}

static hs_status check_angle(double angle, hs_error *err) {
    const double noise = 1e-9;
    if (angle >= PI / 6 - noise && angle <= 4 * PI + noise) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "30 degrees to two turns", "no edge case at %.4g degrees",
                   angle * 180 / PI);
}

hs_status hs_edge_carbon(double *y, double angle_rad, double direction_rad, double distance,
                         hs_error *err) {
    hs_status status = check_angle(angle_rad, err);
    if (status != HS_OK) return status;
    if (!(direction_rad >= 0 && direction_rad <= angle_rad))
        return hs_fail(err, HS_E_RANGE, "a direction between the two faces",
                       "%.4g degrees points out of the metal", direction_rad * 180 / PI);
    if (!(distance >= 0 && distance <= FARTHEST))
        return hs_fail(err, HS_E_RANGE, "0 to 8", "%g times 2 sqrt(D t) from the edge", distance);
    *y = 1 - lack(angle_rad, direction_rad, distance);
    return HS_OK;
}

/* A line of search: from a point of the face, `along` from the edge, down the normal; or from the
 * edge in a direction. */
typedef struct search {
    double angle, direction, depth, wanted;
} search;

static double miss_on_ray(double distance, const void *context) {
    const search *at = context;
    return lack(at->angle, at->direction, distance) - at->wanted;
}

static double miss_on_face(double along, const void *context) {
    const search *at = context;
    return lack(at->angle, atan2(at->depth, along), hypot(at->depth, along)) - at->wanted;
}

/* Distance from the edge, over 2 sqrt(D t), at which level y stands in a direction. */
static hs_status ray(double *distance, double angle, double direction, double y) {
    search at = {.angle = angle, .direction = direction, .wanted = 1 - y};
    return hs_root(distance, miss_on_ray, &at, 0, FARTHEST, 1e-10);
}

hs_status hs_edge_make(hs_edge *edge, double angle_rad, hs_error *err) {
    hs_edge e = {.angle_rad = angle_rad};
    hs_status status = check_angle(angle_rad, err);
    if (status != HS_OK) return status;
    for (int i = 0; i < HS_EDGE_LEVELS; i++) {
        double flat = NAN, below = INFINITY, inward = NAN;
        status = ray(&flat, PI, PI / 2, LEVEL[i]);
        if (status == HS_OK) status = ray(&inward, angle_rad, angle_rad / 2, LEVEL[i]);
        if (status == HS_OK && angle_rad >= PI) status = ray(&below, angle_rad, PI / 2, LEVEL[i]);
        if (status != HS_OK)
            return hs_fail(err, status, "", "no edge case at %.4g degrees", angle_rad * 180 / PI);
        e.below[i] = below / flat;
        e.inward[i] = inward / flat;
    }
    *edge = e;
    return HS_OK;
}

static double share_at(const hs_edge *edge, const double share[HS_EDGE_LEVELS], double y) {
    if (edge->angle_rad < PI) return hs_interpolate(LEVEL, share, HS_EDGE_LEVELS, y);
    if (!(y >= 0 && y <= 1)) return NAN;
    if (y <= LEVEL[0]) return share[0];
    if (y >= LEVEL[LAST]) return share[LAST] * (1 - y) / (1 - LEVEL[LAST]);
    return hs_interpolate(LEVEL, share, HS_EDGE_LEVELS, y);
}

double hs_edge_below(const hs_edge *edge, double y) {
    return share_at(edge, edge->below, y);
}

double hs_edge_inward(const hs_edge *edge, double y) {
    return share_at(edge, edge->inward, y);
}

hs_status hs_edge_along(double *along, double angle_rad, double y, double share, hs_error *err) {
    hs_status status = check_angle(angle_rad, err);
    if (status != HS_OK) return status;
    if (!(y >= LEVEL[0] && y <= LEVEL[LAST] && share >= 0.01 && share <= 0.5))
        return hs_fail(err, HS_E_RANGE, "level .02 to .98, share .01 to .5",
                       "no reach of an edge at level %g to a share of %g", y, share);
    double flat, found = 0, sign = angle_rad < PI ? 1 : -1;
    status = ray(&flat, PI, PI / 2, y);
    search at = {.angle = angle_rad, .depth = flat * (1 + sign * share), .wanted = 1 - y};
    /* On the rim of a keen edge the other face stands at that depth. */
    double rim = angle_rad < PI / 2 ? at.depth / tan(angle_rad) : 0;
    if (status == HS_OK && sign * miss_on_face(rim, &at) < 0)
        status = hs_root(&found, miss_on_face, &at, rim, FARTHEST / 2, 1e-9);
    if (status != HS_OK)
        return hs_fail(err, status, "", "no reach of an edge of %.4g degrees",
                       angle_rad * 180 / PI);
    *along = found / flat;
    return HS_OK;
}
