#include "base/random.h"

#include <math.h>

static uint64_t mix(uint64_t z) {
    z += 0x9E3779B97F4A7C15ULL;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

double hs_random_uniform(uint64_t seed, uint32_t sample, uint32_t input) {
    uint64_t key = mix(mix(mix(seed) ^ sample) ^ ((uint64_t)input << 32));
    return ((double)(key >> 11) + 0.5) * 0x1p-53;
}

/* Ratio of two polynomials of degree 7, coefficients in rising order. */
static double ratio(const double *a, const double *b, double r) {
    double num = a[7], den = b[7];
    for (int i = 6; i >= 0; i--) {
        num = num * r + a[i];
        den = den * r + b[i];
    }
    return num / den;
}

double hs_normal_quantile(double p) {
    static const double a[8] = {3.3871328727963666080e0,  1.3314166789178437745e+2,
                                1.9715909503065514427e+3, 1.3731693765509461125e+4,
                                4.5921953931549871457e+4, 6.7265770927008700853e+4,
                                3.3430575583588128105e+4, 2.5090809287301226727e+3};
    static const double b[8] = {1.0,
                                4.2313330701600911252e+1,
                                6.8718700749205790830e+2,
                                5.3941960214247511077e+3,
                                2.1213794301586595867e+4,
                                3.9307895800092710610e+4,
                                2.8729085735721942674e+4,
                                5.2264952788528545610e+3};
    static const double c[8] = {1.42343711074968357734e0,  4.63033784615654529590e0,
                                5.76949722146069140550e0,  3.64784832476320460504e0,
                                1.27045825245236838258e0,  2.41780725177450611770e-1,
                                2.27238449892691845833e-2, 7.74545014278341407640e-4};
    static const double d[8] = {1.0,
                                2.05319162663775882187e0,
                                1.67638483018380384940e0,
                                6.89767334985100004550e-1,
                                1.48103976427480074590e-1,
                                1.51986665636164571966e-2,
                                5.47593808499534494600e-4,
                                1.05075007164441684324e-9};
    static const double e[8] = {6.65790464350110377720e0,  5.46378491116411436990e0,
                                1.78482653991729133580e0,  2.96560571828504891230e-1,
                                2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                2.71155556874348757815e-5, 2.01033439929228813265e-7};
    static const double f[8] = {1.0,
                                5.99832206555887937690e-1,
                                1.36929880922735805310e-1,
                                1.48753612908506148525e-2,
                                7.86869131145613259100e-4,
                                1.84631831751005468180e-5,
                                1.42151175831644588870e-7,
                                2.04426310338993978564e-15};
    double q = p - 0.5;
    if (fabs(q) <= 0.425) return q * ratio(a, b, 0.180625 - q * q);
    double r = sqrt(-log(q < 0 ? p : 1 - p));
    double x = r <= 5 ? ratio(c, d, r - 1.6) : ratio(e, f, r - 5);
    return q < 0 ? -x : x;
}

double hs_random_normal(uint64_t seed, uint32_t sample, uint32_t input) {
    return hs_normal_quantile(hs_random_uniform(seed, sample, input));
}
