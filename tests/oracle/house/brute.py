"""The least value of the objective for a tiny house by trying everything: a second oracle that shares
with the first only what a source is (items.py) and what a plan costs (account.py).

It walks through the needs as a cook would and obeys the rules of use as they are written; what the first oracle says
in rows is acted out here.
"""
import itertools
import math
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Optional

import account
from account import Part
from items import items_of


@dataclass(frozen=True)
class Held:
    """What is left of something: loose, or `packs` unopened ones, or an opened pack."""

    source: object
    left: object
    opened: Optional[int] = None  # the day
    thawed: bool = False  # it was frozen whole
    until: Optional[int] = None  # opened: last day unfrozen
    frozen_until: Optional[int] = None  # opened: last day of a portion

    @property
    def kind(self):
        return None if self.source.opened is None else (self.source if self.source.by_weight else self.source.size)


class Cook:
    """All ways of buying and using one item, stop by stop, the needs in their order."""

    def __init__(self, item, most):
        self.item = item
        self.there_before = {source.name: source.thawed is not None for source in item.sources}  # in the freezer
        self.most = most  # packs of a line that are tried
        stops = {}
        for source in item.sources:
            if source.offer is not None:
                stops.setdefault(source.stop, []).append(source)
        # Packs are bought first, then something is weighed out.
        self.stops = [sorted(found, key=lambda source: source.by_weight)
                      for _, found in sorted(stops.items(), key=lambda one: (one[1][0].day, one[1][0].clock))]
        self.order = {source.name: n for n, source in enumerate(
            sorted((source for source in item.sources if source.lot is not None), key=item.came) + [source for stop in self.stops for source in stop])}

    def ways(self):
        """(packs bought by source, plan)."""
        stock = [Held(source, source.size * source.packs) for source in self.item.sources if source.lot is not None]
        yield from self.until(0, 0, stock, [], {})

    def until(self, stop, i, house, takings, counts, lent=()):
        """Serves the needs from i on that are before the stop, and goes on from there."""
        end = self.first_after(stop)
        for after, taken, lends in self.serve(i, end, self.must(i), house, takings, lent):
            if stop == len(self.stops):
                yield counts, self.plan(after, taken + [part for _, part in lends])
                continue
            for bought, more in self.buy(stop, 0, after, counts):
                yield from self.until(stop + 1, end, bought, taken, more, lends)

    def first_after(self, stop):
        """The first need that the stop is in time for."""
        needs = self.item.needs
        if stop == len(self.stops):
            return len(needs)
        source = self.stops[stop][0]
        return next((i for i, need in enumerate(needs) if source.is_there(need)), len(needs))

    def must(self, i):
        return self.item.needs[i].must if i < len(self.item.needs) else 0

    def amount(self, i):
        return self.item.needs[i].amount if i < len(self.item.needs) else 0

    def buy(self, stop, n, house, counts):
        """(what is held then, packs bought) by every choice from the stop's n-th offer on."""
        if n == len(self.stops[stop]):
            yield house, counts
            return
        source = self.stops[stop][n]
        limit = source.offer.limit if source.offer.limit is not None else 10**9
        if source.by_weight:
            choices = [(0, 0)] + self.weighed(stop, source, house, limit)
        else:
            choices = [(packs, packs * source.size) for packs in range(min(limit, self.most(source)) + 1)]
        for packs, amount in choices:
            if packs:
                yield from self.buy(stop, n + 1, house + [Held(source, amount)], {**counts, source.name: packs})
            else:
                yield from self.buy(stop, n + 1, house, counts)

    def weighed(self, stop, source, house, limit):
        """(steps, amount): what the needs up to one of them take of it, with what is good unfrozen first, or with all that is
        held first."""
        first = self.first_after(stop)
        plenty = min(limit * source.size, source.size * (self.item.need // source.size + 1))
        sums = set()
        for last in (False, True):
            held, taken = house + [Held(source, plenty)], Fraction(0)
            for i in range(first, len(self.item.needs)):
                held, part = self.served(i, held, source if last else None, source)
                taken += part
                sums.add(taken)
        steps = {}
        for amount in sorted(sums):
            if amount > 0:
                steps[math.ceil(amount / source.size)] = amount
        return list(steps.items())

    def served(self, i, house, last, source):
        """(what is held after need i, what it takes of the source), without a choice."""
        wanted, taken = self.amount(i), Fraction(0)
        while wanted > 0:
            ways = self.choices(i, house, last)
            if not ways:
                break
            ways.sort(key=lambda way: (last is not None and way[0].source is last, way[2] != "unfrozen",
                                       self.order[way[0].source.name]))
            held, after, how = ways[0]
            amount = min(wanted, after.left)
            taken += amount if after.source is source else 0
            house, wanted = self.after(house, held, after, amount), wanted - amount
        return house, taken

    def serve(self, i, end, wanted, house, takings, lent):
        """(what is held, takings, what is lent) by every way of serving the needs from i to the end; `wanted` is what need i
        must have and lacks. Lent is what a need takes beyond that: (what is held, the taking)."""
        if i == end:
            yield house, takings, lent
        elif wanted == 0 and self.takes_too_little(i, takings):
            return
        elif wanted == 0:
            yield from self.lend(i, end, self.item.needs[i].give, house, takings, lent)
        else:
            if not self.enough_frozen(i, self.frozen(i, takings) + self.could_be_frozen(i, wanted, house)):
                ways = [way for way in self.choices(i, house)
                        if way[2] in ("unfrozen", "open") or way[0].source.thawed is not None]
            else:
                ways = self.choices(i, house)
            freezing = all(how not in ("unfrozen", "open") and held.source.thawed is None for held, _, how in ways)
            back = [one for one in lent if self.can_come_back(one[0], i)] if not ways or freezing else []
            if (not ways or freezing) and not back and not self.takes_too_little(i, takings):  # it goes without
                yield from self.serve(i + 1, end, self.must(i + 1), house, takings, lent)
            for one in back:
                held, part = one
                amount = min(wanted, part.amount)
                rest = [(held, replace(part, amount=part.amount - amount))] if part.amount > amount else []
                yield from self.serve(i, end, wanted - amount, house, takings + [replace(part, amount=amount, need=i)],
                                      tuple([other for other in lent if other is not one] + rest))
            for held, after, how in ways:
                amount = min(wanted, after.left)
                yield from self.serve(i, end, wanted - amount, self.after(house, held, after, amount),
                                      takings + [self.part(after, amount, i, how)], lent)

    def lend(self, i, end, wanted, house, takings, lent):
        """Need i has what it must have; it takes what it can do without from what is open or loose."""
        ways = [(held, after, how) for held, after, how in self.choices(i, house)
                if how == "open" or how == "unfrozen" and held.source.opened is None
                or how in ("portion", "loose") and self.frozen(i, takings) > 0]
        freezing = all(how in ("portion", "loose") and held.source.thawed is None for held, _, how in ways)
        if wanted == 0 or not ways or freezing:
            yield from self.serve(i + 1, end, self.must(i + 1), house, takings, lent)
        for held, after, how in ways if wanted else []:
            amount = min(wanted, after.left)
            yield from self.lend(i, end, wanted - amount, self.after(house, held, after, amount), takings,
                                 lent + ((after, self.part(after, amount, i, how)),))

    @staticmethod
    def frozen_parts(i, takings):
        """What is left of a pack that was thawed for an earlier need is open."""
        earlier = {(part.source, part.thawed) for part in takings if part.thawed is not None and part.need < i}
        return [part for part in takings if part.need == i and part.frozen and (part.source, part.thawed) not in earlier]

    def frozen(self, i, takings):
        return sum(part.amount for part in self.frozen_parts(i, takings))

    def could_be_frozen(self, i, wanted, house):
        """At most; of what can serve it, what goes off first does."""
        need = self.item.needs[i]
        return min(wanted, sum(held.left for held in house if any(how != "unfrozen" for *_, how in self.others([held], need))))

    def enough_frozen(self, i, amount):
        """To be taken from the freezer: the least, if some of it was frozen after the beginning."""
        return amount >= min(self.item.least_frozen, self.item.needs[i].must)

    def takes_too_little(self, i, takings):
        here = any(not self.there_before[part.source] for part in self.frozen_parts(i, takings))
        return here and not self.enough_frozen(i, self.frozen(i, takings))

    def can_come_back(self, held, i):
        need = self.item.needs[i]
        return self.is_open_for(held, need) if held.opened is not None else self.item.serves_cool(held.source, need)

    def choices(self, i, house, last=None):
        """(what is held, as it is when it serves, how)."""
        need = self.item.needs[i]
        is_open = [held for held in house if self.is_open_for(held, need)]
        if is_open:
            until = min(held.until for held in is_open)
            return [(held, held, "open") for held in is_open if held.until == until]
        return list(self.others(house, need, last))

    @staticmethod
    def after(house, held, used, amount):
        rest = [one for one in house if one is not held]
        if held.opened is None and used.opened is not None and held.left > used.left:
            rest.append(replace(held, left=held.left - used.left))  # the unopened ones
        if used.left > amount:
            rest.append(replace(used, left=used.left - amount))
        # What is left of packs that were opened on one day is one thing.
        together = {}
        for one in rest:
            if one.opened is not None:
                one = replace(one, left=one.left + sum(other.left for other in together.pop(replace(one, left=0), [])))
            together.setdefault(replace(one, left=0), []).append(one)
        return [one for some in together.values() for one in some]

    @staticmethod
    def is_open_for(held, need):
        return held.opened is not None and need.earliest <= held.until and not (need.fresh and held.thawed)

    def others(self, house, need, last=None):
        """Of each kind and way what goes off first, where what is frozen for want of room stands apart (or at all events after the rest of it: `last`)."""
        item, found = self.item, []
        for held in house:
            source = held.source
            if not source.is_there(need):
                continue
            if held.opened is not None:
                if held.frozen_until is not None and not need.fresh and need.earliest <= held.frozen_until:
                    found.append(((held.frozen_until, held.until), held, held, "portion", False))
                continue
            if item.serves_cool(source, need):
                found.append((item.cool_rank(source), held, self.opened(held, need, "cool"), "unfrozen", False))
            if item.serves_frozen(source, need):
                ways = ("loose",) if source.opened is None else ("whole", "portion at home")
                for_room = item.serves_cool(source, need)
                found += [(item.frozen_rank(source), held, self.opened(held, need, how), how, for_room) for how in ways]
        for rank, held, after, how, for_room in found:
            key = (last is not None and held.source is last, rank, item.came(held.source))
            if not any((other_how, other_for_room) == (how, for_room) and other.kind == held.kind
                       and (last is not None and other.source is last, other_rank, item.came(other.source)) < key
                       for other_rank, other, _, other_how, other_for_room in found):
                yield held, after, how

    def opened(self, held, need, how):
        source = held.source
        if source.opened is None:
            return held
        pack = replace(held, left=held.left if source.by_weight else source.size)
        if how == "whole":
            return replace(pack, opened=need.day, thawed=True, until=need.day + source.opened)
        day = source.day if how == "portion at home" else need.day
        return replace(pack, opened=day, until=min(day + source.opened, source.good),
                       frozen_until=None if source.portions is None else day + source.portions)

    @staticmethod
    def part(held, amount, i, how):
        source = held.source
        if how in ("portion", "portion at home"):
            return Part(source.name, amount, True, held.opened, need=i)
        if how == "loose":
            return Part(source.name, amount, True, source.day, need=i)
        if held.thawed:
            return Part(source.name, amount, True, source.day, held.opened, i)
        return Part(source.name, amount, need=i)

    def plan(self, house, takings):
        plan = account.ItemPlan(takings=list(takings))
        to_freeze = [held for held in house if held.opened is None and self.item.keeps_frozen(held.source)
                     and not self.item.keeps_cool(held.source) and held.source.thawed is None]
        too_little = sum(held.left for held in to_freeze) < self.item.least_frozen
        for held in house:
            source = held.source
            if too_little and any(held is one for one in to_freeze):
                plan.wasted[source.name] += held.left
                continue
            if held.opened is not None and held.until >= self.item.end:
                plan.kept.append(replace(self.part(held, held.left, None, "open"), need=None))
            elif held.opened is None and self.item.keeps_cool(source):
                plan.kept.append(Part(source.name, held.left))
            elif held.opened is None and self.item.keeps_frozen(source):
                plan.kept.append(Part(source.name, held.left, True, source.day))
            else:
                plan.wasted[source.name] += held.left
        return plan


class TooMany(Exception):
    pass


def all_plans(house, item, most, ways=10**9):
    """Of one item, the cheapest of those that are alike in what is bought and in the room they take."""
    out = {}
    for tried, (counts, plan) in enumerate(Cook(item, most).ways()):
        if tried > ways:
            raise TooMany
        plan.packs = counts
        room = account.room_taken(house, [item], [plan])
        key = tuple(sorted(counts.items())), tuple(sorted((place, amount) for place, amount in room.items() if place[0] in house.room))
        cost = account.account(house, [item], [plan])["total"]
        if key not in out or cost < out[key][0]:
            out[key] = cost, plan
    return [plan for _, plan in out.values()]


def best(house, most=lambda source: 3, ways=10**9):
    """The least total, in cents. No more than `most` packs of a line are tried, and no more than so many ways."""
    items = items_of(house)
    plans = [all_plans(house, item, most, ways) for item in items]
    if math.prod(len(some) for some in plans) > ways:
        raise TooMany
    found = None
    for some in itertools.product(*plans):
        total = account.account(house, items, some)["total"]
        if (found is None or total < found) and not account.broken(house, items, some):
            found = total
    return found
