#include "plan/packed.h"

#include "base/num.h"
#include "constants.h"
#include "hardskin/model/carbon.h"
#include "plan/cool.h"
#include "plan/draw.h"
#include "plan/place.h"
#include "plan/warp_frame.h"

#include <math.h>

void hs_packed_part_sizes(double size_m[3], const hs_part *part) {
    size_m[2] = part->length_m;
    switch (part->form) {
    case HS_PLATE:
        size_m[0] = part->thickness_m, size_m[1] = part->width_m;
        break;
    case HS_BAR:
        size_m[0] = size_m[1] = part->diameter_m;
        break;
    case HS_RING:
        size_m[0] = size_m[1] = part->outside_m;
        break;
    case HS_PROFILE:
        size_m[0] = hs_warp_extent(&part->section.outline, 1, 0);
        size_m[1] = hs_warp_extent(&part->section.outline, 0, 1);
        break;
    }
    hs_sort(size_m, 3);
}

/* Parts with the compound between them, as far as the box has room for it inside its cover. */
static double pile_m3(const hs_box_load *load, const double part_m[3], size_t parts) {
    double pile = (double)parts, room = 1;
    for (int k = 0; k < 3; k++) {
        pile *= part_m[k] + HS_K_BOX_HEAT_BETWEEN;
        room *= fmax(0, load->size_m[k] - 2 * HS_K_PACK_COVER_LEAST);
    }
    return fmin(pile, room);
}

void hs_packed_load(hs_box_load *load, const hs_job *job, double box_m) {
    double part_m[3];
    hs_packed_part_sizes(part_m, &job->part);
    double steel_m3 = (double)job->part.quantity * hs_bulk_of(&job->part).volume_m3;
    *load = (hs_box_load){.size_m = {box_m},
                          .steel_m3 = steel_m3,
                          .moisture = HS_K_PACK_MOISTURE_DEFAULT,
                          .speed = 1};
    for (int k = 1; k < 3; k++)
        load->size_m[k] = fmax(box_m, part_m[k] + 2 * HS_K_PACK_COVER_LEAST);
    double box_m3 = box_m * load->size_m[1] * load->size_m[2];
    double wider = sqrt(fmax(1, steel_m3 / (HS_K_BOX_HEAT_STEEL_USUAL * box_m3)));
    load->size_m[1] *= wider;
    load->size_m[2] *= wider;
    load->pile_m3 = job->part.quantity > 1 ? pile_m3(load, part_m, job->part.quantity) : 0;
}

static hs_status check_fit(const hs_job *job, double box_m, hs_error *err) {
    double part_m[3];
    hs_packed_part_sizes(part_m, &job->part);
    if (part_m[0] < box_m) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "a larger box: 25 mm of compound all round",
                   "a part of %.0f mm does not fit into a box of %.0f mm", 1000 * part_m[0],
                   1000 * box_m);
}

static void take_path(hs_route_heat *heat, const hs_box_path *path) {
    heat->n = path->n;
    for (size_t i = 0; i < path->n; i++)
        heat->point[i] = path->hot[i];
}

static double spread_m2(const hs_heat_point *point, size_t n) {
    const double carbon_pct = 0.6; /* halfway down a usual case: D moves alike all over it */
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = 1};
    hs_heat heat = {.point = point, .n = n, .cap_at_acm = 1};
    return n < 2 ? 0 : hs_carbon_spread(&heat, &d, carbon_pct);
}

/* A box that cannot be, its fire, or its hold. */
static const char *key_of(hs_status status, const hs_box_load *load) {
    if (hs_box_load_check(load, NULL) != HS_OK) return "box";
    return status == HS_E_IMPOSSIBLE ? "for" : status == HS_E_RANGE ? "at" : "";
}

