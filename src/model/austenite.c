#include "hardskin/model/austenite.h"

#include "constants.h"

#include <math.h>

double hs_acm_pct(double temp_K) {
    if (!(temp_K >= HS_K_AUSTENITE_ACM_LOW && temp_K <= HS_K_AUSTENITE_ACM_HIGH)) return NAN;
    double u = (temp_K - HS_K_AUSTENITE_ACM_CENTRE) / 100;
    return HS_K_AUSTENITE_ACM_0 + u * (HS_K_AUSTENITE_ACM_1 + u * HS_K_AUSTENITE_ACM_2);
}

double hs_ae1_K(const hs_composition *s) {
    return HS_K_AUSTENITE_AE1_BASE + HS_K_AUSTENITE_AE1_MN * s->Mn + HS_K_AUSTENITE_AE1_NI * s->Ni +
           HS_K_AUSTENITE_AE1_SI * s->Si + HS_K_AUSTENITE_AE1_CR * s->Cr;
}

double hs_ae3_K(const hs_composition *s) {
    if (!(s->C >= 0 && s->C <= HS_K_AUSTENITE_AE3_CARBON_HIGH)) return NAN;
    return HS_K_AUSTENITE_AE3_BASE + HS_K_AUSTENITE_AE3_ROOT_C * sqrt(s->C) +
           HS_K_AUSTENITE_AE3_NI * s->Ni + HS_K_AUSTENITE_AE3_SI * s->Si +
           HS_K_AUSTENITE_AE3_MO * s->Mo + HS_K_AUSTENITE_AE3_MN * s->Mn +
           HS_K_AUSTENITE_AE3_CR * s->Cr;
}

double hs_gunnarson_ratio(const hs_composition *s) {
    return pow(10, HS_K_AUSTENITE_GUNNARSON_SI * s->Si + HS_K_AUSTENITE_GUNNARSON_MN * s->Mn +
                       HS_K_AUSTENITE_GUNNARSON_CR * s->Cr + HS_K_AUSTENITE_GUNNARSON_NI * s->Ni +
                       HS_K_AUSTENITE_GUNNARSON_MO * s->Mo);
}

double hs_carbon_activity(double carbon_pct, double temp_K) {
    return carbon_pct * pow(10, HS_K_AUSTENITE_ELLIS_T / temp_K + HS_K_AUSTENITE_ELLIS_0 +
                                    HS_K_AUSTENITE_ELLIS_C * carbon_pct);
}
