/* Written from the papers' formulas as the contract quotes them (case.md, 1 and 3), not from the
 * program's tables. */
#include "second/referee.h"

#include <math.h>

/* Agren, Scripta Met. 20 (1986) 1507, with the site fraction from atoms in 100 g */
static double agren(double carbon, double kelvin) {
    double atoms_C = carbon / 12.011, atoms_Fe = (100 - carbon) / 55.845;
    double site = atoms_C / atoms_Fe;
    double thermodynamic = 1 + site * (1 - site) * 8339.9 / kelvin;
    double activation = (1 / kelvin - 2.221e-4) * (17767 - 26436 * site);
    return 4.53e-7 * 1e6 * thermodynamic * exp(-activation);
}

/* Tibbetts, J. Appl. Phys. 51 (1980) 4813: cm2/s, cal */
static double tibbetts(double carbon, double kelvin) {
    return 47 * exp(-1.6 * carbon) * exp(-(37000 - 6600 * carbon) / (1.987 * kelvin));
}

/* Lee, Matlock and Van Tyne, ISIJ Int. 51 (2011) 1903: cm2/s, kJ */
static double lee(const referee_part *p, double carbon, double kelvin) {
    double front = .146 - .036 * carbon * (1 - 1.075 * p->Cr) - .0315 * p->Mn + .0509 * p->Si -
                   .0085 * p->Ni + .3031 * p->Mo - .0520 * p->Al;
    double kilojoule = 144.3 - 15.0 * carbon + .37 * carbon * carbon - 4.3663 * p->Mn +
                       4.0507 * p->Si - 1.2407 * p->Ni + 7.7260 * p->Cr + 12.1266 * p->Mo -
                       6.7886 * p->Al;
    return 100 * front * exp(-kilojoule * 1000 / (8.314462618 * kelvin));
}

double referee_diffusivity(const referee_part *part, double carbon, double celsius) {
    double kelvin = celsius + 273.15;
    if (part->law == REFEREE_TIBBETTS) return tibbetts(carbon, kelvin);
    if (part->law == REFEREE_LEE) return lee(part, carbon, kelvin);
    return agren(carbon, kelvin);
}

double referee_saturation(double celsius) {
    double u = (celsius - 900) / 100;
    return 1.22774 + u * (.293598 + u * .0142514);
}
