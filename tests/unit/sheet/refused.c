/* Sheets with one fault each: which one is found, where, and that nothing else is. The places are
 * own contract: the fault stands where `mark` stands in the changed sheet. */
#include "hardskin/sheet/sheet.h"
#include "sheet_text.h"
#include "support/check.h"

#include <string.h>

typedef struct row {
    const char *base, *find, *replace;
    hs_status status;
    const char *pointer, *mark; /* the mark's first byte is the place; NULL: not checked,
                                   nor that the fault is the only one */
} row;

#define P sheet_plate
#define B sheet_bar
#define R sheet_ring
#define F sheet_profile

static const row rows[] = {
    /* the top level */
    {P, "\"hardskin\": 1, ", "", HS_E_MISSING, "", "{"},
    {P, "\"hardskin\": 1,", "\"hardskin\": 2,", HS_E_VERSION, "/hardskin", "2,"},
    {P, "\"hardskin\": 1,", "\"hardskin\": 1.5,", HS_E_VERSION, "/hardskin", "1.5"},
    {P, "\"hardskin\": 1,", "\"hardskin\": \"1\",", HS_E_TYPE, "/hardskin", "\"1\""},
    {P, "\"job\": \"plate\", ", "", HS_E_MISSING, "", "{"},
    {P, "\"job\": \"plate\"", "\"job\": \"\"", HS_E_MISSING, "/job", "\"\""},
    {P, "\"job\": \"plate\"", "\"job\": \"a\\tb\"", HS_E_ENCODING, "/job", "\"a\\"},
    {P, "\"job\": \"plate\"", "\"job\": \"a\\u0000b\"", HS_E_ENCODING, "/job", "\"a\\"},
    {P, "\"job\": \"plate\"", "\"job\": 7", HS_E_TYPE, "/job", "7,"},
    {P, "\"job\": \"plate\"", "\"job\": \"plate\", \"job\": \"b\"", HS_E_DUPLICATE, "/job",
     "\"job\": \"b\""},
    {P, "\"job\": \"plate\"", "\"job\": \"plate\", \"j\\u006fb\": \"b\"", HS_E_DUPLICATE, "/job",
     "\"j\\u006f"},
    {P, "\"job\": \"plate\"", "\"job\": \"plate\", \"Job\": \"b\"", HS_E_KEY, "/Job", "\"Job\""},
    {P, "\"job\": \"plate\"", "\"job\": \"plate\", \"note\": 3", HS_E_TYPE, "/note", "3,"},
    {P, "\"units\": \"mm\"", "\"units\": \"cm\"", HS_E_WORD, "/units", "\"cm\""},
    {P, "\"units\": \"mm\"", "\"unit\": \"mm\"", HS_E_KEY, "/unit", "\"unit\""},
    /* the part */
    {P, "\"steel\": \"16MnCr5\"", "\"steel\": \"16MnCr\"", HS_E_STEEL, "/part/steel", "\"16MnCr\""},
    {P, "\"steel\": \"16MnCr5\", ", "", HS_E_MISSING, "/part", "{\"condition"},
    {P, "\"steel\": \"16MnCr5\"", "\"steel\": {\"C\": \"0.16 %\"}", HS_E_MISSING, "/part/steel",
     "{\"C\""},
    {P, "\"steel\": \"16MnCr5\"", "\"steel\": {\"like\": \"C15E\", \"C\": \"0.16\"}", HS_E_NO_UNIT,
     "/part/steel/C", "0.16"},
    {P, "\"steel\": \"16MnCr5\"", "\"steel\": {\"like\": \"C15E\", \"W\": \"1 %\"}", HS_E_KEY,
     "/part/steel/W", "\"W\""},
    {P, "\"hot rolled\"", "\"rolled\"", HS_E_WORD, "/part/condition", "\"rolled\""},
    {P, "\"form\": \"plate\"", "\"form\": \"plat\"", HS_E_WORD, "/part/form", "\"plat\""},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": 20", HS_E_TYPE, "/part/thickness", "20, \"q"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"20\"", HS_E_NO_UNIT, "/part/thickness",
     "20\", \"q"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"20 h\"", HS_E_UNIT, "/part/thickness",
     "h\", \"q"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"-20 mm\"", HS_E_IMPOSSIBLE, "/part/thickness",
     "\"-20"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"19..21 mm\"", HS_E_NUMBER, "/part/thickness",
     "\"19.."},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": null", HS_E_TYPE, "/part/thickness", "null"},
    {P, "\"thickness\": \"20 mm\", ", "", HS_E_MISSING, "/part", "{\"steel"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"20 mm\", \"diameter\": \"5 mm\"", HS_E_KEY,
     "/part/diameter", "\"diameter\""},
    {P, "\"quantity\": 2", "\"quantity\": 0", HS_E_IMPOSSIBLE, "/part/quantity", "0},"},
    {P, "\"quantity\": 2", "\"quantity\": \"2\"", HS_E_TYPE, "/part/quantity", "\"2\"}"},
    {P, "\"thickness\": \"20 mm\"", "\"thickness\": \"20 mm\", \"held\": \"chuck\"", HS_E_WORD,
     "/part/held", "\"chuck\""},
    {B, "\"held\": \"chuck\"", "\"held\": \"centres\"", HS_E_WORD, "/part/held", "\"centres\""},
    {R, "\"bore\": \"45 mm\"", "\"bore\": \"45 m\"", HS_E_IMPOSSIBLE, "/part/bore", NULL},
    {F, "[16, 50]", "[16, -50]", HS_E_OUTLINE, "/part/outline", "[[0, 0]"},
    {F, "[16, 50]", "[16]", HS_E_TYPE, "/part/outline/4", "[16],"},
    {F, "[16, 50]", "[16, \"50\"]", HS_E_NO_UNIT, "/part/outline/4/1", "50\"]"},
    /* dimensions and faces */
    {P, "\"size\": \"20 h7\"", "\"size\": \"20 mm\"", HS_E_NUMBER, "/dimensions/0/size", NULL},
    {P, "\"size\": \"20 h7\"", "\"size\": \"21 h7\"", HS_E_DISAGREE, "/dimensions/0/size", "\"21"},
    {P, "\"size\": \"20 h7\"", "\"size\": 20", HS_E_TYPE, "/dimensions/0/size", "20, \"f"},
    {P, "[\"top\", \"bottom\"]", "[\"top\", \"front\"]", HS_E_DISAGREE, "/dimensions/0/faces",
     "[\"top\", \"f"},
    {P, "[\"top\", \"bottom\"]", "[\"top\", \"botom\"]", HS_E_WORD, "/dimensions/0/faces/1",
     "\"botom\""},
    {P, "[\"top\", \"bottom\"]", "[\"top\"]", HS_E_DISAGREE, "/dimensions/0/faces", "[\"top\"]"},
    {P, "[\"top\", \"bottom\"]", "[]", HS_E_MISSING, "/dimensions/0/faces", "[]"},
    {B, "[\"outside\"]", "[\"bore\"]", HS_E_WORD, "/dimensions/0/faces/0", "\"bore\""},
    {F, "[\"under\", \"way\"]", "[\"under\", \"over\"]", HS_E_WORD, "/dimensions/0/faces/1",
     "\"over\"]"},
    {F, "\"edge\": 3", "\"edge\": 7", HS_E_IMPOSSIBLE, "/faces/1/edge", "7}"},
    {F, "\"edge\": 3", "\"edge\": 2", HS_E_DISAGREE, "/dimensions/0/faces", "[\"under\""},
    {F, "\"edge\": 3", "\"edge\": 5", HS_E_DISAGREE, "/dimensions/0/size", "\"16 h8"},
    {P, "\"name\": \"top\"", "\"name\": \"topp\"", HS_E_WORD, "/faces/0/name", "\"topp\""},
    {P, "\"name\": \"top\"", "\"name\": \"front\"", HS_E_MISSING, "/faces/0",
     "{\"name\": \"front\""},
    {P, "\"case\": \"0.6 mm\"", "\"case\": \"0,6 mm\"", HS_E_NUMBER, "/faces/0/case", NULL},
    {P, "\"case\": \"0.6 mm\"", "\"case\": 0.6", HS_E_TYPE, "/faces/0/case", "0.6, "},
    {P, "\"case\": \"0.6 mm\"", "\"case\": \"0.6 mm\", \"finish\": \"soft\", \"hardnes\": 1",
     HS_E_DISAGREE, "/faces/0/case", NULL},
    {P, "\"hardness\": \"58 HRC\"", "\"hardness\": \"58\"", HS_E_NO_UNIT, "/faces/0/hardness",
     NULL},
    {P, "\"through\": \"bottom\"", "\"through\": \"under\"", HS_E_WORD, "/features/0/through",
     "\"under\""},
    {P, "\"thread\": false", "\"thread\": \"no\"", HS_E_TYPE, "/features/0/thread", "\"no\""},
    {P, "\"size\": \"8 mm\"", "\"size\": \"61 mm\"", HS_E_IMPOSSIBLE, "/features/0/size",
     "\"61 mm\""}, /* wider than the plate it goes through */
    {P, "\"size\": \"8 mm\"", "\"size\": \"8 m\"", HS_E_IMPOSSIBLE, "/features/0/size", "\"8 m\""},
    /* the route */
    {P, "\"at\": \"925 C\"", "\"at\": \"925\"", HS_E_NO_UNIT, "/route/0/at", "925\""},
    {P, "\"at\": \"925 C\", ", "", HS_E_MISSING, "/route/0", "{\"do\": \"carburise\""},
    {P, "\"for\": \"12 h\"", "\"for\": \"12 mm\"", HS_E_UNIT, "/route/0/for", "mm\", \"in"},
    {P, "\"for\": \"12 h\"", "\"for\": \"0 h\"", HS_E_IMPOSSIBLE, "/route/0/for", "\"0 h"},
    {P, "\"for\": \"12 h\"", "\"for\": \"12:30\"", HS_E_NUMBER, "/route/0/for", NULL},
    {P, "\"in\": \"charcoal\"", "\"in\": \"charcole\"", HS_E_WORD, "/route/0/in", "\"charcole\""},
    {P, "\"in\": \"charcoal\"", "\"surface_carbon\": \"3 %\"", HS_E_IMPOSSIBLE,
     "/route/0/surface_carbon", "\"3 %\""},
    {P, "\"in\": \"charcoal\"", "\"surface_carbon\": \"0.1 %\"", HS_E_IMPOSSIBLE,
     "/route/0/surface_carbon", "\"0.1 %\""},
    {P, "\"in\": \"charcoal\", ", "", HS_E_MISSING, "/route/0", "{\"do\": \"carburise\""},
    {P, "\"box\": \"150 mm\"", "\"counted_from\": \"box red\"", HS_E_MISSING,
     "/route/0/counted_from", "\"box red\""},
    {P, "\"for\": \"12 h\"",
     "\"for\": \"12 h\", \"log\": [[\"0 s\", \"20 C\"], [\"9 h\", \"900 C\"]]", HS_E_DISAGREE,
     "/route/0/log", "[[\"0 s"},
    {P, "\"at\": \"925 C\", \"for\": \"12 h\"",
     "\"log\": [[\"1 h\", \"20 C\"], [\"1 h\", \"900 C\"]]", HS_E_IMPOSSIBLE, "/route/0/log/1",
     "[\"1 h\", \"900"},
    {P, "\"do\": \"cool\"", "\"do\": \"chill\"", HS_E_WORD, "/route/1/do", "\"chill\""},
    {P, "\"in\": \"oil\"", "\"inn\": \"oil\", \"in\": \"oil\"", HS_E_KEY, "/route/3/inn",
     "\"inn\""},
    {P, "\"in\": \"oil\"", "\"in\": \"oil \"", HS_E_WORD, "/route/3/in", "\"oil \""},
    {P, "\"uneven\": \"10 %\"", "\"uneven\": \"200 %\"", HS_E_IMPOSSIBLE, "/route/3/uneven",
     "\"200"},
    {P, "\"route\": [",
     "\"route\": [{\"do\": \"stress relieve\", \"at\": \"800 C\", \"for\": \"2 h\"},", HS_E_RANGE,
     "/route/0/at", "\"800"},
    {P, "Ra 0.8 um", "Ra 0.8 mm", HS_E_IMPOSSIBLE, "/faces/0/roughness", NULL},
    {P, "\"uneven\": \"10 %\"", "\"uneven\": 0.1", HS_E_TYPE, "/route/3/uneven", "0.1}"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"salt bath\"", HS_E_WORD, "/route/2/in", "\"salt"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"wrapped\", \"oxygen\": \"3 %\"", HS_E_DISAGREE,
     "/route/2/oxygen", "\"3 %"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"open rich flame\", \"oxygen\": \"3 %\"", HS_E_DISAGREE,
     "/route/2/oxygen", "\"3 %"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"open lean flame\", \"oxygen\": \"30 %\"", HS_E_IMPOSSIBLE,
     "/route/2/oxygen", "\"30 %"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"open lean flame\", \"oxygen\": \"0 %\"", HS_E_IMPOSSIBLE,
     "/route/2/oxygen", "\"0 %"},
    {P, "\"in\": \"wrapped\"", "\"in\": \"open lean flame\", \"oxygen\": \"3\"", HS_E_NO_UNIT,
     "/route/2/oxygen", NULL},
    {P, "\"in\": \"box\"", "\"in\": \"box\", \"oxygen\": \"3 %\"", HS_E_KEY, "/route/1/oxygen",
     "\"oxygen"},
    {P, "\"condition\": \"hot rolled\"", "\"rust\": \"some\"", HS_E_WORD, "/part/rust", "\"some\""},
    {B, "\"held\": \"chuck\"", "\"rust\": true", HS_E_TYPE, "/part/rust", "true"},
    {P, "\"for\": \"2 h\"", "\"for\": \"2 h\"}, {\"do\": \"straighten\"", HS_E_MISSING, "/route/5",
     "{\"do\": \"straighten\""},
    /* order */
    {P, "\"do\": \"temper\", \"at\": \"170 C\", \"for\": \"2 h\"",
     "\"do\": \"straighten\", \"to\": \"0.1 mm\"", HS_E_ORDER, "/route/4/do", "\"straighten\""},
    {P, "\"do\": \"cool\", \"in\": \"box\"",
     "\"do\": \"temper\", \"at\": \"170 C\", \"for\": \"2 h\"", HS_E_ORDER, "/route/1/do",
     "\"temper\""},
    {P, "{\"do\": \"reheat\", \"at\": \"820 C\", \"for\": \"20 min\", \"in\": \"wrapped\"},\n", "",
     HS_E_ORDER, "/route/2/do", "\"quench\""},
    {P, "{\"do\": \"cool\", \"in\": \"box\"},\n", "{\"do\": \"descale\", \"by\": \"brush\"},\n",
     HS_E_ORDER, "/route/1/do", "\"descale\""},
    {P,
     "{\"do\": \"quench\", \"in\": \"oil\", \"uneven\": \"10 %\"},\n"
     "{\"do\": \"temper\", \"at\": \"170 C\", \"for\": \"2 h\"},\n",
     "{\"do\": \"cool\", \"in\": \"air\"},\n", HS_E_ORDER, "/route", "[\n{\"do\": \"carb"},
    /* hazards */
    {P, "\"anode\": \"mild steel\"", "\"accept_hydrogen_risk\": \"yes\"", HS_E_ACCEPTANCE,
     "/route/5/accept_hydrogen_risk", "\"yes\""},
    {P, "\"anode\": \"mild steel\"", "\"anode\": \"stainless\"", HS_E_FORBIDDEN, "/route/5/anode",
     "\"stainless\""},
    {P, "\"anode\": \"mild steel\"", "\"anode\": \"galvanised pipe\"", HS_E_FORBIDDEN,
     "/route/5/anode", "\"galvanised"},
    {P, "\"anode\": \"mild steel\"", "\"anode\": \"Brass rod\"", HS_E_FORBIDDEN, "/route/5/anode",
     "\"Brass"},
    {P, "\"anode\": \"mild steel\"", "\"anode\": \"lead\"", HS_E_FORBIDDEN, "/route/5/anode",
     "\"lead"},
    {P, "\"soda\": \"50 g/L\"", "\"salt\": \"50 g/L\"", HS_E_FORBIDDEN, "/route/5/salt",
     "\"salt\""},
    {P, "\"soda\": \"50 g/L\"", "\"add\": \"a little Salt\"", HS_E_FORBIDDEN, "/route/5/add",
     "\"add\""},
    {P, "\"soda\": \"50 g/L\"", "\"sodium_chloride\": true", HS_E_FORBIDDEN,
     "/route/5/sodium_chloride", "\"sodium"},
    {P, "\"tub\": \"40 L\"", "\"tub\": \"40 L galvanised\"", HS_E_FORBIDDEN, "/route/5/tub",
     "\"40 L"},
    {P, "\"tub\": \"40 L\"", "\"lid\": true", HS_E_FORBIDDEN, "/route/5/lid", "\"lid\""},
    {P, "\"supply\": \"12 V 10 A\"", "\"supply\": \"230 V mains\"", HS_E_FORBIDDEN,
     "/route/5/supply", "\"230"},
    {P, "\"supply\": \"12 V 10 A\"", "\"supply\": \"230 V 10 A\"", HS_E_FORBIDDEN,
     "/route/5/supply", "\"230"},
    {P, "\"supply\": \"12 V 10 A\"", "\"isolation\": \"not isolated\"", HS_E_FORBIDDEN,
     "/route/5/isolation", "\"isolation"},
    {P, "\"box\": \"150 mm\"", "\"box\": \"galvanised, 150 mm\"", HS_E_FORBIDDEN, "/route/0/box",
     "\"galvanised"},
    {P, "\"units\": \"mm\"", "\"bath\": \"soda and salt\"", HS_E_FORBIDDEN, "/bath", "\"bath\""},
    {P, "\"quantity\": 2", "\"coating\": \"zinc\"", HS_E_FORBIDDEN, "/part/coating", "\"coating"},
    {P, "\"in\": \"charcoal\"", "\"in\": \"cyanide\"", HS_E_FORBIDDEN, "/route/0/in", "\"cyanide"},
    {P, "\"by\": \"electrolysis\", \"tub\"", "\"by\": \"brush\", \"tubb\"", HS_E_KEY,
     "/route/5/tubb", NULL},
    /* test piece, shop, measured */
    {P, "\"12 mm round, 40 mm long\"", "\"12 mm round\"", HS_E_NUMBER, "/test_piece/size", NULL},
    {P, "\"rough_tolerance\": \"±0.05 mm\"", "\"rough_tolerance\": \"0.05 mm\"", HS_E_NUMBER,
     "/shop/rough_tolerance", NULL},
    {P, "\"confidence\": \"95 %\"", "\"confidence\": \"100 %\"", HS_E_IMPOSSIBLE,
     "/shop/confidence", "\"100 %"},
    {P, "\"confidence\": \"95 %\"", "\"confidence\": 0.95", HS_E_TYPE, "/shop/confidence", "0.95,"},
    {P, "\"stock\": \"EN flats\"", "\"stock\": \"EN flat\"", HS_E_WORD, "/shop/stock",
     "\"EN flat\""},
    {P, "\"is\": \"20.36 mm\"", "\"is\": \"0 mm\"", HS_E_IMPOSSIBLE, "/measured/size/thick/is",
     "\"0 mm"},
    {P, "\"is\": \"20.36 mm\"", "\"is\": \"2.036 mm\"", HS_E_DISAGREE, "/measured/size/thick/is",
     "\"2.036"},
    {P, "\"size\": {\"thick\"", "\"size\": {\"thickness\"", HS_E_KEY, "/measured/size/thickness",
     "\"thickness\": {\"is"},
    {P, "\"bow\": \"0.18 mm\"", "\"bow\": \"-0.18 mm\"", HS_E_IMPOSSIBLE,
     "/measured/shape/thick/bow", "\"-0.18"},
    {P, "\"bow\": \"0.18 mm\"", "\"bow\": \"0.18 mm\", \"run_out\": \"1 mm\"", HS_E_KEY,
     "/measured/shape/thick/run_out", "\"run_out"},
    {P, "\"over\": \"299 mm\"", "\"over\": \"301 mm\"", HS_E_DISAGREE, "/measured/shape/thick/over",
     "\"301"},
    {P, "\"crown\": \"top\"", "\"crown\": \"front\"", HS_E_WORD, "/measured/shape/thick/crown",
     "\"front\"}"},
    {P, "\"depth\": \"1.25 mm\"", "\"depth\": 1.25", HS_E_TYPE, "/measured/case/depth", "1.25,"},
    {P, "\"by\": \"hardness traverse\"", "\"by\": \"breaking\"", HS_E_WORD, "/measured/case/by",
     "\"breaking"},
    {P, "\"by\": \"hardness traverse\"", "\"by\": \"fracture\"", HS_E_DISAGREE, "/measured/case/to",
     "\"550 HV"},
    {P, "\"checked\": true", "\"checked\": \"yes\"", HS_E_TYPE, "/measured/case/checked", "\"yes"},
    {P, "\"by\": \"files\"", "\"by\": \"guess\"", HS_E_WORD, "/measured/hardness/by", "\"guess"},
    {P, "\"by\": \"hardness traverse\"", "\"by\": \"guess\"", HS_E_WORD, "/measured/case/by",
     "\"guess"},
};

