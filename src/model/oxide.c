#include "hardskin/model/oxide.h"

#include "constants.h"

#include <math.h>

static double arrhenius(double k0, double Q_J_mol, double temp_K) {
    return k0 * exp(-Q_J_mol / (HS_K_PHYSICAL_GAS_CONSTANT * temp_K));
}

/* The two sources disagree where they meet; log-linear between keeps kp rising with temperature. */
static double iron_kp(double temp_K) {
    double from = HS_K_OXIDATION_COOL_TO, to = HS_K_OXIDATION_HOT_FROM;
    if (temp_K >= to) return arrhenius(HS_K_OXIDATION_HOT_K0, HS_K_OXIDATION_HOT_Q, temp_K);
    if (temp_K <= from) return arrhenius(HS_K_OXIDATION_COOL_K0, HS_K_OXIDATION_COOL_Q, temp_K);
    double low = log(arrhenius(HS_K_OXIDATION_COOL_K0, HS_K_OXIDATION_COOL_Q, from));
    double high = log(arrhenius(HS_K_OXIDATION_HOT_K0, HS_K_OXIDATION_HOT_Q, to));
    return exp(low + (high - low) * (temp_K - from) / (to - from));
}

static double steel_factor(double carbon_pct) {
    double c0 = HS_K_OXIDATION_STEEL_C_LOW, c1 = HS_K_OXIDATION_STEEL_C_HIGH;
    double f0 = HS_K_OXIDATION_STEEL_FACTOR_LOW_C, f1 = HS_K_OXIDATION_STEEL_FACTOR_HIGH_C;
    if (carbon_pct <= c0) return f0;
    if (carbon_pct >= c1) return f1;
    return f0 + (f1 - f0) * (carbon_pct - c0) / (c1 - c0);
}

static hs_status check_carbon(double carbon_pct, hs_error *err) {
    if (carbon_pct >= 0 && carbon_pct <= HS_K_OXIDATION_CARBON_MOST) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "carbon of a steel lies between 0 and 2.2 %",
                   "%g %% carbon is no steel", carbon_pct);
}

