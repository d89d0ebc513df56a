/* Grades and fundamental deviations of every range, as textbook tables print them: shafts only, the
 * holes are their mirror by size.c. */
#include "hardskin/units/size.h"
#include "support/check.h"

enum { RANGES = 13, GRADES = 14 };

/* a size inside each range and its upper end, mm */
static const double inside[RANGES] = {2, 4.5, 8, 14, 24, 40, 65, 100, 150, 200, 280, 350, 450};
static const double end[RANGES] = {3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500};

static void limits(double um[2], double mm, const char *zone, int grade) {
    um[0] = um[1] = NAN;
    CHECK(hs_fit_limits(&um[0], &um[1], mm / 1e3, zone, grade, NULL) == HS_OK);
    um[0] *= 1e6;
    um[1] *= 1e6;
}

static void fit_table__grades__each_cell_as_printed(void) {
    /* published: ISO 286-1, IT1 to IT14, um, 0 to 3 mm up to 400 to 500 (read in tables) */
    static const double IT[GRADES][RANGES] = {
        {0.8, 1, 1, 1.2, 1.5, 1.5, 2, 2.5, 3.5, 4.5, 6, 7, 8},
        {1.2, 1.5, 1.5, 2, 2.5, 2.5, 3, 4, 5, 7, 8, 9, 10},
        {2, 2.5, 2.5, 3, 4, 4, 5, 6, 8, 10, 12, 13, 15},
        {3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20},
        {4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27},
        {6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40},
        {10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63},
        {14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97},
        {25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155},
        {40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250},
        {60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400},
        {100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630},
        {140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970},
        {250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300, 1400, 1550},
    };
    for (int g = 0; g < GRADES; g++)
        for (int r = 0; r < RANGES; r++)
            for (int k = 0; k < 2; k++) {
                double um[2];
                limits(um, k ? end[r] : inside[r], "h", g + 1);
                NEAR(um[0], -IT[g][r], 1e-9);
                NEAR(um[1], 0, 0);
            }
}

typedef struct deviation {
    char zone;
    double um[RANGES];
} deviation;

static void fit_table__shafts__each_deviation_as_printed(void) {
    /* published: ISO 286-1 as a textbook and JIS B 0401 print it (read): d to g the upper
     * deviation, k to p the lower one, k for IT4 to IT7 */
    static const deviation rows[] = {
        {'d', {-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230}},
        {'e', {-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135}},
        {'f', {-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68}},
        {'g', {-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20}},
        {'k', {0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5}},
        {'m', {2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23}},
        {'n', {4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40}},
        {'p', {6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (int r = 0; r < RANGES; r++) {
            const char zone[] = {rows[i].zone, '\0'};
            double um[2];
            limits(um, end[r], zone, 7);
            NEAR(um[zone[0] < 'h'], rows[i].um[r], 1e-9);
            if (zone[0] != 'k') continue;
            limits(um, end[r], zone, 8);
            NEAR(um[0], 0, 0);
        }
}

HS_TEST_MAIN("units_fit_table", TEST(fit_table__grades__each_cell_as_printed),
             TEST(fit_table__shafts__each_deviation_as_printed))
