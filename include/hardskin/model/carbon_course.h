/* A section through all its heats, on a mesh as fine as the depths need. */
#ifndef HARDSKIN_MODEL_CARBON_COURSE_H
#define HARDSKIN_MODEL_CARBON_COURSE_H

#include "hardskin/model/carbon.h"

enum { HS_CARBON_LEVELS = 8 };

/** What is left of a profile between two heats. */
typedef struct hs_carbon_left {
    size_t heats;            /* the heats before; 0: nothing of the kind */
    double cut_m;            /* taken off each face that carbon entered; the section's size stays */
    double stretch;          /* on the depths before the cut: a profile read deeper than computed */
    const hs_diffusivity *d; /* of the heats before; NULL: as of the others */
} hs_carbon_left;

/** A section, and the heats it goes through. */
typedef struct hs_carbon_course {
    hs_shape shape;
    double size_m, inner_radius_m, reach_m; /* as hs_carbon_mesh_make; a far side that lies inside
                                               the part is closed, whatever the heats say */
    double core_pct;                        /* all through at the start */
    const hs_heat *heat;
    size_t heats; /* 0 or more */
    const hs_diffusivity *d;
    hs_carbon_left left;
} hs_carbon_course;

/** How it ends. */
typedef struct hs_carbon_end {
    hs_carbon_mesh mesh;
    double carbon_pct[HS_CARBON_CELLS];
    hs_carbon_uptake uptake; /* of the last heat; gained through all heats */
    hs_carbon_work work;     /* scratch */
} hs_carbon_end;

/** Carbons whose depths have to be right. */
typedef struct hs_carbon_levels {
    size_t n;
    double carbon_pct[HS_CARBON_LEVELS];
} hs_carbon_levels;

typedef struct hs_carbon_accuracy {
    size_t cells;                     /* of the mesh taken */
    double error_m[HS_CARBON_LEVELS]; /* estimated, of the depth at each level */
} hs_carbon_accuracy;

/** Run a course on a mesh of so many cells (0: the usual number). What a cut lays bare deeper than
 *  the mesh is taken to be what its end holds.
 *  Returns  as hs_carbon_mesh_make and hs_carbon_run; `end` holds nothing of worth on failure. */
HS_API hs_status hs_carbon_course_run(hs_carbon_end *end, const hs_carbon_course *course,
                                      size_t cells, hs_error *err);

/** Run a course on meshes each twice as fine as the last until every depth asked for is good to
 *  .5 % and 1 um.
 *
 *  The estimate is the whole difference to the mesh of half the cells, the largest of a level and
 *  its neighbours. Second order would allow a third of it; but the error of reading between two
 *  centres comes and goes with where they lie. The steps in time grow finer with the mesh, so their
 *  error is in it. A depth may be worse where the carbon of the two meshes differs there by less
 *  than .001 %: in a wall that has levelled out it means nothing.
 *
 *    end       hs_carbon_end       out
 *    accuracy  hs_carbon_accuracy  out
 *    levels    hs_carbon_levels    in
 *
 *  Returns  as hs_carbon_course_run; HS_E_CONVERGE when HS_CARBON_CELLS do not do. */
HS_API hs_status hs_carbon_course_refine(hs_carbon_end *end, hs_carbon_accuracy *accuracy,
                                         const hs_carbon_course *course,
                                         const hs_carbon_levels *levels, hs_error *err);

/** Eight levels between core and surface, from the total case's (core + .07 %) to nine tenths. */
HS_API hs_carbon_levels hs_carbon_levels_usual(double core_pct, double surface_pct);

/** Deepest place, from face 1, that still has the carbon: linear between centres. 0 where the
 *  surface has not; the whole mesh where all of it has. For a carbon below the core's: the same,
 *  upside down. */
HS_API double hs_carbon_course_depth(const hs_carbon_end *end, const hs_carbon_course *course,
                                     double carbon_pct);

#endif
