#!/bin/sh
# Install into an empty folder, then build and run a program against what is there: once by
# pkg-config, once by the CMake package.
# usage: install.sh BUILD_FOLDER CONSUMER_FOLDER COMPILER
build=$1
consumer=$2
compiler=$3
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
passed=0
failed=0
step() { # what, word...
    what=$1
    shift
    if "$@" >"$folder/log" 2>&1; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "install: $what failed"
        tail -15 "$folder/log"
    fi
}

by_pkg_config() {
    PKG_CONFIG_PATH=$(dirname "$(find "$folder/there" -name hardskin.pc)")
    export PKG_CONFIG_PATH
    # shellcheck disable=SC2046
    "$compiler" -std=c11 -Wall -Wextra -Wpedantic -Werror "$consumer/main.c" -o "$folder/a" \
        $(pkg-config --define-variable=prefix="$folder/there" --cflags --libs hardskin)
}

by_cmake() {
    cmake -S "$consumer" -B "$folder/b" -DCMAKE_C_COMPILER="$compiler" \
        -DCMAKE_PREFIX_PATH="$folder/there" && cmake --build "$folder/b"
}

step 'cmake --install' cmake --install "$build" --prefix "$folder/there"
step 'the installed command' "$folder/there/bin/hardskin" --version
step 'a program by pkg-config' by_pkg_config
step 'running it' "$folder/a"
step 'a program by the CMake package' by_cmake
step 'running it' "$folder/b/consumer"
echo "install: $passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -eq 6 ]
