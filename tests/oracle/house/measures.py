"""Amounts as a cook writes them, as far as small houses need them: '200 g', '1 1/2 lb', '3 cans'.

Factors: NIST Handbook 44 Appendix C (ounce 28.349523125 g, US gallon 3785.411784 ml).
"""
import re
from fractions import Fraction

from things import Unreadable

OUNCE = Fraction("28.349523125")
GALLON = Fraction("3785.411784")
GRAMS = {"g": Fraction(1), "kg": Fraction(1000), "oz": OUNCE, "lb": 16 * OUNCE}
MILLILITRES = {
    "ml": Fraction(1), "l": Fraction(1000), "gal": GALLON, "qt": GALLON / 4, "pint": GALLON / 8,
    "pt": GALLON / 8, "cup": GALLON / 16, "cups": GALLON / 16, "fl oz": GALLON / 128,
    "tbsp": GALLON / 256, "tsp": GALLON / 768,
}
FRACTIONS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8"}
# What a scale at a counter shows (the program's own choice, said in its file format).
STEPS = {"lb": Fraction(1, 10), "oz": Fraction(1), "kg": Fraction(1, 20), "g": Fraction(50)}
CONTAINERS = ("can", "tin", "package", "packet", "jar", "bottle", "box", "bag", "carton", "tub", "tube", "block",
              "pouch", "pack", "roll")
NUMBER = re.compile(r"\s*(\d+\s+\d+/\d+|\d+/\d+|\d*\.?\d+)")


def number(text):
    """(value, the rest) of a text that begins with a number; (None, text) otherwise."""
    for sign, plain in FRACTIONS.items():
        text = text.replace(sign, " " + plain)
    found = NUMBER.match(text)
    if not found:
        return None, text
    return sum(Fraction(part) for part in found[1].split()), text[found.end():].strip()


def money(text):
    """Cents."""
    if not is_money(text):
        raise Unreadable(f"no money: {text!r}")
    return Fraction(text.strip().lstrip("$")) * 100


def is_money(text):
    return re.fullmatch(r"\$?\d+(\.\d+)?", text.strip()) is not None


def percent(text):
    if not text.strip().endswith("%"):
        raise Unreadable(f"no share: {text!r}")
    return Fraction(text.strip()[:-1].strip()) / 100


def clock(text):
    """Minutes from midnight."""
    hours, minutes = text.split(":")
    return 60 * int(hours) + int(minutes)


def length(text):
    """Days of '4 days', '2 weeks', '3 months', '2 years'."""
    amount, unit = number(text)
    for word, each in (("day", 1), ("week", 7), ("month", 30), ("year", 365)):
        if unit.startswith(word):
            return int(amount * each)
    raise Unreadable(f"no time: {text!r}")


def unit_at(text):
    """(unit, the rest) where a text begins with a unit; (None, text) otherwise."""
    for unit in sorted(GRAMS.keys() | MILLILITRES.keys(), key=len, reverse=True):
        if text == unit or text.startswith(unit + " "):
            return unit, text[len(unit):].strip()
    return None, text


class Weights:
    """What a record says of a food's volume, pieces and yield."""

    def __init__(self, record):
        self.volume = {}  # grams of a millilitre, by form
        for form, said in (record.get("volume") or {}).items():
            grams, unit = re.fullmatch(r"\s*([\d./ ]+) g/(.+)", said[0]).groups()
            self.volume[form] = Fraction(grams.strip()) / MILLILITRES[unit.strip()]
        self.pieces = {}  # (grams, as purchased), by name
        for piece, said in (record.get("pieces") or {}).items():
            found = re.fullmatch(r"\s*([\d.]+) g( AP)?", said[0])
            self.pieces[piece] = (Fraction(found[1]), bool(found[2]))
        self.count_as = record.get("count as")
        edible = (record.get("yields") or {}).get("edible")
        self.edible = percent(edible[0]) if edible else Fraction(1)
        household = record.get("department", "household") == "household"
        self.basis = "each" if household and not (self.volume or self.pieces) else "g"

    def millilitres(self):
        """Room of a unit of the basis; what has no figure takes a millilitre and a half a gram."""
        if self.basis == "each":
            return Fraction(0)
        if not self.volume:
            return Fraction(3, 2)
        return 1 / self.per_millilitre()

    def per_millilitre(self):
        """Grams of a millilitre as it is bought."""
        known = [self.volume[form] for form in ("plain", "whole", "leaves") if form in self.volume]
        return (known or list(self.volume.values()))[0]

    def of_unit(self, amount, unit):
        if self.basis == "each" or (unit in MILLILITRES and not self.volume):
            raise Unreadable(f"an amount in {unit}")
        if unit in GRAMS:
            return amount * GRAMS[unit]
        return amount * MILLILITRES[unit] * self.per_millilitre() / self.edible

    def of_pieces(self, amount, piece=None):
        if self.basis == "each":
            return amount
        name = piece or self.count_as
        for one in (name, name and name.rstrip("s")):
            if one in self.pieces:
                grams, purchased = self.pieces[one]
                return amount * grams / (1 if purchased else self.edible)
        raise Unreadable(f"a piece {name!r}")
