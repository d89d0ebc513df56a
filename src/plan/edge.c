#include "plan/edge.h"

#include "constants.h"
#include "plan/axis.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979324;
static const double STRAIGHT = 1e-6; /* rad: an outline drawn straight on */

static const hs_face *face_on(const hs_job *job, size_t edge) {
    for (size_t i = 0; i < job->faces; i++)
        if (job->face[i].edge == edge) return &job->face[i];
    return NULL;
}

static int is(const hs_face *face, hs_finish finish) {
    return face && face->finish == finish;
}

/* One end of a face: the corners met on the way out, as far as they are felt. */
typedef struct end {
    double angle;  /* of the metal, all corners near counted as one */
    double corner; /* the first of them */
    size_t vertex;
    int masked, ground; /* the face beyond it */
} end;

static hs_status look_out(end *out, const hs_job *job, size_t edge, int forward, double near_m,
                          hs_error *err) {
    const hs_section *section = &job->part.section;
    size_t n = section->outline.n;
    double gone_m = 0;
    *out = (end){.angle = PI};
    for (size_t step = 1; step < n && gone_m < near_m; step++) {
        /* edge k runs from vertex k to k + 1, all counted from 1 */
        size_t now = (edge - 1 + (forward ? step : n - step)) % n + 1;
        size_t vertex = forward ? now : now % n + 1;
        double corner;
        hs_section_edge beyond;
        hs_status status = hs_section_corner(&corner, section, vertex, err);
        if (status == HS_OK) status = hs_section_edge_at(&beyond, section, now, err);
        if (status != HS_OK) return status;
        int masked = is(face_on(job, now), HS_SOFT);
        if (step == 1) {
            out->corner = corner;
            out->vertex = vertex;
            out->ground = is(face_on(job, now), HS_GROUND);
        }
        if (corner < PI - STRAIGHT && !(step == 1 && masked)) break; /* outer: it adds carbon */
        out->angle += corner - PI;
        out->masked = masked;
        if (masked) break;
        gone_m += beyond.length_m;
    }
    return HS_OK;
}

static double counted(const end *e) {
    return e->masked ? 2 * e->angle : e->angle;
}

static void take(hs_face_edge *out, const end *e) {
    out->angle_rad = counted(e);
    out->corner_rad = e->corner;
    out->corner = e->vertex;
    out->masked = e->masked;
    out->wheel_in_corner = e->ground && !e->masked && fabs(e->angle - e->corner) < STRAIGHT;
}

hs_status hs_face_edge_find(hs_face_edge *out, const hs_job *job, size_t face, double flat_m,
                            double lag, hs_error *err) {
    hs_face_edge found = {.lag = lag};
    size_t edge = job->face[face].edge;
    double near_m = HS_K_EDGE_CASE_LAND * flat_m;
    if (edge == 0) { /* plates, bars and rings have square outer edges: a mask makes them a flat */
        *out = found;
        return HS_OK;
    }
    end ends[2];
    hs_section_edge own;
    hs_status status = hs_section_edge_at(&own, &job->part.section, edge, err);
    for (int k = 0; k < 2 && status == HS_OK; k++)
        status = look_out(&ends[k], job, edge, k, near_m, err);
    if (status != HS_OK) return status;
    int lowers[2];
    for (int k = 0; k < 2; k++) {
        lowers[k] = counted(&ends[k]) > PI + STRAIGHT;
        if (!job->face[face].relieved || !lowers[k] || ends[k].masked) continue;
        found.relieved = 1;
        ends[k] = (end){.angle = PI};
        lowers[k] = 0;
    }
    if (lowers[0] || lowers[1]) take(&found, &ends[counted(&ends[1]) > counted(&ends[0])]);
    if (lowers[0] && lowers[1] && own.length_m < near_m) {
        /* As if the land had no width: one edge with the turns of both. */
        int masks = ends[0].masked + ends[1].masked;
        found.land = 1;
        found.wheel_in_corner = 0;
        found.angle_rad = (ends[0].angle + ends[1].angle - PI) * (masks ? 2 : 1);
        if (masks == 2 || found.angle_rad > 4 * PI) /* hardly a way in */
            return hs_fail(err, HS_E_RANGE, "mask less, or leave this face wider",
                           "face %s is a strip of %.1f mm between masks: no case can be told",
                           job->face[face].name, own.length_m * 1e3);
    }
    if (found.angle_rad > 0) status = hs_edge_make(&found.table, found.angle_rad, err);
    if (status == HS_OK) *out = found;
    return status;
}

static double level_at(const hs_face_edge *edge, double y) {
    return fmax(y, 0) / edge->lag;
}

double hs_face_edge_share(const hs_face_edge *edge, double y) {
    double most = edge->relieved ? 1 - HS_K_EDGE_CASE_FELT : 1;
    if (!(edge->angle_rad > 0)) return most;
    double level = level_at(edge, y);
    if (!(level < 1)) return 0;
    double share =
        edge->land ? hs_edge_inward(&edge->table, level) : hs_edge_below(&edge->table, level);
    return fmin(share, most);
}

double hs_face_edge_steep(const hs_face_edge *edge, double y) {
    double level = level_at(edge, y);
    if (!(edge->angle_rad > 0) || !edge->wheel_in_corner || !(level < 1)) return 1;
    return hs_edge_below(&edge->table, level) /
           (hs_edge_inward(&edge->table, level) * sin(0.5 * edge->corner_rad));
}

static double outer_of_outline(const hs_job *job) {
    double sharpest = INFINITY, corner;
    size_t n = job->part.section.outline.n;
    for (size_t v = 1; v <= n; v++) {
        const hs_face *one = face_on(job, v), *other = face_on(job, v == 1 ? n : v - 1);
        if (is(one, HS_SOFT) || is(other, HS_SOFT)) continue;
        if (!is(one, HS_GROUND) && !is(other, HS_GROUND)) continue;
        if (hs_section_corner(&corner, &job->part.section, v, NULL) != HS_OK) continue;
        if (corner < PI - STRAIGHT) sharpest = fmin(sharpest, corner);
    }
    return isfinite(sharpest) ? sharpest : 0;
}

double hs_outer_edge(const hs_job *job) {
    size_t ground = 0, open = 0;
    if (job->part.form == HS_PROFILE) return outer_of_outline(job);
    for (size_t i = 0; i < job->faces; i++) {
        ground += job->face[i].finish == HS_GROUND;
        open += job->face[i].finish != HS_SOFT;
    }
    return ground > 0 && open > 1 ? 0.5 * PI : 0;
}

static int meet(const hs_job *job, size_t i, size_t k) {
    size_t n = job->part.section.outline.n, a = job->face[i].edge, b = job->face[k].edge;
    if (a > 0 && b > 0) return a % n + 1 == b || b % n + 1 == a;
    return i != k && hs_face_behind(job, i) != k;
}

int hs_ground_faces_meet(const hs_job *job) {
    for (size_t i = 0; i < job->faces; i++)
        for (size_t k = 0; k < i; k++)
            if (is(&job->face[i], HS_GROUND) && is(&job->face[k], HS_GROUND) && meet(job, i, k))
                return 1;
    return 0;
}
