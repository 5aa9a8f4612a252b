"""Prices at a till and the usual price, worked by hand."""
import unittest
from fractions import Fraction

from money import line_money, price_of, to_cents, usual_price
from things import Buying, Food, House, Offer, Shop, Stop


def house_of(offers, *, tax=None, back=0, stops=None, member_of=(), buying=None):
    foods = {"olm": Food("olm", "canned", "pantry", "g", {}, 200, "pantry", None, None, Fraction(3, 2))}
    shops = {slug: Shop(slug, slug, None, tax or {}, Fraction(back), Fraction(0), None, Fraction(0),
                        [offer for offer in offers if offer.shop == slug]) for slug in ("east", "west")}
    stops = stops if stops is not None else [Stop("east", 0, 720, False, Fraction(0))]
    return House(0, 6, foods, shops, stops, [], [], {}, list(member_of), buying or {}, [], Fraction(1, 2), Fraction(1, 4))


def tin(price, shop="east", size=100, **terms):
    return Offer(shop, "olm", "tin", Fraction(size), False, Fraction(price), **terms)


class Till(unittest.TestCase):
    def test_half_a_cent_is_rounded_up(self):
        self.assertEqual([to_cents(Fraction(n, 10)) for n in (14, 15, 25, 0)], [1, 2, 3, 0])

    def test_packs_are_made_up_of_deals_and_singles_in_the_cheapest_way(self):
        offer = tin(300, deal=(3, Fraction(750)))
        self.assertEqual([price_of(house_of([offer]), offer, 0, n) for n in range(8)],
                         [0, 300, 600, 750, 1050, 1350, 1500, 1800])

    def test_a_deal_that_is_dearer_is_not_taken(self):
        offer = tin(300, deal=(2, Fraction(700)))
        self.assertEqual(price_of(house_of([offer]), offer, 0, 4), 1200)

    def test_a_sale_holds_on_its_days_and_only_where_it_is_cheaper(self):
        offer = tin(300, sale=(Fraction(200), 1, 2), deal=(2, Fraction(390)))
        self.assertEqual([price_of(house_of([offer]), offer, day, 3) for day in (0, 1, 2, 3)], [690, 590, 590, 690])
        dear = tin(300, sale=(Fraction(350), 0, 9))
        self.assertEqual(price_of(house_of([dear]), dear, 1, 1), 300)

    def test_members_pay_the_member_price(self):
        offer = tin(300, member=Fraction(250))
        self.assertEqual(price_of(house_of([offer]), offer, 0, 2), 600)
        self.assertEqual(price_of(house_of([offer], member_of=["east"]), offer, 0, 2), 500)

    def test_a_till_rounds_tax_by_line_and_the_objective_does_not(self):
        offer = tin(105)
        money = line_money(house_of([offer], tax={"canned": Fraction(1, 10)}, back=Fraction(2, 100)), offer, 0, 1)
        self.assertEqual((money.till, money.till_tax), (105, 11))  # 10.5 cents
        self.assertEqual((money.price, money.tax, money.cash_back), (105, Fraction(21, 2), Fraction(21, 10)))

    def test_what_a_till_rounds_is_sure_but_for_half_a_cent(self):
        kilo = Offer("east", "olm", "kg", Fraction(50), True, Fraction(388, 20))
        taxed = {"canned": Fraction(1, 10)}
        self.assertEqual(line_money(house_of([tin(105)]), tin(105), 0, 2).sure, 210)
        self.assertEqual(line_money(house_of([tin(105)], tax=taxed), tin(105), 0, 2).sure, Fraction(2305, 10))
        self.assertEqual(line_money(house_of([kilo]), kilo, 0, 3).sure, Fraction(577, 10))
        self.assertEqual(line_money(house_of([kilo], tax=taxed), kilo, 0, 3).sure, Fraction(6302, 100))

    def test_what_is_weighed_counts_exactly_and_is_rounded_at_the_till(self):
        offer = Offer("east", "olm", "kg", Fraction(50), True, Fraction(388, 20))  # 3.88/kg, a step is 50 g
        money = line_money(house_of([offer], tax={"canned": Fraction(1, 10)}), offer, 0, 3)
        self.assertEqual((money.till, money.till_tax), (58, 6))  # 58.2; a tenth of 58 is 5.8
        self.assertEqual((money.price, money.tax), (Fraction(582, 10), Fraction(582, 100)))

    def test_a_shop_that_is_not_preferred_counts_a_tenth_more(self):
        offer = tin(100)
        there = house_of([offer], tax={"canned": Fraction(1, 10)}, buying={"olm": Buying(prefer=["west"])})
        self.assertEqual(line_money(there, offer, 0, 1).preference, 11)


class Usual(unittest.TestCase):
    def test_is_the_least_regular_price_after_tax_within_reach(self):
        offers = [tin(300, sale=(Fraction(100), 0, 9)), tin(500, size=200), tin(10, shop="west")]
        self.assertEqual(usual_price(house_of(offers, tax={"canned": Fraction(1, 10)}), "olm"), Fraction(275, 100))

    def test_is_the_least_of_all_when_none_is_within_reach(self):
        self.assertEqual(usual_price(house_of([tin(10, shop="west")]), "olm"), Fraction(1, 10))
        self.assertEqual(usual_price(house_of([tin(300, first=3), tin(10, shop="west")]), "olm"), Fraction(1, 10))

    def test_is_nothing_when_nobody_sells_it(self):
        self.assertEqual(usual_price(house_of([]), "olm"), 0)
