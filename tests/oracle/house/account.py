"""A way of shopping and eating, and what it costs by the account; what it breaks, if anything (how packs are used
and in which order aside: that is rules.py's)."""
import math
from collections import defaultdict
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Dict, List, Optional

from items import room_limits
from money import LACKING_COSTS, MISSING_COSTS, line_money

CRUMB = Fraction(1, 500)  # less than that is not missing: amounts are rounded to thousandths


@dataclass
class Part:
    """Some of a source: for a need, or kept. If it is frozen, it is from the day `since` to the day `thawed`
    (a pack that is thawed as a whole) or to its use."""

    source: str
    amount: Fraction
    frozen: bool = False
    since: Optional[int] = None
    thawed: Optional[int] = None
    need: Optional[int] = None  # None: kept
    more: Fraction = Fraction(0)  # that it counts for, as a can that is somewhat smaller than the usual one


@dataclass
class ItemPlan:
    """All that is decided of one item. Amounts by source."""
    slivers: Fraction = Fraction(0)  # left where they were, since a use counts more of another purchase for them

    packs: Dict[str, int] = field(default_factory=dict)  # bought: packs or steps
    takings: List[Part] = field(default_factory=list)
    kept: List[Part] = field(default_factory=list)
    wasted: Dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))


TERMS = ("prices", "tax", "cash_back", "preference", "unpriced", "reductions", "credit", "stops", "wasted", "kept", "lacking",
         "missing", "handling")
GIVEN_BACK = ("cash_back", "reductions", "credit", "kept")


def total_of(terms):
    return sum((-terms[name] if name in GIVEN_BACK else terms[name] for name in TERMS), Fraction(0))


def stops_made(house, plans):
    bought = {int(name[4:].split("offer")[0]) for plan in plans for name, packs in plan.packs.items() if packs}
    return [i for i, stop in enumerate(house.stops) if stop.always or i in bought]


def lines(house, items, plans):
    """(source, packs, money) of everything bought."""
    for item, plan in zip(items, plans):
        for source in item.sources:
            packs = plan.packs.get(source.name, 0)
            if packs:
                yield source, packs, line_money(house, source.offer, source.day, packs)


def tills(house, items, plans):
    """By stop: the sum that its receipt says, with tax."""
    out = defaultdict(int)
    for source, _, money in lines(house, items, plans):
        out[source.stop] += money.till + money.till_tax
    return out


def sure(house, items, plans):
    """By stop: what is sure to count towards a reduction and a credit."""
    out = defaultdict(Fraction)
    for source, _, money in lines(house, items, plans):
        out[source.stop] += money.sure
    return out


def given_off(house, sums):
    """(reductions, credit by shop) of the sums by stop."""
    reductions, to_pay = Fraction(0), defaultdict(Fraction)
    for stop, amount in sums.items():
        shop = house.shops[house.stops[stop].shop]
        off = shop.off if shop.over is not None and amount >= shop.over else Fraction(0)
        reductions += off
        to_pay[shop.slug] += amount - off
    return reductions, {shop: min(house.shops[shop].credit, amount) for shop, amount in to_pay.items()}


def short(item, plan):
    """By need: what of it is not served."""
    served = defaultdict(Fraction)
    for taking in plan.takings:
        served[taking.need] += taking.amount + taking.more
    return [need.amount - served[i] for i, need in enumerate(item.needs)]


def lacking_and_missing(item, plan):
    """By need: what it goes without and can do without, and what is missing beyond that."""
    pairs = [(min(max(amount, Fraction(0)), need.give), max(amount - need.give, Fraction(0)))
             for amount, need in zip(short(item, plan), item.needs)]
    return [lacking for lacking, _ in pairs], [missing for _, missing in pairs]


def lent_by(item, plan):
    """By need: what it takes beyond what it must have. It takes no room: that much of what stood longest is left out."""
    return [max(need.give - lacking, Fraction(0)) for need, lacking in zip(item.needs, lacking_and_missing(item, plan)[0])]


