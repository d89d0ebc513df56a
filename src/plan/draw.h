/* The uncertain inputs of a part, and their joint draws. */
#ifndef HS_PLAN_DRAW_H
#define HS_PLAN_DRAW_H

#include "hardskin/plan/result.h"

#include <stddef.h>
#include <stdint.h>

/** One standard normal number each; what it stands for is scaled where it is used. */
#define HS_INPUT_LIST(X)                                                                           \
    X(HS_IN_TEMP, "temperature of the fire")                                                       \
    X(HS_IN_DIFFUSIVITY, "diffusivity of carbon")                                                  \
    X(HS_IN_SURFACE, "carbon at the surface in the box")                                           \
    X(HS_IN_TRANSFER, "transfer of carbon through the surface")                                    \
    X(HS_IN_CORE, "carbon of the steel")                                                           \
    X(HS_IN_PACK, "scatter of the case within a load")                                             \
    X(HS_IN_MS, "martensite start")                                                                \
    X(HS_IN_HARDNESS, "computed hardness")                                                         \
    X(HS_IN_OXIDE, "rate of scaling")                                                              \
    X(HS_IN_ATMOSPHERE, "atmosphere of the reheat")                                                \
    X(HS_IN_RIM, "soft rim")                                                                       \
    X(HS_IN_BLAST, "metal taken by descaling")                                                     \
    X(HS_IN_BOW_Y, "bow the sum does not hold, across the thickness")                              \
    X(HS_IN_BOW_X, "bow the sum does not hold, across the width")                                  \
    X(HS_IN_UNEVEN, "unevenness of the quench")                                                    \
    X(HS_IN_SIDE, "side that is cooled faster")                                                    \
    X(HS_IN_GROWTH_ACROSS, "growth across the section")                                            \
    X(HS_IN_GROWTH_ALONG, "growth of the length")                                                  \
    X(HS_IN_RUN_OUT, "tilt of the ends")                                                           \
    X(HS_IN_SETUP, "set-up")                                                                       \
    X(HS_IN_QUENCH, "quench and hardenability of the steel")                                       \
    X(HS_IN_READING, "reading of the case depth")                                                  \
    X(HS_IN_HEAT_UP, "heat-up and cooling of the box")                                             \
    X(HS_IN_FILM, "film of the quench")                                                            \
    X(HS_IN_PLASTICITY, "plasticity of the transformation")                                        \
    X(HS_IN_MODEL_X, "model of the bow, across the width")                                         \
    X(HS_IN_MODEL_Y, "model of the bow, across the thickness")                                     \
    X(HS_IN_STOCK_X, "stress in the stock, across the width")                                      \
    X(HS_IN_STOCK_Y, "stress in the stock, across the thickness")                                  \
    X(HS_IN_SOFT, "where a soft core changes in the quench")

typedef enum hs_input {
#define X(id, name) id,
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

/** low .. value .. high are the 95 % bounds of an input: its value at a draw z. */
double hs_draw_between(double low, double value, double high, double z);

/** A factor with a 95 % bound of times or over `bound`. */
double hs_draw_factor(double bound, double z);

/** z as a share of the 95 % bound: 1 at z = 1.96. */
double hs_draw_share(double z);

#endif
