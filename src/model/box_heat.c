#include "hardskin/model/box_heat.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;
static const double STEP_K = 1;        /* error a step may make */
static const double LONGEST_S = 1.8e6; /* 500 h: no box of at most 1 m takes that long */
static const double LEAST_SPEED = 0.1, MOST_SPEED = 10;

/* First zeros of cos, J0 and sin x/x: the slowest modes of slab, cylinder and sphere. Between them
 * the mode is taken as quadratic in the exponent (.2 % off the zeros of Bessel functions of broken
 * order). */
static double exponent_of(double mode) {
    const double slab = PI / 2, cylinder = 2.404825557695773, sphere = PI;
    double a = 0.5 * (slab - 2 * cylinder + sphere), b = cylinder - slab - a;
    double c = slab - mode;
    return fmax(0, (-b + sqrt(b * b - 4 * a * c)) / (2 * a));
}

void hs_box_body_of(hs_box_body *body, const hs_box_load *load) {
    double s[3] = {load->size_m[0], load->size_m[1], load->size_m[2]};
    hs_sort(s, 3);
    double flat = s[0] / s[1], flat2 = s[0] / s[2];
    double mode = PI / 2 * sqrt(1 + flat * flat + flat2 * flat2);
    double pile_m3 = fmax(load->pile_m3, load->steel_m3);
    double share = pile_m3 / (s[0] * s[1] * s[2]), exponent = exponent_of(mode);
    *body = (hs_box_body){.radius_m = 0.5 * s[0],
                          .core_m = 0.5 * s[0] * pow(share, 1 / (exponent + 1)),
                          .exponent = exponent,
                          .cells = HS_BOX_CELLS_USUAL};
}

hs_status hs_box_load_check(const hs_box_load *load, hs_error *err) {
    double volume_m3 = 1;
    for (int i = 0; i < 3; i++) {
        double size_m = load->size_m[i];
        if (!(size_m > 0))
            return hs_fail(err, HS_E_IMPOSSIBLE, "inner sizes above 0", "a box of %g mm",
                           1000 * size_m);
        volume_m3 *= size_m;
    }
    double least = fmin(load->size_m[0], fmin(load->size_m[1], load->size_m[2]));
    if (!(least <= HS_K_PACK_BOX_MOST && isfinite(volume_m3)))
        return hs_fail(err, HS_E_RANGE, "a box of at most 1 m",
                       "a box of %g mm: above 1 m its heating is not known", 1000 * least);
    if (!(load->steel_m3 >= 0 && load->steel_m3 <= HS_K_BOX_HEAT_STEEL_MOST * volume_m3))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a larger box: 25 mm of compound all round",
                       "%.3g L of steel in a box of %.3g L", 1000 * load->steel_m3,
                       1000 * volume_m3);
    if (!(load->pile_m3 <= HS_K_BOX_HEAT_PILE_MOST * volume_m3))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a larger box: 25 mm of compound all round",
                       "parts and the compound between them fill the box of %.3g L",
                       1000 * volume_m3);
    if (!(load->moisture >= 0 && load->moisture <= HS_K_PACK_MOISTURE_MOST))
        return hs_fail(err, HS_E_RANGE, "dry compound has about 5 %", "moisture of %g %%",
                       100 * load->moisture);
    if (load->speed >= LEAST_SPEED && load->speed <= MOST_SPEED) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "1", "a factor of %g on the conductivity", load->speed);
}

static hs_status check_fire(double temp_K, double hold_s, hs_error *err) {
    if (!(hold_s >= 0 && hold_s <= LONGEST_S))
        return hs_fail(err, HS_E_IMPOSSIBLE, "packs are held for 4 to 24 h",
                       "a hold of %g h: at most %g h are followed", hold_s / 3600,
                       LONGEST_S / 3600);
    if (temp_K >= HS_K_PACK_TEMP_LOW && temp_K <= HS_K_PACK_TEMP_HIGH) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "packs are carburised at 850 to 950 C",
                   "a pack at %.0f C is outside 750 to 1100 C",
                   temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
}

static hs_status note(hs_box_work *w, hs_error *err) {
    return hs_box_record_add(&w->record, w->march.time_s, hs_box_march_centre(&w->march),
                             hs_box_march_rate(&w->march), err);
}