def handled(item, plan):
    """How many needs are served from the freezer: of a pack that is thawed as a whole, the one for which it is thawed."""
    sources = {source.name: source for source in item.sources}
    out, thawed = set(), defaultdict(Fraction)  # by source and day: what is left of the packs thawed so far
    for part in sorted(plan.takings, key=lambda part: part.need):
        if not part.frozen:
            continue
        source, pack = sources[part.source], (part.source, part.thawed)
        if part.thawed is None:
            out.add(part.need)
        elif part.amount > thawed[pack] + CRUMB:
            size = source.size * plan.packs[source.name] if source.by_weight else source.size
            thawed[pack] += size * math.ceil((part.amount - thawed[pack] - CRUMB) / size)
            out.add(part.need)
        thawed[pack] -= part.amount
    return len(out)


def account(house, items, plans, sums=sure):
    """The terms in cents, exact for exact amounts, and their total. `sums`: what counts towards reductions and
    credits, by stop."""
    terms = dict.fromkeys(TERMS, Fraction(0))
    for _, _, money in lines(house, items, plans):
        terms["prices"] += money.price
        terms["tax"] += money.tax
        terms["cash_back"] += money.cash_back
        terms["preference"] += money.preference
    for item, plan in zip(items, plans):
        kept = sum((keeping.amount for keeping in plan.kept), Fraction(0))
        terms["kept"] += house.kept_worth * item.usual * min(kept, item.cap)
        terms["wasted"] += house.waste_cost * item.usual * sum(plan.wasted.values(), Fraction(0))
        lacking, lacks = lacking_and_missing(item, plan)
        terms["lacking"] += LACKING_COSTS * item.usual * sum(lacking, Fraction(0))
        lacks = [amount for amount in lacks if amount > CRUMB]
        terms["missing"] += MISSING_COSTS * item.usual * sum(lacks, Fraction(0)) + item.missing * len(lacks)
        terms["handling"] += house.handling * handled(item, plan)
    terms["reductions"], credits = given_off(house, sums(house, items, plans))
    for shop, credit in credits.items():
        terms["credit"] += credit
        terms["cash_back"] -= house.shops[shop].cash_back * credit  # what it pays earns nothing
    terms["stops"] = sum((house.stops[i].cost for i in stops_made(house, plans)), Fraction(0))
    terms["total"] = total_of(terms)
    return terms


def room_taken(house, items, plans):
    """Millilitres by (place, day), for the night after the day."""
    taken = defaultdict(Fraction)

    def stand(source, part, until):
        for day in range(source.day, until):
            frozen = part.frozen and part.since <= day < (until if part.thawed is None else part.thawed)
            taken["freezer" if frozen else source.place, day] += part.amount * source.ml

    for item, plan in zip(items, plans):
        sources = {source.name: source for source in item.sources}
        lent = lent_by(item, plan)
        for part in sorted(plan.takings, key=lambda part: sources[part.source].day):
            without = min(part.amount, lent[part.need])
            lent[part.need] -= without
            stand(sources[part.source], replace(part, amount=part.amount - without), item.needs[part.need].day)
        for part in plan.kept:
            stand(sources[part.source], part, house.last + 1)
    return taken


def good_for(item, source, part, need):
    """Whether a part of the source can serve the need, as far as can be seen without its pack."""
    if not part.frozen:
        return item.serves_cool(source, need)
    if not source.is_there(need) or need.fresh:
        return False
    if source.frozen_good is None and (source.opened is None or part.thawed is not None):
        return False
    if source.opened is None:
        return need.earliest <= source.frozen_good
    if part.thawed is not None:
        return part.thawed <= source.frozen_good and part.thawed <= need.day <= part.thawed + source.opened
    if source.portions is None:
        return False
    return source.day <= part.since <= source.good and need.day <= part.since + source.portions


def good_to_keep(item, source, part):
    if not part.frozen:
        return item.keeps_cool(source)
    return item.keeps_frozen(source) or part.thawed is not None


