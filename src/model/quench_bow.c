#include "hardskin/model/quench_bow.h"

#include "constants.h"
#include "model/quench_bow_mesh.h"

#include <math.h>
#include <string.h>

/* Of the fibres. Against 1 K, bows differ by .5 to 1 % of the peak (rms), at most by 3 %. */
static const double SUBSTEP_K = 10;
/* A section whose second moments differ by less than this share has no axes of its own: first_rad.
 */
static const double ALIKE = 1e-6;
static const double ALONG = 1e-9; /* an axis runs along x or y */
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

static double ramp(double at, double low, double high) {
    return fmin(1, fmax(0, (at - low) / (high - low)));
}

/* From thin walls over flats to squares and rounds, without a step. */
double hs_bow_doubt_share(const hs_section_properties *p) {
    double slender = sqrt(p->I2_m4 / p->I1_m4); /* 1 for a square, thin / wide for a flat */
    double wall = 2 * p->cooling_size_m / (2 * p->reach_m);
    double flat = ramp(wall, HS_K_QUENCH_CHANGE_WALL_THIN, HS_K_QUENCH_CHANGE_WALL_FLAT);
    double stout =
        fmin(ramp(wall, HS_K_QUENCH_CHANGE_WALL_FLAT, HS_K_QUENCH_CHANGE_WALL_STOUT),
             ramp(slender, HS_K_QUENCH_CHANGE_SLENDER_FLAT, HS_K_QUENCH_CHANGE_SLENDER_STOUT));
    return HS_K_QUENCH_CHANGE_DOUBT_THIN +
           flat * (HS_K_QUENCH_CHANGE_DOUBT_FLAT - HS_K_QUENCH_CHANGE_DOUBT_THIN) +
           stout * (HS_K_QUENCH_CHANGE_DOUBT_STOUT - HS_K_QUENCH_CHANGE_DOUBT_FLAT);
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

/* The bath and the halves of one quench; side -1: even. */
static void set_bath(runner *r, int film, int side) {
    r->c.bath.factor = exp(r->s->film_log[film]);
    r->c.bath.uneven = side < 0 ? 0 : r->q->uneven;
    r->c.bath.ax = side < 0 ? 0 : r->s->axis_x[side];
    r->c.bath.ay = side < 0 ? 0 : r->s->axis_y[side];
    int upright = r->w->mesh.upright;
    r->c.fold_x = upright && r->q->mirror_x && fabs(r->c.bath.ax) < ALONG;
    r->c.fold_y = upright && r->q->mirror_y && fabs(r->c.bath.ay) < ALONG;
}

/* At the outer films every other plasticity is run. Returns the step from one to the next. */
static size_t set_plasticities(runner *r, int film) {
    size_t all = r->s->plasticities, every = film != 1 && all == HS_BOW_PLASTICITIES ? 2 : 1;
    r->c.n = 0;
    for (size_t k = 0; k < all; k += every)
        r->c.plasticity_1_Pa[r->c.n++] = r->s->plasticity_1_Pa[k];
    return every;
}

/* What an outer film adds to the middle one, read between its plasticities. */
static void fill_between(double kappa[HS_BOW_PLASTICITIES][2], double *peak, const runner *r,
                         int side) {
    const hs_bow_surface *s = r->s;
    const double *middle_peak = side < 0 ? s->peak_even_1_m[1] : s->peak_side_1_m[1];
    for (size_t k = 1; k + 1 < s->plasticities; k += 2) {
        for (int i = 0; i < 2; i++) {
            double more = 0;
            for (size_t j = k - 1; j <= k + 1; j++) {
                double middle = s->even[1][j][i] + (side < 0 ? 0 : s->side[side][1][j][i]);
                more += j == k ? middle : 0.5 * (kappa[j][i] - middle);
            }
            kappa[k][i] = more;
        }
        double more = 0.5 * (peak[k - 1] - middle_peak[k - 1] + peak[k + 1] - middle_peak[k + 1]);
        peak[k] = fmax(0, middle_peak[k] + more);
    }
}

/* Of a section alike both ways, x and y change places: a quarter turn of the first axis' runs. */
static int turned(const runner *r, int side) {
    return side >= 2 && r->q->alike && r->w->mesh.upright;
}

/* The one with a side of the second axis cooled faster, along which a section bows most easily;
 * where no side is, the even one. */
static int is_traced(const runner *r, int film, int side) {
    int wanted = turned(r, 2) ? 0 : 2;
    return r->q->trace && film == 1 && side == (r->q->uneven > 0 ? wanted : -1);
}

/* One quench; side -1: even. */
static hs_status run(double kappa[HS_BOW_PLASTICITIES][2], runner *r, int film, int side,
                     hs_error *err) {
    hs_quench_left left[HS_BOW_PLASTICITIES];
    hs_bow_surface *s = r->s;
    double *peak = side < 0 ? s->peak_even_1_m[film] : s->peak_side_1_m[film];
    set_bath(r, film, side);
    size_t every = set_plasticities(r, film);
    hs_quench_tracer tracer;
    int traced = is_traced(r, film, side);
    if (traced) hs_quench_trace_start(&tracer, r->q->trace, &r->c);
    hs_status status = hs_quench_run(left, NULL, &r->c, &r->w->work,
                                     traced ? hs_quench_trace_watch : NULL, &tracer, err);
    if (status != HS_OK) return status;
    if (traced) hs_quench_trace_end(&tracer, &r->c, left, &r->w->work);
    s->runs++;
    for (size_t k = 0; k < r->c.n; k++) {
        kappa[k * every][0] = left[k].kappa_x_1_m;
        kappa[k * every][1] = left[k].kappa_y_1_m;
        peak[k * every] = fmax(peak[k * every], left[k].peak_1_m);
        s->peak_1_m = fmax(s->peak_1_m, left[k].peak_1_m);
    }
    if (every > 1) fill_between(kappa, peak, r, side);
    int straight = r->q->mirror_x && r->q->mirror_y; /* no even run: to first order the same */
    if (film == 1 && side == (straight && r->q->uneven > 0 ? 0 : -1))
        s->surface_Pa = left[s->plasticities / 2].surface_Pa;
    return HS_OK;
}

static void copy_turned(double (*out)[2], double (*first)[2], size_t n) {
    for (size_t k = 0; k < n; k++) {
        out[k][0] = first[k][1];
        out[k][1] = -first[k][0];
    }
}

/* Is this side the mirror image of the one before it (turned half way, where the section is its own
 * image both ways)? */
static int mirrored(const runner *r, int side) {
    int x = r->q->mirror_x, y = r->q->mirror_y;
    if (side % 2 == 0) return 0;
    return (x && y) || (x && fabs(r->s->axis_y[side]) < ALONG) ||
           (y && fabs(r->s->axis_x[side]) < ALONG);
}

static void copy_mirrored(double (*out)[2], double (*other)[2], const runner *r) {
    double keep_x = r->q->mirror_y ? -1 : 1, keep_y = r->q->mirror_x ? -1 : 1;
    for (size_t k = 0; k < r->s->plasticities; k++) {
        out[k][0] = keep_x * other[k][0];
        out[k][1] = keep_y * other[k][1];
    }
}

/* The opposite side at an outer film: what both have in common (of second order in the unevenness)
 * as at the middle film. */
static void as_opposite(hs_bow_surface *s, int side, int film) {
    for (size_t k = 0; k < s->plasticities; k++)
        for (int i = 0; i < 2; i++) {
            double common = s->side[side - 1][1][k][i] + s->side[side][1][k][i];
            s->side[side][film][k][i] = common - s->side[side - 1][film][k][i];
        }
}

/* A section that bends in an even quench as well: the film moves that, and what a faster side adds
 * is taken as at the middle film. */
static void as_middle_side(hs_bow_surface *s, int side, int film) {
    memcpy(s->side[side][film], s->side[side][1], sizeof s->side[side][1]);
    for (size_t k = 0; k < s->plasticities; k++) {
        double more = s->peak_side_1_m[1][k] - s->peak_even_1_m[1][k];
        s->peak_side_1_m[film][k] = s->peak_even_1_m[film][k] + fmax(0, more);
    }
}

/* Not a run: the outer films of such a section, but of a ring's wall, whose even bend does not
 * count. */
static int from_middle(const runner *r, int film) {
    static const double STRAIGHT = 1e-3; /* of the peak */
    double most = 0;
    for (size_t k = 0; k < r->s->plasticities; k++)
        most = fmax(most, hypot(r->s->even[1][k][0], r->s->even[1][k][1]));
    return film != 1 && most > STRAIGHT * r->s->peak_1_m && !r->q->second_only;
}

static hs_status run_side(runner *r, int side, int film, hs_error *err) {
    double(*out)[2] = r->s->side[side][film];
    size_t n = r->s->plasticities;
    if (!(r->q->uneven > 0)) return HS_OK; /* no side is cooled faster: zero as it stands */
    if (side < 2 && r->q->second_only) return HS_OK;
    if (turned(r, side)) {
        copy_turned(out, r->s->side[side - 2][film], n);
        return HS_OK;
    }
    if (mirrored(r, side)) {
        copy_mirrored(out, r->s->side[side - 1][film], r);
        return HS_OK;
    }
    if (from_middle(r, film)) {
        as_middle_side(r->s, side, film);
        return HS_OK;
    }
    if (side % 2 == 1 && film != 1) {
        as_opposite(r->s, side, film);
        return HS_OK;
    }
    hs_status status = run(out, r, film, side, err);
    for (size_t k = 0; k < n && status == HS_OK; k++)
        for (int i = 0; i < 2; i++)
            out[k][i] -= r->s->even[film][k][i];
    return status;
}

/* A section that is its own image both ways stays straight in an even quench: that is run for its
 * stress alone, where no side is cooled faster. */
static hs_status run_even(runner *r, int film, hs_error *err) {
    int straight = r->q->mirror_x && r->q->mirror_y, asked = film == 1 && !(r->q->uneven > 0);
    hs_status status = HS_OK;
    if (!straight || asked) status = run(r->s->even[film], r, film, -1, err);
    for (size_t k = 0; straight && k < r->s->plasticities; k++)
        r->s->even[film][k][0] = r->s->even[film][k][1] = 0;
    return status;
}

static void as_middle_film(hs_bow_surface *s) {
    for (int film = 0; film < HS_BOW_FILMS; film += 2) {
        memcpy(s->even[film], s->even[1], sizeof s->even[1]);
        memcpy(s->peak_even_1_m[film], s->peak_even_1_m[1], sizeof s->peak_even_1_m[1]);
        memcpy(s->peak_side_1_m[film], s->peak_side_1_m[1], sizeof s->peak_side_1_m[1]);
        for (int side = 0; side < HS_BOW_SIDES; side++)
            memcpy(s->side[side][film], s->side[side][1], sizeof s->side[side][1]);
    }
}

hs_status hs_bow_uneven_check(double uneven, hs_error *err) {
    if (uneven >= 0 && uneven < 2) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "5 to 20 % is usual",
                   "two sides differ by 0 to less than 200 %% of their mean, not by %g %%",
                   100 * uneven);
}