static hs_status read_text(hs_error *faults, size_t *n, const char *text) {
    hs_sheet *sheet;
    hs_status status = hs_sheet_read(&sheet, faults, n, text, strlen(text), ".");
    CHECK((sheet == NULL) == (status != HS_OK));
    hs_sheet_free(sheet);
    return status;
}

static void check_row(const row *t) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    int line, column;
    CHECK(sheet_with(text, t->base, t->find, t->replace) > 0);
    hs_status status = read_text(faults, &n, text);
    int found = n > 0 && status == faults[0].status && faults[0].status == t->status &&
                !strcmp(faults[0].pointer, t->pointer) && faults[0].message[0];
    if (!found)
        printf("%s -> %s: %s at %s: %s\n", t->find, t->replace, hs_status_code(status),
               n ? faults[0].pointer : "", n ? faults[0].message : "");
    CHECK(found);
    CHECK(n > 0 && faults[0].help[0]);
    if (n > 0 && !faults[0].help[0]) printf("%s -> %s: no help\n", t->find, t->replace);
    if (!t->mark) return;
    sheet_place(&line, &column, text, t->mark);
    int placed = n == 1 && faults[0].line == line && faults[0].column == column;
    if (!placed)
        printf("%s -> %s: %zu faults, %d:%d, expected %d:%d %s\n", t->find, t->replace, n,
               n ? faults[0].line : 0, n ? faults[0].column : 0, line, column,
               n > 1 ? faults[1].message : "");
    CHECK(placed);
}

