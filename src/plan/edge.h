/* Edges of a ground face where its case is shallower than the flat's: inner corners, and edges
 * beyond which the part is masked. The face is judged there: that is its worst spot. At outer edges
 * the case is deeper, and the flat governs. */
#ifndef HS_PLAN_EDGE_H
#define HS_PLAN_EDGE_H

#include "hardskin/model/edge_case.h"
#include "hardskin/plan/job.h"

/** The worst end of one face. */
typedef struct hs_face_edge {
    double angle_rad;    /* it counts with: masks doubled, near corners summed; 0: nothing lowers */
    double corner_rad;   /* of the metal at that end, as drawn */
    size_t corner;       /* vertex of the outline, from 1 */
    int land;            /* narrow, with such an edge on both sides: judged as one edge */
    int masked;          /* the face beyond lets no carbon in */
    int wheel_in_corner; /* the face beyond is ground as well */
    int relieved;        /* it ends before an inner corner, where that is hardly felt */
    double lag;          /* what a level is divided by: square of the flat's surface share */
    hs_edge table;
} hs_face_edge;

/** Find the worst end of a face.
 *
 *    flat_m  double  in  case depth of the flat; tells what is near
 *    lag     double  in  square of (surface - core) / (medium - core) of the flat, up to 1
 *
 *  Returns  HS_OK; HS_E_RANGE where masks leave a strip that no model covers; HS_E_OUTLINE. */
hs_status hs_face_edge_find(hs_face_edge *out, const hs_job *job, size_t face, double flat_m,
                            double lag, hs_error *err);

/** Share of the flat's depth that the face has at that end; y as for hs_edge_carbon, of the medium.
 *  1 where nothing lowers it, 0 from the surface's level on. */
double hs_face_edge_share(const hs_face_edge *edge, double y);

/** How much deeper the wheel comes into the case per depth it takes, where it sinks an inner corner
 *  by working on both its faces: 1 or more. The case's boundary is taken as straight from below the
 *  corner to its bisector; it bulges towards the core, so this is the safe side. */
double hs_face_edge_steep(const hs_face_edge *edge, double y);

/** Sharpest outer edge of the ground faces of a job, between two faces that both take carbon (rad);
 *  0 where there is none. */
double hs_outer_edge(const hs_job *job);

/** Do two ground faces of a job meet in an edge? Then the wheel takes off both of its sides. */
int hs_ground_faces_meet(const hs_job *job);

#endif
