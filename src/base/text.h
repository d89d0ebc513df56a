/* A bounded text buffer with a sticky failure: write on, ask once at the end. */
#ifndef HS_BASE_TEXT_H
#define HS_BASE_TEXT_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_text {
    char *data;    /* always closed by a NUL when size > 0 */
    size_t size;   /* room in bytes, the NUL included */
    size_t length; /* bytes written, the NUL not counted */
    int overflow;  /* sticky: something did not fit and was left out */
} hs_text;

/** Start an empty text in the caller's buffer of `size` bytes. */
hs_text hs_text_start(char *data, size_t size);

/** Append formatted text. What does not fit whole is left out and `overflow` stays set. */
void hs_text_add(hs_text *text, const char *format, ...) HS_PRINTF(2, 3);

#endif
