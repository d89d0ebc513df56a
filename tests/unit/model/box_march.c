#include "hardskin/model/box_march.h"
#include "support/check.h"

static const double PI = 3.14159265358979323846;
static const double COLD_K = 300, HOT_K = 1200, SIZE_M = .1, K = .8, BED = 6e5;

static hs_box_march march;

/* A body of constant properties, all at COLD_K, its wall at HOT_K from time 0 on. */
static void start(double exponent, double core_m, double core_J_m3K, size_t cells, double tol_K) {
    hs_box_body body = {SIZE_M, core_m, exponent, cells};
    hs_matter_constant(&march.matter, K, BED, core_J_m3K);
    march.wall = (hs_box_wall){COLD_K, HOT_K, 0, INFINITY, COLD_K, 1};
    hs_box_march_start(&march, &body, COLD_K, tol_K);
}

/* Share of the step still to go at the centre. */
static double left_at(double fourier) {
    double end_s = fourier * SIZE_M * SIZE_M * BED / K;
    while (march.time_s < end_s)
        if (hs_box_march_step(&march, end_s, NULL) != HS_OK) return NAN;
    return (HOT_K - hs_box_march_centre(&march)) / (HOT_K - COLD_K);
}

static double slab(double f) {
    double sum = 0;
    for (int n = 0; n < 40; n++) {
        double b = (n + .5) * PI;
        sum += (n % 2 ? -2 : 2) / b * exp(-b * b * f);
    }
    return sum;
}

static double cylinder(double f) {
    /* zeros of J0 and J1 there (Abramowitz & Stegun table 9.5) */
    static const double b[] = {2.4048255577, 5.5200781103, 8.6537279129, 11.7915344391};
    static const double j1[] = {.5191474973, -.3402648065, .2714522999, -.2324598314};
    double sum = 0;
    for (int n = 0; n < 4; n++)
        sum += 2 / (b[n] * j1[n]) * exp(-b[n] * b[n] * f);
    return sum;
}

static double sphere(double f) {
    double sum = 0;
    for (int n = 1; n < 40; n++)
        sum += (n % 2 ? 2 : -2) * exp(-n * n * PI * PI * f);
    return sum;
}

static void box_march__slab_cylinder_sphere__follow_the_series(void) {
    /* exact: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 3.3, 7.6, 9.3: fixed surface.
     * 1.5e-3: sixteen cells and steps of .05 K; a sixth of a kelvin in a thousand is far below
     * what the conductivity is known to. */
    static const double f[] = {.1, .2, .4, .8};
    for (int i = 0; i < 4; i++) {
        start(0, 0, 1, 16, .05);
        NEAR(left_at(f[i]), slab(f[i]), 1.5e-3);
        start(1, 0, 1, 16, .05);
        NEAR(left_at(f[i]), cylinder(f[i]), 2.5e-3);
        start(2, 0, 1, 16, .05);
        NEAR(left_at(f[i]), sphere(f[i]), 5e-3);
    }
}

/* A slab of bed before a core of steel, `ratio` = heat of the core over that of the bed. */
static double slab_with_core(double f, double ratio) {
    double sum = 0;
    for (int n = 0; n < 12; n++) { /* b tan b = 1/ratio, one root in each n PI .. (n + 1/2) PI */
        double low = n * PI, high = (n + .5) * PI;
        for (int k = 0; k < 80; k++) {
            double b = .5 * (low + high);
            if (b * tan(b) * ratio < 1)
                low = b;
            else
                high = b;
        }
        double b = .5 * (low + high), s = sin(b);
        sum += s / (b * (.5 - sin(2 * b) / (4 * b) + ratio * s * s)) * exp(-b * b * f);
    }
    return sum;
}

static void box_march__core_of_steel__follows_the_series(void) {
    /* exact: slab in contact with a well-stirred mass (Carslaw & Jaeger 3.13), derived anew:
     * modes sin b(1 - x), b tan b = bed's heat over the core's, weights with the core's mass */
    double core_m = .02, bed_m = SIZE_M - core_m, ratio = .7;
    double core_J_m3K = ratio * BED * bed_m / core_m;
    static const double f[] = {.2, .6, 1.5};
    for (int i = 0; i < 3; i++) {
        start(0, core_m, core_J_m3K, 16, .05);
        double fourier = f[i] * bed_m * bed_m / (SIZE_M * SIZE_M);
        NEAR(left_at(fourier), slab_with_core(f[i], ratio), 1.5e-3);
    }
}

static double cell_error(size_t cells) {
    start(1, 0, 1, cells, .0005);
    return fabs(left_at(.3) - cylinder(.3));
}

static void box_march__finer_cells__second_order(void) {
    /* exact: error against the series falls fourfold when the cells are halved (1.8: the rest of
     * the step's error) */
    double coarse = cell_error(8), fine = cell_error(16);
    CHECK(log2(coarse / fine) > 1.8 && log2(coarse / fine) < 2.3);
}

static double after_fixed(int steps) {
    hs_box_body body = {SIZE_M, .02, 1, 12};
    double end_s = .3 * SIZE_M * SIZE_M * BED / K;
    hs_matter_constant(&march.matter, K, BED, 2 * BED);
    march.wall = (hs_box_wall){COLD_K, HOT_K, 2 * end_s, INFINITY, COLD_K, 1};
    hs_box_march_start(&march, &body, COLD_K, 1);
    for (int i = 0; i < steps; i++)
        if (hs_box_march_fixed(&march, end_s / steps, NULL) != HS_OK) return NAN;
    return hs_box_march_centre(&march);
}

