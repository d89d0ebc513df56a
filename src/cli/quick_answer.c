#include "cli/quick.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void quick_range(quick_answer *answer, const char *name, double low, double high) {
    assert(answer->n < QUICK_FIGURES);
    answer->figure[answer->n++] =
        (quick_figure){.name = name, .low = low, .high = high, .range = 1};
}

void quick_number(quick_answer *answer, const char *name, double value) {
    quick_range(answer, name, value, value);
    answer->figure[answer->n - 1].range = 0;
}

void quick_word(quick_answer *answer, const char *name, const char *word) {
    quick_number(answer, name, 0);
    answer->figure[answer->n - 1].word = word;
}

void quick_note(quick_answer *answer, const char *format, ...) {
    size_t used = strlen(answer->notes), room = sizeof answer->notes - used;
    va_list args;
    va_start(args, format);
    int n = vsnprintf(answer->notes + used, room, format, args);
    va_end(args);
    if (n < 0 || (size_t)n + 2 > room)
        answer->notes[used] = '\0';
    else
        strcat(answer->notes, "\n");
}
