/* independent: the solver against the referee (referee.h), both converged; and how far the meshes
 * the program takes by itself are away. */
#include "hardskin/model/carbon_course.h"
#include "second/conditions.h"
#include "support/check.h"

static hs_carbon_end end;
static hs_heat_point points[SECOND_HEATS][8];

static const double COLD_MM = .010; /* said in carbon.h */
static const double MM = 1e-3, ZERO_C = 273.15;
static const referee_grid COARSE = {401, 1e-8, 740}, FINE = {801, 1e-8, 740};

static hs_side side_of(const referee_face *f) {
    static const hs_side_kind kinds[] = {HS_SIDE_CLOSED, HS_SIDE_FIXED, HS_SIDE_TRANSFER};
    return (hs_side){kinds[f->is], f->carbon, f->exchange_mm_s * MM};
}

static void fill_heats(hs_heat heat[SECOND_HEATS], const second_condition *c) {
    for (int k = 0; k < c->heats; k++) {
        const referee_heat *in = &c->heat[k];
        for (int i = 0; i < in->points; i++)
            points[k][i] = (hs_heat_point){in->path[i][0], in->path[i][1] + ZERO_C};
        heat[k] = (hs_heat){.point = points[k],
                            .n = (size_t)in->points,
                            .side = {side_of(&in->face[0]), side_of(&in->face[1])},
                            .cap_at_acm = in->saturates};
    }
}

static hs_diffusivity diffusivity_of(const referee_part *p) {
    static const hs_diffusivity_model models[] = {HS_D_AGREN, HS_D_TIBBETTS, HS_D_LEE};
    return (hs_diffusivity){
        .model = models[p->law], .steel = {.Mn = p->Mn, .Si = p->Si, .Cr = p->Cr}, .factor = 1};
}

/* A thick plate is cut where carbon does not reach; the referee always has all of the section. */
static hs_carbon_course course_of(const second_condition *c, const hs_heat *heat,
                                  const hs_diffusivity *d) {
    static const hs_shape shapes[] = {HS_SLAB, HS_CYLINDER, HS_TUBE, HS_BORE};
    const referee_part *p = &c->part;
    double size = p->wall_mm, inner = 0;
    if (p->shape == TUBE_FROM_OUTSIDE) inner = (size = p->radius_mm) - p->wall_mm;
    if (p->shape == TUBE_FROM_BORE) size = p->wall_mm + (inner = p->radius_mm);
    int one_face = c->heat[0].face[1].is == SEALED;
    double reach = hs_carbon_reach(heat, (size_t)c->heats, d, 1.3);
    return (hs_carbon_course){.shape = shapes[p->shape],
                              .size_m = size * MM,
                              .inner_radius_m = inner * MM,
                              .reach_m = one_face ? reach : 0,
                              .core_pct = p->core,
                              .heat = heat,
                              .heats = (size_t)c->heats,
                              .d = d};
}

/* Largest difference over the cells of `end`. The referee is carried on from two grids to none. */
static double difference(const second_condition *c) {
    static double depth_mm[HS_CARBON_CELLS], coarse[HS_CARBON_CELLS], fine[HS_CARBON_CELLS];
    int n = (int)end.mesh.n;
    double worst = 0;
    for (int i = 0; i < n; i++)
        depth_mm[i] = end.mesh.centre_m[i] / MM;
    CHECK(referee_run(coarse, depth_mm, n, &c->part, c->heat, c->heats, COARSE) == 0);
    CHECK(referee_run(fine, depth_mm, n, &c->part, c->heat, c->heats, FINE) == 0);
    for (int i = 0; i < n; i++) {
        double carried = fine[i] + (fine[i] - coarse[i]) / 3;
        worst = fmax(worst, fabs(carried - end.carbon_pct[i]));
        CHECK(isfinite(carried));
    }
    return worst;
}

