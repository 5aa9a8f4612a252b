"""What things cost: lines at a till, the usual price (the account, "Money" and "Shortage")."""
import math
from dataclasses import dataclass
from fractions import Fraction

PREFERENCE = Fraction(1, 10)
MISSING_COSTS = 20  # times the usual price
LACKING_COSTS = 2  # likewise, of what a use can do without


def to_cents(exact):
    """Half a cent is rounded up, as a till does."""
    return math.floor(exact + Fraction(1, 2))


def holds(offer, day):
    return offer.first <= day <= offer.last


def regular_price(house, offer):
    if offer.member is not None and offer.shop in house.member_of:
        return min(offer.price, offer.member)
    return offer.price


def single_price(house, offer, day):
    price = regular_price(house, offer)
    if offer.sale and offer.sale[1] <= day <= offer.sale[2]:
        price = min(price, offer.sale[0])
    return price


def price_of(house, offer, day, n):
    """Of n packs (or steps), not rounded: the cheapest way to make up n of deals and singles."""
    single = single_price(house, offer, day)
    if not offer.deal:
        return n * single
    packs, price = offer.deal
    return min(deals * price + (n - deals * packs) * single for deals in range(n // packs + 1))


def tax_rate(house, offer):
    return house.shops[offer.shop].tax.get(house.foods[offer.food].department, Fraction(0))


@dataclass
class LineMoney:
    """Of one line, in cents. `till` and `till_tax` are what the receipt says. The rest is what the objective counts,
    not rounded: `sure` is what it counts at least towards a reduction and a credit, since a till rounds what is
    weighed, and a tax, by line."""

    till: int
    till_tax: int
    sure: Fraction
    price: Fraction
    tax: Fraction
    cash_back: Fraction
    preference: Fraction


def line_money(house, offer, day, n):
    price = price_of(house, offer, day, n)
    till = to_cents(price)
    rate = tax_rate(house, offer)
    tax = rate * price
    rounded = Fraction(int(offer.by_weight) + int(rate > 0), 2)
    back = house.shops[offer.shop].cash_back * price
    extra = Fraction(0) if house.preferred(offer.food, offer.shop) else PREFERENCE * (price + tax)
    return LineMoney(till, to_cents(rate * till), max(Fraction(0), price + tax - rounded), price, tax, back, extra)


def counted_offers(house, item):
    """The offers that count for the usual price: those that some trip could take up, or else all."""
    everywhere, within_reach = [], []
    for shop in house.shops.values():
        for offer in shop.offers:
            if house.item_of(offer.food) == item and house.may_buy(offer.food, shop.slug):
                everywhere.append(offer)
                if any(stop.shop == shop.slug and holds(offer, stop.day) for stop in house.stops):
                    within_reach.append(offer)
    return within_reach or everywhere


def pack_price(house, offer):
    """Regular, with tax, not rounded."""
    return regular_price(house, offer) * (1 + tax_rate(house, offer))


def usual_price(house, item):
    """Cents for one unit of the item's worth; 0 if nobody sells it."""
    return min([pack_price(house, offer) / (offer.size * house.worth(offer.food)) for offer in counted_offers(house, item)],
               default=Fraction(0))


def missing_at_all(house, item):
    """What it costs, besides its amount, that something of a use is missing; nothing if nobody sells it."""
    packs = [pack_price(house, offer) for offer in counted_offers(house, item)]
    return MISSING_COSTS * min(packs) + max([stop.cost for stop in house.stops], default=0) if packs else Fraction(0)
