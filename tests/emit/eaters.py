"""Who eats what, read from a house's own files: shares no code with the compiler.

`compare(plan, result)` gives what differs, as texts.
"""
import collections
import datetime
import fractions
import pathlib

import yaml

DAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]


LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)  # the one in C is ten times as fast


def load(path):
    """The file's tree; every scalar is text as it is written."""
    return yaml.load(path.read_text(), LOADER) or {} if path.exists() else {}


def listed(value):
    return value if isinstance(value, list) else [] if value is None else [value]


def number(text):
    return sum((fractions.Fraction(part) for part in text.split()), fractions.Fraction(0))


def months(text):
    count, unit = (text.split() + ["years"])[:2]
    return int(count) * (1 if unit.startswith("month") else 12)


def portion_at(age):
    """A child's share of an adult's serving, as compiler/kitchen/people.hpp has it."""
    for under, share in [(1, "1/4"), (4, "1/2"), (9, "3/4"), (12, "7/8")]:
        if age < under * 12:
            return fractions.Fraction(share)
    return fractions.Fraction(1)


def portion(person):
    heads = int(person.get("count", "1"))
    if "portion" in person:
        return number(person["portion"]) * heads
    return (portion_at(months(person["age"])) if "age" in person else 1) * heads


class House:
    def __init__(self, plan):
        self.root = pathlib.Path(plan).resolve().parent.parent
        self.plan = load(pathlib.Path(plan))
        self.household = load(self.root / "plans/household.yaml")
        self.first = datetime.date.fromisoformat(self.plan["from"])
        self.last = datetime.date.fromisoformat(self.plan["until"])
        self.titles = {}
        for path in (self.root / "recipes").glob("*.yaml"):
            words = path.stem.replace("-", " ")
            self.titles[path.stem] = load(path).get("name", words[:1].upper() + words[1:])

    def days(self):
        day = self.first
        while day <= self.last:
            yield day
            day += datetime.timedelta(1)

    def meals(self):
        """By date and meal what is said of it: a date before a weekday before every day."""
        said = {}
        for key, meals in self.plan["meals"].items():
            for day in self.days():
                word = key.removeprefix("every ")
                if key == day.isoformat():
                    rank = 4
                elif key.startswith("every ") and word.lower() == DAYS[day.weekday()]:
                    rank = 3
                elif word == "weekday" and day.weekday() < 5:
                    rank = 2
                elif word == "day":
                    rank = 1
                else:
                    continue
                for meal, dishes in meals.items():
                    if rank > said.get((day, meal), (0, None))[0]:
                        said[day, meal] = rank, dishes
        return {key: listed(dishes) for key, (rank, dishes) in said.items()}

    def is_there(self, stay, day, meal):
        until = stay.get("until", stay["from"])
        return stay["from"] <= day.isoformat() <= until and meal in listed(stay.get("meals", [meal]))

    def table(self, day, meal):
        """Those who sit there, with what they usually eat."""
        away = {a["who"] for a in listed(self.plan.get("away")) if self.is_there(a, day, meal)}
        out = {}
        for person in listed(self.household.get("people")):
            if person["name"] not in away:
                out[person["name"]] = portion(person) * number(person.get("appetite", {}).get(meal, "1"))
        for guest in listed(self.plan.get("guests")):
            if self.is_there(guest, day, meal):
                out[guest["who"]] = portion(guest) * number(guest.get("appetite", {}).get(meal, "1"))
        return out

    def eaten(self):
        """By date and meal: how often somebody eats a dish so, as (name of the recipe, whether it
        is another for them, person, portion). Only recipes."""
        out = {}
        cooked = collections.defaultdict(set)  # who had another the last time
        order = {"breakfast": 0, "lunch": 1, "dinner": 2}
        for (day, meal), dishes in sorted(self.meals().items(), key=lambda one: (one[0][0], order.get(one[0][1], 1))):
            rows = collections.Counter()
            for dish in dishes:
                said = dish if isinstance(dish, dict) else {"dish": dish}
                words = said["dish"]
                leftovers = words.startswith("leftovers of ")
                slug = words.removeprefix("leftovers of ").split(" for ")[0]
                if slug not in self.titles:
                    continue
                others = set(said.get("for", {}))
                if leftovers:
                    others |= cooked[slug]
                else:
                    cooked[slug] = others
                for name, usual in self.table(day, meal).items():
                    if name in listed(said.get("eaten by", [name])):
                        eats = number(said.get("portions", {}).get(name, "0")) or usual
                        rows[self.titles[slug], name in others, name, eats] += 1
            if rows:
                out[day.isoformat(), meal] = rows
        return out


def compare(plan, result):
    house = House(plan)
    expected = house.eaten()
    titles = sorted(house.titles.values(), key=len, reverse=True)
    found = {}
    for meal in result["meals"]:
        rows = collections.Counter()
        for dish in meal["dishes"]:
            if dish["kind"] == "plain":
                continue
            name = dish["name"]
            base = next(t for t in titles if name == t or name.startswith((t + " with ", t + " without ")))
            for one in dish["eaters"]:
                rows[base, name != base, one["name"], fractions.Fraction(one["portion"]).limit_denominator(1000)] += 1
        if rows:
            found[meal["date"], meal["meal"]] = rows
    wrong = []
    for key in sorted(set(expected) | set(found)):
        for row in (expected.get(key, collections.Counter()) - found.get(key, collections.Counter())):
            wrong.append(f"{key}: the files say {row}, the result does not")
        for row in (found.get(key, collections.Counter()) - expected.get(key, collections.Counter())):
            wrong.append(f"{key}: the result says {row}, the files do not")
    return wrong


def energy_of(plan, result):
    """Kilocalories of all dishes by the uses of food, and by what people are said to eat."""
    root = pathlib.Path(__file__).resolve().parent.parent.parent
    figures, edible = {}, {}
    for row in (root / "compiler/foods/reference/nutrients.csv").read_text().splitlines():
        cells = row.rsplit(",", 23) if row[:1].isdigit() else None
        if cells:
            # The description may hold commas; the columns are counted from the end.
            figures[int(row.split(",")[0])] = float(cells[2] or 0)
    records = {}
    for path in (root / "compiler/foods/reference").glob("*.yaml"):
        records.update(load(path) or {})
    for name, record in records.items():
        usda = record.get("usda")
        share = (record.get("yields") or {}).get("edible", ["100 %"])[0]
        figure = figures.get(int(usda)) if usda else None
        # A metric house has other names for some foods.
        for known in [name, *listed(record.get("aliases"))]:
            edible.setdefault(known, (figure, float(share.split("%")[0]) / 100))
    made = result["makings"]
    eaten = [0.0] * len(made)  # the share that dishes get; what needs a making stands before it
    for i, making in enumerate(made):
        for consumer in making["for"]:
            part = consumer["times"] / making["times"]
            eaten[i] += part if "dish" in consumer else part * eaten[consumer["making"]]
    by_uses = 0.0
    for use in result["uses"]:
        figure, share = edible.get(use["food"], (None, 1))
        if figure is None or ("making" not in use and "dish" not in use):
            continue
        by_uses += use["amount"] * share * figure / 100 * (eaten[use["making"]] if "making" in use else 1)
    by_people = sum(p["heads"] * d["amounts"]["energy"] for p in result["nutrition"]["people"] for d in p["days"])
    return by_uses, by_people
