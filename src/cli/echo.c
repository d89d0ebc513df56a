#include "cli/echo.h"

#include "constants.h"

#include <math.h>
#include <string.h>

enum { POINTER_WIDE = 32, TEXT_WIDE = 22 };

typedef struct unit {
    const char *si, *name, *inch_name;
    double per, inch_per; /* how many of it one of SI makes; inch_per 0: no inch unit */
    double below;         /* only for values smaller than this; 0: any */
} unit;

/* The first that fits is taken. */
static const unit units[] = {
    {"m", "um", "uin", 1e6, 1e6 / 0.0254, 1e-5},
    {"m", "mm", "in", 1e3, 1 / 0.0254, 0},
    {"m2", "dm2", "", 1e2, 0, 0},
    {"m3", "L", "", 1e3, 0, 1},
    {"s", "min", "", 1. / 60, 0, 3600},
    {"s", "h", "", 1. / 3600, 0, 0},
};

/* Blanks up to a width; a letter of several bytes takes one place. */
static void pad(hs_out *out, const char *text, size_t wide) {
    size_t n = 0;
    for (const char *c = text; *c; c++)
        n += ((unsigned char)*c & 0xC0) != 0x80;
    hs_out_add(out, "%s%*s", text, n < wide ? (int)(wide - n) : 0, "");
}

static void add_temperature(hs_out *out, double temp_K, int inch) {
    double celsius = temp_K - HS_K_PHYSICAL_ZERO_CELSIUS, fahrenheit = celsius * 1.8 + 32;
    if (inch)
        hs_out_add(out, "%.5g F (%.4g C)", fahrenheit, celsius);
    else
        hs_out_add(out, "%.5g C", celsius);
}

static void add_value(hs_out *out, const hs_read *read, int inch) {
    double value = read->value;
    if (!strcmp(read->unit, "K")) {
        add_temperature(out, value, inch);
        return;
    }
    for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
        const unit *u = &units[i];
        if (strcmp(read->unit, u->si) != 0 || (u->below > 0 && !(fabs(value) < u->below))) continue;
        if (inch && u->inch_per > 0)
            hs_out_add(out, "%.6g %s (%.6g %s)", value * u->inch_per, u->inch_name, value * u->per,
                       u->name);
        else
            hs_out_add(out, "%.6g %s", value * u->per, u->name);
        return;
    }
    hs_out_add(out, "%.6g %s", value, read->unit);
}

void hs_echo_add(hs_out *out, const hs_read *read, int inch) {
    hs_out_add(out, "  ");
    pad(out, read->pointer, POINTER_WIDE);
    hs_out_add(out, " ");
    pad(out, read->text, TEXT_WIDE);
    hs_out_add(out, " = ");
    add_value(out, read, inch);
    hs_out_add(out, "\n");
}
