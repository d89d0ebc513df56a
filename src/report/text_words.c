/* Words that several sections have in common. */
#include "report/sections.h"

const char *hs_text_verdict(hs_verdict verdict) {
    static const char *const words[] = {"none", "GO", "TIGHT", "STOP"};
    return words[verdict];
}

/* A dimension with no ground face keeps the size of the fire: no stock, no window, no limit. */
int hs_text_is_ground(const hs_job *job, size_t i) {
    const size_t *face = job->dimension[i].face;
    return job->face[face[0]].finish == HS_GROUND || job->face[face[1]].finish == HS_GROUND;
}

/* How many of a dimension's faces are ground, a diameter counting twice; the last of them. */
static int grounds(size_t *face, const hs_job *job, size_t i) {
    int n = 0;
    for (int k = 0; k < 2; k++)
        if (job->face[job->dimension[i].face[k]].finish == HS_GROUND) {
            *face = job->dimension[i].face[k];
            n++;
        }
    return n;
}

double hs_text_carried(const hs_job *job, size_t i) {
    size_t face;
    return grounds(&face, job, i) == 1 ? 2 : 1;
}

hs_words hs_text_side(const hs_job *job, size_t i) {
    size_t face = 0;
    hs_words out;
    hs_text text = hs_text_start(out.text, sizeof out.text);
    if (grounds(&face, job, i) == 1)
        hs_text_add(&text, "on %.80s", job->face[face].name);
    else
        hs_text_add(&text, "per side");
    return out;
}
