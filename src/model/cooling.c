#include "hardskin/model/cooling.h"

#include "base/rkc.h"
#include "constants.h"

#include <math.h>

/* Nodes from the middle to the surface, and in a quarter of a square either way. */
enum { DEEP = 161, SQUARE = 61, MOST_STEPS = 200000 };
static const double TOLERANCE_K = 2e-3; /* of a step */

typedef struct body {
    const hs_cooling *c;
    size_t n;                          /* nodes on a line from the middle to the surface */
    double dx_m;                       /* between them */
    double wall[DEEP], per_heat[DEEP]; /* of a line: conductance outward (at the surface its area),
                                          1 over the heat of a node's volume */
} body;

static double into(const body *b, double surface_K) {
    return hs_curve_at(&b->c->film, surface_K) * (b->c->to_K - surface_K);
}

/* Plate and bar: volumes and walls per unit of length (and of width). */
static void set_line(body *b) {
    int bar = b->c->shape == HS_COOL_BAR;
    double k = b->c->conductivity_W_mK / b->dx_m;
    for (size_t i = 0; i < b->n; i++) {
        double out_m = (fmin((double)i + 0.5, (double)b->n - 1)) * b->dx_m;
        double in_m = i ? ((double)i - 0.5) * b->dx_m : 0;
        double volume = bar ? 0.5 * (out_m * out_m - in_m * in_m) : out_m - in_m;
        b->wall[i] = (bar ? out_m : 1) * (i + 1 < b->n ? k : 1);
        b->per_heat[i] = 1 / (b->c->heat_J_m3K * volume);
    }
}

static void line_rate(double *rate, const double *T, void *context) {
    const body *b = context;
    size_t last = b->n - 1;
    double flow = 0;
    for (size_t i = 0; i < last; i++) {
        double next = b->wall[i] * (T[i + 1] - T[i]);
        rate[i] = (next - flow) * b->per_heat[i];
        flow = next;
    }
    rate[last] = (b->wall[last] * into(b, T[last]) - flow) * b->per_heat[last];
}

/* A node at an edge of a quarter of a square; node 0 is its middle. */
static double edge_rate(const body *b, const double *T, size_t i, size_t j) {
    size_t n = b->n;
    double k = b->c->conductivity_W_mK / b->dx_m, heat = b->c->heat_J_m3K * b->dx_m;
    double wide = i == 0 || i + 1 == n ? 0.5 : 1, tall = j == 0 || j + 1 == n ? 0.5 : 1;
    double here = T[j * n + i], sum = 0;
    if (i > 0) sum += tall * k * (T[j * n + i - 1] - here);
    if (j > 0) sum += wide * k * (T[(j - 1) * n + i] - here);
    sum += tall * (i + 1 < n ? k * (T[j * n + i + 1] - here) : into(b, here));
    sum += wide * (j + 1 < n ? k * (T[(j + 1) * n + i] - here) : into(b, here));
    return sum / (heat * wide * tall);
}

static void square_rate(double *rate, const double *T, void *context) {
    const body *b = context;
    size_t n = b->n;
    double share = b->c->conductivity_W_mK / (b->c->heat_J_m3K * b->dx_m * b->dx_m);
    for (size_t j = 0; j < n; j++) {
        const double *row = T + j * n;
        int at_edge = j == 0 || j + 1 == n;
        for (size_t i = 0; at_edge && i < n; i++)
            rate[j * n + i] = edge_rate(b, T, i, j);
        if (at_edge) continue;
        rate[j * n] = edge_rate(b, T, 0, j);
        rate[j * n + n - 1] = edge_rate(b, T, n - 1, j);
        for (size_t i = 1; i + 1 < n; i++)
            rate[j * n + i] =
                share * (row[i - 1] + row[i + 1] + (row + n)[i] + (row - n)[i] - 4 * row[i]);
    }
}

