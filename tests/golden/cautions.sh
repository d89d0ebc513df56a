#!/bin/sh
# own: cautions over all samples and the sheets in tests/sheets. Needs python3.
# Usage: sh tests/golden/cautions.sh HARDSKIN TOP
if ! command -v python3 >/dev/null; then
    echo "cautions: not run, python3 is missing"
    echo "cautions: 0 passed, 1 failed"
    exit 1
fi
exec python3 "$(dirname "$0")/cautions.py" "$1" "$2"