static void refused__one_fault_each__is_found_in_its_place(void) {
    CHECK(sizeof rows / sizeof *rows >= 100);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        check_row(&rows[i]);
}

static void refused__the_unchanged_sheets__are_good(void) {
    const char *const bases[] = {P, B, R, F};
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    for (size_t i = 0; i < 4; i++) {
        hs_status status = read_text(faults, &n, bases[i]);
        if (status) printf("%s: %s\n", faults[0].pointer, faults[0].message);
        CHECK(status == HS_OK && n == 0);
    }
}

/* No text of a quantity may lose its unit, no object may take a key nobody knows. */
static void refused__every_unit_taken_away__is_noticed(void) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n, tried = 0;
    static const char *const units[] = {" mm\"",  " C\"",   " h\"",  " min\"", " %\"", " L\"",
                                        " g/L\"", " HRC\"", " HV\"", " um\"",  " A\""};
    for (size_t u = 0; u < sizeof units / sizeof *units; u++)
        for (const char *at = strstr(P, units[u]); at; at = strstr(at + 1, units[u]), tried++) {
            snprintf(text, sizeof text, "%.*s%s", (int)(at - P), P, at + strlen(units[u]) - 1);
            hs_status status = read_text(faults, &n, text);
            CHECK(status == HS_E_NO_UNIT || status == HS_E_NUMBER || status == HS_E_UNIT);
        }
    CHECK(tried >= 20);
}

