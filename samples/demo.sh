#!/bin/sh
# Build hardskin and let it answer for one part. Usage: sh samples/demo.sh [SHEET]
set -eu
cd "$(dirname "$0")/.."
sheet=${1:-}

# What the build needs, from the system's own packages; asked for only when something is missing.
missing=
for tool in cmake gcc make pkg-config; do
    command -v "$tool" >/dev/null 2>&1 || missing="$missing $tool"
done
if ! pkg-config --exists libcjson 2>/dev/null; then missing="$missing libcjson-dev"; fi
if ! pkg-config --exists libpcre2-8 2>/dev/null; then missing="$missing libpcre2-dev"; fi
if [ -n "$missing" ]; then
    echo "installing:$missing"
    root=
    [ "$(id -u)" -eq 0 ] || root=sudo
    $root apt-get update -q >/dev/null
    # shellcheck disable=SC2086
    $root apt-get install -y -q --no-install-recommends $missing libc6-dev >/dev/null
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
echo "building in build-demo (a minute or so)"
if ! { cmake -S . -B build-demo -DCMAKE_BUILD_TYPE=Release &&
    cmake --build build-demo --target hardskin_cli -j2; } >"$log" 2>&1; then
    tail -40 "$log"
    exit 1
fi

[ -n "$sheet" ] || sheet=samples/slide-bar.json
echo
echo "\$ hardskin plan $sheet"
echo
code=0
build-demo/hardskin plan "$sheet" || code=$?
echo
echo "The command is build-demo/hardskin; --help shows what it can do. More parts of the same"
echo "workshop, good and bad ones, stand in samples/:"
for other in samples/*.json; do
    case $other in *shop*.json | *schema*.json) continue ;; esac
    echo "  build-demo/hardskin plan $other"
done
exit "$code"
