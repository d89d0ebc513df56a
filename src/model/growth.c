#include "hardskin/model/growth.h"

#include "constants.h"

#include <math.h>

hs_status hs_growth_volume(double *volume_pct, const hs_growth_layer *layer, hs_error *err) {
    double C = layer->dissolved_pct, carbide = layer->carbide_pct;
    double austenite = layer->austenite_pct, soft = layer->soft_pct;
    double martensite = 100 - carbide - austenite - soft;
    int possible = C >= 0 && C <= HS_K_GROWTH_CARBON_MOST && carbide >= 0 && austenite >= 0 &&
                   soft >= 0 && martensite >= -1e-9;
    if (!possible)
        return hs_fail(err, HS_E_IMPOSSIBLE, "shares of 0 to 100 %, together at most 100 %",
                       "carbide, austenite and soft share do not make a whole");
    *volume_pct = martensite / 100 * HS_K_GROWTH_MARTENSITE_PER_C * C +
                  austenite / 100 * (HS_K_GROWTH_AUSTENITE_BASE + HS_K_GROWTH_AUSTENITE_PER_C * C);
    return HS_OK;
}

hs_status hs_growth_linear(double *strain, const hs_growth_layer *layer, size_t n, hs_error *err) {
    double sum = 0, weight = 0;
    for (size_t i = 0; i < n; i++) {
        double volume_pct = 0;
        hs_status status = hs_growth_volume(&volume_pct, &layer[i], err);
        if (status) return status;
        if (!(layer[i].area_m2 >= 0 && isfinite(layer[i].area_m2)))
            return hs_fail(err, HS_E_IMPOSSIBLE, "an area of 0 or more", "layer %zu has no area",
                           i + 1);
        sum += layer[i].area_m2 * volume_pct;
        weight += layer[i].area_m2;
    }
    if (!(weight > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "at least one layer with an area",
                       "a section without area does not grow");
    *strain = sum / weight / 300; /* per cent of the volume to a third of it as a share */
    return HS_OK;
}

double hs_growth_carbide_pct(double carbon_pct, double dissolved_pct) {
    double left = carbon_pct - dissolved_pct;
    if (left <= 0) return 0;
    double mass_share = left / HS_K_GROWTH_CEMENTITE_C;
    double carbide_m3 = mass_share / HS_K_GROWTH_CEMENTITE_DENSITY;
    return 100 * carbide_m3 / (carbide_m3 + (1 - mass_share) / HS_K_PHYSICAL_IRON_DENSITY);
}
