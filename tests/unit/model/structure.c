/* Rates of cooling and what they make of a steel, against published end-quench bands and blanks. */
#include "hardskin/model/case.h"
#include "hardskin/model/hardenability.h"
#include "hardskin/tables/steel.h"
#include "hardskin/units/hardness.h"
#include "support/check.h"

#include <stdio.h>
#include <string.h>

static const double KELVIN = 273.15, INCH = 0.0254;

/* Rate (K/s) at 700 C over distance from the quenched end, F/s at sixteenths of an inch: printed on
 * the trade's end-quench charts (SAE J406; from memory). */
static double end_quench_rate(double distance_mm) {
    static const double sixteenth[] = {1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 16, 20, 24, 28},
                        rate_F_s[] = {490, 305,  195,  125, 77, 56,  42,
                                      33,  21.4, 16.3, 10,  7,  5.1, 4};
    double at = log(fmax(distance_mm / 1e3 / INCH * 16, 1));
    size_t k = 1;
    while (k < 13 && at > log(sixteenth[k]))
        k++;
    double part = (at - log(sixteenth[k - 1])) / log(sixteenth[k] / sixteenth[k - 1]);
    return rate_F_s[k - 1] * pow(rate_F_s[k] / rate_F_s[k - 1], part) / 1.8;
}

typedef struct band {
    const char *steel;
    hs_composition mid;
    size_t n, lows;
    double high[13], low[10]; /* HRC at 1.5 3 5 7 9 11 13 15 20 25 30 35 40 mm */
} band;

static const double distance_mm[13] = {1.5, 3, 5, 7, 9, 11, 13, 15, 20, 25, 30, 35, 40};

/* published: EN 10084:2008 table 5, steels +H, as read; the middle of each analysis of table 3 */
static const band bands[] = {
    {"16MnCr5+H",
     {.C = .165, .Mn = 1.15, .Si = .25, .Cr = .95},
     13,
     6,
     {47, 46, 44, 41, 39, 37, 35, 33, 31, 30, 29, 28, 27},
     {39, 36, 31, 28, 24, 21}},
    {"17Cr3+H",
     {.C = .17, .Mn = .75, .Si = .25, .Cr = .85},
     10,
     4,
     {47, 44, 40, 33, 29, 27, 25, 24, 23, 21},
     {39, 35, 25, 20}},
    {"20MnCr5+H",
     {.C = .195, .Mn = 1.25, .Si = .25, .Cr = 1.15},
     5,
     5,
     {49, 49, 48, 46, 43},
     {41, 39, 36, 33, 30}},
    {"18CrMo4+H",
     {.C = .18, .Mn = .75, .Si = .25, .Cr = 1.05, .Mo = .20},
     5,
     5,
     {47, 46, 45, 42, 39},
     {39, 37, 34, 30, 27}},
};

static double hardness_at(const hs_composition *s, double austenite_K, double rate_K_s,
                          hs_structure *shares) {
    *shares = hs_structure_of(s, s->C, austenite_K, rate_K_s);
    return shares->martensite * hs_lath_martensite_HV(s->C) +
           hs_soft_part_HV(shares, s, s->C, rate_K_s);
}

/* published: EN 10084 table 5. The middle of the analysis must lie inside the band at every
 * distance, where the band has a lower limit by both. */
static void structure__end_quench__lies_inside_the_bands_of_en_10084(void) {
    double sum = 0, worst = 0;
    int both = 0;
    for (size_t b = 0; b < sizeof bands / sizeof *bands; b++)
        for (size_t i = 0; i < bands[b].n; i++) {
            hs_structure shares;
            double rate = end_quench_rate(distance_mm[i]);
            double HV = hardness_at(&bands[b].mid, 870 + KELVIN, rate, &shares);
            CHECK(HV <= hs_hardness_HV_of_HRC(bands[b].high[i]));
            NEAR(shares.martensite + shares.bainite + shares.soft, 1, 1e-12);
            printf("%s %4.1f mm %5.1f K/s: %3.0f HV, M %.2f B %.2f FP %.2f\n", bands[b].steel,
                   distance_mm[i], rate, HV, shares.martensite, shares.bainite, shares.soft);
            if (i >= bands[b].lows) continue;
            CHECK(HV >= hs_hardness_HV_of_HRC(bands[b].low[i]));
            double off = hs_hardness_HRC_of_HV(HV) - 0.5 * (bands[b].high[i] + bands[b].low[i]);
            sum += off * off;
            worst = fmax(worst, fabs(off));
            both++;
        }
    printf("off the middle of the bands: %.1f HRC root mean square, worst %.1f, %d places\n",
           sqrt(sum / both), worst, both);
}

/* published: steel maker's cards after UNI 7846, blanks core-hardened in oil and stress-relieved:
 * HB over diameter. HB and HV differ by less than 5 % here (A370). */
static void structure__core_of_a_blank__lies_inside_the_makers_card(void) {
    static const double size_mm[3] = {11, 30, 63};
    static const struct {
        const char *steel;
        double low[3], high[3];
    } card[] = {{"16MnCr5", {311, 224, 198}, {394, 311, 278}},
                {"20MnCr5", {363, 278, 232}, {438, 363, 327}}};
    for (size_t k = 0; k < 2; k++)
        for (size_t i = 0; i < 3; i++) {
            hs_steel steel;
            CHECK(hs_steel_find(&steel, card[k].steel, NULL) == HS_OK);
            hs_quenched q = {HS_QUENCHED_ROUND, size_mm[i] * 1e-3, .375 / INCH};
            hs_structure shares;
            double HV = 0;
            CHECK(hs_core_HV(&HV, &shares, &steel.mid, steel.mid.C, &q, 870 + KELVIN, NULL) ==
                  HS_OK);
            printf("%s %2.0f mm in oil: core %.0f HV, card %.0f-%.0f; M %.2f B %.2f FP %.2f\n",
                   card[k].steel, size_mm[i], HV, card[k].low[i], card[k].high[i],
                   shares.martensite, shares.bainite, shares.soft);
            CHECK(HV > .95 * card[k].low[i] && HV < 1.05 * card[k].high[i]);
        }
}

/* published: Maynier (from memory): above V1 all is martensite, below V3 all ferrite and pearlite;
 * the shares fall and rise all the way between */
static void structure__fastest_and_slowest__are_one_structure_alone(void) {
    for (size_t b = 0; b < sizeof bands / sizeof *bands; b++) {
        hs_structure last = {1, 0, 0};
        for (double log_K_s = 4; log_K_s >= -6; log_K_s -= 0.125) {
            hs_structure now =
                hs_structure_of(&bands[b].mid, bands[b].mid.C, 870 + KELVIN, pow(10, log_K_s));
            CHECK(now.martensite <= last.martensite && now.soft >= last.soft);
            if (log_K_s >= 4) NEAR(now.martensite, 1, 0);
            last = now;
        }
        NEAR(last.soft, 1, 0);
        NEAR(last.martensite + fabs(last.bainite), 0, 0);
    }
}

HS_TEST_MAIN("model structure", TEST(structure__fastest_and_slowest__are_one_structure_alone),
             TEST(structure__end_quench__lies_inside_the_bands_of_en_10084),
             TEST(structure__core_of_a_blank__lies_inside_the_makers_card))
