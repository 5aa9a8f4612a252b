"""Checks what the program wrote for a large house, such as the demo month: each term of the account from its
lines and supplies, and lives, limits and room.

    python3 month.py HOUSE RESULT-FOLDER PLAN

The uses are taken from the result (resolving recipes is not repeated here), prices and terms from the files,
weights and lives of foods from their records: the reference's are data (compiler/foods/reference), read here by
themselves. How packs were opened is left to tests/emit/check_result.py.
"""
import copy
import datetime
import functools
import pathlib
import sys
from fractions import Fraction

import account
import check
import measures
import read
from read import as_list, day, load
from result import Result
from things import Unreadable, Use

REFERENCE = pathlib.Path(__file__).resolve().parents[3] / "compiler/foods/reference"
WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
ENDINGS = (("", ""), ("s", ""), ("es", ""), ("ies", "y"), ("ves", "f"))


@functools.lru_cache(maxsize=None)
def reference():
    return [entry for path in sorted(REFERENCE.glob("*.yaml")) for entry in load(path).items()]


def normal(name):
    return " ".join(name.lower().split())


class Foods(dict):
    """Records by their own names; any name finds one. Weights are made when they are asked for."""

    def __init__(self, own):
        super().__init__()
        self.names = {}
        for name, record in reference():
            self.add(name, record)
        for name, record in own.items():
            known = self.find(name)
            merged = copy.deepcopy(self[known]) if known else {}
            for key, value in record.items():
                old = merged.get(key)
                merged[key] = {**old, **value} if isinstance(old, dict) and isinstance(value, dict) else value
            for other in [other for other, meant in self.names.items() if meant == known]:
                self.names[other] = name  # it answers to the household's name for it
            self.add(name, merged)

    def add(self, name, record):
        self[name] = record
        for one in [name] + as_list(record.get("aliases")):
            self.names[normal(one)] = name

    def find(self, said):
        said = normal(said)
        for many, one in ENDINGS:
            if said.endswith(many):
                name = self.names.get(said[:len(said) - len(many)] + one)
                if name:
                    return name
        return None


class MonthReader(read.Reader):
    """Reads prices and terms of any house; uses and lots come from a result."""

    def __init__(self, root, result):
        super().__init__(root)
        self.said = result
        own = self.root / "recipes/foods.yaml"
        self.records = Foods(load(own) if own.exists() else {})
        self.foods = {}

    def read_foods(self, days):
        """Filled as foods are named."""
        self.days = days
        self.household["buying"] = {self.food(name): rule for name, rule in self.household.get("buying", {}).items()}
        self.household["any of these"] = [{self.food(name): amount for name, amount in group.items()}
                                          for group in as_list(self.household.get("any of these"))]
        return self.foods

    def food(self, said):
        """Its own name; the record is read."""
        name = self.records.find(said)
        if name is None:
            raise Unreadable(f"a food: {said}")
        if name not in self.foods:
            self.weights[name], self.foods[name] = read.read_food(name, self.records[name], self.days)
        return name

    def slivers(self):
        """A fifth of the largest piece of what is sold as produce: pieces differ by so much, and nobody cuts another one for it."""
        return {name: max((weights.of_pieces(1, piece) for piece in weights.pieces), default=0) / 5
                for name, weights in self.weights.items() if self.foods[name].department == "produce"}

    def shop(self, path):
        tree = load(path)
        prices = {}
        for said, offers in tree["prices"].items():
            prices.setdefault(self.food(said), []).extend(as_list(offers))
        return self.shop_of(path.stem, {**tree, "prices": prices})

    def stops(self, plan, shops, stop_cost):
        trips = []
        for trip in as_list(plan.get("trips")):
            dates = [trip["date"]] if "date" in trip else [
                datetime.date.fromordinal(date).isoformat() for date in range(day(plan["from"]), day(plan["until"]) + 1)
                if WEEKDAYS[(date - 1) % 7].startswith(trip["every"].lower()[:3])]
            trips += [{**trip, "date": date} for date in dates]
        return super().stops({"trips": trips}, shops, stop_cost)

    def uses(self, plan, first, last):
        return [Use(self.food(use["food"]), day(use["date"]), use["clock"], Fraction(use["amount"]), use["fresh"], Fraction(use["give"]),
                    use["slack"], None if use["containers"] is None else Fraction(use["containers"]))
                for use in self.said["uses"]]

    def lots(self, foods):
        return [read.Lot(self.food(lot["food"]), Fraction(lot["amount"]), lot["place"],
                         day(lot["use_by"]) if lot["use_by"] else read.FOREVER) for lot in self.said["on_hand"]]


def complaints(root, folder, plan, hair=Fraction(1, 100)):
    """(what is wrong, the account in cents). `hair`: grams by which amounts may be out, a milligram for each use."""
    said = Result.load(folder)
    reader = MonthReader(root, said)
    house = reader.house(plan)
    result = Result(house, folder, reader.slivers())
    plans = result.plans(result.stop_choices()[0])
    wrong = account.broken(house, result.items, plans, hair)
    terms = account.account(house, result.items, plans)
    return wrong + check.differences(house, result, plans, terms), terms


def main():
    wrong, terms = complaints(*sys.argv[1:4])
    for line in wrong:
        print(line)
    for name, cents in terms.items():
        print(f"{name:12} {float(cents) / 100:12.4f}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
