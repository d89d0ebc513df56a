/* Observed orders: in space with steps too small to matter, in time with cells too small to matter,
 * each against a solution that is exact, or from three runs where none is known. */
#include "hardskin/model/carbon_course.h"
#include "support/check.h"

static hs_carbon_end end;
static const hs_diffusivity AGREN = {.factor = 1};
static const hs_diffusivity CONSTANT = {.model = HS_D_CONSTANT, .D0_m2_s = 1e-11, .factor = 1};
static const double LOW = 1.9, HIGH = 2.4; /* second order; above: two errors against each other */

/* A hold at 925 C. */
static void run(hs_shape shape, double size_m, hs_side side, const hs_diffusivity *d, double hours,
                size_t cells, size_t steps) {
    const hs_heat_point hold[2] = {{0, 1198.15}, {hours * 3600, 1198.15}};
    const hs_heat heat = {.point = hold, .n = 2, .side = {side}, .steps = steps};
    const hs_carbon_course course = {.shape = shape,
                                     .size_m = size_m,
                                     .reach_m = shape == HS_SLAB ? size_m : 0,
                                     .core_pct = .2,
                                     .heat = &heat,
                                     .heats = 1,
                                     .d = d};
    CHECK(hs_carbon_course_run(&end, &course, cells, NULL) == HS_OK);
}

/* Root of the mean square over the section: the largest cell errors sit at different places on
 * meshes this coarse. */
static double error_to(double (*exact)(double depth_m)) {
    double sum = 0, volume = 0;
    for (size_t i = 0; i < end.mesh.n; i++) {
        double error = end.carbon_pct[i] - exact(end.mesh.centre_m[i]);
        sum += error * error * end.mesh.volume_m[i];
        volume += end.mesh.volume_m[i];
    }
    return sqrt(sum / volume);
}

static void check_orders(const char *name, double space, double time) {
    printf("observed order, %-44s %.2f in space, %.2f in time\n", name, space, time);
    CHECK(space > LOW && space < HIGH);
    CHECK(time > LOW && time < HIGH);
}

/* exact: C = C0 + (Cp - C0)(erfc z - exp(h x + h^2 D t) erfc(z + h sqrt(D t))), z = x / 2 sqrt(Dt),
 * h = transfer / D (Crank 1975, eq. 3.35, from memory; contract, case 2); 4 h, 1e-7 m/s */
static double with_transfer(double x) {
    double root = sqrt(1e-11 * 14400), h = 1e-7 / 1e-11, z = x / (2 * root);
    return .2 + .7 * (erfc(z) - exp(h * x + h * h * root * root) * erfc(z + h * root));
}

static void order__transfer__is_two_against_the_closed_form(void) {
    const hs_side side = {HS_SIDE_TRANSFER, .9, 1e-7};
    double e[4];
    run(HS_SLAB, 4e-3, side, &CONSTANT, 4, 24, 2000);
    e[0] = error_to(with_transfer);
    run(HS_SLAB, 4e-3, side, &CONSTANT, 4, 48, 2000);
    e[1] = error_to(with_transfer);
    run(HS_SLAB, 4e-3, side, &CONSTANT, 4, HS_CARBON_CELLS, 8);
    e[2] = error_to(with_transfer);
    run(HS_SLAB, 4e-3, side, &CONSTANT, 4, HS_CARBON_CELLS, 16);
    e[3] = error_to(with_transfer);
    check_orders("transfer, exact", log2(e[0] / e[1]), log2(e[2] / e[3]));
    run(HS_SLAB, 4e-3, side, &CONSTANT, 4, HS_CARBON_CELLS, 1000);
    NEAR(error_to(with_transfer), 0, 1e-5);
}

static double bessel(int order, double x) {
    double term = order ? .5 * x : 1, sum = term;
    for (int k = 1; k < 60; k++) {
        term *= -.25 * x * x / (k * (k + order));
        sum += term;
    }
    return sum;
}

/* exact: C = Cs - (Cs - C0) sum 2 J0(a r/R) / (a J1(a)) exp(-a^2 D t / R^2) over the zeros of J0
 * (Crank 1975, eq. 5.22, from memory; zeros: Abramowitz and Stegun, table 9.5); D t / R^2 = .1,
 * where the fifth term is 1e-10 */
static double bar(double x) {
    static const double zeros[] = {2.404825557695773, 5.520078110286311, 8.653727912911012,
                                   11.791534439014281};
    double sum = 0;
    for (int k = 0; k < 4; k++)
        sum += 2 * bessel(0, zeros[k] * (1 - x / 2e-3)) / (zeros[k] * bessel(1, zeros[k])) *
               exp(-zeros[k] * zeros[k] * .1);
    return .9 - .7 * sum;
}

/* exact: C = Cs - (Cs - C0) 4/pi sum cos((2k+1) pi y / 2) (-1)^k / (2k+1) exp(-((2k+1) pi/2)^2 T),
 * y from the middle (Crank 1975, eq. 4.17, from memory); D t / l^2 = .1 */
