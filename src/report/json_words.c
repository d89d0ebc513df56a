#include "report/json_words.h"

const char *hs_json_verdict(hs_verdict verdict) {
    static const char *const words[] = {"none", "go", "tight", "stop"};
    return words[verdict];
}

const char *hs_json_clean(hs_clean verdict) {
    static const char *const words[] = {"none", "ok", "care", "stop"};
    return words[verdict];
}

const char *hs_json_wheel(hs_wheel verdict) {
    static const char *const words[] = {"none", "grind", "grind with care", "do not grind"};
    return words[verdict];
}
