#include "support/outline.h"

#include "base/random.h"

#include <math.h>

static const double PI = 3.14159265358979323846;
enum { SEED = 77 };

static double draw(uint32_t number, uint32_t input) {
    return hs_random_uniform(SEED, number, input);
}

void test_section_random(test_section *out, uint32_t number, double radius_m, int with_hole) {
    size_t n = 3 + (size_t)(draw(number, 0) * (TEST_VERTICES - 2));
    double turn = 2 * PI * draw(number, 1), x = radius_m * draw(number, 2),
           y = radius_m * draw(number, 3);
    double smaller = 0.3 + 0.3 * draw(number, 4), sense = draw(number, 5) < 0.5 ? -1 : 1;
    for (size_t i = 0; i < n; i++) {
        uint32_t input = 10 + 2 * (uint32_t)i;
        /* at most .4 of a step from even: with three vertices the middle stays inside */
        double angle = turn + sense * 2 * PI * ((double)i + 0.4 * draw(number, input)) / (double)n;
        double r = radius_m * (0.35 + 0.65 * draw(number, input + 1));
        double c = cos(angle), s = sin(angle);
        out->outer[i] = (hs_point){x + r * c, y + r * s};
        out->inner[i] = (hs_point){x + smaller * r * c, y + smaller * r * s};
    }
    out->hole = (hs_outline){out->inner, n};
    out->section = (hs_section){{out->outer, n}, &out->hole, with_hole && number % 2 ? 1 : 0};
}

void test_section_moved(test_section *out, const test_section *in, double sx, double sy,
                        double turn_rad, double shift_x_m, double shift_y_m) {
    double c = cos(turn_rad), s = sin(turn_rad);
    size_t n = in->section.outline.n;
    for (int hole = 0; hole < 2; hole++) {
        const hs_point *from = hole ? in->inner : in->outer;
        hs_point *to = hole ? out->inner : out->outer;
        for (size_t i = 0; i < n; i++) {
            double x = sx * from[i].x_m, y = sy * from[i].y_m;
            to[i] = (hs_point){c * x - s * y + shift_x_m, s * x + c * y + shift_y_m};
        }
    }
    out->hole = (hs_outline){out->inner, n};
    out->section = (hs_section){{out->outer, n}, &out->hole, in->section.n_holes};
}
