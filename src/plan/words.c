#include "plan/words.h"

#include "constants.h"

#include <math.h>
#include <stdio.h>

hs_word hs_word_length(double length_m, int inch, hs_round direction) {
    hs_word word = {""};
    if (inch)
        hs_format_inch(word.text, sizeof word.text, length_m, 4, direction);
    else
        hs_format_mm(word.text, sizeof word.text, length_m, 3, direction);
    return word;
}

hs_word hs_word_about(double length_m, int inch, hs_round direction) {
    hs_word word = {""};
    if (inch)
        hs_format_inch(word.text, sizeof word.text, length_m, 1, direction);
    else
        hs_format_mm(word.text, sizeof word.text, length_m, 0, direction);
    return word;
}

hs_word hs_word_temp(double temp_K, int inch) {
    hs_word word = {""};
    if (inch)
        hs_format_fahrenheit(word.text, sizeof word.text, temp_K, 0);
    else
        hs_format_celsius(word.text, sizeof word.text, temp_K, 0);
    return word;
}

double hs_word_whole_degree_K(double temp_K, int inch) {
    double zero_K = inch ? HS_K_PHYSICAL_ZERO_CELSIUS - 32 / 1.8 : HS_K_PHYSICAL_ZERO_CELSIUS;
    double degree_K = inch ? 1 / 1.8 : 1;
    return zero_K + degree_K * floor((temp_K - zero_K) / degree_K + 1e-6);
}

hs_word hs_word_roughness(double ra_m, int inch) {
    const double uin_m = 25.4e-9;
    hs_word word;
    if (inch)
        snprintf(word.text, sizeof word.text, "Ra %.3g uin", ra_m / uin_m);
    else
        snprintf(word.text, sizeof word.text, "Ra %.2g um", 1e6 * ra_m);
    return word;
}

const char *hs_word_shape(double *reading_m, const hs_job *job, size_t dimension, double shape_m) {
    *reading_m = shape_m;
    switch (job->dimension[dimension].across) {
    case HS_ACROSS_FACES:
        return "the bow and half the corner lift together are";
    case HS_ACROSS_ENDS:
        return "the ends run out";
    default:
        break;
    }
    if (job->part.form != HS_RING) return "the run-out as held is";
    *reading_m = 2 * shape_m; /* V is half of it */
    return "the ovality (largest less smallest diameter) is";
}
