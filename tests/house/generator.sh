#!/bin/sh
# The table generator must refuse bad tables with file:line, and take good ones.
# usage: generator.sh GENERATOR
# own: the rules at the top of src/tables/generate.c
generator=$1
passed=0
failed=0
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
ASAN_OPTIONS=detect_leaks=0
export ASAN_OPTIONS

printf '%s\n' '# Sources' '- one: a book' '- two: a paper' >"$work/SOURCES.md"
head='# title: A table\n# source: one\n# basis: read\n'
plain="${head}size[mm],load[kg/m3]?,note[text]\n"
scalar="${head}constant[text],value[1],unit[text],low[1]?,high[1]?,source[text],basis[text]\n"

run() { # FILE...
    mkdir -p "$work/out"
    rm -f "$work"/out/*
    "$generator" "$work/out" "$work/SOURCES.md" "$@" >"$work/said" 2>&1
}

complain() { # TITLE
    failed=$((failed + 1))
    echo "generator: $1; it said:"
    sed 's/^/    /' "$work/said"
}

# A good table: exit 0, silent, all four files made.
takes() { # TITLE CONTENT
    printf '%b' "$2" >"$work/sample.csv"
    if run "$work/sample.csv" && [ ! -s "$work/said" ] && [ -s "$work/out/tables_data.c" ] &&
        [ -s "$work/out/tables_data.h" ] && [ -s "$work/out/tables_list.h" ] &&
        [ -s "$work/out/constants.h" ]; then
        passed=$((passed + 1))
    else
        complain "refused $1"
    fi
}

# A bad table: exit 1, exactly one message, at that line, nothing written.
refuses() { # LINE MESSAGE CONTENT
    printf '%b' "$3" >"$work/sample.csv"
    run "$work/sample.csv"
    code=$?
    if [ "$code" -eq 1 ] && [ "$(wc -l <"$work/said")" -eq 1 ] &&
        grep -qF "$work/sample.csv:$1: $2" "$work/said" && [ -z "$(ls "$work/out")" ]; then
        passed=$((passed + 1))
    else
        complain "exit $code, wanted 1 and 'sample.csv:$1: $2'"
    fi
}

takes 'plain numbers, an empty cell, a quoted comma' "${plain}1,2.5e3,a\n2,,\"b, \"\"c\"\"\"\n"
takes 'scalars with bounds' "${scalar}speed,1.5,m/s,1,2,one two,from memory\nmass,-3,kg,,,two,computed\n"
takes 'an order within groups' \
    "# order: size rising in note\n${plain}1,,a\n2,,a\n1,,b\n2,,b\n"
takes 'units with exponents' "${head}a[cm2 h/m3],b[1/K per wt %],c[K/wt %^.5],d[W/(m2 K)]\n1,1,1,1\n"
grep -qF '#define HS_K_' "$work/out/constants.h" && complain 'a macro for a table without constants'
printf '%b' "${scalar}speed,1.5,m/s,1,2,one,read\n" >"$work/sample.csv"
if run "$work/sample.csv" && grep -qF '#define HS_K_SAMPLE_SPEED (1.5) /* m/s */' \
    "$work/out/constants.h"; then passed=$((passed + 1)); else complain 'no macro for a constant'; fi

refuses 1 'the header needs title, source and basis' "# source: one\n# basis: read\nsize[mm]\n1\n"
refuses 1 "source key 'three' is not in SOURCES.md" \
    "# title: A\n# source: one three\n# basis: read\nsize[mm]\n1\n"
refuses 1 "basis 'guess' is none of" "# title: A\n# source: one\n# basis: guess\nsize[mm]\n1\n"
refuses 2 "unknown header key 'colour'" "# title: A\n# colour: red\n# source: one\n# basis: read\nsize[mm]\n1\n"
refuses 2 'a header line is' "# title: A\n# read\n# source: one\n# basis: read\nsize[mm]\n1\n"
refuses 4 "header key 'basis' stands twice" "${head}# basis: read\nsize[mm]\n1\n"
refuses 6 'a header line below the line of columns' "${plain}1,,a\n# note: late\n"
refuses 4 "unknown unit 'kgg' in 'kgg/m3'" "${head}load[kgg/m3]\n1\n"
refuses 4 "unknown unit 'furlong' in 'furlong'" "${head}load[furlong]\n1\n"
refuses 4 "unknown unit '12' in '12'" "${head}load[12]\n1\n"
refuses 5 "unknown unit 'mn' in 'mn'" "${scalar}speed,1.5,mn,,,one,read\n"
refuses 4 "column 'load' is not name[unit]" "${head}size[mm],load\n1,2\n"
refuses 4 "column 'load[m]x' is not name[unit]" "${head}size[mm],load[m]x\n1,2\n"
refuses 4 "column 'my size' is not made of letters, digits and _" "${head}my size[mm]\n1\n"
refuses 4 "column 'Size' stands twice" "${head}size[mm],Size[m]\n1,2\n"
refuses 6 '2 cells where 3 columns are named' "${plain}1,,a\n2,3\n"
refuses 5 '4 cells where 3 columns are named' "${plain}1,2,a,b\n1,2,a\n"
refuses 5 "column 'size' is empty" "${plain},2,a\n"
refuses 5 "'inf' in column 'size' is not a finite number" "${plain}inf,2,a\n"
refuses 6 "'1e999' in column 'size' is not a finite number" "${plain}1,,a\n1e999,,b\n"
refuses 5 "'nan' in column 'load' is not a finite number" "${plain}1,nan,a\n"
refuses 5 "'0x10' in column 'size' is not a finite number" "${plain}0x10,2,a\n"
refuses 5 "'1,5' in column 'size' is not a finite number" "${plain}\"1,5\",2,a\n"
refuses 5 'a quote is not closed' "${plain}1,2,\"a\n"
refuses 5 'text after a closing quote' "${plain}1,2,\"a\"b\n"
refuses 1 'no rows' "${plain}"
refuses 7 "column 'size' is not rising here" "# order: size rising\n${plain}1,,a\n1,,b\n"
refuses 7 "column 'size' is not falling here" "# order: size falling\n${plain}1,,a\n2,,b\n"
refuses 8 "column 'size' is not rising here" "# order: size rising in note\n${plain}1,,a\n2,,b\n2,,b\n"
refuses 4 "order 'weight rising' is not" "${head}# order: weight rising\nsize[mm]\n1\n"
refuses 6 "constant 'Speed' stands twice" "${scalar}speed,1,m/s,,,one,read\nSpeed,2,m/s,,,one,read\n"
refuses 5 "constant 'my speed' is not made of letters, digits and _" \
    "${scalar}my speed,1,m/s,,,one,read\n"
refuses 5 'value is below its low bound' "${scalar}speed,1,m/s,1.5,2,one,read\n"
refuses 5 'value is above its high bound' "${scalar}speed,3,m/s,1.5,2,one,read\n"
refuses 5 'its low bound is above its high bound' "${head}H_low[1],H_high[1]\n2,1\n"
refuses 5 "source key 'three' is not in SOURCES.md" "${scalar}speed,1,m/s,,,three,read\n"
refuses 5 'a source key is missing' "${scalar}speed,1,m/s,,,,read\n"
refuses 5 "basis 'guessed' is none of" "${scalar}speed,1,m/s,,,one,guessed\n"
refuses 1 'a table of constants has the columns constant, value, unit' \
    "${head}constant[text],unit[text],value[1]\nspeed,m/s,1\n"

{
    printf '%b' "${plain}1,,"
    head -c 9000 /dev/zero | tr '\0' x
    echo
} >"$work/sample.csv"
if ! run "$work/sample.csv" && grep -qF 'sample.csv:5: the line is too long' "$work/said"; then
    passed=$((passed + 1))
else
    complain 'a line that is too long'
fi

mkdir "$work/other"
printf '%b' "${plain}1,,a\n" | tee "$work/sample.csv" >"$work/other/sample.csv"
run "$work/sample.csv" "$work/other/sample.csv"
if [ $? -eq 1 ] && grep -qF "other/sample.csv:1: table 'sample' is read twice" "$work/said"; then
    passed=$((passed + 1))
else
    complain 'two tables of one name'
fi
cp "$work/sample.csv" "$work/bad-name.csv"
if ! run "$work/bad-name.csv" && grep -qF "bad-name.csv:1: table name 'bad-name'" "$work/said"; then
    passed=$((passed + 1))
else
    complain 'a table name that is none in C'
fi
printf '%s\n' '- one: again' >>"$work/SOURCES.md"
if ! run "$work/sample.csv" && grep -qF "SOURCES.md:4: source key 'one' stands twice" "$work/said"; then
    passed=$((passed + 1))
else
    complain 'a source key that stands twice'
fi

echo "generator: $passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
