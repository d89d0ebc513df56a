/* test_reference PROGRAM FILE...: run all reference cases.
 *
 * With --self-test in place of the files: feeds itself cases that are wrong on purpose and fails
 * unless every one of them is noticed. */
#include "reference.h"

#include <stdlib.h>
#include <string.h>

static ref_count run_stream(FILE *file, const char *program, const char *name) {
    ref_count count = {0, 0, 0};
    ref_case c;
    int line = 0;
    while (ref_read(&c, file, name, &line))
        ref_run(&count, &c, program, name);
    if (count.checks == 0 && count.failed == 0) {
        printf("%s:1: no check in this file\n", name);
        count.failed++;
    }
    return count;
}

/* own: each text holds one fault of the kinds the runner must see. */
static const char *const planted[] = {
    "source exact: x\nquick fit size=\"20 h7\"\nexpect upper_mm 20.1 \xC2\xB1 .01\n",
    "source exact: x\nquick fit size=\"20 h7\"\nexpect upper_mm nan \xC2\xB1 1\n",
    "source exact: x\nquick fit size=\"20 h7\"\nexpect upper_mm 20 \xC2\xB1 nan\n",
    "source exact: x\nquick fit size=\"20 h7\"\nexpect upper_mm 20\n",
    "source exact: x\nquick fit size=\"20 h7\"\nexpect other_mm 20 \xC2\xB1 1\n",
    "source exact: x\nquick fit size=\"20 h7\"\nexpect upper_mm 20 20 \xC2\xB1 1\n",
    "quick fit size=\"20 h7\"\nexpect upper_mm 20 \xC2\xB1 .01\n",
    "source exact: x\nquick fit size=\"20 h7\"\nfails 3\n",
    "source exact: x\nquick fit size=20.h7\nfails 2\n",
    "source exact: x\nquick fit size=\"20 h7\"\n",
    "source exact: x\nquick fit size=20 h7\nexpect upper_mm 20 \xC2\xB1 .01\n",
    "# nothing\n",
    "",
};

static int self_test(const char *program) {
    int passed = 0, failed = 0;
    for (size_t i = 0; i < sizeof planted / sizeof *planted; i++) {
        FILE *file = tmpfile();
        if (!file) return EXIT_FAILURE;
        fputs(planted[i], file);
        rewind(file);
        ref_count count = run_stream(file, program, "planted");
        fclose(file);
        if (count.failed > 0 && count.passed == 0) {
            passed++;
        } else {
            printf("planted fault %zu was not noticed\n", i + 1);
            failed++;
        }
    }
    printf("reference runner: %d passed, %d failed\n", passed, failed);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

int main(int argc, char **argv) {
    ref_count all = {0, 0, 0};
    if (argc < 3) return EXIT_FAILURE;
    if (!strcmp(argv[2], "--self-test")) return self_test(argv[1]);
    for (int i = 2; i < argc; i++) {
        FILE *file = fopen(argv[i], "r");
        if (!file) {
            printf("%s: cannot open it\n", argv[i]);
            all.failed++;
            continue;
        }
        ref_count count = run_stream(file, argv[1], argv[i]);
        fclose(file);
        all.passed += count.passed;
        all.failed += count.failed;
        all.checks += count.checks;
    }
    printf("reference: %d passed, %d failed (%d checks)\n", all.passed, all.failed, all.checks);
    return all.failed || !all.checks ? EXIT_FAILURE : EXIT_SUCCESS;
}
