#!/bin/sh
# The rules of the house, checked on the text of the sources.
# usage: rules.sh ROOT COMPILER INCLUDE_FOLDER_OF_GENERATED_TABLES
#        rules.sh --self-test ROOT COMPILER GENERATED   plants one fault of each kind and looks
root=$1
compiler=$2
generated=$3
order='base tables units model plan sheet report cli page'

rank() {
    place=0
    for module in $order; do
        place=$((place + 1))
        if [ "$module" = "$1" ]; then
            echo "$place"
            return
        fi
    done
    echo 0
}

sources() { find "$root/src" "$root/include" -name '*.[ch]' | sort; }

module_of() {
    path=${1#"$root"/}
    case $path in
    include/hardskin/*) path=${path#include/hardskin/} ;;
    src/*) path=${path#src/} ;;
    esac
    echo "${path%%/*}"
}

# A file includes only its own folder or one to the left.
include_order() {
    sources | while read -r file; do
        own=$(rank "$(module_of "$file")")
        [ "$own" -gt 0 ] || echo "${file#"$root"/}: in no folder of the house"
        sed -n 's/^#include "\(.*\)"$/\1/p' "$file" | while read -r name; do
            name=${name#hardskin/}
            case $name in */*) ;; *) continue ;; esac # generated headers have no folder
            other=$(rank "${name%%/*}")
            if [ "$other" -eq 0 ] || [ "$other" -gt "$own" ]; then
                echo "${file#"$root"/}: includes $name"
            fi
        done
    done
}

# A public header shows only public headers.
public_includes() {
    find "$root/include" -name '*.h' | while read -r file; do
        grep -n '^#include "' "$file" | grep -v '"hardskin/\|"tables_list.h"' |
            sed "s|^|${file#"$root"/}: |"
    done
}

# One library, one folder.
libraries() {
    grep -rlE --include='*.[ch]' '#include <pcre2' "$root/src" "$root/include" "$root/tests" | grep -v '/src/units/'
    grep -rlE '#include <cjson|#include <cJSON' "$root/src" "$root/include" |
        grep -v '/src/sheet/\|/src/report/json[^/]*$'
    grep -rlE '#include <CUnit' "$root/src" "$root/include"
}

# base/num, model, plan: no memory, no files, no printing, no clock.
pure() {
    find "$root/src/model" "$root/src/plan" "$root/src/base/num.c" -name '*.[ch]' |
        while read -r file; do
            grep -nE '\b(malloc|calloc|realloc|free|fopen|printf|fprintf|puts|getenv|time|rand)\(' \
                "$file" | sed "s|^|${file#"$root"/}: |"
        done
}

# No file-scope variable that can change: the symbols of each object, sections .data and .bss.
# Compiled for a fixed address, so that constant tables of pointers count as constant.
variables() {
    find "$root/src" -name '*.c' | sort | while read -r file; do
        object=$work/object.o
        "$compiler" -std=c11 -fno-pic -fno-pie -D_POSIX_C_SOURCE=200809L -I"$root/include" -I"$root/src" -I"$generated" -c "$file" \
            -o "$object" 2>/dev/null || { echo "${file#"$root"/}: does not compile"; continue; }
        nm "$object" | awk -v f="${file#"$root"/}" '$2 ~ /^[dDbBC]$/ && $3 !~ /\.local$/ { print f ": variable " $3 }'
    done
}

# Each public header compiles alone, warnings being errors.
headers_alone() {
    find "$root/include" -name '*.h' | sort | while read -r file; do
        printf '#include "%s"\nint alone;\n' "${file#"$root"/include/}" >"$work/alone.c"
        "$compiler" -std=c11 -Wall -Wextra -Wpedantic -Werror -I"$root/include" -I"$generated" \
            -c "$work/alone.c" -o "$work/alone.o" 2>/dev/null ||
            echo "${file#"$root"/}: does not compile alone"
    done
}

