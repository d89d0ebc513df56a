/* A thin layer over CUnit: named tests, checks that NaN cannot pass, a last line a script can add.
 */
#ifndef HS_TESTS_CHECK_H
#define HS_TESTS_CHECK_H

#include <CUnit/CUnit.h>

#include <math.h>
#include <stddef.h>
#include <stdio.h>

typedef struct hs_test {
    const char *name; /* module__situation__expectation */
    void (*run)(void);
} hs_test;

/** Run all tests, print each failed check with file and line, end with
 *  "SUITE: N passed, N failed". Returns 0 only if some check ran and none failed. */
int hs_tests_run(const char *suite, const hs_test *tests, size_t n);

/** Check |actual - expected| <= tolerance and say the values when it is not so. */
void hs_check_near(double actual, double expected, double tolerance, const char *text,
                   const char *file, unsigned line);

#define TEST(function)                                                                             \
    { #function, function }
#define CHECK(condition)                                                                           \
    CU_assertImplementation((condition), __LINE__, #condition, __FILE__, "", CU_FALSE)
#define NEAR(actual, expected, tolerance)                                                          \
    hs_check_near((actual), (expected), (tolerance), #actual, __FILE__, __LINE__)
#define HS_TEST_MAIN(suite, ...)                                                                   \
    int main(void) {                                                                               \
        static const hs_test tests[] = {__VA_ARGS__};                                              \
        return hs_tests_run(suite, tests, sizeof tests / sizeof *tests);                           \
    }

#endif
