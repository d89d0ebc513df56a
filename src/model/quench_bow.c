#include "hardskin/model/quench_bow.h"

#include "constants.h"

#include <math.h>
#include <string.h>

/* Cells across the section's least thickness, by the strongest film of the medium: a gentle one
 * leaves the section nearly even (and many small cells would take a march of hours very many
 * steps), a fierce one makes gradients that six cells miss by a third of the bow. */
static const double CELLS_GENTLE = 3, CELLS_USUAL = 6, CELLS_FIERCE = 9;
static const double COARSE_SPACING = 1.6;
static const double GENTLE_W_M2K = 300, FIERCE_W_M2K = 7000;
/* A section whose second moments differ by less than this share has no axes of its own: first_rad.
 */
static const double ALIKE = 1e-6;
static const double PI = 3.14159265358979323846;

static void set_axes(hs_bow_surface *s, double first_rad) {
    const hs_section_properties *p = &s->section;
    double a = p->I1_m4 - p->I2_m4 > ALIKE * p->I1_m4 ? p->axis1_rad : first_rad;
    a += PI / 2 * round((first_rad - a) / (PI / 2));
    for (int k = 0; k < HS_BOW_SIDES; k++) {
        double turn = a + PI / 2 * (k / 2) + PI * (k % 2); /* +1, -1, +2, -2 */
        s->axis_x[k] = cos(turn);
        s->axis_y[k] = sin(turn);
    }
}

static double cells_across(const hs_curve *film) {
    double most = 0;
    for (size_t i = 0; i < film->n; i++)
        most = fmax(most, film->value[i]);
    return most < GENTLE_W_M2K ? CELLS_GENTLE : most > FIERCE_W_M2K ? CELLS_FIERCE : CELLS_USUAL;
}

/* Walls are about twice the cooling size thick. */
static double usual_spacing(const hs_section_properties *p, const hs_section *section,
                            const hs_curve *film) {
    double least = 2 * p->cooling_size_m, wall_m;
    for (size_t edge = 1; edge <= section->outline.n; edge++)
        if (hs_section_wall(&wall_m, section, edge, NULL) == HS_OK)
            least = fmin(least, fmax(wall_m, 0.5 * p->cooling_size_m));
    return 1.000001 * least / cells_across(film);
}

/* Coarser until it fits. */
static hs_status make_mesh(hs_quench_mesh *mesh, const hs_bow_question *q,
                           const hs_section_properties *p, const hs_curve *film, hs_error *err) {
    double spacing_m = q->spacing_m > 0 ? q->spacing_m : usual_spacing(p, q->section, film);
    if (q->coarse) spacing_m *= COARSE_SPACING;
    hs_status status = HS_E_TOO_LARGE;
    for (int k = 0; k < 12 && status == HS_E_TOO_LARGE; k++) {
        status = hs_quench_mesh_make(mesh, q->section, spacing_m, q->case_m, err);
        if (q->spacing_m > 0) break;
        spacing_m *= 1.25;
    }
    return status;
}

static double doubt_share(const hs_section_properties *p) {
    double slender = sqrt(p->I2_m4 / p->I1_m4); /* 1 for a square, thin / wide for a flat */
    double wall = 2 * p->cooling_size_m / (2 * p->reach_m);
    if (slender > 0.6 && wall > 0.3) return HS_K_QUENCH_CHANGE_DOUBT_STOUT;
    return wall > 0.15 ? HS_K_QUENCH_CHANGE_DOUBT_FLAT : HS_K_QUENCH_CHANGE_DOUBT_THIN;
}

static void set_levels(hs_bow_surface *s, const hs_bow_question *q) {
    double step = log(HS_K_QUENCH_CHANGE_FILM_FACTOR);
    for (int f = 0; f < HS_BOW_FILMS; f++)
        s->film_log[f] = step * (f - 1);
    double low = q->plasticity_low_1_Pa, high = q->plasticity_high_1_Pa;
    s->plasticities = high > low ? q->coarse ? 3 : HS_BOW_PLASTICITIES : 1;
    for (size_t k = 0; k < s->plasticities; k++)
        s->plasticity_1_Pa[k] =
            low + (high - low) * (double)k / fmax(1, (double)s->plasticities - 1);
}

