"""Sheets and results against their published schemas (python3-jsonschema, draft 2020-12)."""
import copy
import json
import pathlib
import subprocess
import sys

import jsonschema

hardskin, samples = sys.argv[1], pathlib.Path(sys.argv[2])
passed = failed = 0


def check(name, good):
    global passed, failed
    passed, failed = passed + bool(good), failed + (not good)
    if not good:
        print("schema: " + name)


def faults(validator, document):
    return ["/".join(map(str, e.absolute_path)) + ": " + e.message for e in
            validator.iter_errors(document)]


def validator(name):
    schema = json.loads((samples / name).read_text(encoding="utf-8"))
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    return kind(schema)


sheet_schema, result_schema = validator("sheet.schema.json"), validator("result.schema.json")
for path in sorted([*samples.glob("*.json"), *(samples.parent / "tests/sheets").glob("*.json")]):
    if path.name.endswith(".schema.json") or path.name == "shop.json":
        continue
    sheet = json.loads(path.read_text(encoding="utf-8-sig"))
    wrong = faults(sheet_schema, sheet)
    check(f"{path.name}: {wrong[:3]}", not wrong)
    # A sheet the program refuses, the schema refuses as well.
    for spoil in ({"hardskin": 2}, {"job": 7}, {"wheel": "60 grit"}, {"route": []}):
        check(f"{path.name} with {spoil} is let pass", faults(sheet_schema, {**sheet, **spoil}))
    run = subprocess.run([hardskin, "plan", str(path), "--json"], capture_output=True, check=False)
    check(f"{path.name}: exit {run.returncode}", run.returncode in (0, 1))
    result = json.loads(run.stdout)
    wrong = faults(result_schema, result)
    check(f"result of {path.name}: {wrong[:3]}", not wrong)
    for key in result:
        short = copy.deepcopy(result)
        del short[key]
        check(f"result of {path.name} without {key} is let pass", faults(result_schema, short))
print(f"schema: {passed} passed, {failed} failed")
sys.exit(failed > 0 or passed == 0)
