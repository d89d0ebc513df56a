#!/bin/sh
# How long a quench of a section takes: one core, beside CVODE (Debian libsundials-dev) on the same
# nodes and beside the whole run of a general-purpose finite element program (calculix-ccx).
# usage: quench.sh BUILD_DIR; a table, no verdict
build=$1
here=$(cd "$(dirname "$0")" && pwd)
root=$here/../..
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

seconds() { # word...: of the whole process
    from=$(date +%s%N)
    "$@" >"$work/out" 2>&1
    to=$(date +%s%N)
    awk "BEGIN { printf \"%.4f\", ($to - $from) / 1e9 }"
}

if ! ${CC:-cc} -std=c11 -O2 -D_POSIX_C_SOURCE=200809L -I"$root/include" -I"$root/src" \
    "$here/quench.c" "$build/src/libhardskin.a" -lsundials_cvode -lsundials_nvecserial \
    -lsundials_sunmatrixband -lsundials_sunlinsolband -lsundials_sunlinsolspgmr \
    -lm -o "$work/quench" 2>"$work/log"; then
    tail -3 "$work/log"
    echo "CVODE (libsundials-dev) is missing or does not fit: not run"
    exit 1
fi
"$work/quench"
if ! command -v ccx >/dev/null 2>&1; then
    echo "ccx (calculix-ccx) is missing: not compared"
    exit 0
fi
"$build/tests/second/second_quench_ccx" write angle >"$work/angle.inp"
ours=$(seconds "$work/quench" one)
cd "$work" || exit 1
theirs=$(OMP_NUM_THREADS=1 seconds ccx angle)
echo "whole process, one K: ours $ours s, ccx $theirs s ($(awk "BEGIN { printf \"%.0f\", $theirs / $ours }") times)"
