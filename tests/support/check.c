#include "support/check.h"

#include <CUnit/Basic.h>

void hs_check_near(double actual, double expected, double tolerance, const char *text,
                   const char *file, unsigned line) {
    int good = fabs(actual - expected) <= tolerance;
    if (!good)
        printf("%s:%u: %s is %.10g, expected %.10g +- %.3g\n", file, line, text, actual, expected,
               tolerance);
    CU_assertImplementation(good, line, text, file, "", CU_FALSE);
}

static void print_failures(void) {
    for (CU_pFailureRecord f = CU_get_failure_list(); f; f = f->pNext)
        printf("%s:%u: in %s: failed: %s\n", f->strFileName, f->uiLineNumber,
               f->pTest ? f->pTest->pName : "?", f->strCondition);
}

int hs_tests_run(const char *suite, const hs_test *tests, size_t n) {
    if (CU_initialize_registry() != CUE_SUCCESS) return 1;
    CU_pSuite all = CU_add_suite(suite, NULL, NULL);
    for (size_t i = 0; all && i < n; i++)
        if (!CU_add_test(all, tests[i].name, tests[i].run)) all = NULL;
    if (!all) return 1;
    CU_basic_set_mode(CU_BRM_SILENT);
    CU_basic_run_tests();
    print_failures();
    unsigned failed = CU_get_number_of_tests_failed(), run = CU_get_number_of_tests_run();
    unsigned checks = CU_get_number_of_asserts();
    printf("%s: %u passed, %u failed (%u checks)\n", suite, run - failed, failed, checks);
    CU_cleanup_registry();
    return failed || run != n || checks == 0;
}
