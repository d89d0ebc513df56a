#include "base/text.h"
#include "base/arena.h"
#include "support/check.h"

#include <stdint.h>
#include <string.h>

static void text__overflow__is_sticky_and_keeps_what_fitted(void) {
    char room[8];
    hs_text text = hs_text_start(room, sizeof room);
    hs_text_add(&text, "%s", "abcde");
    hs_text_add(&text, "%s", "fgh");
    hs_text_add(&text, "%s", "x");
    CHECK(text.overflow && !strcmp(room, "abcde") && text.length == 5);
}

static void arena__big_and_small_pieces__are_zeroed_and_apart(void) {
    hs_arena arena = {0};
    unsigned char *a = hs_arena_get(&arena, 10), *b = hs_arena_get(&arena, 1000000);
    CHECK(a && b && a[9] == 0 && b[999999] == 0);
    CHECK((uintptr_t)a % 16 == 0 && (uintptr_t)b % 16 == 0);
    CHECK(!strcmp(hs_arena_text(&arena, "abcdef", 3), "abc"));
    CHECK(hs_arena_get(&arena, SIZE_MAX) == NULL && hs_arena_get(&arena, SIZE_MAX - 40) == NULL);
    hs_arena_free(&arena);
    CHECK(arena.first == NULL);
}

static void status__every_code__has_text_and_an_exit_code(void) {
    for (int s = 0; s < HS_STATUS_COUNT; s++) {
        CHECK(strlen(hs_status_code((hs_status)s)) > 0 &&
              strlen(hs_status_meaning((hs_status)s)) > 0);
        int code = hs_status_exit((hs_status)s);
        CHECK(code == 0 || (code >= 2 && code <= 5) || code == 70);
    }
    hs_error err;
    CHECK(hs_fail(&err, HS_E_UNIT, "write mm", "no %s", "unit") == HS_E_UNIT);
    CHECK(!strcmp(err.message, "no unit") && !strcmp(err.help, "write mm"));
    CHECK(hs_fail(NULL, HS_E_UNIT, NULL, "x") == HS_E_UNIT);
}

HS_TEST_MAIN("base text", TEST(text__overflow__is_sticky_and_keeps_what_fitted),
             TEST(arena__big_and_small_pieces__are_zeroed_and_apart),
             TEST(status__every_code__has_text_and_an_exit_code))
