#include "hardskin/units/format.h"
#include "units/unit_row.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Noise of binary fractions and of one conversion: a value this close to a printable one is that
 * one. */
static const double guard = 1e-9;

enum { MAX_DECIMALS = 9, SIXTY_FOURTHS = 64 };

/* The way back from SI, by the same row of units.csv the reader uses. */
static double in_unit(const char *unit, double value) {
    hs_unit_row row = {"", "", 1, 1, 0};
    hs_unit_find(&row, unit, strlen(unit));
    return value * row.divide / row.multiply - row.add;
}

double hs_round_to(double value, int decimals, hs_round direction) {
    int places = decimals < 0 ? 0 : decimals > MAX_DECIMALS ? MAX_DECIMALS : decimals;
    double power = pow(10, places), scaled = value * power, near = nearbyint(scaled);
    if (!isfinite(scaled)) return value;
    int noise = fabs(scaled - near) <= guard * fmax(1, fabs(scaled));
    if (!noise && direction == HS_UP) near = ceil(scaled);
    if (!noise && direction == HS_DOWN) near = floor(scaled);
    if (!noise && direction == HS_NEAREST) {
        /* halves go away from zero, also when noise keeps them a hair below */
        double half = floor(fabs(scaled)) + 0.5;
        int is_half = fabs(fabs(scaled) - half) <= guard * fmax(1, fabs(scaled));
        near = is_half ? copysign(half + 0.5, scaled) : round(scaled);
    }
    return near / power + 0.0;
}

static size_t put(char *out, size_t size, const char *text) {
    size_t length = strlen(text);
    if (size == 0) return 0;
    out[0] = '\0';
    if (length >= size) return 0;
    memcpy(out, text, length + 1);
    return length;
}

static size_t put_number(char *out, size_t size, double value, int decimals, hs_round direction,
                         const char *unit) {
    char text[96] = "";
    int places = decimals < 0 ? 0 : decimals > MAX_DECIMALS ? MAX_DECIMALS : decimals;
    double rounded = hs_round_to(value, places, direction);
    if (rounded == 0) rounded = 0;
    if (isfinite(rounded) && fabs(rounded) < 1e15)
        snprintf(text, sizeof text, "%.*f%s", places, rounded, unit);
    return put(out, size, text);
}

size_t hs_format_number(char *out, size_t size, double value, int decimals, hs_round direction) {
    return put_number(out, size, value, decimals, direction, "");
}

size_t hs_format_mm(char *out, size_t size, double length_m, int decimals, hs_round direction) {
    return put_number(out, size, in_unit("mm", length_m), decimals, direction, " mm");
}

size_t hs_format_inch(char *out, size_t size, double length_m, int decimals, hs_round direction) {
    return put_number(out, size, in_unit("in", length_m), decimals, direction, " in");
}

size_t hs_format_celsius(char *out, size_t size, double temp_K, int decimals) {
    return put_number(out, size, in_unit("C", temp_K), decimals, HS_NEAREST, " C");
}

size_t hs_format_fahrenheit(char *out, size_t size, double temp_K, int decimals) {
    return put_number(out, size, in_unit("F", temp_K), decimals, HS_NEAREST, " F");
}

size_t hs_format_inch_fraction(char *out, size_t size, double length_m) {
    char text[96] = "";
    double parts = in_unit("in", length_m) * SIXTY_FOURTHS, whole = nearbyint(parts);
    if (size) out[0] = '\0';
    if (!(whole > 0 && whole < 1e9) || fabs(parts - whole) > guard * fmax(1, whole)) return 0;
    long inches = (long)whole / SIXTY_FOURTHS, top = (long)whole % SIXTY_FOURTHS;
    long bottom = SIXTY_FOURTHS;
    while (top && top % 2 == 0) {
        top /= 2;
        bottom /= 2;
    }
    if (!top)
        snprintf(text, sizeof text, "%ld in", inches);
    else if (!inches)
        snprintf(text, sizeof text, "%ld/%ld in", top, bottom);
    else
        snprintf(text, sizeof text, "%ld %ld/%ld in", inches, top, bottom);
    return put(out, size, text);
}

size_t hs_format_time(char *out, size_t size, double time_s, hs_round direction) {
    char text[96] = "";
    if (size) out[0] = '\0';
    if (!(time_s >= 0 && time_s < 1e12)) return 0;
    double seconds = hs_round_to(time_s, 0, direction);
    double minutes = hs_round_to(in_unit("min", time_s), 0, direction);
    long h = (long)minutes / 60, min = (long)minutes % 60;
    if (time_s < 120 && seconds < 120)
        snprintf(text, sizeof text, "%.0f s", seconds);
    else if (!h)
        snprintf(text, sizeof text, "%ld min", min);
    else if (!min)
        snprintf(text, sizeof text, "%ld h", h);
    else
        snprintf(text, sizeof text, "%ld h %ld min", h, min);
    return put(out, size, text);
}