static double plate(double x) {
    double pi = acos(-1), sum = 0;
    for (int k = 0; k < 6; k++) {
        double root = (2 * k + 1) * pi / 2;
        sum += (k % 2 ? -1 : 1) / root * cos(root * (1 - x / 2e-3)) * exp(-root * root * .1);
    }
    return .9 - .7 * 2 * sum;
}

static void order__bar_and_plate__are_two_against_their_series(void) {
    static const struct {
        const char *name;
        hs_shape shape;
        double (*exact)(double);
    } of[] = {{"bar, series", HS_CYLINDER, bar}, {"plate, series", HS_SLAB, plate}};
    const hs_side side = {HS_SIDE_FIXED, .9, 0};
    const double hours = .1 * 4e-6 / 1e-11 / 3600;
    for (size_t k = 0; k < 2; k++) {
        double e[4];
        run(of[k].shape, 2e-3, side, &CONSTANT, hours, 24, 2000);
        e[0] = error_to(of[k].exact);
        run(of[k].shape, 2e-3, side, &CONSTANT, hours, 48, 2000);
        e[1] = error_to(of[k].exact);
        run(of[k].shape, 2e-3, side, &CONSTANT, hours, HS_CARBON_CELLS, 8);
        e[2] = error_to(of[k].exact);
        run(of[k].shape, 2e-3, side, &CONSTANT, hours, HS_CARBON_CELLS, 16);
        e[3] = error_to(of[k].exact);
        check_orders(of[k].name, log2(e[0] / e[1]), log2(e[2] / e[3]));
        run(of[k].shape, 2e-3, side, &CONSTANT, hours, HS_CARBON_CELLS, 1000);
        NEAR(error_to(of[k].exact), 0, 1e-5);
    }
}

/* Three runs, each twice as fine: what the bar gains (% m), with D(C). */
static double order_of_three(hs_side side, int in_time) {
    double gain[3];
    for (size_t k = 0; k < 3; k++) {
        if (in_time)
            run(HS_CYLINDER, 3e-3, side, &AGREN, 6, 96, (size_t)24 << k);
        else
            run(HS_CYLINDER, 3e-3, side, &AGREN, 6, (size_t)24 << k, 2000);
        gain[k] = end.uptake.gained_pct_m[0];
    }
    return log2((gain[1] - gain[0]) / (gain[2] - gain[1]));
}

static void order__d_of_c__is_two_in_a_bar(void) {
    const hs_side held = {HS_SIDE_FIXED, 1.1, 0}, exchanging = {HS_SIDE_TRANSFER, 1.1, 1e-7};
    check_orders("D(C), bar, held", order_of_three(held, 0), order_of_three(held, 1));
    check_orders("D(C), bar, transfer", order_of_three(exchanging, 0),
                 order_of_three(exchanging, 1));
}

/* Rise, soak and box cooling under the A_cm line, then closed: carbon at a place, three times the
 * steps. The corners of the path lie inside steps: there a step is of first order only, so no more
 * than a falling error is asked. */
static double after_two_heats(size_t steps) {
    const hs_heat_point up[3] = {{0, 1013.2}, {5400, 1198.15}, {20000, 1198.15}};
    const hs_heat_point down[2] = {{0, 1198.15}, {14000, 1013.2}};
    const hs_heat heats[2] = {
        {.point = up, .n = 3, .side = {{HS_SIDE_FIXED, 1.2, 0}}, .cap_at_acm = 1, .steps = steps},
        {.point = down, .n = 2, .steps = steps}};
    const hs_carbon_course course = {
        .size_m = 4e-3, .reach_m = 4e-3, .core_pct = .2, .heat = heats, .heats = 2, .d = &AGREN};
    CHECK(hs_carbon_course_run(&end, &course, 96, NULL) == HS_OK);
    return hs_carbon_at(&end.mesh, end.carbon_pct, end.uptake.surface_pct, 1e-3);
}

static void order__two_heats__errors_fall_with_the_steps(void) {
    double fine = after_two_heats(4000);
    double e[3] = {after_two_heats(20) - fine, after_two_heats(40) - fine,
                   after_two_heats(80) - fine};
    printf("two heats, error at 1 mm in 20, 40, 80 steps: %.1e %.1e %.1e %%C\n", e[0], e[1], e[2]);
    CHECK(fabs(e[1]) < .5 * fabs(e[0]) && fabs(e[2]) < .5 * fabs(e[1]));
    double adaptive = after_two_heats(0) - fine;
    printf("with steps by their error, %zu in the last heat: %.1e %%C\n", end.uptake.steps,
           adaptive);
    NEAR(adaptive, 0, 1e-4);
}

HS_TEST_MAIN("model carbon_order", TEST(order__transfer__is_two_against_the_closed_form),
             TEST(order__bar_and_plate__are_two_against_their_series),
             TEST(order__d_of_c__is_two_in_a_bar),
             TEST(order__two_heats__errors_fall_with_the_steps))
