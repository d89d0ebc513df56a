/* The window: how much stock a face must carry and how much it may. Plain sums of the reference
 * page on windows; letters as there. All lengths per side unless a size is named. Depths count from
 * the rough-machined surface before the fire, positive inward.
 *
 *   removal over a face runs from  s + g - m - V/2 - d  to  s + g - m + V/2 + d
 *   the finished surface lies      s + g -+ V/2 -+ d    below the blank surface, whatever m is
 *
 * so the scale lost (m) is part of what is needed, and no part of what may be left on. */
#ifndef HS_PLAN_WINDOW_H
#define HS_PLAN_WINDOW_H

#include "hardskin/plan/result.h"
#include "hardskin/units/format.h"

/** Smallest and largest of a size. */
typedef struct hs_limits {
    double low_m, high_m;
} hs_limits;

/** What one face brings into the sums. One sample of the doubt has low = high.
 *  A diameter is a dimension with the same face twice. */
typedef struct hs_face_sum {
    int ground;                         /* 0: stays as hardened */
    double clean_up_m;                  /* c: off even the lowest spot */
    double budget_m;                    /* B: deepest the finished surface may lie */
    double split_m;                     /* d: the wheel's mean plane is off by at most this */
    double lost_low_m, lost_high_m;     /* m: scale */
    double growth_low_m, growth_high_m; /* g: of this side; negative on a bore that opens */
} hs_face_sum;

/** Least and most stock per side.  need = c + m + V/2 + d - g,  may = B - V/2 - d - g. */
double hs_window_need(double clean_up_m, double lost_m, double shape_m, double split_m,
                      double growth_m);
double hs_window_may(double budget_m, double shape_m, double split_m, double growth_m);

/** The same for a face with its bad sides: most scale and least growth for need, most growth for
 *  may. A face that stays as hardened moves with its growth and its scale, out by g and in by m: it
 *  behaves like a face with exactly that stock, need = may = m - g, and the sums over both faces
 *  of a dimension stay right. */
double hs_face_need(const hs_face_sum *face, double shape_m);
double hs_face_may(const hs_face_sum *face, double shape_m);

/** Share of the removal one sample leaves over a ground face at stock s: depth of the finished
 *  surface below the blank surface at the deepest spot, and removal at the lowest. */
double hs_face_deepest(const hs_face_sum *face, double shape_m, double stock_m);
double hs_face_least_removal(const hs_face_sum *face, double shape_m, double stock_m);
double hs_face_most_removal(const hs_face_sum *face, double shape_m, double stock_m);

/** V, largest minus smallest removal over the face that the shape forces. All magnitudes.
 *    flat          bow along the face's normal, shimmed, and the lift of one corner
 *    old_centres   bar bowed f between centres made before the fire: 2 f (= run-out)
 *    remade        centres remade to halve the bow: f
 *    chuck         bar held on one end, curvature over the free length: 2 * k L^2 / 2
 *    ring          set to its own mean circle: half of largest - smallest diameter
 *    set_by_other  ring set by its other face: run-out (total indicator reading) as set
 *    ends          4 f D / L and the face's own run-out; D the size across the end */
double hs_shape_flat(double bow_m, double corner_lift_m);
double hs_shape_old_centres(double bow_m);
double hs_shape_remade(double bow_m);
double hs_shape_chuck(double curvature_1_m, double length_m);
double hs_shape_ring(double ovality_m);
double hs_shape_set_by_other(double run_out_m);
double hs_shape_ends(double bow_m, double across_m, double length_m, double run_out_m);

/** Rough sizes that both faces allow; empty (high < low) when they cross.
 *    outside   F_high + need_sum <= R <= F_low + may_sum
 *    bore      F_high - may_sum <= R <= F_low - need_sum
 *  need_sum and may_sum are over both faces (a diameter: twice the one face). */
hs_limits hs_window_rough(int bore, hs_limits finish, double need_sum_m, double may_sum_m);

/** The same for two faces with their own sums. A ground face whose need is above its own may makes
 * it empty by at least that much, whatever the other has to spare: only the sum is cut, but each
 * face keeps its limits. */
hs_limits hs_window_two(int bore, hs_limits finish, const double need_m[2], const double may_m[2],
                        const int ground[2]);

/** hs_window_two from the faces' letters, at that shape. */
hs_limits hs_window_faces(int bore, hs_limits finish, const hs_face_sum face[2], double shape_m);

/** Rough sizes when no face of the dimension is ground: R + g1 + g2 - m1 - m2 must lie inside the
 *  finished limits. Shape is not in it: a bowed part has that size only locally. */
hs_limits hs_window_as_hardened(int bore, hs_limits finish, const hs_face_sum face[2]);

/** go: the full rough tolerance fits; tight: open but narrower; stop: empty. NaN is stop. */
hs_verdict hs_window_verdict(hs_limits rough, double full_tolerance_m);

/** Largest V with which rough sizes from low to high still clean up (clean_m) and still leave the
 *  case (case_m), and with which each face alone can do both (face_m; it matters only where faces
 *  differ). The shape limit is the smallest. Infinite when no face is ground. Give a measured size
 * as low = high and faces without scale and growth, and these are the limits at the bench. */
typedef struct hs_shape_limits {
    double clean_m, case_m, face_m;
} hs_shape_limits;
hs_shape_limits hs_window_shape_limits(int bore, hs_limits finish, hs_limits rough,
                                       const hs_face_sum face[2]);
double hs_window_shape_limit(int bore, hs_limits finish, hs_limits rough,
                             const hs_face_sum face[2]);

/** The limits of V at the bench as sums of the measured size H, faces counted from the hardened
 *  surface (no scale, no growth): V <= times * (H - clean_from) and V <= times * (case_to - H), on
 *  inside sizes with both differences turned round; most_m is what each face alone holds. Not
 *  present where no face is ground. */
hs_result_bench hs_window_bench(int bore, hs_limits finish, const hs_face_sum face[2]);

/** How the total stock (R - F, or F - R on a bore) is shared: each face gets its need and the rest
 *  in proportion to what each may take. Returns the first face's stock. */
double hs_window_share(double total_m, const hs_face_sum face[2], double shape_m);

/** Size at which to turn a flat part over: what the crown of the first face measures when that
 *  face is clean, mean removal first_m and V/2 more at the crown. Equal shares: first = (H - F)/2.
 */
double hs_window_turn_at(double hardened_m, double first_m, double shape_m);

/** Round to the unit the sheet prints: 1 um, or 0.0001 in. Returns metres. Towards the safe side:
 *  need and rough_low HS_UP; may, rough_high, case left and shape limit HS_DOWN. A value that is a
 *  printable one but for the last bits is kept. */
double hs_window_round(double value_m, int inch, hs_round direction);

/** The same in inches. */
double hs_window_round_in(double value_m, hs_round direction);

#endif
