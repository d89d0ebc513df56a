#include "hardskin/model/quench_material.h"

#include "model/polygon.h"

#include <math.h>

/* Distance from the nearest edge that carbon enters; INFINITY when there is none. */
static double loop_distance(const hs_outline *loop, const int *closed, hs_point p) {
    double least = INFINITY;
    for (size_t i = 0; i < loop->n; i++) {
        if (closed && closed[i]) continue;
        hs_point a = loop->point[i], b = hs_polygon_vertex(loop, i + 1);
        least = fmin(least, hs_polygon_point_gap(p, a, b));
    }
    return least;
}

/* `from` the centroid; a round is closed as a whole or open. */
static double distance(const hs_quench_mesh *mesh, const hs_section *section, hs_point centroid,
                       const int *closed, hs_point from) {
    if (mesh->radius_m > 0)
        return closed && closed[0] ? INFINITY : mesh->radius_m - hypot(from.x_m, from.y_m);
    hs_point p = {from.x_m + centroid.x_m, from.y_m + centroid.y_m};
    double least = loop_distance(&section->outline, closed, p);
    for (size_t h = 0; h < section->n_holes; h++)
        least = fmin(least, loop_distance(&section->holes[h], NULL, p));
    return least;
}

static hs_quench_point place_at(const hs_quench_layer *layer, double depth_m,
                                const hs_composition *steel) {
    size_t last = layer->n - 1, i = 0;
    while (i < last && layer->depth_m[i + 1] <= depth_m)
        i++;
    double share = 0;
    if (i < last)
        share = fmax(0, depth_m - layer->depth_m[i]) / (layer->depth_m[i + 1] - layer->depth_m[i]);
    size_t next = i < last ? i + 1 : i;
    const double *c = layer->dissolved_pct, *m = layer->share;
    return hs_quench_point_of(steel, c[i] + share * (c[next] - c[i]),
                              m[i] + share * (m[next] - m[i]));
}

/* A node stands for the metal around it: the mean of the fibres that are read from it, each by its
 * weight there. So the heat of what changes in a thin case is all there on wide cells. */
static void mean_of_fibres(hs_quench_point *node, const hs_quench_point *fibre,
                           const hs_quench_mesh *mesh, const hs_composition *steel) {
    for (size_t i = 0; i < mesh->nodes; i++)
        node[i] = (hs_quench_point){0}; /* strength_Pa holds the area */
    for (size_t f = 0; f < mesh->fibres; f++)
        for (int k = 0; k < 4; k++) {
            const hs_quench_fibre *at = &mesh->fibre[f];
            hs_quench_point *n = &node[mesh->cell[at->cell].node[k]];
            double area_m2 = at->area_m2 * fmax(0, at->weight[k]);
            n->strength_Pa += area_m2;
            n->carbon_pct += area_m2 * fibre[f].carbon_pct;
            n->share += area_m2 * fibre[f].share;
            n->ms_K += area_m2 * fibre[f].share * fibre[f].ms_K;
        }
    for (size_t i = 0; i < mesh->nodes; i++) {
        hs_quench_point sum = node[i];
        if (!(sum.strength_Pa > 0)) continue;
        node[i] = hs_quench_point_of(steel, sum.carbon_pct / sum.strength_Pa,
                                     sum.share / sum.strength_Pa);
        if (sum.share > 0) node[i].ms_K = sum.ms_K / sum.share;
    }
}

void hs_quench_places(hs_quench_point *node, hs_quench_point *fibre, const hs_quench_mesh *mesh,
                      const hs_section *section, const int *closed, const hs_quench_layer *layer,
                      const hs_composition *steel) {
    hs_section_properties p;
    if (hs_section_measure(&p, section, NULL) != HS_OK) return;
    hs_point centroid = {p.x_m, p.y_m};
    for (size_t i = 0; i < mesh->fibres; i++) {
        hs_point at = {mesh->fibre[i].x_m, mesh->fibre[i].y_m};
        fibre[i] = place_at(layer, distance(mesh, section, centroid, closed, at), steel);
    }
    mean_of_fibres(node, fibre, mesh, steel);
    for (size_t i = 0; i < mesh->nodes; i++)
        if (node[i].alpha_1_K <= 0) /* no fibre is read from it */
            node[i] =
                place_at(layer, distance(mesh, section, centroid, closed, mesh->node[i]), steel);
}
