"""The least value of the objective for a tiny house by trying everything: a second oracle that shares
with the first only what a source is (items.py) and what a plan costs (account.py).

It walks through the needs as a cook would, in whole units of the greatest common divisor of all
amounts (and limits of room), and obeys the rules of use as they are written; what the first oracle says in
rows is acted out here.
"""
import itertools
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Optional

import account
from account import Part
from items import items_of
from opened import divisor

SEALED, WHOLE, PORTIONS, CLOSED = "sealed", "frozen whole", "portions", "never opened"


@dataclass(frozen=True)
class Pack:
    source: object
    fate: str
    left: Fraction
    number: int = 0  # tells packs apart
    portions: tuple = ()  # by need
    opened: Optional[int] = None  # the day
    closes: Optional[int] = None  # last good day, once it is open

    @property
    def is_open(self):
        return self.closes is not None

    def open_serves(self, need):
        good = self.is_open and self.left > 0 and need.day <= self.closes and self.source.is_there(need)
        return good and not (need.fresh and self.fate == WHOLE)

    def could_be_opened_for(self, need):
        """Also what is not to be opened: it might."""
        if self.is_open:
            return False
        return self.source.serves_frozen(need) if self.fate == WHOLE else self.source.serves_unfrozen(need)

    def can_be_opened_for(self, need):
        return self.fate != CLOSED and self.could_be_opened_for(need)

    def opened_for(self, need):
        life = need.day + self.source.opened
        return replace(self, opened=need.day, closes=life if self.fate == WHOLE else min(life, self.source.good))


def splits(total, most, unit):
    """All ways to give each of len(most) takers up to most[i], in units, of no more than the total."""
    if not most:
        yield ()
        return
    give = Fraction(0)
    while give <= min(total, most[0]):
        for rest in splits(total - give, most[1:], unit):
            yield (give, *rest)
        give += unit


