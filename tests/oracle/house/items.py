"""What the account is about: items (foods that stand for each other), their needs, and where they can
come from: lots on hand and offers at stops, each with its lives. Amounts are in the item's worth."""
from dataclasses import dataclass
from fractions import Fraction
from typing import List, Optional, Tuple

from money import holds, missing_at_all, usual_price
from things import FOREVER, Offer

KEPT_AFTER = 3  # days after the plan's last on which what is left must still be good
KEPT_DAYS = 14  # days' use of it that are worth something
LEAST_FROZEN = 60  # grams from the freezer for a use, unless it needs no more; not of spices
USES_TO_FREEZE_FOR = 8  # of an item used more often nothing is frozen for want of room


@dataclass(frozen=True)
class Need:
    """The uses of an item at one moment, alike in `fresh`, in `slack` and in being for containers: indices of the house's uses, in the plan's order."""

    day: int
    clock: int
    fresh: bool
    amount: Fraction  # in the item's worth
    uses: Tuple[int, ...]
    give: Fraction = Fraction(0)  # of the amount
    slack: int = 0
    containers: Optional[Fraction] = None

    @property
    def must(self):
        return self.amount - self.give

    @property
    def earliest(self):
        """The first day on which it may be eaten."""
        return self.day - self.slack

    @property
    def moment(self):
        return self.day, self.clock


@dataclass(frozen=True)
class Source:
    """Things of one kind that come into the house together: a lot, or an offer at a stop."""

    name: str
    lot: Optional[int]
    stop: Optional[int]
    offer: Optional[Offer]
    food: str
    size: Fraction  # of one pack, or of one step of the scale
    packs: Optional[int]  # of a lot; None: to be decided
    day: int  # from which it is in the house ...
    clock: int  # ... and the time of that day
    good: int  # last day as it is kept: unfrozen, or for goods that are sold frozen in the freezer
    place: str
    frozen: Optional[int]  # days that it keeps if it is frozen at home, which it can be on `day`
    opened: Optional[int]  # days that a pack is good once opened; None: opening starts no clock
    ml: Fraction  # room of a unit
    portions: Optional[int] = None  # days that portions keep that are frozen when the pack is opened
    member: int = 0  # which of the foods that stand for each other it is
    thawed: Optional[int] = None  # of what was put into the freezer at home before the plan: its last day
    number: int = 0  # of an offer: its place in the shop's list
    for_cooking: bool = False  # frozen for what it is cooked in, not to be kept

    @property
    def by_weight(self):
        return self.offer is not None and self.offer.by_weight

    @property
    def frozen_good(self):
        """Last day in the freezer if it goes there when it comes home; None if it never does."""
        if self.thawed is not None:
            return self.thawed
        return None if self.frozen is None else self.day + self.frozen

    def is_there(self, need):
        return (self.day, self.clock) <= need.moment


@dataclass
class Item:
    name: str
    needs: List[Need]  # in the order in which they are served
    sources: List[Source]
    usual: Fraction  # cents of one unit
    missing: Fraction  # cents, besides, for each need of which something is missing
    cap: Fraction  # kept food that is worth something
    end: int  # the day on which kept food must be good
    limited: Tuple[str, ...] = ()  # places whose room is limited
    least_frozen: Fraction = Fraction(0)

    @property
    def need(self):
        return sum((need.amount for need in self.needs), Fraction(0))

    @property
    def takes_room(self):
        """Something of it stands where room is limited."""
        return any(source.ml > 0 and (source.place in self.limited and source.thawed is None
                                      or "freezer" in self.limited and (source.frozen_good is not None or source.portions is not None))
                   for source in self.sources)

    @property
    def freezes_for_room(self):
        """What would keep unfrozen may be frozen for want of room."""
        return len(self.needs) <= USES_TO_FREEZE_FOR and any(
            source.ml > 0 and source.place in self.limited and source.frozen is not None for source in self.sources)

    def serves_cool(self, source, need):
        """As it is kept, unopened."""
        return source.thawed is None and source.is_there(need) and need.earliest <= source.good

    def serves_frozen(self, source, need):
        """From the freezer, where it went when it came home (what keeps unfrozen does so for want of room only)."""
        there = source.frozen_good is not None and not need.fresh and source.is_there(need)
        return (there and need.earliest <= source.frozen_good
                and (not self.serves_cool(source, need) or self.freezes_for_room))

    def keeps_cool(self, source):
        return source.thawed is None and source.good >= self.end

    def keeps_frozen(self, source):
        """What is on hand and not frozen stays as it is if nothing needs it."""
        return (source.frozen_good is not None and source.frozen_good >= self.end
                and (source.thawed is not None or source.lot is None and not source.for_cooking))

    def cut(self, source, day):
        """Beyond that, a day more makes no difference."""
        last = max([self.end] + [need.day for need in self.needs])
        return -FOREVER if day is None else min(day, last + (source.opened or 0))

    def cool_rank(self, source):
        """What goes off first unfrozen comes first."""
        return self.cut(source, source.good), self.cut(source, source.frozen_good)

    def frozen_rank(self, source):
        """What goes off first in the freezer comes first."""
        good = -FOREVER if source.thawed is not None else self.cut(source, source.good)
        return self.cut(source, source.frozen_good), good

    @staticmethod
    def came(source):
        """Of things that go off on one day: what is on hand in the order of the foods that stand for each other, then of the
        list; then what was bought first, at one stop in the order of its list, what is weighed last."""
        if source.lot is not None:
            return 0, source.member, source.lot
        return 1, source.day, source.clock, source.stop, source.by_weight, source.number

    @staticmethod
    def kind(source):
        """Loose, or the size of packs; what is weighed is a pack of its own."""
        if source.opened is None:
            return None
        return source.name if source.by_weight else source.size


