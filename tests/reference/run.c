#include "reference.h"

#include <cjson/cJSON.h>

#include <fcntl.h>
#include <math.h>
#include <spawn.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

extern char **environ;

enum { ANSWER = 64 * 1024 };

/* Exit code of the command, its stdout in `out`; -1 when it did not run or died. */
static int start(char *out, const char *program, const ref_case *c) {
    char *argv[REF_ARGS + 4] = {(char *)program, "quick"};
    int pipes[2], status = 0;
    size_t n = 2, length = 0;
    ssize_t got;
    pid_t pid;
    posix_spawn_file_actions_t actions;
    for (size_t i = 0; i < c->args; i++)
        argv[n++] = c->arg[i];
    argv[n] = "--json";
    if (pipe(pipes) != 0) return -1;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, pipes[1], STDOUT_FILENO);
    posix_spawn_file_actions_addclose(&actions, pipes[0]);
    posix_spawn_file_actions_addclose(&actions, pipes[1]);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    int started = posix_spawn(&pid, program, &actions, NULL, argv, environ) == 0;
    posix_spawn_file_actions_destroy(&actions);
    close(pipes[1]);
    while (started && length + 1 < ANSWER &&
           (got = read(pipes[0], out + length, ANSWER - 1 - length)) > 0)
        length += (size_t)got;
    out[length] = '\0';
    close(pipes[0]);
    if (!started || waitpid(pid, &status, 0) != pid || !WIFEXITED(status)) return -1;
    return WEXITSTATUS(status);
}

static int near(const cJSON *item, double expected, double tolerance) {
    /* Written so that NaN and a missing number fail. */
    return cJSON_IsNumber(item) && fabs(item->valuedouble - expected) <= tolerance;
}

static int agrees(const cJSON *item, const ref_expect *e) {
    if (e->n == 0) return cJSON_IsString(item) && !strcmp(item->valuestring, e->word);
    if (e->n == 1) return near(item, e->value[0], e->tolerance);
    return cJSON_IsArray(item) && cJSON_GetArraySize(item) == 2 &&
           near(cJSON_GetArrayItem(item, 0), e->value[0], e->tolerance) &&
           near(cJSON_GetArrayItem(item, 1), e->value[1], e->tolerance);
}

static void tell(const cJSON *item, const ref_expect *e, const char *name) {
    char *got = item ? cJSON_PrintUnformatted(item) : NULL;
    printf("%s:%d: %s is %s, expected ", name, e->line, e->key, got ? got : "not in the answer");
    if (e->n == 0) printf("%s\n", e->word);
    if (e->n == 1) printf("%.10g \xC2\xB1 %g\n", e->value[0], e->tolerance);
    if (e->n == 2) printf("[%.10g, %.10g] \xC2\xB1 %g\n", e->value[0], e->value[1], e->tolerance);
    free(got);
}

static int compare(ref_count *count, const ref_case *c, const char *text, const char *name) {
    cJSON *json = cJSON_Parse(text);
    int good = 1;
    if (!json) printf("%s:%d: the answer is not JSON\n", name, c->line);
    for (size_t i = 0; json && i < c->expects; i++) {
        const cJSON *item = cJSON_GetObjectItemCaseSensitive(json, c->expect[i].key);
        count->checks++;
        if (agrees(item, &c->expect[i])) continue;
        tell(item, &c->expect[i], name);
        good = 0;
    }
    good = good && json;
    cJSON_Delete(json);
    return good;
}

static int judge(ref_count *count, const ref_case *c, const char *program, const char *name) {
    char out[ANSWER];
    int wanted = c->fails;
    if (c->bad) return 0;
    if (!c->has_source || !c->has_quick || (c->expects == 0) == (c->fails == 0)) {
        printf("%s:%d: a case needs source, quick, and either expect or fails\n", name, c->line);
        return 0;
    }
    int code = start(out, program, c);
    if (wanted) count->checks += 2;
    if (code != wanted) {
        printf("%s:%d: exit code is %d, expected %d\n", name, c->line, code, wanted);
        return 0;
    }
    if (wanted && out[0]) printf("%s:%d: it failed and yet printed an answer\n", name, c->line);
    if (wanted) return !out[0];
    return compare(count, c, out, name);
}

void ref_run(ref_count *count, const ref_case *c, const char *program, const char *name) {
    if (judge(count, c, program, name))
        count->passed++;
    else
        count->failed++;
}
