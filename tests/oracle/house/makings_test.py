"""How many times recipes are made, worked by hand from the README."""
import unittest
from fractions import Fraction

from makings import times_to_make

TENTH = Fraction(1, 10)


class Makings(unittest.TestCase):
    def made(self, needed, parts, give, times):
        self.assertEqual(times_to_make(Fraction(needed), parts, give), Fraction(times))

    def test_what_is_measured_is_made_in_quarters_or_thirds(self):
        self.made("3/8", None, TENTH, "1/2")
        self.made("5/8", None, TENTH, "2/3")
        self.made("1/10", None, TENTH, "1/4")

    def test_a_little_less_is_enough_if_the_next_part_would_leave_more_than_that_over(self):
        self.made("11/10", None, TENTH, "1")  # a quarter more would leave 0.15 over
        self.made("28/25", None, TENTH, "5/4")  # 0.12 less is more than the tenth of 1.12
        self.made("11/10", None, Fraction(0), "5/4")

    def test_a_recipe_says_its_own_parts(self):
        self.made("13/10", "whole", TENTH, "2")
        self.made("13/10", "halves", TENTH, "3/2")
        self.made("13/10", "quarters", TENTH, "5/4")
        self.made("13/10", "exactly", TENTH, "13/10")


if __name__ == "__main__":
    unittest.main()
