"""An item's use of what comes without an opened life, as rows of a program: every unit may serve any
need that it is good for, unfrozen or frozen, or is kept; what is good to the end unfrozen is kept, what is
not and is not frozen for it goes bad."""


class Flow:
    """Where a source's units go: variables, in units of `scale`."""

    def __init__(self, source):
        self.source = source
        self.unfrozen, self.frozen = {}, {}  # by need
        self.kept = self.kept_frozen = self.wasted = None
        self.most = 0  # what there can be of it

    def all(self):
        rest = [v for v in (self.kept, self.kept_frozen, self.wasted) if v is not None]
        return [*self.unfrozen.values(), *self.frozen.values(), *rest]


    def things(self, need):
        """What serves the need, unfrozen and frozen (see opened.one_is_left)."""
        for given, kept in ((self.unfrozen, self.kept), (self.frozen, self.kept_frozen)):
            if need in given:
                rest = [var for v, var in given.items() if v > need] + [v for v in (kept, self.wasted) if v is not None]
                yield None, given[need], {var: 1 for var in rest}, self.most


def flow(program, item, source, packs, scale):
    """The variables, and that all that there is of it goes somewhere. `packs`: the terms of what is bought;
    None for stock."""
    out = Flow(source)
    for i, need in enumerate(item.needs):
        if source.serves_unfrozen(need):
            out.unfrozen[i] = program.var(need.amount / scale)
        if source.serves_frozen(need):
            out.frozen[i] = program.var(need.amount / scale)
    out.kept = program.var() if item.keeps_unfrozen(source) else None
    out.kept_frozen = program.var() if item.keeps_frozen(source) else None
    out.wasted = program.var(0 if item.keeps_unfrozen(source) else None)
    size = source.size / scale
    terms = {v: 1 for v in out.all()}
    if packs is None:
        out.most = size * source.packs
        program.row(terms, "=", out.most)
    else:
        out.most = size * max(program.highs[v] * n for v, n in packs.items())
        program.row({**terms, **{v: -n * size for v, n in packs.items()}}, "=", 0)
    return out
