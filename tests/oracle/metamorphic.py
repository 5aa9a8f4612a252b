"""What must hold between a house and the house changed, whatever the right list is: the demo month, and random small
houses.

    python3 metamorphic.py PROGRAM [--changes 200] [--first 1] [--of demo|small]

A price up never lowers the objective, an offer more, more storage or a trip more never raises it; all money
doubled gives the same list at twice the price; recipes that nothing uses and keys in another order give
the same bytes. The same number gives the same change. Exit 1 if one does not hold.

Leftovers count for nothing in the first four: their worth hangs on the usual price, which a price up raises
and an offer more may lower. A trip more is to shops that some trip stops at, and no offer has dates: else it may change
usual prices. No reductions where a price goes up: it may reach one. Tax, reductions and credits are left out where money is doubled: what is sure
of a receipt is rounded by line. Lists that are not proven are counted and not compared.
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
sys.path.insert(0, str(ROOT / "tests/oracle/house"))
import generate  # noqa: E402

SECONDS = 20
HAIR = 0.0005  # of the currency's unit: what rounding some hundred amounts to six places makes


class House(dict):
    """Files by name, as trees; every scalar is text. `plan` is the file that is built."""

    def __init__(self, files, plan):
        super().__init__(files)
        self.plan = plan

    def copy(self):
        return House(copy.deepcopy(dict(self)), self.plan)


def demo():
    return House({str(path.relative_to(ROOT)): yaml.load(path.read_text(), Loader=yaml.BaseLoader)
                  for part in ("plans", "recipes") for path in sorted((ROOT / part).rglob("*.yaml"))}, "plans/2027-03.yaml")


def small(number):
    """A random house with something to buy."""
    files = generate.generate(number)
    return House({name: yaml.load(generate.text_of(tree), Loader=yaml.BaseLoader) for name, tree in files.items()}, "plans/p.yaml")


def built(program, house):
    """(result, all files written) of a house."""
    with tempfile.TemporaryDirectory() as folder:
        for name, tree in house.items():
            path = pathlib.Path(folder) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(yaml.safe_dump(tree, sort_keys=False, allow_unicode=True))
        ran = subprocess.run([program, "build", house.plan], cwd=folder, capture_output=True, text=True, timeout=SECONDS)
        if ran.returncode:
            raise RuntimeError(f"exit {ran.returncode} {ran.stdout}{ran.stderr}")
        out = pathlib.Path(folder) / "out" / pathlib.Path(house.plan).stem
        files = {path.name: path.read_bytes() for path in sorted(out.iterdir())}
        return json.loads(files["result.json"]), files


def total(result):
    return result["account"]["total"]


def list_of(result):
    return [(result["visits"][p["visit"]]["date"], result["visits"][p["visit"]]["shop"], p["food"], p["pack"], p["packs"])
            for p in result["purchases"]]


# Money in a price list


MONEY = re.compile(r"\d+\.\d\d(?! (?:oz|fl oz|lb)\b)")


def times(text, factor):
    return MONEY.sub(lambda found: f"{int(found[0].replace('.', '')) * factor // 100}"
                                   f".{int(found[0].replace('.', '')) * factor % 100:02}", text)


def multiplied(tree, factor):
    """All money in a part of a price list. In these files an amount of money has two decimals, and else only what
    stands before a unit."""
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


def some_food(dice, house):
    """(shop, food) that is for sale."""
    return dice.choice([(shop, food) for shop in shops(house) for food in house[shop].get("prices", {})])


def price_up(dice, house):
    shop, food = some_food(dice, house)
    some = offers(house, shop, food)
    i = dice.randrange(len(some))
    some[i] = multiplied(some[i], dice.choice((2, 3, 10)))
    return f"{food} at {shop}: {some[i]}"


def offer_more(dice, house):
    """One of another shop's offers, for a fraction of the price or for more."""
    donor, food = some_food(dice, house)
    shop = dice.choice(shops(house))
    offer = copy.deepcopy(dice.choice(offers(house, donor, food)))
    text = offer["offer"] if isinstance(offer, dict) else offer
    cents = int(MONEY.findall(text)[-1].replace(".", "")) * dice.choice((30, 60, 90, 150)) // 100
    offer = MONEY.sub(f"{max(1, cents) // 100}.{max(1, cents) % 100:02}", text)
    house[shop]["prices"].setdefault(food, [])
    offers(house, shop, food).append(offer)
    return f"{food} at {shop}: {offer}"