static hs_status check_temperature(double temp_K, int cold_counts, hs_error *err) {
    int hot_enough = temp_K >= HS_K_OXIDATION_RANGE_LOW || (!cold_counts && temp_K > 0);
    if (hot_enough && temp_K <= HS_K_OXIDATION_RANGE_HIGH) return HS_OK;
    return hs_fail(
        err, HS_E_RANGE, "scale is known from 500 to 1250 C; up to 300 C it is negligible",
        "scale at %.0f C is outside the range of the model", temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
}

hs_status hs_oxide_kp(double *kp_kg2_m4_s, double temp_K, double carbon_pct, hs_error *err) {
    hs_status status = check_temperature(temp_K, 1, err);
    if (!status) status = check_carbon(carbon_pct, err);
    if (!status) *kp_kg2_m4_s = steel_factor(carbon_pct) * iron_kp(temp_K);
    return status;
}

hs_status hs_oxide_hold(double *integral_kg2_m4, double temp_K, double hold_s, double carbon_pct,
                        hs_error *err) {
    double kp = 0;
    hs_status status = hs_oxide_kp(&kp, temp_K, carbon_pct, err);
    if (status) return status;
    if (!(hold_s >= 0 && isfinite(hold_s)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a time of 0 or more", "a hold of %g s", hold_s);
    *integral_kg2_m4 = kp * hold_s;
    return HS_OK;
}

/* Mean of kp of iron between two temperatures on one smooth branch, by five-point Gauss-Legendre
 * on pieces of at most 40 K, where its relative error is below 1e-12. */
static double mean_kp(double t0, double t1) {
    static const double x[5] = {-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831,
                                0.9061798459386640};
    static const double w[5] = {0.2369268850561891, 0.4786286704993665, 0.5688888888888889,
                                0.4786286704993665, 0.2369268850561891};
    int pieces = 1 + (int)(fabs(t1 - t0) / 40);
    double step = (t1 - t0) / pieces, sum = 0;
    for (int p = 0; p < pieces; p++)
        for (int i = 0; i < 5; i++)
            sum += w[i] * iron_kp(t0 + step * (p + 0.5 + 0.5 * x[i]));
    return sum / (2 * pieces);
}

/* Integral over a straight piece of a heat, cut where kp has a kink. */
static double ramp_integral(double t0, double t1, double time_s) {
    const double cut[] = {HS_K_OXIDATION_RANGE_LOW, HS_K_OXIDATION_COOL_TO, HS_K_OXIDATION_HOT_FROM,
                          HS_K_OXIDATION_RANGE_HIGH};
    double low = fmin(t0, t1), high = fmax(t0, t1), sum = 0;
    if (high - low < 1e-9) return high < cut[0] ? 0 : iron_kp(high) * time_s;
    for (int i = 0; i < 3; i++) {
        double from = fmax(low, cut[i]), to = fmin(high, cut[i + 1]);
        if (to > from) sum += mean_kp(from, to) * time_s * (to - from) / (high - low);
    }
    return sum;
}

hs_status hs_oxide_uptake(double *integral_kg2_m4, const hs_heat_point *path, size_t n,
                          double carbon_pct, hs_error *err) {
    hs_status status = check_carbon(carbon_pct, err);
    if (status) return status;
    if (n < 2)
        return hs_fail(err, HS_E_IMPOSSIBLE, "give its start and its end",
                       "a heat of fewer than two points");
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        status = check_temperature(path[i].temp_K, 0, err);
        if (status) return status;
        if (i == 0) continue;
        double time_s = path[i].time_s - path[i - 1].time_s;
        if (!(time_s >= 0 && isfinite(time_s)))
            return hs_fail(err, HS_E_IMPOSSIBLE, "put the points in order of time",
                           "the times of the heat do not rise at point %zu", i + 1);
        sum += ramp_integral(path[i - 1].temp_K, path[i].temp_K, time_s);
    }
    *integral_kg2_m4 = sum * steel_factor(carbon_pct);
    return HS_OK;
}

double hs_oxide_W(double integral_kg2_m4, double kp_factor, double atmosphere) {
    if (!(kp_factor >= 0 && atmosphere >= 0)) return NAN;
    return atmosphere * sqrt(kp_factor * integral_kg2_m4);
}

double hs_oxide_lost_m(double W_kg_m2) {
    return W_kg_m2 * HS_K_OXIDATION_IRON_PER_OXYGEN / HS_K_PHYSICAL_IRON_DENSITY;
}

double hs_oxide_scale_m(double W_kg_m2, double porosity) {
    return hs_oxide_scale_kg_m2(W_kg_m2) / (HS_K_OXIDATION_SCALE_DENSITY * (1 - porosity));
}

double hs_oxide_scale_kg_m2(double W_kg_m2) {
    return W_kg_m2 / HS_K_OXIDATION_SCALE_OXYGEN;
}

/* Oxygen through the gas film, kg/(m2 s): never less for a hotter part. */
static double film_rate(double oxygen_fraction, double temp_K) {
    double mol_m3 =
        oxygen_fraction * HS_K_PHYSICAL_ATMOSPHERE / (HS_K_PHYSICAL_GAS_CONSTANT * temp_K);
    double coefficient_m_s = HS_K_OXIDATION_FILM_COEFFICIENT *
                             pow(temp_K / HS_K_OXIDATION_FILM_TEMP, HS_K_OXIDATION_FILM_EXPONENT);
    return coefficient_m_s * mol_m3 * HS_K_OXIDATION_OXYGEN_MOLAR_MASS;
}

static hs_status check_oxygen(double oxygen_fraction, hs_error *err) {
    if (oxygen_fraction > 0 && oxygen_fraction <= 1) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "oxygen above 0 and up to 100 %",
                   "no scale can be computed in a gas of %g %% oxygen", 100 * oxygen_fraction);
}

double hs_oxide_grown(double W0_kg_m2, double integral_kg2_m4, double slowing_kg_m2) {
    double b = slowing_kg_m2, c = W0_kg_m2 * (W0_kg_m2 + b) + integral_kg2_m4;
    return c > 0 ? 2 * c / (b + sqrt(b * b + 4 * c)) : 0; /* without cancellation */
}

hs_status hs_oxide_film_limited(double *W_kg_m2, double kp_kg2_m4_s, double oxygen_fraction,
                                double temp_K, double hold_s, hs_error *err) {
    hs_status status = check_temperature(temp_K, 1, err);
    if (!status) status = check_oxygen(oxygen_fraction, err);
    if (status) return status;
    int possible = kp_kg2_m4_s > 0 && hold_s >= 0;
    if (!possible || !isfinite(kp_kg2_m4_s) || !isfinite(hold_s))
        return hs_fail(err, HS_E_IMPOSSIBLE, "kp above 0, a time of 0 or more",
                       "no scale can be computed from these values");
    double slowing_kg_m2 = kp_kg2_m4_s / film_rate(oxygen_fraction, temp_K);
    *W_kg_m2 = hs_oxide_grown(0, kp_kg2_m4_s * hold_s, slowing_kg_m2);
    return HS_OK;
}

/* Temperature of a heat at a time; of a jump the later one. */
static double temp_at(const hs_heat_point *path, size_t n, double time_s) {
    size_t i = 0;
    while (i + 2 < n && path[i + 1].time_s <= time_s)
        i++;
    double length_s = path[i + 1].time_s - path[i].time_s;
    double share = length_s > 0 ? fmin(1, (time_s - path[i].time_s) / length_s) : 1;
    return path[i].temp_K + share * (path[i + 1].temp_K - path[i].temp_K);
}

/* By midpoints: a weight only. */
static hs_oxide_piece weigh(const hs_heat_point *path, size_t n, double start_s, double length_s,
                            double oxygen_fraction) {
    enum { MIDPOINTS = 32 };
    double slow = 0, sum = 0;
    for (int i = 0; i < MIDPOINTS; i++) {
        double T = temp_at(path, n, start_s + length_s * (i + 0.5) / MIDPOINTS);
        if (T < HS_K_OXIDATION_RANGE_LOW) continue;
        double kp = iron_kp(T);
        sum += kp * length_s / MIDPOINTS;
        slow += kp * kp * length_s / MIDPOINTS / film_rate(oxygen_fraction, T);
    }
    return (hs_oxide_piece){sum, sum > 0 ? slow / sum : 0};
}

hs_status hs_oxide_film_pieces(hs_oxide_piece piece[HS_OXIDE_PIECES], const hs_heat_point *path,
                               size_t n, double carbon_pct, double oxygen_fraction, hs_error *err) {
    double integral, sum = 0, factor;
    hs_status status = check_oxygen(oxygen_fraction, err);
    if (!status) status = hs_oxide_uptake(&integral, path, n, carbon_pct, err);
    if (status) return status;
    double length_s = (path[n - 1].time_s - path[0].time_s) / HS_OXIDE_PIECES;
    for (int k = 0; k < HS_OXIDE_PIECES; k++) {
        piece[k] = weigh(path, n, path[0].time_s + k * length_s, length_s, oxygen_fraction);
        sum += piece[k].integral_kg2_m4;
    }
    factor = sum > 0 ? integral / sum : 0;
    for (int k = 0; k < HS_OXIDE_PIECES; k++) {
        piece[k].integral_kg2_m4 *= factor;
        piece[k].slowing_kg_m2 *= steel_factor(carbon_pct);
    }
    return HS_OK;
}
