#!/bin/sh
# Quenches as solid bodies by a general-purpose finite element program, against ours.
# usage: quench_ccx.sh SECOND_QUENCH_CCX [CASE...]; with martensite, minutes each: hard_strip
# hard_flat hard_angle
program=$1
shift
[ $# -gt 0 ] || set -- angle flat channel
if ! command -v ccx >/dev/null 2>&1; then
    echo "ccx (Debian package calculix-ccx) is missing: not run"
    echo "second_quench: 0 passed, $# failed"
    exit 1
fi
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
failed=0
for case in "$@"; do
    "$program" write "$case" >"$work/$case.inp"
    from=$(date +%s)
    (cd "$work" && OMP_NUM_THREADS=1 ccx "$case" >"$case.log" 2>&1) || tail -5 "$work/$case.log"
    echo "$case: $(($(date +%s) - from)) s"
    "$program" compare "$case" "$work/$case.dat" || failed=1
done
exit $failed