def storage(dice, house):
    room = house["plans/household.yaml"]["storage"]
    place = dice.choice(list(room))
    room[place] = f"{float(room[place].split()[0]) + dice.choice((0.1, 1, 10, 100)):g} l"
    return f"{place} {room[place]}"


def name_of(stop):
    return re.sub(r"[^a-z0-9]+", "-", (stop["shop"] if isinstance(stop, dict) else stop).lower())


def trip(dice, house):
    """On any day; a stop there costs what it costs, if it is made."""
    plan = house[house.plan]
    first, last = (datetime.date.fromisoformat(plan[key]) for key in ("from", "until"))
    day = first + datetime.timedelta(dice.randint(0, (last - first).days))
    known = sorted({name_of(stop) for one in plan["trips"] for stop in one["stops"]})
    stops = dice.sample(known, min(len(known), dice.choice((1, 2))))
    plan["trips"].append({"date": day.isoformat(), "stops": stops, "home by": dice.choice(("10:00", "12:00", "17:30"))})
    return f"{day} {stops}"


def doubled(_, house):
    for shop in shops(house):
        house[shop] = multiplied(house[shop], 2)
    for name in ("plans/household.yaml", house.plan):
        for key in ("a stop costs", "an hour costs", "budget"):
            if key in house[name]:
                house[name][key] = times(house[name][key], 2)
    return "all money"


def unused(dice, house):
    names = [name for name in house if name.startswith("recipes/") and name != "recipes/foods.yaml"]
    pattern = house[dice.choice(names)] if names else {"serves": "2", "ingredients": [f"100 g {next(iter(house['recipes/foods.yaml']))}"]}
    for i in range(dice.choice((1, 20))):
        house[f"recipes/unused-{i}.yaml"] = {**copy.deepcopy(pattern), "name": f"Unused {i}"}
    return "recipes"


def shuffled(dice, tree):
    """Of foods that stand for each other the first is the one that the others are counted in; aims are told as
    written."""
    if isinstance(tree, dict):
        keys = list(tree)
        dice.shuffle(keys)
        return {key: tree[key] if key in ("any of these", "aims") else shuffled(dice, tree[key]) for key in keys}
    return [shuffled(dice, part) for part in tree] if isinstance(tree, list) else tree


def order(dice, house):
    names = dice.sample(list(house), min(len(house), dice.choice((1, 5, len(house)))))
    for name in names:
        house[name] = shuffled(dice, house[name])
    return f"{len(names)} files"


def meals(dice, house):
    """Dates, meals of a day and appliances."""
    plan = house[house.plan]
    plan["meals"] = shuffled(dice, plan["meals"])
    household = house["plans/household.yaml"]
    for key in ("meals", "appliances"):
        if key in household:
            household[key] = shuffled(dice, household[key])
    return "meals and appliances"


def no_leftovers(house):
    house["plans/household.yaml"]["leftovers are worth"] = "0 %"


def without(house, *terms):
    for shop in shops(house):
        for term in terms:
            house[shop].pop(term, None)


def for_a_price_up(house):
    no_leftovers(house)
    without(house, "reduction")


def for_a_trip_more(house):
    no_leftovers(house)
    for shop in shops(house):
        for food in house[shop].get("prices", {}):
            for offer in offers(house, shop, food):
                for key in ("from", "until") if isinstance(offer, dict) else ():
                    offer.pop(key, None)


def for_more_storage(house):
    no_leftovers(house)
    house["plans/household.yaml"].setdefault("storage", {"fridge": "1 l"})


def for_double_money(house):
    no_leftovers(house)  # what nobody sells has a price of our own, which is not doubled
    for key in ("a stop costs", "an hour costs"):  # nor is what is taken where the house says nothing
        house["plans/household.yaml"].setdefault(key, "1.00")
    without(house, "tax", "reduction", "store credit")


def as_it_is(_):
    pass