static void box_march__shorter_steps__second_order(void) {
    /* exact: differences between halved steps fall fourfold on a rising wall */
    double a = after_fixed(20), b = after_fixed(40), c = after_fixed(80);
    double order = log2(fabs(a - b) / fabs(b - c));
    CHECK(order > 1.8 && order < 2.3);
}

static void box_march__estimate__bounds_what_a_looser_march_loses(void) {
    start(1, .02, 2 * BED, 12, .002);
    double best = left_at(.4);
    start(1, .02, 2 * BED, 12, .2);
    double good = fabs(left_at(.4) - best);
    start(1, .02, 2 * BED, 12, 2);
    double loose = fabs(left_at(.4) - best);
    CHECK(good < loose);
    CHECK(loose * (HOT_K - COLD_K) < 20); /* ten steps' worth of 2 K */
}

static void box_march__heat__is_kept(void) {
    /* exact: what came through the wall is in the box, to rounding, up and down again */
    hs_box_body body = {.075, .02, 1.2, 16};
    hs_matter_compound(&march.matter, 400, .05, 1, 1);
    march.wall = (hs_box_wall){293.15, 1198.15, 4500, 30000, 293.15, 20000};
    hs_box_march_start(&march, &body, 293.15, 1);
    double end_s[] = {4500, 30000, 60000};
    for (int i = 0; i < 3; i++) {
        while (march.time_s < end_s[i])
            CHECK(hs_box_march_step(&march, end_s[i], NULL) == HS_OK);
        CHECK(hs_box_march_balance(&march) < 1e-10);
    }
    CHECK(march.gained_J > 0);
}

static void box_march__wall__rises_holds_and_falls(void) {
    hs_box_wall w = {300, 1200, 3600, 7200, 300, 1800};
    NEAR(hs_box_wall_temp(&w, 1800), 750, 1e-9);
    NEAR(hs_box_wall_temp(&w, 5000), 1200, 0);
    NEAR(hs_box_wall_temp(&w, 9000), 300 + 900 / exp(1), 1e-9);
}

static void box_matter__carbon__holds_the_heat_of_graphite(void) {
    /* published: JANAF tables, graphite, H(T) - H(298.15): 1000 K 11.795, 1200 K 16.240 kJ/mol
     * (from memory); .5 %: linear between the rows of the table */
    hs_matter m;
    hs_matter_compound(&m, 1, 0, 1, 1);
    double slope, from = hs_matter_at(&slope, m.heat, 298.15);
    NEAR(hs_matter_at(&slope, m.heat, 1000) - from, 11795 / .012011, 5000);
    NEAR(hs_matter_at(&slope, m.heat, 1200) - from, 16240 / .012011, 7000);
    /* published: steel takes about .65 to .70 kJ/(kg K) from room to 900 C, the change to austenite
     * included (EN 1993-1-2 and heat treaters' tables, from memory) */
    double steel = hs_matter_at(&slope, m.core, 1173.15) - hs_matter_at(&slope, m.core, 293.15);
    CHECK(steel / 7850 / 880 > 650 && steel / 7850 / 880 < 730);
}

static void box_matter__wet_compound__takes_the_heat_of_its_steam(void) {
    hs_matter dry, wet;
    double slope;
    hs_matter_compound(&dry, 400, 0, 1, 1);
    hs_matter_compound(&wet, 400, .05, 2, 1);
    double more = hs_matter_at(&slope, wet.heat, 800) - hs_matter_at(&slope, dry.heat, 800);
    NEAR(more, 400 * .05 * 2.6e6, 1); /* exact: 20 kg of water a cubic metre */
    NEAR(hs_matter_at(&slope, wet.flow, 800), 2 * hs_matter_at(&slope, dry.flow, 800), 1e-6);
}

static void box_matter__conductivity__lies_between_what_was_read(void) {
    /* published: lump charcoal, cold, .030 W/(m K) (Cerne 2020, read); coke in the lump above 900 C
     * 1.5 (thesis, Leeds 1973, read): a bed of grains lies between */
    CHECK(hs_matter_conductivity(293.15) > .030);
    CHECK(hs_matter_conductivity(1200) < 1.5);
    CHECK(hs_matter_conductivity(1200) > 3 * hs_matter_conductivity(600)); /* rays: T3 */
}

HS_TEST_MAIN("model box_march", TEST(box_march__slab_cylinder_sphere__follow_the_series),
             TEST(box_march__core_of_steel__follows_the_series),
             TEST(box_march__finer_cells__second_order),
             TEST(box_march__shorter_steps__second_order),
             TEST(box_march__estimate__bounds_what_a_looser_march_loses),
             TEST(box_march__heat__is_kept), TEST(box_march__wall__rises_holds_and_falls),
             TEST(box_matter__carbon__holds_the_heat_of_graphite),
             TEST(box_matter__wet_compound__takes_the_heat_of_its_steam),
             TEST(box_matter__conductivity__lies_between_what_was_read))
