#include "base/nearest.h"

#include "support/check.h"

#include <string.h>

/* exact: counted by hand; kitten and sitting is the textbook pair */
static void nearest__distance__counts_single_slips(void) {
    CHECK(hs_edit_distance("oil", "oil") == 0);
    CHECK(hs_edit_distance("", "oil") == 3);
    CHECK(hs_edit_distance("oil", "") == 3);
    CHECK(hs_edit_distance("kitten", "sitting") == 3);
    CHECK(hs_edit_distance("Water", "water") == 0);
    CHECK(hs_edit_distance("watr", "water") == 1);
    CHECK(hs_edit_distance("wwater", "water") == 1);
}

static void nearest__swapped_neighbours__count_once(void) {
    CHECK(hs_edit_distance("plna", "plan") == 1);
    CHECK(hs_edit_distance("lpna", "plan") == 2);
    CHECK(hs_edit_distance("fro", "for") == 1);
    /* exact: no letter is touched twice, so this is not two */
    CHECK(hs_edit_distance("ca", "abc") == 3);
}

static void nearest__long_word__is_far_from_all(void) {
    char word[80];
    memset(word, 'a', sizeof word - 1);
    word[sizeof word - 1] = 0;
    CHECK(hs_edit_distance(word, word) == 1000);
    word[63] = 0;
    CHECK(hs_edit_distance(word, word) == 0);
}

static void nearest__list__suggests_only_what_is_near(void) {
    static const char *const list[] = {"water", "brine", "oil"};
    CHECK(hs_nearest("brien", list, 3) == list[1]);
    CHECK(hs_nearest("WATER", list, 3) == list[0]);
    CHECK(hs_nearest("polymer", list, 3) == NULL);
    CHECK(hs_nearest("oil", list, 0) == NULL);
}

HS_TEST_MAIN("base_nearest", TEST(nearest__distance__counts_single_slips),
             TEST(nearest__swapped_neighbours__count_once),
             TEST(nearest__long_word__is_far_from_all),
             TEST(nearest__list__suggests_only_what_is_near))
