/* Random sections for tests: star-shaped outlines, so that they never cross themselves, turned and
 * shifted; with a smaller copy of themselves as a hole when asked. */
#ifndef HS_TESTS_OUTLINE_H
#define HS_TESTS_OUTLINE_H

#include "hardskin/model/section.h"

#include <stdint.h>

enum { TEST_VERTICES = 12 };

typedef struct test_section {
    hs_point outer[TEST_VERTICES], inner[TEST_VERTICES];
    hs_outline hole;
    hs_section section;
} test_section;

/** Section `number`: 3 to 12 vertices between .35 and 1 times radius_m from a point inside; every
 *  second one with a hole if with_hole; either sense of rotation. */
void test_section_random(test_section *out, uint32_t number, double radius_m, int with_hole);

/** The same section mirrored in x (sx -1) or y (sy -1), grown sx = sy, turned by turn_rad, then
 *  shifted. */
void test_section_moved(test_section *out, const test_section *in, double sx, double sy,
                        double turn_rad, double shift_x_m, double shift_y_m);

#endif
