/* Is a text UTF-8 (RFC 3629)? */
#ifndef HS_SHEET_UTF8_H
#define HS_SHEET_UTF8_H

#include <stddef.h>

/** Offset of the first byte that is not UTF-8; `size` when all is well. Overlong forms, surrogates
 *  and anything above U+10FFFF are refused. */
size_t hs_utf8_fault(const char *text, size_t size);

#endif
