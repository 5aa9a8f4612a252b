"""What a small house is made of: plain values, exact numbers.

Days are ordinals (date.toordinal), clocks are minutes from midnight, money is in cents, amounts are
in the basis of a food (grams, millilitres or pieces) or, of an item, in its own worth.
"""
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Dict, List, Optional, Tuple

FOREVER = 10**7  # a day after all others
PLACES = ("pantry", "fridge", "freezer")


class Unreadable(Exception):
    """The house says something that this reader does not know."""


@dataclass(frozen=True)
class Food:
    name: str
    department: str
    stored: str
    basis: str  # "g", "ml" or "each"
    keeps: Dict[str, int]  # days by place, and "opened"
    sealed: int  # how long it keeps unfrozen (frozen goods: in the freezer) from the day it is bought
    place: str  # where it stands until then
    frozen: Optional[int]  # how long it keeps if it is frozen at home
    opened: Optional[int]  # how long one pack keeps once opened; None: opening starts no clock
    ml: Fraction  # room of one unit of the basis
    portions: Optional[int] = None  # how long portions keep that are frozen when a pack is opened; None: as `frozen` says
    for_cooking: bool = False  # frozen for what it is cooked in, not to be kept


@dataclass(frozen=True)
class Offer:
    shop: str
    food: str
    text: str  # of the pack, as the file says it
    size: Fraction  # basis units in one pack, or in one step of the scale
    by_weight: bool
    price: Fraction  # cents for one pack or for one step, regular
    member: Optional[Fraction] = None
    sale: Optional[Tuple[Fraction, int, int]] = None  # price and its first and last day
    deal: Optional[Tuple[int, Fraction]] = None
    limit: Optional[int] = None
    first: int = -FOREVER
    last: int = FOREVER


@dataclass(frozen=True)
class Shop:
    slug: str
    name: str
    stop_cost: Optional[Fraction]
    tax: Dict[str, Fraction]
    cash_back: Fraction
    credit: Fraction
    over: Optional[Fraction]  # a reduction: spend that much in one visit ...
    off: Fraction  # ... and pay so much less
    offers: List[Offer]


@dataclass(frozen=True)
class Stop:
    shop: str
    day: int
    home: int  # when what is bought there can be used
    always: bool
    cost: Fraction


@dataclass(frozen=True)
class Use:
    food: str
    day: int
    clock: int
    amount: Fraction
    fresh: bool
    give: Fraction = Fraction(0)  # of the amount: what may be lacking
    slack: int = 0  # it may be eaten so many days before
    containers: Optional[Fraction] = None  # so many cans of any usual size, for which the amount stands


@dataclass(frozen=True)
class Lot:
    """What is in the house. `packs` is how many packs the lot is of."""

    food: str
    amount: Fraction
    place: str
    last: int  # its last good day
    packs: int = 1


@dataclass
class Buying:
    only_at: List[str] = field(default_factory=list)
    never_at: List[str] = field(default_factory=list)
    prefer: List[str] = field(default_factory=list)


@dataclass
class House:
    first: int
    last: int
    foods: Dict[str, Food]
    shops: Dict[str, Shop]
    stops: List[Stop]
    uses: List[Use]
    lots: List[Lot]
    room: Dict[str, Fraction]  # millilitres by place, where there is a limit
    member_of: List[str]
    buying: Dict[str, Buying]
    groups: List[Dict[str, Fraction]]  # any of these: how much of each does the same
    kept_worth: Fraction
    waste_cost: Fraction
    handling: Fraction = Fraction(0)  # cents for each need that is served from the freezer

    @property
    def days(self) -> int:
        return self.last - self.first + 1

    def item_of(self, food: str) -> str:
        """The first of the foods that stand for each other; the food itself where none do."""
        for group in self.groups:
            if food in group:
                return next(iter(group))
        return food

    def worth(self, food: str) -> Fraction:
        """Units of the item that one unit of the food is worth."""
        for group in self.groups:
            if food in group:
                return next(iter(group.values())) / group[food]
        return Fraction(1)

    def members(self, item: str) -> List[str]:
        for group in self.groups:
            if item in group:
                return list(group)
        return [item]

    def may_buy(self, food: str, shop: str) -> bool:
        rule = self.buying.get(food, Buying())
        return (not rule.only_at or shop in rule.only_at) and shop not in rule.never_at

    def preferred(self, food: str, shop: str) -> bool:
        rule = self.buying.get(food, Buying())
        return not rule.prefer or shop in rule.prefer
