/* diffusion: time, depth, carbon; two give the third. */
#include "cli/quick_topics.h"
#include "hardskin/model/diffusion.h"

#include <string.h>

enum { D, D0, Q, MODEL, AT, CORE, SURFACE, TRANSFER, FOR, DEPTH, CARBON };
static const quick_key keys[] = {
    {"D", QUICK_QUANTITY, HS_DIFFUSIVITY, "m2/s", 0, NULL},
    {"D0", QUICK_QUANTITY, HS_DIFFUSIVITY, "m2/s", 0, NULL},
    {"Q", QUICK_QUANTITY, HS_MOLAR_ENERGY, NULL, 0, NULL},
    {"model", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, NULL},
    {"core", QUICK_QUANTITY, HS_PERCENT, NULL, 1, NULL},
    {"surface", QUICK_QUANTITY, HS_PERCENT, NULL, 1, NULL},
    {"transfer", QUICK_QUANTITY, HS_SPEED, "m/s", 0, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 0, NULL},
    {"depth", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"carbon", QUICK_QUANTITY, HS_PERCENT, NULL, 0, NULL},
};

static hs_status find_model(hs_diffusivity *d, const char *word, hs_error *err) {
    static const struct {
        const char *name;
        hs_diffusivity_model model;
    } known[] = {{"agren", HS_D_AGREN}, {"tibbetts", HS_D_TIBBETTS}, {"lee", HS_D_LEE}};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        if (strcmp(word, known[i].name) != 0) continue;
        d->model = known[i].model;
        return HS_OK;
    }
    return hs_fail(err, HS_E_WORD, "model=agren, tibbetts or lee", "no model is called %s", word);
}

/* One way to say the diffusivity, no more. */
static hs_status read_diffusivity(hs_diffusivity *d, const quick_value *v, hs_error *err) {
    int ways = (v[D].text != NULL) + (v[D0].text != NULL) + (v[MODEL].text != NULL);
    const char *help = "D=1.6e-11, or D0=2.3e-5 Q=\"148 kJ/mol\" at=..., or model=agren at=...";
    *d = (hs_diffusivity){.factor = 1};
    if (ways != 1)
        return hs_fail(err, HS_E_ARGUMENT, help, "say the diffusivity in one way, not in %d", ways);
    if ((v[D0].text != NULL) != (v[Q].text != NULL))
        return hs_fail(err, HS_E_ARGUMENT, help, "D0 and Q go together");
    if (!v[D].text && !v[AT].text)
        return hs_fail(err, HS_E_ARGUMENT, help, "the temperature is missing: at");
    if (v[D].text && v[AT].text)
        return hs_fail(err, HS_E_ARGUMENT, help, "at says nothing beside a fixed D");
    if (v[MODEL].text) return find_model(d, v[MODEL].text, err);
    d->model = HS_D_CONSTANT;
    d->D0_m2_s = v[D].text ? v[D].q.value : v[D0].q.value;
    d->Q_J_mol = v[D].text ? 0 : v[Q].q.value;
    return HS_OK;
}

static hs_status solve(quick_answer *answer, const hs_diffusion *given, const quick_value *v,
                       hs_error *err) {
    hs_diffusion_work work;
    double out = 0;
    hs_status status;
    if (!v[FOR].text) {
        status = hs_diffusion_time(&out, given, v[DEPTH].q.value, v[CARBON].q.value, &work, err);
        if (status == HS_OK) quick_number(answer, "time_h", out / 3600);
    } else if (!v[DEPTH].text) {
        status = hs_diffusion_depth(&out, given, v[FOR].q.value, v[CARBON].q.value, &work, err);
        if (status == HS_OK) quick_number(answer, "depth_mm", out * 1e3);
    } else {
        status = hs_diffusion_carbon(&out, given, v[FOR].q.value, v[DEPTH].q.value, &work, err);
        if (status == HS_OK) quick_number(answer, "carbon_pct", out);
    }
    return status;
}

static hs_status run(quick_answer *answer, const quick_value *v, const hs_units *units,
                     hs_error *err) {
    hs_diffusion given = {.core_pct = v[CORE].q.value, .surface_pct = v[SURFACE].q.value};
    int known = (v[FOR].text != NULL) + (v[DEPTH].text != NULL) + (v[CARBON].text != NULL);
    (void)units;
    if (known != 2)
        return hs_fail(err, HS_E_ARGUMENT, "two of for, depth, carbon; the third is the answer",
                       known == 3 ? "nothing is left to solve for" : "too little is given");
    hs_status status = read_diffusivity(&given.d, v, err);
    if (status != HS_OK) return status;
    given.temp_K = v[AT].text ? v[AT].q.value : 0;
    given.transfer_m_s = v[TRANSFER].text ? v[TRANSFER].q.value : 0;
    given.cap_at_acm = given.d.model != HS_D_CONSTANT;
    status = solve(answer, &given, v, err);
    if (status == HS_OK && given.cap_at_acm && given.surface_pct > hs_acm_pct(given.temp_K))
        quick_note(answer, "surface taken at %.4g %%: austenite holds no more there",
                   hs_acm_pct(given.temp_K));
    if (status == HS_OK && given.d.model == HS_D_LEE)
        quick_note(answer, "Lee's model without alloying elements: for plain steel only");
    return status;
}

const quick_topic quick_diffusion = {
    "diffusion",
    "carbon going in or out: time, depth or carbon from the other two",
    keys,
    11,
    "time_h, depth_mm or carbon_pct",
    "(C - C0)/(Cs - C0) = erfc(x / 2 sqrt(D t)); with a transfer Crank's eq. 3.35; D of a model "
    "depends on carbon: solved numerically",
    "Crank, The Mathematics of Diffusion; Agren 1986, Tibbetts 1980, Lee et al. 2011 (tables: "
    "diffusivity, diffusivity_lee)",
    "models read, Crank from memory",
    "agren 727 to 1150 C; tibbetts 850 to 1100 C, below 1.3 %; lee 850 to 1100 C; a half-space",
    run,
    0,
};