def broken(house, items, plans, small=Fraction(1, 1000)):
    """What the plans break, as sentences. `small` is how much an amount may be off (a reader may have rounded it)."""
    out = []
    for item, plan in zip(items, plans):
        out += [f"{item.name}: {line}" for line in broken_by(item, plan, small)]
    limits = room_limits(house)
    for (place, day), taken in sorted(room_taken(house, items, plans).items()):
        limit = limits.get((place, day))
        if limit is not None and taken > limit + 4 * small:
            out.append(f"{place}, night of day {day - house.first + 1}: {float(taken)} ml of {float(limit)}")
    return out


def broken_by(item, plan, small):
    used = defaultdict(Fraction)
    sources = {source.name: source for source in item.sources}
    for name, packs in plan.packs.items():
        limit = sources[name].offer.limit
        if packs < 0 or (limit is not None and packs > limit):
            yield f"{packs} packs of {name}, the limit is {limit}"
    for part in plan.takings + plan.kept:
        source = sources[part.source]
        used[part.source] += part.amount
        if part.need is not None and not good_for(item, source, part, item.needs[part.need]):
            yield f"{source.name} does not serve need {part.need}" + (" frozen" if part.frozen else "")
        if part.need is None and part.amount > small and not good_to_keep(item, source, part):
            yield f"{source.name} is not good long enough to be kept"
    for name, source in sources.items():
        packs = source.packs if source.packs is not None else plan.packs.get(name, 0)
        there, used_up = source.size * packs, used[name] + plan.wasted[name]
        # What the scale rounds up to its next step is eaten with the rest.
        eaten = source.size if source.by_weight else 0
        if not -small - small * packs / 100 < there - used_up < eaten + small + small * packs / 100:
            yield f"of {name} there is {float(there)}, used, kept and wasted {float(used_up)}"
        keeps = item.keeps_cool(source) or item.keeps_frozen(source)
        freezes = not item.keeps_cool(source) and source.thawed is None
        if source.opened is None and keeps and plan.wasted[name] > small + plan.slivers and not (
                freezes and frozen_rest(item, plan, True) < item.least_frozen):
            yield f"{float(plan.wasted[name])} of {name} is thrown away though it is good"
    if small < frozen_rest(item, plan, False) < item.least_frozen - small:
        yield f"only {float(frozen_rest(item, plan, False))} is frozen to be kept"
    for i, (missing, need) in enumerate(zip(short(item, plan), item.needs)):
        if missing < -small:
            yield f"need {i} gets {float(-missing)} too much"
        if need.give and missing > small:
            for name in left_over_for(item, plan, need, small):
                yield f"need {i} goes without {float(missing)} though some of {name} is left"
        parts = [part for part in plan.takings if part.need == i and part.frozen]
        frozen = sum(part.amount + part.more for part in parts)
        # What is left of a pack that was thawed for an earlier need is open.
        frozen_here = any(part.thawed is None and sources[part.source].thawed is None for part in parts)
        if frozen_here and frozen < min(item.least_frozen, need.must) - small:
            yield f"need {i} takes only {float(frozen)} from the freezer"


def frozen_rest(item, plan, wasted):
    """What has to be frozen, unopened, to be kept: so much is kept, or, `wasted`, thrown away although it could be."""
    out = Fraction(0)
    for source in item.sources:
        if item.keeps_frozen(source) and not item.keeps_cool(source) and source.thawed is None:
            if wasted:
                out += plan.wasted[source.name] if source.opened is None else 0
            out += sum(part.amount for part in plan.kept
                       if part.source == source.name and part.frozen and part.thawed is None)
    return out


def left_over_for(item, plan, need, small):
    """Loose things of which some is left in the end that could have served the need unfrozen."""
    for source in item.sources:
        rest = plan.wasted[source.name] + sum(part.amount for part in plan.kept if part.source == source.name)
        if source.opened is None and item.serves_cool(source, need) and rest > 2 * small:
            yield source.name