/* Bound on the fastest rate: conduction between nodes, the film on the smallest volume. */
static double fastest(const body *b) {
    double film = 0;
    for (size_t i = 0; i < b->c->film.n; i++)
        film = fmax(film, b->c->film.value[i]);
    int square = b->c->shape == HS_COOL_SQUARE;
    double inside = (square ? 8 : 4) * b->c->conductivity_W_mK / (b->dx_m * b->dx_m);
    /* Twice the film: its slope adds to it where it falls with the surface. */
    double outside = (square ? 8 : 4) * film / b->dx_m;
    return (inside + outside) / b->c->heat_J_m3K;
}

static hs_status check(const hs_cooling *c, hs_error *err) {
    if (!(c->size_m > 0 && isfinite(c->size_m) && c->time_s >= 0 && isfinite(c->time_s)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a size above 0 and a time", "%g m cooled for %g s",
                       c->size_m, c->time_s);
    if (!(c->conductivity_W_mK > 0 && c->heat_J_m3K > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "28 W/mK and 4.7e6 J/m3K are usual for hot steel",
                       "conductivity %g W/mK, heat %g J/m3K", c->conductivity_W_mK, c->heat_J_m3K);
    if (!(c->from_K > 0 && c->to_K > 0 && c->film.n > 0 && c->film.n <= HS_CURVE_POINTS))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "no temperatures or no film");
    for (size_t i = 0; i < c->film.n; i++)
        if (!(c->film.value[i] >= 0))
            return hs_fail(err, HS_E_IMPOSSIBLE, "0 or above", "a film of %g W/m2K",
                           c->film.value[i]);
    return HS_OK;
}

static hs_status march(body *b, size_t n, hs_rate rate, hs_cooling_work *w, hs_error *err) {
    double t = 0, step = 1e-3 / fastest(b), bound = fastest(b);
    for (size_t k = 0; k < MOST_STEPS; k++) {
        if (t >= b->c->time_s) return HS_OK;
        double h = fmin(step, b->c->time_s - t), sum = 0;
        rate(w->stage, w->temp_K, b);
        size_t stages = hs_rkc_stages(&h, bound);
        hs_rkc_step(w->next_K, w->temp_K, n, h, stages, rate, b, w->stage);
        for (size_t i = 0; i < n; i++) {
            double miss = hs_rkc_error(w->next_K, w->temp_K, n, h, w->stage, i);
            sum += miss * miss;
        }
        double used = sqrt(sum / (double)n) / TOLERANCE_K;
        step = h * fmin(4, fmax(0.1, 0.8 / cbrt(fmax(used, 1e-6))));
        if (!(used <= 1)) continue;
        t = b->c->time_s - t - h > 1e-12 * b->c->time_s ? t + h : b->c->time_s;
        for (size_t i = 0; i < n; i++)
            w->temp_K[i] = w->next_K[i];
    }
    return hs_fail(err, HS_E_CONVERGE, "", "the cooling does not settle");
}

hs_status hs_cooling_run(double *centre_K, double *surface_K, const hs_cooling *c,
                         hs_cooling_work *w, hs_error *err) {
    hs_status status = check(c, err);
    if (status != HS_OK) return status;
    int square = c->shape == HS_COOL_SQUARE;
    body b = {.c = c, .n = square ? SQUARE : DEEP};
    b.dx_m = 0.5 * c->size_m / (double)(b.n - 1);
    if (!square) set_line(&b);
    size_t n = square ? b.n * b.n : b.n;
    for (size_t i = 0; i < n; i++)
        w->temp_K[i] = c->from_K;
    status = march(&b, n, square ? square_rate : line_rate, w, err);
    if (status != HS_OK) return status;
    *centre_K = w->temp_K[0];
    *surface_K = w->temp_K[b.n - 1];
    return HS_OK;
}

double hs_cooling_conductivity(void) {
    return HS_K_QUENCH_CHANGE_HOT_CONDUCTIVITY;
}

double hs_cooling_heat(void) {
    return HS_K_QUENCH_CHANGE_HOT_HEAT;
}
