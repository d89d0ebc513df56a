#include "sheet/utf8.h"

/* Bytes that follow a first byte and the range of the second one (RFC 3629, section 4). */
typedef struct lead {
    size_t more;
    unsigned char low, high;
} lead;

static lead lead_of(unsigned char c) {
    if (c < 0x80) return (lead){0, 0, 0};
    if (c >= 0xC2 && c <= 0xDF) return (lead){1, 0x80, 0xBF};
    if (c == 0xE0) return (lead){2, 0xA0, 0xBF};
    if (c == 0xED) return (lead){2, 0x80, 0x9F};
    if (c >= 0xE1 && c <= 0xEF) return (lead){2, 0x80, 0xBF};
    if (c == 0xF0) return (lead){3, 0x90, 0xBF};
    if (c >= 0xF1 && c <= 0xF3) return (lead){3, 0x80, 0xBF};
    if (c == 0xF4) return (lead){3, 0x80, 0x8F};
    return (lead){0, 1, 0}; /* never a first byte */
}

size_t hs_utf8_fault(const char *text, size_t size) {
    const unsigned char *byte = (const unsigned char *)text;
    for (size_t i = 0; i < size;) {
        lead l = lead_of(byte[i]);
        if (l.low > l.high || size - i <= l.more) return i;
        for (size_t k = 1; k <= l.more; k++) {
            unsigned char low = k == 1 ? l.low : 0x80, high = k == 1 ? l.high : 0xBF;
            if (byte[i + k] < low || byte[i + k] > high) return i;
        }
        i += l.more + 1;
    }
    return size;
}
