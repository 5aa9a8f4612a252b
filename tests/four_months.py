"""The demo month four times over, in a freezer of 220 l and in one of 200 l: there is a list for both, soon.

    python3 four_months.py PROGRAM

The list for 220 l was found to take 193.8 l at most, so it fits into 200 l, too: the smaller freezer has a list
that costs no less, and where that one takes no more than 200 l and both are proven, the same.
"""
import copy
import datetime
import pathlib
import re
import subprocess
import sys
import tempfile

import yaml

TESTS = pathlib.Path(__file__).resolve().parent
sys.path[:0] = [str(TESTS / "oracle"), str(TESTS / "oracle/house")]
import metamorphic  # noqa: E402
import month  # noqa: E402
from result import Result  # noqa: E402

FIRST, LAST = datetime.date(2027, 3, 4), datetime.date(2027, 6, 28)
SECONDS = 60
AGAIN = (4, 8, 12)  # weeks
# What the shops of one month do not sell and four months use up.
SOLD = ("cinnamon", "dill pickle", "dried basil", "dried thyme", "paprika", "yellow mustard")
HAIR = 0.001


def day_after(date, weeks):
    return (datetime.date.fromisoformat(date) + datetime.timedelta(weeks=weeks)).isoformat()


def moved(entry, weeks):
    return {key: day_after(value, weeks) if key in ("from", "until") else copy.deepcopy(value) for key, value in entry.items()}


def house(litres):
    tree = metamorphic.demo()
    plan = tree[tree.plan]
    plan["until"] = LAST.isoformat()
    plan["prep"] = [{"every": "Sunday", "from": "13:30", "until": "18:00", "cooks": "2"}]
    for key in ("guests", "away"):  # they come and go again, as the meals that name them
        plan[key] += [moved(entry, weeks) for entry in list(plan[key]) for weeks in AGAIN]
    month_end = max(key for key in plan["meals"] if not key.startswith("every"))
    for date, meals in list(plan["meals"].items()):
        if not date.startswith("every") and datetime.date.fromisoformat(date) >= FIRST:
            for weeks in AGAIN:
                later = day_after(date, weeks)
                if month_end < later <= LAST.isoformat():
                    plan["meals"][later] = copy.deepcopy(meals)
    tree["plans/household.yaml"]["storage"]["freezer"] = f"{litres} l"
    tree["plans/household.yaml"]["storage"]["fridge"] = "260 l"
    tree["plans/stores/fairfield-market.yaml"]["prices"].update({food: "1 lb box 3.99" for food in SOLD})
    return tree


def built(program, folder, litres):
    made = house(litres)
    for name, tree in made.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(yaml.safe_dump(tree, sort_keys=False, allow_unicode=True))
    ran = subprocess.run([program, "build", made.plan], cwd=folder, capture_output=True, text=True, timeout=SECONDS)
    if ran.returncode:
        errors = re.findall(r".*error.*", ran.stdout + ran.stderr)
        sys.exit(f"{litres} l: exit {ran.returncode}: {'; '.join(errors[:3])}")
    out = folder / "out" / pathlib.Path(made.plan).stem
    wrong, terms = month.complaints(folder, out, made.plan, month.check.HAIR)
    if wrong:
        sys.exit(f"{litres} l: " + "\n".join(wrong[:10]))
    return float(terms["total"]) / 100, Result.load(out)["proven"]


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    found = {}
    for litres in (220, 200):
        with tempfile.TemporaryDirectory() as folder:
            found[litres] = built(program, pathlib.Path(folder), litres)
            print(f"{litres} l: {found[litres][0]:.2f}, {'' if found[litres][1] else 'not '}proven")
    if all(proven for _, proven in found.values()) and found[200][0] < found[220][0] - HAIR:
        sys.exit("less room costs less")


if __name__ == "__main__":
    main()
