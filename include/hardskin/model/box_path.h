/* The temperature of the part in a box as a few points: recorded step by step, thinned at the end.
 */
#ifndef HARDSKIN_MODEL_BOX_PATH_H
#define HARDSKIN_MODEL_BOX_PATH_H

#include "hardskin/model/carbon.h"

enum { HS_BOX_RECORD = 600, HS_BOX_POINTS = 60 };

/** Temperature and its rate (K/s) at the end of every step. */
typedef struct hs_box_record {
    size_t n;
    double time_s[HS_BOX_RECORD], temp_K[HS_BOX_RECORD], rate_K_s[HS_BOX_RECORD];
} hs_box_record;

/** Returns HS_OK; HS_E_CONVERGE when the record is full. */
hs_status hs_box_record_add(hs_box_record *record, double time_s, double temp_K, double rate_K_s,
                            hs_error *err);

/** Temperature between two recorded steps: cubic through both values and rates. */
double hs_box_record_at(const hs_box_record *record, size_t step, double time_s);

/** When the path crosses a temperature between record `step` and the one after it, which lie on
 *  both sides of it. */
double hs_box_record_cross(const hs_box_record *record, size_t step, double temp_K);

/** Thin records first..last into at most HS_BOX_POINTS points whose chords stay within a kelvin of
 *  the path, or within what it takes. Times count from `first`. Returns how many; the chord's error
 *  goes to chord_K. */
size_t hs_box_record_thin(hs_heat_point out[HS_BOX_POINTS], double *chord_K,
                          const hs_box_record *record, size_t first, size_t last);

#endif
