#!/bin/sh
# How long a whole `plan` takes, from start to exit, beside a program that does nothing.
# usage: plan.sh PROGRAM [SHEET...]; a table of medians of 20 runs, no verdict
program=$1
shift
[ $# -gt 0 ] || set -- "$(dirname "$0")"/../../samples/*.json
runs=20

median() { # word...: milliseconds
    i=0
    while [ "$i" -lt "$runs" ]; do
        from=$(date +%s%N)
        "$@" >/dev/null 2>&1
        to=$(date +%s%N)
        echo $((to - from))
        i=$((i + 1))
    done | sort -n | awk '{ t[NR] = $1 } END { printf "%.2f", (t[int((NR + 1) / 2)] + t[int(NR / 2) + 1]) / 2e6 }'
}

printf '%-44s %10s\n' "median of $runs runs" "ms"
printf '%-44s %10s\n' "true" "$(median true)"
for sheet in "$@"; do
    case $sheet in *shop*.json | *schema*.json) continue ;; esac
    printf '%-44s %10s\n' "$(basename "$sheet")" "$(median "$program" plan "$sheet" --json)"
done
