"""Random houses that are tiny enough for brute.py: one or two items, amounts in units of 100 g."""
import random
from fractions import Fraction

from things import FOREVER, Buying, Food, House, Lot, Offer, Shop, Stop, Use


def tiny(number):
    r = random.Random(number)
    days = r.choice((3, 5, 7))
    foods, offers, uses, lots = {}, {"a": [], "b": []}, [], []
    shops = ["a", "b"][: r.choice((1, 2))]
    for name in ["dorb", "eskel"][: r.choice((1, 1, 1, 2))]:
        frozen = r.choice((None, None, 2, 4, 20))
        opened = r.choice((None, 1, 1, 2, 3))
        sealed = r.choice((1, 2, 3, 4, 20))
        if opened is not None and opened >= min(sealed, days):
            opened = None
        foods[name] = Food(name, "dairy", "fridge", "g", {}, sealed, "fridge", frozen, opened, Fraction(1))
        for shop in shops:
            for _ in range(r.choice((0, 1, 1, 2) if len(shops) == 1 else (0, 1, 1))):
                size = r.choice((1, 2, 2, 3, 3, 4)) * 100
                weighed = r.random() < 0.15
                offers[shop].append(Offer(
                    shop, name, "pack", Fraction(size), weighed, Fraction(r.randint(30, 90) * size // 100),
                    sale=(Fraction(20 * size // 100), 0, r.randrange(days)) if r.random() < 0.3 else None,
                    deal=(2, Fraction(r.randint(60, 120) * size // 100)) if not weighed and r.random() < 0.2 else None,
                    limit=r.choice((1, 1, 2, 2, None))))
        moments = sorted({(r.randrange(days), r.choice((420, 1080))) for _ in range(r.choice((1, 2, 3, 3)))})
        uses += [Use(name, day, clock, Fraction(r.choice((1, 1, 2, 2, 3)) * 100), r.random() < 0.2) for day, clock in moments]
        if r.random() < 0.4:
            lots.append(Lot(name, Fraction(r.choice((1, 2, 3)) * 100), r.choice(("fridge", "freezer")), r.randrange(days + 4)))
    room = {place: Fraction(r.choice((100, 200, 300, 400))) for place in ("fridge", "freezer") if r.random() < 0.25}
    stops = sorted((Stop(shop, r.choice((0, 0, r.randrange(days))), r.choice((360, 600, 1200)), r.random() < 0.05,
                         Fraction(r.choice((0, 10, 50)))) for shop in shops for _ in range(r.choice((1, 1, 2)))),
                   key=lambda stop: stop.day)
    stops = stops[:3]
    made = {shop: Shop(shop, shop, None, {"dairy": Fraction(1, 12)} if r.random() < 0.3 else {}, Fraction(r.choice((0, 0, 2)), 100),
                       Fraction(r.choice((0, 0, 0, 40))), r.choice((None, Fraction(r.choice((100, 150, 250))))),
                       Fraction(60), offers[shop]) for shop in shops}
    buying = {"dorb": Buying(prefer=["b"])} if len(shops) == 2 and r.random() < 0.2 else {}
    groups = [{"dorb": Fraction(1), "eskel": Fraction(r.choice((1, 2)))}] if len(foods) == 2 and r.random() < 0.4 else []
    return House(0, days - 1, foods, made, stops, uses, lots, room, [], buying, groups,
                 Fraction(r.choice((0, 1, 1, 2)), 2), Fraction(r.choice((0, 1, 1)), 4), Fraction(r.choice((0, 10, 60))))