static hs_status start(hs_box_work *w, const hs_box_load *load, double temp_K, hs_error *err) {
    hs_box_body body;
    hs_box_body_of(&body, load);
    double share = load->pile_m3 > load->steel_m3 ? load->steel_m3 / load->pile_m3 : 1;
    hs_matter_compound(&w->march.matter, HS_K_PACK_COMPOUND_DENSITY, load->moisture, load->speed,
                       share);
    hs_box_march_start(&w->march, &body, temp_K, STEP_K);
    w->record.n = 0;
    return note(w, err);
}

static hs_status march_to(hs_box_work *w, double end_s, hs_error *err) {
    while (w->march.time_s < end_s) {
        hs_status status = hs_box_march_step(&w->march, end_s, err);
        if (status == HS_OK) status = note(w, err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}

/* Until the part crosses a temperature, which goes to at_s. */
static hs_status march_until(double *at_s, hs_box_work *w, double temp_K, hs_error *err) {
    int rising = hs_box_march_centre(&w->march) < temp_K;
    while (w->march.time_s < LONGEST_S) {
        hs_status status = hs_box_march_step(&w->march, LONGEST_S, err);
        if (status == HS_OK) status = note(w, err);
        if (status != HS_OK) return status;
        double now_K = hs_box_march_centre(&w->march);
        if (rising ? now_K < temp_K : now_K > temp_K) continue;
        *at_s = hs_box_record_cross(&w->record, w->record.n - 2, temp_K);
        return HS_OK;
    }
    return hs_fail(err, HS_E_CONVERGE, "another size of box", "the box takes more than 500 h");
}

static hs_box_wall wall_of(double temp_K, double cooling) {
    return (hs_box_wall){.start_K = HS_K_BOX_HEAT_AMBIENT,
                         .fire_K = temp_K,
                         .rise_s = HS_K_BOX_HEAT_RISE_TIME,
                         .off_s = INFINITY,
                         .ambient_K = HS_K_BOX_HEAT_AMBIENT,
                         .cooling_s = HS_K_BOX_HEAT_COOLING_TIME * cooling};
}

static double red_s(double temp_K) {
    return HS_K_BOX_HEAT_RISE_TIME * (HS_K_BOX_HEAT_RED - HS_K_BOX_HEAT_AMBIENT) /
           (temp_K - HS_K_BOX_HEAT_AMBIENT);
}

/* From the fire being off: on until the part is cold, or has no farther to go. */
static hs_status cool_down(hs_box_path *path, hs_box_work *w, double to_K, hs_error *err) {
    size_t first = w->record.n - 1;
    double cold_s = 0, chord_K;
    hs_status status = march_until(&cold_s, w, to_K, err);
    if (status != HS_OK) return status;
    /* The last step went past the end: it ends at the crossing. */
    size_t last = w->record.n - 1;
    w->record.temp_K[last] = to_K;
    w->record.time_s[last] = cold_s;
    path->cool_n = hs_box_record_thin(path->cool, &chord_K, &w->record, first, last);
    path->chord_K = fmax(path->chord_K, chord_K);
    return HS_OK;
}

/* Up to heat; the fire is on. */
static hs_status heat_through(hs_box_path *path, const hs_box_load *load, double temp_K,
                              hs_box_work *w, hs_error *err) {
    hs_status status = start(w, load, HS_K_BOX_HEAT_AMBIENT, err);
    if (status == HS_OK) status = march_to(w, HS_K_BOX_HEAT_RISE_TIME, err);
    if (status == HS_OK)
        status = march_until(&path->at_heat_s, w, temp_K - HS_K_BOX_HEAT_WITHIN, err);
    return status;
}

/* When the fire goes off; the part must have come to heat where the hold is not the fire's own. */
static hs_status read_off(hs_box_path *path, const hs_box_fire *fire, hs_error *err) {
    double from_s = fire->from == HS_COUNT_AT_HEAT   ? path->at_heat_s
                    : fire->from == HS_COUNT_BOX_RED ? path->red_s
                                                     : 0;
    path->off_s = from_s + fire->hold_s;
    if (!(path->off_s < path->at_heat_s)) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "a longer soak, or count it from \"at heat\"",
                   "the soak ends before the part is at heat (%.1f h after the box is red)",
                   (path->at_heat_s - path->red_s) / 3600);
}

static hs_status hold_and_cool(hs_box_path *path, const hs_box_fire *fire, hs_box_work *w,
                               hs_error *err) {
    /* The step that brought the part to heat may have gone past the end of a short hold. */
    path->off_s = fmax(path->off_s, w->march.time_s);
    hs_status status = march_to(w, path->off_s, err);
    if (status != HS_OK) return status;
    path->n = hs_box_record_thin(path->hot, &path->chord_K, &w->record, 0, w->record.n - 1);
    if (!(fire->cool_to_K > 0)) return HS_OK;
    if (hs_box_march_centre(&w->march) <= fire->cool_to_K) return HS_OK;
    w->march.wall.off_s = path->off_s;
    return cool_down(path, w, fire->cool_to_K, err);
}

static double first_crossing(const hs_box_record *r, double temp_K) {
    for (size_t i = 0; i + 1 < r->n; i++)
        if (r->temp_K[i] < temp_K && r->temp_K[i + 1] >= temp_K)
            return hs_box_record_cross(r, i, temp_K);
    return NAN;
}

hs_status hs_box_heat(hs_box_path *path, const hs_box_load *load, const hs_box_fire *fire,
                      hs_box_work *w, hs_error *err) {
    hs_status status = hs_box_load_check(load, err);
    if (status == HS_OK) status = check_fire(fire->temp_K, fire->hold_s, err);
    if (status != HS_OK) return status;
    hs_box_path p = {.red_s = red_s(fire->temp_K), .at_heat_s = NAN};
    w->march.wall = wall_of(fire->temp_K, fire->cooling);
    if (fire->from == HS_COUNT_FIRE_ON) {
        status = start(w, load, HS_K_BOX_HEAT_AMBIENT, err);
        if (status == HS_OK) status = march_to(w, fmin(HS_K_BOX_HEAT_RISE_TIME, fire->hold_s), err);
    } else {
        status = heat_through(&p, load, fire->temp_K, w, err);
    }
    if (status == HS_OK) status = read_off(&p, fire, err);
    if (status == HS_OK) status = hold_and_cool(&p, fire, w, err);
    if (status == HS_OK && fire->from == HS_COUNT_FIRE_ON)
        p.at_heat_s = first_crossing(&w->record, fire->temp_K - HS_K_BOX_HEAT_WITHIN);
    if (status != HS_OK) return status;
    p.balance_error = hs_box_march_balance(&w->march);
    *path = p;
    return HS_OK;
}

hs_status hs_box_cool(hs_box_path *path, const hs_box_load *load, double from_K, double cool_to_K,
                      double cooling, hs_box_work *w, hs_error *err) {
    hs_status status = hs_box_load_check(load, err);
    if (status == HS_OK) status = check_fire(from_K, 0, err);
    if (status != HS_OK) return status;
    hs_box_path p = {0};
    w->march.wall = wall_of(from_K, cooling);
    w->march.wall.rise_s = w->march.wall.off_s = 0;
    status = start(w, load, from_K, err);
    if (status == HS_OK && cool_to_K < from_K) status = cool_down(&p, w, cool_to_K, err);
    if (status != HS_OK) return status;
    p.balance_error = hs_box_march_balance(&w->march);
    *path = p;
    return HS_OK;
}

hs_status hs_box_heat_up(hs_box_lag *lag, const hs_box_load *load, double temp_K, hs_box_work *w,
                         hs_error *err) {
    hs_status status = hs_box_load_check(load, err);
    if (status == HS_OK) status = check_fire(temp_K, 0, err);
    const double doubt = HS_K_BOX_HEAT_DOUBT_FACTOR;
    const double speed[3] = {doubt, 1, 1 / doubt};
    double at_heat_s[3] = {0};
    for (int k = 0; k < 3 && status == HS_OK; k++) {
        hs_box_load one = *load;
        hs_box_path path = {0};
        one.speed *= speed[k];
        w->march.wall = wall_of(temp_K, 1);
        status = heat_through(&path, &one, temp_K, w, err);
        at_heat_s[k] = path.at_heat_s;
    }
    if (status != HS_OK) return status;
    double early_s = HS_K_BOX_HEAT_RISE_TIME * (1 - 1 / HS_K_BOX_HEAT_RISE_FACTOR);
    double late_s = HS_K_BOX_HEAT_RISE_TIME * (HS_K_BOX_HEAT_RISE_FACTOR - 1);
    lag->red_s = red_s(temp_K);
    lag->at_heat_s = at_heat_s[1];
    lag->low_s = at_heat_s[1] - hypot(at_heat_s[1] - at_heat_s[0], early_s);
    lag->high_s = at_heat_s[1] + hypot(at_heat_s[2] - at_heat_s[1], late_s);
    return HS_OK;
}
