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

sys.path.insert(0, str(pathlib.Path(__file__).parent))

import account  # noqa: E402
import oracle  # noqa: E402
from money import line_money, regular_price  # noqa: E402
from read import END_OF_DAY, Reader  # noqa: E402


def iso(day):
    return datetime.date.fromordinal(day).isoformat()


def uses_of(house, slots):
    """(meals, uses) as the program writes them."""
    meals, uses = [], []
    names = {clock: name for name, clock in slots.items()}
    for use in house.uses:
        said = {"food": use.food, "amount": float(use.amount), "date": iso(use.day), "fresh": use.fresh}
        if use.clock == END_OF_DAY:
            said["staple"] = 0
        else:
            meal = {"date": iso(use.day), "meal": names[use.clock]}
            if meal not in meals:
                meals.append(meal)
            said.update(meal=meals.index(meal), dish=0)
        uses.append(said)
    return meals, uses


def result_of(house, slots, best):
    visits, purchases, supplies, from_stock = [], [], [], []
    stock = [{"food": lot.food, "amount": float(lot.amount), "kept": 0.0} for lot in house.lots]
    made, lines = account.stops_made(house, best.plans), {}
    for stop in made:
        visits.append({"date": iso(house.stops[stop].day), "shop": house.shops[house.stops[stop].shop].name,
                       "home": house.stops[stop].home})
    for item, plan in zip(best.items, best.plans):
        for source in item.sources:
            packs = plan.packs.get(source.name, 0)
            if packs:
                lines[source.name] = len(purchases)
                money = line_money(house, source.offer, source.day, packs)
                worth = house.worth(source.food)
                kept = [keeping for keeping in plan.kept if keeping.source == source.name]
                frozen = [taking for taking in plan.takings if taking.source == source.name and taking.frozen]
                purchases.append({
                    "visit": made.index(source.stop), "food": source.food, "pack": source.offer.text, "packs": packs,
                    "price": float(regular_price(house, source.offer)), "cost": money.till,
                    "freeze": float(sum(x.amount for x in frozen + [k for k in kept if k.frozen]) / worth),
                    "kept": float(sum(k.amount for k in kept) / worth), "wasted": float(plan.wasted[source.name] / worth)})
            elif source.lot is not None:
                kept = sum(k.amount for k in plan.kept if k.source == source.name)
                stock[source.lot]["kept"] = float(kept / house.worth(source.food))
        for part in plan.takings:
            need = item.needs[part.need]
            worth = house.worth(next(source.food for source in item.sources if source.name == part.source))
            said = {"use": need.use, "amount": float(part.amount / worth), "frozen": part.frozen,
                    "covers": float(part.amount / house.worth(house.uses[need.use].food))}
            if part.source in lines:
                supplies.append({"purchase": lines[part.source], **said})
            else:
                from_stock.append({"lot": int(part.source[3:]), **said})
    meals, uses = uses_of(house, slots)
    return {"proven": True, "account": {name: float(cents) / 100 for name, cents in best.terms.items()}, "meals": meals,
            "makings": [], "uses": uses, "on_hand": stock, "from_stock": from_stock, "visits": visits,
            "purchases": purchases, "supplies": supplies}


def spoil(result, fault):
    """Plants a fault; does nothing where the result offers no place for it."""
    if fault == "wrong sum":
        result["account"]["total"] += 0.01
    elif fault == "free goods" and result["purchases"]:
        result["purchases"][0]["packs"] += 1
    elif fault == "serves twice" and result["supplies"]:
        result["supplies"][0]["amount"] *= 2
    elif fault == "nothing bought":
        missing = sum(1 for _ in result["uses"])
        result.update(visits=[], purchases=[], supplies=[], account=None)
        result["proven"] = missing > 0


def main():
    reader = Reader(".")
    house = reader.house(sys.argv[2])
    result = result_of(house, reader.slots, oracle.best(house))
    spoil(result, os.environ.get("FAULT"))
    out = pathlib.Path("out/p")
    out.mkdir(parents=True, exist_ok=True)
    (out / "result.json").write_text(json.dumps(result))


if __name__ == "__main__":
    main()