def needs_of(house, item):
    """In the order of time; at one moment the fresh one first."""
    together = {}
    for i, use in enumerate(house.uses):
        if house.item_of(use.food) == item:
            together.setdefault((use.day, use.clock, not use.fresh, use.containers is not None, use.slack), []).append(i)

    def sum_of(uses, what):
        return sum((what(house.uses[i]) * house.worth(house.uses[i].food) for i in uses), Fraction(0))

    return [Need(day, clock, not cooked, sum_of(uses, lambda use: use.amount), tuple(uses), sum_of(uses, lambda use: use.give),
                 slack, sum(house.uses[i].containers for i in uses) if counted else None)
            for (day, clock, cooked, counted, slack), uses in sorted(together.items())]


def room_of(house, item):
    """Millilitres of a unit of the item: of the member that takes most."""
    return max(house.foods[food].ml / house.worth(food) for food in house.members(item) if food in house.foods)


def portions_of(food):
    return food.frozen if food.portions is None else food.portions


def stock_source(house, index):
    lot = house.lots[index]
    food, item = house.foods[lot.food], house.item_of(lot.food)
    thawed = lot.place == "freezer" and food.stored != "freezer"
    at_home = lot.place != "freezer"
    packs = lot.packs if at_home and food.opened is not None else 1
    return Source(f"lot{index}", index, None, None, lot.food, lot.amount * house.worth(lot.food) / packs, packs,
                  house.first, 0, lot.last, lot.place, food.frozen if at_home else None,
                  food.opened if at_home else None, room_of(house, item), portions_of(food) if at_home else None,
                  house.members(item).index(lot.food), lot.last if thawed else None)


def bought_source(house, index, number, offer):
    stop, food, item = house.stops[index], house.foods[offer.food], house.item_of(offer.food)
    cut = offer.by_weight and food.opened is not None  # at the counter: it has been opened
    sealed, opened = (food.opened, None) if cut else (food.sealed, food.opened)
    return Source(f"stop{index}offer{number}", None, index, offer, offer.food, offer.size * house.worth(offer.food), None,
                  stop.day, stop.home, min(FOREVER, stop.day + sealed), food.place, food.frozen, opened,
                  room_of(house, item), portions_of(food), number=number, for_cooking=food.for_cooking)


def least_frozen(house, item):
    food = house.foods[item]
    return Fraction(LEAST_FROZEN if food.basis == "g" and food.department != "spices" else 0)


def item_of(house, name):
    sources = [stock_source(house, i) for i, lot in enumerate(house.lots)
               if house.item_of(lot.food) == name and lot.last >= house.first]
    for index, stop in enumerate(house.stops):
        for number, offer in enumerate(house.shops[stop.shop].offers):
            if house.item_of(offer.food) == name and house.may_buy(offer.food, stop.shop) and holds(offer, stop.day):
                sources.append(bought_source(house, index, number, offer))
    needs = needs_of(house, name)
    total = sum((need.amount for need in needs), Fraction(0))
    return Item(name, needs, sources, usual_price(house, name), missing_at_all(house, name),
                total * KEPT_DAYS / house.days, house.last + KEPT_AFTER, tuple(house.room), least_frozen(house, name))


def items_of(house):
    """All items that are used. What is on hand of others is no part of the account."""
    return [item_of(house, name) for name in dict.fromkeys(house.item_of(use.food) for use in house.uses)]


def room_limits(house):
    """Millilitres by (place, day) for the night after the day, where there is a limit: for what is used. Where the
    stock alone takes more than there is, that much is the limit; what nothing uses stands there till its last day."""
    used = {house.item_of(use.food) for use in house.uses}
    limits = {}
    for place, room in house.room.items():
        for day in range(house.first, house.last + 1):
            stock = other = Fraction(0)
            for lot in house.lots:
                if lot.place == place and lot.last >= day:
                    item = house.item_of(lot.food)
                    if item in used:
                        stock += lot.amount * house.worth(lot.food) * room_of(house, item)
                    else:
                        other += lot.amount * house.foods[lot.food].ml
            limits[place, day] = max(room, stock + other) - other
    return limits