/* The section, the film and the mesh. */
static hs_status prepare(hs_section_properties *section, hs_curve *film, const hs_bow_question *q,
                         hs_bow_work *w, hs_error *err) {
    hs_status status = hs_bow_uneven_check(q->uneven, err);
    if (status != HS_OK) return status;
    if (!(q->plasticity_low_1_Pa >= 0 && q->plasticity_high_1_Pa >= q->plasticity_low_1_Pa))
        return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 1.2e-4 1/MPa", "no range of plasticity");
    status = hs_section_measure(section, q->section, err);
    if (status == HS_OK) status = hs_quench_film(film, q->medium, err);
    return status == HS_OK ? hs_bow_mesh_make(&w->mesh, q, section, film, err) : status;
}

hs_status hs_bow_check(const hs_bow_question *q, hs_bow_work *w, hs_error *err) {
    hs_section_properties section;
    hs_curve film;
    return prepare(&section, &film, q, w, err);
}

hs_status hs_bow_surface_make(hs_bow_surface *s, const hs_bow_question *q, hs_bow_work *w,
                              hs_error *err) {
    runner r = {.s = s, .q = q, .w = w};
    *s = (hs_bow_surface){.uneven = q->uneven};
    if (q->trace) *q->trace = (hs_quench_trace){0};
    hs_status status = prepare(&s->section, &r.c.bath.film, q, w, err);
    if (status != HS_OK) return status;
    hs_quench_places(w->node, w->fibre, &w->mesh, q->section, q->closed, q->layer, q->steel);
    hs_quench_steel_usual(&r.steel);
    set_axes(s, q->first_rad);
    set_levels(s, q);
    s->doubt_share = hs_bow_doubt_share(&s->section);
    s->soft = 1 - q->layer->share[q->layer->n - 1];
    r.c = (hs_quench_case){.mesh = &w->mesh,
                           .steel = &r.steel,
                           .node = w->node,
                           .fibre = w->fibre,
                           .bath = r.c.bath,
                           .start_K = q->start_K,
                           .substep_K = q->substep_K > 0 ? q->substep_K : SUBSTEP_K};
    r.c.bath.bath_K = q->bath_K;
    r.c.bath.edge_factor = q->edge_factor;
    r.c.bath.hole_factor = HS_K_QUENCH_CHANGE_HOLE_FACTOR;
    static const int middle_first[HS_BOW_FILMS] = {1, 0, 2};
    for (int i = 0; i < (q->coarse ? 1 : HS_BOW_FILMS) && status == HS_OK; i++) {
        int film = middle_first[i];
        status = run_even(&r, film, err);
        for (int side = 0; side < HS_BOW_SIDES && status == HS_OK; side++)
            status = run_side(&r, side, film, err);
    }
    if (q->coarse) as_middle_film(s);
    return status;
}
