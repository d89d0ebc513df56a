#!/bin/sh
# Write the reports of all samples anew. Read every changed line before you commit them.
# Usage: sh tests/golden/renew.sh [HARDSKIN]
cd "$(dirname "$0")/../.." || exit 1
hardskin=${1:-build-demo/hardskin}
mkdir -p samples/expected
for sheet in samples/*.json; do
    name=$(basename "$sheet" .json)
    case $name in shop | *.schema) continue ;; esac
    "$hardskin" plan "$sheet" >"samples/expected/$name.txt"
    [ $? -le 1 ] || echo "$name: no report"
done
git diff --stat -- samples/expected
