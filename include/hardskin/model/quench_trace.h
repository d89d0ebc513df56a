/* One quench kept for drawing: how marked places cool, how the bow comes and goes, and the stress
 * that is left across the section. */
#ifndef HARDSKIN_MODEL_QUENCH_TRACE_H
#define HARDSKIN_MODEL_QUENCH_TRACE_H

#include "hardskin/model/quench.h"

enum { HS_TRACE_MOMENTS = 64, HS_TRACE_PLACES = 32 };

/** Marked places: in the middle; at the faster and the slower side, in the middle of it; farthest
 *  out. */
enum { HS_MARK_CENTRE, HS_MARK_FASTER, HS_MARK_SLOWER, HS_MARK_CORNER, HS_TRACE_MARKS };

typedef struct hs_quench_trace {
    double ax, ay;                 /* outward normal of the side that is cooled faster */
    double uneven;                 /* between the sides */
    double plasticity_1_Pa;        /* of the curvatures and stresses kept */
    hs_point mark[HS_TRACE_MARKS]; /* from the centroid */
    size_t moments;                /* times rising, the last one cold */
    double time_s[HS_TRACE_MOMENTS];
    double mark_K[HS_TRACE_MOMENTS][HS_TRACE_MARKS];
    double mean_K[HS_TRACE_MOMENTS];
    double along_1_m[HS_TRACE_MOMENTS];  /* curvature in the direction of (ax, ay): strain rises by
                                            it that way */
    double across_1_m[HS_TRACE_MOMENTS]; /* square to it, a quarter turn on */
    size_t places; /* of a strip through the centroid, from the slower side to the faster one */
    double place_m[HS_TRACE_PLACES];   /* along (ax, ay), from the centroid */
    double stress_Pa[HS_TRACE_PLACES]; /* along the part, when cold; > 0 tension */
} hs_quench_trace;

/** What the watch of a run needs; start it, give it with hs_quench_trace_watch to hs_quench_run. */
typedef struct hs_quench_tracer {
    hs_quench_trace *trace;
    size_t node[HS_TRACE_MARKS];
    size_t plasticity; /* index of the one that is kept */
    size_t stride, seen;
    double last_s; /* of the last moment, kept or not */
} hs_quench_tracer;

/** Begin a trace of a run of `c`; its unevenness and its middle plasticity are noted.
 *    tracer, trace  out
 *    c              in   n >= 1 */
HS_API void hs_quench_trace_start(hs_quench_tracer *tracer, hs_quench_trace *trace,
                                  const hs_quench_case *c);

/** hs_quench_watch; context: the tracer. Of a long run every second, fourth, ... moment stays. */
HS_API void hs_quench_trace_watch(void *tracer, const hs_quench_moment *moment,
                                  const double *node_K);

/** After the run: the last moment and the stresses.
 *    left  in  of the run, c->n of them */
HS_API void hs_quench_trace_end(hs_quench_tracer *tracer, const hs_quench_case *c,
                                const hs_quench_left *left, const hs_quench_work *work);

#endif
