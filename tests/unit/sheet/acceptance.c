/* Who accepted the hydrogen risk, and when. Own contract. */
#include "sheet/acceptance.h"
#include "sheet_text.h"
#include "support/check.h"

#include <string.h>

static void acceptance__days__are_found_as_people_write_them(void) {
    static const char *const days[] = {"2026-05-04",
                                       "A. Foreman 2026/05/04",
                                       "4.5.2026, the owner",
                                       "04.05.2026",
                                       "4/5/2026",
                                       "4-5-2026",
                                       "on 4 May 2026",
                                       "4th May 2026",
                                       "May 4, 2026",
                                       "Sep 4, 2026",
                                       "4 december 2026",
                                       "B. Smith, room 3, 2026-12-31"};
    static const char *const none[] = {
        "",          "the foreman", "on the day",  "2026",      "2026-13-04", "2026-05-32",
        "32.5.2026", "4.5.26",      "May 2026",    "4 May",     "13.13.2026", "room 4, 5, 2026",
        "0.5.2026",  "2026-05",     "May 0, 2026", "1066-10-14"};
    for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
        if (!hs_has_day(days[i])) printf("no day seen in '%s'\n", days[i]);
        CHECK(hs_has_day(days[i]));
    }
    for (size_t i = 0; i < sizeof none / sizeof *none; i++) {
        if (hs_has_day(none[i])) printf("a day seen in '%s'\n", none[i]);
        CHECK(!hs_has_day(none[i]));
    }
}

static void acceptance__names__are_more_than_a_stopgap(void) {
    static const char *const names[] = {"A. Foreman, 2026-05-04",   "the foreman",   "Jo", "Müller",
                                        "works manager 4 May 2026", "王, 2026-05-04"};
    static const char *const none[] = {
        "2026-05-04",    "who, when",   "yes",         "4 May 2026",  "accepted on 2026-05-04",
        "May 4th, 2026", "x, 4.5.2026", "-, 4.5.2026", "by me today", "the day: 2026-05-04"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        CHECK(hs_has_name(names[i]));
    for (size_t i = 0; i < sizeof none / sizeof *none; i++) {
        if (hs_has_name(none[i])) printf("a name seen in '%s'\n", none[i]);
        CHECK(!hs_has_name(none[i]));
    }
}

static hs_status sheet_accepting(const char *text_of_it, hs_error *fault) {
    static const char tank[] = "\"anode\": \"mild steel\"";
    char text[SHEET_BYTES], key[200];
    hs_error faults[HS_MAX_FAULTS];
    snprintf(key, sizeof key, "%s, \"accept_hydrogen_risk\": \"%s\"", tank, text_of_it);
    CHECK(sheet_with(text, sheet_plate, tank, key) > 0);
    hs_sheet *sheet = NULL;
    size_t n = 0;
    hs_status status = hs_sheet_read(&sheet, faults, &n, text, strlen(text), ".");
    *fault = n > 0 ? faults[0] : (hs_error){0};
    if (status == HS_OK) CHECK(!strcmp(hs_sheet_job(sheet)->step[5].tank.accepted, text_of_it));
    hs_sheet_free(sheet);
    return status;
}

static void acceptance__sheet__is_refused_without_who_or_when(void) {
    hs_error fault;
    CHECK(sheet_accepting("A. Foreman, 2026-05-04", &fault) == HS_OK);
    CHECK(sheet_accepting("A. Foreman", &fault) == HS_E_ACCEPTANCE);
    CHECK(strstr(fault.message, "names no day") && strstr(fault.help, "2026-05-04"));
    CHECK(!strcmp(fault.pointer, "/route/5/accept_hydrogen_risk"));
    CHECK(sheet_accepting("2026-05-04", &fault) == HS_E_ACCEPTANCE);
    CHECK(strstr(fault.message, "names nobody:") != NULL);
    CHECK(sheet_accepting("who, when", &fault) == HS_E_ACCEPTANCE);
    CHECK(strstr(fault.message, "nobody and no day") != NULL);
}

HS_TEST_MAIN("sheet acceptance", TEST(acceptance__days__are_found_as_people_write_them),
             TEST(acceptance__names__are_more_than_a_stopgap),
             TEST(acceptance__sheet__is_refused_without_who_or_when))
