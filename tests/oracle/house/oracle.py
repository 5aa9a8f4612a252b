"""The least value of the account's objective for a small house, by a program with whole numbers.

    python3 oracle.py FOLDER [PLAN]      prints the least value and how it is reached
"""
import sys
from dataclasses import dataclass
from fractions import Fraction
from typing import Dict, List

import account
import free
import opened
from buying import buying
from items import Item, items_of, room_limits
from lp import NotSolved, Program
from read import read_house
from things import FOREVER


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
        self.flows, self.packs = [], []
        for source in item.sources:
            if source.opened is None:
                flow = free.flow(program, item, source)
                free.balance(program, flow, packs.get(source.name), scale)
                self.flows.append(flow)
            else:
                self.packs.append(opened.Packs(program, item, source, packs.get(source.name), scale))
        unit = item.usual * scale / 100
        self.short = [program.var(need.amount / scale, account.MISSING_COSTS * unit) for need in item.needs]
        for i, need in enumerate(item.needs):
            terms = {self.short[i]: 1}
            for _, var, _, _ in self.serving(i):
                terms[var] = 1
            program.row(terms, "=", need.amount / scale)
        if self.packs:
            opened.rules(program, item, self.packs)
            opened.nothing_held_back(program, item, self.packs, self.flows, self.short, scale)
        worth = program.var(item.cap / scale, -house.kept_worth * unit)
        program.row({worth: 1, **{var: -factor for _, var, factor, _ in self.kept()}}, "<=", 0)
        for _, var, factor in self.wasted():
            program.costs[var] += house.waste_cost * unit * factor

    def serving(self, need):
        """(source, variable, whether frozen on the day it came home, day from which it is thawed)."""
        for flow in self.flows:
            for frozen, vars in ((False, flow.unfrozen), (True, flow.frozen)):
                if need in vars:
                    yield flow.source, vars[need], frozen, FOREVER
        for packs in self.packs:
            for group in packs.groups:
                if need in group.takings:
                    thawed = group.kind == opened.THAWED
                    since = self.item.needs[group.first].day if thawed else FOREVER
                    yield packs.source, group.takings[need], thawed, since
                if need in group.portions:
                    yield packs.source, group.portions[need], True, FOREVER

    def kept(self):
        """(source, variable, scale units of one, place and days (from, until) that it takes room)."""
        nights = FOREVER
        for flow in self.flows:
            source = flow.source
            if flow.kept is not None:
                yield source, flow.kept, 1, [(source.place, source.day, nights)]
            if flow.kept_frozen is not None:
                yield source, flow.kept_frozen, 1, [("freezer", source.day, nights)]
        for packs in self.packs:
            source, whole = packs.source, 1 if packs.source.by_weight else packs.size
            if packs.kept is not None:
                yield source, packs.kept, whole, [(source.place, source.day, nights)]
            if packs.kept_frozen is not None:
                yield source, packs.kept_frozen, whole, [("freezer", source.day, nights)]
            for group in packs.groups:
                if group.kept is not None and group.kind == opened.THAWED:
                    thawed = self.item.needs[group.first].day
                    yield source, group.kept, 1, [("freezer", source.day, thawed), (source.place, thawed, nights)]
                elif group.kept is not None:
                    yield source, group.kept, 1, [(source.place, source.day, nights)]

    def wasted(self):
        for flow in self.flows:
            yield flow.source, flow.wasted, 1
        for packs in self.packs:
            yield packs.source, packs.wasted, 1 if packs.source.by_weight else packs.size
            for group in packs.groups:
                yield packs.source, group.wasted, 1

    def room(self, day, place):
        """Terms of what takes room there on the night after the day, in litres."""
        terms = {}
        for i, need in enumerate(self.item.needs):
            for source, var, frozen, thawed in self.serving(i):
                where = "freezer" if frozen and day < thawed else source.place
                if where == place and source.day <= day < need.day:
                    terms[var] = source.ml * self.scale / 1000
        for source, var, factor, stays in self.kept():
            if any(where == place and first <= day < until for where, first, until in stays):
                terms[var] = source.ml * self.scale * factor / 1000
        return terms

    def plan(self, values, packs):
        """What the values of the variables say."""
        def amount(var, factor=1):
            exact = Fraction(values[var]) * self.scale * factor
            near = exact.limit_denominator(10**6)
            return near if abs(near - exact) < Fraction(1, 10**9) * (1 + abs(exact)) else exact

        out = account.ItemPlan()
        for source in self.item.sources:
            if source.name in packs:
                number = sum(n * round(values[v]) for v, n in packs[source.name].items())
                if number:
                    out.packs[source.name] = number
        for i in range(len(self.item.needs)):
            for source, var, frozen, thawed in self.serving(i):
                if values[var] > 1e-7:
                    out.takings.append(account.Taking(source.name, i, amount(var), frozen, thawed))
        for source, var, factor, stays in self.kept():
            if values[var] > 1e-7:
                place, since, until = stays[0]
                frozen = place == "freezer" and source.place != "freezer"
                out.kept.append(account.Keeping(source.name, amount(var, factor), frozen, until))
        for source, var, factor in self.wasted():
            if values[var] > 1e-7:
                out.wasted[source.name] += amount(var, factor)
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


def best(house, solver="cbc", seconds=120):
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
        for taking in plan.takings:
            need = item.needs[taking.need]
            out.append(f"  day {need.day - house.first + 1} {need.clock // 60:02}:{need.clock % 60:02}"
                       f" {float(taking.amount):g} of {called(taking.source)}{' frozen' if taking.frozen else ''}")
        for keeping in plan.kept:
            out.append(f"  kept {float(keeping.amount):g} of {called(keeping.source)}{' frozen' if keeping.frozen else ''}")
        out += [f"  wasted {float(amount):g} of {called(name)}" for name, amount in plan.wasted.items() if amount]
        for i, missing in enumerate(account.short(item, plan)):
            if missing > Fraction(1, 1000):
                out.append(f"  missing on day {item.needs[i].day - house.first + 1}: {float(missing):g}")
    return "\n".join(out)


if __name__ == "__main__":
    one_house = read_house(*sys.argv[1:3])
    print(printed(one_house, best(one_house)))
