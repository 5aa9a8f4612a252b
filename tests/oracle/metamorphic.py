"""What must hold between the demo month and the demo month changed, whatever the right list is.

    python3 metamorphic.py PROGRAM [--changes 200] [--first 1]

A price up never lowers the objective, an offer more, more storage or a trip more never raises it; all money
doubled gives the same list at twice the price; recipes that nothing uses and keys in another order give
the same bytes. The same number gives the same change. Exit 1 if one does not hold.

Leftovers count for nothing in the first four: their worth hangs on the usual price, which a price up raises
and an offer more may lower. Tax is left out where money is doubled: it is rounded by line. Lists that are
not proven are counted and not compared.
"""
import argparse
import collections
import copy
import datetime
import json
import pathlib
import random
import re
import subprocess
import sys
import tempfile

import yaml

ROOT = pathlib.Path(__file__).resolve().parents[2]
PLAN = "plans/2027-03.yaml"
HAIR = 0.0005  # of the currency's unit: what rounding some hundred amounts to six places makes


def read():
    """The demo as trees; every scalar is text."""
    return {str(path.relative_to(ROOT)): yaml.load(path.read_text(), Loader=yaml.BaseLoader)
            for part in ("plans", "recipes") for path in sorted((ROOT / part).rglob("*.yaml"))}


def built(program, house):
    """(result, all files written) of a house."""
    with tempfile.TemporaryDirectory() as folder:
        for name, tree in house.items():
            path = pathlib.Path(folder) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(yaml.safe_dump(tree, sort_keys=False, allow_unicode=True))
        ran = subprocess.run([program, "build", PLAN], cwd=folder, capture_output=True, text=True, timeout=120)
        if ran.returncode:
            raise RuntimeError(ran.stdout + ran.stderr)
        out = pathlib.Path(folder) / "out" / pathlib.Path(PLAN).stem
        files = {path.name: path.read_bytes() for path in sorted(out.iterdir())}
        return json.loads(files["result.json"]), files


def total(result):
    if "account" in result:
        return result["account"]["total"]
    return (result["paid"] - result["cash_back"] + result["stop_costs"]) / 100


def list_of(result):
    return [(result["visits"][p["visit"]]["date"], result["visits"][p["visit"]]["shop"], p["food"], p["pack"], p["packs"])
            for p in result["purchases"]]


# Money in a price list


MONEY = re.compile(r"\d+\.\d\d")


def times(text, factor):
    return MONEY.sub(lambda found: f"{int(found[0].replace('.', '')) * factor // 100}"
                                   f".{int(found[0].replace('.', '')) * factor % 100:02}", text)


def multiplied(tree, factor):
    """All money in a part of a price list. In these files an amount of money has two decimals, nothing else has."""
    if isinstance(tree, dict):
        return {key: multiplied(value, factor) for key, value in tree.items()}
    if isinstance(tree, list):
        return [multiplied(value, factor) for value in tree]
    return times(tree, factor)


def shops(house):
    return [name for name in house if name.startswith("plans/stores/")]


def offers(house, shop, food):
    """The food's offers as a list that may be changed."""
    prices = house[shop]["prices"]
    if not isinstance(prices[food], list):
        prices[food] = [prices[food]]
    return prices[food]


# Changes: (dice, house) to what is said of it


def price_up(dice, house):
    shop = dice.choice(shops(house))
    food = dice.choice(list(house[shop]["prices"]))
    some = offers(house, shop, food)
    i = dice.randrange(len(some))
    some[i] = multiplied(some[i], dice.choice((2, 3, 10)))
    return f"{food} at {shop}: {some[i]}"


def offer_more(dice, house):
    """One of another shop's offers, for a fraction of the price or for more."""
    donor, shop = dice.choice(shops(house)), dice.choice(shops(house))
    food = dice.choice(list(house[donor]["prices"]))
    offer = copy.deepcopy(dice.choice(offers(house, donor, food)))
    text = offer["offer"] if isinstance(offer, dict) else offer
    cents = int(MONEY.findall(text)[-1].replace(".", "")) * dice.choice((30, 60, 90, 150)) // 100
    offer = MONEY.sub(f"{cents // 100}.{cents % 100:02}", text)
    house[shop]["prices"].setdefault(food, [])
    offers(house, shop, food).append(offer)
    return f"{food} at {shop}: {offer}"


def storage(dice, house):
    room = house["plans/household.yaml"]["storage"]
    place = dice.choice(list(room))
    room[place] = f"{int(room[place].split()[0]) + dice.choice((1, 10, 100))} l"
    return f"{place} {room[place]}"


