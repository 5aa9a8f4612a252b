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
from read import END_OF_DAY, slug

SMALL = Fraction(1, 1000)  # amounts are written to six places; sums of them are off by less than this


class Unfit(Exception):
    """The result does not fit the house's files."""


def day(text):
    return datetime.date.fromisoformat(text).toordinal()


class Result:
    def __init__(self, house, folder, slots):
        """`slots`: minutes from midnight by name of the meal."""
        self.house, self.slots = house, slots
        self.said = self.load(folder)
        self.proven = self.said["proven"]
        self.account = self.said.get("account")
        self.items = items_of(house)
        self.needs = self.find_needs()

    @staticmethod
    def load(folder):
        """The file, its numbers exact."""
        return json.loads((pathlib.Path(folder) / "result.json").read_text(), parse_float=Fraction)

    def clock_of(self, use):
        if "meal" in use:
            return self.slots[self.said["meals"][use["meal"]]["meal"]]
        if "making" in use:
            first = self.said["makings"][use["making"]]["for"][0]
            return self.slots[self.said["meals"][first["meal"]]["meal"]]
        return END_OF_DAY

    def find_needs(self):
        """By use of the result: (item, need), both indices. The uses must be those of the files; alike ones are
        told apart by their amounts."""
        places = defaultdict(list)
        for i, item in enumerate(self.items):
            for n, need in enumerate(item.needs):
                places[item.name, need.day, need.clock, need.fresh].append((i, n))
        found = []
        for use in self.said["uses"]:
            amount = Fraction(use["amount"]) * self.house.worth(use["food"])
            left = places[self.house.item_of(use["food"]), day(use["date"]), self.clock_of(use), use["fresh"]]
            fitting = [place for place in left if abs(self.items[place[0]].needs[place[1]].amount - amount) < SMALL]
            if not fitting:
                raise Unfit(f"a use that the files do not have: {use}")
            left.remove(fitting[0])
            found.append(fitting[0])
        if any(places.values()):
            raise Unfit(f"uses that the result does not have: {[left for left in places.values() if left][:3]}")
        return found

    def stop_choices(self):
        """The stops that the visits can be; several where a shop is stopped at twice on a day."""
        choices = []
        for visit in self.said["visits"]:
            fitting = [s for s, stop in enumerate(self.house.stops)
                       if stop.day == day(visit["date"]) and self.house.shops[stop.shop].name == visit["shop"]
                       and visit.get("home", stop.home) == stop.home]
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
        frozen = defaultdict(Fraction)
        for supply in self.said["supplies"]:
            item, name = names[supply["purchase"]]
            worth = self.house.worth(self.said["purchases"][supply["purchase"]]["food"])
            self.take(plans, item, name, supply["use"], Fraction(supply["amount"]) * worth, supply["frozen"])
            frozen[name] += Fraction(supply["amount"]) * supply["frozen"]
        for p, purchase in enumerate(self.said["purchases"]):
            item, name = names[p]
            worth = self.house.worth(purchase["food"])
            kept, wasted = Fraction(purchase["kept"]), Fraction(purchase["wasted"])
            kept_frozen = min(kept, max(Fraction(0), Fraction(purchase["freeze"]) - frozen[name]))
            for amount, is_frozen in ((kept - kept_frozen, False), (kept_frozen, True)):
                if amount > SMALL:
                    plans[item].kept.append(Part(name, amount * worth, is_frozen, self.since(item, name)))
            plans[item].wasted[name] += wasted * worth
        self.stock(plans, places)
        return plans

    def take(self, plans, item, name, use, amount, frozen):
        place, need = self.needs[use]
        if place != item:
            raise Unfit(f"{name} serves a use of another food")
        for part in plans[item].takings:
            if (part.source, part.need, part.frozen) == (name, need, frozen):
                part.amount += amount
                return
        plans[item].takings.append(Part(name, amount, frozen, self.since(item, name), need=need))

    def since(self, item, name):
        """The day on which it is frozen, if it is: when it comes home, or not known where packs are opened."""
        source = next(source for source in self.items[item].sources if source.name == name)
        return source.day if source.opened is None else None

    def stock(self, plans, places):
        """What is on hand: used, and what is left of it. What the result does not say of it (whether it is
        frozen, kept or wasted) is what costs least."""
        said = self.said["on_hand"]
        if len(said) != len(self.house.lots):
            raise Unfit("the lots on hand")
        used = defaultdict(Fraction)
        for part in self.said["from_stock"]:
            lot = self.house.lots[part["lot"]]
            if said[part["lot"]]["food"] != lot.food:
                raise Unfit(f"lot {part['lot']}")
            item, name = places[self.house.item_of(lot.food)], f"lot{part['lot']}"
            source = next(s for s in self.items[item].sources if s.name == name)
            need = self.items[item].needs[self.needs[part["use"]][1]]
            frozen = part.get("frozen", not source.serves_unfrozen(need)) and source.place != "freezer"
            amount = Fraction(part["amount"]) * self.house.worth(lot.food)
            self.take(plans, item, name, part["use"], amount, frozen)
            used[part["lot"]] += amount
        for index, lot in enumerate(self.house.lots):
            item, name = places[self.house.item_of(lot.food)], f"lot{index}"
            source = next(s for s in self.items[item].sources if s.name == name)
            left = source.size * source.packs - used[index]
            worth = self.house.worth(lot.food)
            unfrozen = self.items[item].keeps_unfrozen(source)
            kept = Fraction(said[index]["kept"]) * worth if "kept" in said[index] else left if unfrozen else 0
            if kept > SMALL:
                plans[item].kept.append(Part(name, kept, not unfrozen, self.since(item, name)))
            plans[item].wasted[name] += max(Fraction(0), left - kept)


