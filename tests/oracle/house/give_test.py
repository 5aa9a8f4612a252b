"""What a use can do without, weeks, cans and the least from the freezer: in the files' meaning, worked by hand, and in what
the checker sees of a result."""
import json
import pathlib
import tempfile
import unittest
from dataclasses import replace
from fractions import Fraction

import account
import brute
import oracle
import pretend
from check import complaints
from generate import write
from read import read_house
from result import Result
from rules_test import NOON, house, missing

FIGURE = "own figure"


def gives(there, *shares):
    """The house, its uses being able to do without these shares."""
    uses = [replace(use, give=use.amount * Fraction(share)) for use, share in zip(there.uses, shares)]
    return replace(there, uses=uses)


class Give(unittest.TestCase):
    def costs(self, cents, there):
        """By both oracles."""
        self.assertAlmostEqual(float(oracle.best(there).total), cents, places=4)
        self.assertEqual(brute.best(there), cents)

    def test_what_a_use_can_do_without_costs_twice_its_price(self):
        there = house([(1, NOON, 100)], [(90, 90)])
        self.costs(90 + 2 * 10, gives(there, "1/10"))
        self.costs(180, gives(there, "1/20"))

    def test_beyond_that_it_is_missing(self):
        there = house([(1, NOON, 100)], [(80, 80, 1)])
        self.costs(80 + 2 * 10 + missing(10, 80), gives(there, "1/10"))

    def test_what_is_loose_or_open_is_taken_in_full(self):
        # The lot is used up on day 1, though 100 g of it would do and 10 g serve day 2; that is given back, for nothing else can.
        lots = [(110, "fridge", 9)]
        self.costs(2 * 10, gives(house([(1, NOON, 110), (2, NOON, 10)], [(110, 110)], [], lots), "1/11", 0))
        self.costs(0, gives(house([(1, NOON, 110)], [(110, 110)], [], lots), "1/11"))

    def test_what_was_lent_is_not_given_back_where_something_else_serves(self):
        # 10 g are lent on day 1; the pack that is there for day 3 serves day 2 as well.
        there = house([(1, NOON, 110), (2, NOON, 10), (3, NOON, 90, True)], [(100, 100)], lots=[(110, "fridge", 2)])
        self.assertEqual(brute.best(gives(there, "1/11", 0, 0)), 100)

    def test_no_pack_is_opened_for_it(self):
        # The second pack is as cheap as nothing, and would be good.
        there = house([(1, NOON, 100)], [(90, 1)], opened=2)
        self.assertAlmostEqual(brute.best(gives(there, "1/10")), 1 + 2 * Fraction(10, 90))
        self.assertAlmostEqual(float(oracle.best(gives(there, "1/10")).total), 1 + 2 * 10 / 90, places=4)

    def test_a_week_may_be_served_by_what_is_good_on_a_day_of_it(self):
        there = house([(6, NOON, 100)], [(100, 100)], sealed=3)
        self.costs(missing(100, 100), there)
        self.costs(missing(100, 100), replace(there, uses=[replace(there.uses[0], slack=2)]))
        self.costs(100, replace(there, uses=[replace(there.uses[0], slack=3)]))

    def test_less_than_sixty_grams_are_frozen_only_if_that_is_all_that_is_needed(self):
        lots = [(50, "fridge", 2), (50, "fridge", 9)]
        self.costs(missing(50, 100), house([(5, NOON, 100)], [(100, 100)], [], lots, frozen=30))
        self.costs(0, house([(5, NOON, 50), (6, NOON, 50)], [(100, 100)], [], lots, frozen=30))
        lots = [(60, "fridge", 2), (60, "fridge", 9)]
        self.costs(0, house([(5, NOON, 120)], [(100, 100)], [], lots, frozen=30))

    def test_what_was_in_the_freezer_before_is_used_up_however_little_it_is(self):
        self.costs(0, house([(1, NOON, 100)], [(100, 100)], [], [(50, "fridge", 2), (50, "freezer", 30)]))
        # And counts: 80 g come from the freezer.
        lots = [(20, "fridge", 9), (30, "freezer", 30), (50, "fridge", 2)]
        self.costs(0, house([(5, NOON, 100)], [(100, 100)], [], lots, frozen=20))

    def test_what_is_fresh_need_not_be_taken_first(self):
        # Of 70 g that have to be frozen 50 g would be too little.
        self.costs(0, house([(5, NOON, 120)], [(100, 100)], [], [(70, "fridge", 9), (70, "fridge", 2)], frozen=30))

    def test_the_rest_of_a_pack_is_frozen_where_a_whole_one_is_not(self):
        there = house([(1, NOON, 100), (8, NOON, 100)], [(200, 300)], opened=2)
        self.costs(600, there)
        there.foods["tell"] = replace(there.foods["tell"], portions=9)
        self.costs(300, there)
        self.costs(600, replace(there, uses=[replace(there.uses[0], day=0), replace(there.uses[1], day=10)]))


