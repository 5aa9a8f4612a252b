"""Compares the program with the oracle on random small houses.

    python3 compare.py PROGRAM --seeds A..B [--search X] [--jobs 1] [--keep FOLDER] [--no-shrink]

For each house: the program's account must be what its own lines say (check.py); if it says that its list is proven, its
total is the oracle's, else no less. Where goods are sold by weight, or a use may lack something, the oracle is a bound, and
brute.py decides if it can. Of cans without a size, of weeks of what comes in packs, and of what is priced nowhere there is
no oracle.
Totals are the same when they differ by no more than check.py's tolerance. What differs is kept in FOLDER, made small, and
printed with both solutions. The program's search is limited by its work (--search), so that a busy machine changes
nothing; what takes longer than two minutes all the same has "no end".
Exit 1 if something differs.
"""
import argparse
import concurrent.futures
import json
import math
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import brute
import oracle
from check import complaints, tolerance
from generate import generate, weighs, write
from lp import NotSolved
from money import counted_offers, price_of
from read import read_house
from result import Result
from rules import Unsaid
from shrink import shrink

SECONDS = 120  # for a house, on however busy a machine
WAYS = 20000
# "dearer, ...": than if any amount could be weighed out, or if a use could lack what it can do without for another's sake;
# what the rules leave of that is not known.
RIGHT = ("same", "not proven", "not proven, but the best", "dearer, by weight", "dearer, with give")


class Outcome:
    """`kind` is one of RIGHT, 'no oracle', or says what is wrong."""

    def __init__(self, kind, text=""):
        self.kind, self.text = kind, text

    @property
    def about(self):
        """The kind, and of a wrong result what is wrong with it but for names and figures."""
        wrong = self.kind == "the result is wrong by itself"
        return self.kind, " ".join(re.findall(r"[a-z]{4,}", self.text.split("\n")[0].split("{")[0])) if wrong else ""


def build(program, search="1"):
    """The command that builds a house's plan."""
    return [program, "build", "plans/p.yaml", "--search", search]


def run(command, folder):
    try:
        return subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=SECONDS)
    except subprocess.TimeoutExpired:
        return None


def outcome(command, folder):
    """Of the house in the folder."""
    house = read_house(folder)
    ran = run(command, folder)
    if ran is None:
        return Outcome("no end")
    if ran.returncode != 0:
        said = ran.stdout + ran.stderr
        code = re.search(r"\[[A-Z]\d+\]", said)
        return Outcome(f"exit {ran.returncode} {code[0] if code else ''}".strip(), said)
    result = Result(house, pathlib.Path(folder) / "out/p")
    try:
        wrong, terms = complaints(house, result)
    except Unsaid as reason:
        return Outcome("no oracle", str(reason))
    if wrong:
        return Outcome("the result is wrong by itself", "\n".join(wrong) + "\n" + ran.stdout + lines_of(result))
    unpriced = [item.name for item in result.items if not counted_offers(house, item.name)]
    if unpriced:
        return Outcome("no oracle", f"what is priced nowhere counts by a guess: {', '.join(unpriced)}")
    try:
        best = oracle.best(house)
    except NotSolved as reason:
        return Outcome("no oracle", str(reason))
    allowed = 2 * tolerance(house, best.items, best.plans, best.terms)
    said = ran.stdout + f"total by its lines {float(terms['total']) / 100:.5f}, proven {result.proven}\n" + lines_of(result)
    both = f"program:\n{said}\noracle:\n{oracle.printed(house, best)}"
    if terms["total"] < best.total - allowed:
        return Outcome("the oracle is beaten", both)
    if terms["total"] > best.total + allowed and result.proven:
        if any(source.by_weight for item in best.items for source in item.sources):
            return tried(house, best, terms, allowed, both, "dearer, by weight")
        if any(need.give for item in best.items for need in item.needs):
            return tried(house, best, terms, allowed, both, "dearer, with give")
        return Outcome("proven, and dearer than the oracle", both)
    if terms["total"] > best.total + allowed:
        return Outcome("not proven")
    return Outcome("same" if result.proven else "not proven, but the best")


