"""Random small houses: the same number gives the same house.

    python3 generate.py NUMBER FOLDER      writes one

A house is a tree: file names to what the files say, in the shapes that YAML has.
"""
import datetime
import pathlib
import random
import sys

import yaml

FIRST = datetime.date(2027, 3, 1)
FOODS = ("dorb", "eskel", "fump", "glim")
SHOPS = ("alder", "birch", "cedar")
SLOTS = {"breakfast": "07:00", "lunch": "12:15", "dinner": "18:00"}
FIGURE = "own figure"
DEPARTMENTS = ("produce", "produce", "meat", "fish", "dairy", "dairy", "bakery", "canned", "condiments", "frozen",
               "household")


def weighs(number):
    """Whether the house may have goods by weight."""
    return number % 4 == 0


def text(day):
    return (FIRST + datetime.timedelta(days=day)).isoformat()


class Dice:
    """Draws the parts of one house."""

    def __init__(self, number):
        self.r = random.Random(number)
        self.days = self.r.choice((3, 5, 7, 7, 9, 12, 14))
        self.scale = self.r.choice((1, 1, 1, 100, 10000))  # of money
        self.foods, self.sizes = {}, {}
        self.weighs = weighs(number)
        self.later = random.Random(f"still more of {number}")
        self.more = random.Random(f"more of {number}")  # for what houses did not always have, so that the rest of each stays

    def often(self, share):
        return self.r.random() < share

    def money(self, cents):
        """About so many cents at the usual order of magnitude; now and then a round figure."""
        cents = max(0, int(cents * self.scale))
        if self.scale > 1 and self.often(0.7):
            cents = max(100, cents // 100 * 100)
        elif self.often(0.3):
            cents = max(5, cents // 50 * 50)
        return f"{cents // 100}.{cents % 100:02}"

    # Foods

    def food(self, name):
        r, department = self.r, self.r.choice(DEPARTMENTS)
        keeps = lambda days: [f"{days} days", FIGURE]  # noqa: E731
        record = {"department": department, "stored": "fridge"}
        if department == "household":
            record["stored"] = "pantry"
            self.foods[name] = record
            return
        life = {}
        if department in ("produce", "canned", "condiments", "bakery"):
            record["stored"] = r.choice(("pantry", "pantry", "fridge"))
        if department == "frozen":
            record["stored"] = "freezer"
            life["freezer"] = keeps(r.choice((30, 90)))
        else:
            long = department in ("canned", "condiments")
            life[record["stored"]] = keeps(r.choice((20, 200)) if long else r.choice((1, 2, 3, 4, 5, 7, 10, 21)))
            if record["stored"] == "pantry" and self.often(0.2):
                life["fridge"] = keeps(r.choice((3, 10)))
        if department in ("meat", "fish", "dairy", "bakery") and self.often(0.7):
            record["freezes"] = "well"
            life["freezer"] = keeps(r.choice((6, 10, 20, 60)))
        if department in ("dairy", "bakery", "canned", "condiments") and self.often(0.6):
            life["opened"] = keeps(r.choice((1, 2, 3, 4, 7)))
        if department in ("canned", "condiments") and self.later.random() < 0.5:
            record["freezes"] = "well"  # by the household only once it is open
            life["freezer"] = keeps(self.later.choice((6, 20, 60)))
        if department == "condiments" and self.later.random() < 0.3:
            record["department"] = "spices"
        record["keeps"] = life
        record["yields"] = {"edible": ["100 %", FIGURE]}
        if self.often(0.5):
            record["volume"] = {"plain": [f"{r.choice((120, 237, 300))} g/cup", FIGURE]}
        if self.often(0.5):
            record["pieces"] = {"unit": [f"{r.choice((50, 150, 200))} g AP", FIGURE]}
            record["count as"] = "unit"
        self.foods[name] = record

    def has_clock(self, name):
        return "opened" in self.foods[name].get("keeps", {})

    def amount(self, name):
        """Of a use, in units of the basis."""
        if self.foods[name]["department"] == "household":
            return self.r.randint(1, 4)
        return self.r.choice((50, 100, 100, 150, 200, 250, 300, 400, 600))

    def said(self, name, amount):
        return f"{amount} {name}" if self.foods[name]["department"] == "household" else f"{amount} g {name}"

    # Prices

    def offer(self, name, plain):
        r, household = self.r, self.foods[name]["department"] == "household"
        per_unit = self.sizes.setdefault(name, r.uniform(20, 60) if household else r.uniform(0.08, 1.5))
        per_unit *= r.uniform(0.7, 1.5)
        by = r.random()
        weight = False
        if household:
            size = r.choice((1, 2, 4, 6))
            what, price = (f"{size} pack", size * per_unit) if size > 1 else ("each", per_unit)
            line = f"{self.money(price)} each" if size == 1 else f"{what} {self.money(price)}"
        elif by < 0.2 and self.weighs:
            weight = True
            unit, grams = r.choice((("kg", 1000), ("kg", 1000), ("lb", 453.6)))
            price = per_unit * grams
            line = f"{self.money(price)}/{unit}"
        elif by < 0.3 and "pieces" in self.foods[name]:
            grams = int(self.foods[name]["pieces"]["unit"][0].split()[0])
            price = per_unit * grams
            line = f"{self.money(price)} each"
        else:
            size = r.choice((100, 200, 250, 250, 300, 400, 500, 500, 750, 1000, 1500))
            price = per_unit * size
            line = f"{size} g {r.choice(('pack', 'bag', 'tub'))} {self.money(price)}"
        terms = {"offer": line}
        if not plain and self.often(0.3):
            sale = {"price": self.money(price * r.uniform(0.3, 1.05))}
            if self.often(0.7):
                start = r.randrange(self.days)
                sale["from"] = text(start)
                sale["until"] = text(r.randint(start, self.days))
            terms["sale"] = sale
        if not plain and not weight and self.often(0.3):
            packs = r.choice((2, 2, 3, 4))
            terms["deal"] = f"{packs} for {self.money(price * packs * r.uniform(0.5, 1.1))}"
        if self.often(0.15):
            terms["member price"] = self.money(price * r.uniform(0.6, 1.1))
        if not weight and self.often(0.12):
            terms["limit"] = r.randint(1, 3)
        if self.often(0.08):
            terms[r.choice(("from", "until"))] = text(r.randrange(self.days))
        return terms if len(terms) > 1 else line

    def shop(self, name, foods):
        # None of the foods is of that department: a shop has nothing but what its prices say.
        r, said = self.r, {"shop": name.title(), "walk": ["snacks"]}
        if self.often(0.6):
            said["a stop costs"] = self.money(r.choice((0, 20, 50, 100, 300)))
        if self.often(0.3):
            said["tax"] = {department: r.choice(("5 %", "8.25 %", "19 %"))
                           for department in dict.fromkeys(self.foods[food]["department"] for food in foods)}
        if self.often(0.2):
            said["cash back"] = r.choice(("1 %", "2 %", "5 %"))
        if self.often(0.2):
            said["store credit"] = self.money(r.choice((50, 100, 500)))
        if self.often(0.55):
            over = r.choice((200, 300, 500, 500, 800, 1000, 2000))
            said["reduction"] = {"over": self.money(over), "off": self.money(over * r.choice((0.1, 0.3, 0.5, 0.8)))}
            if float(said["reduction"]["off"]) > float(said["reduction"]["over"]):
                del said["reduction"]
        prices = {}
        for food in foods:
            count = r.choice((0, 1, 1, 1) if self.has_clock(food) else (0, 1, 1, 2, 3))
            offers = [self.offer(food, self.has_clock(food) and self.often(0.5)) for _ in range(count)]
            if offers:
                prices[food] = offers
        said["prices"] = prices
        return said

    # The plan

    def trips(self, shops):
        r, trips, stops = self.r, [], 0
        for _ in range(r.choice((1, 1, 2, 2, 3, 4))):
            names = r.sample(shops, min(len(shops), r.choice((1, 1, 2))))
            if stops + len(names) > 5:
                break
            stops += len(names)
            date = 0 if not trips else r.choice((0, r.randrange(self.days), r.randrange(self.days)))
            listed = [{"shop": shop, "always": "yes"} if self.often(0.08) else shop for shop in names]
            trip = {"date": text(date), "stops": listed}
            if self.often(0.35):
                trip["home by"] = r.choice(("06:30", "10:00", "17:00", "20:00"))
            trips.append(trip)
        return sorted(trips, key=lambda trip: trip["date"])

    def uses(self, house, plan, trips):
        r, meals = self.r, {}
        shopping = [(datetime.date.fromisoformat(trip["date"]) - FIRST).days for trip in trips]
        count = r.randint(1, 8)
        taken = set()
        for _ in range(count):
            name, day = r.choice(list(self.foods)), r.randrange(self.days)
            if self.often(0.7):  # mostly it is eaten soon after a trip
                day = min(self.days - 1, r.choice(shopping) + r.randint(0, 3))
            slot = r.choice(list(SLOTS)) if day > 0 else r.choice(("dinner", "dinner", "dinner", "lunch", "breakfast"))
            if (name, day, slot) in taken or (self.has_clock(name) and sum(1 for t in taken if t[0] == name) >= 5):
                continue
            taken.add((name, day, slot))
            dish = self.said(name, self.amount(name))
            fresh = self.foods[name]["stored"] != "freezer" and self.often(0.2)
            if fresh and "household" != self.foods[name]["department"]:
                dish = dish.replace(f" {name}", f" fresh {name}")
            if self.often(0.3):
                slug = f"r-{name}-{len(house)}"
                house[f"recipes/{slug}.yaml"] = {"name": slug, "serves": str(r.choice((1, 2, 3, 4))),
                                                 **self.made_in(name), "ingredients": [dish]}
                dish = slug + r.choice(("", " for 2", " for 3"))
            meals.setdefault(text(day), {}).setdefault(slot, []).append(dish)
        plan["meals"] = meals
        name = r.choice(list(self.foods))
        if self.often(0.12) and self.days <= 7 and not self.has_clock(name):
            plan["staples"] = [self.said(name, self.amount(name)) + r.choice((" per day", " per week"))]
        elif self.often(0.08):
            plan["staples"] = ["keep " + self.said(name, self.amount(name))]
        elif self.later.random() < 0.15:
            name = self.later.choice(list(self.foods))
            if self.days <= 7 or not self.has_clock(name):
                plan["staples"] = [self.said(name, self.amount(name)) + self.later.choice((" per week", " per month"))]
        name = r.choice(list(self.foods))
        if self.often(0.12):
            plan["extra"] = [{"buy": self.said(name, self.amount(name)), "by": text(r.randrange(self.days))}]

    def made_in(self, name):
        if self.foods[name]["department"] == "household":  # counted: the oracle does not know in which parts
            return {"made in": "exactly"}
        said = {"made in": self.more.choice(("whole", "halves", "quarters", "exactly", None)),
                "give": self.more.choice(("0 %", "0 %", "0 %", "5 %", "25 %", None, None))}
        return {key: value for key, value in said.items() if value is not None}

    def on_hand(self):
        r, lines = self.r, []
        for _ in range(r.choice((0, 0, 1, 1, 2, 3))):
            name = r.choice(list(self.foods))
            record = self.foods[name]
            amount = self.amount(name) * r.choice((1, 1, 2, 3))
            what = self.said(name, amount)
            if record["department"] in ("canned", "condiments") and self.often(0.4):
                what = f"{r.randint(2, 3)} cans ({self.amount(name)} g) {name}"
            place = "freezer" if record.get("freezes") and self.often(0.35) else record["stored"]
            line = f"{what}, {place}"
            if self.often(0.7):
                line += f", use by {text(r.choice((0, 1, 2, 3, 5, 8, 12, 30)))}"
            lines.append(line)
        for name, record in self.foods.items():
            if record.get("freezes") and self.later.random() < 0.15:  # a bag that may be too little for a use
                lines.append(f"{self.later.choice((30, 50, 60, 80, 120))} g {name}, freezer, use by {text(20)}")
        return {"date": text(r.choice((-1, -1, 0))), "on hand": lines} if lines else None

    def household(self, shops):
        r, said = self.r, {"people": [{"name": "Ada"}, {"name": "Ben", "portion": "0.5"}], "meals": dict(SLOTS),
                           "measures": "metric"}
        hour = self.more.choice((0, 100, 600, 3000, None))
        if hour is not None:
            said["an hour costs"] = f"{hour * self.scale / 100:.2f}"
        if self.more.random() < 0.2:
            said["give"] = self.more.choice(("0 %", "30 %"))
        elif self.later.random() < 0.6:
            said["give"] = "0 %"
        said["people"] = said["people"][: r.choice((1, 2))]
        if self.often(0.5):
            places = r.sample(("pantry", "fridge", "freezer"), r.choice((1, 2, 3)))
            said["storage"] = {place: f"{r.choice((0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 4))} l" for place in places}
        if self.often(0.3):
            said["a stop costs"] = self.money(r.choice((20, 100)))
        if self.often(0.4):
            said["leftovers are worth"] = r.choice(("0 %", "30 %", "80 %", "100 %"))
        if self.often(0.4):
            said["throwing away costs"] = r.choice(("0 %", "10 %", "100 %"))
        if self.often(0.2):
            said["member of"] = [r.choice(shops)]
        if self.often(0.2):
            rule = r.choice(("prefer", "prefer", "only at", "never at"))
            said["buying"] = {r.choice(list(self.foods)): {rule: [r.choice(shops)]}}
        alike = [name for name in self.foods if self.foods[name]["department"] != "household"]
        if len(alike) > 1 and self.often(0.15):
            said["any of these"] = [{alike[0]: "1", alike[1]: r.choice(("1", "2", "0.5"))}]
        return said

    def house(self):
        r, house = self.r, {}
        for name in FOODS[: r.choice((1, 1, 2, 2, 3, 4))]:
            self.food(name)
        shops = list(SHOPS[: r.choice((1, 2, 2, 3))])
        plan = {"plan": "P", "from": text(0), "until": text(self.days - 1)}
        trips = self.trips(shops)
        self.uses(house, plan, trips)
        plan["trips"] = trips
        lists = {shop: self.shop(shop, list(self.foods)) for shop in shops}
        first = plan["trips"][0]["stops"][0]
        near = lists[first["shop"] if isinstance(first, dict) else first]["prices"]
        for food in self.foods:  # what nobody sells is rare
            if food not in near and self.often(0.7):
                near[food] = [self.offer(food, False)]
        house.update({f"plans/stores/{shop}.yaml": said for shop, said in lists.items()})
        on_hand = self.on_hand()
        if on_hand:
            house["plans/on-hand.yaml"] = on_hand
        house["plans/household.yaml"] = self.household(shops)
        house["plans/p.yaml"] = plan
        house["recipes/foods.yaml"] = self.foods
        return house


def generate(number):
    return Dice(number).house()


def text_of(tree):
    return yaml.safe_dump(tree, sort_keys=False, default_flow_style=None, width=110, allow_unicode=True)


def write(house, folder):
    for name, said in house.items():
        path = pathlib.Path(folder) / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text_of(said))


if __name__ == "__main__":
    write(generate(int(sys.argv[1])), sys.argv[2])
