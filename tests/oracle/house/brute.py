"""The least value of the objective for a tiny house by trying everything: a second oracle that shares
with the first only what a source is (items.py) and what a plan costs (account.py).

It walks through the needs as a cook would and obeys the rules of use as they are written; what the first oracle says
in rows is acted out here.
"""
import itertools
from dataclasses import dataclass, replace
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
    """All ways of using what there is of one item, the needs in their order."""

    def __init__(self, item):
        self.item = item

    def ways(self, counts):
        """Every plan with so many packs of each bought source."""
        start = []
        for source in self.item.sources:
            packs = source.packs if source.packs is not None else counts.get(source.name, 0)
            if packs:
                start.append(Held(source, source.size * packs))
        yield from self.serve(0, self.item.needs[0].amount if self.item.needs else 0, start, [])

    def serve(self, i, wanted, house, takings):
        """`wanted`: what need i still lacks."""
        if i == len(self.item.needs):
            yield self.plan(house, takings)
            return
        if wanted == 0:
            after = self.item.needs[i + 1].amount if i + 1 < len(self.item.needs) else 0
            yield from self.serve(i + 1, after, house, takings)
            return
        need = self.item.needs[i]
        is_open = [held for held in house if self.is_open_for(held, need)]
        if is_open:
            until = min(held.until for held in is_open)
            ways = [(held, held, "unfrozen") for held in is_open if held.until == until]
        else:
            ways = list(self.others(house, need))
            freezing = all(how != "unfrozen" and held.source.thawed is None for held, _, how in ways)
            if not ways or freezing and self.item.takes_room:  # it goes without
                after = self.item.needs[i + 1].amount if i + 1 < len(self.item.needs) else 0
                yield from self.serve(i + 1, after, house, takings)
        for held, after, how in ways:
            amount = min(wanted, after.left)
            rest = [one for one in house if one is not held]
            if held.opened is None and after.opened is not None and held.left > after.left:
                rest.append(replace(held, left=held.left - after.left))  # the unopened ones
            if after.left > amount:
                rest.append(replace(after, left=after.left - amount))
            yield from self.serve(i, wanted - amount, rest, takings + [self.part(after, amount, i, how)])

    @staticmethod
    def is_open_for(held, need):
        return held.opened is not None and need.day <= held.until and not (need.fresh and held.thawed)

    def others(self, house, need):
        """(what is held, as it is when it serves, how): of each kind and way what goes off first."""
        item, found = self.item, []
        for held in house:
            source = held.source
            if not source.is_there(need):
                continue
            if held.opened is not None:
                if held.frozen_until is not None and not need.fresh and need.day <= held.frozen_until:
                    found.append(((held.frozen_until, held.until), held, held, "portion"))
                continue
            if item.serves_cool(source, need):
                found.append((item.cool_rank(source), held, self.opened(held, need, "cool"), "unfrozen"))
            if item.serves_frozen(source, need):
                ways = ("loose",) if source.opened is None else ("whole", "portion at home")
                found += [(item.frozen_rank(source), held, self.opened(held, need, how), how) for how in ways]
        for rank, held, after, how in found:
            if not any(other_how == how and other.kind == held.kind and other_rank < rank
                       for other_rank, other, _, other_how in found):
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
                       frozen_until=None if source.frozen is None else day + source.frozen)

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
        for held in house:
            source = held.source
            if held.opened is not None:
                if held.until >= self.item.end:
                    plan.kept.append(replace(self.part(held, held.left, None, "unfrozen"), need=None))
            elif self.item.keeps_cool(source):
                plan.kept.append(Part(source.name, held.left))
            elif self.item.keeps_frozen(source):
                plan.kept.append(Part(source.name, held.left, True, source.day))
        return plan


def all_plans(house, item, most):
    """Of one item, the cheapest of those that are alike in what is bought and in the room they take."""
    bought = [source for source in item.sources if source.offer is not None]
    cook, out = Cook(item), {}
    ranges = [range(min(most, source.offer.limit if source.offer.limit is not None else most) + 1) for source in bought]
    for numbers in itertools.product(*ranges):
        counts = {source.name: n for source, n in zip(bought, numbers) if n}
        for plan in cook.ways(counts):
            plan.packs = counts
            for source in item.sources:
                there = source.size * (source.packs if source.packs is not None else counts.get(source.name, 0))
                gone = sum(one.amount for one in plan.takings + plan.kept if one.source == source.name)
                plan.wasted[source.name] = there - gone
            room = account.room_taken(house, [item], [plan])
            key = numbers, tuple(sorted((place, amount) for place, amount in room.items() if place[0] in house.room))
            cost = account.account(house, [item], [plan])["total"]
            if key not in out or cost < out[key][0]:
                out[key] = cost, plan
    return [plan for _, plan in out.values()]


def best(house, most=3):
    """The least total, in cents. No more than `most` packs of a line are tried."""
    items = items_of(house)
    found = None
    for plans in itertools.product(*(all_plans(house, item, most) for item in items)):
        total = account.account(house, items, plans)["total"]
        if (found is None or total < found) and not account.broken(house, items, plans):
            found = total
    return found
