/* HRC and HV of ASTM E140 by bisection: the models convert some hundred thousand times a plan. Same
 * answers as hardskin/units/hardness.h, which a test holds it to. */
#ifndef HS_MODEL_E140_H
#define HS_MODEL_E140_H

/** Linear between the rows of tables/e140.csv; NaN outside 20 to 68 HRC, 238 to 940 HV. */
double hs_e140_HV(double hardness_HRC);
double hs_e140_HRC(double hardness_HV);

#endif
