"""An item's use of packs whose opening starts a clock, as rows of a program (the account, "Lives" and
"How packs are used").

Packs of one source that are opened for one need are one group; so are those that are opened on the
day they come home for portions. All but the last pack of a group are used up for the need that they
are opened for, so a group is one pack of several times the size of which, after that need, less than
a pack is left.
"""
import math
from fractions import Fraction

SOME = Fraction(1, 1000)  # of the scale: the least that a pack is opened for, at least
SEALED, THAWED, PORTIONS = "sealed", "thawed", "portions"


class Group:
    """Packs opened together for the need `first` (None: when they come home) on `day`, good for the needs of
    `window` till the day `closes`. `takings` and `portions` are variables by need."""

    def __init__(self, source, kind, first, window, closes, day):
        self.source, self.kind, self.first, self.window, self.closes, self.day = source, kind, first, window, closes, day
        self.takings, self.portions = {}, {}
        self.opened = self.count = self.kept = self.wasted = None
        self.most = 0  # what can be left in it after a need, in units of the scale

    def after(self, need):
        """Terms of what is left after a need, frozen portions aside: for later needs, kept, or to go bad."""
        rest = [var for var in (self.kept, self.wasted) if var is not None]
        return {var: 1 for var in [var for v, var in self.takings.items() if v > need] + rest}

    def frozen_after(self, need):
        """The same of the portions; what is not frozen of the pack and left might have been in one."""
        rest = [var for var in (self.kept, self.wasted) if var is not None]
        return {var: 1 for var in [var for v, var in self.portions.items() if v > need] + rest}

    def may_be_portioned_for(self, index, need):
        """Whether a portion frozen when it is opened can serve a later need."""
        later = self.first is None or index > self.first
        return self.kind != THAWED and later and self.source.serves_frozen(need, self.day)

    def is_open_for(self, need):
        """Opened before this need, and it may serve it."""
        return need in self.window and (self.first is None or self.first < need)


def divisor(amounts):
    """The greatest common divisor."""
    below = math.lcm(*(amount.denominator for amount in amounts))
    return Fraction(math.gcd(*(int(amount * below) for amount in amounts)), below)


def groups_of(item, source):
    """Every way of opening packs of a source."""
    out = []
    needs, life = item.needs, source.opened
    for first, need in enumerate(needs):
        later = range(first, len(needs))
        if source.serves_unfrozen(need):
            closes = min(need.day + life, source.good)
            window = [v for v in later if source.serves_unfrozen(needs[v]) and needs[v].day <= closes]
            out.append(Group(source, SEALED, first, window, closes, need.day))
        if source.serves_frozen(need):
            closes = need.day + life
            window = [v for v in later if not needs[v].fresh and needs[v].day <= closes]
            out.append(Group(source, THAWED, first, window, closes, need.day))
    if source.frozen is not None:
        closes = min(source.day + life, source.good)
        window = [v for v, need in enumerate(needs) if source.serves_unfrozen(need) and need.day <= closes]
        out.append(Group(source, PORTIONS, None, window, closes, source.day))
    return out


class Packs:
    """The packs of one source: groups that are opened, and packs that never are."""

    def __init__(self, program, item, source, terms, scale):
        """`terms`: of the number of packs bought; None for stock."""
        self.source, self.item = source, item
        self.size = source.size / scale
        # By rule 3 all amounts are sums and differences of those of needs and packs.
        self.some = max(SOME, divisor([need.amount for need in item.needs] + [one.size for one in item.sources]) / scale)
        self.most = max(program.highs[v] * n for v, n in terms.items()) if terms else source.packs
        self.groups = groups_of(item, source)
        # Never opened: kept sealed, kept frozen whole, thrown away. Whole packs, but for the scale's.
        self.kept = program.var(whole=not source.by_weight) if item.keeps_unfrozen(source) else None
        self.kept_frozen = program.var(whole=not source.by_weight) if item.keeps_frozen(source) else None
        self.wasted = program.var(0 if item.keeps_unfrozen(source) else None, whole=not source.by_weight)
        for group in self.groups:
            group.opened = program.yes_no()
            group.takings = {v: program.var(item.needs[v].amount / scale) for v in group.window}
            group.portions = {v: program.var(need.amount / scale) for v, need in enumerate(item.needs)
                              if group.may_be_portioned_for(v, need)}
            group.kept = program.var() if group.closes >= item.end else None
            group.wasted = program.var(0 if group.kept is not None else None)
            group.most = self.size if group.first is not None and not source.by_weight else self.most * self.size
        if source.by_weight:
            self.weighed(program, terms)
        else:
            self.counted(program, terms, scale)

    def contents(self, group):
        rest = [v for v in (group.kept, group.wasted) if v is not None]
        return {v: 1 for v in [*group.takings.values(), *group.portions.values(), *rest]}

    def counted(self, program, terms, scale):
        """Packs: whole numbers of them are in each group."""
        size, total = self.size, {}
        for group in self.groups:
            served = [need.amount / scale for v, need in enumerate(self.item.needs)
                      if v in group.takings or v in group.portions]
            most = sum(math.ceil(amount / size) for amount in served)
            if self.source.packs is not None:
                most = min(most, self.source.packs)
            group.count = program.var(most, 0, True)
            program.row({group.count: 1, group.opened: -most}, "<=", 0)
            program.row({group.opened: 1, group.count: -1}, "<=", 0)
            program.row({**self.contents(group), group.count: -size}, "=", 0)
            if group.first is not None:  # less than a pack is left of them after the first need
                rest = {**group.after(group.first), **{var: 1 for var in group.portions.values()}}
                program.row({**rest, group.opened: self.some - size}, "<=", 0)
            total[group.count] = 1
        for rest in (self.kept, self.kept_frozen, self.wasted):
            if rest is not None:
                total[rest] = 1
        if terms is None:
            program.row(total, "=", self.source.packs)
        else:
            program.row({**total, **{v: -n for v, n in terms.items()}}, "=", 0)

    def weighed(self, program, terms):
        """What the scale weighs is one pack: it is in one group, or never opened."""
        whole = {v: 1 for v in (self.kept, self.kept_frozen, self.wasted) if v is not None}
        for group in self.groups:
            for var in self.contents(group):
                most = group.most if program.highs[var] is None else program.highs[var]
                program.row({var: 1, group.opened: -most}, "<=", 0)
            if group.first is not None:
                program.row({group.opened: self.some, group.takings[group.first]: -1}, "<=", 0)
            whole.update(self.contents(group))
        program.row({**whole, **{v: -n * self.size for v, n in terms.items()}}, "=", 0)
        opened = {group.opened: 1 for group in self.groups}
        most = self.most * self.size
        for rest in (self.kept, self.kept_frozen, self.wasted):
            if rest is not None:
                program.row({rest: 1, **{v: most for v in opened}}, "<=", most)
        program.row(opened, "<=", 1)
        program.row({**opened, **{v: -n for v, n in terms.items()}}, "<=", 0)


