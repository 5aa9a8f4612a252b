"""An item's use of what comes without an opened life, as rows of a program: every unit may serve any
need that it is good for, unfrozen or frozen, or is kept; what is good to the end unfrozen is kept, what is
not and is not frozen for it goes bad."""


class Flow:
    """Where a source's units go: variables, in units of `scale`."""

    def __init__(self, source):
        self.source = source
        self.unfrozen, self.frozen = {}, {}  # by need
        self.kept = self.kept_frozen = self.wasted = None

    def all(self):
        rest = [v for v in (self.kept, self.kept_frozen, self.wasted) if v is not None]
        return [*self.unfrozen.values(), *self.frozen.values(), *rest]


def flow(program, item, source):
    """The variables; what they add up to is said by `balance`."""
    out = Flow(source)
    for i, need in enumerate(item.needs):
        if source.serves_unfrozen(need):
            out.unfrozen[i] = program.var()
        if source.serves_frozen(need):
            out.frozen[i] = program.var()
    out.kept = program.var() if item.keeps_unfrozen(source) else None
    out.kept_frozen = program.var() if item.keeps_frozen(source) else None
    out.wasted = program.var(0 if item.keeps_unfrozen(source) else None)
    return out


def balance(program, out, packs, scale):
    """All that there is of it goes somewhere. `packs`: the terms of what is bought; None for stock."""
    size = out.source.size / scale
    terms = {v: 1 for v in out.all()}
    if packs is None:
        program.row(terms, "=", size * out.source.packs)
    else:
        program.row({**terms, **{v: -n * size for v, n in packs.items()}}, "=", 0)
