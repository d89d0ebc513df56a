/* The section as the heat sees it: where its other half is its mirror image, one half alone. */
#include "model/quench_steps.h"

#include <math.h>
#include <string.h>

/* Share of what lies at a distance from a mirror that counts: half on it, nothing behind it. */
static double kept(int fold, double at_m, double small_m) {
    if (!fold) return 1;
    return fabs(at_m) <= small_m ? 0.5 : at_m > 0;
}

/* The mesh's node at a point; its count of nodes where there is none. */
static size_t node_near(const hs_quench_mesh *mesh, double x_m, double y_m, double small_m) {
    size_t i = 0;
    while (i < mesh->nodes &&
           !(fabs(mesh->node[i].x_m - x_m) <= small_m && fabs(mesh->node[i].y_m - y_m) <= small_m))
        i++;
    return i;
}

/* Nodes before the mirrors keep their order; those behind are their images'. 0: one has none. */
static int number(hs_quench_net *net, const hs_quench_case *c, double small_m) {
    const hs_quench_mesh *mesh = c->mesh;
    net->nodes = 0;
    for (size_t i = 0; i < mesh->nodes; i++) {
        double share = kept(c->fold_x, mesh->node[i].x_m, small_m) *
                       kept(c->fold_y, mesh->node[i].y_m, small_m);
        if (!(share > 0)) continue;
        net->area_m2[net->nodes] = share * mesh->node_area_m2[i];
        net->mesh_node[net->nodes] = (unsigned short)i;
        net->node_of[i] = (unsigned short)net->nodes++;
    }
    for (size_t i = 0; i < mesh->nodes; i++) {
        double x_m = mesh->node[i].x_m, y_m = mesh->node[i].y_m;
        int behind_x = c->fold_x && x_m < -small_m, behind_y = c->fold_y && y_m < -small_m;
        if (!behind_x && !behind_y) continue;
        size_t image = node_near(mesh, behind_x ? -x_m : x_m, behind_y ? -y_m : y_m, 2 * small_m);
        if (image == mesh->nodes) return 0;
        net->node_of[i] = net->node_of[image];
    }
    return 1;
}

static double share_of(const hs_quench_cell *cell, const hs_quench_case *c, double small_m) {
    double x_m = 0, y_m = 0;
    for (int i = 0; i < 4; i++) {
        x_m += 0.25 * c->mesh->node[cell->node[i]].x_m;
        y_m += 0.25 * c->mesh->node[cell->node[i]].y_m;
    }
    return kept(c->fold_x, x_m, small_m) * kept(c->fold_y, y_m, small_m);
}

static double film_factor(const hs_quench_bath *b, const hs_quench_segment *seg) {
    if (seg->edge == 0) return b->factor * b->hole_factor;
    double own = b->edge_factor ? b->edge_factor[seg->edge - 1] : 1;
    return b->factor * own * (1 + 0.5 * b->uneven * (seg->nx * b->ax + seg->ny * b->ay));
}

static void take_cells(hs_quench_net *net, const hs_quench_case *c, double small_m) {
    const hs_quench_mesh *mesh = c->mesh;
    net->cells = 0;
    for (size_t k = 0; k < mesh->cells; k++) {
        const hs_quench_cell *cell = &mesh->cell[k];
        double share = share_of(cell, c, small_m);
        if (!(share > 0)) continue;
        hs_quench_net_cell *out = &net->cell[net->cells++];
        out->thin_m = cell->thin_m;
        for (int i = 0; i < 4; i++)
            out->node[i] = net->node_of[cell->node[i]];
        for (int i = 0; i < 6; i++)
            out->link[i] = share * cell->link[i];
    }
}

static void take_segments(hs_quench_net *net, const hs_quench_case *c, double small_m) {
    const hs_quench_mesh *mesh = c->mesh;
    net->segments = 0;
    for (size_t k = 0; k < mesh->segments; k++) {
        const hs_quench_segment *seg = &mesh->segment[k];
        const hs_quench_cell *cell = &mesh->cell[seg->cell];
        double share = share_of(cell, c, small_m);
        if (!(share > 0)) continue;
        hs_quench_net_film *out = &net->film[net->segments++];
        memcpy(out->weight, seg->weight, sizeof out->weight);
        for (int i = 0; i < 4; i++)
            out->node[i] = net->node_of[cell->node[i]];
        out->width_m = 0.5 * share * seg->length_m * film_factor(&c->bath, seg);
    }
}

void hs_quench_net_make(hs_quench_net *net, const hs_quench_case *c) {
    double small_m = 1e-6 * c->mesh->spacing_m;
    hs_quench_case whole = *c;
    whole.fold_x = whole.fold_y = 0;
    const hs_quench_case *as = number(net, c, small_m) ? c : &whole;
    if (as == &whole) (void)number(net, as, small_m);
    take_cells(net, as, small_m);
    take_segments(net, as, small_m);
}