class Walk:
    """All ways of using what is bought of one item."""

    def __init__(self, item, house):
        self.item = item
        self.unit = divisor([n.amount for n in item.needs] + [s.size for s in item.sources] + list(house.room.values()))
        self.clocked = any(source.opened is not None for source in item.sources)

    def fates(self, source):
        """All that can be done with a pack when it comes home."""
        yield Pack(source, SEALED, source.size)
        yield Pack(source, CLOSED, source.size)
        if source.frozen is not None:
            yield Pack(source, WHOLE, source.size)
            home = Pack(source, PORTIONS, source.size, 0, (), source.day, min(source.day + source.opened, source.good))
            yield from (pack for pack in self.portioned(home, 0) if pack.portions)

    def portioned(self, pack, first):
        """With portions of what is left in it frozen on the day on which it is opened, for needs from `first` on."""
        yield pack
        if pack.source.frozen is None or pack.fate == WHOLE:
            return
        most = [need.amount if i >= first and pack.source.serves_frozen(need, pack.opened) else Fraction(0)
                for i, need in enumerate(self.item.needs)]
        for portions in splits(pack.left, most, self.unit):
            if any(portions):
                yield replace(pack, left=pack.left - sum(portions), portions=portions)

    def pools(self, source, amount):
        """All that can be done with what has no clock: (amounts by need, frozen amounts by need, kept,
        kept frozen). What is good to the end unfrozen is kept."""
        needs = self.item.needs
        most = [need.amount if source.serves_unfrozen(need) else Fraction(0) for need in needs]
        most += [need.amount if source.serves_frozen(need) else Fraction(0) for need in needs]
        for split in splits(amount, most, self.unit):
            left = amount - sum(split)
            keeps = [left if self.item.keeps_unfrozen(source) else Fraction(0),
                     left if self.item.keeps_frozen(source) else Fraction(0)]
            for kept, frozen in splits(left, keeps, self.unit):
                if kept + frozen == left or not keeps[0]:
                    yield source, split[:len(needs)], split[len(needs):], kept, frozen

    def plans(self, counts):
        """Every plan with so many packs of each bought source."""
        choices = []
        self.amounts = {}
        for source in self.item.sources:
            packs = source.packs if source.packs is not None else counts.get(source.name, 0)
            self.amounts[source.name] = packs * source.size
            if source.opened is None:
                choices.append([[("pool", pool)] for pool in self.pools(source, packs * source.size)])
                continue
            if source.by_weight:
                one = replace(source, size=source.size * packs)
                choices.append([[("pack", pack)] for pack in self.fates(one)] if packs else [[]])
            else:
                fates = list(self.fates(source))
                choices.append([[("pack", pack) for pack in some]
                                for some in itertools.combinations_with_replacement(fates, packs)])
        for choice in itertools.product(*choices):
            chosen = [one for part in choice for one in part]
            packs = [replace(pack, number=n) for n, (kind, pack) in enumerate(chosen) if kind == "pack"]
            pools = [pool for kind, pool in chosen if kind == "pool"]
            yield from self.serve(0, packs, pools, [])

    def serve(self, i, packs, pools, takings):
        if i == len(self.item.needs):
            yield from self.rest(packs, pools, takings)
            return
        need = self.item.needs[i]
        rest, found = need.amount, list(takings)
        for source, unfrozen, frozen, *_ in pools:
            for amount, is_frozen in ((unfrozen[i], False), (frozen[i], True)):
                if amount:
                    rest -= amount
                    part = Part(source.name, amount, is_frozen, source.day if is_frozen else None, need=i)
                    found.append((part, (source.name, is_frozen)))
        for pack in packs:
            if pack.portions and pack.portions[i]:
                rest -= pack.portions[i]
                found.append((Part(pack.source.name, pack.portions[i], True, pack.opened, need=i), (pack.number, True)))
        if rest >= 0:
            yield from self.take(i, rest, packs, pools, found)

    def take(self, i, rest, packs, pools, takings):
        """Serves what is left of a need from packs, one after the other."""
        need = self.item.needs[i]
        candidates = [p for p, pack in enumerate(packs) if pack.open_serves(need)]  # rule 1
        if not candidates:
            candidates = [p for p, pack in enumerate(packs) if pack.can_be_opened_for(need)]
        if rest == 0 or not candidates:
            if rest > 0 and self.clocked and self.held_back(i, packs, pools):  # rule 4
                return
            yield from self.serve(i + 1, packs, pools, takings)
            return
        tried = set()
        for p in candidates:
            pack = packs[p]
            if replace(pack, number=0) in tried or self.another_goes_off_first(pack, [packs[c] for c in candidates]):
                continue
            tried.add(replace(pack, number=0))
            opened = pack if pack.is_open else pack.opened_for(need)
            amount = min(rest, opened.left)
            thawed = pack.fate == WHOLE
            part = Part(pack.source.name, amount, thawed, pack.source.day if thawed else None,
                        opened.opened if thawed else None, i)
            opened = replace(opened, left=opened.left - amount)
            for one in [opened] if pack.is_open else self.portioned(opened, i + 1):
                yield from self.take(i, rest - amount, packs[:p] + [one] + packs[p + 1:], pools, takings + [(part, (pack.number, False))])

    @staticmethod
    def another_goes_off_first(pack, others):
        """Rule 2."""
        if pack.fate != SEALED or pack.source.by_weight:
            return False
        return any(other.fate == SEALED and not other.is_open and not pack.is_open and not other.source.by_weight
                   and (other.source.food, other.source.size) == (pack.source.food, pack.source.size)
                   and other.source.good < pack.source.good for other in others)

    def held_back(self, i, packs, pools):
        need = self.item.needs[i]
        for pack in packs:
            if pack.portions and any(pack.portions[i + 1:]) and pack.source.serves_frozen(need, pack.opened):
                return True
            if pack.fate == CLOSED and pack.could_be_opened_for(need):
                return True
        return any(source.serves_unfrozen(need) and any(unfrozen[i + 1:])
                   or source.serves_frozen(need) and any(frozen[i + 1:]) for source, unfrozen, frozen, *_ in pools)

    def one_is_left(self, packs, pools, takings):
        """Rule 3: of what serves a need no more than one thing is left over. What is unfrozen and what is frozen of a
        pack (or pool) are two things; what is left of it at the end counts for both."""
        end = {pack.number: pack.left for pack in packs}
        for source, unfrozen, frozen, kept, kept_frozen in pools:
            wasted = self.amounts[source.name] - sum(unfrozen + frozen) - kept - kept_frozen
            end[source.name, False], end[source.name, True] = kept + wasted, kept_frozen + wasted
        opened = {}
        for part, thing in takings:
            opened.setdefault(thing, part.need)
        for i in range(len(self.item.needs)):
            left_over = 0
            for thing in {thing for part, thing in takings if part.need == i}:
                left = sum(part.amount for part, other in takings if other == thing and part.need > i)
                left += end.get(thing, end.get(thing[0], 0))
                if opened[thing] == i and thing[1] is False:  # just opened: its portions, too
                    pack = next((pack for pack in packs if pack.number == thing[0]), None)
                    left += sum(pack.portions) if pack and pack.fate == SEALED else 0
                left_over += left > 0
            if left_over > 1:
                return False
        return True

    def rest(self, packs, pools, takings):
        if self.clocked and not self.one_is_left(packs, pools, takings):
            return
        plan = account.ItemPlan(takings=[part for part, _ in takings])
        for pack in packs:
            source, end = pack.source, self.item.end
            if pack.is_open:
                good = pack.closes >= end
            else:
                good = self.item.keeps_frozen(source) if pack.fate == WHOLE else source.good >= end
            if good and pack.left:
                frozen = pack.fate == WHOLE
                plan.kept.append(Part(source.name, pack.left, frozen, source.day if frozen else None,
                                      pack.opened if frozen else None))
        for source, _, _, kept, kept_frozen in pools:
            plan.kept += [Part(source.name, amount, frozen, source.day if frozen else None)
                          for amount, frozen in ((kept, False), (kept_frozen, True)) if amount]
        yield plan


def all_plans(house, item, most):
    """Of one item, the cheapest of those that are alike in what is bought and in the room they take."""
    bought = [source for source in item.sources if source.offer is not None]
    walk, out = Walk(item, house), {}
    ranges = [range(min(most, source.offer.limit if source.offer.limit is not None else most) + 1) for source in bought]
    for numbers in itertools.product(*ranges):
        counts = {source.name: n for source, n in zip(bought, numbers) if n}
        for plan in walk.plans(counts):
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
