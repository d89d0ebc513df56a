"""own contract: every caution of the table is shown by some sample or test sheet, none twice in a
report, each with a source in SOURCES.md, before its step, and only where its step is.
Usage: cautions.py HARDSKIN TOP (of the repository)"""
import csv
import json
import pathlib
import re
import subprocess
import sys

hardskin, top = sys.argv[1], pathlib.Path(sys.argv[2])
passed = failed = 0


def check(name, good):
    global passed, failed
    passed, failed = passed + bool(good), failed + (not good)
    if not good:
        print("cautions: " + name)


with (top / "tables/cautions.csv").open(encoding="utf-8", newline="") as file:
    table = list(csv.DictReader(line for line in file if not line.startswith("#")))
table = [{key.split("[")[0]: cell for key, cell in row.items()} for row in table]
sources = dict(re.findall(r"^- ([a-z0-9-]+): *(.*)$",
                          (top / "tables/SOURCES.md").read_text(encoding="utf-8"), re.M))
# Which steps (what they "do", and what they hold) a caution may stand before: written by hand.
FIRES = {"stress relieve", "carburise", "reheat"}
TANK = lambda s: s.get("by") in ("electrolysis", "anodic electrolysis")
WET = lambda s: TANK(s) or s.get("by") == "acid"
PACKED = lambda s: s["do"] == "carburise" and ("in" in s or "box" in s)
BOXED = lambda s: PACKED(s) or (s["do"] == "reheat" and s["in"] == "box")
FIRE = lambda s: s["do"] in FIRES
HOT = lambda s: s["do"] != "descale" and s["do"] != "straighten"
QUENCH = lambda *words: lambda s: s["do"] == "quench" and (not words or s["in"] in words)
DESCALE = lambda *words: lambda s: s["do"] == "descale" and s["by"] in words
SCALES = lambda s: s == {"do": "cool", "in": "air"} or (s["do"] == "reheat" and s["in"] != "box")
ANY = None
BELONGS = {
    "zinc-fume": FIRE, "hot-metal": HOT, "thread-brittle": lambda s: s["do"] == "carburise",
    "hole-scale": lambda s: SCALES(s), "thin-web": FIRE,
    "weak-section": FIRE, "thick-thin": FIRE, "thick-thin-far": FIRE,
    "rust-in-fire": lambda s: s["do"] == "carburise",
    "carburise-range": lambda s: s["do"] == "carburise",
    "pack-carbon-monoxide": BOXED, "pack-vent": BOXED, "pack-flare": BOXED, "pack-cover": PACKED,
    "barium-carbonate": lambda s: PACKED(s) and s.get("in") != "charcoal",
    "furnace-gas": lambda s: s["do"] == "carburise" and not PACKED(s),
    "wet-wood": lambda s: BOXED(s) or s == {"do": "cool", "in": "air"},
    "safe-tongs": lambda s: s["do"] == "quench" or s == {"do": "cool", "in": "air"},
    "flame-gas": lambda s: s["do"] == "reheat" and "flame" in s["in"],
    "wrap-foil": lambda s: s["do"] == "reheat" and s["in"] == "wrapped",
    "hole-closed": lambda s: SCALES(s),
    "quench-oil-fire": QUENCH("oil"), "quench-oil-water": QUENCH("oil"),
    "quench-steam": QUENCH("water", "still water", "brine", "polymer"),
    "quench-brine": QUENCH("brine"), "quench-still-water": QUENCH("still water"),
    "temper-soon": QUENCH(), "straighten-hard": lambda s: s["do"] == "straighten",
    "brush-dust": DESCALE("brush", "flap disc"), "blast-dust": DESCALE("blast"),
    "acid-burn": DESCALE("acid"), "acid-water": DESCALE("acid"), "acid-bleach": DESCALE("acid"),
    "acid-hydrogen": DESCALE("acid"), "acid-waste": DESCALE("acid"),
    "hydrogen-explosive": TANK, "no-lid": TANK, "spark-distance": TANK, "supply-isolated": TANK,
    "no-salt": TANK, "chromate": TANK, "soda-eyes": TANK, "sludge": TANK,
    "negative-lead": DESCALE("electrolysis"), "positive-lead": DESCALE("anodic electrolysis"),
    "trapped-liquid": WET, "hydrogen-embrittlement": DESCALE("acid", "electrolysis"),
    "bake-no-guarantee": WET,
    "etch-acid": ANY, "break-hard": ANY, "grinding-cracks": ANY, "grinding-wheel": ANY,
    "case-share": ANY, "local-rules": ANY, "lead-fume": ANY, "cold-drawn-stress": ANY,
    "retained-austenite": ANY, "carbide-network": ANY, "case-both-sides": ANY, "test-piece": ANY,
    "face-assumed": ANY,
}
for row in table:
    check(f"{row['code']}: nobody says where it belongs", row["code"] in BELONGS)
    for key in row["source"].split():
        check(f"{row['code']}: source {key} is not in SOURCES.md", key in sources)
    why = subprocess.run([hardskin, "why", row["code"]], capture_output=True, text=True, check=False)
    for cell in ("code", "level", "when", "hazard", "consequence", "avoidance"):
        check(f"why {row['code']} does not tell its {cell}", row[cell] in why.stdout)
    for key in row["source"].split():
        check(f"why {row['code']} does not tell {key}",
              f"{key}: {sources.get(key, 'not there')}" in why.stdout)

