/* What a quench needs of a steel and a bath, from the tables. */
#ifndef HARDSKIN_MODEL_QUENCH_MATERIAL_H
#define HARDSKIN_MODEL_QUENCH_MATERIAL_H

#include "hardskin/model/quench.h"
#include "hardskin/tables/steel.h"

/** Phase data (tables/quench_steel.csv, quench_change.csv): one set for all low-alloy steels. */
HS_API void hs_quench_steel_usual(hs_quench_steel *steel);

/** Film coefficient of a medium ("oil", "water", "still water", ...).
 *  Returns  HS_OK; HS_E_WORD for a medium without a film in tables/quench_film.csv. */
HS_API hs_status hs_quench_film(hs_curve *film, const char *medium, hs_error *err);

/** A constant as a curve. */
HS_API hs_curve hs_curve_flat(double value);

/** A place in the section.
 *
 *    steel          hs_composition  in  its C is not used
 *    dissolved_pct  double          in  carbon in the austenite, wt %
 *    share          double          in  0 to 1, of martensite where Ms is passed; the rest turns
 *                                       soft before
 *  Ms after van Bohemen, its progress after Koistinen and Marburger, volume after Lement. */
HS_API hs_quench_point hs_quench_point_of(const hs_composition *steel, double dissolved_pct,
                                          double share);

enum { HS_QUENCH_LAYERS = 66 };

/** Carbon and share of martensite below an edge that carbon enters; the last row is the core and
 *  holds from there on. */
typedef struct hs_quench_layer {
    size_t n; /* 1: no case */
    double depth_m[HS_QUENCH_LAYERS], dissolved_pct[HS_QUENCH_LAYERS], share[HS_QUENCH_LAYERS];
} hs_quench_layer;

/** Fill the places of a mesh: a fibre by its distance from the nearest edge that carbon enters, a
 *  node as the mean of the fibres around it.
 *
 *    node, fibre  mesh->nodes, mesh->fibres x hs_quench_point  out
 *    mesh, section                                             in
 *    closed       one int per outline edge, 1 where no carbon enters; NULL: it enters everywhere
 *    layer, steel                                              in
 *  At an edge of the section the nearer face counts alone: there the case is a little deeper. */
HS_API void hs_quench_places(hs_quench_point *node, hs_quench_point *fibre,
                             const hs_quench_mesh *mesh, const hs_section *section,
                             const int *closed, const hs_quench_layer *layer,
                             const hs_composition *steel);

/** Most and least K of transformation plasticity to reckon with (1/Pa). */
HS_API double hs_quench_plasticity_most(void);
HS_API double hs_quench_plasticity_case_least(void);

#endif
