#include "base/num.h"
#include "base/random.h"
#include "support/check.h"

static double cosine_minus_x(double x, const void *context) {
    (void)context;
    return cos(x) - x;
}

static void num__tridiagonal__solves_a_known_system(void) {
    /* exact: x = 1, 2, 3 */
    double x[3] = {4, 8, 8}, lower[3] = {0, 1, 1}, diag[3] = {2, 2, 2}, upper[3] = {1, 1, 0},
           work[3];
    hs_tridiagonal(x, lower, diag, upper, work, 3);
    NEAR(x[0], 1, 1e-14);
    NEAR(x[1], 2, 1e-14);
    NEAR(x[2], 3, 1e-14);
}

static void num__root_of_cosine__is_the_dottie_number(void) {
    double x = 0;
    CHECK(hs_root(&x, cosine_minus_x, NULL, 0, 1, 1e-14) == HS_OK);
    NEAR(x, 0.7390851332151607, 1e-13); /* published: OEIS A003957 */
    CHECK(hs_root(&x, cosine_minus_x, NULL, 1, 2, 1e-14) == HS_E_CONVERGE);
}

static void num__interpolation__is_linear_inside_and_nan_outside(void) {
    const double x[3] = {0, 1, 3}, y[3] = {0, 10, 30};
    NEAR(hs_interpolate(x, y, 3, 2), 20, 1e-14);
    NEAR(hs_interpolate(x, y, 3, 3), 30, 0);
    CHECK(isnan(hs_interpolate(x, y, 3, 3.1)));
    CHECK(isnan(hs_interpolate(x, y, 3, NAN)));
}

static void num__quantile_type_7__matches_the_definition(void) {
    double v[5] = {5, 1, 4, 2, 3};
    hs_sort(v, 5);
    NEAR(hs_quantile(v, 5, 0.5), 3, 0);
    NEAR(hs_quantile(v, 5, 0.9), 4.6, 1e-14);
    NEAR(hs_quantile(v, 5, 1), 5, 0);
}

static void num__quantile_of_unsorted__equals_the_sorted_one(void) {
    for (unsigned n = 1; n < 200; n += 7) {
        double a[200], b[200];
        for (unsigned i = 0; i < n; i++) /* many equal values among them */
            a[i] = floor(20 * hs_random_uniform(n, i, 0));
        for (unsigned k = 0; k <= 20; k++) {
            for (unsigned i = 0; i < n; i++)
                b[i] = a[i];
            double got = hs_quantile_of(b, n, k / 20.0);
            hs_sort(b, n);
            NEAR(got, hs_quantile(b, n, k / 20.0), 0);
        }
    }
}

static void num__hash__is_fnv_1a(void) {
    /* published: FNV-1a test vectors, "foobar" */
    CHECK(hs_hash(HS_HASH_START, "foobar", 6) == 0x85944171f73967e8ULL);
}

HS_TEST_MAIN("base num", TEST(num__tridiagonal__solves_a_known_system),
             TEST(num__root_of_cosine__is_the_dottie_number),
             TEST(num__interpolation__is_linear_inside_and_nan_outside),
             TEST(num__quantile_type_7__matches_the_definition),
             TEST(num__quantile_of_unsorted__equals_the_sorted_one), TEST(num__hash__is_fnv_1a))
