#!/bin/sh
# Is the bow of a quench plausible? Parts of 300 mm, ten per cent uneven, with and without a case of
# 1.2 mm, beside what practice reports. A table, no verdict.
# usage: bow.sh PROGRAM [STEEL]
program=$1
steel=${2:-16MnCr5}

number() { # KEY < json
    sed -n "s/.*\"$1\": *\(-*[0-9.e+-]*\).*/\1/p" | head -1
}

row() { # NAME MEDIUM CASE FORM_KEY=...
    name=$1 medium=$2 case=$3
    shift 3
    out=$("$program" quick bow "$@" length="300 mm" steel="$steel" quench="$medium" \
        uneven="10 %" case="$case mm" --json) || out=
    core=$(echo "$out" | grep -q 'core turns to martensite' && echo hard || echo soft)
    printf '%-12s %-6s %4s mm  %-4s %8.3f %8.3f %8.3f\n' "$name" "$medium" "$case" "$core" \
        "$(echo "$out" | number bow_mm)" "$(echo "$out" | number bow_low_mm)" \
        "$(echo "$out" | number bow_high_mm)"
}

echo "$steel, 300 mm, 10 % uneven; bow in mm"
printf '%-12s %-6s %7s  %-4s %8s %8s %8s\n' part medium case core median "5 %" "95 %"
for medium in oil water; do
    for case in 0 1.2; do
        for t in 15 20 30 40; do
            row "flat ${t} x 60" $medium $case form=plate width="60 mm" thickness="$t mm"
        done
        for d in 12 20 30 50; do
            row "round $d" $medium $case form=bar diameter="$d mm"
        done
    done
done
echo "practice (from memory): .1 to .5 mm per 300 mm for oil-quenched case-hardened flats of 15 to 30 mm;"
echo "water two to three times as much"
echo "where this disagrees: the sum holds what one side cooled faster does, and straight fibres; with a"
echo "case it makes flats in oil 3 to 10 times straighter than practice, and water hardly worse than oil"
echo "(moved water, no steam pockets). What dipping, steam, supports, handling and stress in the stock"
echo "do is added by judgement in a plan (quench.csv, sigma_other; plan_doubt.csv, stock_...)"
