"""Builds the houses of tests/cases, each in a copy, and compares with right.yaml. See cases/README.md."""
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

import yaml

CASES = pathlib.Path(__file__).parent / "cases"
SECONDS = 20
HAIR = Fraction(1, 10000)  # a hundredth of a cent


def figures(result):
    """What right.yaml may speak of, from a result.json."""
    account = result.get("account", {})
    return {"paid": Fraction(result["paid"]) / 100, "total": account.get("total"), "missing": account.get("missing"),
            "stops": len(result["visits"])}


def wrong(program, case):
    """Sentences; none if all is right."""
    right = yaml.load((case / "right.yaml").read_text(), Loader=yaml.BaseLoader)
    with tempfile.TemporaryDirectory() as folder:
        house = pathlib.Path(folder) / "house"
        shutil.copytree(case, house)
        try:
            ran = subprocess.run([program, "build", "plans/p.yaml"], cwd=house, capture_output=True, text=True, timeout=SECONDS)
        except subprocess.TimeoutExpired:
            return [f"no end in {SECONDS} s"]
        if ran.returncode != 0:
            return [f"exit {ran.returncode}"] + (ran.stdout + ran.stderr).splitlines()[:3]
        result = json.loads((house / "out/p/result.json").read_text(), parse_float=Fraction)
    said, out = figures(result), []
    for name, value in right.items():
        if said[name] is None:
            out.append(f"{name} is not said; right is {value}")
        elif abs(Fraction(said[name]) - Fraction(value)) > HAIR:
            out.append(f"{name} {float(said[name]):.6g}, right is {value}")
    return out if result["proven"] else out + ["not proven"]


def main():
    program, names = sys.argv[1], sys.argv[2:]
    cases = [case for case in sorted(CASES.iterdir()) if case.is_dir() and (not names or case.name in names)]
    failed = 0
    for case in cases:
        complaints = wrong(program, case)
        failed += bool(complaints)
        print(f"{'FAILED' if complaints else 'ok    '}  {case.name}" + "".join(f"\n          {line}" for line in complaints))
    print(f"{len(cases) - failed} of {len(cases)} right")
    return 1 if failed or not cases else 0


if __name__ == "__main__":
    sys.exit(main())
