/* The uncertain inputs of a part, and their joint draws. */
#ifndef HS_PLAN_DRAW_H
#define HS_PLAN_DRAW_H

#include "hardskin/plan/result.h"

#include <stddef.h>
#include <stdint.h>

/** One standard normal number each; what it stands for is scaled where it is used. 1: each part of
 *  a box has its own (its stock, its place in the box, how it went into the bath and how it was set
 *  up); 0: one for all of them (one heat of steel, box, fire, bath, temper, and the models). */
#define HS_INPUT_LIST(X)                                                                           \
    X(HS_IN_TEMP, 0, "temperature of the fire")                                                    \
    X(HS_IN_DIFFUSIVITY, 0, "diffusivity of carbon")                                               \
    X(HS_IN_SURFACE, 0, "carbon at the surface in the box")                                        \
    X(HS_IN_TRANSFER, 0, "transfer of carbon through the surface")                                 \
    X(HS_IN_CORE, 0, "carbon of the steel")                                                        \
    X(HS_IN_PACK, 1, "scatter of the case within a load")                                          \
    X(HS_IN_MS, 0, "martensite start")                                                             \
    X(HS_IN_HARDNESS, 0, "computed hardness")                                                      \
    X(HS_IN_OXIDE, 0, "rate of scaling")                                                           \
    X(HS_IN_ATMOSPHERE, 0, "atmosphere of the reheat")                                             \
    X(HS_IN_RIM, 0, "soft rim")                                                                    \
    X(HS_IN_BLAST, 1, "metal taken by descaling")                                                  \
    X(HS_IN_BOW_Y, 1, "bow the sum does not hold, across the thickness")                           \
    X(HS_IN_BOW_X, 1, "bow the sum does not hold, across the width")                               \
    X(HS_IN_UNEVEN, 1, "unevenness of the quench")                                                 \
    X(HS_IN_SIDE, 1, "side that is cooled faster")                                                 \
    X(HS_IN_GROWTH_ACROSS, 0, "growth across the section")                                         \
    X(HS_IN_GROWTH_ALONG, 0, "growth of the length")                                               \
    X(HS_IN_RUN_OUT, 1, "tilt of the ends")                                                        \
    X(HS_IN_SETUP, 1, "set-up")                                                                    \
    X(HS_IN_QUENCH, 0, "quench and hardenability of the steel")                                    \
    X(HS_IN_READING, 0, "reading of the case depth")                                               \
    X(HS_IN_HEAT_UP, 0, "heat-up and cooling of the box")                                          \
    X(HS_IN_FILM, 0, "film of the quench")                                                         \
    X(HS_IN_PLASTICITY, 0, "plasticity of the transformation")                                     \
    X(HS_IN_MODEL_X, 0, "model of the bow, across the width")                                      \
    X(HS_IN_MODEL_Y, 0, "model of the bow, across the thickness")                                  \
    X(HS_IN_STOCK_X, 1, "stress in the stock, across the width")                                   \
    X(HS_IN_STOCK_Y, 1, "stress in the stock, across the thickness")                               \
    X(HS_IN_SOFT, 0, "where a soft core changes in the quench")

typedef enum hs_input {
#define X(id, own, name) id,
    HS_INPUT_LIST(X)
#undef X
        HS_INPUTS
} hs_input;

enum { HS_MAX_SAMPLES = 16384 };

/** Joint draws: z[sample][input], and one uniform number per dimension for the rough size. */
typedef struct hs_draws {
    size_t n, made; /* in use; made so far */
    uint64_t seed;
    double z[HS_MAX_SAMPLES][HS_INPUTS];
    double rough[HS_MAX_SAMPLES][HS_MAX_DIMENSIONS]; /* -1 to 1: place inside the tolerance */
} hs_draws;

/** How many draws a confidence asks for. N draws without a failure prove only p < 3/N (95 %), so a
 *  confidence nearer to 1 than that takes twice the usual number. */
size_t hs_draws_wanted(double confidence);

/** 95 % bound on the error of the q-quantile of n draws, from the draws themselves and whatever
 *  their law: half of what lies between the ranks n q +- 1.96 sqrt(n q (1 - q)).
 *    scratch   work  room for n values
 *  0 where the values are all alike or not finite there. */
double hs_draws_error(const double *values, size_t n, double q, double *scratch);

/** Fill n draws (n <= HS_MAX_SAMPLES); the same numbers for the same seed. */
void hs_draws_fill(hs_draws *draws, size_t n, uint64_t seed);

/** Take the first n draws of the same seed: more are made, or some of those made are left out. */
void hs_draws_take(hs_draws *draws, size_t n);

/** The input's name in words. */
const char *hs_input_name(hs_input input);

/** 1: it is drawn for each part of a box by itself. */
int hs_input_own(hs_input input);

/** Draw a part's own inputs anew, the others left as they are.
 *    rough   out  its places inside the rough tolerance, -1 to 1
 *    part    in   from 1; 0 is the part that the draws hold */
void hs_draws_own(double z[HS_INPUTS], double rough[HS_MAX_DIMENSIONS], uint64_t seed,
                  size_t sample, size_t part);

/** low .. value .. high are the 95 % bounds of an input: its value at a draw z. */
double hs_draw_between(double low, double value, double high, double z);

/** A factor with a 95 % bound of times or over `bound`. */
double hs_draw_factor(double bound, double z);

/** z as a share of the 95 % bound: 1 at z = 1.96. */
double hs_draw_share(double z);

#endif
