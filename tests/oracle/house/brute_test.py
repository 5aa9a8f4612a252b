"""The two oracles on tiny random houses: rows for a solver, and everything tried."""
import unittest
from dataclasses import replace

import brute
import oracle
from lp import NotSolved
from tiny import tiny

MOST = 3  # packs of a line that are tried
# Houses in which no line takes more packs and everything is tried within half a second; two thirds have an opened life.
HOUSES = (6, 8, 10, 11, 13, 19, 33, 35, 45, 46, 51, 52, 56, 60, 63, 66, 76, 81, 91, 93, 106, 108, 113, 116, 119, 125,
          138, 141, 145, 151, 163, 184, 194, 205)


class Brute(unittest.TestCase):
    def test_finds_what_the_solver_finds(self):
        for number in HOUSES:
            with self.subTest(house=number):
                house = tiny(number)
                self.assertAlmostEqual(float(brute.best(house, lambda source: MOST)), float(oracle.best(house).total), places=5)

    def test_the_solver_finds_no_more_where_something_may_be_lacking(self):
        same = 0
        for number in HOUSES:
            with self.subTest(house=number):
                house = tiny(number)
                house = replace(house, uses=[replace(use, give=use.amount / (4, 10, 2)[i % 3]) for i, use in enumerate(house.uses)])
                tried, bound = float(brute.best(house, lambda source: MOST)), float(oracle.best(house).total)
                self.assertLess(bound, tried + 1e-5)
                same += abs(bound - tried) < 1e-5
        self.assertGreater(same, len(HOUSES) / 2)

    def test_glpk_finds_what_cbc_finds(self):
        compared = 0
        for number in HOUSES:
            with self.subTest(house=number):
                house = tiny(number)
                try:
                    one, other = oracle.best(house, "glpk", 2), oracle.best(house, "cbc", 2)
                except NotSolved:
                    continue  # one is slow now and then
                compared += 1
                self.assertAlmostEqual(float(one.total), float(other.total), places=5)
        self.assertGreater(compared, 25)


if __name__ == "__main__":
    unittest.main()
