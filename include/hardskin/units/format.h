/* SI values as text for reports: rounding, nothing else. */
#ifndef HARDSKIN_UNITS_FORMAT_H
#define HARDSKIN_UNITS_FORMAT_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef enum hs_round { HS_NEAREST, HS_UP, HS_DOWN } hs_round;

/** Round to a number of decimals (0 to 9). HS_UP is towards plus infinity, HS_DOWN towards minus.
 *  A value within 1e-9 of its own size (and 1e-9 of the last place) from a printable one counts as
 *  that one: 20.55 kept as 20.549999999999997 is 20.550, up or down. NaN stays NaN. */
HS_API double hs_round_to(double value, int decimals, hs_round direction);

/** "20.550 mm". Without the unit: hs_format_number(out, size, length_m * 1e3, ...). All of these
 *  return the length written, or 0 (and an empty text) when it does not fit or the value is not
 *  finite. `size` counts the NUL; 48 bytes are always enough. */
HS_API size_t hs_format_mm(char *out, size_t size, double length_m, int decimals,
                           hs_round direction);

/** "0.8091 in". */
HS_API size_t hs_format_inch(char *out, size_t size, double length_m, int decimals,
                             hs_round direction);

/** "1 1/2 in" when the length is a whole number of 64ths, to 1e-9; else 0. */
HS_API size_t hs_format_inch_fraction(char *out, size_t size, double length_m);

/** "925 C" and "1697 F", nearest. */
HS_API size_t hs_format_celsius(char *out, size_t size, double temp_K, int decimals);
HS_API size_t hs_format_fahrenheit(char *out, size_t size, double temp_K, int decimals);

/** "1 h 30 min", "20 min", "45 s": to the minute from two minutes up, else to the second. */
HS_API size_t hs_format_time(char *out, size_t size, double time_s, hs_round direction);

/** A bare number with fixed decimals, "-0.000" never. */
HS_API size_t hs_format_number(char *out, size_t size, double value, int decimals,
                               hs_round direction);

#endif
