"""Lives, packs and rules of use, worked by hand: one food at one shop, small changes."""
import unittest
from dataclasses import replace
from fractions import Fraction

import brute
import oracle
from things import Food, House, Lot, Offer, Shop, Stop, Use

NOON = 720


def house(uses, offers, stops=((0, 600),), lots=(), *, sealed=20, frozen=None, opened=None, room=None, days=10,
          kept=0, waste=0, handling=0, stored="fridge"):
    """`uses`: (day, clock, grams[, fresh]); `offers`: (grams, cents[, limit])."""
    food = Food("tell", "dairy", stored, "g", {}, sealed, stored, frozen, opened, Fraction(1))
    listed = [Offer("east", "tell", f"{size} g", Fraction(size), False, Fraction(cents), limit=limit[0] if limit else None)
              for size, cents, *limit in offers]
    shop = Shop("east", "East", None, {}, Fraction(0), Fraction(0), None, Fraction(0), listed)
    return House(0, days - 1, {"tell": food}, {"east": shop}, [Stop("east", day, home, False, Fraction(0)) for day, home in stops],
                 [Use("tell", day, clock, Fraction(grams), any(fresh)) for day, clock, grams, *fresh in uses],
                 [Lot("tell", Fraction(grams), place, last) for grams, place, last in lots],
                 {place: Fraction(ml) for place, ml in (room or {}).items()}, [], {}, [], Fraction(kept), Fraction(waste), Fraction(handling))


def missing(grams_cost, pack, uses=1):
    """20 times what the missing amount would cost, and 20 times the cheapest pack for each use that lacks something."""
    return 20 * grams_cost + 20 * pack * uses


