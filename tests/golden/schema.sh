#!/bin/sh
# own: sheets and results keep to their published schemas. Needs python3-jsonschema.
# Usage: sh tests/golden/schema.sh HARDSKIN SAMPLES
if ! python3 -c 'import jsonschema' 2>/dev/null; then
    echo "schema: not run, python3-jsonschema is missing"
    echo "schema: 0 passed, 1 failed"
    exit 1
fi
exec python3 "$(dirname "$0")/schema.py" "$1" "$2"