/* The same fire by the clock, the compound slow, middle and fast. */
static hs_status read_doubt(hs_route_heat *heat, const hs_box_path *middle, hs_box_load load,
                            hs_box_fire fire, hs_box_work *work, hs_error *err) {
    double at_heat_s[3] = {NAN, middle->at_heat_s, NAN};
    const double factor = HS_K_BOX_HEAT_DOUBT_FACTOR;
    fire.from = HS_COUNT_FIRE_ON;
    fire.hold_s = middle->off_s;
    heat->hot_m2[1] = spread_m2(middle->hot, middle->n);
    heat->cool_m2[1] = spread_m2(middle->cool, middle->cool_n);
    for (int k = 0; k < 3; k += 2) {
        hs_box_path path;
        load.speed = k ? factor : 1 / factor;
        hs_status status = hs_box_heat(&path, &load, &fire, work, err);
        if (status != HS_OK) return status;
        heat->hot_m2[k] = spread_m2(path.hot, path.n);
        heat->cool_m2[k] = spread_m2(path.cool, path.cool_n);
        at_heat_s[k] = path.at_heat_s;
    }
    double late_s = HS_K_BOX_HEAT_RISE_TIME * (HS_K_BOX_HEAT_RISE_FACTOR - 1);
    double early_s = HS_K_BOX_HEAT_RISE_TIME * (1 - 1 / HS_K_BOX_HEAT_RISE_FACTOR);
    heat->lag = (hs_box_lag){.red_s = middle->red_s,
                             .low_s = at_heat_s[1] - hypot(at_heat_s[1] - at_heat_s[2], early_s),
                             .at_heat_s = at_heat_s[1],
                             .high_s = at_heat_s[1] + hypot(at_heat_s[0] - at_heat_s[1], late_s)};
    const hs_heat_point held[2] = {{0, fire.temp_K}, {0.5 * (late_s + early_s), fire.temp_K}};
    heat->late_m2 = spread_m2(held, 2);
    return HS_OK;
}

hs_status hs_packed_heat(hs_route_heat *heat, hs_box_path *box, const hs_job *job,
                         const hs_step *step, const hs_packing *packing, hs_error *err) {
    hs_box_work work;
    hs_box_load load;
    hs_packed_load(&load, job, step->box_m);
    hs_box_fire fire = {.temp_K = step->temp_K.value,
                        .hold_s = step->hold_s.value,
                        .from = step->from_box_red ? HS_COUNT_BOX_RED : HS_COUNT_AT_HEAT,
                        .cool_to_K = hs_carbon_cold_K(),
                        .cooling = packing->cooling};
    hs_status status = hs_at_step(check_fit(job, step->box_m, err), step, "box", err);
    if (status != HS_OK) return status;
    status = hs_box_heat(box, &load, &fire, &work, err);
    if (status != HS_OK) return hs_at_step(status, step, key_of(status, &load), err);
    status = read_doubt(heat, box, load, fire, &work, err);
    if (status == HS_OK &&
        packing->speed != 1) { /* the fire goes by the clock, the part does not */
        fire.from = HS_COUNT_FIRE_ON;
        fire.hold_s = box->off_s;
        load.speed = packing->speed;
        status = hs_box_heat(box, &load, &fire, &work, err);
    }
    if (status != HS_OK) return status;
    heat->packed = 1;
    take_path(heat, box);
    return HS_OK;
}

void hs_packed_doubt(hs_route *route, const hs_job *job) {
    double all_m2 = 0, bed_m2 = 0, cool_m2 = 0, rise_m2 = 0;
    double factor = HS_K_BOX_HEAT_COOLING_FACTOR;
    for (size_t i = 0; i < route->heats; i++) {
        const hs_route_heat *heat = &route->heat[i];
        all_m2 += spread_m2(heat->point, heat->n);
        if (!heat->packed) continue;
        bed_m2 += (heat->hot_m2[2] - heat->hot_m2[0]) / 2;
        rise_m2 += heat->late_m2;
        const hs_step *next = i + 1 < route->heats ? &job->step[heat[1].step] : NULL;
        if (!next || next->kind != HS_COOL || heat[1].open || next->log_points > 0) continue;
        bed_m2 += (heat->cool_m2[2] - heat->cool_m2[0]) / 2;
        cool_m2 += heat->cool_m2[1] * (factor - 1 / factor) / 2;
    }
    if (all_m2 > 0)
        route->heat_log = hs_draw_share(hypot(hypot(bed_m2, cool_m2), rise_m2) / all_m2);
}

void hs_packed_cool(hs_box_path *box, const hs_job *job, const hs_step *step, double from_K,
                    double cooling) {
    hs_box_work work;
    hs_box_load load;
    hs_packed_load(&load, job, step->box_m);
    box->cool_n = 0;
    hs_box_cool(box, &load, from_K, hs_carbon_cold_K(), cooling, &work, NULL);
}
