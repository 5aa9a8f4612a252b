"""The least value of the account's objective for a small house, by a program with whole numbers.

    python3 oracle.py FOLDER [PLAN]      prints the least value and how it is reached
"""
import sys
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Dict, List

import account
import rules
from buying import buying
from holdings import BACK, FROM_FREEZER, LENT, SOME, Loose, Packs
from items import Item, items_of, room_limits
from lp import NotSolved, Program
from money import LACKING_COSTS, MISSING_COSTS
from read import read_house
from things import FOREVER

HAIR = 1e-7  # of the scale of an item: less is nothing


@dataclass
class Best:
    """`terms` are the account's, of `plans`, in cents."""

    items: List[Item]
    plans: List[account.ItemPlan]
    terms: Dict[str, Fraction]
    value: float  # as the program's solver says it, in cents

    @property
    def total(self):
        return self.terms["total"]


class ItemRows:
    """The rows of one item. Amounts are in `scale` units of its worth."""

    def __init__(self, program, house, item, packs):
        self.item = item
        self.scale = scale = Fraction(max([item.need] + [source.size for source in item.sources]) or 1) / 8
        self.things = [(Loose if source.opened is None else Packs)(program, item, source, packs.get(source.name), scale)
                       for source in item.sources]
        self.takings = [taking for thing in self.things for taking in thing.takings]
        self.rests = [(thing.source, {var: factor}, kept) for thing in self.things for var, factor, kept in thing.rests()]
        self.freeze_enough(program, item.least_frozen / scale)
        self.lacking, shorts = [], []
        unit = item.usual * scale / 100
        lacks = [program.yes_no(item.missing / 100) for _ in item.needs]
        for i, need in enumerate(item.needs):
            lacking = program.var(need.give / scale, LACKING_COSTS * unit)
            short = program.var(need.must / scale, MISSING_COSTS * unit)
            takings = [taking for taking in self.takings if taking.need == i]
            program.row({short: 1, **{taking.var: 1 for taking in takings if taking.way != LENT}}, "=", need.must / scale)
            program.row({lacking: 1, **{taking.var: 1 for taking in takings if taking.way == LENT}}, "=", need.give / scale)
            lent = {taking.var: 1 for taking in takings if taking.way == LENT}
            back = {taking.var: 1 for taking in self.takings if taking.way == BACK and taking.lender == i}
            program.row({**lent, **back}, "<=", need.give / scale)
            program.row({short: 1, lacks[i]: -need.must / scale}, "<=", 0)
            program.row({lacks[i]: need.give / scale, lacking: -1}, "<=", 0)
            self.lacking.append(lacking)
            shorts.append(short)
        rules.add(program, item, self.things, lacks, self.lacking, shorts, scale)
        self.handling(program, house.handling / 100)
        worth = program.var(item.cap / scale, -house.kept_worth * unit)
        kept = {}
        for _, terms, part in self.rests:
            for var, factor in terms.items():
                if part:
                    kept[var] = kept.get(var, 0) - factor
                else:
                    program.costs[var] += house.waste_cost * unit * factor
        program.row({worth: 1, **kept}, "<=", 0)

    def freeze_enough(self, program, least):
        """What would have to be frozen to be kept is kept if that is enough for a bag, or else thrown away."""
        rests = [(source, terms, part) for source, terms, part in self.rests
                 if part and part.frozen and part.thawed is None and source.thawed is None]
        if not rests or least == 0:
            return
        most = sum(thing.most * (1 if isinstance(thing, Loose) else thing.size) for thing in self.things)
        freezes, all_of_it, thrown = program.yes_no(), {}, {}
        for source, terms, part in rests:
            out = program.var()
            thrown[out] = 1
            all_of_it.update(terms)
            program.row({**{var: -factor for var, factor in terms.items()}, out: 1}, "<=", 0)
            program.row({**terms, out: -1, freezes: -most}, "<=", 0)
            self.rests.append((source, {out: 1}, None))
            terms[out] = -1
        program.row({**thrown, freezes: least - SOME}, "<=", least - SOME)
        program.row({**all_of_it, freezes: -least}, ">=", 0)

    def handling(self, program, cost):
        """For each need that is served from the freezer."""
        for i in range(len(self.item.needs)):
            served = [taking.serves for taking in self.takings if taking.need == i and taking.way in FROM_FREEZER]
            lent = [taking.var for taking in self.takings if taking.need == i and taking.way == LENT
                    and taking.part.frozen and taking.part.thawed is None]
            for taking in self.takings:
                if taking.need == i and taking.way == BACK and taking.part.frozen:
                    taking.serves = program.yes_no()
                    program.row({taking.var: 1, taking.serves: -program.highs[taking.var]}, "<=", 0)
                    served.append(taking.serves)
            for var in lent:  # only where it must have some of the freezer
                program.row({var: 1, **dict.fromkeys(served, -program.highs[var])}, "<=", 0)
            if served and cost:
                handled = program.yes_no(cost)
                for yes in served:
                    program.row({yes: 1, handled: -1}, "<=", 0)

    def room(self, day, place):
        """Terms of what takes room there on the night after the day, in litres."""
        terms = {}
        found = [(taking.thing.source, {taking.var: 1}, taking.part, self.item.needs[taking.need].day) for taking in self.takings
                 if taking.way != LENT]
        found += [(*rest, FOREVER) for rest in self.rests if rest[-1]]
        for source, amount, part, until in found:
            frozen = part.frozen and part.since <= day < (FOREVER if part.thawed is None else part.thawed)
            if ("freezer" if frozen else source.place) == place and source.day <= day < until:
                terms.update({var: source.ml * self.scale * factor / 1000 for var, factor in amount.items()})
        return terms

    def plan(self, values, packs):
        """What the values of the variables say."""
        def amount(terms):
            exact = sum(Fraction(values[var]) * factor for var, factor in terms.items()) * self.scale
            near = exact.limit_denominator(10**6)
            return near if abs(near - exact) < Fraction(1, 10**9) * (1 + abs(exact)) else exact

        out = account.ItemPlan()
        for source in self.item.sources:
            if source.name in packs:
                number = sum(n * round(values[v]) for v, n in packs[source.name].items())
                if number:
                    out.packs[source.name] = number
        out.takings = [replace(taking.part, amount=amount({taking.var: 1})) for taking in
                       sorted(self.takings, key=lambda taking: taking.need) if values[taking.var] > HAIR]
        for source, terms, kept in self.rests:
            left = amount(terms)
            if left > HAIR * self.scale and kept:
                out.kept.append(replace(kept, amount=left))
            elif left > HAIR * self.scale:
                out.wasted[source.name] += left
        return out


