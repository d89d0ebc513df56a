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
sh tests/golden/excerpt.sh samples/expected/slide-bar.txt >tests/golden/excerpt.tmp
awk '
    /^`hardskin plan samples\/slide-bar.json`/ { found = 1 }
    found && /^```/ && ++fence == 1 { print; while ((getline line < "tests/golden/excerpt.tmp") > 0) print line; next }
    found && fence == 1 { next }
    { print }
' README.md >README.tmp && mv README.tmp README.md
rm -f tests/golden/excerpt.tmp
git diff --stat -- samples/expected README.md
