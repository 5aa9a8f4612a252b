"""How many times a recipe is made for those who eat of it (the README, "The files": made in parts that a cook can measure).
Only for recipes of what is measured: what is counted has rules of its own, not said here."""
import math
from fractions import Fraction

PARTS = {"whole": (1,), "halves": (2,), "quarters": (4,), None: (4, 3)}  # None: the recipe does not say
USUAL_GIVE = "10 %"


def times_to_make(needed, parts, give):
    """The next time that can be made and is enough; a little less, within the give, if that leaves more than the give."""
    if parts == "exactly":
        return needed
    enough = min(Fraction(math.ceil(needed * part), part) for part in PARTS[parts])
    less = max(Fraction(math.ceil(needed * part) - 1, part) for part in PARTS[parts])
    return less if enough - needed > give * needed and 0 < needed - less <= give * needed else enough
