/* How much a section may bow in the quench: a few quenches computed, and between them any. The
 * side that is cooled faster, by how much, the film, the transformation plasticity: none of them
 * is known, and the sign of the bow turns with each; so what comes out is a surface to draw from,
 * not one bow. */
#ifndef HARDSKIN_MODEL_QUENCH_BOW_H
#define HARDSKIN_MODEL_QUENCH_BOW_H

#include "hardskin/model/quench_material.h"
#include "hardskin/model/quench_trace.h"

enum { HS_BOW_SIDES = 4, HS_BOW_FILMS = 3, HS_BOW_PLASTICITIES = 5 };

typedef struct hs_bow_question {
    const hs_section *section;
    const int *closed; /* as hs_quench_places */
    const hs_quench_layer *layer;
    double case_m; /* total case; 0: none */
    const hs_composition *steel;
    const char *medium;
    double start_K, bath_K;
    double uneven; /* between opposite sides, (h1 - h2)/mean: 95 % bound; 0: even */
    double plasticity_low_1_Pa, plasticity_high_1_Pa; /* equal: fixed */
    double diameter_m; /* of a round, whose `section` is a circle of this size; else 0 */
    double cells;      /* of the mesh, finer by this factor than usual; 0: 1 */
    double substep_K;  /* of the fibres; 0: the usual */
    int coarse;       /* half the cells across, one film, three plasticities: a tenth of the time */
    double first_rad; /* the sides count from the principal axis nearest to this direction */
    int second_only;  /* the first axis' sides are not asked for and stay zero */
    const double *edge_factor; /* on the film, of each outline edge, or NULL */
    int mirror_x, mirror_y;    /* section and case are their own mirror image across x, y */
    hs_quench_trace *trace;    /* out, may be NULL: of one quench, for drawing; none: 0 moments */
    int alike;                 /* both, and a quarter turn changes nothing: a round, a square */
} hs_bow_question;

/** Curvature per side that is cooled faster (one of the principal axes, either way) at the bound
 *  of unevenness, and of the even quench; for three films and some plasticities. */
typedef struct hs_bow_surface {
    hs_section_properties section;
    double axis_x[HS_BOW_SIDES], axis_y[HS_BOW_SIDES]; /* unit vectors of the sides */
    double film_log[HS_BOW_FILMS];                     /* ln of the factor on the film */
    size_t plasticities;
    double plasticity_1_Pa[HS_BOW_PLASTICITIES];
    double even[HS_BOW_FILMS][HS_BOW_PLASTICITIES][2];               /* kappa_x, kappa_y, 1/m */
    double side[HS_BOW_SIDES][HS_BOW_FILMS][HS_BOW_PLASTICITIES][2]; /* less the even ones */
    double peak_even_1_m[HS_BOW_FILMS][HS_BOW_PLASTICITIES]; /* largest curvature on the way */
    double peak_side_1_m[HS_BOW_FILMS][HS_BOW_PLASTICITIES]; /* with a side cooled faster */
    double peak_1_m;                                         /* of any of the runs */
    double doubt_share; /* of the peak: fibres against solid bodies, one standard deviation */
    double surface_Pa;  /* stress of the skin, even quench, middle plasticity and film */
    double soft;        /* share of the core that does not turn to martensite */
    size_t runs;
    double uneven; /* bound of the runs */
} hs_bow_surface;

typedef struct hs_bow_work {
    hs_quench_mesh mesh;
    hs_quench_work work;
    hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];
} hs_bow_work;

/** Can two sides differ so, (h1 - h2)/mean?  Returns  HS_OK; HS_E_IMPOSSIBLE. */
HS_API hs_status hs_bow_uneven_check(double uneven, hs_error *err);

/** Can the quenches of a question be computed? Section, film and mesh; returns as
 *  hs_bow_surface_make. */
HS_API hs_status hs_bow_check(const hs_bow_question *question, hs_bow_work *work, hs_error *err);

/** Compute the surface: 3 to 15 quenches.
 *  Returns  HS_OK; HS_E_OUTLINE, HS_E_WORD (medium), HS_E_IMPOSSIBLE, HS_E_TOO_LARGE,
 *           HS_E_CONVERGE. */
HS_API hs_status hs_bow_surface_make(hs_bow_surface *surface, const hs_bow_question *q,
                                     hs_bow_work *work, hs_error *err);

/** Doubt of straight fibres against a solid body, one standard deviation as a share of the largest
 *  curvature on the way, by the section's shape (tables/quench_change.csv). */
HS_API double hs_bow_doubt_share(const hs_section_properties *section);

/** Curvatures of one quench (1/m).
 *    uneven       double  in  times the bound of the runs; 0 even
 *    direction    double  in  rad from the first side's axis: the side that is cooled faster.
 *                             Between the axes their parts are added
 *    film_log     double  in  ln of the factor on the film, held at the ends of the runs
 *    plasticity   double  in  1/Pa, held at the ends */
HS_API void hs_bow_surface_at(double *kappa_x_1_m, double *kappa_y_1_m,
                              const hs_bow_surface *surface, double uneven, double direction,
                              double film_log, double plasticity_1_Pa);

/** Largest curvature on the way of such a quench (1/m): what the doubt of the model is a share of.
 *  As hs_bow_surface_at. */
HS_API double hs_bow_peak_at(const hs_bow_surface *surface, double uneven, double film_log,
                             double plasticity_1_Pa);

/** What one quench is drawn with: a standard normal number each. */
enum {
    HS_BOW_UNEVEN,     /* its size: half-normal with the bound as 95 % quantile */
    HS_BOW_SIDE,       /* one of eight directions, alike likely */
    HS_BOW_FILM,       /* within its bound, as a factor */
    HS_BOW_PLASTICITY, /* anywhere in its range, alike likely */
    HS_BOW_MODEL_X,    /* doubt of the model */
    HS_BOW_MODEL_Y,
    HS_BOW_SOFT, /* where a soft core changes: a factor on all of it */
    HS_BOW_INPUTS
};

/** Curvatures (1/m) of one drawn quench.
 *    uneven   double  in  bound, in the place of that of the runs (taken as linear in it) */
HS_API void hs_bow_curvatures(double *kappa_x_1_m, double *kappa_y_1_m,
                              const hs_bow_surface *surface, double uneven,
                              const double z[HS_BOW_INPUTS]);

/** Half the difference of the curvatures (1/m, along the second axis) with the one and with the
 *  other side of it cooled faster: how far a wall's curvature swings where the unevenness turns
 *  round along it.  As hs_bow_curvatures; the side is not drawn. */
HS_API double hs_bow_swing(const hs_bow_surface *surface, double uneven,
                           const double z[HS_BOW_INPUTS]);

enum { HS_BOW_DRAWS = 4096 };

/** Magnitudes over a length (m). */
typedef struct hs_bow_envelope {
    double bow_m, low_m, high_m; /* of the resultant: median, 5 % and 95 % */
    double x_m, y_m;             /* medians across x and y */
} hs_bow_envelope;

/** Draw quenches from a surface: unevenness half-normal with its bound as the 95 % quantile, the
 *  faster side any of eight directions, the film within its bound, plasticity anywhere in its
 *  range, and the doubt of the model.
 *    column  HS_BOW_DRAWS doubles  scratch */
HS_API void hs_bow_draw(hs_bow_envelope *out, const hs_bow_surface *surface, double length_m,
                        double *column);

/** Linear growth of the length against the soft state, a third of the mean change of volume over
 *  the places of the work's last surface.  NaN if a place is none. */
HS_API double hs_bow_growth(const hs_bow_work *work);

#endif