class Rules(unittest.TestCase):
    def costs(self, cents, there):
        """By both oracles."""
        self.assertAlmostEqual(float(oracle.best(there).total), cents, places=4)
        self.assertEqual(brute.best(there), cents)

    def test_bought_on_a_day_it_keeps_so_many_days_more(self):
        self.costs(100, house([(3, NOON, 100)], [(100, 100)], sealed=3))
        self.costs(missing(100, 100), house([(4, NOON, 100)], [(100, 100)], sealed=3))

    def test_shopping_that_is_home_later_is_too_late(self):
        self.costs(100, house([(0, 600, 100)], [(100, 100)]))
        self.costs(missing(100, 100), house([(0, 599, 100)], [(100, 100)]))

    def test_frozen_at_home_it_keeps_longer_but_is_not_fresh(self):
        self.costs(100, house([(6, NOON, 100)], [(100, 100)], sealed=3, frozen=6))
        self.costs(missing(100, 100), house([(7, NOON, 100)], [(100, 100)], sealed=3, frozen=6))
        self.costs(missing(100, 100), house([(6, NOON, 100, True)], [(100, 100)], sealed=3, frozen=6))

    def test_what_was_in_the_freezer_is_not_held_back_from_a_need_that_goes_short(self):
        # Held back for the second one, it would make that one whole.
        self.costs(50 + missing(100, 50, uses=2), house([(0, 599, 100), (1, NOON, 100)], [(50, 50, 1)], lots=[(50, "freezer", 9)]))

    def test_opened_it_keeps_for_its_opened_life(self):
        self.costs(300, house([(1, NOON, 100), (4, NOON, 100)], [(200, 300)], opened=3))
        self.costs(600, house([(1, NOON, 100), (5, NOON, 100)], [(200, 300)], opened=3))

    def test_opened_it_keeps_no_longer_than_sealed(self):
        self.costs(600, house([(1, NOON, 100), (4, NOON, 100)], [(200, 300)], ((0, 600), (2, 600)), sealed=3, opened=2))

    def test_frozen_whole_it_is_thawed_for_a_first_use_and_open_from_then(self):
        # Thawed on day 4 it is open to day 6, though frozen it keeps to day 5 only; thawed it is not fresh.
        self.costs(300, house([(4, NOON, 100), (6, NOON, 100)], [(200, 300)], sealed=3, frozen=5, opened=2))
        self.costs(300 + missing(150, 300), house([(4, NOON, 100), (6, NOON, 100, True)], [(200, 300)], sealed=3, frozen=5, opened=2))
        self.costs(300 + missing(150, 300), house([(4, NOON, 100), (7, NOON, 100)], [(200, 300)], sealed=3, frozen=5, opened=2))

    def test_frozen_in_portions_each_keeps_as_long_as_frozen_food(self):
        life = {"sealed": 4, "frozen": 8, "opened": 2, "days": 14}
        # Opened and portioned when it comes home, on day 0, or when it is first used, on day 3.
        self.costs(300, house([(6, NOON, 100), (8, NOON, 100)], [(200, 300)], **life))
        self.costs(300, house([(3, NOON, 100), (11, NOON, 100)], [(200, 300)], **life))
        self.costs(300 + missing(150, 300), house([(3, NOON, 100), (12, NOON, 100)], [(200, 300)], **life))
        self.costs(300 + missing(150, 300), house([(3, NOON, 100), (11, NOON, 100, True)], [(200, 300)], **life))

    def test_frozen_whole_it_is_not_frozen_again(self):
        # Thawed on day 4 the rest is good to day 6; a second freezing would serve day 7.
        there = house([(4, NOON, 100, False), (7, NOON, 100)], [(200, 300, 1)], sealed=3, frozen=5, opened=2)
        self.costs(300 + missing(150, 300), there)

    def test_what_is_open_is_used_up_before_another_pack_is_opened(self):
        # Opened on day 1 there is 100 g left on day 3, which needs 200 g: that is used, and the second pack opened, in
        # which 200 g is left for day 5. Left aside for nothing, the 100 g would go bad and a third pack be needed.
        uses = [(1, NOON, 200), (3, NOON, 200), (5, NOON, 200)]
        self.costs(300 + 300, house(uses, [(300, 300)], opened=2))

    def test_nothing_is_held_back_while_a_use_goes_short(self):
        # One pack for 100 g now or for 500 g later: it is opened now.
        uses = [(1, NOON, 100), (6, NOON, 250), (7, NOON, 250)]
        self.costs(500 + missing(500, 500, 2), house(uses, [(500, 500, 1)], opened=3))

    def test_stock_in_the_freezer_serves_what_need_not_be_fresh(self):
        lots = [(100, "fridge", 2), (100, "freezer", 30)]
        self.costs(0, house([(1, NOON, 100), (2, NOON, 100, True)], [(100, 300)], lots=lots))

    def test_stock_may_be_frozen_on_the_first_day(self):
        self.costs(0, house([(5, NOON, 100)], [(100, 300)], lots=[(100, "fridge", 2)], frozen=9))
        self.costs(300, house([(5, NOON, 100)], [(100, 300)], ((4, 600),), lots=[(100, "fridge", 2)]))

    def test_what_waits_over_night_takes_room(self):
        self.costs(100, house([(1, NOON, 100)], [(100, 100)], room={"fridge": 100}))
        self.costs(100 + missing(100, 100), house([(1, NOON, 200)], [(100, 100)], room={"fridge": 100}))
        self.costs(200, house([(0, NOON, 200)], [(100, 100)], room={"fridge": 100}))

    def test_stock_that_takes_more_than_there_is_makes_the_limit(self):
        self.costs(0, house([(2, NOON, 300)], [(100, 100)], lots=[(300, "fridge", 9)], room={"fridge": 100}))

    def test_what_is_left_is_kept_or_wasted(self):
        # 100 g left of 1.00 a 100 g; the plan ends on day 9, and on day 12 it must still be good.
        worth = {"kept": Fraction(1, 2), "waste": Fraction(1, 4)}
        self.costs(200 - 50, house([(1, NOON, 100)], [(200, 200)], sealed=12, **worth))
        self.costs(200 + 25, house([(1, NOON, 100)], [(200, 200)], sealed=11, **worth))

    def test_kept_food_counts_up_to_two_weeks_use(self):
        # Fourteen days of 100 g in ten days: 140 g.
        self.costs(400 - 70, house([(1, NOON, 100)], [(400, 400)], kept=Fraction(1, 2)))

    def test_what_is_good_to_the_end_is_kept_and_takes_room(self):
        # The big pack is cheaper, but 200 g of it would be left, good, and there is room for 100 g.
        there = house([(0, NOON, 100)], [(300, 110), (100, 120)], room={"fridge": 100})
        self.costs(120, there)
        self.costs(110, house([(0, NOON, 100)], [(300, 110), (100, 120)], sealed=5, room={"fridge": 100}))

    def test_an_unopened_pack_is_opened_before_a_use_goes_short(self):
        # Nothing can be bought. The lot is opened on day 1 for 50 g and gone by day 5, which needs 100 g.
        uses = [(1, NOON, 50), (5, NOON, 100)]
        self.costs(missing(100, 100, 1), house(uses, [(100, 100)], [], [(100, "fridge", 9)], opened=2))

    def test_at_one_moment_the_fresh_use_comes_first(self):
        # 100 g is there for both: the fresh one is served, the other bought, frozen.
        uses = [(4, NOON, 100, False), (4, NOON, 100, True)]
        self.costs(100, house(uses, [(100, 100)], lots=[(100, "fridge", 4)], sealed=2, frozen=9))

    def test_each_use_from_the_freezer_takes_time(self):
        uses = [(1, NOON, 100), (5, NOON, 100), (6, NOON, 100)]
        life = {"sealed": 2, "frozen": 9, "handling": 30}
        self.costs(300 + 2 * 30, house(uses, [(100, 100)], **life))
        # What is in the freezer already has a bag to thaw as well.
        self.costs(100 + 2 * 30, house(uses, [(100, 100)], lots=[(200, "freezer", 9)], **life))

    def test_what_is_bought_frozen_takes_no_time(self):
        self.costs(100, house([(5, NOON, 100)], [(100, 100)], stored="freezer", handling=30))

    def test_what_is_eaten_at_one_moment_is_frozen_in_one_bag(self):
        self.costs(200 + 30, house([(5, NOON, 100), (5, NOON, 100)], [(100, 100)], sealed=2, frozen=9, handling=30))

    def test_a_pack_that_is_thawed_whole_takes_time_once(self):
        uses = [(4, NOON, 100), (4, NOON + 60, 50), (6, NOON, 50)]
        self.costs(300 + 30, house(uses, [(200, 300)], sealed=3, frozen=5, opened=2, handling=30))

    def test_a_use_goes_without_what_would_have_to_be_frozen(self):
        # The pack for it is in the house anyhow; freezing it costs more than a use that lacks something.
        uses = [(1, NOON, 50), (5, NOON, 50)]
        self.costs(100 + 200, house(uses, [(100, 100)], sealed=2, frozen=9, handling=200))
        self.costs(100 + missing(50, 100), house(uses, [(100, 100)], sealed=2, frozen=9, handling=3200))

    def test_of_equals_what_stands_first_in_the_list_is_used_first(self):
        # 100 g fresh and 100 g frozen for the first use leave a pack for the fresh one and 100 g in the freezer. Where the big
        # pack stands first, the first use takes that (and the fresh one lacks something) or all that is frozen.
        uses = [(1, NOON, 200), (1, NOON + 60, 200, True), (5, NOON, 100)]
        rest = {"lots": [(200, "freezer", 30)], "sealed": 2}
        self.costs(160, house(uses, [(100, 60, 1), (200, 100, 1)], **rest))
        self.costs(100 + missing(50, 60), house(uses, [(200, 100, 1), (100, 60, 1)], **rest))

    def test_wasted_stock_counts(self):
        gone = [(400, "fridge", 0)]  # good to day 0 only
        self.costs(50 + 50, house([(1, NOON, 100)], [(100, 50)], lots=gone, waste=Fraction(1, 4)))

    def weighed(self, uses, packs=(), lots=(), **rest):
        """Of steps of 50 g at 25 cents on day 0; packs on day 2."""
        there = house(uses, [(50, 25), *packs], ((0, 600), (2, 600)), lots, **rest)
        scale, *others = there.shops["east"].offers
        offers = [replace(scale, by_weight=True, last=0)] + [replace(offer, first=2) for offer in others]
        return replace(there, shops={"east": replace(there.shops["east"], offers=offers)})

    def test_a_use_is_not_split_between_what_is_weighed_and_what_is_bought_later(self):
        there = self.weighed([(1, NOON, 50), (3, NOON, 150)], [(100, 40)])
        self.assertEqual(brute.best(there), 100)
        # The first as well if any amount could be weighed out: 50 g more and one pack.
        self.assertAlmostEqual(float(oracle.best(there).total), 90, places=4)

    def test_stock_is_used_before_what_is_weighed_or_that_before_the_stock(self):
        # The stock is good for both; 100 g are weighed out for the use of day 1, or for that of day 3.
        self.costs(50, self.weighed([(1, NOON, 100), (3, NOON, 100)], [], [(100, "fridge", 9)]))
        self.costs(50, self.weighed([(1, NOON, 100), (3, NOON, 100)], [], [(100, "fridge", 1)]))

    def test_what_the_scale_rounds_up_is_eaten_with_the_rest(self):
        worth = {"kept": Fraction(1, 2), "waste": Fraction(1, 4)}
        self.assertEqual(brute.best(self.weighed([(1, NOON, 120)], **worth)), 75)
        self.assertEqual(brute.best(self.weighed([(1, NOON, 120)], sealed=5, **worth)), 75)


if __name__ == "__main__":
    unittest.main()
