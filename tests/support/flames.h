/* The atmospheres of a reheat from the poorest in oxygen to the richest; rows of
 * tables/atmosphere.csv. */
#ifndef HS_TESTS_FLAMES_H
#define HS_TESTS_FLAMES_H

static const char *const test_flames[] = {"box",
                                          "wrapped",
                                          "open rich flame",
                                          "open neutral flame",
                                          "open lean flame",
                                          "electric furnace in air"};
enum { TEST_FLAMES = sizeof test_flames / sizeof *test_flames };

#endif
