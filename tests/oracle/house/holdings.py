"""What can be held of an item, as variables of a program: things that are loose, and packs whose opening starts
a clock (the account, "Lives"). Amounts are in units of `scale`.

Packs of one source that are opened for one need in one way are an opening: all but the last of them are used up for
that need, so less than a pack is left of them after it. What is left of openings of one day is one thing.
"""
import math
from dataclasses import replace
from fractions import Fraction

from account import Part

SOME = Fraction(1, 1000)  # of the scale: the least that a pack is opened for, at least
OPEN, COOL, LOOSE, PORTION, WHOLE, PORTIONED = "open", "cool", "loose", "portion", "whole", "portioned"
LENT = "lent"  # of what is open or loose: what a need takes beyond what it must have
BACK = "back"  # what was lent, for another need that has nothing else
FROM_FREEZER = (LOOSE, PORTION, WHOLE, PORTIONED)


class Taking:
    """So much of a thing serves a need in some way. Of takings of one kind and way the lowest rank comes first."""

    def __init__(self, thing, need, var, way, rank, part, lender=None):
        self.thing, self.need, self.var, self.way, self.rank, self.part = thing, need, var, way, rank, part
        self.lender = lender  # the need from which it is taken back
        self.serves = None  # a yes or no, see rules.py
        self.opening = None

    def after(self, i):
        """Whether it takes what is left when need i has what it must have. What is lent is gone, and taken back or not."""
        if self.way == BACK:
            return self.lender >= i
        return self.need > i or self.need == i and self.way == LENT

    @property
    def opens(self):
        return self.opening is not None

    def left(self):
        """(terms, most) of what is left of what it takes from when its need has what it must have."""
        return self.opening.left() if self.opens else self.thing.left(self.need)

    @property
    def order(self):
        """What is good unfrozen, too, but frozen for want of room, stands beside the rest of the freezer."""
        item, source = self.thing.item, self.thing.source
        for_room = self.way in (LOOSE, WHOLE, PORTIONED) and item.serves_cool(source, item.needs[self.need])
        return item.kind(source), self.way, for_room


def lenders(item, i, could_take):
    """Needs before need i that may have been lent something."""
    return [j for j in range(i) if item.needs[j].give and could_take(j)]


class Loose:
    """Each unit may be frozen on the day it comes home."""

    def __init__(self, program, item, source, terms, scale):
        self.item, self.source = item, source
        self.size = source.size / scale
        self.most = self.size * (source.packs if terms is None else max([program.highs[v] * n for v, n in terms.items()], default=0))
        self.takings = []
        for i, need in enumerate(item.needs):
            if item.serves_cool(source, need):
                self.add(program, i, COOL, item.cool_rank(source), scale, Part(source.name, 0, need=i))
                if need.give:
                    self.add(program, i, LENT, item.cool_rank(source), scale, Part(source.name, 0, need=i))
                for lender in lenders(item, i, lambda j: item.serves_cool(source, item.needs[j])):
                    self.add(program, i, BACK, item.cool_rank(source), scale, Part(source.name, 0, need=i), lender)
            if item.serves_frozen(source, need):
                self.add(program, i, LOOSE, item.frozen_rank(source), scale, Part(source.name, 0, True, source.day, need=i))
                if need.give:
                    self.add(program, i, LENT, item.frozen_rank(source), scale, Part(source.name, 0, True, source.day, need=i))
                frozen = Part(source.name, 0, True, source.day, need=i)
                for lender in lenders(item, i, lambda j: item.serves_cool(source, item.needs[j]) or item.serves_frozen(source, item.needs[j])):
                    self.add(program, i, BACK, item.frozen_rank(source), scale, frozen, lender)
        self.rest = program.var()
        self.keeps = item.keeps_cool(source) or item.keeps_frozen(source)
        all_of_it = {self.rest: 1, **{taking.var: 1 for taking in self.takings}}
        if source.by_weight:  # what the scale rounds up to its next step is eaten with the rest
            all_of_it[program.var(self.size)] = 1
        if terms is None:
            program.row(all_of_it, "=", self.most)
        else:
            program.row({**all_of_it, **{v: -n * self.size for v, n in terms.items()}}, "=", 0)

    def add(self, program, i, way, rank, scale, part, lender=None):
        var = program.var(min(self.item.needs[i].amount / scale, self.most))
        self.takings.append(Taking(self, i, var, way, rank, part, lender))

    def left(self, i):
        """Terms of what is left when a need has what it must have, and how much that can be."""
        return {self.rest: 1, **{taking.var: 1 for taking in self.takings if taking.after(i)}}, self.most

    def rests(self):
        """(variable, scale units of one, kept as which part or None if it is wasted)."""
        frozen = not self.item.keeps_cool(self.source)
        yield self.rest, 1, Part(self.source.name, 0, frozen, self.source.day if frozen else None) if self.keeps else None


