#!/usr/bin/env python3
"""Stands in for the program in the tests of check.py and compare.py: writes the oracle's own answer as a
result.json, with a fault if the environment's FAULT names one.

    pretend.py build plans/p.yaml        in the folder of a house
"""
import datetime
import json
import os
import pathlib
import sys
from dataclasses import replace
from fractions import Fraction

sys.path.insert(0, str(pathlib.Path(__file__).parent))

import account  # noqa: E402
import oracle  # noqa: E402
from money import line_money, regular_price  # noqa: E402
from read import read_house  # noqa: E402


def iso(day):
    return datetime.date.fromordinal(day).isoformat()


def uses_of(house):
    return [{"food": use.food, "amount": float(use.amount), "date": iso(use.day), "clock": use.clock, "fresh": use.fresh,
             "give": float(use.give), "slack": use.slack, "containers": None}
            for use in house.uses]


def handed_out(house, item, need, part, done):
    """(use, amount in the item's worth): a part of a need goes to its uses one after the other. `done` by use."""
    left = part.amount
    for use in need.uses:
        wanted = house.uses[use].amount * house.worth(house.uses[use].food) - done.get(use, 0)
        given = min(left, wanted)
        if given > 0:
            done[use] = done.get(use, 0) + given
            left -= given
            yield use, given


def without(house, best):
    """(short but enough, still to find)"""
    lists = [], []
    for item, plan in zip(best.items, best.plans):
        for need, amounts in zip(item.needs, zip(*account.lacking_and_missing(item, plan))):
            served = sum(part.amount for part in plan.takings if part.need == item.needs.index(need))
            gives = amounts[0]
            for use in need.uses:
                worth = house.worth(house.uses[use].food)
                open_ = max(house.uses[use].amount * worth - served, Fraction(0))
                served -= house.uses[use].amount * worth - open_
                lacking = min(open_, gives, house.uses[use].give * worth)
                gives -= lacking
                for said, amount in zip(lists, (lacking, open_ - lacking)):
                    if amount > Fraction(1, 10**5):
                        said.append({"use": use, "food": house.uses[use].food, "amount": float(amount / worth)})
    return lists


def result_of(house, best):
    visits, purchases, supplies, from_stock = [], [], [], []
    stock = [{"food": lot.food, "amount": float(lot.amount), "kept": 0, "wasted": 0} for lot in house.lots]
    made, lines = account.stops_made(house, best.plans), {}
    for stop in made:
        visits.append({"date": iso(house.stops[stop].day), "shop": house.shops[house.stops[stop].shop].name,
                       "home": house.stops[stop].home})
    for item, plan in zip(best.items, best.plans):
        for source in item.sources:
            kept = [keeping for keeping in plan.kept if keeping.source == source.name]
            if source.lot is not None:
                stock[source.lot]["kept"] = float(sum(k.amount for k in kept) / house.worth(source.food))
                stock[source.lot]["wasted"] = float(plan.wasted[source.name] / house.worth(source.food))
            packs = plan.packs.get(source.name, 0)
            if packs:
                lines[source.name] = len(purchases)
                money = line_money(house, source.offer, source.day, packs)
                worth = house.worth(source.food)
                frozen = [taking for taking in plan.takings if taking.source == source.name and taking.frozen]
                purchases.append({
                    "visit": made.index(source.stop), "food": source.food, "pack": source.offer.text, "packs": packs,
                    "price": float(regular_price(house, source.offer)), "cost": money.till,
                    "freeze": float(sum(x.amount for x in frozen + [k for k in kept if k.frozen]) / worth),
                    "kept": float(sum(k.amount for k in kept) / worth), "wasted": float(plan.wasted[source.name] / worth)})
        done = {}
        for part in plan.takings:
            need = item.needs[part.need]
            worth = house.worth(next(source.food for source in item.sources if source.name == part.source))
            for use, covered in handed_out(house, item, need, part, done):
                said = {"use": use, "amount": float(covered / worth), "frozen": part.frozen,
                        "covers": float(covered / house.worth(house.uses[use].food)),
                        "frozen_on": iso(part.since) if part.frozen else None,
                        "opened_on": iso(part.thawed if part.thawed is not None else part.since) if part.frozen else None}
                if part.source in lines:
                    supplies.append({"purchase": lines[part.source], **said})
                else:
                    from_stock.append({"lot": int(part.source[3:]), **said})
    terms = {**account.account(house, best.items, best.plans, account.tills), "total": best.total}
    enough, missing = without(house, best)
    return {"proven": True, "account": {name: float(cents) / 100 for name, cents in terms.items()}, "uses": uses_of(house),
            "short_but_enough": enough, "still_to_find": missing, "on_hand": stock, "from_stock": from_stock, "visits": visits,
            "purchases": purchases, "supplies": supplies}


def with_nothing_for_sale(house):
    """Prices stay as they are, but no pack of anything is to be had."""
    shops = {slug: replace(shop, offers=[replace(offer, limit=0) for offer in shop.offers])
             for slug, shop in house.shops.items()}
    return replace(house, shops=shops)


def spoil(result, fault):
    """Plants a fault; does nothing where the result offers no place for it."""
    if fault == "wrong sum":
        result["account"]["total"] += 0.01
    elif fault == "free goods" and result["purchases"]:
        result["purchases"][0]["packs"] += 1
    elif fault == "serves twice" and result["supplies"]:
        result["supplies"][0]["amount"] *= 2


def build(folder, plan, fault):
    """Writes out/p/result.json of the house in the folder."""
    house = read_house(folder, plan)
    best = oracle.best(with_nothing_for_sale(house) if fault == "nothing bought" else house)
    result = result_of(house, best)
    spoil(result, fault)
    out = pathlib.Path(folder) / "out/p"
    out.mkdir(parents=True, exist_ok=True)
    (out / "result.json").write_text(json.dumps(result))


if __name__ == "__main__":
    build(".", sys.argv[2], os.environ.get("FAULT"))