def most_packs(house, items):
    """How many packs of a source can be of use: for needs and to keep, for a deal, for a reduction."""
    def most(source):
        item = next(item for item in items if source in item.sources)
        shop = house.shops[source.offer.shop]
        price = price_of(house, source.offer, source.day, 1)
        reaches = math.ceil(shop.over / price) if shop.over is not None and price > 0 else 0
        return max(math.ceil((item.need + item.cap) / source.size), reaches) + (source.offer.deal[0] if source.offer.deal else 0)

    return most


def tried(house, best, terms, allowed, both, unknown):
    """What is weighed or lent follows from what is held, which rows cannot say: everything is tried, if that is not too much."""
    try:
        if any(source.by_weight and any(need.give for need in item.needs) for item in best.items for source in item.sources):
            raise brute.TooMany  # not said: what is weighed out for what a use can do without
        total = brute.best(house, most_packs(house, best.items), WAYS)
    except brute.TooMany:
        return Outcome(unknown, both)
    both += f"\neverything tried: {float(total) / 100:.5f}"
    if terms["total"] < total - allowed:
        return Outcome("what tried everything is beaten", both)
    return Outcome("same") if terms["total"] <= total + allowed else Outcome("proven, and dearer than the oracle", both)


def lines_of(result):
    said = result.said
    out = []
    for p in said["purchases"]:
        visit = said["visits"][p["visit"]]
        out.append(f"  {visit['date']} {visit['shop']}: {p['packs']} x {p['food']} {p['pack']}, frozen {float(p['freeze']):g}, "
                   f"kept {float(p['kept']):g}, wasted {float(p['wasted']):g}")
    for s in said["supplies"]:
        use = said["uses"][s["use"]]
        out.append(f"  {use['date']} {use['food']}: {float(s['covers']):g} of line {s['purchase']}{' frozen' if s['frozen'] else ''}")
    out += [f"  {said['uses'][s['use']]['date']}: {float(s['amount']):g} of lot {s['lot']}" for s in said["from_stock"]]
    return "\n".join(out)


def try_house(command, house):
    with tempfile.TemporaryDirectory() as folder:
        write(house, folder)
        try:
            return outcome(command, folder)
        except Exception as reason:  # a house with a part left out may be none any more
            return Outcome(f"unreadable ({type(reason).__name__})", str(reason))


def one(command, number, keep, small):
    house = generate(number)
    found = try_house(command, house)
    if found.kind in RIGHT:
        return number, found, None
    if small and found.kind not in ("no oracle", "no end"):
        house = shrink(house, lambda smaller: try_house(command, smaller).about == found.about)
        found = try_house(command, house)
    place = pathlib.Path(keep) / str(number)
    shutil.rmtree(place, ignore_errors=True)
    write(house, place)
    return number, found, place


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--seeds", default="1..150", help="first and last, as A..B")
    options.add_argument("--search", default="1", help="how hard the program searches, times the usual")
    options.add_argument("--jobs", type=int, default=1)
    options.add_argument("--keep", default="differences", help="the folder for houses that differ")
    options.add_argument("--no-shrink", action="store_true")
    options.add_argument("--unweighed", action="store_true", help="leave out houses with goods by weight")
    said = options.parse_args()
    first, last = map(int, said.seeds.split(".."))
    counts = {}
    with concurrent.futures.ProcessPoolExecutor(said.jobs) as pool:
        runs = [pool.submit(one, build(said.program, said.search), n, said.keep, not said.no_shrink) for n in range(first, last + 1)
                if not (said.unweighed and weighs(n))]
        for done in runs:
            number, found, place = done.result()
            counts[found.kind] = counts.get(found.kind, 0) + 1
            if place:
                print(f"== house {number}: {found.kind} ({place})\n{found.text}")
                for path in sorted(p for p in place.rglob("*.yaml")):
                    print(f"-- {path.relative_to(place)}\n{path.read_text()}", end="")
                sys.stdout.flush()
    print(json.dumps(counts, indent=1))
    return 0 if set(counts) <= {*RIGHT, "no oracle"} else 1


if __name__ == "__main__":
    sys.exit(main())