static void second__conditions__agree_to_a_ten_thousandth(void) {
    double worst = 0, usual = 0;
    for (size_t k = 0; k < second_count; k++) {
        const second_condition *c = &second_conditions[k];
        hs_heat heat[SECOND_HEATS];
        hs_diffusivity d = diffusivity_of(&c->part);
        fill_heats(heat, c);
        hs_carbon_course course = course_of(c, heat, &d);
        double rich = fmax(c->heat[0].face[0].carbon, c->part.core);
        double poor = fmin(c->heat[0].face[0].carbon, c->part.core);
        hs_carbon_levels levels = hs_carbon_levels_usual(poor, rich);
        hs_carbon_accuracy accuracy = {0};
        CHECK(hs_carbon_course_run(&end, &course, HS_CARBON_CELLS, NULL) == HS_OK);
        double converged = difference(c);
        CHECK(hs_carbon_course_refine(&end, &accuracy, &course, &levels, NULL) == HS_OK);
        double chosen = difference(c);
        printf("%-50s %.1e %%C apart; with the %zu cells chosen %.1e\n", c->name, converged,
               accuracy.cells, chosen);
        NEAR(converged, 0, 1e-4);
        worst = fmax(worst, converged);
        usual = fmax(usual, chosen);
    }
    printf("%zu conditions: at most %.1e %%C apart, %.1e with the cells chosen\n", second_count,
           worst, usual);
    CHECK(second_count >= 12);
    /* own promise, .5 % of a depth: the steepest profile here falls by 1 %C in a millimetre */
    CHECK(usual < .01);
}

/* independent: the two diffusivities, the three laws, and the A_cm line, written twice */
static void second__laws__are_the_same(void) {
    for (size_t k = 0; k < second_count; k++) {
        const referee_part *p = &second_conditions[k].part;
        hs_diffusivity d = diffusivity_of(p);
        for (double celsius = 860; celsius < 1050; celsius += 17)
            for (double carbon = 0; carbon < 1.3; carbon += .1) {
                double ours = hs_diffusivity_value(&d, carbon, celsius + ZERO_C);
                NEAR(referee_diffusivity(p, carbon, celsius) * 1e-6 / ours, 1, 1e-9);
                NEAR(referee_saturation(celsius), hs_acm_pct(celsius + ZERO_C), 1e-9);
            }
    }
}

/* What is lost by stopping the clock at 740 C: the same box runs with it going on to 650 C, Agren's
 * formula carried on (in truth ferrite and pearlite form there, and the faces of a box in the rise
 * take nothing; so this is an upper bound). Rise, soak, and box cooling at 60 K/h, slower than a
 * box of any shop here. */
static void second__cold_end__is_worth_less_than_ten_micrometres(void) {
    static const double soaks[][2] = {{850, 2}, {900, 4}, {925, 6}, {950, 12}};
    static const referee_grid stops = {801, 1e-8, 740}, goes_on = {801, 1e-8, 650};
    enum { PLACES = 400 };
    static double depth_mm[PLACES], stopped[PLACES], gone[PLACES];
    double most_pct = 0, most_mm = 0;
    for (int i = 0; i < PLACES; i++)
        depth_mm[i] = .01 * i;
    for (size_t k = 0; k < sizeof soaks / sizeof *soaks; k++) {
        double T = soaks[k][0], up = (T - 20) * 8, soak = soaks[k][1] * 3600;
        const double in[][2] = {{0, 20}, {up, T}, {up + soak, T}},
                     out[][2] = {{0, T}, {(T - 20) * 60, 20}};
        const referee_part part = {.shape = PLATE, .wall_mm = 10, .core = .18};
        const referee_heat heat[2] = {{in, 3, {{HELD, .8, 0}, {SEALED, 0, 0}}, 0},
                                      {out, 2, {{SEALED, 0, 0}, {SEALED, 0, 0}}, 0}};
        CHECK(referee_run(stopped, depth_mm, PLACES, &part, heat, 2, stops) == 0);
        CHECK(referee_run(gone, depth_mm, PLACES, &part, heat, 2, goes_on) == 0);
        double depth[2] = {0, 0};
        for (int i = 0; i < PLACES; i++) {
            most_pct = fmax(most_pct, fabs(gone[i] - stopped[i]));
            if (i == 0) continue;
            if (stopped[i - 1] >= .35 && stopped[i] < .35)
                depth[0] = depth_mm[i] - .01 * (.35 - stopped[i]) / (stopped[i - 1] - stopped[i]);
            if (gone[i - 1] >= .35 && gone[i] < .35)
                depth[1] = depth_mm[i] - .01 * (.35 - gone[i]) / (gone[i - 1] - gone[i]);
        }
        CHECK(depth[0] > .1);
        printf("cold end, %g C %g h: .35 %%C at %.4f mm, going on to 650 C %.4f mm\n", T,
               soaks[k][1], depth[0], depth[1]);
        most_mm = fmax(most_mm, fabs(depth[1] - depth[0]));
    }
    printf("cold end: at most %.4f %%C, %.4f mm of depth\n", most_pct, most_mm);
    CHECK(most_mm > 0 && most_mm < COLD_MM);
}

HS_TEST_MAIN("second", TEST(second__cold_end__is_worth_less_than_ten_micrometres),
             TEST(second__laws__are_the_same), TEST(second__conditions__agree_to_a_ten_thousandth))