static void refused__an_unknown_key_in_any_object__is_noticed(void) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n, tried = 0;
    for (const char *at = strchr(P, '{'); at; at = strchr(at + 1, '{'), tried++) {
        snprintf(text, sizeof text, "%.*s\"zzz\": \"1 mm\", %s", (int)(at + 1 - P), P, at + 1);
        CHECK(read_text(faults, &n, text) == HS_E_KEY && n == 1);
        CHECK(strstr(faults[0].pointer, "/zzz") != NULL && faults[0].help[0]);
        snprintf(text, sizeof text, "%.*s\"note\": \"a note\", %s", (int)(at + 1 - P), P, at + 1);
        CHECK(read_text(faults, &n, text) == HS_OK);
    }
    CHECK(tried >= 18);
}

static void refused__many_faults__come_in_one_run_in_order(void) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    CHECK(sheet_with(text, P, "\"thread\": false}],",
                     "\"thread\": false},{},{},{},{},{},{},{},{},{},{},{},{}],") > 0);
    CHECK(read_text(faults, &n, text) == HS_E_MISSING && n == HS_MAX_FAULTS);
    for (size_t i = 1; i < n; i++)
        CHECK(faults[i].line > faults[i - 1].line || faults[i].column >= faults[i - 1].column);
}

static void refused__a_near_miss__is_suggested(void) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    CHECK(sheet_with(text, P, "\"condition\"", "\"condtion\"") > 0);
    CHECK(read_text(faults, &n, text) == HS_E_KEY);
    CHECK(strstr(faults[0].help, "did you mean \"condition\"?") != NULL);
    CHECK(sheet_with(text, P, "\"in\": \"oil\"", "\"in\": \"oils\"") > 0);
    CHECK(read_text(faults, &n, text) == HS_E_WORD);
    CHECK(strstr(faults[0].help, "did you mean \"oil\"?") != NULL);
}