typedef struct runner {
    hs_bow_surface *s;
    const hs_bow_question *q;
    hs_bow_work *w;
    hs_quench_steel steel;
    hs_quench_case c;
} runner;

/* One quench; side -1: even. */
static hs_status run(double kappa[HS_BOW_PLASTICITIES][2], runner *r, int film, int side,
                     hs_error *err) {
    hs_quench_left left[HS_BOW_PLASTICITIES];
    r->c.bath.factor = exp(r->s->film_log[film]);
    r->c.bath.uneven = side < 0 ? 0 : r->q->uneven;
    r->c.bath.ax = side < 0 ? 0 : r->s->axis_x[side];
    r->c.bath.ay = side < 0 ? 0 : r->s->axis_y[side];
    /* the axes of a section that is its own mirror image are x and y; so is its mesh if upright */
    int upright = r->w->mesh.upright;
    r->c.fold_x = upright && r->q->mirror_x && fabs(r->c.bath.ax) < 0.5;
    r->c.fold_y = upright && r->q->mirror_y && fabs(r->c.bath.ay) < 0.5;
    hs_status status = hs_quench_run(left, NULL, &r->c, &r->w->work, NULL, NULL, err);
    if (status != HS_OK) return status;
    r->s->runs++;
    for (size_t k = 0; k < r->s->plasticities; k++) {
        kappa[k][0] = left[k].kappa_x_1_m;
        kappa[k][1] = left[k].kappa_y_1_m;
        r->s->peak_1_m = fmax(r->s->peak_1_m, left[k].peak_1_m);
    }
    int straight = r->q->mirror_x && r->q->mirror_y; /* no even run: to first order the same */
    if (film == 1 && side == (straight ? 0 : -1))
        r->s->surface_Pa = left[r->s->plasticities / 2].surface_Pa;
    return HS_OK;
}

/* Of a section alike both ways, x and y change places: a quarter turn of the first axis' runs. */
static int turned(const runner *r, int side) {
    return side >= 2 && r->q->alike && r->w->mesh.upright;
}

static void copy_turned(double (*out)[2], double (*first)[2], size_t n) {
    for (size_t k = 0; k < n; k++) {
        out[k][0] = first[k][1];
        out[k][1] = -first[k][0];
    }
}

/* Is this side the mirror image of the one before it? The axes of such a section are x and y. */
static int mirrored(const runner *r, int side) {
    int across_x = fabs(r->s->axis_x[side]) > 0.5;
    return side % 2 == 1 && (across_x ? r->q->mirror_x : r->q->mirror_y);
}

static hs_status run_side(runner *r, int side, int film, hs_error *err) {
    double(*out)[2] = r->s->side[side][film];
    size_t n = r->s->plasticities;
    if (!(r->q->uneven > 0)) return HS_OK; /* no side is cooled faster: zero as it stands */
    if (turned(r, side)) {
        copy_turned(out, r->s->side[side - 2][film], n);
        return HS_OK;
    }
    if (mirrored(r, side)) {
        int across_x = fabs(r->s->axis_x[side]) > 0.5;
        for (size_t k = 0; k < n; k++) {
            const double *other = r->s->side[side - 1][film][k];
            out[k][0] = across_x ? other[0] : -other[0];
            out[k][1] = across_x ? -other[1] : other[1];
        }
        return HS_OK;
    }
    hs_status status = run(out, r, film, side, err);
    for (size_t k = 0; k < n && status == HS_OK; k++)
        for (int i = 0; i < 2; i++)
            out[k][i] -= r->s->even[film][k][i];
    return status;
}

/* A section that is its own image both ways stays straight in an even quench. */
static hs_status run_even(runner *r, int film, hs_error *err) {
    int straight = r->q->mirror_x && r->q->mirror_y;
    for (size_t k = 0; k < r->s->plasticities; k++)
        r->s->even[film][k][0] = r->s->even[film][k][1] = 0;
    return straight ? HS_OK : run(r->s->even[film], r, film, -1, err);
}

static void as_middle_film(hs_bow_surface *s) {
    for (int film = 0; film < HS_BOW_FILMS; film += 2) {
        memcpy(s->even[film], s->even[1], sizeof s->even[1]);
        for (int side = 0; side < HS_BOW_SIDES; side++)
            memcpy(s->side[side][film], s->side[side][1], sizeof s->side[side][1]);
    }
}

