"""In which order things are used, as rows of a program (the account, "How packs are used"):

1. What is open and good unfrozen for a need is used up before anything else serves it, what goes off first first.
2. Of things of one kind (loose, or packs of one size) the one that goes off first unfrozen is used up, or opened, first;
   likewise from the freezer (what is good unfrozen, too, stands beside what is not); of equals, the first lot, then what
   was bought first, at one stop in the order of its list, what is weighed last. Which kind, and whether from the freezer or not, is free.
3. A need is served by one thing after the other, each used up before the next.
4. A need goes without only if nothing is left that may serve it but what would have to be frozen at home for it. What
   serves it in part is used up.
5. What a need can do without it takes from what is loose or open and serves it, unfrozen; so nothing of that is left at the
   end if it lacks that. What it takes so is gone for others, but for those that have nothing else: then it goes without.
   (Whether they have is not said here, so that these rows are a lower bound where something may be lacking.)
6. A need takes at least so much from the freezer, or all that it must have, where some of it was frozen after the beginning;
   what is less may be left there though it lacks it.
"""
from holdings import BACK, COOL, FROM_FREEZER, LENT, OPEN, Loose, Packs
from lp import NotSolved


class Unsaid(NotSolved):
    """The house has something of which the rules here say nothing."""


PACKS_TO_CHOOSE = 8


def add(program, item, things, lacks, lacking, shorts, scale):
    """`things` are Loose and Packs; `lacks[i]` is whether something of need i is missing, `lacking[i]` what it can do
    without and lacks, `shorts[i]` how much is missing."""
    for need in item.needs:
        if need.containers is not None:
            raise Unsaid(f"{item.name} in cans of any size")
        if need.slack and any(isinstance(thing, Packs) for thing in things):
            raise Unsaid(f"on which day a pack of {item.name} is opened for a week")
    for thing in things:
        if isinstance(thing, Packs):
            if any(need.amount >= (PACKS_TO_CHOOSE + 1) * thing.source.size for need in item.needs):
                raise Unsaid(f"more than {PACKS_TO_CHOOSE} packs of {thing.source.name} for a need")
    for i in range(len(item.needs)):
        takings = [taking for thing in things for taking in thing.takings if taking.need == i]
        if item.needs[i].give:
            nothing_over_while_lacking(program, takings, lacking[i])
        back = [taking for taking in takings if taking.way == BACK and taking.part.frozen]
        takings = [taking for taking in takings if taking.way not in (LENT, BACK)]
        if all_the_same(item, things):
            nothing_while_lacking(program, i, takings, lacks[i])
            continue
        for taking in takings:
            whether(program, taking, i)
        is_open = [taking for taking in takings if taking.way == OPEN]
        others = [taking for taking in takings if taking.way != OPEN]
        open_first(program, i, is_open, others, lacks[i])
        goes_off_first(program, item, i, others)
        one_after_the_other(program, i, takings)
        least = min(item.least_frozen, item.needs[i].must) / scale
        # Where nothing is ever lent, a need that goes short uses up what was in the freezer from the beginning.
        lends = any(need.give for need in item.needs)
        nothing_while_lacking(program, i, others, lacks[i], too_little(program, least, shorts[i]) if lends else None)
        not_too_little(program, least, takings, back)


def all_the_same(item, things):
    """Loose things of one food that nothing freezes and for which there is room: that what goes off first is used first
    is no loss."""
    return (not item.takes_room and len({thing.source.food for thing in things}) <= 1
            and all(taking.way in (COOL, LENT, BACK) for thing in things for taking in thing.takings)
            and all(thing.source.opened is None and not item.keeps_frozen(thing.source) for thing in things))


def whether(program, taking, i):
    """Says whether the taking is more than nothing."""
    if taking.opens:
        taking.serves = taking.opening.yes
    else:
        taking.serves = program.yes_no()
        program.row({taking.var: 1, taking.serves: -program.highs[taking.var]}, "<=", 0)


def none_left_if(program, yes, left):
    """If `yes`, nothing of what `left` says is left."""
    terms, most = left
    program.row({**terms, yes: most}, "<=", most)


def open_first(program, i, is_open, others, lacks):
    if not is_open:
        return
    beyond = program.yes_no()
    for yes in [taking.serves for taking in others] + [lacks]:
        program.row({yes: 1, beyond: -1}, "<=", 0)
    for taking in is_open:
        none_left_if(program, beyond, taking.left())
        for later in is_open:
            if later.rank > taking.rank:
                none_left_if(program, later.serves, taking.left())


def stock_left(taking, i):
    """Of what a taking that opens packs is from: the unopened packs; else the thing itself."""
    return taking.thing.packs.left(i) if taking.opens else taking.left()


def goes_off_first(program, item, i, others):
    def first(taking):
        return taking.rank, item.came(taking.thing.source)

    for later in others:
        for taking in others:
            if taking.order == later.order and first(taking) < first(later):
                none_left_if(program, later.serves, stock_left(taking, i))
                if taking.opens:
                    none_left_if(program, later.serves, taking.left())


def one_after_the_other(program, i, takings):
    """Of the things that serve a need no more than one is left over."""
    if len(takings) < 2:
        return
    left_over = []
    for taking in takings:
        terms, most = taking.left()
        left_over.append(program.yes_no())
        program.row({**terms, taking.serves: most, left_over[-1]: -most}, "<=", most)
    program.row({left: 1 for left in left_over}, "<=", 1)
    for taking in takings:  # a loose thing serves a need in one way
        for other in takings:
            if isinstance(taking.thing, Loose) and other.thing is taking.thing and other.way > taking.way:
                program.row({taking.serves: 1, other.serves: 1}, "<=", 1)


def too_little(program, least, short):
    """(yes or no, the least): whether less than the least is missing."""
    yes = program.yes_no()
    program.row({short: 1, yes: program.highs[short] - least}, "<=", program.highs[short])
    return yes, least


def nothing_while_lacking(program, i, others, lacks, little=None):
    """What is in the freezer may be left if too little of it is left, or missing (`little`)."""
    for taking in others:
        if taking.opens:
            none_left_if(program, lacks, taking.left())
        at_home = taking.way in FROM_FREEZER and taking.thing.source.thawed is None
        terms, most = stock_left(taking, i)
        if taking.way in FROM_FREEZER and little and not at_home:
            yes, least = little
            program.row({**terms, lacks: most, yes: -most}, "<=", most + least)
        elif not at_home:
            none_left_if(program, lacks, (terms, most))
        else:  # what serves it in part is used up
            program.row({**terms, lacks: most, taking.serves: most}, "<=", 2 * most)


def nothing_over_while_lacking(program, takings, lacking):
    """Rests are what is left at the end."""
    yes = program.yes_no()
    program.row({lacking: 1, yes: -program.highs[lacking]}, "<=", 0)
    for taking in takings:
        if taking.way == LENT and not (taking.part.frozen and taking.part.thawed is None):
            none_left_if(program, yes, ({taking.thing.rest: 1}, taking.thing.most))


def not_too_little(program, least, takings, back):
    """Of all that comes from the freezer, what was lent among it; what is thawed whole, for its first need."""
    frozen = [taking for taking in takings if taking.way in FROM_FREEZER]
    if least > 0:
        for taking in frozen:
            if taking.thing.source.thawed is not None:
                continue
            program.row({**{one.var: 1 for one in frozen + back}, taking.serves: -least}, ">=", 0)
