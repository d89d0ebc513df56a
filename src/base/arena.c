#include "base/arena.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK = 64 * 1024, ALIGN = 16 };

struct hs_arena_block {
    struct hs_arena_block *next;
    size_t used, size;
};

/* Bytes before the payload, rounded up so that the payload keeps malloc's alignment. */
static size_t head_size(void) {
    return (sizeof(struct hs_arena_block) + ALIGN - 1) / ALIGN * ALIGN;
}

static struct hs_arena_block *grow(hs_arena *arena, size_t size) {
    size_t room = size > BLOCK ? size : BLOCK;
    if (room > SIZE_MAX - head_size()) return NULL;
    struct hs_arena_block *block = calloc(1, head_size() + room);
    if (!block) return NULL;
    block->size = room;
    block->next = arena->first;
    arena->first = block;
    return block;
}

void *hs_arena_get(hs_arena *arena, size_t size) {
    if (size > SIZE_MAX - ALIGN) return NULL;
    size_t need = (size + ALIGN - 1) / ALIGN * ALIGN;
    struct hs_arena_block *block = arena->first;
    if (!block || block->size - block->used < need) block = grow(arena, need);
    if (!block) return NULL;
    void *out = (char *)block + head_size() + block->used;
    block->used += need;
    return out;
}

char *hs_arena_text(hs_arena *arena, const char *text, size_t length) {
    if (length == SIZE_MAX) return NULL;
    char *out = hs_arena_get(arena, length + 1);
    if (out) memcpy(out, text, length);
    return out;
}

void hs_arena_free(hs_arena *arena) {
    while (arena->first) {
        struct hs_arena_block *next = arena->first->next;
        free(arena->first);
        arena->first = next;
    }
}