def tree(**more):
    """Ten grams of a hundred are lacking."""
    life = {"fridge": ["9 days", FIGURE]}
    return {"plans/household.yaml": {"people": [{"name": "Ada"}], "meals": {"dinner": "18:00"}},
            "plans/p.yaml": {"plan": "P", "from": "2027-03-01", "until": "2027-03-07", "meals": {"2027-03-01": {"dinner": ["100 g dorb"]}},
                             "trips": [{"date": "2027-03-01", "stops": ["east"]}], **more},
            "plans/stores/east.yaml": {"shop": "East", "prices": {"dorb": ["90 g pack 0.90", "80 g can 2.00"]}},
            "recipes/r.yaml": {"name": "r", "serves": "1", "made in": "exactly", "ingredients": ["100 g dorb"]},
            "recipes/foods.yaml": {"dorb": {"department": "dairy", "stored": "fridge", "keeps": life, "freezes": "well",
                                            "pieces": {"unit": ["50 g AP", FIGURE], "crumb": ["5 g AP", FIGURE], "can": ["100 g AP", FIGURE]},
                                            "count as": "unit"}}}


class Files(unittest.TestCase):
    def house(self, said):
        with tempfile.TemporaryDirectory() as folder:
            write(said, folder)
            return read_house(folder)

    def uses(self, dish, change=lambda said: None, **more):
        said = tree(**({"meals": {"2027-03-01": {"dinner": [dish]}}} if dish else {"meals": {}}), **more)
        change(said)
        return self.house(said).uses

    def give(self, dish, change=lambda said: None, **more):
        use, = self.uses(dish, change, **more)
        return use.give / use.amount

    def test_a_tenth_or_what_household_and_recipe_say(self):
        def household(said):
            said["plans/household.yaml"]["give"] = "30 %"

        def recipe(said):
            household(said)
            said["recipes/r.yaml"]["give"] = "5 %"

        self.assertEqual(self.give("100 g dorb"), Fraction(1, 10))
        self.assertEqual(self.give("100 g dorb", household), Fraction(3, 10))
        self.assertEqual(self.give("r", household), Fraction(3, 10))
        self.assertEqual(self.give("r", recipe), Fraction(1, 20))

    def test_nothing_of_what_is_counted_but_of_crumbs_and_cans(self):
        self.assertEqual(self.give("2 dorb"), 0)
        self.assertEqual(self.give("2 crumb dorb"), Fraction(1, 10))
        self.assertEqual(self.give("2 cans dorb"), Fraction(1, 10))

    def test_three_times_as_much_of_spices(self):
        def spice(said):
            said["recipes/foods.yaml"]["dorb"]["department"] = "spices"

        self.assertEqual(self.give("100 g dorb", spice), Fraction(3, 10))

    def test_nothing_of_what_is_wanted_in_the_house(self):
        self.assertEqual(self.give(None, extra=["100 g dorb"]), 0)
        self.assertEqual(self.give(None, staples=["keep 100 g dorb"]), 0)

    def test_a_week_is_one_use_of_what_does_not_keep_a_week(self):
        def short(said):
            said["recipes/foods.yaml"]["dorb"]["keeps"]["fridge"] = ["6 days", FIGURE]

        use, = self.uses(None, short, staples=["70 g dorb per week"])
        self.assertEqual((use.amount, use.slack, use.give), (70, 6, 7))
        self.assertEqual([(use.amount, use.slack) for use in self.uses(None, staples=["70 g dorb per week"])], [(10, 0)] * 7)
        use, = self.uses(None, short, staples=["300 g dorb per month"])
        self.assertEqual((use.amount, use.slack), (70, 6))

    def test_a_can_without_a_size_is_any(self):
        self.assertEqual([use.containers for use in self.uses("2 cans dorb")], [2])
        self.assertEqual([use.containers for use in self.uses("2 (100 g) cans dorb")], [None])

    def test_portions_of_what_bears_it_in_any_department(self):
        def pantry(said):
            said["recipes/foods.yaml"]["dorb"].update(department="condiments", keeps={
                "fridge": ["9 days", FIGURE], "freezer": ["60 days", FIGURE], "opened": ["2 days", FIGURE]})

        said = tree()
        pantry(said)
        food = self.house(said).foods["dorb"]
        self.assertEqual((food.frozen, food.portions), (None, 60))


