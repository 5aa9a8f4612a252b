#!/usr/bin/env python3
"""What the food reference knows, as the table of DEVELOPERS.md; fails where that is out of date.

`tests/foods/coverage.py` compares, `tests/foods/coverage.py --print` prints the table.
"""
import collections
import pathlib
import sys

import yaml

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # the one in C is ten times as fast
FIELDS = ["usda", "volume", "pieces", "yields", "keeps", "freezes", "safe at", "allergens", "classes", "safety", "nutrients"]
SOURCED = ["volume", "pieces", "yields", "keeps", "safe at", "ripens", "soak", "roasts"]


def sources(value):
    """The source of every figure: a figure is [value, source]."""
    if isinstance(value, list) and len(value) == 2 and isinstance(value[1], str):
        yield value[1]
    elif isinstance(value, dict):
        for one in value.values():
            yield from sources(one)


def kind(source):
    for word, name in [("SR2", "SR28/SR26"), ("FSIS", "FSIS"), ("common practice", "common practice")]:
        if word in source:
            return name
    return "other"


def measured():
    """The SR28 numbers whose nutrients the reference carries."""
    table = (ROOT / "compiler/foods/reference/nutrients.csv").read_text()
    return {int(row.split(",")[0]) for row in table.splitlines() if row[:1].isdigit()}


def table():
    lines = []
    numbers = measured()
    everything = collections.Counter()
    kinds = collections.Counter()
    for path in sorted((ROOT / "compiler/foods/reference").glob("*.yaml")):
        foods = yaml.load(path.read_text(), LOADER)
        known = collections.Counter(foods=len(foods))
        for record in foods.values():
            if record.get("usda") in numbers:
                record["nutrients"] = True
            known.update(field for field in FIELDS if field in record)
            kinds.update(kind(s) for field in SOURCED for s in sources(record.get(field)))
        lines.append(row(path.stem, known))
        everything.update(known)
    lines.append(row("all", everything))
    counts = ", ".join(f"{kinds[k]} {k}" for k in ["SR28/SR26", "FSIS", "common practice", "other"])
    return lines, counts


def row(name, known):
    return f"| {name} | " + " | ".join(str(known[f]) for f in ["foods", *FIELDS]) + " |"


def main():
    lines, counts = table()
    if "--print" in sys.argv:
        print("\n".join([*lines, counts]))
        return 0
    said = (ROOT / "DEVELOPERS.md").read_text()
    missing = [line for line in [*lines, counts] if line not in said.replace("\n", " ") and line not in said]
    for line in missing:
        print(f"DEVELOPERS.md does not say: {line}")
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main())
