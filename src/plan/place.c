#include "plan/place.h"

#include <stdio.h>

hs_status hs_at_face(hs_status status, const hs_face *face, hs_error *err) {
    int said = face->pointer && face->pointer[0];
    if (status != HS_OK && err && !err->pointer[0])
        snprintf(err->pointer, sizeof err->pointer, "%s", said ? face->pointer : "/part");
    return status;
}

hs_status hs_at_step(hs_status status, const hs_step *step, const char *key, hs_error *err) {
    if (status != HS_OK && err && step->pointer && step->pointer[0] && !err->pointer[0])
        snprintf(err->pointer, sizeof err->pointer, "%s%s%s", step->pointer, key[0] ? "/" : "",
                 key);
    return status;
}