class Check(unittest.TestCase):
    """Of a result in which ten grams of a hundred are lacking."""

    def wrong(self, change, said=None):
        with tempfile.TemporaryDirectory() as folder:
            write(said or tree(), folder)
            there = read_house(folder)
            result = json.loads(json.dumps(pretend.result_of(there, oracle.best(there))))
            change(result)
            out = pathlib.Path(folder) / "out"
            out.mkdir()
            (out / "result.json").write_text(json.dumps(result))
            try:
                return "\n".join(complaints(there, Result(there, out))[0])
            except Exception as reason:
                return str(reason)

    def test_nothing_is_wrong_with_it(self):
        self.assertEqual(self.wrong(lambda result: None), "")
        self.assertEqual(self.wrong(lambda result: self.assertEqual(result["short_but_enough"],
                                                                    [{"use": 0, "food": "dorb", "amount": 10}])), "")

    def test_sees_another_give(self):
        self.assertIn("can do without is off", self.wrong(lambda result: result["uses"][0].update(give=20)))

    def test_sees_another_slack(self):
        self.assertIn("a use that the files do not have", self.wrong(lambda result: result["uses"][0].update(slack=1)))

    def test_sees_containers_that_nobody_asked_for(self):
        self.assertIn("a use that the files do not have", self.wrong(lambda result: result["uses"][0].update(containers=1)))

    def test_sees_a_lack_that_is_not_said(self):
        self.assertIn("no list says it lacks", self.wrong(lambda result: result["short_but_enough"].clear()))

    def test_sees_that_more_is_lacking_than_may_be(self):
        def change(result):
            result["short_but_enough"][0]["amount"] = 20
            result["supplies"][0]["covers"] = result["supplies"][0]["amount"] = 80

        self.assertIn("can do without 10", self.wrong(change))

    def test_sees_what_is_called_missing_and_may_be_lacking(self):
        def change(result):
            result["still_to_find"] = result["short_but_enough"]
            result["short_but_enough"] = []

        self.assertIn("before anything is missing", self.wrong(change))

    def test_sees_a_lack_that_costs_nothing(self):
        def change(result):
            result["account"]["total"] -= result["account"]["lacking"]
            result["account"]["lacking"] = 0

        self.assertIn("lacking: the program says 0.0000 cents, its lines say 20.0000", self.wrong(change))

    def test_sees_that_something_is_left_which_the_use_could_have_taken(self):
        def change(result):
            result["supplies"][0]["covers"] = result["supplies"][0]["amount"] = 95
            result["purchases"][0].update(packs=2, cost=180, kept=85)
            result["short_but_enough"][0]["amount"] = 5

        self.assertIn("is left", self.wrong(change))

    def test_sees_what_covers_more_than_it_is(self):
        def change(result):
            result["supplies"][0]["covers"] = 100
            result["short_but_enough"].clear()

        self.assertIn("not for containers", self.wrong(change))

    def test_sees_too_little_from_the_freezer(self):
        lots = [(70, "fridge", 9), (50, "fridge", 2)]
        there = house([(5, NOON, 100)], [(100, 100)], [], lots, frozen=30)
        item, = oracle.items_of(there)
        plan = account.ItemPlan(takings=[account.Part("lot0", Fraction(50), need=0),
                                         account.Part("lot1", Fraction(50), True, 0, need=0)])
        plan.wasted["lot0"] = Fraction(20)
        self.assertEqual(account.broken(there, [item], [plan]), ["tell: need 0 takes only 50.0 from the freezer"])


if __name__ == "__main__":
    unittest.main()
