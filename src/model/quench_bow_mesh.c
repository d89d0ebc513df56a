#include "model/quench_bow_mesh.h"

#include <math.h>

/* A gentle film leaves the section nearly even (and small cells would take a march of hours very
 * many steps): few cells will do. A fierce one makes its gradients in the skin: there the first
 * cell is this share of conductivity over film, each further one twice as thick. */
static const double GENTLE_W_M2K = 300, FIERCE_W_M2K = 7000;
static const double CELLS_GENTLE = 3, CELLS_USUAL = 3.5, CELLS_FIERCE = 3.5; /* across a wall */
static const double SKIN = 0.35, HOT_W_MK = 28;
static const double COARSE = 1 / 1.6;
/* Where the film is not gentle. */
static const double ROUND_FINER = 2; /* cheap there, and the doubt is small */
/* Without a case there are few fibres; and plasticity may be none, which shows each of them. */
static const double PLAIN_FINER = 1.3;
/* A case on one side bends by itself. With a soft core, K 3e-5 per MPa, a flat of 20 mm then came
 * out .5 mm over 300 more hollow than finite volumes of our own (-.55 mm); finer by this, .2. */
static const double ONE_SIDED_FINER = 2;
static const double CASE_IN_SKIN = 1; /* so many total cases in the first cell at most */
/* Heat crosses cells below sqrt(conductivity * cooling size / film) faster by the square of that
 * ratio than the section cools. Below these shares of it a cell is even all the time, and only
 * costs steps: of the cells in general (but one to a wall), of the first one. */
static const double EVEN_CELL = 0.1, EVEN_SKIN = 1.0 / 30;

static double most_of(const hs_curve *film) {
    double most = 0;
    for (size_t i = 0; i < film->n; i++)
        most = fmax(most, film->value[i]);
    return most;
}

/* Walls are about twice the cooling size thick. */
static double least_wall(const hs_section_properties *p, const hs_section *section) {
    double least = 2 * p->cooling_size_m, wall_m;
    for (size_t edge = 1; edge <= section->outline.n; edge++)
        if (hs_section_wall(&wall_m, section, edge, NULL) == HS_OK)
            least = fmin(least, fmax(wall_m, 0.5 * p->cooling_size_m));
    return least;
}

static int one_sided(const hs_bow_question *q) {
    size_t soft = 0, edges = q->section->outline.n;
    for (size_t i = 0; q->closed && i < edges; i++)
        soft += q->closed[i] != 0;
    return q->case_m > 0 && soft > 0 && soft < edges && !(q->mirror_x && q->mirror_y);
}

static double finer_by(const hs_bow_question *q, double most_W_m2K) {
    double finer = (q->cells > 0 ? q->cells : 1) * (q->coarse ? COARSE : 1);
    if (most_W_m2K < GENTLE_W_M2K) return finer;
    if (q->diameter_m > 0) finer *= ROUND_FINER;
    if (one_sided(q)) finer *= ONE_SIDED_FINER;
    return q->case_m > 0 ? finer : finer * PLAIN_FINER;
}

hs_status hs_bow_mesh_make(hs_quench_mesh *mesh, const hs_bow_question *q,
                           const hs_section_properties *p, const hs_curve *film, hs_error *err) {
    double most = most_of(film), finer = finer_by(q, most);
    double across = most < GENTLE_W_M2K   ? CELLS_GENTLE
                    : most > FIERCE_W_M2K ? CELLS_FIERCE
                                          : CELLS_USUAL;
    double wall_m = q->diameter_m > 0 ? 0.5 * q->diameter_m : least_wall(p, q->section);
    double even_m = sqrt(HOT_W_MK * p->cooling_size_m / most) / (q->cells > 0 ? q->cells : 1);
    double spacing_m = 1.000001 * fmax(wall_m / across / finer, fmin(EVEN_CELL * even_m, wall_m));
    double skin_m = SKIN * HOT_W_MK / most / finer;
    if (q->case_m > 0) skin_m = fmin(skin_m, CASE_IN_SKIN * q->case_m);
    skin_m = fmax(skin_m, EVEN_SKIN * even_m);
    hs_status status = HS_E_TOO_LARGE;
    for (int k = 0; k < 12 && status == HS_E_TOO_LARGE; k++) {
        status = q->diameter_m > 0
                     ? hs_quench_mesh_round(mesh, q->diameter_m, spacing_m, skin_m, q->case_m, err)
                     : hs_quench_mesh_make(mesh, q->section, spacing_m, skin_m, q->case_m, err);
        spacing_m *= 1.25;
        skin_m *= 1.25;
    }
    return status;
}
