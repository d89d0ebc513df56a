#include "cli/quick_steel.h"

hs_status quick_steel(hs_composition *steel, quick_answer *answer, const char *name,
                      double carbon_pct, hs_error *err) {
    hs_steel found = {.only_maxima = 0};
    if (name) {
        hs_status status = hs_steel_find(&found, name, err);
        if (status != HS_OK) return status;
        quick_note(answer,
                   "%s: middle of its range, C %.3g Mn %.3g Si %.3g Cr %.3g Ni %.3g Mo %.3g",
                   found.name, found.mid.C, found.mid.Mn, found.mid.Si, found.mid.Cr, found.mid.Ni,
                   found.mid.Mo);
        if (found.only_maxima)
            quick_note(answer, "its standard gives maxima only: this analysis is an assumption");
    }
    if (carbon_pct > 6.7)
        return hs_fail(err, HS_E_IMPOSSIBLE, "core=\"0.18 %\"", "no steel holds %.4g %% of carbon",
                       carbon_pct);
    *steel = found.mid;
    if (carbon_pct >= 0) steel->C = carbon_pct;
    return HS_OK;
}
