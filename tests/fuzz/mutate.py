"""Spoils whole houses (the demo, the examples, the small cases, random small houses) and runs the
program on each.

    python3 mutate.py PROGRAM [--mutants 500] [--first 1] [--seconds 10] [--megabytes 1000] [--keep FOLDER]

Checked on every mutant: it ends in time and within memory, by itself, with exit 0, 1 or 2; the places of
its errors exist; on an error nothing is written; nothing but the result is written otherwise, and that
passes tests/emit/check_result.py; what it prints is UTF-8 without control characters. What fails is kept in
FOLDER, made small. The same number gives the same mutant. Exit 1 if one failed.
"""
import argparse
import collections
import pathlib
import random
import shutil
import sys
import tempfile

import changes
from checked import TESTS, Limits, faults

sys.path.insert(0, str(TESTS / "oracle/house"))
import generate  # noqa: E402

ROOT = TESTS.parent


def read(root, parts=("plans", "recipes")):
    """A house: its files by name."""
    return {str(path.relative_to(root)): path.read_bytes()
            for part in parts for path in sorted((root / part).rglob("*.yaml"))}


def small_house(dice):
    with tempfile.TemporaryDirectory() as folder:
        generate.write(generate.generate(dice.randrange(10**6)), folder)
        return read(pathlib.Path(folder))


def house(dice):
    """(files, plan)."""
    kind = dice.random()
    if kind < 0.45:
        return read(ROOT), "plans/2027-03.yaml"
    if kind < 0.6:
        root = dice.choice([path.parent for path in sorted((ROOT / "examples").glob("*/plan")) if (path.parent / "plans").exists()])
        return read(root), (root / "plan").read_text().strip()
    if kind < 0.75:
        return read(dice.choice([path for path in sorted((TESTS / "cases").iterdir()) if path.is_dir()])), "plans/p.yaml"
    return small_house(dice), "plans/p.yaml"


def mutant(number):
    """(files as they were, spoilt files, plan)."""
    dice = random.Random(number)
    files, plan = house(dice)
    spoilt = dict(files)
    often = [name for name in files if name.startswith("plans/")] * 4 + list(files)
    for _ in range(dice.choice((1, 1, 1, 2, 3, 6))):
        name = dice.choice(often)
        spoilt[name] = changes.changed(dice, spoilt[name], list(files.values()))
    if dice.random() < 0.03:
        del spoilt[dice.choice(often)]
    return files, spoilt, plan


def write(files, folder):
    for name, text in files.items():
        path = pathlib.Path(folder) / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text)


def tried(program, plan, files, limits):
    with tempfile.TemporaryDirectory() as folder:
        write(files, folder)
        return faults(program, plan, folder, limits)


def shrink(program, plan, files, base, kind, limits, tries=150):
    """Fewer and shorter files with a fault of the same kind: back to what they were, away, line by line."""
    def still(some):
        nonlocal tries
        tries -= 1
        return tries >= 0 and kind in [fault[0] for fault in tried(program, plan, some, limits)[0]]

    for name in list(files):
        if files[name] != base.get(name) and name in base and still({**files, name: base[name]}):
            files = {**files, name: base[name]}
    for name in list(files):
        fewer = {other: text for other, text in files.items() if other != name}
        if still(fewer):
            files = fewer
    for name in list(files):
        size = max(1, files[name].count(b"\n") // 2)
        while size >= 1 and tries > 0:
            rows, i = files[name].split(b"\n"), 0
            while i < len(rows) and tries > 0:
                shorter = {**files, name: b"\n".join(rows[:i] + rows[i + size:])}
                if still(shorter):
                    files, rows = shorter, rows[:i] + rows[i + size:]
                else:
                    i += size
            size //= 2
    return files


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--mutants", type=int, default=500)
    options.add_argument("--first", type=int, default=1)
    options.add_argument("--seconds", type=float, default=10)
    options.add_argument("--megabytes", type=int, default=1000)
    options.add_argument("--keep", default="mutants")
    said = options.parse_args()
    limits = Limits(said.seconds, said.megabytes)
    ends, kinds = collections.Counter(), collections.Counter()
    for number in range(said.first, said.first + said.mutants):
        base, files, plan = mutant(number)
        found, end = tried(said.program, plan, files, limits)
        ends[end] += 1
        for kind, detail in found:
            kinds[kind] += 1
            print(f"mutant {number}: {kind}: {detail.strip()}", flush=True)
            if kinds[kind] <= 5:  # more of a kind are counted
                place = pathlib.Path(said.keep) / f"{number} {kind}"
                shutil.rmtree(place, ignore_errors=True)
                small = shrink(said.program, plan, files, base, kind, limits,
                               30 if kind == "no end" else 150)
                place.mkdir(parents=True)
                write(small, place)
                (place / "plan").write_text(plan + "\n")
    print(f"{said.mutants} mutants:", ", ".join(f"{count} {end}" for end, count in ends.most_common()))
    print("wrong:", ", ".join(f"{count} {kind}" for kind, count in kinds.most_common()) or "nothing")
    return 1 if kinds else 0


if __name__ == "__main__":
    sys.exit(main())
