#include "cli/file.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST = 8 * 1024 * 1024, FIRST = 64 * 1024 };

static const char *help_for(int number) {
    switch (number) {
    case ENOENT:
        return "is it in this folder, and spelt so? hardskin new plate > part.json makes a sheet";
    case EISDIR:
        return "that is a folder: name the sheet in it";
    case EACCES:
        return "you may not read it: look at its permissions";
    default:
        return "a file that can be read, or - for stdin";
    }
}

static hs_status read_all(hs_file *file, FILE *from, hs_error *err) {
    size_t room = 0;
    for (;;) {
        if (file->size + 1 >= room) {
            room = room ? room * 2 : FIRST;
            char *text = realloc(file->text, room);
            if (!text) return hs_fail(err, HS_E_MEMORY, "", "no memory left for the sheet");
            file->text = text;
        }
        size_t got = fread(file->text + file->size, 1, room - file->size - 1, from);
        file->size += got;
        file->text[file->size] = '\0';
        if (file->size > MOST)
            return hs_fail(err, HS_E_TOO_LARGE, "one sheet is one part",
                           "the sheet is longer than 8 MiB");
        if (got == 0) break;
    }
    if (ferror(from))
        return hs_fail(err, HS_E_IO, help_for(errno), "cannot read it: %s", strerror(errno));
    return HS_OK;
}

static hs_status set_folder(hs_file *file, const char *name, hs_error *err) {
    const char *slash = strrchr(name, '/');
    size_t n = slash ? (size_t)(slash - name) : 0;
    if (n + 2 > sizeof file->folder)
        return hs_fail(err, HS_E_IO, "call it from that folder",
                       "the name of its folder is too long");
    if (!slash)
        strcpy(file->folder, ".");
    else if (n == 0)
        strcpy(file->folder, "/");
    else
        snprintf(file->folder, sizeof file->folder, "%.*s", (int)n, name);
    return HS_OK;
}

hs_status hs_file_read(hs_file *file, const char *name, hs_error *err) {
    int standard = !strcmp(name, "-");
    *file = (hs_file){.name = standard ? "stdin" : name};
    hs_status status = set_folder(file, standard ? "" : name, err);
    if (status != HS_OK) return status;
    FILE *from = standard ? stdin : fopen(name, "rb");
    if (!from) return hs_fail(err, HS_E_IO, help_for(errno), "cannot open it: %s", strerror(errno));
    status = read_all(file, from, err);
    if (!standard) fclose(from);
    if (status != HS_OK) {
        free(file->text);
        file->text = NULL;
    }
    return status;
}