hs_status hs_bow_surface_make(hs_bow_surface *s, const hs_bow_question *q, hs_bow_work *w,
                              hs_error *err) {
    runner r = {.s = s, .q = q, .w = w};
    if (!(q->uneven >= 0 && q->uneven < 2 && q->plasticity_low_1_Pa >= 0 &&
          q->plasticity_high_1_Pa >= q->plasticity_low_1_Pa))
        return hs_fail(err, HS_E_IMPOSSIBLE, "5 to 20 % is usual",
                       "an unevenness of %g between the sides", q->uneven);
    *s = (hs_bow_surface){.uneven = q->uneven};
    hs_status status = hs_section_measure(&s->section, q->section, err);
    if (status == HS_OK) status = hs_quench_film(&r.c.bath.film, q->medium, err);
    if (status == HS_OK) status = make_mesh(&w->mesh, q, &s->section, &r.c.bath.film, err);
    if (status != HS_OK) return status;
    hs_quench_places(w->node, w->fibre, &w->mesh, q->section, q->closed, q->layer, q->steel);
    hs_quench_steel_usual(&r.steel);
    set_axes(s, q->first_rad);
    set_levels(s, q);
    s->doubt_share = doubt_share(&s->section);
    s->soft = 1 - q->layer->share[q->layer->n - 1];
    r.c = (hs_quench_case){.mesh = &w->mesh,
                           .steel = &r.steel,
                           .node = w->node,
                           .fibre = w->fibre,
                           .bath = r.c.bath,
                           .start_K = q->start_K,
                           .n = s->plasticities};
    r.c.bath.bath_K = q->bath_K;
    r.c.bath.edge_factor = q->edge_factor;
    r.c.bath.hole_factor = HS_K_QUENCH_CHANGE_HOLE_FACTOR;
    for (size_t k = 0; k < s->plasticities; k++)
        r.c.plasticity_1_Pa[k] = s->plasticity_1_Pa[k];
    for (int film = 0; film < HS_BOW_FILMS && status == HS_OK; film++) {
        if (q->coarse && film != 1) continue;
        status = run_even(&r, film, err);
        for (int side = 0; side < HS_BOW_SIDES && status == HS_OK; side++)
            status = run_side(&r, side, film, err);
    }
    if (q->coarse) as_middle_film(s);
    return status;
}

/* Place between rising levels: index of the lower one and the share towards the next. */
static size_t between(double *share, const double *level, size_t n, double at) {
    size_t i = 0;
    *share = 0;
    if (n < 2) return 0;
    while (i + 2 < n && at > level[i + 1])
        i++;
    *share = fmin(1, fmax(0, (at - level[i]) / (level[i + 1] - level[i])));
    return i;
}

static double read(const double table[HS_BOW_FILMS][HS_BOW_PLASTICITIES][2], size_t f, double df,
                   size_t k, double dk, size_t last, int i) {
    size_t next = k < last ? k + 1 : k;
    double low = (1 - dk) * table[f][k][i] + dk * table[f][next][i];
    double high = (1 - dk) * table[f + 1][k][i] + dk * table[f + 1][next][i];
    return low + df * (high - low);
}

void hs_bow_surface_at(double *kappa_x, double *kappa_y, const hs_bow_surface *s, double uneven,
                       double direction, double film_log, double plasticity_1_Pa) {
    double df, dk, kappa[2];
    size_t f = between(&df, s->film_log, HS_BOW_FILMS, film_log);
    size_t k = between(&dk, s->plasticity_1_Pa, s->plasticities, plasticity_1_Pa);
    double part[2] = {uneven * cos(direction), uneven * sin(direction)};
    for (int i = 0; i < 2; i++) {
        kappa[i] = read(s->even, f, df, k, dk, s->plasticities - 1, i);
        for (int axis = 0; axis < 2; axis++) {
            int side = 2 * axis + (part[axis] < 0);
            kappa[i] +=
                fabs(part[axis]) * read(s->side[side], f, df, k, dk, s->plasticities - 1, i);
        }
    }
    *kappa_x = kappa[0];
    *kappa_y = kappa[1];
}
