/* Words to SI: quantities as they stand in a sheet or behind a key of `quick`. */
#ifndef HARDSKIN_UNITS_QUANTITY_H
#define HARDSKIN_UNITS_QUANTITY_H

#include "hardskin/base/status.h"
#include "hardskin/units/kinds.h"

/** The compiled reader. Make one at the start, share it freely (it is never written to), free it at
 *  the end. */
typedef struct hs_units hs_units;

/** NULL when there is no memory. Free with hs_units_free. */
HS_API hs_units *hs_units_new(void);

/** Takes NULL. */
HS_API void hs_units_free(hs_units *units);

/* HS_SCALE_NONE = not a hardness. */
typedef enum hs_scale { HS_SCALE_NONE, HS_HRC, HS_HV, HS_HBW, HS_HRA, HS_HR15N, HS_HR30N } hs_scale;

enum { HS_QUANTITY_BYTES = 128 }; /* longest text that is read */

/** A quantity as understood. Values in SI (see kinds.h): points of temperature in K, a hardness in
 *  its own scale, a percentage in %. */
typedef struct hs_quantity {
    hs_kind kind;     /* as expected by the caller */
    double value;     /* what was written; middle of a range */
    double low, high; /* limits; both = value when one number was written */
    int spread;       /* written as a range or with a tolerance */
    hs_scale scale;   /* hardness only */
    char unit[16];    /* unit of the three numbers, for echo: "m", "K", "HRC" */
} hs_quantity;

/** Read a quantity of the kind the place asks for.
 *
 *  Number: 25.4  .010  1.6e-11  3/8  1 1/2  1-1/2  and the unicode fractions. Forms: one number
 * with unit; 900..950 C and 58-62 HRC (rising); 925 ±15 C (the tolerance is a
 * difference); 0.8 +0.4 mm (0.8 to 1.2); 25 +0.03/-0.01 mm; 1 h 30 min; 1 ft 2 1/2 in. Spaces may
 * be missing between number and unit. "CHD" before HS_CASE_DEPTH, "Ra" before HS_ROUGHNESS, U+0394
 * before HS_TEMPERATURE_DIFFERENCE. What can be read in two ways is refused, never guessed.
 *
 *    out       hs_quantity  out   SI; untouched on failure
 *    units     hs_units     in
 *    text      UTF-8        in    at most HS_QUANTITY_BYTES bytes
 *    expected  hs_kind      in    HS_NUMBER takes bare numbers only, the others none
 *
 *  Returns  HS_OK; HS_E_NUMBER unreadable; HS_E_AMBIGUOUS; HS_E_NO_UNIT; HS_E_UNIT wrong, unknown
 * or misspelt unit; HS_E_IMPOSSIBLE below absolute zero, or negative where that cannot be;
 *           HS_E_ENCODING; HS_E_MEMORY. err->column is the byte in `text`, from 1; err->help holds
 *           the right form.
 *  Source   tables/units.csv
 */
HS_API hs_status hs_quantity_read(hs_quantity *out, const hs_units *units, const char *text,
                                  hs_kind expected, hs_error *err);

/** As hs_quantity_read, but a text without any unit is taken in `bare_unit`, which must be one that
 *  units.csv knows for this kind ("m2/s"). For keys whose page names the unit of a bare number. */
HS_API hs_status hs_quantity_read_bare(hs_quantity *out, const hs_units *units, const char *text,
                                       hs_kind expected, const char *bare_unit, hs_error *err);

/** A tolerance by itself: "±0.05 mm" (U+00B1, or +/-). Refused without the sign.
 *  out: value = the half width, low = -value, high = value, spread = 1. For
 * HS_TEMPERATURE_DIFFERENCE the unit may be C, F or K. Returns as hs_quantity_read; HS_E_NUMBER
 * when the sign is missing. */
HS_API hs_status hs_quantity_read_plus_minus(hs_quantity *out, const hs_units *units,
                                             const char *text, hs_kind expected, hs_error *err);

/** "a length", "a temperature": the kind in words, for messages. */
HS_API const char *hs_kind_words(hs_kind kind);

/** Right forms of that kind, for help texts. */
HS_API const char *hs_kind_forms(hs_kind kind);

/** "HRC", "HV", "HBW", "HRA", "HR15N", "HR30N"; "" for HS_SCALE_NONE. */
HS_API const char *hs_scale_name(hs_scale scale);

/** The scale of that name; HS_SCALE_NONE if there is none. */
HS_API hs_scale hs_scale_named(const char *name);

#endif
