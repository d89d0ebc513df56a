/* One growing block of memory freed at once. Only `sheet` and the command allocate. */
#ifndef HS_BASE_ARENA_H
#define HS_BASE_ARENA_H

#include <stddef.h>

typedef struct hs_arena {
    struct hs_arena_block *first;
} hs_arena;

/** Zeroed, suitably aligned memory of `size` bytes; NULL when there is none left. Freed only by
 *  hs_arena_free. A zeroed hs_arena is an empty one. */
void *hs_arena_get(hs_arena *arena, size_t size);

/** Copy of `length` bytes of text with a closing NUL; NULL when there is no memory. */
char *hs_arena_text(hs_arena *arena, const char *text, size_t length);

/** Free everything; the arena is empty afterwards and can be used again. */
void hs_arena_free(hs_arena *arena);

#endif
