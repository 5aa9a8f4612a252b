"""What the account is about: items (foods that stand for each other), their needs, and where they can
come from: lots on hand and offers at stops, each with its lives. Amounts are in the item's worth."""
from dataclasses import dataclass
from fractions import Fraction
from typing import List, Optional

from money import holds, missing_at_all, usual_price
from things import FOREVER, Offer

KEPT_AFTER = 3  # days after the plan's last on which what is left must still be good
KEPT_DAYS = 14  # days' use of it that are worth something


@dataclass(frozen=True)
class Need:
    """A use of the item: its index among the house's uses, and its amount in the item's worth."""

    day: int
    clock: int
    fresh: bool
    amount: Fraction
    use: int

    @property
    def moment(self):
        return self.day, self.clock


@dataclass(frozen=True)
class Source:
    """Packs of one kind that come into the house together: a lot, or an offer at a stop."""

    name: str
    lot: Optional[int]
    stop: Optional[int]
    offer: Optional[Offer]
    food: str
    size: Fraction  # of one pack, or of one step of the scale
    packs: Optional[int]  # of a lot; None: to be decided
    day: int  # from which it is in the house ...
    clock: int  # ... and the time of that day
    good: int  # last day unfrozen (what is bought or lies in a freezer: there)
    place: str
    frozen: Optional[int]  # days that it keeps if it is frozen at home, which it can be on `day`
    opened: Optional[int]  # days that a pack is good once opened; None: opening starts no clock
    ml: Fraction  # room of a unit
    serves_fresh: bool = True  # false of what was put into the freezer at home

    @property
    def by_weight(self):
        return self.offer is not None and self.offer.by_weight

    def is_there(self, need):
        return (self.day, self.clock) <= need.moment

    @property
    def frozen_good(self):
        """Last day if it is frozen when it comes home."""
        return None if self.frozen is None else self.day + self.frozen

    def serves_unfrozen(self, need):
        """Unfrozen; or, what lies in the freezer as it is, from there."""
        return self.is_there(need) and need.day <= self.good and (not need.fresh or self.serves_fresh)

    def serves_frozen(self, need, since=None):
        """Frozen on the day it comes home, or on the day `since`."""
        frozen = self.day if since is None else since
        return (self.frozen is not None and self.is_there(need) and not need.fresh
                and frozen <= min(need.day, self.good) and need.day <= frozen + self.frozen)


@dataclass
class Item:
    name: str
    needs: List[Need]  # in the order of time
    sources: List[Source]
    usual: Fraction  # cents of one unit
    missing: Fraction  # cents, besides, for each need of which something is missing
    cap: Fraction  # kept food that is worth something
    end: int  # the day on which kept food must be good

    @property
    def need(self):
        return sum((need.amount for need in self.needs), Fraction(0))

    def keeps_unfrozen(self, source):
        return source.good >= self.end

    def keeps_frozen(self, source):
        return source.frozen is not None and source.frozen_good >= self.end


def needs_of(house, item):
    """In the order of time; at one moment the fresh ones first, then as the plan has them."""
    uses = [i for i, use in enumerate(house.uses) if house.item_of(use.food) == item]
    uses.sort(key=lambda i: (house.uses[i].day, house.uses[i].clock, not house.uses[i].fresh))
    return [Need(use.day, use.clock, use.fresh, use.amount * house.worth(use.food), i)
            for i, use in ((i, house.uses[i]) for i in uses)]


def room_of(house, item):
    """Millilitres of a unit of the item: of the member that takes most."""
    return max(house.foods[food].ml / house.worth(food) for food in house.members(item) if food in house.foods)


def stock_source(house, index):
    lot = house.lots[index]
    food, item = house.foods[lot.food], house.item_of(lot.food)
    at_home = lot.place != "freezer" and lot.last >= house.first
    return Source(f"lot{index}", index, None, None, lot.food, lot.amount * house.worth(lot.food) / lot.packs, lot.packs,
                  house.first, 0, lot.last, lot.place, food.frozen if at_home else None,
                  food.opened if lot.place != "freezer" else None, room_of(house, item),
                  lot.place != "freezer" or food.stored == "freezer")


def bought_source(house, index, number, offer):
    stop, food, item = house.stops[index], house.foods[offer.food], house.item_of(offer.food)
    return Source(f"stop{index}offer{number}", None, index, offer, offer.food, offer.size * house.worth(offer.food), None,
                  stop.day, stop.home, min(FOREVER, stop.day + food.sealed), food.place, food.frozen, food.opened,
                  room_of(house, item))


def item_of(house, name):
    sources = [stock_source(house, i) for i, lot in enumerate(house.lots) if house.item_of(lot.food) == name]
    for index, stop in enumerate(house.stops):
        for number, offer in enumerate(house.shops[stop.shop].offers):
            if house.item_of(offer.food) == name and house.may_buy(offer.food, stop.shop) and holds(offer, stop.day):
                sources.append(bought_source(house, index, number, offer))
    needs = needs_of(house, name)
    total = sum((need.amount for need in needs), Fraction(0))
    return Item(name, needs, sources, usual_price(house, name), missing_at_all(house, name),
                total * KEPT_DAYS / house.days, house.last + KEPT_AFTER)


def items_of(house):
    """All items that are used or on hand."""
    names = [house.item_of(use.food) for use in house.uses] + [house.item_of(lot.food) for lot in house.lots]
    return [item_of(house, name) for name in dict.fromkeys(names)]


def room_limits(house):
    """Millilitres by (place, day) for the night after the day, where there is a limit. Where the stock
    alone takes more than there is, that much is the limit."""
    limits = {}
    for place, room in house.room.items():
        for day in range(house.first, house.last + 1):
            stock = sum((lot.amount * house.worth(lot.food) * room_of(house, house.item_of(lot.food))
                         for lot in house.lots if lot.place == place and lot.last > day), Fraction(0))
            limits[place, day] = max(room, stock)
    return limits
