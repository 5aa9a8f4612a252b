"""Checks what the program wrote for a small house: its lines and supplies alone say each term of the
account, and whether keeping times, the rules of use, room and limits hold.

    python3 check.py HOUSE RESULT-FOLDER [PLAN]
"""
import sys
from fractions import Fraction

import account
from lp import NotSolved, Program
from money import MISSING_COSTS
from oracle import rows_of
from read import read_house
from result import Result, Unfit
from rules import Unsaid

HAIR = Fraction(1, 50)  # grams: how much amounts may be out in the search for how things were used


def fitting(house, items, plans):
    """Whether plans like these but for which pack gives what, and how the rest is kept, obey the rules of use, the limits
    and the room."""
    program = Program()
    packs, rows = rows_of(program, house, items)
    try:
        for one, plan in zip(rows, plans):
            fix(program, packs, one, plan)
        program.solve()
        return True
    except Unsaid:
        if account.broken(house, items, plans, HAIR):
            return False
        raise
    except NotSolved:
        return False


def fix(program, packs, one, plan):
    """Rows that leave open only what `fitting` may choose."""

    def near(terms, amount):
        program.row(terms, "<=", (amount + HAIR) / one.scale)
        program.row(terms, ">=", (amount - HAIR) / one.scale)

    for source in one.item.sources:
        if source.name in packs:
            program.row(packs[source.name], "=", plan.packs.get(source.name, 0))
            if not plan.packs.get(source.name):
                continue
        for i in range(len(one.item.needs)):
            for frozen in (False, True):
                terms = {taking.var: 1 for taking in one.takings
                         if taking.thing.source is source and taking.need == i and taking.part.frozen == frozen}
                near(terms, sum(taking.amount for taking in plan.takings
                                if (taking.source, taking.need, taking.frozen) == (source.name, i, frozen)))
        terms = {var: factor for thing, rest, kept in one.rests if thing is source and kept for var, factor in rest.items()}
        near(terms, sum(part.amount for part in plan.kept if part.source == source.name))


def complaints(house, result):
    """(what is wrong, the account of the plans in cents). The plans are those of the first choice of
    stops that is right, or else of the first."""
    first = None
    choices = result.stop_choices()
    if not choices:
        return ["a visit to no stop of the plan"], None
    for stops in choices:
        try:
            plans = result.plans(stops)
        except Unfit as reason:
            first = first or ([str(reason)], None)
            continue
        if not fitting(house, result.items, plans):
            first = first or (why_not(house, result.items, plans), account.account(house, result.items, plans))
            continue
        terms = account.account(house, result.items, plans)
        wrong = differences(house, result, plans, terms)
        if not wrong:
            return [], terms
        first = first or (wrong, terms)
    return first


def why_not(house, items, plans):
    """What is wrong can be said for the simple faults."""
    return account.broken(house, items, plans, HAIR) or ["no way of using these things obeys the rules of use and the room"]


def tolerance(house, items, plans, terms):
    """In cents. Prices of a pack and rates are rounded to the hundredth of a cent (to the cent where sums are large),
    amounts to the thousandth of a gram; a credit is worth as much less as the price of the cheapest pack is rounded."""
    dearest = max([source.offer.price for item in items for source in item.sources if source.offer], default=Fraction(0))
    cent = Fraction(1, 2) if dearest > 20000 else Fraction(1, 200)
    packs = sum(sum(plan.packs.values()) for plan in plans)
    out = cent * (4 + packs)
    cheapest = min([source.offer.price for item in items for source in item.sources if source.offer], default=Fraction(1))
    out += terms["credit"] * 2 * cent / max(cheapest, 1) if terms["credit"] else 0
    for item, plan in zip(items, plans):
        amounts = sum(plan.packs.values()) + len(item.needs) + 2
        each = item.usual * (MISSING_COSTS if terms["missing"] else 1)
        out += amounts * each * Fraction(3, 2000)
        out += cent * (item.need + sum(plan.wasted.values()) + sum(part.amount for part in plan.kept)) / 500
    return out


def differences(house, result, plans, terms):
    """Terms on which the program and this reckoning do not agree. What a till takes off is by its receipt; the total
    counts what is sure to be taken off."""
    allowed = tolerance(house, result.items, plans, terms)
    by_receipt = account.account(house, result.items, plans, account.tills)
    out = []
    for name in account.TERMS + ("total",):
        said, right = Fraction(result.account[name]) * 100, (terms if name == "total" else by_receipt)[name]
        if abs(said - right) > allowed:
            out.append(f"{name}: the program says {float(said):.4f} cents, its lines say {float(right):.4f}")
    return out


def main():
    house = read_house(sys.argv[1], *sys.argv[3:4])
    wrong, terms = complaints(house, Result(house, sys.argv[2]))
    for line in wrong:
        print(line)
    for name, cents in (terms or {}).items():
        print(f"{name:12} {float(cents) / 100:12.4f}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
