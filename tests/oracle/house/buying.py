"""What is bought, as rows of a program: packs of each offer at each stop, tills, reductions, credit."""
import math
from fractions import Fraction

from money import line_money

MOST = 4000  # packs of one line: more would be no small house


def most_packs(house, item, source):
    """As many as could ever pay: all needs, each from packs of its own, what is kept and worth something,
    what it takes to reach a reduction, and on to the next deal."""
    size, offer = source.size, source.offer
    if source.opened is not None and not source.by_weight:
        wanted = sum(math.ceil(need.amount / size) for need in item.needs) + math.ceil(item.cap / size)
    else:
        wanted = math.ceil((item.need + item.cap) / size)
    shop = house.shops[offer.shop]
    one = line_money(house, offer, source.day, 100)
    if shop.over is not None and one.till > 0:
        wanted += math.ceil(shop.over * 100 / one.till)
    wanted += offer.deal[0] if offer.deal else 0
    most = wanted if offer.limit is None else min(wanted, offer.limit)
    if most > MOST:
        raise ValueError(f"{most} packs of {source.name}")
    return most


def cost_of(money):
    """In the objective, in whole units of money."""
    return (money.price + money.tax - money.cash_back + money.preference) / 100


def buying(program, house, items):
    """Adds all that is about money. Returns the number of packs of each bought source, by its name."""
    packs, tills = {}, {}
    made = [program.var(1, stop.cost / 100, True, 1 if stop.always else 0) for stop in house.stops]
    for item in items:
        for source in item.sources:
            if source.offer is None:
                continue
            stop = house.stops[source.stop]
            most = most_packs(house, item, source)
            each = line_money(house, source.offer, stop.day, 1)
            less = each.price + each.tax - each.sure
            if source.offer.deal is None and (each.sure > 0 or most == 0):
                number, any_of_it = program.var(most, cost_of(each), True), program.yes_no()
                program.row({number: 1, any_of_it: -most}, "<=", 0)
                terms = {number: 1}
                receipt = {number: each.price + each.tax, **({any_of_it: -less} if less else {})}
            else:
                money = [line_money(house, source.offer, stop.day, n) for n in range(most + 1)]
                chosen = [program.yes_no(cost_of(one)) for one in money[1:]]
                program.row({v: 1 for v in chosen}, "<=", 1)
                terms = {v: n for n, v in enumerate(chosen, 1)}
                receipt = {v: money[n].sure for n, v in enumerate(chosen, 1)}
            # Without its stop nothing is bought.
            program.row({**terms, made[source.stop]: -most}, "<=", 0)
            packs[source.name] = terms
            tills.setdefault(source.stop, {}).update(receipt)
    by_shop = {}
    for stop, receipt in tills.items():
        shop = house.shops[house.stops[stop].shop]
        terms = {v: cents / Fraction(100) for v, cents in receipt.items()}
        if shop.over is not None:
            reached = program.yes_no(-shop.off / 100)
            program.row({**terms, reached: -shop.over / 100}, ">=", 0)
            terms = {**terms, reached: -shop.off / 100}
        by_shop.setdefault(shop.slug, {}).update(terms)
    for slug, to_pay in by_shop.items():
        if house.shops[slug].credit > 0:
            # What it pays earns no cash back.
            credit = program.var(house.shops[slug].credit / 100, house.shops[slug].cash_back - 1)
            program.row({credit: 1, **{v: -factor for v, factor in to_pay.items()}}, "<=", 0)
    return packs
