#include "plan/chuck.h"

#include "constants.h"
#include "hardskin/model/grind.h"

#include <math.h>
#include <string.h>

void hs_chuck_normal(double *nx, double *ny, const hs_job *job, size_t face) {
    const hs_face *f = &job->face[face];
    hs_section_edge edge;
    *nx = *ny = 0;
    if (job->part.form == HS_PLATE) {
        *ny = !strcmp(f->name, "top") || !strcmp(f->name, "bottom");
        *nx = !strcmp(f->name, "front") || !strcmp(f->name, "back");
    } else if (f->edge > 0 &&
               hs_section_edge_at(&edge, &job->part.section, f->edge, NULL) == HS_OK) {
        *nx = edge.nx;
        *ny = edge.ny;
    }
}

/* Second moment that a load along n meets: the deflection along n is that of a beam with it. */
static double stiffness_m4(const hs_section_properties *p, double nx, double ny) {
    double det = p->Ix_m4 * p->Iy_m4 - p->Ixy_m4 * p->Ixy_m4;
    return det / (p->Iy_m4 * ny * ny - 2 * p->Ixy_m4 * nx * ny + p->Ix_m4 * nx * nx);
}

void hs_chuck_weak(double *nx, double *ny, const hs_job *job) {
    hs_section_properties p;
    double least_m4 = INFINITY;
    *nx = *ny = 0;
    if (job->part.held != HS_PULLED_FLAT) return;
    if (job->part.form == HS_PLATE) *ny = 1;
    if (job->part.form != HS_PROFILE || hs_section_measure(&p, &job->part.section, NULL) != HS_OK)
        return;
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_dimension *d = &job->dimension[i];
        double x, y;
        hs_chuck_normal(&x, &y, job, d->face[0]);
        if (d->across != HS_ACROSS_FACES || (x == 0 && y == 0)) continue;
        double m4 = stiffness_m4(&p, x, y);
        if (!(m4 < least_m4)) continue;
        least_m4 = m4;
        *nx = x;
        *ny = y;
    }
}

static int slot(const hs_job *job, const hs_dimension *d) {
    hs_edge_pair pair;
    double apart_m;
    size_t j = job->face[d->face[0]].edge, k = job->face[d->face[1]].edge;
    return j > 0 && k > 0 && j != k &&
           hs_section_pair(&pair, &apart_m, &job->part.section, j, k, NULL) == HS_OK &&
           pair == HS_EDGES_INSIDE;
}

int hs_chuck_pulls(const hs_job *job, const hs_dimension *d, double weak_x, double weak_y) {
    const double same = 1e-9; /* of the cosine */
    double x, y;
    if (d->across != HS_ACROSS_FACES || (weak_x == 0 && weak_y == 0)) return 0;
    hs_chuck_normal(&x, &y, job, d->face[0]);
    return fabs(x * weak_x + y * weak_y) > 1 - same && !slot(job, d);
}

/* A profile lies on the narrower of the two. */
static double narrower_m(const hs_job *job, const hs_dimension *d) {
    double least_m = INFINITY;
    for (int k = 0; k < 2; k++) {
        hs_section_edge edge;
        if (hs_section_edge_at(&edge, &job->part.section, job->face[d->face[k]].edge, NULL) ==
            HS_OK)
            least_m = fmin(least_m, edge.length_m);
    }
    return least_m;
}

double hs_chuck_pull_Pa(const hs_job *job, const hs_dimension *d, double size_m, double bow_m) {
    double x, y, pull_Pa;
    hs_section_properties p;
    hs_status status = HS_E_OUTLINE;
    hs_chuck_normal(&x, &y, job, d->face[0]);
    if (x == 0 && y == 0) return NAN;
    if (job->part.form == HS_PLATE)
        status = hs_grind_flatten_Pa(&pull_Pa, bow_m, size_m, job->part.length_m, NULL);
    else if (hs_section_measure(&p, &job->part.section, NULL) == HS_OK)
        status = hs_grind_flatten_section_Pa(&pull_Pa, bow_m, stiffness_m4(&p, x, y),
                                             narrower_m(job, d), job->part.length_m, NULL);
    return status == HS_OK ? pull_Pa : NAN;
}

double hs_chuck_flattens_m(const hs_job *job, const hs_dimension *d, double size_m) {
    double per_m_Pa = hs_chuck_pull_Pa(job, d, size_m, 1); /* the pull goes with the bow */
    return per_m_Pa > 0 ? HS_K_GRINDING_CHUCK_PULL_LOW / per_m_Pa : 0;
}
