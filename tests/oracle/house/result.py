"""Reads what the program wrote (result.json) as plans of a house's items."""
import datetime
import itertools
import json
import pathlib
from collections import defaultdict
from fractions import Fraction

import account
import measures
from account import Part
from items import items_of
from money import line_money
from read import slug

SMALL = Fraction(1, 1000)  # amounts are written to six places; sums of them are off by less than this


class Unfit(Exception):
    """The result does not fit the house's files."""


def day(text):
    return datetime.date.fromisoformat(text).toordinal()


class Result:
    def __init__(self, house, folder, slivers=None):
        """`slivers`: by food, less than so much of it may stay where it is; what a use has most of counts for it."""
        self.house = house
        self.slivers = slivers or {}
        self.said = self.load(folder)
        self.proven = self.said["proven"]
        self.account = self.said.get("account")
        self.items = items_of(house)
        self.needs = self.find_needs()

    @staticmethod
    def load(folder):
        """The file, its numbers exact."""
        return json.loads((pathlib.Path(folder) / "result.json").read_text(), parse_float=Fraction)

    def find_needs(self):
        """By use of the result: (item, need), both indices. The uses must be those of the files."""
        places, sums, gives = {}, {}, {}
        for i, item in enumerate(self.items):
            for n, need in enumerate(item.needs):
                places[item.name, need.day, need.clock, need.fresh, need.containers is not None, need.slack] = i, n
                sums[i, n], gives[i, n] = need.amount, need.give
        found = []
        for use in self.said["uses"]:
            key = (self.house.item_of(use["food"]), day(use["date"]), use["clock"], use["fresh"], use["containers"] is not None,
                   use["slack"])
            if key not in places:
                raise Unfit(f"a use that the files do not have: {use}")
            found.append(places[key])
            sums[places[key]] -= Fraction(use["amount"]) * self.house.worth(use["food"])
            gives[places[key]] -= Fraction(use["give"]) * self.house.worth(use["food"])
        for place, left in sums.items():
            if abs(left) > SMALL:
                raise Unfit(f"need {place}: the result's uses are off by {float(left)}")
        for place, left in gives.items():
            if abs(left) > SMALL:
                raise Unfit(f"need {place}: what the result's uses can do without is off by {float(left)}")
        return found

    def stop_choices(self):
        """The stops that the visits can be; several where a shop is stopped at twice on a day."""
        choices = []
        for visit in self.said["visits"]:
            fitting = [s for s, stop in enumerate(self.house.stops)
                       if stop.day == day(visit["date"]) and self.house.shops[stop.shop].name == visit["shop"]
                       and visit["home"] == stop.home]
            choices.append(fitting)
        return [way for way in itertools.product(*choices) if len(set(way)) == len(way)]

    def offer_of(self, purchase, stop, used):
        """The offer's place in its shop's list."""
        shop = self.house.shops[self.house.stops[stop].shop]
        alike = [n for n, offer in enumerate(shop.offers)
                 if offer.food == purchase["food"] and offer.text == purchase["pack"] and (stop, n) not in used]
        for n in alike:
            money = line_money(self.house, shop.offers[n], self.house.stops[stop].day, purchase["packs"])
            if money.till == purchase["cost"]:
                return n
        raise Unfit(f"a line that no price gives: {purchase} on {slug(shop.name)}")

    def plans(self, stops):
        """One plan for each item, the visits being at `stops`."""
        plans = [account.ItemPlan() for _ in self.items]
        places = {item.name: i for i, item in enumerate(self.items)}
        names, used = [], set()
        for purchase in self.said["purchases"]:
            stop = stops[purchase["visit"]]
            number = self.offer_of(purchase, stop, used)
            used.add((stop, number))
            item = places.get(self.house.item_of(purchase["food"]))
            if item is None:
                raise Unfit(f"bought, and not needed: {purchase['food']}")
            name = f"stop{stop}offer{number}"
            if name not in [source.name for source in self.items[item].sources]:
                raise Unfit(f"bought where or when it is not sold: {purchase}")
            plans[item].packs[name] = purchase["packs"]
            names.append((item, name))
        for supply in self.said["supplies"]:
            item, name = names[supply["purchase"]]
            purchase = self.said["purchases"][supply["purchase"]]
            self.take(plans, item, name, supply, purchase["food"], purchase["packs"])
        self.from_stock(plans, places)
        self.without()
        self.left(plans, names)
        return plans

    def take(self, plans, item, name, served, food, packs=1):
        """Adds what is served to what the source gives to the need already. Each pack counts for up to a thousandth more
        than it holds, so a use may get that much less than it asks for."""
        place, need = self.needs[served["use"]]
        if place != item:
            raise Unfit(f"{name} serves a use of another food")
        source = self.source(item, name)
        since = thawed = None
        if served["frozen"]:
            since = day(served["frozen_on"])
            opened = day(served["opened_on"]) if served["opened_on"] else None
            # A pack that went into the freezer before it was opened was thawed as a whole.
            thawed = opened if source.opened is not None and opened > since else None
        amount = Fraction(served["amount"]) * self.house.worth(food)
        covers = Fraction(served["covers"]) * self.house.worth(self.said["uses"][served["use"]]["food"])
        need_said = self.items[item].needs[need]
        may_lack = SMALL * (1 + packs + self.house.worth(food))
        sliver = max(may_lack, self.slivers.get(food, 0) * self.house.worth(food))
        if need_said.containers is None and not -may_lack <= covers - amount <= sliver:
            raise Unfit(f"{float(amount)} of {name} cover {float(covers)} of a use that is not for containers")
        if covers - amount > may_lack and need_said.containers is None:
            plans[item].slivers += covers - amount
        for part in plans[item].takings:
            if (part.source, part.need, part.frozen, part.since, part.thawed) == (name, need, served["frozen"], since, thawed):
                part.amount += amount
                part.more += covers - amount
                return
        plans[item].takings.append(Part(name, amount, served["frozen"], since, thawed, need, covers - amount))

    def source(self, item, name):
        return next(source for source in self.items[item].sources if source.name == name)

    def from_stock(self, plans, places):
        said = self.said["on_hand"]
        if len(said) != len(self.house.lots):
            raise Unfit("the lots on hand")
        for part in self.said["from_stock"]:
            lot = self.house.lots[part["lot"]]
            item = places.get(self.house.item_of(lot.food))
            if said[part["lot"]]["food"] != lot.food or item is None or lot.last < self.house.first:
                raise Unfit(f"lot {part['lot']}")
            self.take(plans, item, f"lot{part['lot']}", part, lot.food)

    def without(self):
        """Every use is served but for what the result says it goes without."""
        said = self.said
        lists = {"short_but_enough": defaultdict(Fraction), "still_to_find": defaultdict(Fraction)}
        for name, of in lists.items():
            for entry in said[name]:
                if said["uses"][entry["use"]]["food"] != entry["food"]:
                    raise Unfit(f"{name}: a use of another food: {entry}")
                of[entry["use"]] += Fraction(entry["amount"])
        served = defaultdict(Fraction)
        for part in said["supplies"] + said["from_stock"]:
            served[part["use"]] += Fraction(part["covers"])
        enough, missing = lists["short_but_enough"], lists["still_to_find"]
        for u, use in enumerate(said["uses"]):
            if enough[u] > Fraction(use["give"]) + SMALL:
                raise Unfit(f"{use['food']} on {use['date']} lacks {float(enough[u])} and can do without {float(use['give'])}")
            off = Fraction(use["amount"]) - served[u] - enough[u] - missing[u]
            if abs(off) > 2 * SMALL:  # crumbs are not said
                raise Unfit(f"{use['food']} on {use['date']}: {float(off)} that nothing serves and no list says it lacks")
        for place in set(self.needs):
            uses = [u for u, its in enumerate(self.needs) if its == place]
            unused = sum(Fraction(said["uses"][u]["give"]) - enough[u] for u in uses)
            if any(missing[u] > SMALL for u in uses) and unused > SMALL * len(uses):
                raise Unfit(f"{said['uses'][uses[0]]['food']}: {float(unused)} can be done without before anything is missing")

    def left(self, plans, names):
        """What is left of purchases and of lots."""
        for p, purchase in enumerate(self.said["purchases"]):
            item, name = names[p]
            worth = self.house.worth(purchase["food"])
            self.leave(plans, item, name, purchase, worth)
        for number, lot in enumerate(self.said["on_hand"]):
            name = f"lot{number}"
            item = next((i for i, one in enumerate(self.items) if name in [source.name for source in one.sources]), None)
            if item is not None:
                self.leave(plans, item, name, lot, self.house.worth(lot["food"]))
            elif lot["kept"] or lot["wasted"]:
                raise Unfit(f"left of lot {number}, which is for nothing")

    def leave(self, plans, item, name, said, worth):
        self.keep(plans, item, name, Fraction(said["kept"]) * worth)
        plans[item].wasted[name] += Fraction(said["wasted"]) * worth

    def keep(self, plans, item, name, amount):
        if amount > SMALL:
            source = self.source(item, name)
            frozen = not self.items[item].keeps_cool(source)
            plans[item].kept.append(Part(name, amount, frozen, source.day if frozen else None))
