"""Reads a small house from its YAML files into a House. Shares no code with the program.

Read: everything that a price list and a household say about buying; meals by date of plain food and
of recipes cooked on the day, of what is measured; staples, extras, trips. Not read (Unreadable): prep sessions, leftovers,
recipes in recipes, absences and guests, foods that recipes/foods.yaml does not describe.
"""
import datetime
import pathlib
import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Optional

import yaml

import measures
from makings import USUAL_GIVE, times_to_make
from things import FOREVER, Buying, Food, House, Lot, Offer, Shop, Stop, Unreadable, Use

END_OF_DAY = 24 * 60
HOME_FROZEN = ("meat", "fish", "bakery", "dairy")
STOPS_AN_HOUR = 4
CLOCKLESS = ("produce", "household")
HANDLING_HOURS = Fraction(3, 60)  # a bag, a label, thawing
SEASONINGS_GIVE = 3  # times the share of other food
NO_PIECE = 15  # grams: what is smaller (a clove of garlic) is not counted
RATES = {"per day": 1, "a day": 1, "per week": 7, "a week": 7, "per month": 30, "a month": 30}


LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)  # the one in C is ten times as fast


def load(path):
    """The file's tree; every scalar is text as it is written."""
    return yaml.load(path.read_text(), Loader=LOADER) or {}


def day(text):
    return datetime.date.fromisoformat(text).toordinal()


def as_list(value):
    return value if isinstance(value, list) else [] if value in (None, "") else [value]


def slug(name):
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")


def read_food(name, record, plan_days):
    """Lives as the account says (see "Lives")."""
    weights = measures.Weights(record)
    department = record.get("department", "household")
    stored = record.get("stored", "pantry")
    # How long it keeps once cut is nothing to a list.
    keeps = {place: measures.length(said[0]) for place, said in (record.get("keeps") or {}).items() if place != "cut"}
    place = stored
    if department == "household":
        sealed = FOREVER
    elif stored == "pantry":
        sealed = max(keeps.get("pantry", -1), keeps.get("fridge", -1))
        place = "fridge" if keeps.get("fridge", -1) > keeps.get("pantry", -1) else "pantry"
    else:
        sealed = keeps.get(stored, -1)
    if "ripens" in record:  # hard in the fridge, then ripening, then ripe where it keeps least
        ripe = min(days for at, days in keeps.items() if at in ("pantry", "fridge"))
        sealed = max(sealed, keeps.get("hard", 0) + measures.length(record["ripens"][0]) + ripe)
    if sealed < 0:
        raise Unreadable(f"how long {name} keeps")
    for_cooking = record.get("freezes") == "for cooking"
    bears = stored != "freezer" and (for_cooking or record.get("freezes") == "well")
    home = bears and (for_cooking or department in HOME_FROZEN)
    frozen = keeps.get("freezer") if home else keeps.get("frozen juice")
    opened = keeps.get("opened")
    clock = department not in CLOCKLESS and opened is not None and opened < min(sealed, plan_days)
    return weights, Food(name, department, stored, weights.basis, keeps, sealed, place,
                         frozen, opened if clock else None, weights.millilitres(),
                         keeps.get("freezer") if bears else None, for_cooking)


def keeps_for(food, days):
    """Unfrozen, where it is stored or in the fridge."""
    places = {"fridge", food.stored}
    return (food.department == "household" or food.stored == "freezer"
            or any(food.keeps.get(place, -1) >= days for place in places))


def read_offer(said, shop, food, weights):
    terms = said if isinstance(said, dict) else {"offer": said}
    text = terms["offer"].strip()
    head, _, tail = text.rpartition(" ")
    by_unit = re.fullmatch(r"(\S+)/(.+)", text) if " " not in text else None
    if by_unit or (measures.is_money(head) and not measures.is_money(tail)):
        price, unit = (by_unit[1], by_unit[2]) if by_unit else (head, tail)
        by_weight = unit in measures.STEPS
        step = measures.STEPS.get(unit, 1)
        each = 1 / Fraction(step) if by_weight else Fraction(1)
        size = weights.of_unit(step, unit) if by_weight else weights.of_pieces(1, None if unit == "each" else unit)
        pack = unit
    else:
        amount, rest = measures.number(head)
        unit, words = measures.unit_at(rest)
        piece = next((w for w in words.split() if w in weights.pieces or w.rstrip("s") in weights.pieces), None)
        size = weights.of_unit(amount, unit) if unit else weights.of_pieces(amount, piece)
        price, pack, by_weight, each = tail, head, False, Fraction(1)
    sale = terms.get("sale")
    deal = re.fullmatch(r"(\d+) for (\S+)", terms["deal"]) if "deal" in terms else None
    if "deal" in terms and (by_weight or not deal):
        raise Unreadable(f"deal {terms['deal']!r}")
    return Offer(
        shop, food, pack, size, by_weight, measures.money(price) / each,
        member=measures.money(terms["member price"]) / each if "member price" in terms else None,
        sale=(measures.money(sale["price"]) / each, day(sale["from"]) if "from" in sale else -FOREVER,
              day(sale["until"]) if "until" in sale else FOREVER) if sale else None,
        deal=(int(deal[1]), measures.money(deal[2])) if deal else None,
        limit=int(terms["limit"]) if "limit" in terms else None,
        first=day(terms["from"]) if "from" in terms else -FOREVER,
        last=day(terms["until"]) if "until" in terms else FOREVER)


