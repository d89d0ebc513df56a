#include "sheet/forbidden.h"

#include <ctype.h>
#include <stddef.h>
#include <string.h>
#include <strings.h>

/* The hazards are those of reference/scale-and-descaling and of tables/electrode.csv. */
static const char salt[] = "salt in the bath makes chlorine gas at the anode";
static const char lid[] = "under a lid the bath's hydrogen and oxygen gather and explode";
static const char chromate[] = "stainless steel or chromium gives chromate, Cr(VI), a carcinogen";
static const char zinc[] = "zinc boils in the fire and gives off fume; in the bath it plates the "
                           "part and poisons the waste";
static const char metal[] = "this metal goes into the bath, onto the part and into the waste";
static const char mains[] = "a bath on the mains, or not isolated from them, kills";
static const char cyanide[] = "cyanide kills; with any acid it gives off hydrogen cyanide";

static const char soda[] = "washing soda only: \"soda\": \"50 g/L\"";
static const char open_tub[] = "an open tub in a ventilated room: \"room\", \"air_changes\"";
static const char steel_anode[] = "\"anode\": \"mild steel\", bare and uncoated";
static const char bare[] = "bare, uncoated steel only";
static const char isolated[] = "an isolated low-voltage supply: \"supply\": \"12 V 10 A\"";
static const char charcoal[] = "\"in\": \"charcoal with carbonate\"";

typedef struct ban {
    const char *word;
    unsigned scope;
    const char *hazard, *help;
} ban;

static const ban bans[] = {
    {"salt", HS_IN_TANK, salt, soda},
    {"salts", HS_IN_TANK, salt, soda},
    {"chloride", HS_IN_TANK, salt, soda},
    {"nacl", HS_IN_TANK, salt, soda},
    {"brine", HS_IN_TANK, salt, soda},
    {"bleach", HS_IN_TANK, salt, soda},
    {"hypochlorite", HS_IN_TANK, salt, soda},
    {"lid", HS_IN_TANK, lid, open_tub},
    {"cover", HS_IN_TANK, lid, open_tub},
    {"covered", HS_IN_TANK, lid, open_tub},
    {"closed", HS_IN_TANK, lid, open_tub},
    {"sealed", HS_IN_TANK, lid, open_tub},
    {"stainless", HS_IN_TANK, chromate, steel_anode},
    {"chrome", HS_IN_TANK, chromate, steel_anode},
    {"chromium", HS_IN_TANK, chromate, steel_anode},
    {"galvanised", HS_ANYWHERE, zinc, bare},
    {"galvanized", HS_ANYWHERE, zinc, bare},
    {"zinc", HS_ANYWHERE, zinc, bare},
    {"copper", HS_IN_TANK, metal, steel_anode},
    {"brass", HS_IN_TANK, metal, steel_anode},
    {"bronze", HS_IN_TANK, metal, steel_anode},
    {"lead", HS_IN_TANK, metal, steel_anode},
    {"cadmium", HS_ANYWHERE, metal, bare},
    {"mains", HS_IN_TANK, mains, isolated},
    {"autotransformer", HS_IN_TANK, mains, isolated},
    {"unisolated", HS_IN_TANK, mains, isolated},
    {"cyanide", HS_ANYWHERE, cyanide, charcoal},
    {"prussiate", HS_IN_FIRE, cyanide, charcoal},
};

static size_t word_length(const char *text) {
    size_t n = 0;
    while (isalpha((unsigned char)text[n]))
        n++;
    return n;
}

static const ban *find(const char *word, size_t length, unsigned scope) {
    for (size_t i = 0; i < sizeof bans / sizeof *bans; i++)
        if ((bans[i].scope & scope) && strlen(bans[i].word) == length &&
            !strncasecmp(bans[i].word, word, length))
            return &bans[i];
    return NULL;
}

/* "not isolated" is two words. */
static int not_isolated(const char *text, unsigned scope) {
    for (; (scope & HS_IN_TANK) && *text; text++)
        if (!strncasecmp(text, "not isolated", 12) || !strncasecmp(text, "non-isolated", 12))
            return 1;
    return 0;
}

int hs_forbidden(const char *text, unsigned scope, hs_error *err) {
    if (not_isolated(text, scope)) {
        hs_fail(err, HS_E_FORBIDDEN, isolated, "%s", mains);
        return 1;
    }
    for (const char *at = text; *at;) {
        size_t length = word_length(at);
        const ban *b = length ? find(at, length, scope) : NULL;
        if (b) {
            hs_fail(err, HS_E_FORBIDDEN, b->help, "\"%.*s\": %s", (int)length, at, b->hazard);
            return 1;
        }
        at += length ? length : 1;
    }
    return 0;
}
