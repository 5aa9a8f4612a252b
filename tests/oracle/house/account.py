"""A way of shopping and eating, and what it costs by the account; what it breaks, if anything."""
from collections import defaultdict
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Dict, List, Optional

from items import room_limits
from money import line_money
from things import FOREVER

MISSING_COSTS = 20  # times the usual price


@dataclass
class Taking:
    """A need is served from a source: unfrozen, or frozen at home on the day it came. A pack that is
    thawed as a whole leaves the freezer on the day `thawed`, other frozen food when it is used; None:
    it is not known whether it is thawed as a whole (packs_fit finds out)."""

    source: str
    need: int
    amount: Fraction
    frozen: bool
    thawed: Optional[int] = FOREVER


@dataclass
class Keeping:
    """What is left of a source at the end and still good."""

    source: str
    amount: Fraction
    frozen: bool
    thawed: Optional[int] = FOREVER


@dataclass
class ItemPlan:
    """All that is decided of one item. Amounts by source."""

    packs: Dict[str, int] = field(default_factory=dict)  # bought: packs or steps
    takings: List[Taking] = field(default_factory=list)
    kept: List[Keeping] = field(default_factory=list)
    wasted: Dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))


TERMS = ("prices", "tax", "cash_back", "preference", "reductions", "credit", "stops", "wasted", "kept", "lacking",
         "missing", "handling")
GIVEN_BACK = ("cash_back", "reductions", "credit", "kept")


def total_of(terms):
    return sum((-terms[name] if name in GIVEN_BACK else terms[name] for name in TERMS), Fraction(0))


def stops_made(house, plans):
    bought = {int(name[4:].split("offer")[0]) for plan in plans for name, packs in plan.packs.items() if packs}
    return [i for i, stop in enumerate(house.stops) if stop.always or i in bought]


def tills(house, items, plans):
    """By stop: the sum that its receipt says, with tax."""
    out = defaultdict(int)
    for item, plan in zip(items, plans):
        for source in item.sources:
            if plan.packs.get(source.name):
                money = line_money(house, source.offer, source.day, plan.packs[source.name])
                out[source.stop] += money.till + money.till_tax
    return out


def short(item, plan):
    """By need: what of it is not served."""
    served = defaultdict(Fraction)
    for taking in plan.takings:
        served[taking.need] += taking.amount
    return [need.amount - served[i] for i, need in enumerate(item.needs)]


def account(house, items, plans):
    """The terms in cents, exact for exact amounts, and their total."""
    terms = dict.fromkeys(TERMS, Fraction(0))
    for item, plan in zip(items, plans):
        for source in item.sources:
            packs = plan.packs.get(source.name, 0)
            if packs:
                money = line_money(house, source.offer, source.day, packs)
                terms["prices"] += money.price
                terms["tax"] += money.tax
                terms["cash_back"] += money.cash_back
                terms["preference"] += money.preference
        kept = sum((keeping.amount for keeping in plan.kept), Fraction(0))
        terms["kept"] += house.kept_worth * item.usual * min(kept, item.cap)
        terms["wasted"] += house.waste_cost * item.usual * sum(plan.wasted.values(), Fraction(0))
        terms["missing"] += MISSING_COSTS * item.usual * sum(short(item, plan), Fraction(0))
    till = tills(house, items, plans)
    to_pay = defaultdict(Fraction)
    for stop, amount in till.items():
        shop = house.shops[house.stops[stop].shop]
        off = shop.off if shop.over is not None and amount >= shop.over else Fraction(0)
        terms["reductions"] += off
        to_pay[shop.slug] += amount - off
    for shop, amount in to_pay.items():
        terms["credit"] += min(house.shops[shop].credit, amount)
    terms["stops"] = sum((house.stops[i].cost for i in stops_made(house, plans)), Fraction(0))
    terms["total"] = total_of(terms)
    return terms


def room_taken(house, items, plans):
    """Millilitres by (place, day), for the night after the day."""
    taken = defaultdict(Fraction)

    def stand(source, what, until):
        if what.frozen and what.thawed is None:
            return
        for day in range(source.day, until):
            place = "freezer" if what.frozen and day < what.thawed else source.place
            taken[place, day] += what.amount * source.ml

    for item, plan in zip(items, plans):
        sources = {source.name: source for source in item.sources}
        for taking in plan.takings:
            stand(sources[taking.source], taking, item.needs[taking.need].day)
        for keeping in plan.kept:
            stand(sources[keeping.source], keeping, house.last + 1)
    return taken


def was_thawed(source, what):
    """Whether it is (or may be) of a pack that was thawed as a whole, which is good longer than frozen."""
    return what.frozen and source.opened is not None and (what.thawed is None or what.thawed <= source.frozen_good)


def broken(house, items, plans, small=Fraction(1, 1000)):
    """What the plans break, as sentences, packs with an opened life aside (packs.py). `small` is how
    much an amount may be off (a reader may have rounded it)."""
    out = []
    for item, plan in zip(items, plans):
        used = defaultdict(Fraction)
        sources = {source.name: source for source in item.sources}
        for name, packs in plan.packs.items():
            limit = sources[name].offer.limit
            if packs < 0 or (limit is not None and packs > limit):
                out.append(f"{item.name}: {packs} packs of {name}, the limit is {limit}")
        for taking in plan.takings:
            source, need = sources[taking.source], item.needs[taking.need]
            used[taking.source] += taking.amount
            serves = source.serves_frozen(need) if taking.frozen else source.serves_unfrozen(need)
            if not serves and not (was_thawed(source, taking) and not need.fresh):
                out.append(f"{item.name}: {source.name} does not serve need {taking.need}"
                           + (" frozen" if taking.frozen else ""))
        for keeping in plan.kept:
            source = sources[keeping.source]
            used[keeping.source] += keeping.amount
            good = item.keeps_frozen(source) if keeping.frozen else item.keeps_unfrozen(source)
            if keeping.amount > small and not good and not was_thawed(source, keeping):
                out.append(f"{item.name}: {source.name} is not good long enough to be kept")
        for name, source in sources.items():
            there = source.size * (source.packs if source.packs is not None else plan.packs.get(name, 0))
            used_up = used[name] + plan.wasted[name]
            if abs(there - used_up) > small:
                out.append(f"{item.name}: of {name} there is {float(there)}, used, kept and wasted {float(used_up)}")
        for i, missing in enumerate(short(item, plan)):
            if missing < -small:
                out.append(f"{item.name}: need {i} gets {float(-missing)} too much")
    limits = room_limits(house)
    for (place, day), taken in sorted(room_taken(house, items, plans).items()):
        limit = limits.get((place, day))
        if limit is not None and taken > limit + 2 * small:
            out.append(f"{place}, night of day {day - house.first + 1}: {float(taken)} ml of {float(limit)}")
    return out