@dataclass(frozen=True)
class Line:
    """`2 cans (400 g) quib` or `200 g fresh quib`."""

    food: str
    amount: Fraction  # in the food's basis
    fresh: bool
    packs: int = 1
    counted: bool = False  # in pieces
    containers: Optional[Fraction] = None  # of any usual size


class Reader:
    def __init__(self, root):
        self.root = pathlib.Path(root)
        self.household = load(self.root / "plans/household.yaml")
        self.give = measures.percent(self.household.get("give", USUAL_GIVE))
        self.slots = {name.lower(): measures.clock(at["at"] if isinstance(at, dict) else at) for name, at in self.household["meals"].items()}

    def house(self, plan_file="plans/p.yaml"):
        plan = load(self.root / plan_file)
        first, last = day(plan["from"]), day(plan["until"])
        self.weights = {}
        foods = self.foods = self.read_foods(last - first + 1)
        shops = {path.stem: self.shop(path) for path in sorted((self.root / "plans/stores").glob("*.yaml"))}
        says = self.household
        hour = measures.money(says.get("an hour costs", "6.00"))
        stop_cost = measures.money(says["a stop costs"]) if "a stop costs" in says else Fraction(hour // STOPS_AN_HOUR)
        return House(
            first, last, foods, shops, self.stops(plan, shops, stop_cost), self.uses(plan, first, last),
            self.lots(foods), {place: measures.number(text)[0] * 1000 for place, text in says.get("storage", {}).items()},
            [slug(shop) for shop in as_list(says.get("member of"))],
            {food: Buying(*([slug(shop) for shop in as_list(rule.get(key))] for key in ("only at", "never at", "prefer")))
             for food, rule in says.get("buying", {}).items()},
            [{food: measures.number(amount)[0] for food, amount in group.items()}
             for group in as_list(says.get("any of these"))],
            measures.percent(says.get("leftovers are worth", "50 %")),
            measures.percent(says.get("throwing away costs", "25 %")),
            hour * HANDLING_HOURS)

    def read_foods(self, days):
        own = self.root / "recipes/foods.yaml"
        foods = {}
        for name, record in (load(own) if own.exists() else {}).items():
            self.weights[name], foods[name] = read_food(name, record, days)
        return foods

    def shop(self, path):
        return self.shop_of(path.stem, load(path))

    def shop_of(self, slug, said):
        reduction = said.get("reduction")
        offers = [read_offer(one, slug, food, self.weights[food])
                  for food, list_ in said["prices"].items() for one in as_list(list_)]
        return Shop(slug, said["shop"],
                    measures.money(said["a stop costs"]) if "a stop costs" in said else None,
                    {department: measures.percent(rate) for department, rate in said.get("tax", {}).items()},
                    measures.percent(said.get("cash back", "0 %")), measures.money(said.get("store credit", "0")),
                    measures.money(reduction["over"]) if reduction else None,
                    measures.money(reduction["off"]) if reduction else Fraction(0), offers)

    def stops(self, plan, shops, stop_cost):
        out = []
        for trip in as_list(plan.get("trips")):
            for said in as_list(trip["stops"]):
                terms = said if isinstance(said, dict) else {"shop": said}
                shop = shops[slug(terms["shop"])]
                out.append(Stop(shop.slug, day(trip["date"]), measures.clock(trip.get("home by", "12:00")),
                                terms.get("always") in ("yes", "true"),
                                stop_cost if shop.stop_cost is None else shop.stop_cost))
        return sorted(out, key=lambda stop: stop.day)

    def line(self, text):
        size = re.search(r"\(([^)]*)\)", text)
        amount, rest = measures.number(re.sub(r"\([^)]*\)", " ", text))
        if amount is None:
            raise Unreadable(f"an amount: {text!r}")
        unit, rest = measures.unit_at(rest)
        words = rest.split()
        fresh = "fresh" in words
        words = [word for word in words if word not in ("fresh", "of")]
        container = words[0].rstrip("s") if words and words[0].rstrip("s") in measures.CONTAINERS else None
        words = words[1:] if container else words
        piece = None
        if words and words[0] not in self.weights and " ".join(words) not in self.weights:
            piece, words = words[0], words[1:]
        food = " ".join(words)
        if food not in self.weights:
            raise Unreadable(f"a food: {text!r}")
        weights = self.weights[food]
        if size and not unit:
            each, rest = measures.number(size[1])
            return Line(food, weights.of_unit(amount * each, rest), fresh, int(amount) if container else 1)
        if unit:
            return Line(food, weights.of_unit(amount, unit), fresh)
        whole = weights.of_pieces(amount, piece or container)
        if container:
            return Line(food, whole, fresh, int(amount), containers=None if weights.basis == "each" else amount)
        return Line(food, whole, fresh, counted=weights.basis == "each" or whole >= NO_PIECE * amount)

    def use(self, line, day, clock, give, times=Fraction(1), slack=0):
        """`give` is the share that recipe or household give."""
        food = self.foods[line.food]
        seasoning = food.department == "spices"
        if (line.counted or food.department == "household") and line.containers is None and not seasoning:
            give = Fraction(0)
        share = min(Fraction(1), give * (SEASONINGS_GIVE if seasoning else 1))
        return Use(line.food, day, clock, line.amount * times, line.fresh, line.amount * times * share, slack,
                   None if line.containers is None else line.containers * times)

    def uses(self, plan, first, last):
        out = []
        for key in ("away", "guests", "prep"):
            if plan.get(key):
                raise Unreadable(key)
        for date, meals in (plan.get("meals") or {}).items():
            for slot, dishes in meals.items():
                for dish in as_list(dishes):
                    out += self.dish(dish, day(date), self.slots[slot.lower()])
        for staple in as_list(plan.get("staples")):
            out += self.staple(staple, first, last)
        for extra in as_list(plan.get("extra")):
            terms = extra if isinstance(extra, dict) else {"buy": extra}
            out.append(self.use(self.line(terms["buy"]), day(terms["by"]) if "by" in terms else last, END_OF_DAY, Fraction(0)))
        return out

    def dish(self, said, date, clock):
        if not isinstance(said, str) or said.startswith("leftovers of "):
            raise Unreadable(f"a dish: {said!r}")
        words, _, servings = said.partition(" for ")
        if words[0].isdigit():
            return [self.use(self.line(words), date, clock, self.give, Fraction(servings) if servings else Fraction(1))]
        recipe = load(self.root / "recipes" / f"{words}.yaml")
        eaters = sum(measures.number(person.get("portion", "1"))[0] for person in self.household["people"])
        give = measures.percent(recipe["give"]) if "give" in recipe else self.give
        lines = [self.line(line) for line in as_list(recipe["ingredients"])]
        if recipe.get("made in") != "exactly" and any(self.weights[line.food].basis == "each" for line in lines):
            raise Unreadable(f"a recipe of what is counted, made in parts: {words}")
        times = times_to_make((Fraction(servings) if servings else eaters) / measures.number(recipe["serves"])[0],
                              recipe.get("made in"), give)
        return [self.use(line, date, clock, give, times) for line in lines]

    def staple(self, text, first, last):
        if text.startswith("keep "):
            return [self.use(self.line(text[5:]), last, END_OF_DAY, Fraction(0))]
        rate = next((ending for ending in RATES if text.endswith(" " + ending)), None)
        if rate is None:
            raise Unreadable(f"a staple: {text!r}")
        line, days = self.line(text[: -len(rate)]), RATES[rate]
        at_once = 1 if keeps_for(self.foods[line.food], days) else days
        out = []
        for start in range(first, last + 1, at_once):
            end = min(last, start + at_once - 1)
            out.append(self.use(line, end, END_OF_DAY, self.give, Fraction(end - start + 1, days), end - start))
        return out

    def lots(self, foods):
        path = self.root / "plans/on-hand.yaml"
        if not path.exists():
            return []
        said, out = load(path), []
        for line in as_list(said.get("on hand")):
            what, *parts = [part.strip() for part in line.split(",")]
            asked = self.line(what)
            food, amount, packs = asked.food, asked.amount, asked.packs
            place = next((part for part in parts if part in ("pantry", "fridge", "freezer")), foods[food].stored)
            use_by = next((day(part[7:]) for part in parts if part.startswith("use by ")), None)
            if use_by is None:
                keeps = foods[food].keeps.get(place)
                use_by = day(said["date"]) + keeps if keeps is not None else FOREVER
            out.append(Lot(food, amount, place, use_by, packs))
        return out


def read_house(root, plan_file="plans/p.yaml"):
    return Reader(root).house(plan_file)
