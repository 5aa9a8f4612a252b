"""Fifty thousand recipes that each need the next are built, explained and checked.

usage: long_chain.py PROGRAM
"""
import pathlib
import subprocess
import sys
import tempfile

program = str(pathlib.Path(sys.argv[1]).resolve())
count = 50_000
with tempfile.TemporaryDirectory() as place:
    root = pathlib.Path(place)
    (root / "recipes").mkdir()
    (root / "plans/stores").mkdir(parents=True)
    (root / "plans/household.yaml").write_text('people: [{name: Ada}]\nmeals: {dinner: "18:30"}\n')
    (root / "plans/stores/corner.yaml").write_text("shop: Corner\nprices: {onion: 1.00/lb}\n")
    (root / "plans/p.yaml").write_text(
        "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {2027-03-02: {dinner: r0}}\n"
        "trips: [{date: 2027-03-01, stops: [corner]}]\n")
    for i in range(count):
        line = f"1 cup r{i + 1}" if i + 1 < count else "1 lb onion"
        (root / f"recipes/r{i}.yaml").write_text(
            f"name: R{i}\nserves: 1\nmakes: 1 cup\ningredients: [{line}]\n")
    for command in (["build", "plans/p.yaml"], ["why", "onion", "--plan", "plans/p.yaml"], ["check"]):
        done = subprocess.run([program, *command], cwd=root, capture_output=True, text=True, timeout=120)
        assert done.returncode == 0, (command, done.returncode, done.stderr[-500:])
        assert len(done.stdout) < 100_000, command
    assert "$1.00" in (root / "out/p/list.txt").read_text()
