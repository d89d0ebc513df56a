#!/bin/sh
# own: the report of every sample is the one that was read and kept in samples/expected.
# Usage: sh tests/golden/check.sh HARDSKIN SAMPLES
hardskin=$1
samples=$2
passed=0
failed=0
for sheet in "$samples"/*.json; do
    name=$(basename "$sheet" .json)
    case $name in shop | *.schema) continue ;; esac
    if "$hardskin" plan "$sheet" 2>&1 | diff -u "$samples/expected/$name.txt" - | head -40 | grep .; then
        echo "golden: $name is not as kept: read it, then sh tests/golden/renew.sh"
        failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
done
[ $((passed + failed)) -gt 0 ] || failed=1
here=$(dirname "$0")
shown=$(awk '/^`hardskin plan samples\/slide-bar.json`/ { found = 1 }
    found && /^```/ { fence++; next }
    found && fence == 1' "$here/../../README.md")
if [ -n "$shown" ] && [ "$shown" = "$(sh "$here/excerpt.sh" "$samples/expected/slide-bar.txt")" ]; then
    passed=$((passed + 1))
else
    echo "golden: the report in README.md is not that of the slide bar: sh tests/golden/renew.sh"
    failed=$((failed + 1))
fi
echo "golden: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
