/* What the wheel does to the part beside taking stock: it bends it, and may burn or crack it. */
#ifndef HS_PLAN_GRIND_CARE_H
#define HS_PLAN_GRIND_CARE_H

#include "hardskin/plan/result.h"

/** Change of bow over the part's length (m) when z is ground off one face alone of a plate cased on
 *  both: the stressed skin taken off one side lets it draw hollow there; 0 where nothing is known.
 *    size_m   thickness as hardened
 *    ground_m z
 *  Source   reference page on distortion, section 10: hs_bow_release with the free strain that the
 *           computed stress of the skin stands for, elastic */
double hs_grind_release_m(const hs_job *job, const hs_result *result, size_t dimension,
                          double size_m, double ground_m);

/** Fill out->care: burn and cracks by infeed, table speed, wheel, retained austenite, carbide,
 *  temper. Nothing where no step grinds. */
void hs_grind_care(hs_result_grind *out, const hs_job *job, const hs_result *result);

/** Does the shop's rough infeed suit a hardened face? At it a wheel burns a surface from burn_J_m3
 * on (out; NaN where that is not known). */
typedef enum hs_feeds {
    HS_FEEDS_GOOD,
    HS_FEEDS_MUCH, /* more than a hardened face bears */
    HS_FEEDS_BURN  /* every wheel burns */
} hs_feeds;
hs_feeds hs_grind_feeds(double *burn_J_m3, const hs_job *job);

#endif
