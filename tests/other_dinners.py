"""Puts other dishes into the demo month, one at a time in place of one evening's dinner, and checks each result: what no
cook would carry out (emit/practical.py), arithmetic and dates (emit/check_result.py), and the clock of every day
(emit/check_clock.py). Nothing may be wrong.

usage: other_dinners.py PROGRAM [--on DATE] [DISH...]
"""
import argparse
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

SOURCE = pathlib.Path(__file__).resolve().parent.parent
DISHES = ("beef-burgers", "carrot-cake", "chicken-pot-pie", "chicken-tacos", "fish-tacos", "meatballs", "minestrone",
          "pork-chops-with-apples", "roast-chicken", "sausage-pizza")


def plan_with(plan, date, dish):
    """The plan's text with the dish as that day's dinner."""
    changed, times = re.subn(rf"(?m)^  {date}: \{{(.*)dinner: .*\}}$", rf"  {date}: {{\1dinner: {dish}}}", plan)
    if times != 1:
        sys.exit(f"no dinner on {date} that is written on one line")
    return changed


def check(script, *arguments):
    """What a check says if something is wrong."""
    done = subprocess.run([sys.executable, script, *arguments], capture_output=True, text=True)
    return done.stdout + done.stderr if done.returncode else ""


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--on", default="2027-03-25", help="the evening")
    options.add_argument("dishes", nargs="*", default=DISHES)
    said = options.parse_args()
    wrong = 0
    with tempfile.TemporaryDirectory() as place:
        place = pathlib.Path(place)
        for folder in ("recipes", "plans"):
            shutil.copytree(SOURCE / folder, place / folder)
        plan = place / "plans/2027-03.yaml"
        text = plan.read_text()
        for dish in said.dishes:
            plan.write_text(plan_with(text, said.on, dish))
            built = subprocess.run([said.program, "build", plan, "--out", place / "out"], cwd=place, capture_output=True, text=True)
            if built.returncode != 0:
                # Somebody must not have it, say; of the dishes above none is refused.
                print(f"{dish}: exit {built.returncode}\n{built.stdout}{built.stderr}", end="", flush=True)
                wrong += dish in DISHES or built.returncode != 1
                continue
            out, emit = place / "out", SOURCE / "tests/emit"
            found = [checked for checked in (check(emit / "practical.py", out),
                                             check(emit / "check_result.py", out, SOURCE / "compiler/emit/result.schema.json", plan),
                                             check(emit / "check_clock.py", place, out)) if checked]
            proven = "" if '"proven": true' in (out / "result.json").read_text() else " (not proven)"
            print(f"{dish}{proven}\n{''.join(found)}", end="", flush=True)
            wrong += bool(found)
    print(f"{len(said.dishes)} dinners, {wrong} of them with something wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
