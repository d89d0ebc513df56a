#include "units/cursor.h"

const hs_token *hs_cursor_token(const hs_cursor *c) {
    return &c->token[c->at];
}

/* The last token is TOKEN_END; walking past it stays there. */
const hs_token *hs_cursor_after(const hs_cursor *c, size_t steps) {
    size_t last = c->count - 1;
    return &c->token[c->at + steps < last ? c->at + steps : last];
}

const char *hs_cursor_bytes(const hs_cursor *c, const hs_token *token) {
    return c->text->text + token->start;
}

int hs_cursor_column(const hs_cursor *c, size_t token) {
    return c->text->column[c->token[token].start];
}
