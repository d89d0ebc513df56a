/* The conversion table row by row, as the standards' reprints have it: a figure typed wrongly in
 * the table would go unseen by spot values. */
#include "hardskin/units/hardness.h"
#include "support/check.h"

static double to(double hardness_HRC, hs_scale scale) {
    double out = NAN;
    hs_hardness_convert(&out, hardness_HRC, HS_HRC, scale, NULL);
    return out;
}

static void hardness_table__vickers__each_row_as_printed(void) {
    /* published: ASTM E140 table 1 (read in reprints), HV from 68 HRC down to 20 */
    static const double HV[] = {940, 900, 865, 832, 800, 772, 746, 720, 697, 674, 653, 633, 613,
                                595, 577, 560, 544, 528, 513, 498, 484, 471, 458, 446, 434, 423,
                                412, 402, 392, 382, 372, 363, 354, 345, 336, 327, 318, 310, 302,
                                294, 286, 279, 272, 266, 260, 254, 248, 243, 238};
    CHECK(sizeof HV / sizeof *HV == 49);
    for (int i = 0; i < 49; i++)
        NEAR(to(68 - i, HS_HV), HV[i], 1e-9);
}

static void hardness_table__brinell__each_row_as_printed(void) {
    /* published: ASTM A370 (50 to 20 in steps of five read, the rest from memory), HBW from 65 HRC
     * down to 20. E140 has 482 at 50 HRC in one reprint, 481 in the others. */
    static const double HBW[] = {739, 722, 705, 688, 670, 654, 634, 615, 595, 577, 560, 543,
                                 525, 512, 496, 481, 469, 455, 443, 432, 421, 409, 400, 390,
                                 381, 371, 362, 353, 344, 336, 327, 319, 311, 301, 294, 286,
                                 279, 271, 264, 258, 253, 247, 243, 237, 231, 226};
    CHECK(sizeof HBW / sizeof *HBW == 46);
    for (int i = 0; i < 46; i++)
        NEAR(to(65 - i, HS_HBW), HBW[i], 1e-9);
}

static void hardness_table__rockwell_A__each_row_as_printed(void) {
    /* published: ASTM E140 table 1 (read in reprints); linear between the rows */
    static const double rows[][2] = {{65, 83.9}, {60, 81.2}, {55, 78.5}, {50, 75.9},
                                     {45, 73.1}, {40, 70.4}, {30, 65.3}, {20, 60.5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        NEAR(to(rows[i][0], HS_HRA), rows[i][1], 1e-9);
}

HS_TEST_MAIN("units_hardness_table", TEST(hardness_table__vickers__each_row_as_printed),
             TEST(hardness_table__brinell__each_row_as_printed),
             TEST(hardness_table__rockwell_A__each_row_as_printed))