class Opening:
    """Packs that are opened for need `first` in one way. Its takings from them are limited to what is in them."""

    def __init__(self, opened, way, first):
        self.opened_packs, self.way, self.first = opened, way, first
        self.yes = self.count = self.taking = None

    def left(self):
        """Less than a pack."""
        size = self.opened_packs.size
        return {self.count: size, self.taking.var: -1}, size


class Opened:
    """Packs of one source that are opened on one day: what is left of them is one thing. They were frozen whole, and are
    thawed (`thawed`), or their rests can be frozen in portions on that day."""

    def __init__(self, packs, ways, day):
        """`ways` are (need, way) of its openings."""
        item, source = packs.item, packs.source
        self.packs, self.item, self.source, self.size, self.day = packs, item, source, packs.size, day
        self.openings = [Opening(self, way, first) for first, way in ways]
        self.first = min(first for first, _ in ways)
        self.thawed = any(way == WHOLE for _, way in ways)
        self.closes = day + source.opened if self.thawed else min(day + source.opened, source.good)
        self.portions_until = None if self.thawed or source.portions is None else day + source.portions
        self.takings = []
        self.rest = self.most = None

    def is_open_for(self, i):
        need = self.item.needs[i]
        return (i > self.first and self.source.is_there(need) and need.day <= self.closes
                and not (need.fresh and self.thawed))

    def is_portion_for(self, i):
        need = self.item.needs[i]
        return (i > self.first and self.portions_until is not None and not need.fresh
                and need.day <= self.portions_until and not self.is_open_for(i))

    def part(self, way, i):
        if way in (PORTION, PORTIONED):
            return Part(self.source.name, 0, True, self.day, need=i)
        return self.cool_part(i)

    def cool_part(self, i):
        if self.thawed:
            return Part(self.source.name, 0, True, self.source.day, self.day, i)
        return Part(self.source.name, 0, need=i)

    def add_takings(self, program, scale):
        item, source = self.item, self.source
        ranks = {COOL: item.cool_rank, WHOLE: item.frozen_rank, PORTIONED: item.frozen_rank}
        for opening in self.openings:
            i = opening.first
            opening.yes = program.yes_no()
            opening.taking = self.add(i, program.var(item.needs[i].amount / scale), opening.way, ranks[opening.way](source))
            opening.taking.opening = opening
        for i, need in enumerate(item.needs):
            way = OPEN if self.is_open_for(i) else PORTION if self.is_portion_for(i) else None
            rank = self.closes if way == OPEN else (self.portions_until, self.closes)
            here = [one for one in self.openings if one.first == i]
            if way is not None:
                self.add(i, program.var(need.amount / scale), way, rank)
            if need.give and (way is not None or here):
                self.add(i, program.var(need.give / scale), LENT, rank, way or here[0].way)
            if way is not None:
                for j in lenders(item, i, lambda j: j >= self.first):
                    self.add(i, program.var(item.needs[j].give / scale), BACK, rank, way, j)
        self.rest = program.var()
        self.keeps = self.closes >= item.end

    def add(self, i, var, way, rank, like=None, lender=None):
        self.takings.append(Taking(self, i, var, way, rank, self.part(like or way, i), lender))
        return self.takings[-1]

    def has_enough(self, program):
        """Nothing is taken of packs that are opened later."""
        for opening in self.openings:
            program.row(opening.left()[0], ">=", 0)
        if len(self.openings) > 1:
            for i in range(self.first, len(self.item.needs)):
                gone = [taking for taking in self.takings if (taking.lender if taking.way == BACK else taking.need) <= i]
                program.row({**self.counts(i), **{taking.var: -1 for taking in gone}}, ">=", 0)

    def counts(self, i):
        """Terms of what was in the packs that are opened by need i."""
        return {one.count: self.size for one in self.openings if one.first <= i}

    @property
    def contents(self):
        return {self.rest: 1, **{taking.var: 1 for taking in self.takings}}

    def left(self, i):
        """Of what was opened before need i."""
        gone = [taking for taking in self.takings if not taking.after(i) and not (taking.opens and taking.need == i)]
        # Each opening left less than a pack.
        before = [opening for opening in self.openings if opening.first < i]
        return {**self.counts(i - 1), **{taking.var: -1 for taking in gone}}, self.size * min(len(before), self.packs.most)

    def rests(self):
        yield self.rest, 1, self.cool_part(None) if self.keeps else None


