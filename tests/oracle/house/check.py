"""Checks what the program wrote for a small house: its lines and supplies alone say each term of the
account, and whether keeping times, opened packs, room and limits hold.

    python3 check.py HOUSE RESULT-FOLDER [PLAN]
"""
import sys
from fractions import Fraction

import account
from lp import NotSolved, Program
from money import MISSING_COSTS
from oracle import rows_of
from read import Reader
from result import SMALL, Result, Unfit

HAIR = Fraction(1, 50)  # grams: how much packs may be out in the search for how they were opened


def packs_fit(house, items, plans):
    """Whether some way of opening the packs gives these plans and obeys the rules of use and the room."""
    if all(source.opened is None for item in items for source in item.sources):
        return True
    program = Program()
    packs, rows = rows_of(program, house, items)
    try:
        for one, plan in zip(rows, plans):
            fix(program, packs, one, plan)
        program.solve()
        return True
    except NotSolved:
        return False


def fix(program, packs, one, plan):
    """Rows that leave open only which pack gives what."""

    def near(terms, amount):
        program.row(terms, "<=", (amount + HAIR) / one.scale)
        program.row(terms, ">=", (amount - HAIR) / one.scale)

    for source in one.item.sources:
        if source.name in packs:
            program.row(packs[source.name], "=", plan.packs.get(source.name, 0))
        for i in range(len(one.item.needs)):
            for frozen in (False, True):
                terms = {var: 1 for s, var, part in one.serving(i) if s is source and part.frozen == frozen}
                near(terms, sum(taking.amount for taking in plan.takings
                                if (taking.source, taking.need, taking.frozen) == (source.name, i, frozen)))
        terms = {var: factor for s, var, factor, _ in one.kept() if s is source}
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
        wrong = account.broken(house, result.items, plans, 2 * SMALL)
        terms = account.account(house, result.items, plans)
        if not wrong and not packs_fit(house, result.items, plans):
            wrong.append("no way of opening the packs obeys the rules of use and the room")
        wrong += differences(house, result, terms)
        if not wrong:
            return [], terms
        first = first or (wrong, terms)
    return first


def tolerance(result, terms):
    """In cents: amounts are rounded to the millionth of a gram, twice."""
    figures = 1 + sum(len(result.said[key]) for key in ("purchases", "supplies", "from_stock", "uses"))
    dearest = max([item.usual for item in result.items], default=Fraction(0))
    each = dearest * (MISSING_COSTS if terms["missing"] else 1) * Fraction(2, 10**6)
    return figures * (Fraction(1, 1000) + each)


def differences(house, result, terms):
    """Terms on which the program and this reckoning do not agree."""
    if result.account is None:
        return []
    out = []
    for name in account.TERMS + ("total",):
        said = Fraction(result.account[name]) * 100
        if abs(said - terms[name]) > tolerance(result, terms):
            out.append(f"{name}: the program says {float(said):.4f} cents, its lines say {float(terms[name]):.4f}")
    return out


def main():
    reader = Reader(sys.argv[1])
    house = reader.house(*sys.argv[3:4])
    wrong, terms = complaints(house, Result(house, sys.argv[2], reader.slots))
    for line in wrong:
        print(line)
    for name, cents in (terms or {}).items():
        print(f"{name:12} {float(cents) / 100:12.4f}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
