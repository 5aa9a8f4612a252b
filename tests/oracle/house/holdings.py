"""What can be held of an item, as variables of a program: things that are loose, and packs whose opening starts
a clock (the account, "Lives"). Amounts are in units of `scale`.

Packs of one source that are opened for one need in one way are a group: all but the last of them are used up for
that need, so a group is one pack of several times the size of which less than a pack is left after it.
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

    def after(self, i):
        """Whether it takes what is left when need i has what it must have. What is lent is gone, and taken back or not."""
        if self.way == BACK:
            return self.lender >= i
        return self.need > i or self.need == i and self.way == LENT

    @property
    def opens(self):
        return self.way in (WHOLE, PORTIONED) or self.way == COOL and self.thing.source.opened is not None

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


class Group:
    """Packs opened together for the need `first`."""

    def __init__(self, packs, way, first):
        item, source = packs.item, packs.source
        self.packs, self.item, self.source, self.way, self.first = packs, item, source, way, first
        day, life = item.needs[first].day, source.opened
        self.day = source.day if way == PORTIONED else day  # of opening
        self.closes = self.day + life if way == WHOLE else min(self.day + life, source.good)
        self.portions_until = None if way == WHOLE or source.portions is None else self.day + source.portions
        self.takings = []
        self.opened = self.count = self.rest = None

    def is_open_for(self, i):
        need = self.item.needs[i]
        return (i > self.first and self.source.is_there(need) and need.day <= self.closes
                and not (need.fresh and self.way == WHOLE))

    def is_portion_for(self, i):
        need = self.item.needs[i]
        return (i > self.first and self.portions_until is not None and not need.fresh
                and need.day <= self.portions_until and not self.is_open_for(i))

    def cool_part(self, i):
        if self.way == WHOLE:
            return Part(self.source.name, 0, True, self.source.day, self.day, i)
        return Part(self.source.name, 0, need=i)

    def add_takings(self, program, scale):
        item, source = self.item, self.source
        first = {COOL: item.cool_rank, WHOLE: item.frozen_rank, PORTIONED: item.frozen_rank}[self.way](source)
        for i in range(self.first, len(item.needs)):
            if i == self.first:
                way, rank = self.way, first
            elif self.is_open_for(i):
                way, rank = OPEN, self.closes
            elif self.is_portion_for(i):
                way, rank = PORTION, (self.portions_until, self.closes)
            else:
                continue
            portion = way in (PORTION, PORTIONED)
            part = Part(source.name, 0, True, self.day, need=i) if portion else self.cool_part(i)
            self.takings.append(Taking(self, i, program.var(item.needs[i].amount / scale), way, rank, part))
            if item.needs[i].give:
                self.takings.append(Taking(self, i, program.var(item.needs[i].give / scale), LENT, rank, replace(part)))
            if way in (OPEN, PORTION):
                for j in lenders(item, i, lambda j: j >= self.first):
                    var = program.var(item.needs[j].give / scale)
                    self.takings.append(Taking(self, i, var, BACK, rank, replace(part), j))
        self.rest = program.var()
        self.keeps = self.closes >= item.end

    @property
    def contents(self):
        return {self.rest: 1, **{taking.var: 1 for taking in self.takings}}

    def left(self, i):
        return {self.rest: 1, **{taking.var: 1 for taking in self.takings if taking.after(i)}}, self.most

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
        self.groups = []
        for first, need in enumerate(item.needs):
            if item.serves_cool(source, need):
                self.groups.append(Group(self, COOL, first))
            if item.serves_frozen(source, need):
                self.groups += [Group(self, WHOLE, first), Group(self, PORTIONED, first)]
        self.keeps = item.keeps_cool(source) or item.keeps_frozen(source)
        for group in self.groups:
            group.opened = program.yes_no()
            group.add_takings(program, scale)
        (self.weighed if source.by_weight else self.counted)(program, terms)
        self.takings = [taking for group in self.groups for taking in group.takings]

    def counted(self, program, terms):
        """Whole packs."""
        self.rest = program.var(whole=True)
        for group in self.groups:
            most = min(self.most, math.ceil(self.item.needs[group.first].amount / self.source.size))
            group.most, group.count = self.size, program.var(most, 0, True)
            program.row({group.count: 1, group.opened: -most}, "<=", 0)
            program.row({group.opened: 1, group.count: -1}, "<=", 0)
            program.row({**group.contents, group.count: -self.size}, "=", 0)
            # Less than a pack is left of them after the need: none is opened for what it can do without.
            program.row({**group.left(group.first)[0], group.opened: self.some - self.size}, "<=", 0)
        total = {self.rest: 1, **{group.count: 1 for group in self.groups}}
        if terms is None:
            program.row(total, "=", self.most)
        else:
            program.row({**total, **{v: -n for v, n in terms.items()}}, "=", 0)

    def weighed(self, program, terms):
        """What the scale weighs is one pack: in one group, or never opened."""
        most = self.most * self.size
        self.rest, self.whole = program.var(), program.yes_no()
        program.row({self.rest: 1, self.whole: -most}, "<=", 0)
        for group in self.groups:
            group.most, group.count = most, group.opened
            for var in group.contents:
                high = most if program.highs[var] is None else program.highs[var]
                program.row({var: 1, group.opened: -high}, "<=", 0)
            program.row({group.opened: self.some, group.takings[0].var: -1}, "<=", 0)
        all_of_it = {self.rest: 1, program.var(self.size): 1}
        for group in self.groups:
            all_of_it.update(group.contents)
        program.row({**all_of_it, **{v: -n * self.size for v, n in terms.items()}}, "=", 0)
        program.row({self.whole: 1, **{group.opened: 1 for group in self.groups}}, "<=", 1)

    def left(self, i):
        """Terms of the packs that are not opened by the time that a need has been served, and how many that can be."""
        rest = self.whole if self.source.by_weight else self.rest
        return {rest: 1, **{group.count: 1 for group in self.groups if group.first > i}}, 1 if self.source.by_weight else self.most

    def rests(self):
        frozen = not self.item.keeps_cool(self.source)
        part = Part(self.source.name, 0, frozen, self.source.day if frozen else None) if self.keeps else None
        yield self.rest, 1 if self.source.by_weight else self.size, part
        for group in self.groups:
            yield from group.rests()


def divisor(amounts):
    """The greatest common divisor."""
    below = math.lcm(*(amount.denominator for amount in amounts))
    return Fraction(math.gcd(*(int(amount * below) for amount in amounts)), below)