def rules(program, item, all_packs, flows):
    """Rules 1 to 3 of a cook."""
    groups = [group for packs in all_packs for group in packs.groups]
    for i in range(len(item.needs)):
        opening = [group for group in groups if group.first == i]
        standing = [group for group in groups if group.is_open_for(i)]
        # 1. What is open and good for the need is used up before a pack is opened for it.
        for new in opening:
            for old in standing:
                program.row({**old.after(i), new.opened: old.most}, "<=", old.most)
        # 3. Of all that serves the need, all but one thing is used up by it.
        things = [(group.opened, None, {**group.after(i), **{var: 1 for var in group.portions.values()}}, group.most)
                  for group in opening]
        things += [(None, group.takings[i], group.after(i), group.most) for group in standing]
        things += [(None, group.portions[i], group.frozen_after(i), group.most) for group in groups if i in group.portions]
        things += [thing for flow in flows for thing in flow.things(i)]
        if len(things) > 1:
            one_is_left(program, things)
        # 2. Of sealed packs of one size, what goes off first is opened first.
        for new in opening:
            for packs in all_packs:
                older = packs.source
                alike = (older.food, older.size) == (new.source.food, new.source.size) and not older.by_weight
                if (new.kind == SEALED and alike and not new.source.by_weight and older.good < new.source.good
                        and older.serves_unfrozen(item.needs[i])):
                    for group in packs.groups:
                        if group.kind == SEALED and group.first > i:
                            program.row({group.opened: 1, new.opened: 1}, "<=", 1)


def one_is_left(program, things):
    """Of the things that serve a need no more than one is left over. Each is: whether it serves it (or None),
    what it gives, the terms of what is left of it, and how much that can be."""
    left_over = []
    for serves, gives, rest, most in things:
        if serves is None:
            serves = program.yes_no()
            program.row({gives: 1, serves: -program.highs[gives]}, "<=", 0)
        left_over.append(program.yes_no())
        program.row({**rest, serves: most, left_over[-1]: -most}, "<=", most)
    program.row({left: 1 for left in left_over}, "<=", 1)


def nothing_held_back(program, item, all_packs, flows, short, scale):
    """Rule 4: while a need goes short, nothing that may serve it is used later or kept, and no pack that may
    stays closed. `short`: whether something of a need is missing, by need."""
    for i, need in enumerate(item.needs):

        def not_while_lacking(terms, most):
            program.row({**terms, short[i]: most}, "<=", most)

        for packs in all_packs:
            source = packs.source
            for group in packs.groups:
                if group.first == i or group.is_open_for(i):
                    not_while_lacking(group.after(i), group.most)
                sealed = group.kind == SEALED and source.serves_unfrozen(need)
                frozen = group.kind == THAWED and source.serves_frozen(need)
                if group.first is not None and group.first > i and (sealed or frozen):
                    not_while_lacking({group.opened: 1}, 1)
                if group.first == i or group.may_be_portioned_for(i, need):
                    later = {var: 1 for v, var in group.portions.items() if v > i}
                    not_while_lacking(later, item.need / scale)
            most = packs.most * (packs.size if source.by_weight else 1)
            if source.serves_unfrozen(need):
                not_while_lacking({rest: 1 for rest in (packs.kept, packs.wasted) if rest is not None}, most)
            if packs.kept_frozen is not None and source.serves_frozen(need):
                not_while_lacking({packs.kept_frozen: 1}, most)
        for flow in flows:
            source, most, later = flow.source, item.need / scale, {}
            if source.serves_unfrozen(need):
                later.update({var: 1 for v, var in flow.unfrozen.items() if v > i})
            if source.serves_frozen(need):
                later.update({var: 1 for v, var in flow.frozen.items() if v > i})
            not_while_lacking(later, most)
