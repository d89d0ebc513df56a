/* A row of an embedded table by the word in its first column. */
#ifndef HS_CLI_QUICK_LOOKUP_H
#define HS_CLI_QUICK_LOOKUP_H

#include "hardskin/base/status.h"
#include "hardskin/tables/table.h"

/** Row of `word`; HS_E_WORD with the words that would do; `key` is named in the message. */
hs_status quick_row(size_t *row, hs_table_id table, const char *word, const char *key,
                    hs_error *err);

#endif
