/* A section cut by upright rectangles, and what is left of it. */
#ifndef HS_MODEL_QUENCH_CLIP_H
#define HS_MODEL_QUENCH_CLIP_H

#include "hardskin/model/section.h"

enum {
    HS_CLIP_LOOPS = 17,     /* outline and holes */
    HS_CLIP_POINTS = 1024,  /* of one loop while it is cut */
    HS_CLIP_VERTICES = 200, /* of one loop before: four cuts add half each time at most */
    HS_CLIP_ALL = 1200      /* of all loops together */
};

/** Closed lines one after the other; the first is metal, the others are holes. */
typedef struct hs_clip {
    size_t loops;
    size_t start[HS_CLIP_LOOPS + 1];
    hs_point point[HS_CLIP_ALL];
} hs_clip;

/** Integrals over the metal of 1, x, y, xx, yy, xy. */
typedef struct hs_clip_moments {
    double A, x, y, xx, yy, xy;
} hs_clip_moments;

/** Scratch of one cut. */
typedef struct hs_clip_work {
    hs_point a[HS_CLIP_POINTS], b[HS_CLIP_POINTS];
} hs_clip_work;

/** Cut to the half-plane where the coordinate (0: x, 1: y) lies between low and high. Parts that
 *  fall apart stay joined by edges without area. Returns 0 when it does not fit. */
int hs_clip_between(hs_clip *out, const hs_clip *in, int coordinate, double low, double high,
                    hs_clip_work *work);

/** About (x0, y0), in units of dx and dy: a cell's own coordinates. */
hs_clip_moments hs_clip_measure(const hs_clip *clip, double x0, double y0, double dx, double dy);

#endif
