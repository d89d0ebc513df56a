/* The cells of a section whose bow is asked for. */
#ifndef HARDSKIN_SRC_MODEL_QUENCH_BOW_MESH_H
#define HARDSKIN_SRC_MODEL_QUENCH_BOW_MESH_H

#include "hardskin/model/quench_bow.h"

/* As fine as the film, the case and the question ask, coarser until it fits. */
hs_status hs_bow_mesh_make(hs_quench_mesh *mesh, const hs_bow_question *q,
                           const hs_section_properties *p, const hs_curve *film, hs_error *err);

#endif
