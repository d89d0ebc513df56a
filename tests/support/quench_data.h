/* Steels, places and cases of the independent quenches that the reference on distortion prints in
 * its sections 5 and 12, for all tests that set them up. */
#ifndef HS_TESTS_QUENCH_DATA_H
#define HS_TESTS_QUENCH_DATA_H

#include "hardskin/model/quench.h"
#include "hardskin/model/quench_bow.h"

/** One phase of constant strength: 15e-6/K, 100 MPa. */
hs_quench_steel test_steel_plain(double modulus_Pa, double conductivity_W_mK, double heat_J_m3K);

/** Austenite of 190 MPa at 20 C to 30 at 850, martensite that falls to .75 of its strength at 400
 *  C: 23e-6 and 12e-6/K, k 28, rho c 4.8e6. */
hs_quench_steel test_steel_hardening(double modulus_Pa);

/** Martensite of 1200 MPa from 400 C, strain .0151, Koistinen-Marburger .011. */
hs_quench_point test_point_even(void);

/** Where C = .18 + .62 erfc(depth / 1.4 mm) under each of two faces; INFINITY: no case there. */
hs_quench_point test_point_carburised(double depth_1_m, double depth_2_m);

/** The same point all over, whatever the mesh. */
void test_points_fill(hs_quench_point node[HS_QUENCH_NODES],
                      hs_quench_point fibre[HS_QUENCH_FIBRES], hs_quench_point p);

/** A case of .8 % at the surface and .16 % from its depth on, hard all through; none at depth 0. */
void test_layer(hs_quench_layer *layer, double case_m);

#endif
