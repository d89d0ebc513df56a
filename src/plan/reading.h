/* A case depth read on a test piece or the part. It sets the scale of every computed depth, and its
 * own doubt takes the place of theirs. */
#ifndef HS_PLAN_READING_H
#define HS_PLAN_READING_H

#include "plan/draw.h"
#include "plan/limit.h"
#include "plan/response.h"

/** All zero: none; hs_reading_make fills it. */
typedef struct hs_reading {
    int present;
    int plan;            /* nothing else was measured: the plan itself is made with it */
    size_t face;         /* whose flat the reading was held against */
    int of_hardness;     /* the way reads a hardness, limit_HV; else carbon */
    double limit_HV;     /* NaN where it reads carbon */
    double read_m;       /* from the hardened surface */
    double from_blank_m; /* with the metal lost */
    double computed_m;   /* from the blank surface, at the middle of all inputs; 0: nothing there */
    double factor;       /* from_blank_m/computed_m; 0 where nothing was computed */
    double doubt_m;      /* of the reading, half width of 95 % */
    double doubt_here_m; /* with the test piece against the part */
} hs_reading;

/** Depth to a hardness on the axis of a response, from the blank surface (m), by the reading: the
 * computed depth at the middle of fire and medium times the reading's factor, and the reading's
 * doubt as drawn. Ms and hardness are drawn only where the limit is not the one that was read.
 * Where nothing had been computed the reading itself holds for limits up to its own, and 0 beyond.
 */
double hs_reading_depth(const hs_reading *reading, const hs_response *response,
                        const hs_steel *steel, const hs_limit *limit, const double z[HS_INPUTS]);

#endif
