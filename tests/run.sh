#!/bin/sh
# Everything that is tested, in one go: gcc with all tests, clang for the same bytes, sanitizers.
# The last line is the sum: "N passed, N failed".
cd "$(dirname "$0")/.." || exit 1
root=$(pwd)
build=$root/build-test
jobs=$(nproc 2>/dev/null || echo 2)
passed=0
failed=0

install_missing() {
    missing=
    for tool in cmake gcc make pkg-config clang; do
        command -v "$tool" >/dev/null 2>&1 || missing="$missing $tool"
    done
    pkg-config --exists libcjson 2>/dev/null || missing="$missing libcjson-dev"
    pkg-config --exists libpcre2-8 2>/dev/null || missing="$missing libpcre2-dev"
    pkg-config --exists cunit 2>/dev/null || missing="$missing libcunit1-dev"
    echo '#include <cvode/cvode.h>' | gcc -E - >/dev/null 2>&1 || missing="$missing libsundials-dev"
    python3 -c 'import jsonschema' 2>/dev/null || missing="$missing python3-jsonschema"
    command -v ccx >/dev/null 2>&1 || missing="$missing calculix-ccx"
    command -v nm >/dev/null 2>&1 || missing="$missing binutils"
    [ -n "$missing" ] || return 0
    echo "installing:$missing"
    as_root=
    [ "$(id -u)" -eq 0 ] || as_root=sudo
    $as_root apt-get update -q >/dev/null &&
        # shellcheck disable=SC2086
        $as_root apt-get install -y -q --no-install-recommends $missing libc6-dev >/dev/null
}

count() { # PASSED FAILED
    passed=$((passed + $1))
    failed=$((failed + $2))
}

# build NAME TARGET OPTION...: quiet unless it fails.
build() {
    name=$1
    target=$2
    shift 2
    if cmake -S "$root" -B "$build/$name" "$@" >"$build/$name.log" 2>&1 &&
        cmake --build "$build/$name" --target "$target" -j"$jobs" >>"$build/$name.log" 2>&1; then
        count 1 0
        return 0
    fi
    grep -nE 'error|Error|\*\*\*' "$build/$name.log" | head -40
    tail -5 "$build/$name.log"
    echo "$name: the build failed"
    count 0 1
    return 1
}

# Run the tests of a build and add up what they say. A test that says nothing counts as failed.
run_tests() { # NAME CTEST_OPTION...
    name=$1
    shift
    ctest --test-dir "$build/$name" -j"$jobs" --output-on-failure "$@" >"$build/$name.tests" 2>&1
    code=$?
    grep -vE '^ +Start |Passed +[0-9.]+ sec' "$build/$name.tests"
    log=$build/$name/Testing/Temporary/LastTest.log
    sum=$(grep -oE '[0-9]+ passed, [0-9]+ failed' "$log" | awk '{ p += $1; f += $3 } END { print p + 0, f + 0 }')
    # shellcheck disable=SC2086
    count $sum
    tests=$(grep -c '^[0-9]*/[0-9]* Testing: ' "$log")
    lines=$(grep -cE '[0-9]+ passed, [0-9]+ failed' "$log")
    if [ "$lines" -lt "$tests" ] || [ "$tests" -eq 0 ]; then
        echo "$name: $tests tests, only $lines gave a sum"
        count 0 1
    fi
    if [ "$code" -ne 0 ] && [ "${sum#* }" -eq 0 ]; then
        echo "$name: a test failed outside its checks"
        count 0 1
    fi
}

sheets() {
    for sheet in samples/*.json; do
        case $sheet in *shop*.json | *schema*.json | *'*'*) continue ;; esac
        echo "$sheet"
    done
}

plan() { # BUILD SHEET OUT
    "$build/$1/hardskin" plan "$2" --json >"$3" 2>"$build/stderr"
    code=$?
    if [ "$code" -gt 1 ]; then
        echo "$2: exit $code with $1"
        cat "$build/stderr"
        return 1
    fi
}

# The same sheet gives the same bytes: twice in a row, and from two compilers.
compare_bytes() {
    compared=0
    for sheet in $(sheets); do
        if plan gcc "$sheet" "$build/a" && plan gcc "$sheet" "$build/b" &&
            plan clang "$sheet" "$build/c" && cmp "$build/a" "$build/b" && cmp "$build/a" "$build/c"; then
            count 1 0
        else
            echo "$sheet: the bytes differ"
            count 0 1
        fi
        compared=$((compared + 1))
    done
    if [ "$compared" -eq 0 ]; then
        echo "no sample to compare"
        count 0 1
    fi
}

mkdir -p "$build"
rm -rf "$build/gcc" "$build/clang" "$build/sanitize"
install_missing || {
    echo "a tool is missing and could not be installed"
    count 0 1
}
if build gcc all -DCMAKE_C_COMPILER=gcc; then run_tests gcc; fi
if build clang hardskin_cli -DCMAKE_C_COMPILER=clang; then compare_bytes; fi
if build sanitize all -DCMAKE_C_COMPILER=gcc -DCMAKE_BUILD_TYPE=RelWithDebInfo -DHARDSKIN_SANITIZE=ON; then
    run_tests sanitize -E '^(house|install|cautions|property_quench_many)' # the last two: paths of schema and property_quench again
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