def rows_of(program, house, items):
    """All rows: (terms of the packs bought of each source, the rows of each item)."""
    packs = buying(program, house, items)
    rows = [ItemRows(program, house, item, packs) for item in items]
    for (place, day), limit in room_limits(house).items():
        terms = {}
        for one in rows:
            terms.update(one.room(day, place))
        program.row(terms, "<=", limit / 1000)
    return packs, rows


def best(house, solver="both", seconds=60):
    """Raises NotSolved when the solver gives up, or its answer does not stand when it is reckoned exactly."""
    program, items = Program(), items_of(house)
    packs, rows = rows_of(program, house, items)
    value, values = program.solve(solver, seconds)
    plans = [one.plan(values, packs) for one in rows]
    terms = account.account(house, items, plans)
    wrong = account.broken(house, items, plans)
    if abs(terms["total"] - Fraction(value * 100)) > Fraction(1, 100) + abs(terms["total"]) / 10**6:
        wrong.append(f"the solver says {value * 100} cents, reckoned exactly {float(terms['total'])}")
    if wrong:
        raise NotSolved("; ".join(wrong))
    return Best(items, plans, terms, value * 100)


def printed(house, found):
    """The account and the plan, line by line."""
    out = [f"{name:12} {float(value) / 100:12.4f}" for name, value in found.terms.items() if value or name == "total"]
    for item, plan in zip(found.items, found.plans):
        names = {source.name: source for source in item.sources}

        def called(name):
            source = names[name]
            if source.lot is not None:
                return f"lot {source.lot} ({source.place})"
            stop = house.stops[source.stop]
            return f"{stop.shop} day {stop.day - house.first + 1} {source.offer.text}"

        out.append(f"{item.name}: usual {float(item.usual):.4f} c, cap {float(item.cap):.1f}")
        out += [f"  buy {n} x {called(name)}" for name, n in plan.packs.items()]
        for part in plan.takings + plan.kept:
            need = item.needs[part.need] if part.need is not None else None
            when = f"day {need.day - house.first + 1} {need.clock // 60:02}:{need.clock % 60:02}" if need else "kept"
            frozen = f", frozen on day {part.since - house.first + 1}" if part.frozen else ""
            thawed = f", thawed on day {part.thawed - house.first + 1}" if part.thawed is not None else ""
            out.append(f"  {when} {float(part.amount):g} of {called(part.source)}{frozen}{thawed}")
        out += [f"  wasted {float(amount):g} of {called(name)}" for name, amount in plan.wasted.items() if amount]
        for i, missing in enumerate(account.short(item, plan)):
            if missing > Fraction(1, 1000):
                out.append(f"  missing on day {item.needs[i].day - house.first + 1}: {float(missing):g}")
    return "\n".join(out)


if __name__ == "__main__":
    one_house = read_house(*sys.argv[1:3])
    print(printed(one_house, best(one_house)))