class Packs:
    """The packs of one source: groups that are opened, and packs that never are."""

    def __init__(self, program, item, source, terms, scale):
        self.item, self.source = item, source
        self.size = source.size / scale
        # A need is served by one thing after the other, so all amounts are sums and differences of those of needs and packs.
        self.some = max(SOME, divisor([amount for need in item.needs for amount in (need.must, need.give)] + [one.size for one in item.sources]) / scale)
        self.most = source.packs if terms is None else max([program.highs[v] * n for v, n in terms.items()], default=0)
        ways = []
        for first, need in enumerate(item.needs):
            if item.serves_cool(source, need):
                ways.append((first, COOL))
            if item.serves_frozen(source, need):
                ways += [(first, WHOLE), (first, PORTIONED)]
        together = {}
        for first, way in ways:
            day = source.day if way == PORTIONED else item.needs[first].day
            alone = way == WHOLE or day != source.day
            together.setdefault((first, way) if alone else None, (day, []))[1].append((first, way))
        self.opened = [Opened(self, some, day) for day, some in together.values()]
        self.keeps = item.keeps_cool(source) or item.keeps_frozen(source)
        for opened in self.opened:
            opened.add_takings(program, scale)
        self.openings = [opening for opened in self.opened for opening in opened.openings]
        self.count(program, terms)
        self.takings = [taking for opened in self.opened for taking in opened.takings]

    def count(self, program, terms):
        self.rest = program.var(whole=True)
        for opened in self.opened:
            for opening in opened.openings:
                most = min(self.most, math.ceil(self.item.needs[opening.first].amount / self.source.size))
                opening.count = program.var(most, 0, True)
                program.row({opening.count: 1, opening.yes: -most}, "<=", 0)
                program.row({opening.yes: 1, opening.count: -1}, "<=", 0)
                # Less than a pack is left of them after the need: none is opened for what it can do without.
                program.row({**opening.left()[0], opening.yes: self.some - self.size}, "<=", 0)
            opened.most = self.size * (1 if len(opened.openings) == 1 else self.most)
            program.row({**opened.contents, **{one.count: -self.size for one in opened.openings}}, "=", 0)
            opened.has_enough(program)
        total = {self.rest: 1, **{opening.count: 1 for opening in self.openings}}
        if terms is None:
            program.row(total, "=", self.most)
        else:
            program.row({**total, **{v: -n for v, n in terms.items()}}, "=", 0)

    def left(self, i):
        """Terms of the packs that are not opened by the time that a need has been served, and how many that can be."""
        return {self.rest: 1, **{opening.count: 1 for opening in self.openings if opening.first > i}}, self.most

    def rests(self):
        frozen = not self.item.keeps_cool(self.source)
        part = Part(self.source.name, 0, frozen, self.source.day if frozen else None) if self.keeps else None
        yield self.rest, self.size, part
        for opened in self.opened:
            yield from opened.rests()


def divisor(amounts):
    """The greatest common divisor."""
    below = math.lcm(*(amount.denominator for amount in amounts))
    return Fraction(math.gcd(*(int(amount * below) for amount in amounts)), below)
