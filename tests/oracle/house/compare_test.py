"""The runner and the checker, with a stand-in for the program (pretend.py) that has faults planted."""
import os
import pathlib
import subprocess
import tempfile
import traceback
import unittest
from unittest import mock

import compare
import pretend
from generate import generate, write
from read import read_house

BUILD = compare.build(str(pathlib.Path(__file__).with_name("pretend.py")))


def kinds(fault, numbers):
    with mock.patch.dict(os.environ, {"FAULT": fault}):
        return {number: compare.try_house(BUILD, generate(number)).kind for number in numbers}


def run_here(command, folder):
    """The stand-in without a process of its own, which takes most of the time of a house."""
    try:
        pretend.build(folder, command[2], os.environ.get("FAULT"))
    except Exception:
        return subprocess.CompletedProcess(command, 1, "", traceback.format_exc())
    return subprocess.CompletedProcess(command, 0, "", "")


class Compare(unittest.TestCase):
    def test_agrees_with_itself(self):
        self.assertEqual(set(kinds("", range(1, 18)).values()), {"same"})

    def test_sees_a_sum_that_is_a_cent_off(self):
        self.assertEqual(kinds("wrong sum", [5])[5], "the result is wrong by itself")

    def test_sees_goods_that_are_not_paid(self):
        self.assertEqual(kinds("free goods", [5])[5], "the result is wrong by itself")

    def test_sees_what_serves_twice(self):
        self.assertEqual(kinds("serves twice", [5])[5], "the result is wrong by itself")

    def test_sees_a_false_proof(self):
        self.assertEqual(kinds("nothing bought", [5])[5], "proven, and dearer than the oracle")

    def test_makes_a_house_that_differs_small(self):
        with (tempfile.TemporaryDirectory() as folder, mock.patch.dict(os.environ, {"FAULT": "nothing bought"}),
              mock.patch.object(compare, "run", run_here)):
            number, found, place = compare.one(BUILD, 5, folder, True)
            self.assertEqual(found.kind, "proven, and dearer than the oracle")
            self.assertLess(len("".join(path.read_text() for path in place.rglob("*.yaml"))), 500)


class Generate(unittest.TestCase):
    def test_gives_the_same_house_for_the_same_number(self):
        self.assertEqual(generate(7), generate(7))
        self.assertNotEqual(generate(7), generate(8))

    def test_gives_houses_of_every_kind(self):
        seen = {"reduction": 0, "store credit": 0, "storage": 0, "on-hand": 0, "opened": 0, "home by": 0, "10000.00": 0,
                "made in: whole": 0, "give": 0, "an hour costs": 0}
        for number in range(1, 101):
            with tempfile.TemporaryDirectory() as folder:
                write(generate(number), folder)
                read_house(folder)  # does not raise
                said = "".join(str(path) + path.read_text() for path in sorted(pathlib.Path(folder).rglob("*.yaml")))
                for word in seen:
                    seen[word] += word in said
        self.assertGreaterEqual(min(seen.values()), 5, seen)


if __name__ == "__main__":
    unittest.main()
