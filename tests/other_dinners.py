"""Puts other dishes into the demo month, in place of one evening's dinner or of several, and checks each result: what no
cook would carry out (emit/practical.py), arithmetic and dates (emit/check_result.py), and the clock of every day
(emit/check_clock.py). Nothing may be wrong; but of random months it is only told what no cook would carry out: a few
freeze a slice of bread beside the four that are there.

usage: other_dinners.py [--on DATE] PROGRAM [DISH...]        one evening, each dish in turn
       other_dinners.py --random FIRST..LAST PROGRAM         two to six evenings; the same number gives the same month
"""
import argparse
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

SOURCE = pathlib.Path(__file__).resolve().parent.parent
PLAN = "plans/2027-03.yaml"
DISHES = ("beef-burgers", "carrot-cake", "chicken-pot-pie", "chicken-tacos", "fish-tacos", "meatballs", "minestrone",
          "pork-chops-with-apples", "roast-chicken", "sausage-pizza")


def plan_with(plan, date, dish):
    """The plan's text with the dish as that day's dinner."""
    changed, times = re.subn(rf"(?m)^  {date}: \{{(.*)dinner: .*\}}$", rf"  {date}: {{\1dinner: {dish}}}", plan)
    if times != 1:
        sys.exit(f"no dinner on {date} that is written on one line")
    return changed


def random_plan(plan, number):
    """Other dishes, one or two, on two to six evenings of which nothing is eaten later."""
    dice = random.Random(number)
    dishes = sorted(path.stem for path in (SOURCE / "recipes").glob("*.yaml") if path.stem != "foods")
    later = set(re.findall(r"leftovers of ([a-z-]+)", plan))
    dinners = [found for found in re.finditer(r"(?m)^(  \d{4}-\d\d-\d\d: \{(?:.*, )?dinner: )(\[?[a-z][a-z0-9, -]*\]?)(.*\})$", plan)
               if "leftovers" not in found[2] and not any(dish in found[2] for dish in later)]
    for found in dice.sample(dinners, dice.randint(2, 6)):
        plan = plan.replace(found[0], f"{found[1]}[{', '.join(dice.sample(dishes, dice.choice((1, 1, 2))))}]{found[3]}")
    return plan


def check(script, *arguments):
    """What a check says if something is wrong."""
    done = subprocess.run([sys.executable, script, *arguments], capture_output=True, text=True)
    return done.stdout + done.stderr if done.returncode else ""


def wrong_in(program, place, text):
    """Builds the plan in a house: what it says if it is refused, what is wrong, and what no cook would carry out."""
    (place / PLAN).write_text(text)
    built = subprocess.run([program, "build", PLAN, "--out", "out"], cwd=place, capture_output=True, text=True)
    if built.returncode != 0:
        said = built.stdout + built.stderr
        return said, said if built.returncode != 1 else "", ""
    out, emit = place / "out", SOURCE / "tests/emit"
    return "", (check(emit / "check_result.py", out, SOURCE / "compiler/emit/result.schema.json", place / PLAN) +
                check(emit / "check_clock.py", place, out)), check(emit / "practical.py", out)


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--on", default="2027-03-25", help="the evening")
    options.add_argument("--random", metavar="FIRST..LAST", help="numbers of random months")
    options.add_argument("dishes", nargs="*", default=DISHES)
    said = options.parse_args()
    plan = (SOURCE / PLAN).read_text()
    if said.random:
        first, last = map(int, said.random.split(".."))
        plans = {f"month {number}": random_plan(plan, number) for number in range(first, last + 1)}
    else:
        plans = {dish: plan_with(plan, said.on, dish) for dish in said.dishes}
    wrong = refused = odd = 0
    with tempfile.TemporaryDirectory() as place:
        place = pathlib.Path(place)
        for folder in ("recipes", "plans"):
            shutil.copytree(SOURCE / folder, place / folder)
        for name, text in plans.items():
            refusal, found, unlikely = wrong_in(said.program, place, text)
            # Somebody must not have a dish, say. Of those above none is refused.
            found = refusal if refusal and name in DISHES else found
            refused += bool(refusal)
            wrong += bool(found)
            odd += bool(unlikely)
            print(f"{name}{' is refused' if refusal else ''}\n{found}{unlikely}", end="", flush=True)
    print(f"{len(plans)} months, {refused} of them refused, {wrong} wrong, {odd} with something that no cook would carry out")
    return 1 if wrong or (odd and not said.random) or refused == len(plans) else 0


if __name__ == "__main__":
    sys.exit(main())