static void suggests(const char *base, const char *find, const char *replace, const char *help) {
    char text[SHEET_BYTES];
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    CHECK(sheet_with(text, base, find, replace) > 0);
    CHECK(read_text(faults, &n, text) != HS_OK && n == 1);
    CHECK(n > 0 && strstr(faults[0].help, help) != NULL);
}

static void refused__what_the_bench_calls_otherwise__is_told_in_its_words(void) {
    suggests(P, "\"for\": \"2 h\"", "\"for\": \"2 h\"}, {\"do\": \"straighten\"",
             "\"to\": \"0.05 mm\", the bow that the press may leave");
    suggests(P, "\"condition\"", "\"temp\": \"1 C\", \"condition\"", "one of");
    suggests(P, "\"quantity\"", "\"qty\"", "\"quantity\"");
    suggests(P, "[\"top\", \"bottom\"]", "\"top\"", "[\"top\"]");
    suggests(B, "\"job\": \"bar\",",
             "\"job\": \"bar\", \"measured\": {\"shape\": {\"d\": {\"bow\": \"0.05 mm\"}}},",
             "twice the bow");
    suggests(P, "\"by\": \"files\"", "\"by\": \"guess\"", "\"files\", \"hardness tester\"");
}

HS_TEST_MAIN("sheet_refused", TEST(refused__one_fault_each__is_found_in_its_place),
             TEST(refused__the_unchanged_sheets__are_good),
             TEST(refused__what_the_bench_calls_otherwise__is_told_in_its_words),
             TEST(refused__every_unit_taken_away__is_noticed),
             TEST(refused__an_unknown_key_in_any_object__is_noticed),
             TEST(refused__many_faults__come_in_one_run_in_order),
             TEST(refused__a_near_miss__is_suggested))