seen, sheets = set(), 0
for path in sorted([*(top / "samples").glob("*.json"), *(top / "tests/sheets").glob("*.json")]):
    if path.name.endswith(".schema.json") or path.name == "shop.json":
        continue
    sheets += 1
    route = [{key: value for key, value in step.items() if key != "note"}
             for step in json.loads(path.read_text(encoding="utf-8-sig"))["route"]]
    run = subprocess.run([hardskin, "plan", str(path), "--json"], capture_output=True, check=False)
    check(f"{path.name}: exit {run.returncode}", run.returncode in (0, 1))
    if run.returncode not in (0, 1):
        continue
    cautions = json.loads(run.stdout)["cautions"]
    codes = [c["code"] for c in cautions]
    seen |= set(codes)
    check(f"{path.name}: a caution twice", len(codes) == len(set(codes)))
    check(f"{path.name}: local rules do not come first", codes[:1] == ["local-rules"])
    for c in cautions:
        belongs = BELONGS.get(c["code"])
        if belongs is ANY:
            check(f"{path.name}: {c['code']} before a step", c["step"] is None)
        else:
            fitting = [i for i, step in enumerate(route) if belongs(step)]
            check(f"{path.name}: {c['code']} before step {c['step']}, not {fitting[:1]}",
                  c["step"] in fitting)
            if c["code"] not in ("hydrogen-embrittlement", "bake-no-guarantee", "straighten-hard"):
                check(f"{path.name}: {c['code']} not before its first step",
                      c["step"] == fitting[0])
    # Without such a step, none of its cautions: the same, from the route.
    for code, belongs in BELONGS.items():
        if belongs is not ANY and not any(belongs(step) for step in route):
            check(f"{path.name}: {code} without its step", code not in codes)
    text = subprocess.run([hardskin, "plan", str(path)], capture_output=True, text=True,
                          check=False).stdout
    for c in cautions:
        check(f"{path.name}: {c['code']} not once in the text",
              " ".join(text.split()).count(c["hazard"]) == 1)
    check(f"{path.name}: cautions after the work they are for",
          0 < text.find("\nCAUTIONS") < min(p for p in (text.find("\nGRIND, in"), len(text))
                                            if p > 0))
check("few sheets", sheets >= 14)
for row in table:
    check(f"{row['code']}: shown by no sheet", row["code"] in seen)
print(f"cautions: {passed} passed, {failed} failed")
sys.exit(failed > 0 or passed == 0)