def trip(dice, house):
    """On a day after the first trip, to any shop; a stop there costs what it costs, if it is made."""
    plan = house[PLAN]
    first, last = (datetime.date.fromisoformat(plan[key]) for key in ("from", "until"))
    day = first + datetime.timedelta(dice.randint(1, (last - first).days))
    stops = [pathlib.Path(shop).stem for shop in dice.sample(shops(house), dice.choice((1, 2)))]
    plan["trips"].append({"date": day.isoformat(), "stops": stops, "home by": dice.choice(("10:00", "12:00", "17:30"))})
    return f"{day} {stops}"


def doubled(_, house):
    for shop in shops(house):
        house[shop] = multiplied(house[shop], 2)
    for name in ("plans/household.yaml", PLAN):
        for key in ("a stop costs", "budget"):
            if key in house[name]:
                house[name][key] = times(house[name][key], 2)
    return "all money"


def unused(dice, house):
    name = dice.choice([name for name in house if name.startswith("recipes/") and name != "recipes/foods.yaml"])
    for i in range(dice.choice((1, 20))):
        house[f"recipes/unused-{i}.yaml"] = {**copy.deepcopy(house[name]), "name": f"Unused {i}"}
    return name


def shuffled(dice, tree):
    if isinstance(tree, dict):
        keys = list(tree)
        dice.shuffle(keys)
        return {key: shuffled(dice, tree[key]) for key in keys}
    return [shuffled(dice, part) for part in tree] if isinstance(tree, list) else tree


def order(dice, house):
    names = dice.sample(list(house), dice.choice((1, 5, len(house))))
    for name in names:
        house[name] = shuffled(dice, house[name])
    return f"{len(names)} files"


def no_leftovers(house):
    house["plans/household.yaml"]["leftovers are worth"] = "0 %"


def no_tax(house):
    for shop in shops(house):
        house[shop].pop("tax", None)


def no_lower(before, after):
    return None if total(after[0]) >= total(before[0]) - HAIR else f"{total(before[0])} fell to {total(after[0])}"


def no_higher(before, after):
    return None if total(after[0]) <= total(before[0]) + HAIR else f"{total(before[0])} rose to {total(after[0])}"


def the_same_list(before, after):
    if abs(total(after[0]) - 2 * total(before[0])) > HAIR:
        return f"twice {total(before[0])} is not {total(after[0])}"
    more = collections.Counter(list_of(after[0]))
    more.subtract(collections.Counter(list_of(before[0])))
    other = [line for line, count in more.items() if count]
    return f"another list: {other[:4]}" if other else None


def the_same_bytes(before, after):
    other = [name for name in before[1] if before[1][name] != after[1].get(name)]
    return f"other bytes: {other}" if other else None


# (weight, change, what is done to the demo first, what must hold, whether it must be proven)
RELATIONS = (
    (5, price_up, no_leftovers, no_lower, True),
    (5, offer_more, no_leftovers, no_higher, True),
    (2, storage, no_leftovers, no_higher, True),
    (3, trip, no_leftovers, no_higher, True),
    (1, doubled, no_tax, the_same_list, True),
    (1, unused, lambda house: None, the_same_bytes, False),
    (3, order, lambda house: None, the_same_bytes, False),
)


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--changes", type=int, default=200)
    options.add_argument("--first", type=int, default=1)
    said = options.parse_args()
    demo, bases, counts, wrong = read(), {}, collections.Counter(), 0
    if any("reduction" in demo[shop] for shop in shops(demo)):
        sys.exit("a price up may reach a reduction: these relations do not hold")
    for number in range(said.first, said.first + said.changes):
        dice = random.Random(number)
        _, change, first, holds, proven = dice.choices(RELATIONS, [relation[0] for relation in RELATIONS])[0]
        house = copy.deepcopy(demo)
        first(house)
        if first not in bases:
            bases[first] = built(said.program, house)
        text = change(dice, house)
        name = change.__name__.replace("_", " ")
        try:
            after = built(said.program, house)
        except (RuntimeError, subprocess.TimeoutExpired) as reason:
            complaint = str(reason).strip()[:300]
        else:
            if proven and not (bases[first][0]["proven"] and after[0]["proven"]):
                counts[f"{name} (not proven, not compared)"] += 1
                continue
            complaint = holds(bases[first], after)
        counts[name] += 1
        if complaint:
            wrong += 1
            print(f"change {number}, {name}, {text}: {complaint}", flush=True)
    print(", ".join(f"{count} {name}" for name, count in sorted(counts.items())) + f"; {wrong} wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
