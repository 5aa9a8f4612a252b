"""A linear program with whole numbers, written down and handed to CBC (or GLPK)."""
import os
import re
import subprocess
import tempfile


class NotSolved(Exception):
    pass


class TimeIsUp(NotSolved):
    pass


FIRST_SECONDS = 2


class Program:
    """Minimise. Variables are numbers; a row is a dictionary from variables to factors."""

    def __init__(self):
        self.lows, self.highs, self.whole, self.costs = [], [], [], []
        self.rows = []

    def var(self, high=None, cost=0, whole=False, low=0):
        self.lows.append(low)
        self.highs.append(high)
        self.whole.append(whole)
        self.costs.append(cost)
        return len(self.costs) - 1

    def yes_no(self, cost=0):
        return self.var(1, cost, True)

    def row(self, terms, sense, right):
        """`sense` is '<=', '>=' or '='."""
        terms = {var: factor for var, factor in terms.items() if factor != 0}
        if terms:
            self.rows.append((terms, sense, right))
        elif (right < 0 and sense == "<=") or (right > 0 and sense == ">=") or (right != 0 and sense == "="):
            raise NotSolved("a row that nothing satisfies")

    def text(self, fixed={}):
        """As a file. Variables in `fixed` have that value, and none is whole then."""
        def sum_of(terms):
            parts = [f"{'+' if factor > 0 else '-'} {abs(float(factor))!r} x{var}" for var, factor in terms]
            return "\n  ".join(" ".join(parts[i:i + 8]) for i in range(0, len(parts), 8))

        # All variables stand in the costs, so that GLPK numbers them as they are here.
        out = ["Minimize", " cost: " + sum_of(enumerate(self.costs)), "Subject To"]
        for i, (terms, sense, right) in enumerate(self.rows):
            out.append(f" r{i}: {sum_of(terms.items())} {sense} {float(right)!r}")
        out.append("Bounds")
        for v, (low, high) in enumerate(zip(self.lows, self.highs)):
            low, high = (fixed[v], fixed[v]) if v in fixed else (low, high)
            out.append(f" {float(low)!r} <= x{v}" + (f" <= {float(high)!r}" if high is not None else ""))
        whole = [f" x{v}" for v, is_whole in enumerate(self.whole) if is_whole and not fixed]
        return "\n".join(out + (["General"] + whole if whole else []) + ["End", ""])

    def solve(self, solver="both", seconds=60):
        """(value, values of the variables). Raises NotSolved if that is not proven best in the time. GLPK is asked first,
        for a second or two, then CBC ("glpk", "cbc": only that one)."""
        if not self.rows:
            values = [float(low if cost >= 0 else high) for low, high, cost in zip(self.lows, self.highs, self.costs)]
            return sum(float(c) * v for c, v in zip(self.costs, values)), values
        with tempfile.TemporaryDirectory() as folder:
            problem, answer = os.path.join(folder, "p.lp"), os.path.join(folder, "p.out")
            with open(problem, "w") as file:
                file.write(self.text())
            values = None
            if solver != "cbc":
                try:
                    values = glpk(problem, answer, len(self.costs), FIRST_SECONDS if solver == "both" else seconds)
                except TimeIsUp:
                    if solver == "glpk":
                        raise
            if values is None:
                values = cbc(problem, answer, len(self.costs), seconds)
            # CBC prints eight digits. With the whole numbers fixed the rest is found to all digits.
            fixed = {v: float(round(values[v])) for v, whole in enumerate(self.whole) if whole}
            with open(problem, "w") as file:
                file.write(self.text(fixed))
            values = glpk(problem, answer, len(self.costs), seconds)
        return sum(float(c) * v for c, v in zip(self.costs, values)), values


def run(command, seconds):
    try:
        return subprocess.run(command, capture_output=True, text=True, timeout=seconds + 30).stdout
    except subprocess.TimeoutExpired:
        raise NotSolved("no end")


def cbc(problem, answer, count, seconds):
    """Without its preprocessing and its cuts: with them (probing, for one) 2.10.8 now and then returns answers that are
    not the best."""
    run(["cbc", problem, "-ratioGap", "0", "-allowableGap", "0", "-integerTolerance", "1e-9",
         "-primalTolerance", "1e-9", "-seconds", str(seconds), "-preprocess", "off", "-cuts", "off", "-solve",
         "-solution", answer], seconds)
    if not os.path.exists(answer):
        raise NotSolved("no answer")
    with open(answer) as file:
        lines = file.read().splitlines() or ["no answer"]
    if not lines[0].startswith("Optimal"):
        raise NotSolved(lines[0])
    values = [0.0] * count
    for line in lines[1:]:
        name, value = line.split()[-3:-1]
        values[int(name[1:])] = float(value)
    return values


def glpk(problem, answer, count, seconds):
    if os.path.exists(answer):
        os.remove(answer)
    said = run(["glpsol", "--lp", problem, "--tmlim", str(seconds), "--mipgap", "0", "--write", answer], seconds)
    if "TIME LIMIT EXCEEDED" in said:
        raise TimeIsUp("time is up")
    if not os.path.exists(answer):
        raise NotSolved("no answer")
    with open(answer) as file:
        text = file.read()
    head = re.search(r"^s (\S+) (\d+) (\d+) (.*)$", text, re.M)
    # "o": best of a program with whole numbers; "f f": of one without.
    if not head or head[4].split()[0] not in ("o", "f") or (head[1] == "mip" and head[4].split()[0] != "o"):
        raise NotSolved(head[0] if head else "no status")
    column = 2 if head[1] == "mip" else 3
    values = [float(line.split()[column]) for line in text.splitlines() if line.startswith("j ")]
    if len(values) != count:
        raise NotSolved("values")
    return values
