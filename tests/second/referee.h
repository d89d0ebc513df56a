/* A second, independent solution of carbon in a section: lines of nodes in depth, integrated in
 * time by CVODE (SUNDIALS). It shares no code, table or unit with the program: millimetres,
 * seconds, degrees Celsius. */
#ifndef HS_TESTS_SECOND_REFEREE_H
#define HS_TESTS_SECOND_REFEREE_H

typedef enum referee_law { REFEREE_AGREN, REFEREE_TIBBETTS, REFEREE_LEE } referee_law;

typedef enum referee_shape { PLATE, BAR, TUBE_FROM_OUTSIDE, TUBE_FROM_BORE } referee_shape;

typedef struct referee_face {
    enum { SEALED, HELD, EXCHANGING } is;
    double carbon;        /* wt %: of the surface, or of the atmosphere */
    double exchange_mm_s; /* EXCHANGING only */
} referee_face;

typedef struct referee_heat {
    const double (*path)[2]; /* seconds, degrees Celsius */
    int points;
    referee_face face[2]; /* at depth 0, and at the far end */
    int saturates;        /* faces held to the carbon austenite can hold */
} referee_heat;

typedef struct referee_part {
    referee_shape shape;
    double wall_mm;   /* depth of the section; of a bar its radius */
    double radius_mm; /* of the face at depth 0; no matter for a plate */
    double core;      /* wt % */
    referee_law law;
    double Mn, Si, Ni, Cr, Mo, Al; /* REFEREE_LEE only */
} referee_part;

typedef struct referee_grid {
    int nodes;        /* 5 or more */
    double tolerance; /* of CVODE: relative; absolute a hundredth of it */
    double cold_C;    /* below nothing moves */
} referee_grid;

/** Carbon (wt %) at n depths after the heats. Returns 0, or CVODE's own complaint. */
int referee_run(double *carbon, const double *depth_mm, int n, const referee_part *part,
                const referee_heat *heat, int heats, referee_grid grid);

/** Diffusivity in mm2/s. */
double referee_diffusivity(const referee_part *part, double carbon, double celsius);

/** Most carbon in austenite beside cementite. */
double referee_saturation(double celsius);

#endif