def no_lower(before, after):
    return None if total(after[0]) >= total(before[0]) - HAIR else f"{total(before[0])} fell to {total(after[0])}"


def no_higher(before, after):
    return None if total(after[0]) <= total(before[0]) + HAIR else f"{total(before[0])} rose to {total(after[0])}"


def the_same_list(before, after):
    # The price of a step of the scale, to the hundredth of a cent.
    rounded = 1e-4 * sum(purchase["packs"] for purchase in before[0]["purchases"] if purchase["by_weight"])
    if abs(total(after[0]) - 2 * total(before[0])) > HAIR + rounded:
        return f"twice {total(before[0])} is not {total(after[0])}"
    more = collections.Counter(list_of(after[0]))
    more.subtract(collections.Counter(list_of(before[0])))
    other = [line for line, count in more.items() if count]
    # Lists that cost the same may be told apart by the rounding of prices to the hundredth of a cent, and then by twice
    # that: but not where both totals are the same to the last digit.
    the_same = abs(total(after[0]) - 2 * total(before[0])) < 2e-6
    return f"another list: {other[:4]}" if other and the_same else None


def the_same_bytes(before, after):
    other = [name for name in before[1] if before[1][name] != after[1].get(name)]
    return f"other bytes: {other}" if other else None


# (weight, change, what is done to the demo first, what must hold, whether it must be proven)
RELATIONS = (
    (5, price_up, for_a_price_up, no_lower, True),
    (5, offer_more, no_leftovers, no_higher, True),
    (2, storage, for_more_storage, no_higher, True),
    (3, trip, for_a_trip_more, no_higher, True),
    (1, doubled, for_double_money, the_same_list, True),
    (1, unused, as_it_is, the_same_bytes, False),
    (2, order, as_it_is, the_same_bytes, False),
    (1, meals, as_it_is, the_same_bytes, False),
)


class Runner:
    def __init__(self, program, of):
        self.program, self.of = program, of
        self.demo = demo() if of == "demo" else None
        self.bases = {}  # of the demo, by what is done to it first
        self.counts, self.wrong = collections.Counter(), 0

    def base(self, first, number):
        """(house, what is built of it)."""
        if self.of == "demo":
            if first not in self.bases:
                house = self.demo.copy()
                first(house)
                self.bases[first] = house, built(self.program, house)
            return self.bases[first]
        house = small(number)
        if not any(house[shop].get("prices") for shop in shops(house)):
            return None, None
        first(house)
        return house, built(self.program, house)

    def try_one(self, number):
        """What is wrong, or None."""
        dice = random.Random(number)
        _, change, first, holds, proven = dice.choices(RELATIONS, [relation[0] for relation in RELATIONS])[0]
        name = change.__name__.replace("_", " ")
        try:
            house, before = self.base(first, number)
            if house is None:
                return None
            house = house.copy()
            text = change(dice, house)
            after = built(self.program, house)
        except subprocess.TimeoutExpired:
            self.counts["no end"] += 1
            return f"{name}: no end in {SECONDS} s"
        except RuntimeError as reason:
            return f"{name}: {str(reason).strip()[:300]}"
        if proven and not (before[0]["proven"] and after[0]["proven"]):
            self.counts[f"{name} (not proven, not compared)"] += 1
            return None
        self.counts[name] += 1
        complaint = holds(before, after)
        return f"{name}, {text}: {complaint}" if complaint else None

    def run(self, numbers):
        for number in numbers:
            complaint = self.try_one(number)
            if complaint:
                self.wrong += 1
                print(f"change {number}, {complaint}", flush=True)
        print(f"{len(numbers)} changes of {self.of}: " + ", ".join(f"{count} {name}" for name, count in sorted(self.counts.items()))
              + f"; {self.wrong} wrong")
        return 1 if self.wrong else 0


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    options.add_argument("--changes", type=int, default=200)
    options.add_argument("--first", type=int, default=1)
    options.add_argument("--of", choices=("demo", "small"), default="demo")
    said = options.parse_args()
    return Runner(said.program, said.of).run(range(said.first, said.first + said.changes))


if __name__ == "__main__":
    sys.exit(main())