# The top level holds exactly these, and dotfiles.
top_level() {
    (cd "$root" && git ls-files 2>/dev/null || ls -A) | sed 's|/.*||' | sort -u |
        grep -vE '^(README\.md|DEVELOPERS\.md|CMakeLists\.txt|LICENSE|src|include|tests|tables|samples|\..*)$' |
        sed 's/^/top level: /'
}

# No file beyond 400 lines; no absolute path of somebody's machine.
size_and_paths() {
    find "$root/src" "$root/include" "$root/tests" -name '*.[ch]' | while read -r file; do
        lines=$(wc -l <"$file")
        [ "$lines" -le 400 ] || echo "${file#"$root"/}: $lines lines"
    done
    home='/(home|root|work|Users)/[a-z]'
    grep -rnIE "$home" "$root/src" "$root/include" "$root/tests" "$root/tables" "$root/samples" \
        --include='*' 2>/dev/null | grep -v 'house/rules.sh' | sed "s|^$root/||" | cut -c1-100
}

rules='include_order public_includes libraries pure variables headers_alone top_level size_and_paths'

check_all() {
    passed=0
    failed=0
    for rule in $rules; do
        found=$($rule)
        if [ -z "$found" ]; then
            passed=$((passed + 1))
        else
            failed=$((failed + 1))
            echo "$found" | sed "s/^/house: $rule: /"
        fi
    done
}

# A copy of the sources with one fault: the rule must see it there, and nothing without it.
plant() { # RULE FILE TEXT
    file=$root/$2
    mkdir -p "$(dirname "$file")"
    if [ -f "$file" ]; then cp "$file" "$work/kept"; else rm -f "$work/kept"; fi
    printf '%b' "$3" >>"$file"
    if [ -n "$($1)" ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "house: $1 did not notice the fault planted in $2"
    fi
    if [ -f "$work/kept" ]; then cp "$work/kept" "$file"; else rm -f "$file"; fi
}

self_test() {
    passed=0
    failed=0
    rules_root=$root
    root=$work/copy
    mkdir -p "$root/src" "$root/include/hardskin/base" "$root/tests" "$root/tables" "$root/samples"
    for module in base model plan units; do mkdir -p "$root/src/$module"; done
    cp "$rules_root"/include/hardskin/base/*.h "$root/include/hardskin/base/"
    printf 'int hs_num(void);\nint hs_num(void) { return 1; }\n' >"$root/src/base/num.c"
    (cd "$root" && git init -q . 2>/dev/null)
    check_all
    plant include_order src/base/num.c '#include "plan/window.h"\n'
    plant include_order src/other/a.c 'int x(void);\n'
    plant public_includes include/hardskin/base/status.h '#include "base/num.h"\n'
    plant libraries src/model/a.c '#include <pcre2.h>\n'
    plant libraries src/plan/a.c '#include <cjson/cJSON.h>\n'
    plant libraries src/base/a.c '#include <CUnit/CUnit.h>\n'
    plant pure src/model/a.c 'void *f(void) { return malloc(3); }\n'
    plant variables src/base/num.c 'static int counter;\nint hs_count(void);\nint hs_count(void) { return counter++; }\n'
    plant variables src/base/num.c 'int hs_level = 3;\n'
    plant variables src/base/num.c 'int hs_broken(\n'
    plant headers_alone include/hardskin/base/bad.h 'size_t hs_size_of(void);\n'
    plant size_and_paths src/base/b.c '/* /hom''e/someone */\n'
    (cd "$root" && : >notes.txt && git add -f notes.txt)
    if [ -n "$(top_level)" ]; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
}

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
if [ "$1" = --self-test ]; then
    root=$2
    compiler=$3
    generated=$4
    self_test
    echo "house rules themselves: $passed passed, $failed failed"
else
    check_all
    echo "house: $passed passed, $failed failed"
fi
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
